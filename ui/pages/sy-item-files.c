/* SPDX-License-Identifier: MIT */
#include "sy-item-files.h"

#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-settings.h"
#include "sy-task-parts.h"

struct _SyItemFiles
{
  GtkBox parent_instance;
  SyWorker *worker;
  char *item;         /* id, NULL: not saved yet */
  GBytes *content;    /* of what is to be attached, NULL: nothing */
  char *name;
  GCancellable *cancellable;
  GtkWidget *empty, *rows, *attach, *form, *file, *by, *why, *add, *said;
};

G_DEFINE_FINAL_TYPE (SyItemFiles, sy_item_files, GTK_TYPE_BOX)

/* A file of the list on its way out. */
typedef struct
{
  SyItemFiles *self;
  char *name;
  guint64 line;
  GFile *to;
} Copy;

static void
copy_free (Copy *copy)
{
  g_object_unref (copy->self);
  g_free (copy->name);
  g_clear_object (&copy->to);
  g_free (copy);
}

static void
copy_unref (gpointer data, GClosure *closure)
{
  Copy *copy = data;

  (void) closure;
  g_free (copy->name);
  g_free (copy);
}

static gboolean
is_gone (SyItemFiles *self)
{
  return self->worker == NULL;
}

static GtkWindow *
window_of (SyItemFiles *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL;
}

static void
say (SyItemFiles *self, const char *words, gboolean problem)
{
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
  if (problem)
    gtk_widget_add_css_class (self->said, "sy-problem");
  else
    gtk_widget_remove_css_class (self->said, "sy-problem");
}

/* Topics: saving a copy */

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Copy *copy = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *place = g_file_get_parse_name (G_FILE (source));
  g_autofree char *words = NULL;

  if (g_file_replace_contents_finish (G_FILE (source), result, NULL, &error))
    words = g_strdup_printf (_("A copy was saved as %s."), place);
  else
    words = g_strdup_printf (_("No copy was saved: %s"), error->message);
  if (!is_gone (copy->self))
    say (copy->self, words, error != NULL);
  copy_free (copy);
}

static void
content_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Copy *copy = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) content = sy_worker_attachment_content_finish (SY_WORKER (source), result, &error);

  if (content != NULL)
    {
      g_file_replace_contents_bytes_async (copy->to, content, NULL, FALSE, G_FILE_CREATE_REPLACE_DESTINATION, NULL,
                                           written_cb, copy);
      return;
    }
  if (!is_gone (copy->self))
    say (copy->self, error->message, TRUE);
  copy_free (copy);
}

void
sy_item_files_save_copy (SyItemFiles *self, const char *name, guint64 line, GFile *to)
{
  Copy *copy = g_new0 (Copy, 1);

  copy->self = g_object_ref (self);
  copy->to = g_object_ref (to);
  sy_worker_attachment_content_async (self->worker, self->item, name, line, self->cancellable, content_cb, copy);
}

static void
copy_asked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Copy *copy = data;
  g_autoptr (GFile) to = sy_file_ask_save_finish (result);

  (void) source;
  if (to != NULL && !is_gone (copy->self) && copy->self->item != NULL)
    sy_item_files_save_copy (copy->self, copy->name, copy->line, to);
  copy_free (copy);
}

static void
copy_cb (GtkButton *button, const Copy *of)
{
  Copy *copy = g_new0 (Copy, 1);

  (void) button;
  copy->self = g_object_ref (of->self);
  copy->name = g_strdup (of->name);
  copy->line = of->line;
  sy_file_ask_save_async (window_of (of->self), _("Save a copy"), of->name, NULL, NULL, of->self->cancellable,
                          copy_asked_cb, copy);
}

/* Topics: the list */

static void
add_row (SyItemFiles *self, const SyAttachment *attachment)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *button = sy_button_new (_("Save a copy…"), NULL);
  g_autofree char *size = g_format_size (attachment->bytes);
  g_autofree char *day = g_strndup (attachment->when, 10);
  /* Translators: size of a file, when and by whom it was attached, and why. */
  g_autofree char *note = g_strdup_printf (_("%s · %s · %s: %s"), size, day, attachment->by, attachment->why);
  g_autofree char *name = g_strdup_printf (_("Save a copy of %s"), attachment->name);
  g_autofree char *seal = g_strdup_printf (_("SHA-256 %s, line %" G_GUINT64_FORMAT " of the journal"),
                                           attachment->sha256, attachment->line);
  Copy *copy = g_new0 (Copy, 1);

  copy->self = self;
  copy->name = g_strdup (attachment->name);
  copy->line = attachment->line;
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (texts, seal);
  sy_name (button, name);
  g_signal_connect_data (button, "clicked", G_CALLBACK (copy_cb), copy, copy_unref, 0);
  gtk_box_append (GTK_BOX (texts), sy_part_label (attachment->name, NULL));
  gtk_box_append (GTK_BOX (texts), sy_part_label (note, "sy-note"));
  gtk_box_append (GTK_BOX (row), texts);
  gtk_box_append (GTK_BOX (row), button);
  gtk_widget_add_css_class (row, "sy-row");
  gtk_box_append (GTK_BOX (self->rows), row);
}

