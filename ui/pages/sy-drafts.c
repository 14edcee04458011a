/* SPDX-License-Identifier: MIT */
#include "sy-drafts.h"

#include "sy-draft.h"
#include "sy-event.h"
#include "sy-i18n.h"
#include "sy-method.h"
#include "sy-name.h"

#define HEIGHT 120

struct _SyDrafts
{
  GtkWidget parent_instance;
  char *store_uri;
  const char *item_kind;
  gboolean set_aside_seen;
  GtkWidget *scrolled, *lines;
};

G_DEFINE_FINAL_TYPE (SyDrafts, sy_drafts, GTK_TYPE_WIDGET)

static void
dismiss_cb (GtkButton *button, SyDrafts *self)
{
  (void) button;
  self->set_aside_seen = TRUE;
  sy_drafts_refresh (self);
}

static void
add_draft (SyDrafts *self, const SyDraft *draft)
{
  g_autofree char *words = NULL;
  GtkWidget *button, *label;

  if (*draft->name != '\0')
    words = g_strdup_printf (_("Not saved yet: %s – continue"), draft->name);
  else if (g_str_equal (self->item_kind, SY_ITEM_CHANGEOVER))
    words = g_strdup (_("Not saved yet: a die change without a name – continue"));
  else if (g_str_equal (self->item_kind, SY_ITEM_CASE))
    words = g_strdup (_("Not saved yet: a case for an aid without a name – continue"));
  else if (g_str_equal (self->item_kind, SY_ITEM_DIE))
    words = g_strdup (_("Not saved yet: a die without a name – continue"));
  else if (g_str_equal (self->item_kind, SY_ITEM_GEAR))
    words = g_strdup (_("Not saved yet: an item of gear without a name – continue"));
  else
    words = g_strdup (_("Not saved yet: a lift without a name – continue"));
  label = gtk_label_new (words);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "sy-draft");
  sy_name (button, words);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-draft");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", draft->id);
  gtk_box_append (GTK_BOX (self->lines), button);
}

/* One of a method that this edition does not have belongs to the tasks, so that it is seen at all. */
static gboolean
is_ours (SyDrafts *self, const SyDraft *draft)
{
  const SyMethod *method = sy_method_find (draft->method);

  return g_str_equal (method != NULL ? method->item_kind : SY_ITEM_TASK, self->item_kind);
}

static void
add_set_aside (SyDrafts *self, GPtrArray *paths)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label, *button;
  g_autofree char *folder = g_path_get_dirname (paths->pdata[0]);
  g_autofree char *words = NULL;

  words = g_strdup_printf (P_ ("%u draft could not be read. It was not deleted but set aside in %s",
                               "%u drafts could not be read. They were not deleted but set aside in %s",
                               paths->len),
                           paths->len, folder);
  label = gtk_label_new (words);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  button = sy_button_new (_("_Hide"), NULL);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_object (button, "clicked", G_CALLBACK (dismiss_cb), self, 0);
  gtk_widget_add_css_class (row, "sy-trouble");
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (self->lines), row);
}

void
sy_drafts_refresh (SyDrafts *self)
{
  g_autoptr (GPtrArray) drafts = NULL;
  g_autoptr (GPtrArray) set_aside = NULL;
  GtkWidget *child;

  g_return_if_fail (SY_IS_DRAFTS (self));
  drafts = sy_draft_list (self->store_uri);
  set_aside = sy_draft_list_set_aside (self->store_uri);
  while ((child = gtk_widget_get_first_child (self->lines)) != NULL)
    gtk_box_remove (GTK_BOX (self->lines), child);
  for (guint i = 0; i < drafts->len; i++)
    if (is_ours (self, drafts->pdata[i]))
      add_draft (self, drafts->pdata[i]);
  if (set_aside->len > 0 && !self->set_aside_seen && g_str_equal (self->item_kind, SY_ITEM_TASK))
    add_set_aside (self, set_aside);
  gtk_widget_set_visible (GTK_WIDGET (self), gtk_widget_get_first_child (self->lines) != NULL);
}

static void
sy_drafts_dispose (GObject *object)
{
  SyDrafts *self = SY_DRAFTS (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_pointer (&self->store_uri, g_free);
  G_OBJECT_CLASS (sy_drafts_parent_class)->dispose (object);
}

static void
sy_drafts_class_init (SyDraftsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_drafts_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-drafts");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_drafts_init (SyDrafts *self)
{
  GtkScrolledWindow *scrolled;

  self->lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->scrolled = gtk_scrolled_window_new ();
  scrolled = GTK_SCROLLED_WINDOW (self->scrolled);
  gtk_scrolled_window_set_policy (scrolled, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (scrolled, TRUE);
  gtk_scrolled_window_set_max_content_height (scrolled, HEIGHT);
  gtk_scrolled_window_set_child (scrolled, self->lines);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  gtk_widget_set_margin_start (GTK_WIDGET (self), 18);
  gtk_widget_set_margin_end (GTK_WIDGET (self), 18);
  gtk_widget_set_margin_top (GTK_WIDGET (self), 6);
  gtk_widget_set_margin_bottom (GTK_WIDGET (self), 12);
  sy_name (GTK_WIDGET (self), _("Not saved yet"));
}

GtkWidget *
sy_drafts_new (const char *store_uri, const char *item_kind)
{
  SyDrafts *self = g_object_new (SY_TYPE_DRAFTS, "visible", FALSE, NULL);

  self->store_uri = g_strdup (store_uri);
  self->item_kind = item_kind;
  return GTK_WIDGET (self);
}
