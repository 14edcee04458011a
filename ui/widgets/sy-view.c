/* SPDX-License-Identifier: MIT */
#include "sy-view.h"

#include "sy-style.h"

char *
sy_view_font (GtkWidget *widget, double scale)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  g_autoptr (PangoFontDescription) font
      = pango_font_description_copy (pango_context_get_font_description (context));
  int size = (int) (pango_font_description_get_size (font) * scale);

  if (pango_font_description_get_size_is_absolute (font))
    /* Descriptions as text are in points. */
    size = (int) (size * 72.0 / 96.0);
  pango_font_description_set_size (font, size);
  pango_font_description_unset_fields (font, PANGO_FONT_MASK_WEIGHT | PANGO_FONT_MASK_STYLE);
  return pango_font_description_to_string (font);
}

SyShape
sy_view_shape (SyVerdict verdict)
{
  switch (verdict)
    {
    case SY_VERDICT_BY_HAND:
    case SY_VERDICT_WITHIN_CAPACITY:
      return SY_SHAPE_LEVEL;
    case SY_VERDICT_IMPROVE:
      return SY_SHAPE_DOWN;
    case SY_VERDICT_INCOMPLETE:
      return SY_SHAPE_GAP;
    case SY_VERDICT_OUTSIDE:
      return SY_SHAPE_OUTSIDE;
    case SY_VERDICT_MECHANICAL:
      return SY_SHAPE_HOOK;
    case SY_VERDICT_DO_NOT_LIFT:
      return SY_SHAPE_HOOK_STRUCK;
    }
  g_return_val_if_reached (SY_SHAPE_GAP);
}

static void
draw_shape_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height,
               gpointer user_data G_GNUC_UNUSED)
{
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  SyVerdict verdict
      = (SyVerdict) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "sy-verdict"));
  double size = MIN (width, height);

  cairo_translate (cr, (width - size) / 2, (height - size) / 2);
  sy_drawing_shape (cr, size, sy_view_shape (verdict), &palette);
}

GtkWidget *
sy_shape_new (SyVerdict verdict, int size)
{
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role",
                                  GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), size);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), size);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_shape_cb, NULL, NULL);
  gtk_widget_set_valign (area, GTK_ALIGN_START);
  sy_shape_set (area, verdict);
  return area;
}

void
sy_shape_set (GtkWidget *shape, SyVerdict verdict)
{
  g_object_set_data (G_OBJECT (shape), "sy-verdict", GINT_TO_POINTER ((int) verdict));
  gtk_widget_queue_draw (shape);
}
