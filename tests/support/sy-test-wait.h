/* SPDX-License-Identifier: MIT */
#ifndef SY_TEST_WAIT_H
#define SY_TEST_WAIT_H

#include <glib.h>

/* Wait for a condition, never for a time. */

typedef gboolean (*SyTestCondition) (gpointer user_data);

static inline gboolean
sy_test_tick (gpointer user_data G_GNUC_UNUSED)
{
  return G_SOURCE_CONTINUE;
}

/**
 * sy_test_until:
 * Turn the default main context until the condition holds.
 * Parameters:   limit_ms  only a backstop against a test that would hang.
 * Return value: whether it held.
 */
static inline gboolean
sy_test_until (SyTestCondition holds, gpointer user_data, guint limit_ms)
{
  gint64 end = g_get_monotonic_time () + (gint64) limit_ms * 1000;
  /* So that the wait ends without other events. */
  guint tick = g_timeout_add (10, sy_test_tick, NULL);
  gboolean held = holds (user_data);

  while (!held && g_get_monotonic_time () < end)
    {
      g_main_context_iteration (NULL, TRUE);
      held = holds (user_data);
    }
  g_source_remove (tick);
  return held;
}

/* Lets everything that is ready now run. */
static inline void
sy_test_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

#endif
