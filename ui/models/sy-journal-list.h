/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_LIST_H
#define SY_JOURNAL_LIST_H

#include "sy-journal-line.h"
#include "sy-worker-journal.h"

/*
 * The lines of the journal that a filter lets through, newest first: a GListModel of SyJournalLine that knows how many there
 * are as soon as the worker has answered, and reads what is looked at, a page at a time. A line stays the same object as long
 * as somebody holds it; new lines come in at the top and nothing else moves. Asks anew when the worker has "changed" and when
 * it is told to.
 *
 * Properties: "loading" (bool, until the filter has been answered), "error" (string, NULL while the store answers).
 */
#define SY_TYPE_JOURNAL_LIST (sy_journal_list_get_type ())
G_DECLARE_FINAL_TYPE (SyJournalList, sy_journal_list, SY, JOURNAL_LIST, GObject)

SyJournalList *sy_journal_list_new (SyWorker *worker);
/* @filter is copied; NULL: every line. What was shown stays until the answer. */
void sy_journal_list_set_filter (SyJournalList *list, const SyJournalFilter *filter);
gboolean sy_journal_list_is_filtered (SyJournalList *list);
/* Asks now whether there is more, e.g. what another program wrote. */
void sy_journal_list_refresh (SyJournalList *list);
gboolean sy_journal_list_get_loading (SyJournalList *list);
const char *sy_journal_list_get_error (SyJournalList *list);
/* Lines of the journal, whatever the filter. */
guint64 sy_journal_list_get_total (SyJournalList *list);
/* Where a line stands; FALSE: the filter does not let it through, or there is none. */
gboolean sy_journal_list_find (SyJournalList *list, guint64 number, guint *position);

#endif
