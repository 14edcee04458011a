/* SPDX-License-Identifier: MIT */
#ifndef SY_DRAFT_H
#define SY_DRAFT_H

#include <gio/gio.h>

/*
 * What is typed and not yet saved, kept on disk so that it survives a crash. One file a task (or new task) and
 * store, owner-only, written whole and renamed into place, under $XDG_STATE_HOME/steelyard/drafts.
 */
typedef struct
{
  char *id;          /* names the draft: the task's id, or "new-…" for one never saved   */
  char *task;        /* id of the task, "" for a new one                                 */
  char *method;      /* whose facts they are; a draft from before there were several is of "lift" */
  char *name;        /* as typed                                                         */
  gint64 base;       /* revision that is being revised, 0 for a new one                  */
  char *units;       /* "metric" or "us"                                                 */
  GHashTable *texts; /* path of a fact → text as typed, wrong entries too (char* → char*) */
  GHashTable *longs; /* path of a long list → its items, a JSON array (char* → GBytes)   */
  gint64 saved_at;   /* unix seconds                                                     */
} SyDraft;

SyDraft *sy_draft_new (const char *id);
void sy_draft_free (SyDraft *draft);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyDraft, sy_draft_free)

gboolean sy_draft_write (const SyDraft *draft, const char *store_uri, GError **error);
/* NULL without error when there is none; a damaged draft is set aside (renamed), never deleted. */
SyDraft *sy_draft_read (const char *id, const char *store_uri, GError **error);
void sy_draft_remove (const char *id, const char *store_uri);
/* All drafts of a store: array of SyDraft, newest first. */
GPtrArray *sy_draft_list (const char *store_uri);
/* Paths of the drafts that were set aside because they could not be read; array of char *. */
GPtrArray *sy_draft_list_set_aside (const char *store_uri);

#define SY_DRAFT_ERROR (sy_draft_error_quark ())
GQuark sy_draft_error_quark (void);
typedef enum
{
  SY_DRAFT_ERROR_DAMAGED, /* set aside; the message says where */
} SyDraftError;

#endif
