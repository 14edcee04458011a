/* SPDX-License-Identifier: MIT */
#ifndef SY_FOLIO_PRIVATE_H
#define SY_FOLIO_PRIVATE_H

#include "sy-folio.h"

#define SY_FOLIO_MARGIN 42.0 /* 15 mm: inside what any office printer prints */
#define SY_FOLIO_MARGIN_LARGE 26.0 /* of what is hung up: 9 mm               */
#define SY_FOLIO_TOP 36.0
#define SY_FOLIO_TOP_LARGE 24.0
#define SY_FOLIO_FOOT 34.0   /* from the lower edge to the last line         */
#define SY_FOLIO_FOOT_LARGE 22.0
#define SY_FOLIO_GUTTER 8.0  /* between two columns                          */
#define SY_FOLIO_PAD 3.0     /* over and under the words of a row            */
#define SY_FOLIO_OVER 8.0    /* over a heading                               */
#define SY_FOLIO_SHAPE 10.0  /* in a row                                     */
#define SY_FOLIO_TICK 15.0   /* from a box to its words                      */
#define SY_FOLIO_KEPT_MAX 4000 /* blocks: of longer ones words are laid out anew for each page, to keep memory small */

typedef enum
{
  SY_BLOCK_HEADING, SY_BLOCK_PARAGRAPH, SY_BLOCK_TICK, SY_BLOCK_BLANKS, SY_BLOCK_TABLE, SY_BLOCK_ROW, SY_BLOCK_PICTURES,
  SY_BLOCK_LEAD,
} SyBlockKind;

typedef struct
{
  SyBlockKind kind;
  int table; /* place of the block that a row belongs to, -1 */
  guint n;
  char *words[SY_FOLIO_COLUMNS_MAX];
  double share[SY_FOLIO_COLUMNS_MAX];
  SyPageType types[SY_FOLIO_COLUMNS_MAX];
  PangoLayout *layouts[SY_FOLIO_COLUMNS_MAX]; /* kept once made; NULL */
  SyFolioPicture *pictures;                   /* n of them; NULL      */
  double height;                              /* of the pictures, blanks or sign */
  SyShape shape;
  guint shape_column;                          /* of a row, from 1; 0: it has none */
} SyBlock;

/* What of a block stands where: of a row that was broken, some of the lines of each cell. */
typedef struct
{
  int page, block;
  double y, height;
  int from[SY_FOLIO_COLUMNS_MAX], to[SY_FOLIO_COLUMNS_MAX];
  gboolean goes_on;
} SyPiece;

typedef enum
{
  SY_PLACE_TITLE, SY_PLACE_SUBTITLE, SY_PLACE_HEAD, SY_PLACE_FOOT,
} SyPlace;
#define SY_N_PLACES 4

struct SyFolio
{
  SyFolioHead head;
  char *texts[6];
  PangoContext *context;
  PangoLayout *places[SY_N_PLACES]; /* what stands on every page */
  GArray *blocks, *pieces;
  int table;   /* that rows go to, -1 */
  int n_pages; /* 0: not laid out     */
  double room; /* of the last page    */
};

/* ---- sy-folio-layout.c ---- */
/* A page to measure or draw on, without its scale. */
void sy_folio_begin_page (const SyFolio *folio, SyPage *page, cairo_t *cr, double *height);
/* Words of a block; new reference. */
PangoLayout *sy_folio_cell (const SyFolio *folio, SyPage *page, SyBlock *block, guint column);
/* Where a column begins, from the left edge of what is printed on; *width receives how wide it is. */
double sy_folio_column (const SyPage *page, const SyBlock *block, guint column, double *width);
/* What stands on every page; kept. */
PangoLayout *sy_folio_place (SyFolio *folio, SyPage *page, SyPlace place);
double sy_folio_height_of (PangoLayout *layout);
void sy_folio_lay_out (SyFolio *folio);
/* Upper and lower edge and baseline of a line. */
void sy_folio_line (PangoLayoutIter *iter, double *top, double *bottom, double *baseline);

#endif
