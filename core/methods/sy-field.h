/* SPDX-License-Identifier: MIT */
#ifndef SY_FIELD_H
#define SY_FIELD_H

#include "sy-number.h"
#include "sy-problem.h"
#include "sy-vector.h"

/*
 * A method's table of fields: the only place that knows its inputs. Reader, form, validation,
 * difference and reference pages come from it.
 */

/* Marks text for translation without depending on gettext. */
#ifndef N_
#define N_(text) text
#endif
#define SY_LEN(array) (sizeof (array) / sizeof ((array)[0]))

typedef enum
{
  SY_MEMBER_NUMBER, /* SyNumber: a measure of the field's kind                               */
  SY_MEMBER_CHOICE, /* int: index into choices, -1 not given                                 */
  SY_MEMBER_BOOL,   /* int: 0, 1, -1 not given                                               */
  SY_MEMBER_SET,    /* SySet: any of the choices                                             */
  SY_MEMBER_TEXT,   /* const char *: NULL not given; lives in the arena                      */
  SY_MEMBER_DATE,   /* const char *: "2026-11-25", checked; NULL not given                   */
  SY_MEMBER_GROUP,  /* the group's struct, in place; its presence in an int at present_offset */
  SY_MEMBER_LIST,   /* SyList of the group's struct, in the arena                            */
  SY_MEMBER_VECTOR, /* SyVector: [x, y, z] or what its coordinates say, each of the field's kind and in its range */
  SY_MEMBER_VECTORS, /* SyList of SyVector: one [x, y, z] or a list of them                  */
  SY_MEMBER_TEXTS,  /* SyList of const char *: one text or a list of texts                   */
  SY_MEMBER_FACTS,  /* SyPartFacts: facts of another method, which their own "method" names       */
} SyMemberType;

typedef struct
{
  const char *id;    /* as written in documents                 */
  const char *label; /* N_()                                    */
  const char *help;  /* N_(), one line; NULL for none           */
} SyChoice;

typedef struct
{
  unsigned long bits; /* bit i: choice i */
  bool given;         /* an empty list was given too: "asked, none applies" */
} SySet;

typedef struct
{
  void *items;
  size_t count;
  bool given;
} SyList;

/* The coordinates of a vector. */
typedef enum
{
  SY_COORDINATES_SPACE,  /* [x, y, z]                                */
  SY_COORDINATES_PLAN,   /* [x, y]                                   */
  SY_COORDINATES_EITHER, /* [x, y, z], or [x, y] where z is not known */
} SyCoordinates;

/* Facts inside facts: what one step of a changeover is assessed by. */
typedef struct
{
  const struct SyMethod *method; /* NULL: not given                                     */
  void *facts;                   /* of that method, checked, in the arena               */
} SyPartFacts;

typedef enum { SY_BOUND_NONE, SY_BOUND_CLOSED, SY_BOUND_OPEN } SyBoundType;
typedef struct
{
  SyBoundType type;
  double at[SY_N_UNITS]; /* metric, US */
} SyBound;

typedef struct SyField
{
  const char *name;   /* key in documents; a group's members come under it      */
  const char *symbol; /* "H"; NULL for none                                     */
  const char *label;  /* N_()                                                   */
  const char *help;   /* N_(), one line: what to do on the floor; NULL for none */
  SyMemberType type;
  SyKind kind;        /* numbers                                                */
  size_t offset;      /* in the enclosing struct                                */
  bool required;      /* absent: a problem                                      */
  bool whole;         /* numbers: whole numbers only; texts: a count may stand for the names "1", "2" … */
  SyBound low, high;
  SyCoordinates coordinates; /* vectors                                                    */
  const char *range_source; /* where the range comes from                       */
  const SyChoice *choices;
  size_t n_choices;
  const struct SyField *members;
  size_t n_members;
  size_t group_size;      /* lists: size of one item                            */
  size_t present_offset;  /* groups: an int in the enclosing struct: 1 given    */
  size_t max_items;       /* lists                                              */
  const char *item_label; /* N_(), lists: what one item is called, "Leg"; NULL: as the list */
  bool seldom;            /* members of lists: rarely given; a form folds it away while blank */
  const char *default_text; /* N_(), what absence means; NULL: nothing          */
} SyField;

/**
 * sy_field_find:
 * Find a field by dotted path ("origin.H"; list items by the list's own name only).
 * Parameters:   offset  receives the offset from the outermost struct; may be NULL.
 */
const SyField *sy_field_find (const SyField *fields, size_t n, const char *path, size_t *offset);

/* How many coordinates a vector of the field has at the most, and at the least. */
int sy_field_most_coordinates (const SyField *field);
int sy_field_least_coordinates (const SyField *field);

/**
 * sy_field_allowed:
 * The allowed values in words ("over 0", "0 to 15", "one of: good, fair, poor"), in the unit of @units.
 */
void sy_field_allowed (const SyField *field, SyUnits units, char *buffer, size_t size);

/**
 * sy_field_in_range: whether a finite value is inside the field's bounds (and whole where it must be).
 */
bool sy_field_in_range (const SyField *field, SyUnits units, double value);

/**
 * sy_fields_clear: sets every member of a struct to "not given".
 */
void sy_fields_clear (const SyField *fields, size_t n, void *facts);

#endif
