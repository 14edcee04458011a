/* SPDX-License-Identifier: MIT */
#include "sy-dossier-sheet.h"

#include <string.h>

#define HISTORY "history"
#define OFFICE ((1u << SY_PAPER_A4) | (1u << SY_PAPER_LETTER))

guint
sy_dossier_kinds (const SyDossier *dossier, SyDossierKind kinds[SY_DOSSIER_KINDS_MAX])
{
  guint n = 0;
  gsize n_all;
  const SyTaskSheetKind *all = sy_task_sheet_kinds (&n_all);

  for (gsize i = 0; dossier->facts != NULL && i < n_all && n < SY_DOSSIER_KINDS_MAX - 1; i++)
    if (sy_task_sheet_fits (&all[i], dossier->facts->method))
      kinds[n++] = (SyDossierKind) { all[i].id, all[i].title, all[i].papers };
  if (dossier->task != NULL)
    kinds[n++] = (SyDossierKind) { HISTORY, N_ ("History, for the auditor"), OFFICE };
  return n;
}

static SyFolio *
new_history (const SyDossier *dossier, const SyDossierAsk *ask)
{
  if (dossier->task == NULL)
    return NULL;
  return sy_history_sheet_new (&(SyHistorySheet) {
    .task = dossier->task, .lines = dossier->lines, .n_lines = dossier->n_lines, .head_line = dossier->head_line,
    .head = dossier->head, .paper = ask->paper, .translate = ask->translate, .program = ask->program, .made = ask->made });
}

SyFolio *
sy_dossier_sheet_new (const SyDossier *dossier, const SyDossierAsk *ask)
{
  const SyTaskSheetKind *kind;

  if (strcmp (ask->kind, HISTORY) == 0)
    return new_history (dossier, ask);
  kind = sy_task_sheet_kind (ask->kind);
  if (kind == NULL || dossier->facts == NULL || !sy_task_sheet_fits (kind, dossier->facts->method))
    return NULL;
  return kind->make (&(SyTaskSheet) {
    .facts = dossier->facts, .findings = dossier->findings, .event = dossier->event, .task = dossier->task,
    .line = dossier->line, .hash = dossier->hash, .head_line = dossier->head_line, .head = dossier->head,
    .lines = dossier->lines, .n_lines = dossier->n_lines, .paper = ask->paper, .translate = ask->translate,
    .program = ask->program, .made = ask->made });
}
