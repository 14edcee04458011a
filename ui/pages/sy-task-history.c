/* SPDX-License-Identifier: MIT */
#include "sy-task-history.h"

#include "sy-difference-table.h"
#include "sy-history-row.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-seal.h"
#include "sy-task-compare.h"
#include "sy-task-parts.h"
#include "sy-task-stored.h"
#include "sy-timeline-view.h"

typedef enum
{
  SHOW_LIST,
  SHOW_STORED,
  SHOW_JUDGED,
  SHOW_COMPARED,
} Shown;

struct _SyTaskHistory
{
  GtkBox parent_instance;

  SyWorker *worker;
  SyItemLog *log;     /* NULL: not saved yet                      */
  Shown shown;
  gint64 revision;    /* STORED, JUDGED; COMPARED: the one before */
  gint64 other;       /* COMPARED                                 */
  GtkWidget *content; /* made anew for what is shown              */
  GtkWidget *seal;    /* stays                                    */
};

enum
{
  REVISE,
  JUDGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskHistory, sy_task_history, GTK_TYPE_BOX)

static void rebuild (SyTaskHistory *self, gboolean turned);

static void
turn_to (SyTaskHistory *self, Shown shown, gint64 revision, gint64 other)
{
  self->shown = shown;
  self->revision = revision;
  self->other = other;
  rebuild (self, TRUE);
}

/* Callbacks */

static void
timeline_cb (SyTimelineView *timeline G_GNUC_UNUSED, gint64 revision, SyTaskHistory *self)
{
  turn_to (self, SHOW_STORED, revision, 0);
}

static void
row_cb (GtkButton *row, SyTaskHistory *self)
{
  turn_to (self, SHOW_STORED, *(gint64 *) g_object_get_data (G_OBJECT (row), "sy-revision"), 0);
}

static void
back_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  turn_to (self, SHOW_LIST, 0, 0);
}

static void
back_to_stored_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  turn_to (self, SHOW_STORED, self->revision, 0);
}

static void
compare_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  sy_task_history_compare (self, self->revision, 0);
}

static void
judge_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  turn_to (self, SHOW_JUDGED, self->revision, 0);
}

static void
revise_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  gint64 revision = self->revision;

  turn_to (self, SHOW_LIST, 0, 0);
  g_signal_emit (self, signals[REVISE], 0, revision);
}

static void
keep_judged_cb (GtkButton *button G_GNUC_UNUSED, SyTaskHistory *self)
{
  gint64 revision = self->revision;

  turn_to (self, SHOW_LIST, 0, 0);
  g_signal_emit (self, signals[JUDGED], 0, revision);
}

/* Parts */

static GtkWidget *
add_buttons (SyTaskHistory *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_box_append (GTK_BOX (self->content), buttons);
  return buttons;
}

static GtkWidget *
add_button (SyTaskHistory *self, GtkWidget *buttons, const char *label, const char *name, GCallback callback)
{
  GtkWidget *button = sy_button_new (label, NULL);

  gtk_widget_set_name (button, name);
  g_signal_connect (button, "clicked", callback, self);
  gtk_box_append (GTK_BOX (buttons), button);
  return button;
}

/* @revision: 0 the newest. */
static void
add_compare_other (SyTaskHistory *self, GtkWidget *buttons, gint64 revision)
{
  GtkWidget *button = sy_button_new (_("Compare with an_other…"), "win.compare-with");

  gtk_widget_set_name (button, "history-compare-other");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", self->log->task->id, revision);
  gtk_box_append (GTK_BOX (buttons), button);
}

static void
add_variant (GtkWidget *buttons)
{
  GtkWidget *button = sy_button_new (_("New _variant of this…"), "win.new-variant");

  gtk_widget_set_name (button, "history-variant");
  gtk_widget_set_tooltip_text (button, _("A copy that is not saved yet: change the pace or the height, and compare"));
  gtk_box_append (GTK_BOX (buttons), button);
}

static gboolean
has_two (SyTaskHistory *self)
{
  return self->log != NULL && self->log->revisions->len > 1;
}

/* What is shown */

