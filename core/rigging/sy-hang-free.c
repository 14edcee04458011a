/* SPDX-License-Identifier: MIT */
#include "sy-hang-private.h"

#define TOUCHES 1e-9  /* of its length: a leg with no more than this to spare is at its length */
#define ROUNDING 1e-12 /* of the largest measure of the set */

/* Everything seen from the centre of gravity: the hook is the place farthest from it that the legs allow. */
typedef struct
{
  int n;
  SyVec3 p[SY_PARTS_MAX];
  double length[SY_PARTS_MAX];
  double spare[SY_PARTS_MAX]; /* what counts as touching */
  double scale;
  bool found;
  SyVec3 hook, up;
  double height, tilt;
} Search;

/* Directions and lengths of the parts with nothing, or no more than @possible, to spare at @x. */
static int
holding (const Search *s, SyVec3 x, double possible, SyVec3 *u, double *length, int *index)
{
  int n = 0;

  for (int i = 0; i < s->n; i++)
    {
      SyVec3 leg = sy_vec3_sub (x, s->p[i]);
      double reach = sy_vec3_length (leg);

      if (!(s->length[i] - reach <= fmax (s->spare[i], possible)) || !(reach > 0))
        continue;
      u[n] = sy_vec3_scale (leg, 1 / reach);
      length[n] = reach;
      index[n++] = i;
    }
  return n;
}

/* Keeps @x if the legs allow it, their pulls balance the load there, it does not turn over from there at a touch, and
   the load is turned less than at the place kept; between equal turns the lower load. */
static void
consider (Search *s, SyVec3 x)
{
  SyVec3 u[SY_PARTS_MAX], up;
  double length[SY_PARTS_MAX], height = sy_vec3_length (x), tilt;
  int index[SY_PARTS_MAX], n;
  SyShare share;

  for (int i = 0; i < s->n; i++)
    if (!(sy_vec3_length (sy_vec3_sub (x, s->p[i])) <= s->length[i] + s->spare[i]))
      return;
  if (!(height > TOUCHES * s->scale))
    return;
  up = sy_vec3_scale (x, 1 / height);
  tilt = sy_hang_angle_deg (up, sy_vec3 (0, 0, 1));
  if (s->found && (tilt > s->tilt + TOUCHES || (tilt >= s->tilt - TOUCHES && height <= s->height * (1 + TOUCHES))))
    return;
  n = holding (s, x, 0, u, length, index);
  sy_hang_share (u, length, n, up, &share);
  if (!share.balanced || height < share.depth * (1 - TOUCHES))
    return;
  s->found = true;
  s->hook = x;
  s->up = up;
  s->height = height;
  s->tilt = tilt;
}

/* One leg: straight over the centre and the point. */
static void
consider_one (Search *s, int i)
{
  double far = sy_vec3_length (s->p[i]);

  if (far > ROUNDING * s->scale)
    consider (s, sy_vec3_scale (s->p[i], 1 + s->length[i] / far));
  else
    consider (s, sy_vec3_add (s->p[i], sy_vec3 (0, 0, s->length[i])));
}

/* Two legs: of the circle on which both are at their length the place farthest from the centre; of a centre on the
   circle's axis all are as far, and the one nearest to upright is taken. */
static void
consider_two (Search *s, int i, int j)
{
  SyVec3 axis = sy_vec3_sub (s->p[j], s->p[i]), middle, away;
  double apart = sy_vec3_length (axis), along, square, far;

  if (!(apart > TOUCHES * s->scale))
    return;
  axis = sy_vec3_scale (axis, 1 / apart);
  along = (apart + (s->length[i] - s->length[j]) * (s->length[i] + s->length[j]) / apart) / 2;
  square = (s->length[i] - along) * (s->length[i] + along);
  if (square < -TOUCHES * s->scale * s->scale)
    return;
  middle = sy_vec3_add (s->p[i], sy_vec3_scale (axis, along));
  away = sy_vec3_sub (middle, sy_vec3_scale (axis, sy_vec3_dot (axis, middle)));
  if (!(sy_vec3_length (away) > TOUCHES * s->scale))
    away = sy_vec3_sub (sy_vec3 (0, 0, 1), sy_vec3_scale (axis, axis.z));
  if (!(sy_vec3_length (away) > TOUCHES))
    away = sy_vec3 (1, 0, 0);
  far = sy_vec3_length (away);
  consider (s, sy_vec3_add (middle, sy_vec3_scale (away, sqrt (fmax (square, 0)) / far)));
}

