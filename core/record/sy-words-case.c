/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* Words of the case for an aid. */

static const SyTemplate templates[] = {
  { "case-option-not-assessed",
    N_ ("{subject}: not assessed, so it cannot win: its kind, its facts, or the plan of the aid itself is missing.") },
  { "case-option-open", N_ ("{subject}: cannot win while facts are missing or it is outside its method.") },
  { "case-option-refused", N_ ("{subject}: cannot win: by its own method hands must not do it, or it must not be lifted.") },
  { "case-option-no-figures",
    N_ ("{subject}: cannot win: price, minutes, rates, times a year, discount rate or years are missing.") },
  { "case-no-winner", N_ ("No option is assessed completely and within its limits: there is no case yet.") },
  { "case-when-down-missing", N_ ("{subject}: what is done when the aid is down was not said.") },
  { "case-yearly-missing", N_ ("{subject}: running, examination or maintenance was not given and counts as nothing.") },
  { "case-no-quote", N_ ("{subject}: the price is not from a numbered quote.") },
  { "case-no-promise",
    N_ ("Money here is machine time and work saved, against what the aid costs. It promises nothing about injuries.") },
};

const char *
sy_words_case_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

static const char nobody_wins[] = N_ ("No option wins.");
static const char pays_back[] = N_ ("{option} is best: it pays back in {years} years; net present value {npv}.");
static const char never_pays[] = N_ ("{option} is best: it does not pay back; net present value {npv}.");

char *
sy_words_case_result (const SyFindings *findings, SyTranslate translate)
{
  const char *at = findings->sink.governing;

  if (strcmp (findings->method->id, "case") != 0)
    return NULL;
  if (!g_str_has_prefix (at, "option.") || !g_str_has_suffix (at, ".npv"))
    return g_strdup (translate ? translate (nobody_wins) : nobody_wins);
  g_autofree char *label = g_strndup (at + strlen ("option."), strlen (at) - strlen ("option.") - strlen (".npv"));
  g_autofree char *symbol = g_strconcat ("option.", label, ".payback", NULL);
  double years = sy_words_value (findings, symbol);
  g_autofree char *payback = sy_words_number (years, 1);
  g_autofree char *npv = sy_words_quantity (sy_words_value (findings, at), SY_KIND_MONEY, findings->units);
  return sy_words_say (translate, isfinite (years) ? pays_back : never_pays, "option", label, "years", payback, "npv", npv,
                       NULL);
}
