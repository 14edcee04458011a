/* SPDX-License-Identifier: MIT */
#ifndef CLI_SHEET_H
#define CLI_SHEET_H

#include "cli.h"
#include "sy-binder.h"

/* A sheet of one assessment, as asked for. */
typedef struct
{
  const char *kind;                             /* one that there is               */
  const char *out, *store, *item_kind, *policy, *region; /* store NULL: of a facts document */
  char **names;                                 /* TASK [REV], or FACTS            */
  int n_names;
  const char *paper;                            /* one that it takes               */
  const char *now;
} CliTaskSheet;
int cli_task_sheet (const CliTaskSheet *asked);

/* As sy_binder_of_record(), of a store that is there; NULL: said, with its code. */
SyBinder *cli_binder (const char *store, const char *item, const char *item_kind, gint64 revision, int *code);

/* Whether there is such a kind of sheet, and whether it can be printed on that paper. */
gboolean cli_is_task_sheet (const char *kind);
gboolean cli_task_sheet_takes (const char *kind, const char *paper);
/* "assessment, lift-plan, …"; new string. */
char *cli_task_sheet_kinds (void);

/* For messages and templates. */
const char *cli_translate (const char *msgid);

#endif
