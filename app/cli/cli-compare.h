/* SPDX-License-Identifier: MIT */
#ifndef CLI_COMPARE_H
#define CLI_COMPARE_H

#include "cli.h"
#include "sy-beside.h"

/* Two assessments named on the command line. */
typedef struct
{
  SyEvent *sides[2];
  SyDesk *desk;
  gboolean has_head; /* they are of a record, which ends so: */
  SyHead head;
} CliTwo;
void cli_two_clear (CliTwo *two);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (CliTwo, cli_two_clear)

/* @names, @n: with a store TASK [REV] TASK2 [REV2] or TASK REV REV2, the newest revision where none is said; without one two
   facts documents, assessed under @policy (NULL: the built-in one) in @region (NULL: none). FALSE, with *code set and the
   reason said, when they cannot be had. */
gboolean cli_two_read (CliTwo *two, const char *store, const char *kind, const char *policy, const char *region, int n,
                       char **names, int *code);

#endif
