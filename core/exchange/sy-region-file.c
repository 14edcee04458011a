/* SPDX-License-Identifier: MIT */
#include "sy-region-file.h"

#include <gio/gio.h>
#include <string.h>

#include "sy-policy-file.h"
#include "sy-reader-private.h"
#include "sy-region-resource.h"

#define REGION_BYTES_MAX (64u * 1024u)

static const char *const ids[] = { "au", "ca", "eu", "other", "uk", "us", NULL };

const char *const *
sy_region_ids (void)
{
  return ids;
}

GBytes *
sy_region_bytes (const char *id)
{
  /* Naming the resource keeps the linker from dropping it out of the static library. */
  GResource *resource = sy_region_get_resource ();
  g_autofree char *path = g_strdup_printf ("/org/steelyard/regions/%s.json", id);

  return g_strv_contains (ids, id) ? g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL) : NULL;
}

/* ---- reading ---- */

static void
read_methods (SyReader *reader, const SyJson *object, SyDefersTo *row)
{
  const SyJson *list = sy_reader_list (reader, object, "methods", 32);

  if (list != NULL && list->n_children == 0)
    sy_reader_fail (reader, list, "at least one method was expected; without \"methods\" it is about all");
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    {
      gboolean known = FALSE;

      for (size_t i = 0; each->type == SY_JSON_TEXT && i < sy_method_count () && i < 32; i++)
        if (strcmp (each->text, sy_method_at (i)->id) == 0)
          {
            known = (row->methods >> i & 1u) == 0;
            row->methods |= 1u << i;
          }
      if (!known)
        sy_reader_fail (reader, list, "ids of methods were expected, each once");
    }
}

static void
read_defers_to (SyReader *reader, const SyJson *object, SyDefersTo *row)
{
  static const char *const names[] = { "title", "section", "about", "methods", "source", "from_memory", NULL };

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "title", row->title, sizeof row->title, TRUE);
  sy_reader_text (reader, object, "section", row->section, sizeof row->section, TRUE);
  sy_reader_text (reader, object, "about", row->about, sizeof row->about, TRUE);
  sy_reader_text (reader, object, "source", row->source, sizeof row->source, TRUE);
  row->from_memory = sy_reader_flag (reader, object, "from_memory");
  read_methods (reader, object, row);
}

void
sy_reader_rule (SyReader *reader, const SyJson *object, SyDefersTo *rule)
{
  static const char *const names[] = { "title", "section", "about", "methods", NULL };

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "title", rule->title, sizeof rule->title, TRUE);
  sy_reader_text (reader, object, "section", rule->section, sizeof rule->section, FALSE);
  sy_reader_text (reader, object, "about", rule->about, sizeof rule->about, TRUE);
  read_methods (reader, object, rule);
}

static void
read_kinds (SyReader *reader, const SyJson *object, SyInterval *interval)
{
  const SyJson *list = sy_reader_list (reader, object, "kinds", SY_N_GEAR_KINDS);

  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next)
    interval->kinds |= 1u << sy_reader_gear_kind (reader, list, each->type == SY_JSON_TEXT ? each->text : NULL);
}

static void
read_interval (SyReader *reader, const SyJson *object, SyInterval *interval)
{
  static const char *const names[] = { "what", "kinds", "months", "days", "when", "title", "section", "source", "from_memory",
                                       NULL };
  const gboolean months = sy_json_member (object, "months") != NULL, days = sy_json_member (object, "days") != NULL;

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "what", interval->what, sizeof interval->what, TRUE);
  sy_reader_text (reader, object, "when", interval->when, sizeof interval->when, FALSE);
  sy_reader_text (reader, object, "title", interval->title, sizeof interval->title, TRUE);
  sy_reader_text (reader, object, "section", interval->section, sizeof interval->section, TRUE);
  sy_reader_text (reader, object, "source", interval->source, sizeof interval->source, TRUE);
  interval->from_memory = sy_reader_flag (reader, object, "from_memory");
  interval->months = months ? (int) sy_reader_number (reader, object, "months", 1, 1200) : 0;
  interval->days = days ? (int) sy_reader_number (reader, object, "days", 1, 3660) : 0;
  if (months + days + (*interval->when != '\0') != 1)
    sy_reader_fail (reader, object, "exactly one of \"months\", \"days\", \"when\" was expected");
  read_kinds (reader, object, interval);
}

