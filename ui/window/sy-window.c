/* SPDX-License-Identifier: MIT */
/* One window: which page is shown, and the question about what is not saved when it closes. */
#include "sy-window-private.h"

#include "sy-actions-page.h"
#include "sy-alert.h"
#include "sy-audit-page.h"
#include "sy-compare-page.h"
#include "sy-i18n.h"
#include "sy-improvements-page.h"
#include "sy-journal-page.h"
#include "sy-limits-page.h"
#include "sy-matrix-page.h"
#include "sy-new-page.h"
#include "sy-part-taker.h"
#include "sy-register-chooser.h"
#include "sy-settings.h"
#include "sy-survey-page.h"
#include "sy-tasks-page.h"

#define DEFAULT_WIDTH 1240
#define DEFAULT_HEIGHT 720

G_DEFINE_FINAL_TYPE (SyWindow, sy_window, GTK_TYPE_APPLICATION_WINDOW)

/* Topics: pages */

static void
set_enabled (SyWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

gboolean
sy_window_find_register (const char *page, SyRegister *which)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (sy_register_is_offered ((SyRegister) i) && g_str_equal (page, sy_register_page ((SyRegister) i)->page))
      {
        *which = (SyRegister) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
sy_window_find_kind (const char *item_kind, SyRegister *which)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (g_str_equal (item_kind, sy_register_item_kind ((SyRegister) i)))
      {
        *which = (SyRegister) i;
        return TRUE;
      }
  return FALSE;
}

static void
update_title (SyWindow *self)
{
  SyRegister which;
  const char *page = sy_window_get_page (self);
  g_autofree char *title = NULL, *subtitle = NULL, *whole = NULL;

  if (g_str_equal (page, "task"))
    g_object_get (self->task, "title", &title, "subtitle", &subtitle, NULL);
  else if (g_str_equal (page, "actions"))
    title = g_strdup (_("Actions"));
  else if (g_str_equal (page, "improvements"))
    title = g_strdup (_("Improvements"));
  else if (g_str_equal (page, "journal"))
    title = g_strdup (_("Journal"));
  else if (g_str_equal (page, "register"))
    title = g_strdup (_("Register"));
  else if (g_str_equal (page, "matrix"))
    title = g_strdup (_("What lifts what"));
  else if (g_str_equal (page, "survey"))
    title = g_strdup (_("Measuring sheet"));
  else if (g_str_equal (page, "limits"))
    title = g_strdup (_("Limits in force"));
  else if (g_str_equal (page, "compare"))
    title = g_strdup (_("Comparison"));
  else if (g_str_equal (page, "new"))
    title = g_strdup (_("New"));
  else if (sy_window_find_register (page, &which))
    title = g_strdup (sy_translate (sy_register_page (which)->title));

  gtk_label_set_text (GTK_LABEL (self->title), title != NULL ? title : "");
  gtk_label_set_text (GTK_LABEL (self->subtitle), subtitle != NULL ? subtitle : "");
  gtk_widget_set_visible (self->subtitle, subtitle != NULL && *subtitle != '\0');
  /* Translators: title of the window: what is shown, and the program. */
  whole = g_strdup_printf (_("%s – Steelyard"), title != NULL ? title : "");
  gtk_window_set_title (GTK_WINDOW (self), whole);
}

static void
task_notify_cb (GObject *object, GParamSpec *pspec, SyWindow *self)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (self));

  (void) object, (void) pspec;
  if (!g_str_equal (sy_window_get_page (self), "task"))
    return;
  update_title (self);
  /* The task has been read: until now there was nothing in it to go to. */
  if (focus == NULL || !gtk_widget_is_ancestor (focus, self->task))
    gtk_widget_grab_focus (self->task);
}

