/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* The result in a sentence. */

static const struct
{
  const char *factor, *end, *costs, *beyond;
} result_templates[] = {
  { "HM", "origin", N_ ("{index} at the origin; the reach of {H} costs most."),
    N_ ("No limit holds at the origin: the reach of {H} is beyond the equation.") },
  { "HM", "destination", N_ ("{index} at the destination; the reach of {H} costs most."),
    N_ ("No limit holds at the destination: the reach of {H} is beyond the equation.") },
  { "VM", "origin", N_ ("{index} at the origin; the height of {V} costs most."),
    N_ ("No limit holds at the origin: the height of {V} is beyond the equation.") },
  { "VM", "destination", N_ ("{index} at the destination; the height of {V} costs most."),
    N_ ("No limit holds at the destination: the height of {V} is beyond the equation.") },
  { "DM", "origin", N_ ("{index} at the origin; the travel of {D} costs most."),
    N_ ("No limit holds at the origin: the travel of {D} is beyond the equation.") },
  { "DM", "destination", N_ ("{index} at the destination; the travel of {D} costs most."),
    N_ ("No limit holds at the destination: the travel of {D} is beyond the equation.") },
  { "AM", "origin", N_ ("{index} at the origin; the twist of {A} costs most."),
    N_ ("No limit holds at the origin: the twist of {A} is beyond the equation.") },
  { "AM", "destination", N_ ("{index} at the destination; the twist of {A} costs most."),
    N_ ("No limit holds at the destination: the twist of {A} is beyond the equation.") },
  { "FM", "origin", N_ ("{index} at the origin; the pace of {F} costs most."),
    N_ ("No limit holds at the origin: the pace of {F} is beyond the equation.") },
  { "FM", "destination", N_ ("{index} at the destination; the pace of {F} costs most."),
    N_ ("No limit holds at the destination: the pace of {F} is beyond the equation.") },
  { "CM", "origin", N_ ("{index} at the origin; the grip costs most."), NULL },
  { "CM", "destination", N_ ("{index} at the destination; the grip costs most."), NULL },
};

static const char nothing_costs[] = N_ ("{index} at the {end}; no factor takes the limit down.");

typedef struct
{
  const SyFindings *findings;
  const char *end;
} ResultFill;

static char *
fill_result (const char *name, gconstpointer data)
{
  const ResultFill *fill = data;
  const SyFindings *findings = fill->findings;
  SyGoal goal = sy_policy_goal (findings->policy, findings->method, findings->units);

  if (strcmp (name, "index") == 0)
    {
      double index = sy_words_value (findings, findings->sink.index_symbol);
      g_autofree char *text = sy_words_against (index, goal.index, SY_KIND_RATIO, findings->units);
      return g_strconcat (findings->sink.index_symbol, " ", text, NULL);
    }
  if (strcmp (name, "end") == 0)
    return g_strdup (fill->end);
  if (strcmp (name, "D") == 0)
    return sy_words_quantity (sy_words_value (findings, "D"), SY_KIND_REACH, findings->units);
  if (strcmp (name, "F") == 0)
    return sy_words_quantity (sy_words_value (findings, "F"), SY_KIND_FREQUENCY, findings->units);
  return sy_words_quantity (sy_words_end_value (findings, fill->end, name),
                            *name == 'A' ? SY_KIND_ANGLE : SY_KIND_REACH, findings->units);
}

static char *(*const rooms[]) (const SyFindings *findings, SyTranslate translate) = {
  sy_words_rigging_result, sy_words_sets_result, sy_words_team_result, sy_words_push_result, sy_words_carry_result,
  sy_words_changeover_result, sy_words_case_result,
};

char *
sy_words_result (const SyFindings *findings, SyTranslate translate)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rooms); i++)
    {
      char *words = rooms[i](findings, translate);
      if (words != NULL)
        return words;
    }

  g_auto (GStrv) parts = g_strsplit (findings->sink.governing, ".", 2);
  ResultFill fill = { findings, parts[0] ? parts[0] : "" };
  const char *factor = parts[0] && parts[1] ? parts[1] : "";
  double multiplier = sy_words_value (findings, findings->sink.governing);
  double index = sy_words_value (findings, findings->sink.index_symbol);

  if (multiplier < 1)
    for (gsize i = 0; i < G_N_ELEMENTS (result_templates); i++)
      if (strcmp (result_templates[i].factor, factor) == 0 && strcmp (result_templates[i].end, fill.end) == 0)
        {
          const char *msgid = isinf (index) && result_templates[i].beyond ? result_templates[i].beyond
                                                                          : result_templates[i].costs;
          return sy_words_fill (msgid, translate, fill_result, &fill);
        }
  return sy_words_fill (nothing_costs, translate, fill_result, &fill);
}

char *
sy_words_formula (const SyFindings *findings, const SyQuantity *quantity)
{
  const SyMethod *method = findings->method;
  char text[SY_FORMULA_MAX];

  for (size_t i = 0; i < method->n_symbols && method->formula != NULL; i++)
    if (&method->symbols[i] == quantity->symbol)
      return method->formula (&findings->sink, i, findings->units, text) ? g_strdup (text) : NULL;
  for (size_t i = 0; i < findings->sink.n_named && method->named_formula != NULL; i++)
    if (&findings->named[i].quantity == quantity)
      return method->named_formula (&findings->sink, &findings->named[i], findings->units, text) ? g_strdup (text)
                                                                                               : NULL;
  return NULL;
}
