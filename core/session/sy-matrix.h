/* SPDX-License-Identifier: MIT */
#ifndef SY_MATRIX_H
#define SY_MATRIX_H

#include "sy-register.h"

/* What lifts what: every die against every hoist, crane, fork truck, cart and manipulator of the register. A first
   look: how the die hangs or stands is for a plan of its own. */

typedef enum { SY_SERVES_NO, SY_SERVES_YES, SY_SERVES_NOT_KNOWN } SyServes;

typedef struct
{
  char *die, *die_name;       /* id and name                                                    */
  char *machine;              /* of the die, "" where not said                                  */
  char *gear, *gear_name, *identity;
  char *kind;                 /* "hoist"                                                        */
  double mass_kg;             /* of the die with allowance; NAN not known                       */
  double wll_kg;              /* NAN not known                                                  */
  double utilisation;         /* mass / WLL; NAN not known                                      */
  SyServes serves;            /* whether it serves the die's machine                            */
  SyVerdict verdict;          /* within-capacity, improve, incomplete, do-not-lift              */
  GPtrArray *why;             /* texts: all that is over within-capacity, strictest first       */
  GPtrArray *remarks;         /* texts: under what it holds                                     */
} SyMatrixCell;
void sy_matrix_cell_free (SyMatrixCell *cell); /* NULL is fine */

/**
 * sy_matrix_make:
 * Parameters:   dies, gear  of SyRegisterItem; what is neither a die nor such gear is passed over.
 *               machine     only dies of that machine, whatever the case of its letters; NULL: all.
 *               day         days since 1970; NAN: today.
 *               translate   for the texts; NULL: English.
 * Return value: new array of SyMatrixCell that frees its elements: die by die in the order given, the least strict
 *               verdict first, then the largest margin.
 * Special considerations: any thread. A cell is within-capacity only where all that it rests on is known: the mass of
 *               the die, the marking, the due date, the day, and that the machine is served.
 */
GPtrArray *sy_matrix_make (SyDesk *desk, const GPtrArray *dies, const GPtrArray *gear, const char *machine, double day,
                           SyTranslate translate);

/* JSON, one object without newline: as `steelyard-cli what-lifts` prints it. */
void sy_matrix_cell_write_json (GString *out, const SyMatrixCell *cell);

#endif
