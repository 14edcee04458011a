/* SPDX-License-Identifier: MIT */
#include "sy-beside-private.h"

#include <math.h>
#include <string.h>

/* Topics: parts */

const char *
sy_turn_id (SyTurn turn)
{
  static const char *const ids[] = { [SY_TURN_NONE] = "same", [SY_TURN_BETTER] = "better", [SY_TURN_WORSE] = "worse" };

  return ids[turn];
}

static void
free_row (gpointer data)
{
  SyBesideRow *row = data;

  g_free (row->id);
  g_free (row->name);
  g_free (row->texts[0]);
  g_free (row->texts[1]);
  g_free (row);
}

SyBesideRow *
sy_beside_add (GPtrArray *rows, const char *id, const char *name, char *before, char *after)
{
  SyBesideRow *row = g_new0 (SyBesideRow, 1);

  row->id = g_strdup (id);
  row->name = g_strdup (name);
  row->texts[0] = before;
  row->texts[1] = after;
  row->values[0] = row->values[1] = row->goals[0] = row->goals[1] = NAN;
  g_ptr_array_add (rows, row);
  return row;
}

const char *
sy_beside_say (const SyBesideWork *work, const char *msgid)
{
  return work->translate != NULL && *msgid != '\0' ? work->translate (msgid) : msgid;
}

SyTurn
sy_beside_turn (double before, double after, int sense)
{
  if (isnan (before) || isnan (after) || before == after)
    return SY_TURN_NONE;
  return (after < before) == (sense < 0) ? SY_TURN_BETTER : SY_TURN_WORSE;
}

gboolean
sy_beside_holds (const SyBesideRow *row, int side, gboolean *told)
{
  const gboolean known = !isnan (row->values[side]) && !isnan (row->goals[side]);

  if (told != NULL)
    *told = known;
  return known && row->values[side] <= row->goals[side];
}

/* Topics: reading a side */

static const SyJson *
find_quantity (const SyJson *findings, const char *symbol)
{
  const SyJson *quantities = findings != NULL ? sy_json_member (findings, "quantities") : NULL;

  return quantities != NULL ? sy_json_member (quantities, symbol) : NULL;
}

static gboolean
is_unbounded (const SyJson *object)
{
  return g_strcmp0 (sy_json_member_text (object, "state"), "unbounded") == 0;
}

static const SySymbol *
find_symbol (const SyMethod *method, const char *symbol)
{
  for (gsize i = 0; method != NULL && i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, symbol) == 0)
      return &method->symbols[i];
  return NULL;
}

gboolean
sy_beside_quantity (const SyBesideWork *work, int side, const char *symbol, double *value, SyKind *kind)
{
  const SyBesideSide *of = &work->beside->sides[side];
  const SyJson *quantity = find_quantity (work->read[side].findings, symbol);
  const SySymbol *known = find_symbol (of->method, symbol);

  if (quantity == NULL || known == NULL)
    return FALSE;
  *kind = known->kind;
  *value = is_unbounded (quantity) ? INFINITY
                                   : sy_unit_convert (known->kind, sy_json_member_number (quantity, "value", NAN), of->units,
                                                      work->beside->units);
  return !isnan (*value);
}

/* The goal of the index as the findings tell it: with the spread, with a limit that is the index itself, with the reason that
   it gave. */
static double
told_goal (const SyJson *findings, const char *index)
{
  const SyJson *spread = sy_json_member (findings, "spread"), *limits = sy_json_member (findings, "limits");
  const SyJson *reasons = sy_json_member (findings, "reasons");
  double lowest = NAN;

  if (spread != NULL && g_strcmp0 (sy_json_member_text (spread, "index"), index) == 0)
    return sy_json_member_number (spread, "goal", NAN);
  for (const SyJson *each = limits != NULL ? limits->first : NULL; each != NULL; each = each->next)
    {
      const SyJson *governs = sy_json_member (each, "governs");

      if (strcmp (index, "ratio") == 0 && governs != NULL && governs->type == SY_JSON_TRUE)
        return sy_json_member_number (each, "goal", NAN);
    }
  for (const SyJson *each = reasons != NULL ? reasons->first : NULL; each != NULL; each = each->next)
    if (g_strcmp0 (sy_json_member_text (each, "quantity"), index) == 0)
      lowest = fmin (lowest, sy_json_member_number (each, "limit", NAN));
  return lowest;
}

