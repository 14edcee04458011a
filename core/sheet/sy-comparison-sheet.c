/* SPDX-License-Identifier: MIT */
#include "sy-comparison-sheet.h"

#include "sy-deferring.h"

static const char *
in_words (const SyComparisonSheet *sheet, const char *msgid)
{
  return sheet->translate != NULL && *msgid != '\0' ? sheet->translate (msgid) : msgid;
}

static const char *
turn_words (const SyComparisonSheet *sheet, SyTurn turn)
{
  static const char *const words[] = { [SY_TURN_NONE] = "", [SY_TURN_BETTER] = N_ ("better"), [SY_TURN_WORSE] = N_ ("worse") };

  return in_words (sheet, words[turn]);
}

/* What a side is, so that it can be found again. */
static char *
side_words (const SyComparisonSheet *sheet, int side)
{
  const SyEvent *event = side == 0 ? sheet->before : sheet->after;
  const SyBesideSide *of = &sheet->beside->sides[side];
  g_autofree char *edition = g_strdup_printf ("%" G_GINT64_FORMAT, event->edition);
  g_autofree char *basis = sy_words_say (sheet->translate, N_ ("{method}, edition {edition}; limits {policy}; {program}"),
                                         "method", of->title, "edition", edition, "policy", event->policy, "program",
                                         event->program, NULL);

  if (*event->by == '\0')
    return g_steal_pointer (&basis);
  return g_strdup_printf ("%s\n%s%s%s, %s", basis, event->by, *event->role != '\0' ? ", " : "", event->role, event->claimed);
}

static void
add_row (SyFolio *folio, const char *name, const char *before, const char *after, const char *turn)
{
  const char *cells[] = { name, before != NULL ? before : "–", after != NULL ? after : "–", turn };

  sy_folio_row (folio, cells);
}

/* What the two defer to, each by its own findings. */
static char *
foot_words (const SyComparisonSheet *sheet)
{
  g_autoptr (SyDeferring) deferring = sy_deferring_new ();

  sy_deferring_add_findings (deferring, sheet->before->findings);
  sy_deferring_add_findings (deferring, sheet->after->findings);
  return sy_deferring_words (deferring, sheet->translate);
}

/* @share: of the width, of what stands before the two columns. */
static void
begin_table (SyFolio *folio, const SyComparisonSheet *sheet, const char *what, double share)
{
  const double turn = 0.08, each = (1 - turn - share) / 2;
  const SyFolioColumn columns[] = {
    { in_words (sheet, what), share, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("First")), each, SY_TYPE_NOTE },
    { in_words (sheet, N_ ("Second")), each, SY_TYPE_NOTE },
    { "", turn, SY_TYPE_STRONG },
  };

  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
}

static void
add_rows (SyFolio *folio, const SyComparisonSheet *sheet, GPtrArray *rows, const char *what, double share)
{
  if (rows->len == 0)
    return;
  begin_table (folio, sheet, what, share);
  for (guint i = 0; i < rows->len; i++)
    {
      const SyBesideRow *row = rows->pdata[i];

      add_row (folio, row->name, row->texts[0], row->texts[1], turn_words (sheet, row->turn));
    }
}

/* Those that went and came; of those that stay how many, so that it stays one page. */
static void
add_reasons (SyFolio *folio, const SyComparisonSheet *sheet)
{
  const GPtrArray *reasons = sheet->beside->reasons;
  guint stay = 0;
  g_autofree char *number = NULL, *words = NULL;

  for (guint i = 0; i < reasons->len; i++)
    {
      const SyBesideRow *row = reasons->pdata[i];

      if (row->texts[0] != NULL && row->texts[1] != NULL)
        {
          stay++;
          continue;
        }
      if (i == 0)
        begin_table (folio, sheet, N_ ("Reasons"), 0.2);
      add_row (folio, row->name, row->texts[0], row->texts[1], turn_words (sheet, row->turn));
    }
  if (stay == 0)
    return;
  number = g_strdup_printf ("%u", stay);
  words = sy_words_say (sheet->translate, N_ ("Reasons that both have: {number}; each assessment tells its own."), "number",
                        number, NULL);
  sy_folio_paragraph (folio, words, SY_TYPE_NOTE);
}

SyFolio *
sy_comparison_sheet_new (const SyComparisonSheet *sheet)
{
  const SyBeside *beside = sheet->beside;
  g_autofree char *subtitle = g_strdup_printf ("%s · %s", beside->sides[0].who, beside->sides[1].who);
  g_autofree char *hash = sy_hash_text (&sheet->head);
  g_autofree char *line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->head_line);
  g_autofree char *head = sheet->has_head ? sy_words_say (sheet->translate, N_ ("Head of the journal now: line {line}, {hash}"),
                                                          "line", line, "hash", hash, NULL)
                                          : g_strdup ("");
  g_autofree char *first = side_words (sheet, 0), *second = side_words (sheet, 1), *foot = foot_words (sheet);
  const SyFolioHead said = { .paper = sheet->paper, .translate = sheet->translate,
                             .title = in_words (sheet, N_ ("Two assessments beside each other")), .subtitle = subtitle,
                             .head = head, .program = sheet->program, .made = sheet->made, .foot = foot };
  SyFolio *folio = sy_folio_new (&said);

  sy_folio_paragraph (folio, beside->sentence, SY_TYPE_STRONG);
  begin_table (folio, sheet, N_ ("Which"), 0.2);
  add_row (folio, in_words (sheet, N_ ("Task")), beside->sides[0].who, beside->sides[1].who, "");
  add_row (folio, in_words (sheet, N_ ("Assessed")), first, second, "");
  add_rows (folio, sheet, beside->changed, N_ ("What changed"), 0.36);
  add_rows (folio, sheet, beside->bought, N_ ("What it bought"), 0.36);
  add_rows (folio, sheet, beside->limits, N_ ("Limits"), 0.5);
  add_reasons (folio, sheet);
  for (guint i = 0; i < beside->remarks->len; i++)
    sy_folio_paragraph (folio, beside->remarks->pdata[i], SY_TYPE_NOTE);
  return folio;
}
