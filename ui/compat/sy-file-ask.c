/* SPDX-License-Identifier: MIT */
#include "sy-file-ask.h"

static void
response_cb (GtkNativeDialog *dialog, int response, GTask *task)
{
  GFile *file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_task_return_pointer (task, file, g_object_unref);
  /* Nobody else holds a native dialog. */
  gtk_native_dialog_destroy (dialog);
  g_object_unref (dialog);
  g_object_unref (task);
}

/* @suggested_name NULL: one that is there is opened. */
static void
ask (GtkWindow *parent, const char *title, GtkFileChooserAction action, const char *suggested_name,
     GtkFileFilter *filter, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (parent, cancellable, callback, user_data);
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, action, NULL, NULL);

  if (filter != NULL)
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  if (suggested_name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), suggested_name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), task);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
sy_file_ask_save_async (GtkWindow *parent, const char *title, const char *suggested_name,
                        const char *pattern_name, const char *pattern, GCancellable *cancellable,
                        GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GtkFileFilter) filter = pattern != NULL ? gtk_file_filter_new () : NULL;

  if (filter != NULL)
    {
      gtk_file_filter_set_name (filter, pattern_name);
      gtk_file_filter_add_pattern (filter, pattern);
    }
  ask (parent, title, GTK_FILE_CHOOSER_ACTION_SAVE, suggested_name, filter, cancellable, callback, user_data);
}

GFile *
sy_file_ask_save_finish (GAsyncResult *result)
{
  g_return_val_if_fail (G_IS_TASK (result), NULL);
  return g_task_propagate_pointer (G_TASK (result), NULL);
}

void
sy_file_ask_open_async (GtkWindow *parent, const char *title, GCancellable *cancellable, GAsyncReadyCallback callback,
                        gpointer user_data)
{
  ask (parent, title, GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL, cancellable, callback, user_data);
}

GFile *
sy_file_ask_open_finish (GAsyncResult *result)
{
  return sy_file_ask_save_finish (result);
}
