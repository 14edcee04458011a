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

/* A line as its row has it, before anybody has made sense of it. All borrowed for the call. */
typedef struct
{
  guint64 number;
  const guint8 *hash;  /* NULL where there are no bytes */
  gsize hash_size;
  gboolean kind_is_number;
  gint64 kind;
  const char *item;    /* NULL where it is no text; not terminated */
  gsize item_size;
  const guint8 *event; /* NULL where there are no bytes */
  gsize event_size;
} SyRawLine;
/* A number of a line and the item it is about that nobody can choose, as long as the seed is made anew each time. Sums of
   them are equal where sets are. */
static inline guint64
sy_store_mix (guint64 seed, const char *item, gsize size, guint64 number)
{
  guint64 value = seed ^ (number * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  for (gsize i = 0; i < size; i++)
    value = (value ^ (guint8) item[i]) * G_GUINT64_CONSTANT (0x100000001b3) + (value >> 47);
  value ^= value >> 31;
  value *= G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  return value ^ value >> 29;
}

/* What answers for the journal and is not what was made; expected and found NULL where all is. Owned by the caller. */
typedef struct
{
  /* given: sums of sy_store_mix() over every line and, without an item, over every policy */
  guint64 seed, lines_sum, policies_sum;
  guint64 line; /* the first that is hidden, 0 for none in particular */
  char *expected, *found;
} SyAstray;

typedef gboolean (*SyRawFunc) (const SyRawLine *line, gpointer user_data);

typedef struct
{
  void (*close) (SyStore *store);
  /* Before each of the others, while no callback runs; NULL: nothing can come between. */
  gboolean (*renew) (SyStore *store, GError **error);
  gboolean (*head) (SyStore *store, SyHead *head, GError **error);
  gboolean (*append) (SyStore *store, const SyHead *expected, GPtrArray *entries, SyProgressFunc progress,
                      gpointer user_data, SyHead *head, GError **error);
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
  GArray *(*search) (SyStore *store, const char *words, GError **error);

  /* In the order of their numbers, whatever they hold. CORRUPT for what cannot be read. */
  gboolean (*scan_raw) (SyStore *store, SyRawFunc func, gpointer user_data, GError **error);
  /* The last line that the lists know of; FALSE when they cannot be asked. */
  gboolean (*lists_end) (SyStore *store, guint64 *last);
  /* What is read until release() is the record at one time, whatever others write. NULL: nobody can. */
  gboolean (*hold) (SyStore *store, GError **error);
  void (*release) (SyStore *store);
  /* NULL: nothing can be. */
  gboolean (*astray) (SyStore *store, SyAstray *out, GError **error);
  gboolean (*rebuild) (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error);

  GPtrArray *(*journal) (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit, GError **error);
  gboolean (*journal_count) (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error);
  GArray *(*journal_numbers) (SyStore *store, const SyJournalFilter *filter, GError **error);
  char **(*people) (SyStore *store, GError **error);
  GPtrArray *(*actions) (SyStore *store, const SyActionFilter *filter, GError **error);
  SyAction *(*find_action) (SyStore *store, const char *id, GError **error);
  GPtrArray *(*as_at) (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error);
  gboolean (*head_as_at) (SyStore *store, const char *day, SyHead *head, GError **error);
} SyStoreBackend;

/* First member of every backend's own struct. */
struct SyStore
{
  const SyStoreBackend *backend;
  GThread *owner;
  int scans;     /* callbacks that are running: no append meanwhile            */
  gboolean bare; /* its lists are damaged or not looked at: only the journal can be asked */
};

/* What every call on the journal begins with. */
gboolean sy_store_enter (SyStore *store, GError **error);

SyStore *sy_store_memory_new (void);
/* @bare: whatever state its lists are in. */
SyStore *sy_store_sqlite_open (const char *path, gboolean bare, GError **error);

/* What every backend says alike. They return FALSE so that they can end a function. */
gboolean sy_store_fail_stale (GError **error, const char *where, const SyHead *head);
gboolean sy_store_fail_not_found (GError **error, const char *id_or_name, const char *item_kind);
gboolean sy_store_fail_ambiguous (GError **error, const char *name, const char *kind, const char *other);
gboolean sy_store_fail_no_action (GError **error, const char *id);
gboolean sy_head_equal (const SyHead *a, const SyHead *b);

/* The words of a text without case and accents, each with a blank before it: " table cafe 12". A text
   has a word that begins with "caf" when " caf" occurs in it. Every backend searches these, so that all
   find the same. */
char *sy_store_fold (const char *text);
/* How many lines are looked at between two calls of a progress function. */
#define SY_STORE_PROGRESS_STEP 1024
/* Calls it, where there is one, every so often; FALSE with STOPPED when it says so. */
gboolean sy_store_go_on (SyProgressFunc progress, guint64 done, guint64 of, gpointer user_data, GError **error);

/* The day of a time (RFC 3339) in UTC, "" for none. New string. */
char *sy_store_utc_day (const char *time);
/* How many lines behind an import came with it. */
guint64 sy_store_lines_taken_over (const SyEvent *import);

/* Which lines count as at a day, asked for each in order: those written by then; of what was taken over, all of it or nothing,
   by when that was. */
typedef struct
{
  guint64 until; /* the last line that came with the import before it */
  gboolean came; /* which had come by then                            */
} SyPastImport;
/* The line is an import, with which so many came. */
void sy_past_import_take (SyPastImport *import, guint64 number, guint64 lines, gboolean is_written_by);
gboolean sy_past_import_counts (const SyPastImport *import, guint64 number, gboolean is_written_by);

/* What a list of lines says of one. New string. */
char *sy_store_line_words (const SyEvent *event);
gboolean sy_journal_filter_admits (const SyJournalFilter *filter, const SyEvent *event);
/* As sy_store_actions() has them, from the order in which they were opened. */
void sy_actions_sort (GPtrArray *actions);

/* By which names are ordered: no case, no accents, no locale. */
char *sy_store_name_key (const char *name);

#endif
