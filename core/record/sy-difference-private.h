/* SPDX-License-Identifier: MIT */
#ifndef SY_DIFFERENCE_PRIVATE_H
#define SY_DIFFERENCE_PRIVATE_H

#include "sy-difference.h"
#include "sy-json.h"
#include "sy-method.h"

/* One of the two revisions. */
typedef struct
{
  const SyJson *root;     /* of its facts or findings; never NULL                                         */
  const SyMethod *method; /* NULL: not known, or a newer edition than this program's: nothing is named by it */
  SyUnits units;
} SySide;

/* Where differences are gathered. */
typedef struct
{
  GPtrArray *out;
  SySide before, after;
  gboolean same_method; /* that the revisions say they were made by */
} SyComparison;

/* Adds one; @before and @after are consumed, may be NULL. */
void sy_difference_add (GPtrArray *out, SyDifferencePart part, const char *path, const char *name, const char *symbol,
                        const char *unit, char *before, char *after);
/* The same of two values of one kind, each in the unit of its side: where they are not of one unit it goes with the value. */
void sy_difference_add_measured (GPtrArray *out, SyDifferencePart part, const char *path, const char *name,
                                 const char *symbol, const char *unit_before, const char *unit_after, char *before,
                                 char *after);

void sy_difference_facts (const SyComparison *comparison);
void sy_difference_findings (const SyComparison *comparison);

#endif
