/* SPDX-License-Identifier: MIT */
#ifndef SY_DATE_H
#define SY_DATE_H

#include <stdbool.h>

/* Dates of the Gregorian calendar as days since 1970-01-01; no clock is read here. */

#define SY_DATE_TEXT_MAX 16

/**
 * sy_date_read:
 * Parameters:   text  "2027-03-01", years 1 to 9999. Not NULL.
 *               days  written only on true.
 * Return value: false for anything else, days that a month does not have included.
 */
bool sy_date_read (const char *text, double *days);

/**
 * sy_date_print:
 * Parameters:   days    whole, of the years 1 to 9999; anything else prints "".
 *               buffer  at least SY_DATE_TEXT_MAX bytes.
 */
void sy_date_print (double days, char *buffer);

/* The day @months calendar months later; the last day of a month that is too short. */
double sy_date_add_months (double days, int months);

#endif
