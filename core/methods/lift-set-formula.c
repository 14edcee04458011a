/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-lift-set-facts.h"

/* Each line of a set with its numbers put in, so that it can be redone with a pocket calculator. */

#define TIMES " \xc3\x97 "
#define MINUS " \xe2\x88\x92 "
/* As many terms as a line has room for. */
#define TERMS_MAX 40

static void
put_number (SyText *to, double value)
{
  if (isinf (value))
    sy_text_add (to, "\xe2\x88\x9e");
  else
    sy_text_add_rounded (to, value, fabs (value) >= 1000 ? 1 : fabs (value) >= 100 ? 2 : fabs (value) >= 10 ? 3 : 4);
}

/* What a quantity is called by: "lift.3." of "lift.3.FIRWL". */
typedef struct
{
  const SySink *sink;
  char text[SY_NAMED_TEXT_MAX]; /* prefix, and room for a name */
  size_t length;                /* of the prefix               */
} Of;

static Of
of_prefix (const SySink *sink, const char *prefix, double n)
{
  Of of = { .sink = sink };
  SyText text = { of.text, sizeof of.text, 0 };

  sy_text_add (&text, prefix);
  if (n > 0)
    sy_text_add_number (&text, n);
  sy_text_add (&text, n > 0 ? "." : "");
  of.length = text.at;
  return of;
}

static Of
of_named (const SySink *sink, const char *named)
{
  size_t dot = 0;
  Of of = { .sink = sink };

  for (size_t i = 0; named[i] != '\0'; i++)
    dot = named[i] == '.' ? i + 1 : dot;
  memcpy (of.text, named, dot);
  of.text[dot] = '\0';
  of.length = dot;
  return of;
}

/* A sibling's value; NAN when absent. */
static double
value_of (Of *of, const char *name)
{
  SyText text = { of->text, sizeof of->text, of->length };

  sy_text_add (&text, name);
  const SyQuantity *quantity = sy_sink_quantity (of->sink, of->text);
  return quantity ? quantity->value : NAN;
}

static void
put_parts (SyText *to, const double *values, int n, const char *between)
{
  for (int i = 0; i < n; i++)
    {
      sy_text_add (to, i > 0 ? between : "");
      put_number (to, values[i]);
    }
}

/* ---- a lift ---- */

/* The measure is told back from the multiplier: the facts themselves are not among the quantities. */
static bool
put_multiplier (SyText *to, const char *name, double value, SyUnits units)
{
  const SyLiftConstants *c = sy_lift_constants (units);

  if (!(value > 0 && value < 1))
    return false;
  if (strcmp (name, "HM") == 0)
    put_parts (to, (double[]) { c->reach_min, c->reach_min / value }, 2, " / ");
  else if (strcmp (name, "DM") == 0)
    {
      put_parts (to, (double[]) { c->travel_base, c->travel_gain }, 2, " + ");
      sy_text_add (to, " / ");
      put_number (to, c->travel_gain / (value - c->travel_base));
    }
  else if (strcmp (name, "VM") == 0 || strcmp (name, "AM") == 0)
    {
      double slope = *name == 'V' ? c->height_slope : c->twist_slope;
      sy_text_add (to, "1" MINUS);
      put_parts (to, (double[]) { slope, (1 - value) / slope }, 2, TIMES);
    }
  else
    return false;
  return true;
}

static void
put_frequency_multiplier (SyText *to, double per_min)
{
  sy_text_add (to, "FM(");
  put_number (to, per_min);
  sy_text_add (to, " / min)");
}

/* Mass / limit, or mass / (limit × FM). The mass is told back from the index and the limit. */
static bool
put_index (SyText *to, double index, double limit, double fm)
{
  if (!isfinite (index) || !(limit * fm > 0))
    return false;
  put_number (to, index * limit * fm);
  sy_text_add (to, fm < 1 ? " / (" : " / ");
  put_parts (to, (double[]) { limit, fm }, fm < 1 ? 2 : 1, TIMES);
  sy_text_add (to, fm < 1 ? ")" : "");
  return true;
}

