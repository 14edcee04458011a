/* SPDX-License-Identifier: MIT */
#ifndef CLI_H
#define CLI_H

#include <glib.h>

#include "sy-ledger.h"

/* Exit codes of the contract. */
#define CLI_DONE 0
#define CLI_FAILED 1  /* a store or a file could not be read or written       */
#define CLI_PROBLEM 2 /* a document, or the command itself, has problems      */
#define CLI_DIFFERS 3 /* the record is not what it should be                  */

/* Each command gets its own arguments, argv[0] being its name. */
int cli_assess (int argc, char **argv);
int cli_methods (int argc, char **argv);
int cli_record (int argc, char **argv);
int cli_tasks (int argc, char **argv);
int cli_history (int argc, char **argv);
int cli_register (int argc, char **argv);
int cli_sheet (int argc, char **argv);
int cli_attach (int argc, char **argv);
int cli_attachments (int argc, char **argv);
int cli_attachment (int argc, char **argv);
int cli_find_gear (int argc, char **argv);
int cli_what_lifts (int argc, char **argv);
int cli_diff (int argc, char **argv);
int cli_compare (int argc, char **argv);
int cli_sign (int argc, char **argv);
int cli_action (int argc, char **argv);
int cli_actions (int argc, char **argv);
int cli_improvement (int argc, char **argv);
int cli_improvements (int argc, char **argv);
int cli_review (int argc, char **argv);
int cli_retire (int argc, char **argv);
int cli_told (int argc, char **argv);
int cli_journal (int argc, char **argv);
int cli_verify (int argc, char **argv);
int cli_rebuild (int argc, char **argv);
int cli_export (int argc, char **argv);
int cli_import (int argc, char **argv);
int cli_import_lifts (int argc, char **argv);
int cli_lift_set (int argc, char **argv);
int cli_regions (int argc, char **argv);
int cli_policy (int argc, char **argv);

/* Parses options; on a mistake says so on standard error and returns FALSE. */
gboolean cli_options (int *argc, char ***argv, const GOptionEntry *entries, const char *arguments);

/* "steelyard-cli: text", and the exit code given. */
int cli_say (int code, const char *format, ...) G_GNUC_PRINTF (2, 3);
int cli_say_error (int code, const GError *error);

/* Every problem on a line of its own: file:line: path: given …; allowed: …; unit: … */
void cli_print_problems (const char *file, const SyProblems *problems);

/* A whole file ("-": standard input), at most @max + 1 bytes of it; NULL with the error. */
char *cli_read (const char *file, gsize max, gsize *length, GError **error);

/* Options that several commands on a store have, and their arguments. */
#define CLI_STORE_ENTRY(variable)                                                                        \
  { "store", 0, 0, G_OPTION_ARG_FILENAME, variable, N_ ("The store; made when it is not there"), N_ ("FILE") }
#define CLI_THERE_ENTRY(variable)                                                                        \
  { "store", 0, 0, G_OPTION_ARG_FILENAME, variable, N_ ("The store"), N_ ("FILE") }
#define CLI_KIND_ENTRY(variable)                                                                         \
  { "kind", 0, 0, G_OPTION_ARG_STRING, variable, N_ ("Only this kind: task, changeover, case, die or gear"), N_ ("KIND") }

/* NULL, with *code set and the reason said, when it cannot be opened. */
SyLedger *cli_store (const char *store, int *code);
/* The same for one that must be there already. */
SyLedger *cli_store_there (const char *store, int *code);
/* The same to verify and rebuild it, whatever state its lists are in. */
SyLedger *cli_store_damaged (const char *store, int *code);

/* Says so and returns FALSE for a kind that is none; NULL is fine. */
gboolean cli_check_kind (const char *kind);

/* Says what the ledger had against it: a problem of the request, or of the store. */
int cli_say_ledger (const GError *error);

#define CLI_POLICY_ENTRIES(policy, region)                                                                                  \
  { "policy", 0, 0, G_OPTION_ARG_FILENAME, policy, N_ ("A policy file in place of the built-in policy, or uk-filter"),       \
    N_ ("FILE") },                                                                                                          \
  { "region", 0, 0, G_OPTION_ARG_STRING, region, N_ ("What results defer to: au, ca, eu, other, uk or us"), N_ ("REGION") }

/* The desk, with the policy of a file, one that comes with the program ("uk-filter"), or for NULL the built-in one; in a region,
   NULL: none. */
SyDesk *cli_desk (const char *policy_file, const char *region, GError **error);

#endif
