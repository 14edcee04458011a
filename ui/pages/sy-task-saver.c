/* SPDX-License-Identifier: MIT */
#include "sy-task-saver.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-settings.h"
#include "sy-show.h"
#include "sy-task-parts.h"

struct _SyTaskSaver
{
  GtkBox parent_instance;

  GtkWidget *words;  /* how things are; announced when it changes */
  GtkWidget *button; /* what blocks saving; leads there           */
  GtkWidget *button_words;
  char *path;
  GtkWidget *by, *role, *why, *save;
};

enum
{
  SAVE,
  GO,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskSaver, sy_task_saver, GTK_TYPE_BOX)

static gboolean
is_blank (GtkWidget *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));

  return text[0] == '\0';
}

static void
entry_changed_cb (GtkEditable *entry, gpointer user_data G_GNUC_UNUSED)
{
  sy_mark_wrong (GTK_WIDGET (entry), FALSE);
}

static void
save_cb (GtkWidget *widget G_GNUC_UNUSED, SyTaskSaver *self)
{
  g_signal_emit (self, signals[SAVE], 0);
}

static void
go_cb (GtkButton *button G_GNUC_UNUSED, SyTaskSaver *self)
{
  g_autofree char *path = g_strdup (self->path);

  if (path != NULL)
    g_signal_emit (self, signals[GO], 0, path);
}

static GtkWidget *
add_entry (SyTaskSaver *self, const char *caption, const char *name, const char *purpose, int width)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (caption);
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_widget_add_css_class (label, "sy-caption");
  gtk_widget_set_name (entry, name);
  gtk_widget_set_tooltip_text (entry, purpose);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, purpose,
                                  -1);
  g_signal_connect (entry, "changed", G_CALLBACK (entry_changed_cb), NULL);
  g_signal_connect (entry, "activate", G_CALLBACK (save_cb), self);
  gtk_box_append (GTK_BOX (self), label);
  gtk_box_append (GTK_BOX (self), entry);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  return entry;
}

static void
sy_task_saver_finalize (GObject *object)
{
  g_free (SY_TASK_SAVER (object)->path);
  G_OBJECT_CLASS (sy_task_saver_parent_class)->finalize (object);
}

static void
sy_task_saver_class_init (SyTaskSaverClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_task_saver_finalize;
  signals[SAVE] = g_signal_new ("save", SY_TYPE_TASK_SAVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  signals[GO] = g_signal_new ("go", SY_TYPE_TASK_SAVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sy_task_saver_init (SyTaskSaver *self)
{
  GtkWidget *said = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-saver");
  self->words = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0,
                              "wrap", TRUE, "hexpand", TRUE, NULL);
  gtk_widget_set_name (self->words, "saver-words");
  self->button = gtk_button_new ();
  self->button_words = sy_part_label (NULL, NULL);
  gtk_label_set_lines (GTK_LABEL (self->button_words), 2);
  gtk_label_set_ellipsize (GTK_LABEL (self->button_words), PANGO_ELLIPSIZE_END);
  gtk_button_set_child (GTK_BUTTON (self->button), self->button_words);
  gtk_widget_set_name (self->button, "saver-blocked");
  gtk_widget_set_hexpand (self->button, TRUE);
  gtk_widget_set_visible (self->button, FALSE);
  gtk_widget_add_css_class (self->button, "sy-blocked");
  g_signal_connect (self->button, "clicked", G_CALLBACK (go_cb), self);
  gtk_widget_set_hexpand (said, TRUE);
  gtk_widget_set_valign (said, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (said), self->words);
  gtk_box_append (GTK_BOX (said), self->button);
  gtk_box_append (GTK_BOX (self), said);
  self->by = add_entry (self, _("_By whom"), "by", _("Who saves this revision"), 11);
  self->role = add_entry (self, _("_Role"), "role", _("As what: foreman, safety lead, …; may be left out"), 8);
  self->why = add_entry (self, _("_Why"), "why", _("Why it is saved: first measurement, new table, …"), 16);
  self->save = sy_button_new (_("_Save"), NULL);
  gtk_widget_add_css_class (self->save, "suggested-action");
  gtk_widget_set_valign (self->save, GTK_ALIGN_CENTER);
  gtk_widget_set_name (self->save, "save");
  g_signal_connect (self->save, "clicked", G_CALLBACK (save_cb), self);
  gtk_box_append (GTK_BOX (self), self->save);
}

/* Whoever saved last is likely to save again. */
GtkWidget *
sy_task_saver_new (void)
{
  SyTaskSaver *self = g_object_new (SY_TYPE_TASK_SAVER, NULL);
  g_autofree char *author = sy_settings_get (SY_SETTING_AUTHOR);
  g_autofree char *role = sy_settings_get (SY_SETTING_ROLE);

  gtk_editable_set_text (GTK_EDITABLE (self->by), author);
  gtk_editable_set_text (GTK_EDITABLE (self->role), role);
  return GTK_WIDGET (self);
}

const char *
sy_task_saver_get_by (SyTaskSaver *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->by));
}

const char *
sy_task_saver_get_role (SyTaskSaver *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->role));
}

const char *
sy_task_saver_get_why (SyTaskSaver *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->why));
}

void
sy_task_saver_set_why (SyTaskSaver *self, const char *why)
{
  gtk_editable_set_text (GTK_EDITABLE (self->why), why);
}

void
sy_task_saver_say (SyTaskSaver *self, SySaverTone tone, const char *words, const char *path)
{
  gboolean leads = tone == SY_SAVER_BLOCKED && path != NULL;

  g_free (self->path);
  self->path = g_strdup (path);
  gtk_widget_set_visible (self->words, !leads);
  gtk_widget_set_visible (self->button, leads);
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (self->words)), words) != 0)
    gtk_label_set_text (GTK_LABEL (self->words), words);
  gtk_label_set_text (GTK_LABEL (self->button_words), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
  gtk_widget_set_tooltip_text (self->button, words);
  if (tone == SY_SAVER_FAILED)
    gtk_widget_add_css_class (self->words, "sy-problem");
  else
    gtk_widget_remove_css_class (self->words, "sy-problem");
}

void
sy_task_saver_ask_why (SyTaskSaver *self)
{
  gtk_widget_grab_focus (self->why);
}

gboolean
sy_task_saver_check (SyTaskSaver *self)
{
  gboolean no_by = is_blank (self->by), no_why = is_blank (self->why);

  sy_mark_wrong (self->by, no_by);
  sy_mark_wrong (self->why, no_why);
  if (no_by || no_why)
    gtk_widget_grab_focus (no_by ? self->by : self->why);
  return !no_by && !no_why;
}

void
sy_task_saver_set_busy (SyTaskSaver *self, gboolean busy)
{
  sy_button_set_busy (self->save, busy);
}
