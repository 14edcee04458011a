/* SPDX-License-Identifier: MIT */
#include "sy-follow-up.h"

#include "sy-follow-actions.h"
#include "sy-follow-improvement.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-task-standing.h"

#include <math.h>

enum
{
  FORM_SIGN,
  FORM_REVIEW,
  FORM_TELL,
  FORM_RETIRE,
  FORM_BACK,
  N_FORMS
};

struct _SyFollowUp
{
  GtkBox parent_instance;

  SyWorker *worker;
  SyItemLog *log;
  GtkWidget *empty, *all;
  GtkWidget *signed_words, *author_words, *review_words, *told_words, *use_words;
  GtkWidget *trigger;
  SyFollowActions *actions;
  SyFollowImprovement *improvement;
  SyDeedForm *forms[N_FORMS];
};

G_DEFINE_FINAL_TYPE (SyFollowUp, sy_follow_up, GTK_TYPE_BOX)

/* Topics: what was typed */

static SyDeedAsk *
new_ask (SyFollowUp *self, SyDeedForm *form, SyEventKind kind)
{
  g_autofree char *by = sy_deed_form_dup (form, "by"), *role = sy_deed_form_dup (form, "role");
  g_autofree char *why = sy_deed_form_dup (form, "why");
  SyDeedAsk *ask = sy_deed_ask_new (kind, self->log->task->id, by, role, why);

  ask->revision = self->log->task->revision;
  return ask;
}

static SyDeedAsk *
make_signature (SyDeedForm *form, gpointer data)
{
  SyDeedAsk *ask = new_ask (data, form, SY_EVENT_SIGNATURE);

  ask->deed.competence = sy_deed_form_dup (form, "competence");
  return ask;
}

static SyDeedAsk *
make_review (SyDeedForm *form, gpointer data)
{
  SyFollowUp *self = data;
  const SyTrigger trigger = (SyTrigger) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->trigger));
  g_autofree char *due = sy_deed_form_dup (form, "due");
  SyDeedAsk *ask;

  if (!sy_deed_day_is_fine (due) || (*due == '\0' && trigger == SY_TRIGGER_DATE))
    {
      sy_deed_form_say (form, _("Say the day, like 2026-12-01."), TRUE);
      gtk_widget_grab_focus (sy_deed_form_get_entry (form, "due"));
      return NULL;
    }
  ask = new_ask (self, form, SY_EVENT_REVIEW);
  ask->deed.trigger = trigger;
  ask->deed.due = g_steal_pointer (&due);
  return ask;
}

static SyDeedAsk *
make_told (SyDeedForm *form, gpointer data)
{
  SyDeedAsk *ask = new_ask (data, form, SY_EVENT_TOLD);

  ask->deed.who = sy_deed_form_dup (form, "who");
  ask->deed.mass = sy_deed_form_dup (form, "mass");
  ask->deed.heaviest_side = sy_deed_form_dup (form, "side");
  return ask;
}

static SyDeedAsk *
make_retirement (SyDeedForm *form, gpointer data)
{
  SyFollowUp *self = data;
  SyDeedAsk *ask = new_ask (self, form, SY_EVENT_RETIREMENT);

  ask->deed.retired = form == self->forms[FORM_RETIRE];
  return ask;
}

/* Topics: before somebody signs, tells */

static void
signer_cb (GtkEditable *entry G_GNUC_UNUSED, SyFollowUp *self)
{
  g_autofree char *by = sy_deed_form_dup (self->forms[FORM_SIGN], "by");
  const gboolean own = self->log != NULL && *by != '\0' && sy_item_log_is_author (self->log, self->log->task->revision, by);

  gtk_label_set_text (GTK_LABEL (self->author_words),
                      own ? _("You made this revision yourself. You may sign it; the record then says everywhere that it was "
                              "signed by the person who made it.")
                          : "");
  gtk_widget_set_visible (self->author_words, own);
}