static void
show_list (SyTaskHistory *self)
{
  GtkBox *content = GTK_BOX (self->content);
  GtkWidget *timeline, *buttons;

  if (self->log == NULL)
    {
      gtk_box_append (content, sy_part_heading (_("History")));
      gtk_box_append (content, sy_part_label (_("Nothing has been saved yet. Every save adds a revision here and keeps the "
                                                "ones before it."),
                                              "sy-quiet"));
      return;
    }
  timeline = sy_timeline_view_new ();
  sy_timeline_view_set (SY_TIMELINE_VIEW (timeline), self->log, sy_worker_get_desk (self->worker));
  g_signal_connect (timeline, "open", G_CALLBACK (timeline_cb), self);
  gtk_box_append (content, timeline);
  buttons = add_buttons (self);
  if (has_two (self))
    add_button (self, buttons, _("_Compare two revisions…"), "history-compare", G_CALLBACK (compare_cb));
  add_compare_other (self, buttons, 0);
  add_variant (add_buttons (self));
  gtk_box_append (content, sy_part_heading (_("What happened, newest first")));
  for (guint i = self->log->lines->len; i > 0; i--)
    {
      const SyRevision *line = self->log->lines->pdata[i - 1];
      GtkWidget *row = sy_history_row_new (self->log, line);

      if (GTK_IS_BUTTON (row))
        {
          g_object_set_data_full (G_OBJECT (row), "sy-revision",
                                  g_memdup2 (&line->event->revision, sizeof line->event->revision), g_free);
          g_signal_connect (row, "clicked", G_CALLBACK (row_cb), self);
        }
      gtk_box_append (content, row);
    }
}

static GtkWidget *
show_stored (SyTaskHistory *self, const SyRevision *revision)
{
  GtkWidget *first = add_buttons (self), *second = add_buttons (self);
  GtkWidget *back = add_button (self, first, _("_Back to the history"), "history-back", G_CALLBACK (back_cb));

  if (has_two (self))
    add_button (self, first, _("_Compare with…"), "history-compare-with", G_CALLBACK (compare_cb));
  add_compare_other (self, second, revision->event->revision);
  add_button (self, second, _("_Make a new revision from this"), "history-revise", G_CALLBACK (revise_cb));
  if (sy_method_find (revision->event->method) != NULL)
    add_button (self, second, _("_Judge these facts again"), "history-judge", G_CALLBACK (judge_cb));
  gtk_box_append (GTK_BOX (self->content),
                  sy_task_stored_new (sy_worker_get_desk (self->worker), revision,
                                      sy_item_log_find (self->log, revision->event->base)));
  return back;
}

static GtkWidget *
show_judged (SyTaskHistory *self, const SyRevision *revision)
{
  GtkWidget *buttons = add_buttons (self);
  GtkWidget *back = add_button (self, buttons, _("_Back to it as it was stored"), "judged-back", G_CALLBACK (back_to_stored_cb));
  g_autoptr (GError) error = NULL;
  g_autoptr (SyEvent) judged
      = sy_item_log_judge (self->log, revision->event->revision, sy_worker_get_desk (self->worker), &error);
  g_autofree char *words = NULL, *screening = sy_words_screening (sy_translate);

  if (judged == NULL)
    {
      words = g_strdup_printf (_("These facts can no longer be judged: %s"), error->message);
      gtk_box_append (GTK_BOX (self->content), sy_part_label (words, "sy-problem"));
    }
  else
    {
      GtkWidget *notice;

      add_button (self, buttons, _("_Save as a new revision…"), "judged-save", G_CALLBACK (keep_judged_cb));
      words = g_strdup_printf (_("The facts of revision %ld judged today: method %s edition %ld, policy %s, program %s. What "
                                 "was stored stays as it is; nothing is saved by this."),
                               (long) revision->event->revision, judged->method, (long) judged->edition, judged->policy,
                               judged->program);
      notice = sy_part_label (words, "sy-notice");
      gtk_widget_set_name (notice, "judged-notice");
      gtk_box_append (GTK_BOX (self->content), notice);
      gtk_box_append (GTK_BOX (self->content), sy_difference_table_new_judged (revision->event, judged));
    }
  gtk_box_append (GTK_BOX (self->content), sy_part_label (screening, "sy-note"));
  return back;
}

