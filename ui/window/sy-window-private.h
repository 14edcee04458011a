/* SPDX-License-Identifier: MIT */
#ifndef SY_WINDOW_PRIVATE_H
#define SY_WINDOW_PRIVATE_H

#include "sy-registers.h"
#include "sy-task-page.h"
#include "sy-window.h"

struct _SyWindow
{
  GtkApplicationWindow parent_instance;
  SyWorker *worker;
  SyUnits units; /* of new tasks and of the list */

  SyTaskList *list;
  GtkWidget *stack;
  GtkWidget *lists[SY_N_REGISTERS], *actions, *improvements, *journal, *audit, *matrix, *survey, *limits, *compare; /* made when first looked at */
  SyRegister last;                                            /* list to which a page that is open leads back */
  GtkWidget *choice; /* what can be begun */
  GtkWidget *task; /* NULL: none is open */
  char *item;      /* id of the one that was opened; NULL: none, or a new one */
  GtkWidget *back, *title, *subtitle, *print;
  const char *from; /* the page to which "back" leads; interned */
  gboolean asking;           /* the question about unsaved changes is open */
  gboolean close_when_saved;
};

/* sy-window.c */
/* The list that a page of the window is; FALSE: none. */
gboolean sy_window_find_register (const char *page, SyRegister *which);
/* The list of what is of a kind; FALSE: none. */
gboolean sy_window_find_kind (const char *item_kind, SyRegister *which);
/* Makes a page that is looked at for the first time. */
void sy_window_need_page (SyWindow *self, const char *name);
void sy_window_show_page (SyWindow *self, const char *name);
/* A page for a task in the place of the one that is open; not shown yet. NULL: of whatever method the task is. */
SyTaskPage *sy_window_new_task_page (SyWindow *self, const char *method);
/* The page of a task goes; what is not saved in it stays as its draft. */
void sy_window_close_task (SyWindow *self);
void sy_window_refresh_drafts (SyWindow *self);

/* sy-window-actions.c */
void sy_window_add_actions (SyWindow *self);

/* sy-window-compare.c */
void sy_window_add_compare_actions (SyWindow *self);

/* sy-window-frame.c */
GtkWidget *sy_window_new_header (SyWindow *self);
GtkWidget *sy_window_new_rail (void);
/* Escape leads back to the list. */
void sy_window_add_escape (SyWindow *self);

#endif
