/* SPDX-License-Identifier: MIT */
#ifndef SY_SURVEY_PAGE_H
#define SY_SURVEY_PAGE_H

#include <gtk/gtk.h>

#include "sy-sheet.h"

/*
 * The blank measuring sheet as it will be printed; the choice of units and paper.
 * Widget actions: "survey.print", "survey.save" (as PDF; asks where).
 */
#define SY_TYPE_SURVEY_PAGE (sy_survey_page_get_type ())
G_DECLARE_FINAL_TYPE (SySurveyPage, sy_survey_page, SY, SURVEY_PAGE, GtkWidget)

GtkWidget *sy_survey_page_new (SyUnits units);
void sy_survey_page_set_units (SySurveyPage *page, SyUnits units);
/* Writes the sheet as chosen; says in the page how it went. */
gboolean sy_survey_page_write (SySurveyPage *page, const char *path);

#endif
