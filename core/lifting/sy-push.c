/* SPDX-License-Identifier: MIT */
#include "sy-push.h"

#include <math.h>

#define RADIAN (3.14159265358979323846 / 180)
#define NONE ((double) NAN)
#define SLACK 1e-9

#define AL_EISAWI "Al-Eisawi and others 1999, Applied Ergonomics 30:235"
#define HSE "HSE, assessing pushing and pulling: 2 % of the weight at least"
#define HSE_UNEVEN "HSE, assessing pushing and pulling: up to 10 % of the weight on soft or uneven ground"
#define TEACHING "physics teaching page on rolling friction"
#define TRADE "trade figures, from memory"
#define HSE_TRADE HSE "; that these wheels take no more: " TRADE

void
sy_push_needs (const SyPushLoad *load, SyPushNeeds *out)
{
  double c = cos (load->slope_deg * RADIAN), s = sin (load->slope_deg * RADIAN), along = load->downhill ? -s : s;
  double w = load->weight, initial = w * (load->start * c + along + load->acceleration);
  double sustained = w * (load->keep * c + along);

  out->initial = initial < 0 ? 0 : initial;
  out->sustained = sustained < 0 ? 0 : sustained;
  out->hold = w * s;
  out->stop = w * (s + load->deceleration);
}

bool
sy_push_runs_away (double slope_deg, double least)
{
  return sin (slope_deg * RADIAN) > least * cos (slope_deg * RADIAN);
}

/* A lever arm in mm, or where there is none a coefficient; both NAN: no figure. */
typedef struct
{
  double arm, coefficient;
  bool from_memory;
  const char *source;
} Published;

static Published
published (int tread, int ground)
{
  static const double rubber_arms[] = { 2.2, 2.4, 3.3, 4.5 };
  bool is_hard = ground < 0 || ground == SY_GROUND_CONCRETE || ground == SY_GROUND_TILE;

  switch (tread)
    {
    case SY_TREAD_HARD_RUBBER:
      return (Published) { rubber_arms[ground < 0 || ground > SY_GROUND_CARPET ? 0 : ground], NONE, false, AL_EISAWI };
    case SY_TREAD_RUBBER:
      return (Published) { NONE, is_hard ? 0.02 : NONE, false, TEACHING };
    case SY_TREAD_POLYURETHANE:
      return (Published) { is_hard ? 1.5 : NONE, is_hard ? 0.03 : NONE, true, TRADE };
    case SY_TREAD_STEEL:
      return (Published) { is_hard ? 0.5 : NONE, NONE, true, TRADE };
    case SY_TREAD_STEEL_ON_RAIL:
      return (Published) { NONE, 0.003, false, TEACHING };
    default:
      return (Published) { NONE, SY_PUSH_LEAST_ROLLING, false, HSE };
    }
}

/* The lowest that is published for each kind; hard rubber as rubber, a steel wheel as on a rail. */
static double
least_of (int tread)
{
  switch (tread)
    {
    case SY_TREAD_HARD_RUBBER:
    case SY_TREAD_RUBBER:
    case SY_TREAD_POLYURETHANE:
      return 0.01;
    case SY_TREAD_STEEL:
    case SY_TREAD_STEEL_ON_RAIL:
      return 0.001;
    default:
      return 0;
    }
}

SyRollingFigure
sy_push_rolling (int tread, int ground, double diameter_mm)
{
  Published p = published (tread, ground);
  bool by_arm = !isnan (p.arm) && !isnan (diameter_mm), is_uneven = ground == SY_GROUND_UNEVEN;
  double floor_value = is_uneven ? SY_PUSH_UNEVEN_ROLLING : SY_PUSH_LEAST_ROLLING;
  double value = by_arm ? 2 * p.arm / diameter_mm : p.coefficient;
  SyRollingFigure out = {
    .least = least_of (tread), .from_memory = p.from_memory, .source = p.source,
    /* The lever arms of hard rubber were measured from standstill: they are of the start already. */
    .start_factor = tread == SY_TREAD_HARD_RUBBER && !is_uneven ? 1 : SY_PUSH_START_FACTOR,
    .best_mm = is_uneven ? NONE : 2 * p.arm / SY_PUSH_LEAST_ROLLING,
    .needs_diameter = isnan (value) && !isnan (p.arm) && !is_uneven,
  };

  /* On soft or uneven ground the part of the weight goes for any wheel. */
  out.coefficient = isnan (value) && !is_uneven ? NONE : fmax (floor_value, value);
  if (is_uneven || value < floor_value)
    {
      /* The least that any wheel takes does not say that this one takes no more. */
      out.from_memory = out.from_memory && !is_uneven;
      out.source = is_uneven ? HSE_UNEVEN : out.from_memory ? HSE_TRADE : HSE;
    }
  return out;
}

SySlideFigure
sy_push_sliding (SySlideSurface surface)
{
  static const SySlideFigure figures[SY_N_SLIDE_SURFACES] = {
    [SY_SLIDE_STEEL_DRY] = { 0.78, 0.57, 0.42, true,
      "Kirk-Othmer as quoted (second-hand): 0.78 at the start; mild steel sliding 0.57 from memory" },
    [SY_SLIDE_STEEL_GREASED] = { 0.23, 0.19, 0.029, true,
      "Kirk-Othmer as quoted (second-hand): 0.23 at the start; greasy sliding 0.19 from memory" },
    [SY_SLIDE_ROLLERS] = { 0.05 * SY_PUSH_START_FACTOR, 0.05, 0.01, true,
      "ball or roller lifters on a bolster, from memory" },
  };

  return figures[surface];
}

double
sy_push_kgf (double force, SyUnits units)
{
  return units == SY_UNITS_US ? force * SY_KG_PER_LB : force / SY_GRAVITY;
}

double
sy_push_of_kgf (double kgf, SyUnits units)
{
  return units == SY_UNITS_US ? kgf / SY_KG_PER_LB : kgf * SY_GRAVITY;
}

SyPushGuide
sy_push_guideline (SyPushWho who, SyUnits units)
{
  bool men = who == SY_WHO_MEN;

  return (SyPushGuide) { sy_push_of_kgf (men ? 20 : 15, units), sy_push_of_kgf (men ? 10 : 7, units) };
}

bool
sy_push_guideline_covers (const SyPushTask *task)
{
  return task->height_cm >= SY_PUSH_KNUCKLE_CM - SLACK && task->height_cm <= SY_PUSH_SHOULDER_CM + SLACK
         && task->distance_m <= SY_PUSH_GUIDE_M + SLACK;
}

SyPushGuide
sy_push_critical (SyPushWho who, SyUnits units)
{
  bool men = who == SY_WHO_MEN;
  double newton = units == SY_UNITS_US ? 1 / (SY_KG_PER_LB * SY_GRAVITY) : 1;

  return (SyPushGuide) { (men ? 360 : 240) * newton, (men ? 250 : 150) * newton };
}

double
sy_push_limit (const SyPushTask *task, SyPushWho who, SyPushForce force, int percent, SyUnits units)
{
  double women = sy_push_accepted (task, SY_HANDS_WOMEN, force, percent);
  double men = sy_push_accepted (task, SY_HANDS_MEN, force, percent);
  double both = isnan (women) || isnan (men) ? NONE : fmin (women, men);
  double kgf = who == SY_WHO_WOMEN ? women : who == SY_WHO_MEN ? men : both;

  return sy_push_of_kgf (kgf, units);
}
