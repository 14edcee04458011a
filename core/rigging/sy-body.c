/* SPDX-License-Identifier: MIT */
#include "sy-body.h"

#define PI 3.14159265358979323846
/* Of what was added and cut together: less is rounding. */
#define NOTHING 1e-12

/* Adds to a sum that keeps what rounding drops. */
static void
add (double sum[2], double value)
{
  double next = sum[0] + value;

  if (fabs (sum[0]) >= fabs (value))
    sum[1] += (sum[0] - next) + value;
  else
    sum[1] += (value - next) + sum[0];
  sum[0] = next;
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

void
sy_body_sum_add (SyBodySum *sum, const SyBody *body)
{
  double each = sy_body_mass (body) * body->copies;

  for (size_t p = 0; p < body->n_at; p++)
    {
      const double at[3] = { body->at[p].x, body->at[p].y, body->at[p].z };

      add (sum->mass, each);
      for (int i = 0; i < 3; i++)
        add (sum->moment[i], each * at[i]);
      sum->gross += fabs (each);
    }
}

bool
sy_body_sum_end (const SyBodySum *sum, double *mass, SyVec3 *cg)
{
  double m = sum->mass[0] + sum->mass[1], centre[3];

  *mass = m;
  if (!(m > NOTHING * sum->gross) || !isfinite (m))
    return false;
  for (int i = 0; i < 3; i++)
    centre[i] = (sum->moment[i][0] + sum->moment[i][1]) / m;
  *cg = sy_vec3 (centre[0], centre[1], centre[2]);
  return true;
}
