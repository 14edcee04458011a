/* SPDX-License-Identifier: MIT */
#ifndef SY_SEVERAL_ROW_H
#define SY_SEVERAL_ROW_H

#include "sy-fact.h"

/*
 * One or several texts, or one or several vectors, under one caption: a row each that can be added and taken away. Where
 * there can be two texts at most, both have their entry from the start.
 */
#define SY_TYPE_SEVERAL_ROW (sy_several_row_get_type ())
G_DECLARE_FINAL_TYPE (SySeveralRow, sy_several_row, SY, SEVERAL_ROW, GtkBox)

/* @field: of texts or vectors. */
GtkWidget *sy_several_row_new (const SyField *field);

#endif
