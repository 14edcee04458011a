/* SPDX-License-Identifier: MIT */
#ifndef SY_WORDS_PRIVATE_H
#define SY_WORDS_PRIVATE_H

#include "sy-words.h"

/* The value that belongs to a name in braces; new string, NULL when there is no such name. */
typedef char *(*SyFill) (const char *name, gconstpointer data);

/* Texts by id; they hold {names} for what is put in. */
typedef struct
{
  const char *id, *text; /* N_() */
} SyTemplate;
const char *sy_words_find (const SyTemplate *templates, gsize n, const char *id); /* NULL: none */
/* Reasons, notes and results of what gear does (dies, rigged lifts, gear, trucks, carts). */
const char *sy_words_rigging_template (const char *id);
/* The result in a sentence, NULL for a method of another room. New string. */
char *sy_words_rigging_result (const SyFindings *findings, SyTranslate translate);

/* A translated template with every {name} replaced. New string. */
char *sy_words_fill (const char *msgid, SyTranslate translate, SyFill fill, gconstpointer data);

/* A quantity of the findings by symbol; NAN when absent, INFINITY when unbounded. */
double sy_words_value (const SyFindings *findings, const char *symbol);
/* The same for the symbol of one end: "origin" + "H". */
double sy_words_end_value (const SyFindings *findings, const char *end, const char *symbol);

#endif
