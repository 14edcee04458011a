/* SPDX-License-Identifier: MIT */
#include "sy-task-page.h"

#include "sy-i18n.h"
#include "sy-task-findings.h"
#include "sy-task-page-private.h"
#include "sy-task-parts.h"
#include "sy-task-result.h"

#include <string.h>

#define FACTS_WIDTH 470

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_SUBTITLE,
  PROP_DIRTY,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

enum
{
  SAVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskPage, sy_task_page, GTK_TYPE_WIDGET)

/* State that shows */

gboolean
sy_task_page_name_is_changed (SyTaskPage *self)
{
  return strcmp (sy_task_form_get_name (self->facts), self->saved_name) != 0;
}

gboolean
sy_task_page_get_dirty (SyTaskPage *self)
{
  g_return_val_if_fail (SY_IS_TASK_PAGE (self), FALSE);
  return self->form != NULL && (sy_form_is_dirty (self->form) || sy_task_page_name_is_changed (self));
}

static char *
dup_title (SyTaskPage *self)
{
  g_autofree char *name = self->facts != NULL
                              ? g_strstrip (g_strdup (sy_task_form_get_name (self->facts)))
                              : g_strdup ("");

  return name[0] != '\0' ? g_steal_pointer (&name) : g_strdup (_("New task"));
}

static gboolean
name_is_blank (SyTaskPage *self)
{
  g_autofree char *name = g_strstrip (g_strdup (sy_task_form_get_name (self->facts)));

  return name[0] == '\0';
}

static void
refresh_saver (SyTaskPage *self)
{
  g_autofree char *sentence = sy_part_problems_sentence (self->form);

  if (self->trouble_words != NULL)
    sy_task_saver_say (self->saver, SY_SAVER_FAILED, self->trouble_words, NULL);
  else if (sentence != NULL)
    sy_task_saver_say (self->saver, SY_SAVER_BLOCKED, sentence, sy_form_problem_path (self->form, 0));
  else if (name_is_blank (self))
    sy_task_saver_say (self->saver, SY_SAVER_BLOCKED, _("The task has no name yet."), "name");
  else if (sy_task_page_get_dirty (self))
    sy_task_saver_say (self->saver, SY_SAVER_PLAIN, _("Not saved yet. What is typed is kept as a draft."),
                       NULL);
  else
    sy_task_saver_say (self->saver, SY_SAVER_PLAIN, self->saved_words != NULL ? self->saved_words : "",
                       NULL);
}

void
sy_task_page_refresh (SyTaskPage *self)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "task.undo", sy_form_can_undo (self->form));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "task.redo", sy_form_can_redo (self->form));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "task.discard", sy_task_page_get_dirty (self));
  refresh_saver (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TITLE]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SUBTITLE]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DIRTY]);
}

void
sy_task_page_show_notice (SyTaskPage *self, SyNotice kind, const char *words, const char *yes,
                          const char *no)
{
  self->notice_kind = kind;
  gtk_widget_set_visible (self->notice, kind != SY_NOTICE_NONE);
  if (kind == SY_NOTICE_NONE)
    return;
  gtk_label_set_text (GTK_LABEL (self->notice_words), words);
  gtk_button_set_label (GTK_BUTTON (self->notice_yes), yes);
  gtk_button_set_label (GTK_BUTTON (self->notice_no), no);
}

/* Callbacks */

static void
edited (SyTaskPage *self)
{
  if (self->loading)
    return;
  g_clear_pointer (&self->trouble_words, g_free);
  sy_task_page_schedule_draft (self);
  sy_task_page_refresh (self);
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyTaskPage *self)
{
  edited (self);
}

static void
name_edited_cb (SyTaskForm *facts G_GNUC_UNUSED, SyTaskPage *self)
{
  edited (self);
}

static void
go_to_fact_cb (GtkWidget *from G_GNUC_UNUSED, const char *path, SyTaskPage *self)
{
  sy_task_page_focus_fact (self, path);
}

static void
save_cb (SyTaskSaver *saver G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_save (self);
}

static void
cautions_cb (GtkWidget *result G_GNUC_UNUSED, SyTaskPage *self)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->tabs), "reasons");
}

static void
revise_cb (SyTaskHistory *history G_GNUC_UNUSED, gint64 revision, SyTaskPage *self)
{
  sy_task_page_revise (self, revision);
}

static void
notice_yes_cb (GtkButton *button G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_answer (self, TRUE);
}

static void
notice_no_cb (GtkButton *button G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_answer (self, FALSE);
}

static void
worker_changed_cb (SyWorker *worker G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_reload_history (self);
}

static void
focus_left_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_flush_draft (self);
}

