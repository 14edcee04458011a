/* SPDX-License-Identifier: MIT */
#include "sy-survey-words.h"

#include "sy-field.h"

/*
 * The conditions are those of NIOSH 94-110 section 1.2 (limitations) and of its assumptions; the
 * figures for speed, temperature and humidity are from memory. The words are ours.
 */
const SySurveyCondition sy_survey_conditions[SY_SURVEY_CONDITIONS] = {
  { "one-hand", { N_ ("Is the load held or lifted with one hand only?") } },
  { "seated-or-kneeling", { N_ ("Is it lifted while sitting or kneeling?") } },
  { "restricted-space", { N_ ("Is there too little room to stand upright or to move the feet?") } },
  { "unstable-load",
    { N_ ("Does the load shift in the hands: liquid, loose parts, a sagging sack?") } },
  { "wheelbarrow-or-shovel", { N_ ("Is the work done with a wheelbarrow or a shovel?") } },
  { "faster-than-75cm-s",
    { N_ ("Is the load jerked or thrown, faster than about 75 cm in a second?"),
      N_ ("Is the load jerked or thrown, faster than about 30 inches in a second?") } },
  { "slippery-floor", { N_ ("Can the feet slip: oil, scale, wet or loose ground, worn soles?") } },
  { "temperature-or-humidity",
    { N_ ("Is it well outside 19 to 26 °C, or 35 to 50 % humidity?"),
      N_ ("Is it well outside 66 to 79 °F, or 35 to 50 % humidity?") } },
  { "over-8h", { N_ ("Does the lifting go on for more than 8 hours of the day?") } },
  { "other-handling-over-10-percent",
    { N_ ("Is more than a tenth of the work other effort: pushing, pulling, carrying, holding, "
          "climbing?") } },
  { "carried-over-two-steps", { N_ ("Is the load carried further than two steps?") } },
  { "unexpected-load",
    { N_ ("Can the load surprise: heavier than it looks, stuck, or suddenly free?") } },
  { "sharp-or-hot", { N_ ("Is it sharp, hot or coated, so that it is held away from the body?") } },
  { "protected-persons",
    { N_ ("May it fall to someone who needs protection: under 18, expecting, back after "
          "illness?") } },
};

const char *const sy_survey_caution = N_ ("This sheet holds measurements and answers, no result. "
                                          "What is worked out from it is for screening only.");

const char *
sy_survey_question (int condition, SyUnits units)
{
  const SySurveyCondition *asked = &sy_survey_conditions[condition];

  return asked->question[units] ? asked->question[units] : asked->question[SY_UNITS_METRIC];
}
