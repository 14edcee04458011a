/* SPDX-License-Identifier: MIT */
#include "sy-tasks-cells.h"

#include <math.h>
#include <string.h>

#include "sy-i18n.h"
#include "sy-words.h"

#define NONE "–"

/* Topics: words of a row */

static char *
index_words (const SyTask *task)
{
  gboolean part = g_str_equal (task->index_symbol, "utilisation");

  if (isnan (task->index))
    return g_strdup (NONE);
  if (isinf (task->index))
    return g_strdup (part ? _("none left") : _("no limit"));
  if (part)
    /* As on the page of the task. */
    return sy_words_against (task->index * 100, 100, SY_KIND_PERCENT, SY_UNITS_METRIC);
  return sy_words_number (task->index, 2);
}

static char *
rank_words (const SyTask *task)
{
  if (isnan (task->rank))
    return g_strdup (NONE);
  if (isinf (task->rank))
    return g_strdup (_("no limit"));
  return sy_words_number (task->rank, task->rank < 10 ? 1 : 0);
}

static char *
mass_words (double kg, SyUnits units)
{
  if (isnan (kg))
    return g_strdup (NONE);
  return sy_words_quantity (sy_unit_convert (SY_KIND_MASS, kg, SY_UNITS_METRIC, units), SY_KIND_MASS, units);
}

static char *
day_words (const SyTask *task)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) claimed = g_date_time_new_from_iso8601 (task->when, utc);
  g_autoptr (GDateTime) here = claimed != NULL ? g_date_time_to_local (claimed) : NULL;

  return here != NULL ? g_date_time_format (here, "%Y-%m-%d") : g_strdup (task->when);
}

static char *
when_words (const SyTask *task)
{
  g_autofree char *day = day_words (task);

  /* Translators: when and by whom it was last revised: "2026-11-25 · A. Marsh". */
  return g_strdup_printf (C_ ("last revised", "%s · %s"), day, task->by != NULL ? task->by : "");
}

static char *
rank_explained (const SyTask *task)
{
  g_autofree char *index = index_words (task);
  g_autofree char *persons = sy_words_number (task->persons, 0);
  g_autofree char *lifts = NULL;
  g_autofree char *rank = rank_words (task);

  if (isnan (task->index))
    return g_strdup (_("Not ranked: the index cannot be worked out from what is known."));
  if (isnan (task->lifts_per_day))
    return g_strdup (_("Not ranked: how many lifts a day is not known."));
  lifts = sy_words_number (task->lifts_per_day, 0);
  /* Translators: index × people × lifts a day = rank. */
  return g_strdup_printf (_("Index %s × people %s × lifts a day %s = %s"), index, persons, lifts, rank);
}

static char *
or_none (const char *text)
{
  return g_strdup (*text != '\0' ? text : NONE);
}

static char *
balance_words (const SyTask *task, SyUnits units)
{
  char *part[3] = { NULL };
  char *words;

  for (int i = 0; i < 3; i++)
    {
      double place = sy_unit_convert (SY_KIND_LENGTH, task->detail.cg_mm[i], SY_UNITS_METRIC, units);

      if (isnan (place))
        break;
      part[i] = sy_words_number (place, units == SY_UNITS_METRIC ? 0 : 1);
    }
  /* Translators: where a die balances: three numbers and their unit. */
  words = part[2] != NULL ? g_strdup_printf (_("%s, %s, %s %s"), part[0], part[1], part[2],
                                             sy_unit_name (SY_KIND_LENGTH, units))
                          : g_strdup (NONE);
  for (int i = 0; i < 3; i++)
    g_free (part[i]);
  return words;
}

/* @past: what is said of a day that is over, e.g. "%s · expired". */
static char *
day_and_left (const char *day, double left, const char *past)
{
  g_auto (GStrv) parts = NULL;

  if (left < 0)
    {
      /* The words are a variable, and a format is never one. */
      parts = g_strsplit (past, "%s", 2);
      return g_strconcat (parts[0], day, parts[1], NULL);
    }
  if (left < 1)
    return g_strdup_printf (_("%s · today"), day);
  /* Translators: a date, and how many days there are until then. */
  return g_strdup_printf (P_ ("%s · %.0f day", "%s · %.0f days", (gulong) left), day, left);
}

static char *
due_words (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  double left = sy_task_row_get_days_left (row);

  if (*task->valid_until == '\0')
    return g_strdup (NONE);
  if (task->detail.withdrawn || isnan (left))
    return g_strdup (task->valid_until);
  /* Translators: a date that is past. */
  return day_and_left (task->valid_until, left, _("%s · expired"));
}

