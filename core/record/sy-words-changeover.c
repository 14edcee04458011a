/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-changeover-facts.h"
#include "sy-words-private.h"

/* Words of die changes. */

static const SyTemplate templates[] = {
  /* rows of the policy */
  { "change-index-goal", N_ ("{subject}: the lifts of the whole change make an index of {value}; the goal is {limit}.") },
  { "change-index-goal-unbounded",
    N_ ("{subject}: for a lift of the change no limit holds, so the index of the whole has no bound.") },
  { "change-index-limit",
    N_ ("{subject}: the lifts of the whole change make an index of {value}, over {limit}: at such an index hands are not the "
        "answer.") },
  { "change-index-limit-unbounded", N_ ("{subject}: for a lift of the change no limit holds, and hands are not the answer.") },

  /* what a step lacks */
  { "step-kind-missing", N_ ("{subject}: what kind of step it is was not said, so its checks are not known.") },
  { "step-not-assessed", N_ ("{subject}: something is moved, and how was not said: nobody has assessed it.") },
  { "die-not-moved", N_ ("A die comes out or goes in, and no step moves anything: nobody has assessed how it is moved.") },
  { "turning-over", N_ ("{subject}: there is no method for turning a load over; a competent person must plan it.") },
  { "person-too-many-lifts", N_ ("{subject} has more lifts than one index is worked out of; the rest is not in it.") },

  /* checks that are missing */
  { "check-isolated", N_ ("{subject}: no step before it makes sure that the energy is isolated, locked off and tried.") },
  { "check-slide-blocked",
    N_ ("{subject}: no step before it makes sure that the slide is blocked, with blocks that bear slide and upper die.") },
  { "check-pressure", N_ ("{subject}: no step before it lets down springs, gas cylinders and pressure.") },
  { "check-hot", N_ ("{subject}: no step before it makes sure that the die is cool enough to touch, or guarded.") },
  { "check-halves-tied", N_ ("{subject}: no step before it ties the halves of the die to each other.") },
  { "check-nobody-under", N_ ("{subject}: nobody makes sure that no one is under the load or in its path.") },
  { "check-tag-line", N_ ("{subject}: no tag line on the load.") },
  { "check-trial-lift", N_ ("{subject}: no trial lift by a hand's breadth first.") },
  { "check-walkers", N_ ("{subject}: nobody keeps walkers out of its path while it moves.") },
  { "check-torqued", N_ ("{subject}: no step makes sure that the clamps are tightened to their torque.") },
  { "check-blocks-counted", N_ ("{subject}: no step takes the blocks out and counts them before the first stroke.") },
  { "check-guards", N_ ("{subject}: no step proves guards and stops before the machine runs again.") },

  /* what is told */
  { "step-can-run", N_ ("{subject}: could be done while the machine runs; the machine would stand up to {value} less.") },
  { "anybody-counts-for-everybody",
    N_ ("A lift that does not name as many people as it takes counts for each of them: it may be any.") },
  { "other-handling-not-added",
    N_ ("What is carried, pushed, slid or lifted by a team is judged step by step; the index of a person adds up lifts only.") },
  { "taken-as-without", N_ ("Checks about what was said not to be there were not asked for.") },
  { "plan-of-a-change",
    N_ ("A plan of a change, not a procedure: isolation and setting follow the site's own procedures and the machine's manual.") },
};

const char *
sy_words_changeover_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

/* The result in a sentence. */

static const char one_step[] = N_ ("1 of {steps} steps hands must not do"),
                  many_steps[] = N_ ("{n} of {steps} steps hands must not do");
static const char one_refused[] = N_ ("1 of {steps} steps must not be done as planned"),
                  many_refused[] = N_ ("{n} of {steps} steps must not be done as planned");
static const char no_step[] = N_ ("{steps} steps, none that hands must not do"), only_steps[] = N_ ("{steps} steps"),
                  one_only[] = N_ ("1 step");
static const char stands[] = N_ ("{what}; the machine stands {stands}."),
                  runs_on[] = N_ ("{what}; the machine need not stand.");
static const char stands_by_hand[] = N_ ("{what}; the machine stands {stands}; heaviest by hand {mass}.");
static const char runs_on_by_hand[] = N_ ("{what}; the machine need not stand; heaviest by hand {mass}.");

typedef struct
{
  const SyFindings *findings;
  int n;            /* steps that the sentence is about */
  const char *what; /* its first part; NULL while that is made */
} Fill;

static char *
fill_result (const char *name, gconstpointer data)
{
  const Fill *fill = data;
  const SyFindings *findings = fill->findings;

  if (strcmp (name, "what") == 0)
    return g_strdup (fill->what);
  if (strcmp (name, "n") == 0)
    return g_strdup_printf ("%d", fill->n);
  if (strcmp (name, "steps") == 0)
    return sy_words_quantity (sy_words_value (findings, "steps"), SY_KIND_COUNT, findings->units);
  if (strcmp (name, "stands") == 0)
    return sy_words_quantity (sy_words_value (findings, "stopped.elapsed"), SY_KIND_MINUTES, findings->units);
  if (strcmp (name, "mass") == 0)
    return sy_words_quantity (sy_words_value (findings, "heaviest_by_hand"), SY_KIND_MASS, findings->units);
  return NULL;
}

/* Steps of one way of moving, by hand or by gear, that must not be. */
static int
count_refused (const SyFindings *findings, gboolean by_hand)
{
  int n = 0;

  for (int i = 0; i < findings->n_parts; i++)
    {
      const SyPartShown *part = &findings->parts[i];
      n += part->method != NULL && sy_method_is_by_hand (part->method) == by_hand
           && sy_verdict_rank (part->verdict) >= sy_verdict_rank (SY_VERDICT_MECHANICAL);
    }
  return n;
}

char *
sy_words_changeover_result (const SyFindings *findings, SyTranslate translate)
{
  Fill fill = { findings, 0, NULL };
  const char *words;

  if (strcmp (findings->method->id, "changeover") != 0)
    return NULL;
  /* what nobody has assessed may still turn out to be nothing for hands */
  const gboolean is_known = sy_verdict_rank (findings->verdict) < sy_verdict_rank (SY_VERDICT_INCOMPLETE);
  int hands = count_refused (findings, TRUE), gear = count_refused (findings, FALSE);
  fill.n = hands > 0 ? hands : gear;
  if (fill.n == 0)
    words = sy_words_value (findings, "steps") <= 1 ? one_only : is_known ? no_step : only_steps;
  else if (hands > 0)
    words = hands == 1 ? one_step : many_steps;
  else
    words = gear == 1 ? one_refused : many_refused;
  g_autofree char *what = sy_words_fill (words, translate, fill_result, &fill);
  fill.what = what;
  gboolean stood = sy_words_value (findings, "stopped.elapsed") > 0;
  gboolean by_hand = !isnan (sy_words_value (findings, "heaviest_by_hand"));
  words = stood ? (by_hand ? stands_by_hand : stands) : (by_hand ? runs_on_by_hand : runs_on);
  return sy_words_fill (words, translate, fill_result, &fill);
}
