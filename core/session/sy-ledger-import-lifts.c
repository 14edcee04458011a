/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-ledger-exchange-private.h"
#include "sy-lift-table.h"

/* Many lifts from a table, in one append. */

/* A good row. */
typedef struct
{
  guint64 line;
  char *task, *facts, *findings;
} Row;

typedef struct
{
  SyDesk *desk;
  const SyImportRequest *request;
  const SyWatch *watch;
  const SyMethod *method;
  guint n_lines;   /* of the table */
  GPtrArray *rows; /* of Row       */
  SyLiftsReport *report;
} Lifts;

/* Of nine parts of the time eight go into assessing. */
#define ASSESSING 8u

static gboolean
watch_writing (guint64 done, G_GNUC_UNUSED guint64 of, gpointer user_data)
{
  const Lifts *lifts = user_data;
  const guint64 n = lifts->n_lines;

  return lifts->watch->func == NULL
         || lifts->watch->func (ASSESSING * n + MIN (done, n), (ASSESSING + 1) * n, lifts->watch->user_data);
}

static void
row_free (gpointer data)
{
  Row *row = data;

  g_free (row->task);
  g_free (row->facts);
  g_free (row->findings);
  g_free (row);
}

/* Every name once: two lines about one task would leave it open which is the latest. */
static void
check_task (const char *task, const SyCsvRow *row, GHashTable *tasks, GPtrArray *bad)
{
  const guint64 *other = g_hash_table_lookup (tasks, task);
  const SyLedgerText name = { "task", task, TRUE, TRUE };

  if (*task == '\0')
    sy_bad_cell_add (bad, row->line, "task", task, "a text that is not blank", "");
  else if (!sy_ledger_check_texts (&name, 1, NULL))
    sy_bad_cell_add (bad, row->line, "task", task, "a name in one line, without signs that cannot be seen", "");
  else if (other != NULL)
    {
      g_autofree char *allowed = g_strdup_printf ("a name that no other line has; line %" G_GUINT64_FORMAT " has it", *other);

      sy_bad_cell_add (bad, row->line, "task", task, allowed, "");
    }
  else
    g_hash_table_insert (tasks, g_strdup (task), g_memdup2 (&row->line, sizeof row->line));
}

static void
read_row (Lifts *lifts, const SyLiftTable *table, const SyCsvRow *line, GHashTable *tasks, SyProblems *problems)
{
  /* A dry run only needs the verdicts, which neither remedies nor spread change. */
  const SyJudgeFlags flags
    = SY_JUDGE_RECORD | (lifts->request->dry_run ? SY_JUDGE_PLAIN : SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD);
  GPtrArray *bad = lifts->report->bad;
  const guint n_bad = bad->len;
  g_autofree char *task = sy_lift_table_task (table, line);
  g_autofree char *facts = NULL;
  g_autoptr (SyAssessment) assessment = NULL;
  Row *row;

  lifts->report->rows++;
  check_task (task, line, tasks, bad);
  facts = sy_lift_table_document (table, line, bad);
  assessment = sy_desk_assess (lifts->desk, facts, strlen (facts), flags, problems);
  if (assessment == NULL)
    sy_lift_table_tell (table, line, problems, bad);
  if (bad->len > n_bad)
    return;
  row = g_new0 (Row, 1);
  row->line = line->line;
  row->task = g_steal_pointer (&task);
  row->facts = g_strdup (assessment->text);
  row->findings = sy_assessment_json (assessment, false);
  lifts->report->by_verdict[assessment->findings->verdict]++;
  g_ptr_array_add (lifts->rows, row);
}

static gboolean
read_rows (Lifts *lifts, const SyCsv *csv, GError **error)
{
  g_autoptr (SyLiftTable) table = sy_lift_table_new (csv, lifts->report->bad);
  g_autoptr (GHashTable) tasks = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  for (guint i = 1; i < csv->rows->len; i++)
    {
      if (!sy_watch (lifts->watch, ASSESSING * (guint64) i, (ASSESSING + 1) * (guint64) csv->rows->len, error))
        return FALSE;
      if (sy_lift_table_has (table, csv->rows->pdata[i], lifts->report->bad))
        read_row (lifts, table, csv->rows->pdata[i], tasks, problems);
    }
  return TRUE;
}

