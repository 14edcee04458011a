/* SPDX-License-Identifier: MIT */
#include "sy-number.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Room for the digits that can matter to a double (767 for a halfway case) and then some. */
#define DIGITS_MAX 800

static bool
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

static bool
is_blank (char c)
{
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/* A decimal number taken apart: digits without a mark, and the power of ten behind them. */
typedef struct
{
  bool negative;
  char digits[DIGITS_MAX + 32];
  int n_digits;
  long exponent;
  unsigned long long small; /* the digits as an integer while there are at most 18 */
} Decimal;

static void
decimal_digit (Decimal *decimal, char digit, bool behind_mark)
{
  if (decimal->n_digits == 0 && digit == '0')
    {
      /* a leading zero carries no digit, only its place */
      if (behind_mark)
        decimal->exponent--;
      return;
    }
  if (decimal->n_digits < DIGITS_MAX)
    {
      decimal->digits[decimal->n_digits++] = digit;
      if (decimal->n_digits <= 18)
        decimal->small = decimal->small * 10 + (unsigned) (digit - '0');
      if (behind_mark)
        decimal->exponent--;
    }
  else
    {
      /* past every digit that can decide a rounding: only "not all zero" still matters */
      if (digit != '0')
        decimal->digits[DIGITS_MAX - 1] = '1';
      if (!behind_mark)
        decimal->exponent++;
    }
}

static const double powers[] = { 1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                 1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22 };

/* Correctly rounded. With at most 15 digits and a power of ten up to 22 one exact product or quotient does it
   (Clinger 1990); otherwise strtod, given no decimal mark and so indifferent to the locale. */
static bool
decimal_value (Decimal *decimal, double *value)
{
  double result;

  if (decimal->n_digits == 0)
    result = 0;
  else if (decimal->n_digits <= 15 && decimal->exponent >= -22 && decimal->exponent <= 22)
    result = decimal->exponent < 0 ? (double) decimal->small / powers[-decimal->exponent]
                                   : (double) decimal->small * powers[decimal->exponent];
  else
    {
      if (decimal->exponent > 100000)
        decimal->exponent = 100000;
      if (decimal->exponent < -100000)
        decimal->exponent = -100000;
      snprintf (decimal->digits + decimal->n_digits, 32, "e%ld", decimal->exponent);
      result = strtod (decimal->digits, NULL);
      if (!isfinite (result))
        return false;
    }
  *value = decimal->negative ? -result : result;
  return true;
}

/* Exponent digits from @text; an absurd one saturates. */
static size_t
read_exponent (const char *text, size_t length, long *exponent)
{
  size_t i = 0;
  bool negative = false;
  long sum = 0;

  if (i < length && (text[i] == '+' || text[i] == '-'))
    negative = text[i++] == '-';
  size_t first = i;
  for (; i < length && is_digit (text[i]); i++)
    if (sum < 1000000)
      sum = sum * 10 + (text[i] - '0');
  if (i == first)
    return 0;
  *exponent = negative ? -sum : sum;
  return i;
}

SyTextStatus
sy_number_parse (const char *text, size_t length, double *value, size_t *used)
{
  Decimal decimal = { .negative = false };
  size_t i = 0;
  size_t n_before = 0, n_behind = 0;
  char mark = 0;
  long exponent = 0;

  while (i < length && is_blank (text[i]))
    i++;
  if (i == length)
    return SY_TEXT_EMPTY;
  if (text[i] == '-' || text[i] == '+')
    decimal.negative = text[i++] == '-';
  for (; i < length && is_digit (text[i]); i++, n_before++)
    decimal_digit (&decimal, text[i], false);
  if (i < length && (text[i] == '.' || text[i] == ','))
    {
      mark = text[i++];
      for (; i < length && is_digit (text[i]); i++, n_behind++)
        decimal_digit (&decimal, text[i], true);
    }
  if (n_before == 0 || (mark != 0 && n_behind == 0))
    return SY_TEXT_NOT_NUMBER;
  if (mark == ',' && n_behind == 3)
    return SY_TEXT_AMBIGUOUS;
  if (i < length && (text[i] == '.' || text[i] == ','))
    return SY_TEXT_NOT_NUMBER; /* "1,234.5": grouping is not read */
  if (i < length && (text[i] == 'e' || text[i] == 'E'))
    {
      size_t taken = read_exponent (text + i + 1, length - i - 1, &exponent);
      if (taken > 0)
        {
          decimal.exponent += exponent;
          i += 1 + taken;
        }
    }
  /* "0x10", "012abc" and the like: a letter right behind a digit is judged as a unit by the caller, but a
     hexadecimal prefix is refused here so that it can never be taken for 0. */
  if (i < length && (text[i] == 'x' || text[i] == 'X'))
    return SY_TEXT_NOT_NUMBER;
  if (!decimal_value (&decimal, value))
    return SY_TEXT_TOO_LARGE;
  *used = i;
  return SY_TEXT_OK;
}

bool
sy_number_read_json (const char *token, size_t length, double *value)
{
  Decimal decimal = { .negative = false };
  size_t i = 0;
  bool behind = false;
  long exponent = 0;

  if (i < length && token[i] == '-')
    {
      decimal.negative = true;
      i++;
    }
  for (; i < length; i++)
    {
      if (is_digit (token[i]))
        decimal_digit (&decimal, token[i], behind);
      else if (token[i] == '.')
        behind = true;
      else
        break;
    }
  if (i < length && (token[i] == 'e' || token[i] == 'E'))
    {
      read_exponent (token + i + 1, length - i - 1, &exponent);
      decimal.exponent += exponent;
    }
  return decimal_value (&decimal, value);
}

/* printf's decimal mark is the locale's and may be several bytes: anything that is no part of a number in C
   notation becomes one point. */
static size_t
unlocalise (char *text)
{
  char *to = text;
  bool marked = false;

  for (const char *from = text; *from; from++)
    {
      if (is_digit (*from) || *from == '-' || *from == '+' || *from == 'e')
        {
          *to++ = *from;
          marked = false;
        }
      else if (!marked)
        {
          *to++ = '.';
          marked = true;
        }
    }
  *to = '\0';
  return (size_t) (to - text);
}

size_t
sy_number_print (double value, char *buffer)
{
  size_t length = 0;

  if (value == 0)
    {
      memcpy (buffer, "0", 2);
      return 1;
    }
  if (value == floor (value) && fabs (value) < 1e15)
    return (size_t) snprintf (buffer, SY_NUMBER_TEXT_MAX, "%lld", (long long) value);
  for (int digits = 15; digits <= 17; digits++)
    {
      double back = 0;

      snprintf (buffer, SY_NUMBER_TEXT_MAX, "%.*g", digits, value);
      length = unlocalise (buffer);
      if (digits == 17 || (sy_number_read_json (buffer, length, &back) && back == value))
        break;
    }
  return length;
}

double
sy_number_round (double value, int decimals)
{
  double power = powers[decimals];

  return copysign (floor (fabs (value) * power + 0.5 + 1e-9) / power, value);
}

size_t
sy_number_print_rounded (double value, int decimals, bool keep_zeros, char *buffer)
{
  if (!isfinite (value))
    return (size_t) snprintf (buffer, SY_NUMBER_READ_MAX, "%s", isnan (value) ? "\xe2\x80\x93" : "\xe2\x88\x9e");
  value = sy_number_round (value, decimals);
  snprintf (buffer, SY_NUMBER_READ_MAX, "%.*f", decimals, value == 0 ? 0 : value);
  size_t length = unlocalise (buffer);
  if (!keep_zeros && decimals > 0)
    {
      while (buffer[length - 1] == '0')
        length--;
      if (buffer[length - 1] == '.')
        length--;
      buffer[length] = '\0';
    }
  return length;
}

SyTextStatus
sy_quantity_parse (const char *text, size_t length, SyKind kind, SyUnits units, bool unit_required,
                   double *value, bool *had_unit)
{
  double number;
  size_t used;
  SyTextStatus status = sy_number_parse (text, length, &number, &used);

  if (status != SY_TEXT_OK)
    return status;
  while (used < length && is_blank (text[used]))
    used++;
  while (length > used && is_blank (text[length - 1]))
    length--;
  if (had_unit != NULL)
    *had_unit = used < length;
  if (used == length)
    {
      if (unit_required)
        return SY_TEXT_NO_UNIT;
      *value = number;
      return SY_TEXT_OK;
    }
  if (!sy_unit_read (kind, units, number, text + used, length - used, value))
    return SY_TEXT_WRONG_UNIT;
  if (!isfinite (*value))
    return SY_TEXT_TOO_LARGE;
  return SY_TEXT_OK;
}
