/* SPDX-License-Identifier: MIT */
/* A task page for the eye: what stands where, for the method at hand. */
#include "sy-find-gear.h"
#include "sy-i18n.h"
#include "sy-load-path.h"
#include "sy-part-page.h"
#include "sy-task-case.h"
#include "sy-task-findings.h"
#include "sy-task-lanes.h"
#include "sy-task-limits.h"
#include "sy-task-page-private.h"
#include "sy-task-parts.h"
#include "sy-task-remedies.h"
#include "sy-task-result.h"
#include "sy-task-standing.h"

#include <string.h>

#define FACTS_WIDTH 470

/* Callbacks */

static void
name_edited_cb (SyTaskForm *facts G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_edited (self);
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
judged_cb (SyTaskHistory *history G_GNUC_UNUSED, gint64 revision, SyTaskPage *self)
{
  sy_task_page_save_judged (self, revision);
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
focus_left_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_flush_draft (self);
}

static void
path_cb (GtkWidget *result G_GNUC_UNUSED, SyTaskPage *self)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->tabs), "path");
}

static void
take_cb (SyTaskForm *facts G_GNUC_UNUSED, const char *item_kind, SyTaskPage *self)
{
  if (self->choose != NULL)
    self->choose (self, item_kind, self->choose_data);
}

void
sy_task_page_show_tab (SyTaskPage *self, const char *name)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->tabs), name);
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

/* What to look at depends on what the method has to show. */
static void
add_tabs (SyTaskPage *self)
{
  const SyMethod *method = sy_form_get_method (self->form);
  gboolean has_path = strcmp (method->id, "rigged-lift") == 0;

  if (strcmp (method->id, "changeover") == 0)
    {
      GtkWidget *lanes = sy_task_lanes_new (self->form);

      g_signal_connect (lanes, "fact", G_CALLBACK (go_to_fact_cb), self);
      add_tab (self, lanes, "timeline", _("Timeline"));
    }
  if (strcmp (method->id, "case") == 0)
    add_tab (self, sy_task_case_new (self->form), "side", _("Side by side"));
  if (method->n_views > 0)
    {
      GtkWidget *pictures = sy_task_pictures_new (self->form);

      g_signal_connect (pictures, "fact", G_CALLBACK (go_to_fact_cb), self);
      add_tab (self, pictures, "pictures", _("Drawings"));
    }
  if (method->n_limits > 0)
    add_tab (self, sy_task_limits_new (self->form), "limits", _("Limits"));
  if (has_path)
    {
      GtkWidget *path = sy_load_path_new (self->form);

      g_signal_connect (path, "fact", G_CALLBACK (go_to_fact_cb), self);
      add_tab (self, path, "path", _("Load path"));
      add_tab (self, sy_find_gear_new (self->worker, self->form), "find-gear", _("Find gear"));
    }
  if (method->n_factors > 0)
    add_tab (self, sy_task_remedies_new (self->form), "help", _("What would help"));
  add_tab (self, sy_task_findings_new (self->form), "findings", _("Findings"));
  add_tab (self, sy_task_reasons_new (self->form), "reasons", _("Reasons"));
  if (method->n_measured > 0)
    add_tab (self, sy_task_spread_new (self->form), "spread", _("Spread"));
  self->history = SY_TASK_HISTORY (sy_task_history_new (self->worker));
  g_signal_connect (self->history, "revise", G_CALLBACK (revise_cb), self);
  g_signal_connect (self->history, "judged", G_CALLBACK (judged_cb), self);
  add_tab (self, GTK_WIDGET (self->history), "history", _("History"));
  self->follow = SY_FOLLOW_UP (sy_follow_up_new (self->worker));
  add_tab (self, GTK_WIDGET (self->follow), "follow-up", _("Follow-up"));
  self->files = SY_ITEM_FILES (sy_item_files_new (self->worker));
  add_tab (self, GTK_WIDGET (self->files), "files", _("Files"));
}

