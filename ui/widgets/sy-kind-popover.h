/* SPDX-License-Identifier: MIT */
#ifndef SY_KIND_POPOVER_H
#define SY_KIND_POPOVER_H

#include <gtk/gtk.h>

#include "sy-field.h"

/*
 * The choices of a field to pick one of: a line in which typing narrows them down, and the list of what is left. Return takes the
 * first, the arrow keys and Return another, Escape none. Signal "picked" (string: id).
 */
#define SY_TYPE_KIND_POPOVER (sy_kind_popover_get_type ())
G_DECLARE_FINAL_TYPE (SyKindPopover, sy_kind_popover, SY, KIND_POPOVER, GtkPopover)

/* @field: a choice, static. @name: translated, what is asked. */
GtkWidget *sy_kind_popover_new (const SyField *field, const char *name);
/* Shows it by a widget, with every choice. @at: a descendant of its parent. */
void sy_kind_popover_ask (SyKindPopover *self, GtkWidget *at);

#endif
