/* SPDX-License-Identifier: MIT */
#include "sy-task-page.h"

#include "sy-i18n.h"
#include "sy-part-taker.h"
#include "sy-set-table-window.h"
#include "sy-task-kinds.h"
#include "sy-task-page-private.h"
#include "sy-task-parts.h"

#include <string.h>

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
  return self->form != NULL && (self->judged || sy_form_is_dirty (self->form) || sy_task_page_name_is_changed (self));
}

static char *
dup_title (SyTaskPage *self)
{
  g_autofree char *name = self->facts != NULL
                              ? g_strstrip (g_strdup (sy_task_form_get_name (self->facts)))
                              : g_strdup ("");

  if (name[0] != '\0' || self->form == NULL)
    return g_steal_pointer (&name);
  return g_strdup (sy_translate (sy_task_kind (sy_form_get_method (self->form))->new_title));
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
    sy_task_saver_say (self->saver, SY_SAVER_BLOCKED, _("It has no name yet."), "name");
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
  sy_item_files_set_item (self->files, self->task_id);
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

void
sy_task_page_edited (SyTaskPage *self)
{
  if (self->loading)
    return;
  g_clear_pointer (&self->trouble_words, g_free);
  sy_task_page_schedule_draft (self);
  sy_task_page_refresh (self);
}

static void
form_changed_cb (SyForm *form, SyTaskPage *self)
{
  if (!sy_form_tells_only_result (form))
    sy_task_page_edited (self);
  else if (!self->loading)
    sy_task_page_refresh (self);
}

static void
worker_changed_cb (SyWorker *worker G_GNUC_UNUSED, SyTaskPage *self)
{
  sy_task_page_reload_history (self);
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

static void
follow_up_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  sy_task_page_show_tab (SY_TASK_PAGE (widget), "follow-up");
}

/* (ss): what it is about, an id or ""; what is to be done. */
static void
open_action_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyTaskPage *self = SY_TASK_PAGE (widget);
  const char *about, *what;

  g_variant_get (parameter, "(&s&s)", &about, &what);
  sy_task_page_show_tab (self, "follow-up");
  sy_follow_up_begin_action (self->follow, about, what);
}

/* (s): a long list of the form. */
static void
list_from_file_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *window = sy_set_table_window_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, SY_TASK_PAGE (widget)->form,
                                               g_variant_get_string (parameter, NULL));

  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_present (GTK_WINDOW (window));
}

/* (s): path of facts inside facts. */
static void
open_part_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  sy_task_page_open_part (SY_TASK_PAGE (widget), g_variant_get_string (parameter, NULL));
}

/* (ss): path of facts inside facts, kind of the item to take them from. */
static void
take_part_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  const char *path, *kind;

  g_variant_get (parameter, "(&s&s)", &path, &kind);
  sy_part_taker_ask (widget, SY_TASK_PAGE (widget)->form, path, kind);
}

/* (xx): two revisions. */
static void
compare_action (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  SyTaskPage *self = SY_TASK_PAGE (widget);
  gint64 before, after;

  g_variant_get (parameter, "(xx)", &before, &after);
  sy_task_page_show_tab (self, "history");
  sy_task_history_compare (self->history, before, after);
}

/* The method */

static void
drop_task (SyTaskPage *self)
{
  if (self->form == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->form, self);
  sy_task_page_unbuild_task (self);
  g_clear_object (&self->form);
}

gboolean
sy_task_page_set_method (SyTaskPage *self, const char *method)
{
  if (sy_method_find (method) == NULL)
    return FALSE;
  if (self->form != NULL && strcmp (sy_form_get_method (self->form)->id, method) == 0)
    return TRUE;
  drop_task (self);
  self->form = sy_form_new (sy_worker_get_desk (self->worker), method, SY_UNITS_METRIC);
  sy_form_set_background (self->form, TRUE);
  sy_task_page_build_task (self);
  g_signal_connect (self->form, "changed", G_CALLBACK (form_changed_cb), self);
  return TRUE;
}

const SyMethod *
sy_task_page_get_method (SyTaskPage *self)
{
  g_return_val_if_fail (SY_IS_TASK_PAGE (self), NULL);
  return sy_form_get_method (self->form);
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
sy_task_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sy_task_page_parent_class)->map (widget);
  sy_task_page_watch (SY_TASK_PAGE (widget), TRUE);
}

static void
sy_task_page_unmap (GtkWidget *widget)
{
  sy_task_page_watch (SY_TASK_PAGE (widget), FALSE);
  GTK_WIDGET_CLASS (sy_task_page_parent_class)->unmap (widget);
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
  sy_task_page_watch (self, FALSE);
  g_clear_pointer (&self->log, sy_item_log_unref);
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
  widget_class->map = sy_task_page_map;
  widget_class->unmap = sy_task_page_unmap;
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_SUBTITLE] = g_param_spec_string ("subtitle", NULL, NULL, NULL, flags);
  props[PROP_DIRTY] = g_param_spec_boolean ("dirty", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SAVED] = g_signal_new ("saved", SY_TYPE_TASK_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "task.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "task.print", NULL, sy_task_page_print);
  gtk_widget_class_install_action (widget_class, "task.undo", NULL, undo_action);
  gtk_widget_class_install_action (widget_class, "task.redo", NULL, redo_action);
  gtk_widget_class_install_action (widget_class, "task.units", NULL, units_action);
  gtk_widget_class_install_action (widget_class, "task.discard", NULL, discard_action);
  gtk_widget_class_install_action (widget_class, "task.follow-up", NULL, follow_up_action);
  gtk_widget_class_install_action (widget_class, "task.open-action", "(ss)", open_action_action);
  gtk_widget_class_install_action (widget_class, "task.compare", "(xx)", compare_action);
  gtk_widget_class_install_action (widget_class, "task.list-from-file", "s", list_from_file_action);
  gtk_widget_class_install_action (widget_class, "task.open-part", "s", open_part_action);
  gtk_widget_class_install_action (widget_class, "task.take-part", "(ss)", take_part_action);
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
sy_task_page_new (SyWorker *worker, const char *method)
{
  SyTaskPage *self = g_object_new (SY_TYPE_TASK_PAGE, NULL);

  self->worker = g_object_ref (worker);
  sy_task_page_build (self);
  if (method == NULL || !sy_task_page_set_method (self, method))
    sy_task_page_set_method (self, "lift");
  g_signal_connect (worker, "changed", G_CALLBACK (worker_changed_cb), self);
  sy_task_page_refresh (self);
  return GTK_WIDGET (self);
}

SyForm *
sy_task_page_get_form (SyTaskPage *self)
{
  g_return_val_if_fail (SY_IS_TASK_PAGE (self), NULL);
  return self->form;
}

void
sy_task_page_set_chooser (SyTaskPage *self, SyTaskChoose choose, gpointer user_data)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self));
  self->choose = choose;
  self->choose_data = user_data;
  sy_task_form_offer_register (self->facts, choose != NULL);
}

void
sy_task_page_take (SyTaskPage *self, const char *const *paths, const char *const *texts, gsize n)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_form_set_many (self->form, paths, texts, n);
}

void
sy_task_page_focus_fact (SyTaskPage *self, const char *path)
{
  g_return_if_fail (SY_IS_TASK_PAGE (self));
  sy_task_page_close_part (self);
  sy_task_form_focus (self->facts, path);
}