static char *
review_words (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  double left = sy_task_row_get_review_left (row);

  if (*task->review_due == '\0')
    return g_strdup (NONE);
  if (isnan (left) || left > SY_DUE_SOON_DAYS)
    return g_strdup (task->review_due);
  /* Translators: the date of a review, which is past; stands under "Review due". */
  return day_and_left (task->review_due, left, _("since %s"));
}

static char *
review_explained (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  g_autofree char *words = NULL;

  if (*task->review_due == '\0')
    return g_strdup (_("No review is set."));
  words = review_words (row);
  if (g_str_equal (task->review_trigger, "accident"))
    return g_strdup_printf (_("%s: review after an accident"), words);
  if (g_str_equal (task->review_trigger, "change"))
    return g_strdup_printf (_("%s: review after a change"), words);
  return g_strdup_printf (_("%s: review by date"), words);
}

static char *
signed_words (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);

  if (task->signed_revision == 0)
    return g_strdup (_("Not signed off."));
  if (sy_task_row_is_signed (row))
    return g_strdup_printf (_("Signed off by %s."), task->signed_by);
  return g_strdup_printf (_("Not signed off since revision %" G_GINT64_FORMAT "."), task->signed_revision);
}

static char *
name_words (const SyTask *task)
{
  if (task->retired)
    /* Translators: an item that is retired: it is kept in the record and no longer in use. */
    return g_strdup_printf (_("%s (retired)"), task->name);
  /* Translators: an item of which two revisions were made from the same one. */
  return task->clash != 0 ? g_strdup_printf (_("%s (two versions)"), task->name) : g_strdup (task->name);
}

static char *
condition_words (const SyTask *task)
{
  static const struct
  {
    const char *id, *words;
  } conditions[] = { { "good", N_ ("good") }, { "worn", N_ ("worn") }, { "damaged", N_ ("damaged") } };

  for (gsize i = 0; i < G_N_ELEMENTS (conditions); i++)
    if (g_strcmp0 (task->detail.condition, conditions[i].id) == 0)
      return g_strdup (sy_translate (conditions[i].words));
  return g_strdup (NONE);
}

static char *
verdict_words (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  const char *title = sy_translate (sy_verdict_title_for (sy_method_find (task->method), task->verdict));

  if (!sy_task_row_is_expired (row))
    return g_strdup (title);
  /* What no longer holds is said first where it was favourable; a refusal stays one. */
  if (sy_task_row_get_verdict (row) != task->verdict)
    /* Translators: a date, and the verdict that held until then. */
    return g_strdup_printf (_("Expired on %s · %s"), task->valid_until, title);
  /* Translators: a verdict, and the date until which what it rests on held. */
  return g_strdup_printf (_("%s · expired on %s"), title, task->valid_until);
}

static char *
use_words (const SyTask *task)
{
  return g_strdup (task->detail.withdrawn ? _("withdrawn") : _("in use"));
}

static char *
stands_words (const SyItemFigures *figures)
{
  if (figures == NULL || isnan (figures->stands_minutes))
    return g_strdup (NONE);
  return sy_words_quantity (figures->stands_minutes, SY_KIND_MINUTES, SY_UNITS_METRIC);
}

static char *
payback_words (const SyItemFigures *figures)
{
  g_autofree char *years = NULL;

  if (figures == NULL || isnan (figures->payback_years))
    return g_strdup (NONE);
  if (isinf (figures->payback_years))
    return g_strdup (C_ ("paid back", "never"));
  years = sy_words_number (figures->payback_years, 1);
  /* Translators: after how many years something is paid back. */
  return g_strdup_printf (_("%s years"), years);
}

static char *
npv_words (const SyItemFigures *figures)
{
  g_autofree char *amount = NULL;

  if (figures == NULL || isnan (figures->npv))
    return g_strdup (NONE);
  amount = sy_words_number (figures->npv, 0);
  return *figures->currency != '\0' ? g_strdup_printf ("%s %s", amount, figures->currency) : g_steal_pointer (&amount);
}

char *
sy_tasks_row_words (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  g_autofree char *index = index_words (task);
  g_autofree char *verdict = verdict_words (row);
  g_autofree char *name = task->retired ? name_words (task) : g_strdup (task->name);

  if (isnan (task->index))
    /* Translators: name of an item and its verdict. */
    return g_strdup_printf (_("%s: %s"), name, verdict);
  /* Translators: name of an item, its verdict, symbol and value of its index: "LI 2.1". */
  return g_strdup_printf (_("%s: %s, %s %s"), name, verdict, sy_words_index_sign (task->index_symbol, sy_translate), index);
}

