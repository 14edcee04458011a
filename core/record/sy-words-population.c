/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of limits by population and of back compression beside one lift. */

static const SyTemplate templates[] = {
  { "iso-frequency", N_ ("{value} lifts a minute are more than the {limit} that any task may have.") },
  { "iso-day", N_ ("One person lifts {value} times the cumulative mass that a day allows (10 000 kg); the goal is {limit}.") },
  { "iso-hour",
    N_ ("At this pace one person lifts {value} times the cumulative mass that an hour allows (7 200 kg); the goal is {limit}.") },
  { "en-goal", N_ ("The risk index R_I of {value} is over {limit}: for work at machinery that is no longer tolerable as it is.") },
  { "en-goal-unbounded", N_ ("No limit for work at machinery holds: a factor is beyond the equation.") },
  { "en-limit", N_ ("The risk index R_I of {value} is over {limit}: for work at machinery the task is to be redesigned.") },
  { "en-limit-unbounded", N_ ("No limit for work at machinery holds: the task is to be redesigned.") },
  { "filter-guideline",
    N_ ("The load is {value} times the guideline figure of the filter: no limit, but a fuller assessment is called for.") },
  { "filter-guideline-unbounded",
    N_ ("The hands go where the guideline filter has no figure: a fuller assessment is called for.") },
  { "no-limit-for-so-many",
    N_ ("More than two persons lift together: no limit of EN 1005-2 is shown, it has a multiplier for two only.") },
  { "back-action",
    N_ ("Back compression, an estimate of another kind, is {value}; from {limit} on a task is to be changed.") },
  { "back-limit",
    N_ ("Back compression, an estimate of another kind, is {value}, over the {limit} that is the most permissible: hands are not "
        "the answer.") },
  { "back-estimate",
    N_ ("Back compression is an estimate of another kind, by a hand calculation that stands here from memory: lifted slowly, with "
        "both hands, without a twist, so a lower estimate. It can make a result stricter, never better.") },
  { "back-arm-assumed",
    N_ ("How far the hands are from the low back was not given; the reach H was taken, which is shorter: the back compression is "
        "underestimated.") },
  { "back-no-destination",
    N_ ("The trunk at the destination was not given: back compression was worked out for the origin only.") },
  { "back-one-person", N_ ("Back compression is of one person who lifts alone: it was not worked out.") },
  { "filter-does-not-speak",
    N_ ("The guideline filter is for one person who lifts with both hands: it says nothing of this lift.") },
};

const char *
sy_words_population_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}
