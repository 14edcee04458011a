/* SPDX-License-Identifier: MIT */
#include "sy-solve.h"

#define FLAT 1e-12

bool
sy_solve3 (SyVec3 a, SyVec3 b, SyVec3 c, SyVec3 w, double out[3])
{
  SyVec3 bc = sy_vec3_cross (b, c);
  double whole = sy_vec3_dot (a, bc);

  if (!(fabs (whole) > FLAT * sy_vec3_length (a) * sy_vec3_length (b) * sy_vec3_length (c)))
    return false;
  out[0] = sy_vec3_dot (w, bc) / whole;
  out[1] = sy_vec3_dot (a, sy_vec3_cross (w, c)) / whole;
  out[2] = sy_vec3_dot (a, sy_vec3_cross (b, w)) / whole;
  return true;
}
