/* SPDX-License-Identifier: MIT */
#include "sy-units.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *name;
  double per_metric; /* to the kind's metric unit */
} Unit;

/* Factors are exact by definition: lb and oz by the 1959 agreement (1 oz = 1/16 lb), in = 2.54 cm. */
static const Unit mass_units[] = {
  { "kg", 1 }, { "g", 0.001 }, { "t", 1000 }, { "lb", SY_KG_PER_LB }, { "lbs", SY_KG_PER_LB },
  { "oz", SY_KG_PER_LB / 16 },
};
static const Unit reach_units[] = {
  { "cm", 1 }, { "mm", 0.1 }, { "m", 100 }, { "in", SY_CM_PER_IN }, { "\"", SY_CM_PER_IN },
  { "\xe2\x80\xb3", SY_CM_PER_IN }, { "ft", 12 * SY_CM_PER_IN },
};
static const Unit angle_units[] = {
  { "deg", 1 }, { "\xc2\xb0", 1 }, { "degrees", 1 }, { "degree", 1 },
};
static const Unit minute_units[] = {
  { "min", 1 }, { "h", 60 }, { "s", 1.0 / 60 }, { "minutes", 1 }, { "hours", 60 }, { "hour", 60 },
};
static const Unit frequency_units[] = {
  { "/min", 1 }, { "1/min", 1 }, { "lifts/min", 1 }, { "per min", 1 },
  { "/h", 1.0 / 60 }, { "1/h", 1.0 / 60 }, { "lifts/h", 1.0 / 60 }, { "per h", 1.0 / 60 },
  { "/8h", 1.0 / 480 }, { "1/8h", 1.0 / 480 }, { "lifts/8h", 1.0 / 480 }, { "per 8h", 1.0 / 480 },
};
static const Unit percent_units[] = { { "%", 1 } };
static const Unit length_units[] = {
  { "mm", 1 }, { "cm", 10 }, { "m", 1000 }, { "in", SY_MM_PER_IN }, { "\"", SY_MM_PER_IN },
  { "\xe2\x80\xb3", SY_MM_PER_IN }, { "ft", 304.8 },
};
/* lbf = lb × g. */
#define KN_PER_LBF (SY_KG_PER_LB * SY_GRAVITY / 1000)
static const Unit force_units[] = {
  { "kN", 1 }, { "N", 0.001 }, { "lbf", KN_PER_LBF }, { "kgf", SY_GRAVITY / 1000 },
};
static const Unit hand_force_units[] = {
  { "N", 1 }, { "kN", 1000 }, { "lbf", SY_KG_PER_LB * SY_GRAVITY }, { "kgf", SY_GRAVITY },
};
#define KG_M3_PER_LB_IN3 (SY_KG_PER_LB / (0.0254 * 0.0254 * 0.0254))
static const Unit density_units[] = {
  { "kg/m3", 1 }, { "kg/m\xc2\xb3", 1 }, { "g/cm3", 1000 }, { "g/cm\xc2\xb3", 1000 },
  { "lb/in3", KG_M3_PER_LB_IN3 }, { "lb/in\xc2\xb3", KG_M3_PER_LB_IN3 },
  { "lb/ft3", KG_M3_PER_LB_IN3 / 1728 }, { "lb/ft\xc2\xb3", KG_M3_PER_LB_IN3 / 1728 },
};
static const Unit area_units[] = {
  { "mm2", 1 }, { "mm\xc2\xb2", 1 }, { "cm2", 100 }, { "cm\xc2\xb2", 100 },
  { "in2", SY_MM_PER_IN * SY_MM_PER_IN }, { "in\xc2\xb2", SY_MM_PER_IN * SY_MM_PER_IN },
};
/* Their zeros differ: see sy_unit_read. */
static const Unit temperature_units[] = {
  { "degC", 1 }, { "\xc2\xb0" "C", 1 }, { "C", 1 }, { "degF", 0 }, { "\xc2\xb0" "F", 0 }, { "F", 0 },
};
static const Unit stiffness_units[] = {
  { "kN/mm", 1 }, { "N/mm", 0.001 }, { "lbf/in", KN_PER_LBF / SY_MM_PER_IN },
};
/* "%" is rise over run: see sy_unit_read. */
static const Unit slope_units[] = {
  { "deg", 1 }, { "\xc2\xb0", 1 }, { "degrees", 1 }, { "degree", 1 }, { "%", 0 },
};

