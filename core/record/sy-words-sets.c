/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of sets of lifts. */

const char *
sy_words_sets_template (const char *id)
{
  (void) id;
  return NULL;
}

char *
sy_words_sets_result (const SyFindings *findings, SyTranslate translate)
{
  (void) findings;
  (void) translate;
  return NULL;
}
