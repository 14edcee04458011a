/* SPDX-License-Identifier: MIT */
#ifndef SY_PROSE_ROW_H
#define SY_PROSE_ROW_H

#include "sy-fact.h"

/* A fact in words that may take several lines; Tab leads on to the next fact. */
#define SY_TYPE_PROSE_ROW (sy_prose_row_get_type ())
G_DECLARE_FINAL_TYPE (SyProseRow, sy_prose_row, SY, PROSE_ROW, GtkBox)

GtkWidget *sy_prose_row_new (const SyField *field); /* @field: static */

#endif
