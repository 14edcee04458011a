/* SPDX-License-Identifier: MIT */
#include "sy-improvement-sheet.h"

#include <math.h>
#include <string.h>

#include "sy-quarters.h"

#define FONT "Sans 7.5px"
/* The table has them all; more bars than these cannot be read. */
#define QUARTERS_DRAWN_MAX 12

static const char *
in_words (const SyImprovementSheet *sheet, const char *msgid)
{
  return sheet->translate != NULL ? sheet->translate (msgid) : msgid;
}

static char *
count_words (int n)
{
  return g_strdup_printf ("%d", n);
}

/* Topics: bars */

/* What the drawing points to. */
typedef struct
{
  SyQuarters quarters;
  SyQuarterRow rows[SY_QUARTER_ROWS_MAX];
  char *labels[QUARTERS_DRAWN_MAX];
  double values[SY_QUARTER_ROWS_MAX][QUARTERS_DRAWN_MAX];
  char *texts[SY_QUARTER_ROWS_MAX][QUARTERS_DRAWN_MAX];
  char *titles[SY_QUARTER_ROWS_MAX];
} Bars;

static void
bars_free (gpointer data)
{
  Bars *bars = data;

  for (int i = 0; i < QUARTERS_DRAWN_MAX; i++)
    g_free (bars->labels[i]);
  for (int row = 0; row < SY_QUARTER_ROWS_MAX; row++)
    {
      g_free (bars->titles[row]);
      for (int i = 0; i < QUARTERS_DRAWN_MAX; i++)
        g_free (bars->texts[row][i]);
    }
  g_free (bars);
}

static void
draw_bars (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data)
{
  const Bars *bars = data;

  sy_drawing_quarters (cr, width, height, &bars->quarters, palette, FONT);
}

static void
add_bar_row (Bars *bars, const SyImprovementSheet *sheet, const SyQuarter *quarters, int n, SyGain gain)
{
  const int row = bars->quarters.n_rows++;

  bars->titles[row] = g_strdup (in_words (sheet, gain == SY_GAIN_INDEX ? N_ ("Index lower by, mean") : sy_gain_title (gain)));
  for (int i = 0; i < n; i++)
    {
      bars->values[row][i] = sy_quarter_figure (&quarters[i], gain);
      if (!isnan (bars->values[row][i]))
        bars->texts[row][i] = sy_gain_words (gain, bars->values[row][i], sheet->units);
    }
  bars->rows[row] = (SyQuarterRow) { .title = bars->titles[row], .values = bars->values[row],
                                     .texts = (const char *const *) bars->texts[row] };
}

static gboolean
is_known (const SyQuarter *quarters, int n, SyGain gain)
{
  for (int i = 0; i < n; i++)
    if (quarters[i].n_known[gain] > 0)
      return TRUE;
  return FALSE;
}

