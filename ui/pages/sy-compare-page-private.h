/* SPDX-License-Identifier: MIT */
#ifndef SY_COMPARE_PAGE_PRIVATE_H
#define SY_COMPARE_PAGE_PRIVATE_H

#include "sy-beside.h"
#include "sy-compare-page.h"
#include "sy-item-log.h"

typedef struct
{
  char *item;       /* NULL: to be chosen yet        */
  gint64 revision;  /* 0: the newest                 */
  SyItemLog *log;   /* NULL: not read yet            */
  char *trouble;    /* why it could not be read      */
  guint asked;      /* number of the last question   */
  GtkWidget *choose, *name, *revisions, *head;
} SyCompareSide;

struct _SyComparePage
{
  GtkWidget parent_instance;
  SyWorker *worker;
  SyTaskList *list;
  SyUnits units;
  SyCompareSide sides[2];
  SyBeside *beside; /* NULL: nothing is shown */
  GtkWidget *box, *scroller, *message, *paper, *result;
  GtkWidget *improve, *improve_words; /* the two as an improvement; why not */
  gboolean filling; /* the drop-downs are changed by the page itself */
};

/* sy-compare-page.c */
/* "": nothing is said any more. */
void sy_compare_page_say (SyComparePage *self, gboolean trouble, const char *words);
/* NULL: there is none yet. */
const SyRevision *sy_compare_page_revision (const SyCompareSide *side);

/* sy-compare-paper.c: the widget actions */
void sy_compare_page_print (GtkWidget *widget, const char *name, GVariant *parameter);
void sy_compare_page_save (GtkWidget *widget, const char *name, GVariant *parameter);

/* sy-compare-improve.c: from the first to the second, in the improvement log */
GtkWidget *sy_compare_page_new_improve (SyComparePage *self);
/* Only what the log takes is offered. */
void sy_compare_page_update_improve (SyComparePage *self);
/* The widget action: opens the form. */
void sy_compare_page_improve (GtkWidget *widget, const char *name, GVariant *parameter);

#endif
