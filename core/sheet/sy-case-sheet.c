/* SPDX-License-Identifier: MIT */
/* The case for an aid on one page: side by side, what it depends on, who approves. */
#include <string.h>

#include "sy-case-facts.h"
#include "sy-case-table.h"
#include "sy-task-sheet-private.h"

#define TITLE_SHARE 0.3
#define SWINGS_SHOWN 3

static void
add_table (SyFolio *folio, const SyTaskSheet *sheet, const SyCaseTable *table)
{
  SyFolioColumn columns[SY_FOLIO_COLUMNS_MAX];
  const char *cells[SY_FOLIO_COLUMNS_MAX];

  columns[0] = (SyFolioColumn) { "", TITLE_SHARE, SY_TYPE_NOTE };
  for (guint c = 0; c < table->n_columns; c++)
    columns[c + 1] = (SyFolioColumn) { table->heads[c], (1 - TITLE_SHARE) / table->n_columns,
                                       (int) c == table->winner ? SY_TYPE_NOTE_STRONG : SY_TYPE_NOTE };
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Side by side")));
  sy_folio_table (folio, columns, table->n_columns + 1);
  for (guint i = 0; i < table->rows->len; i++)
    {
      const SyCaseRow *row = g_ptr_array_index (table->rows, i);

      cells[0] = row->title;
      for (guint c = 0; c < table->n_columns; c++)
        cells[c + 1] = row->cells[c];
      if (row->heavy)
        sy_folio_row_in (folio, cells, SY_TYPE_NOTE_STRONG);
      else
        sy_folio_row (folio, cells);
    }
}

static void
add_swings (SyFolio *folio, const SyTaskSheet *sheet, const SyCaseTable *table, guint shown)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Net present value with one figure off")), 0.5, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("With it low")), 0.25, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("With it high")), 0.25, SY_TYPE_NOTE },
  };

  if (*table->depends != '\0')
    sy_folio_paragraph (folio, table->depends, SY_TYPE_STRONG);
  if (table->swings->len == 0 || shown == 0)
    return;
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < table->swings->len && i < shown; i++)
    {
      const SyCaseSwing *swing = g_ptr_array_index (table->swings, i);
      const char *cells[] = { swing->input, swing->low, swing->high };

      sy_folio_row (folio, cells);
    }
}

static char *
amount (const SyEstimate *estimate, int given)
{
  return given && estimate->expected.given ? sy_words_number (estimate->expected.value, 2) : g_strdup ("–");
}

static void
add_rates (SyFolio *folio, const SyTaskSheet *sheet, const SyCaseFacts *facts)
{
  g_autofree char *times = amount (&facts->changes, facts->changes_given);
  g_autofree char *labour = amount (&facts->labour_rate, facts->labour_rate_given);
  g_autofree char *machine = amount (&facts->machine_rate, facts->machine_rate_given);
  g_autofree char *discount = facts->discount_rate.given ? sy_words_number (facts->discount_rate.value, 2) : g_strdup ("–");
  g_autofree char *years = facts->years.given ? sy_words_number (facts->years.value, 0) : g_strdup ("–");
  g_autofree char *words = sy_words_say (
    sheet->translate,
    N_ ("Counted with: labour {labour} an hour, machine {machine} an hour, {discount} % a year over {years} years, in "
        "{currency}; times a year {times} where given here."),
    "labour", labour, "machine", machine, "discount", discount, "years", years, "currency",
    facts->currency != NULL ? facts->currency : "–", "times", times, NULL);

  sy_folio_paragraph (folio, words, SY_TYPE_NOTE);
}

static const char *
kind_words (const SyTaskSheet *sheet, const SyCaseOption *option)
{
  return option->kind >= 0 ? sy_sheet_in (sheet, sy_aid_kind_choices[option->kind].label) : "–";
}

