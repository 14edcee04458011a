/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift.h"
#include "sy-words-private.h"

/* The result in a sentence, and formulas with the numbers put in. */

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
      double index = sy_words_value (findings, findings->method->index_symbol);
      g_autofree char *text = sy_words_against (index, goal.index, SY_KIND_RATIO, findings->units);
      return g_strconcat (findings->method->index_symbol, " ", text, NULL);
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

char *
sy_words_result (const SyFindings *findings, SyTranslate translate)
{
  g_auto (GStrv) parts = g_strsplit (findings->sink.governing, ".", 2);
  ResultFill fill = { findings, parts[0] ? parts[0] : "" };
  const char *factor = parts[0] && parts[1] ? parts[1] : "";
  double multiplier = sy_words_value (findings, findings->sink.governing);
  double index = sy_words_value (findings, findings->method->index_symbol);

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

/* Numbers in a formula carry enough figures to redo the line with a pocket calculator. */
static void
append (GString *out, double value)
{
  int decimals = fabs (value) >= 1000 ? 1 : fabs (value) >= 100 ? 2 : fabs (value) >= 10 ? 3 : 4;
  g_autofree char *text = sy_words_number (value, decimals);

  g_string_append (out, text);
}

static void
append_multiplier (GString *out, const SyFindings *findings, const char *end, const char *name)
{
  const SyLiftConstants *c = sy_lift_constants (findings->units);
  double H = sy_words_end_value (findings, end, "H"), V = sy_words_end_value (findings, end, "V");
  double A = sy_words_end_value (findings, end, "A"), D = sy_words_value (findings, "D");

  if (strcmp (name, "HM") == 0)
    {
      if (H > c->reach_max)
        g_string_append (out, "0, H over ");
      append (out, H > c->reach_max ? c->reach_max : c->reach_min);
      if (H <= c->reach_max)
        {
          g_string_append (out, " / ");
          append (out, fmax (H, c->reach_min));
        }
    }
  else if (strcmp (name, "VM") == 0 && V <= c->height_max)
    {
      g_string_append (out, "1 − ");
      append (out, c->height_slope);
      g_string_append (out, " × |");
      append (out, V);
      g_string_append (out, " − ");
      append (out, c->height_ideal);
      g_string_append (out, "|");
    }
  else if (strcmp (name, "DM") == 0 && D > c->travel_min && D <= c->travel_max)
    {
      append (out, c->travel_base);
      g_string_append (out, " + ");
      append (out, c->travel_gain);
      g_string_append (out, " / ");
      append (out, D);
    }
  else if (strcmp (name, "AM") == 0 && A <= c->twist_max)
    {
      g_string_append (out, "1 − ");
      append (out, c->twist_slope);
      g_string_append (out, " × ");
      append (out, A);
    }
  else if (strcmp (name, "FM") == 0)
    {
      g_string_append (out, "table 5 at ");
      append (out, sy_words_value (findings, "F"));
      g_string_append (out, " / min");
    }
  else if (strcmp (name, "CM") == 0)
    g_string_append (out, "table 7");
  else if (strcmp (name, "DM") == 0 && D <= c->travel_min)
    g_string_append (out, "D at the minimum");
  else
    g_string_append (out, "beyond the equation");
}

/* "23 × 0.4545 × …": a product of the end's multipliers. */
static void
append_product (GString *out, const SyFindings *findings, const char *end, double constant, gboolean with_fm)
{
  static const char *const names[] = { "HM", "VM", "DM", "AM", "FM", "CM" };

  append (out, constant);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      if (!with_fm && strcmp (names[i], "FM") == 0)
        continue;
      g_string_append (out, " × ");
      append (out, sy_words_end_value (findings, end, names[i]));
    }
}

char *
sy_words_formula (const SyFindings *findings, const SyQuantity *quantity, SyTranslate translate)
{
  g_auto (GStrv) parts = g_strsplit (quantity->symbol->symbol, ".", 2);
  const char *end = parts[0], *name = parts[1];
  GString *out;
  double heaviest = sy_words_value (findings, "mass_each") * sy_words_value (findings, "persons");
  SyKind kind = quantity->symbol->kind;

  (void) translate; /* symbols and figures need no words */
  if (name == NULL || strcmp (name, "H") == 0 || strcmp (name, "V") == 0 || strcmp (name, "A") == 0)
    return NULL;
  out = g_string_new (name);
  g_string_append (out, " = ");
  if (strcmp (name, "FIRWL") == 0 || strcmp (name, "RWL") == 0)
    append_product (out, findings, end, sy_lift_constants (findings->units)->load_constant,
                    strcmp (name, "RWL") == 0);
  else if (strcmp (name, "mR") == 0)
    append_product (out, findings, end, sy_words_value (findings, "m_ref"), TRUE);
  else if (strcmp (name, "LI") == 0 || strcmp (name, "FILI") == 0 || strcmp (name, "mR_ratio") == 0)
    {
      const char *limit = strcmp (name, "LI") == 0 ? "RWL" : strcmp (name, "FILI") == 0 ? "FIRWL" : "mR";
      append (out, heaviest);
      g_string_append (out, " / ");
      append (out, sy_words_end_value (findings, end, limit));
    }
  else
    append_multiplier (out, findings, end, name);

  g_autofree char *result = kind == SY_KIND_RATIO ? sy_words_number (quantity->value, 4)
                                                  : sy_words_quantity (quantity->value, kind, findings->units);
  g_string_append_printf (out, " = %s", result);
  return g_string_free (out, FALSE);
}
