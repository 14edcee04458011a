/* SPDX-License-Identifier: MIT */
#include "sy-body.h"

#define PI 3.14159265358979323846
/* Of what was added and cut together: less is rounding. */
#define NOTHING 1e-12

/* A sum that keeps what rounding drops. */
typedef struct
{
  double sum, rest;
} Sum;

static void
add (Sum *sum, double value)
{
  double next = sum->sum + value;

  if (fabs (sum->sum) >= fabs (value))
    sum->rest += (sum->sum - next) + value;
  else
    sum->rest += (value - next) + sum->sum;
  sum->sum = next;
}

static double
total (const Sum *sum)
{
  return sum->sum + sum->rest;
}

double
sy_body_volume (const SyBody *body)
{
  switch (body->shape)
    {
    case SY_BODY_BLOCK:
      return body->size[0] * body->size[1] * body->size[2];
    case SY_BODY_CYLINDER:
      return PI / 4 * body->diameter * body->diameter * body->height;
    case SY_BODY_TUBE:
      /* As a product: a thin wall keeps its digits. */
      return PI / 4 * (body->outer - body->inner) * (body->outer + body->inner) * body->height;
    case SY_BODY_PRISM:
      return body->area * body->height;
    case SY_BODY_POINT:
    default:
      return 0;
    }
}

double
sy_body_mass (const SyBody *body)
{
  double mass = body->shape == SY_BODY_POINT ? body->mass : sy_body_volume (body) * body->density;

  return body->cut ? -mass : mass;
}

bool
sy_bodies_sum (const SyBody *bodies, size_t n, double *mass, SyVec3 *cg)
{
  Sum m = { 0, 0 }, x = { 0, 0 }, y = { 0, 0 }, z = { 0, 0 };
  double gross = 0;

  for (size_t i = 0; i < n; i++)
    {
      double each = sy_body_mass (&bodies[i]) * bodies[i].copies;

      for (size_t p = 0; p < bodies[i].n_at; p++)
        {
          SyVec3 at = bodies[i].at[p];

          add (&m, each);
          add (&x, each * at.x);
          add (&y, each * at.y);
          add (&z, each * at.z);
          gross += fabs (each);
        }
    }
  *mass = total (&m);
  if (!(*mass > NOTHING * gross))
    return false;
  *cg = sy_vec3 (total (&x) / *mass, total (&y) / *mass, total (&z) / *mass);
  return true;
}
