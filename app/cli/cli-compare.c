/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli-compare.h"
#include "cli-deed.h"

void
cli_two_clear (CliTwo *two)
{
  for (int i = 0; i < 2; i++)
    g_clear_pointer (&two->sides[i], sy_event_free);
  g_clear_pointer (&two->desk, sy_desk_unref);
}

/* Topics: of a record */

typedef struct
{
  const char *name;
  const char *revision; /* NULL: the newest */
} Named;

static gboolean
is_number (const char *text)
{
  return *text != '\0' && strspn (text, "0123456789") == strlen (text);
}

/* A number behind a name is its revision; two numbers behind one name are two revisions of it. */
static gboolean
read_names (int n, char **names, Named *out)
{
  if (n == 2)
    {
      out[0] = (Named) { names[0], NULL };
      out[1] = is_number (names[1]) ? (Named) { names[0], names[1] } : (Named) { names[1], NULL };
      return TRUE;
    }
  if (n == 4)
    {
      out[0] = (Named) { names[0], names[1] };
      out[1] = (Named) { names[2], names[3] };
      return TRUE;
    }
  if (n != 3)
    return FALSE;
  out[0] = (Named) { names[0], is_number (names[1]) ? names[1] : NULL };
  if (!is_number (names[1]))
    out[1] = (Named) { names[1], names[2] };
  else
    out[1] = is_number (names[2]) ? (Named) { names[0], names[2] } : (Named) { names[2], NULL };
  return TRUE;
}

static SyEvent *
read_revision (SyLedger *ledger, const char *kind, const Named *named, int *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyTask) task = NULL;
  SyRevision *revision = NULL;
  SyEvent *event = NULL;
  gint64 number = 0;

  if (named->revision != NULL && !cli_read_revision (named->revision, &number))
    {
      *code = CLI_PROBLEM;
      return NULL;
    }
  task = sy_ledger_find (ledger, named->name, kind, &error);
  if (task != NULL)
    revision = sy_ledger_revision (ledger, task->id, NULL, number > 0 ? number : task->revision, &error);
  if (revision == NULL)
    *code = cli_say_ledger (error);
  else
    event = g_steal_pointer (&revision->event);
  sy_revision_free (revision);
  return event;
}

static gboolean
read_store (CliTwo *two, const char *store, const char *kind, int n, char **names, int *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = NULL;
  Named named[2];

  if (!read_names (n, names, named))
    {
      *code = cli_say (CLI_PROBLEM, "%s", _ ("two tasks are needed, or one and two of its revisions"));
      return FALSE;
    }
  ledger = cli_store_there (store, code);
  if (ledger == NULL)
    return FALSE;
  for (int i = 0; i < 2; i++)
    if ((two->sides[i] = read_revision (ledger, kind, &named[i], code)) == NULL)
      return FALSE;
  two->has_head = sy_ledger_head (ledger, &two->head, &error);
  if (!two->has_head)
    *code = cli_say_ledger (error);
  return two->has_head;
}

/* Topics: of two documents */

static SyEvent *
assess_file (SyDesk *desk, const char *file, int *code)
{
  g_autoptr (GError) error = NULL;
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = NULL;
  g_autofree char *policy = g_strdup_printf ("%s %d", sy_desk_policy (desk)->id, sy_desk_policy (desk)->version);
  g_autofree char *findings = NULL;
  gsize length = 0;
  g_autofree char *text = cli_read (file, SY_JSON_DOCUMENT_MAX, &length, &error);
  SyEvent *event;

  *code = CLI_PROBLEM;
  if (text == NULL)
    {
      cli_say_error (CLI_PROBLEM, error);
      return NULL;
    }
  assessment = sy_desk_assess (desk, text, length, SY_JUDGE_PLAIN, problems);
  if (assessment == NULL)
    {
      cli_print_problems (file, problems);
      return NULL;
    }
  findings = sy_assessment_json (assessment, FALSE);
  event = sy_event_new (SY_EVENT_REVISION);
  sy_event_set (&event->name, file);
  sy_event_set (&event->method, assessment->findings->method->id);
  sy_event_set (&event->program, "steelyard " SY_VERSION);
  sy_event_set (&event->policy, policy);
  sy_event_set (&event->facts, assessment->text);
  sy_event_set (&event->findings, findings);
  event->edition = assessment->findings->method->edition;
  *code = CLI_DONE;
  return event;
}

/* Both are read, so that the problems of both are told at once. */
static gboolean
read_files (CliTwo *two, int n, char **names, int *code)
{
  int codes[2];

  if (n != 2)
    {
      *code = cli_say (CLI_PROBLEM, "%s", _ ("without --store exactly two facts documents are needed"));
      return FALSE;
    }
  for (int i = 0; i < 2; i++)
    two->sides[i] = assess_file (two->desk, names[i], &codes[i]);
  *code = MAX (codes[0], codes[1]);
  return *code == CLI_DONE;
}

gboolean
cli_two_read (CliTwo *two, const char *store, const char *kind, const char *policy, const char *region, int n,
              char **names, int *code)
{
  g_autoptr (GError) error = NULL;

  *code = CLI_PROBLEM;
  if (!cli_check_kind (kind))
    return FALSE;
  two->desk = cli_desk (policy, region, &error);
  if (two->desk == NULL)
    {
      cli_say_error (CLI_PROBLEM, error);
      return FALSE;
    }
  return store != NULL ? read_store (two, store, kind, n, names, code) : read_files (two, n, names, code);
}

/* Topics: the command */

int
cli_compare (int argc, char **argv)
{
  g_autofree char *store = NULL, *kind = NULL, *policy = NULL, *region = NULL;
  const GOptionEntry entries[] = {
    CLI_THERE_ENTRY (&store),
    CLI_KIND_ENTRY (&kind),
    CLI_POLICY_ENTRIES (&policy, &region),
    { NULL }
  };
  g_auto (CliTwo) two = { .has_head = FALSE };
  g_autoptr (SyBeside) beside = NULL;
  g_autoptr (GString) out = g_string_new (NULL);
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "TASK [REV] TASK2 [REV2] | FACTS FACTS2"))
    return CLI_PROBLEM;
  if (!cli_two_read (&two, store, kind, policy, region, argc - 1, argv + 1, &code))
    return code;
  beside = sy_beside_new (two.sides[0], two.sides[1], sy_desk_policy (two.desk), NULL);
  sy_beside_write_json (out, beside, two.sides[0], two.sides[1]);
  puts (out->str);
  return CLI_DONE;
}