static double
find_goal (const SyBesideWork *work, int side, const char *index)
{
  const SyBesideSide *of = &work->beside->sides[side];
  const SyJson *findings = work->read[side].findings;
  const double told = told_goal (findings, index);
  const SyJson *policy = sy_json_member (findings, "policy");

  if (!isnan (told) || work->policy == NULL || policy == NULL || of->method == NULL)
    return told;
  if (g_strcmp0 (sy_json_member_text (policy, "id"), work->policy->id) != 0
      || sy_json_member_number (policy, "version", NAN) != work->policy->version)
    return NAN;
  const double goal = sy_policy_goal (work->policy, of->method, of->units).index;
  return isfinite (goal) ? goal : NAN;
}

/* "utilisation" is read in percent, as everywhere. */
static char *
index_number (const char *symbol, double value)
{
  const gboolean in_percent = strcmp (symbol, "utilisation") == 0 && isfinite (value);

  return in_percent ? sy_words_quantity (value * 100, SY_KIND_PERCENT, SY_UNITS_METRIC)
                    : sy_words_quantity (value, SY_KIND_RATIO, SY_UNITS_METRIC);
}

static char *
index_words (const SyBesideWork *work, const SyBesideSide *side)
{
  const SySymbol *known = find_symbol (side->method, side->index_symbol);
  const char *what = side->index_symbol;
  g_autofree char *number = NULL, *goal = NULL;

  if (*side->index_symbol == '\0' || isnan (side->index))
    return g_strdup ("");
  /* LI, CLI … are signs of the trade; an index that has none goes by its words */
  if (known != NULL && !sy_words_has_sign (what))
    what = sy_beside_say (work, known->label);
  number = index_number (side->index_symbol, side->index);
  if (isnan (side->goal))
    return g_strdup_printf ("%s %s", what, number);
  goal = index_number (side->index_symbol, side->goal);
  return sy_words_say (work->translate, N_ ("{what} {number} (goal {goal})"), "what", what, "number", number, "goal", goal,
                       NULL);
}

static char *
who_words (const SyBesideWork *work, const SyEvent *event)
{
  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, event->revision);

  if (event->revision <= 0)
    return g_strdup (event->name);
  return sy_words_say (work->translate, N_ ("{name}, revision {number}"), "name", event->name, "number", number, NULL);
}

