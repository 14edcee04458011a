/* SPDX-License-Identifier: MIT */
#ifndef SY_LIMITS_PAGE_H
#define SY_LIMITS_PAGE_H

#include <gtk/gtk.h>

#include "sy-desk.h"

/* The policy in force and the methods, in words, each figure with its source. To be read, not changed, here; but for the
   region in which the record is opened the next time. */
#define SY_TYPE_LIMITS_PAGE (sy_limits_page_get_type ())
G_DECLARE_FINAL_TYPE (SyLimitsPage, sy_limits_page, SY, LIMITS_PAGE, GtkWidget)

GtkWidget *sy_limits_page_new (SyDesk *desk, SyUnits units);
void sy_limits_page_set_units (SyLimitsPage *page, SyUnits units);

#endif
