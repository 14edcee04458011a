/* SPDX-License-Identifier: MIT */
#ifndef SY_TEXT_H
#define SY_TEXT_H

#include <stddef.h>

#include "sy-units.h"

/*
 * Text put together in the caller's buffer: starts as { buffer, size, at }, where @at bytes are in the buffer already.
 * What has no room is cut between characters (UTF-8); the buffer ends in a zero byte after every addition.
 */
typedef struct
{
  char *text;
  size_t size; /* bytes of the buffer, at least 1     */
  size_t at;   /* bytes in it, without the zero byte  */
} SyText;

void sy_text_add (SyText *text, const char *more);
/* The shortest figures that read back to the same value; finite. */
void sy_text_add_number (SyText *text, double value);
/* Rounded half up to so many decimals, without zeros at its end. */
void sy_text_add_rounded (SyText *text, double value, int decimals);
/* The same with the unit of its kind behind it. */
void sy_text_add_measure (SyText *text, double value, int decimals, SyKind kind, SyUnits units);

#endif
