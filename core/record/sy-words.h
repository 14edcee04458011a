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

char *sy_words_number (double value, int decimals);   /* "2.1", "no limit holds" for INFINITY */
char *sy_words_quantity (double value, SyKind kind, SyUnits units); /* "8.6 kg" (thin space)  */
char *sy_words_reason (const SyFindings *findings, const SyReason *reason, SyTranslate translate);
char *sy_words_note (const SyFindings *findings, const SyNote *note, SyTranslate translate);
char *sy_words_remedy (const SyFindings *findings, const SyRemedy *remedy, SyTranslate translate);
/* One sentence under the beam: "LI 2.1 at the destination; the reach of 55 cm costs most." */
char *sy_words_result (const SyFindings *findings, SyTranslate translate);
/* The formula of a quantity with the numbers put in: "RWL = 23 × 0.45 × … = 6.9 kg"; NULL when it has none. */
char *sy_words_formula (const SyFindings *findings, const SyQuantity *quantity, SyTranslate translate);
/* The caution that every result carries. */
char *sy_words_screening (SyTranslate translate);

#endif
