/* SPDX-License-Identifier: MIT */
#ifndef SY_METHOD_H
#define SY_METHOD_H

#include "sy-arena.h"
#include "sy-field.h"
#include "sy-scene.h"
#include "sy-text.h"

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

/* A quantity of something that the facts name: "leg.A.tension". */
#define SY_NAMED_TEXT_MAX 160
typedef struct
{
  SySymbol symbol;               /* points to @text                    */
  char text[SY_NAMED_TEXT_MAX];
  SyQuantity quantity;           /* points to @symbol                  */
} SyNamed;
#define SY_NAMED_MAX 1100

typedef enum
{
  SY_NOTE_CAUTION,  /* said with the result                                                    */
  SY_NOTE_EXCLUDED, /* a condition that the method excludes: "outside"                         */
  SY_NOTE_MISSING,  /* something that a record needs: "incomplete" there, a caution in assess  */
  SY_NOTE_NEEDED,   /* something that the verdict needs: "incomplete"                          */
  SY_NOTE_IMPROVE,  /* something that asks for better: "improve"                               */
  SY_NOTE_REFUSED,  /* "do-not-lift"                                                           */
} SyNoteClass;
#define SY_N_NOTE_CLASSES 6

#define SY_NOTE_ARGS 3
#define SY_NOTE_SUBJECT_MAX 96
typedef struct
{
  const char *id; /* template; words are in core/record/sy-words*.c */
  SyNoteClass note_class;
  char subject[SY_NOTE_SUBJECT_MAX]; /* {subject}: what it is about, as the facts name it; "" for none */
  double args[SY_NOTE_ARGS];         /* {value}, {limit}, {third}                                       */
  SyKind kinds[SY_NOTE_ARGS];
  int n_args;
  const char *symbol;                /* quantity that it is about; NULL none. Static, or a SyNamed's    */
  const char *source;                /* NULL: the method's conditions_source. Static                    */
  bool from_memory;
} SyNote;

/* Where a method puts what it found. Quantity i is symbol i of the method; those of things that the facts name follow. */
#define SY_NOTES_MAX 128
typedef struct
{
  SyQuantity *quantities; /* the caller's, room for n_symbols of the method */
  size_t n_quantities;
  SyNamed *named;         /* the caller's, room for SY_NAMED_MAX; NULL: they are not wanted */
  size_t n_named;
  SyNote notes[SY_NOTES_MAX];
  int n_notes;
  bool dropped[SY_N_NOTE_CLASSES]; /* a note of that class found no room or gave way to a stricter one: it still counts
                                      in the verdict */
  int governing_end;              /* method's own index of the end that governs      */
  const char *governing;          /* "origin.HM"; static or governing_text           */
  char governing_text[SY_NAMED_TEXT_MAX];
  const char *index_symbol;       /* symbol of the index that decides: "LI"          */
} SySink;

/* How a mass was had. */
typedef enum { SY_BASIS_WEIGHED, SY_BASIS_PLATE, SY_BASIS_DRAWING, SY_BASIS_ESTIMATED } SyBasis;
#define SY_N_BASES 4
extern const SyChoice sy_basis_choices[SY_N_BASES];

/* What gear is; also the kinds of elements and suspensions of a rigged lift. */
typedef enum
{
  SY_GEAR_SLING, SY_GEAR_SHACKLE, SY_GEAR_EYEBOLT, SY_GEAR_HOIST_RING, SY_GEAR_HOOK, SY_GEAR_MASTER_LINK,
  SY_GEAR_HOIST, SY_GEAR_CRANE, SY_GEAR_BEAM, SY_GEAR_TRUCK, SY_GEAR_CART, SY_GEAR_MANIPULATOR,
} SyGearKind;
#define SY_N_GEAR_KINDS 12
extern const SyChoice sy_gear_kind_choices[SY_N_GEAR_KINDS];

/* How often a kind of gear is thoroughly examined: data of the policy. */
#define SY_RULE_TEXT_MAX 200
typedef struct
{
  SyGearKind kind;
  int months;                        /* over 0                                  */
  char regulation[SY_RULE_TEXT_MAX]; /* what asks for it                        */
  bool from_memory;
} SyExaminationRule;
#define SY_EXAMINATION_RULES_MAX 48

