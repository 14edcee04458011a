/* SPDX-License-Identifier: MIT */
#include "sy-history-sheet.h"

#include <string.h>

#include "sy-audit-words.h"
#include "sy-deed.h"
#include "sy-deferring.h"
#include "sy-difference.h"
#include "sy-limit-words.h"

static const char *
in_words (SyTranslate translate, const char *msgid)
{
  return translate != NULL ? translate (msgid) : msgid;
}

/* The revision that @event was made from; NULL for the first. */
static const SyEvent *
find_base (const SyHistorySheet *sheet, const SyEvent *event)
{
  for (gsize i = 0; i < sheet->n_lines; i++)
    {
      const SyEvent *each = sheet->lines[i].event;

      if (each->kind == SY_EVENT_REVISION && each->revision == event->base)
        return each;
    }
  return NULL;
}

/* By what of the result a reader sees what a change did. Each quantity with all its digits and what else would help are in
   the record. */
static gboolean
is_worth_telling (const SyDifference *difference)
{
  return difference->part != SY_PART_RESULT
         || (!g_str_has_prefix (difference->path, "quantities.") && !g_str_has_prefix (difference->path, "remedies"));
}

static void
add_revision (GString *out, const SyHistorySheet *sheet, const SyEvent *event)
{
  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, event->revision);
  g_autofree char *from = g_strdup_printf ("%" G_GINT64_FORMAT, event->base);
  g_autoptr (SyTask) alone = sy_task_apply (NULL, event);
  const SyAuditRow row = { .task = alone };
  g_autofree char *verdict = sy_audit_verdict_words (&row, sheet->translate);
  g_autofree char *basis = sy_audit_basis_words (&row, sheet->translate);
  g_autofree char *words = sy_words_say (
    sheet->translate,
    event->base > 0 ? N_ ("Revision {number}, made from revision {from}: {verdict}. {basis}.")
                    : N_ ("Revision {number}: {verdict}. {basis}."),
    "number", number, "from", from, "verdict", verdict, "basis", basis, NULL);
  const SyEvent *base = find_base (sheet, event);
  g_autoptr (GPtrArray) differences = base != NULL ? sy_difference_of (base, event) : NULL;

  g_autofree char *limits = sy_limit_words (event->findings, sheet->translate);

  g_string_append (out, words);
  if (*limits != '\0')
    g_string_append_printf (out, "\n%s", limits);
  if (base == NULL)
    {
      g_autoptr (SyDeferring) deferring = sy_deferring_new ();
      g_autofree char *defers = NULL;

      sy_deferring_add_findings (deferring, event->findings);
      defers = sy_deferring_words (deferring, sheet->translate);
      if (*defers != '\0')
        g_string_append_printf (out, "\n%s", defers);
    }
  for (guint i = 0; differences != NULL && i < differences->len; i++)
    {
      const SyDifference *each = differences->pdata[i];

      if (is_worth_telling (each))
        g_string_append_printf (out, "\n%s: %s → %s%s%s", *each->name != '\0' ? each->name : each->path,
                                each->before != NULL ? each->before : "–", each->after != NULL ? each->after : "–",
                                *each->unit != '\0' ? " " : "", each->unit);
    }
}

/* What happened, in words. */
static char *
line_words (const SyHistorySheet *sheet, const SyEvent *event)
{
  GString *out = g_string_new (NULL);

  if (event->kind == SY_EVENT_REVISION)
    add_revision (out, sheet, event);
  else if (event->kind == SY_EVENT_ATTACHMENT)
    {
      g_autofree char *words
        = sy_words_say (sheet->translate, N_ ("File attached: {name}"), "name", event->name, NULL);

      g_string_append (out, words);
    }
  else
    {
      g_autofree char *words = sy_deed_words (event, sheet->translate);

      g_string_append (out, words);
      if (event->kind == SY_EVENT_SIGNATURE)
        g_string_append_printf (out, " (%s %" G_GINT64_FORMAT ")", in_words (sheet->translate, N_ ("revision")),
                                event->revision);
    }
  if (*event->why != '\0')
    g_string_append_printf (out, "\n%s %s", in_words (sheet->translate, N_ ("Why:")), event->why);
  return g_string_free (out, FALSE);
}

/* What its revisions deferred to, each by its own findings. */
static char *
foot_words (const SyHistorySheet *sheet)
{
  g_autoptr (SyDeferring) deferring = sy_deferring_new ();

  for (gsize i = 0; i < sheet->n_lines; i++)
    if (sheet->lines[i].event->kind == SY_EVENT_REVISION)
      sy_deferring_add_findings (deferring, sheet->lines[i].event->findings);
  return sy_deferring_words (deferring, sheet->translate);
}

static void
add_line (SyFolio *folio, const SyHistorySheet *sheet, const SyHistoryLine *line)
{
  const SyEvent *event = line->event;
  g_autofree char *hash = sy_hash_text (&line->hash), *what = line_words (sheet, event);
  g_autofree char *when = strcmp (event->claimed, event->written) == 0
                            ? g_strdup (event->claimed)
                            : sy_words_say (sheet->translate, N_ ("{claimed}, written {written}"), "claimed", event->claimed,
                                            "written", event->written, NULL);
  g_autofree char *who = g_strdup_printf ("%s%s%s\n%s%s%s", event->by, *event->role != '\0' ? ", " : "", event->role, when,
                                          event->clock_set ? "\n" : "",
                                          event->clock_set ? in_words (sheet->translate, N_ ("The clock was set.")) : "");
  g_autofree char *place = g_strdup_printf ("%" G_GUINT64_FORMAT "\n%s", line->number, hash);
  const char *cells[] = { who, what, place };

  sy_folio_row (folio, cells);
}

SyFolio *
sy_history_sheet_new (const SyHistorySheet *sheet)
{
  g_autofree char *hash = sy_hash_text (&sheet->head), *line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->head_line);
  g_autofree char *head = sy_words_say (sheet->translate, N_ ("Head of the journal now: line {line}, {hash}"), "line", line,
                                        "hash", hash, NULL);
  g_autofree char *foot = foot_words (sheet);
  const SyFolioColumn columns[] = {
    { in_words (sheet->translate, N_ ("Who, when")), 0.22, SY_TYPE_NOTE },
    { in_words (sheet->translate, N_ ("What")), 0.56, SY_TYPE_NOTE },
    { in_words (sheet->translate, N_ ("Line, its hash")), 0.22, SY_TYPE_NOTE },
  };
  const SyFolioHead said = { .paper = sheet->paper, .translate = sheet->translate,
                       .title = in_words (sheet->translate, N_ ("What happened to an item")), .subtitle = sheet->task->name,
                       .head = head,
                       .program = sheet->program, .made = sheet->made, .foot = foot };
  SyFolio *folio;

  folio = sy_folio_new (&said);
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < sheet->n_lines; i++)
    add_line (folio, sheet, &sheet->lines[i]);
  return folio;
}
