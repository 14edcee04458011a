/* SPDX-License-Identifier: MIT */
#include "sy-improvement-form.h"

#include <string.h>

#include "sy-i18n.h"

static void
opened_cb (SyDeedForm *form, gpointer user_data)
{
  g_autofree char *since = sy_deed_form_dup (form, "since"), *now = NULL;
  gboolean clock_set;

  (void) user_data;
  if (*since != '\0')
    return;
  now = sy_clock_now (&clock_set, NULL);
  if (now == NULL)
    return;
  now[strcspn (now, "T")] = '\0';
  sy_deed_form_set (form, "since", now);
}

GtkWidget *
sy_improvement_form_new (SyWorker *worker, const char *id)
{
  const SyDeedField fields[] = {
    { "what", _("What was done"), _("A turntable beside the press, …"), TRUE },
    { "idea", _("Who thought of it"), _("Names"), TRUE },
    { "since", _("At work since"), _("A day, like 2026-11-26"), TRUE },
  };
  GtkWidget *form = sy_deed_form_new (worker, id, _("Improvement"), _("Put in the i_mprovement log…"), _("_Put it in the log"),
                                      FALSE);

  sy_deed_form_add (SY_DEED_FORM (form), fields, G_N_ELEMENTS (fields));
  g_signal_connect (form, "opened", G_CALLBACK (opened_cb), NULL);
  return form;
}

SyDeedAsk *
sy_improvement_form_ask (SyDeedForm *form, const char *item, gint64 revision, const char *from_item, gint64 from_revision)
{
  g_autofree char *by = sy_deed_form_dup (form, "by"), *role = sy_deed_form_dup (form, "role");
  g_autofree char *since = sy_deed_form_dup (form, "since");
  SyDeedAsk *ask;

  if (!sy_deed_day_is_fine (since))
    {
      sy_deed_form_say (form, _("A day is written like 2026-12-01."), TRUE);
      gtk_widget_grab_focus (sy_deed_form_get_entry (form, "since"));
      return NULL;
    }
  ask = sy_deed_ask_new (SY_EVENT_IMPROVEMENT, item, by, role, "");
  ask->revision = revision;
  ask->deed.step = SY_STEP_ADD;
  ask->deed.what = sy_deed_form_dup (form, "what");
  ask->deed.idea_by = sy_deed_form_dup (form, "idea");
  ask->deed.put_to_work = g_steal_pointer (&since);
  ask->deed.from_item = g_strdup (from_item);
  ask->deed.from_revision = from_revision;
  return ask;
}

gboolean
sy_improvement_form_takes (const char *item_kind)
{
  return strcmp (item_kind, SY_ITEM_TASK) == 0 || strcmp (item_kind, SY_ITEM_CHANGEOVER) == 0;
}
