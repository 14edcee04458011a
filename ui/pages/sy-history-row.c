/* SPDX-License-Identifier: MIT */
#include "sy-history-row.h"

#include "sy-i18n.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-task-standing.h"
#include "sy-verdict-label.h"

/* "2026-03-01 10:00, A. Name, foreman: because" */
static char *
who_and_why (const SyEvent *event)
{
  g_autofree char *when = sy_stored_time_text (event->claimed);
  GString *out = g_string_new (when);

  g_string_append_printf (out, ", %s", event->by);
  if (event->role[0] != '\0')
    g_string_append_printf (out, ", %s", event->role);
  if (event->why[0] != '\0')
    g_string_append_printf (out, ": %s", event->why);
  if (event->origin[0] != '\0')
    g_string_append_printf (out, " · %s", _("taken over from another record"));
  if (event->clock_set)
    g_string_append_printf (out, " · %s", _("the clock was set"));
  return g_string_free (out, FALSE);
}

static GtkWidget *
new_revision (const SyItemLog *log, const SyEvent *event)
{
  SyStoredResult result;
  GtkWidget *button = gtk_button_new ();
  g_autofree char *quiet = who_and_why (event), *clash = sy_standing_clash (log, event->revision);
  g_autofree char *note = *clash != '\0' ? g_strdup_printf ("%s\n%s", quiet, clash) : g_strdup (quiet);
  g_autofree char *id = g_strdup_printf ("revision:%ld", (long) event->revision);
  g_autofree char *index = NULL, *words = NULL, *name = NULL;

  sy_stored_result_read (event, &result);
  index = sy_stored_index_text (&result);
  words = g_strdup_printf (_("Revision %ld: %s%s%s"), (long) event->revision, sy_stored_verdict_text (event, &result),
                           index[0] != '\0' ? " · " : "", index);
  name = g_strdup_printf (_("Open: %s, %s"), words, note);
  gtk_button_set_child (GTK_BUTTON (button), sy_reason_row_new (result.has_verdict ? &result.verdict : NULL, words, note));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_add_css_class (button, "sy-remedy");
  gtk_widget_set_name (button, id);
  sy_stored_result_clear (&result);
  return button;
}

/* What an action was about when it is assigned or closed: its event says only which. */
static const char *
action_of (const SyItemLog *log, const SyEvent *event)
{
  SyDeed deed;
  const char *what = NULL;

  if (event->kind != SY_EVENT_ACTION || !sy_deed_read (event, &deed))
    return NULL;
  for (guint i = 0; deed.step != SY_STEP_OPEN && i < log->actions->len; i++)
    {
      const SyAction *action = log->actions->pdata[i];

      if (g_strcmp0 (action->id, deed.action) == 0)
        what = action->what;
    }
  sy_deed_clear (&deed);
  return what;
}

static char *
deed_words (const SyItemLog *log, const SyEvent *event)
{
  g_autofree char *words = NULL;
  const char *what = action_of (log, event);

  if (event->kind == SY_EVENT_ATTACHMENT)
    return g_strdup_printf (_("File attached: %s"), event->name);
  words = sy_deed_words (event, sy_translate);
  if (what != NULL)
    return g_strdup_printf ("%s (%s)", words, what);
  if (event->kind != SY_EVENT_SIGNATURE && event->kind != SY_EVENT_TOLD)
    return g_steal_pointer (&words);
  if (event->kind == SY_EVENT_SIGNATURE && sy_item_log_is_author (log, event->revision, event->by))
    return g_strdup_printf (_("Revision %ld: %s. Signed by the person who made it."), (long) event->revision, words);
  return g_strdup_printf (_("Revision %ld: %s"), (long) event->revision, words);
}

GtkWidget *
sy_history_row_new (const SyItemLog *log, const SyRevision *line)
{
  g_autofree char *words = NULL, *quiet = NULL, *id = NULL;
  GtkWidget *row;

  if (line->event->kind == SY_EVENT_REVISION)
    return new_revision (log, line->event);
  words = deed_words (log, line->event);
  quiet = who_and_why (line->event);
  id = g_strdup_printf ("line:%" G_GUINT64_FORMAT, line->number);
  row = sy_reason_row_new (NULL, words, quiet);
  gtk_widget_set_name (row, id);
  gtk_widget_add_css_class (row, "sy-deed");
  return row;
}
