/* SPDX-License-Identifier: MIT */
#include "sy-import-words.h"

#include "sy-i18n.h"
#include "sy-method.h"

#define LISTED 20 /* conflicts that are told one by one */

char *
sy_import_report_words (const SyImportReport *report, gboolean is_dry)
{
  GString *words = g_string_new (NULL);

  if (report->added == 0)
    g_string_append (words, _("Everything in it is known here already: there is nothing to take over."));
  else if (is_dry)
    g_string_append_printf (words,
                            P_ ("%" G_GUINT64_FORMAT " line would be added,", "%" G_GUINT64_FORMAT " lines would be added,",
                                report->added),
                            report->added);
  else
    g_string_append_printf (
      words, P_ ("%" G_GUINT64_FORMAT " line was added,", "%" G_GUINT64_FORMAT " lines were added,", report->added),
      report->added);
  if (report->added > 0)
    g_string_append_printf (words, _(" %" G_GUINT64_FORMAT " are known already."), report->known);
  if (report->hashes_only > 0)
    g_string_append_printf (words, _(" Of %" G_GUINT64_FORMAT " the bundle has only the hash."), report->hashes_only);
  if (report->left > 0)
    g_string_append_printf (words, _(" %" G_GUINT64_FORMAT " say what the other record took over itself, and stay there."),
                            report->left);
  if (report->conflicts->len > 0)
    g_string_append (words, is_dry ? _("\nWould then stand there twice; both are kept:")
                                   : _("\nStands there twice now; both are kept:"));
  for (guint i = 0; i < MIN (report->conflicts->len, LISTED); i++)
    g_string_append_printf (words, "\n%s", (char *) report->conflicts->pdata[i]);
  if (report->conflicts->len > LISTED)
    g_string_append (words, "\n…");
  return g_string_free (words, FALSE);
}

char *
sy_lifts_report_words (const SyLiftsReport *report, gboolean is_dry)
{
  GString *words = g_string_new (NULL);

  g_string_append_printf (
    words, P_ ("%" G_GUINT64_FORMAT " lift in the table. ", "%" G_GUINT64_FORMAT " lifts in the table. ", report->rows),
    report->rows);
  if (report->bad->len > 0)
    {
      g_string_append_printf (words,
                              P_ ("%u cell cannot be taken; nothing was recorded. Put it right in the table and choose it again.",
                                  "%u cells cannot be taken; nothing was recorded. Put them right in the table and choose it "
                                  "again.",
                                  report->bad->len),
                              report->bad->len);
      return g_string_free (words, FALSE);
    }
  if (is_dry)
    g_string_append_printf (words, _("%" G_GUINT64_FORMAT " tasks would be begun, %" G_GUINT64_FORMAT " revised."), report->begun,
                            report->revised);
  else
    g_string_append_printf (words, _("%" G_GUINT64_FORMAT " tasks were begun, %" G_GUINT64_FORMAT " revised."), report->begun,
                            report->revised);
  for (int verdict = 0; verdict < SY_N_VERDICTS; verdict++)
    if (report->by_verdict[verdict] > 0)
      g_string_append_printf (words, "\n%s: %" G_GUINT64_FORMAT,
                              sy_translate (sy_verdict_title_for (sy_method_find ("lift"), (SyVerdict) verdict)),
                              report->by_verdict[verdict]);
  return g_string_free (words, FALSE);
}
