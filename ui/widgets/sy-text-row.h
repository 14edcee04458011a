/* SPDX-License-Identifier: MIT */
#ifndef SY_TEXT_ROW_H
#define SY_TEXT_ROW_H

#include "sy-fact.h"

/* A fact in words, or a date. */
#define SY_TYPE_TEXT_ROW (sy_text_row_get_type ())
G_DECLARE_FINAL_TYPE (SyTextRow, sy_text_row, SY, TEXT_ROW, GtkBox)

GtkWidget *sy_text_row_new (const SyField *field); /* @field: static */

#endif
