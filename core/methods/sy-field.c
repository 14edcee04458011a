/* SPDX-License-Identifier: MIT */
#include "sy-field.h"

#include <math.h>
#include <string.h>

#include "sy-text.h"

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

int
sy_field_most_coordinates (const SyField *field)
{
  return field->coordinates == SY_COORDINATES_PLAN ? 2 : 3;
}

int
sy_field_least_coordinates (const SyField *field)
{
  return field->coordinates == SY_COORDINATES_SPACE ? 3 : 2;
}

/* By SyCoordinates. */
static const char *const vector_shapes[] = { "[x, y, z]", "[x, y]", "[x, y, z] or [x, y]" };

void
sy_field_allowed (const SyField *field, SyUnits units, char *buffer, size_t size)
{
  SyText text = { buffer, size, 0 };

  switch (field->type)
    {
    case SY_MEMBER_VECTOR:
    case SY_MEMBER_VECTORS:
    case SY_MEMBER_NUMBER:
      if (field->type == SY_MEMBER_VECTOR)
        {
          sy_text_add (&text, vector_shapes[field->coordinates]);
          sy_text_add (&text, ", each ");
        }
      else if (field->type == SY_MEMBER_VECTORS)
        sy_text_add (&text, "[x, y, z] or a list of these, each ");
      sy_text_add (&text, field->whole ? "a whole number" : "a number");
      if (field->low.type == SY_BOUND_CLOSED && field->high.type == SY_BOUND_CLOSED)
        {
          sy_text_add (&text, ", ");
          sy_text_add_number (&text, field->low.at[units]);
          sy_text_add (&text, " to ");
          sy_text_add_number (&text, field->high.at[units]);
        }
      else
        {
          if (field->low.type != SY_BOUND_NONE)
            {
              sy_text_add (&text, field->low.type == SY_BOUND_OPEN ? " over " : " of at least ");
              sy_text_add_number (&text, field->low.at[units]);
            }
          if (field->high.type != SY_BOUND_NONE)
            {
              sy_text_add (&text, field->low.type != SY_BOUND_NONE ? " and " : " ");
              sy_text_add (&text, field->high.type == SY_BOUND_OPEN ? "under " : "at most ");
              sy_text_add_number (&text, field->high.at[units]);
            }
        }
      if (*sy_unit_list (field->kind))
        {
          sy_text_add (&text, ", or text with a unit (");
          sy_text_add (&text, sy_unit_list (field->kind));
          sy_text_add (&text, ")");
        }
      break;
    case SY_MEMBER_CHOICE:
    case SY_MEMBER_SET:
      sy_text_add (&text, field->type == SY_MEMBER_SET ? "a list of: " : "one of: ");
      for (size_t i = 0; i < field->n_choices; i++)
        {
          sy_text_add (&text, i > 0 ? ", " : "");
          sy_text_add (&text, field->choices[i].id);
        }
      break;
    case SY_MEMBER_BOOL:
      sy_text_add (&text, "true or false");
      break;
    case SY_MEMBER_TEXT:
      sy_text_add (&text, "a text");
      break;
    case SY_MEMBER_TEXTS:
      sy_text_add (&text, field->whole ? "how many, a text or a list of texts" : "a text or a list of texts");
      break;
    case SY_MEMBER_DATE:
      sy_text_add (&text, "a date such as \"2026-11-25\"");
      break;
    case SY_MEMBER_FACTS:
      sy_text_add (&text, "an object with a method and its facts");
      break;
    case SY_MEMBER_GROUP:
    case SY_MEMBER_LIST:
      sy_text_add (&text, field->type == SY_MEMBER_LIST ? "a list of objects with: " : "an object with: ");
      for (size_t i = 0; i < field->n_members; i++)
        {
          sy_text_add (&text, i > 0 ? ", " : "");
          sy_text_add (&text, field->members[i].name);
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
          *(SyVector *) (void *) at = (SyVector) { { 0, 0, 0 }, false, false };
          break;
        case SY_MEMBER_FACTS:
          *(SyPartFacts *) (void *) at = (SyPartFacts) { NULL, NULL };
          break;
        case SY_MEMBER_VECTORS:
        case SY_MEMBER_TEXTS:
        case SY_MEMBER_LIST:
          *(SyList *) (void *) at = (SyList) { NULL, 0, false };
          break;
        }
    }
}
