/* SPDX-License-Identifier: MIT */
#ifndef SY_DIFFERENCE_H
#define SY_DIFFERENCE_H

#include "sy-event.h"

/* Two revisions field by field: what was typed, what was found, under what. */

typedef enum
{
  SY_PART_FACTS,    /* as typed                                                   */
  SY_PART_RESULT,   /* a quantity, the verdict, a reason, a remedy, a caution     */
  SY_PART_BASIS,    /* method, edition, policy, program, name of the item         */
} SyDifferencePart;

typedef struct
{
  SyDifferencePart part;
  char *path;       /* "origin.H", "legs[label=A].length", "quantities.LI", "verdict"  */
  char *name;       /* in words, English, of the field: "Horizontal distance at the origin" */
  char *symbol;     /* "H", "LI"; "" for none                                          */
  char *unit;       /* of a value that has none of its own, "" for none                */
  char *before, *after; /* as typed or stored; NULL where there is none                */
} SyDifference;
void sy_difference_free (SyDifference *difference);

/* In the order of the fields; new array of SyDifference that frees its elements, empty where nothing differs. Members
   of lists belong together by "label" where they have one, otherwise by place. Two numbers that are the same value
   typed differently ("18" and "18.0") differ: what was typed is the record. */
GPtrArray *sy_difference_of (const SyEvent *before, const SyEvent *after);

/* JSON object without newline: {"task","id","from","to","differences":[{"part","path","name","symbol","unit","old","new"}]}. */
void sy_difference_write_json (GString *out, const SyEvent *before, const SyEvent *after, GPtrArray *differences);

#endif