char *
sy_tasks_cell_words (SyTaskRow *row, SyTaskColumn column, SyUnits units)
{
  const SyTask *task = sy_task_row_get_task (row);

  switch (column)
    {
    case SY_BY_VERDICT:
      return verdict_words (row);
    case SY_BY_NAME:
      return name_words (task);
    case SY_BY_PLACE:
      return or_none (task->place);
    case SY_BY_INDEX:
      return index_words (task);
    case SY_BY_RANK:
      return rank_words (task);
    case SY_BY_MASS:
      return mass_words (task->mass_kg, units);
    case SY_BY_WHEN:
      return when_words (task);
    case SY_BY_DAY:
      return day_words (task);
    case SY_BY_MACHINE:
      return or_none (task->detail.machine);
    case SY_BY_BALANCE:
      return balance_words (task, units);
    case SY_BY_STORAGE:
      return or_none (*task->detail.storage != '\0' ? task->detail.storage : task->place);
    case SY_BY_IDENTITY:
      return or_none (task->detail.identity);
    case SY_BY_GEAR:
      return or_none (sy_gear_kind_words (task->detail.gear_kind));
    case SY_BY_WLL:
      return mass_words (task->detail.wll_kg, units);
    case SY_BY_DUE:
      return due_words (row);
    case SY_BY_USE:
      return use_words (task);
    case SY_BY_CONDITION:
      return condition_words (task);
    case SY_BY_REVIEW:
      return review_words (row);
    case SY_BY_PERSONS:
      return sy_words_number (task->persons, 0);
    case SY_BY_STANDS:
      return stands_words (sy_task_row_get_figures (row));
    case SY_BY_WINNER:
      return or_none (sy_task_row_get_figures (row) != NULL ? sy_task_row_get_figures (row)->winner : "");
    case SY_BY_PAYBACK:
      return payback_words (sy_task_row_get_figures (row));
    case SY_BY_NPV:
      return npv_words (sy_task_row_get_figures (row));
    }
  return NULL;
}

/* What does not fit its column is read in full. */
static char *
verdict_explained (SyTaskRow *row)
{
  const SyTask *task = sy_task_row_get_task (row);
  const char *meaning = sy_translate (sy_verdict_meaning_for (sy_method_find (task->method), task->verdict));
  g_autofree char *words = verdict_words (row);

  return sy_task_row_is_expired (row) ? g_strdup_printf ("%s\n%s", words, meaning) : g_strdup (meaning);
}

char *
sy_tasks_cell_tooltip (SyTaskRow *row, SyTaskColumn column)
{
  const SyTask *task = sy_task_row_get_task (row);

  switch (column)
    {
    case SY_BY_VERDICT:
      return verdict_explained (row);
    case SY_BY_NAME:
      if (task->clash != 0)
        return g_strdup_printf (_("%s\nTwo revisions were made from the same one: %" G_GINT64_FORMAT
                                  " and %" G_GINT64_FORMAT ". Both are kept."),
                                task->name, MIN (task->revision, task->clash),
                                MAX (task->revision, task->clash));
      return task->retired ? g_strdup_printf (_("%s\nRetired: kept in the record, no longer in use."), task->name)
                           : g_strdup (task->name);
    case SY_BY_INDEX:
      return isinf (task->index) ? g_strdup (_("No limit holds: a fact is beyond what the method allows, "
                                               "so the recommended weight limit is zero."))
                                 : NULL;
    case SY_BY_RANK:
      return rank_explained (task);
    case SY_BY_WHEN:
    case SY_BY_DAY:
      {
        g_autofree char *signed_off = signed_words (row);

        return g_strdup_printf (_("Revision %" G_GINT64_FORMAT ", %s, by %s: %s\n%s"), task->revision, task->when, task->by,
                                task->why, signed_off);
      }
    case SY_BY_REVIEW:
      return review_explained (row);
    case SY_BY_PLACE:
    case SY_BY_MACHINE:
    case SY_BY_STORAGE:
    case SY_BY_IDENTITY:
    case SY_BY_DUE:
    case SY_BY_WINNER:
      return sy_tasks_cell_words (row, column, SY_UNITS_METRIC);
    case SY_BY_MASS:
    case SY_BY_BALANCE:
    case SY_BY_GEAR:
    case SY_BY_WLL:
    case SY_BY_USE:
    case SY_BY_CONDITION:
    case SY_BY_PERSONS:
    case SY_BY_STANDS:
    case SY_BY_PAYBACK:
    case SY_BY_NPV:
      return NULL;
    }
  return NULL;
}

/* Topics: headings */

typedef struct
{
  const char *title, *tooltip;
} Heading;

