/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLIO_H
#define SY_FOLIO_H

#include "sy-page.h"
#include "sy-sheet.h"

/*
 * A document of as many pages as it takes: headings, paragraphs and tables under a head and over a foot that stand on every
 * page. Nothing is cut off: words wrap, a row that is higher than a page goes on on the next.
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
} SyFolioHead;

SyFolio *sy_folio_new (const SyFolioHead *head);
void sy_folio_free (SyFolio *folio); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyFolio, sy_folio_free)

/* Words are in the page's language, and copied. */
void sy_folio_heading (SyFolio *folio, const char *words);
void sy_folio_paragraph (SyFolio *folio, const char *words, SyPageType type);

#define SY_FOLIO_COLUMNS_MAX 5
typedef struct
{
  const char *title;
  double share;      /* of the width        */
  SyPageType type;
} SyFolioColumn;
/* What rows after it are set in; its titles stand over them on every page. */
void sy_folio_table (SyFolio *folio, const SyFolioColumn *columns, guint n_columns);
void sy_folio_row (SyFolio *folio, const char *const *cells);

/* After the last. */
int sy_folio_pages (SyFolio *folio);
/* One page, from 0, in points. */
void sy_folio_draw (SyFolio *folio, int page, cairo_t *cr);
/* As sy_survey_write_pdf(). */
gboolean sy_folio_write_pdf (SyFolio *folio, const char *path, const char *created, GError **error);

#endif
