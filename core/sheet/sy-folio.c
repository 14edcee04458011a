/* SPDX-License-Identifier: MIT */
#include "sy-folio.h"

#include <string.h>

#include "sy-pdf.h"

#define MARGIN 42.0 /* 15 mm: inside what any office printer prints */
#define TOP 36.0
#define FOOT 34.0   /* from the lower edge to the last line         */
#define GUTTER 8.0  /* between two columns                          */
#define PAD 3.0     /* over and under the words of a row            */

typedef enum { HEADING, PARAGRAPH, TABLE, ROW } BlockKind;

typedef struct
{
  BlockKind kind;
  SyPageType type;
  int table; /* place of the block that a row belongs to */
  guint n;
  char *words[SY_FOLIO_COLUMNS_MAX];
  double share[SY_FOLIO_COLUMNS_MAX];
  SyPageType types[SY_FOLIO_COLUMNS_MAX];
} Block;

/* What of a block stands where: of a row that was broken, some of the lines of each cell. */
typedef struct
{
  int page, block;
  double y, height;
  int from[SY_FOLIO_COLUMNS_MAX], to[SY_FOLIO_COLUMNS_MAX];
  gboolean goes_on;
} Piece;

struct SyFolio
{
  SyFolioHead head;
  char *texts[5];
  GArray *blocks, *pieces;
  int table; /* that rows go to, -1 */
  int n_pages; /* 0: not laid out */
};

static void
clear_block (gpointer data)
{
  Block *block = data;

  for (guint i = 0; i < block->n; i++)
    g_free (block->words[i]);
}

SyFolio *
sy_folio_new (const SyFolioHead *head)
{
  SyFolio *self = g_new0 (SyFolio, 1);
  const char **texts[] = { &self->head.title, &self->head.subtitle, &self->head.head, &self->head.program, &self->head.made };

  self->head = *head;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = self->texts[i] = g_strdup (*texts[i] != NULL ? *texts[i] : "");
  self->blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  g_array_set_clear_func (self->blocks, clear_block);
  self->pieces = g_array_new (FALSE, FALSE, sizeof (Piece));
  self->table = -1;
  return self;
}

void
sy_folio_free (SyFolio *self)
{
  if (self == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (self->texts); i++)
    g_free (self->texts[i]);
  g_array_unref (self->blocks);
  g_array_unref (self->pieces);
  g_free (self);
}

static void
add_one (SyFolio *self, BlockKind kind, const char *words, SyPageType type)
{
  Block block = { .kind = kind, .type = type, .table = -1, .n = 1, .words = { g_strdup (words) }, .share = { 1 },
                  .types = { type } };

  g_array_append_val (self->blocks, block);
  self->n_pages = 0;
  self->table = -1;
}

void
sy_folio_heading (SyFolio *self, const char *words)
{
  add_one (self, HEADING, words, SY_TYPE_HEADING);
}

void
sy_folio_paragraph (SyFolio *self, const char *words, SyPageType type)
{
  if (*words != '\0')
    add_one (self, PARAGRAPH, words, type);
}

void
sy_folio_table (SyFolio *self, const SyFolioColumn *columns, guint n_columns)
{
  Block block = { .kind = TABLE, .table = -1, .n = n_columns };

  g_return_if_fail (n_columns <= SY_FOLIO_COLUMNS_MAX);
  for (guint i = 0; i < n_columns; i++)
    {
      block.words[i] = g_strdup (columns[i].title);
      block.share[i] = columns[i].share;
      block.types[i] = columns[i].type;
    }
  self->table = (int) self->blocks->len;
  g_array_append_val (self->blocks, block);
  self->n_pages = 0;
}

void
sy_folio_row (SyFolio *self, const char *const *cells)
{
  Block block = { .kind = ROW, .table = self->table };
  const Block *table;

  g_return_if_fail (self->table >= 0);
  table = &g_array_index (self->blocks, Block, self->table);
  block.n = table->n;
  memcpy (block.share, table->share, sizeof block.share);
  memcpy (block.types, table->types, sizeof block.types);
  for (guint i = 0; i < block.n; i++)
    block.words[i] = g_strdup (cells[i]);
  g_array_append_val (self->blocks, block);
  self->n_pages = 0;
}

/* ---- head and foot ---- */

