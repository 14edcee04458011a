/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_SET_TABLE_H
#define SY_LIFT_SET_TABLE_H

#include "sy-desk.h"
#include "sy-ledger-exchange.h"

/* A table of lifts as one document of the method `lift-set`. */

typedef struct
{
  const char *combine;  /* "variable", "composite", "sequence"; NULL: variable                                    */
  const char *duration; /* "short", "moderate", "long" of the whole; NULL: left out                               */
  double frequency;     /* lifts a minute of all together, where no line says its own (variable); NAN: left out   */
  SyUnits units;        /* of a table without a column "units"                                                    */
} SyLiftSetRequest;

/**
 * sy_lift_table_set:
 * Each line of the table becomes a lift. The first line names the columns as for sy_ledger_import_lifts, but for facts that a
 * lift of a set has not (place, notes …); "task" or "label" is its name and may be left out; "share" of a sequence; "units"
 * must be the same on every line.
 * Parameters:   csv  the file's bytes, at most SY_CSV_MAX.
 *               bad  receives an array of SyBadCell, in the order of the file, empty when every cell is sound; free with
 *                    g_ptr_array_unref. Untouched with an error. Not NULL.
 * Return value: the document, JSON, new string; what the set as a whole still lacks (its duration) is not looked at. NULL
 *               where a cell is bad, or with SY_LEDGER_ERROR_PROBLEMS where it is no table or has no lift.
 * Special considerations: any thread; needs no record.
 */
char *sy_lift_table_set (SyDesk *desk, GBytes *csv, const SyLiftSetRequest *request, GPtrArray **bad, GError **error);

#endif
