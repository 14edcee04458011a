/* SPDX-License-Identifier: MIT */
/* What was found, strictest first. */
#include <math.h>
#include <string.h>

#include "sy-json.h"
#include "sy-task-sheet-private.h"

/* ---- what the record says ---- */

static gboolean
recorded_verdict (const SyTaskSheet *sheet, SyVerdict *verdict)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const char *text = sheet->event->findings;
  const SyJson *root
    = sheet->task != NULL ? sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems) : NULL;
  const char *id = root != NULL ? sy_json_member_text (root, "verdict") : NULL;

  return id != NULL && sy_verdict_from_id (id, verdict);
}

SyVerdict
sy_sheet_verdict (const SyTaskSheet *sheet)
{
  const SyVerdict now = sheet->findings->verdict;
  SyVerdict recorded = now;

  if (!recorded_verdict (sheet, &recorded))
    return now;
  return sy_verdict_rank (recorded) > sy_verdict_rank (now) ? recorded : now;
}

void
sy_sheet_add_disagreement (SyFolio *folio, const SyTaskSheet *sheet, SyPageType type)
{
  const SyMethod *method = sheet->findings->method;
  SyVerdict recorded = sheet->findings->verdict;
  g_autofree char *words = NULL;

  if (!recorded_verdict (sheet, &recorded) || recorded == sheet->findings->verdict)
    return;
  words = sy_words_say (sheet->translate,
                        N_ ("The record says “{recorded}”, by {program} under {policy}. Worked out again now it is “{now}”. "
                            "The stricter one counts; have it assessed anew."),
                        "recorded", sy_sheet_in (sheet, sy_verdict_title_for (method, recorded)), "now",
                        sy_sheet_in (sheet, sy_verdict_title_for (method, sheet->findings->verdict)), "program",
                        sheet->event->program, "policy", sheet->event->policy, NULL);
  sy_folio_paragraph (folio, words, type);
}

/* Reasons as stored, where the record is the stricter one. */
static void
add_recorded_reasons (SyFolio *folio, const SyTaskSheet *sheet)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const char *text = sheet->event->findings;
  const SyJson *root, *reasons;

  if (sy_sheet_verdict (sheet) == sheet->findings->verdict)
    return;
  root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);
  reasons = root != NULL ? sy_json_member (root, "reasons") : NULL;
  for (const SyJson *each = reasons != NULL ? reasons->first : NULL; each != NULL; each = each->next)
    {
      const char *said = sy_json_member_text (each, "text"), *source = sy_json_member_text (each, "source");
      const char *cells[]
        = { said != NULL ? said : "", sy_sheet_in (sheet, N_ ("as recorded")), source != NULL ? source : "" };

      sy_folio_row (folio, cells);
    }
}

/* ---- the verdict ---- */

SyShape
sy_sheet_shape (SyVerdict verdict)
{
  static const SyShape shapes[SY_N_VERDICTS] = {
    [SY_VERDICT_BY_HAND] = SY_SHAPE_LEVEL,   [SY_VERDICT_WITHIN_CAPACITY] = SY_SHAPE_LEVEL,
    [SY_VERDICT_IMPROVE] = SY_SHAPE_DOWN,    [SY_VERDICT_INCOMPLETE] = SY_SHAPE_GAP,
    [SY_VERDICT_OUTSIDE] = SY_SHAPE_OUTSIDE, [SY_VERDICT_MECHANICAL] = SY_SHAPE_HOOK,
    [SY_VERDICT_DO_NOT_LIFT] = SY_SHAPE_HOOK_STRUCK,
  };

  return shapes[verdict];
}

char *
sy_sheet_percent (const SyFindings *findings, double part)
{
  return isinf (part) ? g_strdup ("∞") : sy_words_against (part * 100, 100, SY_KIND_PERCENT, findings->units);
}

char *
sy_sheet_figure (const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const char *symbol = findings->sink.index_symbol;
  const SyQuantity *index = symbol != NULL ? sy_findings_quantity (findings, symbol) : NULL;
  double goal = sy_policy_goal (findings->policy, findings->method, findings->units).index;
  g_autofree char *number = NULL;

  if (index == NULL || index->state == SY_STATE_ABSENT)
    return g_strdup ("");
  if (findings->method->by_capacity)
    return sy_sheet_percent (findings, index->value);
  number = sy_words_against (index->value, isfinite (goal) ? goal : 1, SY_KIND_RATIO, findings->units);
  return g_strdup_printf ("%s%s%s", sy_sheet_symbol (symbol), *sy_sheet_symbol (symbol) != '\0' ? " " : "", number);
}

