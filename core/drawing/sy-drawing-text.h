/* SPDX-License-Identifier: MIT */
#ifndef SY_DRAWING_TEXT_H
#define SY_DRAWING_TEXT_H

#include <stdbool.h>

#include "sy-drawing.h"

/* Text for the drawings of this room: one line each, tabular figures. */

/* How far a line of text reaches; the baseline is at 0. */
typedef struct
{
  double width, ascent, descent;
} SyTextSize;

SyTextSize sy_text_measure (cairo_t *cr, const char *text, const char *font, bool bold);

/* As sy_drawing_text, with the choice of weight. */
double sy_text_draw (cairo_t *cr, double x, double baseline, double alignment, const char *text,
                     const char *font, bool bold);

/* From x on, in at most @width: what does not fit ends in an ellipsis. */
void sy_text_draw_within (cairo_t *cr, double x, double baseline, double width, const char *text,
                          const char *font, bool bold);

/**
 * sy_text_number:
 * A value for reading, as many decimals as it takes (1 to 4) not to look like @other when it is
 * not.
 */
#define SY_TEXT_NUMBER_MAX 32
void sy_text_number (double value, double other, char buffer[SY_TEXT_NUMBER_MAX]);

/* @part of the ink over the paper, opaque. */
SyColour sy_colour_tone (const SyPalette *palette, double part);

#endif
