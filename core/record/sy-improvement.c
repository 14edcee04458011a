/* SPDX-License-Identifier: MIT */
#include "sy-improvement.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "sy-date.h"

#define MONTHS_A_QUARTER 3
#define QUARTERS_A_YEAR 4

/* Topics: one improvement */

/* Every text that an improvement owns. */
static const gsize texts[] = {
  G_STRUCT_OFFSET (SyImprovement, id),           G_STRUCT_OFFSET (SyImprovement, item),
  G_STRUCT_OFFSET (SyImprovement, item_kind),    G_STRUCT_OFFSET (SyImprovement, item_name),
  G_STRUCT_OFFSET (SyImprovement, from_item),    G_STRUCT_OFFSET (SyImprovement, from_kind),
  G_STRUCT_OFFSET (SyImprovement, from_name),    G_STRUCT_OFFSET (SyImprovement, from_hash),
  G_STRUCT_OFFSET (SyImprovement, to_hash),      G_STRUCT_OFFSET (SyImprovement, what),
  G_STRUCT_OFFSET (SyImprovement, idea_by),      G_STRUCT_OFFSET (SyImprovement, why),
  G_STRUCT_OFFSET (SyImprovement, put_to_work),  G_STRUCT_OFFSET (SyImprovement, entered_by),
  G_STRUCT_OFFSET (SyImprovement, entered_when), G_STRUCT_OFFSET (SyImprovement, withdrawn_by),
  G_STRUCT_OFFSET (SyImprovement, withdrawn_when), G_STRUCT_OFFSET (SyImprovement, withdrawn_why),
};

void
sy_improvement_free (SyImprovement *improvement)
{
  if (improvement == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_free (G_STRUCT_MEMBER (char *, improvement, texts[i]));
  g_free (improvement);
}

static SyImprovement *
begin (const SyEvent *event, const SyDeed *deed)
{
  SyImprovement *improvement = g_new0 (SyImprovement, 1);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, improvement, texts[i]) = g_strdup ("");
  sy_event_set (&improvement->id, deed->improvement);
  sy_event_set (&improvement->item, event->item);
  sy_event_set (&improvement->item_kind, event->item_kind);
  improvement->revision = event->revision;
  sy_event_set (&improvement->from_item, deed->from_item);
  sy_event_set (&improvement->from_kind, deed->from_kind);
  sy_event_set (&improvement->from_name, deed->from_name);
  improvement->from_revision = deed->from_revision;
  sy_event_set (&improvement->from_hash, deed->from_hash);
  sy_event_set (&improvement->to_hash, deed->to_hash);
  sy_event_set (&improvement->what, deed->what);
  sy_event_set (&improvement->idea_by, deed->idea_by);
  sy_event_set (&improvement->put_to_work, deed->put_to_work);
  sy_event_set (&improvement->why, event->why);
  sy_event_set (&improvement->entered_by, event->by);
  sy_event_set (&improvement->entered_when, event->claimed);
  return improvement;
}

/* What is withdrawn stays so, whatever comes after it from another record. */
static void
withdraw (SyImprovement *improvement, const SyEvent *event)
{
  if (improvement->withdrawn)
    return;
  improvement->withdrawn = TRUE;
  sy_event_set (&improvement->withdrawn_by, event->by);
  sy_event_set (&improvement->withdrawn_when, event->claimed);
  sy_event_set (&improvement->withdrawn_why, event->why);
}

SyImprovement *
sy_improvement_apply (SyImprovement *improvement, const SyEvent *event, guint64 line)
{
  SyDeed deed;
  gboolean taken = TRUE;

  if (event->kind != SY_EVENT_IMPROVEMENT || !sy_deed_read (event, &deed))
    return improvement;
  if (improvement == NULL && deed.step == SY_STEP_ADD)
    improvement = begin (event, &deed);
  else if (improvement != NULL && deed.step == SY_STEP_WITHDRAW && strcmp (improvement->id, deed.improvement) == 0
           && strcmp (improvement->item, event->item) == 0)
    withdraw (improvement, event);
  else
    taken = FALSE;
  if (taken)
    {
      sy_event_set (&improvement->item_name, event->name);
      improvement->line = line;
    }
  sy_deed_clear (&deed);
  return improvement;
}

/* Topics: what it bought */

static const struct
{
  const char *id; /* also that of the row beside each other */
  const char *title;
  SyKind kind;
} gains[SY_N_GAINS] = {
  [SY_GAIN_INDEX] = { "index", N_ ("Index lower by"), SY_KIND_RATIO },
  [SY_GAIN_MASS] = { "mass", N_ ("Heaviest mass by hand lower by"), SY_KIND_MASS },
  [SY_GAIN_STOPPED] = { "stopped", N_ ("Machine stands less, each change"), SY_KIND_MINUTES },
  [SY_GAIN_PERSON_MINUTES] = { "person-minutes", N_ ("Minutes of all people less, each change"), SY_KIND_MINUTES },
  [SY_GAIN_PERSONS] = { "persons", N_ ("Persons fewer"), SY_KIND_COUNT },
};

const char *
sy_gain_id (SyGain gain)
{
  return gains[gain].id;
}

const char *
sy_gain_title (SyGain gain)
{
  return gains[gain].title;
}

SyKind
sy_gain_kind (SyGain gain)
{
  return gains[gain].kind;
}

char *
sy_gain_words (SyGain gain, double value, SyUnits units)
{
  g_autofree char *words = NULL;

  if (isnan (value))
    return g_strdup ("–");
  words = sy_words_quantity (sy_unit_convert (gains[gain].kind, value, SY_UNITS_METRIC, units), gains[gain].kind, units);
  return *words == '-' ? g_strconcat ("−", words + 1, NULL) : g_steal_pointer (&words);
}

