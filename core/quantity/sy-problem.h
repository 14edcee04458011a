/* SPDX-License-Identifier: MIT */
#ifndef SY_PROBLEM_H
#define SY_PROBLEM_H

#include "sy-units.h"

/* Topics: the report that names a bad field. */

typedef enum
{
  SY_PROBLEM_UNKNOWN_FIELD, /* listed first */
  SY_PROBLEM_SYNTAX,        /* text that is not one strict JSON document    */
  SY_PROBLEM_DUPLICATE,     /* a key twice in one object                    */
  SY_PROBLEM_TYPE,          /* wrong type                                   */
  SY_PROBLEM_NUMBER_TEXT,   /* number text that cannot be read, wrong unit  */
  SY_PROBLEM_RANGE,         /* out of range                                 */
  SY_PROBLEM_CHOICE,        /* not one of the choices                       */
  SY_PROBLEM_MISSING,       /* required and absent                          */
  SY_PROBLEM_CONFLICT,      /* two facts that exclude one another           */
  SY_PROBLEM_SIZE,          /* too deep, too long, too many                 */
} SyProblemKind;

#define SY_PROBLEM_PATH_MAX 160
#define SY_PROBLEM_GIVEN_MAX 96
#define SY_PROBLEM_ALLOWED_MAX 256

typedef struct
{
  SyProblemKind kind;
  int line;                            /* in the document, from 1; 0 unknown       */
  char path[SY_PROBLEM_PATH_MAX];      /* "$.origin.H"; "$" is the whole document  */
  char given[SY_PROBLEM_GIVEN_MAX];    /* as written, cut when long; "nothing"     */
  char allowed[SY_PROBLEM_ALLOWED_MAX];
  char unit[16];                       /* "cm"; "" where a unit makes no sense     */
} SyProblem;

/* A report of fixed size in the caller's memory. */
#define SY_PROBLEMS_MAX 64
typedef struct
{
  int count;   /* kept in items         */
  int dropped; /* found beyond the room */
  SyProblem items[SY_PROBLEMS_MAX];
} SyProblems;

/**
 * sy_problems_clear / sy_problems_add / sy_problems_sort:
 * add formats @allowed as given (no format characters are interpreted); long texts are cut at a
 * character boundary. sort puts unknown fields first and keeps document order otherwise.
 * Special considerations: no allocation; any thread.
 */
void sy_problems_clear (SyProblems *problems);
void sy_problems_add (SyProblems *problems, SyProblemKind kind, int line, const char *path,
                      const char *given, const char *allowed, const char *unit);
void sy_problems_sort (SyProblems *problems);

#endif
