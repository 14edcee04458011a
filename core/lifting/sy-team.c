/* SPDX-License-Identifier: MIT */
#include "sy-team.h"

#include <math.h>

#define RADIAN (3.14159265358979323846 / 180)

/* Hands whose width is less than this part of their length stand in one line: no moment about it could be held. */
#define LINE 1e-6
/* A share this little below nothing is nothing: rounding, not tipping. */
#define NOTHING 1e-12
/* Three hands of a plan whose triangle is this flat are two: others of the sets say the same. */
#define FLAT 1e-9

/* The hands in the plan, seen along the longest line between two of them; t along it and w across, each within about 1, so
   that no case is worse conditioned than another. Shares do not change when the plan is stretched either way. */
typedef struct
{
  int n;
  bool line;                  /* no width: w is 0 */
  double t[SY_TEAM_MAX], w[SY_TEAM_MAX];
  double ux, uy;              /* direction of t   */
  double x, y;                /* the middle       */
  double length, width;       /* of one t, one w  */
} Plan;

static void
make_plan (const SyTeam *team, Plan *plan)
{
  *plan = (Plan) { .n = team->n };
  for (int i = 0; i < team->n; i++)
    {
      plan->x += team->x[i] / team->n;
      plan->y += team->y[i] / team->n;
      for (int k = 0; k < i; k++)
        {
          double dx = team->x[i] - team->x[k], dy = team->y[i] - team->y[k], length = sqrt (dx * dx + dy * dy);

          if (!(length > plan->length))
            continue;
          plan->length = length;
          plan->ux = dx / length;
          plan->uy = dy / length;
        }
    }
  for (int i = 0; i < team->n; i++)
    {
      double dx = team->x[i] - plan->x, dy = team->y[i] - plan->y;

      plan->t[i] = (dx * plan->ux + dy * plan->uy) / plan->length;
      plan->w[i] = dy * plan->ux - dx * plan->uy;
      plan->width = fmax (plan->width, fabs (plan->w[i]));
    }
  plan->line = plan->width <= LINE * plan->length;
  for (int i = 0; i < team->n; i++)
    plan->w[i] = plan->line ? 0 : plan->w[i] / plan->width;
}

/* Hands of a set, a bit each, that statics settles: two of a line, three of a plane. False: they have no inside, or the weight
   is not in it. */
static bool
share_settled (const Plan *plan, unsigned set, double t, double w, double shares[SY_TEAM_MAX])
{
  int hand[3] = { 0, 0, 0 }, n = 0;
  double part[3] = { 0, 0, 0 };

  for (int i = 0; i < plan->n; i++)
    if (set & (1u << i) && n < 3)
      hand[n++] = i;
  if (n == 2)
    {
      double apart = plan->t[hand[1]] - plan->t[hand[0]];

      if (apart == 0)
        return false;
      part[0] = (plan->t[hand[1]] - t) / apart;
      part[1] = (t - plan->t[hand[0]]) / apart;
    }
  else
    {
      double whole = 0;

      for (int k = 0; k < 3; k++)
        {
          int a = hand[(k + 1) % 3], b = hand[(k + 2) % 3];

          part[k] = (plan->t[a] - t) * (plan->w[b] - w) - (plan->t[b] - t) * (plan->w[a] - w);
          whole += part[k];
        }
      if (!(fabs (whole) > FLAT))
        return false;
      for (int k = 0; k < 3; k++)
        part[k] /= whole;
    }
  for (int i = 0; i < SY_TEAM_MAX; i++)
    shares[i] = 0;
  for (int k = 0; k < n; k++)
    {
      if (!(part[k] >= -NOTHING))
        return false;
      shares[hand[k]] = fmax (part[k], 0);
    }
  return true;
}

/* Hands that are more than statics settles, all equally stiff: shares rise evenly along t and w (least squares of all). False:
   one of them would have to pull down. */
static bool
share_evenly (const Plan *plan, unsigned set, double t, double w, double shares[SY_TEAM_MAX])
{
  double n = 0, mt = 0, mw = 0, tt = 0, tw = 0, ww = 0;

  for (int i = 0; i < plan->n; i++)
    if (set & (1u << i))
      {
        n += 1;
        mt += plan->t[i];
        mw += plan->w[i];
      }
  mt /= n;
  mw /= n;
  for (int i = 0; i < plan->n; i++)
    if (set & (1u << i))
      {
        tt += (plan->t[i] - mt) * (plan->t[i] - mt);
        tw += (plan->t[i] - mt) * (plan->w[i] - mw);
        ww += (plan->w[i] - mw) * (plan->w[i] - mw);
      }
  if (plan->line)
    ww = 1; /* no width: nothing rises across */
  double det = tt * ww - tw * tw;
  double b = (ww * (t - mt) - tw * (w - mw)) / det, c = (tt * (w - mw) - tw * (t - mt)) / det;

  for (int i = 0; i < SY_TEAM_MAX; i++)
    {
      shares[i] = i < plan->n && set & (1u << i) ? 1 / n + b * (plan->t[i] - mt) + c * (plan->w[i] - mw) : 0;
      if (!(shares[i] >= -NOTHING))
        return false;
      shares[i] = fmax (shares[i], 0);
    }
  return true;
}

