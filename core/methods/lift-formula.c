/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-facts.h"

/* Enough figures to redo the line with a pocket calculator. */
static void
put_number (SyText *to, double value)
{
  sy_text_add_rounded (to, value, fabs (value) >= 1000 ? 1 : fabs (value) >= 100 ? 2 : fabs (value) >= 10 ? 3 : 4);
}

static void
put_multiplier (SyText *to, const SyQuantity *end, const SySink *sink, size_t which, SyUnits units)
{
  const SyLiftConstants *c = sy_lift_constants (units);
  double H = end[SY_LIFT_REACH].value, V = end[SY_LIFT_HEIGHT].value, A = end[SY_LIFT_TWIST].value;
  double D = sink->quantities[SY_LIFT_ALL_D].value;

  if (which == SY_LIFT_HM && H <= c->reach_max)
    {
      put_number (to, c->reach_min);
      sy_text_add (to, " / ");
      put_number (to, fmax (H, c->reach_min));
    }
  else if (which == SY_LIFT_VM && V <= c->height_max)
    {
      sy_text_add (to, "1 \xe2\x88\x92 ");
      put_number (to, c->height_slope);
      sy_text_add (to, " \xc3\x97 |");
      put_number (to, V);
      sy_text_add (to, " \xe2\x88\x92 ");
      put_number (to, c->height_ideal);
      sy_text_add (to, "|");
    }
  else if (which == SY_LIFT_DM && D <= c->travel_max)
    {
      put_number (to, c->travel_base);
      sy_text_add (to, " + ");
      put_number (to, c->travel_gain);
      sy_text_add (to, " / ");
      put_number (to, fmax (D, c->travel_min));
    }
  else if (which == SY_LIFT_AM && A <= c->twist_max)
    {
      sy_text_add (to, "1 \xe2\x88\x92 ");
      put_number (to, c->twist_slope);
      sy_text_add (to, " \xc3\x97 ");
      put_number (to, A);
    }
  else if (which == SY_LIFT_FM)
    {
      sy_text_add (to, "FM(");
      put_number (to, sink->quantities[SY_LIFT_ALL_F].value);
      sy_text_add (to, " / min)");
    }
  else if (which == SY_LIFT_CM)
    {
      sy_text_add (to, "CM(V ");
      sy_text_add (to, V < c->height_ideal ? "<" : "\xe2\x89\xa5");
      sy_text_add (to, " ");
      put_number (to, c->height_ideal);
      sy_text_add (to, ")");
    }
  else
    {
      /* beyond its limit a multiplier is 0 */
      double limit = which == SY_LIFT_HM   ? c->reach_max
                     : which == SY_LIFT_VM ? c->height_max
                     : which == SY_LIFT_DM ? c->travel_max
                                           : c->twist_max;
      double value = which == SY_LIFT_HM ? H : which == SY_LIFT_VM ? V : which == SY_LIFT_DM ? D : A;
      put_number (to, value);
      sy_text_add (to, " > ");
      put_number (to, limit);
    }
}

static void
put_product (SyText *to, const SyQuantity *end, double constant, bool with_fm)
{
  put_number (to, constant);
  for (size_t i = SY_LIFT_HM; i <= SY_LIFT_CM; i++)
    if (with_fm || i != SY_LIFT_FM)
      {
        sy_text_add (to, " \xc3\x97 ");
        put_number (to, end[i].value);
      }
}

static void
put_times (SyText *to, const SyQuantity *quantity)
{
  if (quantity->state == SY_STATE_ABSENT)
    return;
  sy_text_add (to, " \xc3\x97 ");
  put_number (to, quantity->value);
}

static void
put_quotient (SyText *to, const SyQuantity *over, const SyQuantity *under)
{
  put_number (to, over->value);
  sy_text_add (to, " / ");
  put_number (to, under->value);
}

