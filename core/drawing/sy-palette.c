/* SPDX-License-Identifier: MIT */
#include "sy-palette.h"

#define CHANNEL(hex, shift) ((((hex) >> (shift)) & 0xff) / 255.0)
#define COLOUR(hex) { CHANNEL (hex, 16), CHANNEL (hex, 8), CHANNEL (hex, 0) }

/* The light set of the style sheet: ink on white would be harder on the eye and saves nothing. */
const SyPalette sy_palette_paper = {
  .paper = COLOUR (0xfbfaf6),
  .ink = COLOUR (0x1d2b44),
  .hairline = COLOUR (0xc9c6bb),
  .accent = COLOUR (0x8a6a1f),
  .warning = COLOUR (0xa63c14),
};

void
sy_palette_use (cairo_t *cr, const SyColour *colour, double alpha)
{
  cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue, alpha);
}
