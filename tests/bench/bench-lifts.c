/* SPDX-License-Identifier: MIT */
#include "bench-lifts.h"

static double
tenths (GRand *random, double low, double high)
{
  return (double) g_rand_int_range (random, (gint32) (low * 10), (gint32) (high * 10)) / 10;
}

static const char *
one_of (GRand *random, const char *const *words, int n)
{
  return words[g_rand_int_range (random, 0, n)];
}

static void
append_end (GString *out, GRand *random, gboolean metric)
{
  double scale = metric ? 1 : 0.4;

  if (g_rand_int_range (random, 0, 10) == 0)
    g_string_append_printf (out, "{\"H\":\"%d in\",", (int) g_rand_int_range (random, 10, 25));
  else
    g_string_append_printf (out, "{\"H\":%.10g,", tenths (random, 20, 66) * scale);
  g_string_append_printf (out, "\"V\":%.10g,\"A\":%.10g}", tenths (random, 0, 178) * scale,
                          tenths (random, 0, 120));
}

void
bench_lift_append (GString *out, GRand *random)
{
  static const char *const couplings[] = { "good", "fair", "poor" };
  static const char *const durations[] = { "short", "moderate", "long" };
  static const char *const assigned[] = { "any-age", "mixed-adults", "men-20-45" };
  gboolean metric = g_rand_boolean (random);
  double mass = tenths (random, 2, 30) * (metric ? 1 : 2.2);

  g_string_append_printf (out,
                          "{\"method\":\"lift\",\"units\":\"%s\","
                          "\"load\":{\"typical\":%.10g,\"heaviest\":%.10g},\"origin\":",
                          metric ? "metric" : "us", mass * 0.9, mass);
  append_end (out, random, metric);
  if (g_rand_boolean (random))
    {
      g_string_append (out, ",\"destination\":");
      append_end (out, random, metric);
      g_string_append_printf (out, ",\"control_at_destination\":%s",
                              g_rand_boolean (random) ? "true" : "false");
    }
  else
    g_string_append_printf (out, ",\"travel\":%.10g", tenths (random, 0, 120) * (metric ? 1 : 0.4));
  if (g_rand_int_range (random, 0, 4) == 0)
    g_string_append_printf (out, ",\"lifts\":%d,\"in_minutes\":15", (int) g_rand_int_range (random, 1, 120));
  else
    g_string_append_printf (out, ",\"frequency\":%.10g", tenths (random, 0, 9));
  if (g_rand_int_range (random, 0, 4) == 0)
    g_string_append_printf (out, ",\"work_minutes\":%d,\"recovery_minutes\":%d",
                            (int) g_rand_int_range (random, 20, 180),
                            (int) g_rand_int_range (random, 5, 90));
  else
    g_string_append_printf (out, ",\"duration\":\"%s\"", one_of (random, durations, 3));
  g_string_append_printf (out, ",\"coupling\":\"%s\",\"assigned\":\"%s\",\"lifts_per_day\":%d,\"conditions\":[]}",
                          one_of (random, couplings, 3), one_of (random, assigned, 3),
                          (int) g_rand_int_range (random, 1, 2000));
}

double
bench_seconds (void)
{
  return (double) g_get_monotonic_time () / G_USEC_PER_SEC;
}

void
bench_keep_best (double *best, double seconds)
{
  if (seconds < *best)
    *best = seconds;
}
