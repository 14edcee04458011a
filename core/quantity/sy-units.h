/* SPDX-License-Identifier: MIT */
#ifndef SY_UNITS_H
#define SY_UNITS_H

#include <stdbool.h>
#include <stddef.h>

/* Topics: unit systems, kinds of quantity, units */

/* The unit system of a document. The published constants of each system are kept apart. */
typedef enum { SY_UNITS_METRIC = 0, SY_UNITS_US = 1 } SyUnits;
#define SY_N_UNITS 2

/* What is measured. Each kind has one unit a unit system, in which structs hold it. */
typedef enum
{
  SY_KIND_RATIO,     /* no unit ("1")                        */
  SY_KIND_MASS,      /* kg            · lb                   */
  SY_KIND_REACH,     /* cm            · in  (handling)       */
  SY_KIND_ANGLE,     /* deg           · deg                  */
  SY_KIND_MINUTES,   /* min           · min                  */
  SY_KIND_FREQUENCY, /* 1/min         · 1/min                */
  SY_KIND_COUNT,     /* whole number, no unit ("1")          */
  SY_KIND_PERCENT,   /* %             · %                    */
  SY_KIND_LENGTH,    /* mm            · in  (rigging)        */
  SY_KIND_FORCE,     /* kN            · lbf (rigging)        */
  SY_KIND_HAND_FORCE, /* N            · lbf (handling)       */
  SY_KIND_DENSITY,   /* kg/m3         · lb/in3               */
  SY_KIND_AREA,      /* mm2           · in2                  */
  SY_KIND_TEMPERATURE, /* degC        · degF                 */
  SY_KIND_STIFFNESS, /* kN/mm         · lbf/in               */
  SY_KIND_SLOPE,     /* deg           · deg; text may be "2 %", rise over run */
  SY_KIND_DATE,      /* days since 1970-01-01, in both; printed as a date     */
  SY_KIND_DISTANCE,  /* m             · ft  (carrying, pushing) */
  SY_KIND_MONEY,     /* in the currency that the facts name, in both ("1"); never converted */
} SyKind;
#define SY_N_KINDS 19

/* Exact by definition (international yard and pound agreement, 1959). */
#define SY_KG_PER_LB 0.45359237
#define SY_CM_PER_IN 2.54
#define SY_MM_PER_IN 25.4
/* Standard acceleration of gravity, exact (3rd CGPM, 1901): lbf and kN by way of it. */
#define SY_GRAVITY 9.80665

/**
 * sy_unit_name:
 * The unit in which a kind is held and printed in a unit system, e.g. "cm"; "1" for none.
 * Return value: static text, never NULL.
 */
const char *sy_unit_name (SyKind kind, SyUnits units);

/**
 * sy_units_id / sy_units_from_id:
 * "metric" or "us", as written in documents. from_id returns false for anything else.
 */
const char *sy_units_id (SyUnits units);
bool sy_units_from_id (const char *id, SyUnits *units);

/**
 * sy_unit_convert:
 * Parameters:   value  in the unit of @kind in the system @from.
 * Return value: the same quantity in the unit of @kind in the system @to.
 */
double sy_unit_convert (SyKind kind, double value, SyUnits from, SyUnits to);

/**
 * sy_unit_read:
 * A number with a unit such as "lb", "in", "°" or "/min" behind it, in the unit of @kind in @units. A unit of the
 * system's own is not converted there and back.
 * Parameters:   text, length  the unit's text without surrounding blanks.
 *               value         receives the quantity; written only on true. Not NULL.
 * Return value: false when the text is no unit of that kind.
 */
bool sy_unit_read (SyKind kind, SyUnits units, double number, const char *text, size_t length, double *value);

/**
 * sy_unit_list:
 * The units that are understood for a kind, for messages, e.g. "kg, g, t, lb, oz".
 */
const char *sy_unit_list (SyKind kind);

#endif