static const Unit distance_units[] = {
  { "m", 1 }, { "cm", 0.01 }, { "mm", 0.001 }, { "ft", 0.3048 }, { "in", SY_CM_PER_IN / 100 }, { "yd", 0.9144 },
};

#define UNITS(array) { array, sizeof (array) / sizeof ((array)[0]) }
typedef struct
{
  const Unit *units;
  size_t n;
} UnitTable;

static const UnitTable tables[SY_N_KINDS] = {
  [SY_KIND_MASS] = UNITS (mass_units),
  [SY_KIND_REACH] = UNITS (reach_units),
  [SY_KIND_ANGLE] = UNITS (angle_units),
  [SY_KIND_MINUTES] = UNITS (minute_units),
  [SY_KIND_FREQUENCY] = UNITS (frequency_units),
  [SY_KIND_PERCENT] = UNITS (percent_units),
  [SY_KIND_LENGTH] = UNITS (length_units),
  [SY_KIND_FORCE] = UNITS (force_units),
  [SY_KIND_HAND_FORCE] = UNITS (hand_force_units),
  [SY_KIND_DENSITY] = UNITS (density_units),
  [SY_KIND_AREA] = UNITS (area_units),
  [SY_KIND_TEMPERATURE] = UNITS (temperature_units),
  [SY_KIND_STIFFNESS] = UNITS (stiffness_units),
  [SY_KIND_SLOPE] = UNITS (slope_units),
  [SY_KIND_DISTANCE] = UNITS (distance_units),
};

static const char *const names[SY_N_KINDS][SY_N_UNITS] = {
  [SY_KIND_RATIO] = { "1", "1" },       [SY_KIND_MASS] = { "kg", "lb" },
  [SY_KIND_REACH] = { "cm", "in" },     [SY_KIND_ANGLE] = { "deg", "deg" },
  [SY_KIND_MINUTES] = { "min", "min" }, [SY_KIND_FREQUENCY] = { "1/min", "1/min" },
  [SY_KIND_COUNT] = { "1", "1" },       [SY_KIND_PERCENT] = { "%", "%" },
  [SY_KIND_LENGTH] = { "mm", "in" },    [SY_KIND_FORCE] = { "kN", "lbf" },
  [SY_KIND_HAND_FORCE] = { "N", "lbf" }, [SY_KIND_DENSITY] = { "kg/m3", "lb/in3" },
  [SY_KIND_AREA] = { "mm2", "in2" },    [SY_KIND_TEMPERATURE] = { "degC", "degF" },
  [SY_KIND_STIFFNESS] = { "kN/mm", "lbf/in" }, [SY_KIND_SLOPE] = { "deg", "deg" },
  [SY_KIND_DATE] = { "date", "date" }, [SY_KIND_DISTANCE] = { "m", "ft" },
  [SY_KIND_MONEY] = { "1", "1" },
};

