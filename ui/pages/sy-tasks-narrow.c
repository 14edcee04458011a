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

static const char *
method_title (const char *id)
{
  const SyMethod *method = sy_method_find (id);

  return method != NULL ? sy_translate (method->title) : id;
}

static const struct
{
  const char *key, *words;
} dues[SY_N_TASK_DUES] = {
  [SY_DUE_ANY] = { "any", N_ ("Due or overdue") },
  [SY_DUE_VERDICT] = { "verdict", N_ ("Verdict runs out") },
  [SY_DUE_REVIEW] = { "review", N_ ("Review due") },
  [SY_DUE_ACTION] = { "action", N_ ("Action due") },
};

static const char *
due_title (const char *key)
{
  for (int i = SY_DUE_ANY; i < SY_N_TASK_DUES; i++)
    if (g_str_equal (dues[i].key, key))
      return sy_translate (dues[i].words);
  return key;
}

static const struct
{
  const char *name, *title, *any, *what_for;
  SyKeyWords words;
  char **(*read) (GListModel *rows, const char *item_kind);
} narrows[SY_N_NARROWS] = {
  [SY_NARROW_VERDICT] = { "narrow-verdict", N_ ("Verdict"), N_ ("Any verdict"), N_ ("Show only what has this verdict"),
                          verdict_title, NULL },
  [SY_NARROW_MACHINE] = { "narrow-machine", N_ ("Machine"), N_ ("Any machine"), N_ ("Show only what is of this machine"),
                          NULL, sy_task_machines },
  [SY_NARROW_GEAR] = { "narrow-gear", N_ ("Kind"), N_ ("Any kind"), N_ ("Show only gear of this kind"),
                       sy_gear_kind_words, NULL },
  [SY_NARROW_METHOD] = { "narrow-method", N_ ("Method"), N_ ("Any method"), N_ ("Show only what was judged by this method"),
                         method_title, sy_task_methods },
  [SY_NARROW_PLACE] = { "narrow-place", N_ ("Place"), N_ ("Any place"), N_ ("Show only what is done at this place"), NULL,
                        sy_task_places },
  [SY_NARROW_DUE] = { "narrow-due", N_ ("Due"), N_ ("Due or not"),
                      N_ ("Show only what is past its day or falls due within 30 days"), due_title, NULL },
};

static char **
fixed_keys (SyNarrow narrow)
{
  GStrvBuilder *builder = g_strv_builder_new ();
  char **keys;

  if (narrow == SY_NARROW_VERDICT)
    for (int i = 0; i < SY_N_VERDICTS; i++)
      g_strv_builder_add (builder, sy_verdict_id ((SyVerdict) i));
  else if (narrow == SY_NARROW_GEAR)
    for (gsize i = 0; i < G_N_ELEMENTS (sy_gear_kind_choices); i++)
      g_strv_builder_add (builder, sy_gear_kind_choices[i].id);
  else if (narrow == SY_NARROW_DUE)
    for (int i = SY_DUE_ANY; i < SY_N_TASK_DUES; i++)
      g_strv_builder_add (builder, dues[i].key);
  keys = g_strv_builder_end (builder);
  g_strv_builder_unref (builder);
  return keys;
}

GtkWidget *
sy_tasks_narrow_new (SyNarrow narrow)
{
  GtkWidget *choice
    = sy_key_choice_new (sy_translate (narrows[narrow].any), sy_translate (narrows[narrow].what_for), narrows[narrow].words);

  gtk_widget_set_name (choice, narrows[narrow].name);
  sy_key_choice_set_keys (SY_KEY_CHOICE (choice), fixed_keys (narrow));
  return choice;
}

const char *
sy_tasks_narrow_title (SyNarrow narrow)
{
  return sy_translate (narrows[narrow].title);
}

gboolean
sy_tasks_narrow_is_read (SyNarrow narrow)
{
  return narrows[narrow].read != NULL;
}

void
sy_tasks_narrow_read (GtkWidget *choice, SyNarrow narrow, GListModel *list, const char *item_kind)
{
  sy_key_choice_set_keys (SY_KEY_CHOICE (choice), narrows[narrow].read (list, item_kind));
}

static SyTaskDue
due_from_key (const char *key)
{
  for (int i = SY_DUE_ANY; key != NULL && i < SY_N_TASK_DUES; i++)
    if (g_str_equal (dues[i].key, key))
      return (SyTaskDue) i;
  return SY_DUE_NOTHING;
}

static void
set_text (char **text, const char *key)
{
  g_free (*text);
  *text = g_strdup (key);
}

void
sy_tasks_narrow_choose (SyNarrow narrow, const char *key, SyTaskChoice *choice)
{
  switch (narrow)
    {
    case SY_NARROW_VERDICT:
      choice->by_verdict = key != NULL && sy_verdict_from_id (key, &choice->verdict);
      break;
    case SY_NARROW_MACHINE:
      set_text (&choice->machine, key);
      break;
    case SY_NARROW_GEAR:
      set_text (&choice->gear_kind, key);
      break;
    case SY_NARROW_METHOD:
      set_text (&choice->method, key);
      break;
    case SY_NARROW_PLACE:
      set_text (&choice->place, key);
      break;
    case SY_NARROW_DUE:
      choice->due = due_from_key (key);
      break;
    }
}
