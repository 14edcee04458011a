/* SPDX-License-Identifier: MIT */
#ifndef SY_DEED_H
#define SY_DEED_H

#include "sy-event.h"
#include "sy-words.h"

/*
 * What is done about an item besides revising it: sign-off, actions, reviews, retirement, telling the workers, saying what
 * an improvement was.
 * Each is an event whose facts are a small JSON document; these read and write it. Who, in which role, when and why
 * are the event's own.
 */

typedef enum
{
  SY_STEP_OPEN,     /* of an action       */
  SY_STEP_ASSIGN,
  SY_STEP_CLOSE,
  SY_STEP_ADD,      /* of an improvement  */
  SY_STEP_WITHDRAW,
} SyDeedStep;

typedef enum
{
  SY_TRIGGER_DATE,     /* a day was set             */
  SY_TRIGGER_ACCIDENT, /* something happened        */
  SY_TRIGGER_CHANGE,   /* the work is being changed */
} SyTrigger;
#define SY_N_TRIGGERS 3
const char *sy_trigger_id (SyTrigger trigger); /* "date", "accident", "change" */
gboolean sy_trigger_from_id (const char *id, SyTrigger *trigger);

/* Texts are never NULL after reading; NULL is written like "". Owned by the struct; sy_deed_clear() frees them. */
typedef struct
{
  SyEventKind kind;    /* which of the following count                                             */

  /* SIGNATURE: of the revision that the event names */
  char *line_hash;     /* of that revision's line of the journal, 64 hex digits                    */
  char *competence;    /* what makes the signer competent, as typed                                */

  /* ACTION, IMPROVEMENT */
  SyDeedStep step;

  /* ACTION */
  char *action;        /* id, 16 hex digits                                                        */
  char *what;          /* OPEN: what is to be done; ADD: what was done                             */
  char *about;         /* OPEN: id of the reason or remedy that it is about, "" for none           */
  char *assigned;      /* OPEN, ASSIGN: to whom, "" for nobody yet                                 */
  char *due;           /* OPEN, ASSIGN: "2026-12-01", "" for none; REVIEW: the day                 */
  char *evidence;      /* CLOSE: by what it can be seen that it was done                           */

  /* REVIEW */
  SyTrigger trigger;

  /* RETIREMENT */
  gboolean retired;    /* FALSE: taken back into use                                               */

  /* TOLD, of the revision that the event names */
  char *who;           /* names, as typed                                                          */
  char *mass;          /* as it was told: "18 kg"                                                  */
  char *heaviest_side; /* as it was told                                                           */

  /* IMPORT */
  char *head;          /* of the record that the bundle was made from                              */
  gint64 lines;        /* that were added                                                          */

  /* IMPROVEMENT: from an earlier assessment to the revision that the event names; WITHDRAW has the id alone */
  char *improvement;   /* id, 16 hex digits                                                        */
  char *from_item, *from_kind, *from_name;
  gint64 from_revision; /* as it was numbered where this was written                               */
  char *from_hash, *to_hash; /* sy_event_identity() of the two revisions, 64 hex digits            */
  char *idea_by;       /* who thought of it                                                        */
  char *put_to_work;   /* the day on which it was                                                  */
} SyDeed;

void sy_deed_clear (SyDeed *deed); /* zeros are fine */
/* Facts of the event; new string. */
char *sy_deed_write (const SyDeed *deed);
/* FALSE, with @deed cleared, for an event of a kind that is no deed, or whose facts cannot be read. */
gboolean sy_deed_read (const SyEvent *event, SyDeed *deed);
/* One sentence in English for a timeline: "Signed off in the role of foreman", "Action opened: fit a stop"; "" for a
   kind that is no deed. @translate as elsewhere in sy-words.h. New string. */
char *sy_deed_words (const SyEvent *event, SyTranslate translate);

/* An action as it stands: a fold of its events. */
typedef struct
{
  char *id;
  char *item, *item_kind, *item_name; /* what it belongs to                        */
  char *what, *about, *assigned, *due;
  gboolean open;
  char *opened_by, *opened_when, *why;
  char *closed_by, *closed_when, *evidence; /* "" while open                       */
  guint64 line;                       /* of the journal, the latest about it       */
} SyAction;
void sy_action_free (SyAction *action); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyAction, sy_action_free)
SyAction *sy_action_copy (const SyAction *action);
/* Fold one ACTION event (NULL: begins one, with OPEN; anything else about an action that is not there returns NULL).
   Consumes @action. */
SyAction *sy_action_apply (SyAction *action, const SyEvent *event, guint64 line);

#endif
