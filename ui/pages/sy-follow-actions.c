/* SPDX-License-Identifier: MIT */
#include "sy-follow-actions.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-task-standing.h"

#include <string.h>

enum
{
  FORM_OPEN,
  FORM_ASSIGN,
  FORM_CLOSE,
  N_FORMS
};

struct _SyFollowActions
{
  GtkBox parent_instance;

  SyItemLog *log;
  GtkWidget *rows;
  SyDeedForm *forms[N_FORMS + 1];
  char *about;   /* of the action that is being opened */
  char *subject; /* id of the action that is being assigned or closed */
};

G_DEFINE_FINAL_TYPE (SyFollowActions, sy_follow_actions, GTK_TYPE_BOX)

/* Topics: what was typed */

static SyDeedAsk *
new_ask (SyFollowActions *self, SyDeedForm *form, SyDeedStep step)
{
  g_autofree char *by = sy_deed_form_dup (form, "by"), *role = sy_deed_form_dup (form, "role");
  g_autofree char *why = sy_deed_form_dup (form, "why");
  SyDeedAsk *ask = sy_deed_ask_new (SY_EVENT_ACTION, self->log->task->id, by, role, why);

  ask->deed.step = step;
  return ask;
}

static gboolean
day_is_fine (SyDeedForm *form)
{
  g_autofree char *due = sy_deed_form_dup (form, "due");

  if (sy_deed_day_is_fine (due))
    return TRUE;
  sy_deed_form_say (form, _("A day is written like 2026-12-01."), TRUE);
  gtk_widget_grab_focus (sy_deed_form_get_entry (form, "due"));
  return FALSE;
}

static SyDeedAsk *
make_open (SyDeedForm *form, gpointer data)
{
  SyFollowActions *self = data;
  SyDeedAsk *ask;

  if (!day_is_fine (form))
    return NULL;
  ask = new_ask (self, form, SY_STEP_OPEN);
  ask->deed.what = sy_deed_form_dup (form, "what");
  ask->deed.about = g_strdup (self->about);
  ask->deed.assigned = sy_deed_form_dup (form, "assigned");
  ask->deed.due = sy_deed_form_dup (form, "due");
  return ask;
}

static SyDeedAsk *
make_assign (SyDeedForm *form, gpointer data)
{
  SyFollowActions *self = data;
  g_autofree char *assigned = sy_deed_form_dup (form, "assigned"), *due = sy_deed_form_dup (form, "due");
  SyDeedAsk *ask;

  if (!day_is_fine (form))
    return NULL;
  if (*assigned == '\0' && *due == '\0')
    {
      sy_deed_form_say (form, _("Say to whom, or until when."), TRUE);
      return NULL;
    }
  ask = new_ask (self, form, SY_STEP_ASSIGN);
  ask->deed.action = g_strdup (self->subject);
  ask->deed.assigned = g_steal_pointer (&assigned);
  ask->deed.due = g_steal_pointer (&due);
  return ask;
}

static SyDeedAsk *
make_close (SyDeedForm *form, gpointer data)
{
  SyFollowActions *self = data;
  SyDeedAsk *ask = new_ask (self, form, SY_STEP_CLOSE);

  ask->deed.action = g_strdup (self->subject);
  ask->deed.evidence = sy_deed_form_dup (form, "evidence");
  return ask;
}

/* Topics: the list */

static const SyAction *
find_action (SyFollowActions *self, const char *id)
{
  for (guint i = 0; self->log != NULL && i < self->log->actions->len; i++)
    if (strcmp (((SyAction *) self->log->actions->pdata[i])->id, id) == 0)
      return self->log->actions->pdata[i];
  return NULL;
}

static void
turn_to (SyFollowActions *self, int form, const char *id)
{
  const SyAction *action = find_action (self, id);

  if (action == NULL)
    return;
  g_free (self->subject);
  self->subject = g_strdup (id);
  sy_deed_form_set_subject (self->forms[form], action->what);
  if (form == FORM_ASSIGN)
    {
      sy_deed_form_set (self->forms[form], "assigned", action->assigned);
      sy_deed_form_set (self->forms[form], "due", action->due);
    }
  sy_deed_form_open (self->forms[form]);
}

static void
assign_cb (GtkButton *button, SyFollowActions *self)
{
  turn_to (self, FORM_ASSIGN, g_object_get_data (G_OBJECT (button), "sy-action"));
}

static void
close_cb (GtkButton *button, SyFollowActions *self)
{
  turn_to (self, FORM_CLOSE, g_object_get_data (G_OBJECT (button), "sy-action"));
}

static void
add_button (SyFollowActions *self, GtkWidget *row, const SyAction *action, const char *label, const char *name,
            GCallback callback)
{
  GtkWidget *button = sy_button_new (label, NULL);
  g_autofree char *id = g_strdup_printf ("%s:%s", name, action->id);
  g_autofree char *spoken
      = g_strdup_printf ("%s %s", gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (button))), action->what);

  gtk_widget_set_name (button, id);
  sy_name (button, spoken);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  g_object_set_data_full (G_OBJECT (button), "sy-action", g_strdup (action->id), g_free);
  g_signal_connect (button, "clicked", callback, self);
  gtk_box_append (GTK_BOX (row), button);
}

