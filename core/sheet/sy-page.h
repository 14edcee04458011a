/* SPDX-License-Identifier: MIT */
#ifndef SY_PAGE_H
#define SY_PAGE_H

#include <pango/pangocairo.h>

#include "sy-drawing.h"
#include "sy-words.h"

/*
 * What printable pages of this room are set with: paragraphs, blanks to write on, boxes to tick.
 * Measures are points; @y in a page is where the next thing goes and moves down as things are set.
 */

typedef enum
{
  SY_TYPE_TITLE,   /* 15 bold */
  SY_TYPE_HEADING, /* 10 bold */
  SY_TYPE_BODY,    /* 8.8     */
  SY_TYPE_STRONG,  /* 8.8 bold */
  SY_TYPE_NOTE,    /* 8       */
  SY_TYPE_NOTE_STRONG, /* 8 bold */
  SY_TYPE_POSTER,  /* 36 bold: capitals 9 mm high, to be read at 2 m (a height in 220, common practice, no source) */
  SY_TYPE_LARGE,   /* 20 bold */
  SY_TYPE_CARD,    /* 10.5    */
  SY_TYPE_CARD_STRONG, /* 10.5 bold */
  SY_TYPE_FINE,    /* 6.4: of a card, what is not for whoever stands before it */
} SyPageType;
#define SY_N_PAGE_TYPES 11

typedef struct
{
  cairo_t *cr;
  SyTranslate translate; /* NULL: English */
  SyPalette palette;     /* on white      */
  double left, right;    /* of what may be printed on */
  double y;
  PangoContext *context; /* what words are laid out in, borrowed; NULL: one is made for each */
} SyPage;

void sy_page_begin (SyPage *page, cairo_t *cr, SyTranslate translate, double left, double right,
                    double top);

/* A context in which words come out the same on screen and on paper; new reference. */
PangoContext *sy_page_context_new (void);

/* The text in the language of the page. Templates are marked with N_() where they stand. */
const char *sy_page_words (const SyPage *page, const char *msgid);

/* Words broken into lines @width wide (0: one line); new reference. */
PangoLayout *sy_page_layout (SyPage *page, const char *words, SyPageType type, double width);

/* Words that are already in the page's language. Alignment 0 left, 1 right about x. Return value:
   width. */
double sy_page_line (SyPage *page, double x, double baseline, double alignment, const char *words,
                     SyPageType type);
/* A paragraph from @x, @width wide, its top at @top. Return value: its height. */
double sy_page_paragraph (SyPage *page, double x, double top, double width, const char *words,
                          SyPageType type);
double sy_page_paragraph_height (SyPage *page, double width, const char *words, SyPageType type);

/* A numbered heading over a hairline, with room above; moves down. */
void sy_page_heading (SyPage *page, int number, const char *msgid);

/* A label with a line to write on, from @x to @end, on a row of @height from the page's y. Does not
   move. */
void sy_page_blank (SyPage *page, double x, double end, double height, const char *msgid);
/* A box to write a number in with its unit, after a label (NULL: none). Returns where it ends. */
double sy_page_number_box (SyPage *page, double x, double height, double width, const char *msgid,
                           const char *unit);
/* A square to tick, before its words (NULL: none). Returns where it ends. */
double sy_page_tick (SyPage *page, double x, double height, const char *msgid);

#endif
