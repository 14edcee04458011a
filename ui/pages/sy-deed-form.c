/* SPDX-License-Identifier: MIT */
#include "sy-deed-form.h"

#include "sy-date.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-settings.h"
#include "sy-show.h"
#include "sy-task-parts.h"

#include <string.h>

struct _SyDeedForm
{
  GtkBox parent_instance;

  SyWorker *worker;
  char *id, *title;
  GtkWidget *opener; /* NULL: somebody else opens it */
  GtkWidget *subject, *body, *grid, *act, *said;
  int n_rows;
  GHashTable *entries;  /* id → entry, borrowed */
  GPtrArray *required;  /* of char *            */
  SyDeedMake make;
  gpointer make_data;
  gboolean busy;        /* what was typed is being done */
};

enum
{
  OPENED,
  DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyDeedForm, sy_deed_form, GTK_TYPE_BOX)

gboolean
sy_deed_day_is_fine (const char *text)
{
  double days;

  return *text == '\0' || sy_date_read (text, &days);
}

static void
edited_cb (GtkEditable *entry, gpointer user_data G_GNUC_UNUSED)
{
  sy_mark_wrong (GTK_WIDGET (entry), FALSE);
}

/* FALSE, with the first that lacks marked and focused, where something is still needed. */
static gboolean
check_required (SyDeedForm *self)
{
  GtkWidget *first = NULL;

  for (guint i = 0; i < self->required->len; i++)
    {
      GtkWidget *entry = g_hash_table_lookup (self->entries, self->required->pdata[i]);
      g_autofree char *text = sy_deed_form_dup (self, self->required->pdata[i]);

      sy_mark_wrong (entry, *text == '\0');
      if (*text == '\0' && first == NULL)
        first = entry;
    }
  if (first == NULL)
    return TRUE;
  sy_deed_form_say (self, _("Something is still needed: it is marked."), TRUE);
  gtk_widget_grab_focus (first);
  return FALSE;
}

/* Whoever did the last is likely to do the next; what was said is said. */
static void
settle (SyDeedForm *self)
{
  GHashTableIter iter;
  gpointer key, entry;
  g_autofree char *by = sy_deed_form_dup (self, "by"), *role = sy_deed_form_dup (self, "role");

  sy_settings_set (SY_SETTING_AUTHOR, by, NULL);
  if (*role != '\0')
    sy_settings_set (SY_SETTING_ROLE, role, NULL);
  g_hash_table_iter_init (&iter, self->entries);
  while (g_hash_table_iter_next (&iter, &key, &entry))
    if (strcmp (key, "by") != 0 && strcmp (key, "role") != 0)
      gtk_editable_set_text (entry, "");
}

/* Only the button goes grey, and the keyboard stays where it is. */
static void
set_busy (SyDeedForm *self, gboolean busy)
{
  self->busy = busy;
  sy_button_set_busy (self->act, busy);
}

static void
done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyDeedForm) self = data;
  g_autoptr (GError) error = NULL;
  gboolean done = sy_worker_deed_finish (SY_WORKER (source), result, NULL, &error);

  if (self->entries == NULL)
    return; /* the page was closed meanwhile */
  set_busy (self, FALSE);
  if (!done)
    {
      sy_deed_form_say (self, error->message, TRUE);
      return;
    }
  settle (self);
  sy_deed_form_say (self, "", FALSE);
  sy_deed_form_close (self);
  g_signal_emit (self, signals[DONE], 0);
}

static void
act_cb (GtkWidget *widget G_GNUC_UNUSED, SyDeedForm *self)
{
  SyDeedAsk *ask;

  if (self->busy || !check_required (self))
    return;
  sy_deed_form_say (self, "", FALSE);
  ask = self->make (self, self->make_data);
  if (ask == NULL)
    return;
  set_busy (self, TRUE);
  /* Not cancellable: what was sent is done, whatever becomes of the page. */
  sy_worker_deed_async (self->worker, ask, NULL, done_cb, g_object_ref (self));
}

static void
open_cb (GtkButton *button G_GNUC_UNUSED, SyDeedForm *self)
{
  sy_deed_form_open (self);
}

