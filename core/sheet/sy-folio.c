/* SPDX-License-Identifier: MIT */
/* What a folio is made of, block by block. */
#include "sy-folio-private.h"

#include <math.h>
#include <string.h>

#include "sy-pdf.h"

static void
clear_block (gpointer data)
{
  SyBlock *block = data;

  for (guint i = 0; i < block->n; i++)
    {
      g_free (block->words[i]);
      g_clear_object (&block->layouts[i]);
      if (block->pictures != NULL && block->pictures[i].free != NULL)
        block->pictures[i].free (block->pictures[i].data);
    }
  g_free (block->pictures);
}

SyFolio *
sy_folio_new (const SyFolioHead *head)
{
  SyFolio *self = g_new0 (SyFolio, 1);
  const char **texts[] = { &self->head.title,   &self->head.subtitle, &self->head.head,
                           &self->head.program, &self->head.made,     &self->head.foot };

  self->head = *head;
  if (!(self->head.scale > 0))
    self->head.scale = 1;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = self->texts[i] = g_strdup (*texts[i] != NULL ? *texts[i] : "");
  self->context = sy_page_context_new ();
  self->blocks = g_array_new (FALSE, FALSE, sizeof (SyBlock));
  g_array_set_clear_func (self->blocks, clear_block);
  self->pieces = g_array_new (FALSE, FALSE, sizeof (SyPiece));
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
  for (gsize i = 0; i < SY_N_PLACES; i++)
    g_clear_object (&self->places[i]);
  g_array_unref (self->blocks);
  g_array_unref (self->pieces);
  g_object_unref (self->context);
  g_free (self);
}

static void
append (SyFolio *self, const SyBlock *block)
{
  g_array_append_vals (self->blocks, block, 1);
  self->n_pages = 0;
}

static void
add_one (SyFolio *self, SyBlockKind kind, const char *words, SyPageType type)
{
  const SyBlock block = { .kind = kind, .table = -1, .n = 1, .words = { g_strdup (words) }, .share = { 1 },
                          .types = { type } };

  append (self, &block);
  self->table = -1;
}

void
sy_folio_heading (SyFolio *self, const char *words)
{
  add_one (self, SY_BLOCK_HEADING, words, SY_TYPE_HEADING);
}

void
sy_folio_paragraph (SyFolio *self, const char *words, SyPageType type)
{
  if (*words != '\0')
    add_one (self, SY_BLOCK_PARAGRAPH, words, type);
}

void
sy_folio_tick (SyFolio *self, const char *words, SyPageType type)
{
  add_one (self, SY_BLOCK_TICK, words, type);
}

void
sy_folio_blanks (SyFolio *self, const char *const *labels, guint n_labels, double height)
{
  SyBlock block = { .kind = SY_BLOCK_BLANKS, .table = -1, .n = n_labels, .height = height };

  g_return_if_fail (n_labels <= SY_FOLIO_COLUMNS_MAX);
  for (guint i = 0; i < n_labels; i++)
    {
      block.words[i] = g_strdup (labels[i]);
      block.share[i] = 1.0 / n_labels;
      block.types[i] = SY_TYPE_NOTE;
    }
  append (self, &block);
  self->table = -1;
}

void
sy_folio_table (SyFolio *self, const SyFolioColumn *columns, guint n_columns)
{
  SyBlock block = { .kind = SY_BLOCK_TABLE, .table = -1, .n = n_columns };

  g_return_if_fail (n_columns <= SY_FOLIO_COLUMNS_MAX);
  for (guint i = 0; i < n_columns; i++)
    {
      block.words[i] = g_strdup (columns[i].title);
      block.share[i] = columns[i].share;
      block.types[i] = columns[i].type;
    }
  self->table = (int) self->blocks->len;
  append (self, &block);
}

static SyBlock *
add_row (SyFolio *self, const char *const *cells)
{
  SyBlock block = { .kind = SY_BLOCK_ROW, .table = self->table };
  const SyBlock *table = &g_array_index (self->blocks, SyBlock, self->table);

  block.n = table->n;
  memcpy (block.share, table->share, sizeof block.share);
  memcpy (block.types, table->types, sizeof block.types);
  for (guint i = 0; i < block.n; i++)
    block.words[i] = g_strdup (cells[i]);
  append (self, &block);
  return &g_array_index (self->blocks, SyBlock, self->blocks->len - 1);
}

