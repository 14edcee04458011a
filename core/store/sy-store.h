/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_H
#define SY_STORE_H

#include "sy-deed.h"
#include "sy-event.h"
#include "sy-task.h"

/*
 * Where the journal lives, behind intents, so that another database can stand there later.
 * A store belongs to the thread that opened it.
 */
typedef struct SyStore SyStore;

#define SY_STORE_ERROR (sy_store_error_quark ())
GQuark sy_store_error_quark (void);
typedef enum
{
  SY_STORE_ERROR_OPEN,      /* cannot be opened or created                     */
  SY_STORE_ERROR_FOREIGN,   /* a file of something else; left untouched        */
  SY_STORE_ERROR_NEWER,     /* made by a newer edition; left untouched         */
  SY_STORE_ERROR_CORRUPT,   /* damaged                                         */
  SY_STORE_ERROR_STALE,     /* somebody else wrote since the expected head     */
  SY_STORE_ERROR_WRITE,     /* disk full, read-only …: nothing was changed     */
  SY_STORE_ERROR_NOT_FOUND,
  SY_STORE_ERROR_AMBIGUOUS, /* items of several kinds have that name           */
  SY_STORE_ERROR_STOPPED,   /* the caller's progress function said so          */
} SyStoreError;

/* The end of the journal. */
typedef struct
{
  guint64 number; /* lines; 0: empty */
  SyHash hash;    /* zeros when empty */
} SyHead;

/* A line of the journal. */
typedef struct
{
  guint64 number;
  SyHash hash;
  const SyEvent *event;
} SyLine;

/* Called now and then; FALSE stops with STOPPED and nothing changed. */
typedef gboolean (*SyProgressFunc) (guint64 done, guint64 of, gpointer user_data);

/* Return FALSE to stop. May read from the store, must not append to it. */
typedef gboolean (*SyScanFunc) (const SyLine *line, gpointer user_data);

typedef enum
{
  SY_ORDER_RANK,   /* highest first, unbounded before all; those without a rank last, do-not-lift first
                      among them; by name where that says nothing */
  SY_ORDER_NAME,   /* by letters, whatever their case and accents */
  SY_ORDER_RECENT, /* last touched first                          */
} SyTaskOrder;
typedef struct
{
  const char *search;       /* words, each must occur (as a prefix of a word, whatever its case and
                               accents); NULL, or nothing but signs, for any                       */
  gboolean by_verdict;
  SyVerdict verdict;
  SyTaskOrder order;
  const char *item_kind;    /* SY_ITEM_TASK …; NULL for any */
} SyTaskFilter;

/**
 * sy_store_open:
 * A record of an older edition is brought up to this one's format, in one transaction and after a copy of it was put
 * beside it: NAME.before-4 (NAME.before-4.2 and so on where that is there already), for the owner alone. The journal
 * stays as it is, to the last byte.
 * Parameters:   uri  a path (created with owner-only permission when absent) or "memory:".
 * Return value: a new store, or NULL with the error set and the file untouched.
 */
SyStore *sy_store_open (const char *uri, GError **error);
/* The same for a record whose lists may be damaged: only its head and lines can be asked, and to verify and rebuild; after a
   rebuild that succeeded, everything. */
SyStore *sy_store_open_damaged (const char *uri, GError **error);
void sy_store_close (SyStore *store); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyStore, sy_store_close)

gboolean sy_store_head (SyStore *store, SyHead *head, GError **error);

/**
 * sy_store_append:
 * All events or none, durable when it returns TRUE.
 * Parameters:   expected  the head that the caller has seen; STALE when the journal has moved on.
 *               events    of SyEvent.
 *               head      receives the new end; may be NULL.
 */
gboolean sy_store_append (SyStore *store, const SyHead *expected, GPtrArray *events, SyHead *head,
                          GError **error);

/* The same for many, which takes a while. @progress may stop it, and must not call the store. */
gboolean sy_store_append_many (SyStore *store, const SyHead *expected, GPtrArray *events, SyProgressFunc progress,
                               gpointer user_data, SyHead *head, GError **error);

/* Every line from number @from (1 the first), in order. */
gboolean sy_store_scan (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data,
                        GError **error);

/* Lines of one item that are of one kind (0: of any), oldest first. */
gboolean sy_store_scan_item (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                             gpointer user_data, GError **error);

/* Current items: new array of SyTask (frees its elements), at most @limit (0: all).
   @filter NULL: every item by rank. */
GPtrArray *sy_store_list (SyStore *store, const SyTaskFilter *filter, guint limit, GError **error);

/* The seats (SyTask.seat) of the items that have all the words, as in SyTaskFilter.search: new array of gint64,
   ascending. NULL with the error; NULL without an error when there is nothing to search for. */
GArray *sy_store_search (SyStore *store, const char *words, GError **error);

/* Items that a line after @number touched (a revision, an attachment, a deed), in the order of their last line. */
GPtrArray *sy_store_changed_since (SyStore *store, guint64 number, GError **error);

/**
 * sy_store_find:
 * One item by id, whatever its kind, or, failing that, by exact name among those of @item_kind (the oldest, should
 * two have it).
 * Parameters:   item_kind  NULL: a name of any kind, AMBIGUOUS where items of several kinds have it.
 * Return value: NULL with the error set, NOT_FOUND when there is none.
 */
SyTask *sy_store_find (SyStore *store, const char *id_or_name, const char *item_kind, GError **error);

