/* SPDX-License-Identifier: MIT */
#include "sy-set-table-window.h"

#include <math.h>
#include <string.h>

#include "sy-bad-cells.h"
#include "sy-exchange-parts.h"
#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-lift-set-table.h"
#include "sy-name.h"
#include "sy-task-parts.h"

struct _SySetTableWindow
{
  GtkWindow parent_instance;
  SyForm *form; /* NULL: closed */
  char *path;
  char *lifts;    /* what was found fine: a JSON array; NULL: nothing */
  SyUnits units;  /* of @lifts                                        */
  gboolean is_busy;
  GtkWidget *choose, *name, *words, *cells, *take;
};

G_DEFINE_FINAL_TYPE (SySetTableWindow, sy_set_table_window, GTK_TYPE_WINDOW)

static void
settle (SySetTableWindow *self, const char *words, gboolean is_wrong)
{
  self->is_busy = FALSE;
  gtk_widget_set_sensitive (self->choose, TRUE);
  gtk_widget_set_sensitive (self->take, self->lifts != NULL);
  sy_exchange_say (self->words, words, is_wrong);
}

/* Looking, beside the main loop */

typedef struct
{
  SyDesk *desk;
  GFile *file;
  SyLiftSetRequest request;
  char *combine;
} Job;

typedef struct
{
  char *lifts;
  SyUnits units;
  gsize count;
  GPtrArray *bad;
} Found;

static void
job_free (gpointer data)
{
  Job *job = data;

  sy_desk_unref (job->desk);
  g_object_unref (job->file);
  g_free (job->combine);
  g_free (job);
}

static void
found_free (gpointer data)
{
  Found *found = data;

  g_free (found->lifts);
  g_clear_pointer (&found->bad, g_ptr_array_unref);
  g_free (found);
}

/* The lifts out of the document of the set. */
static gboolean
take_out (const char *document, Found *found)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (document, strlen (document), SY_JSON_DOCUMENT_MAX, memory, problems);
  const SyJson *lifts = root != NULL ? sy_json_member (root, "lifts") : NULL;

  if (lifts == NULL || !sy_units_from_id (sy_json_member_text (root, "units"), &found->units))
    return FALSE;
  found->lifts = g_strndup (lifts->raw, lifts->raw_length);
  found->count = lifts->n_children;
  return TRUE;
}

/* Lines of a sample that say no pace are fine by themselves: the form asks for that of all together. */
static char *
read_lifts (const Job *job, GBytes *bytes, GPtrArray **bad, GError **error)
{
  SyLiftSetRequest request = job->request;
  char *document = sy_lift_table_set (job->desk, bytes, &request, bad, error);

  if (document != NULL || *bad == NULL || (request.combine != NULL && strcmp (request.combine, "variable") != 0))
    return document;
  g_clear_pointer (bad, g_ptr_array_unref);
  request.frequency = 1;
  return sy_lift_table_set (job->desk, bytes, &request, bad, error);
}

static void
look_thread (GTask *task, gpointer source G_GNUC_UNUSED, gpointer data, GCancellable *cancellable G_GNUC_UNUSED)
{
  const Job *job = data;
  Found *found = g_new0 (Found, 1);
  GError *error = NULL;
  g_autoptr (GFileInfo) info
      = g_file_query_info (job->file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *document = NULL;

  if (info != NULL && (guint64) g_file_info_get_size (info) > SY_CSV_MAX)
    error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_NO_SPACE, _("The file is larger than what can be taken in one go."));
  else
    bytes = g_file_load_bytes (job->file, NULL, NULL, &error);
  if (bytes != NULL)
    document = read_lifts (job, bytes, &found->bad, &error);
  if (document != NULL && !take_out (document, found))
    error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_NO_SPACE,
                                 _("These are more lifts than one task can hold. Take a sample of them."));
  if (error != NULL)
    {
      found_free (found);
      g_task_return_error (task, error);
    }
  else
    g_task_return_pointer (task, found, found_free);
}

static void
looked_cb (GObject *source, GAsyncResult *result, gpointer data G_GNUC_UNUSED)
{
  SySetTableWindow *self = SY_SET_TABLE_WINDOW (source);
  g_autoptr (GError) error = NULL;
  Found *found = g_task_propagate_pointer (G_TASK (result), &error);

  if (self->form == NULL)
    g_clear_pointer (&found, found_free);
  else if (found == NULL)
    settle (self, error->message, TRUE);
  else if (found->lifts == NULL)
    {
      guint n = found->bad != NULL ? found->bad->len : 0;
      g_autofree char *words = g_strdup_printf (P_("One cell cannot be taken.", "%u cells cannot be taken.", n), n);

      sy_bad_cells_set (SY_BAD_CELLS (self->cells), found->bad);
      gtk_widget_set_visible (self->cells, TRUE);
      settle (self, words, TRUE);
    }
  else
    {
      guint before = sy_form_list_count (self->form, self->path);
      g_autofree char *words
          = g_strdup_printf (P_("%u lift was read.", "%u lifts were read.", found->count), (guint) found->count);
      g_autofree char *instead
          = before > 0 ? g_strdup_printf (P_("%s They replace the one that is in the form now; undo brings it back.",
                                             "%s They replace the %u that are in the form now; undo brings them back.",
                                             before),
                                          words, before)
                       : g_strdup (words);

      self->lifts = g_steal_pointer (&found->lifts);
      self->units = found->units;
      settle (self, instead, FALSE);
    }
  g_clear_pointer (&found, found_free);
}

