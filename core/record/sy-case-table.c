/* SPDX-License-Identifier: MIT */
#include "sy-case-table.h"

#include <math.h>
#include <string.h>

#include "sy-words-private.h"

static const char *
in (SyTranslate translate, const char *msgid)
{
  return translate != NULL ? translate (msgid) : msgid;
}

/* ---- Figures ---- */

static guint
count_options (const SyFindings *findings)
{
  return (guint) (findings->n_parts - 1) / 2;
}

/* As it is stands first among the parts, then the facts and the aid of every option. */
static const SyPartShown *
part_of (const SyFindings *findings, guint column, gboolean aid)
{
  return &findings->parts[column == 0 ? 0 : 2 * column - 1 + (aid ? 1 : 0)];
}

static double
figure (const SyFindings *findings, guint column, const char *name)
{
  g_autofree char *symbol
      = column == 0 ? g_strconcat ("as_is.", name, NULL)
                    : g_strconcat ("option.", part_of (findings, column, FALSE)->label, ".", name, NULL);

  return sy_words_value (findings, symbol);
}

static char *
figure_words (const SyFindings *findings, double value, SyKind kind, int decimals)
{
  if (isnan (value))
    return g_strdup ("–");
  return decimals >= 0 ? sy_words_number (value, decimals) : sy_words_quantity (value, kind, findings->units);
}

/* The stricter of the facts and of the aid itself. */
static char *
verdict_words (const SyFindings *findings, guint column, SyTranslate translate)
{
  const SyPartShown *part = part_of (findings, column, FALSE);

  if (column > 0)
    {
      const SyPartShown *aid = part_of (findings, column, TRUE);

      if (part->method == NULL
          || (aid->method != NULL && sy_verdict_rank (aid->verdict) > sy_verdict_rank (part->verdict)))
        part = aid;
    }
  if (part->method == NULL)
    return g_strdup (in (translate, N_ ("Not assessed")));
  return g_strdup (in (translate, sy_verdict_title_for (part->method, part->verdict)));
}

/* ---- Lines ---- */

static SyCaseRow *
add_row (SyCaseTable *table, const char *title, gboolean heavy)
{
  SyCaseRow *row = g_new0 (SyCaseRow, 1);

  row->title = g_strdup (title);
  row->cells = g_new0 (char *, table->n_columns + 1);
  row->heavy = heavy;
  g_ptr_array_add (table->rows, row);
  return row;
}

/* @decimals: -1 with the kind's unit. */
static const struct
{
  const char *title, *name;
  SyKind kind;
  int decimals;
  gboolean heavy;
} lines[] = {
  { N_ ("Index"), "index", SY_KIND_RATIO, 2, FALSE },
  { N_ ("Heaviest mass by hand"), "heaviest", SY_KIND_MASS, -1, FALSE },
  { N_ ("Back compression, an estimate"), "back", SY_KIND_FORCE, -1, FALSE },
  { N_ ("People"), "people", SY_KIND_COUNT, 0, FALSE },
  { N_ ("Machine stands, each time"), "stopped", SY_KIND_MINUTES, -1, FALSE },
  { N_ ("Minutes of all people, each time"), "person", SY_KIND_MINUTES, -1, FALSE },
  { N_ ("Person-hours a year"), "person_hours", SY_KIND_RATIO, 0, FALSE },
  { N_ ("Price"), "capital", SY_KIND_MONEY, 0, FALSE },
  { N_ ("Training, once"), "training", SY_KIND_MONEY, 0, FALSE },
  { N_ ("Running, examination and maintenance, a year"), "yearly", SY_KIND_MONEY, 0, FALSE },
  { N_ ("Saving a year"), "saving", SY_KIND_MONEY, 0, FALSE },
  { N_ ("Pays back in years"), "payback", SY_KIND_RATIO, 1, FALSE },
  { N_ ("Net present value, expected"), "npv", SY_KIND_MONEY, 0, TRUE },
};

static double
value_of (const SyFindings *findings, guint column, const char *name)
{
  if (column == 0 && strcmp (name, "person_hours") == 0)
    return figure (findings, 0, "person") * sy_words_value (findings, "changes_per_year") / 60;
  return figure (findings, column, name);
}

/* A line that says nothing of any column is left away. */
static gboolean
is_known (const SyCaseTable *table, const SyFindings *findings, const char *name)
{
  for (guint c = 0; c < table->n_columns; c++)
    if (!isnan (value_of (findings, c, name)))
      return TRUE;
  return FALSE;
}

static void
add_range (SyCaseTable *table, const SyFindings *findings, SyTranslate translate)
{
  SyCaseRow *row = add_row (table, in (translate, N_ ("Net present value, least and most")), FALSE);

  for (guint c = 0; c < table->n_columns; c++)
    {
      double low = figure (findings, c, "npv.low"), high = figure (findings, c, "npv.high");
      g_autofree char *least = sy_words_number (low, 0), *most = sy_words_number (high, 0);

      row->cells[c] = isnan (low) || isnan (high)
                          ? g_strdup ("–")
                          : sy_words_say (translate, N_ ("{low} to {high}"), "low", least, "high", most, NULL);
    }
}

