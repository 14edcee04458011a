/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_PAGE_PRIVATE_H
#define SY_AUDIT_PAGE_PRIVATE_H

#include "sy-audit-page.h"

struct _SyAuditPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyAuditList *rows;
  GtkSingleSelection *selection;
  char *day;   /* that is shown, or asked for                 */
  char *made;  /* when what is shown was read, RFC 3339; NULL */
  GError *failed; /* why nothing is shown                     */
  gboolean asking, is_stale;
  GtkWidget *box, *entry, *listed, *paper, *message, *progress, *about, *states, *view, *error_words, *retry, *chosen;
};

/* sy-audit-page.c */
/* Reads the day that is typed; asks for the one that was; says what there is to be seen. */
void sy_audit_page_show_typed (SyAuditPage *self);
void sy_audit_page_ask (SyAuditPage *self);
void sy_audit_page_update (SyAuditPage *self);

/* sy-audit-page-layout.c: what stands where */
void sy_audit_page_build (SyAuditPage *self);

#endif
