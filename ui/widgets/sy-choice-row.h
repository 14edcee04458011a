/* SPDX-License-Identifier: MIT */
#ifndef SY_CHOICE_ROW_H
#define SY_CHOICE_ROW_H

#include "sy-fact.h"

/* One of several choices, or yes and no. The first line stands for "nothing chosen": no choice is made by itself. */
#define SY_TYPE_CHOICE_ROW (sy_choice_row_get_type ())
G_DECLARE_FINAL_TYPE (SyChoiceRow, sy_choice_row, SY, CHOICE_ROW, GtkBox)

GtkWidget *sy_choice_row_new (const SyField *field); /* @field: static */

#endif