static void
read_side (SyBesideWork *work, int at, const SyEvent *event, SyMemory *memory)
{
  SyBesideSide *side = &work->beside->sides[at];
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *findings = sy_json_scan (event->findings, strlen (event->findings), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *units = findings != NULL ? sy_json_member_text (findings, "units") : NULL;
  const char *verdict = findings != NULL ? sy_json_member_text (findings, "verdict") : NULL;
  const char *index = findings != NULL ? sy_json_member_text (findings, "index") : NULL;
  const SyJson *quantity = index != NULL ? find_quantity (findings, index) : NULL;
  const SyMethod *known = sy_method_find (event->method);

  work->read[at] = (SyBesideRead) { event, findings };
  side->method = known != NULL && event->edition <= known->edition ? known : NULL;
  side->title = g_strdup (known != NULL ? sy_beside_say (work, known->title) : event->method);
  side->who = who_words (work, event);
  if (units != NULL)
    sy_units_from_id (units, &side->units);
  side->has_verdict = verdict != NULL && sy_verdict_from_id (verdict, &side->verdict);
  side->verdict_words = g_strdup (sy_beside_say (work, side->has_verdict ? sy_verdict_title_for (known, side->verdict)
                                                                         : N_ ("no verdict")));
  side->index_symbol = g_strdup (quantity != NULL ? index : "");
  side->index = quantity == NULL         ? NAN
                : is_unbounded (quantity) ? INFINITY
                                          : sy_json_member_number (quantity, "value", NAN);
  side->goal = quantity != NULL ? find_goal (work, at, index) : NAN;
  side->index_words = index_words (work, side);
}

/* Topics: remarks and the sentence */

static void
remark (SyBesideWork *work, const char *msgid, const char *first, const char *second)
{
  g_ptr_array_add (work->beside->remarks,
                   sy_words_say (work->translate, msgid, "first", first, "second", second, NULL));
}

static void
add_remarks (SyBesideWork *work)
{
  const SyBeside *beside = work->beside;
  const SyBesideSide *sides = beside->sides;
  const SyEvent *before = work->read[0].event, *after = work->read[1].event;
  gboolean from_memory = FALSE;

  for (int i = 0; i < 2; i++)
    if (work->read[i].findings == NULL)
      remark (work, N_ ("The findings of {first} cannot be read."), sides[i].who, "");
    else if (sides[i].method == NULL)
      remark (work, N_ ("{first} was assessed by {second} in an edition that this program does not have: its figures are left "
                        "out."),
              sides[i].who, sides[i].title);
  if (!beside->same_method)
    remark (work, N_ ("Two ways of handling: {first} and {second}. Facts are not compared one by one, and each index is read "
                      "against its own goal: the two are not on one scale."),
            sides[0].title, sides[1].title);
  else if (before->edition != after->edition)
    remark (work, N_ ("By different editions of the method: part of a difference may come of that."), "", "");
  if (strcmp (before->policy, after->policy) != 0)
    remark (work, N_ ("Judged under different limits: {first} and {second}. Part of a difference may come of that."),
            before->policy, after->policy);
  if (sides[0].units != sides[1].units)
    remark (work, N_ ("Measured in different units. Values of the second are converted exactly to those of the first; facts "
                      "that are the same value are left out. The constants of the two unit systems differ slightly, so that "
                      "an index may too."),
            "", "");
  for (guint i = 0; i < beside->limits->len; i++)
    from_memory = from_memory || ((SyBesideRow *) beside->limits->pdata[i])->from_memory;
  if (from_memory)
    remark (work, N_ ("Limits marked “from memory” stand from memory: check them against the publication."), "", "");
}

static char *
result_of (const SyBesideSide *side)
{
  return *side->index_words != '\0' ? g_strdup_printf ("%s, %s", side->verdict_words, side->index_words)
                                    : g_strdup (side->verdict_words);
}

static char *
sentence (const SyBesideWork *work)
{
  const SyBesideSide *sides = work->beside->sides;
  g_autofree char *first = result_of (&sides[0]), *second = result_of (&sides[1]);

  static const char *const by_turn[] = {
    [SY_TURN_NONE] = N_ ("The verdict is as strict: from {first} to {second}."),
    [SY_TURN_BETTER] = N_ ("The second is better: from {first} to {second}."),
    [SY_TURN_WORSE] = N_ ("The second is worse: from {first} to {second}."),
  };
  const char *words = N_ ("First: {first}. Second: {second}.");

  if (sides[0].has_verdict && sides[1].has_verdict)
    words = by_turn[sy_beside_turn (sy_verdict_rank (sides[0].verdict), sy_verdict_rank (sides[1].verdict), -1)];
  return sy_words_say (work->translate, words, "first", first, "second", second, NULL);
}

/* Topics: the whole */

SyBeside *
sy_beside_new (const SyEvent *before, const SyEvent *after, const SyPolicy *policy, SyTranslate translate)
{
  SyBeside *beside = g_new0 (SyBeside, 1);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyBesideWork work = { .beside = beside, .policy = policy, .translate = translate };

  beside->changed = g_ptr_array_new_with_free_func (free_row);
  beside->bought = g_ptr_array_new_with_free_func (free_row);
  beside->limits = g_ptr_array_new_with_free_func (free_row);
  beside->reasons = g_ptr_array_new_with_free_func (free_row);
  beside->remarks = g_ptr_array_new_with_free_func (g_free);
  read_side (&work, 0, before, memory);
  read_side (&work, 1, after, memory);
  beside->units = beside->sides[0].units;
  beside->same_method = strcmp (before->method, after->method) == 0;
  if (beside->same_method)
    sy_beside_facts (&work);
  sy_beside_bought (&work);
  sy_beside_limits (&work);
  sy_beside_reasons (&work);
  add_remarks (&work);
  beside->sentence = sentence (&work);
  return beside;
}

void
sy_beside_free (SyBeside *beside)
{
  if (beside == NULL)
    return;
  for (int i = 0; i < 2; i++)
    {
      g_free (beside->sides[i].title);
      g_free (beside->sides[i].who);
      g_free (beside->sides[i].verdict_words);
      g_free (beside->sides[i].index_symbol);
      g_free (beside->sides[i].index_words);
    }
  g_ptr_array_unref (beside->changed);
  g_ptr_array_unref (beside->bought);
  g_ptr_array_unref (beside->limits);
  g_ptr_array_unref (beside->reasons);
  g_ptr_array_unref (beside->remarks);
  g_free (beside->sentence);
  g_free (beside);
}
