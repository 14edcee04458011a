/* SPDX-License-Identifier: MIT */
#ifndef SY_BESIDE_VIEW_H
#define SY_BESIDE_VIEW_H

#include <gtk/gtk.h>

#include "sy-beside.h"

/* The head of one side: verdict with its shape, the index on its arm, both in words. */
GtkWidget *sy_beside_head_new (const SyBesideSide *side);
/* What changed, what it bought, limits, reasons, and what is to be known to read it: tables in the words of @beside, which is in
   the language of the screen. */
GtkWidget *sy_beside_view_new (const SyBeside *beside);

#endif
