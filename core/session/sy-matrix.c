/* SPDX-License-Identifier: MIT */
#include "sy-matrix.h"

#include <math.h>
#include <string.h>

#include "sy-die-facts.h"
#include "sy-gear-facts.h"
#include "sy-json.h"

static const char not_assessed[] = N_ ("{name}: its facts cannot be assessed.");
static const char clashes[] = N_ ("{name}: two revisions contradict each other; settle first which of them holds.");
static const char of_the_die[] = N_ ("Die: {text}");
static const char of_the_gear[] = N_ ("Gear: {text}");
static const char too_heavy[] = N_ ("With its allowance the die is {mass}; {name} may carry {wll}.");
static const char over_notice[] = N_ ("Loaded to {value} of its working load limit: over the notice of {limit}.");
static const char not_served[] = N_ ("It does not serve {machine}.");
static const char machine_not_said[] = N_ ("Which machine the die belongs to was not said.");
static const char serves_not_said[] = N_ ("Which machines it serves was not said.");
static const char load_centre[] =
  N_ ("Its plate holds with the load no farther out than {centre} from the forks, at the lift height it names.");
static const char no_load_centre[] = N_ ("The load centre of its plate was not given.");
static const char hung[] = N_ ("By mass alone: points, legs and angles need a plan of the lift.");
static const char carried[] = N_ ("By mass alone: load centre and lift height need a plan of the way.");
static const char rolled[] = N_ ("By mass alone: push, floor, slope and tipping need a plan of the way.");

typedef struct
{
  const SyRegisterItem *item;
  SyAssessment *assessment; /* NULL: cannot be assessed */
} Side;

typedef struct
{
  SyTranslate translate;
  double limit, notice; /* utilisations of the policy: not over, better not over */
} Making;

/* A cell and what it has to say, by verdict. */
typedef struct
{
  SyMatrixCell *cell;
  GPtrArray *by_verdict[SY_N_VERDICTS];
} Draft;

void
sy_matrix_cell_free (SyMatrixCell *cell)
{
  if (cell == NULL)
    return;
  g_free (cell->die);
  g_free (cell->die_name);
  g_free (cell->machine);
  g_free (cell->gear);
  g_free (cell->gear_name);
  g_free (cell->identity);
  g_free (cell->kind);
  g_ptr_array_unref (cell->why);
  g_ptr_array_unref (cell->remarks);
  g_free (cell);
}

/* Consumes @text. */
static void
add (Draft *draft, SyVerdict verdict, char *text)
{
  if (sy_verdict_rank (verdict) > sy_verdict_rank (draft->cell->verdict))
    draft->cell->verdict = verdict;
  sy_register_add_text (draft->by_verdict[verdict], text);
}

static double
mass_kg (const SyAssessment *assessment, const char *symbol)
{
  const SyQuantity *quantity = assessment != NULL ? sy_findings_quantity (assessment->findings, symbol) : NULL;

  return quantity == NULL ? NAN
                          : sy_unit_convert (SY_KIND_MASS, quantity->value, assessment->facts.units, SY_UNITS_METRIC);
}

/* What the item's own assessment says. That a mass alone does not say how a die may be moved, and that it is not for
   hands, is what the matrix is about. */
static void
judge_side (const Making *making, const Side *side, const char *frame, Draft *draft)
{
  if (side->item->clash)
    add (draft, SY_VERDICT_INCOMPLETE, sy_words_say (making->translate, clashes, "name", side->item->name, NULL));
  if (side->assessment == NULL)
    {
      add (draft, SY_VERDICT_INCOMPLETE,
           sy_words_say (making->translate, not_assessed, "name", side->item->name, NULL));
      return;
    }
  const SyFindings *findings = side->assessment->findings;
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];

      if (reason->verdict == SY_VERDICT_MECHANICAL || strcmp (reason->id, "die-how-not-assessed") == 0
          || strcmp (reason->id, "can-be-avoided") == 0 || sy_verdict_rank (reason->verdict) == 0)
        continue;
      g_autofree char *text = sy_words_reason (findings, reason, making->translate);
      /* "outside" counts as what is not known here. */
      add (draft, reason->verdict == SY_VERDICT_OUTSIDE ? SY_VERDICT_INCOMPLETE : reason->verdict,
           sy_words_say (making->translate, frame, "text", text, NULL));
    }
}

