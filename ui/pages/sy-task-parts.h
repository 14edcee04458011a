/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PARTS_H
#define SY_TASK_PARTS_H

#include <gtk/gtk.h>

#include "sy-form.h"

/* Small pieces that the parts of a task page share. */

/* A label that wraps, with a style class (NULL for none). */
GtkWidget *sy_part_label (const char *text, const char *css_class);
/* A heading, role heading. */
GtkWidget *sy_part_heading (const char *text);
/* A check button to be grouped, whose words wrap where there is little room. */
GtkWidget *sy_part_radio (const char *text);
/* What a row of a list says in two lines that do not wrap: a name, and a note under it. */
GtkWidget *sy_part_two_lines (void);
void sy_part_set_lines (GtkWidget *lines, const char *name, const char *note);
/* @child in a column that scrolls by itself; named for assistive technology. */
GtkWidget *sy_part_scroller (GtkWidget *child, const char *name);
void sy_part_empty (GtkWidget *box);

/* @row with a button beside it that opens an action about it on the page: @about the id of a reason or remedy, @what its words. */
GtkWidget *sy_part_with_action (GtkWidget *row, const char *about, const char *what);

/* Calls @update now, and after every change of the form: at once while the widget can be seen, otherwise when it
   comes to be seen. */
typedef void (*SyPartUpdate) (GtkWidget *widget, SyForm *form);
void sy_part_follow (GtkWidget *widget, SyForm *form, SyPartUpdate update);
/* Updates it now if it has not followed the last change yet. */
void sy_part_catch_up (GtkWidget *widget);

/* A column in the tabs of a page. */
GtkWidget *sy_part_tab (void);
/* Empties it. FALSE: there is no result, which is then said. */
gboolean sy_part_begin_tab (GtkWidget *box, SyForm *form);
/* What is said under every result. */
void sy_part_end_tab (GtkWidget *box);

/* The index of findings against its goal: "2.13", "∞" where no limit holds, "–" without findings. New string. */
char *sy_part_index_text (const SyFindings *findings);
/* The part of a capacity over which the policy asks for better: 0.75; NAN: it does not. */
double sy_part_notice (const SyFindings *findings);
/* A ratio in percent, with as many decimals as it takes not to look like the limit that it is near to; "∞". New string. */
char *sy_part_percent (double ratio, const SyFindings *findings);
/* What is still needed or wrong, in one sentence; NULL when nothing is. New string. */
char *sy_part_problems_sentence (SyForm *form);

#endif
