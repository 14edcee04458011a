/* SPDX-License-Identifier: MIT */
/* A comparison on paper: as PDF, and to a printer. */
#include "sy-comparison-sheet.h"
#include "sy-compare-page-private.h"
#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-print-folio.h"

#define PROGRAM "steelyard " SY_VERSION

static SyPaper
chosen_paper (SyComparePage *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper)) == 1 ? SY_PAPER_LETTER : SY_PAPER_A4;
}

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

/* NULL: nothing is shown. */
static SyFolio *
make_folio (SyComparePage *self, const char *now)
{
  const SyRevision *last;

  if (self->beside == NULL)
    return NULL;
  last = last_line (self);
  return sy_comparison_sheet_new (&(SyComparisonSheet) {
    .beside = self->beside, .before = sy_compare_page_revision (&self->sides[0])->event,
    .after = sy_compare_page_revision (&self->sides[1])->event, .has_head = TRUE, .head_line = last->number, .head = last->hash,
    .paper = chosen_paper (self), .translate = sy_translate, .program = PROGRAM, .made = now });
}

gboolean
sy_compare_page_write (SyComparePage *self, const char *path)
{
  g_autoptr (SyFolio) folio = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL, *now = NULL;
  gboolean clock_set;

  g_return_val_if_fail (SY_IS_COMPARE_PAGE (self), FALSE);
  now = sy_clock_now (&clock_set, &error);
  folio = now != NULL ? make_folio (self, now) : NULL;
  if (folio == NULL && error == NULL)
    return FALSE;
  if (folio == NULL || !sy_folio_write_pdf (folio, path, now, &error))
    {
      words = g_strdup_printf (_("The comparison was not saved: %s"), error->message);
      sy_compare_page_say (self, TRUE, words);
      return FALSE;
    }
  words = g_strdup_printf (_("Saved as %s"), path);
  sy_compare_page_say (self, FALSE, words);
  return TRUE;
}

static void
file_chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyComparePage) self = SY_COMPARE_PAGE (user_data);
  g_autoptr (GFile) file = sy_file_ask_save_finish (result);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  (void) source;
  if (self->box == NULL)
    return;
  if (path != NULL)
    sy_compare_page_write (self, path);
  else if (file != NULL)
    sy_compare_page_say (self, TRUE, _("The comparison was not saved: this place is not a folder of this computer."));
}

void
sy_compare_page_save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  (void) name, (void) parameter;
  sy_file_ask_save_async (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, _("Save the comparison"),
                          /* Translators: file name. */
                          _("comparison.pdf"), _("PDF documents"), "*.pdf", NULL, file_chosen_cb, g_object_ref (widget));
}

static void
printed_cb (gboolean sent, const GError *error, gpointer user_data)
{
  SyComparePage *self = user_data;
  g_autofree char *words = NULL;

  if (self->box == NULL)
    return;
  if (error != NULL)
    {
      words = g_strdup_printf (_("The comparison was not printed: %s"), error->message);
      sy_compare_page_say (self, TRUE, words);
    }
  else if (sent)
    sy_compare_page_say (self, FALSE, _("The comparison was sent to the printer."));
}

void
sy_compare_page_print (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyComparePage *self = SY_COMPARE_PAGE (widget);
  gboolean clock_set;
  g_autoptr (GError) error = NULL;
  g_autofree char *now = sy_clock_now (&clock_set, &error);
  SyFolio *folio = now != NULL ? make_folio (self, now) : NULL;

  (void) name, (void) parameter;
  sy_compare_page_say (self, error != NULL, error != NULL ? error->message : "");
  if (folio != NULL)
    sy_print_folio (widget, folio, chosen_paper (self), _("Comparison"), printed_cb);
}