static void
judge_load (const Making *making, const Side *gear, Draft *draft)
{
  SyMatrixCell *cell = draft->cell;
  SyUnits units = gear->assessment->facts.units;
  double part = cell->mass_kg / cell->wll_kg;

  if (isnan (part))
    return; /* said by the item whose figure is not there */
  /* A quotient that is over 1 by no more than rounding is 1. */
  cell->utilisation = fabs (part - 1) < 1e-12 ? 1 : part;
  if (cell->utilisation > making->limit)
    {
      double mass = sy_unit_convert (SY_KIND_MASS, cell->mass_kg, SY_UNITS_METRIC, units);
      double wll = sy_unit_convert (SY_KIND_MASS, cell->wll_kg, SY_UNITS_METRIC, units);
      g_autofree char *needs = sy_words_against (mass, wll, SY_KIND_MASS, units);
      g_autofree char *may = sy_words_against (wll, mass, SY_KIND_MASS, units);
      add (draft, SY_VERDICT_DO_NOT_LIFT,
           sy_words_say (making->translate, too_heavy, "mass", needs, "name", cell->gear_name, "wll", may, NULL));
    }
  else if (cell->utilisation > making->notice)
    {
      g_autofree char *value = sy_words_against (cell->utilisation * 100, making->notice * 100, SY_KIND_PERCENT, units);
      g_autofree char *limit = sy_words_quantity (making->notice * 100, SY_KIND_PERCENT, units);
      add (draft, SY_VERDICT_IMPROVE,
           sy_words_say (making->translate, over_notice, "value", value, "limit", limit, NULL));
    }
}

/* Names of machines are the same whatever the case of their letters and the blanks around them. */
static gboolean
is_same (const char *one, const char *other)
{
  g_autofree char *a = g_utf8_casefold (one, -1), *b = g_utf8_casefold (other, -1);

  return strcmp (g_strstrip (a), g_strstrip (b)) == 0;
}

static void
judge_machine (const Making *making, const Side *gear, Draft *draft)
{
  const SyGearFacts *facts = gear->assessment->facts.values;
  const char *const *machines = facts->serves.items;
  SyMatrixCell *cell = draft->cell;

  cell->serves = SY_SERVES_NOT_KNOWN;
  if (*cell->machine == '\0')
    add (draft, SY_VERDICT_INCOMPLETE, sy_words_say (making->translate, machine_not_said, NULL));
  if (facts->serves.count == 0)
    {
      add (draft, SY_VERDICT_INCOMPLETE, sy_words_say (making->translate, serves_not_said, NULL));
      return;
    }
  if (*cell->machine == '\0')
    return;
  cell->serves = SY_SERVES_NO;
  for (size_t i = 0; i < facts->serves.count; i++)
    if (is_same (machines[i], cell->machine))
      cell->serves = SY_SERVES_YES;
  if (cell->serves == SY_SERVES_NO)
    add (draft, SY_VERDICT_DO_NOT_LIFT,
         sy_words_say (making->translate, not_served, "machine", cell->machine, NULL));
}

