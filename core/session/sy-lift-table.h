/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_TABLE_H
#define SY_LIFT_TABLE_H

#include "sy-csv.h"
#include "sy-ledger-exchange.h"

/*
 * A table of lifts, one a line, as documents of the method `lift`. Its first line names the columns: "task", "units",
 * "method" and the paths of the method's fields ("load.heaviest", "origin.H"); lists of sessions are not among them.
 */
typedef struct SyLiftTable SyLiftTable;

/* @csv must outlive it. What is wrong with the first line is added to @bad (of SyBadCell). */
SyLiftTable *sy_lift_table_new (const SyCsv *csv, GPtrArray *bad);
void sy_lift_table_free (SyLiftTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyLiftTable, sy_lift_table_free)

/* The bytes of a file as a table; NULL with SY_LEDGER_ERROR_PROBLEMS. */
SyCsv *sy_lift_table_read (GBytes *bytes, GError **error);

/* The same of the lifts of one set: "label" too, no facts of a document ("place"), a name is not needed. */
SyLiftTable *sy_lift_table_new_of_set (const SyCsv *csv, GPtrArray *bad);
/* The row as a lift of a set, JSON; the cell of the column "units". New strings. */
char *sy_lift_table_lift (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad);
char *sy_lift_table_units (const SyLiftTable *table, const SyCsvRow *row);

/* Whether a row has anything in it; and as many cells as the first line, which is added to @bad when it has not. */
gboolean sy_lift_table_has (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad);

/* The cell of the column "task" without blanks around it, "" for none; new string. */
char *sy_lift_table_task (const SyLiftTable *table, const SyCsvRow *row);

/* The row as a facts document, JSON; new string. @bad receives what the document cannot say: another method. */
char *sy_lift_table_document (const SyLiftTable *table, const SyCsvRow *row, GPtrArray *bad);

/* Every problem of the row's document, told by line and column. */
void sy_lift_table_tell (const SyLiftTable *table, const SyCsvRow *row, const SyProblems *problems, GPtrArray *bad);

/* One of them, @path being that in the row ("origin.H"). */
void sy_lift_table_tell_one (const SyLiftTable *table, const SyCsvRow *row, const SyProblem *problem, const char *path,
                             GPtrArray *bad);

/* Adds one; @column NULL: the whole line. */
void sy_bad_cell_add (GPtrArray *bad, guint64 line, const char *column, const char *value, const char *allowed,
                      const char *unit);
void sy_bad_cell_free (gpointer cell);

#endif
