/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENT_ROW_H
#define SY_IMPROVEMENT_ROW_H

#include <gio/gio.h>

#include "sy-improvement.h"

/* One improvement of the log, in words. Immutable once made. */
#define SY_TYPE_IMPROVEMENT_ROW (sy_improvement_row_get_type ())
G_DECLARE_FINAL_TYPE (SyImprovementRow, sy_improvement_row, SY, IMPROVEMENT_ROW, GObject)

/* @views: which @view belongs to; held as long as the row is. */
SyImprovementRow *sy_improvement_row_new (GPtrArray *views, const SyImprovementView *view);
const SyImprovementView *sy_improvement_row_get_view (SyImprovementRow *row);
/* The same improvement, and nothing was done about it since. */
gboolean sy_improvement_row_equals (SyImprovementRow *row, SyImprovementRow *other);
/* Whether each of @words (NULL-terminated, casefolded) is in what it says. */
gboolean sy_improvement_row_has (SyImprovementRow *row, char **words);

/* Translated; new strings. */
char *sy_improvement_row_change (SyImprovementRow *row);  /* "Blanks: revision 1 → 3", "Blanks (1) → Blanks by cart (2)" */
char *sy_improvement_row_reached (SyImprovementRow *row); /* "Reached", "Not reached", "Held before" … */
/* "12.5 min less", "0.30 more", "the same"; "–": not known. */
char *sy_improvement_row_gain (SyImprovementRow *row, SyGain gain);
/* The same of any gain; NAN: not known. */
char *sy_improvement_gain_words (SyGain gain, double value);
/* Who entered it when, and how it was withdrawn. */
char *sy_improvement_row_history (SyImprovementRow *row);

/* All together in one line: "7 improvements · 4 reached a favourable verdict · index 0.64 less in the mean (of 5) · …". */
char *sy_improvement_total_words (const SyQuarter *total);
/* One quarter in a sentence: "2026 Q1: 2 improvements, 1 reached a favourable verdict, index 1.10 less in the mean (of 2) …". */
char *sy_improvement_quarter_words (const SyQuarter *quarter);

#endif
