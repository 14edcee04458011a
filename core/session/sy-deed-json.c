/* SPDX-License-Identifier: MIT */
#include "sy-date.h"
#include "sy-ledger-deeds.h"
#include "sy-record-json-private.h"

void
sy_action_write_json (GString *out, const SyAction *action, double today)
{
  double due;

  g_string_append (out, "{\"action\":");
  sy_json_write_text (out, action->id);
  sy_record_json_text (out, "task", action->item_name);
  sy_record_json_text (out, "id", action->item);
  sy_record_json_text (out, "kind", action->item_kind);
  sy_record_json_text (out, "what", action->what);
  sy_record_json_text (out, "about", action->about);
  sy_record_json_text (out, "assigned", action->assigned);
  sy_record_json_text (out, "due", action->due);
  g_string_append_printf (out, ",\"open\":%s", action->open ? "true" : "false");
  if (action->open && sy_date_read (action->due, &due) && today > due)
    g_string_append (out, ",\"overdue\":true");
  sy_record_json_text (out, "who", action->opened_by);
  sy_record_json_text (out, "when", action->opened_when);
  sy_record_json_text (out, "why", action->why);
  if (!action->open)
    {
      g_string_append (out, ",\"closed\":{\"who\":");
      sy_json_write_text (out, action->closed_by);
      sy_record_json_text (out, "when", action->closed_when);
      sy_record_json_text (out, "evidence", action->evidence);
      g_string_append_c (out, '}');
    }
  sy_record_json_number (out, "line", (double) action->line);
  g_string_append_c (out, '}');
}

void
sy_journal_row_write_json (GString *out, const SyJournalRow *row)
{
  const char *kind = sy_event_kind_id (row->kind);

  g_string_append (out, "{\"line\":");
  sy_json_write_number (out, (double) row->number);
  sy_record_json_text (out, "event", kind != NULL ? kind : "");
  sy_record_json_text (out, "task", row->name);
  sy_record_json_text (out, "id", row->item);
  sy_record_json_text (out, "kind", row->item_kind);
  sy_record_json_done (out, row->by, row->role, row->when, row->written, row->clock_set, row->why);
  if (row->revision > 0)
    sy_record_json_number (out, "revision", (double) row->revision);
  if (*row->verdict != '\0')
    sy_record_json_text (out, "verdict", row->verdict);
  sy_record_json_text (out, "words", row->words);
  g_string_append_c (out, '}');
}

void
sy_line_write_json (GString *out, const SyRevision *line)
{
  const SyEvent *event = line->event;
  const char *kind = sy_event_kind_id (event->kind);
  g_autofree char *hash = sy_hash_text (&line->hash);
  g_autofree char *words = sy_deed_words (event, NULL);

  g_string_append_printf (out, "{\"event\":\"%s\",", kind);
  if (event->kind == SY_EVENT_REVISION)
    {
      g_autoptr (GString) revision = g_string_new (NULL);

      sy_revision_write_json (revision, line);
      g_string_append (out, revision->str + 1);
      return;
    }
  g_string_append_printf (out, "\"%s\":", event->kind == SY_EVENT_ATTACHMENT ? "name" : "task");
  sy_json_write_text (out, event->name);
  sy_record_json_text (out, "id", event->item);
  if (event->revision > 0)
    sy_record_json_number (out, "revision", (double) event->revision);
  sy_record_json_done (out, event->by, event->role, event->claimed, event->written, event->clock_set, event->why);
  sy_record_json_text (out, "program", event->program);
  sy_record_json_number (out, "line", (double) line->number);
  sy_record_json_text (out, "hash", hash);
  if (*words != '\0')
    sy_record_json_text (out, "words", words);
  if (event->kind != SY_EVENT_ATTACHMENT)
    g_string_append_printf (out, ",\"facts\":%s", event->facts);
  g_string_append_c (out, '}');
}
