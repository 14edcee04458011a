/* SPDX-License-Identifier: MIT */
#include "sy-part-taker.h"

#include "sy-alert.h"
#include "sy-i18n.h"
#include "sy-task-chooser.h"
#include "sy-worker-journal.h"

#include <string.h>

#define OFFER "sy-part-taker"

typedef struct
{
  SyWorker *worker;
  SyTaskList *list;
} Offer;

static void
offer_free (gpointer data)
{
  Offer *offer = data;

  g_object_unref (offer->worker);
  g_object_unref (offer->list);
  g_free (offer);
}

void
sy_part_taker_offer (GtkWindow *window, SyWorker *worker, SyTaskList *list)
{
  Offer *offer = g_new0 (Offer, 1);

  offer->worker = g_object_ref (worker);
  offer->list = g_object_ref (list);
  g_object_set_data_full (G_OBJECT (window), OFFER, offer, offer_free);
}

/* What was asked for: the page may be gone when the answer comes. */
typedef struct
{
  GWeakRef from;
  SyForm *form;
  SyWorker *worker;
  char *path;
} Ask;

static void
ask_free (gpointer data, GClosure *closure G_GNUC_UNUSED)
{
  Ask *ask = data;

  g_weak_ref_clear (&ask->from);
  g_object_unref (ask->form);
  g_object_unref (ask->worker);
  g_free (ask->path);
  g_free (ask);
}

static void
say (GtkWidget *from, const GError *error)
{
  const char *const answers[] = { _("_Close"), NULL };
  GtkRoot *root = gtk_widget_get_root (from);

  if (GTK_IS_WINDOW (root))
    sy_alert_async (GTK_WINDOW (root), _("It cannot be taken here."), error != NULL ? error->message : "", answers, 0, -1, NULL,
                    NULL, NULL);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Ask *ask = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) revisions = sy_worker_history_finish (SY_WORKER (source), result, &error);
  g_autoptr (GtkWidget) from = g_weak_ref_get (&ask->from);
  const SyRevision *latest = revisions != NULL && revisions->len > 0 ? revisions->pdata[revisions->len - 1] : NULL;

  if (from != NULL && sy_form_find_field (ask->form, ask->path) != NULL)
    {
      if (latest != NULL && sy_form_take_part (ask->form, ask->path, latest->event->facts, &error))
        gtk_widget_activate_action (from, "task.open-part", "s", ask->path);
      else
        say (from, error);
    }
  ask_free (ask, NULL);
}

static void
chosen_cb (SyTaskChooser *chooser G_GNUC_UNUSED, const char *id, Ask *ask)
{
  Ask *kept = g_new0 (Ask, 1);
  g_autoptr (GtkWidget) from = g_weak_ref_get (&ask->from);

  g_weak_ref_init (&kept->from, from);
  kept->form = g_object_ref (ask->form);
  kept->worker = g_object_ref (ask->worker);
  kept->path = g_strdup (ask->path);
  sy_worker_history_async (kept->worker, id, NULL, read_cb, kept);
}

void
sy_part_taker_ask (GtkWidget *from, SyForm *form, const char *path, const char *kind)
{
  GtkRoot *root = gtk_widget_get_root (from);
  Offer *offer = root != NULL ? g_object_get_data (G_OBJECT (root), OFFER) : NULL;
  gboolean is_task = strcmp (kind, "task") == 0;
  GtkWidget *chooser;
  Ask *ask;

  if (offer == NULL)
    return;
  ask = g_new0 (Ask, 1);
  g_weak_ref_init (&ask->from, from);
  ask->form = g_object_ref (form);
  ask->worker = g_object_ref (offer->worker);
  ask->path = g_strdup (path);
  chooser = sy_task_chooser_new (GTK_WINDOW (root), offer->list, is_task ? SY_REGISTER_TASKS : SY_REGISTER_CHANGEOVERS,
                                 sy_form_get_units (form), is_task ? _("Take from which task?") : _("Take from which changeover?"),
                                 _("_Take"));
  g_signal_connect_data (chooser, "chosen", G_CALLBACK (chosen_cb), ask, ask_free, 0);
  gtk_window_present (GTK_WINDOW (chooser));
}