static char *
foot_words (const SyFolio *self)
{
  g_autofree char *screening = sy_words_screening (self->head.translate);

  return g_strconcat (self->head.program, " · ", self->head.made, " · ", screening, NULL);
}

/* Where the blocks begin. */
static double
set_head (const SyFolio *self, SyPage *page)
{
  const double width = page->right - page->left;

  page->y = TOP;
  page->y += sy_page_paragraph (page, page->left, page->y, width, self->head.title, SY_TYPE_TITLE);
  page->y += sy_page_paragraph (page, page->left, page->y, width, self->head.subtitle, SY_TYPE_STRONG);
  if (*self->head.head != '\0')
    page->y += sy_page_paragraph (page, page->left, page->y, width, self->head.head, SY_TYPE_NOTE);
  return page->y + 8;
}

/* Where the blocks must end. */
static double
set_foot (const SyFolio *self, SyPage *page, int number, double height)
{
  const double width = page->right - page->left;
  g_autofree char *words = foot_words (self), *numbers = NULL;
  GString *of = g_string_new (sy_page_words (page, N_ ("Page {page} of {pages}")));
  g_autofree char *page_text = g_strdup_printf ("%d", number + 1), *pages_text = g_strdup_printf ("%d", self->n_pages);
  double top = height - FOOT - 12 - sy_page_paragraph_height (page, width, words, SY_TYPE_NOTE);

  g_string_replace (of, "{page}", page_text, 0);
  g_string_replace (of, "{pages}", pages_text, 0);
  numbers = g_string_free (of, FALSE);
  sy_page_paragraph (page, page->left, top, width, words, SY_TYPE_NOTE);
  sy_page_line (page, page->right, height - FOOT, 1, numbers, SY_TYPE_NOTE);
  return top - 6;
}

/* ---- laying out ---- */

static double
cell_width (const SyPage *page, const Block *block, guint column)
{
  const double width = (page->right - page->left - GUTTER * (block->n - 1)) * block->share[column];

  return width;
}

static PangoLayout *
cell_layout (SyPage *page, const Block *block, guint column)
{
  SyPageType type = block->kind == TABLE ? SY_TYPE_STRONG : block->types[column];

  PangoLayout *layout = sy_page_layout (page, block->words[column], type, cell_width (page, block, column));
  PangoAttrList *attributes = pango_attr_list_new ();

  /* A hash that is broken must not gain a sign. */
  pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return layout;
}

/* Upper and lower edge and baseline of a line. */
static void
line_extents (PangoLayoutIter *iter, double *top, double *bottom, double *baseline)
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
      line_extents (iter, &top, &bottom, &baseline);
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
put_piece (Laying *laying, Piece *piece)
{
  piece->page = laying->number;
  piece->y = laying->y;
  g_array_append_val (laying->folio->pieces, *piece);
  laying->y += piece->height;
}

static double
whole_height (Laying *laying, int index)
{
  const Block *block = &g_array_index (laying->folio->blocks, Block, index);
  double height = 0;

  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = cell_layout (laying->page, block, i);
      int width, high;

      pango_layout_get_size (layout, &width, &high);
      height = MAX (height, (double) high / PANGO_SCALE);
    }
  return height + 2 * PAD + (block->kind == HEADING ? 8 : 0);
}

