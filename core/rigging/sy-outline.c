/* SPDX-License-Identifier: MIT */
#include "sy-outline.h"

/* Of its length: an outline as narrow as this is a line. */
#define FLAT 1e-9

static SyVec3
plan (double x, double y)
{
  return sy_vec3 (x, y, 0);
}

/* Twice the area of the triangle; over 0 where c is to the left of a→b. */
static double
turn (SyVec3 a, SyVec3 b, SyVec3 c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

static bool
before (SyVec3 a, SyVec3 b)
{
  return a.x < b.x || (a.x <= b.x && a.y < b.y);
}

static double
distance_to_segment (SyVec3 a, SyVec3 b, SyVec3 p)
{
  SyVec3 ab = sy_vec3_sub (b, a), ap = sy_vec3_sub (p, a);
  double square = sy_vec3_dot (ab, ab);
  double along = square > 0 ? fmin (1, fmax (0, sy_vec3_dot (ap, ab) / square)) : 0;

  return sy_vec3_length (sy_vec3_sub (ap, sy_vec3_scale (ab, along)));
}

/* The corners that are farthest apart. */
static double
longest (const SyOutline *outline, SyVec3 *from, SyVec3 *to)
{
  double most = -1;

  for (int i = 0; i < outline->n; i++)
    for (int j = i; j < outline->n; j++)
      {
        double apart = sy_vec3_length (sy_vec3_sub (outline->corner[i], outline->corner[j]));

        if (apart > most)
          {
            most = apart;
            *from = outline->corner[i];
            *to = outline->corner[j];
          }
      }
  return most;
}

bool
sy_outline_make (const SyVec3 *points, int n, SyOutline *out)
{
  SyVec3 sorted[SY_OUTLINE_MAX], chain[2 * SY_OUTLINE_MAX], from, to;
  SyOutline made = { 0 };
  int different = 0, k = 0;

  if (n < 1 || n > SY_OUTLINE_MAX)
    return false;
  for (int i = 0; i < n; i++)
    {
      SyVec3 point = plan (points[i].x, points[i].y);
      int at = i;

      for (; at > 0 && before (point, sorted[at - 1]); at--)
        sorted[at] = sorted[at - 1];
      sorted[at] = point;
    }
  for (int i = 0; i < n; i++)
    if (different == 0 || before (sorted[different - 1], sorted[i]))
      sorted[different++] = sorted[i];

  /* Lower side from left to right, then the upper side back: every corner turns left. */
  for (int i = 0; i < different; i++)
    {
      while (k >= 2 && turn (chain[k - 2], chain[k - 1], sorted[i]) <= 0)
        k--;
      chain[k++] = sorted[i];
    }
  for (int i = different - 2, lower = k + 1; i >= 0; i--)
    {
      while (k >= lower && turn (chain[k - 2], chain[k - 1], sorted[i]) <= 0)
        k--;
      chain[k++] = sorted[i];
    }
  /* The last one is the first again. */
  made.n = different > 1 ? k - 1 : 1;
  for (int i = 0; i < made.n; i++)
    made.corner[i] = chain[i];

  if (made.n > 2 && sy_outline_width (&made) <= FLAT * longest (&made, &from, &to))
    {
      made.n = 2;
      made.corner[0] = from;
      made.corner[1] = to;
    }
  *out = made;
  return true;
}

double
sy_outline_distance (const SyOutline *outline, double x, double y)
{
  SyVec3 p = plan (x, y);
  double nearest = INFINITY;
  bool inside = outline->n > 2;

  for (int i = 0; i < outline->n; i++)
    {
      SyVec3 a = outline->corner[i], b = outline->corner[(i + 1) % outline->n];

      nearest = fmin (nearest, distance_to_segment (a, b, p));
      inside = inside && turn (a, b, p) >= 0;
    }
  return inside ? nearest : 0 - nearest;
}

double
sy_outline_width (const SyOutline *outline)
{
  double narrow = INFINITY;

  if (outline->n < 3)
    return 0;
  /* The narrowest pair of lines runs along an edge. */
  for (int i = 0; i < outline->n; i++)
    {
      SyVec3 a = outline->corner[i], b = outline->corner[(i + 1) % outline->n];
      double length = sy_vec3_length (sy_vec3_sub (b, a)), across = 0;

      for (int j = 0; j < outline->n; j++)
        across = fmax (across, turn (a, b, outline->corner[j]) / length);
      narrow = fmin (narrow, across);
    }
  return narrow;
}
