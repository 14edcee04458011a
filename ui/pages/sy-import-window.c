/* SPDX-License-Identifier: MIT */
#include "sy-import-window.h"

#include "sy-bad-cells.h"
#include "sy-exchange-parts.h"
#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-import-words.h"
#include "sy-name.h"
#include "sy-progress-row.h"
#include "sy-settings.h"
#include "sy-task-parts.h"
#include "sy-worker-journal.h"

#define NOBODY "-" /* a dry run writes nobody's name */

struct _SyImportWindow
{
  GtkWindow parent_instance;
  SyWorker *worker;
  SyImportWhat what;
  GBytes *bytes; /* of the file that was looked through; NULL: none, or it cannot be taken */
  gboolean in_earnest, is_fine;
  GtkWidget *choose, *name, *words, *cells, *progress, *by, *role, *why, *take;
};

G_DEFINE_FINAL_TYPE (SyImportWindow, sy_import_window, GTK_TYPE_WINDOW)

static void
set_busy (SyImportWindow *self, gboolean is_busy)
{
  gtk_widget_set_sensitive (self->choose, !is_busy);
  gtk_widget_set_sensitive (self->take, !is_busy && self->is_fine);
  if (!is_busy)
    sy_progress_row_end (SY_PROGRESS_ROW (self->progress));
}

static void
show_cells (SyImportWindow *self, const GPtrArray *bad)
{
  sy_bad_cells_set (SY_BAD_CELLS (self->cells), bad);
  gtk_widget_set_visible (self->cells, bad != NULL && bad->len > 0);
}

/* A file that was taken over is not taken over again. */
static void
settle (SyImportWindow *self, gboolean is_fine, const char *words, gboolean is_wrong)
{
  self->is_fine = is_fine && !self->in_earnest;
  set_busy (self, FALSE);
  sy_exchange_say (self->words, words, is_wrong);
}

static void
settle_with (SyImportWindow *self, const GError *error)
{
  /* What was stopped can be begun again. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      self->is_fine = self->in_earnest;
      set_busy (self, FALSE);
      sy_exchange_say (self->words, _("Stopped. Nothing was taken over."), TRUE);
    }
  else
    settle (self, FALSE, error->message, TRUE);
}

/* Topics: looking and taking */

static void
bundle_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyImportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  SyImportReport report = { 0 };
  const gboolean done = sy_worker_import_finish (SY_WORKER (source), result, &report, &error);

  if (self->worker != NULL && done)
    {
      g_autofree char *words = sy_import_report_words (&report, !self->in_earnest);

      settle (self, report.added > 0, words, FALSE);
    }
  else if (self->worker != NULL)
    settle_with (self, error);
  if (done)
    sy_import_report_clear (&report);
}

static void
lifts_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyImportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  SyLiftsReport report = { 0 };
  const gboolean done = sy_worker_import_lifts_finish (SY_WORKER (source), result, &report, &error);

  if (self->worker != NULL && done)
    {
      g_autofree char *words = sy_lifts_report_words (&report, !self->in_earnest);

      show_cells (self, report.bad);
      settle (self, report.bad->len == 0 && report.rows > 0, words, report.bad->len > 0);
    }
  else if (self->worker != NULL)
    settle_with (self, error);
  if (done)
    sy_lifts_report_clear (&report);
}

static void
run (SyImportWindow *self, const SyImportRequest *request, const char *name)
{
  g_autoptr (GCancellable) cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), name);

  self->in_earnest = !request->dry_run;
  set_busy (self, TRUE);
  sy_exchange_say (self->words, "", FALSE);
  if (self->what == SY_IMPORT_BUNDLE)
    sy_worker_import_async (self->worker, self->bytes, request, cancellable, sy_progress_row_step, self->progress, bundle_cb,
                            g_object_ref (self));
  else
    sy_worker_import_lifts_async (self->worker, self->bytes, request, cancellable, sy_progress_row_step, self->progress,
                                  lifts_cb, g_object_ref (self));
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyImportWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  GBytes *bytes = g_file_load_bytes_finish (G_FILE (source), result, NULL, &error);

  if (self->worker == NULL)
    {
      g_clear_pointer (&bytes, g_bytes_unref);
      return;
    }
  g_clear_pointer (&self->bytes, g_bytes_unref);
  self->bytes = bytes;
  if (bytes == NULL)
    settle (self, FALSE, error->message, TRUE);
  else
    run (self, &(SyImportRequest) { .by = NOBODY, .why = NOBODY, .dry_run = TRUE }, _("Looking through the file"));
}

