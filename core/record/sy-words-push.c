/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of pushing, pulling and sliding. */

const char *
sy_words_push_template (const char *id)
{
  (void) id;
  return NULL;
}

char *
sy_words_push_result (const SyFindings *findings, SyTranslate translate)
{
  (void) findings;
  (void) translate;
  return NULL;
}
