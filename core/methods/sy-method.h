/* SPDX-License-Identifier: MIT */
#ifndef SY_METHOD_H
#define SY_METHOD_H

#include "sy-arena.h"
#include "sy-field.h"
#include "sy-scene.h"

/* Topics: what every method's facts begin with, quantities, notes, the descriptor, the registry */

/* Can the handling be avoided? (The first question of a task page.) */
typedef enum { SY_AVOID_YES, SY_AVOID_NO } SyAvoid;

/* Every method's facts struct begins with these; the fields are in sy_common_fields. */
typedef struct
{
  const char *place;    /* where it is done                           */
  int avoid;            /* SyAvoid or -1                              */
  const char *avoid_why;
  int avoid_given;
  const char *as_of;    /* date for due dates, "2026-11-25"           */
  const char *measured_by;
  const char *measured_on;
  const char *notes;
} SyCommonFacts;
extern const SyField sy_common_fields[];
extern const size_t sy_n_common_fields;

/* How a fact was had. */
typedef enum { SY_HOW_MEASURED, SY_HOW_DRAWING, SY_HOW_ESTIMATED } SyHow;
#define SY_N_HOW 3
extern const SyChoice sy_how_choices[SY_N_HOW];

/* How, by whom, how closely: beside a measured fact. */
typedef struct
{
  int how;            /* SyHow or -1            */
  const char *by;
  SyNumber tolerance; /* half-width of a 95 % interval, in the fact's unit or in percent */
} SyHad;

/* A quantity that a method can give. */
typedef struct
{
  const char *symbol; /* "origin.HM" */
  SyKind kind;
  const char *label;  /* N_()        */
  const char *source; /* clause      */
} SySymbol;

typedef enum { SY_STATE_ABSENT = 0, SY_STATE_VALUE, SY_STATE_UNBOUNDED } SyState;

typedef struct
{
  const SySymbol *symbol;
  double value; /* INFINITY when unbounded */
  SyState state;
} SyQuantity;

typedef enum
{
  SY_NOTE_CAUTION,  /* said with the result                             */
  SY_NOTE_EXCLUDED, /* a condition that the method excludes: "outside"  */
  SY_NOTE_MISSING,  /* something that the verdict needs                 */
} SyNoteClass;

#define SY_NOTE_ARGS 3
typedef struct
{
  const char *id; /* template; words are in core/record/sy-words.c */
  SyNoteClass note_class;
  double args[SY_NOTE_ARGS];
  SyKind kinds[SY_NOTE_ARGS];
  int n_args;
} SyNote;

/* Where a method puts what it found. For methods with a fixed list of symbols quantity i is symbol i. */
#define SY_NOTES_MAX 40
typedef struct
{
  SyQuantity *quantities; /* the caller's, room for n_symbols of the method */
  size_t n_quantities;
  SyNote notes[SY_NOTES_MAX];
  int n_notes;
  int governing_end;              /* method's own index of the end that governs      */
  const char *governing;          /* "origin.HM"; static                             */
  const char *index_symbol;       /* symbol of the index that decides: "LI"          */
} SySink;

/* Settings of a calculation that come from the policy. */
typedef struct
{
  SyUnits units;
  int default_assigned; /* SyAssigned                                     */
  bool quantities_only; /* skip notes: for repeated draws                 */
} SyContext;

/* A fact that varies from one measurement to the next. */
typedef struct
{
  const char *path;       /* "origin.H"                                           */
  size_t value_offset;    /* SyNumber                                             */
  size_t had_offset;      /* SyHad                                                */
  const char *tolerance;  /* id of the policy's tolerance: "H"                    */
  bool percent;           /* tolerance in percent of the value                    */
} SyMeasured;

/* One change to one fact, as proposed by a method's remedies. */
typedef enum { SY_CHANGE_NUMBER, SY_CHANGE_CHOICE, SY_CHANGE_BOOL } SyChangeType;
typedef struct
{
  const char *path;    /* "origin.H"; static                 */
  const char *factor;  /* "HM"; static                       */
  SyChangeType type;
  SyKind kind;         /* of a number */
  size_t offset;
  double value;        /* number, or the choice's index, 0/1 */
  size_t also_offset;  /* a second number to set too (typical not over heaviest); 0 none */
  const char *also_path;
} SyChange;

