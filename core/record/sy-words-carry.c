/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-words-private.h"

/* Words of carrying. */

static const SyTemplate templates[] = {
  { "carry-reference-mass",
    N_ ("The mass of {value} by person is over the reference mass of {limit} for who may be assigned.") },
  { "carry-iso-pace", N_ ("Carried {value} times as often as the most at this distance; the goal is {limit}.") },
  { "carry-iso-minute",
    N_ ("A minute's carrying is {value} times the most mass at this distance; the goal is {limit}.") },
  { "carry-iso-hour", N_ ("An hour's carrying is {value} times the most mass at this distance; the goal is {limit}.") },
  { "carry-iso-day", N_ ("The day's carrying is {value} times the most mass at this distance; the goal is {limit}.") },
  { "carry-iso21-minute",
    N_ ("A minute's carrying is {value} times the most mass of the newer edition (low confidence); the goal is "
        "{limit}.") },
  { "carry-iso21-hour",
    N_ ("An hour's carrying is {value} times the most mass of the newer edition (low confidence); the goal is "
        "{limit}.") },
  { "carry-iso21-4h",
    N_ ("Four hours' carrying is {value} times the most mass of the newer edition (low confidence); the goal is "
        "{limit}.") },
  { "carry-iso21-day",
    N_ ("The day's carrying is {value} times the most mass of the newer edition (low confidence); the goal is "
        "{limit}.") },
  { "carry-table",
    N_ ("The mass is {value} times what the carry tables say that so many could carry; the goal is {limit}.") },
  { "carry-equation",
    N_ ("The mass is {value} times what the carry equations say that so many could carry; the goal is {limit}.") },
  { "carry-equation-unbounded", N_ ("The carry equations leave no mass that so many could carry.") },
  { "carry-uk",
    N_ ("The mass is {value} times the guideline figure, {limit} being the goal: over it a fuller assessment is "
        "due.") },

  { "carry-stairs", N_ ("Carried over stairs, steps or a ladder: outside what the limits are made for.") },
  { "carry-slope", N_ ("Carried on a slope: the limits are made for the level.") },
  { "carry-slippery-or-uneven", N_ ("The floor gives no sure footing: outside what the limits are made for.") },
  { "carry-restricted-space",
    N_ ("Not enough room to walk upright and freely: outside what the limits are made for.") },
  { "carry-away-from-body", N_ ("Held away from the body: the limits are made for a load held close.") },
  { "carry-on-shoulder-or-back",
    N_ ("On a shoulder, the back or the head: the limits are made for a load in the hands.") },
  { "carry-at-one-side", N_ ("At one side of the body: the limits are made for a load in front.") },
  { "carry-unstable-load", N_ ("The load shifts, swings or spills: outside what the limits are made for.") },
  { "carry-poor-grip",
    N_ ("Hard to hold, sharp, hot or in the way of the eyes: outside what the limits are made for.") },
  { "carry-fast", N_ ("Carried faster than at a walk: outside what the limits are made for.") },
  { "carry-temperature-or-humidity", N_ ("Heat, cold or humidity beyond what the limits allow for.") },
  { "carry-protected-persons",
    N_ ("Done by someone who is pregnant, under age, injured or returning to work: the limits do not cover them.") },
  { "carry-conditions-not-asked", N_ ("It was not asked whether a condition applies that the limits leave out.") },
  { "carry-one-hand", N_ ("Carried with one hand: the limits are made for both hands.") },
  { "carry-several-persons",
    N_ ("Carried by {value} persons together: the limits are for one person, and the mass is not divided. "
        "Take the method "
        "for a team.") },
  { "carry-over-8h", N_ ("{value} of carrying a day: no sum is published for more than {limit}.") },
  { "carry-over-20-m", N_ ("Carried {value}: no sum is published for more than {limit}.") },
  { "carry-over-10-m",
    N_ ("Carried {value} without resting: over about {limit} the guideline figure does not speak for it, and "
        "limits from memory "
        "do not suffice. Have it assessed in full, rest on the way, or shorten it.") },
  { "carry-below-knuckle",
    N_ ("Hands at {value}, below the knuckles at {limit}: the guideline figure does not speak for it, and "
        "limits from memory do "
        "not suffice. Have it assessed in full, or hold it higher.") },
  { "carry-above-elbow",
    N_ ("Hands at {value}, above the elbows at {limit}: beyond the carry tables, and their figure stands for "
        "a lower hold. "
        "Have it assessed in full, or hold it lower.") },
  { "carry-faster-than-tables",
    N_ ("Carried {value}: oftener than the carry tables go at this distance, and their figure stands for a "
        "slower pace. Have "
        "it assessed in full, or slow it.") },
  { "carry-farther-than-tables",
    N_ ("Carried {value}: the carry tables end at {limit}; beyond, the equations go on alone.") },
  { "carry-minutes-taken", N_ ("How long it is carried in the day was not said; it was taken that it is {value}.") },
  { "carry-who-default",
    N_ ("Whose figures judge was not said; those of women were taken, so that {value} of them could do it.") },
  { "carry-percent-low",
    N_ ("The tables and equations were asked what {value} of the people could; 90 % is usual.") },
  { "carry-not-reduced",
    N_ ("It was not said whether it is taken up from below the knee or above the shoulder, or in bad "
        "surroundings: that "
        "would take a third off the sums.") },
  { "carry-over-frequent-mass",
    N_ ("{value} at a time: the sums are made of loads of {limit} where carrying is frequent, of heavier ones "
        "where it is rare.") },
  { "carry-lifts-apart",
    N_ ("Taking it up and putting it down are lifts: assess them by themselves; what is lifted and carried "
        "counts together "
        "against the day's sum.") },
};

