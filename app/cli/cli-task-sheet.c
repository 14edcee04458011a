/* SPDX-License-Identifier: MIT */
/* Sheets of one revision of an item, or of one facts document. */
#include <glib/gi18n.h>
#include <string.h>

#include "cli-deed.h"
#include "cli-sheet.h"
#include "sy-task-sheet.h"

#define FLAGS (SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD)

gboolean
cli_is_task_sheet (const char *kind)
{
  return sy_task_sheet_kind (kind) != NULL;
}

gboolean
cli_task_sheet_takes (const char *kind, const char *paper)
{
  const SyTaskSheetKind *found = sy_task_sheet_kind (kind);
  SyPaper on;

  return found != NULL && sy_paper_from_id (paper, &on) && sy_task_sheet_takes (found, on);
}

char *
cli_task_sheet_kinds (void)
{
  gsize n;
  const SyTaskSheetKind *kinds = sy_task_sheet_kinds (&n);
  GString *out = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? ", " : "", kinds[i].id);
  return g_string_free (out, FALSE);
}

/* What the sheet is printed from. */
typedef struct
{
  SyDesk *desk;
  SyAssessment *assessment;
  SyEvent *event;   /* of a facts document */
  SyTask *task;
  SyRevision *revision;
  GPtrArray *events;
  SyHistoryLine *lines;
  SyHead head;
} Source;

static void
source_clear (Source *source)
{
  g_clear_pointer (&source->desk, sy_desk_unref);
  g_clear_pointer (&source->assessment, sy_assessment_unref);
  g_clear_pointer (&source->event, sy_event_free);
  g_clear_pointer (&source->task, sy_task_free);
  g_clear_pointer (&source->revision, sy_revision_free);
  g_clear_pointer (&source->events, g_ptr_array_unref);
  g_clear_pointer (&source->lines, g_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Source, source_clear)

static int
assess (Source *source, const char *what, const char *text, gsize length, SyJudgeFlags flags)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  source->assessment = sy_desk_assess (source->desk, text, length, flags, problems);
  if (source->assessment != NULL)
    return CLI_DONE;
  cli_print_problems (what, problems);
  return CLI_PROBLEM;
}

static int
read_document (Source *source, const CliTaskSheet *asked)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL, *base = NULL;
  gsize length = 0;
  int code;

  if (asked->n_names != 1)
    return cli_say (CLI_PROBLEM, "%s", _ ("without --store exactly one facts document is needed"));
  source->desk = cli_desk (asked->policy, &error);
  text = source->desk != NULL ? cli_read (asked->names[0], SY_JSON_DOCUMENT_MAX, &length, &error) : NULL;
  if (text == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  code = assess (source, asked->names[0], text, length, FLAGS);
  if (code != CLI_DONE)
    return code;
  base = g_path_get_basename (asked->names[0]);
  if (g_str_has_suffix (base, ".json"))
    base[strlen (base) - strlen (".json")] = '\0';
  source->event = sy_event_new (SY_EVENT_REVISION);
  sy_event_set (&source->event->name, base);
  sy_event_set (&source->event->facts, source->assessment->text);
  return CLI_DONE;
}

static void
borrow_lines (Source *source)
{
  source->lines = g_new0 (SyHistoryLine, source->events->len + 1);
  for (guint i = 0; i < source->events->len; i++)
    {
      const SyRevision *each = source->events->pdata[i];

      source->lines[i] = (SyHistoryLine) { each->number, each->hash, each->event };
    }
}

/* The limits in force in the record; those of the program where it has adopted none. */
static int
read_limits (Source *source, SyLedger *ledger)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = sy_ledger_policy (ledger, &error);

  if (error != NULL)
    return cli_say_ledger (error);
  source->desk = text != NULL ? sy_desk_new (text, strlen (text), &error) : sy_desk_new (NULL, 0, &error);
  return source->desk != NULL ? CLI_DONE : cli_say_error (CLI_FAILED, error);
}

static int
read_record (Source *source, const CliTaskSheet *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  gint64 number = 0;
  int code = CLI_DONE;

  if (asked->n_names < 1 || asked->n_names > 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  if (asked->policy != NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("--policy: a record has its own limits"));
  if (asked->n_names == 2 && !cli_read_revision (asked->names[1], &number))
    return CLI_PROBLEM;
  ledger = cli_store_there (asked->store, &code);
  if (ledger == NULL)
    return code;
  source->task = sy_ledger_find (ledger, asked->names[0], asked->item_kind, &error);
  if (source->task != NULL)
    source->revision
      = sy_ledger_revision (ledger, source->task->id, NULL, number > 0 ? number : source->task->revision, &error);
  if (source->revision != NULL)
    source->events = sy_ledger_events (ledger, source->task->id, NULL, &error);
  if (source->events == NULL || !sy_ledger_head (ledger, &source->head, &error))
    return cli_say_ledger (error);
  borrow_lines (source);
  code = read_limits (source, ledger);
  if (code != CLI_DONE)
    return code;
  return assess (source, asked->names[0], source->revision->event->facts, strlen (source->revision->event->facts),
                 FLAGS | SY_JUDGE_RECORD);
}

static SyFolio *
make (const Source *source, const CliTaskSheet *asked)
{
  const gboolean recorded = source->task != NULL;
  SyTaskSheet sheet = { .facts = &source->assessment->facts, .findings = source->assessment->findings, .event = source->event,
                        .paper = SY_PAPER_A4, .translate = cli_translate, .program = "steelyard " SY_VERSION,
                        .made = asked->now };

  sy_paper_from_id (asked->paper, &sheet.paper);
  if (recorded)
    {
      sheet.event = source->revision->event;
      sheet.task = source->task;
      sheet.line = source->revision->number;
      sheet.hash = source->revision->hash;
      sheet.head_line = source->head.number;
      sheet.head = source->head.hash;
      sheet.lines = source->lines;
      sheet.n_lines = source->events->len;
    }
  return sy_task_sheet_kind (asked->kind)->make (&sheet);
}

int
cli_task_sheet (const CliTaskSheet *asked)
{
  g_autoptr (GError) error = NULL;
  g_auto (Source) source = { .desk = NULL };
  g_autoptr (SyFolio) folio = NULL;
  int code = asked->store != NULL ? read_record (&source, asked) : read_document (&source, asked);

  if (code != CLI_DONE)
    return code;
  if (!sy_task_sheet_fits (sy_task_sheet_kind (asked->kind), source.assessment->facts.method))
    return cli_say (CLI_PROBLEM, _ ("--kind: given %s; not for the method %s"), asked->kind,
                    source.assessment->facts.method->id);
  folio = make (&source, asked);
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}
