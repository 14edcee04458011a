/* SPDX-License-Identifier: MIT */
#include "sy-part-page.h"

#include "sy-i18n.h"
#include "sy-part-taker.h"
#include "sy-task-findings.h"
#include "sy-task-form.h"
#include "sy-task-limits.h"
#include "sy-task-parts.h"
#include "sy-task-remedies.h"
#include "sy-task-result.h"

#include <string.h>

#define FACTS_WIDTH 470

struct _SyPartPage
{
  GtkBox parent_instance;

  SyForm *outer, *part;
  char *path;
  char *text;          /* of the outer form, that the part is of */
  gboolean putting;    /* the change that is told came from here */
  GtkWidget *title;
  GtkWidget *states;   /* GtkStack: "facts", "inside" */
  GtkWidget *columns;  /* in "facts" */
  SyTaskForm *facts;
  GtkWidget *tabs;
};

enum { BACK, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyPartPage, sy_part_page, GTK_TYPE_BOX)

static void build (SyPartPage *self);

/* Between the forms */

static void
part_changed_cb (SyForm *part, SyPartPage *self)
{
  if (sy_form_tells_only_result (part) || sy_form_get_units (part) != sy_form_get_units (self->outer))
    return;
  self->putting = TRUE;
  sy_form_set_part (self->outer, self->path, part);
  self->putting = FALSE;
  g_free (self->text);
  self->text = g_strdup (sy_form_get (self->outer, self->path));
}

static gboolean
read_part (SyPartPage *self, GError **error)
{
  SyForm *part = sy_form_new_part (self->outer, self->path, error);

  if (part == NULL)
    return FALSE;
  if (self->part != NULL)
    g_signal_handlers_disconnect_by_data (self->part, self);
  g_set_object (&self->part, part);
  g_object_unref (part);
  g_free (self->text);
  self->text = g_strdup (sy_form_get (self->outer, self->path));
  sy_form_set_ask_missing (self->part, sy_form_get_ask_missing (self->outer));
  g_signal_connect (self->part, "changed", G_CALLBACK (part_changed_cb), self);
  return TRUE;
}

/* Undone, put back, or told in other units: the page is of what stands there now. */
static void
outer_changed_cb (SyForm *outer, SyPartPage *self)
{
  gboolean same = g_strcmp0 (sy_form_get (outer, self->path), self->text) == 0
                  && sy_form_get_units (outer) == sy_form_get_units (self->part);

  if (self->putting || same)
    return;
  if (read_part (self, NULL))
    build (self);
  else
    g_signal_emit (self, signals[BACK], 0);
}

/* What stands inside */

static void
inside_back_cb (SyPartPage *inside, SyPartPage *self)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "facts");
  gtk_stack_remove (GTK_STACK (self->states), GTK_WIDGET (inside));
  sy_part_page_focus (self);
}

static void
open_part_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyPartPage *self = SY_PART_PAGE (widget);
  GtkWidget *inside = sy_part_page_new (self->part, g_variant_get_string (parameter, NULL), NULL);

  if (inside == NULL)
    return;
  g_signal_connect (inside, "back", G_CALLBACK (inside_back_cb), self);
  gtk_stack_add_named (GTK_STACK (self->states), inside, "inside");
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "inside");
  sy_part_page_focus (SY_PART_PAGE (inside));
}

/* (ss): path of facts inside, kind of the item to take them from. */
static void
take_part_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  const char *path, *kind;

  g_variant_get (parameter, "(&s&s)", &path, &kind);
  sy_part_taker_ask (widget, SY_PART_PAGE (widget)->part, path, kind);
}

/* Layout */

static void
back_cb (GtkButton *button G_GNUC_UNUSED, SyPartPage *self)
{
  g_signal_emit (self, signals[BACK], 0);
}

static gboolean
back_key_cb (GtkWidget *widget, GVariant *args G_GNUC_UNUSED, gpointer user_data G_GNUC_UNUSED)
{
  g_signal_emit (widget, signals[BACK], 0);
  return GDK_EVENT_STOP;
}

static void
go_to_fact_cb (GtkWidget *from G_GNUC_UNUSED, const char *path, SyPartPage *self)
{
  sy_task_form_focus (self->facts, path);
}

static void
cautions_cb (GtkWidget *result G_GNUC_UNUSED, SyPartPage *self)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->tabs), "reasons");
}

static void
add_tab (SyPartPage *self, GtkWidget *child, const char *name, const char *title)
{
  gtk_stack_add_titled (GTK_STACK (self->tabs), sy_part_scroller (child, title), name, title);
}

static void
add_tabs (SyPartPage *self)
{
  const SyMethod *method = sy_form_get_method (self->part);

  if (method->n_views > 0)
    {
      GtkWidget *pictures = sy_task_pictures_new (self->part);

      g_signal_connect (pictures, "fact", G_CALLBACK (go_to_fact_cb), self);
      add_tab (self, pictures, "pictures", _("Drawings"));
    }
  if (method->n_limits > 0)
    add_tab (self, sy_task_limits_new (self->part), "limits", _("Limits"));
  if (method->n_factors > 0)
    add_tab (self, sy_task_remedies_new (self->part), "help", _("What would help"));
  add_tab (self, sy_task_findings_new (self->part), "findings", _("Findings"));
  add_tab (self, sy_task_reasons_new (self->part), "reasons", _("Reasons"));
}