const char *
sy_sheet_symbol (const char *symbol)
{
  return sy_words_has_sign (symbol) ? symbol : "";
}

void
sy_sheet_add_lead (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyVerdict verdict = sy_sheet_verdict (sheet);
  g_autofree char *figure = sy_sheet_figure (sheet);
  g_autofree char *result = sy_words_result (findings, sheet->translate);

  sy_folio_lead (folio, &(SyFolioLead) { .size = 32, .shape = sy_sheet_shape (verdict),
                                         .words = sy_sheet_in (sheet, sy_verdict_title_for (findings->method, verdict)),
                                         .figure = figure, .type = SY_TYPE_TITLE, .figure_type = SY_TYPE_LARGE,
                                         .share = 0.66 });
  sy_folio_paragraph (folio, sy_sheet_in (sheet, sy_verdict_meaning_for (findings->method, verdict)), SY_TYPE_BODY);
  /* The strictest reason stands beside the verdict: it must not hide behind an index. */
  if (findings->n_reasons > 0)
    {
      g_autofree char *why = sy_words_reason (findings, &findings->reasons[0], sheet->translate);

      sy_folio_paragraph (folio, why, SY_TYPE_STRONG);
    }
  if (result != NULL)
    sy_folio_paragraph (folio, result, SY_TYPE_BODY);
  sy_sheet_add_disagreement (folio, sheet, SY_TYPE_STRONG);
}

/* ---- reasons, remedies, cautions ---- */

/* Whether the figure was looked up is said beside it. */
static char *
source_words (const SyTaskSheet *sheet, const char *source, gboolean from_memory)
{
  if (!from_memory)
    return g_strdup (source != NULL ? source : "");
  return g_strdup_printf ("%s%s%s", source != NULL ? source : "", source != NULL && *source != '\0' ? "; " : "",
                          sy_sheet_in (sheet, N_ ("from memory, not checked")));
}

void
sy_sheet_add_reasons (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Reason")), 0.5, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Asks for")), 0.2, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Source")), 0.3, SY_TYPE_NOTE },
  };

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Why")));
  if (findings->n_reasons == 0 && sy_sheet_verdict (sheet) == findings->verdict)
    {
      sy_folio_paragraph (
        folio, sy_sheet_in (sheet, N_ ("No limit is broken and nothing that the verdict needs is missing.")), SY_TYPE_BODY);
      return;
    }
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  add_recorded_reasons (folio, sheet);
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];
      g_autofree char *words = sy_words_reason (findings, reason, sheet->translate);
      g_autofree char *source = source_words (sheet, reason->source, reason->from_memory);
      const char *asked = sy_sheet_in (sheet, sy_verdict_title_for (findings->method, reason->verdict));
      const char *cells[] = { words, asked, source };

      sy_folio_row (folio, cells);
    }
}

void
sy_sheet_add_remedies (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;

  if (!findings->has_remedies || findings->n_remedies == 0)
    return;
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("What would help")));
  for (int i = 0; i < findings->n_remedies; i++)
    {
      g_autofree char *words = sy_words_remedy (findings, &findings->remedies[i], sheet->translate);

      sy_folio_paragraph (folio, words, findings->remedies[i].reaches ? SY_TYPE_STRONG : SY_TYPE_BODY);
    }
}

void
sy_sheet_add_cautions (SyFolio *folio, const SyTaskSheet *sheet)
{
  const int n = sy_words_n_cautions (sheet->findings), foot = sy_words_n_foot (sheet->findings);

  if (n <= foot)
    return;
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("To be known with it")));
  for (int i = foot; i < n; i++)
    {
      g_autofree char *words = sy_words_caution (sheet->findings, i, NULL, sheet->translate);

      sy_folio_paragraph (folio, words, SY_TYPE_BODY);
    }
}

/* ---- limits beside each other ---- */

