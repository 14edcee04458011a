/* SPDX-License-Identifier: MIT */
#ifndef SY_MASS_BASIS_H
#define SY_MASS_BASIS_H

#include "sy-method.h"

/* What is added to a mass for what is not known of it. The percentages are the policy's (assumed, no source). */

/**
 * sy_mass_allowance:
 * Parameters:   given  the facts' own percentage; goes before every other.
 *               basis  SyBasis, or -1 for one that is not known: then the largest of the policy counts.
 * Return value: percent, 0 or more.
 */
double sy_mass_allowance (const SyNumber *given, int basis, const SyContext *context);

/* Says what was assumed: where the facts give the percentage, that it is below the policy's; how the mass was had is
   needed where neither is known. @allowance: percent, of sy_mass_allowance(). */
void sy_mass_say (SySink *sink, const SyNumber *given, int basis, double allowance,
                  const SyContext *context);

#endif
