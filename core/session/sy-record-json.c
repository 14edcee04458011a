/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

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

static void
write_die (GString *out, const SyItemDetail *die)
{
  number (out, "mass_with_allowance_kg", die->mass_with_allowance_kg);
  for (gsize i = 0; i < G_N_ELEMENTS (die->cg_mm); i++)
    {
      g_string_append (out, i == 0 ? ",\"cg_mm\":[" : ",");
      sy_json_write_number (out, die->cg_mm[i]);
    }
  g_string_append_c (out, ']');
  text (out, "machine", die->machine);
  text (out, "storage", die->storage);
}

static void
write_gear (GString *out, const SyItemDetail *gear)
{
  text (out, "gear", gear->gear_kind);
  text (out, "identity", gear->identity);
  number (out, "wll_kg", gear->wll_kg);
  text (out, "due", gear->due);
  g_string_append_printf (out, ",\"withdrawn\":%s", gear->withdrawn ? "true" : "false");
  text (out, "serves", gear->machine);
  text (out, "storage", gear->storage);
}

void
sy_task_write_json (GString *out, const SyTask *task, double today)
{
  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, task->name);
  text (out, "id", task->id);
  text (out, "kind", task->item_kind);
  text (out, "place", task->place);
  text (out, "method", task->method);
  text (out, "units", task->units);
  text (out, "verdict", sy_verdict_id (task->verdict));
  text (out, "index", task->index_symbol);
  if (*task->index_symbol != '\0')
    index_value (out, task->index_symbol, task->index);
  number (out, "mass_kg", task->mass_kg);
  number (out, "persons", task->persons);
  number (out, "lifts_per_day", task->lifts_per_day);
  index_value (out, "rank", task->rank);
  text (out, "valid_until", task->valid_until);
  if (sy_task_is_expired (task, today))
    g_string_append (out, ",\"expired\":true");
  if (strcmp (task->item_kind, SY_ITEM_DIE) == 0)
    write_die (out, &task->detail);
  if (strcmp (task->item_kind, SY_ITEM_GEAR) == 0)
    write_gear (out, &task->detail);
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

void
sy_attachment_write_json (GString *out, const SyAttachment *attachment)
{
  g_autofree char *hash = sy_hash_text (&attachment->hash);

  g_string_append (out, "{\"name\":");
  sy_json_write_text (out, attachment->name);
  text (out, "id", attachment->item);
  text (out, "media", attachment->media);
  number (out, "bytes", (double) attachment->bytes);
  text (out, "sha256", attachment->sha256);
  text (out, "who", attachment->by);
  text (out, "role", attachment->role);
  text (out, "when", attachment->when);
  text (out, "why", attachment->why);
  number (out, "line", (double) attachment->line);
  text (out, "hash", hash);
  g_string_append_c (out, '}');
}
