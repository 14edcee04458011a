/* SPDX-License-Identifier: MIT */
/* What came of it: verdict, index, figures, limits and reasons. */
#include <math.h>
#include <string.h>

#include "sy-beside-private.h"

/* Topics: verdict, index, what decides */

static void
add_verdict (SyBesideWork *work)
{
  const SyBesideSide *sides = work->beside->sides;
  SyBesideRow *row = sy_beside_add (work->beside->bought, "verdict", sy_beside_say (work, N_ ("Verdict")),
                                    g_strdup (sides[0].verdict_words), g_strdup (sides[1].verdict_words));

  if (sides[0].has_verdict && sides[1].has_verdict)
    row->turn = sy_beside_turn (sy_verdict_rank (sides[0].verdict), sy_verdict_rank (sides[1].verdict), -1);
}

static void
add_index (SyBesideWork *work)
{
  const SyBesideSide *sides = work->beside->sides;
  SyBesideRow *row;
  gboolean held[2], told[2];

  if (*sides[0].index_symbol == '\0' && *sides[1].index_symbol == '\0')
    return;
  row = sy_beside_add (work->beside->bought, "index", sy_beside_say (work, N_ ("Index that decides")),
                       *sides[0].index_words != '\0' ? g_strdup (sides[0].index_words) : NULL,
                       *sides[1].index_words != '\0' ? g_strdup (sides[1].index_words) : NULL);
  for (int i = 0; i < 2; i++)
    {
      row->values[i] = sides[i].index;
      row->goals[i] = sides[i].goal;
      held[i] = sy_beside_holds (row, i, &told[i]);
    }
  /* Two that are not on one scale are only told apart by whether their goals are reached. */
  if (work->beside->same_method && strcmp (sides[0].index_symbol, sides[1].index_symbol) == 0)
    row->turn = sy_beside_turn (row->values[0], row->values[1], -1);
  else if (told[0] && told[1] && held[0] != held[1])
    row->turn = held[1] ? SY_TURN_BETTER : SY_TURN_WORSE;
}

/* What is stored is "origin.HM", or the id of a limit where mass governs. */
static char *
governing_words (const SyBesideWork *work, int side)
{
  const SyJson *findings = work->read[side].findings;
  const char *id = findings != NULL ? sy_json_member_text (findings, "governing") : NULL;
  const SyMethod *method = work->beside->sides[side].method;

  if (id == NULL || *id == '\0')
    return NULL;
  for (gsize i = 0; method != NULL && i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, id) == 0)
      return g_strdup_printf ("%s (%s)", sy_beside_say (work, method->symbols[i].label), id);
  for (gsize i = 0; method != NULL && i < method->n_limits; i++)
    if (strcmp (method->limits[i].id, id) == 0)
      return g_strdup (sy_beside_say (work, method->limits[i].title));
  return g_strdup (id);
}

static void
add_governing (SyBesideWork *work)
{
  char *before = governing_words (work, 0), *after = governing_words (work, 1);

  if (before != NULL || after != NULL)
    sy_beside_add (work->beside->bought, "governing", sy_beside_say (work, N_ ("What decides")), before, after);
}

/* Topics: figures */

/* What people want to know of any way of handling. A figure goes by the first of its symbols that the findings have; @sense:
   -1 less is better, 1 more is better, 0 neither. */
