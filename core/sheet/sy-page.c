/* SPDX-License-Identifier: MIT */
#include "sy-page.h"

#define TICK 8.5       /* side of a box to tick */
#define BASELINE 0.68  /* of a row              */

void
sy_page_begin (SyPage *page, cairo_t *cr, SyTranslate translate, double left, double right,
               double top)
{
  *page = (SyPage) { .cr = cr, .translate = translate, .palette = sy_palette_paper,
                     .left = left, .right = right, .y = top };
  /* The sheet of paper is there already: no tint is printed. */
  page->palette.paper = (SyColour) { 1, 1, 1 };
}

const char *
sy_page_words (const SyPage *page, const char *msgid)
{
  return page->translate ? page->translate (msgid) : msgid;
}

/* px in a font description is a unit of the page: points here, whatever the screen's resolution. Made once. */
static const PangoFontDescription *
font_of (SyPageType type)
{
  static const char *const names[SY_N_PAGE_TYPES] = {
    [SY_TYPE_TITLE] = "Sans Bold 15px",     [SY_TYPE_HEADING] = "Sans Bold 10px",
    [SY_TYPE_BODY] = "Sans 8.8px",          [SY_TYPE_STRONG] = "Sans Bold 8.8px",
    [SY_TYPE_NOTE] = "Sans 8px",            [SY_TYPE_NOTE_STRONG] = "Sans Bold 8px",
    [SY_TYPE_POSTER] = "Sans Bold 36px",    [SY_TYPE_LARGE] = "Sans Bold 20px",
    [SY_TYPE_CARD] = "Sans 10.5px",         [SY_TYPE_CARD_STRONG] = "Sans Bold 10.5px",
    [SY_TYPE_FINE] = "Sans 6.4px",
  };
  static PangoFontDescription *fonts[SY_N_PAGE_TYPES];

  if (g_once_init_enter (&fonts[type]))
    g_once_init_leave (&fonts[type], pango_font_description_from_string (names[type]));
  return fonts[type];
}

static void
use_plain_metrics (PangoContext *context)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  /* Screen and paper break lines in the same places. */
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
}

PangoContext *
sy_page_context_new (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());

  use_plain_metrics (context);
  return context;
}

PangoLayout *
sy_page_layout (SyPage *page, const char *words, SyPageType type, double width)
{
  PangoLayout *layout = page->context != NULL ? pango_layout_new (page->context) : pango_cairo_create_layout (page->cr);

  if (page->context == NULL)
    {
      use_plain_metrics (pango_layout_get_context (layout));
      pango_layout_context_changed (layout);
    }
  pango_layout_set_font_description (layout, font_of (type));
  pango_layout_set_text (layout, words, -1);
  if (width > 0)
    {
      pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    }
  return layout;
}

static double
show (SyPage *page, PangoLayout *layout, double x, double top)
{
  sy_palette_use (page->cr, &page->palette.ink, 1);
  cairo_move_to (page->cr, x, top);
  pango_cairo_show_layout (page->cr, layout);
  cairo_new_path (page->cr);
  return top;
}

static void
measure (PangoLayout *layout, double *width, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

double
sy_page_line (SyPage *page, double x, double baseline, double alignment, const char *words,
              SyPageType type)
{
  g_autoptr (PangoLayout) layout = sy_page_layout (page, words, type, 0);
  double width, height;

  measure (layout, &width, &height);
  show (page, layout, x - alignment * width,
        baseline - (double) pango_layout_get_baseline (layout) / PANGO_SCALE);
  return width;
}

double
sy_page_paragraph (SyPage *page, double x, double top, double width, const char *words,
                   SyPageType type)
{
  g_autoptr (PangoLayout) layout = sy_page_layout (page, words, type, width);
  double wide, height;

  measure (layout, &wide, &height);
  show (page, layout, x, top);
  return height;
}

double
sy_page_paragraph_height (SyPage *page, double width, const char *words, SyPageType type)
{
  g_autoptr (PangoLayout) layout = sy_page_layout (page, words, type, width);
  double wide, height;

  measure (layout, &wide, &height);
  return height;
}

static void
rule (SyPage *page, double x, double end, double y, const SyColour *colour, double line)
{
  sy_palette_use (page->cr, colour, 1);
  cairo_set_line_width (page->cr, line);
  cairo_move_to (page->cr, x, y);
  cairo_line_to (page->cr, end, y);
  cairo_stroke (page->cr);
}

void
sy_page_heading (SyPage *page, int number, const char *msgid)
{
  g_autofree char *digits = g_strdup_printf ("%d", number);

  page->y += 8;
  rule (page, page->left, page->right, page->y, &page->palette.hairline, 0.8);
  sy_page_line (page, page->left, page->y + 14, 0, digits, SY_TYPE_HEADING);
  sy_page_line (page, page->left + 18, page->y + 14, 0, sy_page_words (page, msgid),
                SY_TYPE_HEADING);
  page->y += 19;
}

void
sy_page_blank (SyPage *page, double x, double end, double height, const char *msgid)
{
  double baseline = page->y + height * BASELINE;
  double width
      = msgid ? sy_page_line (page, x, baseline, 0, sy_page_words (page, msgid), SY_TYPE_BODY) + 5
              : 0;

  rule (page, x + width, end, baseline + 2.5, &page->palette.ink, 0.5);
}

double
sy_page_number_box (SyPage *page, double x, double height, double width, const char *msgid,
                    const char *unit)
{
  double baseline = page->y + height * BASELINE;

  if (msgid)
    x += sy_page_line (page, x, baseline, 0, sy_page_words (page, msgid), SY_TYPE_BODY) + 5;
  sy_palette_use (page->cr, &page->palette.ink, 1);
  cairo_set_line_width (page->cr, 0.7);
  cairo_rectangle (page->cr, x, page->y + 1.5, width, height - 3);
  cairo_stroke (page->cr);
  if (unit)
    sy_page_line (page, x + width - 3.5, page->y + height - 5, 1, unit, SY_TYPE_NOTE);
  return x + width;
}

double
sy_page_tick (SyPage *page, double x, double height, const char *msgid)
{
  double baseline = page->y + height * BASELINE;

  sy_palette_use (page->cr, &page->palette.ink, 1);
  cairo_set_line_width (page->cr, 0.7);
  cairo_rectangle (page->cr, x, baseline - TICK + 1, TICK, TICK);
  cairo_stroke (page->cr);
  x += TICK;
  if (msgid)
    x += 4 + sy_page_line (page, x + 4, baseline, 0, sy_page_words (page, msgid), SY_TYPE_BODY);
  return x;
}
