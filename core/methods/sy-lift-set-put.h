/* SPDX-License-Identifier: MIT */
#ifndef SY_LIFT_SET_PUT_H
#define SY_LIFT_SET_PUT_H

#include "sy-lift-set-facts.h"

/* What the three indices of a set share when they put what they found into the sink. */

/* Sources of quantities. */
#define SY_SET_MANUAL "NIOSH 94-110"
#define SY_SET_CLI_SOURCE SY_SET_MANUAL " 2.4"
#define SY_SET_SLI_SOURCE "Waters, Lu, Occhipinti 2007, Ergonomics 50(11) (from memory)"
#define SY_SET_VLI_SOURCE "Waters et al. 2016, Human Factors 58(5)"

/* What all lifts together have, gathered while they are gone through. */
typedef struct
{
  double reference;           /* the smallest                                  */
  double mass_each, m_ref;    /* of the lift nearest its reference mass        */
  double persons, per_min, a_day;
} SySetTally;

/* @minutes: of that lift a day. */
void sy_set_tally (SySetTally *tally, const SyLiftSetFacts *facts, size_t lift, const SyLiftOne *one, double minutes);

/* Puts "lift.3.FIRWL" and the like; @n from 1. */
void sy_set_put (SySink *sink, const char *prefix, size_t n, const char *suffix, SyKind kind, const char *label,
                 const char *source, double value);
/* Multipliers, FIRWL and F of a lift. */
void sy_set_put_end (SySink *sink, size_t lift, const SyLiftEnd *end, double per_min);
/* The lift that costs most, and what of it. */
void sy_set_govern (SySink *sink, size_t lift, const SyLiftEnd *end);
/* Says which lift costs most: @id with its @n @values, or that it leaves no limit. */
void sy_set_say (SySink *sink, const SyLiftSetFacts *facts, size_t lift, const char *id, const double *values, int n);

/* The index and all that it is made of; facts that passed the check. */
void sy_set_composite (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally);
void sy_set_rotation (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally);
void sy_set_rota (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally);
void sy_set_variable (const SyLiftSetFacts *facts, const SyContext *context, SySink *sink, SySetTally *tally);

#endif