/* The pages behind the list are made when they are first looked at, so that the list is there sooner. */
void
sy_window_need_page (SyWindow *self, const char *name)
{
  SyRegister which;

  if (sy_window_find_register (name, &which) && self->lists[which] == NULL)
    {
      self->lists[which] = sy_tasks_page_new (self->worker, self->list, which, self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->lists[which], name);
    }
  else if (g_str_equal (name, "actions") && self->actions == NULL)
    {
      self->actions = sy_actions_page_new (self->worker, self->list);
      gtk_stack_add_named (GTK_STACK (self->stack), self->actions, name);
    }
  else if (g_str_equal (name, "improvements") && self->improvements == NULL)
    {
      self->improvements = sy_improvements_page_new (self->worker);
      gtk_stack_add_named (GTK_STACK (self->stack), self->improvements, name);
    }
  else if (g_str_equal (name, "journal") && self->journal == NULL)
    {
      self->journal = sy_journal_page_new (self->worker, self->list);
      gtk_stack_add_named (GTK_STACK (self->stack), self->journal, name);
    }
  else if (g_str_equal (name, "register") && self->audit == NULL)
    {
      self->audit = sy_audit_page_new (self->worker);
      gtk_stack_add_named (GTK_STACK (self->stack), self->audit, name);
    }
  else if (g_str_equal (name, "matrix") && self->matrix == NULL)
    {
      self->matrix = sy_matrix_page_new (self->worker, self->list, self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->matrix, name);
    }
  else if (g_str_equal (name, "survey") && self->survey == NULL)
    {
      self->survey = sy_survey_page_new (self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->survey, name);
    }
  else if (g_str_equal (name, "new") && self->choice == NULL)
    {
      self->choice = sy_new_page_new ();
      gtk_stack_add_named (GTK_STACK (self->stack), self->choice, name);
    }
  else if (g_str_equal (name, "compare") && self->compare == NULL)
    {
      self->compare = sy_compare_page_new (self->worker, self->list, self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->compare, name);
    }
  else if (g_str_equal (name, "limits") && self->limits == NULL)
    {
      self->limits = sy_limits_page_new (sy_worker_get_desk (self->worker), self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->limits, name);
    }
}

void
sy_window_show_page (SyWindow *self, const char *name)
{
  gboolean task = g_str_equal (name, "task");
  gboolean over_list = task || g_str_equal (name, "new") || g_str_equal (name, "compare");
  GAction *page = g_action_map_lookup_action (G_ACTION_MAP (self), "page");

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), name);
  gtk_widget_set_visible (self->back, over_list);
  set_enabled (self, "back", over_list);
  set_enabled (self, "save", task);
  set_enabled (self, "undo", task);
  set_enabled (self, "redo", task);
  set_enabled (self, "new-variant", task);
  set_enabled (self, "print-task", task);
  gtk_widget_set_visible (self->print, task);
  sy_window_find_register (name, &self->last);
  if (!over_list)
    self->from = g_intern_string (name);
  g_simple_action_set_state (G_SIMPLE_ACTION (page), g_variant_new_string (self->from));
  update_title (self);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (GTK_STACK (self->stack)));
}

void
sy_window_close_task (SyWindow *self)
{
  GtkWidget *task = g_steal_pointer (&self->task);

  g_clear_pointer (&self->item, g_free);
  if (task == NULL)
    return;
  g_signal_handlers_disconnect_by_data (task, self);
  gtk_stack_remove (GTK_STACK (self->stack), task);
}

void
sy_window_refresh_drafts (SyWindow *self)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (self->lists[i] != NULL)
      sy_tasks_page_refresh_drafts (SY_TASKS_PAGE (self->lists[i]));
}

static void
task_saved_cb (SyTaskPage *page, SyWindow *self)
{
  (void) page;
  sy_window_refresh_drafts (self);
  if (self->close_when_saved)
    gtk_window_close (GTK_WINDOW (self));
}

/* What the page asks for is taken from the register in a window over this one. */
static void
choose_cb (SyTaskPage *page, const char *item_kind, gpointer user_data)
{
  SyWindow *self = user_data;
  SyRegister which = g_str_equal (item_kind, SY_ITEM_DIE) ? SY_REGISTER_DIES : SY_REGISTER_GEAR;

  gtk_window_present (GTK_WINDOW (
    sy_register_chooser_new (GTK_WINDOW (self), self->worker, self->list, which, sy_task_page_get_form (page))));
}

SyTaskPage *
sy_window_new_task_page (SyWindow *self, const char *method)
{
  GtkWidget *page = sy_task_page_new (self->worker, method);

  sy_window_close_task (self);
  self->task = page;
  self->close_when_saved = FALSE;
  g_signal_connect (page, "notify::title", G_CALLBACK (task_notify_cb), self);
  g_signal_connect (page, "notify::subtitle", G_CALLBACK (task_notify_cb), self);
  g_signal_connect (page, "saved", G_CALLBACK (task_saved_cb), self);
  sy_task_page_set_chooser (SY_TASK_PAGE (page), choose_cb, self);
  gtk_stack_add_named (GTK_STACK (self->stack), page, "task");
  return SY_TASK_PAGE (page);
}

/* Topics: closing */

