/* SPDX-License-Identifier: MIT */
#ifndef SY_NUMBER_H
#define SY_NUMBER_H

#include "sy-units.h"

/* Topics: numbers as text, quantities as text. No function here looks at the locale. */

/* A number that may not have been given. */
typedef struct
{
  double value; /* meaningful only when given */
  bool given;
} SyNumber;

#define SY_NUMBER_TEXT_MAX 32

typedef enum
{
  SY_TEXT_OK = 0,
  SY_TEXT_EMPTY,       /* nothing but blanks                                  */
  SY_TEXT_NOT_NUMBER,  /* does not begin with a number                        */
  SY_TEXT_AMBIGUOUS,   /* a comma before exactly three digits ("1,250")       */
  SY_TEXT_TOO_LARGE,   /* not representable as a finite number                */
  SY_TEXT_NO_UNIT,     /* a unit was required                                 */
  SY_TEXT_WRONG_UNIT,  /* text behind the number is no unit of the kind       */
} SyTextStatus;

/**
 * sy_number_parse:
 * Read a decimal number: sign, digits, one mark "." or ",", exponent. No grouping, no hex, no inf, no nan.
 * Parameters:   text, length  need not end in NUL.
 *               value         receives the number rounded to nearest; written only on SY_TEXT_OK. Not NULL.
 *               used          receives the characters read, leading blanks included. Not NULL.
 * Return value: SY_TEXT_OK, _EMPTY, _NOT_NUMBER, _AMBIGUOUS or _TOO_LARGE.
 */
SyTextStatus sy_number_parse (const char *text, size_t length, double *value, size_t *used);

/**
 * sy_number_read_json:
 * Convert a token that already satisfies the JSON number grammar. Correctly rounded, any locale.
 * Return value: false when it is not finite.
 */
bool sy_number_read_json (const char *token, size_t length, double *value);

/**
 * sy_number_print:
 * Shortest of 15, 16 or 17 significant digits that reads back to the same bits; "." as mark; -0 prints as 0.
 * Parameters:   value   finite. buffer  at least SY_NUMBER_TEXT_MAX bytes.
 * Return value: length written, without the NUL.
 */
size_t sy_number_print (double value, char *buffer);

/**
 * sy_number_round:
 * Half away from zero at @decimals (0 to 9), as people round: a value stored a hair below a half, such as 0.745,
 * counts as the half that was meant.
 */
double sy_number_round (double value, int decimals);

/**
 * sy_number_print_rounded:
 * For reading, never for storing: rounded by sy_number_round, "." as mark.
 * Parameters:   value       any; NaN prints as "–", infinity as "∞".
 *               keep_zeros  "2.10" rather than "2.1".
 *               buffer      at least SY_NUMBER_READ_MAX bytes.
 * Return value: length written, without the NUL.
 */
#define SY_NUMBER_READ_MAX 340
size_t sy_number_print_rounded (double value, int decimals, bool keep_zeros, char *buffer);

/**
 * sy_quantity_parse:
 * Read "44 lb", "16 in", "12,5 cm" into the unit of @kind in @units.
 * Parameters:   unit_required  true: a bare number is SY_TEXT_NO_UNIT (documents);
 *                              false: a bare number is taken in the unit of @units (form fields).
 *               value          written only on SY_TEXT_OK. Not NULL.
 *               had_unit       receives whether a unit was written; may be NULL.
 */
SyTextStatus sy_quantity_parse (const char *text, size_t length, SyKind kind, SyUnits units,
                                bool unit_required, double *value, bool *had_unit);

#endif
