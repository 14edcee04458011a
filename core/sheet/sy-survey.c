/* SPDX-License-Identifier: MIT */
#include "sy-sheet.h"

#include <string.h>

#include "lift-scene.h"
#include "sy-page.h"
#include "sy-pdf.h"
#include "sy-survey-words.h"

#define PAGES 2
#define MARGIN 42.0 /* 15 mm: inside what any office printer prints */
#define TOP 40.0
#define FOOT 34.0   /* from the lower edge to the last line         */
#define ROW 22.0    /* of things to write on                        */

int
sy_survey_pages (const SySurveySheet *sheet)
{
  (void) sheet;
  return PAGES;
}

/* ---- small parts ---- */

static void
set_note (SyPage *page, const char *msgid)
{
  page->y += 3 + sy_page_paragraph (page, page->left, page->y, page->right - page->left,
                                    sy_page_words (page, msgid), SY_TYPE_NOTE);
}

/* A label, then boxes to tick side by side; moves down. */
static void
set_ticks (SyPage *page, const char *label, const char *const *choices, size_t n)
{
  double x = page->left;

  if (label)
    x += sy_page_line (page, x, page->y + 12, 0, sy_page_words (page, label), SY_TYPE_BODY) + 12;
  for (size_t i = 0; i < n; i++)
    x = sy_page_tick (page, x, 18, choices[i]) + 18;
  page->y += 18;
}

/* ---- page 1: where, whether, what, where the hands are ---- */

static void
set_head (const SySurveySheet *sheet, SyPage *page)
{
  double middle = (page->left + page->right) / 2;
  const char *units
      = sheet->units == SY_UNITS_US
            ? N_ ("Masses in pounds, lengths in inches. One sheet for each lift.")
            : N_ ("Masses in kilograms, lengths in centimetres. One sheet for each lift.");

  sy_page_line (page, page->left, page->y + 13, 0,
                sy_page_words (page, N_ ("Measuring sheet for a lift")), SY_TYPE_TITLE);
  sy_page_line (page, page->right, page->y + 13, 1, sy_page_words (page, units), SY_TYPE_NOTE);
  page->y += 20;
  sy_page_blank (page, page->left, middle - 8, ROW, N_ ("Workshop"));
  sy_page_blank (page, middle + 8, page->right, ROW, N_ ("Place"));
  page->y += ROW;
  sy_page_blank (page, page->left, page->right, ROW, N_ ("Task"));
  page->y += ROW;
  sy_page_blank (page, page->left, middle - 8, ROW, N_ ("Measured by"));
  sy_page_blank (page, middle + 8, page->right, ROW, N_ ("Date"));
  page->y += ROW - 4;
}

static void
set_avoid (SyPage *page)
{
  static const char *const choices[] = { N_ ("yes"), N_ ("no") };

  sy_page_heading (page, 1, N_ ("Can this handling be avoided altogether?"));
  double x = page->left;

  for (size_t i = 0; i < G_N_ELEMENTS (choices); i++)
    x = sy_page_tick (page, x, ROW, choices[i]) + 18;
  sy_page_blank (page, x, page->right, ROW, N_ ("If not, why not?"));
  page->y += ROW;
  sy_page_blank (page, page->left, page->right, ROW, NULL);
  page->y += ROW - 4;
}

static void
set_load (const SySurveySheet *sheet, SyPage *page)
{
  static const char *const how[]
      = { N_ ("measured (weighed)"), N_ ("drawing or plate"), N_ ("estimated") };
  const char *unit = sy_unit_name (SY_KIND_MASS, sheet->units);

  sy_page_heading (page, 2, N_ ("The load"));

  double x = sy_page_number_box (page, page->left, ROW, 78, N_ ("Typical"), unit);

  sy_page_number_box (page, x + 18, ROW, 78, N_ ("Heaviest that occurs"), unit);
  page->y += ROW;
  set_ticks (page, N_ ("How it was had:"), how, G_N_ELEMENTS (how));
}

/* The lift of the picture: any lift in which every measure can be seen. Its numbers are not
   printed. */
