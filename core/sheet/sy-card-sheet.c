/* SPDX-License-Identifier: MIT */
/* A card for the wall, to be laminated: laid out once on A5, and larger by as much as the paper is. */
#include <math.h>
#include <string.h>

#include "sy-task-sheet-private.h"

#define PICTURE_HEIGHT 112 /* at least */
#define PICTURE_SMALL 84   /* where the foot has more to say: what it defers to */
#define PICTURE_MORE 130
#define PICTURES_MAX 2
#define WHY_MAX 1       /* reasons told; the assessment has them all */

static double
scale_of (SyPaper paper)
{
  double width, height, own_width, own_height;

  sy_paper_size (SY_PAPER_A5, &own_width, &own_height);
  sy_paper_size (paper, &width, &height);
  return MIN (width / own_width, height / own_height);
}

/* What it is and where: a die, a machine, a place. */
static char *
place_words (const SyTaskSheet *sheet, GPtrArray *facts)
{
  static const char *const paths[] = { "die", "machine", "place" };
  g_autoptr (GString) out = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      const char *value = sy_sheet_fact (facts, paths[i]);

      if (value != NULL && strcmp (value, sheet->event->name) != 0)
        g_string_append_printf (out, "%s%s", out->len > 0 ? " · " : "", value);
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static SyFolio *
begin (const SyTaskSheet *sheet, GPtrArray *facts)
{
  g_autofree char *place = place_words (sheet, facts), *identity = sy_sheet_identity (sheet);
  g_autofree char *line = g_strdup_printf ("%" G_GUINT64_FORMAT, sheet->head_line), *hash = sy_hash_text (&sheet->head);
  g_autofree char *head = sy_words_say (sheet->translate, N_ ("Head of the journal now: line {line}, {hash}"), "line", line,
                                        "hash", hash, NULL);
  g_autofree char *defers = sy_sheet_defers_to (sheet);
  g_autofree char *foot = g_strconcat (identity, sheet->task != NULL ? " " : "", sheet->task != NULL ? head : "",
                                       *defers != '\0' ? " " : "", defers, NULL);

  return sy_folio_new (&(SyFolioHead) { .paper = sheet->paper, .translate = sheet->translate, .title = sheet->event->name,
                                        .subtitle = place, .program = sheet->program, .made = sheet->made, .foot = foot,
                                        .scale = scale_of (sheet->paper), .large = TRUE });
}

static void
add_why (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;

  for (int i = 0; i < findings->n_reasons && i < WHY_MAX; i++)
    {
      g_autofree char *words = sy_words_reason (findings, &findings->reasons[i], sheet->translate);

      sy_folio_paragraph (folio, words, SY_TYPE_CARD);
    }
  sy_sheet_add_disagreement (folio, sheet, SY_TYPE_CARD_STRONG);
  if (sheet->task != NULL && !sy_sheet_is_signed (sheet))
    sy_folio_paragraph (folio, sy_sheet_in (sheet, N_ ("Nobody has signed this off.")), SY_TYPE_CARD_STRONG);
}

/* How it hangs from the side, or how it is held. */
static void
add_pictures (SyFolio *folio, const SyTaskSheet *sheet)
{
  const gsize n = sheet->facts->method->n_views;
  const gsize first = n > PICTURES_MAX ? n - PICTURES_MAX : 0;
  const guint shown = (guint) MIN (n, PICTURES_MAX);
  g_autofree char *defers = sy_sheet_defers_to (sheet);
  SyFolioPicture pictures[PICTURES_MAX];

  if (n == 0)
    return;
  for (guint i = 0; i < shown; i++)
    pictures[i] = sy_sheet_view (sheet, first + i, 1.0 / shown, "Sans 7.5px");
  sy_folio_pictures (folio, pictures, shown, *defers != '\0' ? PICTURE_SMALL : PICTURE_HEIGHT);
}

static char *
joined (const GPtrArray *lines)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    g_string_append_printf (out, "%s• %s", i > 0 ? "\n" : "", (const char *) lines->pdata[i]);
  return g_string_free (out, FALSE);
}

static void
add_lines (SyFolio *folio, const SyTaskSheet *sheet, GPtrArray *facts)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Do")), 0.5, SY_TYPE_CARD },
    { sy_sheet_in (sheet, N_ ("Do not")), 0.5, SY_TYPE_CARD },
  };
  g_autoptr (GPtrArray) done = g_ptr_array_new_with_free_func (g_free), never = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *do_words = NULL, *never_words = NULL;

  sy_card_lines (sheet, facts, done, never);
  if (done->len == 0 && never->len == 0)
    return;
  do_words = joined (done);
  never_words = joined (never);
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  sy_folio_row (folio, (const char *const[]) { do_words, never_words });
}

/* The first that would be enough. */
static void
add_remedy (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const SyVerdict verdict = sy_sheet_verdict (sheet);

  if (verdict != SY_VERDICT_IMPROVE && verdict != SY_VERDICT_MECHANICAL)
    return;
  for (int i = 0; i < findings->n_remedies; i++)
    if (findings->remedies[i].reaches)
      {
        g_autofree char *remedy = sy_words_remedy (findings, &findings->remedies[i], sheet->translate);
        g_autofree char *words = sy_words_say (sheet->translate, N_ ("What would help: {remedy}"), "remedy", remedy, NULL);

        sy_folio_paragraph (folio, words, SY_TYPE_CARD);
        return;
      }
}

/* A piece of gear and a whole changeover have no centre of gravity of their own. */
gboolean
sy_card_has_load (const SyTaskSheet *sheet)
{
  const char *kind = sheet->findings->method->item_kind;

  return strcmp (kind, SY_ITEM_TASK) == 0 || strcmp (kind, SY_ITEM_DIE) == 0;
}

SyFolio *
sy_card_sheet_new (const SyTaskSheet *sheet)
{
  g_autoptr (GPtrArray) facts = sy_sheet_facts (sheet, FALSE);
  g_autofree char *headline = sy_card_headline (sheet), *mass = sy_card_mass (sheet, facts);
  g_autofree char *balance = sy_card_balance (sheet, facts), *review = sy_sheet_review (sheet);
  g_autofree char *gear = sy_card_gear (sheet, facts);
  SyFolio *folio = begin (sheet, facts);

  sy_folio_lead (folio, &(SyFolioLead) { .size = 64, .shape = sy_sheet_shape (sy_sheet_verdict (sheet)), .words = headline,
                                         .type = SY_TYPE_POSTER, .share = 1 });
  if (*mass != '\0')
    sy_folio_paragraph (folio, mass, SY_TYPE_LARGE);
  if (sy_card_has_load (sheet))
    sy_folio_paragraph (folio, balance, SY_TYPE_CARD_STRONG);
  if (*gear != '\0' && sy_verdict_rank (sy_sheet_verdict (sheet)) <= sy_verdict_rank (SY_VERDICT_IMPROVE))
    sy_folio_paragraph (folio, gear, SY_TYPE_CARD_STRONG);
  add_why (folio, sheet);
  add_pictures (folio, sheet);
  add_lines (folio, sheet, facts);
  add_remedy (folio, sheet);
  sy_folio_paragraph (folio, review, SY_TYPE_CARD_STRONG);
  /* As long as the change is: what does not fit goes on the back. */
  if (strcmp (sheet->facts->method->id, "changeover") == 0)
    sy_card_add_change (folio, sheet);
  sy_folio_fill (folio, PICTURE_MORE);
  return folio;
}