static void
sign_opened_cb (SyDeedForm *form, SyFollowUp *self)
{
  const SyTask *task = self->log->task;
  g_autofree char *when = sy_stored_time_text (task->when);
  g_autofree char *words = g_strdup_printf (_("Revision %ld, made by %s on %s: %s"), (long) task->revision, task->by, when,
                                            task->why);

  sy_deed_form_set_subject (form, words);
}

/* The heaviest that may be lifted, with allowance where there is one, in the units of the facts. */
static void
tell_opened_cb (SyDeedForm *form, SyFollowUp *self)
{
  const SyTask *task = self->log->task;
  g_autofree char *typed = sy_deed_form_dup (form, "mass");
  SyUnits units = SY_UNITS_METRIC;

  if (*typed != '\0' || isnan (task->mass_kg))
    return;
  sy_units_from_id (task->units, &units);
  {
    g_autofree char *mass
        = sy_words_quantity (sy_unit_convert (SY_KIND_MASS, task->mass_kg, SY_UNITS_METRIC, units), SY_KIND_MASS, units);

    sy_deed_form_set (form, "mass", mass);
  }
}

/* Only one form of the page is open at a time. */
static void
opened_cb (SyDeedForm *form, SyFollowUp *self)
{
  SyDeedForm *const *others = sy_follow_actions_get_forms (self->actions);

  for (int i = 0; i < N_FORMS; i++)
    if (self->forms[i] != form)
      sy_deed_form_close (self->forms[i]);
  for (; *others != NULL; others++)
    if (*others != form)
      sy_deed_form_close (*others);
  if (sy_follow_improvement_get_form (self->improvement) != form)
    sy_deed_form_close (sy_follow_improvement_get_form (self->improvement));
}

/* Topics: how it stands */

static void
show_signed (SyFollowUp *self)
{
  const SyTask *task = self->log->task;
  g_autofree char *signed_words = sy_standing_signed (self->log);
  g_autofree char *words
      = g_strdup_printf (_("%s. Revision %ld was made by %s."), signed_words, (long) task->revision, task->by);

  gtk_label_set_text (GTK_LABEL (self->signed_words), words);
}

static void
show_told (SyFollowUp *self)
{
  sy_part_empty (self->told_words);
  for (guint i = self->log->lines->len; i > 0; i--)
    {
      const SyEvent *event = ((SyRevision *) self->log->lines->pdata[i - 1])->event;
      g_autofree char *said = NULL, *when = NULL, *words = NULL;

      if (event->kind != SY_EVENT_TOLD)
        continue;
      said = sy_deed_words (event, sy_translate);
      when = sy_stored_time_text (event->claimed);
      words = g_strdup_printf (_("%s. By %s, %s, of revision %ld."), said, event->by, when, (long) event->revision);
      gtk_box_append (GTK_BOX (self->told_words), sy_part_label (words, NULL));
    }
  if (gtk_widget_get_first_child (self->told_words) == NULL)
    gtk_box_append (GTK_BOX (self->told_words), sy_part_label (_("It is not recorded that anybody was told."), "sy-quiet"));
  else if (self->log->task->told_revision < self->log->task->revision)
    gtk_box_append (GTK_BOX (self->told_words),
                    sy_part_label (_("A newer revision was saved since: tell them again if mass or side changed."), NULL));
}

static void
show_use (SyFollowUp *self)
{
  g_autofree char *retired = sy_standing_retired (self->log);
  const gboolean out = self->log->task->retired;

  gtk_label_set_text (GTK_LABEL (self->use_words), out ? retired : _("In use."));
  gtk_widget_set_visible (GTK_WIDGET (self->forms[FORM_RETIRE]), !out);
  gtk_widget_set_visible (GTK_WIDGET (self->forms[FORM_BACK]), out);
}

