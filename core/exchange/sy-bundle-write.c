/* SPDX-License-Identifier: MIT */
#include "sy-bundle-private.h"
#include "sy-json.h"

const SyBundleField sy_bundle_fields[SY_BUNDLE_N_FIELDS] = {
  { "kind", SY_BUNDLE_KIND, G_STRUCT_OFFSET (SyEvent, kind) },
  { "item", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, item) },
  { "item_kind", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, item_kind) },
  { "name", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, name) },
  { "by", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, by) },
  { "role", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, role) },
  { "why", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, why) },
  { "claimed", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, claimed) },
  { "written", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, written) },
  { "clock_set", SY_BUNDLE_FLAG, G_STRUCT_OFFSET (SyEvent, clock_set) },
  { "program", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, program) },
  { "method", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, method) },
  { "edition", SY_BUNDLE_NUMBER, G_STRUCT_OFFSET (SyEvent, edition) },
  { "policy", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, policy) },
  { "revision", SY_BUNDLE_NUMBER, G_STRUCT_OFFSET (SyEvent, revision) },
  { "base", SY_BUNDLE_NUMBER, G_STRUCT_OFFSET (SyEvent, base) },
  { "facts", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, facts) },
  { "findings", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, findings) },
  { "origin", SY_BUNDLE_TEXT, G_STRUCT_OFFSET (SyEvent, origin) },
};

static void
add_hash (GString *out, const char *name, const SyHash *hash)
{
  g_autofree char *text = sy_hash_text (hash);

  g_string_append_printf (out, ",\"%s\":\"%s\"", name, text);
}

static void
add_event (GString *out, const SyEvent *event)
{
  gsize n_fields = *event->origin != '\0' ? SY_BUNDLE_N_FIELDS : SY_BUNDLE_N_FIELDS - 1;

  for (gsize i = 0; i < n_fields; i++)
    {
      const SyBundleField *field = &sy_bundle_fields[i];
      gconstpointer place = (const guint8 *) event + field->offset;

      g_string_append_printf (out, "%s\"%s\":", i == 0 ? "{" : ",", field->name);
      switch (field->type)
        {
        case SY_BUNDLE_KIND:
          sy_json_write_text (out, sy_event_kind_id (*(const SyEventKind *) place));
          break;
        case SY_BUNDLE_TEXT:
          sy_json_write_text (out, *(char *const *) place);
          break;
        case SY_BUNDLE_NUMBER:
          g_string_append_printf (out, "%" G_GINT64_FORMAT, *(const gint64 *) place);
          break;
        case SY_BUNDLE_FLAG:
          g_string_append (out, *(const gboolean *) place ? "true" : "false");
          break;
        }
    }
  g_string_append_c (out, '}');
}

void
sy_bundle_begin (GString *out, const char *made, const char *program, guint64 head_number, const SyHash *head_hash)
{
  g_string_append (out, "{\"bundle\":\"" SY_BUNDLE_MARK "\",\"made\":");
  sy_json_write_text (out, made);
  g_string_append (out, ",\"program\":");
  sy_json_write_text (out, program);
  g_string_append_printf (out, ",\"head\":{\"line\":%" G_GUINT64_FORMAT, head_number);
  add_hash (out, "hash", head_hash);
  g_string_append (out, "},\"lines\":[");
}

void
sy_bundle_add (GString *out, guint64 number, const SyHash *hash, const SyHash *event_hash, const SyEvent *event)
{
  /* A line of text each, so that other programs can compare two bundles. */
  g_string_append_printf (out, "%s\n{\"line\":%" G_GUINT64_FORMAT, number == 1 ? "" : ",", number);
  add_hash (out, "hash", hash);
  add_hash (out, "event_hash", event_hash);
  if (event != NULL)
    {
      g_string_append (out, ",\"event\":");
      add_event (out, event);
    }
  g_string_append_c (out, '}');
}

void
sy_bundle_end (GString *out)
{
  g_string_append (out, "\n]}\n");
}