static void
leave_cb (GtkButton *button G_GNUC_UNUSED, SyDeedForm *self)
{
  sy_deed_form_say (self, "", FALSE);
  sy_deed_form_close (self);
}

static void
sy_deed_form_dispose (GObject *object)
{
  SyDeedForm *self = SY_DEED_FORM (object);

  g_clear_pointer (&self->entries, g_hash_table_unref);
  g_clear_pointer (&self->required, g_ptr_array_unref);
  g_clear_pointer (&self->id, g_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_deed_form_parent_class)->dispose (object);
}

static void
sy_deed_form_class_init (SyDeedFormClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_deed_form_dispose;
  signals[OPENED] = g_signal_new ("opened", SY_TYPE_DEED_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[DONE] = g_signal_new ("done", SY_TYPE_DEED_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_deed_form_init (SyDeedForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->entries = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->required = g_ptr_array_new_with_free_func (g_free);
}

static char *
part_name (SyDeedForm *self, const char *part)
{
  return g_strdup_printf ("%s-%s", self->id, part);
}

static void
name_part (SyDeedForm *self, GtkWidget *widget, const char *part)
{
  g_autofree char *name = part_name (self, part);

  gtk_widget_set_name (widget, name);
}

static void
new_body (SyDeedForm *self, const char *act)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *leave = sy_button_new (_("_Leave it"), NULL);

  self->body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  self->act = sy_button_new (act, NULL);
  name_part (self, self->act, "now");
  name_part (self, leave, "leave");
  gtk_widget_add_css_class (self->act, "suggested-action");
  g_signal_connect (self->act, "clicked", G_CALLBACK (act_cb), self);
  g_signal_connect (leave, "clicked", G_CALLBACK (leave_cb), self);
  gtk_box_append (GTK_BOX (buttons), self->act);
  gtk_box_append (GTK_BOX (buttons), leave);
  self->subject = sy_part_label (NULL, "sy-strong");
  gtk_widget_set_visible (self->subject, FALSE);
  name_part (self, self->subject, "subject");
  gtk_box_append (GTK_BOX (self->body), self->subject);
  gtk_box_append (GTK_BOX (self->body), self->grid);
  gtk_box_append (GTK_BOX (self->body), buttons);
  gtk_widget_add_css_class (self->body, "sy-trial");
  gtk_widget_set_visible (self->body, FALSE);
}

GtkWidget *
sy_deed_form_new (SyWorker *worker, const char *id, const char *title, const char *button, const char *act,
                  gboolean role_needed)
{
  SyDeedForm *self = g_object_new (SY_TYPE_DEED_FORM, NULL);
  const SyDeedField who[] = {
    { "by", _("By whom"), NULL, TRUE },
    { "role", _("Role"), _("As what: foreman, safety lead, …"), role_needed },
  };

  self->worker = g_object_ref (worker);
  self->id = g_strdup (id);
  self->title = g_strdup (title);
  if (button != NULL)
    {
      self->opener = sy_button_new (button, NULL);
      gtk_widget_set_name (self->opener, id);
      gtk_widget_set_halign (self->opener, GTK_ALIGN_START);
      g_signal_connect (self->opener, "clicked", G_CALLBACK (open_cb), self);
      gtk_box_append (GTK_BOX (self), self->opener);
    }
  self->said = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                             "visible", FALSE, NULL);
  name_part (self, self->said, "said");
  new_body (self, act);
  gtk_box_append (GTK_BOX (self), self->body);
  gtk_box_append (GTK_BOX (self), self->said);
  gtk_widget_set_visible (GTK_WIDGET (self), button != NULL);
  sy_deed_form_add (self, who, G_N_ELEMENTS (who));
  return GTK_WIDGET (self);
}

void
sy_deed_form_add_widget (SyDeedForm *self, const char *caption, GtkWidget *widget)
{
  if (caption != NULL)
    {
      GtkWidget *label = sy_part_label (caption, "sy-caption");

      gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
      gtk_widget_set_valign (label, GTK_ALIGN_CENTER);
      gtk_grid_attach (GTK_GRID (self->grid), label, 0, self->n_rows, 1, 1);
    }
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_grid_attach (GTK_GRID (self->grid), widget, caption != NULL ? 1 : 0, self->n_rows, caption != NULL ? 1 : 2, 1);
  self->n_rows++;
}

void
sy_deed_form_add (SyDeedForm *self, const SyDeedField *fields, gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      const SyDeedField *field = &fields[i];
      GtkWidget *entry = gtk_entry_new ();
      /* Several forms of a page ask by whom: each entry is told from the others by its form. */
      g_autofree char *name = g_strdup_printf ("%s: %s", self->title, field->caption);

      name_part (self, entry, field->id);
      sy_name (entry, name);
      if (field->purpose != NULL)
        {
          gtk_widget_set_tooltip_text (entry, field->purpose);
          gtk_entry_set_placeholder_text (GTK_ENTRY (entry), field->purpose);
          gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, field->purpose, -1);
        }
      gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_REQUIRED, field->required, -1);
      g_signal_connect (entry, "changed", G_CALLBACK (edited_cb), NULL);
      g_signal_connect (entry, "activate", G_CALLBACK (act_cb), self);
      sy_deed_form_add_widget (self, field->caption, entry);
      g_hash_table_insert (self->entries, g_strdup (field->id), entry);
      if (field->required)
        g_ptr_array_add (self->required, g_strdup (field->id));
    }
}

