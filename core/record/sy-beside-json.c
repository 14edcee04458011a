/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-beside.h"
#include "sy-json.h"

static void
text_member (GString *out, const char *key, const char *value)
{
  g_string_append_printf (out, ",\"%s\":", key);
  if (value != NULL)
    sy_json_write_text (out, value);
  else
    g_string_append (out, "null");
}

/* Without a bound it is no number: null, as everywhere, with the state beside it. */
static void
number_member (GString *out, const char *key, double value)
{
  g_string_append_printf (out, ",\"%s\":", key);
  sy_json_write_number (out, value);
}

static void
write_side (GString *out, const char *key, const SyBesideSide *side, const SyEvent *event)
{
  g_string_append_printf (out, ",\"%s\":{\"task\":", key);
  sy_json_write_text (out, event->name);
  if (event->revision > 0)
    {
      text_member (out, "id", event->item);
      g_string_append_printf (out, ",\"revision\":%" G_GINT64_FORMAT, event->revision);
    }
  text_member (out, "method", event->method);
  g_string_append_printf (out, ",\"edition\":%" G_GINT64_FORMAT, event->edition);
  text_member (out, "units", sy_units_id (side->units));
  text_member (out, "policy", event->policy);
  text_member (out, "verdict", side->has_verdict ? sy_verdict_id (side->verdict) : NULL);
  if (*side->index_symbol != '\0')
    {
      text_member (out, "index", side->index_symbol);
      number_member (out, "value", side->index);
      if (isinf (side->index))
        text_member (out, "state", "unbounded");
      number_member (out, "goal", side->goal);
    }
  g_string_append_c (out, '}');
}

static void
write_value (GString *out, const SyBesideRow *row, const char *key, int side)
{
  if (isnan (row->values[side]))
    return;
  g_string_append_printf (out, ",\"%s\":", key);
  sy_json_write_number (out, row->values[side]);
  if (isinf (row->values[side]))
    g_string_append_printf (out, ",\"%s_state\":\"unbounded\"", key);
}

static void
write_rows (GString *out, const char *key, GPtrArray *rows, const char *id)
{
  g_string_append_printf (out, ",\"%s\":[", key);
  for (guint i = 0; i < rows->len; i++)
    {
      const SyBesideRow *row = rows->pdata[i];

      g_string_append_printf (out, "%s{\"%s\":", i > 0 ? "," : "", id);
      sy_json_write_text (out, row->id);
      text_member (out, "name", row->name);
      text_member (out, "old", row->texts[0]);
      text_member (out, "new", row->texts[1]);
      write_value (out, row, "old_value", 0);
      write_value (out, row, "new_value", 1);
      if (!isnan (row->goals[0]))
        number_member (out, "old_goal", row->goals[0]);
      if (!isnan (row->goals[1]))
        number_member (out, "new_goal", row->goals[1]);
      text_member (out, "turn", sy_turn_id (row->turn));
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
write_limits (GString *out, GPtrArray *rows)
{
  g_string_append (out, ",\"limits\":[");
  for (guint i = 0; i < rows->len; i++)
    {
      const SyBesideRow *row = rows->pdata[i];
      static const char *const keys[] = { "old", "new" };

      g_string_append (out, i > 0 ? ",{\"id\":" : "{\"id\":");
      sy_json_write_text (out, row->id);
      text_member (out, "name", row->name);
      g_string_append (out, row->from_memory ? ",\"from_memory\":true" : ",\"from_memory\":false");
      for (int side = 0; side < 2; side++)
        {
          gboolean told, holds = sy_beside_holds (row, side, &told);

          g_string_append_printf (out, ",\"%s\":", keys[side]);
          if (row->texts[side] == NULL)
            {
              g_string_append (out, "null");
              continue;
            }
          g_string_append (out, "{\"ratio\":");
          sy_json_write_number (out, row->values[side]);
          if (isinf (row->values[side]))
            g_string_append (out, ",\"state\":\"unbounded\"");
          number_member (out, "goal", row->goals[side]);
          g_string_append_printf (out, ",\"held\":%s}", !told ? "null" : holds ? "true" : "false");
        }
      text_member (out, "turn", sy_turn_id (row->turn));
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

void
sy_beside_write_json (GString *out, const SyBeside *beside, const SyEvent *before, const SyEvent *after)
{
  g_autofree char *caution = sy_words_screening (NULL);

  g_string_append (out, "{\"sentence\":");
  sy_json_write_text (out, beside->sentence);
  write_side (out, "before", &beside->sides[0], before);
  write_side (out, "after", &beside->sides[1], after);
  text_member (out, "units", sy_units_id (beside->units));
  g_string_append (out, beside->same_method ? ",\"same_method\":true" : ",\"same_method\":false");
  write_rows (out, "changed", beside->changed, "path");
  write_rows (out, "bought", beside->bought, "id");
  write_limits (out, beside->limits);
  write_rows (out, "reasons", beside->reasons, "id");
  g_string_append (out, ",\"remarks\":[");
  for (guint i = 0; i < beside->remarks->len; i++)
    {
      g_string_append (out, i > 0 ? "," : "");
      sy_json_write_text (out, beside->remarks->pdata[i]);
    }
  g_string_append_c (out, ']');
  text_member (out, "caution", caution);
  g_string_append_c (out, '}');
}
