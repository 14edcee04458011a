/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-words-private.h"

/* Decimals with which a measure is read, by kind and unit system. */
static int
decimals_of (SyKind kind, SyUnits units)
{
  static const signed char decimals[SY_N_KINDS][SY_N_UNITS] = {
    [SY_KIND_RATIO] = { 2, 2 },     [SY_KIND_MASS] = { 1, 1 },      [SY_KIND_REACH] = { 1, 1 },
    [SY_KIND_ANGLE] = { 1, 1 },     [SY_KIND_MINUTES] = { 1, 1 },   [SY_KIND_FREQUENCY] = { 2, 2 },
    [SY_KIND_COUNT] = { 0, 0 },     [SY_KIND_PERCENT] = { 1, 1 },   [SY_KIND_LENGTH] = { 1, 2 },
    [SY_KIND_FORCE] = { 2, 0 },     [SY_KIND_HAND_FORCE] = { 0, 0 }, [SY_KIND_DENSITY] = { 0, 4 },
    [SY_KIND_AREA] = { 0, 2 },      [SY_KIND_TEMPERATURE] = { 1, 1 }, [SY_KIND_STIFFNESS] = { 2, 0 },
    [SY_KIND_SLOPE] = { 1, 1 },     [SY_KIND_DATE] = { 0, 0 },
    [SY_KIND_DISTANCE] = { 1, 1 },   [SY_KIND_MONEY] = { 2, 2 },
  };

  return decimals[kind][units];
}

gboolean
sy_words_has_sign (const char *symbol)
{
  return *symbol != '\0' && strpbrk (symbol, "abcdefghijklmnopqrstuvwxyz") == NULL;
}

const char *
sy_words_index_sign (const char *symbol, SyTranslate translate)
{
  static const char index[] = N_ ("index");

  if (sy_words_has_sign (symbol))
    return symbol;
  return translate != NULL ? translate (index) : index;
}

static char *
print (double value, int decimals, bool keep_zeros)
{
  char buffer[SY_NUMBER_READ_MAX];

  sy_number_print_rounded (value, decimals, keep_zeros, buffer);
  return g_strdup (buffer);
}

/* What a reader sees behind a number, where that is not the unit's own name. */
static const char *
shown_unit (SyKind kind, SyUnits units)
{
  static const char *const shown[SY_N_KINDS][SY_N_UNITS] = {
    [SY_KIND_RATIO] = { "", "" },
    [SY_KIND_COUNT] = { "", "" },
    [SY_KIND_MONEY] = { "", "" },
    [SY_KIND_ANGLE] = { "\xc2\xb0", "\xc2\xb0" },
    [SY_KIND_SLOPE] = { "\xc2\xb0", "\xc2\xb0" },
    [SY_KIND_FREQUENCY] = { " / min", " / min" },
    [SY_KIND_DENSITY] = { " kg/m\xc2\xb3", " lb/in\xc2\xb3" },
    [SY_KIND_AREA] = { " mm\xc2\xb2", " in\xc2\xb2" },
    [SY_KIND_TEMPERATURE] = { " \xc2\xb0" "C", " \xc2\xb0" "F" },
  };

  return shown[kind][units];
}

static char *
with_unit (char *number, SyKind kind, SyUnits units)
{
  g_autofree char *text = number;
  const char *unit = shown_unit (kind, units);

  return unit != NULL ? g_strconcat (text, unit, NULL)
                      : g_strconcat (text, " ", sy_unit_name (kind, units), NULL);
}

const char *
sy_words_unit (SyKind kind, SyUnits units)
{
  const char *shown = shown_unit (kind, units);

  if (shown == NULL)
    return sy_unit_name (kind, units);
  return shown + strspn (shown, " ");
}

char *
sy_words_number (double value, int decimals)
{
  return print (value, decimals, false);
}

static char *
quantity (double value, SyKind kind, SyUnits units, int decimals)
{
  if (kind == SY_KIND_DATE)
    {
      char date[SY_DATE_TEXT_MAX];

      sy_date_print (value, date);
      return g_strdup (date);
    }
  return with_unit (print (value, decimals, kind == SY_KIND_RATIO), kind, units);
}

char *
sy_words_quantity (double value, SyKind kind, SyUnits units)
{
  return quantity (value, kind, units, decimals_of (kind, units));
}

char *
sy_words_against (double value, double limit, SyKind kind, SyUnits units)
{
  int decimals = decimals_of (kind, units);

  if (isfinite (value) && isfinite (limit) && value != limit)
    while (decimals < 9 && sy_number_round (value, decimals) == sy_number_round (limit, decimals))
      decimals++;
  return quantity (value, kind, units, decimals);
}

char *
sy_words_directed (double value, double towards, SyKind kind, SyUnits units)
{
  int decimals = decimals_of (kind, units);
  double power = pow (10, decimals);
  double shown = value * power;

  if (!isfinite (value))
    return quantity (value, kind, units, decimals);
  /* a value that is round already but for the last bits stays as it is */
  shown = fabs (shown - round (shown)) < 1e-7 ? round (shown) : towards < value ? floor (shown) : ceil (shown);
  return with_unit (print (shown / power, decimals, kind == SY_KIND_RATIO), kind, units);
}

char *
sy_words_fill (const char *msgid, SyTranslate translate, SyFill fill, gconstpointer data)
{
  const char *text = translate ? translate (msgid) : msgid;
  GString *out = g_string_new (NULL);

  while (*text)
    {
      const char *open = strchr (text, '{');
      const char *close = open ? strchr (open, '}') : NULL;

      if (close == NULL)
        {
          g_string_append (out, text);
          break;
        }
      g_string_append_len (out, text, open - text);
      g_autofree char *name = g_strndup (open + 1, (gsize) (close - open - 1));
      g_autofree char *value = fill (name, data);
      if (value != NULL)
        g_string_append (out, value);
      else
        g_string_append_len (out, open, close - open + 1);
      text = close + 1;
    }
  return g_string_free (out, FALSE);
}

typedef struct
{
  const char *name, *value;
} Pair;
#define PAIRS_MAX 10

typedef struct
{
  Pair pairs[PAIRS_MAX];
  gsize n;
} Pairs;

static char *
fill_pairs (const char *name, gconstpointer data)
{
  const Pairs *pairs = data;

  for (gsize i = 0; i < pairs->n; i++)
    if (strcmp (pairs->pairs[i].name, name) == 0)
      return g_strdup (pairs->pairs[i].value);
  return NULL;
}

char *
sy_words_say (SyTranslate translate, const char *msgid, ...)
{
  Pairs pairs = { .n = 0 };
  va_list list;

  va_start (list, msgid);
  for (const char *name = va_arg (list, const char *); name != NULL && pairs.n < PAIRS_MAX;
       name = va_arg (list, const char *))
    pairs.pairs[pairs.n++] = (Pair) { name, va_arg (list, const char *) };
  va_end (list);
  return sy_words_fill (msgid, translate, fill_pairs, &pairs);
}

double
sy_words_value (const SyFindings *findings, const char *symbol)
{
  const SyQuantity *found = sy_findings_quantity (findings, symbol);

  return found == NULL ? NAN : found->value;
}

double
sy_words_end_value (const SyFindings *findings, const char *end, const char *symbol)
{
  g_autofree char *whole = g_strconcat (end, ".", symbol, NULL);

  return sy_words_value (findings, whole);
}
