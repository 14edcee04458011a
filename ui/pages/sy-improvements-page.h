/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENTS_PAGE_H
#define SY_IMPROVEMENTS_PAGE_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/*
 * The improvement log: what was put to work by whose idea, and what it bought, all together, by quarter and each. An improvement
 * is withdrawn here; it is added where its two assessments are: in a comparison, or in an item's follow-up. A row leads to the
 * comparison of the two ("win.compare-both").
 * Widget actions: "improvements.print", "improvements.save" (as PDF; asks where).
 */
#define SY_TYPE_IMPROVEMENTS_PAGE (sy_improvements_page_get_type ())
G_DECLARE_FINAL_TYPE (SyImprovementsPage, sy_improvements_page, SY, IMPROVEMENTS_PAGE, GtkWidget)

GtkWidget *sy_improvements_page_new (SyWorker *worker);
/* Of SyImprovementRow. */
GListModel *sy_improvements_page_get_rows (SyImprovementsPage *page);
/* "loading", "list", "empty", "no-match" or "error". */
const char *sy_improvements_page_get_state (SyImprovementsPage *page);
void sy_improvements_page_set_search (SyImprovementsPage *page, const char *search);
void sy_improvements_page_select (SyImprovementsPage *page, guint position);
/* Writes the log as a PDF; says in the page how it went. FALSE also while there is nothing to write. */
gboolean sy_improvements_page_write (SyImprovementsPage *page, const char *path);

#endif
