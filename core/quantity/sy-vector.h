/* SPDX-License-Identifier: MIT */
#ifndef SY_VECTOR_H
#define SY_VECTOR_H

#include <math.h>
#include <stdbool.h>

/* Three coordinates, in whatever unit the caller holds them. */

typedef struct
{
  double x, y, z;
} SyVec3;

/* Coordinates that may not have been given. */
typedef struct
{
  double at[3];
  bool given;
  bool plan; /* x and y alone were given; at[2] is 0 */
} SyVector;

static inline SyVec3
sy_vec3 (double x, double y, double z)
{
  return (SyVec3) { x, y, z };
}

static inline SyVec3
sy_vector_vec3 (const SyVector *vector)
{
  return sy_vec3 (vector->at[0], vector->at[1], vector->at[2]);
}

static inline SyVec3
sy_vec3_add (SyVec3 a, SyVec3 b)
{
  return sy_vec3 (a.x + b.x, a.y + b.y, a.z + b.z);
}

static inline SyVec3
sy_vec3_sub (SyVec3 a, SyVec3 b)
{
  return sy_vec3 (a.x - b.x, a.y - b.y, a.z - b.z);
}

static inline SyVec3
sy_vec3_scale (SyVec3 a, double by)
{
  return sy_vec3 (a.x * by, a.y * by, a.z * by);
}

static inline double
sy_vec3_dot (SyVec3 a, SyVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline SyVec3
sy_vec3_cross (SyVec3 a, SyVec3 b)
{
  return sy_vec3 (a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
}

static inline double
sy_vec3_length (SyVec3 a)
{
  return sqrt (sy_vec3_dot (a, a));
}

/* The same direction with its largest coordinate 1, so that no product of very large or small ones is lost; as it is when
   it has no length. */
static inline SyVec3
sy_vec3_even (SyVec3 a)
{
  double largest = fmax (fabs (a.x), fmax (fabs (a.y), fabs (a.z)));

  return largest > 0 ? sy_vec3 (a.x / largest, a.y / largest, a.z / largest) : a;
}

/* Angle between two directions, degrees, 0 to 180; 0 when one has no length. By atan2, which is exact near 0 and 180. */
static inline double
sy_vec3_angle_deg (SyVec3 a, SyVec3 b)
{
  a = sy_vec3_even (a);
  b = sy_vec3_even (b);
  return atan2 (sy_vec3_length (sy_vec3_cross (a, b)), sy_vec3_dot (a, b)) * 57.295779513082320876798154814105;
}

#endif
