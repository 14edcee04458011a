/* SPDX-License-Identifier: MIT */
#ifndef SY_STORE_H
#define SY_STORE_H

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
 * beside it: NAME.before-2 (NAME.before-2.2 and so on where that is there already), for the owner alone. The journal
 * stays as it is, to the last byte.
 * Parameters:   uri  a path (created with owner-only permission when absent) or "memory:".
 * Return value: a new store, or NULL with the error set and the file untouched.
 */
SyStore *sy_store_open (const char *uri, GError **error);
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

/* Every line from number @from (1 the first), in order. */
gboolean sy_store_scan (SyStore *store, guint64 from, SyScanFunc func, gpointer user_data,
                        GError **error);

/* Lines of one item that are of one kind, oldest first. */
gboolean sy_store_scan_item (SyStore *store, const char *item, SyEventKind kind, SyScanFunc func,
                             gpointer user_data, GError **error);

/* Current items: new array of SyTask (frees its elements), at most @limit (0: all).
   @filter NULL: every item by rank. */
GPtrArray *sy_store_list (SyStore *store, const SyTaskFilter *filter, guint limit, GError **error);

/* Items that a line after @number touched (a revision, an attachment), in the order of their last line. */
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

#endif
