/* SPDX-License-Identifier: MIT */
#ifndef SY_LINE_H
#define SY_LINE_H

#include "sy-text.h"

/* "1500 kg / 3000 kg = 0.5": a demand against a capacity, masses in @units, and the ratio that comes of it. */
void sy_line_part (SyText *line, double demand, double capacity, double part, SyUnits units);

#endif
