/* SPDX-License-Identifier: MIT */
#include "sy-words-private.h"

/* Words of limits by population and of back compression beside one lift. */

const char *
sy_words_population_template (const char *id)
{
  (void) id;
  return NULL;
}
