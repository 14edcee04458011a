/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_H
#define SY_TASK_H

#include "sy-event.h"
#include "sy-verdict.h"

/* What the registers list beside what every item has; what the item's kind has not is "", NAN or FALSE. */
typedef struct
{
  double mass_with_allowance_kg; /* die                                               */
  double cg_mm[3];               /* die: centre of gravity as the document's axes run */
  char *machine;                 /* die; of gear all that it serves, ", " between     */
  char *storage;                 /* die and gear                                      */
  char *gear_kind;               /* gear: "shackle"                                   */
  char *identity;                /* gear: mark or serial number                       */
  double wll_kg;                 /* gear                                              */
  char *due;                     /* gear: "2027-03-01"                                */
  gboolean withdrawn;            /* gear                                              */
  char *condition;               /* gear: "good", "worn", "damaged"                   */
} SyItemDetail;

/* Current state of an item (a task, a changeover, a die, a piece of gear …): a projection of its events that can be made anew
   at any time. */
typedef struct
{
  char *id;
  char *item_kind;      /* SY_ITEM_TASK …                                  */
  char *name;
  char *place;          /* "" for none                                     */
  char *method;
  char *units;          /* "metric"                                        */
  SyVerdict verdict;
  double index;         /* INFINITY unbounded, NAN none                    */
  char *index_symbol;   /* "LI", "utilisation"; "" for none                */
  double mass_kg;       /* heaviest, with allowance where there is one; NAN none */
  double persons;       /* 1 when not said                                 */
  double lifts_per_day; /* as given or worked out from the pace; NAN none  */
  double rank;          /* index × persons × lifts a day, INFINITY for an unbounded index; NAN for a method
                           that has no lifts a day, and where one of the three is missing */
  gint64 revision;      /* latest                                          */
  gint64 clash;         /* 0, or a revision that shares the latest's base; where none does, the
                           revision that was the latest and is not what the new one was made from */
  char *lineage;        /* "2<1~HASH" for revision 2 made from 1, oldest first; HASH, 16 hex digits, is of its author's
                           name without case and spare blanks: what clash and signed_own are told by */
  char *valid_until;    /* "2027-03-01", the last day on which the verdict holds: what the findings say, else
                           the due date in the facts; "" when nothing of it falls due */
  char *by, *why;
  char *when;           /* claimed time of the latest revision             */
  char *search_text;    /* name, place, people, machine, identity, reasons in words … */
  gint64 seat;          /* its place among the items as they were begun, from 1; 0 outside a store */
  char *role;           /* of whoever made the latest revision             */
  gint64 edition;       /* of the method, policy and program of the latest revision: "steelyard-default 2" */
  char *policy, *program;
  gboolean loosened;    /* judged under limits looser than the program's own: caution "policy-loosened" */
  char *begun;          /* claimed time of the first revision              */
  gint64 signed_revision; /* 0, or the revision that was signed off last   */
  char *signed_by, *signed_role, *signed_when;
  gboolean signed_own;  /* by the person who made that revision            */
  char *open_actions;   /* "id=2026-12-01 id=": the open ones, oldest first, each with its due date if it has one */
  gint64 n_open;        /* how many these are                              */
  char *action_due;     /* the earliest of their dates, "" for none        */
  char *review_due;     /* "2027-03-01"; "" for none set. Settled by a revision: for SY_TRIGGER_DATE one whose claimed
                           time is on that day or later, for the others the next */
  char *review_trigger; /* "date", "accident", "change"; "" for none set   */
  gboolean retired;
  gint64 told_revision; /* 0, or the latest revision of which workers were told mass and heaviest side */
  SyItemDetail detail;
} SyTask;

SyTask *sy_task_new (void);
SyTask *sy_task_copy (const SyTask *task);
void sy_task_free (SyTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyTask, sy_task_free)

/* Fold one event into the task (NULL: begins one, with a revision). Consumes @task; returns the new state.
   What is no matter of an item (a policy, an attachment, an import) leaves it as it is. */
SyTask *sy_task_apply (SyTask *task, const SyEvent *event);

/* Whether @today, in days since 1970, is past the day until which the verdict holds; FALSE for NAN. */
gboolean sy_task_is_expired (const SyTask *task, double today);

#endif
