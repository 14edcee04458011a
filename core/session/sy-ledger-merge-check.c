/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-deed.h"
#include "sy-json.h"
#include "sy-ledger-exchange-private.h"
#include "sy-method.h"

/* Whether an edition of this program could have written a line: what the chain of another record says nothing about. */

#define ID_DIGITS 16

G_GNUC_PRINTF (1, 2)
static char *
say (const char *format, ...)
{
  va_list arguments;
  char *words;

  va_start (arguments, format);
  words = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  return words;
}

static gboolean
is_object (const char *text)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);

  return root != NULL && root->type == SY_JSON_OBJECT;
}

/* In the one way in which times are written here, which can be compared letter by letter. */
static gboolean
is_time (const char *text)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (text, NULL);
  g_autofree char *again = time != NULL ? g_date_time_format (time, "%Y-%m-%dT%H:%M:%SZ") : NULL;

  return g_strcmp0 (again, text) == 0;
}

/* Anything else could be taken for the name of another item, which is looked for in the same way. */
static gboolean
is_id (const char *text)
{
  return strlen (text) == ID_DIGITS && strspn (text, "0123456789abcdef") == ID_DIGITS;
}

static char *
check_author (const SyEvent *event)
{
  const SyLedgerText texts[] = {
    { "by", event->by, TRUE, TRUE },
    { "role", event->role, event->kind == SY_EVENT_SIGNATURE, TRUE },
    { "why", event->why, event->kind == SY_EVENT_REVISION || event->kind == SY_EVENT_ATTACHMENT, FALSE },
    { "name", event->name, event->kind == SY_EVENT_REVISION, event->kind == SY_EVENT_REVISION },
  };
  g_autoptr (GError) error = NULL;

  if (!is_time (event->claimed) || !is_time (event->written))
    return say ("expected times as 2026-03-12T09:40:00Z, found “%s” and “%s”", event->claimed, event->written);
  return sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), &error) ? NULL : g_strdup (error->message);
}

static char *
check_revision (const SyEvent *event)
{
  const SyMethod *method = sy_method_find (event->method);

  if (sy_item_kind_place (event->item_kind) < 0)
    return say ("expected a revision of one of " SY_ITEM_KINDS_TEXT ", found one of “%s”", event->item_kind);
  /* one that is not known may be a newer edition's */
  if (method != NULL && strcmp (method->item_kind, event->item_kind) != 0)
    return say ("expected the method of a “%s”, found “%s”", event->item_kind, event->method);
  return is_object (event->facts) && is_object (event->findings)
           ? NULL
           : say ("expected facts and findings in JSON, found something else");
}

/* What names no revision has numbers that say so. */
static char *
check_numbers (const SyEvent *event, gboolean names_revision)
{
  return event->base == 0 && (names_revision || event->revision == 0)
           ? NULL
           : say ("expected no revision, found %" G_GINT64_FORMAT " from %" G_GINT64_FORMAT, event->revision, event->base);
}

static char *
check_deed (const SyEvent *event)
{
  SyDeed deed;
  gboolean names_revision;

  if (!sy_deed_read (event, &deed))
    return say ("expected the members of a line of the kind “%s”, found others", sy_event_kind_id (event->kind));
  names_revision = event->kind == SY_EVENT_SIGNATURE || event->kind == SY_EVENT_TOLD
                   || (event->kind == SY_EVENT_IMPROVEMENT && deed.step == SY_STEP_ADD);
  sy_deed_clear (&deed);
  return check_numbers (event, names_revision);
}

static char *
check_content (const SyEvent *event)
{
  switch (event->kind)
    {
    case SY_EVENT_REVISION:
      return check_revision (event);
    case SY_EVENT_POLICY:
      if (strcmp (event->item_kind, "policy") != 0 || !is_object (event->facts))
        return say ("expected a policy in JSON, found something else");
      return check_numbers (event, FALSE);
    case SY_EVENT_ATTACHMENT:
      if (!sy_ledger_attachment_holds (event))
        return say ("expected a file with the size and the SHA-256 that it names, found something else");
      return check_numbers (event, FALSE);
    case SY_EVENT_IMPORT:
      return NULL;
    case SY_EVENT_SIGNATURE:
    case SY_EVENT_ACTION:
    case SY_EVENT_REVIEW:
    case SY_EVENT_RETIREMENT:
    case SY_EVENT_TOLD:
    case SY_EVENT_IMPROVEMENT:
      return check_deed (event);
    }
  g_assert_not_reached ();
}

char *
sy_merge_check_event (const SyEvent *event)
{
  const gboolean has_item = event->kind != SY_EVENT_POLICY && event->kind != SY_EVENT_IMPORT;
  char *wrong;

  if (has_item ? !is_id (event->item) : *event->item != '\0')
    return has_item ? say ("expected an item with an id of %d digits 0 to 9 and a to f, found “%.64s”", ID_DIGITS, event->item)
                    : say ("expected no item, found “%.64s”", event->item);
  wrong = check_author (event);
  return wrong != NULL ? wrong : check_content (event);
}
