/* SPDX-License-Identifier: MIT */
#ifndef SY_VERDICT_LABEL_H
#define SY_VERDICT_LABEL_H

#include <gtk/gtk.h>

#include "sy-findings.h"

/* A verdict: its shape, its words and what it means; optionally with how soon. */
#define SY_TYPE_VERDICT_LABEL (sy_verdict_label_get_type ())
G_DECLARE_FINAL_TYPE (SyVerdictLabel, sy_verdict_label, SY, VERDICT_LABEL, GtkBox)

/* @large: as the result of a page (announced when it changes); otherwise one quiet line without the meaning. */
GtkWidget *sy_verdict_label_new (gboolean large);
/* In the words of @method (NULL: the verdict's own). */
void sy_verdict_label_set (SyVerdictLabel *self, const SyMethod *method, SyVerdict verdict, SyUrgency urgency);
/* After sy_verdict_label_set: why, in place of what the verdict means in general. */
void sy_verdict_label_set_why (SyVerdictLabel *self, const char *why);
/* No verdict yet: the ring with a gap and these words. */
void sy_verdict_label_set_none (SyVerdictLabel *self, const char *title, const char *meaning);
const char *sy_verdict_label_get_title (SyVerdictLabel *self);

/* A row for a reason or caution: the shape of what it asks for (NULL: none), words that wrap, a quiet line under them. */
GtkWidget *sy_reason_row_new (const SyVerdict *verdict, const char *words, const char *quiet);

#endif
