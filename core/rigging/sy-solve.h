/* SPDX-License-Identifier: MIT */
#ifndef SY_SOLVE_H
#define SY_SOLVE_H

#include "sy-vector.h"

/**
 * sy_solve3:
 * Solve x·a + y·b + z·c = w for the coefficients by Cramer's rule.
 * Parameters:   a, b, c  the columns. out receives the coefficients of a, b, c; written only on true.
 * Return value: false where the three directions lie in a plane: their determinant is below 1e-12 of the product of
 *               their lengths.
 */
bool sy_solve3 (SyVec3 a, SyVec3 b, SyVec3 c, SyVec3 w, double out[3]);

#endif
