/* SPDX-License-Identifier: MIT */
#include "sy-hang-private.h"

#include "sy-outline.h"

#define IN_LINE 1e-6  /* of their spread: points in so narrow a strip are a line, as for the legs from them */
#define AT_LIMIT 1e-9 /* degrees */

double
sy_hang_angle_deg (SyVec3 a, SyVec3 b)
{
  /* B30.9 30° from the horizontal and the tables' columns at 60 and 45; EN bands to 45 and 60 from the vertical. */
  static const double limits[] = { 0, 30, 45, 60, 90 };
  double angle = sy_vec3_angle_deg (a, b);

  for (int i = 0; i < (int) (sizeof limits / sizeof *limits); i++)
    if (fabs (angle - limits[i]) <= AT_LIMIT)
      return limits[i];
  return angle;
}

double
sy_hang_factor (double angle_deg, double length, double rise)
{
  if (angle_deg == 0)
    return 1;
  if (angle_deg == 30)
    return 2 / sqrt (3);
  if (angle_deg == 45)
    return sqrt (2);
  if (angle_deg == 60)
    return 2;
  return angle_deg >= 90 ? INFINITY : length / rise;
}

double
sy_hang_margin (const SyVec3 *at, int n, SyVec3 cg, SyVec3 hook, SyVec3 up)
{
  SyVec3 east = sy_vec3_cross (fabs (up.y) < 0.9 ? sy_vec3 (0, 1, 0) : sy_vec3 (0, 0, 1), up), north;
  SyVec3 to_hook = sy_vec3_sub (hook, cg), plan[SY_PARTS_MAX];
  double hook_rise = sy_vec3_dot (to_hook, up), spread = 0;
  SyOutline outline;

  east = sy_vec3_scale (east, 1 / sy_vec3_length (east));
  north = sy_vec3_cross (up, east);
  for (int i = 0; i < n; i++)
    {
      SyVec3 d = sy_vec3_sub (at[i], cg);
      double rise = sy_vec3_dot (d, up);

      if (rise < 0)
        {
          double part = hook_rise > 0 ? -rise / (hook_rise - rise) : 1;

          d = sy_vec3_add (d, sy_vec3_scale (sy_vec3_sub (to_hook, d), part));
        }
      plan[i] = sy_vec3 (sy_vec3_dot (d, east), sy_vec3_dot (d, north), 0);
      spread = fmax (spread, sy_vec3_length (sy_vec3_sub (plan[i], plan[0])));
    }
  if (!sy_outline_make (plan, n, &outline) || !(sy_outline_width (&outline) > IN_LINE * spread))
    return 0;
  return sy_outline_distance (&outline, 0, 0);
}
