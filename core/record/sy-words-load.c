/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* The result in a sentence of what a die weighs, a load hangs from, a truck or a cart carries. */

static const char die_balances[] = N_ ("{mass}, with its allowance {planned}; balances at x {x}, y {y}, z {z}.");
static const char die_unknown[] = N_ ("{mass}, with its allowance {planned}; where it balances is not known.");
static const char weakest_none[] = N_ ("Weakest: {thing}, which may carry nothing as it is used.");
static const char weakest[] = N_ ("Weakest: {thing}, {percent} of what it may carry as it is used.");
static const char gear_unknown[] = N_ ("{hook} in the hook; what its gear may carry is not known.");
static const char truck_part[] =
  N_ ("{planned} on the forks: {percent} of the {capacity} that the plate leaves at this load centre.");
static const char truck_unknown[] = N_ ("{planned} on the forks; what the plate leaves at this load centre is not known.");
static const char cart_load[] = N_ ("Nearest to a limit: its rated load, {percent}; {initial} to start it.");
static const char cart_tipping[] = N_ ("Nearest to a limit: tipping, {percent}; {initial} to start it.");
static const char cart_load_alone[] = N_ ("Nearest to a limit: its rated load, {percent}.");
static const char cart_tipping_alone[] = N_ ("Nearest to a limit: tipping, {percent}.");
static const char cart_unknown[] = N_ ("What it may carry and what tips it is not known.");

typedef struct
{
  const SyFindings *findings;
  SyTranslate translate;
  const char *part; /* symbol of the ratio that {percent} says */
} LoadFill;

/* A place in mm or hundredths of an inch; the last of the three has the unit. */
static char *
coordinate (const LoadFill *fill, const char *symbol, gboolean with_unit)
{
  SyUnits units = fill->findings->units;
  g_autofree char *number = sy_words_number (sy_words_value (fill->findings, symbol), units == SY_UNITS_US ? 2 : 0);

  return with_unit ? g_strconcat (number, " ", sy_unit_name (SY_KIND_LENGTH, units), NULL) : g_strdup (number);
}

static char *
fill_load (const char *name, gconstpointer data)
{
  static const struct
  {
    const char *name, *symbol;
    SyKind kind;
  } plain[] = {
    { "mass", "mass", SY_KIND_MASS },         { "planned", "mass_with_allowance", SY_KIND_MASS },
    { "hook", "hook.load", SY_KIND_MASS },    { "capacity", "capacity", SY_KIND_MASS },
    { "initial", "initial", SY_KIND_HAND_FORCE },
  };
  const LoadFill *fill = data;
  const SyFindings *findings = fill->findings;

  for (gsize i = 0; i < G_N_ELEMENTS (plain); i++)
    if (strcmp (plain[i].name, name) == 0)
      return sy_words_quantity (sy_words_value (findings, plain[i].symbol), plain[i].kind, findings->units);
  if (strcmp (name, "percent") == 0)
    return sy_words_against (sy_words_value (findings, fill->part) * 100, 100, SY_KIND_PERCENT, findings->units);
  if (strcmp (name, "thing") == 0)
    {
      char *thing = sy_words_thing (findings, findings->sink.governing, fill->translate);
      return thing ? thing : g_strdup (findings->sink.governing);
    }
  if (strcmp (name, "x") == 0)
    return coordinate (fill, "cg.x", FALSE);
  if (strcmp (name, "y") == 0)
    return coordinate (fill, "cg.y", FALSE);
  return strcmp (name, "z") == 0 ? coordinate (fill, "cg.z", TRUE) : NULL;
}

static const char *
cart_words (const SyFindings *findings, const char **part)
{
  gboolean tips = strcmp (findings->sink.governing, "tipping") == 0;
  gboolean has_force = !isnan (sy_words_value (findings, "initial"));

  *part = findings->sink.governing;
  if (**part == '\0')
    return cart_unknown;
  return has_force ? (tips ? cart_tipping : cart_load) : (tips ? cart_tipping_alone : cart_load_alone);
}

char *
sy_words_load_result (const SyFindings *findings, SyTranslate translate)
{
  const char *method = findings->method->id, *words = NULL;
  LoadFill fill = { findings, translate, "utilisation" };
  gboolean has_part = !isnan (sy_words_value (findings, "utilisation"));

  if (strcmp (method, "die-mass") == 0)
    words = isnan (sy_words_value (findings, "cg.x")) ? die_unknown : die_balances;
  else if (strcmp (method, "rigged-lift") == 0)
    words = !has_part ? gear_unknown : isinf (sy_words_value (findings, "utilisation")) ? weakest_none : weakest;
  else if (strcmp (method, "truck") == 0)
    words = has_part ? truck_part : truck_unknown;
  else
    words = cart_words (findings, &fill.part);
  return sy_words_fill (words, translate, fill_load, &fill);
}
