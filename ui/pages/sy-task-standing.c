/* SPDX-License-Identifier: MIT */
#include "sy-task-standing.h"

#include "sy-date.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"

#include <string.h>

gboolean
sy_standing_is_past (const char *day)
{
  double days;

  return sy_date_read (day, &days) && days < sy_clock_today ();
}

char *
sy_standing_signed (const SyItemLog *log)
{
  const SyTask *task = log->task;
  g_autofree char *when = sy_stored_day_text (task->signed_when);
  g_autofree char *words = NULL;

  if (task->signed_revision == 0)
    return g_strdup (_("Not signed off"));
  if (task->signed_revision < task->revision)
    return g_strdup_printf (_("Signed off was revision %ld; revision %ld is newer"), (long) task->signed_revision,
                            (long) task->revision);
  /* Translators: revision, name, role, day. */
  words = g_strdup_printf (_("Revision %ld signed off by %s, %s, %s"), (long) task->signed_revision, task->signed_by,
                           task->signed_role, when);
  return task->signed_own ? g_strdup_printf (_("%s – signed by the person who made it"), words)
                          : g_steal_pointer (&words);
}

char *
sy_standing_review (const SyItemLog *log)
{
  const char *due = log->task->review_due, *trigger = log->task->review_trigger;
  const char *because = strcmp (trigger, sy_trigger_id (SY_TRIGGER_ACCIDENT)) == 0 ? _(", after an accident")
                        : strcmp (trigger, sy_trigger_id (SY_TRIGGER_CHANGE)) == 0
                          ? _(", because the work is being changed")
                          : "";

  if (*due == '\0')
    return g_strdup ("");
  return sy_standing_is_past (due) ? g_strdup_printf (_("Review overdue since %s%s"), due, because)
                                   : g_strdup_printf (_("Review due %s%s"), due, because);
}

char *
sy_standing_actions (const SyItemLog *log)
{
  const unsigned long n = (unsigned long) log->task->n_open;
  const char *due = log->task->action_due;
  g_autofree char *open = g_strdup_printf (P_("%lu action open", "%lu actions open", n), n);

  if (n == 0)
    return g_strdup ("");
  if (*due == '\0')
    return g_steal_pointer (&open);
  return sy_standing_is_past (due) ? g_strdup_printf (_("%s, overdue since %s"), open, due)
                                   : g_strdup_printf (_("%s, the first due on %s"), open, due);
}

char *
sy_standing_retired (const SyItemLog *log)
{
  if (!log->task->retired)
    return g_strdup ("");
  for (guint i = log->lines->len; i > 0; i--)
    {
      const SyEvent *event = ((SyRevision *) log->lines->pdata[i - 1])->event;
      g_autofree char *when = sy_stored_day_text (event->claimed);

      if (event->kind == SY_EVENT_RETIREMENT)
        return g_strdup_printf (_("Out of use since %s, by %s: %s"), when, event->by, event->why);
    }
  return g_strdup (_("Out of use"));
}

char *
sy_standing_clash (const SyItemLog *log, gint64 revision)
{
  const SyRevision *at = sy_item_log_find (log, revision);
  const gint64 clash = sy_item_log_clash (log, revision);
  const SyRevision *other = sy_item_log_find (log, clash);

  if (at == NULL || other == NULL)
    return g_strdup ("");
  if (other->event->base == at->event->base)
    return g_strdup_printf (_("Revision %ld was made from revision %ld like revision %ld: both are kept."), (long) revision,
                            (long) at->event->base, (long) clash);
  return g_strdup_printf (_("Revision %ld was made from revision %ld, although revision %ld was there: both are kept."),
                          (long) revision, (long) at->event->base, (long) clash);
}

/* Topics: the line at the head */

static void
append (GString *out, char *words)
{
  if (*words != '\0')
    g_string_append_printf (out, "%s%s", out->len > 0 ? " · " : "", words);
  g_free (words);
}

GtkWidget *
sy_task_standing_new (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_name (box, "standing");
  gtk_widget_add_css_class (box, "sy-standing");
  gtk_widget_set_visible (box, FALSE);
  return box;
}

static GtkWidget *
add_line (GtkWidget *standing, const char *name, const char *words, const char *css_class)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = sy_part_label (words, css_class);

  gtk_widget_set_name (label, name);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (standing), row);
  return row;
}

/* The latest revision that clashes, while that is not settled; 0 for none. */
static gint64
find_clashing (const SyItemLog *log)
{
  for (guint i = log->task->clash != 0 ? log->revisions->len : 0; i > 0; i--)
    if (log->clashes[i - 1] != 0)
      return ((SyRevision *) log->revisions->pdata[i - 1])->event->revision;
  return 0;
}

static void
add_clash (GtkWidget *standing, const SyItemLog *log)
{
  const gint64 latest = find_clashing (log), clash = sy_item_log_clash (log, latest);
  g_autofree char *words = sy_standing_clash (log, latest);
  GtkWidget *row, *button;

  if (*words == '\0')
    return;
  row = add_line (standing, "standing-clash", words, NULL);
  button = sy_button_new (_("Compare _both"), NULL);
  gtk_widget_set_name (button, "standing-compare");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "task.compare");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(xx)", clash, latest);
  gtk_box_append (GTK_BOX (row), button);
  gtk_widget_add_css_class (row, "sy-notice");
}

void
sy_task_standing_set (GtkWidget *standing, const SyItemLog *log)
{
  g_autofree char *retired = log != NULL ? sy_standing_retired (log) : NULL;
  g_autoptr (GString) words = g_string_new (NULL);
  GtkWidget *row, *button;

  sy_part_empty (standing);
  gtk_widget_set_visible (standing, log != NULL);
  if (log == NULL)
    return;
  if (*retired != '\0')
    gtk_widget_add_css_class (add_line (standing, "standing-retired", retired, "sy-strong"), "sy-notice");
  add_clash (standing, log);
  append (words, sy_standing_signed (log));
  append (words, sy_standing_review (log));
  append (words, sy_standing_actions (log));
  row = add_line (standing, "standing-words", words->str, "sy-note");
  button = sy_button_new (_("Foll_ow up"), "task.follow-up");
  gtk_widget_set_name (button, "standing-follow-up");
  gtk_widget_add_css_class (button, "sy-link");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), button);
}
