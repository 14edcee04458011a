/* SPDX-License-Identifier: MIT */
#ifndef SY_WORDS_PRIVATE_H
#define SY_WORDS_PRIVATE_H

#include "sy-words.h"

/* The value that belongs to a name in braces; new string, NULL when there is no such name. */
typedef char *(*SyFill) (const char *name, gconstpointer data);

/* A translated template with every {name} replaced. New string. */
char *sy_words_fill (const char *msgid, SyTranslate translate, SyFill fill, gconstpointer data);

/* A quantity of the findings by symbol; NAN when absent, INFINITY when unbounded. */
double sy_words_value (const SyFindings *findings, const char *symbol);
/* The same for the symbol of one end: "origin" + "H". */
double sy_words_end_value (const SyFindings *findings, const char *end, const char *symbol);

#endif