static bool
put_lift (SyText *to, Of *of, const char *name, double value, SyUnits units)
{
  double firwl = value_of (of, "FIRWL"), fm = value_of (of, "FM");

  if (strcmp (name, "FIRWL") == 0)
    {
      const double parts[] = { sy_lift_constants (units)->load_constant, value_of (of, "HM"), value_of (of, "VM"),
                               value_of (of, "DM"), value_of (of, "AM"), value_of (of, "CM") };
      put_parts (to, parts, 6, TIMES);
    }
  else if (strcmp (name, "FM") == 0 || strcmp (name, "FMmax") == 0)
    put_frequency_multiplier (to, value_of (of, "F"));
  else if (strcmp (name, "STRWL") == 0)
    put_parts (to, (double[]) { firwl, fm }, 2, TIMES);
  else if (strcmp (name, "FILI") == 0)
    return put_index (to, value, firwl, 1);
  else if (strcmp (name, "STLI") == 0)
    return put_index (to, value, value_of (of, "STRWL"), 1);
  else if (strcmp (name, "LImax") == 0)
    return put_index (to, value, firwl, value_of (of, "FMmax"));
  else if (strcmp (name, "LI") == 0)
    {
      /* at another end than by the whole: the line would not hold */
      double load = value_of (of, "LImax") * value_of (of, "FMmax");
      return fabs (value * fm - load) <= 1e-9 * load && put_index (to, value, firwl, fm);
    }
  else
    return put_multiplier (to, name, value, units);
  return true;
}

/* ---- terms and categories ---- */

/* FILI × (1 / FM with it − 1 / FM without it) */
static bool
put_added (SyText *to, double fili, double fm_after, double fm_before)
{
  if (!isfinite (fili) || !(fm_after > 0) || !(fm_before > 0))
    return false;
  put_number (to, fili);
  sy_text_add (to, TIMES "(1 / ");
  put_number (to, fm_after);
  sy_text_add (to, MINUS "1 / ");
  put_number (to, fm_before);
  sy_text_add (to, ")");
  return true;
}

static bool
put_term (SyText *to, Of *of, const char *name)
{
  Of lift = of_prefix (of->sink, "lift.", value_of (of, "lift"));
  double before = value_of (of, "FM_before");

  if (strcmp (name, "FM_after") == 0)
    put_frequency_multiplier (to, value_of (of, "F"));
  else if (strcmp (name, "FM_before") == 0)
    put_frequency_multiplier (to, value_of (of, "F") - value_of (&lift, "F"));
  else if (strcmp (name, "delta") != 0)
    return false;
  else if (isnan (before))
    return put_index (to, value_of (&lift, "STLI"), value_of (&lift, "STRWL"), 1);
  else
    return put_added (to, value_of (&lift, "FILI"), value_of (of, "FM_after"), before);
  return true;
}

static bool
put_category (SyText *to, Of *of, const char *prefix, double n, const char *name)
{
  double fm = value_of (of, "FM"), before = NAN, per_min = value_of (of, "frequency");

  /* empty categories are skipped; all higher ones count */
  for (double higher = 1; higher < n; higher++)
    {
      Of other = of_prefix (of->sink, prefix, higher);
      double other_fm = value_of (&other, "FM");
      before = isnan (other_fm) ? before : other_fm;
      per_min += isnan (other_fm) ? 0 : value_of (&other, "frequency");
    }
  if (strcmp (name, "FM") == 0)
    put_frequency_multiplier (to, per_min);
  else if (strcmp (name, "delta") != 0 || !(fm > 0))
    return false;
  else if (isnan (before))
    put_parts (to, (double[]) { value_of (of, "FILI"), fm }, 2, " / ");
  else
    return put_added (to, value_of (of, "FILI"), fm, before);
  return true;
}

/* The number behind the first dot: 3 of "equal.3.FILI". */
static double
number_in (const char *named)
{
  const char *at = strchr (named, '.');
  double n = 0;

  for (at = at ? at + 1 : ""; *at >= '0' && *at <= '9'; at++)
    n = n * 10 + (*at - '0');
  return n;
}

