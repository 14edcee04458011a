/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENTS_PAGE_PRIVATE_H
#define SY_IMPROVEMENTS_PAGE_PRIVATE_H

#include "sy-deed-form.h"
#include "sy-improvement-list.h"
#include "sy-improvements-page.h"

struct _SyImprovementsPage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyImprovementList *rows;
  GtkSingleSelection *selection;
  SyImprovementRow *chosen; /* what is shown under the list; NULL: nothing */
  GtkWidget *box, *bar, *search, *withdrawn, *paper, *message, *totals, *quarters, *told, *states, *view, *error_words, *retry;
  GtkWidget *below, *about, *bought, *history, *withdraw, *compare, *open, *caution;
};

/* sy-improvements-page.c */
void sy_improvements_page_update (SyImprovementsPage *self);
void sy_improvements_page_choose (SyImprovementsPage *self, SyImprovementRow *row);
/* Its comparison, or the item where one of the two is not here. */
void sy_improvements_page_open (SyImprovementsPage *self, SyImprovementRow *row, gboolean compared);
/* SyDeedMake: the improvement that is chosen is withdrawn. */
SyDeedAsk *sy_improvements_page_make_withdrawal (SyDeedForm *form, gpointer self);

/* sy-improvements-page-layout.c: what stands where */
void sy_improvements_page_build (SyImprovementsPage *self);

#endif
