/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-ledger.h"

char *
sy_clock_now (gboolean *clock_set, GError **error)
{
  const char *set = g_getenv ("STEELYARD_CLOCK");
  g_autoptr (GDateTime) time = NULL;
  g_autoptr (GDateTime) utc = NULL;

  *clock_set = set != NULL && *set != '\0';
  if (!*clock_set)
    time = g_date_time_new_now_utc ();
  else if (strlen (set) >= 20) /* a date alone is no RFC 3339 time */
    time = g_date_time_new_from_iso8601 (set, NULL);
  if (time == NULL)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_CLOCK,
                   "STEELYARD_CLOCK: given %s; allowed: an RFC 3339 time such as 2026-11-25T10:42:00Z", set);
      return NULL;
    }
  utc = g_date_time_to_utc (time);
  return g_date_time_format (utc, "%Y-%m-%dT%H:%M:%SZ");
}