static int
count_of (unsigned set)
{
  int n = 0;

  for (; set != 0; set >>= 1)
    n += (int) (set & 1u);
  return n;
}

/* The largest share of each over every set that statics settles; the equal stiffness is the one of least squares of all. */
static void
find_shares (const Plan *plan, double t, double w, SyTeamShares *out)
{
  int settles = plan->line ? 2 : 3;
  double least = (double) INFINITY;

  out->balanced = false;
  out->settled = plan->n <= settles;
  for (int i = 0; i < SY_TEAM_MAX; i++)
    out->worst[i] = out->elastic[i] = 0;
  for (unsigned set = 1; set < 1u << plan->n; set++)
    {
      double shares[SY_TEAM_MAX], squares = 0;
      int n = count_of (set);

      if (n < settles
          || !(n == settles ? share_settled (plan, set, t, w, shares) : share_evenly (plan, set, t, w, shares)))
        continue;
      for (int i = 0; i < plan->n; i++)
        {
          squares += shares[i] * shares[i];
          if (n == settles)
            out->worst[i] = fmax (out->worst[i], shares[i]);
        }
      out->balanced = out->balanced || n == settles;
      if (squares < least)
        {
          least = squares;
          for (int i = 0; i < plan->n; i++)
            out->elastic[i] = shares[i];
        }
    }
}

/* How much higher the hands get in the plan, by a unit along x and along y: the plane nearest to them. */
static void
find_gradient (const SyTeam *team, const Plan *plan, double gradient[2])
{
  double mean = 0, tt = 0, tw = 0, ww = 0, th = 0, wh = 0;

  for (int i = 0; i < plan->n; i++)
    mean += team->height[i] / plan->n;
  for (int i = 0; i < plan->n; i++)
    {
      double h = team->height[i] - mean;

      tt += plan->t[i] * plan->t[i];
      tw += plan->t[i] * plan->w[i];
      ww += plan->w[i] * plan->w[i];
      th += plan->t[i] * h;
      wh += plan->w[i] * h;
    }
  if (plan->line)
    ww = 1;
  double det = tt * ww - tw * tw;
  double along = (ww * th - tw * wh) / det / plan->length;
  double across = plan->line ? 0 : (tt * wh - tw * th) / det / plan->width;

  gradient[0] = along * plan->ux - across * plan->uy;
  gradient[1] = along * plan->uy + across * plan->ux;
}

/* Upright in the coordinates of the load, whose hands lie in the plane z = 0. False: it cannot lie so. */
static bool
find_up (const SyTeam *team, const Plan *plan, double up[3])
{
  double c = cos (team->slope_deg * RADIAN), s = sin (team->slope_deg * RADIAN);
  double gradient[2], normal[3], square = 1;

  find_gradient (team, plan, gradient);
  /* Square to the ground: hands a height h over it are h cos s away from its plane. */
  for (int i = 0; i < 2; i++)
    {
      normal[i] = gradient[i] * c;
      square -= normal[i] * normal[i];
    }
  if (!(square > 0))
    return false;
  normal[2] = sqrt (square);
  for (int i = 0; i < 3; i++)
    up[i] = normal[i] * c;
  if (s > 0)
    {
      /* Uphill in the ground: what the given direction is in that plane. */
      double length = sqrt (team->uphill[0] * team->uphill[0] + team->uphill[1] * team->uphill[1]);
      double x = team->uphill[0] / length, y = team->uphill[1] / length, through = x * normal[0] + y * normal[1];
      double rest = sqrt (fmax (0, 1 - through * through));

      up[0] += s * (x - through * normal[0]) / rest;
      up[1] += s * (y - through * normal[1]) / rest;
      up[2] -= s * through * normal[2] / rest;
    }
  return up[2] > 0;
}

bool
sy_team_shares (const SyTeam *team, SyTeamShares *out)
{
  Plan plan;
  double up[3];

  make_plan (team, &plan);
  if (!find_up (team, &plan, up))
    return false;
  double dx = team->cg[0] - team->cg[2] * up[0] / up[2] - plan.x, dy = team->cg[1] - team->cg[2] * up[1] / up[2] - plan.y;
  double t = (dx * plan.ux + dy * plan.uy) / plan.length, across = dy * plan.ux - dx * plan.uy;

  out->beside = plan.line ? fabs (across) : 0;
  out->tilt_deg = atan2 (sqrt (up[0] * up[0] + up[1] * up[1]), up[2]) / RADIAN;
  find_shares (&plan, t, plan.line ? 0 : across / plan.width, out);
  return true;
}

double
sy_team_own_limit (const SyLiftPosition *at, const SyLiftPace *pace, SyUnits units)
{
  SyLiftPosition upper = *at;
  SyLiftEnd low, high;

  upper.height += pace->travel;
  sy_lift_end (at, pace, 1, units, &low);
  sy_lift_end (&upper, pace, 1, units, &high);
  return fmin (low.mr, high.mr);
}

double
sy_team_rule (int persons)
{
  return persons == 2 ? 2.0 / 3 : persons == 3 ? 0.5 : (double) NAN;
}
