/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* Words of pushing, pulling and sliding. {value%} and {limit%} say a ratio in percent. */

static const SyTemplate templates[] = {
  /* rows of the policy */
  { "push-start-accepted",
    N_ ("Starting it takes {value%} of the force that as many of them accept; the limit is {limit%}.") },
  { "push-moving-accepted",
    N_ ("Keeping it moving takes {value%} of the force that as many of them accept; the limit is {limit%}.") },
  { "push-start-guideline", N_ ("Starting it takes {value%} of the guideline force; the limit is {limit%}.") },
  { "push-stop-guideline", N_ ("Stopping it takes {value%} of the guideline force; the limit is {limit%}.") },
  { "push-moving-guideline", N_ ("Keeping it moving takes {value%} of the guideline force; the limit is {limit%}.") },
  { "push-hold-guideline",
    N_ ("Holding it on the slope takes {value%} of the guideline force to keep moving; the limit is {limit%}.") },
  { "push-start-critical",
    N_ ("Starting it takes {value%} of the force that is critical: hands are not the answer; use a tug or a drive.") },
  { "push-moving-critical",
    N_ ("Keeping it moving takes {value%} of the force that is critical: hands are not the answer; use a tug or a drive.") },

  /* who, how often, how far */
  { "push-no-table",
    N_ ("Nothing is published of what people accept here: hands at {value}, a way of {limit}, {third}.") },
  { "push-guide-does-not-cover",
    N_ ("The guideline covers hands between knuckle and shoulder height and ways of 20 m at most, not {value} and {limit}: "
        "what else speaks stands from memory, so have it assessed in detail.") },
  { "push-who-can",
    N_ ("By the published figures {value} of women and {limit} % of men could start it and keep it moving.") },
  { "push-who-default", N_ ("Who does it was not said: it was held against what {value} of women accept.") },
  { "push-percent-low", N_ ("Held against what {value} of them accept: it is too much for the others.") },
  { "push-several-persons",
    N_ ("Pushed by {value} persons together: the figures are for one; the force is not divided.") },
  { "push-conditions-not-asked",
    N_ ("It was not asked whether a condition applies that the published figures exclude.") },

  /* conditions */
  { "push-uneven-floor", N_ ("The floor is uneven or soft, or something lies across the way: assess it in detail.") },
  { "push-confined-space", N_ ("Not enough room to walk or stand freely: assess it in detail.") },
  { "push-trapping", N_ ("Hands or feet can be trapped: assess it in detail.") },
  { "push-slippery-floor", N_ ("The floor gives no sure footing: the published figures do not hold.") },
  { "push-turning", N_ ("It is turned or steered under load: the published figures hold straight ahead only.") },
  { "push-one-hand", N_ ("Pushed or pulled with one hand: the published figures hold for two.") },
  { "push-view-blocked", N_ ("There is no free view of the way.") },
  { "push-unstable-load", N_ ("The load shifts, swings or can topple: the published figures do not hold.") },
  { "push-over-8h", N_ ("More than eight hours of work a day: the published figures do not hold.") },
  { "push-protected-persons",
    N_ ("Done by someone who is pregnant, under age, injured or returning to work: the limits do not cover them.") },

  /* the cart */
  { "push-no-initial", N_ ("The force to start it was neither measured nor is there a cart from which to estimate it.") },
  { "push-no-sustained",
    N_ ("The force to keep it moving was neither measured nor is there a cart from which to estimate it.") },
  { "push-slope-not-asked", N_ ("It was not asked whether there is a slope on the way, and what holds it there: the slope of the "
                                "cart says it, 0 where it is level.") },
  { "push-start-from-memory",
    N_ ("Starting was taken to need {value} times the force that keeps it moving, from memory: that speaks against it, never "
        "for it. Measure it.") },
  { "push-rolling-from-memory",
    N_ ("A rolling coefficient of {value} was taken, from memory: that speaks against it, never for it. Measure the forces.") },
  { "push-no-wheel", N_ ("Neither a rolling coefficient nor the kind of wheel was given; {value}, the least that is published, was "
                         "taken meanwhile.") },
  { "push-no-diameter", N_ ("The diameter of the wheels was not given; the resistance of these depends on it.") },
  { "push-no-figure-for-floor",
    N_ ("No rolling figure is published for these wheels on this floor: measure the forces.") },
  { "push-rolling-published",
    N_ ("A rolling coefficient of {value} was taken, as published for wheel and floor: a measured force goes before it.") },
  { "push-floor-assumed", N_ ("The floor was not given; it was taken as smooth concrete meanwhile.") },

  /* the die that slides */
  { "slide-no-surface", N_ ("Neither its friction nor what it slides on was given.") },
  { "slide-friction-published",
    N_ ("A friction of {value} on the move and {limit} at the start was taken, as published for the surface: that speaks "
        "against it, never for it. Measure it.") },
  { "slide-no-incline", N_ ("The incline was not given; 0 says that it is level.") },
  { "slide-held-not-given", N_ ("It stands on an incline, and it was not said what holds it when it is let go.") },
  { "slide-runs-away",
    N_ ("It runs by itself: the incline pulls with {value}, and friction resists with {limit} at least. Nothing holds it.") },
  { "slide-incline-without-stops",
    N_ ("Only friction holds it on the incline, with {limit} at least against {value}: give it stops.") },
  { "slide-up-assumed", N_ ("It was not said whether it goes up or down the incline; up was taken.") },
  { "slide-way-clear",
    N_ ("Clamps off, the way clear, stops at its end; no hands between the die and what it can run against.") },
};

