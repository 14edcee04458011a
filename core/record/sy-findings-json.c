/* SPDX-License-Identifier: MIT */
#include "sy-findings-json.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-json.h"
#include "sy-words-private.h"

/* Printing a number to the last bit is most of the work, and the values of the governing end stand in the findings
   several times: what was printed once is copied. */
#define PRINTED_MAX 64
typedef struct
{
  GString *out;
  const SyFindings *findings;
  struct
  {
    double value;
    gsize at, length;
  } printed[PRINTED_MAX];
  int n_printed;
} Writer;

static void
number (Writer *writer, double value)
{
  GString *out = writer->out;
  gsize at = out->len;

  for (int i = 0; i < writer->n_printed; i++)
    if (writer->printed[i].value == value)
      {
        gsize length = writer->printed[i].length;

        g_string_set_size (out, at + length);
        memcpy (out->str + at, out->str + writer->printed[i].at, length);
        return;
      }
  sy_json_write_number (out, value);
  if (writer->n_printed < PRINTED_MAX && isfinite (value))
    {
      writer->printed[writer->n_printed].value = value;
      writer->printed[writer->n_printed].at = at;
      writer->printed[writer->n_printed++].length = out->len - at;
    }
}

static void
key (GString *out, const char *name)
{
  g_string_append_c (out, '"');
  g_string_append (out, name);
  g_string_append (out, "\":");
}

static void
text_member (GString *out, const char *name, const char *text)
{
  g_string_append_c (out, ',');
  key (out, name);
  sy_json_write_text (out, text);
}

static void
number_member (Writer *writer, const char *name, double value)
{
  g_string_append_c (writer->out, ',');
  key (writer->out, name);
  number (writer, value);
}

/* A measure: a number, or the text of a date. */
static void
measure (Writer *writer, double value, SyKind kind)
{
  char date[SY_DATE_TEXT_MAX];

  if (kind != SY_KIND_DATE)
    {
      number (writer, value);
      return;
    }
  sy_date_print (value, date);
  sy_json_write_text (writer->out, date);
}

/* {"value":1.5} or {"value":null,"state":"unbounded"}, with the unit where one is given */
static void
value_object (Writer *writer, double value, SyKind kind, const char *unit)
{
  GString *out = writer->out;

  g_string_append (out, "{\"value\":");
  measure (writer, value, kind);
  if (unit != NULL)
    text_member (out, "unit", unit);
  if (isinf (value))
    g_string_append (out, ",\"state\":\"unbounded\"");
  g_string_append_c (out, '}');
}

static void
write_quantities (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  const char *between = "";

  g_string_append (out, ",\"quantities\":{");
  for (size_t i = 0; i < findings->method->n_symbols; i++)
    {
      const SyQuantity *quantity = &findings->quantities[i];
      if (quantity->state == SY_STATE_ABSENT)
        continue;
      g_string_append (out, between);
      key (out, quantity->symbol->symbol);
      value_object (writer, quantity->value, quantity->symbol->kind,
                    sy_unit_name (quantity->symbol->kind, findings->units));
      between = ",";
    }
  for (size_t i = 0; i < findings->sink.n_named; i++)
    {
      const SyQuantity *quantity = &findings->named[i].quantity;

      g_string_append (out, between);
      /* the name is the facts' own: any text */
      sy_json_write_text (out, findings->named[i].text);
      g_string_append_c (out, ':');
      value_object (writer, quantity->value, quantity->symbol->kind,
                    sy_unit_name (quantity->symbol->kind, findings->units));
      between = ",";
    }
  g_string_append_c (out, '}');
}