void
sy_reader_region (SyReader *reader, const SyJson *object, SyRegion *region)
{
  static const char *const names[] = { "id", "title", "edition", "units", "defers_to", "intervals", NULL };
  const SyJson *units = sy_json_member (object, "units"), *list;

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "id", region->id, sizeof region->id, TRUE);
  sy_reader_text (reader, object, "title", region->title, sizeof region->title, TRUE);
  sy_reader_text (reader, object, "edition", region->edition, sizeof region->edition, TRUE);
  region->has_units = units != NULL;
  if (units != NULL && (units->type != SY_JSON_TEXT || !sy_units_from_id (units->text, &region->units)))
    sy_reader_fail (reader, units, "metric or us was expected");
  sy_reader_part (reader, object, "defers_to", SY_JSON_ARRAY);
  sy_reader_part (reader, object, "intervals", SY_JSON_ARRAY);
  list = sy_reader_list (reader, object, "defers_to", SY_DEFERS_TO_MAX);
  for (const SyJson *row = list != NULL ? list->first : NULL; row != NULL && !reader->failed; row = row->next)
    read_defers_to (reader, row, &region->defers_to[region->n_defers_to++]);
  list = sy_reader_list (reader, object, "intervals", SY_INTERVALS_MAX);
  for (const SyJson *row = list != NULL ? list->first : NULL; row != NULL && !reader->failed; row = row->next)
    read_interval (reader, row, &region->intervals[region->n_intervals++]);
}

gboolean
sy_region_read (const char *text, gsize length, SyRegion *out, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyRegion *region = g_new0 (SyRegion, 1);
  SyReader reader = { error, "region", FALSE };
  const SyJson *root = sy_reader_scan (&reader, text, length, REGION_BYTES_MAX, memory);

  if (root != NULL)
    sy_reader_region (&reader, root, region);
  if (reader.failed)
    return FALSE;
  *out = *region;
  return TRUE;
}

/* ---- into a policy ---- */

/* As it stands in its file, set in by two blanks. */
static void
add_region (GString *out, const char *region, gsize length)
{
  g_autofree char *text = g_strndup (region, length);

  g_strchomp (text);
  g_string_append (out, ",\n  \"region\": ");
  for (const char *p = text; *p != '\0'; p++)
    {
      g_string_append_c (out, *p);
      if (*p == '\n')
        g_string_append (out, "  ");
    }
}

GBytes *
sy_region_into_policy (const char *policy, gsize length, const char *id, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyPolicy *read = g_new0 (SyPolicy, 1);
  g_autoptr (GBytes) region = sy_region_bytes (id);
  g_autofree char *known = g_strjoinv (", ", (char **) ids);
  SyReader reader = { error, "policy", FALSE };
  const SyJson *root, *named;
  const char *at, *end;
  GString *out;

  if (region == NULL)
    {
      g_set_error (error, SY_EXCHANGE_ERROR, SY_EXCHANGE_ERROR_POLICY, "region: given %s; allowed: %s", id, known);
      return NULL;
    }
  if (!sy_policy_read (policy, length, read, error))
    return NULL;
  if (read->has_region)
    {
      g_set_error (error, SY_EXCHANGE_ERROR, SY_EXCHANGE_ERROR_POLICY,
                   "region: given %s; the policy %s has a region of its own, %s, already", id, read->id, read->region.id);
      return NULL;
    }
  root = sy_reader_scan (&reader, policy, length, length, memory);
  if (root == NULL)
    return NULL;
  named = sy_json_member (root, "id");
  /* the quotation mark behind the id, the brace behind everything */
  at = named->raw + named->raw_length - 1;
  end = root->raw + root->raw_length - 1;
  out = g_string_new_len (policy, at - policy);
  g_string_append_printf (out, "-%s", id);
  g_string_append_len (out, at, end - at);
  while (out->len > 0 && g_ascii_isspace (out->str[out->len - 1]))
    g_string_truncate (out, out->len - 1);
  add_region (out, g_bytes_get_data (region, NULL), g_bytes_get_size (region));
  g_string_append (out, "\n}\n");
  return g_string_free_to_bytes (out);
}