void
sy_follow_up_set (SyFollowUp *self, SyItemLog *log)
{
  g_autofree char *review = log != NULL ? sy_standing_review (log) : NULL;

  g_return_if_fail (SY_IS_FOLLOW_UP (self));
  if (log != NULL)
    sy_item_log_ref (log);
  g_clear_pointer (&self->log, sy_item_log_unref);
  self->log = log;
  gtk_widget_set_visible (self->empty, log == NULL);
  gtk_widget_set_visible (self->all, log != NULL);
  if (log == NULL)
    return;
  show_signed (self);
  signer_cb (NULL, self);
  sy_follow_actions_set (self->actions, log);
  sy_follow_improvement_set (self->improvement, log);
  gtk_label_set_text (GTK_LABEL (self->review_words),
                      *review != '\0' ? review : _("None set. Look at it again on a day, after an accident, or when the work is "
                                                   "changed."));
  show_told (self);
  show_use (self);
}

void
sy_follow_up_begin_action (SyFollowUp *self, const char *about, const char *what)
{
  g_return_if_fail (SY_IS_FOLLOW_UP (self));
  if (self->log != NULL)
    sy_follow_actions_begin (self->actions, about, what);
}

/* Topics: building */

static SyDeedForm *
add_form (SyFollowUp *self, int at, const char *id, const char *title, const char *button, const char *act,
          const SyDeedField *fields, gsize n, SyDeedMake make)
{
  GtkWidget *form = sy_deed_form_new (self->worker, id, title, button, act, at == FORM_SIGN);

  sy_deed_form_add (SY_DEED_FORM (form), fields, n);
  sy_deed_form_set_make (SY_DEED_FORM (form), make, self);
  g_signal_connect (form, "opened", G_CALLBACK (opened_cb), self);
  gtk_box_append (GTK_BOX (self->all), form);
  self->forms[at] = SY_DEED_FORM (form);
  return self->forms[at];
}

static void
add_heading (SyFollowUp *self, const char *words)
{
  GtkWidget *heading = sy_part_heading (words);

  if (gtk_widget_get_first_child (self->all) != NULL)
    gtk_widget_set_margin_top (heading, 12);
  gtk_box_append (GTK_BOX (self->all), heading);
}

static GtkWidget *
add_words (SyFollowUp *self, const char *heading, const char *name)
{
  GtkWidget *words = sy_part_label (NULL, NULL);

  gtk_widget_set_name (words, name);
  add_heading (self, heading);
  gtk_box_append (GTK_BOX (self->all), words);
  return words;
}

static void
add_signing (SyFollowUp *self)
{
  const SyDeedField fields[] = {
    { "competence", _("Competence"), _("What makes the signer competent: training, position, …"), FALSE },
    { "why", _("Note"), NULL, FALSE },
  };
  SyDeedForm *form;

  self->signed_words = add_words (self, _("Sign-off"), "signed-words");
  form = add_form (self, FORM_SIGN, "sign", _("Sign off"), _("Si_gn off this revision…"), _("Si_gn off"), fields,
                   G_N_ELEMENTS (fields), make_signature);
  self->author_words = sy_part_label (NULL, "sy-strong");
  gtk_widget_set_name (self->author_words, "sign-author");
  gtk_widget_set_visible (self->author_words, FALSE);
  sy_deed_form_add_widget (form, NULL, self->author_words);
  g_signal_connect (form, "opened", G_CALLBACK (sign_opened_cb), self);
  g_signal_connect (sy_deed_form_get_entry (form, "by"), "changed", G_CALLBACK (signer_cb), self);
}