static void
fill_picture (SyScene *scene, SyUnits units, SyMark *marks, bool above)
{
  const double cm = sy_unit_convert (SY_KIND_REACH, 1, SY_UNITS_METRIC, units);
  const SyLiftPosition origin = { 55 * cm, 35 * cm, 20 }, destination = { 48 * cm, 128 * cm, 45 };

  sy_scene_begin (scene, units, marks, SY_LIFT_SCENE_MARKS);
  (above ? sy_lift_scene_above : sy_lift_scene_side) (scene, &origin, &destination,
                                                      destination.height - origin.height, NULL);
  for (int i = 0; i < scene->count; i++)
    {
      char *number = strchr (marks[i].text, ' ');

      if (number)
        *number = '\0';
    }
}

static void
set_picture (SyPage *page, SyUnits units, double x, double width, double height, bool above)
{
  SyMark marks[SY_LIFT_SCENE_MARKS];
  SyScene scene;
  cairo_t *cr = page->cr;

  fill_picture (&scene, units, marks, above);
  cairo_save (cr);
  cairo_translate (cr, x, page->y);
  sy_drawing_scene (cr, width, height, &scene, &page->palette, "Sans Bold 9px");
  sy_palette_use (cr, &page->palette.hairline, 1);
  cairo_set_line_width (cr, 0.8);
  cairo_rectangle (cr, 0.4, 0.4, width - 0.8, height - 0.8);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* What the solid and the open circle of the drawings mean. */
static void
set_legend (SyPage *page)
{
  cairo_t *cr = page->cr;
  double x = page->left + 4, baseline = page->y + 11, middle = baseline - 3;

  sy_palette_use (cr, &page->palette.ink, 1);
  cairo_arc (cr, x, middle, 3, 0, 2 * G_PI);
  cairo_fill (cr);
  x += 8
       + sy_page_line (page, x + 8, baseline, 0,
                       sy_page_words (page, N_ ("origin: the hands where the load is taken")),
                       SY_TYPE_NOTE);
  x += 24;
  cairo_set_line_width (cr, 1.2);
  cairo_arc (cr, x, middle, 3, 0, 2 * G_PI);
  cairo_stroke (cr);
  sy_page_line (page, x + 8, baseline, 0,
                sy_page_words (page, N_ ("destination: the hands where it is put down")),
                SY_TYPE_NOTE);
  page->y += 16;
}

/* A box for the measure and, behind it, how it was had. */
static void
set_measure_cell (SyPage *page, double x, const char *unit)
{
  static const char *const how[] = { N_ ("M"), N_ ("D"), N_ ("E") };

  x = sy_page_number_box (page, x, ROW, 56, NULL, unit) + 8;
  for (size_t i = 0; i < G_N_ELEMENTS (how); i++)
    x = sy_page_tick (page, x, ROW, how[i]) + 8;
}

static void
set_measures (const SySurveySheet *sheet, SyPage *page)
{
  static const struct
  {
    const char *symbol, *words;
    SyKind kind;
    bool one_end;
  } rows[] = {
    { "H",
      N_ ("Along the floor, from the middle between the inner ankle bones to the point plumb below "
          "the middle between the hands."),
      SY_KIND_REACH, false },
    { "V", N_ ("From the floor straight up to the middle between the hands, where they grip."),
      SY_KIND_REACH, false },
    { "A",
      N_ ("From straight ahead to where the hands are, seen from above; feet where they stand, "
          "before turning them."),
      SY_KIND_ANGLE, false },
    { "D",
      N_ ("Only if no one place of putting down can be measured: how far up or down the load "
          "goes."),
      SY_KIND_REACH, true },
  };
  double destination = page->right - 140, origin = destination - 156, words = page->left + 18;

  page->y += 2;
  sy_page_line (page, words, page->y + 9, 0, sy_page_words (page, N_ ("Where to hold the tape")),
                SY_TYPE_STRONG);
  sy_page_line (page, origin, page->y + 9, 0, sy_page_words (page, N_ ("Origin")), SY_TYPE_STRONG);
  sy_page_line (page, destination, page->y + 9, 0, sy_page_words (page, N_ ("Destination")),
                SY_TYPE_STRONG);
  page->y += 15;
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *unit
          = rows[i].kind == SY_KIND_ANGLE ? "°" : sy_unit_name (rows[i].kind, sheet->units);
      double height = sy_page_paragraph (page, words, page->y + 1, origin - words - 14,
                                         sy_page_words (page, rows[i].words), SY_TYPE_NOTE);

      sy_page_line (page, page->left, page->y + 11, 0, rows[i].symbol, SY_TYPE_HEADING);
      set_measure_cell (page, origin, unit);
      if (!rows[i].one_end)
        set_measure_cell (page, destination, unit);
      page->y += MAX (height + 5, ROW + 4);
    }
  set_note (page, N_ ("How it was had: M measured, D taken from a drawing, E estimated."));
}

