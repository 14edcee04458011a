/* SPDX-License-Identifier: MIT */
/* What the window does when it is asked for by name, from a key, a button or the menu. */
#include "sy-window-private.h"

#include "sy-alert.h"
#include "sy-draft.h"
#include "sy-export-window.h"
#include "sy-i18n.h"
#include "sy-import-window.h"
#include "sy-item-log.h"
#include "sy-limits-page.h"
#include "sy-matrix-page.h"
#include "sy-settings.h"
#include "sy-survey-page.h"
#include "sy-task-chooser.h"
#include "sy-tasks-page.h"
#include "sy-variant.h"
#include "sy-worker-deeds.h"

static void
begin_new (SyWindow *self, const char *method)
{
  sy_task_page_begin_new (sy_window_new_task_page (self, method), self->units, NULL);
  sy_window_show_page (self, "task");
}

static void
new_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action, (void) parameter;
  begin_new (user_data, "lift");
}

static void
new_item_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  const char *method = g_variant_get_string (parameter, NULL);

  (void) action;
  if (sy_method_find (method) != NULL)
    begin_new (user_data, method);
}

static void
choose_new_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  SyRegister which;

  (void) action, (void) parameter;
  /* In a register there is no doubt what is meant. */
  if (sy_window_find_register (sy_window_get_page (self), &which) && sy_register_page (which)->method != NULL)
    begin_new (self, sy_register_page (which)->method);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", "new");
}

static SyTaskPage *
open_item (SyWindow *self, const char *id)
{
  SyTaskPage *page = sy_window_new_task_page (self, NULL);

  self->item = g_strdup (id);
  sy_task_page_open (page, id);
  sy_window_show_page (self, "task");
  return page;
}

static void
open_task_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action;
  open_item (user_data, g_variant_get_string (parameter, NULL));
}

static void
open_history_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action;
  sy_task_page_show_tab (open_item (user_data, g_variant_get_string (parameter, NULL)), "history");
}

static void
open_follow_up_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action;
  sy_task_page_show_tab (open_item (user_data, g_variant_get_string (parameter, NULL)), "follow-up");
}

static void
open_draft_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  const char *id = g_variant_get_string (parameter, NULL);
  g_autoptr (SyDraft) draft = sy_draft_read (id, sy_worker_get_store (self->worker), NULL);
  SyUnits units = self->units;

  (void) action;
  if (draft == NULL)
    {
      /* Saved or thrown away meanwhile, perhaps in another window. */
      sy_window_refresh_drafts (self);
      return;
    }
  sy_units_from_id (draft->units, &units);
  if (*draft->task != '\0')
    sy_task_page_open (sy_window_new_task_page (self, draft->method), draft->task);
  else
    sy_task_page_begin_new (sy_window_new_task_page (self, draft->method), units, draft->id);
  sy_window_show_page (self, "task");
}

static void
page_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  const char *name = g_variant_get_string (parameter, NULL);

  (void) action;
  sy_window_need_page (self, name);
  if (gtk_stack_get_child_by_name (GTK_STACK (self->stack), name) == NULL || g_str_equal (name, "task"))
    return;
  sy_window_show_page (self, name);
  sy_window_close_task (self);
  sy_window_refresh_drafts (self);
}

static void
back_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  /* A comparison that was asked for in a task lies over it. */
  if (g_str_equal (sy_window_get_page (self), "compare") && self->task != NULL)
    sy_window_show_page (self, "task");
  else if (!g_str_equal (sy_window_get_page (self), "task") || !sy_task_page_go_back (SY_TASK_PAGE (self->task)))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", self->from);
}

static void
search_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", sy_register_page (self->last)->page);
  sy_tasks_page_focus_search (SY_TASKS_PAGE (self->lists[self->last]));
}

/* Topics: variants */

static gboolean
name_is_taken (SyWindow *self, const char *name)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->list));

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SyTaskRow) row = g_list_model_get_item (G_LIST_MODEL (self->list), i);

      if (g_str_equal (sy_task_row_get_task (row)->name, name))
        return TRUE;
    }
  return FALSE;
}

