/* SPDX-License-Identifier: MIT */
#include "sy-problem.h"

#include <string.h>

/* Copies as much as fits, cut at the start of a UTF-8 character, with "…" where something was cut. */
static void
copy_text (char *to, size_t size, const char *from)
{
  static const char more[] = "\xe2\x80\xa6";
  size_t length = from ? strlen (from) : 0;

  if (length < size)
    {
      if (length > 0)
        memcpy (to, from, length);
      to[length] = '\0';
      return;
    }
  size_t keep = size - sizeof more;
  while (keep > 0 && ((unsigned char) from[keep] & 0xc0) == 0x80)
    keep--;
  memcpy (to, from, keep);
  memcpy (to + keep, more, sizeof more);
}

void
sy_problems_clear (SyProblems *problems)
{
  problems->count = 0;
  problems->dropped = 0;
}

void
sy_problems_add (SyProblems *problems, SyProblemKind kind, int line, const char *path,
                 const char *given, const char *allowed, const char *unit)
{
  if (problems->count == SY_PROBLEMS_MAX)
    {
      problems->dropped++;
      return;
    }
  SyProblem *problem = &problems->items[problems->count++];
  problem->kind = kind;
  problem->line = line;
  copy_text (problem->path, sizeof problem->path, path);
  copy_text (problem->given, sizeof problem->given, given);
  copy_text (problem->allowed, sizeof problem->allowed, allowed);
  copy_text (problem->unit, sizeof problem->unit, unit);
}

void
sy_problems_sort (SyProblems *problems)
{
  /* A stable move of the few unknown fields to the front. */
  int front = 0;

  for (int i = 0; i < problems->count; i++)
    if (problems->items[i].kind == SY_PROBLEM_UNKNOWN_FIELD)
      {
        if (i > front)
          {
            SyProblem unknown = problems->items[i];
            memmove (&problems->items[front + 1], &problems->items[front],
                     (size_t) (i - front) * sizeof unknown);
            problems->items[front] = unknown;
          }
        front++;
      }
}
