/* SPDX-License-Identifier: MIT */
#ifndef SY_DIFFERENCE_WORDS_H
#define SY_DIFFERENCE_WORDS_H

#include "sy-difference.h"
#include "sy-method.h"
#include "sy-words.h"

/* A difference of facts as a reader sees it. @translate NULL: English. New strings. */

/* The field that a path leads to, through lists by their own names ("legs[label=A].length"); NULL: none. Static. */
const SyField *sy_difference_field (const SyMethod *method, const char *path);
/* "Origin: Reach (H)": put together of names that are translated one by one. */
char *sy_difference_name_words (const SyDifference *difference, SyTranslate translate);
/* What was typed stays as typed; what was chosen by its label: "good, fair" of ids. @method NULL: ids. */
char *sy_difference_fact_words (const SyMethod *method, const SyDifference *difference, const char *value,
                                SyTranslate translate);

#endif
