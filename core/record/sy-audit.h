/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_H
#define SY_AUDIT_H

#include "sy-deferring.h"
#include "sy-task.h"

/* The register as at a day: what was in force, what stands open, and what was not assessed. */

/* Why an item does not count as assessed and decided; several may hold. */
typedef enum
{
  SY_AUDIT_INCOMPLETE = 1 << 0, /* facts that the verdict needs were not given            */
  SY_AUDIT_OUTSIDE = 1 << 1,    /* the method excludes it: a competent person must assess */
  SY_AUDIT_UNSIGNED = 1 << 2,   /* the revision in force was signed off by nobody         */
  SY_AUDIT_CLASH = 1 << 3,      /* two revisions from one base, and none that settles it  */
  SY_AUDIT_EXPIRED = 1 << 4,    /* the day until which the verdict held is past           */
} SyAuditGap;
#define SY_N_AUDIT_GAPS 5
/* Those by which it is not assessed, or no longer. */
#define SY_AUDIT_NOT_ASSESSED (SY_AUDIT_INCOMPLETE | SY_AUDIT_OUTSIDE | SY_AUDIT_CLASH | SY_AUDIT_EXPIRED)
/* English, for translation: "The revision in force is not signed off." */
const char *sy_audit_gap_words (SyAuditGap gap);

typedef struct
{
  SyTask *task;
  guint gaps;              /* SyAuditGap                                                  */
  GPtrArray *reasons;      /* of char *, English, as stored: what was not given, asked or is excluded, whatever the verdict */
  char *competence;        /* of whoever signed off last, as typed; "" for none           */
  gboolean review_overdue, action_overdue; /* as of the day                               */
} SyAuditRow;

/* A policy under which something in force was judged. */
typedef struct
{
  char *policy;            /* "steelyard-default 2"                                       */
  char *loosened_because;  /* the written reason where its limits are looser than the program's own; "" */
} SyAuditPolicy;

typedef struct
{
  char *day;               /* "2026-11-26", UTC                                           */
  GPtrArray *rows;         /* of SyAuditRow: by kind (sy_item_kinds), each by name; those in use */
  GPtrArray *retired;      /* of SyAuditRow, likewise                                     */
  GPtrArray *policies;     /* of SyAuditPolicy, by name                                   */
  SyDeferring *deferring;  /* what results of the rows in use defer to: of the policies they were judged under */
  guint n_open;            /* actions open that day                                       */
  char *head_then, *head_now; /* of the journal, 64 hex digits; "" for an empty one       */
  guint64 lines_then, lines_now;
} SyAudit;

/* @tasks: of SyTask as at @day; their elements are taken out of it. */
SyAudit *sy_audit_new (GPtrArray *tasks, const char *day);
void sy_audit_free (SyAudit *audit); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyAudit, sy_audit_free)
/* How many of the rows in use have one of the gaps. */
guint sy_audit_count (const SyAudit *audit, guint gaps);

/* JSON, one object without newline: an item of the register. */
void sy_audit_row_write_json (GString *out, const SyAuditRow *row);

#endif
