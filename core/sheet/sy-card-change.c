/* SPDX-License-Identifier: MIT */
/* The card of a die change: who does it, how each load is moved, what is ticked in its order; or what keeps it from being
   done. */
#include <string.h>

#include "sy-change-plan.h"
#include "sy-task-sheet-private.h"

static gboolean
is_refused (const SyPlanStep *step)
{
  return step->has_verdict && sy_verdict_rank (step->verdict) > sy_verdict_rank (SY_VERDICT_IMPROVE);
}

static void
add_people (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyChangeoverFacts *facts = sheet->facts->values;
  const char *const *people = facts->people.items;
  g_autoptr (GString) names = g_string_new (NULL);
  g_autofree char *words = NULL;

  for (gsize k = 0; k < facts->people.count; k++)
    g_string_append_printf (names, "%s%s", k > 0 ? ", " : "", people[k]);
  if (names->len == 0)
    return;
  words = sy_words_say (sheet->translate, N_ ("People: {names}"), "names", names->str, NULL);
  sy_folio_paragraph (folio, words, SY_TYPE_CARD_STRONG);
}

/* Steps in which a load is moved: how, and by whom. */
static void
add_loads (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("No.")), 0.07, SY_TYPE_BODY },
    { "", 0.05, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Load moved")), 0.5, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("How")), 0.18, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Who")), 0.2, SY_TYPE_BODY },
  };
  gboolean begun = FALSE;

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const SyPlanStep *step = &plan->steps[i];
      const char *cells[] = { step->number, "", step->label, step->method, step->people };

      if (!step->has_verdict)
        continue;
      if (!begun)
        sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
      begun = TRUE;
      sy_folio_row_shape (folio, cells, 1, sy_sheet_shape (step->verdict), SY_TYPE_BODY);
    }
}

/* Steps that keep it from being done. */
static void
add_refused (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("No.")), 0.07, SY_TYPE_BODY },
    { "", 0.05, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Not to be done as planned")), 0.46, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("It is")), 0.42, SY_TYPE_BODY },
  };
  gboolean begun = FALSE;

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const SyPlanStep *step = &plan->steps[i];
      const char *cells[] = { step->number, "", step->label, step->verdict_words };

      if (!is_refused (step))
        continue;
      if (!begun)
        sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
      begun = TRUE;
      sy_folio_row_shape (folio, cells, 1, sy_sheet_shape (step->verdict), SY_TYPE_STRONG);
    }
}

/* A box for the checks of each step; one for each check is on the plan. */
static void
add_ticks (SyFolio *folio, const SyTaskSheet *sheet, const SyChangePlan *plan)
{
  gboolean begun = FALSE;

  for (guint i = 0; i < plan->n_steps; i++)
    {
      const GPtrArray *checks = plan->steps[i].checks;
      g_autoptr (GString) words = g_string_new (plan->steps[i].number);

      for (guint k = 0; k < checks->len; k++)
        g_string_append_printf (words, "%s%s", k == 0 ? ". " : " · ", (const char *) checks->pdata[k]);
      if (checks->len == 0)
        continue;
      if (!begun)
        sy_folio_paragraph (folio, sy_sheet_in (sheet, N_ ("Tick at the step, every time: no step without its checks")),
                            SY_TYPE_STRONG);
      begun = TRUE;
      sy_folio_tick (folio, words->str, SY_TYPE_NOTE);
    }
}

void
sy_card_add_change (SyFolio *folio, const SyTaskSheet *sheet)
{
  const gboolean may = sy_verdict_rank (sy_sheet_verdict (sheet)) <= sy_verdict_rank (SY_VERDICT_IMPROVE);
  g_autoptr (SyChangePlan) plan = sy_change_plan_new (sheet->facts, sheet->findings, sheet->translate);

  add_people (folio, sheet);
  if (!may)
    {
      add_refused (folio, sheet, plan);
      return;
    }
  add_loads (folio, sheet, plan);
  add_ticks (folio, sheet, plan);
}