/* Goals of the policy that a remedy must reach. */
typedef struct
{
  double index; /* LI goal           */
  double ratio; /* mass / mR goal    */
} SyGoal;

#define SY_CHANGES_MAX 96
#define SY_FORMULA_MAX 512

/* One part of a worksheet ("origin"): cells by name, rounded. A value of INFINITY is unbounded. */
#define SY_WORKSHEET_CELLS_MAX 12
typedef struct
{
  const char *name; /* "" for the whole */
  int n_cells;
  struct
  {
    const char *name;
    double value;
  } cells[SY_WORKSHEET_CELLS_MAX];
} SyWorksheetPart;

typedef struct SyMethod
{
  const char *id;
  const char *title;      /* N_() */
  const char *source;     /* publication and edition */
  const char *conditions_source; /* clause on what the method leaves out */
  int edition;            /* of our implementation; raised when a result can change */
  size_t facts_size;      /* struct that begins with SyCommonFacts */
  const SyField *fields;  /* the method's own, without the common ones */
  size_t n_fields;
  const SySymbol *symbols;
  size_t n_symbols;
  const char *index_symbol; /* the index that decides: "LI"                  */
  const char *ratio_symbol; /* mass against the second limit: "mR_ratio"     */
  const SyMeasured *measured;
  size_t n_measured;

  /* Cross-field check; adds problems. Paths as in documents. */
  void (*check) (const void *facts, SyUnits units, SyProblems *problems);

  /* Facts that passed the check, to quantities and notes. */
  void (*evaluate) (const void *facts, const SyContext *context, SySink *sink);

  /* Candidate values for one factor that may reach the goal, and its best value; the caller judges them.
     @factor runs from 0 to n_factors - 1. @best receives the value at which the factor costs least.
     Return value: how many candidates in @changes (room for SY_CHANGES_MAX); *has_best says if best was set. */
  size_t n_factors;
  size_t (*candidates) (const void *facts, const SyContext *context, const SyGoal *goal, size_t factor,
                        SyChange *changes, SyChange *best, bool *has_best);

  /* Largest heaviest mass that is within every goal as the task stands, in the unit; false: none. */
  bool (*largest_mass) (const void *facts, const SyContext *context, const SyGoal *goal, double *mass,
                        SyChange *change);

  /* The formula of a quantity with the numbers put in, symbols and figures only ("HM = 25 / 55 = 0.4545"), into
     SY_FORMULA_MAX bytes; false when it has none. */
  bool (*formula) (const SySink *sink, size_t symbol, SyUnits units, char *text);

  /* The view that is rounded as a person would fill in the printed manual's worksheet; NULL when the manual has none.
     @part runs from 0; false when there is no such part. */
  bool (*worksheet) (const SySink *sink, SyUnits units, size_t part, SyWorksheetPart *out);

  /* Views to draw: 0 .. n_views - 1. */
  size_t n_views;
  const char *const *view_titles; /* N_() */
  void (*scene) (const void *facts, SyUnits units, const SySink *sink, size_t view, SyScene *scene);
} SyMethod;

/* The registry: every method, in the order of the list in core/methods/meson.build. */
size_t sy_method_count (void);
const SyMethod *sy_method_at (size_t i);
const SyMethod *sy_method_find (const char *id);

/* A field of a method or a common one, by dotted path; NULL when there is none. offset may be NULL. */
const SyField *sy_method_field (const SyMethod *method, const char *path, size_t *offset);

/* Sets every fact to "not given". */
void sy_method_clear (const SyMethod *method, void *facts);

/* Helpers for method files */
void sy_sink_begin (SySink *sink, const SyMethod *method, SyQuantity *quantities);
void sy_sink_value (SySink *sink, size_t symbol, double value);
SyNote *sy_sink_note (SySink *sink, const char *id, SyNoteClass note_class);
void sy_note_arg (SyNote *note, SyKind kind, double value); /* NULL note: ignored */

/* The largest symbol count of any method: room for a sink's quantities. */
#define SY_QUANTITIES_MAX 64

#endif
