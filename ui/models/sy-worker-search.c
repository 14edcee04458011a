/* SPDX-License-Identifier: MIT */
#include "sy-worker-search.h"

#include "sy-ledger-deeds.h"
#include "sy-task-order.h"
#include "sy-worker-private.h"

/* Topics: everything */

typedef struct
{
  double today;
  SyTaskFill *fill;
} Filling;

void
sy_task_fill_free (SyTaskFill *fill)
{
  if (fill == NULL)
    return;
  g_clear_pointer (&fill->positions, g_hash_table_unref);
  g_clear_pointer (&fill->rows, g_ptr_array_unref);
  g_free (fill->by_rest);
  g_free (fill);
}

static void
free_filling (gpointer data)
{
  Filling *filling = data;

  sy_task_fill_free (filling->fill);
  g_free (filling);
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  return sy_task_order_name (*(SyTaskRow *const *) a, *(SyTaskRow *const *) b);
}

static gboolean
run_fill (SyLedger *ledger, gpointer data, GError **error)
{
  Filling *filling = data;
  g_autoptr (SyTaskFill) fill = g_new0 (SyTaskFill, 1);
  g_autoptr (GPtrArray) tasks = NULL;

  /* The head first: what is written in between is then told twice, never not at all. */
  if (!sy_ledger_head (ledger, &fill->head, error))
    return FALSE;
  /* In the order of lines, of which the store has an index: it need not sort what is sorted here. */
  tasks = sy_ledger_changed_since (ledger, 0, error);
  if (tasks == NULL)
    return FALSE;
  fill->rows = g_ptr_array_new_full (tasks->len, g_object_unref);
  fill->positions = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < tasks->len; i++)
    {
      SyTaskRow *row = sy_task_row_new_take (g_steal_pointer (&tasks->pdata[i]));

      sy_task_row_set_today (row, filling->today);
      g_ptr_array_add (fill->rows, row);
    }
  g_ptr_array_set_free_func (tasks, NULL);
  g_ptr_array_sort (fill->rows, compare_rows);
  fill->by_rest = g_new (guint32, (gsize) fill->rows->len + 1);
  for (guint32 i = 0; i < fill->rows->len; i++)
    fill->by_rest[i] = i;
  sy_task_sort_rest (fill->rows, fill->by_rest, fill->rows->len);
  for (guint i = 0; i < fill->rows->len; i++)
    {
      const SyTask *task = sy_task_row_get_task (fill->rows->pdata[i]);

      for (int which = 0; which < SY_N_REGISTERS; which++)
        if (g_str_equal (task->item_kind, sy_register_item_kind ((SyRegister) which)))
          (*(task->retired ? &fill->retired[which] : &fill->counts[which]))++;
      g_hash_table_insert (fill->positions, task->id, GUINT_TO_POINTER (i + 1));
    }
  filling->fill = g_steal_pointer (&fill);
  return TRUE;
}

static const SyWorkerCall call_fill = { run_fill, free_filling, FALSE };

void
sy_worker_fill_async (SyWorker *self, double today, GCancellable *cancellable, GAsyncReadyCallback callback,
                      gpointer user_data)
{
  Filling *filling = g_new0 (Filling, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  filling->today = today;
  sy_worker_call_async (self, &call_fill, filling, cancellable, callback, user_data);
}

SyTaskFill *
sy_worker_fill_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Filling *filling = sy_worker_call_finish (self, result, &call_fill, error);

  return filling != NULL ? g_steal_pointer (&filling->fill) : NULL;
}

/* Topics: words */

typedef struct
{
  char *search;
  GArray *seats;
} Search;

static void
free_search (gpointer data)
{
  Search *search = data;

  g_free (search->search);
  g_clear_pointer (&search->seats, g_array_unref);
  g_free (search);
}

static gboolean
run_search (SyLedger *ledger, gpointer data, GError **error)
{
  Search *search = data;
  GError *failed = NULL;

  search->seats = sy_ledger_search (ledger, search->search, &failed);
  if (failed == NULL)
    return TRUE;
  g_propagate_error (error, failed);
  return FALSE;
}

static const SyWorkerCall call_search = { run_search, free_search, FALSE };

void
sy_worker_search_async (SyWorker *self, const char *words, GCancellable *cancellable, GAsyncReadyCallback callback,
                        gpointer user_data)
{
  Search *search = g_new0 (Search, 1);

  g_return_if_fail (SY_IS_WORKER (self));
  search->search = g_strdup (words);
  sy_worker_call_async (self, &call_search, search, cancellable, callback, user_data);
}

GArray *
sy_worker_search_finish (SyWorker *self, GAsyncResult *result, GError **error)
{
  Search *search = sy_worker_call_finish (self, result, &call_search, error);

  return search != NULL ? g_steal_pointer (&search->seats) : NULL;
}
