/* SPDX-License-Identifier: MIT */
#ifndef SY_EVENT_H
#define SY_EVENT_H

#include "sy-chain.h"

/* Topics: an event, its canonical bytes. Every event is one line of the journal. */

typedef enum
{
  SY_EVENT_POLICY = 1,     /* a policy adopted: its full bytes in facts      */
  SY_EVENT_REVISION = 2,   /* a revision of an item                          */
  SY_EVENT_ATTACHMENT = 3, /* a file that belongs to an item: its bytes in facts; name is the file's */
  /* What is done about an item besides revising it: facts are a small document of their own, sy-deed.h. */
  SY_EVENT_SIGNATURE = 4,  /* a revision signed off; revision says which     */
  SY_EVENT_ACTION = 5,     /* an action opened, assigned, closed             */
  SY_EVENT_REVIEW = 6,     /* when the item is to be looked at again         */
  SY_EVENT_RETIREMENT = 7, /* the item taken out of use, or back into it     */
  SY_EVENT_TOLD = 8,       /* who was told the mass and the heaviest side; revision says which */
  SY_EVENT_IMPORT = 9,     /* lines taken over from a bundle: which follow; belongs to no item */
  SY_EVENT_IMPROVEMENT = 10, /* the work changed from an earlier assessment to this one; revision says which this is */
} SyEventKind;
#define SY_EVENT_KIND_LAST SY_EVENT_IMPROVEMENT

/* "policy", "revision", "attachment", "signature", "action", "review", "retirement", "told", "import", "improvement";
   NULL for a number that is none. */
const char *sy_event_kind_id (SyEventKind kind);
gboolean sy_event_kind_from_id (const char *id, SyEventKind *kind); /* FALSE for an id that is none */

/* What an item is. Two items of one kind have different names; those of two kinds may share one. */
#define SY_ITEM_TASK "task"
#define SY_ITEM_DIE "die"
#define SY_ITEM_GEAR "gear"
#define SY_ITEM_CHANGEOVER "changeover"
#define SY_ITEM_CASE "case"

/* The kinds in the order of the register, with the words for one of them in English, as the middle of a sentence. */
typedef struct
{
  const char *id;    /* SY_ITEM_TASK …        */
  const char *words; /* "a task", for errors  */
} SyItemKind;
#define SY_N_ITEM_KINDS 5
extern const SyItemKind sy_item_kinds[SY_N_ITEM_KINDS];
/* "task, changeover, …": all of them, for messages. Static. */
#define SY_ITEM_KINDS_TEXT "task, changeover, case, die, gear"
/* Its place among them, from 0; -1 for what is none. */
int sy_item_kind_place (const char *item_kind);

/* Texts are never NULL ("" for none); all owned by the event. */
typedef struct
{
  SyEventKind kind;
  char *item;          /* id of the item, "" for a policy and an import              */
  char *item_kind;     /* SY_ITEM_TASK …; "policy", "import"                         */
  char *name;          /* the item's name as of this event; an attachment's own      */
  char *by, *role, *why;
  char *claimed;       /* RFC 3339: when it was done, as claimed                     */
  char *written;       /* RFC 3339: when it was written                              */
  gboolean clock_set;  /* the clock was set by STEELYARD_CLOCK                       */
  char *program;       /* "steelyard 0.1.0"                                          */
  char *method;        /* "lift"                                                     */
  gint64 edition;
  char *policy;        /* "steelyard-default 1"                                      */
  gint64 revision;     /* from 1                                                     */
  gint64 base;         /* revision that it was made from, 0 for the first            */
  char *facts;         /* the document as typed, JSON                                */
  char *findings;      /* JSON                                                       */
  char *origin;        /* "", or of a line that was taken over from another record and got other numbers here:
                          what sy_event_identity() says there, 64 hex digits         */
} SyEvent;

SyEvent *sy_event_new (SyEventKind kind); /* all texts "" */
void sy_event_free (SyEvent *event);      /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyEvent, sy_event_free)

/* Replace one text of an event: sy_event_set (&event->by, "…"). */
void sy_event_set (char **text, const char *value);

/**
 * sy_event_encode / sy_event_decode:
 * Canonical bytes: a version, then every field in fixed order, each length-prefixed (8 bytes, big-endian).
 * An event without origin is encoded as version 1, one with it as version 2; nothing else is canonical.
 * Return value: new. decode: NULL with SY_RECORD_ERROR_BYTES for anything but exactly such bytes.
 */
GBytes *sy_event_encode (const SyEvent *event);
SyEvent *sy_event_decode (GBytes *bytes, GError **error);

/* By what one event is known in every record that holds it: its origin or, without one, the SHA-256 of its
   canonical bytes. */
void sy_event_identity (const SyEvent *event, SyHash *out);

/**
 * sy_event_peek:
 * Whether sy_event_decode() would take the bytes, without making an event: which kind and item they are of. Allocates
 * nothing where it does.
 * Parameters:   kind               receives an SyEventKind.
 *               item, item_length  point into @data; not terminated. All may be written whatever is returned.
 */
gboolean sy_event_peek (const guint8 *data, gsize size, gint64 *kind, const char **item, gsize *item_length);

#define SY_RECORD_ERROR (sy_record_error_quark ())
GQuark sy_record_error_quark (void);
typedef enum
{
  SY_RECORD_ERROR_BYTES, /* bytes that are no event */
} SyRecordError;

#endif