static void
put_whole (Laying *laying, int index)
{
  Piece piece = { .block = index, .height = whole_height (laying, index) };

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

/* Line by line over as many pages as it takes. */
static void
put_broken (Laying *laying, int index)
{
  const Block *block = &g_array_index (laying->folio->blocks, Block, index);
  PangoLayout *layouts[SY_FOLIO_COLUMNS_MAX];
  int from[SY_FOLIO_COLUMNS_MAX] = { 0 };
  gboolean more;

  for (guint i = 0; i < block->n; i++)
    layouts[i] = cell_layout (laying->page, block, i);
  do
    {
      Piece piece = { .block = index, .goes_on = from[0] > 0 };
      double room = laying->bottom - laying->y - 2 * PAD, height;

      more = FALSE;
      for (guint i = 0; i < block->n; i++)
        {
          piece.from[i] = from[i];
          from[i] = piece.to[i] = fit_lines (layouts[i], from[i], room, &height);
          piece.height = MAX (piece.height, height + 2 * PAD);
          more = more || from[i] < pango_layout_get_line_count (layouts[i]);
        }
      put_piece (laying, &piece);
      if (more)
        turn_page (laying, block->table);
    }
  while (more);
  for (guint i = 0; i < block->n; i++)
    g_object_unref (layouts[i]);
}

static void
put_block (Laying *laying, int index)
{
  const Block *block = &g_array_index (laying->folio->blocks, Block, index);
  const double height = whole_height (laying, index);
  /* A heading and the titles of a table stay with what follows. */
  const double with = block->kind == HEADING || block->kind == TABLE ? 48 : 0;
  double fresh = laying->bottom - laying->top;

  if (block->table >= 0)
    fresh -= whole_height (laying, block->table);
  if (laying->y + height + with > laying->bottom && laying->y > laying->top && height <= fresh)
    turn_page (laying, block->table);
  if (laying->y + height <= laying->bottom)
    put_whole (laying, index);
  else
    put_broken (laying, index);
}

static void
lay_out (SyFolio *self)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double width, height;
  SyPage page;
  Laying laying = { .folio = self, .page = &page };

  sy_paper_size (self->head.paper, &width, &height);
  sy_page_begin (&page, cr, self->head.translate, MARGIN, width - MARGIN, TOP);
  g_array_set_size (self->pieces, 0);
  laying.y = laying.top = set_head (self, &page);
  laying.bottom = set_foot (self, &page, 0, height);
  for (guint i = 0; i < self->blocks->len; i++)
    put_block (&laying, (int) i);
  self->n_pages = laying.number + 1;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* ---- drawing ---- */

static void
draw_lines (SyPage *page, PangoLayout *layout, double x, double y, int from, int to)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  double begin = 0, top, bottom, baseline;
  int at = 0;

  sy_palette_use (page->cr, &page->palette.ink, 1);
  do
    {
      line_extents (iter, &top, &bottom, &baseline);
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
draw_piece (const SyFolio *self, SyPage *page, const Piece *piece)
{
  const Block *block = &g_array_index (self->blocks, Block, piece->block);
  const double y = piece->y + PAD + (block->kind == HEADING ? 8 : 0);
  double x = page->left;

  if (block->kind != PARAGRAPH && !piece->goes_on)
    {
      sy_palette_use (page->cr, &page->palette.hairline, 1);
      cairo_set_line_width (page->cr, 0.6);
      cairo_move_to (page->cr, page->left, y - PAD);
      cairo_line_to (page->cr, page->right, y - PAD);
      cairo_stroke (page->cr);
    }
  for (guint i = 0; i < block->n; i++)
    {
      g_autoptr (PangoLayout) layout = cell_layout (page, block, i);

      draw_lines (page, layout, x, y, piece->from[i], piece->to[i]);
      x += cell_width (page, block, i) + GUTTER;
    }
}

/* Where the pieces of a page begin. */
static guint
find_first (const SyFolio *self, int number)
{
  guint low = 0, high = self->pieces->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (self->pieces, Piece, middle).page < number)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

int
sy_folio_pages (SyFolio *self)
{
  if (self->n_pages == 0)
    lay_out (self);
  return self->n_pages;
}

void
sy_folio_draw (SyFolio *self, int number, cairo_t *cr)
{
  double width, height;
  SyPage page;

  sy_folio_pages (self);
  sy_paper_size (self->head.paper, &width, &height);
  cairo_save (cr);
  sy_page_begin (&page, cr, self->head.translate, MARGIN, width - MARGIN, TOP);
  set_head (self, &page);
  for (guint i = find_first (self, number); i < self->pieces->len; i++)
    {
      const Piece *piece = &g_array_index (self->pieces, Piece, i);

      if (piece->page != number)
        break;
      draw_piece (self, &page, piece);
    }
  set_foot (self, &page, number, height);
  cairo_restore (cr);
}

static void
draw_cb (gconstpointer folio, int page, cairo_t *cr)
{
  sy_folio_draw ((SyFolio *) folio, page, cr);
}

gboolean
sy_folio_write_pdf (SyFolio *self, const char *path, const char *created, GError **error)
{
  const SyPdf pdf = { .paper = self->head.paper, .title = self->head.title, .program = self->head.program,
                      .created = created, .pages = sy_folio_pages (self), .draw = draw_cb, .sheet = self };

  return sy_pdf_write (&pdf, path, error);
}
