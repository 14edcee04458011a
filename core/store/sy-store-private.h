/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_PRIVATE_H
#define SY_STORE_PRIVATE_H

#include "sy-store.h"

/* What a database has to do to stand behind sy-store.h. The contract is tests/core/store. */

/* One event on its way into the journal, already found fit to be written. */
typedef struct
{
  SyEvent *event;
  GBytes *bytes; /* canonical */
} SyEntry;

typedef struct
{
  void (*close) (SyStore *store);
  /* Before each of the others, while no callback runs; NULL: nothing can come between. */
  gboolean (*renew) (SyStore *store, GError **error);
  gboolean (*head) (SyStore *store, SyHead *head, GError **error);
  gboolean (*append) (SyStore *store, const SyHead *expected, GPtrArray *entries, SyHead *head,
                      GError **error);
  gboolean (*scan) (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data,
                    GError **error);
  gboolean (*scan_item) (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                         gpointer user_data, GError **error);
  /* @words: what must occur, from sy_store_fold(); "" for any. */
  GPtrArray *(*list) (SyStore *store, const SyTaskFilter *filter, const char *words, guint limit,
                      GError **error);
  GPtrArray *(*changed_since) (SyStore *store, guint64 number, GError **error);
  SyTask *(*find) (SyStore *store, const char *id_or_name, const char *item_kind, GError **error);
  char *(*policy) (SyStore *store, GError **error);
} SyStoreBackend;

/* First member of every backend's own struct. */
struct SyStore
{
  const SyStoreBackend *backend;
  GThread *owner;
  int scans; /* callbacks that are running: no append meanwhile */
};

SyStore *sy_store_memory_new (void);
SyStore *sy_store_sqlite_open (const char *path, GError **error);

/* What every backend says alike. They return FALSE so that they can end a function. */
gboolean sy_store_fail_stale (GError **error, const char *where, const SyHead *head);
gboolean sy_store_fail_not_found (GError **error, const char *id_or_name, const char *item_kind);
gboolean sy_store_fail_ambiguous (GError **error, const char *name, const char *kind, const char *other);
gboolean sy_head_equal (const SyHead *a, const SyHead *b);

/* The words of a text without case and accents, each with a blank before it: " table cafe 12". A text
   has a word that begins with "caf" when " caf" occurs in it. Every backend searches these, so that all
   find the same. */
char *sy_store_fold (const char *text);
/* By which names are ordered: no case, no accents, no locale. */
char *sy_store_name_key (const char *name);

#endif
