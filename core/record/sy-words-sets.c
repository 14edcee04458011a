/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* Words of sets of lifts. */

static const SyTemplate templates[] = {
  { "set-adds-most", N_ ("{subject} adds most to the index: {value} of {limit}. Without it the index is {third}.") },
  { "set-one-lift", N_ ("{subject} is the only lift: the index is that of it alone, {value}.") },
  { "set-leads", N_ ("{subject} leads the rotation: {value} if it were done all the time, {limit} in its own time.") },
  { "set-highest", N_ ("{subject} has the highest index apart from frequency, {value}.") },
  { "set-no-limit", N_ ("{subject}: no limit holds, so the index has no bound.") },
  { "set-worst-person", N_ ("{subject} has the highest index of the rota, {value}.") },
  { "set-person-no-limit", N_ ("{subject} has a turn for which no limit holds, so the index has no bound.") },
  { "set-sequence-from-memory",
    N_ ("Only the sequential index, {value}, speaks for it, and its formula stands here from memory; with all the time at the "
        "worst lift the index is {limit}. Have it checked.") },
  { "set-strength-goal", N_ ("{subject}: the heaviest load is {value} times its limit however seldom it is lifted; the goal is {limit}.") },
  { "set-strength-goal-unbounded", N_ ("{subject}: no limit holds however seldom it is lifted.") },
  { "set-mass-goal",
    N_ ("With the reference mass of who may be assigned in place of the load constant, the index is {value}; the goal is {limit}.") },
  { "set-mass-goal-unbounded", N_ ("No mass limit holds: a factor is beyond the equation.") },
  { "person-index-goal", N_ ("{subject}: the index of {value} is over the goal of {limit}.") },
  { "person-index-goal-unbounded", N_ ("{subject}: no limit holds, so the index has no bound.") },
  { "person-index-limit", N_ ("{subject}: the index of {value} is over {limit}; at such an index hands are not the answer.") },
  { "person-index-limit-unbounded", N_ ("{subject}: no limit holds, and hands are not the answer.") },
};

static const char composite[] = N_ ("{index}; {lift} adds most.");
static const char single[] = N_ ("{index} of one lift.");
static const char sequence[] = N_ ("{index}; {lift} leads the rotation.");
static const char rota[] = N_ ("{index}: {person}, worst at {lift}.");
static const char variable[] = N_ ("{index}; {lift} is the highest of the sample.");
static const char unbounded[] = N_ ("No limit holds: {lift} is beyond the equation.");

const char *
sy_words_sets_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

char *
sy_words_sets_thing (const char *symbol, SyTranslate translate)
{
  static const char lift[] = N_ ("Lift {n}");
  const char *dot = strchr (symbol, '.'), *last = strrchr (symbol, '.');
  g_autofree char *name = NULL;

  if (dot == NULL || last == dot)
    return NULL;
  name = g_strndup (dot + 1, (gsize) (last - dot - 1));
  if (g_str_has_prefix (symbol, "person."))
    return g_steal_pointer (&name);
  if (!g_str_has_prefix (symbol, "lift."))
    return NULL;
  const char *text = translate ? translate (lift) : lift;
  const char *at = strstr (text, "{n}");
  return at ? g_strdup_printf ("%.*s%s%s", (int) (at - text), text, name, at + strlen ("{n}")) : g_strdup (text);
}

/* The first note with that id; NULL. */
static const SyNote *
find_note (const SyFindings *findings, const char *id)
{
  for (int i = 0; i < findings->sink.n_notes; i++)
    if (strcmp (findings->sink.notes[i].id, id) == 0)
      return &findings->sink.notes[i];
  return NULL;
}

typedef struct
{
  const SyFindings *findings;
  const char *lift, *person;
} SetFill;

static char *
fill_set (const char *name, gconstpointer data)
{
  const SetFill *fill = data;
  const SyFindings *findings = fill->findings;

  if (strcmp (name, "lift") == 0)
    return g_strdup (fill->lift);
  if (strcmp (name, "person") == 0)
    return g_strdup (fill->person);
  if (strcmp (name, "index") != 0)
    return NULL;
  SyGoal goal = sy_policy_goal (findings->policy, findings->method, findings->units);
  g_autofree char *text = sy_words_against (sy_words_value (findings, findings->sink.index_symbol), goal.index, SY_KIND_RATIO,
                                            findings->units);
  return g_strconcat (findings->sink.index_symbol, " ", text, NULL);
}

char *
sy_words_sets_result (const SyFindings *findings, SyTranslate translate)
{
  static const struct
  {
    const char *id, *text;
  } leading[] = { { "set-no-limit", unbounded }, { "set-adds-most", composite }, { "set-one-lift", single },
                  { "set-leads", sequence },     { "set-highest", variable } };

  if (strcmp (findings->method->id, "lift-set") != 0)
    return NULL;
  const SyNote *person = find_note (findings, "set-worst-person");
  for (gsize i = 0; i < G_N_ELEMENTS (leading); i++)
    {
      const SyNote *note = find_note (findings, leading[i].id);
      const SetFill fill = { findings, note ? note->subject : "", person ? person->subject : "" };

      if (note != NULL)
        return sy_words_fill (person && leading[i].text == sequence ? rota : leading[i].text, translate, fill_set, &fill);
    }
  return fill_set ("index", &(SetFill) { findings, "", "" });
}
