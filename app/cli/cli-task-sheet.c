/* SPDX-License-Identifier: MIT */
/* Sheets of one revision of an item, or of one facts document. */
#include <glib/gi18n.h>
#include <string.h>

#include "cli-deed.h"
#include "cli-sheet.h"
#include "sy-dossier-sheet.h"

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

static SyBinder *
read_document (const CliTaskSheet *asked, int *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  g_autoptr (SyBinder) binder = NULL;
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *text = NULL, *base = NULL;
  gsize length = 0;

  if (asked->n_names != 1)
    {
      *code = cli_say (CLI_PROBLEM, "%s", _ ("without --store exactly one facts document is needed"));
      return NULL;
    }
  desk = cli_desk (asked->policy, asked->region, &error);
  text = desk != NULL ? cli_read (asked->names[0], SY_JSON_DOCUMENT_MAX, &length, &error) : NULL;
  if (text == NULL)
    {
      *code = cli_say_error (CLI_PROBLEM, error);
      return NULL;
    }
  base = g_path_get_basename (asked->names[0]);
  if (g_str_has_suffix (base, ".json"))
    base[strlen (base) - strlen (".json")] = '\0';
  binder = sy_binder_of_facts (desk, base, text, length, problems);
  if (binder == NULL)
    {
      cli_print_problems (asked->names[0], problems);
      *code = CLI_PROBLEM;
    }
  return g_steal_pointer (&binder);
}

SyBinder *
cli_binder (const char *store, const char *item, const char *item_kind, gint64 revision, int *code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyLedger) ledger = cli_store_there (store, code);
  SyBinder *binder;

  if (ledger == NULL)
    return NULL;
  binder = sy_binder_of_record (ledger, item, item_kind, revision, &error);
  if (binder == NULL)
    *code = cli_say_ledger (error);
  return binder;
}

static SyBinder *
read_record (const CliTaskSheet *asked, int *code)
{
  g_autoptr (SyBinder) binder = NULL;
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  gint64 number = 0;

  *code = CLI_PROBLEM;
  if (asked->n_names < 1 || asked->n_names > 2)
    cli_say (CLI_PROBLEM, "%s", _ ("exactly one task must be named"));
  else if (asked->policy != NULL || asked->region != NULL)
    cli_say (CLI_PROBLEM, _ ("--%s: a record has its own limits"), asked->policy != NULL ? "policy" : "region");
  else if (asked->n_names == 1 || cli_read_revision (asked->names[1], &number))
    binder = cli_binder (asked->store, asked->names[0], asked->item_kind, number, code);
  if (binder == NULL)
    return NULL;
  if (!sy_binder_assess (binder, problems))
    {
      cli_print_problems (asked->names[0], problems);
      *code = CLI_PROBLEM;
      return NULL;
    }
  return g_steal_pointer (&binder);
}

int
cli_task_sheet (const CliTaskSheet *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyBinder) binder = NULL;
  g_autoptr (SyFolio) folio = NULL;
  SyDossierAsk ask = { .kind = asked->kind, .translate = cli_translate, .program = "steelyard " SY_VERSION,
                       .made = asked->now };
  int code = CLI_DONE;

  binder = asked->store != NULL ? read_record (asked, &code) : read_document (asked, &code);
  if (binder == NULL)
    return code;
  sy_paper_from_id (asked->paper, &ask.paper);
  folio = sy_dossier_sheet_new (&binder->dossier, &ask);
  if (folio == NULL)
    return cli_say (CLI_PROBLEM, _ ("--kind: given %s; not for the method %s"), asked->kind,
                    binder->dossier.facts->method->id);
  if (!sy_folio_write_pdf (folio, asked->out, asked->now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}
