/* SPDX-License-Identifier: MIT */
#ifndef EXCHANGE_HELP_H
#define EXCHANGE_HELP_H

#include "sy-test.h"

#include "sy-bundle.h"
#include "sy-ledger-deeds.h"
#include "sy-ledger-exchange.h"

/* What the tests of exchange share: records with something in them, and what can be said about two of them. */

#define FACTS                                                                                            \
  "{\"method\":\"lift\",\"units\":\"metric\",\"load\":{\"typical\":8,\"heaviest\":\"9,5 kg\"},"           \
  "\"origin\":{\"H\":\"16 in\",\"V\":60,\"A\":0},\"travel\":20.50,\"frequency\":1,\"duration\":\"short\"," \
  "\"coupling\":\"good\",\"conditions\":[]}"

/* A time of its own for every line, so that two records never write the very same one. */
static inline const char *
next_time (void)
{
  static char text[32];
  static int seconds;

  g_snprintf (text, sizeof text, "2026-03-04T%02d:%02d:%02dZ", seconds / 3600 % 24, seconds / 60 % 60, seconds % 60);
  seconds++;
  return text;
}

static inline gint64
record (SyLedger *ledger, SyDesk *desk, const char *task, const char *rename, gint64 base)
{
  const SyRecordRequest request = { .task = task, .rename = rename, .by = "B. Ostler", .role = "safety lead",
                                    .why = "measured", .base = base, .now = next_time () };
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GError) error = NULL;
  SyRecordResult result = { NULL };
  gint64 revision;

  if (!sy_ledger_record (ledger, desk, &request, FACTS, strlen (FACTS), problems, &result, &error))
    fail_msg ("%s", error->message);
  revision = result.revision;
  sy_record_result_clear (&result);
  return revision;
}

static inline SyDeedRequest
deed_of (const char *item)
{
  return (SyDeedRequest) { .item = item, .by = "Q. Falk", .role = "foreman", .why = "as agreed", .now = next_time () };
}

static inline void
sign (SyLedger *ledger, const char *item, gint64 revision)
{
  const SyDeedRequest request = deed_of (item);
  g_autoptr (GError) error = NULL;
  SyHead head;

  if (!sy_ledger_sign (ledger, &request, revision, "trained 2025", &head, &error))
    fail_msg ("%s", error->message);
}

static inline GBytes *
export_all (SyLedger *ledger)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes = sy_ledger_export (ledger, NULL, NULL, NULL, &error);

  if (bytes == NULL)
    fail_msg ("%s", error->message);
  return bytes;
}

/* NULL: it went well, @report is filled; otherwise the message. */
static inline char *
import_bytes (SyLedger *ledger, GBytes *bytes, gboolean dry_run, SyImportReport *report)
{
  const SyImportRequest request = { .by = "I. Tannick", .role = "keeper", .why = "from the other hall",
                                    .now = next_time (), .dry_run = dry_run };
  g_autoptr (GError) error = NULL;

  if (sy_ledger_import (ledger, bytes, &request, NULL, NULL, report, &error))
    return NULL;
  return g_strdup (error->message);
}

/* How many lines were added. */
static inline guint64
take_over (SyLedger *to, SyLedger *from)
{
  g_autoptr (GBytes) bytes = export_all (from);
  SyImportReport report = { 0 };
  g_autofree char *message = import_bytes (to, bytes, FALSE, &report);
  guint64 added = report.added;

  if (message != NULL)
    fail_msg ("%s", message);
  sy_import_report_clear (&report);
  return added;
}

static inline int
compare_texts (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

/* The identities of all lines but those that say what was taken over, in order of their digits, joined. */
static inline char *
identities_of (SyLedger *ledger)
{
  g_autoptr (GBytes) bytes = export_all (ledger);
  g_autoptr (SyBundle) bundle
    = sy_bundle_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, NULL, NULL);
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  assert_non_null (bundle);
  for (guint i = 0; i < bundle->lines->len; i++)
    {
      const SyEvent *event = ((SyBundleLine *) bundle->lines->pdata[i])->event;
      SyHash identity;

      if (event->kind == SY_EVENT_IMPORT)
        continue;
      sy_event_identity (event, &identity);
      g_ptr_array_add (texts, sy_hash_text (&identity));
    }
  g_ptr_array_sort (texts, compare_texts);
  g_ptr_array_add (texts, NULL);
  return g_strjoinv ("\n", (char **) texts->pdata);
}

static inline SyHead
head_of (SyLedger *ledger)
{
  SyHead head;

  assert_true (sy_ledger_head (ledger, &head, NULL));
  return head;
}

/* The journal holds, and what is made of it anew is what is there. */
static inline void
assert_sound (SyLedger *ledger)
{
  SyVerification verification = { 0 };
  SyRebuild rebuild = { 0 };
  g_autoptr (GError) error = NULL;

  if (!sy_ledger_verify (ledger, NULL, NULL, NULL, &verification, &error))
    fail_msg ("%s", error->message);
  if (verification.fault != SY_FAULT_NONE)
    fail_msg ("line %d: expected %s, found %s", (int) verification.line, verification.expected, verification.found);
  sy_verification_clear (&verification);
  if (!sy_ledger_rebuild (ledger, NULL, NULL, &rebuild, &error))
    fail_msg ("%s", error->message);
  if (rebuild.n_different > 0)
    fail_msg ("%s", (char *) rebuild.differences->pdata[0]);
  sy_rebuild_clear (&rebuild);
}

/* Two records that have nothing yet, and the desk of both. */
typedef struct
{
  SyDesk *desk;
  SyLedger *here, *there;
} Two;

static inline int
set_up_two (void **state)
{
  Two *two = g_new0 (Two, 1);

  two->desk = sy_desk_new (NULL, 0, NULL);
  two->here = sy_ledger_open ("memory:", NULL);
  two->there = sy_ledger_open ("memory:", NULL);
  *state = two;
  return 0;
}

static inline int
tear_down_two (void **state)
{
  Two *two = *state;

  sy_ledger_close (two->here);
  sy_ledger_close (two->there);
  sy_desk_unref (two->desk);
  g_free (two);
  return 0;
}

#endif
