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
} SyEventKind;

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
GBytes *sy_event_encode (const SyEvent *event);
SyEvent *sy_event_decode (GBytes *bytes, GError **error);

/**
 * sy_chain_next:
 * Hash of journal line @number: SHA-256 over a domain tag, the previous hash (zeros before line 1), the number
 * (8 bytes, big-endian) and the SHA-256 of the event's canonical bytes.
 */
void sy_chain_next (const SyHash *previous, guint64 number, GBytes *event, SyHash *out);
void sy_hash_of (gconstpointer data, gsize size, SyHash *out); /* plain SHA-256 (libcrypto) */
char *sy_hash_text (const SyHash *hash);                       /* 64 hex digits, new string */
gboolean sy_hash_from_text (const char *text, SyHash *out);

#define SY_RECORD_ERROR (sy_record_error_quark ())
GQuark sy_record_error_quark (void);
typedef enum
{
  SY_RECORD_ERROR_BYTES, /* bytes that are no event */
} SyRecordError;

#endif