static void
listed_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyItemFiles) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) attachments = sy_worker_attachments_finish (SY_WORKER (source), result, &error);

  if (is_gone (self))
    return;
  if (attachments == NULL)
    {
      say (self, error->message, TRUE);
      return;
    }
  sy_part_empty (self->rows);
  gtk_widget_set_visible (self->empty, attachments->len == 0);
  for (guint i = attachments->len; i > 0; i--)
    add_row (self, attachments->pdata[i - 1]);
}

static void
list_files (SyItemFiles *self)
{
  gtk_widget_set_sensitive (self->attach, self->item != NULL);
  gtk_label_set_text (GTK_LABEL (self->empty),
                      self->item != NULL
                        ? _("Nothing is attached yet. A certificate, a drawing or a picture is kept in the record with "
                            "who attached it and why.")
                        : _("Files can be attached once this is saved."));
  if (self->item != NULL)
    sy_worker_attachments_async (self->worker, self->item, self->cancellable, listed_cb, g_object_ref (self));
}

/* Topics: attaching */

static void
end_form (SyItemFiles *self)
{
  g_clear_pointer (&self->content, g_bytes_unref);
  g_clear_pointer (&self->name, g_free);
  gtk_widget_set_visible (self->form, FALSE);
  gtk_widget_set_visible (self->attach, TRUE);
}

static void
attached_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyItemFiles) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (SyAttachment) attachment = sy_worker_attach_finish (SY_WORKER (source), result, &error);

  if (is_gone (self))
    return;
  gtk_widget_set_sensitive (self->form, TRUE);
  if (attachment == NULL)
    {
      say (self, error->message, TRUE);
      return;
    }
  sy_settings_set (SY_SETTING_AUTHOR, attachment->by, NULL);
  gtk_editable_set_text (GTK_EDITABLE (self->why), "");
  say (self, "", FALSE);
  end_form (self);
  list_files (self);
}

static void
add_cb (GtkWidget *widget, SyItemFiles *self)
{
  g_autofree char *by = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->by))));
  g_autofree char *why = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->why))));
  const SyAttachRequest request = { .item = self->item, .name = self->name, .by = by, .why = why };

  (void) widget;
  if (*by == '\0' || *why == '\0')
    {
      say (self, _("By whom and why belong to every file: say both, then attach."), TRUE);
      gtk_widget_grab_focus (*by == '\0' ? self->by : self->why);
      return;
    }
  if (self->content == NULL || self->item == NULL)
    return;
  gtk_widget_set_sensitive (self->form, FALSE);
  /* Not cancellable: what was sent is attached, whatever becomes of the page. */
  sy_worker_attach_async (self->worker, &request, self->content, NULL, attached_cb, g_object_ref (self));
}

static void
cancel_cb (GtkButton *button, SyItemFiles *self)
{
  (void) button;
  say (self, "", FALSE);
  end_form (self);
  gtk_widget_grab_focus (self->attach);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyItemFiles) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *base = g_file_get_basename (G_FILE (source));
  g_autoptr (GBytes) content = g_file_load_bytes_finish (G_FILE (source), result, NULL, &error);
  g_autofree char *size = NULL, *words = NULL;

  if (is_gone (self))
    return;
  if (content == NULL)
    {
      say (self, error->message, TRUE);
      return;
    }
  say (self, "", FALSE);
  end_form (self);
  self->name = g_filename_display_name (base);
  self->content = g_steal_pointer (&content);
  size = g_format_size (g_bytes_get_size (self->content));
  /* Translators: name and size of a file. */
  words = g_strdup_printf (_("%s · %s"), self->name, size);
  gtk_label_set_text (GTK_LABEL (self->file), words);
  gtk_widget_set_visible (self->form, TRUE);
  gtk_widget_set_visible (self->attach, FALSE);
  gtk_widget_grab_focus (*gtk_editable_get_text (GTK_EDITABLE (self->by)) == '\0' ? self->by : self->why);
}