static void
write_reasons (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  g_string_append (out, ",\"reasons\":[");
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];
      g_autofree char *text = sy_words_reason (findings, reason, NULL);

      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "id");
      sy_json_write_text (out, reason->id);
      text_member (out, "text", text);
      text_member (out, "verdict", sy_verdict_id (reason->verdict));
      if (reason->urgency != SY_URGENCY_NONE)
        text_member (out, "urgency", reason->urgency == SY_URGENCY_NOW ? "now" : "soon");
      g_autofree char *thing = reason->note == NULL && reason->quantity != NULL
                                 ? sy_words_thing (findings, reason->quantity->symbol->symbol, NULL)
                                 : NULL;
      if (thing != NULL)
        text_member (out, "subject", thing);
      if (reason->part != NULL)
        text_member (out, "subject", reason->part->label);
      if (reason->note != NULL && *reason->note->subject)
        text_member (out, "subject", reason->note->subject);
      if (reason->quantity != NULL)
        text_member (out, "quantity", reason->quantity->symbol->symbol);
      if (reason->has_value)
        {
          g_string_append (out, ",\"value\":");
          measure (writer, reason->value, reason->kind);
          if (isinf (reason->value))
            text_member (out, "state", "unbounded");
        }
      if (reason->has_limit)
        {
          g_string_append (out, ",\"limit\":");
          measure (writer, reason->limit, reason->kind);
        }
      if (reason->has_value)
        text_member (out, "unit", sy_unit_name (reason->kind, findings->units));
      if (reason->source != NULL && *reason->source)
        text_member (out, "source", reason->source);
      if (reason->from_memory)
        g_string_append (out, ",\"from_memory\":true");
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
write_parts (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;

  g_string_append (out, ",\"parts\":[");
  for (int i = 0; i < findings->n_parts; i++)
    {
      const SyPartShown *part = &findings->parts[i];

      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "label");
      sy_json_write_text (out, part->label);
      if (part->method != NULL)
        {
          text_member (out, "method", part->method->id);
          number_member (writer, "edition", part->method->edition);
          text_member (out, "verdict", sy_verdict_id (part->verdict));
          if (findings->method->choose != NULL)
            g_string_append (out, part->counts ? ",\"counts\":true" : ",\"counts\":false");
        }
      if (part->index_symbol != NULL && !isnan (part->index))
        {
          text_member (out, "index", part->index_symbol);
          number_member (writer, "value", part->index);
          if (isinf (part->index))
            text_member (out, "state", "unbounded");
        }
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
write_limits (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;

  g_string_append (out, ",\"limits\":[");
  for (int i = 0; i < findings->n_limits; i++)
    {
      const SyLimitShown *shown = &findings->limits[i];

      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "id");
      sy_json_write_text (out, shown->limit->id);
      text_member (out, "title", shown->limit->title);
      text_member (out, "edition", shown->limit->edition);
      g_string_append (out, shown->limit->from_memory ? ",\"from_memory\":true" : ",\"from_memory\":false");
      text_member (out, "value", shown->value->symbol->symbol);
      text_member (out, "limit", shown->at->symbol->symbol);
      number_member (writer, "ratio", shown->ratio);
      if (isinf (shown->ratio))
        text_member (out, "state", "unbounded");
      number_member (writer, "goal", shown->goal);
      g_string_append (out, shown->governs ? ",\"governs\":true}" : ",\"governs\":false}");
    }
  g_string_append_c (out, ']');
}

static void
write_change_value (Writer *writer, const SyChange *change, double value)
{
  GString *out = writer->out;
  const SyField *field = sy_method_field (writer->findings->method, change->path, NULL);
  size_t at = (size_t) value;

  switch (change->type)
    {
    case SY_CHANGE_NUMBER:
      number (writer, value);
      break;
    case SY_CHANGE_CHOICE:
      sy_json_write_text (out, field != NULL && at < field->n_choices ? field->choices[at].id : "");
      break;
    case SY_CHANGE_BOOL:
      g_string_append (out, value > 0 ? "true" : "false");
      break;
    }
}