/* "Blanks (variant)", "Blanks (variant) 2" … */
static void
find_free_name (SyWindow *self, SyDraft *draft)
{
  g_autofree char *wanted = g_steal_pointer (&draft->name);

  draft->name = g_strdup (wanted);
  for (guint i = 2; name_is_taken (self, draft->name); i++)
    {
      g_free (draft->name);
      draft->name = g_strdup_printf ("%s %u", wanted, i);
    }
}

static void
new_variant_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  g_autoptr (SyDraft) variant = NULL;

  (void) action, (void) parameter;
  if (self->task == NULL || !g_str_equal (sy_window_get_page (self), "task"))
    return;
  variant = sy_task_page_dup_variant (SY_TASK_PAGE (self->task));
  find_free_name (self, variant);
  sy_task_page_begin_variant (sy_window_new_task_page (self, variant->method), variant);
  sy_window_show_page (self, "task");
}

/* Topics: beginning from an earlier one */

static void
begin_from (SyWindow *self, GPtrArray *lines, GError **error)
{
  g_autoptr (SyItemLog) log = sy_item_log_new (lines);
  g_autoptr (SyDraft) draft = NULL;
  SyTaskPage *page;

  if (log == NULL)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, _("The record has no such item."));
      return;
    }
  draft = sy_variant_new_from (sy_worker_get_desk (self->worker), sy_item_log_latest (log)->event, error);
  if (draft == NULL)
    return;
  page = sy_window_new_task_page (self, draft->method);
  sy_task_page_begin_variant (page, draft);
  sy_window_show_page (self, "task");
  /* The one thing that it must not share with the other. */
  sy_task_page_focus_fact (page, "name");
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GWeakRef *asked = user_data;
  g_autoptr (SyWindow) self = g_weak_ref_get (asked);
  const char *const answers[] = { _("_Close"), NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;
  GPtrArray *lines = sy_worker_events_finish (SY_WORKER (source), result, &error);

  g_weak_ref_clear (asked);
  g_free (asked);
  if (self == NULL)
    {
      g_clear_pointer (&lines, g_ptr_array_unref);
      return;
    }
  if (lines != NULL)
    begin_from (self, lines, &error);
  if (error == NULL)
    return;
  words = g_strdup_printf (_("Nothing was begun: %s"), error->message);
  sy_alert_async (GTK_WINDOW (self), words, _("The record was not changed."), answers, 0, -1, NULL, NULL, NULL);
}

static void
new_from_item_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  GWeakRef *asked = g_new0 (GWeakRef, 1);

  (void) action;
  g_weak_ref_init (asked, self);
  sy_worker_events_async (self->worker, g_variant_get_string (parameter, NULL), NULL, read_cb, asked);
}

static void
from_chosen_cb (SyTaskChooser *chooser, const char *id, SyWindow *self)
{
  (void) chooser;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.new-from-item", "s", id);
}

/* Of the kind that is shown, in a list or in an open page. */
static void
new_from_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  SyRegister which = self->last;
  GtkWidget *chooser;

  (void) action, (void) parameter;
  if (g_str_equal (sy_window_get_page (self), "task"))
    sy_window_find_kind (sy_task_page_get_method (SY_TASK_PAGE (self->task))->item_kind, &which);
  chooser = sy_task_chooser_new (GTK_WINDOW (self), self->list, which, self->units, _("Begin from which?"), _("_Begin"));
  g_signal_connect_object (chooser, "chosen", G_CALLBACK (from_chosen_cb), self, 0);
  gtk_window_present (GTK_WINDOW (chooser));
}

/* Topics: exchange */

static void
export_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  g_autofree char *name = NULL;

  (void) action, (void) parameter;
  if (self->item != NULL)
    g_object_get (self->task, "title", &name, NULL);
  gtk_window_present (GTK_WINDOW (sy_export_window_new (GTK_WINDOW (self), self->worker, self->item, name)));
}