static void
draw_first (const SySurveySheet *sheet, SyPage *page, double bottom)
{
  static const char *const control[] = { N_ ("yes"), N_ ("no") };
  /* What stands below the pictures; they take what is left of the page. */
  const double below = 206, gap = 12;
  double width = (page->right - page->left - gap) / 2;

  set_head (sheet, page);
  set_avoid (page);
  set_load (sheet, page);
  sy_page_heading (page, 3, N_ ("Where the hands are"));

  double height = MIN (bottom - page->y - below, width);

  set_picture (page, sheet->units, page->left, width, height, false);
  set_picture (page, sheet->units, page->left + width + gap, width, height, true);
  page->y += height;
  set_legend (page);
  set_measures (sheet, page);
  page->y += 2;
  set_ticks (page, N_ ("At the destination, must it be placed with care, held or gripped anew?"),
             control, G_N_ELEMENTS (control));
}

/* ---- page 2: how often, how held, by whom, what else ---- */

static void
set_pace (SyPage *page)
{
  static const char *const how[] = { N_ ("counted"), N_ ("drawing or plan"), N_ ("estimated") };
  const double box = 52;

  sy_page_heading (page, 4, N_ ("How often and how long"));

  double x = sy_page_number_box (page, page->left, ROW, box, N_ ("Lifts counted"), NULL);

  x = sy_page_number_box (page, x + 10, ROW, box, N_ ("in"), "min");
  sy_page_number_box (page, x + 24, ROW, box + 12, N_ ("Lifts in a day"), NULL);
  page->y += ROW;
  set_ticks (page, N_ ("How it was had:"), how, G_N_ELEMENTS (how));
  set_note (page, N_ ("Count the busiest 15 minutes, or less if the lifting stops sooner."));
  page->y += 3;
  x = sy_page_number_box (page, page->left, ROW, box, N_ ("Lifting for"), "min");
  x = sy_page_number_box (page, x + 10, ROW, box, N_ ("then light work for"), "min");
  sy_page_number_box (page, x + 10, ROW, box, N_ ("and so on through a shift of"), "min");
  page->y += ROW + 2;
  set_note (page, N_ ("Light work is work without handling, such as watching or writing. Say in "
                      "the notes where the day has no such pattern."));
}

static void
set_grip (SyPage *page)
{
  /* Classes: 94-110 section 1.3.6; the wording is ours. */
  static const struct
  {
    const char *name, *words;
  } classes[] = {
    { N_ ("good"), N_ ("Handles or hand holes that fit the hand, or a loose part that the hand "
                       "wraps round with ease.") },
    { N_ ("fair"),
      N_ ("Handles that fit badly, or none, but the fingers can be bent square under the load.") },
    { N_ ("poor"), N_ ("Bulky, slippery, sharp-edged or sagging; nothing to hold on to.") },
  };

  sy_page_heading (page, 5, N_ ("The grip: the worst over the whole lift"));
  for (size_t i = 0; i < G_N_ELEMENTS (classes); i++)
    {
      sy_page_tick (page, page->left, 16, classes[i].name);
      sy_page_line (page, page->left + 58, page->y + 16 * 0.68, 0,
                    sy_page_words (page, classes[i].words), SY_TYPE_NOTE);
      page->y += 16;
    }
}

static void
set_people (SyPage *page)
{
  static const char *const hands[] = { N_ ("two"), N_ ("one") };
  static const char *const assigned[] = { N_ ("anyone, of any age"), N_ ("adults, women and men"),
                                          N_ ("only men of 20 to 45") };

  sy_page_heading (page, 6, N_ ("Who lifts"));

  double x = page->left + sy_page_line (page, page->left, page->y + ROW * 0.68, 0,
                                        sy_page_words (page, N_ ("Hands:")), SY_TYPE_BODY) + 10;

  for (size_t i = 0; i < G_N_ELEMENTS (hands); i++)
    x = sy_page_tick (page, x, ROW, hands[i]) + 14;
  sy_page_number_box (page, x + 14, ROW, 44, N_ ("Persons at one load"), NULL);
  page->y += ROW + 1;
  set_ticks (page, N_ ("May be given to:"), assigned, G_N_ELEMENTS (assigned));
}

