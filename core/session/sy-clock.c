/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-ledger.h"

/* The time that STEELYARD_CLOCK sets, NULL when it is set to what is no time; *is_set FALSE when it sets none. */
static GDateTime *
read_set_time (const char **text, gboolean *is_set)
{
  *text = g_getenv ("STEELYARD_CLOCK");
  *is_set = *text != NULL && **text != '\0';
  /* a date alone is no RFC 3339 time */
  return *is_set && strlen (*text) >= 20 ? g_date_time_new_from_iso8601 (*text, NULL) : NULL;
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