static void
write_remedies (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  g_string_append (out, ",\"remedies\":[");
  for (int i = 0; i < findings->n_remedies; i++)
    {
      const SyRemedy *remedy = &findings->remedies[i];
      g_autofree char *text = sy_words_remedy (findings, remedy, NULL);

      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "id");
      sy_json_write_text (out, remedy->id);
      g_string_append (out, ",\"changes\":[");
      for (int k = 0; k < remedy->n_changes; k++)
        {
          const SyChange *change = &remedy->changes[k];

          g_string_append (out, k > 0 ? ",{" : "{");
          key (out, "path");
          sy_json_write_text (out, change->path);
          text_member (out, "factor", change->factor);
          g_string_append (out, ",\"from\":");
          write_change_value (writer, change, remedy->before[k]);
          g_string_append (out, ",\"to\":");
          write_change_value (writer, change, change->value);
          if (change->type == SY_CHANGE_NUMBER)
            text_member (out, "unit", sy_unit_name (change->kind, findings->units));
          g_string_append_c (out, '}');
        }
      g_string_append_c (out, ']');
      number_member (writer, findings->sink.index_symbol, remedy->index);
      if (isinf (remedy->index))
        text_member (out, "state", "unbounded");
      if (findings->method->ratio_symbol != NULL)
        if (findings->method->ratio_symbol != NULL)
        number_member (writer, findings->method->ratio_symbol, remedy->ratio);
      text_member (out, "verdict", sy_verdict_id (remedy->verdict));
      g_string_append (out, remedy->reaches ? ",\"reaches\":true" : ",\"reaches\":false");
      text_member (out, "text", text);
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
write_cautions (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  int n = sy_words_n_cautions (findings);

  g_string_append (out, ",\"cautions\":[");
  for (int i = 0; i < n; i++)
    {
      const char *id;
      g_autofree char *text = sy_words_caution (findings, i, &id, NULL);

      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "id");
      sy_json_write_text (out, id);
      text_member (out, "text", text);
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

/* Kept with the result: what a policy says later is another matter. */
static void
write_defers_to (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  const SyDefersTo *row;

  g_string_append (out, ",\"defers_to\":[");
  for (int i = 0; (row = sy_policy_defers_to (findings->policy, findings->method, i)) != NULL; i++)
    {
      g_string_append (out, i > 0 ? ",{" : "{");
      key (out, "title");
      sy_json_write_text (out, row->title);
      text_member (out, "section", row->section);
      text_member (out, "about", row->about);
      if (row->from_memory)
        g_string_append (out, ",\"from_memory\":true");
      g_string_append_c (out, '}');
    }
  g_string_append_c (out, ']');
}

static void
write_spread (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  const SySpread *spread = &findings->spread;

  g_string_append (out, ",\"spread\":{\"index\":");
  sy_json_write_text (out, findings->sink.index_symbol);
  g_string_append (out, ",\"p5\":");
  value_object (writer, spread->p5, SY_KIND_RATIO, NULL);
  g_string_append (out, ",\"median\":");
  value_object (writer, spread->median, SY_KIND_RATIO, NULL);
  g_string_append (out, ",\"p95\":");
  value_object (writer, spread->p95, SY_KIND_RATIO, NULL);
  number_member (writer, "share_over_goal", spread->share_over_goal);
  number_member (writer, "goal", spread->goal);
  number_member (writer, "draws", spread->draws);
  if (spread->driver != NULL)
    {
      text_member (out, "driver", spread->driver);
      number_member (writer, "driver_share", spread->driver_share);
    }
  text_member (out, "text", "A share of repeated measurements, not a chance of injury.");
  g_string_append_c (out, '}');
}

static void
write_cells (Writer *writer, const SyWorksheetPart *part)
{
  for (int i = 0; i < part->n_cells; i++)
    {
      if (i > 0)
        g_string_append_c (writer->out, ',');
      key (writer->out, part->cells[i].name);
      number (writer, part->cells[i].value);
      if (isinf (part->cells[i].value))
        text_member (writer->out, "state", "unbounded");
    }
}

static void
write_worksheet (Writer *writer)
{
  GString *out = writer->out;
  const SyFindings *findings = writer->findings;
  SyWorksheetPart part;

  g_string_append (out, ",\"worksheet\":{\"label\":");
  sy_json_write_text (out, "multipliers rounded half-up to 2 decimals, RWL and LI to 1, to be held against the "
                           "printed manual; the findings above are not rounded");
  for (size_t i = 0; findings->method->worksheet (&findings->sink, findings->units, i, &part); i++)
    {
      g_string_append_c (out, ',');
      if (*part.name != '\0')
        {
          key (out, part.name);
          g_string_append_c (out, '{');
        }
      write_cells (writer, &part);
      if (*part.name != '\0')
        g_string_append_c (out, '}');
    }
  g_string_append_c (out, '}');
}

void
sy_findings_write_json (GString *out, const SyFindings *findings, bool worksheet)
{
  const SyMethod *method = findings->method;
  Writer writer = { .out = out, .findings = findings, .n_printed = 0 };

  g_string_append (out, "{\"method\":");
  sy_json_write_text (out, method->id);
  number_member (&writer, "edition", method->edition);
  text_member (out, "source", method->source);
  text_member (out, "program", "steelyard " SY_VERSION);
  text_member (out, "units", sy_units_id (findings->units));
  g_string_append (out, ",\"policy\":{\"id\":");
  sy_json_write_text (out, findings->policy->id);
  number_member (&writer, "version", findings->policy->version);
  g_string_append_c (out, '}');
  if (!isnan (findings->as_of))
    {
      g_string_append (out, ",\"as_of\":");
      measure (&writer, findings->as_of, SY_KIND_DATE);
    }
  if (findings->sink.index_symbol != NULL)
    text_member (out, "index", findings->sink.index_symbol);
  write_quantities (&writer);
  text_member (out, "governing", findings->governing);
  text_member (out, "verdict", sy_verdict_id (findings->verdict));
  write_reasons (&writer);
  if (findings->n_parts > 0)
    write_parts (&writer);
  if (findings->n_limits > 0)
    write_limits (&writer);
  if (findings->has_remedies)
    write_remedies (&writer);
  write_cautions (&writer);
  if (sy_policy_says_defers_to (findings->policy))
    write_defers_to (&writer);
  if (findings->spread.present)
    write_spread (&writer);
  if (worksheet && method->worksheet != NULL)
    write_worksheet (&writer);
  g_string_append_c (out, '}');
}
