/* SPDX-License-Identifier: MIT */
#ifndef CLI_SHEET_H
#define CLI_SHEET_H

#include "cli.h"
#include "sy-task-sheet.h"

/* A sheet of one assessment, as asked for. */
typedef struct
{
  const SyTaskSheetKind *kind;
  const char *out, *store, *item_kind, *policy; /* store NULL: of a facts document */
  char **names;                                 /* TASK [REV], or FACTS            */
  int n_names;
  SyPaper paper;
  const char *now;
} CliTaskSheet;
int cli_task_sheet (const CliTaskSheet *asked);

/* "assessment, lift-plan, …"; new string. */
char *cli_task_sheet_kinds (void);

/* For messages and templates. */
const char *cli_translate (const char *msgid);

#endif
