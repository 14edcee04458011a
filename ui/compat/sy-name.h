/* SPDX-License-Identifier: MIT */
#ifndef SY_NAME_H
#define SY_NAME_H

#include <gtk/gtk.h>

/* Names a control for assistive technology, and what inside it takes the focus: in GTK 4.8 a drop-down and a menu
   button are named in vain as long as the button inside them is not. */
void sy_name (GtkWidget *widget, const char *name);

/* A button with a mnemonic ("_Save…"), named without the underscore, which GTK 4.8 would have read out. */
GtkWidget *sy_button_new (const char *mnemonic_label, const char *action);

/* Shows that what stands in an entry will not do, and says so to assistive technology; or takes that back. */
void sy_mark_wrong (GtkWidget *entry, gboolean is_wrong);

#endif
