/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_LINE_H
#define SY_JOURNAL_LINE_H

#include <gio/gio.h>

#include "sy-store.h"

/*
 * One line of the journal in a list: its number at once, the rest when it was read.
 * Property: "row" (pointer, SyJournalRow; NULL until it is known), read-only; notifies when it is known and when it changed.
 */
#define SY_TYPE_JOURNAL_LINE (sy_journal_line_get_type ())
G_DECLARE_FINAL_TYPE (SyJournalLine, sy_journal_line, SY, JOURNAL_LINE, GObject)

SyJournalLine *sy_journal_line_new (guint64 number);
guint64 sy_journal_line_get_number (SyJournalLine *line);
const SyJournalRow *sy_journal_line_get_row (SyJournalLine *line);
/* Takes @row, which has the line's number. */
void sy_journal_line_take_row (SyJournalLine *line, SyJournalRow *row);

/* What the columns say, translated; new strings. */
const char *sy_journal_kind_words (SyEventKind kind); /* "Revision", "Signed off" … */
char *sy_journal_row_when (const SyJournalRow *row);  /* "2026-03-01 09:00"; "2026-03-01 09:00 (set)": not by the computer's clock */
char *sy_journal_row_who (const SyJournalRow *row);   /* "R. Example (safety lead)"   */
char *sy_journal_row_what (const SyJournalRow *row);  /* "3: Improve the task", "Action opened: fit a stop" */

#endif