static const char *const lists[SY_N_KINDS] = {
  [SY_KIND_RATIO] = "",
  [SY_KIND_MASS] = "kg, g, t, lb, oz",
  [SY_KIND_REACH] = "cm, mm, m, in, ft",
  [SY_KIND_ANGLE] = "deg, \xc2\xb0",
  [SY_KIND_MINUTES] = "min, h, s",
  [SY_KIND_FREQUENCY] = "/min, /h, /8h",
  [SY_KIND_COUNT] = "",
  [SY_KIND_PERCENT] = "%",
  [SY_KIND_LENGTH] = "mm, cm, m, in, ft",
  [SY_KIND_FORCE] = "kN, N, lbf, kgf",
  [SY_KIND_HAND_FORCE] = "N, kN, lbf, kgf",
  [SY_KIND_DENSITY] = "kg/m3, g/cm3, lb/in3, lb/ft3",
  [SY_KIND_AREA] = "mm2, cm2, in2",
  [SY_KIND_TEMPERATURE] = "degC, degF, \xc2\xb0" "C, \xc2\xb0" "F",
  [SY_KIND_STIFFNESS] = "kN/mm, N/mm, lbf/in",
  [SY_KIND_SLOPE] = "deg, \xc2\xb0, %",
  [SY_KIND_DATE] = "",
  [SY_KIND_DISTANCE] = "m, cm, mm, ft, in, yd",
  [SY_KIND_MONEY] = "",
};

const char *
sy_unit_name (SyKind kind, SyUnits units)
{
  return names[kind][units];
}

const char *
sy_units_id (SyUnits units)
{
  return units == SY_UNITS_US ? "us" : "metric";
}

bool
sy_units_from_id (const char *id, SyUnits *units)
{
  if (strcmp (id, "metric") == 0)
    *units = SY_UNITS_METRIC;
  else if (strcmp (id, "us") == 0)
    *units = SY_UNITS_US;
  else
    return false;
  return true;
}

/* The unit of the US system in that of the metric one; 0: they are the same. */
static const double us_in_metric[SY_N_KINDS] = {
  [SY_KIND_MASS] = SY_KG_PER_LB,
  [SY_KIND_REACH] = SY_CM_PER_IN,
  [SY_KIND_LENGTH] = SY_MM_PER_IN,
  [SY_KIND_FORCE] = KN_PER_LBF,
  [SY_KIND_HAND_FORCE] = SY_KG_PER_LB * SY_GRAVITY,
  [SY_KIND_DENSITY] = KG_M3_PER_LB_IN3,
  [SY_KIND_AREA] = SY_MM_PER_IN * SY_MM_PER_IN,
  [SY_KIND_STIFFNESS] = KN_PER_LBF / SY_MM_PER_IN,
  [SY_KIND_DISTANCE] = 0.3048,
};

static double
us_per_metric (SyKind kind)
{
  return us_in_metric[kind] > 0 ? us_in_metric[kind] : 1;
}

#define ZERO_F 32.0
#define C_PER_F (5.0 / 9.0)
#define DEG_PER_RAD 57.295779513082320876798154814105

double
sy_unit_convert (SyKind kind, double value, SyUnits from, SyUnits to)
{
  double per = us_per_metric (kind);

  if (from == to)
    return value;
  if (kind == SY_KIND_TEMPERATURE)
    return to == SY_UNITS_US ? value / C_PER_F + ZERO_F : (value - ZERO_F) * C_PER_F;
  return to == SY_UNITS_US ? value / per : value * per;
}

static const Unit *
find_unit (SyKind kind, const char *text, size_t length)
{
  const UnitTable *table = &tables[kind];

  for (size_t i = 0; i < table->n; i++)
    if (strlen (table->units[i].name) == length && memcmp (table->units[i].name, text, length) == 0)
      return &table->units[i];
  return NULL;
}

bool
sy_unit_read (SyKind kind, SyUnits units, double number, const char *text, size_t length, double *value)
{
  const Unit *unit = find_unit (kind, text, length);

  if (unit == NULL)
    return false;
  if (kind == SY_KIND_TEMPERATURE)
    *value = sy_unit_convert (kind, number, unit->per_metric == 1 ? SY_UNITS_METRIC : SY_UNITS_US, units);
  else if (kind == SY_KIND_SLOPE && unit->per_metric == 0)
    *value = atan (number / 100) * DEG_PER_RAD;
  else
    {
      double own = units == SY_UNITS_US ? us_per_metric (kind) : 1;
      *value = unit->per_metric == own ? number : number * unit->per_metric / own;
    }
  return true;
}

const char *
sy_unit_list (SyKind kind)
{
  return lists[kind];
}