static void
add_bars (SyFolio *folio, const SyImprovementSheet *sheet, const GArray *quarters)
{
  static const SyGain drawn[SY_QUARTER_ROWS_MAX] = { SY_GAIN_INDEX, SY_GAIN_STOPPED, SY_GAIN_PERSONS };
  const int n = MIN ((int) quarters->len, QUARTERS_DRAWN_MAX);
  const SyQuarter *shown = &g_array_index (quarters, SyQuarter, quarters->len - (guint) n);
  Bars *bars = g_new0 (Bars, 1);

  for (int i = 0; i < n; i++)
    bars->labels[i] = sy_quarter_label (&shown[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (drawn); i++)
    if (is_known (shown, n, drawn[i]))
      add_bar_row (bars, sheet, shown, n, drawn[i]);
  if (bars->quarters.n_rows == 0)
    {
      bars_free (bars);
      return;
    }
  bars->quarters.n_quarters = n;
  bars->quarters.quarters = (const char *const *) bars->labels;
  bars->quarters.rows = bars->rows;
  bars->quarters.heavy = n - 1;
  bars->quarters.hot = -1;
  sy_folio_pictures (folio,
                     &(SyFolioPicture) { .caption = "", .share = 1, .draw = draw_bars, .data = bars, .free = bars_free }, 1,
                     bars->quarters.n_rows * SY_QUARTER_ROW + SY_QUARTER_FOOT);
  if (n < (int) quarters->len)
    sy_folio_paragraph (folio, in_words (sheet, N_ ("Earlier quarters are in the table only.")), SY_TYPE_NOTE);
}

/* Topics: tables */

static void
add_quarter (SyFolio *folio, const SyImprovementSheet *sheet, const SyQuarter *quarter)
{
  g_autofree char *label = quarter->year > 0 ? sy_quarter_label (quarter) : g_strdup (in_words (sheet, N_ ("Together")));
  g_autofree char *n = count_words (quarter->n), *reached = count_words (quarter->n_reached);
  char *cells[3 + SY_N_GAINS] = { label, n, reached };

  for (int i = 0; i < SY_N_GAINS; i++)
    {
      g_autofree char *figure = sy_gain_words ((SyGain) i, sy_quarter_figure (quarter, (SyGain) i), sheet->units);

      cells[3 + i] = quarter->n_known[i] > 0 && quarter->n_known[i] < quarter->n
                         ? g_strdup_printf ("%s (%d)", figure, quarter->n_known[i])
                         : g_steal_pointer (&figure);
    }
  sy_folio_row_in (folio, (const char *const *) cells, quarter->year > 0 ? SY_TYPE_NOTE : SY_TYPE_NOTE_STRONG);
  for (int i = 0; i < SY_N_GAINS; i++)
    g_free (cells[3 + i]);
}

static void
add_totals (SyFolio *folio, const SyImprovementSheet *sheet, const GArray *quarters, const SyQuarter *total)
{
  const SyFolioColumn columns[] = {
    { in_words (sheet, N_ ("Quarter")), 0.11, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("How many")), 0.11, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Favourable now")), 0.12, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Index lower, mean")), 0.13, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Mass by hand less")), 0.14, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Machine stands less")), 0.14, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("People's minutes less")), 0.14, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Persons fewer")), 0.11, SY_TYPE_NOTE },
  };

  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < quarters->len; i++)
    add_quarter (folio, sheet, &g_array_index (quarters, SyQuarter, i));
  add_quarter (folio, sheet, total);
  sy_folio_paragraph (folio,
                      in_words (sheet, N_ ("By the day on which each was put to work. In brackets: of how many the figure is "
                                           "known, where it is not all of them.")),
                      SY_TYPE_NOTE);
  sy_folio_paragraph (folio, in_words (sheet, sy_improvement_reading), SY_TYPE_NOTE);
}

/* Topics: each of them */

/* The sentence has these. */
static gboolean
is_in_sentence (const SyBesideRow *row)
{
  return strcmp (row->id, "verdict") == 0 || strcmp (row->id, "index") == 0 || strcmp (row->id, "governing") == 0;
}

static char *
bought_words (const SyImprovementSheet *sheet, const SyBeside *beside)
{
  GString *words;

  if (beside == NULL)
    return g_strdup (in_words (sheet, N_ ("What it bought cannot be told: one of the two revisions is not in this record.")));
  words = g_string_new (beside->sentence);
  for (guint i = 0; i < beside->bought->len; i++)
    {
      const SyBesideRow *row = beside->bought->pdata[i];

      if (!is_in_sentence (row) && g_strcmp0 (row->texts[0], row->texts[1]) != 0)
        g_string_append_printf (words, "\n%s: %s → %s", row->name, row->texts[0] != NULL ? row->texts[0] : "–",
                                row->texts[1] != NULL ? row->texts[1] : "–");
    }
  return g_string_free (words, FALSE);
}

