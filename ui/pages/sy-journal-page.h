/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_PAGE_H
#define SY_JOURNAL_PAGE_H

#include "sy-journal-list.h"
#include "sy-task-list.h"

#include <gtk/gtk.h>

/*
 * The journal, newest line first: who did what, when and why, narrowed by person, kind, day and item; whether it holds; and
 * which policy is in force. A line leads to its item ("win.open-history"), a policy's to the policy's text.
 */
#define SY_TYPE_JOURNAL_PAGE (sy_journal_page_get_type ())
G_DECLARE_FINAL_TYPE (SyJournalPage, sy_journal_page, SY, JOURNAL_PAGE, GtkWidget)

GtkWidget *sy_journal_page_new (SyWorker *worker, SyTaskList *list);
GListModel *sy_journal_page_get_lines (SyJournalPage *page);
/* "loading", "list", "empty", "no-match" or "error". */
const char *sy_journal_page_get_state (SyJournalPage *page);
/* Selects a line and brings it into view; the filters go where they hide it. FALSE: there is no such line. */
gboolean sy_journal_page_go_to (SyJournalPage *page, guint64 number);

#endif
