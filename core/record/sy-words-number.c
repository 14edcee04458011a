/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

static int
decimals_of (SyKind kind)
{
  switch (kind)
    {
    case SY_KIND_RATIO:
      return 2;
    case SY_KIND_MASS:
    case SY_KIND_REACH:
    case SY_KIND_ANGLE:
    case SY_KIND_MINUTES:
    case SY_KIND_PERCENT:
      return 1;
    case SY_KIND_FREQUENCY:
      return 2;
    case SY_KIND_COUNT:
      return 0;
    }
  return 1;
}

static char *
print (double value, int decimals, bool keep_zeros)
{
  char buffer[SY_NUMBER_READ_MAX];

  sy_number_print_rounded (value, decimals, keep_zeros, buffer);
  return g_strdup (buffer);
}

static char *
with_unit (char *number, SyKind kind, SyUnits units)
{
  g_autofree char *text = number;

  switch (kind)
    {
    case SY_KIND_RATIO:
    case SY_KIND_COUNT:
      return g_steal_pointer (&text);
    case SY_KIND_ANGLE:
      return g_strconcat (text, "°", NULL);
    case SY_KIND_FREQUENCY:
      return g_strconcat (text, " / min", NULL);
    case SY_KIND_MASS:
    case SY_KIND_REACH:
    case SY_KIND_MINUTES:
    case SY_KIND_PERCENT:
      return g_strconcat (text, " ", sy_unit_name (kind, units), NULL);
    }
  return g_steal_pointer (&text);
}

char *
sy_words_number (double value, int decimals)
{
  return print (value, decimals, false);
}

static char *
quantity (double value, SyKind kind, SyUnits units, int decimals)
{
  return with_unit (print (value, decimals, kind == SY_KIND_RATIO), kind, units);
}

char *
sy_words_quantity (double value, SyKind kind, SyUnits units)
{
  return quantity (value, kind, units, decimals_of (kind));
}

char *
sy_words_against (double value, double limit, SyKind kind, SyUnits units)
{
  int decimals = decimals_of (kind);

  if (isfinite (value) && isfinite (limit) && value != limit)
    while (decimals < 9 && sy_number_round (value, decimals) == sy_number_round (limit, decimals))
      decimals++;
  return quantity (value, kind, units, decimals);
}

char *
sy_words_directed (double value, double towards, SyKind kind, SyUnits units)
{
  int decimals = decimals_of (kind);
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