const char *
sy_words_carry_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

static const SyTemplate changes[] = {
  { "distance", N_ ("Shorten the way with the load to {to} from {from}.") },
  { "frequency", N_ ("Carry less often: {to} in place of {from}.") },
  { "minutes", N_ ("Carry for a shorter part of the day: {to} in place of {from}.") },
  { "height", N_ ("Carry it lower, arms hanging: hands at {to} in place of {from}.") },
  { "largest-mass", N_ ("Carried so, {to} is the heaviest load within every goal.") },
};

const char *
sy_words_carry_change (const SyMethod *method, const char *path)
{
  return strcmp (method->id, "carry") == 0 ? sy_words_find (changes, G_N_ELEMENTS (changes), path) : NULL;
}

/* The result in a sentence, by the limit that governs. */
static const SyTemplate results[] = {
  { "mass_ratio", N_ ("{ratio} times the reference mass; {women} of women and {men} of men could carry it so.") },
  { "iso.pace.ratio",
    N_ ("{ratio} times the most carries a minute; {women} of women and {men} of men could carry it so.") },
  { "iso.minute.ratio",
    N_ ("{ratio} times the most mass in a minute; {women} of women and {men} of men could carry it so.") },
  { "iso.hour.ratio",
    N_ ("{ratio} times the most mass in an hour; {women} of women and {men} of men could carry it so.") },
  { "iso.day.ratio",
    N_ ("{ratio} times the most mass in the day; {women} of women and {men} of men could carry it so.") },
  { "iso21.minute.ratio",
    N_ ("{ratio} times the most mass in a minute (newer edition, low confidence); {women} of women and {men} "
        "of men could "
        "carry it so.") },
  { "iso21.hour.ratio",
    N_ ("{ratio} times the most mass in an hour (newer edition, low confidence); {women} of women and {men} "
        "of men could "
        "carry it so.") },
  { "iso21.4h.ratio",
    N_ ("{ratio} times the most mass in four hours (newer edition, low confidence); {women} of women and "
        "{men} of men could "
        "carry it so.") },
  { "iso21.day.ratio",
    N_ ("{ratio} times the most mass in the day (newer edition, low confidence); {women} of women and {men} "
        "of men could "
        "carry it so.") },
  { "table.ratio", N_ ("{ratio} times what the tables allow; {women} of women and {men} of men could carry it so.") },
  { "equation.ratio",
    N_ ("{ratio} times what the equations allow; {women} of women and {men} of men could carry it so.") },
  { "uk.ratio", N_ ("{ratio} times the guideline figure; {women} of women and {men} of men could carry it so.") },
};

static char *
fill_carry (const char *name, gconstpointer data)
{
  const SyFindings *findings = data;
  const char *symbol = strcmp (name, "women") == 0 ? "women.percent"
                       : strcmp (name, "men") == 0 ? "men.percent"
                                                   : NULL;

  if (symbol != NULL)
    return sy_words_quantity (sy_words_value (findings, symbol), SY_KIND_PERCENT, findings->units);
  if (strcmp (name, "ratio") == 0)
    return sy_words_against (sy_words_value (findings, "ratio"), 1, SY_KIND_RATIO, findings->units);
  return NULL;
}

char *
sy_words_carry_result (const SyFindings *findings, SyTranslate translate)
{
  if (strcmp (findings->method->id, "carry") != 0)
    return NULL;
  const char *words = sy_words_find (results, G_N_ELEMENTS (results), findings->sink.governing);

  return sy_words_fill (words, translate, fill_carry, findings);
}
