/* SPDX-License-Identifier: MIT */
#include "sy-limits-words.h"

#include "sy-i18n.h"
#include "sy-words.h"

static const SySymbol *
find_symbol (const char *method_id, const char *symbol)
{
  const SyMethod *method = sy_method_find (method_id);

  for (size_t i = 0; method != NULL && i < method->n_symbols; i++)
    if (g_str_equal (method->symbols[i].symbol, symbol))
      return &method->symbols[i];
  return NULL;
}

/* "Lifting index (LI)"; the bare symbol where no method of this program has it. */
static char *
symbol_words (const SySymbol *found, const char *symbol)
{
  if (found == NULL)
    return g_strdup (symbol);
  /* Translators: name of a quantity and its symbol. */
  return g_strdup_printf (C_ ("quantity", "%s (%s)"), sy_translate (found->label), symbol);
}

/* What a row is about that holds for each of several things. */
static char *
each_words (const SyPolicyRow *row)
{
  static const struct
  {
    const char *symbol, *words;
  } each[] = {
    { "element.*.utilisation", N_ ("Load of each element of a leg against what it may carry as it is used") },
    { "element.*.angle", N_ ("Pull of each bolt or ring from its own axis") },
    { "suspension.*.utilisation", N_ ("Load of each hoist, crane, beam or truck against its marking") },
    { "leg.*.angle", N_ ("Angle of each leg from the vertical") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (each); i++)
    if (g_str_equal (row->symbol, each[i].symbol))
      return g_strdup (sy_translate (each[i].words));
  return g_strdup (row->symbol);
}

/* A part of a capacity is read in percent, as on the page of a task. */
static char *
fixed_limit_words (const SyPolicyRow *row, const SySymbol *symbol, SyUnits units)
{
  SyKind kind = symbol != NULL ? symbol->kind : g_str_has_suffix (row->symbol, ".angle") ? SY_KIND_ANGLE : SY_KIND_RATIO;
  gboolean part = g_str_has_suffix (row->symbol, "utilisation") || g_str_equal (row->symbol, "tipping");

  return part ? sy_words_quantity (row->limit[units] * 100, SY_KIND_PERCENT, units)
              : sy_words_quantity (row->limit[units], kind, units);
}

char *
sy_limits_row_words (const SyPolicyRow *row, SyUnits units)
{
  const SySymbol *symbol = find_symbol (row->method, row->symbol);
  g_autofree char *quantity = row->each ? each_words (row) : symbol_words (symbol, row->symbol);
  g_autofree char *limit = NULL;

  if (row->limit_is_symbol)
    {
      g_autofree char *other = symbol_words (find_symbol (row->method, row->limit_symbol), row->limit_symbol);

      /* Translators: the name of a quantity that is the limit of another. */
      limit = g_strdup_printf (C_ ("limit", "“%s”"), other);
    }
  else
    limit = fixed_limit_words (row, symbol, units);
  switch (row->comparator)
    {
    case SY_OVER:
      /* Translators: a quantity and the limit that it is over. */
      return g_strdup_printf (_("%s over %s"), quantity, limit);
    case SY_UNDER:
      return g_strdup_printf (_("%s under %s"), quantity, limit);
    }
  return g_strdup (quantity);
}

char *
sy_source_words (const char *source, gboolean from_memory)
{
  if (!from_memory)
    return g_strdup (*source != '\0' ? source : _("no source named"));
  /* Translators: a source, and that the figure itself was not looked up there. */
  return g_strdup_printf (_("%s – from memory: the figure was not checked against its source"),
                          *source != '\0' ? source : _("no source named"));
}

static const SyField *
tolerance_field (const SyTolerance *tolerance)
{
  const SyMethod *method = sy_method_find (tolerance->method);

  for (size_t i = 0; method != NULL && i < method->n_measured; i++)
    if (g_str_equal (method->measured[i].tolerance, tolerance->fact))
      return sy_method_field (method, method->measured[i].path, NULL);
  return NULL;
}

char *
sy_tolerance_fact_words (const SyTolerance *tolerance)
{
  const SyField *field = tolerance_field (tolerance);

  if (field == NULL)
    return g_strdup (tolerance->fact);
  if (field->symbol == NULL)
    return g_strdup (sy_translate (field->label));
  return g_strdup_printf (C_ ("quantity", "%s (%s)"), sy_translate (field->label), field->symbol);
}

char *
sy_tolerance_words (const SyTolerance *tolerance, SyHow how, SyUnits units)
{
  const SyField *field = tolerance_field (tolerance);
  SyKind kind = tolerance->percent || field == NULL ? SY_KIND_PERCENT : field->kind;
  double value = tolerance->by_how[how][units];
  g_autofree char *words = sy_words_quantity (value, kind, units);

  return value > 0 ? g_strdup_printf ("± %s", words) : g_strdup (_("none"));
}

char *
sy_assigned_words (const SyPolicy *policy)
{
  for (size_t i = 0; i < sy_method_count (); i++)
    {
      const SyField *field = sy_method_field (sy_method_at (i), "assigned", NULL);

      if (field != NULL && policy->default_assigned >= 0
          && (size_t) policy->default_assigned < field->n_choices)
        return g_strdup (sy_translate (field->choices[policy->default_assigned].label));
    }
  return g_strdup ("–");
}

char *
sy_allowance_words (const SyPolicy *policy)
{
  GString *out = g_string_new (NULL);

  for (int i = 0; i < SY_N_BASES; i++)
    {
      g_autofree char *percent = sy_words_quantity (policy->allowance_percent[i], SY_KIND_PERCENT, SY_UNITS_METRIC);
      g_string_append_printf (out, "%s%s %s", i > 0 ? " · " : "", sy_translate (sy_basis_choices[i].label), percent);
    }
  return g_string_free (out, FALSE);
}

char *
sy_examination_words (const SyExaminationRule *rule)
{
  /* Translators: a kind of gear, and how often it is thoroughly examined. */
  return g_strdup_printf (P_ ("%s: every %d month", "%s: every %d months", (gulong) rule->months),
                          sy_translate (sy_gear_kind_choices[rule->kind].label), rule->months);
}
