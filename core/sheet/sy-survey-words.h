/* SPDX-License-Identifier: MIT */
#ifndef SY_SURVEY_WORDS_H
#define SY_SURVEY_WORDS_H

#include "sy-units.h"

/* What the measuring sheet asks about what the lifting equation excludes: one question a
   condition. */
typedef struct
{
  const char *id;                   /* as in the facts: "one-hand"                        */
  const char *question[SY_N_UNITS]; /* N_(); metric, US; the US one is NULL where it is the same */
} SySurveyCondition;

#define SY_SURVEY_CONDITIONS 14
extern const SySurveyCondition sy_survey_conditions[SY_SURVEY_CONDITIONS];
/* N_() */
const char *sy_survey_question (int condition, SyUnits units);

/* What the sheet itself is not; N_(). */
extern const char *const sy_survey_caution;

#endif
