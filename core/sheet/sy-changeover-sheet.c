/* SPDX-License-Identifier: MIT */
/* The plan of a die change: who does what when, step by step, with boxes to tick on the floor. */
#include <string.h>

#include "sy-change-plan.h"
#include "sy-task-sheet-private.h"

#define FONT "Sans 7.5px"
#define LANE_HEIGHT 40.0

/* ---- machine, dies, people ---- */

static void
add_line (GString *out, const char *words)
{
  g_string_append_printf (out, "%s%s", out->len > 0 ? "; " : "", words);
}

static char *
dies_words (const SyTaskSheet *sheet, const SyChangeoverFacts *facts, int goes)
{
  const SyChangeoverDie *dies = facts->dies.items;
  g_autoptr (GString) out = g_string_new (NULL);

  for (gsize i = 0; i < facts->dies.count; i++)
    {
      g_autofree char *mass = dies[i].mass.given ? sy_words_quantity (dies[i].mass.value, SY_KIND_MASS, sheet->facts->units)
                                                 : NULL;
      g_autofree char *words = g_strdup_printf ("%s%s%s", dies[i].label, mass != NULL ? ", " : "", mass != NULL ? mass : "");

      if (dies[i].goes == goes)
        add_line (out, words);
    }
  return g_strdup (out->len > 0 ? out->str : "–");
}

static void
add_what (SyFolio *folio, const SyTaskSheet *sheet, const SyChangeoverFacts *facts)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Machine")), 0.22, SY_TYPE_STRONG },
    { sy_sheet_in (sheet, N_ ("Comes out")), 0.26, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Goes in")), 0.26, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("People")), 0.26, SY_TYPE_BODY },
  };
  const char *const *people = facts->people.items;
  g_autofree char *out = dies_words (sheet, facts, SY_DIE_OUT), *in = dies_words (sheet, facts, SY_DIE_IN);
  g_autofree char *unsaid = dies_words (sheet, facts, -1);
  g_autoptr (GString) names = g_string_new (NULL);

  for (gsize k = 0; k < facts->people.count; k++)
    add_line (names, people[k]);
  const char *cells[] = { facts->machine != NULL ? facts->machine : "–", out, in, names->str };
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  sy_folio_row (folio, cells);
  if (strcmp (unsaid, "–") != 0)
    {
      g_autofree char *words = sy_words_say (sheet->translate, N_ ("Dies of which it was not said whether they go in or come "
                                                                   "out: {dies}"),
                                             "dies", unsaid, NULL);

      sy_folio_paragraph (folio, words, SY_TYPE_BODY);
    }
}

/* ---- lanes ---- */

static void
draw_lanes (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data)
{
  sy_drawing_lanes (cr, width, height, &((SyChangePlan *) data)->lanes, palette, FONT);
}

static void
free_plan (gpointer data)
{
  sy_change_plan_free (data);
}

static void
add_lanes (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  SyChangePlan *drawn = sy_change_plan_new (sheet->facts, sheet->findings, sheet->translate);
  const double height = SY_LANES_HEAD + SY_LANES_AXIS + SY_LANES_KEY + drawn->lanes.n_lanes * LANE_HEIGHT;

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Who does what when")));
  sy_folio_pictures (folio, &(SyFolioPicture) { "", 1, draw_lanes, drawn, free_plan }, 1, height);
  sy_folio_paragraph (folio, plan->sentence, SY_TYPE_NOTE);
}

/* ---- steps ---- */

static void
add_step (SyFolio *folio, const SyTaskSheet *sheet, const SyPlanStep *step)
{
  const gboolean says_kind = *step->kind != '\0' && strcmp (step->kind, step->label) != 0;
  g_autofree char *label = g_strdup_printf ("%s%s%s", step->label, says_kind ? "\n" : "", says_kind ? step->kind : "");
  const char *machine = sy_sheet_in (sheet, step->stopped ? N_ ("stopped") : N_ ("running"));
  g_autofree char *when = g_strdup_printf ("%s%s%s", machine, step->can_run ? "; " : "",
                                           step->can_run ? sy_sheet_in (sheet, N_ ("could be while it runs")) : "");
  const char *cells[] = { step->number, label, when, step->span, step->minutes, step->people, step->method, "",
                          step->verdict_words };

  sy_folio_row_shape (folio, cells, step->has_verdict ? 7 : -1, sy_sheet_shape (step->verdict),
                      step->has_verdict && sy_verdict_rank (step->verdict) >= sy_verdict_rank (SY_VERDICT_MECHANICAL)
                        ? SY_TYPE_NOTE_STRONG
                        : SY_TYPE_NOTE);
}

