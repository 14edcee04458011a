/* SPDX-License-Identifier: MIT */
#include "sy-window.h"

#include "sy-alert.h"
#include "sy-draft.h"
#include "sy-i18n.h"
#include "sy-limits-page.h"
#include "sy-matrix-page.h"
#include "sy-name.h"
#include "sy-new-page.h"
#include "sy-register-chooser.h"
#include "sy-registers.h"
#include "sy-settings.h"
#include "sy-survey-page.h"
#include "sy-task-page.h"
#include "sy-tasks-page.h"

#define DEFAULT_WIDTH 1240
#define DEFAULT_HEIGHT 720

struct _SyWindow
{
  GtkApplicationWindow parent_instance;
  SyWorker *worker;
  SyUnits units; /* of new tasks and of the list */

  SyTaskList *list;
  GtkWidget *stack, *lists[SY_N_REGISTERS], *matrix, *survey, *limits; /* made when first looked at */
  SyRegister last;                                            /* list to which a page that is open leads back */
  GtkWidget *choice; /* what can be begun */
  GtkWidget *task; /* NULL: none is open */
  GtkWidget *back, *title, *subtitle;
  gboolean asking;           /* the question about unsaved changes is open */
  gboolean close_when_saved;
};

G_DEFINE_FINAL_TYPE (SyWindow, sy_window, GTK_TYPE_APPLICATION_WINDOW)

/* Topics: pages */

static void
set_enabled (SyWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

/* The list that a page of the window is; FALSE: none. */
static gboolean
find_register (const char *page, SyRegister *which)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (g_str_equal (page, sy_register_page ((SyRegister) i)->page))
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
  else if (g_str_equal (page, "matrix"))
    title = g_strdup (_("What lifts what"));
  else if (g_str_equal (page, "survey"))
    title = g_strdup (_("Measuring sheet"));
  else if (g_str_equal (page, "limits"))
    title = g_strdup (_("Limits in force"));
  else if (g_str_equal (page, "new"))
    title = g_strdup (_("New"));
  else if (find_register (page, &which))
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
static void
need_page (SyWindow *self, const char *name)
{
  SyRegister which;

  if (find_register (name, &which) && self->lists[which] == NULL)
    {
      self->lists[which] = sy_tasks_page_new (self->worker, self->list, which, self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->lists[which], name);
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
  else if (g_str_equal (name, "limits") && self->limits == NULL)
    {
      self->limits = sy_limits_page_new (sy_worker_get_desk (self->worker), self->units);
      gtk_stack_add_named (GTK_STACK (self->stack), self->limits, name);
    }
}

static void
show_page (SyWindow *self, const char *name)
{
  gboolean task = g_str_equal (name, "task");
  gboolean over_list = task || g_str_equal (name, "new");
  GAction *page = g_action_map_lookup_action (G_ACTION_MAP (self), "page");

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), name);
  gtk_widget_set_visible (self->back, over_list);
  set_enabled (self, "back", over_list);
  set_enabled (self, "save", task);
  set_enabled (self, "undo", task);
  set_enabled (self, "redo", task);
  find_register (name, &self->last);
  g_simple_action_set_state (G_SIMPLE_ACTION (page),
                             g_variant_new_string (over_list ? sy_register_page (self->last)->page : name));
  update_title (self);
  gtk_widget_grab_focus (gtk_stack_get_visible_child (GTK_STACK (self->stack)));
}

/* The page of a task goes; what is not saved in it stays as its draft. */
static void
close_task (SyWindow *self)
{
  GtkWidget *task = g_steal_pointer (&self->task);

  if (task == NULL)
    return;
  g_signal_handlers_disconnect_by_data (task, self);
  gtk_stack_remove (GTK_STACK (self->stack), task);
}

static void
refresh_drafts (SyWindow *self)
{
  for (int i = 0; i < SY_N_REGISTERS; i++)
    if (self->lists[i] != NULL)
      sy_tasks_page_refresh_drafts (SY_TASKS_PAGE (self->lists[i]));
}

static void
task_saved_cb (SyTaskPage *page, SyWindow *self)
{
  (void) page;
  refresh_drafts (self);
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

static SyTaskPage *
new_task_page (SyWindow *self, const char *method)
{
  GtkWidget *page = sy_task_page_new (self->worker, method);

  close_task (self);
  self->task = page;
  self->close_when_saved = FALSE;
  g_signal_connect (page, "notify::title", G_CALLBACK (task_notify_cb), self);
  g_signal_connect (page, "notify::subtitle", G_CALLBACK (task_notify_cb), self);
  g_signal_connect (page, "saved", G_CALLBACK (task_saved_cb), self);
  sy_task_page_set_chooser (SY_TASK_PAGE (page), choose_cb, self);
  gtk_stack_add_named (GTK_STACK (self->stack), page, "task");
  return SY_TASK_PAGE (page);
}

/* Topics: actions */

static void
begin_new (SyWindow *self, const char *method)
{
  sy_task_page_begin_new (new_task_page (self, method), self->units, NULL);
  show_page (self, "task");
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
  if (find_register (sy_window_get_page (self), &which) && sy_register_page (which)->method != NULL)
    begin_new (self, sy_register_page (which)->method);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", "new");
}

static void
open_task_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action;
  sy_task_page_open (new_task_page (self, NULL), g_variant_get_string (parameter, NULL));
  show_page (self, "task");
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
      refresh_drafts (self);
      return;
    }
  sy_units_from_id (draft->units, &units);
  if (*draft->task != '\0')
    sy_task_page_open (new_task_page (self, draft->method), draft->task);
  else
    sy_task_page_begin_new (new_task_page (self, draft->method), units, draft->id);
  show_page (self, "task");
}

