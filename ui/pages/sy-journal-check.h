/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_CHECK_H
#define SY_JOURNAL_CHECK_H

#include <gtk/gtk.h>

#include "sy-worker-journal.h"

/*
 * Verifying the journal, against a head from a sheet where there is one, and making its lists anew; what came of it stays in
 * words until the next.
 * Signal "found" (uint64): what was found wrong is at that line.
 */
#define SY_TYPE_JOURNAL_CHECK (sy_journal_check_get_type ())
G_DECLARE_FINAL_TYPE (SyJournalCheck, sy_journal_check, SY, JOURNAL_CHECK, GtkBox)

GtkWidget *sy_journal_check_new (SyWorker *worker);
/* What is in the entry for a head. */
void sy_journal_check_set_head (SyJournalCheck *check, const char *text);
void sy_journal_check_verify (SyJournalCheck *check);
void sy_journal_check_rebuild (SyJournalCheck *check);
gboolean sy_journal_check_is_busy (SyJournalCheck *check);
/* What was found, or what is wrong with the head; "" at first. */
const char *sy_journal_check_get_words (SyJournalCheck *check);

#endif