static char *
text_of (GtkWidget *entry)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
}

static void
take_cb (GtkWidget *widget, SyImportWindow *self)
{
  (void) widget;
  sy_import_window_take (self);
}

static void
chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyImportWindow) self = user_data;
  g_autoptr (GFile) file = sy_file_ask_open_finish (result);

  (void) source;
  if (file != NULL && self->worker != NULL)
    sy_import_window_look (self, file);
}

static void
choose_cb (GtkButton *button, SyImportWindow *self)
{
  (void) button;
  sy_file_ask_open_async (GTK_WINDOW (self), self->what == SY_IMPORT_BUNDLE ? _("Choose a bundle") : _("Choose a table"), NULL,
                          chosen_cb, g_object_ref (self));
}

/* Topics: building */

static GtkWidget *
add_entry (SyImportWindow *self, GtkWidget *grid, int row, const char *caption, const char *name, const char *id)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (caption);
  GtkWidget *entry = gtk_entry_new ();

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "sy-caption");
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_widget_set_name (entry, id);
  sy_name (entry, name);
  g_signal_connect_object (entry, "activate", G_CALLBACK (take_cb), self, 0);
  gtk_grid_attach (GTK_GRID (grid), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), entry, 1, row, 1, 1);
  return entry;
}

static GtkWidget *
new_author (SyImportWindow *self)
{
  GtkWidget *grid = gtk_grid_new ();
  g_autofree char *by = sy_settings_get (SY_SETTING_AUTHOR), *role = sy_settings_get (SY_SETTING_ROLE);

  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  self->by = add_entry (self, grid, 0, _("_By"), _("By"), "by");
  self->role = add_entry (self, grid, 1, _("_Role"), _("Role"), "role");
  self->why = add_entry (self, grid, 2, _("_Why"), _("Why"), "why");
  gtk_editable_set_text (GTK_EDITABLE (self->by), by);
  gtk_editable_set_text (GTK_EDITABLE (self->role), role);
  return grid;
}

static void
build (SyImportWindow *self)
{
  const gboolean is_bundle = self->what == SY_IMPORT_BUNDLE;
  GtkWidget *box = sy_exchange_body (GTK_WINDOW (self));
  GtkWidget *file = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->choose = sy_button_new (_("Choose a _file…"), NULL);
  gtk_widget_set_name (self->choose, "choose");
  g_signal_connect_object (self->choose, "clicked", G_CALLBACK (choose_cb), self, 0);
  self->name = sy_part_label (NULL, "sy-quiet");
  gtk_box_append (GTK_BOX (file), self->choose);
  gtk_box_append (GTK_BOX (file), self->name);
  self->progress = sy_progress_row_new ();
  self->words = sy_exchange_words ();
  self->cells = sy_bad_cells_new ();
  gtk_widget_set_vexpand (self->cells, TRUE);
  gtk_widget_set_visible (self->cells, FALSE);
  self->take = sy_button_new (is_bundle ? _("_Take it over") : _("_Record the lifts"), NULL);
  gtk_widget_set_name (self->take, "take");
  gtk_widget_add_css_class (self->take, "suggested-action");
  gtk_widget_set_sensitive (self->take, FALSE);
  g_signal_connect_object (self->take, "clicked", G_CALLBACK (take_cb), self, 0);
  gtk_box_append (GTK_BOX (buttons), self->take);
  gtk_box_append (GTK_BOX (buttons), sy_exchange_close_button (GTK_WINDOW (self)));

  gtk_box_append (GTK_BOX (box),
                  sy_part_label (is_bundle
                                   ? _("A bundle of another record is looked through first: what would be added, what is known "
                                       "already, and what then stands there twice. Nothing is written before you confirm.")
                                   : _("A table (CSV) has one lift a line. It is looked through first, and every cell that "
                                       "cannot be taken is listed; nothing is written while there is one."),
                                 NULL));
  gtk_box_append (GTK_BOX (box), file);
  gtk_box_append (GTK_BOX (box), self->progress);
  gtk_box_append (GTK_BOX (box), self->words);
  gtk_box_append (GTK_BOX (box), self->cells);
  gtk_box_append (GTK_BOX (box), new_author (self));
  gtk_box_append (GTK_BOX (box), buttons);
}

