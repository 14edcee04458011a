/* SPDX-License-Identifier: MIT */
#ifndef SY_EVENT_H
#define SY_EVENT_H

#include <glib.h>

/* Topics: an event, its canonical bytes, the chain. Every event is one line of the journal. */

#define SY_HASH_BYTES 32
typedef struct
{
  guint8 bytes[SY_HASH_BYTES];
} SyHash;

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
} SyEventKind;
#define SY_EVENT_KIND_LAST SY_EVENT_IMPORT

/* "policy", "revision", "attachment", "signature", "action", "review", "retirement", "told", "import"; NULL for a
   number that is none. */
const char *sy_event_kind_id (SyEventKind kind);
gboolean sy_event_kind_from_id (const char *id, SyEventKind *kind);

/* What an item is. Two items of one kind have different names; those of two kinds may share one. */
#define SY_ITEM_TASK "task"
#define SY_ITEM_DIE "die"
#define SY_ITEM_GEAR "gear"

/* Texts are never NULL ("" for none); all owned by the event. */
typedef struct
{
  SyEventKind kind;
  char *item;          /* id of the item, "" for a policy                            */
  char *item_kind;     /* SY_ITEM_TASK …; "policy"                                   */
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
 * decode returns NULL and sets the error for anything but exactly such bytes.
 */
/* An event without origin is encoded as version 1, one with it as version 2; nothing else is canonical. */
GBytes *sy_event_encode (const SyEvent *event);
SyEvent *sy_event_decode (GBytes *bytes, GError **error);

/* By what one event is known in every record that holds it: its origin or, without one, the SHA-256 of its
   canonical bytes. */
void sy_event_identity (const SyEvent *event, SyHash *out);

/**
 * sy_event_peek:
 * Whether sy_event_decode() would take the bytes, without making an event: which kind and item they are of. Allocates
 * nothing where it does.
 * Parameters:   item, item_length  point into @data; not terminated.
 */
gboolean sy_event_peek (const guint8 *data, gsize size, gint64 *kind, const char **item, gsize *item_length);

/**
 * sy_chain_next:
 * Hash of journal line @number: SHA-256 over a domain tag, the previous hash (zeros before line 1), the number
 * (8 bytes, big-endian) and the SHA-256 of the event's canonical bytes.
 */
void sy_chain_next (const SyHash *previous, guint64 number, GBytes *event, SyHash *out);
/* The same where only the SHA-256 of the event's bytes is known. */
void sy_chain_link (const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out);
void sy_hash_of (gconstpointer data, gsize size, SyHash *out); /* plain SHA-256 (libcrypto) */

/* The same two for many lines in a row, without asking libcrypto for its algorithm each time. One thread. */
typedef struct SyHasher SyHasher;
SyHasher *sy_hasher_new (void);
void sy_hasher_free (SyHasher *hasher); /* NULL is fine */
void sy_hasher_run (SyHasher *hasher, gconstpointer data, gsize size, SyHash *out);
void sy_hasher_link (SyHasher *hasher, const SyHash *previous, guint64 number, const SyHash *event_hash, SyHash *out);

char *sy_hash_text (const SyHash *hash);                       /* 64 hex digits, new string */
gboolean sy_hash_from_text (const char *text, SyHash *out);

#define SY_RECORD_ERROR (sy_record_error_quark ())
GQuark sy_record_error_quark (void);
typedef enum
{
  SY_RECORD_ERROR_BYTES, /* bytes that are no event */
} SyRecordError;

#endif