static void
remark (const Making *making, const Side *gear, Draft *draft)
{
  const SyGearFacts *facts = gear->assessment->facts.values;
  SyUnits units = gear->assessment->facts.units;
  const char *text = facts->kind == SY_GEAR_CART ? rolled : facts->kind == SY_GEAR_TRUCK ? carried : hung;

  sy_register_add_text (draft->cell->remarks, sy_words_say (making->translate, text, NULL));
  if (facts->kind != SY_GEAR_TRUCK)
    return;
  if (!facts->load_centre.given)
    {
      add (draft, SY_VERDICT_INCOMPLETE, sy_words_say (making->translate, no_load_centre, NULL));
      return;
    }
  g_autofree char *centre = sy_words_quantity (facts->load_centre.value, SY_KIND_LENGTH, units);
  sy_register_add_text (draft->cell->remarks,
                        sy_words_say (making->translate, load_centre, "centre", centre, NULL));
}

static const char *
machine_of (const Side *die)
{
  const char *machine = die->assessment != NULL ? ((const SyDieFacts *) die->assessment->facts.values)->machine : NULL;

  return machine != NULL ? machine : "";
}

static SyMatrixCell *
make_cell (const Making *making, const Side *die, const Side *gear)
{
  SyMatrixCell *cell = g_new0 (SyMatrixCell, 1);
  const SyGearFacts *facts = gear->assessment->facts.values;
  Draft draft = { .cell = cell };

  cell->die = g_strdup (die->item->id);
  cell->die_name = g_strdup (die->item->name);
  cell->machine = g_strdup (machine_of (die));
  cell->gear = g_strdup (gear->item->id);
  cell->gear_name = g_strdup (gear->item->name);
  cell->identity = g_strdup (facts->identity);
  cell->kind = g_strdup (sy_gear_kind_choices[facts->kind].id);
  cell->mass_kg = mass_kg (die->assessment, "mass_with_allowance");
  cell->wll_kg = mass_kg (gear->assessment, "wll");
  cell->utilisation = NAN;
  cell->verdict = SY_VERDICT_WITHIN_CAPACITY;
  cell->why = g_ptr_array_new_with_free_func (g_free);
  cell->remarks = g_ptr_array_new_with_free_func (g_free);
  for (int i = 0; i < SY_N_VERDICTS; i++)
    draft.by_verdict[i] = g_ptr_array_new ();

  judge_load (making, gear, &draft);
  judge_machine (making, gear, &draft);
  judge_side (making, gear, of_the_gear, &draft);
  judge_side (making, die, of_the_die, &draft);
  remark (making, gear, &draft);
  for (int i = SY_N_VERDICTS - 1; i >= 0; i--)
    {
      for (guint k = 0; k < draft.by_verdict[i]->len; k++)
        g_ptr_array_add (cell->why, draft.by_verdict[i]->pdata[k]);
      g_ptr_array_unref (draft.by_verdict[i]);
    }
  return cell;
}

static int
compare_cells (gconstpointer a, gconstpointer b)
{
  const SyMatrixCell *one = *(const SyMatrixCell *const *) a, *other = *(const SyMatrixCell *const *) b;
  int rank = sy_verdict_rank (one->verdict) - sy_verdict_rank (other->verdict);

  if (rank != 0)
    return rank;
  if (isnan (one->utilisation) != isnan (other->utilisation))
    return isnan (one->utilisation) ? 1 : -1;
  if (one->utilisation < other->utilisation || one->utilisation > other->utilisation)
    return one->utilisation < other->utilisation ? -1 : 1;
  return g_utf8_collate (one->gear_name, other->gear_name);
}

static void
clear_side (gpointer data)
{
  g_clear_pointer (&((Side *) data)->assessment, sy_assessment_unref);
}

static GArray *
assess_all (SyDesk *desk, const GPtrArray *items, const char *item_kind, double day)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  GArray *sides = g_array_new (FALSE, FALSE, sizeof (Side));

  g_array_set_clear_func (sides, clear_side);
  for (guint i = 0; i < items->len; i++)
    {
      Side side = { .item = items->pdata[i] };

      if (strcmp (side.item->item_kind, item_kind) != 0)
        continue;
      side.assessment = sy_register_assess (desk, side.item, day, problems);
      if (side.assessment != NULL && strcmp (side.assessment->facts.method->item_kind, item_kind) != 0)
        g_clear_pointer (&side.assessment, sy_assessment_unref);
      g_array_append_val (sides, side);
    }
  return sides;
}

