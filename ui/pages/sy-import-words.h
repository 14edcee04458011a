/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPORT_WORDS_H
#define SY_IMPORT_WORDS_H

#include "sy-ledger-exchange.h"

/* What a bundle or a table would do (@is_dry) or did, in words, translated; new strings. */
char *sy_import_report_words (const SyImportReport *report, gboolean is_dry);
char *sy_lifts_report_words (const SyLiftsReport *report, gboolean is_dry);

#endif