static const SyBesideRow *
find_row (const GPtrArray *rows, const char *id)
{
  for (guint i = 0; i < rows->len; i++)
    if (strcmp (((const SyBesideRow *) rows->pdata[i])->id, id) == 0)
      return rows->pdata[i];
  return NULL;
}

static gboolean
is_one_scale (const SyBeside *beside)
{
  return beside->same_method && *beside->sides[0].index_symbol != '\0'
         && strcmp (beside->sides[0].index_symbol, beside->sides[1].index_symbol) == 0;
}

/* Figures that say nothing new are not in the rows: they are the same on both sides. */
static double
find_gain (const SyBeside *beside, SyGain gain)
{
  const SyBesideRow *row = find_row (beside->bought, gains[gain].id);
  double less;

  if (row == NULL || (gain == SY_GAIN_INDEX && !is_one_scale (beside)))
    return NAN;
  less = row->values[0] - row->values[1];
  if (!isfinite (less))
    return NAN;
  return sy_unit_convert (gains[gain].kind, less, beside->units, SY_UNITS_METRIC);
}

static gboolean
is_favourable (const SyBesideSide *side)
{
  return side->has_verdict && sy_verdict_rank (side->verdict) < sy_verdict_rank (SY_VERDICT_IMPROVE);
}

SyImprovementView *
sy_improvement_view_new (SyImprovement *improvement, const SyEvent *before, const SyEvent *after, const SyPolicy *policy,
                         SyTranslate translate)
{
  SyImprovementView *view = g_new0 (SyImprovementView, 1);

  view->improvement = improvement;
  view->deferring = sy_deferring_new ();
  if (before != NULL && after != NULL)
    {
      view->beside = sy_beside_new (before, after, policy, translate);
      sy_deferring_add_findings (view->deferring, before->findings);
      sy_deferring_add_findings (view->deferring, after->findings);
      view->reached = is_favourable (&view->beside->sides[1]) && !is_favourable (&view->beside->sides[0]);
    }
  for (int i = 0; i < SY_N_GAINS; i++)
    view->gains[i] = view->beside != NULL ? find_gain (view->beside, (SyGain) i) : NAN;
  return view;
}

void
sy_improvement_view_free (SyImprovementView *view)
{
  if (view == NULL)
    return;
  sy_improvement_free (view->improvement);
  sy_beside_free (view->beside);
  sy_deferring_free (view->deferring);
  g_free (view);
}

/* Topics: totals by quarter */

/* Quarters since the year 0; FALSE: no date. */
static gboolean
find_quarter (const char *date, int *out)
{
  double days;
  int year, month;

  if (!sy_date_read (date, &days) || sscanf (date, "%d-%d", &year, &month) != 2)
    return FALSE;
  *out = year * QUARTERS_A_YEAR + (month - 1) / MONTHS_A_QUARTER;
  return TRUE;
}

static void
count_view (SyQuarter *quarter, const SyImprovementView *view)
{
  quarter->n++;
  quarter->n_reached += view->reached ? 1 : 0;
  for (int i = 0; i < SY_N_GAINS; i++)
    if (!isnan (view->gains[i]))
      {
        quarter->n_known[i]++;
        quarter->sums[i] += view->gains[i];
      }
}

GArray *
sy_improvement_quarters (GPtrArray *views)
{
  GArray *quarters = g_array_new (FALSE, TRUE, sizeof (SyQuarter));
  int first = G_MAXINT, last = G_MININT, place;

  for (guint i = 0; i < views->len; i++)
    {
      const SyImprovement *improvement = ((const SyImprovementView *) views->pdata[i])->improvement;

      if (!improvement->withdrawn && find_quarter (improvement->put_to_work, &place))
        {
          first = MIN (first, place);
          last = MAX (last, place);
        }
    }
  for (place = first; place <= last; place++)
    {
      SyQuarter quarter = { .year = place / QUARTERS_A_YEAR, .quarter = place % QUARTERS_A_YEAR + 1 };

      g_array_append_val (quarters, quarter);
    }
  for (guint i = 0; i < views->len; i++)
    {
      const SyImprovementView *view = views->pdata[i];

      if (!view->improvement->withdrawn && find_quarter (view->improvement->put_to_work, &place))
        count_view (&g_array_index (quarters, SyQuarter, place - first), view);
    }
  return quarters;
}

const char sy_improvement_reading[]
  = N_ ("Minutes and persons are those of each change; how often it is done is not in them. The index is told as the mean of "
        "those that have one, for a sum of indices says nothing. None of it promises fewer injuries.");

double
sy_quarter_figure (const SyQuarter *quarter, SyGain gain)
{
  if (quarter->n_known[gain] == 0)
    return NAN;
  return gain == SY_GAIN_INDEX ? quarter->sums[gain] / quarter->n_known[gain] : quarter->sums[gain];
}

SyQuarter
sy_improvement_total (const GArray *quarters)
{
  SyQuarter total = { 0 };

  for (guint i = 0; i < quarters->len; i++)
    {
      const SyQuarter *each = &g_array_index (quarters, SyQuarter, i);

      total.n += each->n;
      total.n_reached += each->n_reached;
      for (int k = 0; k < SY_N_GAINS; k++)
        {
          total.n_known[k] += each->n_known[k];
          total.sums[k] += each->sums[k];
        }
    }
  return total;
}

char *
sy_quarter_label (const SyQuarter *quarter)
{
  return g_strdup_printf ("%d Q%d", quarter->year, quarter->quarter);
}
