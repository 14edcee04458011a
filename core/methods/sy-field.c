/* SPDX-License-Identifier: MIT */
#include "sy-field.h"

#include <math.h>
#include <string.h>

const SyField *
sy_field_find (const SyField *fields, size_t n, const char *path, size_t *offset)
{
  size_t base = 0;

  for (;;)
    {
      size_t length = strcspn (path, ".");
      const SyField *found = NULL;

      for (size_t i = 0; i < n && found == NULL; i++)
        if (strlen (fields[i].name) == length && memcmp (fields[i].name, path, length) == 0)
          found = &fields[i];
      if (found == NULL)
        return NULL;
      base += found->offset;
      if (path[length] == '\0')
        {
          if (offset != NULL)
            *offset = base;
          return found;
        }
      if (found->type != SY_MEMBER_GROUP)
        return NULL;
      fields = found->members;
      n = found->n_members;
      path += length + 1;
    }
}

/* Text put together in a buffer, cut when it is full. */
typedef struct
{
  char *next;
  size_t room;
} Text;

static void
append (Text *text, const char *more)
{
  size_t length = strlen (more);

  if (text->room == 0)
    return;
  if (length >= text->room)
    length = text->room - 1;
  memcpy (text->next, more, length);
  text->next += length;
  text->room -= length;
  *text->next = '\0';
}

static void
append_number (Text *text, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  sy_number_print (value, number);
  append (text, number);
}

void
sy_field_allowed (const SyField *field, SyUnits units, char *buffer, size_t size)
{
  Text text = { buffer, size };

  if (size > 0)
    *buffer = '\0';
  switch (field->type)
    {
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_NUMBER:
      if (field->type == SY_MEMBER_VECTOR)
        append (&text, "[x, y, z], each ");
      else if (field->type == SY_MEMBER_VECTORS)
        append (&text, "[x, y, z] or a list of these, each ");
      append (&text, field->whole ? "a whole number" : "a number");
      if (field->low.type == SY_BOUND_CLOSED && field->high.type == SY_BOUND_CLOSED)
        {
          append (&text, ", ");
          append_number (&text, field->low.at[units]);
          append (&text, " to ");
          append_number (&text, field->high.at[units]);
        }
      else
        {
          if (field->low.type != SY_BOUND_NONE)
            {
              append (&text, field->low.type == SY_BOUND_OPEN ? " over " : " of at least ");
              append_number (&text, field->low.at[units]);
            }
          if (field->high.type != SY_BOUND_NONE)
            {
              append (&text, field->low.type != SY_BOUND_NONE ? " and " : " ");
              append (&text, field->high.type == SY_BOUND_OPEN ? "under " : "at most ");
              append_number (&text, field->high.at[units]);
            }
        }
      if (*sy_unit_list (field->kind))
        {
          append (&text, ", or text with a unit (");
          append (&text, sy_unit_list (field->kind));
          append (&text, ")");
        }
      break;
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_SET:
      append (&text, field->type == SY_MEMBER_SET ? "a list of: " : "one of: ");
      for (size_t i = 0; i < field->n_choices; i++)
        {
          append (&text, i > 0 ? ", " : "");
          append (&text, field->choices[i].id);
        }
      break;
    case SY_MEMBER_BOOL:
      append (&text, "true or false");
      break;
    case SY_MEMBER_TEXT:
      append (&text, "a text");
      break;
    case SY_MEMBER_TEXTS:
      append (&text, "a text or a list of texts");
      break;
    case SY_MEMBER_DATE:
      append (&text, "a date such as \"2026-11-25\"");
      break;
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
      append (&text, field->type == SY_MEMBER_LIST ? "a list of objects with: " : "an object with: ");
      for (size_t i = 0; i < field->n_members; i++)
        {
          append (&text, i > 0 ? ", " : "");
          append (&text, field->members[i].name);
        }
      break;
    }
}

bool
sy_field_in_range (const SyField *field, SyUnits units, double value)
{
  double low = field->low.at[units], high = field->high.at[units];

  if (!isfinite (value) || (field->whole && value != floor (value)))
    return false;
  if (field->low.type != SY_BOUND_NONE && !(field->low.type == SY_BOUND_OPEN ? value > low : value >= low))
    return false;
  if (field->high.type != SY_BOUND_NONE
      && !(field->high.type == SY_BOUND_OPEN ? value < high : value <= high))
    return false;
  return true;
}

void
sy_fields_clear (const SyField *fields, size_t n, void *facts)
{
  for (size_t i = 0; i < n; i++)
    {
      const SyField *field = &fields[i];
      char *at = (char *) facts + field->offset;

      switch (field->type)
        {
        case SY_MEMBER_NUMBER:
          *(SyNumber *) (void *) at = (SyNumber) { 0, false };
          break;
        case SY_MEMBER_CHOICE:
        case SY_MEMBER_BOOL:
          *(int *) (void *) at = -1;
          break;
        case SY_MEMBER_SET:
          *(SySet *) (void *) at = (SySet) { 0, false };
          break;
        case SY_MEMBER_TEXT:
        case SY_MEMBER_DATE:
          *(const char **) (void *) at = NULL;
          break;
        case SY_MEMBER_GROUP:
          *(int *) (void *) ((char *) facts + field->present_offset) = 0;
          sy_fields_clear (field->members, field->n_members, at);
          break;
        case SY_MEMBER_VECTOR:
          *(SyVector *) (void *) at = (SyVector) { { 0, 0, 0 }, false };
          break;
        case SY_MEMBER_VECTORS:
        case SY_MEMBER_TEXTS:
        case SY_MEMBER_LIST:
          *(SyList *) (void *) at = (SyList) { NULL, 0, false };
          break;
        }
    }
}
