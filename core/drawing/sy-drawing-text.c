/* SPDX-License-Identifier: MIT */
#include "sy-drawing-text.h"

#include <math.h>
#include <string.h>

#define DEFAULT_FONT "Sans 10"

/* Making one costs as much as laying a label out: a drawing keeps the one it has. */
static PangoContext *
context_of (cairo_t *cr)
{
  static const cairo_user_data_key_t key;
  PangoContext *context = cairo_get_user_data (cr, &key);

  if (context == NULL)
    {
      context = pango_cairo_create_context (cr);
      if (cairo_set_user_data (cr, &key, context, g_object_unref) != CAIRO_STATUS_SUCCESS)
        g_error ("out of memory");
    }
  else
    pango_cairo_update_context (cr, context);
  return context;
}

static PangoLayout *
lay_out (cairo_t *cr, const char *text, const char *font, bool bold)
{
  PangoLayout *layout = pango_layout_new (context_of (cr));
  PangoFontDescription *description
      = pango_font_description_from_string (font ? font : DEFAULT_FONT);
  PangoAttrList *attributes = pango_attr_list_new ();

  if (bold)
    pango_font_description_set_weight (description, PANGO_WEIGHT_BOLD);
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_font_description (layout, description);
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text ? text : "", -1);

  pango_attr_list_unref (attributes);
  pango_font_description_free (description);
  return layout;
}

static SyTextSize
measure_layout (PangoLayout *layout)
{
  PangoRectangle logical;
  double baseline = (double) pango_layout_get_baseline (layout) / PANGO_SCALE;

  pango_layout_get_extents (layout, NULL, &logical);
  return (SyTextSize) {
    .width = (double) logical.width / PANGO_SCALE,
    .ascent = baseline,
    .descent = (double) logical.height / PANGO_SCALE - baseline,
  };
}

SyTextSize
sy_text_measure (cairo_t *cr, const char *text, const char *font, bool bold)
{
  PangoLayout *layout = lay_out (cr, text, font, bold);
  SyTextSize size = measure_layout (layout);

  g_object_unref (layout);
  return size;
}

double
sy_text_draw (cairo_t *cr, double x, double baseline, double alignment, const char *text,
              const char *font, bool bold)
{
  PangoLayout *layout = lay_out (cr, text, font, bold);
  SyTextSize size = measure_layout (layout);

  cairo_save (cr);
  cairo_move_to (cr, x - alignment * size.width, baseline - size.ascent);
  pango_cairo_show_layout (cr, layout);
  cairo_restore (cr);
  g_object_unref (layout);
  return size.width;
}

void
sy_text_draw_within (cairo_t *cr, double x, double baseline, double width, const char *text,
                     const char *font, bool bold)
{
  PangoLayout *layout = lay_out (cr, text, font, bold);
  SyTextSize size = measure_layout (layout);

  if (size.width > width)
    {
      pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_MIDDLE);
    }
  cairo_save (cr);
  cairo_move_to (cr, x, baseline - size.ascent);
  pango_cairo_show_layout (cr, layout);
  cairo_restore (cr);
  g_object_unref (layout);
}

double
sy_drawing_text (cairo_t *cr, double x, double baseline, double alignment, const char *text,
                 const char *font)
{
  return sy_text_draw (cr, x, baseline, alignment, text, font, false);
}

void
sy_text_number (double value, double other, char buffer[SY_TEXT_NUMBER_MAX])
{
  static const char *const formats[] = { "%.1f", "%.2f", "%.3f", "%.4f" };
  char beside[SY_TEXT_NUMBER_MAX];

  for (size_t i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (buffer, SY_TEXT_NUMBER_MAX, fabs (value) < 1e9 ? formats[i] : "%.3g", value);
      g_ascii_formatd (beside, sizeof beside, fabs (other) < 1e9 ? formats[i] : "%.3g", other);
      if (value == other || strcmp (buffer, beside) != 0)
        return;
    }
}

SyColour
sy_colour_tone (const SyPalette *palette, double part)
{
  return (SyColour) {
    palette->paper.red + part * (palette->ink.red - palette->paper.red),
    palette->paper.green + part * (palette->ink.green - palette->paper.green),
    palette->paper.blue + part * (palette->ink.blue - palette->paper.blue),
  };
}
