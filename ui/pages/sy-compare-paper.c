/* SPDX-License-Identifier: MIT */
/* A comparison on paper: as PDF, and to a printer. */
#include "sy-comparison-sheet.h"
#include "sy-compare-page-private.h"
#include "sy-i18n.h"
#include "sy-paper-out.h"

/* The last line that the page knows of: which revisions stand where is in it. */
static const SyRevision *
last_line (SyComparePage *self)
{
  const SyRevision *last = NULL;

  for (int i = 0; i < 2; i++)
    {
      GPtrArray *lines = self->sides[i].log->lines;
      const SyRevision *line = lines->pdata[lines->len - 1];

      if (last == NULL || line->number > last->number)
        last = line;
    }
  return last;
}

static SyFolio *
make_folio (GtkWidget *page, char **made, GError **error)
{
  SyComparePage *self = SY_COMPARE_PAGE (page);
  const SyRevision *last;
  gboolean clock_set;

  *made = sy_clock_now (&clock_set, error);
  if (*made == NULL || self->beside == NULL)
    return NULL;
  last = last_line (self);
  return sy_comparison_sheet_new (&(SyComparisonSheet) {
    .beside = self->beside, .before = sy_compare_page_revision (&self->sides[0])->event,
    .after = sy_compare_page_revision (&self->sides[1])->event, .has_head = TRUE, .head_line = last->number, .head = last->hash,
    .paper = sy_paper_choice_get (self->paper), .translate = sy_translate, .program = "steelyard " SY_VERSION,
    .made = *made });
}

static void
say (GtkWidget *page, gboolean trouble, const char *words)
{
  sy_compare_page_say (SY_COMPARE_PAGE (page), trouble, words);
}

static const SyPaperOut paper_out = {
  .make = make_folio,
  .say = say,
  .ask = N_ ("Save the comparison"),
  .job = N_ ("Comparison"),
  .not_saved = N_ ("The comparison was not saved: {why}"),
  .not_printed = N_ ("The comparison was not printed: {why}"),
  .sent = N_ ("The comparison was sent to the printer."),
};

gboolean
sy_compare_page_write (SyComparePage *self, const char *path)
{
  g_return_val_if_fail (SY_IS_COMPARE_PAGE (self), FALSE);
  return sy_paper_out_write (GTK_WIDGET (self), &paper_out, path);
}

void
sy_compare_page_save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  /* Translators: file name. */
  sy_paper_out_save (widget, &paper_out, _("comparison.pdf"));
}

void
sy_compare_page_print (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_paper_out_print (widget, &paper_out);
}