void
sy_deed_form_set_make (SyDeedForm *self, SyDeedMake make, gpointer user_data)
{
  self->make = make;
  self->make_data = user_data;
}

GtkWidget *
sy_deed_form_get_entry (SyDeedForm *self, const char *id)
{
  return g_hash_table_lookup (self->entries, id);
}

char *
sy_deed_form_dup (SyDeedForm *self, const char *id)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (g_hash_table_lookup (self->entries, id))));
}

void
sy_deed_form_set (SyDeedForm *self, const char *id, const char *text)
{
  gtk_editable_set_text (g_hash_table_lookup (self->entries, id), text);
}

void
sy_deed_form_set_subject (SyDeedForm *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->subject), words);
  gtk_widget_set_visible (self->subject, *words != '\0');
}

void
sy_deed_form_say (SyDeedForm *self, const char *words, gboolean wrong)
{
  if (wrong)
    gtk_widget_add_css_class (self->said, "sy-problem");
  else
    gtk_widget_remove_css_class (self->said, "sy-problem");
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
}

void
sy_deed_form_open (SyDeedForm *self)
{
  g_autofree char *by = sy_deed_form_dup (self, "by"), *role = sy_deed_form_dup (self, "role");
  g_autofree char *author = sy_settings_get (SY_SETTING_AUTHOR), *last_role = sy_settings_get (SY_SETTING_ROLE);

  if (*by == '\0')
    sy_deed_form_set (self, "by", author);
  if (*role == '\0')
    sy_deed_form_set (self, "role", last_role);
  g_signal_emit (self, signals[OPENED], 0);
  gtk_widget_set_visible (self->body, TRUE);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  if (self->opener != NULL)
    gtk_widget_set_visible (self->opener, FALSE);
  gtk_widget_grab_focus (sy_deed_form_get_entry (self, "by"));
  sy_show_whole (self->body);
}

/* To what opens the form again, or to what comes after it. */
static void
leave_focus (SyDeedForm *self)
{
  GtkWidget *next = GTK_WIDGET (self);

  if (self->opener != NULL && gtk_widget_grab_focus (self->opener))
    return;
  while ((next = gtk_widget_get_next_sibling (next)) != NULL)
    if (gtk_widget_get_visible (next) && gtk_widget_child_focus (next, GTK_DIR_TAB_FORWARD))
      return;
  gtk_widget_child_focus (gtk_widget_get_parent (GTK_WIDGET (self)), GTK_DIR_TAB_FORWARD);
}

void
sy_deed_form_close (SyDeedForm *self)
{
  gboolean had_focus = gtk_widget_get_focus_child (self->body) != NULL;

  if (self->opener != NULL)
    gtk_widget_set_visible (self->opener, TRUE);
  if (had_focus)
    leave_focus (self);
  gtk_widget_set_visible (self->body, FALSE);
  /* Nothing of it is left to be seen. */
  if (self->opener == NULL)
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