#define FIGURE_SYMBOLS_MAX 3
static const struct
{
  const char *id, *name;
  int sense;
  const char *symbols[FIGURE_SYMBOLS_MAX];
} figures[] = {
  /* of a team the heavy end, which is more than an even part */
  { "mass", N_ ("Heaviest mass by hand, each person"), -1, { "heaviest.share", "mass_each", "heaviest_by_hand" } },
  { "mass-a-day", N_ ("Mass by hand in a day, each person"), -1, { "day_mass", "mass_per_day" } },
  { "force-start", N_ ("Force of the hands to start it"), -1, { "initial" } },
  { "force-keep", N_ ("Force of the hands to keep it moving"), -1, { "sustained" } },
  { "force-hold", N_ ("Force of the hands to hold it on the slope"), -1, { "hold" } },
  { "force-stop", N_ ("Force of the hands to stop it"), -1, { "stop" } },
  { "women", N_ ("Women who could"), 1, { "women.percent" } },
  { "men", N_ ("Men who could"), 1, { "men.percent" } },
  { "back", N_ ("Back compression, an estimate of another kind"), -1, { "back" } },
  { "stopped", N_ ("The machine stands for"), -1, { "stopped.elapsed" } },
  { "person-minutes", N_ ("Minutes of all people together"), -1, { "person.minutes" } },
  { "persons", N_ ("Persons"), 0, { "persons", "people" } },
  { "changes-a-year", N_ ("Changes a year"), 0, { "changes_per_year" } },
  { "pace", N_ ("Times a minute"), 0, { "F" } },
  { "times-a-day", N_ ("Times a day"), 0, { "lifts_per_day" } },
};

static char *
figure_words (const SyBesideWork *work, int side, const char *const *symbols, double *value)
{
  SyKind kind;

  for (gsize i = 0; i < FIGURE_SYMBOLS_MAX && symbols[i] != NULL; i++)
    if (sy_beside_quantity (work, side, symbols[i], value, &kind))
      return sy_words_quantity (*value, kind, work->beside->units);
  *value = NAN;
  return NULL;
}

static void
add_figures (SyBesideWork *work)
{
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      double values[2];
      char *before = figure_words (work, 0, figures[i].symbols, &values[0]);
      char *after = figure_words (work, 1, figures[i].symbols, &values[1]);
      SyBesideRow *row;

      /* What has no better and no worse says nothing where it is the same. */
      if (g_strcmp0 (before, after) == 0 && (before == NULL || figures[i].sense == 0))
        {
          g_free (before);
          g_free (after);
          continue;
        }
      row = sy_beside_add (work->beside->bought, figures[i].id, sy_beside_say (work, figures[i].name), before, after);
      memcpy (row->values, values, sizeof values);
      if (figures[i].sense != 0)
        row->turn = sy_beside_turn (values[0], values[1], figures[i].sense);
    }
}

void
sy_beside_bought (SyBesideWork *work)
{
  add_verdict (work);
  add_index (work);
  add_governing (work);
  add_figures (work);
}

/* Topics: limits */

static const SyJson *
first_of (const SyBesideWork *work, int side, const char *key)
{
  const SyJson *findings = work->read[side].findings;
  const SyJson *list = findings != NULL ? sy_json_member (findings, key) : NULL;

  return list != NULL && list->type == SY_JSON_ARRAY ? list->first : NULL;
}

static gboolean
is_same_text (const SyJson *a, const SyJson *b, const char *key)
{
  return g_strcmp0 (sy_json_member_text (a, key), sy_json_member_text (b, key)) == 0;
}

/* The same limit: methods may call different ones by one id. */
static const SyJson *
find_limit (const SyJson *first, const SyJson *wanted)
{
  for (const SyJson *each = first; each != NULL; each = each->next)
    if (is_same_text (each, wanted, "id") && is_same_text (each, wanted, "title"))
      return each;
  return NULL;
}

static char *
limit_words (const SyBesideWork *work, const SyBesideRow *row, int side)
{
  gboolean told, holds = sy_beside_holds (row, side, &told);
  g_autofree char *ratio = NULL, *goal = NULL;

  if (!told)
    return g_strdup (sy_beside_say (work, N_ ("not told")));
  ratio = sy_words_against (row->values[side], row->goals[side], SY_KIND_RATIO, work->beside->units);
  goal = sy_words_quantity (row->goals[side], SY_KIND_RATIO, work->beside->units);
  return sy_words_say (work->translate, holds ? N_ ("held: {ratio} (goal {goal})") : N_ ("broken: {ratio} (goal {goal})"),
                       "ratio", ratio, "goal", goal, NULL);
}

