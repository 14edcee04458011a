/* SPDX-License-Identifier: MIT */
#ifndef SY_BUNDLE_H
#define SY_BUNDLE_H

#include "sy-event.h"

/*
 * A journal on its way from record to record: one JSON document with the hash of every line and the contents of some
 * or all of them. docs/records.md, "From record to record", has its members.
 */

#define SY_BUNDLE_ERROR (sy_bundle_error_quark ())
GQuark sy_bundle_error_quark (void);
typedef enum
{
  SY_BUNDLE_ERROR_INVALID, /* no bundle, or one that does not verify: the message names the line, what was expected
                              and what was found */
  SY_BUNDLE_ERROR_STOPPED, /* the caller's progress function said so */
} SyBundleError;

/* Called now and then with bytes read and all bytes; FALSE stops. */
typedef gboolean (*SyBundleProgress) (guint64 done, guint64 of, gpointer user_data);

typedef struct
{
  guint64 number;
  SyHash hash;       /* of the line                              */
  SyHash event_hash; /* SHA-256 of the event's canonical bytes   */
  SyEvent *event;    /* NULL: the bundle has only the hashes     */
} SyBundleLine;

typedef struct
{
  char *made;          /* RFC 3339 */
  char *program;
  guint64 head_number; /* lines of the record that it was made from */
  SyHash head_hash;    /* zeros for none                            */
  GPtrArray *lines;    /* of SyBundleLine, from line 1 to the head  */
} SyBundle;

void sy_bundle_free (SyBundle *bundle); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyBundle, sy_bundle_free)

/* Writing, in this order. add is called for every line from 1 to the head; @event NULL: its hashes only. */
void sy_bundle_begin (GString *out, const char *made, const char *program, guint64 head_number, const SyHash *head_hash);
void sy_bundle_add (GString *out, guint64 number, const SyHash *hash, const SyHash *event_hash, const SyEvent *event);
void sy_bundle_end (GString *out);

/**
 * sy_bundle_read:
 * Strict: one JSON document (sy-json.h) with exactly the members of a bundle; its lines from 1 without a gap; every hash
 * the one that the chain gives, every event the one that its hash names, the head the last line's. Nothing is half
 * read. "made" and "program" are no part of the chain and only have the right form.
 * Parameters:   progress  may be NULL.
 * Return value: new; NULL with an SY_BUNDLE_ERROR.
 */
SyBundle *sy_bundle_read (const char *text, gsize length, SyBundleProgress progress, gpointer user_data, GError **error);

#endif
