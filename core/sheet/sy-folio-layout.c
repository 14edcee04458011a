/* SPDX-License-Identifier: MIT */
/* Which part of a folio stands where. */
#include "sy-folio-private.h"

void
sy_folio_begin_page (const SyFolio *self, SyPage *page, cairo_t *cr, double *height)
{
  const double margin = self->head.large ? SY_FOLIO_MARGIN_LARGE : SY_FOLIO_MARGIN;
  double width;

  sy_paper_size (self->head.paper, &width, height);
  width /= self->head.scale;
  *height /= self->head.scale;
  sy_page_begin (page, cr, self->head.translate, margin, width - margin,
                 self->head.large ? SY_FOLIO_TOP_LARGE : SY_FOLIO_TOP);
  page->context = self->context;
}

double
sy_folio_height_of (PangoLayout *layout)
{
  int width, height;

  pango_layout_get_size (layout, &width, &height);
  return (double) height / PANGO_SCALE;
}

/* How far words stand from the left edge because of what stands before them. */
static double
indent_of (const SyBlock *block)
{
  if (block->kind == SY_BLOCK_TICK)
    return SY_FOLIO_TICK;
  return block->kind == SY_BLOCK_LEAD ? block->height * 1.3 : 0;
}

double
sy_folio_column (const SyPage *page, const SyBlock *block, guint column, double *width)
{
  const double indent = indent_of (block);
  const double whole = page->right - page->left - indent - SY_FOLIO_GUTTER * (block->n - 1);
  double x = page->left + indent;

  for (guint i = 0; i < column; i++)
    x += whole * block->share[i] + SY_FOLIO_GUTTER;
  *width = whole * block->share[column];
  return x;
}

/* A hash or a name that is broken must not gain a sign. */
static void
keep_plain (PangoLayout *layout)
{
  static PangoAttrList *plain;

  if (g_once_init_enter (&plain))
    {
      PangoAttrList *attributes = pango_attr_list_new ();

      pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
      g_once_init_leave (&plain, attributes);
    }
  pango_layout_set_attributes (layout, plain);
}

PangoLayout *
sy_folio_cell (const SyFolio *self, SyPage *page, SyBlock *block, guint column)
{
  SyPageType type = block->kind == SY_BLOCK_TABLE ? SY_TYPE_STRONG : block->types[column];
  PangoLayout *layout;
  double width;

  if (block->layouts[column] != NULL)
    return g_object_ref (block->layouts[column]);
  sy_folio_column (page, block, column, &width);
  layout = sy_page_layout (page, block->words[column], type, width);
  keep_plain (layout);
  if (block->kind == SY_BLOCK_LEAD && column == 1)
    pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);
  if (block->kind == SY_BLOCK_ROW && self->head.large)
    {
      /* several lines to a cell: each begins farther left than it goes on */
      pango_layout_set_indent (layout, -9 * PANGO_SCALE);
      pango_layout_set_spacing (layout, PANGO_SCALE);
    }
  if (self->blocks->len <= SY_FOLIO_KEPT_MAX)
    block->layouts[column] = g_object_ref (layout);
  return layout;
}

/* ---- head and foot ---- */

static char *
foot_words (const SyFolio *self)
{
  g_autofree char *screening = sy_words_screening (self->head.translate);

  return g_strconcat (self->head.program, " · ", self->head.made, " · ", screening, *self->head.foot != '\0' ? " " : "",
                      self->head.foot, NULL);
}

PangoLayout *
sy_folio_place (SyFolio *self, SyPage *page, SyPlace place)
{
  const SyPageType types[] = { self->head.large ? SY_TYPE_LARGE : SY_TYPE_TITLE,
                               self->head.large ? SY_TYPE_CARD_STRONG : SY_TYPE_STRONG, SY_TYPE_NOTE,
                               self->head.large ? SY_TYPE_FINE : SY_TYPE_NOTE };
  const char *words[] = { self->head.title, self->head.subtitle, self->head.head, NULL };
  g_autofree char *foot = place == SY_PLACE_FOOT ? foot_words (self) : NULL;

  if (self->places[place] == NULL)
    {
      self->places[place]
        = sy_page_layout (page, foot != NULL ? foot : words[place], types[place], page->right - page->left);
      keep_plain (self->places[place]);
    }
  return self->places[place];
}

/* ---- laying out ---- */

void
sy_folio_line (PangoLayoutIter *iter, double *top, double *bottom, double *baseline)
{
  int y0, y1;

  pango_layout_iter_get_line_yrange (iter, &y0, &y1);
  *top = (double) y0 / PANGO_SCALE;
  *bottom = (double) y1 / PANGO_SCALE;
  *baseline = (double) pango_layout_iter_get_baseline (iter) / PANGO_SCALE;
}

/* How many lines from @from on fit into @room; their height. */
static int
fit_lines (PangoLayout *layout, int from, double room, double *height)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  double begin = 0, top, bottom, baseline;
  int at = 0, to = from;

  *height = 0;
  do
    {
      sy_folio_line (iter, &top, &bottom, &baseline);
      if (at == from)
        begin = top;
      if (at >= from && bottom - begin > room)
        break;
      if (at >= from)
        {
          to = at + 1;
          *height = bottom - begin;
        }
      at++;
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  return to;
}

typedef struct
{
  SyFolio *folio;
  SyPage *page; /* measures */
  double top, bottom, y;
  int number;
} Laying;