/* The facts bytes of the last policy event; NULL without error when there is none. */
char *sy_store_policy (SyStore *store, GError **error);

/* Topics: verifying, making anew */

typedef enum
{
  SY_FAULT_NONE,
  SY_FAULT_NUMBER,  /* a line is missing, twice there or out of its place       */
  SY_FAULT_HASH,    /* the line is not what was chained: changed, or put there  */
  SY_FAULT_COLUMN,  /* its row says another kind or item than the line          */
  SY_FAULT_EVENT,   /* the line is no event, although the chain holds           */
  SY_FAULT_END,     /* the list of items knows of lines behind the end          */
  SY_FAULT_HEAD,    /* the head that was given is at no line                    */
  SY_FAULT_FILE,    /* the file is damaged there and cannot be read further     */
  SY_FAULT_PARTS,   /* every line holds, but an index hides it, or a part of the file is none that an edition made */
} SyFault;

typedef struct
{
  SyFault fault;          /* the first; NONE: all holds                                                 */
  guint64 line;           /* where; for END and HEAD the number of lines; PARTS: the first that is hidden, else that number                                */
  guint64 lines;          /* that were found right                                                      */
  SyHead head;            /* the end of what holds                                                      */
  guint64 known_at;       /* the line at which the given head stands, 0 for none                        */
  char *expected, *found; /* hashes, numbers or words, English; NULL when all holds                     */
} SyVerification;
void sy_verification_clear (SyVerification *verification);

/**
 * sy_store_verify:
 * Computes the chain anew from the first line and holds every row against it.
 * Parameters:   known  the hash of a head that was kept elsewhere; NULL: none. It may be an earlier one.
 * Return value: FALSE with the error when it could not be carried out; TRUE with @out filled whatever was found.
 */
gboolean sy_store_verify (SyStore *store, const SyHash *known, SyProgressFunc progress, gpointer user_data,
                          SyVerification *out, GError **error);

typedef struct
{
  guint64 items, actions, lines; /* that were made anew                                                  */
  guint64 n_different;           /* items, actions and rows that were not what the journal says          */
  GPtrArray *differences;        /* of char *, English, the first 100: "task “Blank to shear 2”: verdict: was by-hand,
                                    the journal says mechanical"                                         */
} SyRebuild;
void sy_rebuild_clear (SyRebuild *rebuild);

/* Makes the current state (items, actions, rows of the journal page, words to search) anew from the journal, compares it
   with what was there and puts it in its place, in one transaction. CORRUPT where a line cannot be read. */
gboolean sy_store_rebuild (SyStore *store, SyProgressFunc progress, gpointer user_data, SyRebuild *out, GError **error);

/* Topics: the journal as a list, actions, an earlier day */

/* A line of the journal without its documents. */
typedef struct
{
  guint64 number;
  SyEventKind kind;
  char *item, *item_kind, *name; /* name: of the item as it is called now, else the event's          */
  char *by, *role, *why;
  char *when;                    /* claimed                                                           */
  char *written;
  gboolean clock_set;
  gint64 revision;               /* 0 for none                                                        */
  char *verdict;                 /* of a revision, its code; else ""                                  */
  char *words;                   /* sy_deed_words() in English, an attachment's file name, ""         */
} SyJournalRow;
void sy_journal_row_free (SyJournalRow *row);

typedef struct
{
  const char *by;        /* exactly; NULL: anybody                  */
  const char *from, *to; /* days, "2026-03-01", of the claimed time as UTC, both included; NULL: open */
  SyEventKind kind;      /* 0: any                                  */
  const char *item;      /* id; NULL: any                           */
} SyJournalFilter;

/* Newest first: lines with a number under @before (0: from the end), at most @limit (0: all); new array of SyJournalRow. */
GPtrArray *sy_store_journal (SyStore *store, const SyJournalFilter *filter, guint64 before, guint limit, GError **error);
gboolean sy_store_journal_count (SyStore *store, const SyJournalFilter *filter, guint64 *count, GError **error);
/* Their numbers alone, newest first: new array of guint64, for who shows a part of many. */
GArray *sy_store_journal_numbers (SyStore *store, const SyJournalFilter *filter, GError **error);
/* Everybody who wrote a line, by name: NULL-terminated, free with g_strfreev(). */
char **sy_store_people (SyStore *store, GError **error);

typedef struct
{
  gboolean open;        /* only those that are        */
  const char *item;     /* id; NULL: any              */
  const char *assigned; /* exactly; NULL: anybody     */
} SyActionFilter;

/* Open ones first, by due date (none last), then by when they were opened; new array of SyAction. */
GPtrArray *sy_store_actions (SyStore *store, const SyActionFilter *filter, GError **error);
/* By id; NULL with NOT_FOUND. */
SyAction *sy_store_find_action (SyStore *store, const char *id, GError **error);

/**
 * sy_store_as_at:
 * The items as the record knew them at the end of a day (UTC): folded from the lines written until then. What was taken
 * over from another record counts from the day on which it was.
 * Parameters:   day  "2026-03-01".
 * Return value: new array of SyTask in the order in which they were begun; items begun later are not in it.
 */
GPtrArray *sy_store_as_at (SyStore *store, const char *day, SyProgressFunc progress, gpointer user_data, GError **error);

/* The last line of the journal that counts as at that day, in the same sense; zeros where none does. Where clocks ran
   backwards, lines before it may not count. */
gboolean sy_store_head_as_at (SyStore *store, const char *day, SyHead *head, GError **error);

#endif
