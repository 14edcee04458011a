/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-ledger.h"
#include "sy-record-json-private.h"

void
sy_record_json_text (GString *out, const char *name, const char *value)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_text (out, value);
}

void
sy_record_json_number (GString *out, const char *name, double value)
{
  g_string_append_printf (out, ",\"%s\":", name);
  sy_json_write_number (out, value);
}

void
sy_record_json_done (GString *out, const char *by, const char *role, const char *when, const char *written,
                     gboolean clock_set, const char *why)
{
  sy_record_json_text (out, "who", by);
  sy_record_json_text (out, "role", role);
  sy_record_json_text (out, "when", when);
  sy_record_json_text (out, "written", written);
  if (clock_set)
    g_string_append (out, ",\"clock_set\":true");
  sy_record_json_text (out, "why", why);
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
  sy_record_json_number (out, "mass_with_allowance_kg", die->mass_with_allowance_kg);
  for (gsize i = 0; i < G_N_ELEMENTS (die->cg_mm); i++)
    {
      g_string_append (out, i == 0 ? ",\"cg_mm\":[" : ",");
      sy_json_write_number (out, die->cg_mm[i]);
    }
  g_string_append_c (out, ']');
  sy_record_json_text (out, "machine", die->machine);
  sy_record_json_text (out, "storage", die->storage);
}

static void
write_gear (GString *out, const SyItemDetail *gear)
{
  sy_record_json_text (out, "gear", gear->gear_kind);
  sy_record_json_text (out, "identity", gear->identity);
  sy_record_json_number (out, "wll_kg", gear->wll_kg);
  sy_record_json_text (out, "due", gear->due);
  g_string_append_printf (out, ",\"withdrawn\":%s", gear->withdrawn ? "true" : "false");
  sy_record_json_text (out, "serves", gear->machine);
  sy_record_json_text (out, "storage", gear->storage);
}

/* What was done about the item, only where something was. */
static void
write_deeds (GString *out, const SyTask *task, double today)
{
  double due;

  if (task->signed_revision > 0)
    {
      g_string_append_printf (out, ",\"signed\":{\"revision\":%" G_GINT64_FORMAT, task->signed_revision);
      sy_record_json_text (out, "who", task->signed_by);
      sy_record_json_text (out, "role", task->signed_role);
      sy_record_json_text (out, "when", task->signed_when);
      g_string_append_printf (out, ",\"own\":%s}", task->signed_own ? "true" : "false");
    }
  if (task->n_open > 0)
    sy_record_json_number (out, "open_actions", (double) task->n_open);
  if (*task->action_due != '\0')
    sy_record_json_text (out, "action_due", task->action_due);
  if (*task->review_due != '\0')
    {
      g_string_append (out, ",\"review\":{\"due\":");
      sy_json_write_text (out, task->review_due);
      sy_record_json_text (out, "trigger", task->review_trigger);
      if (sy_date_read (task->review_due, &due) && today > due)
        g_string_append (out, ",\"overdue\":true");
      g_string_append_c (out, '}');
    }
  if (task->retired)
    g_string_append (out, ",\"retired\":true");
  if (task->told_revision > 0)
    sy_record_json_number (out, "told_revision", (double) task->told_revision);
  if (task->loosened)
    g_string_append (out, ",\"loosened\":true");
}

void
sy_task_write_json (GString *out, const SyTask *task, double today)
{
  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, task->name);
  sy_record_json_text (out, "id", task->id);
  sy_record_json_text (out, "kind", task->item_kind);
  sy_record_json_text (out, "place", task->place);
  sy_record_json_text (out, "method", task->method);
  sy_record_json_text (out, "units", task->units);
  sy_record_json_text (out, "verdict", sy_verdict_id (task->verdict));
  sy_record_json_text (out, "index", task->index_symbol);
  if (*task->index_symbol != '\0')
    index_value (out, task->index_symbol, task->index);
  sy_record_json_number (out, "mass_kg", task->mass_kg);
  sy_record_json_number (out, "persons", task->persons);
  sy_record_json_number (out, "lifts_per_day", task->lifts_per_day);
  index_value (out, "rank", task->rank);
  sy_record_json_text (out, "valid_until", task->valid_until);
  if (sy_task_is_expired (task, today))
    g_string_append (out, ",\"expired\":true");
  if (strcmp (task->item_kind, SY_ITEM_DIE) == 0)
    write_die (out, &task->detail);
  if (strcmp (task->item_kind, SY_ITEM_GEAR) == 0)
    write_gear (out, &task->detail);
  if (strcmp (task->item_kind, SY_ITEM_CHANGEOVER) == 0)
    sy_record_json_text (out, "machine", task->detail.machine);
  sy_record_json_number (out, "revision", (double) task->revision);
  if (task->clash > 0)
    sy_record_json_number (out, "clash", (double) task->clash);
  sy_record_json_text (out, "who", task->by);
  if (*task->role != '\0')
    sy_record_json_text (out, "role", task->role);
  sy_record_json_text (out, "when", task->when);
  sy_record_json_text (out, "why", task->why);
  sy_record_json_text (out, "begun", task->begun);
  sy_record_json_number (out, "edition", (double) task->edition);
  sy_record_json_text (out, "policy", task->policy);
  write_deeds (out, task, today);
  g_string_append_c (out, '}');
}

void
sy_revision_write_json (GString *out, const SyRevision *revision)
{
  const SyEvent *event = revision->event;
  g_autofree char *hash = sy_hash_text (&revision->hash);

  g_string_append (out, "{\"task\":");
  sy_json_write_text (out, event->name);
  sy_record_json_text (out, "id", event->item);
  sy_record_json_number (out, "revision", (double) event->revision);
  sy_record_json_number (out, "base", (double) event->base);
  sy_record_json_done (out, event->by, event->role, event->claimed, event->written, event->clock_set, event->why);
  sy_record_json_text (out, "program", event->program);
  sy_record_json_text (out, "method", event->method);
  sy_record_json_number (out, "edition", (double) event->edition);
  sy_record_json_text (out, "policy", event->policy);
  sy_record_json_number (out, "line", (double) revision->number);
  sy_record_json_text (out, "hash", hash);
  /* Facts and findings as they were stored, to the byte. */
  g_string_append_printf (out, ",\"facts\":%s,\"findings\":%s}", event->facts, event->findings);
}

void
sy_attachment_write_json (GString *out, const SyAttachment *attachment)
{
  g_autofree char *hash = sy_hash_text (&attachment->hash);

  g_string_append (out, "{\"name\":");
  sy_json_write_text (out, attachment->name);
  sy_record_json_text (out, "id", attachment->item);
  sy_record_json_text (out, "media", attachment->media);
  sy_record_json_number (out, "bytes", (double) attachment->bytes);
  sy_record_json_text (out, "sha256", attachment->sha256);
  sy_record_json_text (out, "who", attachment->by);
  sy_record_json_text (out, "role", attachment->role);
  sy_record_json_text (out, "when", attachment->when);
  sy_record_json_text (out, "why", attachment->why);
  sy_record_json_number (out, "line", (double) attachment->line);
  sy_record_json_text (out, "hash", hash);
  g_string_append_c (out, '}');
}
