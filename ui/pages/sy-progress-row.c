/* SPDX-License-Identifier: MIT */
#include "sy-progress-row.h"

#include "sy-i18n.h"
#include "sy-name.h"

/* What is done sooner shows nothing, so that nothing flickers (our choice). */
#define SHOWN_AFTER_MS 300

struct _SyProgressRow
{
  GtkBox parent_instance;
  GtkWidget *words, *bar, *stop;
  GCancellable *cancellable; /* NULL: nothing is going on */
  guint timer;
};

G_DEFINE_FINAL_TYPE (SyProgressRow, sy_progress_row, GTK_TYPE_BOX)

static void
stop_cb (GtkButton *button, SyProgressRow *self)
{
  (void) button;
  sy_progress_row_stop (self);
}

static gboolean
show_cb (gpointer user_data)
{
  SyProgressRow *self = user_data;

  self->timer = 0;
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  return G_SOURCE_REMOVE;
}

static void
sy_progress_row_dispose (GObject *object)
{
  SyProgressRow *self = SY_PROGRESS_ROW (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  G_OBJECT_CLASS (sy_progress_row_parent_class)->dispose (object);
}

static void
sy_progress_row_class_init (SyProgressRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_progress_row_dispose;
}

static void
sy_progress_row_init (SyProgressRow *self)
{
  self->words = gtk_label_new (NULL);
  self->bar = gtk_progress_bar_new ();
  self->stop = sy_button_new (_("S_top"), NULL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_set_hexpand (self->bar, TRUE);
  gtk_widget_set_valign (self->bar, GTK_ALIGN_CENTER);
  gtk_widget_set_name (self->stop, "stop");
  g_signal_connect (self->stop, "clicked", G_CALLBACK (stop_cb), self);
  gtk_box_append (GTK_BOX (self), self->words);
  gtk_box_append (GTK_BOX (self), self->bar);
  gtk_box_append (GTK_BOX (self), self->stop);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
sy_progress_row_new (void)
{
  return g_object_new (SY_TYPE_PROGRESS_ROW, NULL);
}

GCancellable *
sy_progress_row_begin (SyProgressRow *self, const char *name)
{
  g_return_val_if_fail (SY_IS_PROGRESS_ROW (self), NULL);
  sy_progress_row_end (self);
  self->cancellable = g_cancellable_new ();
  gtk_label_set_text (GTK_LABEL (self->words), name);
  sy_name (self->bar, name);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), 0);
  gtk_widget_set_sensitive (self->stop, TRUE);
  self->timer = g_timeout_add (SHOWN_AFTER_MS, show_cb, self);
  return g_object_ref (self->cancellable);
}

void
sy_progress_row_step (guint64 done, guint64 of, gpointer row)
{
  SyProgressRow *self = row;

  g_return_if_fail (SY_IS_PROGRESS_ROW (self));
  if (of > 0)
    gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), MIN ((double) done / (double) of, 1));
  else
    gtk_progress_bar_pulse (GTK_PROGRESS_BAR (self->bar));
}

void
sy_progress_row_end (SyProgressRow *self)
{
  g_return_if_fail (SY_IS_PROGRESS_ROW (self));
  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->cancellable);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

gboolean
sy_progress_row_is_busy (SyProgressRow *self)
{
  g_return_val_if_fail (SY_IS_PROGRESS_ROW (self), FALSE);
  return self->cancellable != NULL;
}

void
sy_progress_row_stop (SyProgressRow *self)
{
  g_return_if_fail (SY_IS_PROGRESS_ROW (self));
  if (self->cancellable == NULL)
    return;
  gtk_widget_set_sensitive (self->stop, FALSE);
  g_cancellable_cancel (self->cancellable);
}
