/* SPDX-License-Identifier: MIT */
#ifndef CASE_SUMS_H
#define CASE_SUMS_H

#include "sy-case-facts.h"

/* What an option costs and saves. */

typedef enum
{
  SY_INPUT_CAPITAL, SY_INPUT_TRAINING, SY_INPUT_RUNNING, SY_INPUT_EXAMINATION, SY_INPUT_MAINTENANCE, SY_INPUT_STOPPED,
  SY_INPUT_PERSON, SY_INPUT_NOW_STOPPED, SY_INPUT_NOW_PERSON, SY_INPUT_CHANGES, SY_INPUT_MACHINE, SY_INPUT_LABOUR,
} SyCaseInput;
#define SY_N_CASE_INPUTS 12

typedef enum { SY_CASE_LOW, SY_CASE_EXPECTED, SY_CASE_HIGH } SyCaseEnd;

typedef struct
{
  double at[SY_N_CASE_INPUTS][3]; /* by SyCaseInput and SyCaseEnd; NAN: not known */
  double discount, years;         /* percent a year; NAN: not known              */
} SyCaseInputs;

typedef struct
{
  double saving, npv, payback; /* a year; over the years; years, INFINITY: never. NAN: something is not known */
} SyCaseSums;

/* What the facts give for an option; minutes not given are those of its die change. */
void sy_case_inputs (const SyCaseFacts *facts, size_t option, const SyContext *context, SyCaseInputs *out);

/* Sum of 1 / (1 + r)^t over the years. */
double sy_case_annuity (const SyCaseInputs *inputs);

/**
 * sy_case_sums:
 * Standard finance: saving = changes × (machine rate × stopped minutes saved + labour rate × person-minutes saved) / 60 − yearly
 * costs; payback = (price + training) / saving; npv = −(price + training) + saving × annuity. @end LOW: the least that any
 * choice of the inputs within their ranges gives; HIGH: the most. Minutes known for neither side count as no difference.
 */
void sy_case_sums (const SyCaseInputs *inputs, SyCaseEnd end, SyCaseSums *out);

/* The same as expected, but one input at one of its ends. */
void sy_case_swing (const SyCaseInputs *inputs, SyCaseInput input, SyCaseEnd end, SyCaseSums *out);

#endif
