/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_ABOUT_H
#define SY_AUDIT_ABOUT_H

#include <gtk/gtk.h>

#include "sy-audit.h"

/* What is said of the register as a whole: the counts, the policies that what is in force was judged under, where the journal
   ended, in figures that can be copied, and what a day is here. */
#define SY_TYPE_AUDIT_ABOUT (sy_audit_about_get_type ())
G_DECLARE_FINAL_TYPE (SyAuditAbout, sy_audit_about, SY, AUDIT_ABOUT, GtkBox)

GtkWidget *sy_audit_about_new (void);
void sy_audit_about_set (SyAuditAbout *about, const SyAudit *audit);

/* What is said of one of its rows, and a button that leads to its history. */
#define SY_TYPE_AUDIT_CHOSEN (sy_audit_chosen_get_type ())
G_DECLARE_FINAL_TYPE (SyAuditChosen, sy_audit_chosen, SY, AUDIT_CHOSEN, GtkBox)

GtkWidget *sy_audit_chosen_new (void);
/* NULL: none, and nothing is shown. */
void sy_audit_chosen_set (SyAuditChosen *chosen, const SyAuditRow *row);

#endif