static void
page_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  const char *name = g_variant_get_string (parameter, NULL);

  (void) action;
  need_page (self, name);
  if (gtk_stack_get_child_by_name (GTK_STACK (self->stack), name) == NULL || g_str_equal (name, "task"))
    return;
  show_page (self, name);
  close_task (self);
  refresh_drafts (self);
}

static void
back_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (user_data), "win.page", "s",
                              sy_register_page (((SyWindow *) user_data)->last)->page);
}

static void
search_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;

  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", sy_register_page (self->last)->page);
  sy_tasks_page_focus_search (SY_TASKS_PAGE (self->lists[self->last]));
}

static void
survey_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  (void) action, (void) parameter;
  gtk_widget_activate_action (GTK_WIDGET (user_data), "win.page", "s", "survey");
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
      close_task (self);
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

static const GActionEntry actions[] = {
  { .name = "new", .activate = new_action },
  { .name = "new-item", .activate = new_item_action, .parameter_type = "s" },
  { .name = "choose-new", .activate = choose_new_action },
  { .name = "open-task", .activate = open_task_action, .parameter_type = "s" },
  { .name = "open-draft", .activate = open_draft_action, .parameter_type = "s" },
  { .name = "page", .activate = page_action, .parameter_type = "s", .state = "'tasks'" },
  { .name = "back", .activate = back_action },
  { .name = "search", .activate = search_action },
  { .name = "survey", .activate = survey_action },
  { .name = "save", .activate = save_action },
  { .name = "undo", .activate = undo_action },
  { .name = "redo", .activate = redo_action },
  { .name = "units", .activate = units_action },
  { .name = "default-units", .activate = default_units_action, .parameter_type = "s", .state = "'metric'" },
  { .name = "close", .activate = close_action },
};

static GtkWidget *
new_header (SyWindow *self)
{
  GtkWidget *header = gtk_header_bar_new ();
  GtkWidget *titles = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *menu = gtk_menu_button_new ();
  g_autoptr (GMenuModel) model = sy_window_menu_model ();

  self->back = gtk_button_new_from_icon_name ("go-previous-symbolic");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->back), "win.back");
  sy_name (self->back, _("Back to the list"));
  gtk_widget_set_tooltip_text (self->back, _("Back to the list"));

  self->title = gtk_label_new (NULL);
  self->subtitle = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->title, "sy-title");
  gtk_widget_add_css_class (self->subtitle, "sy-subtitle");
  gtk_label_set_ellipsize (GTK_LABEL (self->title), PANGO_ELLIPSIZE_END);
  gtk_label_set_ellipsize (GTK_LABEL (self->subtitle), PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (titles, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (titles), self->title);
  gtk_box_append (GTK_BOX (titles), self->subtitle);

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (menu), "open-menu-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (menu), model);
  gtk_menu_button_set_primary (GTK_MENU_BUTTON (menu), TRUE);
  gtk_widget_set_name (menu, "primary-menu");
  sy_name (menu, _("Main menu"));
  gtk_widget_set_tooltip_text (menu, _("Main menu"));

  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), self->back);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (header), titles);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), menu);
  return header;
}

static GtkWidget *
new_rail (void)
{
  const char *const names[] = { "tasks", "dies", "gear", "matrix", "survey", "limits" };
  const char *const labels[] = { _("Tasks"), _("Dies"), _("Gear"), _("What lifts what"),
                                 _("Measuring sheet"), _("Limits") };
  GtkWidget *rail = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  gtk_widget_add_css_class (rail, "sy-rail");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      GtkWidget *button = gtk_toggle_button_new ();
      GtkWidget *label = gtk_label_new (labels[i]);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_button_set_child (GTK_BUTTON (button), label);
      gtk_widget_set_name (button, names[i]);
      sy_name (button, labels[i]);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", names[i]);
      gtk_box_append (GTK_BOX (rail), button);
    }
  return rail;
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  if (!g_action_group_get_action_enabled (G_ACTION_GROUP (widget), "back"))
    return FALSE;
  return gtk_widget_activate_action (widget, "win.back", NULL);
}

/* After everything inside: a popover or a search that is open takes Escape for itself. */
static void
add_escape (SyWindow *self)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_BUBBLE);
  gtk_shortcut_controller_add_shortcut (
    GTK_SHORTCUT_CONTROLLER (controller),
    gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                      gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

static void
build (SyWindow *self)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  int width = DEFAULT_WIDTH, height = DEFAULT_HEIGHT;
  gboolean maximized = FALSE;
  GAction *units = g_action_map_lookup_action (G_ACTION_MAP (self), "default-units");

  self->units = sy_settings_get_units ();
  g_simple_action_set_state (G_SIMPLE_ACTION (units), g_variant_new_string (sy_units_id (self->units)));
  self->list = sy_task_list_new (self->worker);
  self->stack = gtk_stack_new ();
  need_page (self, "tasks");
  gtk_widget_set_hexpand (self->stack, TRUE);

  gtk_window_set_titlebar (GTK_WINDOW (self), new_header (self));
  gtk_box_append (GTK_BOX (body), new_rail ());
  gtk_box_append (GTK_BOX (body), self->stack);
  gtk_window_set_child (GTK_WINDOW (self), body);
  add_escape (self);

  sy_settings_get_size (&width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  show_page (self, "tasks");
}

static void
sy_window_dispose (GObject *object)
{
  SyWindow *self = SY_WINDOW (object);

  close_task (self);
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
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
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