static GtkWidget *
new_right (SyPartPage *self)
{
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *result = sy_task_result_new (self->part);
  GtkWidget *switcher = gtk_stack_switcher_new ();

  self->tabs = gtk_stack_new ();
  gtk_stack_set_hhomogeneous (GTK_STACK (self->tabs), FALSE);
  add_tabs (self);
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (self->tabs));
  gtk_widget_add_css_class (switcher, "sy-tabs");
  gtk_widget_set_halign (switcher, GTK_ALIGN_START);
  g_signal_connect (result, "fact", G_CALLBACK (go_to_fact_cb), self);
  g_signal_connect (result, "cautions", G_CALLBACK (cautions_cb), self);
  gtk_box_append (GTK_BOX (right), result);
  gtk_box_append (GTK_BOX (right), switcher);
  gtk_box_append (GTK_BOX (right), self->tabs);
  return right;
}

static void
build (SyPartPage *self)
{
  GtkWidget *columns = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);
  g_autofree char *name = sy_form_dup_name (self->outer, self->path, FALSE);
  /* Translators: whose facts a page shows, then by which method they are assessed. */
  g_autofree char *title
      = g_strdup_printf (_("%s · %s"), name, sy_translate (sy_form_get_method (self->part)->title));

  gtk_label_set_text (GTK_LABEL (self->title), title);
  if (self->columns != NULL)
    gtk_stack_set_visible_child (GTK_STACK (self->states), self->columns);
  if (gtk_stack_get_child_by_name (GTK_STACK (self->states), "inside") != NULL)
    gtk_stack_remove (GTK_STACK (self->states), gtk_stack_get_child_by_name (GTK_STACK (self->states), "inside"));
  if (self->columns != NULL)
    gtk_stack_remove (GTK_STACK (self->states), self->columns);
  self->columns = columns;
  self->facts = SY_TASK_FORM (sy_task_form_new_part (self->part));
  gtk_paned_set_start_child (GTK_PANED (columns), sy_part_scroller (GTK_WIDGET (self->facts), _("Facts")));
  gtk_paned_set_end_child (GTK_PANED (columns), new_right (self));
  gtk_paned_set_shrink_start_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_resize_start_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_position (GTK_PANED (columns), FACTS_WIDTH);
  gtk_widget_add_css_class (columns, "sy-columns");
  gtk_widget_set_vexpand (columns, TRUE);
  gtk_stack_add_named (GTK_STACK (self->states), columns, "facts");
  gtk_stack_set_visible_child (GTK_STACK (self->states), columns);
  sy_task_form_settle (self->facts);
}

static GtkWidget *
new_head (SyPartPage *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *back = gtk_button_new_with_mnemonic (_("_Back"));

  self->title = sy_part_heading ("");
  gtk_widget_set_name (back, "part-back");
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_widget_add_css_class (head, "sy-notice");
  g_signal_connect (back, "clicked", G_CALLBACK (back_cb), self);
  gtk_box_append (GTK_BOX (head), back);
  gtk_box_append (GTK_BOX (head), self->title);
  return head;
}

static void
sy_part_page_dispose (GObject *object)
{
  SyPartPage *self = SY_PART_PAGE (object);

  if (self->part != NULL)
    g_signal_handlers_disconnect_by_data (self->part, self);
  g_clear_object (&self->part);
  g_clear_object (&self->outer);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->text, g_free);
  G_OBJECT_CLASS (sy_part_page_parent_class)->dispose (object);
}

static void
sy_part_page_class_init (SyPartPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sy_part_page_dispose;
  signals[BACK] = g_signal_new ("back", SY_TYPE_PART_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "task.open-part", "s", open_part_action);
  gtk_widget_class_install_action (widget_class, "task.take-part", "(ss)", take_part_action);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, back_key_cb, NULL);
}

static void
sy_part_page_init (SyPartPage *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_append (GTK_BOX (self), new_head (self));
  self->states = gtk_stack_new ();
  gtk_box_append (GTK_BOX (self), self->states);
}

GtkWidget *
sy_part_page_new (SyForm *outer, const char *path, GError **error)
{
  SyPartPage *self = g_object_new (SY_TYPE_PART_PAGE, NULL);

  self->outer = g_object_ref (outer);
  self->path = g_strdup (path);
  if (!read_part (self, error))
    {
      g_object_unref (g_object_ref_sink (self));
      return NULL;
    }
  build (self);
  g_signal_connect_object (outer, "changed", G_CALLBACK (outer_changed_cb), self, 0);
  return GTK_WIDGET (self);
}

SyForm *
sy_part_page_get_form (SyPartPage *self)
{
  return self->part;
}

void
sy_part_page_go_back (SyPartPage *self)
{
  GtkWidget *inside = gtk_stack_get_child_by_name (GTK_STACK (self->states), "inside");

  if (inside == NULL)
    g_signal_emit (self, signals[BACK], 0);
  else
    sy_part_page_go_back (SY_PART_PAGE (inside));
}

void
sy_part_page_focus (SyPartPage *self)
{
  gtk_widget_child_focus (GTK_WIDGET (self->facts), GTK_DIR_TAB_FORWARD);
}
