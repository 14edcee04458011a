/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_H
#define SY_LEDGER_H

#include "sy-desk.h"
#include "sy-store.h"

/* The record, as both doors use it. Belongs to the thread that opened it (asserted). */
typedef struct SyLedger SyLedger;

SyLedger *sy_ledger_open (const char *uri, GError **error);
/* To verify and rebuild, whatever state its lists are in: as sy_store_open_damaged(). */
SyLedger *sy_ledger_open_damaged (const char *uri, GError **error);
void sy_ledger_close (SyLedger *ledger);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyLedger, sy_ledger_close)

#define SY_LEDGER_ERROR (sy_ledger_error_quark ())
GQuark sy_ledger_error_quark (void);
typedef enum
{
  SY_LEDGER_ERROR_PROBLEMS, /* the facts have problems: see the report      */
  SY_LEDGER_ERROR_MISSING,  /* by, why or name empty                        */
  SY_LEDGER_ERROR_BASE,     /* no such base revision                        */
  SY_LEDGER_ERROR_NAME,     /* another item of the kind has that name       */
  SY_LEDGER_ERROR_CLOCK,    /* STEELYARD_CLOCK is no time                   */
  SY_LEDGER_ERROR_KIND,     /* the facts are of another kind than the item  */
  SY_LEDGER_ERROR_FILE,     /* no file that can be attached                 */
  SY_LEDGER_ERROR_NO_FILE,  /* no such attachment                           */
  SY_LEDGER_ERROR_CONTENT,  /* an attachment is not what was attached       */
  SY_LEDGER_ERROR_DEED,     /* a deed that cannot be done: no such revision or action, a date that is none … */
  SY_LEDGER_ERROR_BUNDLE,   /* lines that cannot be handed over or taken over: the message names the first */
} SyLedgerError;

/* Author and clock are given by the caller. */
typedef struct
{
  const char *task;    /* id, or name of an item of the kind that the facts' method is for (SyMethod.item_kind); a
                          name that is not there begins one                                */
  const char *rename;  /* new name, NULL: keep                                             */
  const char *by, *role, *why; /* by and why must not be empty; role may be NULL           */
  gint64 base;         /* revision it was made from; -1: the latest                        */
  gboolean is_new;     /* the name must not be taken                                       */
  const char *now;     /* RFC 3339                                                         */
  gboolean clock_set;
} SyRecordRequest;

typedef struct
{
  char *task_id;   /* free with sy_record_result_clear */
  gint64 revision;
  gint64 clash;    /* 0, or another revision with the same base */
  SyHead head;
  SyVerdict verdict;
} SyRecordResult;
void sy_record_result_clear (SyRecordResult *result);

/**
 * sy_ledger_record:
 * Assesses the document (as a record, with spread and remedies), then appends the revision; adopts the desk's
 * policy in the journal first when it is not the one in force. A base that is not the latest is kept as a clash.
 * Facts of another kind than the item has are refused. Retries when another program wrote in between.
 */
gboolean sy_ledger_record (SyLedger *ledger, SyDesk *desk, const SyRecordRequest *request,
                           const char *facts, gsize length, SyProblems *problems,
                           SyRecordResult *result, GError **error);

/* A revision as stored. */
typedef struct
{
  SyEvent *event;
  guint64 number; /* line of the journal */
  SyHash hash;
} SyRevision;
void sy_revision_free (SyRevision *revision);

/* Oldest first; new array that frees its elements. @task: id, or name as sy_store_find() takes it. */
GPtrArray *sy_ledger_history (SyLedger *ledger, const char *task, const char *item_kind, GError **error);
GPtrArray *sy_ledger_tasks (SyLedger *ledger, const SyTaskFilter *filter, GError **error);
GPtrArray *sy_ledger_changed_since (SyLedger *ledger, guint64 number, GError **error);
gboolean sy_ledger_head (SyLedger *ledger, SyHead *head, GError **error);

/* Files that belong to an item: a certificate, a drawing, a photograph. They are in the journal, whole. */

#define SY_ATTACHMENT_MAX (16u * 1024u * 1024u) /* bytes of content (our choice) */

typedef struct
{
  const char *item;            /* id, or name as sy_store_find() takes it          */
  const char *item_kind;       /* NULL: any                                        */
  const char *name;            /* of the file, without folders; at most 255 bytes  */
  const char *by, *role, *why; /* by and why must not be empty; role may be NULL   */
  const char *now;             /* RFC 3339                                         */
  gboolean clock_set;
} SyAttachRequest;

/* One attachment as it stands in the journal, without its content. */
typedef struct
{
  char *item;     /* id                                           */
  char *name;     /* of the file                                  */
  char *media;    /* "application/pdf"; by the name's ending      */
  guint64 bytes;
  char *sha256;   /* of the content, 64 hex digits                */
  char *when;     /* as claimed                                   */
  char *by, *role, *why;
  guint64 line;   /* of the journal                               */
  SyHash hash;    /* of that line                                 */
} SyAttachment;
void sy_attachment_free (SyAttachment *attachment); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyAttachment, sy_attachment_free)

/* Adds a file to an item, which it leaves as it is. A name may be used again: the item then has both. Retries when
   another program wrote in between. Return value: new; NULL with the error. */
SyAttachment *sy_ledger_attach (SyLedger *ledger, const SyAttachRequest *request, GBytes *content,
                                GError **error);

/* Oldest first; new array of SyAttachment that frees its elements. */
GPtrArray *sy_ledger_attachments (SyLedger *ledger, const char *item, const char *item_kind, GError **error);

/**
 * sy_ledger_attachment_content:
 * Parameters:   name  of the file; the latest where several have it.
 *               line  its line of the journal, 0 for any.
 * Return value: the bytes, whose SHA-256 has been held against the record's; NULL with the error.
 */
GBytes *sy_ledger_attachment_content (SyLedger *ledger, const char *item, const char *item_kind, const char *name,
                                      guint64 line, GError **error);

/* The time now, RFC 3339 UTC with seconds, or STEELYARD_CLOCK when it is set and valid (*clock_set TRUE).
   NULL with the error when the variable is set and is no such time. New string. */
char *sy_clock_now (gboolean *clock_set, GError **error);

/* Today as days since 1970: by STEELYARD_CLOCK when it is set, otherwise where the computer stands; NAN when the variable
   is set and is no such time. */
double sy_clock_today (void);

/* JSON, one object without newline: as `steelyard-cli tasks`, `history` and `attachments` print them.
   @today: as of which day, in days since 1970, it is said that a verdict no longer holds; NAN: it is not said. */
void sy_task_write_json (GString *out, const SyTask *task, double today);
void sy_revision_write_json (GString *out, const SyRevision *revision);
void sy_attachment_write_json (GString *out, const SyAttachment *attachment);

#endif
