/* SPDX-License-Identifier: MIT */
/* Which assessment a sheet is of, under what, and who stands for it. */
#include <string.h>

#include "sy-deed.h"
#include "sy-deferring.h"
#include "sy-task-sheet-private.h"

char *
sy_sheet_day (const char *stored)
{
  return g_strndup (stored, 10);
}

char *
sy_sheet_defers_to (const SyTaskSheet *sheet)
{
  g_autoptr (SyDeferring) deferring = sy_deferring_new ();

  if (sheet->task != NULL)
    sy_deferring_add_findings (deferring, sheet->event->findings);
  else
    sy_deferring_add_policy (deferring, sheet->findings->policy, sheet->findings->method);
  return sy_deferring_words (deferring, sheet->translate);
}

char *
sy_sheet_basis (const SyTaskSheet *sheet)
{
  const SyMethod *method = sheet->findings->method;
  g_autofree char *edition = g_strdup_printf ("%d", method->edition);
  g_autofree char *limits = g_strdup_printf ("%s %d", sheet->findings->policy->id, sheet->findings->policy->version);
  g_autofree char *defers = sy_sheet_defers_to (sheet);
  g_autofree char *words
    = sy_words_say (sheet->translate, N_ ("{method}, edition {edition}: {source}. Limits: {limits}."), "method",
                    sy_sheet_in (sheet, method->title), "edition", edition, "source", method->source, "limits", limits, NULL);

  return g_strconcat (words, *defers != '\0' ? " " : "", defers, NULL);
}

char *
sy_sheet_identity (const SyTaskSheet *sheet)
{
  const SyEvent *event = sheet->event;
  g_autofree char *revision = NULL, *day = NULL, *line = NULL, *hash = NULL, *by = NULL;

  if (sheet->task == NULL)
    return g_strdup (sy_sheet_in (sheet, N_ ("Of a facts document: no part of a record, and signed by nobody.")));
  revision = g_strdup_printf ("%" G_GINT64_FORMAT, event->revision);
  day = sy_sheet_day (event->claimed);
  line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->line);
  hash = sy_hash_text (&sheet->hash);
  by = g_strdup_printf ("%s%s%s", event->by, *event->role != '\0' ? ", " : "", event->role);
  return sy_words_say (sheet->translate,
                       N_ ("Revision {revision} of {day}, made by {by}. Line {line} of the journal, {hash}."), "revision",
                       revision, "day", day, "by", by, "line", line, "hash", hash, NULL);
}

static char *
head_words (const SyTaskSheet *sheet)
{
  g_autofree char *identity = sy_sheet_identity (sheet);
  g_autofree char *line = NULL, *hash = NULL, *head = NULL;

  if (sheet->task == NULL)
    return g_steal_pointer (&identity);
  line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->head_line);
  hash = sy_hash_text (&sheet->head);
  head = sy_words_say (sheet->translate, N_ ("Head of the journal now: line {line}, {hash}"), "line", line, "hash", hash,
                       NULL);
  return g_strdup_printf ("%s\n%s", identity, head);
}

SyFolio *
sy_sheet_begin (const SyTaskSheet *sheet, const char *title)
{
  const SyCommonFacts *common = sheet->facts->values;
  g_autofree char *head = head_words (sheet), *foot = sy_sheet_basis (sheet);
  const char *place = common->place != NULL ? common->place : "";
  g_autofree char *subtitle = g_strdup_printf ("%s%s%s", sheet->event->name, *place != '\0' ? " · " : "", place);

  return sy_folio_new (&(SyFolioHead) { .paper = sheet->paper, .translate = sheet->translate,
                                        .title = sy_sheet_in (sheet, title), .subtitle = subtitle, .head = head,
                                        .program = sheet->program, .made = sheet->made, .foot = foot });
}

/* ---- who stands for it ---- */

static gboolean
is_about_revision (const SyTaskSheet *sheet, const SyEvent *event, SyEventKind kind)
{
  return event->kind == kind && event->revision == sheet->event->revision;
}

gboolean
sy_sheet_is_signed (const SyTaskSheet *sheet)
{
  for (gsize i = 0; i < sheet->n_lines; i++)
    if (is_about_revision (sheet, sheet->lines[i].event, SY_EVENT_SIGNATURE))
      return TRUE;
  return FALSE;
}

const SyEvent *
sy_sheet_told (const SyTaskSheet *sheet)
{
  for (gsize i = sheet->n_lines; i > 0; i--)
    if (is_about_revision (sheet, sheet->lines[i - 1].event, SY_EVENT_TOLD))
      return sheet->lines[i - 1].event;
  return NULL;
}

static void
add_deeds (SyFolio *folio, const SyTaskSheet *sheet, SyEventKind kind)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Who, when")), 0.34, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("What")), 0.66, SY_TYPE_NOTE },
  };
  gboolean begun = FALSE;

  for (gsize i = 0; i < sheet->n_lines; i++)
    {
      const SyEvent *event = sheet->lines[i].event;
      g_autofree char *who = NULL, *what = NULL;
      const char *cells[2];

      if (!is_about_revision (sheet, event, kind))
        continue;
      who = g_strdup_printf ("%s%s%s\n%s", event->by, *event->role != '\0' ? ", " : "", event->role, event->claimed);
      what = sy_deed_words (event, sheet->translate);
      if (!begun)
        sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
      begun = TRUE;
      cells[0] = who;
      cells[1] = what;
      sy_folio_row (folio, cells);
    }
}

char *
sy_sheet_review (const SyTaskSheet *sheet)
{
  const SyQuantity *until = sy_findings_quantity (sheet->findings, "valid_until");
  g_autoptr (GString) out = g_string_new (NULL);

  if (sheet->task != NULL && *sheet->task->review_due != '\0')
    {
      g_autofree char *words
        = sy_words_say (sheet->translate, N_ ("Next review: {day}."), "day", sheet->task->review_due, NULL);

      g_string_append (out, words);
    }
  else
    g_string_append (out, sy_sheet_in (sheet, N_ ("Next review: no day is set.")));
  if (until != NULL && until->state == SY_STATE_VALUE)
    {
      g_autofree char *day = sy_words_quantity (until->value, SY_KIND_DATE, sheet->findings->units);
      g_autofree char *words = sy_words_say (sheet->translate, N_ ("First due date in it: {day}."), "day", day, NULL);

      g_string_append_printf (out, " %s", words);
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}

void
sy_sheet_sign_off (SyFolio *folio, const SyTaskSheet *sheet)
{
  const char *const labels[] = { sy_sheet_in (sheet, N_ ("Name")), sy_sheet_in (sheet, N_ ("Role and competence")),
                                 sy_sheet_in (sheet, N_ ("Day")), sy_sheet_in (sheet, N_ ("Signature")) };
  g_autofree char *review = sy_sheet_review (sheet);

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Signed off")));
  add_deeds (folio, sheet, SY_EVENT_SIGNATURE);
  if (!sy_sheet_is_signed (sheet))
    {
      sy_folio_paragraph (
        folio, sy_sheet_in (sheet, N_ ("Not signed off. Whoever signs here has read the whole sheet.")), SY_TYPE_BODY);
      sy_folio_blanks (folio, labels, G_N_ELEMENTS (labels), 22);
      sy_folio_blanks (folio, labels, G_N_ELEMENTS (labels), 22);
    }
  add_deeds (folio, sheet, SY_EVENT_TOLD);
  sy_folio_paragraph (folio, review, SY_TYPE_BODY);
}
