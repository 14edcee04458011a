/* SPDX-License-Identifier: MIT */
#ifndef SY_LIMIT_WORDS_H
#define SY_LIMIT_WORDS_H

#include "sy-words.h"

/**
 * sy_limit_words:
 * The published limits of a stored result, a line each: what is held against what, how far that goes, which governs, the
 * edition, and whether anybody has held the figure against the publication.
 * Parameters:   findings  JSON as it is stored; findings without limits, and what is no JSON, have no lines.
 * Return value: new string, "" for none; lines are parted by "\n".
 */
char *sy_limit_words (const char *findings, SyTranslate translate);

#endif