static void
add_options (SyFolio *folio, const SyTaskSheet *sheet, const SyCaseFacts *facts)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Option")), 0.24, SY_TYPE_NOTE_STRONG },
    { sy_sheet_in (sheet, N_ ("Kind of aid")), 0.18, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Quote")), 0.18, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Lead time, weeks")), 0.12, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("When the aid is down")), 0.28, SY_TYPE_NOTE },
  };
  const SyCaseOption *options = facts->options.items;

  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < facts->options.count; i++)
    {
      if (options[i].quote_number == NULL && options[i].quote_date == NULL && !options[i].lead_weeks.given
          && options[i].when_down == NULL)
        continue;
      const char *number = options[i].quote_number, *date = options[i].quote_date;
      g_autofree char *quote = g_strdup_printf ("%s%s%s", number != NULL ? number : "–", date != NULL ? ", " : "",
                                                date != NULL ? date : "");
      g_autofree char *lead = options[i].lead_weeks.given ? sy_words_number (options[i].lead_weeks.value, 0)
                                                          : g_strdup ("–");
      const char *cells[] = { options[i].label, kind_words (sheet, &options[i]), quote, lead,
                              options[i].when_down != NULL ? options[i].when_down : "–" };

      sy_folio_row (folio, cells);
    }
}

/* Why options cannot win, and what the result is not: the sentences alone, so that all stands on one page. */
static void
add_sentences (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const int n = sy_words_n_cautions (findings);

  for (int i = 0; i < findings->n_reasons; i++)
    {
      g_autofree char *words = sy_words_reason (findings, &findings->reasons[i], sheet->translate);

      sy_folio_paragraph (folio, words, SY_TYPE_NOTE);
    }
  for (int i = sy_words_n_foot (findings); i < n; i++)
    {
      g_autofree char *words = sy_words_caution (findings, i, NULL, sheet->translate);

      sy_folio_paragraph (folio, words, SY_TYPE_NOTE);
    }
}

static void
add_approval (SyFolio *folio, const SyTaskSheet *sheet, const SyCaseFacts *facts)
{
  const char *const labels[] = { sy_sheet_in (sheet, N_ ("Approved by")), sy_sheet_in (sheet, N_ ("Role")),
                                 sy_sheet_in (sheet, N_ ("Day")), sy_sheet_in (sheet, N_ ("Signature")) };
  const SyCaseApproval *approval = &facts->approval;

  if (!facts->approval_given || approval->who == NULL)
    {
      sy_folio_blanks (folio, labels, G_N_ELEMENTS (labels), 22);
      return;
    }
  g_autofree char *words = sy_words_say (sheet->translate, N_ ("Approved by {who}, {role}, {date}. The name is as typed, "
                                                               "not proved."),
                                         "who", approval->who, "role", approval->role != NULL ? approval->role : "–", "date",
                                         approval->date != NULL ? approval->date : "–", NULL);
  sy_folio_paragraph (folio, words, SY_TYPE_STRONG);
}

static SyFolio *
make (const SyTaskSheet *sheet, const SyCaseTable *table, guint swings)
{
  const SyCaseFacts *facts = sheet->facts->values;
  SyFolio *folio = sy_sheet_begin (sheet, N_ ("Case for a lift aid"));

  sy_sheet_add_lead (folio, sheet);
  add_table (folio, sheet, table);
  add_swings (folio, sheet, table, swings);
  add_options (folio, sheet, facts);
  add_rates (folio, sheet, facts);
  add_sentences (folio, sheet);
  add_approval (folio, sheet, facts);
  return folio;
}

/* What it depends on stands in a sentence too: the table of it gives way where the page would not hold all. */
SyFolio *
sy_case_sheet_new (const SyTaskSheet *sheet)
{
  g_autoptr (SyCaseTable) table = sy_case_table_new (sheet->findings, sheet->translate);
  SyFolio *folio = make (sheet, table, SWINGS_SHOWN);

  if (sy_folio_pages (folio) <= 1)
    return folio;
  sy_folio_free (folio);
  return make (sheet, table, 0);
}