static gboolean
is_means (const Side *gear)
{
  int kind = gear->assessment != NULL ? ((const SyGearFacts *) gear->assessment->facts.values)->kind : -1;

  return kind == SY_GEAR_HOIST || kind == SY_GEAR_CRANE || kind == SY_GEAR_TRUCK || kind == SY_GEAR_CART
         || kind == SY_GEAR_MANIPULATOR;
}

/* The policy's limits for what a load hangs from; a working load limit is never exceeded. */
static void
read_limits (const SyPolicy *policy, Making *making)
{
  for (int i = 0; i < policy->n_rows; i++)
    {
      const SyPolicyRow *row = &policy->rows[i];
      int rank = sy_verdict_rank (row->verdict);

      if (strcmp (row->symbol, "suspension.*.utilisation") != 0 || row->comparator != SY_OVER || row->limit_is_symbol)
        continue;
      if (rank > sy_verdict_rank (SY_VERDICT_IMPROVE))
        making->limit = fmin (making->limit, row->limit[SY_UNITS_METRIC]);
      else if (rank > 0)
        making->notice = fmin (making->notice, row->limit[SY_UNITS_METRIC]);
    }
}

GPtrArray *
sy_matrix_make (SyDesk *desk, const GPtrArray *dies, const GPtrArray *gear, const char *machine, double day,
                SyTranslate translate)
{
  Making making = { translate, 1, INFINITY };
  GPtrArray *cells = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_matrix_cell_free);
  g_autoptr (GArray) all_dies = assess_all (desk, dies, SY_ITEM_DIE, day);
  g_autoptr (GArray) all_gear = assess_all (desk, gear, SY_ITEM_GEAR, day);

  read_limits (sy_desk_policy (desk), &making);
  for (guint i = 0; i < all_dies->len; i++)
    {
      const Side *die = &g_array_index (all_dies, Side, i);
      g_autoptr (GPtrArray) row = g_ptr_array_new ();

      if (machine != NULL && !is_same (machine, machine_of (die)))
        continue;
      for (guint k = 0; k < all_gear->len; k++)
        if (is_means (&g_array_index (all_gear, Side, k)))
          g_ptr_array_add (row, make_cell (&making, die, &g_array_index (all_gear, Side, k)));
      g_ptr_array_sort (row, compare_cells);
      for (guint k = 0; k < row->len; k++)
        g_ptr_array_add (cells, row->pdata[k]);
    }
  return cells;
}

static void
write_number (GString *out, const char *name, double value)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_number (out, value);
}

void
sy_matrix_cell_write_json (GString *out, const SyMatrixCell *cell)
{
  static const char *const serves[] = { "false", "true", "null" };
  g_autofree char *caution = sy_words_screening (NULL);

  g_string_append_c (out, '{');
  sy_register_write_text (out, "die", cell->die_name);
  sy_register_write_text (out, "die_id", cell->die);
  sy_register_write_text (out, "machine", cell->machine);
  sy_register_write_text (out, "gear", cell->gear_name);
  sy_register_write_text (out, "gear_id", cell->gear);
  sy_register_write_text (out, "identity", cell->identity);
  sy_register_write_text (out, "kind", cell->kind);
  write_number (out, "mass_kg", cell->mass_kg);
  write_number (out, "wll_kg", cell->wll_kg);
  write_number (out, "utilisation", cell->utilisation);
  g_string_append_printf (out, ",\"serves\":%s", serves[cell->serves]);
  sy_register_write_text (out, "verdict", sy_verdict_id (cell->verdict));
  sy_register_write_texts (out, "why", cell->why);
  sy_register_write_texts (out, "remarks", cell->remarks);
  sy_register_write_text (out, "caution", caution);
  g_string_append_c (out, '}');
}
