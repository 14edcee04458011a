/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of lifts by a team. */

const char *
sy_words_team_template (const char *id)
{
  (void) id;
  return NULL;
}

char *
sy_words_team_result (const SyFindings *findings, SyTranslate translate)
{
  (void) findings;
  (void) translate;
  return NULL;
}