static char *
origin_words (const SyImprovementSheet *sheet, const SyImprovement *improvement)
{
  g_autofree char *from_revision = g_strdup_printf ("%" G_GINT64_FORMAT, improvement->from_revision);
  g_autofree char *revision = g_strdup_printf ("%" G_GINT64_FORMAT, improvement->revision);
  g_autofree char *day = g_strndup (improvement->entered_when, 10);
  g_autofree char *day_gone = g_strndup (improvement->withdrawn_when, 10);
  g_autofree char *idea = sy_words_say (sheet->translate,
                                        N_ ("Thought of by {idea}. From {from}, revision {from_revision}, to {to}, revision "
                                            "{revision}."),
                                        "idea", improvement->idea_by, "from", improvement->from_name, "from_revision",
                                        from_revision, "to", improvement->item_name, "revision", revision, NULL);
  g_autofree char *entered = sy_words_say (sheet->translate,
                                           *improvement->why != '\0' ? N_ ("Entered by {who} on {day}: {why}")
                                                                     : N_ ("Entered by {who} on {day}."),
                                           "who", improvement->entered_by, "day", day, "why", improvement->why, NULL);
  g_autofree char *withdrawn = sy_words_say (sheet->translate, N_ ("Withdrawn by {who} on {day}: {why}"), "who",
                                             improvement->withdrawn_by, "day", day_gone, "why", improvement->withdrawn_why,
                                             NULL);

  return g_strjoin ("\n", idea, entered, improvement->withdrawn ? withdrawn : NULL, NULL);
}

static void
add_view (SyFolio *folio, const SyImprovementSheet *sheet, const SyImprovementView *view)
{
  const SyImprovement *improvement = view->improvement;
  g_autofree char *what = g_strdup_printf ("%s\n%s", improvement->put_to_work, improvement->what);
  g_autofree char *origin = origin_words (sheet, improvement), *bought = bought_words (sheet, view->beside);
  const char *cells[] = { what, origin, bought };

  sy_folio_row (folio, cells);
}

/* A row each, so that what belongs to one stays on one page. */
static void
add_views (SyFolio *folio, const SyImprovementSheet *sheet, gboolean withdrawn, const char *heading)
{
  const SyFolioColumn columns[] = {
    { in_words (sheet, N_ ("Put to work, what")), 0.2, SY_TYPE_NOTE_STRONG },
    { in_words (sheet, N_ ("Whose idea, where")), 0.32, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("What it bought")), 0.48, SY_TYPE_NOTE },
  };
  gboolean begun = FALSE;

  for (guint i = 0; i < sheet->views->len; i++)
    {
      const SyImprovementView *view = sheet->views->pdata[i];

      if (!view->improvement->withdrawn != !withdrawn)
        continue;
      if (!begun)
        {
          sy_folio_heading (folio, in_words (sheet, heading));
          sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
        }
      begun = TRUE;
      add_view (folio, sheet, view);
    }
}

static char *
foot_words (const SyImprovementSheet *sheet)
{
  g_autoptr (SyDeferring) deferring = sy_deferring_new ();

  for (guint i = 0; i < sheet->views->len; i++)
    sy_deferring_add_all (deferring, ((const SyImprovementView *) sheet->views->pdata[i])->deferring);
  return sy_deferring_words (deferring, sheet->translate);
}

SyFolio *
sy_improvement_sheet_new (const SyImprovementSheet *sheet)
{
  g_autoptr (GArray) quarters = sy_improvement_quarters (sheet->views);
  const SyQuarter total = sy_improvement_total (quarters);
  g_autofree char *hash = sy_hash_text (&sheet->head), *foot = foot_words (sheet);
  g_autofree char *line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->head_line);
  g_autofree char *n = count_words (total.n), *reached = count_words (total.n_reached);
  g_autofree char *head = sy_words_say (sheet->translate, N_ ("Head of the journal now: line {line}, {hash}"), "line", line,
                                        "hash", hash, NULL);
  g_autofree char *subtitle = sy_words_say (sheet->translate,
                                            N_ ("Improvements put to work: {n}; by {reached} of them a task or a change came "
                                                "within its limits"),
                                            "n", n, "reached", reached, NULL);
  const SyFolioHead said = { .paper = sheet->paper, .translate = sheet->translate,
                             .title = in_words (sheet, N_ ("Improvement log")), .subtitle = subtitle, .head = head,
                             .program = sheet->program, .made = sheet->made, .foot = foot };
  SyFolio *folio = sy_folio_new (&said);

  if (total.n == 0)
    sy_folio_paragraph (folio, in_words (sheet, N_ ("No improvement is in the log.")), SY_TYPE_BODY);
  else
    {
      add_bars (folio, sheet, quarters);
      add_totals (folio, sheet, quarters, &total);
    }
  add_views (folio, sheet, FALSE, N_ ("Each improvement"));
  add_views (folio, sheet, TRUE, N_ ("Withdrawn"));
  return folio;
}
