/* SPDX-License-Identifier: MIT */
/* One page of a folio, with what each part is for whoever has it read out. */
#include "sy-folio-private.h"

static void
show_layout (SyPage *page, PangoLayout *layout, double x, double y)
{
  sy_palette_use (page->cr, &page->palette.ink, 1);
  cairo_move_to (page->cr, x, y);
  pango_cairo_show_layout (page->cr, layout);
  cairo_new_path (page->cr);
}

static void
draw_lines (SyPage *page, PangoLayout *layout, double x, double y, int from, int to)
{
  PangoLayoutIter *iter;
  double begin = 0, top, bottom, baseline;
  int at = 0;

  if (from == 0 && to >= pango_layout_get_line_count (layout))
    {
      show_layout (page, layout, x, y);
      return;
    }
  iter = pango_layout_get_iter (layout);
  sy_palette_use (page->cr, &page->palette.ink, 1);
  do
    {
      sy_folio_line (iter, &top, &bottom, &baseline);
      if (at == from)
        begin = top;
      if (at >= from && at < to)
        {
          cairo_move_to (page->cr, x, y + baseline - begin);
          pango_cairo_show_layout_line (page->cr, pango_layout_iter_get_line_readonly (iter));
        }
      at++;
    }
  while (pango_layout_iter_next_line (iter));
  cairo_new_path (page->cr);
  pango_layout_iter_free (iter);
}

static void
stroke (SyPage *page, double x, double end, double y, const SyColour *colour, double line)
{
  sy_palette_use (page->cr, colour, 1);
  cairo_set_line_width (page->cr, line);
  cairo_move_to (page->cr, x, y);
  cairo_line_to (page->cr, end, y);
  cairo_stroke (page->cr);
}

/* ---- blocks ---- */

static void
draw_picture (SyPage *page, const SyFolioPicture *picture, double x, double y, double width, double height)
{
  cairo_save (page->cr);
  cairo_translate (page->cr, x, y);
  picture->draw (page->cr, width, height, &page->palette, picture->data);
  cairo_restore (page->cr);
}

static void
draw_pictures (const SyFolio *self, SyPage *page, SyBlock *block, double y)
{
  double over = 0;

  for (guint i = 0; i < block->n; i++)
    if (*block->words[i] != '\0')
      {
        g_autoptr (PangoLayout) layout = sy_folio_cell (self, page, block, i);

        over = MAX (over, sy_folio_height_of (layout));
      }
  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = sy_folio_cell (self, page, block, i);
      double width, x = sy_folio_column (page, block, i, &width);

      cairo_tag_begin (page->cr, "Figure", NULL);
      if (*block->words[i] != '\0')
        show_layout (page, layout, x, y);
      draw_picture (page, &block->pictures[i], x, y + over, width, block->height);
      cairo_tag_end (page->cr, "Figure");
    }
}

static void
draw_blanks (const SyFolio *self, SyPage *page, SyBlock *block, double y)
{
  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = sy_folio_cell (self, page, block, i);
      double width, x = sy_folio_column (page, block, i, &width);
      double under = y + block->height;

      show_layout (page, layout, x, under);
      stroke (page, x, x + width, under, &page->palette.ink, 0.5);
    }
}

static void
draw_lead (const SyFolio *self, SyPage *page, SyBlock *block, const SyPiece *piece, double y)
{
  const double inside = piece->height - 2 * SY_FOLIO_PAD;

  cairo_save (page->cr);
  cairo_translate (page->cr, page->left, y + (inside - block->height) / 2);
  sy_drawing_shape (page->cr, block->height, block->shape, &page->palette);
  cairo_restore (page->cr);
  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = sy_folio_cell (self, page, block, i);
      double width, x = sy_folio_column (page, block, i, &width);

      show_layout (page, layout, x, y + (inside - sy_folio_height_of (layout)) / 2);
    }
}

static void
draw_cells (const SyFolio *self, SyPage *page, SyBlock *block, const SyPiece *piece, double y)
{
  const char *tag = block->kind == SY_BLOCK_TABLE ? "TH" : block->kind == SY_BLOCK_ROW ? "TD" : NULL;

  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = NULL;
      double width, x = sy_folio_column (page, block, i, &width);

      if (*block->words[i] == '\0')
        continue;
      layout = sy_folio_cell (self, page, block, i);
      if (tag != NULL)
        cairo_tag_begin (page->cr, tag, NULL);
      draw_lines (page, layout, x, y, piece->from[i], piece->to[i]);
      if (tag != NULL)
        cairo_tag_end (page->cr, tag);
    }
}

static void
draw_row_shape (SyPage *page, const SyBlock *block, double y)
{
  double width, x = sy_folio_column (page, block, block->shape_column - 1, &width);

  cairo_save (page->cr);
  cairo_translate (page->cr, x, y);
  sy_drawing_shape (page->cr, SY_FOLIO_SHAPE, block->shape, &page->palette);
  cairo_restore (page->cr);
}

static void
draw_tick (SyPage *page, double y)
{
  sy_palette_use (page->cr, &page->palette.ink, 1);
  cairo_set_line_width (page->cr, 0.7);
  cairo_rectangle (page->cr, page->left + 0.5, y + 1.5, 8.5, 8.5);
  cairo_stroke (page->cr);
}

