/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_EXCHANGE_H
#define SY_LEDGER_EXCHANGE_H

#include "sy-ledger.h"

/* From record to record, and to and from a spreadsheet. Everything is whole or nothing; progress may stop it
   (SY_STORE_ERROR_STOPPED). */

#define SY_BUNDLE_MAX (1024u * 1024u * 1024u) /* bytes (our choice) */
#define SY_CSV_MAX (64u * 1024u * 1024u)      /* bytes (our choice) */

/**
 * sy_ledger_export:
 * The journal as a JSON bundle: the hash of every line, and the contents of those about @items and of the policies that
 * these were judged under.
 * Parameters:   items  ids or names, NULL-terminated; NULL: the contents of every line.
 * Return value: new bytes, UTF-8; NULL with the error.
 */
GBytes *sy_ledger_export (SyLedger *ledger, const char *const *items, SyProgressFunc progress, gpointer user_data,
                          GError **error);

typedef struct
{
  const char *by, *role, *why; /* by NULL: "import"; why NULL: the name of the bundle's record is not known */
  const char *now;
  gboolean clock_set;
  gboolean dry_run;            /* looks at everything and writes nothing */
} SyImportRequest;

typedef struct
{
  guint64 added;         /* lines that were (dry run: would be) taken over, the policies' too     */
  guint64 known;         /* that were here already                                                */
  guint64 hashes_only;   /* of which the bundle has no contents                                   */
  guint64 left;          /* that say what the other record took over itself: they stay there      */
  GPtrArray *conflicts;  /* of char *, English: what is now there twice, and under which numbers  */
  SyHead bundle_head, head;
} SyImportReport;
void sy_import_report_clear (SyImportReport *report);

/**
 * sy_ledger_import:
 * Takes over what a bundle has and this record has not. A bundle that does not verify is refused whole; one whose lines are
 * all known changes nothing. Revisions that both records made from one base are kept both: the one that comes gets the next
 * number, with its origin, and the item shows the clash.
 * Errors: SY_LEDGER_ERROR_BUNDLE, SY_LEDGER_ERROR_MISSING for the request, those of the store.
 */
gboolean sy_ledger_import (SyLedger *ledger, GBytes *bundle, const SyImportRequest *request, SyProgressFunc progress,
                           gpointer user_data, SyImportReport *out, GError **error);

/* The findings of the items that a filter lets through, a line each, for a spreadsheet: UTF-8 with a byte order mark, CRLF
   (RFC 4180); a text that a spreadsheet would take for a formula begins with an apostrophe. */
GBytes *sy_ledger_export_csv (SyLedger *ledger, const SyTaskFilter *filter, SyProgressFunc progress, gpointer user_data,
                              GError **error);

/* One cell of a table that cannot be taken. */
typedef struct
{
  guint64 line;    /* of the file, from 1                         */
  char *column;    /* as the file's first line calls it           */
  char *value;     /* what stands there                           */
  char *allowed, *unit;
} SyBadCell;

typedef struct
{
  guint64 rows;         /* lifts in the file                                                          */
  guint64 begun, revised; /* tasks that the good rows begin and revise (dry run and bad cells: would)   */
  guint64 added;        /* tasks begun or revised; 0 for a dry run and when there is a bad cell       */
  guint64 by_verdict[SY_N_VERDICTS]; /* of the good rows                                              */
  GPtrArray *bad;       /* of SyBadCell, in the order of the file; every one, not only the first      */
  SyHead head;
} SyLiftsReport;
void sy_lifts_report_clear (SyLiftsReport *report);

/* Many lifts from a table, one a line; docs/records.md has its columns. Nothing is recorded while one cell is bad. */
gboolean sy_ledger_import_lifts (SyLedger *ledger, SyDesk *desk, GBytes *csv, const SyImportRequest *request,
                                 SyProgressFunc progress, gpointer user_data, SyLiftsReport *out, GError **error);

#endif
