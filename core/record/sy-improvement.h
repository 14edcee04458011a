/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENT_H
#define SY_IMPROVEMENT_H

#include "sy-beside.h"
#include "sy-deed.h"
#include "sy-deferring.h"

/*
 * The improvement log: from which assessment to which the work was changed, who thought of it, and what it bought. What it bought
 * is read from the two revisions as they were stored; nothing is judged again.
 */

/* Topics: one improvement */

/* As it stands: a fold of its events. Texts are never NULL. */
typedef struct
{
  char *id;                                 /* 16 hex digits                                              */
  char *item, *item_kind, *item_name;       /* after                                                      */
  gint64 revision;
  char *from_item, *from_kind, *from_name;  /* before                                                     */
  gint64 from_revision;                     /* as it was numbered where this was written                  */
  char *from_hash, *to_hash;                /* sy_event_identity() of the two revisions                   */
  char *what, *idea_by, *why;
  char *put_to_work;                        /* "2026-11-26"                                               */
  char *entered_by, *entered_when;
  gboolean withdrawn;
  char *withdrawn_by, *withdrawn_when, *withdrawn_why; /* "" while it is not                              */
  guint64 line;                             /* of the journal, the latest about it                        */
} SyImprovement;
void sy_improvement_free (SyImprovement *improvement); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyImprovement, sy_improvement_free)
/* Fold one IMPROVEMENT event (NULL: begins one, with ADD; anything else about an improvement that is not there returns NULL).
   Consumes @improvement. */
SyImprovement *sy_improvement_apply (SyImprovement *improvement, const SyEvent *event, guint64 line);

/* Topics: what it bought */

/* Before less after: what is positive was gained. */
typedef enum
{
  SY_GAIN_INDEX,          /* of two that are on one scale          */
  SY_GAIN_MASS,           /* by hand and person, kg                */
  SY_GAIN_STOPPED,        /* the machine stands, minutes a change  */
  SY_GAIN_PERSON_MINUTES, /* of all people together, a change      */
  SY_GAIN_PERSONS,
} SyGain;
#define SY_N_GAINS 5
const char *sy_gain_id (SyGain gain);         /* "index", "mass", "stopped", "person-minutes", "persons"; static         */
const char *sy_gain_title (SyGain gain);      /* English, to be translated: "Minutes that the machine stands less"; static */
SyKind sy_gain_kind (SyGain gain);
/* "0.62", "2 kg", "−5 min"; "–" for NAN. New string. */
char *sy_gain_words (SyGain gain, double value, SyUnits units);

/* An improvement with its two assessments beside each other. */
typedef struct
{
  SyImprovement *improvement;
  SyBeside *beside;            /* NULL: one of the two is not in this record           */
  double gains[SY_N_GAINS];    /* NAN: not known of both, or not comparable            */
  gboolean reached;            /* the verdict is a favourable one now, and was not      */
  SyDeferring *deferring;      /* what the two results defer to                         */
} SyImprovementView;
/* Consumes @improvement; @before, @after: revisions, NULL where they are not here. @policy, @translate as in sy_beside_new(). */
SyImprovementView *sy_improvement_view_new (SyImprovement *improvement, const SyEvent *before, const SyEvent *after,
                                            const SyPolicy *policy, SyTranslate translate);
void sy_improvement_view_free (SyImprovementView *view); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyImprovementView, sy_improvement_view_free)

/* Topics: totals by quarter */

typedef struct
{
  int year, quarter;           /* 2026, 1 to 4                                         */
  int n;                       /* improvements put to work in it                       */
  int n_reached;               /* of them, those that brought a favourable verdict     */
  int n_known[SY_N_GAINS];     /* of how many the gain is known                        */
  double sums[SY_N_GAINS];     /* of these; 0 for none                                 */
} SyQuarter;

/* @views: of SyImprovementView. Those withdrawn do not count. New array of SyQuarter, oldest first, from the first that has an
   improvement to the last, those without one between them included; empty for none. */
GArray *sy_improvement_quarters (GPtrArray *views);
/* What is told of a gain: the mean of an index, the sum of anything else; NAN where it is known of none. */
double sy_quarter_figure (const SyQuarter *quarter, SyGain gain);
/* Of all quarters together; year and quarter 0. */
SyQuarter sy_improvement_total (const GArray *quarters);
/* How totals are to be read, and what they do not say; English, to be translated. */
extern const char sy_improvement_reading[];
/* "2026 Q1"; new string. */
char *sy_quarter_label (const SyQuarter *quarter);

#endif
