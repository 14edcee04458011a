/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PAGE_PRIVATE_H
#define SY_TASK_PAGE_PRIVATE_H

#include "sy-follow-up.h"
#include "sy-item-files.h"
#include "sy-task-form.h"
#include "sy-task-history.h"
#include "sy-task-page.h"
#include "sy-task-saver.h"

/* What the line above the page asks. */
typedef enum
{
  SY_NOTICE_NONE,
  SY_NOTICE_DRAFT, /* unsaved changes were kept: take them up, or throw them away */
  SY_NOTICE_NEWER, /* somebody else saved: show that, or go on                    */
} SyNotice;

struct _SyTaskPage
{
  GtkWidget parent_instance;

  SyWorker *worker;
  SyForm *form;

  GtkWidget *states;    /* GtkStack: "wait", "trouble", "task", "part" */
  GtkWidget *trouble;
  GtkWidget *notice, *notice_words, *notice_yes, *notice_no;
  SyNotice notice_kind;
  SyTaskForm *facts;
  GtkWidget *tabs;      /* GtkStack */
  SyTaskHistory *history;
  SyFollowUp *follow;
  SyItemFiles *files;
  GtkWidget *standing;  /* SyTaskStanding */
  SyTaskSaver *saver;

  char *task_id;        /* NULL: not saved yet */
  char *draft_id;
  char *saved_name;     /* name as last saved, "" for none */
  gint64 base;          /* revision that is being revised, 0 none */
  gint64 seen;          /* the latest that the person was told of */
  gboolean judged;      /* the facts are those of base, to be saved because they are judged again */
  SyItemLog *log;       /* NULL: not saved yet */
  guint poll;           /* asks for what another program wrote */
  char *saved_words;    /* what the last save or opening says of itself */
  char *trouble_words;  /* a save or a draft that did not succeed; until the next change */
  SyDraft *offered;     /* draft that the notice offers */
  guint draft_timer;
  gboolean has_draft;   /* a file stands for what is typed */
  gboolean loading;     /* changes now are no edits */
  GCancellable *cancellable;
  SyTaskChoose choose;  /* opens the register, NULL: there is none */
  gpointer choose_data;
};

/* sy-task-page.c */
void sy_task_page_refresh (SyTaskPage *self);
void sy_task_page_show_notice (SyTaskPage *self, SyNotice kind, const char *words, const char *yes,
                               const char *no);
gboolean sy_task_page_name_is_changed (SyTaskPage *self);
/* The person changed something. */
void sy_task_page_edited (SyTaskPage *self);
/* Makes the form and what shows it anew where they are for another method. FALSE: there is no such method. */
gboolean sy_task_page_set_method (SyTaskPage *self, const char *method);

/* sy-task-page-layout.c */
void sy_task_page_build (SyTaskPage *self);
void sy_task_page_build_task (SyTaskPage *self); /* for self->form */
void sy_task_page_unbuild_task (SyTaskPage *self);
/* The page of the facts inside the form's at a path, in place of the task's; closed when they go. */
void sy_task_page_open_part (SyTaskPage *self, const char *path);
void sy_task_page_close_part (SyTaskPage *self);

/* sy-task-page-record.c */
void sy_task_page_schedule_draft (SyTaskPage *self);
void sy_task_page_flush_draft (SyTaskPage *self);
void sy_task_page_answer (SyTaskPage *self, gboolean yes);
void sy_task_page_reload_history (SyTaskPage *self);
void sy_task_page_revise (SyTaskPage *self, gint64 revision);
/* The same because its facts were judged again: that revision is the base. */
void sy_task_page_save_judged (SyTaskPage *self, gint64 revision);
/* Asks the record now and then what another program wrote, as long as the page is seen. */
void sy_task_page_watch (SyTaskPage *self, gboolean watch);
/* What the last save or opening says of itself; consumes @words, NULL for nothing. */
void sy_task_page_set_saved_words (SyTaskPage *self, char *words);

/* sy-task-page-print.c: a widget action */
void sy_task_page_print (GtkWidget *widget, const char *name, GVariant *parameter);

#endif