static void
import_bundle_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_window_present (GTK_WINDOW (sy_import_window_new (GTK_WINDOW (self), self->worker, SY_IMPORT_BUNDLE)));
}

static void
import_lifts_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_window_present (GTK_WINDOW (sy_import_window_new (GTK_WINDOW (self), self->worker, SY_IMPORT_LIFTS)));
}

static void
survey_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (user_data), "win.page", "s", "survey");
}

static void
print_task_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (self->task, "task.print", NULL);
}

/* In a task: its sheets; elsewhere: the sheet to take to the floor. */
static void
print_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (self),
                              g_str_equal (sy_window_get_page (self), "task") ? "win.print-task" : "win.survey", NULL);
}

static void
save_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (self->task, "task.save", NULL);
}

static void
undo_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (self->task, "task.undo", NULL);
}

static void
redo_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (self->task, "task.redo", NULL);
}

static void
set_units (SyWindow *self, SyUnits units)
{
  g_autoptr (GError) error = NULL;
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "default-units");

  self->units = units;
  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_string (sy_units_id (units)));
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (self->lists[i] != NULL)
      sy_tasks_page_set_units (SY_TASKS_PAGE (self->lists[i]), units);
  if (self->matrix != NULL)
    sy_matrix_page_set_units (SY_MATRIX_PAGE (self->matrix), units);
  if (self->survey != NULL)
    sy_survey_page_set_units (SY_SURVEY_PAGE (self->survey), units);
  if (self->limits != NULL)
    sy_limits_page_set_units (SY_LIMITS_PAGE (self->limits), units);
  if (!sy_settings_set_units (units, &error))
    g_message ("The choice of units could not be kept: %s", error->message);
}

static void
default_units_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyUnits units;

  (void) action;
  if (sy_units_from_id (g_variant_get_string (parameter, NULL), &units))
    set_units (user_data, units);
}

/* In a task: its own units; elsewhere: those of new tasks and of what is shown. */
static void
units_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  if (g_str_equal (sy_window_get_page (self), "task"))
    gtk_widget_activate_action (self->task, "task.units", NULL);
  else
    set_units (self, self->units == SY_UNITS_METRIC ? SY_UNITS_US : SY_UNITS_METRIC);
}

static void
close_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action, (void) parameter;
  gtk_window_close (GTK_WINDOW (user_data));
}

static const GActionEntry actions[] = {
  { .name = "new", .activate = new_action },
  { .name = "new-item", .activate = new_item_action, .parameter_type = "s" },
  { .name = "choose-new", .activate = choose_new_action },
  { .name = "open-task", .activate = open_task_action, .parameter_type = "s" },
  { .name = "open-follow-up", .activate = open_follow_up_action, .parameter_type = "s" },
  { .name = "open-history", .activate = open_history_action, .parameter_type = "s" },
  { .name = "new-variant", .activate = new_variant_action },
  { .name = "new-from", .activate = new_from_action },
  { .name = "new-from-item", .activate = new_from_item_action, .parameter_type = "s" },
  { .name = "export", .activate = export_action },
  { .name = "import-bundle", .activate = import_bundle_action },
  { .name = "import-lifts", .activate = import_lifts_action },
  { .name = "open-draft", .activate = open_draft_action, .parameter_type = "s" },
  { .name = "page", .activate = page_action, .parameter_type = "s", .state = "'tasks'" },
  { .name = "back", .activate = back_action },
  { .name = "search", .activate = search_action },
  { .name = "survey", .activate = survey_action },
  { .name = "print", .activate = print_action },
  { .name = "print-task", .activate = print_task_action },
  { .name = "save", .activate = save_action },
  { .name = "undo", .activate = undo_action },
  { .name = "redo", .activate = redo_action },
  { .name = "units", .activate = units_action },
  { .name = "default-units", .activate = default_units_action, .parameter_type = "s", .state = "'metric'" },
  { .name = "close", .activate = close_action },
};

void
sy_window_add_actions (SyWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  sy_window_add_compare_actions (self);
}
