/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-json.h"
#include "sy-ledger.h"

static void
text (GString *out, const char *name, const char *value)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_text (out, value);
}

static void
number (GString *out, const char *name, double value)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_number (out, value);
}

static void
index_value (GString *out, const char *name, double value)
{
  g_string_append_printf (out, ",\"%s\":{\"value\":", name);
  sy_json_write_number (out, value);
  if (isinf (value))
    g_string_append (out, ",\"state\":\"unbounded\"");
  g_string_append_c (out, '}');
}

void
sy_task_write_json (GString *out, const SyTask *task)
{
  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, task->name);
  text (out, "id", task->id);
  text (out, "place", task->place);
  text (out, "method", task->method);
  text (out, "units", task->units);
  text (out, "verdict", sy_verdict_id (task->verdict));
  text (out, "index", task->index_symbol);
  index_value (out, task->index_symbol && *task->index_symbol ? task->index_symbol : "value", task->index);
  number (out, "mass_kg", task->mass_kg);
  number (out, "persons", task->persons);
  number (out, "lifts_per_day", task->lifts_per_day);
  index_value (out, "rank", task->rank);
  number (out, "revision", (double) task->revision);
  if (task->clash > 0)
    number (out, "clash", (double) task->clash);
  text (out, "who", task->by);
  text (out, "when", task->when);
  text (out, "why", task->why);
  g_string_append_c (out, '}');
}

void
sy_revision_write_json (GString *out, const SyRevision *revision)
{
  const SyEvent *event = revision->event;
  g_autofree char *hash = sy_hash_text (&revision->hash);

  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, event->name);
  text (out, "id", event->item);
  number (out, "revision", (double) event->revision);
  number (out, "base", (double) event->base);
  text (out, "who", event->by);
  text (out, "role", event->role);
  text (out, "when", event->claimed);
  text (out, "written", event->written);
  if (event->clock_set)
    g_string_append (out, ",\"clock_set\":true");
  text (out, "why", event->why);
  text (out, "program", event->program);
  text (out, "method", event->method);
  number (out, "edition", (double) event->edition);
  text (out, "policy", event->policy);
  number (out, "line", (double) revision->number);
  text (out, "hash", hash);
  /* Facts and findings as they were stored, to the byte. */
  g_string_append_printf (out, ",\"facts\":%s,\"findings\":%s}", event->facts, event->findings);
}