static void
set_conditions (const SySurveySheet *sheet, SyPage *page)
{
  const double row = 15.2;
  double no = page->right - 34, yes = no - 46;

  sy_page_heading (page, 7, N_ ("Ask about each; tick every line"));
  for (int i = 0; i < SY_SURVEY_CONDITIONS; i++)
    {
      sy_page_line (page, page->left, page->y + row * 0.68, 0,
                    sy_page_words (page, sy_survey_question (i, sheet->units)), SY_TYPE_BODY);
      sy_page_tick (page, yes, row, N_ ("yes"));
      sy_page_tick (page, no, row, N_ ("no"));
      page->y += row;
    }
  page->y += 2;
  set_note (page, N_ ("One yes, and the equation does not answer for this lift: a competent person "
                      "must assess it."));
}

static void
set_caution (SyPage *page, double bottom)
{
  g_autofree char *screening = sy_words_screening (page->translate);
  g_autofree char *words
      = g_strconcat (sy_page_words (page, sy_survey_caution), " ", screening, NULL);
  double width = page->right - page->left;
  double height = sy_page_paragraph_height (page, width, words, SY_TYPE_STRONG);

  sy_page_paragraph (page, page->left, bottom - height, width, words, SY_TYPE_STRONG);
  page->y = bottom - height;
}

static void
draw_second (const SySurveySheet *sheet, SyPage *page, double bottom)
{
  double middle = (page->left + page->right) / 2 + 40;

  set_pace (page);
  set_grip (page);
  set_people (page);
  set_conditions (sheet, page);
  sy_page_heading (page, 8, N_ ("Notes"));

  double top = page->y;

  set_caution (page, bottom);

  double signature = page->y - ROW - 6;

  page->y = signature;
  sy_page_blank (page, page->left, middle - 8, ROW, N_ ("Signature of the one who measured"));
  sy_page_blank (page, middle + 8, page->right, ROW, N_ ("Date"));
  for (page->y = top - 8; page->y + ROW <= signature; page->y += ROW)
    sy_page_blank (page, page->left, page->right, ROW, NULL);
}

/* ---- the whole ---- */

static void
set_foot (const SySurveySheet *sheet, SyPage *page, int number, double baseline)
{
  GString *words = g_string_new (sy_page_words (page, N_ ("Page {page} of {pages}")));
  g_autofree char *page_text = g_strdup_printf ("%d", number + 1);
  g_autofree char *pages_text = g_strdup_printf ("%d", PAGES);
  g_autofree char *source
      = g_strconcat (sheet->program ? sheet->program : "", sheet->program ? " · " : "",
                     sy_page_words (page, N_ ("Measures as in the revised NIOSH lifting equation, "
                                              "DHHS (NIOSH) Publication 94-110")),
                     NULL);

  g_string_replace (words, "{page}", page_text, 0);
  g_string_replace (words, "{pages}", pages_text, 0);
  sy_page_line (page, page->left, baseline, 0, source, SY_TYPE_NOTE);
  sy_page_line (page, page->right, baseline, 1, words->str, SY_TYPE_NOTE);
  g_string_free (words, TRUE);
}

void
sy_survey_draw (const SySurveySheet *sheet, int number, cairo_t *cr)
{
  double width, height;
  SyPage page;

  sy_paper_size (sheet->paper, &width, &height);
  cairo_save (cr);
  sy_page_begin (&page, cr, sheet->translate, MARGIN, width - MARGIN, TOP);
  set_foot (sheet, &page, number, height - FOOT);

  double bottom = height - FOOT - 18;

  if (number == 0)
    draw_first (sheet, &page, bottom);
  else
    draw_second (sheet, &page, bottom);
  cairo_restore (cr);
}

static void
draw_page (gconstpointer sheet, int page, cairo_t *cr)
{
  sy_survey_draw (sheet, page, cr);
}

gboolean
sy_survey_write_pdf (const SySurveySheet *sheet, const char *path, const char *created,
                     GError **error)
{
  const char *title = N_ ("Measuring sheet for a lift");
  const SyPdf pdf = {
    .paper = sheet->paper,
    .title = sheet->translate ? sheet->translate (title) : title,
    .program = sheet->program,
    .created = created,
    .pages = sy_survey_pages (sheet),
    .draw = draw_page,
    .sheet = sheet,
  };

  return sy_pdf_write (&pdf, path, error);
}
