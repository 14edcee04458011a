/* SPDX-License-Identifier: MIT */
#ifndef SY_LINE_H
#define SY_LINE_H

#include "sy-method.h"

/* A line of a formula, put together in the caller's SY_FORMULA_MAX bytes and cut when they are full. */
typedef struct
{
  char *text;
  size_t at;
} SyLine;

void sy_line_add (SyLine *line, const char *more);
/* A number rounded half up, without zeros at its end. */
void sy_line_number (SyLine *line, double value, int decimals);
/* The same with the unit of its kind behind it. */
void sy_line_measure (SyLine *line, double value, int decimals, SyKind kind, SyUnits units);
/* "1500 kg / 3000 kg = 0.5": a demand against a capacity, and what comes of it. */
void sy_line_part (SyLine *line, double demand, double capacity, double part, SyUnits units);

#endif
