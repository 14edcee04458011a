/* SPDX-License-Identifier: MIT */
#include "sy-lookup.h"

#include <math.h>

#include "sy-i18n.h"

typedef struct
{
  SyDesk *desk;
  SyAssessment *plan; /* NULL: what lifts what */
  char *machine;
  GPtrArray *items;
} Lookup;

static void
free_lookup (gpointer data)
{
  Lookup *lookup = data;

  g_clear_pointer (&lookup->desk, sy_desk_unref);
  g_clear_pointer (&lookup->plan, sy_assessment_unref);
  g_clear_pointer (&lookup->items, g_ptr_array_unref);
  g_free (lookup->machine);
  g_free (lookup);
}

static void
run (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Lookup *lookup = data;
  GPtrArray *found = lookup->plan != NULL
                       ? sy_gear_find (lookup->desk, lookup->plan, lookup->items, sy_translate)
                       : sy_matrix_make (lookup->desk, lookup->items, lookup->items, lookup->machine, NAN, sy_translate);

  (void) source, (void) cancellable;
  g_task_return_pointer (task, found, (GDestroyNotify) g_ptr_array_unref);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GTask) task = data;
  Lookup *lookup = g_task_get_task_data (task);
  GError *error = NULL;

  lookup->items = sy_worker_register_finish (SY_WORKER (source), result, &error);
  if (lookup->items == NULL)
    g_task_return_error (task, error);
  else
    g_task_run_in_thread (task, run);
}

static void
begin (SyWorker *worker, SyAssessment *plan, const char *machine, GCancellable *cancellable,
       GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (worker, cancellable, callback, user_data);
  Lookup *lookup = g_new0 (Lookup, 1);

  lookup->desk = sy_desk_ref (sy_worker_get_desk (worker));
  lookup->plan = plan != NULL ? sy_assessment_ref (plan) : NULL;
  lookup->machine = g_strdup (machine);
  g_task_set_task_data (task, lookup, free_lookup);
  g_task_set_return_on_cancel (task, FALSE);
  sy_worker_register_async (worker, plan != NULL ? SY_ITEM_GEAR : NULL, cancellable, read_cb, task);
}

void
sy_lookup_matrix_async (SyWorker *worker, const char *machine, GCancellable *cancellable,
                        GAsyncReadyCallback callback, gpointer user_data)
{
  begin (worker, NULL, machine, cancellable, callback, user_data);
}

GPtrArray *
sy_lookup_matrix_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
sy_lookup_gear_async (SyWorker *worker, SyAssessment *plan, GCancellable *cancellable,
                      GAsyncReadyCallback callback, gpointer user_data)
{
  begin (worker, plan, NULL, cancellable, callback, user_data);
}

GPtrArray *
sy_lookup_gear_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
