/* SPDX-License-Identifier: MIT */
#include "sy-key-choice.h"

#include "sy-name.h"

struct _SyKeyChoice
{
  GtkWidget parent_instance;
  GtkWidget *drop_down;
  char *any;
  char **keys; /* of the items after the first */
  SyKeyWords words;
  gboolean filling; /* what the drop-down says meanwhile is nobody's choice */
};

G_DEFINE_FINAL_TYPE (SyKeyChoice, sy_key_choice, GTK_TYPE_WIDGET)

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
selected_cb (GObject *object, GParamSpec *pspec, SyKeyChoice *self)
{
  (void) object, (void) pspec;
  if (!self->filling)
    g_signal_emit (self, signals[CHOSEN], 0);
}

static void
sy_key_choice_dispose (GObject *object)
{
  SyKeyChoice *self = SY_KEY_CHOICE (object);

  g_clear_pointer (&self->drop_down, gtk_widget_unparent);
  g_clear_pointer (&self->keys, g_strfreev);
  g_clear_pointer (&self->any, g_free);
  G_OBJECT_CLASS (sy_key_choice_parent_class)->dispose (object);
}

static gboolean
sy_key_choice_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SY_KEY_CHOICE (widget)->drop_down);
}

static void
sy_key_choice_class_init (SyKeyChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_key_choice_dispose;
  widget_class->grab_focus = sy_key_choice_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  signals[CHOSEN] = g_signal_new ("chosen", SY_TYPE_KEY_CHOICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_key_choice_init (SyKeyChoice *self)
{
  self->keys = g_new0 (char *, 1);
}

GtkWidget *
sy_key_choice_new (const char *any, const char *name, SyKeyWords words)
{
  SyKeyChoice *self = g_object_new (SY_TYPE_KEY_CHOICE, NULL);

  self->any = g_strdup (any);
  self->words = words;
  self->drop_down = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_parent (self->drop_down, GTK_WIDGET (self));
  gtk_widget_set_tooltip_text (self->drop_down, name);
  g_signal_connect_object (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self, 0);
  sy_key_choice_set_keys (self, g_new0 (char *, 1));
  sy_name (self->drop_down, name);
  return GTK_WIDGET (self);
}

static guint
find_key (SyKeyChoice *self, const char *key)
{
  for (guint i = 0; key != NULL && self->keys[i] != NULL; i++)
    if (g_str_equal (self->keys[i], key))
      return i + 1;
  return 0;
}

void
sy_key_choice_set_keys (SyKeyChoice *self, char **keys)
{
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);
  g_autofree char *chosen = g_strdup (sy_key_choice_get (self));

  self->filling = TRUE;
  g_strfreev (self->keys);
  self->keys = keys;
  gtk_string_list_append (labels, self->any);
  for (guint i = 0; keys[i] != NULL; i++)
    gtk_string_list_append (labels, self->words != NULL ? self->words (keys[i]) : keys[i]);
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->drop_down), G_LIST_MODEL (labels));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), find_key (self, chosen));
  self->filling = FALSE;
  if (chosen != NULL && find_key (self, chosen) == 0)
    g_signal_emit (self, signals[CHOSEN], 0);
}

void
sy_key_choice_choose (SyKeyChoice *self, const char *key)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), find_key (self, key));
}

const char *
sy_key_choice_get (SyKeyChoice *self)
{
  guint selected = self->drop_down != NULL ? gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop_down)) : 0;

  return selected != 0 && selected != GTK_INVALID_LIST_POSITION ? self->keys[selected - 1] : NULL;
}
