/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-ledger-deeds.h"

#define BETWEEN ", "

/* Whether a list of machines, ", " between, has one; both without case. A name may have a comma in it. */
static gboolean
has_machine (const char *machines, const char *machine)
{
  const gsize length = strlen (machine);

  for (const char *at = machines; length > 0 && (at = strstr (at, machine)) != NULL; at++)
    {
      const gboolean begins = at == machines || (at - machines >= 2 && strncmp (at - 2, BETWEEN, 2) == 0);

      if (begins && (at[length] == '\0' || g_str_has_prefix (at + length, BETWEEN)))
        return TRUE;
    }
  return FALSE;
}

static gboolean
fits (const SyTask *task, const SyTaskSieve *sieve, const char *machine)
{
  g_autofree char *machines = g_utf8_casefold (task->detail.machine, -1);

  if (sieve->method != NULL && strcmp (task->method, sieve->method) != 0)
    return FALSE;
  if (machine != NULL && !has_machine (machines, machine))
    return FALSE;
  /* written so, the earlier day comes first in the alphabet */
  return sieve->review_due == NULL || (*task->review_due != '\0' && strcmp (task->review_due, sieve->review_due) <= 0);
}

void
sy_tasks_sieve (GPtrArray *tasks, const SyTaskSieve *sieve)
{
  g_autofree char *folded = sieve->machine != NULL ? g_utf8_casefold (sieve->machine, -1) : NULL;
  const char *machine = folded != NULL ? g_strstrip (folded) : NULL;
  guint n = 0;

  /* what fits moves to the front in its order; what is left behind it goes */
  for (guint i = 0; i < tasks->len; i++)
    if (fits (tasks->pdata[i], sieve, machine))
      {
        gpointer other = tasks->pdata[n];

        tasks->pdata[n++] = tasks->pdata[i];
        tasks->pdata[i] = other;
      }
  g_ptr_array_set_size (tasks, (gint) n);
}
