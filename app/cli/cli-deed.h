/* SPDX-License-Identifier: MIT */
#ifndef CLI_DEED_H
#define CLI_DEED_H

#include "cli.h"
#include "sy-ledger-deeds.h"

/* What every command has that adds a line about an item; zeros, then cleared with cli_deed_clear(). */
typedef struct
{
  char *store, *kind, *by, *role, *why;
  char *now;
  SyDeedRequest request; /* points into the above */
} CliDeed;
void cli_deed_clear (CliDeed *deed);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (CliDeed, cli_deed_clear)

#define CLI_DEED_ENTRIES(deed)                                                                                  \
  CLI_THERE_ENTRY (&(deed)->store),                                                                             \
  CLI_KIND_ENTRY (&(deed)->kind),                                                                               \
  { "by", 0, 0, G_OPTION_ARG_STRING, &(deed)->by, N_ ("Who does it"), N_ ("WHO") },                            \
  { "role", 0, 0, G_OPTION_ARG_STRING, &(deed)->role, N_ ("In which role"), N_ ("TEXT") },                     \
  { "why", 0, 0, G_OPTION_ARG_STRING, &(deed)->why, N_ ("Why it is done"), N_ ("TEXT") }

/* Opens the store for a deed about @item and fills the request; NULL, with *code set and the reason said, when it cannot be. */
SyLedger *cli_begin_deed (CliDeed *deed, const char *item, int *code);

/* Says that the option is missing; the code to end with. */
int cli_say_needed (const char *option);

/* A revision as typed; FALSE, and said, for anything else. */
gboolean cli_read_revision (const char *text, gint64 *revision);
/* NULL is fine; FALSE, and said, for what is no date. */
gboolean cli_check_date (const char *option, const char *date);

/* Prints {"task":…,"head":…}, with @members ("" or members with a comma before each) between. */
void cli_print_deed (const char *item, const char *members, const SyHead *head);

#endif