/* Who is to do it until when, or how it ended. */
static char *
note_of (const SyAction *action)
{
  g_autofree char *opened = sy_stored_time_text (action->opened_when);
  g_autofree char *closed = sy_stored_time_text (action->closed_when);
  const char *assigned = *action->assigned != '\0' ? action->assigned : _("nobody yet");

  if (!action->open)
    return g_strdup_printf (_("Closed on %s by %s: %s"), closed, action->closed_by, action->evidence);
  if (*action->due == '\0')
    return g_strdup_printf (_("For %s, no day set. Opened on %s by %s."), assigned, opened, action->opened_by);
  if (sy_standing_is_past (action->due))
    return g_strdup_printf (_("For %s, overdue since %s. Opened on %s by %s."), assigned, action->due, opened,
                            action->opened_by);
  return g_strdup_printf (_("For %s, due on %s. Opened on %s by %s."), assigned, action->due, opened, action->opened_by);
}

static void
add_row (SyFollowActions *self, const SyAction *action)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *note = note_of (action);
  g_autofree char *id = g_strdup_printf ("action:%s", action->id);

  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (texts), sy_part_label (action->what, action->open ? NULL : "sy-quiet"));
  gtk_box_append (GTK_BOX (texts), sy_part_label (note, "sy-note"));
  gtk_box_append (GTK_BOX (row), texts);
  if (action->open)
    {
      add_button (self, row, action, _("_Assign…"), "assign", G_CALLBACK (assign_cb));
      add_button (self, row, action, _("_Close…"), "close", G_CALLBACK (close_cb));
    }
  gtk_widget_set_name (row, id);
  gtk_widget_add_css_class (row, "sy-row");
  gtk_box_append (GTK_BOX (self->rows), row);
}

void
sy_follow_actions_set (SyFollowActions *self, SyItemLog *log)
{
  g_return_if_fail (SY_IS_FOLLOW_ACTIONS (self));
  g_clear_pointer (&self->log, sy_item_log_unref);
  self->log = sy_item_log_ref (log);
  sy_part_empty (self->rows);
  if (log->actions->len == 0)
    gtk_box_append (GTK_BOX (self->rows),
                    sy_part_label (_("None yet. An action says what is to be done, by whom and until when; it is closed with "
                                     "what shows that it was done."),
                                   "sy-quiet"));
  for (guint i = 0; i < log->actions->len; i++)
    add_row (self, log->actions->pdata[i]);
}

void
sy_follow_actions_begin (SyFollowActions *self, const char *about, const char *what)
{
  SyDeedForm *form = self->forms[FORM_OPEN];

  g_return_if_fail (SY_IS_FOLLOW_ACTIONS (self));
  sy_deed_form_open (form);
  g_free (self->about);
  self->about = g_strdup (about);
  if (what != NULL)
    {
      sy_deed_form_set (form, "what", what);
      gtk_widget_grab_focus (sy_deed_form_get_entry (form, "what"));
    }
}

SyDeedForm *const *
sy_follow_actions_get_forms (SyFollowActions *self)
{
  return self->forms;
}

/* Topics: building */

static void
opened_cb (SyDeedForm *form G_GNUC_UNUSED, SyFollowActions *self)
{
  /* An action of one's own is about no reason until somebody says so. */
  g_clear_pointer (&self->about, g_free);
}

static SyDeedForm *
add_form (SyFollowActions *self, SyWorker *worker, int at, const char *id, const char *title, const char *button,
          const char *act, const SyDeedField *fields, gsize n, SyDeedMake make)
{
  GtkWidget *form = sy_deed_form_new (worker, id, title, button, act, FALSE);

  sy_deed_form_add (SY_DEED_FORM (form), fields, n);
  sy_deed_form_set_make (SY_DEED_FORM (form), make, self);
  gtk_box_append (GTK_BOX (self), form);
  self->forms[at] = SY_DEED_FORM (form);
  return self->forms[at];
}

static void
add_forms (SyFollowActions *self, SyWorker *worker)
{
  const SyDeedField day = { "due", _("Due"), _("A day, like 2026-12-01"), FALSE };
  const SyDeedField why = { "why", _("Why"), NULL, FALSE };
  const SyDeedField assigned = { "assigned", _("For whom"), _("Who is to do it"), FALSE };
  const SyDeedField open[] = { { "what", _("What is to be done"), NULL, TRUE }, assigned, day, why };
  const SyDeedField assign[] = { assigned, day, why };
  const SyDeedField close[]
      = { { "evidence", _("What shows that it is done"), _("A photograph in Files, a new revision, seen by …"), TRUE }, why };

  add_form (self, worker, FORM_ASSIGN, "assign-action", _("Assign"), NULL, _("_Assign it"), assign, G_N_ELEMENTS (assign),
            make_assign);
  add_form (self, worker, FORM_CLOSE, "close-action", _("Close"), NULL, _("_Close it"), close, G_N_ELEMENTS (close),
            make_close);
  add_form (self, worker, FORM_OPEN, "open-action", _("Open an action"), _("Open an a_ction…"), _("_Open it"), open,
            G_N_ELEMENTS (open), make_open);
  g_signal_connect (self->forms[FORM_OPEN], "opened", G_CALLBACK (opened_cb), self);
}

static void
sy_follow_actions_dispose (GObject *object)
{
  SyFollowActions *self = SY_FOLLOW_ACTIONS (object);

  g_clear_pointer (&self->log, sy_item_log_unref);
  g_clear_pointer (&self->about, g_free);
  g_clear_pointer (&self->subject, g_free);
  G_OBJECT_CLASS (sy_follow_actions_parent_class)->dispose (object);
}

static void
sy_follow_actions_class_init (SyFollowActionsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_follow_actions_dispose;
}

static void
sy_follow_actions_init (SyFollowActions *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self), self->rows);
}

GtkWidget *
sy_follow_actions_new (SyWorker *worker)
{
  SyFollowActions *self = g_object_new (SY_TYPE_FOLLOW_ACTIONS, NULL);

  add_forms (self, worker);
  return GTK_WIDGET (self);
}