bool
sy_lift_set_named_formula (const SySink *sink, const SyNamed *named, SyUnits units, char *text)
{
  SyText to = { text, SY_FORMULA_MAX, 0 };
  Of of = of_named (sink, named->text);
  const char *name = named->text + of.length;
  bool done;

  sy_text_add (&to, name);
  sy_text_add (&to, " = ");
  if (strncmp (named->text, "lift.", 5) == 0)
    done = put_lift (&to, &of, name, named->quantity.value, units);
  else if (strncmp (named->text, "term.", 5) == 0)
    done = put_term (&to, &of, name);
  else if (strncmp (named->text, "equal.", 6) == 0 || strncmp (named->text, "ntile.", 6) == 0)
    done = put_category (&to, &of, *named->text == 'e' ? "equal." : "ntile.", number_in (named->text), name);
  else
    return false;
  if (!done)
    return false;
  sy_text_add (&to, " = ");
  put_number (&to, named->quantity.value);
  if (named->symbol.kind == SY_KIND_MASS)
    {
      sy_text_add (&to, " ");
      sy_text_add (&to, sy_unit_name (SY_KIND_MASS, units));
    }
  return true;
}

/* ---- the whole ---- */

/* delta + delta + … of terms or categories. */
static bool
put_sum (SyText *to, const SySink *sink, const char *prefix, int last)
{
  int put = 0;

  for (int k = 1; k <= last; k++)
    {
      Of of = of_prefix (sink, prefix, k);
      double delta = value_of (&of, "delta");
      if (isnan (delta))
        continue;
      if (put == TERMS_MAX)
        return false;
      sy_text_add (to, put++ > 0 ? " + " : "");
      put_number (to, delta);
    }
  return put > 0;
}

/* LI_1 + (LImax_1 − LI_1) × K, or (LImax_1 × share + …) / LImax_1 */
static bool
put_sequential (SyText *to, const SySink *sink, bool k)
{
  double li = NAN, li_max = NAN;
  int put = 0;

  if (k)
    sy_text_add (to, "(");
  for (size_t i = 0; i < sink->n_named; i++)
    {
      Of of = of_named (sink, sink->named[i].text);
      if (strncmp (sink->named[i].text, "lift.", 5) != 0 || strcmp (sink->named[i].text + of.length, "order") != 0)
        continue;
      if (k && put == TERMS_MAX / 2)
        return false;
      if (k)
        {
          sy_text_add (to, put++ > 0 ? " + " : "");
          put_parts (to, (double[]) { value_of (&of, "LImax"), value_of (&of, "share") }, 2, TIMES);
        }
      if (sink->named[i].quantity.value > 1)
        continue;
      li = value_of (&of, "LI");
      li_max = value_of (&of, "LImax");
    }
  if (!isfinite (li_max))
    return false;
  if (k)
    {
      sy_text_add (to, ") / ");
      put_number (to, li_max);
      return true;
    }
  put_number (to, li);
  sy_text_add (to, " + (");
  put_parts (to, (double[]) { li_max, li }, 2, MINUS);
  sy_text_add (to, ")" TIMES);
  put_number (to, sink->quantities[SY_SET_K].value);
  return true;
}

bool
sy_lift_set_formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  const SyQuantity *quantity = &sink->quantities[symbol];
  SyText to = { text, SY_FORMULA_MAX, 0 };
  bool done = false;

  if (quantity->state == SY_STATE_ABSENT)
    return false;
  sy_text_add (&to, quantity->symbol->symbol);
  sy_text_add (&to, " = ");
  if (symbol == SY_SET_CLI)
    done = put_sum (&to, sink, "term.", SY_LIFT_TASKS_MAX);
  else if (symbol == SY_SET_VLI_EQUAL)
    done = put_sum (&to, sink, "equal.", SY_LIFT_CATEGORIES_MAX);
  else if (symbol == SY_SET_VLI_NTILE)
    done = put_sum (&to, sink, "ntile.", SY_LIFT_CATEGORIES_MAX);
  else if (symbol == SY_SET_SLI || symbol == SY_SET_K)
    done = put_sequential (&to, sink, symbol == SY_SET_K);
  else if (symbol == SY_SET_MR_RATIO && quantity->state == SY_STATE_VALUE)
    {
      double index = sy_sink_quantity (sink, sink->index_symbol)->value, constant = sy_lift_constants (units)->load_constant;
      put_parts (&to, (double[]) { index, constant }, 2, TIMES);
      sy_text_add (&to, " / ");
      put_number (&to, index * constant / quantity->value);
      done = true;
    }
  if (!done)
    return false;
  sy_text_add (&to, " = ");
  put_number (&to, quantity->value);
  return true;
}