static void
draw_piece (const SyFolio *self, SyPage *page, const SyPiece *piece)
{
  static const char *const tags[] = {
    [SY_BLOCK_HEADING] = "H2", [SY_BLOCK_PARAGRAPH] = "P", [SY_BLOCK_TICK] = "P",      [SY_BLOCK_BLANKS] = "P",
    [SY_BLOCK_TABLE] = "TR",   [SY_BLOCK_ROW] = "TR",      [SY_BLOCK_PICTURES] = "Div", [SY_BLOCK_LEAD] = "P",
  };
  SyBlock *block = &g_array_index (self->blocks, SyBlock, piece->block);
  const double y = piece->y + SY_FOLIO_PAD + (block->kind == SY_BLOCK_HEADING ? SY_FOLIO_OVER : 0);
  const gboolean ruled = block->kind == SY_BLOCK_HEADING || block->kind == SY_BLOCK_TABLE || block->kind == SY_BLOCK_ROW;

  if (ruled && !piece->goes_on)
    stroke (page, page->left, page->right, y - SY_FOLIO_PAD, &page->palette.hairline, 0.6);
  cairo_tag_begin (page->cr, tags[block->kind], NULL);
  if (block->kind == SY_BLOCK_PICTURES)
    draw_pictures (self, page, block, y);
  else if (block->kind == SY_BLOCK_BLANKS)
    draw_blanks (self, page, block, y);
  else if (block->kind == SY_BLOCK_LEAD)
    draw_lead (self, page, block, piece, y);
  else
    {
      if (block->kind == SY_BLOCK_TICK && !piece->goes_on)
        draw_tick (page, y);
      if (block->shape_column > 0 && !piece->goes_on)
        draw_row_shape (page, block, y);
      draw_cells (self, page, block, piece, y);
    }
  cairo_tag_end (page->cr, tags[block->kind]);
}

/* Where the pieces of a page begin. */
static guint
find_first (const SyFolio *self, int number)
{
  guint low = 0, high = self->pieces->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (self->pieces, SyPiece, middle).page < number)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* ---- the page ---- */

static void
draw_head (SyFolio *self, SyPage *page, int number)
{
  static const char *const tags[] = { "H1", "P", "P" };
  double y = page->y;

  for (int place = SY_PLACE_TITLE; place <= SY_PLACE_HEAD; place++)
    {
      /* what is said again on every page is no part of what is read from page to page */
      const char *tag = number == 0 ? tags[place] : "NonStruct";
      PangoLayout *layout;

      if (*self->texts[place] == '\0')
        continue;
      layout = sy_folio_place (self, page, place);
      cairo_tag_begin (page->cr, tag, NULL);
      show_layout (page, layout, page->left, y);
      cairo_tag_end (page->cr, tag);
      y += sy_folio_height_of (layout);
    }
}

static void
draw_foot (SyFolio *self, SyPage *page, int number, double height)
{
  const double foot = self->head.large ? SY_FOLIO_FOOT_LARGE : SY_FOLIO_FOOT;
  PangoLayout *layout = sy_folio_place (self, page, SY_PLACE_FOOT);
  g_autofree char *page_text = g_strdup_printf ("%d", number + 1), *pages_text = g_strdup_printf ("%d", self->n_pages);
  g_autofree char *numbers = sy_words_say (self->head.translate, N_ ("Page {page} of {pages}"), "page", page_text, "pages",
                                           pages_text, NULL);

  cairo_tag_begin (page->cr, "NonStruct", NULL);
  show_layout (page, layout, page->left, height - foot - 12 - sy_folio_height_of (layout));
  sy_page_line (page, page->right, height - foot, 1, numbers, self->head.large ? SY_TYPE_FINE : SY_TYPE_NOTE);
  cairo_tag_end (page->cr, "NonStruct");
}

static gboolean
in_table (const SyFolio *self, const SyPiece *piece)
{
  const SyBlock *block = &g_array_index (self->blocks, SyBlock, piece->block);

  return block->kind == SY_BLOCK_TABLE || block->kind == SY_BLOCK_ROW;
}

void
sy_folio_draw (SyFolio *self, int number, cairo_t *cr)
{
  gboolean open = FALSE;
  double height;
  SyPage page;

  sy_folio_pages (self);
  cairo_save (cr);
  cairo_scale (cr, self->head.scale, self->head.scale);
  sy_folio_begin_page (self, &page, cr, &height);
  draw_head (self, &page, number);
  for (guint i = find_first (self, number); i < self->pieces->len; i++)
    {
      const SyPiece *piece = &g_array_index (self->pieces, SyPiece, i);

      if (piece->page != number)
        break;
      if (in_table (self, piece) != open)
        {
          open ? cairo_tag_end (cr, "Table") : cairo_tag_begin (cr, "Table", NULL);
          open = !open;
        }
      draw_piece (self, &page, piece);
    }
  if (open)
    cairo_tag_end (cr, "Table");
  draw_foot (self, &page, number, height);
  cairo_restore (cr);
}
