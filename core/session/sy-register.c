/* SPDX-License-Identifier: MIT */
#include "sy-register.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-json.h"

SyRegisterItem *
sy_register_item_new (const char *id, const char *name, const char *item_kind, const char *facts)
{
  SyRegisterItem *item = g_new0 (SyRegisterItem, 1);

  item->id = g_strdup (id);
  item->name = g_strdup (name);
  item->item_kind = g_strdup (item_kind);
  item->facts = g_strdup (facts);
  return item;
}

void
sy_register_item_free (SyRegisterItem *item)
{
  if (item == NULL)
    return;
  g_free (item->id);
  g_free (item->name);
  g_free (item->item_kind);
  g_free (item->facts);
  g_free (item);
}

GPtrArray *
sy_register_read (SyLedger *ledger, const char *item_kind, GError **error)
{
  const SyTaskFilter filter = { .item_kind = item_kind, .order = SY_ORDER_NAME };
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_register_item_free);
  g_autoptr (GPtrArray) tasks = sy_ledger_tasks (ledger, &filter, error);

  if (tasks == NULL)
    return NULL;
  for (guint i = 0; i < tasks->len; i++)
    {
      const SyTask *task = tasks->pdata[i];
      g_autoptr (GPtrArray) history = sy_ledger_history (ledger, task->id, NULL, error);

      if (history == NULL)
        return NULL;
      const SyRevision *latest = history->pdata[history->len - 1];
      SyRegisterItem *item = sy_register_item_new (task->id, task->name, task->item_kind, latest->event->facts);
      item->clash = task->clash > 0;
      g_ptr_array_add (items, item);
    }
  return g_steal_pointer (&items);
}

/* The document with another day. */
static char *
on_day (const SyJson *document, double day)
{
  GString *out = g_string_new ("{");
  char date[SY_DATE_TEXT_MAX] = "";

  for (const SyJson *member = document->first; member != NULL; member = member->next)
    if (strcmp (member->key, "as_of") != 0)
      {
        if (out->len > 1)
          g_string_append_c (out, ',');
        sy_json_write_text (out, member->key);
        g_string_append_c (out, ':');
        sy_json_write_tree (out, member);
      }
  if (!isnan (day))
    sy_date_print (day, date);
  if (*date != '\0')
    g_string_append_printf (out, "%s\"as_of\":\"%s\"", out->len > 1 ? "," : "", date);
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

SyAssessment *
sy_register_assess (SyDesk *desk, const SyRegisterItem *item, double day, SyProblems *problems)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *document;

  sy_problems_clear (problems);
  document = sy_json_scan (item->facts, strlen (item->facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  if (document == NULL || document->type != SY_JSON_OBJECT)
    return NULL;
  g_autofree char *text = on_day (document, day);
  return sy_desk_assess (desk, text, strlen (text), SY_JUDGE_PLAIN, problems);
}

void
sy_register_add_text (GPtrArray *texts, char *text)
{
  for (guint i = 0; i < texts->len; i++)
    if (strcmp (texts->pdata[i], text) == 0)
      {
        g_free (text);
        return;
      }
  g_ptr_array_add (texts, text);
}

void
sy_register_add_reasons (GPtrArray *texts, const SyFindings *findings, SyVerdict verdict, gboolean below,
                         SyTranslate translate)
{
  /* That handling can be avoided is no fault of an item. */
  for (int i = 0; i < findings->n_reasons; i++)
    if ((sy_verdict_rank (findings->reasons[i].verdict) < sy_verdict_rank (verdict)) == below
        && strcmp (findings->reasons[i].id, "can-be-avoided") != 0)
      sy_register_add_text (texts, sy_words_reason (findings, &findings->reasons[i], translate));
}

static void
begin_member (GString *out, const char *name)
{
  g_string_append_printf (out, "%s\"%s\":", out->str[out->len - 1] == '{' ? "" : ",", name);
}

void
sy_register_write_text (GString *out, const char *name, const char *value)
{
  begin_member (out, name);
  sy_json_write_text (out, value);
}

void
sy_register_write_texts (GString *out, const char *name, const GPtrArray *texts)
{
  begin_member (out, name);
  g_string_append_c (out, '[');
  for (guint i = 0; i < texts->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      sy_json_write_text (out, texts->pdata[i]);
    }
  g_string_append_c (out, ']');
}