void
sy_sheet_add_limits (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Limit")), 0.27, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Edition")), 0.33, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Held against it")), 0.12, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("It is")), 0.1, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Ratio")), 0.08, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Goal")), 0.1, SY_TYPE_NOTE },
  };

  if (findings->n_limits == 0)
    return;
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Limits beside each other")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (int i = 0; i < findings->n_limits; i++)
    {
      const SyLimitShown *shown = &findings->limits[i];
      g_autofree char *edition = source_words (sheet, shown->limit->edition, shown->limit->from_memory);
      g_autofree char *value = sy_words_quantity (shown->value->value, shown->value->symbol->kind, findings->units);
      g_autofree char *at = sy_words_quantity (shown->at->value, shown->at->symbol->kind, findings->units);
      g_autofree char *ratio = sy_words_against (shown->ratio, shown->goal, SY_KIND_RATIO, findings->units);
      g_autofree char *goal = sy_words_quantity (shown->goal, SY_KIND_RATIO, findings->units);
      g_autofree char *title = g_strdup_printf ("%s%s%s", sy_sheet_in (sheet, shown->limit->title),
                                                shown->governs ? "; " : "",
                                                shown->governs ? sy_sheet_in (sheet, N_ ("governs")) : "");
      const char *cells[] = { title, edition, value, at, ratio, goal };

      if (shown->governs)
        sy_folio_row_in (folio, cells, SY_TYPE_NOTE_STRONG);
      else
        sy_folio_row (folio, cells);
    }
}

/* ---- parts, formulas ---- */

void
sy_sheet_add_parts (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Part")), 0.4, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Assessed by")), 0.22, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Verdict")), 0.24, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Index")), 0.14, SY_TYPE_NOTE },
  };

  if (findings->n_parts == 0)
    return;
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Part by part")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (int i = 0; i < findings->n_parts; i++)
    {
      const SyPartShown *part = &findings->parts[i];
      const SyMethod *method = part->method;
      g_autofree char *number = isnan (part->index) ? g_strdup ("") : sy_words_number (part->index, 2);
      g_autofree char *index = *number != '\0' && part->index_symbol != NULL
                                ? g_strdup_printf ("%s %s", sy_sheet_symbol (part->index_symbol), number)
                                : g_strdup (number);
      
      const char *verdict = method != NULL ? sy_sheet_in (sheet, sy_verdict_title_for (method, part->verdict)) : "–";
      const char *cells[] = { part->label, method != NULL ? sy_sheet_in (sheet, method->title) : "–", verdict, index };

      sy_folio_row (folio, cells);
    }
}

/* Its formula with the numbers put in or, without one, its value. */
static char *
quantity_words (const SyFindings *findings, const SyQuantity *quantity)
{
  g_autofree char *formula = sy_words_formula (findings, quantity);
  g_autofree char *value = NULL;

  if (formula != NULL && g_str_has_prefix (formula, quantity->symbol->symbol))
    return g_steal_pointer (&formula);
  /* of several things alike it must be told of which */
  if (formula != NULL && strchr (quantity->symbol->symbol, '.') != NULL)
    return g_strdup_printf ("%s: %s", quantity->symbol->symbol, formula);
  if (formula != NULL)
    return g_steal_pointer (&formula);
  value = sy_words_quantity (quantity->value, quantity->symbol->kind, findings->units);
  return g_strdup_printf ("%s = %s", quantity->symbol->symbol, value);
}

static void
add_quantity (SyFolio *folio, const SyTaskSheet *sheet, const SyQuantity *quantity)
{
  g_autofree char *words = quantity_words (sheet->findings, quantity);
  const char *label = quantity->symbol->label != NULL ? sy_sheet_in (sheet, quantity->symbol->label) : "";
  const char *cells[] = { label, words, quantity->symbol->source != NULL ? quantity->symbol->source : "" };

  sy_folio_row (folio, cells);
}

void
sy_sheet_add_formulas (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Quantity")), 0.28, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Worked out")), 0.5, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Source")), 0.22, SY_TYPE_NOTE },
  };

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("How it was worked out")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (size_t i = 0; i < findings->method->n_symbols; i++)
    if (findings->quantities[i].state != SY_STATE_ABSENT)
      add_quantity (folio, sheet, &findings->quantities[i]);
  for (size_t i = 0; i < findings->sink.n_named; i++)
    add_quantity (folio, sheet, &findings->named[i].quantity);
}
