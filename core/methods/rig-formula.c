/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-rig-case.h"

/* Each quantity with the numbers put in, so that it can be done again with a pocket calculator. */

typedef struct
{
  char *text;
  size_t at;
} Line;

static void
add (Line *line, const char *more)
{
  size_t length = strlen (more);

  if (length > SY_FORMULA_MAX - 1 - line->at)
    length = SY_FORMULA_MAX - 1 - line->at;
  memcpy (line->text + line->at, more, length);
  line->at += length;
  line->text[line->at] = '\0';
}

static void
add_number (Line *line, double value, int decimals)
{
  char number[SY_NUMBER_READ_MAX];

  sy_number_print_rounded (value, decimals, false, number);
  add (line, number);
}

static void
add_with_unit (Line *line, double value, int decimals, SyKind kind, SyUnits units)
{
  add_number (line, value, decimals);
  add (line, " ");
  add (line, sy_unit_name (kind, units));
}

static double
value_of (const SySink *sink, const char *symbol)
{
  const SyQuantity *quantity = sy_sink_quantity (sink, symbol);

  return quantity ? quantity->value : NAN;
}

bool
sy_rig_formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  Line line = { text, 0 };
  double value = sink->quantities[symbol].value;

  switch (symbol)
    {
    case SY_RIG_US_UTILISATION:
    case SY_RIG_EN_UTILISATION:
      add (&line, symbol == SY_RIG_US_UTILISATION ? "US: " : "EN: ");
      add_with_unit (&line, value * sink->quantities[symbol - 1].value, 1, SY_KIND_MASS, units);
      add (&line, " / ");
      add_with_unit (&line, sink->quantities[symbol - 1].value, 1, SY_KIND_MASS, units);
      add (&line, " = ");
      add_number (&line, value, 3);
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
  size_t length = strlen (named->text);

  while (length > 0 && named->text[length - 1] != '.')
    length--;
  memcpy (symbol, named->text, length);
  memcpy (symbol + length, suffix, strlen (suffix) + 1);
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
  Line line = { text, 0 };
  const char *suffix = suffix_of (named);
  double value = named->quantity.value;

  if (!isfinite (value))
    return false;
  if (strcmp (suffix, "tension") == 0)
    {
      add (&line, "T = ");
      add_with_unit (&line, sibling (sink, named, "load"), 2, SY_KIND_MASS, units);
      add (&line, units == SY_UNITS_US ? " \xc3\x97 1 lbf/lb = " : " \xc3\x97 9.80665 / 1000 = ");
      add_with_unit (&line, value, 3, SY_KIND_FORCE, units);
      return true;
    }
  if (strcmp (suffix, "factor") == 0)
    {
      add (&line, "1 / cos ");
      add_number (&line, sibling (sink, named, "angle"), 2);
      add (&line, "\xc2\xb0 = ");
      add_number (&line, value, 4);
      return true;
    }
  if (strcmp (suffix, "utilisation") == 0 && !isnan (sibling (sink, named, "demand")))
    {
      add_with_unit (&line, sibling (sink, named, "demand"), 1, SY_KIND_MASS, units);
      add (&line, " / ");
      add_with_unit (&line, sibling (sink, named, "capacity"), 1, SY_KIND_MASS, units);
      add (&line, " = ");
      add_number (&line, value, 3);
      return true;
    }
  return false;
}
