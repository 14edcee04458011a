/* SPDX-License-Identifier: MIT */
#include "sy-rig-case.h"

#include "sy-mass-basis.h"

double
sy_rig_force (double mass, SyUnits units)
{
  return units == SY_UNITS_US ? mass : mass * SY_GRAVITY / 1000;
}

static void
weigh (const SyRigFacts *facts, const SyContext *context, SyRigCase *out)
{
  out->allowance = sy_mass_allowance (&facts->allowance_percent, facts->mass_basis, context);
  out->dynamic_assumed = !facts->dynamic_factor.given;
  out->dynamic = facts->dynamic_factor.given ? facts->dynamic_factor.value : 1;
  out->mass = facts->mass.value * (1 + out->allowance / 100) * out->dynamic;
}

static double
highest_point (const SyRigCase *rig)
{
  double highest = rig->at[0].at.z;

  for (int i = 1; i < rig->n; i++)
    highest = fmax (highest, rig->at[i].at.z);
  return highest;
}

/* A load on one or two points hangs with its centre under them: what a tape cannot tell from that is taken as it. The same
   1 mm as for the hook; common practice, no source. */
static SyVec3
draw_under_points (const SyRigCase *rig, SyVec3 cg)
{
  double allowed = sy_unit_convert (SY_KIND_LENGTH, 1, SY_UNITS_METRIC, rig->units);
  SyVec3 a = rig->at[0].at, b = rig->n == 2 ? rig->at[1].at : a;
  double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  double along = square > 0 ? ((cg.x - a.x) * dx + (cg.y - a.y) * dy) / square : 0;
  SyVec3 under = sy_vec3 (a.x + along * dx, a.y + along * dy, cg.z);

  return rig->n <= 2 && sy_vec3_length (sy_vec3_sub (cg, under)) <= allowed * (1 + 1e-9) ? under : cg;
}

void
sy_rig_case (const SyRigFacts *facts, const SyContext *context, SyRigCase *out)
{
  const SyRigLeg *legs = facts->legs.items;
  SyVec3 cg = sy_vector_vec3 (&facts->cg);
  bool basket = false, lengths = true;

  out->units = context->units;
  out->level = facts->hook_given;
  out->n = 0;
  weigh (facts, context, out);
  for (size_t i = 0; i < facts->legs.count; i++)
    {
      const char *const *labels = legs[i].point.items;

      basket = basket || legs[i].hitch == SY_HITCH_BASKET || legs[i].point.count > 1;
      lengths = lengths && legs[i].length.given;
      for (size_t k = 0; k < legs[i].point.count; k++)
        {
          const SyRigPoint *point = sy_rig_point (facts, labels[k]);
          out->parts[out->n] = (SyRigPart) { &legs[i], i, point };
          out->at[out->n] = (SyPart) { sy_vector_vec3 (&point->at), legs[i].length.value };
          out->n++;
        }
    }
  out->free_basket = !out->level && basket;
  out->hangs = out->level || (!basket && lengths);
  if (out->level)
    {
      /* Over the centre of gravity: the check allows no more than a tape can tell from it. */
      cg = draw_under_points (out, cg);
      SyVec3 hook = sy_vec3 (cg.x, cg.y, facts->hook.at.given ? facts->hook.at.at[2]
                                                              : highest_point (out) + facts->hook.above.value);
      sy_hang_level (out->at, out->n, cg, hook, &out->hang);
    }
  else if (out->hangs)
    {
      double longest = 0;
      for (int i = 0; i < out->n; i++)
        longest = fmax (longest, out->at[i].length);
      sy_hang_free (out->at, out->n, cg, SY_RIG_MATCHED * longest, &out->hang);
      /* A place in which it would have turned over on its way is none to lift it to. */
      if (out->hang.status == SY_HANG_BALANCED && out->hang.tilt_deg >= 90)
        out->hang.status = SY_HANG_TIPS;
    }
}

double
sy_rig_part_length (const SyRigCase *rig, int part)
{
  return sy_vec3_length (sy_vec3_sub (rig->hang.hook, rig->at[part].at));
}