void
sy_set_table_window_look (SySetTableWindow *self, GFile *file)
{
  g_autoptr (GTask) task = NULL;
  g_autofree char *name = g_file_get_parse_name (file);
  Job *job;

  g_return_if_fail (SY_IS_SET_TABLE_WINDOW (self));
  if (self->is_busy || self->form == NULL)
    return;
  self->is_busy = TRUE;
  g_clear_pointer (&self->lifts, g_free);
  gtk_label_set_text (GTK_LABEL (self->name), name);
  gtk_widget_set_visible (self->cells, FALSE);
  gtk_widget_set_sensitive (self->choose, FALSE);
  gtk_widget_set_sensitive (self->take, FALSE);
  sy_exchange_say (self->words, _("Looking through the file…"), FALSE);
  job = g_new0 (Job, 1);
  job->desk = sy_desk_ref (sy_form_get_desk (self->form));
  job->file = g_object_ref (file);
  job->combine = g_strdup (sy_form_get (self->form, "combine"));
  job->request = (SyLiftSetRequest) { .combine = job->combine[0] != '\0' ? job->combine : NULL, .frequency = NAN,
                                      .units = sy_form_get_units (self->form) };
  task = g_task_new (self, NULL, looked_cb, NULL);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, look_thread);
}

/* Taking */

gboolean
sy_set_table_window_can_take (SySetTableWindow *self)
{
  g_return_val_if_fail (SY_IS_SET_TABLE_WINDOW (self), FALSE);
  return self->lifts != NULL && !self->is_busy;
}

void
sy_set_table_window_take (SySetTableWindow *self)
{
  g_autoptr (GError) error = NULL;

  g_return_if_fail (SY_IS_SET_TABLE_WINDOW (self));
  if (!sy_set_table_window_can_take (self))
    return;
  /* What is typed keeps its meaning where the table is in the other units. */
  sy_form_set_units (self->form, self->units);
  if (sy_form_list_replace (self->form, self->path, self->lifts, &error))
    gtk_window_close (GTK_WINDOW (self));
  else
    sy_exchange_say (self->words, error->message, TRUE);
}

const char *
sy_set_table_window_get_words (SySetTableWindow *self)
{
  g_return_val_if_fail (SY_IS_SET_TABLE_WINDOW (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->words));
}

static void
take_cb (GtkButton *button G_GNUC_UNUSED, SySetTableWindow *self)
{
  sy_set_table_window_take (self);
}

static void
chosen_cb (GObject *source G_GNUC_UNUSED, GAsyncResult *result, gpointer data)
{
  g_autoptr (SySetTableWindow) self = data;
  g_autoptr (GFile) file = sy_file_ask_open_finish (result);

  if (file != NULL && self->form != NULL)
    sy_set_table_window_look (self, file);
}

static void
choose_cb (GtkButton *button G_GNUC_UNUSED, SySetTableWindow *self)
{
  sy_file_ask_open_async (GTK_WINDOW (self), _("Choose a table"), NULL, chosen_cb, g_object_ref (self));
}

/* Building */

static void
build (SySetTableWindow *self)
{
  GtkWidget *box = sy_exchange_body (GTK_WINDOW (self));
  GtkWidget *file = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->choose = sy_button_new (_("Choose a _file…"), NULL);
  gtk_widget_set_name (self->choose, "choose");
  g_signal_connect_object (self->choose, "clicked", G_CALLBACK (choose_cb), self, 0);
  self->name = sy_part_label (NULL, "sy-quiet");
  gtk_box_append (GTK_BOX (file), self->choose);
  gtk_box_append (GTK_BOX (file), self->name);
  self->words = sy_exchange_words ();
  self->cells = sy_bad_cells_new ();
  gtk_widget_set_vexpand (self->cells, TRUE);
  gtk_widget_set_visible (self->cells, FALSE);
  self->take = sy_button_new (_("_Take these lifts"), NULL);
  gtk_widget_set_name (self->take, "take");
  gtk_widget_add_css_class (self->take, "suggested-action");
  gtk_widget_set_sensitive (self->take, FALSE);
  g_signal_connect_object (self->take, "clicked", G_CALLBACK (take_cb), self, 0);
  gtk_box_append (GTK_BOX (buttons), self->take);
  gtk_box_append (GTK_BOX (buttons), sy_exchange_close_button (GTK_WINDOW (self)));
  gtk_box_append (GTK_BOX (box),
                  sy_part_label (_("A table (CSV) has one lift a line; its first line names the columns: label, load.heaviest, "
                                   "origin.H and so on. It is looked through first, and every cell that cannot be taken is "
                                   "listed. Nothing is recorded before you save the task."),
                                 NULL));
  gtk_box_append (GTK_BOX (box), file);
  gtk_box_append (GTK_BOX (box), self->words);
  gtk_box_append (GTK_BOX (box), self->cells);
  gtk_box_append (GTK_BOX (box), buttons);
}

static void
sy_set_table_window_dispose (GObject *object)
{
  SySetTableWindow *self = SY_SET_TABLE_WINDOW (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->lifts, g_free);
  G_OBJECT_CLASS (sy_set_table_window_parent_class)->dispose (object);
}

static void
sy_set_table_window_class_init (SySetTableWindowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_set_table_window_dispose;
}

static void
sy_set_table_window_init (SySetTableWindow *self G_GNUC_UNUSED)
{
}

GtkWidget *
sy_set_table_window_new (GtkWindow *parent, SyForm *form, const char *path)
{
  SySetTableWindow *self
      = g_object_new (SY_TYPE_SET_TABLE_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->form = g_object_ref (form);
  self->path = g_strdup (path);
  gtk_window_set_title (GTK_WINDOW (self), _("Lifts from a table"));
  build (self);
  return GTK_WIDGET (self);
}