/* What a remedy changes. */
static const SyTemplate changes[] = {
  { "cart.wheel_diameter", N_ ("Larger wheels: a diameter of {to} in place of {from}.") },
  { "cart.slope", N_ ("A lower slope: {to} in place of {from}.") },
  { "cart.start_acceleration", N_ ("Start it more gently: {to} of g in place of {from}.") },
  { "distance", N_ ("A shorter way: {to} in place of {from}.") },
  { "handle_height", N_ ("Handles at {to} in place of {from}.") },
  { "way", N_ ("Let it be a {to} in place of a {from}.") },
  { "incline", N_ ("A lower incline: {to} in place of {from}.") },
  { "friction", N_ ("A smoother way: a friction of {to} in place of {from}.") },
  { "surface", N_ ("Another surface: {to} in place of {from}.") },
};
static const char heaviest_cart[] =
    N_ ("As the task stands, {to} is the most that cart and load together may weigh within every goal.");

const char *
sy_words_push_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

static gboolean
is_ours (const SyMethod *method)
{
  return strcmp (method->id, "push") == 0 || strcmp (method->id, "slide") == 0;
}

const char *
sy_words_push_change (const SyMethod *method, const char *path)
{
  if (!is_ours (method))
    return NULL;
  if (strcmp (path, "largest-mass") == 0)
    return strcmp (method->id, "push") == 0 ? heaviest_cart : NULL;
  return sy_words_find (changes, G_N_ELEMENTS (changes), path);
}

/* The result in a sentence. */

static const char who_can[] =
    N_ ("{initial} to start it, {sustained} to keep it moving: {women} of women and {men} of men could. "
                                  "It comes to {percent} of the strictest limit ({limit}).");
static const char women_can[] =
    N_ ("{initial} to start it, {sustained} to keep it moving: {women} of women could; for men there is "
                                    "no figure. It comes to {percent} of the strictest limit ({limit}).");
static const char men_can[] =
    N_ ("{initial} to start it, {sustained} to keep it moving: {men} of men could; for women there is no "
                                  "figure. It comes to {percent} of the strictest limit ({limit}).");
static const char nobody_knows[] =
    N_ ("{initial} to start it, {sustained} to keep it moving; how many people could is not published. "
                                       "It comes to {percent} of the strictest limit ({limit}).");
static const char start_only[] = N_ ("{initial} to start it; the force to keep it moving is not known.");
static const char moving_only[] = N_ ("{sustained} to keep it moving; the force to start it is not known.");
static const char nothing_known[] = N_ ("The force that it takes is not known.");

typedef struct
{
  const SyFindings *findings;
  SyTranslate translate;
} ResultFill;

/* Whole percents, rounded down: never more people than could. A normal distribution never says none or all. */
static char *
people (double percent)
{
  if (percent < 1)
    return g_strdup ("< 1 %");
  if (percent >= 99)
    return g_strdup ("> 99 %");
  return g_strdup_printf ("%d %%", (int) floor (percent + 1e-9));
}

static const SyLimitShown *
governing_limit (const SyFindings *findings)
{
  for (int i = 0; i < findings->n_limits; i++)
    if (findings->limits[i].governs)
      return &findings->limits[i];
  return NULL;
}

static char *
fill_result (const char *name, gconstpointer data)
{
  const ResultFill *fill = data;
  const SyFindings *findings = fill->findings;
  const SyLimitShown *limit = governing_limit (findings);

  if (strcmp (name, "initial") == 0 || strcmp (name, "sustained") == 0)
    return sy_words_quantity (sy_words_value (findings, name), SY_KIND_HAND_FORCE, findings->units);
  if (strcmp (name, "women") == 0)
    return people (sy_words_value (findings, "women.percent"));
  if (strcmp (name, "men") == 0)
    return people (sy_words_value (findings, "men.percent"));
  if (limit != NULL && strcmp (name, "limit") == 0)
    return g_strdup (fill->translate ? fill->translate (limit->limit->title) : limit->limit->title);
  if (limit != NULL && strcmp (name, "percent") == 0)
    return sy_words_against (limit->ratio * 100, limit->goal * 100, SY_KIND_PERCENT, findings->units);
  return NULL;
}

char *
sy_words_push_result (const SyFindings *findings, SyTranslate translate)
{
  const ResultFill fill = { findings, translate };

  if (!is_ours (findings->method))
    return NULL;
  gboolean start = !isnan (sy_words_value (findings, "initial"));
  gboolean keep = !isnan (sy_words_value (findings, "sustained"));
  gboolean women = !isnan (sy_words_value (findings, "women.percent"));
  gboolean men = !isnan (sy_words_value (findings, "men.percent"));
  const char *words = !start && !keep ? nothing_known
                      : !keep         ? start_only
                      : !start        ? moving_only
                      : women && men  ? who_can
                      : women         ? women_can
                      : men           ? men_can
                                      : nobody_knows;
  return sy_words_fill (words, translate, fill_result, &fill);
}
