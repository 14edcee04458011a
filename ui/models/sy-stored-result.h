/* SPDX-License-Identifier: MIT */
#ifndef SY_STORED_RESULT_H
#define SY_STORED_RESULT_H

#include "sy-ledger.h"

/* What a timeline needs to know of a stored revision, read from its findings as they were stored. */
typedef struct
{
  SyVerdict verdict;
  gboolean has_verdict;
  char *index_symbol; /* "LI"; NULL for none */
  double index;       /* INFINITY unbounded, NAN none */
} SyStoredResult;
void sy_stored_result_read (const SyEvent *event, SyStoredResult *out);
void sy_stored_result_clear (SyStoredResult *result);
/* "LI 2.13", "LI ∞", "Utilisation 93 %"; "" for none. New string. */
char *sy_stored_index_text (const SyStoredResult *result);
/* The same without what it is of: "2.13", "93 %". */
char *sy_stored_index_number (const SyStoredResult *result);
/* The verdict in the words of the event's method; what stands for one that this edition does not know. Static. */
const char *sy_stored_verdict_text (const SyEvent *event, const SyStoredResult *result);
/* A stored time (RFC 3339) as people here write it; as it stands when it cannot be read. New string. */
char *sy_stored_time_text (const char *stored);
/* Only the day of it. */
char *sy_stored_day_text (const char *stored);

#endif