static void
add_lines (SyCaseTable *table, const SyFindings *findings, SyTranslate translate)
{
  SyCaseRow *verdicts = add_row (table, in (translate, N_ ("Verdict")), TRUE);

  for (guint c = 0; c < table->n_columns; c++)
    verdicts->cells[c] = verdict_words (findings, c, translate);
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      SyCaseRow *row;

      if (!is_known (table, findings, lines[i].name))
        continue;
      row = add_row (table, in (translate, lines[i].title), lines[i].heavy);
      for (guint c = 0; c < table->n_columns; c++)
        row->cells[c]
            = figure_words (findings, value_of (findings, c, lines[i].name), lines[i].kind, lines[i].decimals);
    }
  if (is_known (table, findings, "npv.low"))
    add_range (table, findings, translate);
}

/* ---- What it depends on ---- */

static const struct
{
  const char *name, *title;
} inputs[] = {
  { "capital", N_ ("Price") },
  { "training", N_ ("Training, once") },
  { "running", N_ ("Running, a year") },
  { "examination", N_ ("Examination, a year") },
  { "maintenance", N_ ("Maintenance, a year") },
  { "stopped", N_ ("Machine stands, each time") },
  { "person", N_ ("Minutes of all people, each time") },
  { "as_is_stopped", N_ ("As it is: machine stands, each time") },
  { "as_is_person", N_ ("As it is: minutes of all people, each time") },
  { "changes", N_ ("Times a year") },
  { "machine", N_ ("Machine, an hour") },
  { "labour", N_ ("Labour, an hour") },
};

static int
compare_swings (gconstpointer a, gconstpointer b)
{
  const SyCaseSwing *first = *(const SyCaseSwing *const *) a, *second = *(const SyCaseSwing *const *) b;

  return first->width < second->width ? 1 : first->width > second->width ? -1 : 0;
}

static void
add_swings (SyCaseTable *table, const SyFindings *findings, SyTranslate translate)
{
  for (gsize i = 0; i < G_N_ELEMENTS (inputs); i++)
    {
      g_autofree char *low_name = g_strdup_printf ("swing.%s.low", inputs[i].name);
      g_autofree char *high_name = g_strdup_printf ("swing.%s.high", inputs[i].name);
      double low = figure (findings, (guint) table->winner, low_name);
      double high = figure (findings, (guint) table->winner, high_name);
      SyCaseSwing *swing;

      if (isnan (low) || isnan (high))
        continue;
      swing = g_new0 (SyCaseSwing, 1);
      swing->input = g_strdup (in (translate, inputs[i].title));
      swing->low = sy_words_number (low, 0);
      swing->high = sy_words_number (high, 0);
      swing->width = fabs (high - low);
      g_ptr_array_add (table->swings, swing);
    }
  g_ptr_array_sort (table->swings, compare_swings);
}

static char *
depends_words (const SyCaseTable *table, SyTranslate translate)
{
  const SyCaseSwing *widest = table->swings->len > 0 ? g_ptr_array_index (table->swings, 0) : NULL;

  if (table->winner < 0)
    return g_strdup ("");
  if (widest == NULL)
    return g_strdup (in (translate, N_ ("Nothing was given as low and high: how much it depends on what is not known.")));
  return sy_words_say (translate, N_ ("It depends most on “{input}”: the net present value is {low} with it low and {high} "
                                      "with it high."),
                       "input", widest->input, "low", widest->low, "high", widest->high, NULL);
}

/* ---- The whole ---- */

static void
free_row (gpointer data)
{
  SyCaseRow *row = data;

  g_free (row->title);
  g_strfreev (row->cells);
  g_free (row);
}

static void
free_swing (gpointer data)
{
  SyCaseSwing *swing = data;

  g_free (swing->input);
  g_free (swing->low);
  g_free (swing->high);
  g_free (swing);
}

SyCaseTable *
sy_case_table_new (const SyFindings *findings, SyTranslate translate)
{
  SyCaseTable *table = g_new0 (SyCaseTable, 1);
  double winner = sy_words_value (findings, "winner");

  table->n_columns = 1 + count_options (findings);
  table->winner = isnan (winner) ? -1 : (int) winner;
  table->heads = g_new0 (char *, table->n_columns + 1);
  table->rows = g_ptr_array_new_with_free_func (free_row);
  table->swings = g_ptr_array_new_with_free_func (free_swing);
  table->heads[0] = g_strdup (in (translate, N_ ("As it is")));
  for (guint c = 1; c < table->n_columns; c++)
    table->heads[c] = g_strdup (part_of (findings, c, FALSE)->label);
  add_lines (table, findings, translate);
  if (table->winner > 0)
    add_swings (table, findings, translate);
  table->depends = depends_words (table, translate);
  return table;
}

void
sy_case_table_free (SyCaseTable *table)
{
  if (table == NULL)
    return;
  g_strfreev (table->heads);
  g_ptr_array_unref (table->rows);
  g_ptr_array_unref (table->swings);
  g_free (table->depends);
  g_free (table);
}
