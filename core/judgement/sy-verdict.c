/* SPDX-License-Identifier: MIT */
#include "sy-verdict.h"

#include <string.h>

#include "sy-field.h"

typedef struct
{
  const char *id, *title, *meaning;
  int rank;
} Row;

static const Row rows[SY_N_VERDICTS] = {
  [SY_VERDICT_BY_HAND] = { "by-hand", N_ ("Within the hand-handling limits"),
                           N_ ("Within every limit that applies, under this policy."), 0 },
  [SY_VERDICT_WITHIN_CAPACITY] = { "within-capacity", N_ ("Within rated capacity"),
                                   N_ ("Every element is within its reduced capacity."), 0 },
  [SY_VERDICT_IMPROVE] = { "improve", N_ ("Improve the task"),
                           N_ ("Over a limit that design can bring down."), 1 },
  [SY_VERDICT_INCOMPLETE] = { "incomplete", N_ ("Facts missing"),
                              N_ ("Something that the verdict needs was not given."), 2 },
  [SY_VERDICT_OUTSIDE] = { "outside", N_ ("Outside the method"),
                           N_ ("A condition that the method excludes: a competent person must assess."), 3 },
  [SY_VERDICT_MECHANICAL] = { "mechanical", N_ ("Mechanical handling required"),
                              N_ ("Over a limit at which hands are not the answer."), 4 },
  [SY_VERDICT_DO_NOT_LIFT] = { "do-not-lift", N_ ("Do not lift"),
                               N_ ("An element over its capacity or out of date, or a geometry that is not allowed."),
                               5 },
};

const char *
sy_verdict_id (SyVerdict verdict)
{
  return rows[verdict].id;
}

bool
sy_verdict_from_id (const char *id, SyVerdict *verdict)
{
  for (int i = 0; i < SY_N_VERDICTS; i++)
    if (strcmp (rows[i].id, id) == 0)
      {
        *verdict = (SyVerdict) i;
        return true;
      }
  return false;
}

const char *
sy_verdict_title (SyVerdict verdict)
{
  return rows[verdict].title;
}

const char *
sy_verdict_meaning (SyVerdict verdict)
{
  return rows[verdict].meaning;
}

/* What the method says in place of the verdict's own words; NULL: nothing. */
static const char *
own_words (SyVerdict verdict, const char *good, const char *improve)
{
  return rows[verdict].rank == 0 ? good : verdict == SY_VERDICT_IMPROVE ? improve : NULL;
}

const char *
sy_verdict_title_for (const SyMethod *method, SyVerdict verdict)
{
  const char *own = method ? own_words (verdict, method->good_title, method->improve_title) : NULL;

  return own ? own : sy_verdict_title (verdict);
}

const char *
sy_verdict_meaning_for (const SyMethod *method, SyVerdict verdict)
{
  const char *own = method ? own_words (verdict, method->good_meaning, method->improve_meaning) : NULL;

  return own ? own : sy_verdict_meaning (verdict);
}

int
sy_verdict_rank (SyVerdict verdict)
{
  return rows[verdict].rank;
}
