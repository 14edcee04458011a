/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_PAGE_H
#define SY_AUDIT_PAGE_H

#include "sy-audit-list.h"
#include "sy-worker.h"

#include <gtk/gtk.h>

/*
 * The register as at a day: what was in force, under which policy, signed off by whom, what stood open and what was not
 * assessed. Any row leads to the history of its item ("win.open-history").
 * Widget actions: "audit.print", "audit.save" (as PDF; asks where).
 */
#define SY_TYPE_AUDIT_PAGE (sy_audit_page_get_type ())
G_DECLARE_FINAL_TYPE (SyAuditPage, sy_audit_page, SY, AUDIT_PAGE, GtkWidget)

GtkWidget *sy_audit_page_new (SyWorker *worker);
/* As typed; what is no day is said and changes nothing. */
void sy_audit_page_show_day (SyAuditPage *page, const char *day);
/* Of SyAuditItem. */
GListModel *sy_audit_page_get_rows (SyAuditPage *page);
/* "loading", "list", "empty", "no-match", "stopped" or "error". */
const char *sy_audit_page_get_state (SyAuditPage *page);
void sy_audit_page_select (SyAuditPage *page, guint position);
/* Writes what is shown as a PDF; says in the page how it went. */
gboolean sy_audit_page_write (SyAuditPage *page, const char *path);

#endif