static void
read_limit (SyBesideRow *row, int side, const SyJson *limit)
{
  const SyJson *from_memory = sy_json_member (limit, "from_memory");

  row->values[side] = g_strcmp0 (sy_json_member_text (limit, "state"), "unbounded") == 0
                          ? INFINITY
                          : sy_json_member_number (limit, "ratio", NAN);
  row->goals[side] = sy_json_member_number (limit, "goal", NAN);
  row->from_memory = row->from_memory || (from_memory != NULL && from_memory->type == SY_JSON_TRUE);
}

static void
add_limit (SyBesideWork *work, const SyJson *before, const SyJson *after)
{
  const SyJson *limit = after != NULL ? after : before, *each[] = { before, after };
  const char *title = sy_json_member_text (limit, "title"), *edition = sy_json_member_text (limit, "edition");
  const char *id = sy_json_member_text (limit, "id");
  SyBesideRow *row = sy_beside_add (work->beside->limits, id != NULL ? id : "", "", NULL, NULL);
  gboolean held[2], told[2];

  for (int i = 0; i < 2; i++)
    {
      if (each[i] != NULL)
        {
          read_limit (row, i, each[i]);
          row->texts[i] = limit_words (work, row, i);
        }
      held[i] = sy_beside_holds (row, i, &told[i]);
    }
  g_free (row->name);
  row->name = g_strdup_printf ("%s%s%s%s%s%s", title != NULL ? sy_beside_say (work, title) : row->id,
                               edition != NULL ? " (" : "", edition != NULL ? edition : "", edition != NULL ? ")" : "",
                               row->from_memory ? " · " : "",
                               row->from_memory ? sy_beside_say (work, N_ ("from memory")) : "");
  if (told[0] && told[1])
    row->turn = held[0] != held[1] ? (held[1] ? SY_TURN_BETTER : SY_TURN_WORSE)
                                   : sy_beside_turn (row->values[0], row->values[1], -1);
}

void
sy_beside_limits (SyBesideWork *work)
{
  const SyJson *before = first_of (work, 0, "limits"), *after = first_of (work, 1, "limits");

  for (const SyJson *each = before; each != NULL; each = each->next)
    add_limit (work, each, find_limit (after, each));
  for (const SyJson *each = after; each != NULL; each = each->next)
    if (find_limit (before, each) == NULL)
      add_limit (work, NULL, each);
}

/* Topics: reasons */

static const SyJson *
find_reason (const SyJson *first, const SyJson *wanted)
{
  for (const SyJson *each = first; each != NULL; each = each->next)
    if (is_same_text (each, wanted, "id") && is_same_text (each, wanted, "subject"))
      return each;
  return NULL;
}

static char *
dup_said (const SyJson *reason)
{
  const char *text = reason != NULL ? sy_json_member_text (reason, "text") : NULL;

  return reason == NULL ? NULL : g_strdup (text != NULL ? text : sy_json_member_text (reason, "id"));
}

static void
add_reason (SyBesideWork *work, const SyJson *before, const SyJson *after)
{
  const char *id = sy_json_member_text (before != NULL ? before : after, "id");
  const char *name = before == NULL  ? N_ ("Reason that came")
                     : after == NULL ? N_ ("Reason that went")
                                     : N_ ("Reason that stays");
  SyBesideRow *row = sy_beside_add (work->beside->reasons, id != NULL ? id : "", sy_beside_say (work, name),
                                    dup_said (before), dup_said (after));

  /* That another method does not ask is no gain. */
  if (work->beside->same_method && (before == NULL || after == NULL))
    row->turn = after == NULL ? SY_TURN_BETTER : SY_TURN_WORSE;
}

void
sy_beside_reasons (SyBesideWork *work)
{
  const SyJson *before = first_of (work, 0, "reasons"), *after = first_of (work, 1, "reasons");

  for (const SyJson *each = before; each != NULL; each = each->next)
    if (find_reason (after, each) == NULL)
      add_reason (work, each, NULL);
  for (const SyJson *each = after; each != NULL; each = each->next)
    if (find_reason (before, each) == NULL)
      add_reason (work, NULL, each);
  for (const SyJson *each = before; each != NULL; each = each->next)
    {
      const SyJson *same = find_reason (after, each);

      if (same != NULL)
        add_reason (work, each, same);
    }
}
