/* SPDX-License-Identifier: MIT */
#include "sy-export-window.h"

#include "sy-exchange-parts.h"
#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-progress-row.h"
#include "sy-task-parts.h"
#include "sy-worker-journal.h"

struct _SyExportWindow
{
  GtkWindow parent_instance;
  SyWorker *worker;
  char *item;
  GFile *file; /* where to, while it lasts */
  GtkWidget *all, *only, *bundle, *table, *save, *progress, *words;
};

G_DEFINE_FINAL_TYPE (SyExportWindow, sy_export_window, GTK_TYPE_WINDOW)

static void
end (SyExportWindow *self, const char *words, gboolean is_wrong)
{
  sy_progress_row_end (SY_PROGRESS_ROW (self->progress));
  gtk_widget_set_sensitive (self->save, TRUE);
  g_clear_object (&self->file);
  sy_exchange_say (self->words, words, is_wrong);
}

static void
end_with (SyExportWindow *self, const GError *error)
{
  g_autofree char *words = NULL;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    words = g_strdup (_("Stopped. No file was written."));
  else
    words = g_strdup_printf (_("No file was written: %s"), error->message);
  end (self, words, TRUE);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyExportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  const gboolean done = g_file_replace_contents_finish (G_FILE (source), result, NULL, &error);
  g_autofree char *name = NULL, *words = NULL;

  if (self->worker == NULL)
    return;
  if (!done)
    {
      end_with (self, error);
      return;
    }
  name = g_file_get_parse_name (G_FILE (source));
  words = g_strdup_printf (_("Written: %s"), name);
  end (self, words, FALSE);
}

static void
take_bytes (SyExportWindow *self, GBytes *bytes, const GError *error)
{
  if (self->worker == NULL)
    return;
  if (bytes == NULL)
    end_with (self, error);
  else
    g_file_replace_contents_bytes_async (self->file, bytes, NULL, FALSE, G_FILE_CREATE_NONE, NULL, written_cb,
                                         g_object_ref (self));
}

static void
bundle_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyExportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = sy_worker_export_finish (SY_WORKER (source), result, &error);

  take_bytes (self, bytes, error);
}

static void
table_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyExportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = sy_worker_export_csv_finish (SY_WORKER (source), result, &error);

  take_bytes (self, bytes, error);
}

static gboolean
is_table (SyExportWindow *self)
{
  return gtk_check_button_get_active (GTK_CHECK_BUTTON (self->table));
}

static void
chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyExportWindow) self = user_data;
  g_autoptr (GFile) file = sy_file_ask_save_finish (result);

  (void) source;
  if (file != NULL && self->worker != NULL)
    sy_export_window_write (self, file);
}

static void
save_cb (GtkButton *button, SyExportWindow *self)
{
  (void) button;
  if (is_table (self))
    /* Translators: file name. */
    sy_file_ask_save_async (GTK_WINDOW (self), _("Save the table"), _("findings.csv"), _("Tables (CSV)"), "*.csv", NULL,
                            chosen_cb, g_object_ref (self));
  else
    /* Translators: file name. */
    sy_file_ask_save_async (GTK_WINDOW (self), _("Save the bundle"), _("record.json"), _("Bundles (JSON)"), "*.json", NULL,
                            chosen_cb, g_object_ref (self));
}

static void
toggled_cb (GtkCheckButton *button, SyExportWindow *self)
{
  (void) button;
  /* A table is of everything. */
  gtk_widget_set_sensitive (self->only, self->item != NULL && !is_table (self));
  gtk_widget_set_sensitive (self->all, !is_table (self));
}

static GtkWidget *
add_choice (GtkWidget *box, GtkWidget *group, const char *words, const char *id)
{
  GtkWidget *choice = sy_part_radio (words);

  gtk_widget_set_name (choice, id);
  if (group != NULL)
    gtk_check_button_set_group (GTK_CHECK_BUTTON (choice), GTK_CHECK_BUTTON (group));
  gtk_box_append (GTK_BOX (box), choice);
  return choice;
}

