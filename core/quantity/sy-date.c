/* SPDX-License-Identifier: MIT */
#include "sy-date.h"

#include <math.h>
#include <string.h>

/* Days of the civil calendar, counted from March so that the leap day comes last; 719468 days lie between 0000-03-01
   and 1970-01-01. */
#define DAYS_TO_1970 719468
#define DAYS_400_YEARS 146097

static int
month_length (int year, int month)
{
  static const int lengths[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
  bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;

  return lengths[month - 1] + (month == 2 && leap ? 1 : 0);
}

static double
to_days (int year, int month, int day)
{
  int from_march = (month + 9) % 12;
  int y = year - (month < 3 ? 1 : 0);
  int era = y / 400, of_era = y % 400;
  int of_year = (153 * from_march + 2) / 5 + day - 1;

  return (double) era * DAYS_400_YEARS + of_era * 365 + of_era / 4 - of_era / 100 + of_year - DAYS_TO_1970;
}

static void
from_days (double days, int *year, int *month, int *day)
{
  int z = (int) days + DAYS_TO_1970;
  int era = z / DAYS_400_YEARS, of_era = z % DAYS_400_YEARS;
  int y = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  int of_year = of_era - (365 * y + y / 4 - y / 100);
  int from_march = (5 * of_year + 2) / 153;

  *day = of_year - (153 * from_march + 2) / 5 + 1;
  *month = from_march < 10 ? from_march + 3 : from_march - 9;
  *year = y + era * 400 + (*month < 3 ? 1 : 0);
}

static int
digits (const char *text, int n)
{
  int value = 0;

  for (int i = 0; i < n; i++)
    {
      if (text[i] < '0' || text[i] > '9')
        return -1;
      value = value * 10 + (text[i] - '0');
    }
  return value;
}

bool
sy_date_read (const char *text, double *days)
{
  if (strlen (text) != 10 || text[4] != '-' || text[7] != '-')
    return false;
  int year = digits (text, 4), month = digits (text + 5, 2), day = digits (text + 8, 2);
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > month_length (year, month))
    return false;
  *days = to_days (year, month, day);
  return true;
}

void
sy_date_print (double days, char *buffer)
{
  int year, month, day;

  buffer[0] = '\0';
  if (!(days >= to_days (1, 1, 1) && days <= to_days (9999, 12, 31)) || days != floor (days))
    return;
  from_days (days, &year, &month, &day);
  const int parts[] = { year / 1000 % 10, year / 100 % 10, year / 10 % 10, year % 10, -1, month / 10, month % 10, -1,
                        day / 10, day % 10 };
  for (int i = 0; i < 10; i++)
    buffer[i] = parts[i] < 0 ? '-' : (char) ('0' + parts[i]);
  buffer[10] = '\0';
}

double
sy_date_add_months (double days, int months)
{
  int year, month, day;

  from_days (days, &year, &month, &day);
  int whole = year * 12 + month - 1 + months;
  year = whole / 12;
  month = whole % 12 + 1;
  if (day > month_length (year, month))
    day = month_length (year, month);
  return to_days (year, month, day);
}