/* Settings of a calculation that come from the policy, and the day. */
typedef struct
{
  SyUnits units;
  int default_assigned; /* SyAssigned                                     */
  bool quantities_only; /* skip notes: for repeated draws                 */
  bool wants_filter;    /* the policy has a row on a quantity "filter.*" or "filter_*": the guideline filter is worked out */
  double today;         /* days since 1970; NAN: not known                */
  double allowance_percent[SY_N_BASES];
  const SyExaminationRule *examinations; /* NULL with n_examinations 0    */
  size_t n_examinations;
} SyContext;

/* One of several published limits that are shown beside each other: what is held against what. */
typedef struct
{
  const char *id;           /* "niosh", "iso-mass", "en": in findings and templates      */
  const char *title;        /* N_()                                                      */
  const char *edition;      /* publication and edition                                   */
  bool from_memory;         /* nobody has checked the value against the publication; said on screen and on paper */
  const char *value_symbol; /* what is held against the limit: "mass_each"               */
  const char *limit_symbol; /* "mR"                                                      */
  const char *ratio_symbol; /* value over limit: "mR_ratio"; NULL: it is the quotient    */
} SyLimit;

/* A fact that varies from one measurement to the next. */
typedef struct
{
  const char *path;       /* "origin.H"                                           */
  size_t value_offset;    /* SyNumber                                             */
  size_t had_offset;      /* SyHad                                                */
  const char *tolerance;  /* id of the policy's tolerance: "H"                    */
  bool percent;           /* tolerance in percent of the value                    */
} SyMeasured;

