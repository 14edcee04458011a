/* SPDX-License-Identifier: MIT */
#ifndef SY_QUANTITY_ENTRY_H
#define SY_QUANTITY_ENTRY_H

#include "sy-fact.h"

/*
 * A measure as typed: "55", "16 in", "12,5". Never changes what was typed; Up and Down step a number that can be
 * read, in the unit in which it was written.
 */
#define SY_TYPE_QUANTITY_ENTRY (sy_quantity_entry_get_type ())
G_DECLARE_FINAL_TYPE (SyQuantityEntry, sy_quantity_entry, SY, QUANTITY_ENTRY, GtkBox)

/* @field: static; its kind says which units are understood. */
GtkWidget *sy_quantity_entry_new (const SyField *field);

/* Makes it one of several beside one another under a caption that they share: @letter stands before it. */
void sy_quantity_entry_set_letter (SyQuantityEntry *entry, const char *letter);

/* What is typed, in the unit of the entry's unit system; @value only written on SY_TEXT_OK. */
SyTextStatus sy_quantity_entry_get_value (SyQuantityEntry *entry, double *value);
/* As the Up (+1) and Down (-1) keys do; FALSE: nothing to step, or it would leave the field's range. */
gboolean sy_quantity_entry_step (SyQuantityEntry *entry, int direction);

#endif
