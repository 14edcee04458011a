/* SPDX-License-Identifier: MIT */
#ifndef SY_PART_ROW_H
#define SY_PART_ROW_H

#include "sy-fact.h"

/*
 * Facts inside facts as one line of a form: by which method they are assessed and what it says of them, or that there are none
 * yet. They are typed on a page of their own: the row activates the action "task.open-part" (s: path) for it. Begun with
 * a method of those that may stand there, those that the kind of its step suggests first; or copied from elsewhere in the form, or
 * taken from an item of the record: for that it activates "task.take-part" (ss: path, kind of item). Taken away with a button.
 * All of it can be undone.
 */
#define SY_TYPE_PART_ROW (sy_part_row_get_type ())
G_DECLARE_FINAL_TYPE (SyPartRow, sy_part_row, SY, PART_ROW, GtkBox)

GtkWidget *sy_part_row_new (const SyField *field);

#endif
