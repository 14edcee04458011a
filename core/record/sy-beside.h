/* SPDX-License-Identifier: MIT */
#ifndef SY_BESIDE_H
#define SY_BESIDE_H

#include "sy-event.h"
#include "sy-findings.h"
#include "sy-words.h"

/*
 * Two assessments beside each other: what changed, and what it bought. Any two revisions of any two items, or of two that are in
 * no record; of one method or of two ways of handling. Read from what was stored: nothing is judged again.
 *
 * Facts are compared field by field where both are of one method; results always are, in words. All values are told in the
 * units of the first: those of the second are converted exactly (international pound and inch, standard gravity), and a remark
 * says so. What differs between two policies, editions or methods is said in a remark, never hidden in a figure.
 */

typedef enum
{
  SY_TURN_NONE,   /* the same, or nothing that has a better and a worse */
  SY_TURN_BETTER, /* the second is the better one                       */
  SY_TURN_WORSE,
} SyTurn;
/* "same", "better", "worse"; static. */
const char *sy_turn_id (SyTurn turn);

/* One of the two. */
typedef struct
{
  const SyMethod *method; /* NULL: not known here, or by a later edition of it                        */
  char *title;            /* of the method; its id where it is not known                              */
  char *who;              /* "Blank to shear 2, revision 3"; the name alone where there is no record  */
  SyUnits units;          /* of the document                                                          */
  gboolean has_verdict;
  SyVerdict verdict;
  char *verdict_words;    /* "Improve the task"; "no verdict"                                         */
  char *index_symbol;     /* "LI"; "" for none                                                        */
  double index;           /* INFINITY: no limit holds; NAN: none                                      */
  double goal;            /* of the policy for it; NAN: it is not told                                */
  char *index_words;      /* "LI 2.13 (goal 1.00)"; "" for none                                       */
} SyBesideSide;

/* One line; texts in the language asked for, NULL before or after: there is none on that side. */
typedef struct
{
  char *id;               /* path of a fact; "verdict", "index", "mass", "women" …; id of a limit or reason */
  char *name;
  char *texts[2];         /* with units                                                                   */
  double values[2];       /* in the units of the first; NAN: none, or no number                           */
  double goals[2];        /* limits and the index: what the value is held against; NAN: not told          */
  gboolean from_memory;   /* a limit that nobody has checked against its publication                      */
  SyTurn turn;
} SyBesideRow;

typedef struct
{
  SyBesideSide sides[2];
  SyUnits units;          /* of every value in it                            */
  gboolean same_method;
  GPtrArray *changed;     /* of SyBesideRow: facts; empty where methods differ */
  GPtrArray *bought;      /* verdict, index, what decides, figures that either has: mass by hand, people who could, … */
  GPtrArray *limits;      /* published limits that either has                  */
  GPtrArray *reasons;     /* those that went (no second text), came (no first), stay (both); in that order */
  GPtrArray *remarks;     /* of char *: what is to be known to read it         */
  char *sentence;         /* the whole in one sentence                         */
} SyBeside;

/**
 * sy_beside_new:
 * Parameters:   before, after  revisions, or events made up of facts and findings (revision 0). Their findings need not have
 *                              every member: older ones have no "limits".
 *               policy         whose goals are told where the findings tell none and were judged under it; NULL: none.
 *               translate      NULL: English.
 * Return value: new. What cannot be read is not in it, and a remark says so.
 */
SyBeside *sy_beside_new (const SyEvent *before, const SyEvent *after, const SyPolicy *policy, SyTranslate translate);
void sy_beside_free (SyBeside *beside); /* NULL is fine */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyBeside, sy_beside_free)

/* Whether a limit or an index is held: TRUE, FALSE; FALSE with *told FALSE where it is not told. */
gboolean sy_beside_holds (const SyBesideRow *row, int side, gboolean *told);

/* JSON object without newline; the contract is docs/facts.md. @beside is in English. */
void sy_beside_write_json (GString *out, const SyBeside *beside, const SyEvent *before, const SyEvent *after);

#endif
