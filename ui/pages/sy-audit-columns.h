/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_COLUMNS_H
#define SY_AUDIT_COLUMNS_H

#include <gtk/gtk.h>

/* The columns of a view of SyAuditItem: what it is, its verdict with its shape, who made and signed it, what is due, and why
   it is not assessed. What does not fit is in the tooltip, whole. */
void sy_audit_columns_add (GtkColumnView *view);

#endif