static GtkWidget *
new_right (SyTaskPage *self)
{
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *result = sy_task_result_new (self->form);
  GtkWidget *switcher = gtk_stack_switcher_new ();

  self->tabs = gtk_stack_new ();
  gtk_widget_set_name (self->tabs, "tabs");
  gtk_stack_set_hhomogeneous (GTK_STACK (self->tabs), FALSE);
  add_tabs (self);
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (self->tabs));
  gtk_widget_add_css_class (switcher, "sy-tabs");
  gtk_widget_set_halign (switcher, GTK_ALIGN_START);
  g_signal_connect (result, "cautions", G_CALLBACK (cautions_cb), self);
  g_signal_connect (result, "fact", G_CALLBACK (go_to_fact_cb), self);
  g_signal_connect (result, "path", G_CALLBACK (path_cb), self);
  self->standing = sy_task_standing_new ();
  gtk_box_append (GTK_BOX (right), self->standing);
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
  g_signal_connect (self->facts, "take", G_CALLBACK (take_cb), self);
  sy_task_form_offer_register (self->facts, self->choose != NULL);
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

void
sy_task_page_build_task (SyTaskPage *self)
{
  gtk_stack_add_named (GTK_STACK (self->states), new_task (self), "task");
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "task");
}

/* Facts inside facts */

void
sy_task_page_close_part (SyTaskPage *self)
{
  GtkWidget *part = gtk_stack_get_child_by_name (GTK_STACK (self->states), "part");
  g_autofree char *path = NULL;

  if (part == NULL)
    return;
  path = g_strdup (g_object_get_data (G_OBJECT (part), "sy-path"));
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "task");
  gtk_stack_remove (GTK_STACK (self->states), part);
  sy_task_form_focus (self->facts, path);
}

static void
part_back_cb (SyPartPage *part G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_close_part (self);
}

void
sy_task_page_open_part (SyTaskPage *self, const char *path)
{
  GtkWidget *part;

  sy_task_page_close_part (self);
  part = sy_part_page_new (self->form, path, NULL);
  if (part == NULL)
    return; /* the row says that they cannot be read */
  g_object_set_data_full (G_OBJECT (part), "sy-path", g_strdup (path), g_free);
  g_signal_connect (part, "back", G_CALLBACK (part_back_cb), self);
  gtk_stack_add_named (GTK_STACK (self->states), part, "part");
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), "part");
  sy_part_page_focus (SY_PART_PAGE (part));
}

gboolean
sy_task_page_go_back (SyTaskPage *self)
{
  GtkWidget *part;

  g_return_val_if_fail (SY_IS_TASK_PAGE (self), FALSE);
  part = gtk_stack_get_child_by_name (GTK_STACK (self->states), "part");
  if (part == NULL)
    return FALSE;
  sy_part_page_go_back (SY_PART_PAGE (part));
  return TRUE;
}

void
sy_task_page_unbuild_task (SyTaskPage *self)
{
  GtkWidget *part = gtk_stack_get_child_by_name (GTK_STACK (self->states), "part");

  if (part != NULL)
    gtk_stack_remove (GTK_STACK (self->states), part);
  gtk_stack_remove (GTK_STACK (self->states),
                    gtk_stack_get_child_by_name (GTK_STACK (self->states), "task"));
  self->facts = NULL;
}

void
sy_task_page_build (SyTaskPage *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->states = gtk_stack_new ();
  self->trouble = sy_part_label (NULL, "sy-problem");
  gtk_widget_set_halign (self->trouble, GTK_ALIGN_CENTER);
  gtk_stack_add_named (GTK_STACK (self->states), sy_part_label (_("Opening…"), "sy-waiting"), "wait");
  gtk_stack_add_named (GTK_STACK (self->states), self->trouble, "trouble");
  gtk_widget_set_parent (self->states, GTK_WIDGET (self));
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
