/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLIO_H
#define SY_FOLIO_H

#include "sy-page.h"
#include "sy-sheet.h"

/*
 * A document of as many pages as it takes: headings, paragraphs, tables and pictures under a head and over a foot that stand
 * on every page. Nothing is cut off: words wrap, a row that is higher than a page goes on on the next.
 */
typedef struct SyFolio SyFolio;

typedef struct
{
  SyPaper paper;
  SyTranslate translate;    /* NULL: English                                    */
  const char *title;        /* in the page's language                           */
  const char *subtitle;     /* as at which day, of which item                   */
  const char *head;         /* lines under it on every page; "" for none        */
  const char *program;      /* "steelyard 0.1.0"                                */
  const char *made;         /* RFC 3339                                         */
  const char *foot;         /* said on every page after the caution; NULL: nothing */
  double scale;             /* everything is that much larger; 0: 1             */
  gboolean large;           /* to be hung up: the title is larger               */
} SyFolioHead;

SyFolio *sy_folio_new (const SyFolioHead *head);
void sy_folio_free (SyFolio *folio); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyFolio, sy_folio_free)

/* Words are in the page's language, and copied. */
void sy_folio_heading (SyFolio *folio, const char *words);
void sy_folio_paragraph (SyFolio *folio, const char *words, SyPageType type);
/* A paragraph after a box to tick. */
void sy_folio_tick (SyFolio *folio, const char *words, SyPageType type);
/* A line to write on after each of the labels, over the whole width; @height of the row. */
void sy_folio_blanks (SyFolio *folio, const char *const *labels, guint n_labels, double height);

#define SY_FOLIO_COLUMNS_MAX 10
typedef struct
{
  const char *title;
  double share;      /* of the width        */
  SyPageType type;
} SyFolioColumn;
/* What rows after it are set in; its titles stand over them on every page. */
void sy_folio_table (SyFolio *folio, const SyFolioColumn *columns, guint n_columns);
void sy_folio_row (SyFolio *folio, const char *const *cells);
/* The same with every cell in @type: the row that governs. */
void sy_folio_row_in (SyFolio *folio, const char *const *cells, SyPageType type);
/* That with a verdict's shape in a column whose words are ""; -1: in none. */
void sy_folio_row_shape (SyFolio *folio, const char *const *cells, int column, SyShape shape, SyPageType type);

/* What draws itself into 0,0 .. width,height in points. */
typedef struct
{
  const char *caption; /* over it; "" for none */
  double share;        /* of the width         */
  void (*draw) (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data);
  gpointer data;       /* the folio's from now on */
  GDestroyNotify free; /* NULL: nothing to free   */
} SyFolioPicture;
#define SY_FOLIO_PICTURES_MAX 3
/* Beside each other; @height of the pictures. Lower where the page is not high enough. */
void sy_folio_pictures (SyFolio *folio, const SyFolioPicture *pictures, guint n_pictures, double height);

/* A sign of @size at the left with words beside it, the second over the right edge; words may be "" or NULL. */
typedef struct
{
  double size;
  SyShape shape;
  const char *words, *figure;
  SyPageType type, figure_type;
  double share;        /* of the words, of what the sign leaves */
} SyFolioLead;
void sy_folio_lead (SyFolio *folio, const SyFolioLead *lead);

/* After the last. */
int sy_folio_pages (SyFolio *folio);
SyPaper sy_folio_paper (const SyFolio *folio);
/* Where all stands on one page, pictures become higher by what is left of it, each by @most at the most; where it does not,
   each by half of that. After the last block. */
void sy_folio_fill (SyFolio *folio, double most);
/* One page, from 0, in points. */
void sy_folio_draw (SyFolio *folio, int page, cairo_t *cr);
/* As sy_survey_write_pdf(). */
gboolean sy_folio_write_pdf (SyFolio *folio, const char *path, const char *created, GError **error);
/* The same into memory. */
GBytes *sy_folio_pdf_bytes (SyFolio *folio, const char *created, GError **error);

#endif
