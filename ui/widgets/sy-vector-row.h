/* SPDX-License-Identifier: MIT */
#ifndef SY_VECTOR_ROW_H
#define SY_VECTOR_ROW_H

#include "sy-fact.h"

/* Three coordinates beside one another under one caption, each a quantity entry. Is bound to the path of a vector
   ("cg") or of an item of a list of vectors ("bodies[0].at[1]"). */
#define SY_TYPE_VECTOR_ROW (sy_vector_row_get_type ())
G_DECLARE_FINAL_TYPE (SyVectorRow, sy_vector_row, SY, VECTOR_ROW, GtkBox)

GtkWidget *sy_vector_row_new (const SyField *field);

#endif