static void
put_piece (Laying *laying, SyPiece *piece)
{
  piece->page = laying->number;
  piece->y = laying->y;
  g_array_append_val (laying->folio->pieces, *piece);
  laying->y += piece->height;
}

static double
whole_height (Laying *laying, int index)
{
  SyBlock *block = &g_array_index (laying->folio->blocks, SyBlock, index);
  double height = 0;

  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = sy_folio_cell (laying->folio, laying->page, block, i);

      if (*block->words[i] != '\0')
        height = MAX (height, sy_folio_height_of (layout));
    }
  if (block->kind == SY_BLOCK_LEAD)
    height = MAX (height, block->height);
  else if (block->kind == SY_BLOCK_PICTURES || block->kind == SY_BLOCK_BLANKS)
    height += block->height;
  return height + 2 * SY_FOLIO_PAD + (block->kind == SY_BLOCK_HEADING ? SY_FOLIO_OVER : 0);
}

static void
put_whole (Laying *laying, int index)
{
  SyPiece piece = { .block = index, .height = whole_height (laying, index) };

  for (guint i = 0; i < SY_FOLIO_COLUMNS_MAX; i++)
    piece.to[i] = G_MAXINT;
  put_piece (laying, &piece);
}

static void
turn_page (Laying *laying, int table)
{
  laying->number++;
  laying->y = laying->top;
  if (table >= 0)
    put_whole (laying, table);
}

/* Line by line over as many pages as it takes; at least one line a page, however large. */
static void
put_broken (Laying *laying, int index)
{
  SyBlock *block = &g_array_index (laying->folio->blocks, SyBlock, index);
  PangoLayout *layouts[SY_FOLIO_COLUMNS_MAX];
  int from[SY_FOLIO_COLUMNS_MAX] = { 0 };
  gboolean more, fresh = laying->y <= laying->top;

  for (guint i = 0; i < block->n; i++)
    layouts[i] = sy_folio_cell (laying->folio, laying->page, block, i);
  do
    {
      SyPiece piece = { .block = index, .goes_on = from[0] > 0 };
      double room = laying->bottom - laying->y - 2 * SY_FOLIO_PAD, height;

      more = FALSE;
      for (guint i = 0; i < block->n; i++)
        {
          const int n = pango_layout_get_line_count (layouts[i]);

          piece.from[i] = from[i];
          from[i] = fit_lines (layouts[i], from[i], room, &height);
          if (from[i] == piece.from[i] && from[i] < n && fresh)
            fit_lines (layouts[i], from[i]++, G_MAXDOUBLE, &height);
          piece.to[i] = from[i];
          piece.height = MAX (piece.height, height + 2 * SY_FOLIO_PAD);
          more = more || from[i] < n;
        }
      put_piece (laying, &piece);
      if (more)
        turn_page (laying, block->table);
      fresh = TRUE;
    }
  while (more);
  for (guint i = 0; i < block->n; i++)
    g_object_unref (layouts[i]);
}

static gboolean
can_break (const SyBlock *block)
{
  return block->kind != SY_BLOCK_PICTURES && block->kind != SY_BLOCK_BLANKS && block->kind != SY_BLOCK_LEAD;
}

/* A heading and the titles of a table stay with what follows: all of it where that is not much, else some lines. */
static double
height_with (Laying *laying, int index)
{
  const SyBlock *block = &g_array_index (laying->folio->blocks, SyBlock, index);
  double height;

  if ((block->kind != SY_BLOCK_HEADING && block->kind != SY_BLOCK_TABLE)
      || (guint) index + 1 >= laying->folio->blocks->len)
    return 0;
  height = whole_height (laying, index + 1);
  if (can_break (block + 1) && height > (laying->bottom - laying->top) / 4)
    return 48;
  return height + height_with (laying, index + 1);
}

static void
put_block (Laying *laying, int index)
{
  SyBlock *block = &g_array_index (laying->folio->blocks, SyBlock, index);
  double height = whole_height (laying, index), fresh = laying->bottom - laying->top;

  if (block->table >= 0)
    fresh -= whole_height (laying, block->table);
  if (block->kind == SY_BLOCK_PICTURES && height > fresh)
    {
      block->height = MAX (block->height - (height - fresh), 1);
      height = whole_height (laying, index);
    }
  if (laying->y + height + height_with (laying, index) > laying->bottom && laying->y > laying->top
      && (height <= fresh || !can_break (block)))
    turn_page (laying, block->table);
  if (laying->y + height <= laying->bottom || !can_break (block))
    put_whole (laying, index);
  else
    put_broken (laying, index);
}

void
sy_folio_lay_out (SyFolio *self)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  SyPage page;
  Laying laying = { .folio = self, .page = &page };
  double height;

  sy_folio_begin_page (self, &page, cr, &height);
  g_array_set_size (self->pieces, 0);
  laying.top = page.y;
  for (int place = SY_PLACE_TITLE; place <= SY_PLACE_HEAD; place++)
    if (*self->texts[place] != '\0')
      laying.top += sy_folio_height_of (sy_folio_place (self, &page, place));
  laying.y = laying.top += 8;
  laying.bottom = height - (self->head.large ? SY_FOLIO_FOOT_LARGE : SY_FOLIO_FOOT) - 18
                  - sy_folio_height_of (sy_folio_place (self, &page, SY_PLACE_FOOT));
  for (guint i = 0; i < self->blocks->len; i++)
    put_block (&laying, (int) i);
  self->n_pages = laying.number + 1;
  self->room = laying.bottom - laying.y;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}
