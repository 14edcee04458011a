/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* Words of lifts by a team. */

static const SyTemplate templates[] = {
  /* rows of the policy */
  { "team-rule", N_ ("The mass is {value} times what such a team is good for; over {limit} hands are not the answer.") },
  { "team-rule-unbounded", N_ ("Nobody of the team could lift anything alone with hands there: hands are not the answer.") },
  { "team-own-limit", N_ ("{subject} carries {value} times what one person should carry in a team; the goal is {limit}.") },
  { "team-own-limit-unbounded", N_ ("{subject} could lift nothing alone with hands there: no limit holds for that share.") },
  { "team-reference-mass",
    N_ ("{subject} carries {value} times the reference mass of who it may be: over {limit} hands are not the answer.") },

  /* what is told with every result */
  { "team-heavy-end", N_ ("Tell everybody before the lift: the heavy end is at {subject}, {value} of {limit}.") },
  { "team-heavy-end-may-be",
    N_ ("Tell everybody before the lift: the heavy end is at {subject}, who may come to carry {value} of {limit}.") },
  { "team-even", N_ ("Tell everybody before the lift: no end is heavier; each carries {value} of {limit}.") },
  { "team-tips", N_ ("The centre of gravity is outside the hands as they are placed: the load tips. Nobody can hold it so.") },
  { "team-beside",
    N_ ("The weight acts {value} beside the line of the hands, over {limit}: the load turns over in the hands unless it is held "
        "on both sides.") },
  { "team-leans",
    N_ ("The load leans by {value} as it is held: its weight moves towards the lower hands, the more the higher its centre is.") },
  { "team-no-centre-height",
    N_ ("The load leans, and the height of its centre of gravity over the hands was not given: the lower end may carry "
        "more.") },
  { "team-on-slope", N_ ("On slopes and stairs most of the weight goes to the lower end: the strongest goes there.") },
  { "team-way-not-given",
    N_ ("Who goes uphill was not said: the way round that loads one person most was taken.") },
  { "team-of-four",
    N_ ("For a team of four no capacity is published: two and three are the teams that guidance knows. A competent person must "
        "look at it.") },
  { "team-holds", N_ ("Three or four only where each has a hold of its own and room to stand and step.") },
  { "team-together",
    N_ ("One leads and calls, all are of like build and know the signs, and the way and the landing place are clear.") },

  /* what was not given */
  { "team-no-height",
    N_ ("The height of the hands of {subject} was not given; taken as the best height, so the limit is at the most what is "
        "shown.") },
  { "team-reach-assumed", N_ ("A reach was not given; it was taken that the load is held close to the body, at {value}.") },
  { "team-travel-assumed", N_ ("How far up it is lifted was not given: only the height of the hands that was given is judged.") },
  { "team-pace-assumed", N_ ("The pace was not given; it was taken that it is lifted once in five minutes at the most.") },
  { "team-duration-assumed", N_ ("For how long was not given; it was taken as up to eight hours.") },
  { "team-grip-assumed", N_ ("The grip was not given; it was taken as poor.") },
};

const char *
sy_words_team_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

char *
sy_words_team_thing (const char *symbol)
{
  static const char *const suffixes[] = { ".mass", ".percent", ".elastic", ".limit", ".ratio", ".reference" };

  if (!g_str_has_prefix (symbol, "share."))
    return NULL;
  symbol += strlen ("share.");
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++)
    if (g_str_has_suffix (symbol, suffixes[i]))
      return g_strndup (symbol, strlen (symbol) - strlen (suffixes[i]));
  return g_strdup (symbol);
}

/* The result in a sentence */

static const char heavy_end[] = N_ ("The heavy end is at {subject}: {share} of {mass}.");
static const char may_be_heavy[] = N_ ("The heavy end is at {subject}: up to {share} of {mass} may come to it.");
static const char even[] = N_ ("No end is heavier: each carries {share} of {mass}.");
static const char tips[] = N_ ("It tips: the centre of gravity is outside the hands.");

static char *
fill_team (const char *name, gconstpointer data)
{
  const SyFindings *findings = data;
  double mass = sy_words_value (findings, "mass");

  if (strcmp (name, "subject") == 0)
    return sy_words_team_thing (findings->sink.governing);
  if (strcmp (name, "share") == 0)
    return sy_words_against (sy_words_value (findings, "heaviest.share"), mass, SY_KIND_MASS, findings->units);
  return strcmp (name, "mass") == 0 ? sy_words_quantity (mass, SY_KIND_MASS, findings->units) : NULL;
}

static gboolean
has_note (const SyFindings *findings, const char *id)
{
  for (int i = 0; i < findings->sink.n_notes; i++)
    if (strcmp (findings->sink.notes[i].id, id) == 0)
      return TRUE;
  return FALSE;
}

char *
sy_words_team_result (const SyFindings *findings, SyTranslate translate)
{
  const char *words;

  if (strcmp (findings->method->id, "team-lift") != 0)
    return NULL;
  words = has_note (findings, "team-tips")               ? tips
          : has_note (findings, "team-even")             ? even
          : has_note (findings, "team-heavy-end-may-be") ? may_be_heavy
                                                         : heavy_end;
  return sy_words_fill (words, translate, fill_team, findings);
}
