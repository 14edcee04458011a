/* SPDX-License-Identifier: MIT */
#include "sy-task.h"

#include <math.h>
#include <string.h>

#include "sy-json.h"

/* Stands for what is absent, so that its members are absent too. */
static const SyJson nothing = { .type = SY_JSON_NULL };

static const SyJson *
scan (const char *text, SyMemory *memory)
{
  /* What is wrong with a document was said before it was stored; here its parts are merely absent. */
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);

  return root != NULL ? root : &nothing;
}

static const SyJson *
find_member (const SyJson *object, const char *key)
{
  const SyJson *member = sy_json_member (object, key);

  return member != NULL ? member : &nothing;
}

static const char *
text_or_empty (const SyJson *object, const char *key)
{
  const char *text = sy_json_member_text (object, key);

  return text != NULL ? text : "";
}

static const SyJson *
find_quantity (const SyJson *findings, const char *symbol)
{
  return find_member (find_member (findings, "quantities"), symbol);
}

/* NAN for none, INFINITY for one over a limit of zero. */
static double
read_value (const SyJson *quantity)
{
  const char *state = sy_json_member_text (quantity, "state");
  double value = sy_json_member_number (quantity, "value", NAN);

  return isnan (value) && g_strcmp0 (state, "unbounded") == 0 ? INFINITY : value;
}

static double
read_mass_kg (const SyJson *quantity)
{
  const char *unit = sy_json_member_text (quantity, "unit");
  double value = sy_json_member_number (quantity, "value", NAN);

  if (g_strcmp0 (unit, "kg") == 0)
    return value;
  return g_strcmp0 (unit, "lb") == 0 ? value * SY_KG_PER_LB : NAN;
}

static double
rank_of (double index, double persons, double lifts_per_day)
{
  /* No pace makes a lift that no limit allows less pressing. */
  return isinf (index) ? INFINITY : index * persons * lifts_per_day;
}

static void
add_words (GString *out, const char *text)
{
  if (*text == '\0')
    return;
  if (out->len > 0)
    g_string_append_c (out, '\n');
  g_string_append (out, text);
}

/* Everyone named under "had", at any depth: who measured what. */
static void
add_people (GString *out, const SyJson *node)
{
  if (node->type == SY_JSON_OBJECT)
    add_words (out, text_or_empty (node, "by"));
  for (const SyJson *child = node->first; child != NULL; child = child->next)
    add_people (out, child);
}

static char *
write_search_text (const SyEvent *event, const SyJson *facts, const SyJson *findings)
{
  GString *out = g_string_new (NULL);

  add_words (out, event->name);
  add_words (out, text_or_empty (facts, "place"));
  add_words (out, event->by);
  add_words (out, text_or_empty (facts, "measured_by"));
  add_people (out, find_member (facts, "had"));
  for (const SyJson *reason = find_member (findings, "reasons")->first; reason != NULL;
       reason = reason->next)
    add_words (out, text_or_empty (reason, "text"));
  return g_string_free (out, FALSE);
}

/* The latest revision that was made from @base, 0 for none. */
static gint64
find_sibling (const char *lineage, gint64 base)
{
  g_auto (GStrv) steps = g_strsplit (lineage, " ", -1);
  gint64 sibling = 0;

  for (char **step = steps; *step != NULL; step++)
    {
      const char *mark = strchr (*step, '<');

      if (mark != NULL && g_ascii_strtoll (mark + 1, NULL, 10) == base)
        sibling = g_ascii_strtoll (*step, NULL, 10);
    }
  return sibling;
}

static void
add_step (SyTask *task, const SyEvent *event)
{
  char *lineage = g_strdup_printf ("%s%s%" G_GINT64_FORMAT "<%" G_GINT64_FORMAT, task->lineage,
                                   *task->lineage != '\0' ? " " : "", event->revision, event->base);

  g_free (task->lineage);
  task->lineage = lineage;
}

static void
take_history (SyTask *task, const SyEvent *event)
{
  task->clash = 0;
  if (event->base != task->revision)
    {
      task->clash = find_sibling (task->lineage, event->base);
      if (task->clash == 0)
        task->clash = task->revision;
    }
  add_step (task, event);
  task->revision = event->revision;
}

static void
take_findings (SyTask *task, const SyJson *findings)
{
  const char *verdict = sy_json_member_text (findings, "verdict");

  /* Findings that cannot be read never count as a lift within the limits. */
  if (verdict == NULL || !sy_verdict_from_id (verdict, &task->verdict))
    task->verdict = SY_VERDICT_INCOMPLETE;
  sy_event_set (&task->index_symbol, text_or_empty (findings, "index"));
  task->index = read_value (find_quantity (findings, task->index_symbol));
  task->persons = sy_json_member_number (find_quantity (findings, "persons"), "value", 1.0);
  task->mass_kg = read_mass_kg (find_quantity (findings, "mass_each")) * task->persons;
  task->lifts_per_day = read_value (find_quantity (findings, "lifts_per_day"));
  task->rank = rank_of (task->index, task->persons, task->lifts_per_day);
}

SyTask *
sy_task_new (void)
{
  SyTask *task = g_new0 (SyTask, 1);
  char **texts[] = { &task->id,   &task->name, &task->place, &task->method,
                     &task->units, &task->index_symbol, &task->lineage, &task->by,
                     &task->why,  &task->when, &task->search_text };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    *texts[i] = g_strdup ("");
  task->verdict = SY_VERDICT_INCOMPLETE;
  task->index = task->mass_kg = task->lifts_per_day = task->rank = NAN;
  task->persons = 1.0;
  return task;
}

SyTask *
sy_task_copy (const SyTask *task)
{
  SyTask *copy = g_memdup2 (task, sizeof *task);

  copy->id = g_strdup (task->id);
  copy->name = g_strdup (task->name);
  copy->place = g_strdup (task->place);
  copy->method = g_strdup (task->method);
  copy->units = g_strdup (task->units);
  copy->index_symbol = g_strdup (task->index_symbol);
  copy->lineage = g_strdup (task->lineage);
  copy->by = g_strdup (task->by);
  copy->why = g_strdup (task->why);
  copy->when = g_strdup (task->when);
  copy->search_text = g_strdup (task->search_text);
  return copy;
}

void
sy_task_free (SyTask *task)
{
  if (task == NULL)
    return;
  g_free (task->id);
  g_free (task->name);
  g_free (task->place);
  g_free (task->method);
  g_free (task->units);
  g_free (task->index_symbol);
  g_free (task->lineage);
  g_free (task->by);
  g_free (task->why);
  g_free (task->when);
  g_free (task->search_text);
  g_free (task);
}

SyTask *
sy_task_apply (SyTask *task, const SyEvent *event)
{
  g_autoptr (SyMemory) memory = NULL;
  const SyJson *facts, *findings;

  if (event->kind != SY_EVENT_REVISION)
    return task;
  if (task == NULL)
    {
      task = sy_task_new ();
      sy_event_set (&task->id, event->item);
    }
  memory = sy_memory_new ();
  facts = scan (event->facts, memory);
  findings = scan (event->findings, memory);

  take_history (task, event);
  take_findings (task, findings);
  sy_event_set (&task->name, event->name);
  sy_event_set (&task->method, event->method);
  sy_event_set (&task->by, event->by);
  sy_event_set (&task->why, event->why);
  sy_event_set (&task->when, event->claimed);
  sy_event_set (&task->place, text_or_empty (facts, "place"));
  sy_event_set (&task->units, text_or_empty (facts, "units"));
  g_free (task->search_text);
  task->search_text = write_search_text (event, facts, findings);
  return task;
}