/* A limit by population. Return value: false for a quantity that has no formula. */
static bool
put_population (SyText *to, const SySink *sink, size_t symbol)
{
  const SyQuantity *q = sink->quantities;
  const SyQuantity *end = &q[(size_t) sink->governing_end * SY_LIFT_PER_END];
  double lifts = q[SY_LIFT_ALL_LIFTS_PER_DAY].value, pace = q[SY_LIFT_ALL_F].value;

  switch (symbol)
    {
    case SY_LIFT_ALL_DAY_MASS:
      if (!(lifts > 0))
        return false;
      put_number (to, q[symbol].value / lifts);
      put_times (to, &q[SY_LIFT_ALL_LIFTS_PER_DAY]);
      return true;
    case SY_LIFT_ALL_HOUR_MASS:
      if (!(pace > 0))
        return false;
      put_number (to, q[symbol].value / (pace * 60));
      put_times (to, &q[SY_LIFT_ALL_F]);
      sy_text_add (to, " \xc3\x97 60");
      return true;
    case SY_LIFT_ALL_DAY_RATIO:
      put_quotient (to, &q[SY_LIFT_ALL_DAY_MASS], &q[SY_LIFT_ALL_DAY_LIMIT]);
      return true;
    case SY_LIFT_ALL_HOUR_RATIO:
      put_quotient (to, &q[SY_LIFT_ALL_HOUR_MASS], &q[SY_LIFT_ALL_HOUR_LIMIT]);
      return true;
    case SY_LIFT_ALL_EN_LIMIT:
      put_product (to, end, q[SY_LIFT_ALL_EN_MASS].value, true);
      put_times (to, &q[SY_LIFT_ALL_EN_ONE_HAND]);
      put_times (to, &q[SY_LIFT_ALL_EN_TWO_PERSONS]);
      put_times (to, &q[SY_LIFT_ALL_EN_ADDITIONAL]);
      return true;
    case SY_LIFT_ALL_EN_INDEX:
      put_quotient (to, &q[SY_LIFT_ALL_MASS_EACH], &q[SY_LIFT_ALL_EN_LIMIT]);
      return true;
    case SY_LIFT_ALL_FILTER_MEN:
    case SY_LIFT_ALL_FILTER_WOMEN:
      put_number (to, q[SY_LIFT_ALL_FILTER_BASE].value);
      put_times (to, &q[SY_LIFT_ALL_FILTER_TWIST]);
      put_times (to, &q[SY_LIFT_ALL_FILTER_PACE]);
      return true;
    case SY_LIFT_ALL_FILTER_RATIO:
      put_quotient (to, &q[SY_LIFT_ALL_MASS],
                    &q[q[SY_LIFT_ALL_FILTER_MEN].state != SY_STATE_ABSENT ? SY_LIFT_ALL_FILTER_MEN : SY_LIFT_ALL_FILTER_WOMEN]);
      return true;
    case SY_LIFT_ALL_BACK_RATIO:
      put_quotient (to, &q[SY_LIFT_ALL_BACK], &q[SY_LIFT_ALL_BACK_LIMIT]);
      return true;
    case SY_LIFT_ALL_BACK:
      put_number (to, q[SY_LIFT_ALL_BACK_TRUNK].value);
      for (size_t part = SY_LIFT_ALL_BACK_LOAD; part <= SY_LIFT_ALL_BACK_DIRECT; part++)
        {
          sy_text_add (to, " + ");
          put_number (to, q[part].value);
        }
      return true;
    default:
      return false;
    }
}