static void
sy_import_window_dispose (GObject *object)
{
  SyImportWindow *self = SY_IMPORT_WINDOW (object);

  if (self->worker != NULL)
    sy_progress_row_stop (SY_PROGRESS_ROW (self->progress));
  g_clear_object (&self->worker);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  G_OBJECT_CLASS (sy_import_window_parent_class)->dispose (object);
}

static void
sy_import_window_class_init (SyImportWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_import_window_dispose;
}

static void
sy_import_window_init (SyImportWindow *self)
{
  (void) self;
}

GtkWidget *
sy_import_window_new (GtkWindow *parent, SyWorker *worker, SyImportWhat what)
{
  SyImportWindow *self = g_object_new (SY_TYPE_IMPORT_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->worker = g_object_ref (worker);
  self->what = what;
  gtk_window_set_title (GTK_WINDOW (self), what == SY_IMPORT_BUNDLE ? _("Take over a bundle") : _("Take lifts from a table"));
  build (self);
  return GTK_WIDGET (self);
}

void
sy_import_window_look (SyImportWindow *self, GFile *file)
{
  const guint64 most = self->what == SY_IMPORT_BUNDLE ? SY_BUNDLE_MAX : SY_CSV_MAX;
  g_autoptr (GFileInfo) info = NULL;
  g_autofree char *name = g_file_get_parse_name (file);

  g_return_if_fail (SY_IS_IMPORT_WINDOW (self));
  if (sy_progress_row_is_busy (SY_PROGRESS_ROW (self->progress)))
    return;
  gtk_label_set_text (GTK_LABEL (self->name), name);
  show_cells (self, NULL);
  self->is_fine = self->in_earnest = FALSE;
  info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  if (info != NULL && (guint64) g_file_info_get_size (info) > most)
    {
      settle (self, FALSE, _("The file is larger than what can be taken in one go."), TRUE);
      return;
    }
  gtk_widget_set_sensitive (self->choose, FALSE);
  g_file_load_bytes_async (file, NULL, loaded_cb, g_object_ref (self));
}

void
sy_import_window_set_author (SyImportWindow *self, const char *by, const char *why)
{
  g_return_if_fail (SY_IS_IMPORT_WINDOW (self));
  gtk_editable_set_text (GTK_EDITABLE (self->by), by);
  gtk_editable_set_text (GTK_EDITABLE (self->why), why);
}

void
sy_import_window_take (SyImportWindow *self)
{
  g_autofree char *by = NULL, *role = NULL, *why = NULL;

  g_return_if_fail (SY_IS_IMPORT_WINDOW (self));
  if (!sy_import_window_can_take (self))
    return;
  by = text_of (self->by);
  role = text_of (self->role);
  why = text_of (self->why);
  sy_mark_wrong (self->by, *by == '\0');
  sy_mark_wrong (self->why, *why == '\0');
  if (*by == '\0' || *why == '\0')
    {
      sy_exchange_say (self->words, _("By whom and why is still needed: it is marked."), TRUE);
      gtk_widget_grab_focus (*by == '\0' ? self->by : self->why);
      return;
    }
  sy_settings_set (SY_SETTING_AUTHOR, by, NULL);
  if (*role != '\0')
    sy_settings_set (SY_SETTING_ROLE, role, NULL);
  run (self, &(SyImportRequest) { .by = by, .role = *role != '\0' ? role : NULL, .why = why },
       self->what == SY_IMPORT_BUNDLE ? _("Taking it over") : _("Recording the lifts"));
}

gboolean
sy_import_window_can_take (SyImportWindow *self)
{
  g_return_val_if_fail (SY_IS_IMPORT_WINDOW (self), FALSE);
  return self->is_fine && self->bytes != NULL && !sy_progress_row_is_busy (SY_PROGRESS_ROW (self->progress));
}

const char *
sy_import_window_get_words (SyImportWindow *self)
{
  g_return_val_if_fail (SY_IS_IMPORT_WINDOW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->words));
}