/* Three legs: the two places where all are at their length, one on each side of the plane of the points. */
static void
consider_three (Search *s, int i, int j, int k)
{
  SyVec3 a = sy_vec3_sub (s->p[j], s->p[i]), b = sy_vec3_sub (s->p[k], s->p[i]), normal, north, foot;
  double a_long = sy_vec3_length (a), b_east, b_north, east, up, square;

  if (!(a_long > TOUCHES * s->scale))
    return;
  a = sy_vec3_scale (a, 1 / a_long);
  b_east = sy_vec3_dot (a, b);
  north = sy_vec3_sub (b, sy_vec3_scale (a, b_east));
  b_north = sy_vec3_length (north);
  if (!(b_north > TOUCHES * s->scale))
    return;
  north = sy_vec3_scale (north, 1 / b_north);
  normal = sy_vec3_cross (a, north);
  east = (a_long + (s->length[i] - s->length[j]) * (s->length[i] + s->length[j]) / a_long) / 2;
  up = ((s->length[i] - s->length[k]) * (s->length[i] + s->length[k]) + b_east * (b_east - 2 * east)) / b_north;
  up = (up + b_north) / 2;
  square = s->length[i] * s->length[i] - east * east - up * up;
  if (square < -TOUCHES * s->scale * s->scale)
    return;
  foot = sy_vec3_add (s->p[i], sy_vec3_add (sy_vec3_scale (a, east), sy_vec3_scale (north, up)));
  for (int side = -1; side <= 1; side += 2)
    consider (s, sy_vec3_add (foot, sy_vec3_scale (normal, side * sqrt (fmax (square, 0)))));
}

/* The place the legs allow, or false where there is none. */
static bool
search (Search *s)
{
  for (int i = 0; i < s->n; i++)
    {
      consider_one (s, i);
      for (int j = i + 1; j < s->n; j++)
        {
          consider_two (s, i, j);
          for (int k = j + 1; k < s->n; k++)
            consider_three (s, i, j, k);
        }
    }
  return s->found;
}

void
sy_hang_free (const SyPart *parts, int n, SyVec3 cg, double possible, SyHang *out)
{
  Search s = { .n = n };
  SyVec3 u[SY_PARTS_MAX], at[SY_PARTS_MAX];
  double length[SY_PARTS_MAX];
  int index[SY_PARTS_MAX], n_holding;
  SyShare share;

  if (n < 1 || n > SY_PARTS_MAX)
    {
      sy_hang_clear (out, 0);
      return;
    }
  sy_hang_clear (out, n);
  for (int i = 0; i < n; i++)
    {
      s.p[i] = sy_vec3_sub (parts[i].at, cg);
      s.length[i] = parts[i].length;
      s.scale = fmax (s.scale, fmax (s.length[i], sy_vec3_length (s.p[i])));
    }
  for (int i = 0; i < n; i++)
    s.spare[i] = TOUCHES * s.length[i] + ROUNDING * s.scale;
  if (!search (&s))
    return;
  n_holding = holding (&s, s.hook, possible, u, length, index);
  sy_hang_share (u, length, n_holding, s.up, &share);
  if (!share.balanced)
    return;
  out->status = SY_HANG_BALANCED;
  out->hook = sy_vec3_add (s.hook, cg);
  out->up = s.up;
  out->tilt_deg = s.tilt;
  out->height = s.height;
  for (int i = 0; i < n; i++)
    {
      SyVec3 leg = sy_vec3_sub (s.hook, s.p[i]);
      double reach = sy_vec3_length (leg), spare = s.length[i] - reach;

      out->angle_deg[i] = sy_hang_angle_deg (leg, s.up);
      out->factor[i] = sy_hang_factor (out->angle_deg[i], reach, sy_vec3_dot (leg, s.up));
      out->slack_by[i] = spare <= s.spare[i] ? 0 : spare;
      out->slack[i] = out->slack_by[i] > 0;
    }
  sy_hang_take_share (out, &share, index, n_holding);
  for (int i = 0; i < n_holding; i++)
    at[i] = parts[index[i]].at;
  out->margin = sy_hang_margin (at, n_holding, cg, out->hook, s.up);
}