void
sy_folio_row (SyFolio *self, const char *const *cells)
{
  g_return_if_fail (self->table >= 0);
  add_row (self, cells);
}

void
sy_folio_row_in (SyFolio *self, const char *const *cells, SyPageType type)
{
  SyBlock *block;

  g_return_if_fail (self->table >= 0);
  block = add_row (self, cells);
  for (guint i = 0; i < block->n; i++)
    block->types[i] = type;
}

void
sy_folio_row_shape (SyFolio *self, const char *const *cells, int column, SyShape shape, SyPageType type)
{
  SyBlock *block;

  sy_folio_row_in (self, cells, type);
  block = &g_array_index (self->blocks, SyBlock, self->blocks->len - 1);
  block->shape_column = (guint) (column + 1);
  block->shape = shape;
}

void
sy_folio_pictures (SyFolio *self, const SyFolioPicture *pictures, guint n_pictures, double height)
{
  SyBlock block = { .kind = SY_BLOCK_PICTURES, .table = -1, .n = n_pictures, .height = height };

  g_return_if_fail (n_pictures <= SY_FOLIO_PICTURES_MAX);
  block.pictures = g_memdup2 (pictures, n_pictures * sizeof *pictures);
  for (guint i = 0; i < n_pictures; i++)
    {
      block.words[i] = g_strdup (pictures[i].caption);
      block.share[i] = pictures[i].share;
      block.types[i] = SY_TYPE_NOTE;
    }
  append (self, &block);
  self->table = -1;
}

void
sy_folio_lead (SyFolio *self, const SyFolioLead *lead)
{
  const gboolean has_figure = lead->figure != NULL && *lead->figure != '\0';
  const SyBlock block = {
    .kind = SY_BLOCK_LEAD, .table = -1, .n = has_figure ? 2 : 1,
    .words = { g_strdup (lead->words), has_figure ? g_strdup (lead->figure) : NULL },
    .share = { has_figure ? lead->share : 1, 1 - lead->share }, .types = { lead->type, lead->figure_type },
    .height = lead->size, .shape = lead->shape,
  };

  append (self, &block);
  self->table = -1;
}

int
sy_folio_pages (SyFolio *self)
{
  if (self->n_pages == 0)
    sy_folio_lay_out (self);
  return self->n_pages;
}

SyPaper
sy_folio_paper (const SyFolio *self)
{
  return self->head.paper;
}

void
sy_folio_fill (SyFolio *self, double most)
{
  const gboolean one = sy_folio_pages (self) == 1;
  guint rows = 0;

  for (guint i = 0; i < self->blocks->len; i++)
    rows += g_array_index (self->blocks, SyBlock, i).kind == SY_BLOCK_PICTURES;
  for (guint i = 0; i < self->blocks->len; i++)
    if (g_array_index (self->blocks, SyBlock, i).kind == SY_BLOCK_PICTURES)
      g_array_index (self->blocks, SyBlock, i).height
        += one ? MIN (most, floor (MAX (self->room, 0) / rows)) : most / 2;
  if (rows > 0)
    sy_folio_lay_out (self);
}

static void
draw_cb (gconstpointer folio, int page, cairo_t *cr)
{
  sy_folio_draw ((SyFolio *) folio, page, cr);
}

static SyPdf
pdf_of (SyFolio *self, const char *created)
{
  return (SyPdf) { .paper = self->head.paper, .title = self->head.title, .program = self->head.program,
                   .created = created, .pages = sy_folio_pages (self), .draw = draw_cb, .sheet = self };
}

gboolean
sy_folio_write_pdf (SyFolio *self, const char *path, const char *created, GError **error)
{
  const SyPdf pdf = pdf_of (self, created);

  return sy_pdf_write (&pdf, path, error);
}

GBytes *
sy_folio_pdf_bytes (SyFolio *self, const char *created, GError **error)
{
  const SyPdf pdf = pdf_of (self, created);

  return sy_pdf_bytes (&pdf, error);
}
