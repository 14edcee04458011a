/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-line.h"
#include "sy-rig-case.h"

/* Each quantity with the numbers put in, so that it can be done again with a pocket calculator. */

static double
value_of (const SySink *sink, const char *symbol)
{
  const SyQuantity *quantity = sy_sink_quantity (sink, symbol);

  return quantity ? quantity->value : NAN;
}

bool
sy_rig_formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  SyText line = { text, SY_FORMULA_MAX, 0 };
  double value = sink->quantities[symbol].value;

  switch (symbol)
    {
    case SY_RIG_US_UTILISATION:
    case SY_RIG_EN_UTILISATION:
      sy_text_add (&line, symbol == SY_RIG_US_UTILISATION ? "US: " : "EN: ");
      sy_line_part (&line, value * sink->quantities[symbol - 1].value, sink->quantities[symbol - 1].value, value, units);
      return true;
    default:
      return false;
    }
}

/* The same thing's other quantity: "leg.A.tension" to "leg.A.load". */
static double
sibling (const SySink *sink, const SyNamed *named, const char *suffix)
{
  char symbol[SY_NAMED_TEXT_MAX + 16];
  SyText text = { symbol, sizeof symbol, 0 };
  size_t length = strlen (named->text);

  while (length > 0 && named->text[length - 1] != '.')
    length--;
  memcpy (symbol, named->text, length);
  text.at = length;
  sy_text_add (&text, suffix);
  return value_of (sink, symbol);
}

static const char *
suffix_of (const SyNamed *named)
{
  const char *dot = named->text;

  for (const char *at = named->text; *at != '\0'; at++)
    if (*at == '.')
      dot = at + 1;
  return dot;
}

bool
sy_rig_named_formula (const SySink *sink, const SyNamed *named, SyUnits units, char *text)
{
  SyText line = { text, SY_FORMULA_MAX, 0 };
  const char *suffix = suffix_of (named);
  double value = named->quantity.value;

  if (!isfinite (value))
    return false;
  if (strcmp (suffix, "tension") == 0)
    {
      sy_text_add (&line, "T = ");
      sy_text_add_measure (&line, sibling (sink, named, "load"), 2, SY_KIND_MASS, units);
      sy_text_add (&line, units == SY_UNITS_US ? " \xc3\x97 1 lbf/lb = " : " \xc3\x97 9.80665 / 1000 = ");
      sy_text_add_measure (&line, value, 3, SY_KIND_FORCE, units);
      return true;
    }
  if (strcmp (suffix, "factor") == 0)
    {
      sy_text_add (&line, "1 / cos ");
      sy_text_add_rounded (&line, sibling (sink, named, "angle"), 2);
      sy_text_add (&line, "\xc2\xb0 = ");
      sy_text_add_rounded (&line, value, 4);
      return true;
    }
  if (strcmp (suffix, "utilisation") == 0 && !isnan (sibling (sink, named, "demand")))
    {
      sy_line_part (&line, sibling (sink, named, "demand"), sibling (sink, named, "capacity"), value, units);
      return true;
    }
  return false;
}
