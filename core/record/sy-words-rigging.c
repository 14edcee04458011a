/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-words-private.h"

/* What is said of dies, rigged lifts, gear, trucks and carts. {value%} and {limit%} say a ratio in percent. */

static const SyTemplate templates[] = {
  /* rows of the policy */
  { "gear-over-capacity", N_ ("{governing} is loaded to {value%} of its reduced capacity; the limit is {limit%}.") },
  { "gear-over-capacity-unbounded", N_ ("{governing} has no capacity left after its reductions.") },
  { "gear-notice", N_ ("{governing} is loaded to {value%} of its reduced capacity: over the notice of {limit%}.") },
  { "leg-too-flat", N_ ("A leg hangs {value} from the vertical; flatter than {limit} from the vertical (30\xc2\xb0 from the "
                        "horizontal) is not allowed.") },
  { "leg-flat", N_ ("A leg hangs {value} from the vertical; flatter than {limit} loads it steeply more.") },
};

const char *
sy_words_rigging_template (const char *id)
{
  return sy_words_find (templates, G_N_ELEMENTS (templates), id);
}

char *
sy_words_rigging_result (const SyFindings *findings, SyTranslate translate)
{
  (void) translate;
  if (strcmp (findings->method->id, "lift") == 0)
    return NULL;
  return g_strdup (findings->sink.governing);
}
