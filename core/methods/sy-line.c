/* SPDX-License-Identifier: MIT */
#include "sy-line.h"

#include <string.h>

void
sy_line_add (SyLine *line, const char *more)
{
  size_t length = strlen (more);

  if (length > SY_FORMULA_MAX - 1 - line->at)
    length = SY_FORMULA_MAX - 1 - line->at;
  memcpy (line->text + line->at, more, length);
  line->at += length;
  line->text[line->at] = '\0';
}

void
sy_line_number (SyLine *line, double value, int decimals)
{
  char number[SY_NUMBER_READ_MAX];

  sy_number_print_rounded (value, decimals, false, number);
  sy_line_add (line, number);
}

void
sy_line_measure (SyLine *line, double value, int decimals, SyKind kind, SyUnits units)
{
  sy_line_number (line, value, decimals);
  sy_line_add (line, " ");
  sy_line_add (line, sy_unit_name (kind, units));
}

void
sy_line_part (SyLine *line, double demand, double capacity, double part, SyUnits units)
{
  sy_line_measure (line, demand, 1, SY_KIND_MASS, units);
  sy_line_add (line, " / ");
  sy_line_measure (line, capacity, 1, SY_KIND_MASS, units);
  sy_line_add (line, " = ");
  sy_line_number (line, part, 3);
}
