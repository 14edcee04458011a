/* SPDX-License-Identifier: MIT */
#ifndef SY_WORDS_H
#define SY_WORDS_H

#include <glib.h>

#include "sy-findings.h"

/*
 * Templates put into words. What is stored and exported is English (translate NULL); the screen passes its own
 * translate function for the templates. Numbers are rounded for reading here and nowhere else.
 * Every function returns a new string.
 */
typedef const char *(*SyTranslate) (const char *msgid);

/* The value that belongs to a name in braces; new string, NULL when there is no such name. */
typedef char *(*SyFill) (const char *name, gconstpointer data);
/* A translated template with every {name} replaced. */
char *sy_words_fill (const char *msgid, SyTranslate translate, SyFill fill, gconstpointer data);
/* The same of pairs of name and value, ten at most, then NULL. */
char *sy_words_say (SyTranslate translate, const char *msgid, ...) G_GNUC_NULL_TERMINATED;

/* A unit as a reader sees it: "mm²", "kg/m³", "°C"; "" for none. Static. */
const char *sy_words_unit (SyKind kind, SyUnits units);
/* Rounded to @decimals at most, trailing zeros left out for all but ratios; "∞" for INFINITY. */
char *sy_words_number (double value, int decimals);
/* An index by its sign where the trade has one: "LI", "CLI"; else "index". Static, or @translate's. */
const char *sy_words_index_sign (const char *symbol, SyTranslate translate);
/* Whether it has. */
gboolean sy_words_has_sign (const char *symbol);
/* With as many decimals as the kind is read with, and the unit: "8.6 kg", "55 cm", "0.45". */
char *sy_words_quantity (double value, SyKind kind, SyUnits units);
/* The same beside a limit, with more decimals where rounding would make the two look equal. */
char *sy_words_against (double value, double limit, SyKind kind, SyUnits units);
/* Rounded towards @towards, so that the rounded value is on the safe side of the exact one. */
char *sy_words_directed (double value, double towards, SyKind kind, SyUnits units);
char *sy_words_reason (const SyFindings *findings, const SyReason *reason, SyTranslate translate);
char *sy_words_note (const SyFindings *findings, const SyNote *note, SyTranslate translate);
char *sy_words_remedy (const SyFindings *findings, const SyRemedy *remedy, SyTranslate translate);
/* The result in one sentence: "LI 2.1 at the destination; the reach of 55 cm costs most." */
char *sy_words_result (const SyFindings *findings, SyTranslate translate);
/* The formula of a quantity with the numbers put in: "RWL = 23 × 0.45 × … = 6.9 kg"; NULL when it has none. */
char *sy_words_formula (const SyFindings *findings, const SyQuantity *quantity);
/* Cautions of a result, the screening sentence first, then what it defers to, where its policy says so ("defers-to"); @id
   receives the id (static), may be NULL. */
int sy_words_n_cautions (const SyFindings *findings);
/* How many of them, the first ones, stand at the foot of every sheet: 1 or 2. */
int sy_words_n_foot (const SyFindings *findings);
char *sy_words_caution (const SyFindings *findings, int i, const char **id, SyTranslate translate);
/* One problem of a report as a line of text: "$.origin.H: given -5; allowed: a number over 0; unit: cm". */
char *sy_words_problem (const SyProblem *problem);

/* The caution that every result carries. */
char *sy_words_screening (SyTranslate translate);

#endif