static void
add_review (SyFollowUp *self)
{
  const char *const because[] = { _("A day is set"), _("There was an accident"), _("The work is being changed"), NULL };
  const SyDeedField fields[] = {
    { "due", _("Day"), _("Like 2026-12-01; after an accident or a change: today where none is given"), FALSE },
    { "why", _("Why"), NULL, TRUE },
  };
  SyDeedForm *form;

  self->review_words = add_words (self, _("Review"), "review-words");
  form = add_form (self, FORM_REVIEW, "review", _("Set a review"), _("Set a re_view…"), _("_Set it"), fields,
                   G_N_ELEMENTS (fields), make_review);
  self->trigger = gtk_drop_down_new_from_strings (because);
  gtk_widget_set_name (self->trigger, "review-trigger");
  sy_name (self->trigger, _("What the review is because of"));
  sy_deed_form_add_widget (form, _("Because"), self->trigger);
}

static void
add_telling (SyFollowUp *self)
{
  const SyDeedField fields[] = {
    { "who", _("Who was told"), _("Names"), TRUE },
    { "mass", _("Mass"), _("With its unit, as it was told"), TRUE },
    { "side", _("Heaviest side"), _("Where the weight is: towards the handle, even, …"), TRUE },
    { "why", _("Note"), NULL, FALSE },
  };
  SyDeedForm *form;

  add_heading (self, _("Told"));
  gtk_box_append (GTK_BOX (self->all),
                  sy_part_label (_("In many places it is a duty to tell those who lift what the load weighs and which side is "
                                   "the heaviest, unless it is centred."),
                                 "sy-note"));
  self->told_words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_name (self->told_words, "told-words");
  gtk_box_append (GTK_BOX (self->all), self->told_words);
  form = add_form (self, FORM_TELL, "tell", _("Record who was told"), _("Record who was _told…"), _("_Record it"), fields,
                   G_N_ELEMENTS (fields), make_told);
  g_signal_connect (form, "opened", G_CALLBACK (tell_opened_cb), self);
}

static void
add_use (SyFollowUp *self)
{
  const SyDeedField why[] = { { "why", _("Why"), NULL, TRUE } };

  self->use_words = add_words (self, _("Use"), "use-words");
  add_form (self, FORM_RETIRE, "retire", _("Take out of use"), _("Take out of _use…"), _("Take _out of use"), why, 1,
            make_retirement);
  add_form (self, FORM_BACK, "take-back", _("Take back into use"), _("Take back into _use…"), _("Take _back into use"), why, 1,
            make_retirement);
}

static void
sy_follow_up_dispose (GObject *object)
{
  SyFollowUp *self = SY_FOLLOW_UP (object);

  g_clear_pointer (&self->log, sy_item_log_unref);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_follow_up_parent_class)->dispose (object);
}

static void
sy_follow_up_class_init (SyFollowUpClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_follow_up_dispose;
}

static void
sy_follow_up_init (SyFollowUp *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->empty = sy_part_label (_("Once this is saved it can be signed off, actions opened and a review set here."), "sy-quiet");
  self->all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self), self->empty);
  gtk_box_append (GTK_BOX (self), self->all);
}

GtkWidget *
sy_follow_up_new (SyWorker *worker)
{
  SyFollowUp *self = g_object_new (SY_TYPE_FOLLOW_UP, NULL);
  SyDeedForm *const *forms;

  self->worker = g_object_ref (worker);
  add_signing (self);
  add_heading (self, _("Actions"));
  self->actions = SY_FOLLOW_ACTIONS (sy_follow_actions_new (worker));
  gtk_box_append (GTK_BOX (self->all), GTK_WIDGET (self->actions));
  for (forms = sy_follow_actions_get_forms (self->actions); *forms != NULL; forms++)
    g_signal_connect (*forms, "opened", G_CALLBACK (opened_cb), self);
  self->improvement = SY_FOLLOW_IMPROVEMENT (sy_follow_improvement_new (worker));
  gtk_box_append (GTK_BOX (self->all), GTK_WIDGET (self->improvement));
  g_signal_connect (sy_follow_improvement_get_form (self->improvement), "opened", G_CALLBACK (opened_cb), self);
  add_review (self);
  add_telling (self);
  add_use (self);
  sy_follow_up_set (self, NULL);
  return GTK_WIDGET (self);
}
