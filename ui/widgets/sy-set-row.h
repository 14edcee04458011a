/* SPDX-License-Identifier: MIT */
#ifndef SY_SET_ROW_H
#define SY_SET_ROW_H

#include "sy-fact.h"

/* Any of several choices, each asked about. That none applies is said with a check of its own: an unchecked list only
   says that nobody asked. */
#define SY_TYPE_SET_ROW (sy_set_row_get_type ())
G_DECLARE_FINAL_TYPE (SySetRow, sy_set_row, SY, SET_ROW, GtkBox)

GtkWidget *sy_set_row_new (const SyField *field); /* @field: static */

/* Things that are ticked as they are done: there is no "none of these applies", and what is open is said. */
void sy_set_row_make_checklist (SySetRow *row);

/* Some of the choices are asked for: they come first, each with why. @words: one a choice, NULL where it is not; NULL: none is. */
void sy_set_row_ask (SySetRow *row, const char *const *words);

/* The check button of a choice; "-" for "none of these applies". */
GtkWidget *sy_set_row_get_check (SySetRow *row, const char *id);

#endif