static GtkWidget *
show_compared (SyTaskHistory *self)
{
  GtkWidget *back = add_button (self, add_buttons (self), _("_Back to the history"), "history-back", G_CALLBACK (back_cb));

  gtk_box_append (GTK_BOX (self->content), sy_part_heading (_("Two revisions side by side")));
  gtk_box_append (GTK_BOX (self->content), sy_task_compare_new (self->log, self->revision, self->other));
  return back;
}

/* @turned: the person turned to it, and the keyboard follows. */
static void
rebuild (SyTaskHistory *self, gboolean turned)
{
  const SyRevision *revision = sy_item_log_find (self->log, self->revision);
  gboolean had_focus = gtk_widget_get_focus_child (self->content) != NULL;
  GtkWidget *first = NULL;

  sy_part_empty (self->content);
  if (self->shown != SHOW_LIST && revision == NULL)
    self->shown = SHOW_LIST;
  gtk_widget_set_visible (self->seal, self->shown == SHOW_LIST);
  switch (self->shown)
    {
    case SHOW_LIST:
      show_list (self);
      break;
    case SHOW_STORED:
      first = show_stored (self, revision);
      break;
    case SHOW_JUDGED:
      first = show_judged (self, revision);
      break;
    case SHOW_COMPARED:
      first = show_compared (self);
      break;
    }
  if (first != NULL && (turned || had_focus))
    gtk_widget_grab_focus (first);
  else if (had_focus)
    gtk_widget_child_focus (self->content, GTK_DIR_TAB_FORWARD);
}

static void
sy_task_history_dispose (GObject *object)
{
  SyTaskHistory *self = SY_TASK_HISTORY (object);

  g_clear_pointer (&self->log, sy_item_log_unref);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_task_history_parent_class)->dispose (object);
}

static void
sy_task_history_class_init (SyTaskHistoryClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_history_dispose;
  signals[REVISE] = g_signal_new ("revise", SY_TYPE_TASK_HISTORY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[JUDGED] = g_signal_new ("judged", SY_TYPE_TASK_HISTORY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
sy_task_history_init (SyTaskHistory *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self), self->content);
}

GtkWidget *
sy_task_history_new (SyWorker *worker)
{
  SyTaskHistory *self = g_object_new (SY_TYPE_TASK_HISTORY, NULL);

  self->worker = g_object_ref (worker);
  self->seal = sy_seal_new (worker);
  gtk_box_append (GTK_BOX (self), self->seal);
  rebuild (self, FALSE);
  return GTK_WIDGET (self);
}

void
sy_task_history_set (SyTaskHistory *self, SyItemLog *log)
{
  g_return_if_fail (SY_IS_TASK_HISTORY (self));
  if (log != NULL)
    sy_item_log_ref (log);
  g_clear_pointer (&self->log, sy_item_log_unref);
  self->log = log;
  /* What was chosen to be compared stays chosen: revisions do not change. */
  if (self->shown != SHOW_COMPARED || sy_item_log_find (log, MAX (self->revision, self->other)) == NULL)
    rebuild (self, FALSE);
}

void
sy_task_history_show (SyTaskHistory *self, gint64 revision)
{
  g_return_if_fail (SY_IS_TASK_HISTORY (self));
  turn_to (self, revision == 0 ? SHOW_LIST : SHOW_STORED, revision, 0);
}

void
sy_task_history_compare (SyTaskHistory *self, gint64 before, gint64 after)
{
  const SyRevision *latest = sy_item_log_latest (self->log);

  g_return_if_fail (SY_IS_TASK_HISTORY (self));
  if (!has_two (self))
    return;
  if (after == 0)
    after = latest->event->revision;
  /* Of the latest by itself: what it was made from. */
  if (before == 0 || before == after)
    before = latest->event->base > 0 ? latest->event->base : 1;
  turn_to (self, SHOW_COMPARED, before, after);
}

gint64
sy_task_history_get_shown (SyTaskHistory *self)
{
  g_return_val_if_fail (SY_IS_TASK_HISTORY (self), 0);
  return self->shown == SHOW_STORED || self->shown == SHOW_JUDGED ? self->revision : 0;
}
