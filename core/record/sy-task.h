/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_H
#define SY_TASK_H

#include "sy-event.h"
#include "sy-verdict.h"

/* Current state of a task: a projection of its events that can be made anew at any time. */
typedef struct
{
  char *id;
  char *name;
  char *place;          /* "" for none                                     */
  char *method;
  char *units;          /* "metric"                                        */
  SyVerdict verdict;
  double index;         /* INFINITY unbounded, NAN none                    */
  char *index_symbol;   /* "LI"                                            */
  double mass_kg;       /* heaviest, NAN none                              */
  double persons;       /* 1 when not said                                 */
  double lifts_per_day; /* as given or worked out from the pace; NAN none  */
  double rank;          /* index × persons × lifts a day; INFINITY, NAN    */
  gint64 revision;      /* latest                                          */
  gint64 clash;         /* 0, or a revision that shares the latest's base; where none does, the
                           revision that was the latest and is not what the new one was made from */
  char *lineage;        /* "2<1" for revision 2 made from 1, oldest first: what clash is told by  */
  char *by, *why;
  char *when;           /* claimed time of the latest revision             */
  char *search_text;    /* name, place, people, reasons in words           */
} SyTask;

SyTask *sy_task_new (void);
SyTask *sy_task_copy (const SyTask *task);
void sy_task_free (SyTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTask, sy_task_free)

/* Fold one revision event into the task (NULL: begins one). Consumes @task; returns the new state.
   Other kinds of event leave it as it is. */
SyTask *sy_task_apply (SyTask *task, const SyEvent *event);

#endif
