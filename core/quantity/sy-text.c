/* SPDX-License-Identifier: MIT */
#include "sy-text.h"

#include <string.h>

#include "sy-number.h"

void
sy_text_add (SyText *text, const char *more)
{
  size_t room = text->size - 1 - text->at, length = strnlen (more, room);

  /* The later bytes of a character are 10xxxxxx. */
  while (length > 0 && ((unsigned char) more[length] & 0xc0) == 0x80)
    length--;
  memcpy (text->text + text->at, more, length);
  text->at += length;
  text->text[text->at] = '\0';
}

void
sy_text_add_number (SyText *text, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  sy_number_print (value, number);
  sy_text_add (text, number);
}

void
sy_text_add_rounded (SyText *text, double value, int decimals)
{
  char number[SY_NUMBER_READ_MAX];

  sy_number_print_rounded (value, decimals, false, number);
  sy_text_add (text, number);
}

void
sy_text_add_measure (SyText *text, double value, int decimals, SyKind kind, SyUnits units)
{
  sy_text_add_rounded (text, value, decimals);
  sy_text_add (text, " ");
  sy_text_add (text, sy_unit_name (kind, units));
}
