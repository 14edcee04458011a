/* SPDX-License-Identifier: MIT */
#ifndef SY_PART_PAGE_H
#define SY_PART_PAGE_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * The page of facts inside facts: how the load of one step is moved, as it would be assessed alone, with its drawings, its result
 * and what would help. What is typed goes into the outer form at once, where it is saved, undone and kept as a draft.
 * Opens what stands inside in its turn. Signal "back": the person is done, or the facts went away.
 */
#define SY_TYPE_PART_PAGE (sy_part_page_get_type ())
G_DECLARE_FINAL_TYPE (SyPartPage, sy_part_page, SY, PART_PAGE, GtkBox)

/* @path: of facts that are given. NULL with the error set: they cannot be read. */
GtkWidget *sy_part_page_new (SyForm *outer, const char *path, GError **error);
SyForm *sy_part_page_get_form (SyPartPage *self);
/* Leaves the innermost page: "back" of this one or of what is open inside it. */
void sy_part_page_go_back (SyPartPage *self);
/* Puts the focus on the first fact. */
void sy_part_page_focus (SyPartPage *self);

#endif