enum
{
  ANSWER_DISCARD,
  ANSWER_KEEP,
  ANSWER_SAVE,
};

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  GWeakRef *asked = user_data;
  g_autoptr (SyWindow) self = g_weak_ref_get (asked);
  int answer = sy_alert_finish (result);

  (void) source;
  g_weak_ref_clear (asked);
  g_free (asked);
  if (self == NULL)
    return;
  self->asking = FALSE;
  switch (answer)
    {
    case ANSWER_DISCARD:
      if (self->task != NULL)
        sy_task_page_discard (SY_TASK_PAGE (self->task));
      gtk_window_destroy (GTK_WINDOW (self));
      break;
    case ANSWER_KEEP:
      sy_window_close_task (self);
      gtk_window_destroy (GTK_WINDOW (self));
      break;
    case ANSWER_SAVE:
      /* The page asks by whom and why; the window closes when that is done. */
      self->close_when_saved = TRUE;
      if (self->task != NULL)
        sy_task_page_save (SY_TASK_PAGE (self->task));
      break;
    default:
      break;
    }
}

static void
keep_size (SyWindow *self)
{
  g_autoptr (GError) error = NULL;
  int width, height;

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  if (!sy_settings_set_size (width, height, gtk_window_is_maximized (GTK_WINDOW (self)), &error))
    g_message ("The size of the window could not be kept: %s", error->message);
}

static gboolean
sy_window_close_request (GtkWindow *window)
{
  SyWindow *self = SY_WINDOW (window);
  const char *const answers[] = { _("_Discard"), _("_Keep as a draft"), _("_Save…"), NULL };
  g_autofree char *question = NULL, *title = NULL;
  GWeakRef *asked;

  if (self->asking)
    return TRUE;
  keep_size (self);
  if (self->task == NULL || !sy_task_page_get_dirty (SY_TASK_PAGE (self->task)))
    return GTK_WINDOW_CLASS (sy_window_parent_class)->close_request (window);

  self->asking = TRUE;
  self->close_when_saved = FALSE;
  g_object_get (self->task, "title", &title, NULL);
  question = g_strdup_printf (_("Save the changes to “%s”?"), title != NULL ? title : "");
  asked = g_new0 (GWeakRef, 1);
  g_weak_ref_init (asked, self);
  sy_alert_async (window, question,
                  _("A draft is offered again the next time. What is discarded cannot be brought back."), answers,
                  ANSWER_KEEP, ANSWER_DISCARD, NULL, answered_cb, asked);
  return TRUE;
}

/* Topics: building */

static void
build (SyWindow *self)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  int width = DEFAULT_WIDTH, height = DEFAULT_HEIGHT;
  gboolean maximized = FALSE;
  GAction *units = g_action_map_lookup_action (G_ACTION_MAP (self), "default-units");
  const SyPolicy *policy = sy_desk_policy (sy_worker_get_desk (self->worker));

  self->units = sy_settings_get_units (policy->has_region ? &policy->region : NULL);
  g_simple_action_set_state (G_SIMPLE_ACTION (units), g_variant_new_string (sy_units_id (self->units)));
  self->list = sy_task_list_new (self->worker);
  sy_part_taker_offer (GTK_WINDOW (self), self->worker, self->list);
  self->stack = gtk_stack_new ();
  sy_window_need_page (self, "tasks");
  gtk_widget_set_hexpand (self->stack, TRUE);

  gtk_window_set_titlebar (GTK_WINDOW (self), sy_window_new_header (self));
  gtk_box_append (GTK_BOX (body), sy_window_new_rail ());
  gtk_box_append (GTK_BOX (body), self->stack);
  gtk_window_set_child (GTK_WINDOW (self), body);
  sy_window_add_escape (self);

  sy_settings_get_size (&width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  sy_window_show_page (self, "tasks");
}

static void
sy_window_dispose (GObject *object)
{
  SyWindow *self = SY_WINDOW (object);

  sy_window_close_task (self);
  if (self->worker != NULL)
    sy_worker_stop (self->worker);
  g_clear_object (&self->list);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_window_parent_class)->dispose (object);
}

static void
sy_window_class_init (SyWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = sy_window_close_request;
}

static void
sy_window_init (SyWindow *self)
{
  sy_window_add_actions (self);
}

GtkWidget *
sy_window_new (GtkApplication *application, SyWorker *worker)
{
  SyWindow *self = g_object_new (SY_TYPE_WINDOW, "application", application, NULL);

  self->worker = g_object_ref (worker);
  build (self);
  return GTK_WIDGET (self);
}

SyWorker *
sy_window_get_worker (SyWindow *self)
{
  g_return_val_if_fail (SY_IS_WINDOW (self), NULL);
  return self->worker;
}

const char *
sy_window_get_page (SyWindow *self)
{
  g_return_val_if_fail (SY_IS_WINDOW (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->stack));
}

GtkWidget *
sy_window_get_task_page (SyWindow *self)
{
  g_return_val_if_fail (SY_IS_WINDOW (self), NULL);
  return self->task;
}
