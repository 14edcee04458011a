/* SPDX-License-Identifier: MIT */
#ifndef SY_NEW_PAGE_H
#define SY_NEW_PAGE_H

#include <gtk/gtk.h>

/*
 * What can be begun: a button a method with a sentence that says when to take it; one lift first. A button asks its window
 * for "win.new-item" (s: method).
 */
#define SY_TYPE_NEW_PAGE (sy_new_page_get_type ())
G_DECLARE_FINAL_TYPE (SyNewPage, sy_new_page, SY, NEW_PAGE, GtkWidget)

GtkWidget *sy_new_page_new (void);

#endif