/* What is larger than a record takes is told before it is read. */
static void
measured_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyItemFiles) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info_finish (G_FILE (source), result, &error);
  g_autofree char *most = g_format_size_full (SY_ATTACHMENT_MAX, G_FORMAT_SIZE_IEC_UNITS);
  g_autofree char *words = g_strdup_printf (_("The file is larger than the %s that can be attached."), most);

  if (is_gone (self))
    return;
  if (info == NULL)
    say (self, error->message, TRUE);
  else if (g_file_info_get_size (info) > (goffset) SY_ATTACHMENT_MAX)
    say (self, words, TRUE);
  else
    g_file_load_bytes_async (G_FILE (source), self->cancellable, loaded_cb, g_object_ref (self));
}

void
sy_item_files_offer (SyItemFiles *self, GFile *file)
{
  g_file_query_info_async (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, G_PRIORITY_DEFAULT,
                           self->cancellable, measured_cb, g_object_ref (self));
}

static void
asked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyItemFiles) self = data;
  g_autoptr (GFile) file = sy_file_ask_open_finish (result);

  (void) source;
  if (file != NULL && !is_gone (self))
    sy_item_files_offer (self, file);
}

static void
attach_cb (GtkButton *button, SyItemFiles *self)
{
  (void) button;
  sy_file_ask_open_async (window_of (self), _("Attach a file"), self->cancellable, asked_cb, g_object_ref (self));
}

/* Topics: building */

static GtkWidget *
add_entry (GtkWidget *box, const char *words, const char *name)
{
  GtkWidget *label = sy_part_label (words, "sy-caption");
  GtkWidget *entry = gtk_entry_new ();

  gtk_widget_set_name (entry, name);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  sy_name (entry, words);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), entry);
  return entry;
}

static GtkWidget *
new_form (SyItemFiles *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *cancel = sy_button_new (_("Do _not attach"), NULL);
  g_autofree char *author = sy_settings_get (SY_SETTING_AUTHOR);

  self->form = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->file = sy_part_label (NULL, "sy-strong");
  gtk_box_append (GTK_BOX (self->form), self->file);
  self->by = add_entry (self->form, _("Attached by"), "attach-by");
  self->why = add_entry (self->form, _("Why it is attached"), "attach-why");
  gtk_editable_set_text (GTK_EDITABLE (self->by), author != NULL ? author : "");
  self->add = sy_button_new (_("A_ttach"), NULL);
  gtk_widget_set_name (self->add, "attach-now");
  gtk_widget_add_css_class (self->add, "suggested-action");
  g_signal_connect (self->add, "clicked", G_CALLBACK (add_cb), self);
  g_signal_connect (self->why, "activate", G_CALLBACK (add_cb), self);
  g_signal_connect (cancel, "clicked", G_CALLBACK (cancel_cb), self);
  gtk_box_append (GTK_BOX (buttons), self->add);
  gtk_box_append (GTK_BOX (buttons), cancel);
  gtk_box_append (GTK_BOX (self->form), buttons);
  gtk_widget_set_visible (self->form, FALSE);
  return self->form;
}

static void
changed_cb (SyWorker *worker, SyItemFiles *self)
{
  (void) worker;
  list_files (self);
}

static void
sy_item_files_dispose (GObject *object)
{
  SyItemFiles *self = SY_ITEM_FILES (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->content, g_bytes_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->item, g_free);
  G_OBJECT_CLASS (sy_item_files_parent_class)->dispose (object);
}

static void
sy_item_files_class_init (SyItemFilesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_item_files_dispose;
}

static void
sy_item_files_init (SyItemFiles *self)
{
  GtkBox *box = GTK_BOX (self);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (box, 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->cancellable = g_cancellable_new ();
  self->empty = sy_part_label (NULL, "sy-quiet");
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->said = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                             "visible", FALSE, NULL);
  self->attach = sy_button_new (_("Attach a _file…"), NULL);
  gtk_widget_set_name (self->attach, "attach");
  gtk_widget_set_halign (self->attach, GTK_ALIGN_START);
  g_signal_connect (self->attach, "clicked", G_CALLBACK (attach_cb), self);
  gtk_box_append (box, self->empty);
  gtk_box_append (box, self->rows);
  gtk_box_append (box, self->attach);
  gtk_box_append (box, new_form (self));
  gtk_box_append (box, self->said);
}

GtkWidget *
sy_item_files_new (SyWorker *worker)
{
  SyItemFiles *self = g_object_new (SY_TYPE_ITEM_FILES, NULL);

  self->worker = g_object_ref (worker);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  list_files (self);
  return GTK_WIDGET (self);
}

void
sy_item_files_set_item (SyItemFiles *self, const char *id)
{
  g_return_if_fail (SY_IS_ITEM_FILES (self));
  if (g_strcmp0 (self->item, id) == 0)
    return;
  g_free (self->item);
  self->item = g_strdup (id);
  sy_part_empty (self->rows);
  gtk_widget_set_visible (self->empty, TRUE);
  end_form (self);
  list_files (self);
}