/* How a part of the facts stands by its own method. */
typedef enum
{
  SY_PART_EMPTY,   /* it has no facts                                  */
  SY_PART_WITHIN,  /* within every limit                               */
  SY_PART_IMPROVE,
  SY_PART_OPEN,    /* facts missing, or outside its method             */
  SY_PART_REFUSED, /* mechanical handling required, or do not lift     */
} SyPartStands;
#define SY_METHOD_PARTS_MAX 64

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
#define SY_LIMITS_MAX 16
typedef struct
{
  double index;                 /* LI goal           */
  double ratio;                 /* mass / mR goal    */
  double limits[SY_LIMITS_MAX]; /* on the ratio of each of the method's limits, in their order; INFINITY: none */
  double values[SY_LIMITS_MAX]; /* where there is none: on what is held against it, if nothing else is; INFINITY: none */
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
  const char *item_kind;  /* what the record keeps it as: "task", "die", "gear"     */
  bool by_capacity;       /* the favourable verdict is within-capacity, not by-hand */
  bool dated;             /* the result depends on the day                          */
  /* How "within" and "improve" are shown where the verdict's own words say something else; N_(), NULL: the verdict's own. */
  const char *good_title, *good_meaning, *improve_title, *improve_meaning;
  const char *memory_caution; /* N_(): said with every result whose tables stand from memory; NULL: said only
                                 where a row of the policy does                      */
  size_t facts_size;      /* struct that begins with SyCommonFacts */
  const SyField *fields;  /* the method's own, without the common ones */
  size_t n_fields;
  const SySymbol *symbols;
  size_t n_symbols;
  const char *const *named_symbols; /* what it can give of things that the facts name: "leg.*.tension"; may be NULL */
  size_t n_named_symbols;
  const char *index_symbol; /* the index that decides: "LI", "utilisation"; NULL none      */
  const char *const *index_symbols; /* NULL: that one only. All it may be, where the facts say which: evaluate sets the sink's
                                       index_symbol to one of them */
  size_t n_index_symbols;
  const char *ratio_symbol; /* mass against the second limit: "mR_ratio"; NULL none        */
  const SyLimit *limits;    /* beside each other, in the order in which they are shown; may be NULL */
  size_t n_limits;
  const SyMeasured *measured;
  size_t n_measured;

  /* Cross-field check; adds problems. Paths as in documents. */
  void (*check) (const void *facts, SyUnits units, SyProblems *problems);

  /* Facts that passed the check, to quantities and notes. */
  void (*evaluate) (const void *facts, const SyContext *context, SySink *sink);

  /* NULL with n_factors 0. Candidate values for one factor that may reach the goal, and its best value; the caller judges them.
     @factor runs from 0 to n_factors - 1. @best receives the value at which the factor costs least.
     Return value: how many candidates in @changes (room for SY_CHANGES_MAX); *has_best says if best was set. */
  size_t n_factors;
  size_t (*candidates) (const void *facts, const SyContext *context, const SyGoal *goal, size_t factor,
                        SyChange *changes, SyChange *best, bool *has_best);

  /* NULL for none. Largest heaviest mass that is within every goal as the task stands, in the unit; false: none. */
  bool (*largest_mass) (const void *facts, const SyContext *context, const SyGoal *goal, double *mass,
                        SyChange *change);

  /* NULL for none. The formula of a quantity with the numbers put in, symbols and figures only ("HM = 25 / 55 = 0.4545"), into
     SY_FORMULA_MAX bytes; false when it has none. */
  bool (*formula) (const SySink *sink, size_t symbol, SyUnits units, char *text);

  /* NULL for none. The same for a quantity of something that the facts name. */
  bool (*named_formula) (const SySink *sink, const SyNamed *named, SyUnits units, char *text);

  /* The view that is rounded as a person would fill in the printed manual's worksheet; NULL when the manual has none.
     @part runs from 0; false when there is no such part. */
  bool (*worksheet) (const SySink *sink, SyUnits units, size_t part, SyWorksheetPart *out);

  /* NULL for none. Facts inside the facts that methods of their own assess (the steps of a changeover): the @i-th, false when
     there are no more. @label receives what it is called; static or in the facts. */
  bool (*part) (const void *facts, size_t i, SyPartFacts *part, const char **label);

  /* NULL: every part counts in the verdict of the whole. Of a method whose parts are choices: called after evaluate with how each
     of the @n parts stands; adds notes and quantities, and sets @counts of those that do (all false before). */
  void (*choose) (const void *facts, const SyContext *context, const SyPartStands *stands, size_t n, bool *counts,
                  SySink *sink);

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

/* Whether a text says anything: more than blanks of any kind. NULL says nothing. */
bool sy_text_says (const char *text);
/* Whether two texts are the same but for blanks around them. */
bool sy_text_same (const char *a, const char *b);

/* Sets every fact to "not given". */
void sy_method_clear (const SyMethod *method, void *facts);

/* Helpers for method files */
void sy_sink_begin (SySink *sink, const SyMethod *method, SyQuantity *quantities, SyNamed *named);
void sy_sink_value (SySink *sink, size_t symbol, double value);
/* A quantity called @prefix.@name.@suffix ("leg", "A", "tension"; an empty part is left out). Return value: its symbol, in the
   sink's memory; NULL where named quantities are not wanted or find no room. */
const char *sy_sink_named (SySink *sink, const char *prefix, const char *name, const char *suffix, SyKind kind,
                           const char *label, const char *source, double value);
/* The same id is said once for a subject. NULL: said already, or no room (which still counts in the verdict). */
SyNote *sy_sink_note (SySink *sink, const char *id, SyNoteClass note_class);
SyNote *sy_sink_note_on (SySink *sink, const char *id, SyNoteClass note_class, const char *subject);
void sy_note_arg (SyNote *note, SyKind kind, double value); /* NULL note: ignored */
/* Where it comes from; NULL note: ignored. */
void sy_note_source (SyNote *note, const char *symbol, const char *source, bool from_memory);
/* The day on which due dates are judged: the facts' own, or today; NAN when neither is known. */
double sy_as_of (const SyCommonFacts *common, const SyContext *context);
/* Says when the facts name another day than today: a caution. */
void sy_as_of_say (const SyCommonFacts *common, const SyContext *context, SySink *sink);
/* Whether a symbol is one of a pattern's: "leg.A.tension" of "leg.*.tension". */
bool sy_symbol_matches (const char *symbol, const char *pattern);
/* The quantity by symbol, named ones too; NULL when it is absent. */
const SyQuantity *sy_sink_quantity (const SySink *sink, const char *symbol);

/* The largest symbol count of any method: room for a sink's quantities. */
#define SY_QUANTITIES_MAX 128

#endif
