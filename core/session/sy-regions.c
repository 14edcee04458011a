/* SPDX-License-Identifier: MIT */
#include "sy-regions.h"

#include <string.h>

#include "sy-ledger-deeds.h"
#include "sy-region-file.h"

/* ---- those that come with the program ---- */

static gpointer
read_all (gpointer data)
{
  const char *const *ids = sy_region_ids ();
  SyRegion *regions = g_new0 (SyRegion, g_strv_length ((char **) ids));

  (void) data;
  for (gsize i = 0; ids[i] != NULL; i++)
    {
      g_autoptr (GBytes) bytes = sy_region_bytes (ids[i]);
      g_autoptr (GError) error = NULL;

      if (bytes == NULL
          || !sy_region_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &regions[i], &error))
        g_error ("the program was built without its region %s: %s", ids[i], error != NULL ? error->message : "");
    }
  return regions;
}

const SyRegion *
sy_regions (gsize *n)
{
  static GOnce once = G_ONCE_INIT;

  *n = g_strv_length ((char **) sy_region_ids ());
  return g_once (&once, read_all, NULL);
}

const SyRegion *
sy_regions_find (const char *id)
{
  gsize n;
  const SyRegion *regions = sy_regions (&n);

  for (gsize i = 0; i < n; i++)
    if (strcmp (regions[i].id, id) == 0)
      return &regions[i];
  return NULL;
}

/* ---- JSON ---- */

static void
text_member (GString *out, const char *name, const char *text)
{
  if (*text == '\0')
    return;
  g_string_append_printf (out, "%s\"%s\":", out->str[out->len - 1] == '{' ? "" : ",", name);
  sy_json_write_text (out, text);
}

/* Ids of those whose bits are set. */
static void
ids_member (GString *out, const char *name, unsigned bits, const char *(*id_of) (size_t i))
{
  const char *between = "";

  if (bits == 0)
    return;
  g_string_append_printf (out, ",\"%s\":[", name);
  for (size_t i = 0; i < 32; i++)
    if ((bits >> i & 1u) != 0)
      {
        g_string_append (out, between);
        sy_json_write_text (out, id_of (i));
        between = ",";
      }
  g_string_append_c (out, ']');
}

static const char *
method_id (size_t i)
{
  return sy_method_at (i)->id;
}

static const char *
gear_id (size_t i)
{
  return sy_gear_kind_choices[i].id;
}

void
sy_region_write_json (GString *out, const SyRegion *region)
{
  g_string_append_c (out, '{');
  text_member (out, "id", region->id);
  text_member (out, "title", region->title);
  text_member (out, "edition", region->edition);
  if (region->has_units)
    text_member (out, "units", sy_units_id (region->units));
  g_string_append_printf (out, ",\"defers_to\":%d,\"intervals\":%d}", region->n_defers_to, region->n_intervals);
}

void
sy_defers_to_write_json (GString *out, const SyDefersTo *row)
{
  g_string_append_c (out, '{');
  text_member (out, "row", "defers_to");
  text_member (out, "title", row->title);
  text_member (out, "section", row->section);
  text_member (out, "about", row->about);
  ids_member (out, "methods", row->methods, method_id);
  text_member (out, "source", row->source);
  g_string_append_printf (out, ",\"from_memory\":%s}", row->from_memory ? "true" : "false");
}

void
sy_interval_write_json (GString *out, const SyInterval *interval)
{
  g_string_append_c (out, '{');
  text_member (out, "row", "interval");
  text_member (out, "what", interval->what);
  ids_member (out, "kinds", interval->kinds, gear_id);
  if (interval->months > 0)
    g_string_append_printf (out, ",\"months\":%d", interval->months);
  if (interval->days > 0)
    g_string_append_printf (out, ",\"days\":%d", interval->days);
  text_member (out, "when", interval->when);
  text_member (out, "title", interval->title);
  text_member (out, "section", interval->section);
  text_member (out, "source", interval->source);
  g_string_append_printf (out, ",\"from_memory\":%s}", interval->from_memory ? "true" : "false");
}

/* ---- of a register ---- */

/* Methods of the rows that were judged under the policy; NULL-terminated, borrowed. */
static GPtrArray *
methods_under (const SyAudit *audit, const char *policy)
{
  GPtrArray *out = g_ptr_array_new ();

  for (guint i = 0; i < audit->rows->len; i++)
    {
      const SyTask *task = ((const SyAuditRow *) audit->rows->pdata[i])->task;

      if (strcmp (task->policy, policy) == 0 && !g_ptr_array_find_with_equal_func (out, task->method, g_str_equal, NULL))
        g_ptr_array_add (out, task->method);
    }
  g_ptr_array_add (out, NULL);
  return out;
}

static void
take_policy (SyAudit *audit, const char *text)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *id = sy_json_member_text (root, "id");
  g_autofree char *name = g_strdup_printf ("%s %d", id != NULL ? id : "", (int) sy_json_member_number (root, "version", 0));
  g_autoptr (GPtrArray) methods = methods_under (audit, name);

  if (methods->len > 1)
    sy_deferring_add_stored_policy (audit->deferring, root, (const char *const *) methods->pdata);
}

gboolean
sy_regions_of_audit (SyLedger *ledger, SyAudit *audit, GError **error)
{
  const SyJournalFilter filter = { .kind = SY_EVENT_POLICY };
  g_autoptr (GPtrArray) lines = sy_ledger_journal (ledger, &filter, 0, 0, error);

  if (lines == NULL)
    return FALSE;
  for (guint i = lines->len; i > 0; i--)
    {
      const guint64 number = ((SyJournalRow *) lines->pdata[i - 1])->number;
      SyRevision *line;

      if (number > audit->lines_then)
        continue;
      line = sy_ledger_line (ledger, number, error);
      if (line == NULL)
        return FALSE;
      take_policy (audit, line->event->facts);
      sy_revision_free (line);
    }
  return TRUE;
}
