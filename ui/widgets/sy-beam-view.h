/* SPDX-License-Identifier: MIT */
#ifndef SY_BEAM_VIEW_H
#define SY_BEAM_VIEW_H

#include <gtk/gtk.h>

#include "sy-findings.h"

/*
 * The steelyard: the index on its arm. The poise follows a new value within 150 ms; at once where the desktop asks for
 * no animation. An image whose description is the sentence under it.
 */
#define SY_TYPE_BEAM_VIEW (sy_beam_view_get_type ())
G_DECLARE_FINAL_TYPE (SyBeamView, sy_beam_view, SY, BEAM_VIEW, GtkDrawingArea)

GtkWidget *sy_beam_view_new (void);
/* NULL: no result yet. @sentence: the description. */
void sy_beam_view_set_findings (SyBeamView *self, const SyFindings *findings, const char *sentence);
/* Where the poise stands now, for tests; NAN: no result. */
double sy_beam_view_get_shown (SyBeamView *self);

/* The smaller arm: a mass against a limit. */
#define SY_TYPE_MASS_VIEW (sy_mass_view_get_type ())
G_DECLARE_FINAL_TYPE (SyMassView, sy_mass_view, SY, MASS_VIEW, GtkDrawingArea)

GtkWidget *sy_mass_view_new (void);
void sy_mass_view_set (SyMassView *self, double mass, double limit, const char *mass_text,
                       const char *limit_text, const char *sentence);

#endif