bool
sy_lift_formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  const SyQuantity *quantities = sink->quantities;
  const SyQuantity *quantity = &quantities[symbol];
  size_t which = symbol % SY_LIFT_PER_END;
  const SyQuantity *end = quantity - which;
  double heaviest = quantities[SY_LIFT_ALL_MASS_EACH].value * quantities[SY_LIFT_ALL_PERSONS].value;
  SyText to = { text, SY_FORMULA_MAX, 0 };

  bool of_end = symbol < 2 * SY_LIFT_PER_END;

  if (quantity->state == SY_STATE_ABSENT || (of_end && which < SY_LIFT_HM))
    return false;
  sy_text_add (&to, of_end ? strchr (quantity->symbol->symbol, '.') + 1 : quantity->symbol->symbol);
  sy_text_add (&to, " = ");
  if (!of_end)
    {
      if (!put_population (&to, sink, symbol))
        return false;
    }
  else if (which == SY_LIFT_FIRWL || which == SY_LIFT_RWL)
    put_product (&to, end, sy_lift_constants (units)->load_constant, which == SY_LIFT_RWL);
  else if (which == SY_LIFT_MR)
    {
      put_product (&to, end, quantities[SY_LIFT_ALL_M_REF].value, true);
      put_times (&to, &quantities[SY_LIFT_ALL_SHIFT_MULTIPLIER]);
    }
  else if (which >= SY_LIFT_LI)
    {
      put_number (&to, heaviest);
      sy_text_add (&to, " / ");
      put_number (&to, end[which == SY_LIFT_LI     ? SY_LIFT_RWL
                           : which == SY_LIFT_FILI ? SY_LIFT_FIRWL
                                                   : SY_LIFT_MR].value);
    }
  else
    put_multiplier (&to, end, sink, which, units);
  sy_text_add (&to, " = ");
  put_number (&to, quantity->value);
  if (quantity->symbol->kind == SY_KIND_MASS)
    {
      sy_text_add (&to, " ");
      sy_text_add (&to, sy_unit_name (SY_KIND_MASS, units));
    }
  return true;
}

static void
add_cell (SyWorksheetPart *part, const char *name, double value)
{
  part->cells[part->n_cells].name = name;
  part->cells[part->n_cells++].value = value;
}

static void
fill_end (const SySink *sink, SyUnits units, size_t which, const char *name, SyWorksheetPart *out)
{
  static const char *const names[] = { "HM", "VM", "DM", "AM", "FM", "CM" };
  const SyQuantity *end = &sink->quantities[which * SY_LIFT_PER_END];
  double heaviest = sink->quantities[SY_LIFT_ALL_MASS_EACH].value * sink->quantities[SY_LIFT_ALL_PERSONS].value;
  double product = sy_lift_constants (units)->load_constant;

  out->name = name;
  out->n_cells = 0;
  for (size_t i = 0; i < SY_LEN (names); i++)
    {
      double value = sy_number_round (end[SY_LIFT_HM + i].value, 2);
      product *= value;
      add_cell (out, names[i], value);
    }
  /* The sheet divides by the RWL that was written down: Example 2 of the manual prints 35 / 28.0 as 1.3. */
  double rwl = sy_number_round (product, 1);
  add_cell (out, "RWL", rwl);
  add_cell (out, "LI", rwl > 0 ? sy_number_round (heaviest / rwl, 1) : INFINITY);
}

bool
sy_lift_worksheet (const SySink *sink, SyUnits units, size_t part, SyWorksheetPart *out)
{
  bool both = sink->quantities[SY_LIFT_PER_END].state != SY_STATE_ABSENT;
  SyWorksheetPart other;

  if (part == 0)
    fill_end (sink, units, 0, "origin", out);
  else if (part == 1 && both)
    fill_end (sink, units, 1, "destination", out);
  else if (part == (both ? 2 : 1))
    {
      /* the whole: RWL and LI of the end with the lower RWL on the sheet */
      fill_end (sink, units, 0, "", &other);
      *out = (SyWorksheetPart) { .name = "" };
      double rwl = other.cells[6].value, li = other.cells[7].value;
      if (both)
        {
          fill_end (sink, units, 1, "", &other);
          if (other.cells[6].value < rwl)
            {
              rwl = other.cells[6].value;
              li = other.cells[7].value;
            }
        }
      add_cell (out, "RWL", rwl);
      add_cell (out, "LI", li);
    }
  else
    return false;
  return true;
}
