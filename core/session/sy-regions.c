/* SPDX-License-Identifier: MIT */
#include "sy-regions.h"

#include <string.h>

#include "sy-json.h"
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
