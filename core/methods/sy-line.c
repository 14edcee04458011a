/* SPDX-License-Identifier: MIT */
#include "sy-line.h"

void
sy_line_part (SyText *line, double demand, double capacity, double part, SyUnits units)
{
  sy_text_add_measure (line, demand, 1, SY_KIND_MASS, units);
  sy_text_add (line, " / ");
  sy_text_add_measure (line, capacity, 1, SY_KIND_MASS, units);
  sy_text_add (line, " = ");
  sy_text_add_rounded (line, part, 3);
}
