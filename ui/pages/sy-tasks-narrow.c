/* SPDX-License-Identifier: MIT */
#include "sy-tasks-narrow.h"

#include "sy-i18n.h"
#include "sy-tasks-cells.h"
#include "sy-words.h"

static const char *
verdict_title (const char *id)
{
  SyVerdict verdict;

  return sy_verdict_from_id (id, &verdict) ? sy_translate (sy_verdict_title (verdict)) : id;
}

GtkWidget *
sy_tasks_narrow_new (const SyRegisterPage *page)
{
  static const SyKeyWords words[] = {
    [SY_NARROW_VERDICT] = verdict_title,
    [SY_NARROW_MACHINE] = NULL,
    [SY_NARROW_GEAR] = sy_gear_kind_words,
  };
  GtkWidget *narrow
    = sy_key_choice_new (sy_translate (page->any), sy_translate (page->narrow_name), words[page->narrow]);

  gtk_widget_set_name (narrow, "narrow");
  return narrow;
}

char **
sy_tasks_narrow_keys (SyNarrow narrow, GListModel *list, const char *item_kind)
{
  GStrvBuilder *builder = g_strv_builder_new ();
  char **keys;

  if (narrow == SY_NARROW_VERDICT)
    for (int i = 0; i < SY_N_VERDICTS; i++)
      g_strv_builder_add (builder, sy_verdict_id ((SyVerdict) i));
  else if (narrow == SY_NARROW_GEAR)
    for (gsize i = 0; i < G_N_ELEMENTS (sy_gear_kind_choices); i++)
      g_strv_builder_add (builder, sy_gear_kind_choices[i].id);
  else
    {
      g_strv_builder_unref (builder);
      return sy_task_machines (list, item_kind);
    }
  keys = g_strv_builder_end (builder);
  g_strv_builder_unref (builder);
  return keys;
}

void
sy_tasks_narrow_choose (SyNarrow narrow, const char *key, SyTaskChoice *choice)
{
  g_clear_pointer (&choice->machine, g_free);
  g_clear_pointer (&choice->gear_kind, g_free);
  if (narrow == SY_NARROW_VERDICT)
    choice->by_verdict = key != NULL && sy_verdict_from_id (key, &choice->verdict);
  else if (narrow == SY_NARROW_MACHINE)
    choice->machine = g_strdup (key);
  else
    choice->gear_kind = g_strdup (key);
}
