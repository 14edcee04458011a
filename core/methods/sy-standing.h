/* SPDX-License-Identifier: MIT */
#ifndef SY_STANDING_H
#define SY_STANDING_H

#include "sy-method.h"

/* Whether a thing may be used at all, whatever it carries: withdrawn, or its examination overdue. */

/**
 * sy_standing:
 * Notes: withdrawn and out of date are refused, a due date that was not given and a day that is not known are needed.
 * Parameters:   subject  what it is about, as the facts name it; "" for the only thing that the facts describe.
 *               due      "2027-03-01", checked; NULL not given. The day itself is still within.
 *               as_of    days since 1970; NAN: not known.
 * Return value: the due day, days since 1970; INFINITY where it was not given.
 * Source:       UK LOLER 1998 reg. 9(3); 29 CFR 1910.184(d).
 */
double sy_standing (SySink *sink, const char *subject, const char *due, int withdrawn, double as_of);

#endif
