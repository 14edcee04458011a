/* SPDX-License-Identifier: MIT */
#include "sy-hang-private.h"

#define AT_SAME_PLACE 1e-9 /* of a length compared */

void
sy_hang_clear (SyHang *out, int n)
{
  static const SyHang empty = { .status = SY_HANG_NO_MEET };

  *out = empty;
  out->n = n;
  out->hook = out->up = sy_vec3 (NAN, NAN, NAN);
  out->tilt_deg = out->height = out->residual = out->margin = out->skew = NAN;
  for (int i = 0; i < SY_PARTS_MAX; i++)
    {
      out->angle_deg[i] = out->factor[i] = out->worst[i] = out->elastic[i] = NAN;
      out->slack_by[i] = out->skew_change[i] = NAN;
    }
}

void
sy_hang_take_share (SyHang *out, const SyShare *share, const int *index, int n)
{
  for (int i = 0; i < out->n; i++)
    out->worst[i] = out->elastic[i] = out->skew_change[i] = 0;
  for (int i = 0; i < n; i++)
    {
      out->worst[index[i]] = share->worst[i];
      out->elastic[index[i]] = share->elastic[i];
      out->skew_change[index[i]] = share->skew_change[i];
    }
  out->determinate = share->determinate;
  out->residual = share->residual;
  out->skew = share->skew;
}

void
sy_hang_level (const SyPart *parts, int n, SyVec3 cg, SyVec3 hook, SyHang *out)
{
  static const int index[SY_PARTS_MAX] = { 0, 1, 2, 3, 4, 5, 6, 7 };
  SyVec3 u[SY_PARTS_MAX], at[SY_PARTS_MAX];
  double length[SY_PARTS_MAX], longest = 0;
  bool above_all = true;
  SyShare share;

  if (n < 1 || n > SY_PARTS_MAX)
    {
      sy_hang_clear (out, 0);
      return;
    }
  sy_hang_clear (out, n);
  out->hook = hook;
  out->up = sy_vec3 (0, 0, 1);
  out->tilt_deg = 0;
  out->height = hook.z - cg.z;
  for (int i = 0; i < n; i++)
    {
      SyVec3 leg = sy_vec3_sub (hook, parts[i].at);

      at[i] = parts[i].at;
      length[i] = sy_vec3_length (leg);
      longest = fmax (longest, length[i]);
      u[i] = sy_vec3_scale (leg, 1 / length[i]);
      out->angle_deg[i] = sy_hang_angle_deg (leg, out->up);
      out->factor[i] = sy_hang_factor (out->angle_deg[i], length[i], leg.z);
      out->slack_by[i] = 0;
      above_all = above_all && out->angle_deg[i] < 90 && length[i] > 0;
    }
  out->margin = sy_hang_margin (at, n, cg, hook, out->up);
  if (!above_all)
    return;
  sy_hang_share (u, length, n, out->up, &share);
  /* The second: a hook that is not quite over the centre must not carry it from outside. */
  if (!share.balanced || out->margin < -AT_SAME_PLACE * longest)
    {
      out->status = SY_HANG_OUTSIDE;
      return;
    }
  sy_hang_take_share (out, &share, index, n);
  for (int i = 0; i < n; i++)
    out->slack[i] = !(out->worst[i] > 0);
  if (out->height <= AT_SAME_PLACE * longest || out->height < share.depth * (1 - AT_SAME_PLACE))
    out->status = SY_HANG_TIPS;
  else
    out->status = SY_HANG_BALANCED;
}

double
sy_hang_skew_error (const SyHang *hang, double weight, double stiffness)
{
  double least = INFINITY;

  if (hang->status != SY_HANG_BALANCED && hang->status != SY_HANG_TIPS)
    return NAN;
  if (hang->determinate)
    return INFINITY;
  for (int i = 0; i < hang->n; i++)
    if (fabs (hang->skew_change[i]) > AT_SAME_PLACE)
      least = fmin (least, hang->elastic[i] / fabs (hang->skew_change[i]));
  return least * weight / stiffness;
}