/* Actions */

static void
save_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  sy_task_page_save (SY_TASK_PAGE (widget));
}

static void
undo_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  sy_form_undo (SY_TASK_PAGE (widget)->form);
}

static void
redo_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  sy_form_redo (SY_TASK_PAGE (widget)->form);
}

static void
units_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  SyForm *form = SY_TASK_PAGE (widget)->form;

  sy_form_set_units (form, sy_form_get_units (form) == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC);
}

static void
discard_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  sy_task_page_discard (SY_TASK_PAGE (widget));
}

/* Layout */

static GtkWidget *
new_notice (SyTaskPage *self)
{
  self->notice = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->notice_words = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign",
                                     0.0, "wrap", TRUE, "hexpand", TRUE, NULL);
  self->notice_yes = gtk_button_new_with_label ("");
  self->notice_no = gtk_button_new_with_label ("");
  gtk_widget_set_name (self->notice_yes, "notice-yes");
  gtk_widget_set_name (self->notice_no, "notice-no");
  gtk_widget_add_css_class (self->notice, "sy-notice");
  gtk_widget_set_visible (self->notice, FALSE);
  g_signal_connect (self->notice_yes, "clicked", G_CALLBACK (notice_yes_cb), self);
  g_signal_connect (self->notice_no, "clicked", G_CALLBACK (notice_no_cb), self);
  gtk_box_append (GTK_BOX (self->notice), self->notice_words);
  gtk_box_append (GTK_BOX (self->notice), self->notice_yes);
  gtk_box_append (GTK_BOX (self->notice), self->notice_no);
  return self->notice;
}

static void
add_tab (SyTaskPage *self, GtkWidget *child, const char *name, const char *title)
{
  gtk_stack_add_titled (GTK_STACK (self->tabs), sy_part_scroller (child, title), name, title);
}

/* In a language with long words the row of tabs must not push the page over the edge of a small screen: it moves
   with the keyboard's focus then. */
static GtkWidget *
new_tab_row (GtkWidget *switcher)
{
  GtkWidget *row = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (row), GTK_POLICY_EXTERNAL, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (row), switcher);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("What to look at"), -1);
  return row;
}

static GtkWidget *
new_right (SyTaskPage *self)
{
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *result = sy_task_result_new (self->form);
  GtkWidget *pictures = sy_task_pictures_new (self->form);
  GtkWidget *switcher = gtk_stack_switcher_new ();

  self->tabs = gtk_stack_new ();
  gtk_widget_set_name (self->tabs, "tabs");
  gtk_stack_set_hhomogeneous (GTK_STACK (self->tabs), FALSE);
  self->remedies = SY_TASK_REMEDIES (sy_task_remedies_new (self->form));
  self->history = SY_TASK_HISTORY (sy_task_history_new (sy_form_get_desk (self->form)));
  add_tab (self, pictures, "pictures", _("Drawings"));
  add_tab (self, GTK_WIDGET (self->remedies), "help", _("What would help"));
  add_tab (self, sy_task_findings_new (self->form), "findings", _("Findings"));
  add_tab (self, sy_task_reasons_new (self->form), "reasons", _("Reasons"));
  add_tab (self, sy_task_spread_new (self->form), "spread", _("Spread"));
  add_tab (self, GTK_WIDGET (self->history), "history", _("History"));
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (self->tabs));
  gtk_widget_add_css_class (switcher, "sy-tabs");
  gtk_widget_set_halign (switcher, GTK_ALIGN_START);
  g_signal_connect (result, "cautions", G_CALLBACK (cautions_cb), self);
  g_signal_connect (pictures, "fact", G_CALLBACK (go_to_fact_cb), self);
  g_signal_connect (self->history, "revise", G_CALLBACK (revise_cb), self);
  gtk_box_append (GTK_BOX (right), result);
  gtk_box_append (GTK_BOX (right), new_tab_row (switcher));
  gtk_box_append (GTK_BOX (right), self->tabs);
  return right;
}

static GtkWidget *
new_task (SyTaskPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *columns = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);

  self->facts = SY_TASK_FORM (sy_task_form_new (self->form));
  g_signal_connect (self->facts, "name-edited", G_CALLBACK (name_edited_cb), self);
  gtk_paned_set_start_child (GTK_PANED (columns),
                             sy_part_scroller (GTK_WIDGET (self->facts), _("Facts")));
  gtk_paned_set_end_child (GTK_PANED (columns), new_right (self));
  gtk_paned_set_shrink_start_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_resize_start_child (GTK_PANED (columns), FALSE);
  gtk_paned_set_position (GTK_PANED (columns), FACTS_WIDTH);
  gtk_widget_add_css_class (columns, "sy-columns");
  gtk_widget_set_vexpand (columns, TRUE);
  self->saver = SY_TASK_SAVER (sy_task_saver_new ());
  g_signal_connect (self->saver, "save", G_CALLBACK (save_cb), self);
  g_signal_connect (self->saver, "go", G_CALLBACK (go_to_fact_cb), self);
  gtk_box_append (GTK_BOX (box), new_notice (self));
  gtk_box_append (GTK_BOX (box), columns);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->saver));
  return box;
}

