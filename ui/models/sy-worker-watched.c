/* SPDX-License-Identifier: MIT */
#include "sy-worker-journal-private.h"

#define TELL_MS 80 /* often enough for a bar that moves */

struct SyWatched
{
  GCancellable *cancellable;
  SyWorkerProgress progress;
  gpointer user_data;
  GSource *timer; /* NULL: nothing is told */

  GMutex lock; /* for the two below */
  guint64 done, of;
  guint64 told;
};

static gboolean
tell_cb (gpointer user_data)
{
  SyWatched *self = user_data;
  guint64 done, of;

  g_mutex_lock (&self->lock);
  done = self->done;
  of = self->of;
  g_mutex_unlock (&self->lock);
  if (done != self->told)
    {
      self->told = done;
      self->progress (done, of, self->user_data);
    }
  return G_SOURCE_CONTINUE;
}

SyWatched *
sy_watched_new (GCancellable *cancellable, SyWorkerProgress progress, gpointer user_data)
{
  SyWatched *self = g_new0 (SyWatched, 1);

  g_mutex_init (&self->lock);
  self->cancellable = cancellable != NULL ? g_object_ref (cancellable) : NULL;
  self->progress = progress;
  self->user_data = user_data;
  if (progress == NULL)
    return self;
  self->timer = g_timeout_source_new (TELL_MS);
  g_source_set_static_name (self->timer, "[steelyard] progress of the worker");
  g_source_set_callback (self->timer, tell_cb, self, NULL);
  g_source_attach (self->timer, g_main_context_get_thread_default ());
  return self;
}

void
sy_watched_end (SyWatched *self)
{
  if (self->timer == NULL)
    return;
  g_source_destroy (self->timer);
  g_clear_pointer (&self->timer, g_source_unref);
}

void
sy_watched_free (SyWatched *self)
{
  if (self == NULL)
    return;
  sy_watched_end (self);
  g_clear_object (&self->cancellable);
  g_mutex_clear (&self->lock);
  g_free (self);
}

gboolean
sy_watched_step (guint64 done, guint64 of, gpointer watched)
{
  SyWatched *self = watched;

  g_mutex_lock (&self->lock);
  self->done = done;
  self->of = of;
  g_mutex_unlock (&self->lock);
  return !g_cancellable_is_cancelled (self->cancellable);
}

gboolean
sy_watched_begin (SyWatched *self, GError **error)
{
  return !g_cancellable_set_error_if_cancelled (self->cancellable, error);
}

gboolean
sy_watched_done (gboolean done, GError **error)
{
  if (!done && error != NULL && g_error_matches (*error, SY_STORE_ERROR, SY_STORE_ERROR_STOPPED))
    {
      g_clear_error (error);
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, "It was stopped; nothing was changed.");
    }
  return done;
}
