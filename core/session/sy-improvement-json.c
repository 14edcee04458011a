/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-ledger-improvement.h"
#include "sy-record-json-private.h"

static void
write_side (GString *out, const char *name, const char *task, const char *id, const char *kind, gint64 revision)
{
  g_string_append_printf (out, ",\"%s\":{\"task\":", name);
  sy_json_write_text (out, task);
  sy_record_json_text (out, "id", id);
  sy_record_json_text (out, "kind", kind);
  sy_record_json_number (out, "revision", (double) revision);
  g_string_append_c (out, '}');
}

/* One member for each that is known. */
static void
write_gains (GString *out, const double *values, const int *n_known)
{
  gboolean any = FALSE;

  g_string_append (out, ",\"gains\":{");
  for (int i = 0; i < SY_N_GAINS; i++)
    {
      if (n_known != NULL ? n_known[i] == 0 : isnan (values[i]))
        continue;
      g_string_append_printf (out, "%s\"%s\":", any ? "," : "", sy_gain_id ((SyGain) i));
      if (n_known != NULL)
        {
          g_string_append (out, "{\"sum\":");
          sy_json_write_number (out, values[i]);
          g_string_append_printf (out, ",\"of\":%d}", n_known[i]);
        }
      else
        sy_json_write_number (out, values[i]);
      any = TRUE;
    }
  g_string_append_c (out, '}');
}

void
sy_improvement_write_json (GString *out, const SyImprovementView *view)
{
  const SyImprovement *improvement = view->improvement;

  g_string_append (out, "{\"improvement\":");
  sy_json_write_text (out, improvement->id);
  sy_record_json_text (out, "what", improvement->what);
  sy_record_json_text (out, "idea_by", improvement->idea_by);
  sy_record_json_text (out, "put_to_work", improvement->put_to_work);
  write_side (out, "from", improvement->from_name, improvement->from_item, improvement->from_kind,
              improvement->from_revision);
  write_side (out, "to", improvement->item_name, improvement->item, improvement->item_kind, improvement->revision);
  if (view->beside != NULL)
    {
      g_string_append_printf (out, ",\"reached\":%s", view->reached ? "true" : "false");
      sy_record_json_text (out, "words", view->beside->sentence);
      write_gains (out, view->gains, NULL);
    }
  else
    g_string_append (out, ",\"not_here\":true");
  sy_record_json_text (out, "who", improvement->entered_by);
  sy_record_json_text (out, "when", improvement->entered_when);
  sy_record_json_text (out, "why", improvement->why);
  if (improvement->withdrawn)
    {
      g_string_append (out, ",\"withdrawn\":{\"who\":");
      sy_json_write_text (out, improvement->withdrawn_by);
      sy_record_json_text (out, "when", improvement->withdrawn_when);
      sy_record_json_text (out, "why", improvement->withdrawn_why);
      g_string_append_c (out, '}');
    }
  sy_record_json_number (out, "line", (double) improvement->line);
  g_string_append_c (out, '}');
}

void
sy_quarter_write_json (GString *out, const SyQuarter *quarter)
{
  g_string_append_c (out, '{');
  if (quarter->year > 0)
    {
      g_autofree char *label = sy_quarter_label (quarter);

      g_string_append_printf (out, "\"quarter\":\"%s\",", label);
    }
  g_string_append_printf (out, "\"improvements\":%d,\"reached\":%d", quarter->n, quarter->n_reached);
  write_gains (out, quarter->sums, quarter->n_known);
  g_string_append_c (out, '}');
}