static void
build (SyTaskPage *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->states = gtk_stack_new ();
  self->trouble = sy_part_label (NULL, "sy-problem");
  gtk_widget_set_halign (self->trouble, GTK_ALIGN_CENTER);
  gtk_stack_add_named (GTK_STACK (self->states),
                       sy_part_label (_("Opening the task…"), "sy-waiting"), "wait");
  gtk_stack_add_named (GTK_STACK (self->states), self->trouble, "trouble");
  gtk_stack_add_named (GTK_STACK (self->states), new_task (self), "task");
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "task");
  gtk_widget_set_parent (self->states, GTK_WIDGET (self));
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

/* Class */

static void
sy_task_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SyTaskPage *self = SY_TASK_PAGE (object);

  switch (id)
    {
    case PROP_TITLE:
      g_value_take_string (value, dup_title (self));
      break;
    case PROP_SUBTITLE:
      g_value_set_string (value, self->form != NULL ? sy_form_get (self->form, "place") : "");
      break;
    case PROP_DIRTY:
      g_value_set_boolean (value, sy_task_page_get_dirty (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

/* The page leaves its window: somebody may hold it a while longer, but what is typed is kept now. */
static void
sy_task_page_unroot (GtkWidget *widget)
{
  SyTaskPage *self = SY_TASK_PAGE (widget);

  if (self->form != NULL)
    sy_task_page_flush_draft (self);
  GTK_WIDGET_CLASS (sy_task_page_parent_class)->unroot (widget);
}

static void
sy_task_page_dispose (GObject *object)
{
  SyTaskPage *self = SY_TASK_PAGE (object);

  if (self->form != NULL)
    {
      sy_task_page_flush_draft (self);
      g_signal_handlers_disconnect_by_data (self->form, self);
      g_signal_handlers_disconnect_by_data (self->worker, self);
    }
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->states, gtk_widget_unparent);
  self->facts = NULL;
  g_clear_object (&self->form);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->offered, sy_draft_free);
  g_clear_pointer (&self->task_id, g_free);
  g_clear_pointer (&self->draft_id, g_free);
  g_clear_pointer (&self->saved_words, g_free);
  g_clear_pointer (&self->trouble_words, g_free);
  G_OBJECT_CLASS (sy_task_page_parent_class)->dispose (object);
}

static void
sy_task_page_finalize (GObject *object)
{
  g_free (SY_TASK_PAGE (object)->saved_name);
  G_OBJECT_CLASS (sy_task_page_parent_class)->finalize (object);
}

static void
sy_task_page_class_init (SyTaskPageClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = sy_task_page_get_property;
  object_class->dispose = sy_task_page_dispose;
  object_class->finalize = sy_task_page_finalize;
  widget_class->unroot = sy_task_page_unroot;
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_SUBTITLE] = g_param_spec_string ("subtitle", NULL, NULL, NULL, flags);
  props[PROP_DIRTY] = g_param_spec_boolean ("dirty", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SAVED] = g_signal_new ("saved", SY_TYPE_TASK_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "task.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "task.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "task.redo", NULL, redo_action);
  gtk_widget_class_install_action (widget_class, "task.units", NULL, units_action);
  gtk_widget_class_install_action (widget_class, "task.discard", NULL, discard_action);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-task");
}

static void
sy_task_page_init (SyTaskPage *self)
{
  self->saved_name = g_strdup ("");
  self->cancellable = g_cancellable_new ();
}

GtkWidget *
sy_task_page_new (SyWorker *worker)
{
  SyTaskPage *self = g_object_new (SY_TYPE_TASK_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->form = sy_form_new (sy_worker_get_desk (worker), "lift", SY_UNITS_METRIC);
  build (self);
  g_signal_connect (self->form, "changed", G_CALLBACK (form_changed_cb), self);
  g_signal_connect (worker, "changed", G_CALLBACK (worker_changed_cb), self);
  sy_task_page_refresh (self);
  return GTK_WIDGET (self);
}

void
sy_task_page_focus_fact (SyTaskPage *self, const char *path)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_task_form_focus (self->facts, path);
}
