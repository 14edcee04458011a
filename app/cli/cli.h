/* SPDX-License-Identifier: MIT */
#ifndef CLI_H
#define CLI_H

#include <glib.h>

#include "sy-ledger.h"

/* Exit codes of the contract. */
#define CLI_DONE 0
#define CLI_FAILED 1  /* a store or a file could not be read or written       */
#define CLI_PROBLEM 2 /* a document, or the command itself, has problems      */

/* Each command gets its own arguments, argv[0] being its name. */
int cli_assess (int argc, char **argv);
int cli_methods (int argc, char **argv);
int cli_record (int argc, char **argv);
int cli_tasks (int argc, char **argv);
int cli_history (int argc, char **argv);
int cli_sheet (int argc, char **argv);

/* Parses options; on a mistake says so on standard error and returns FALSE. */
gboolean cli_options (int *argc, char ***argv, const GOptionEntry *entries, const char *arguments);

/* "steelyard-cli: text", and the exit code given. */
int cli_say (int code, const char *format, ...) G_GNUC_PRINTF (2, 3);
int cli_say_error (int code, const GError *error);

/* Every problem on a line of its own: file:line: path: given …; allowed: …; unit: … */
void cli_print_problems (const char *file, const SyProblems *problems);

/* A whole file ("-": standard input), at most @max + 1 bytes of it; NULL with the error. */
char *cli_read (const char *file, gsize max, gsize *length, GError **error);

/* The desk, with the policy of a file or the built-in one. */
SyDesk *cli_desk (const char *policy_file, GError **error);

#endif