static void
build (SyExportWindow *self, const char *item_name)
{
  GtkWidget *box = sy_exchange_body (GTK_WINDOW (self));
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *only
    = item_name != NULL ? g_strdup_printf (_("Only “%s”: its contents, and the hash of every line"), item_name)
                        : g_strdup (_("Only one item: open it first"));

  gtk_box_append (GTK_BOX (box), sy_part_label (_("As what?"), "sy-strong"));
  self->bundle = add_choice (box, NULL, _("A bundle (JSON): for another record, or to be verified elsewhere"), "bundle");
  self->table = add_choice (box, self->bundle, _("A table (CSV): the findings, for a spreadsheet"), "table");
  gtk_box_append (GTK_BOX (box), sy_part_label (_("Of what?"), "sy-strong"));
  self->all = add_choice (box, NULL, _("The whole record"), "all");
  self->only = add_choice (box, self->all, only, "only");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->bundle), TRUE);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->all), TRUE);
  gtk_widget_set_sensitive (self->only, self->item != NULL);
  g_signal_connect_object (self->table, "toggled", G_CALLBACK (toggled_cb), self, 0);
  self->progress = sy_progress_row_new ();
  self->words = sy_exchange_words ();
  self->save = sy_button_new (_("_Save as…"), NULL);
  gtk_widget_set_name (self->save, "save");
  gtk_widget_add_css_class (self->save, "suggested-action");
  g_signal_connect_object (self->save, "clicked", G_CALLBACK (save_cb), self, 0);
  gtk_box_append (GTK_BOX (buttons), self->save);
  gtk_box_append (GTK_BOX (buttons), sy_exchange_close_button (GTK_WINDOW (self)));
  gtk_box_append (GTK_BOX (box), self->progress);
  gtk_box_append (GTK_BOX (box), self->words);
  gtk_box_append (GTK_BOX (box), buttons);
}

static void
sy_export_window_dispose (GObject *object)
{
  SyExportWindow *self = SY_EXPORT_WINDOW (object);

  if (self->worker != NULL)
    sy_progress_row_stop (SY_PROGRESS_ROW (self->progress));
  g_clear_object (&self->worker);
  g_clear_object (&self->file);
  g_clear_pointer (&self->item, g_free);
  G_OBJECT_CLASS (sy_export_window_parent_class)->dispose (object);
}

static void
sy_export_window_class_init (SyExportWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_export_window_dispose;
}

static void
sy_export_window_init (SyExportWindow *self)
{
  gtk_window_set_title (GTK_WINDOW (self), _("Hand over"));
}

GtkWidget *
sy_export_window_new (GtkWindow *parent, SyWorker *worker, const char *item, const char *item_name)
{
  SyExportWindow *self = g_object_new (SY_TYPE_EXPORT_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->worker = g_object_ref (worker);
  self->item = g_strdup (item);
  build (self, item != NULL ? item_name : NULL);
  return GTK_WIDGET (self);
}

void
sy_export_window_set_table (SyExportWindow *self, gboolean table)
{
  g_return_if_fail (SY_IS_EXPORT_WINDOW (self));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (table ? self->table : self->bundle), TRUE);
}

void
sy_export_window_write (SyExportWindow *self, GFile *file)
{
  const SyTaskFilter any = { .search = NULL };
  const char *items[] = { NULL, NULL };
  g_autoptr (GCancellable) cancellable = NULL;

  g_return_if_fail (SY_IS_EXPORT_WINDOW (self));
  if (self->file != NULL)
    return;
  self->file = g_object_ref (file);
  sy_exchange_say (self->words, "", FALSE);
  gtk_widget_set_sensitive (self->save, FALSE);
  cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), _("Reading the record"));
  items[0] = self->item;
  if (is_table (self))
    sy_worker_export_csv_async (self->worker, &any, cancellable, sy_progress_row_step, self->progress, table_cb,
                                g_object_ref (self));
  else
    sy_worker_export_async (self->worker, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->only)) ? items : NULL,
                            cancellable, sy_progress_row_step, self->progress, bundle_cb, g_object_ref (self));
}

const char *
sy_export_window_get_words (SyExportWindow *self)
{
  g_return_val_if_fail (SY_IS_EXPORT_WINDOW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->words));
}
