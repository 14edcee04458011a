/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-date.h"
#include "sy-ledger.h"

/* The letters of an RFC 3339 time up to its seconds, 0 for a digit: ISO 8601, which GLib reads, has many others. */
static const char pattern[] = "0000-00-00T00:00:00";
/* Years are written with four digits: a time of others, in UTC, could not be read again. */
#define YEAR_FIRST 1000
#define YEAR_LAST 9999

static gboolean
has_pattern (const char *text)
{
  for (gsize i = 0; i < sizeof pattern - 1; i++)
    if (pattern[i] == '0' ? !g_ascii_isdigit (text[i]) : text[i] != pattern[i])
      return FALSE;
  return TRUE;
}

/* The time that STEELYARD_CLOCK sets, NULL when it is set to what is no time; *is_set FALSE when it sets none. */
static GDateTime *
read_set_time (const char **text, gboolean *is_set)
{
  g_autoptr (GDateTime) time = NULL, utc = NULL;

  *text = g_getenv ("STEELYARD_CLOCK");
  *is_set = *text != NULL && **text != '\0';
  if (*is_set && has_pattern (*text))
    time = g_date_time_new_from_iso8601 (*text, NULL);
  utc = time != NULL ? g_date_time_to_utc (time) : NULL;
  if (utc == NULL || g_date_time_get_year (utc) < YEAR_FIRST || g_date_time_get_year (utc) > YEAR_LAST)
    return NULL;
  return g_steal_pointer (&time);
}

double
sy_clock_today (void)
{
  const char *set;
  gboolean is_set;
  g_autoptr (GDateTime) time = read_set_time (&set, &is_set);
  g_autofree char *text = NULL;
  double days = NAN;

  if (!is_set)
    time = g_date_time_new_now_local ();
  text = time != NULL ? g_date_time_format (time, "%Y-%m-%d") : NULL;
  return text != NULL && sy_date_read (text, &days) ? days : NAN;
}

char *
sy_clock_now (gboolean *clock_set, GError **error)
{
  const char *set;
  g_autoptr (GDateTime) time = read_set_time (&set, clock_set);
  g_autoptr (GDateTime) utc = NULL;

  if (!*clock_set)
    time = g_date_time_new_now_utc ();
  if (time == NULL)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_CLOCK,
                   "STEELYARD_CLOCK: given %s; allowed: an RFC 3339 time such as 2026-11-25T10:42:00Z", set);
      return NULL;
    }
  utc = g_date_time_to_utc (time);
  return g_date_time_format (utc, "%Y-%m-%dT%H:%M:%SZ");
}
