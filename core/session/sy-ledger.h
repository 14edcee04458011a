/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_H
#define SY_LEDGER_H

#include "sy-desk.h"
#include "sy-store.h"

/* The record, as both doors use it. Belongs to the thread that opened it (asserted). */
typedef struct SyLedger SyLedger;

SyLedger *sy_ledger_open (const char *uri, GError **error);
void sy_ledger_close (SyLedger *ledger);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyLedger, sy_ledger_close)

#define SY_LEDGER_ERROR (sy_ledger_error_quark ())
GQuark sy_ledger_error_quark (void);
typedef enum
{
  SY_LEDGER_ERROR_PROBLEMS, /* the facts have problems: see the report      */
  SY_LEDGER_ERROR_MISSING,  /* by, why or name empty                        */
  SY_LEDGER_ERROR_BASE,     /* no such base revision                        */
  SY_LEDGER_ERROR_NAME,     /* another task has that name                   */
  SY_LEDGER_ERROR_CLOCK,    /* STEELYARD_CLOCK is no time                     */
} SyLedgerError;

/* Author and clock are given by the caller. */
typedef struct
{
  const char *task;    /* id or name; a name that is not there begins a task               */
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
 * Retries when another program wrote in between.
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

/* Oldest first; new array that frees its elements. */
GPtrArray *sy_ledger_history (SyLedger *ledger, const char *task, GError **error);
GPtrArray *sy_ledger_tasks (SyLedger *ledger, const SyTaskFilter *filter, GError **error);
GPtrArray *sy_ledger_changed_since (SyLedger *ledger, guint64 number, GError **error);
gboolean sy_ledger_head (SyLedger *ledger, SyHead *head, GError **error);

/* The time now, RFC 3339 UTC with seconds, or STEELYARD_CLOCK when it is set and valid (*clock_set TRUE).
   NULL with the error when the variable is set and is no such time. New string. */
char *sy_clock_now (gboolean *clock_set, GError **error);

/* Today as days since 1970: by STEELYARD_CLOCK when it is set, otherwise where the computer stands; NAN when the variable
   is set and is no such time. */
double sy_clock_today (void);

/* JSON, one object without newline: as `steelyard-cli tasks` and `history` print them. */
void sy_task_write_json (GString *out, const SyTask *task);
void sy_revision_write_json (GString *out, const SyRevision *revision);

#endif
