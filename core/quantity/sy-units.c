/* SPDX-License-Identifier: MIT */
#include "sy-units.h"

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
};
static const Unit percent_units[] = { { "%", 1 } };

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
};

static const char *const names[SY_N_KINDS][SY_N_UNITS] = {
  [SY_KIND_RATIO] = { "1", "1" },       [SY_KIND_MASS] = { "kg", "lb" },
  [SY_KIND_REACH] = { "cm", "in" },     [SY_KIND_ANGLE] = { "deg", "deg" },
  [SY_KIND_MINUTES] = { "min", "min" }, [SY_KIND_FREQUENCY] = { "1/min", "1/min" },
  [SY_KIND_COUNT] = { "1", "1" },       [SY_KIND_PERCENT] = { "%", "%" },
};

static const char *const lists[SY_N_KINDS] = {
  [SY_KIND_RATIO] = "",
  [SY_KIND_MASS] = "kg, g, t, lb, oz",
  [SY_KIND_REACH] = "cm, mm, m, in, ft",
  [SY_KIND_ANGLE] = "deg, \xc2\xb0",
  [SY_KIND_MINUTES] = "min, h, s",
  [SY_KIND_FREQUENCY] = "/min, /h",
  [SY_KIND_COUNT] = "",
  [SY_KIND_PERCENT] = "%",
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

double
sy_unit_convert (SyKind kind, double value, SyUnits from, SyUnits to)
{
  double per = kind == SY_KIND_MASS ? SY_KG_PER_LB : kind == SY_KIND_REACH ? SY_CM_PER_IN : 1;

  if (from == to)
    return value;
  return to == SY_UNITS_US ? value / per : value * per;
}

bool
sy_unit_find (SyKind kind, const char *text, size_t length, double *per_metric)
{
  const UnitTable *table = &tables[kind];

  for (size_t i = 0; i < table->n; i++)
    if (strlen (table->units[i].name) == length && memcmp (table->units[i].name, text, length) == 0)
      {
        *per_metric = table->units[i].per_metric;
        return true;
      }
  return false;
}

const char *
sy_unit_list (SyKind kind)
{
  return lists[kind];
}