/* The revision that a row makes; counts it. @items: ids that other rows revise. */
static SyEvent *
make_revision (const Lifts *lifts, SyStore *store, const Row *row, const SyHead *head, GHashTable *items, GError **error)
{
  const SyImportRequest *request = lifts->request;
  const SyRecordRequest wanted = { .task = row->task, .by = request->by, .role = request->role, .why = request->why,
                                   .base = -1, .now = request->now, .clock_set = request->clock_set };
  const SyLedgerContent content = { lifts->method, row->facts, row->findings };
  g_autoptr (SyTask) task = NULL;

  if (!sy_ledger_find_item (store, &wanted, lifts->method, &task, error))
    {
      g_prefix_error (error, "line %" G_GUINT64_FORMAT ": ", row->line);
      return NULL;
    }
  /* by its id in one line and by its name in another */
  if (task != NULL && !g_hash_table_add (items, g_strdup (task->id)))
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NAME,
                   "line %" G_GUINT64_FORMAT ": task: given %s; allowed: a task that no other line is about", row->line,
                   row->task);
      return NULL;
    }
  if (task != NULL)
    lifts->report->revised++;
  else
    lifts->report->begun++;
  return sy_ledger_make_revision (lifts->desk, &wanted, &content, task, head, error);
}

static gboolean
write_lifts (SyStore *store, gpointer data, GError **error)
{
  Lifts *lifts = data;
  const SyImportRequest *request = lifts->request;
  const SyRecordRequest author = { .by = request->by, .role = request->role, .why = request->why, .now = request->now,
                                   .clock_set = request->clock_set };
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autoptr (GHashTable) items = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  SyHead head;

  lifts->report->begun = lifts->report->revised = 0;
  if (!sy_store_head (store, &head, error) || !sy_ledger_add_policy (store, lifts->desk, &author, events, error))
    return FALSE;
  for (guint i = 0; i < lifts->rows->len; i++)
    {
      SyEvent *event = make_revision (lifts, store, lifts->rows->pdata[i], &head, items, error);

      if (event == NULL)
        return FALSE;
      g_ptr_array_add (events, event);
    }
  if (!request->dry_run && lifts->report->bad->len == 0 && lifts->rows->len > 0)
    {
      if (!sy_store_append_many (store, &head, events, watch_writing, lifts, &head, error))
        return FALSE;
      lifts->report->added = lifts->rows->len;
    }
  lifts->report->head = head;
  return TRUE;
}

void
sy_lifts_report_clear (SyLiftsReport *report)
{
  g_clear_pointer (&report->bad, g_ptr_array_unref);
}

gboolean
sy_ledger_import_lifts (SyLedger *ledger, SyDesk *desk, GBytes *bytes, const SyImportRequest *request,
                        SyProgressFunc progress, gpointer user_data, SyLiftsReport *out, GError **error)
{
  const SyLedgerText texts[] = {
    { "by", request->by, TRUE, TRUE }, { "why", request->why, TRUE, FALSE }, { "role", request->role, FALSE, TRUE },
  };
  const SyWatch watch = { progress, user_data };
  g_autoptr (SyCsv) csv = NULL;
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (row_free);
  SyLiftsReport report = { .rows = 0 };
  Lifts lifts = { .desk = desk, .request = request, .watch = &watch, .method = sy_method_find ("lift"), .rows = rows,
                  .report = &report };

  if (!sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error))
    return FALSE;
  csv = sy_lift_table_read (bytes, error);
  if (csv == NULL)
    return FALSE;
  lifts.n_lines = csv->rows->len;
  report.bad = g_ptr_array_new_with_free_func (sy_bad_cell_free);
  if (!read_rows (&lifts, csv, error) || !sy_ledger_write (ledger, write_lifts, &lifts, error))
    {
      sy_lifts_report_clear (&report);
      return FALSE;
    }
  *out = report;
  return TRUE;
}
