/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_MEMORY_PRIVATE_H
#define SY_STORE_MEMORY_PRIVATE_H

#include "sy-store-private.h"

typedef struct
{
  SyHash hash;
  SyEvent *event;
} Line;

typedef struct
{
  SyTask *task;
  guint64 number; /* line that touched it last */
  char *words;
  char *name_key;
} Seat;

typedef struct
{
  SyStore parent;
  GPtrArray *lines;   /* of Line; line 1 at 0      */
  GPtrArray *seats;   /* of Seat, oldest first     */
  GHashTable *by_id;  /* id → Seat; borrows both   */
} MemoryStore;

/* What is asked of the lines. */
gboolean sy_memory_store_scan_raw (SyStore *store, SyRawFunc func, gpointer user_data, GError **error);
GPtrArray *sy_memory_store_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit,
                                    GError **error);
gboolean sy_memory_store_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error);
GArray *sy_memory_store_journal_numbers (SyStore *store, const SyJournalFilter *filter, GError **error);
char **sy_memory_store_people (SyStore *store, GError **error);
GPtrArray *sy_memory_store_actions (SyStore *store, const SyActionFilter *filter, GError **error);
SyAction *sy_memory_store_find_action (SyStore *store, const char *id, GError **error);
GPtrArray *sy_memory_store_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data,
                                  GError **error);
gboolean sy_memory_store_head_as_at (SyStore *store, const char *day, SyHead *head, GError **error);

#endif