static const Heading headings[SY_N_TASK_COLUMNS] = {
  [SY_BY_VERDICT] = { N_ ("Verdict"), N_ ("What the record says of it under the policy in force then") },
  [SY_BY_NAME] = { N_ ("Name"), N_ ("Name in the record") },
  [SY_BY_PLACE] = { N_ ("Place"), N_ ("Where it is done") },
  [SY_BY_INDEX] = { N_ ("Index"), N_ ("The load against what may be carried: lifting index, or utilisation") },
  [SY_BY_RANK] = { N_ ("Rank"),
                   N_ ("Index × people × lifts a day: where a change would help most. Not a measure of harm.") },
  [SY_BY_MASS] = { N_ ("Heaviest"), N_ ("Mass of the heaviest load") },
  [SY_BY_WHEN] = { N_ ("Last revised"), N_ ("When it was last revised, and by whom") },
  [SY_BY_DAY] = { N_ ("Last revised"), N_ ("When it was last revised") },
  [SY_BY_MACHINE] = { N_ ("Machine"), N_ ("The machine it runs in") },
  [SY_BY_BALANCE] = { N_ ("Balances at"), N_ ("Centre of gravity: x, y and z as the drawing has them") },
  [SY_BY_STORAGE] = { N_ ("Storage"), N_ ("Where it is kept; its place where no storage is given") },
  [SY_BY_IDENTITY] = { N_ ("Mark"), N_ ("Mark or serial number: what tells it from the next") },
  [SY_BY_GEAR] = { N_ ("Kind"), N_ ("What it is") },
  [SY_BY_WLL] = { N_ ("WLL"), N_ ("Working load limit as marked, or rated load") },
  [SY_BY_DUE] = { N_ ("Due"), N_ ("Until when its examination holds") },
  [SY_BY_CONDITION] = { N_ ("Condition"), N_ ("As it was last looked over") },
  [SY_BY_REVIEW] = { N_ ("Review due"), N_ ("When the assessment is to be looked at again") },
  [SY_BY_PERSONS] = { N_ ("People"), N_ ("How many people there are") },
  [SY_BY_STANDS] = { N_ ("Stands"), N_ ("How long the machine stands") },
  [SY_BY_WINNER] = { N_ ("Best option"), N_ ("The assessed option with the largest net present value") },
  [SY_BY_PAYBACK] = { N_ ("Pays back"), N_ ("After how many years the best option is paid back") },
  [SY_BY_NPV] = { N_ ("Worth"), N_ ("Net present value of the best option, as it was recorded") },
  [SY_BY_USE] = { N_ ("Standing"), N_ ("In use, or withdrawn from it") },
};

static const Heading task_name = { N_ ("Task"), N_ ("Name of the task") };
static const Heading change_index
  = { N_ ("Index"), N_ ("The largest lifting index of a step, or of all lifts of one person in the change") };
static const Heading change_mass = { N_ ("By hand"), N_ ("The heaviest mass that one person moves by hand") };
static const Heading change_machine = { N_ ("Machine"), N_ ("The machine whose dies are changed") };
static const Heading die_mass = { N_ ("With allowance"), N_ ("What it weighs, with the allowance for how that is known") };

static const Heading *
heading (SyRegister which, SyTaskColumn column)
{
  if (which == SY_REGISTER_TASKS && column == SY_BY_NAME)
    return &task_name;
  if (which == SY_REGISTER_CHANGEOVERS && column == SY_BY_INDEX)
    return &change_index;
  if (which == SY_REGISTER_CHANGEOVERS && column == SY_BY_MASS)
    return &change_mass;
  if (which == SY_REGISTER_CHANGEOVERS && column == SY_BY_MACHINE)
    return &change_machine;
  if (which == SY_REGISTER_DIES && column == SY_BY_MASS)
    return &die_mass;
  return &headings[column];
}

const char *
sy_tasks_column_title (SyRegister which, SyTaskColumn column)
{
  return sy_translate (heading (which, column)->title);
}

const char *
sy_tasks_column_tooltip (SyRegister which, SyTaskColumn column)
{
  return sy_translate (heading (which, column)->tooltip);
}

gboolean
sy_tasks_column_is_figures (SyTaskColumn column)
{
  return column == SY_BY_INDEX || column == SY_BY_RANK || column == SY_BY_MASS || column == SY_BY_WLL
         || column == SY_BY_BALANCE || column == SY_BY_PERSONS
         || column == SY_BY_STANDS || column == SY_BY_PAYBACK || column == SY_BY_NPV;
}

const char *
sy_gear_kind_words (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sy_gear_kind_choices); i++)
    if (strcmp (id, sy_gear_kind_choices[i].id) == 0)
      return sy_translate (sy_gear_kind_choices[i].label);
  return id;
}
