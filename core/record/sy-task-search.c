/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-method.h"
#include "sy-task-private.h"

/* Between the words of the latest revision and those of what was done about the item. No text has it. */
#define PART "\x1e"

static void
add_words (GString *out, const char *text)
{
  if (*text == '\0')
    return;
  if (out->len > 0)
    g_string_append_c (out, '\n');
  for (; *text != '\0'; text++)
    g_string_append_c (out, *text == *PART ? ' ' : *text);
}

/* A text, or each text of a list. */
static void
add_all_words (GString *out, const SyJson *value)
{
  if (value->type == SY_JSON_TEXT)
    add_words (out, value->text);
  if (value->type == SY_JSON_ARRAY)
    for (const SyJson *each = value->first; each != NULL; each = each->next)
      add_all_words (out, each);
}

/* Everyone named under "had", at any depth: who measured what. */
static void
add_people (GString *out, const SyJson *node)
{
  if (node->type == SY_JSON_OBJECT)
    add_words (out, sy_task_text (node, "by"));
  for (const SyJson *child = node->first; child != NULL; child = child->next)
    add_people (out, child);
}

void
sy_task_take_words (SyTask *task, const SyEvent *revision, const SyJson *facts, const SyJson *findings)
{
  static const char *const keys[]
    = { "place", "identity", "machine", "serves", "storage", "kind", "drawing", "notes", "people" };
  static const char *const lists[] = { "dies", "steps", "options" }; /* of a die change, of a case */
  const char *deeds = strstr (task->search_text, PART);
  GString *out = g_string_new (NULL);

  add_words (out, revision->name);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    add_all_words (out, sy_task_member (facts, keys[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    for (const SyJson *each = sy_task_member (facts, lists[i])->first; each != NULL; each = each->next)
      add_words (out, sy_task_text (each, "label"));
  add_words (out, revision->by);
  add_words (out, revision->why);
  add_words (out, sy_task_text (facts, "measured_by"));
  add_people (out, sy_task_member (facts, "had"));
  for (const SyJson *reason = sy_task_member (findings, "reasons")->first; reason != NULL; reason = reason->next)
    add_words (out, sy_task_text (reason, "text"));
  if (deeds != NULL)
    g_string_append (out, deeds);
  g_free (task->search_text);
  task->search_text = g_string_free (out, FALSE);
}

/* Whether a line of the words of deeds is exactly this one. */
static gboolean
has_line (const char *deeds, const char *line, gsize length)
{
  for (const char *at = deeds; (at = strstr (at, line)) != NULL; at++)
    if ((at[-1] == '\n' || at[-1] == *PART) && (at[length] == '\n' || at[length] == '\0'))
      return TRUE;
  return FALSE;
}

void
sy_task_add_words (SyTask *task, const char *words)
{
  g_autoptr (GString) line = g_string_new (NULL);
  const char *deeds = strstr (task->search_text, PART);
  char *joined;

  if (!sy_text_says (words))
    return;
  add_words (line, words);
  if (deeds != NULL && has_line (deeds + 1, line->str, line->len))
    return;
  joined = g_strconcat (task->search_text, deeds != NULL ? "\n" : PART, line->str, NULL);
  g_free (task->search_text);
  task->search_text = joined;
}