static void
add_steps (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("No.")), 0.05, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Step")), 0.23, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Machine")), 0.13, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("At minute")), 0.09, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Takes")), 0.07, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Who")), 0.13, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Assessed by")), 0.12, SY_TYPE_NOTE },
    { "", 0.02, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Verdict")), 0.16, SY_TYPE_NOTE },
  };

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Steps in their order")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < plan->n_steps; i++)
    add_step (folio, sheet, &plan->steps[i]);
}

/* ---- on the floor ---- */

static void
add_step_checks (SyFolio *folio, const SyTaskSheet *sheet, const SyPlanStep *step)
{
  g_autofree char *title = g_strdup_printf ("%s. %s", step->number, step->label);

  if (step->checks->len + step->missing->len == 0)
    return;
  sy_folio_paragraph (folio, title, SY_TYPE_STRONG);
  for (guint i = 0; i < step->checks->len; i++)
    sy_folio_tick (folio, g_ptr_array_index (step->checks, i), SY_TYPE_BODY);
  for (guint i = 0; i < step->missing->len; i++)
    {
      g_autofree char *words = sy_words_say (sheet->translate, N_ ("Missing in the plan. {words}"), "words",
                                             g_ptr_array_index (step->missing, i), NULL);

      sy_folio_paragraph (folio, words, SY_TYPE_STRONG);
    }
}

static void
add_checks (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Checks, to tick on the floor")));
  sy_folio_paragraph (folio,
                      sy_sheet_in (sheet, N_ ("Every time, at the step. A regulation beside a check is information, not "
                                              "advice.")),
                      SY_TYPE_NOTE);
  for (guint i = 0; i < plan->n_steps; i++)
    add_step_checks (folio, sheet, &plan->steps[i]);
}

/* ---- figures ---- */

static void
add_figures (SyFolio *folio, const char *heading, const char *title, const char *value, GPtrArray *figures, double share)
{
  const SyFolioColumn columns[] = {
    { title, share, SY_TYPE_BODY },
    { value, 1 - share, SY_TYPE_BODY },
  };

  if (figures->len == 0)
    return;
  sy_folio_heading (folio, heading);
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < figures->len; i++)
    {
      const SyPlanFigure *figure = g_ptr_array_index (figures, i);
      const char *cells[] = { figure->title, figure->value };

      sy_folio_row_in (folio, cells, figure->heavy ? SY_TYPE_STRONG : SY_TYPE_BODY);
    }
}

SyFolio *
sy_changeover_sheet_new (const SyTaskSheet *sheet)
{
  const SyChangeoverFacts *facts = sheet->facts->values;
  SyFolio *folio = sy_sheet_begin (sheet, N_ ("Changeover plan"));
  g_autoptr (SyChangePlan) plan = sy_change_plan_new (sheet->facts, sheet->findings, sheet->translate);
  g_autoptr (GPtrArray) figures = sy_change_plan_figures (sheet->findings, sheet->translate);
  g_autoptr (GPtrArray) people = sy_change_plan_people (sheet->facts, sheet->findings, sheet->translate);

  sy_sheet_add_lead (folio, sheet);
  add_what (folio, sheet, facts);
  add_lanes (folio, sheet, plan);
  add_steps (folio, sheet, plan);
  add_figures (folio, sy_sheet_in (sheet, N_ ("As a whole")), sy_sheet_in (sheet, N_ ("Quantity")),
               sy_sheet_in (sheet, N_ ("It is")), figures, 0.6);
  add_figures (folio, sy_sheet_in (sheet, N_ ("Person by person")), sy_sheet_in (sheet, N_ ("Person")),
               sy_sheet_in (sheet, N_ ("Work and lifts of the whole change")), people, 0.3);
  add_checks (folio, sheet, plan);
  sy_sheet_add_reasons (folio, sheet);
  sy_sheet_add_cautions (folio, sheet);
  sy_sheet_sign_off (folio, sheet);
  return folio;
}
