/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of carrying. */

const char *
sy_words_carry_template (const char *id)
{
  (void) id;
  return NULL;
}

char *
sy_words_carry_result (const SyFindings *findings, SyTranslate translate)
{
  (void) findings;
  (void) translate;
  return NULL;
}
