/* SPDX-License-Identifier: MIT */
#ifndef SY_PALETTE_H
#define SY_PALETTE_H

#include <cairo.h>

/* Colours of a drawing: the screen takes them from its style sheet, paper from sy_palette_paper. */
typedef struct
{
  double red, green, blue;
} SyColour;

typedef struct
{
  SyColour paper, ink, hairline, accent, warning; /* #fbfaf6 #1d2b44 #c9c6bb #8a6a1f #a63c14 */
} SyPalette;

extern const SyPalette sy_palette_paper;
void sy_palette_use (cairo_t *cr, const SyColour *colour, double alpha);

#endif
