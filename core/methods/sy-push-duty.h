/* SPDX-License-Identifier: MIT */
#ifndef SY_PUSH_DUTY_H
#define SY_PUSH_DUTY_H

#include "sy-method.h"
#include "sy-push.h"

/* What pushing a cart and sliding a die have in common: who does it how often how far, and what the force is held
   against. */

typedef struct
{
  int way;                      /* SyPushWay or -1         */
  SyNumber handle_height;       /* cm or in                */
  SyNumber distance;            /* m or ft                 */
  SyNumber frequency;           /* a minute                */
  SyNumber percent, persons;    /* 90, 75, 50; 1           */
  int who;                      /* SyPushWho or -1         */
  SySet conditions;
} SyPushDuty;

#define SY_N_PUSH_CONDITIONS 10
extern const SyChoice sy_push_way_choices[2], sy_push_who_choices[SY_N_PUSH_WHO],
  sy_push_condition_choices[SY_N_PUSH_CONDITIONS];

/* Rows of a table of fields; @facts_ has SyPushDuty as its member duty. */
#define SY_PUSH_MEASURE(facts_, member_, kind_) \
  .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (facts_, member_)
#define SY_PUSH_CHOICE(facts_, member_, choices_) \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (facts_, member_), .choices = choices_, .n_choices = SY_LEN (choices_)

#define SY_PUSH_DUTY_ROWS(facts_)                                                                                     \
  { .name = "handle_height", .symbol = "h", .label = N_ ("Height of the hands"),                                      \
    .help = N_ ("Floor to the middle of the grip."), SY_PUSH_MEASURE (facts_, duty.handle_height, SY_KIND_REACH),     \
    .required = true, .low = { SY_BOUND_OPEN, { 0, 0 } }, .high = { SY_BOUND_CLOSED, { 250, 100 } },                  \
    .range_source = "common practice, no source" },                                                                   \
  { .name = "distance", .symbol = "D", .label = N_ ("Way"), .help = N_ ("Of one push, from start to stop."),          \
    SY_PUSH_MEASURE (facts_, duty.distance, SY_KIND_DISTANCE), .required = true, .low = { SY_BOUND_OPEN, { 0, 0 } },  \
    .high = { SY_BOUND_CLOSED, { 10000, 30000 } }, .range_source = "common practice, no source" },                    \
  { .name = "frequency", .symbol = "F", .label = N_ ("Pace"),                                                         \
    .help = N_ ("Pushes a minute; or text: 80/h, 45/8h. All that is pushed and pulled counts together."),             \
    SY_PUSH_MEASURE (facts_, duty.frequency, SY_KIND_FREQUENCY), .required = true, .low = { SY_BOUND_OPEN, { 0, 0 } }, \
    .high = { SY_BOUND_CLOSED, { 1000, 1000 } }, .range_source = "common practice, no source" },                      \
  { .name = "who", .label = N_ ("Who does it"), SY_PUSH_CHOICE (facts_, duty.who, sy_push_who_choices),               \
    .default_text = N_ ("women") },                                                                                   \
  { .name = "percent", .label = N_ ("How many of them must accept it"),                                               \
    .help = N_ ("90, 75 or 50 percent; the published tables have no other."),                                         \
    SY_PUSH_MEASURE (facts_, duty.percent, SY_KIND_PERCENT), .low = { SY_BOUND_CLOSED, { 50, 50 } },                  \
    .high = { SY_BOUND_CLOSED, { 90, 90 } }, .range_source = "Snook and Ciriello 1991 (from memory)",                 \
    .default_text = N_ ("90 %") },                                                                                    \
  { .name = "persons", .label = N_ ("Persons"), .help = N_ ("How many push together."),                               \
    SY_PUSH_MEASURE (facts_, duty.persons, SY_KIND_COUNT), .whole = true, .low = { SY_BOUND_CLOSED, { 1, 1 } },       \
    .high = { SY_BOUND_CLOSED, { 20, 20 } }, .range_source = "common practice, no source", .default_text = N_ ("1") }, \
  { .name = "conditions", .label = N_ ("Conditions"), .type = SY_MEMBER_SET,                                          \
    .help = N_ ("Ask about each. The published figures do not hold where one applies."),                              \
    .offset = offsetof (facts_, duty.conditions), .choices = sy_push_condition_choices,                               \
    .n_choices = SY_N_PUSH_CONDITIONS, .default_text = N_ ("not asked") }
#define SY_PUSH_WAY_ROW(facts_)                                                                                       \
  { .name = "way", .label = N_ ("Pushed or pulled"), SY_PUSH_CHOICE (facts_, duty.way, sy_push_way_choices),          \
    .required = true }

/* Quantities of both methods; those of a method's own follow. */
enum
{
  SY_PUSH_Q_INITIAL, SY_PUSH_Q_SUSTAINED, SY_PUSH_Q_HOLD, SY_PUSH_Q_STOP,
  SY_PUSH_Q_PSYCHO_START, SY_PUSH_Q_PSYCHO_START_RATIO, SY_PUSH_Q_PSYCHO_KEEP, SY_PUSH_Q_PSYCHO_KEEP_RATIO,
  SY_PUSH_Q_UK_START, SY_PUSH_Q_UK_START_RATIO, SY_PUSH_Q_UK_STOP_RATIO, SY_PUSH_Q_UK_KEEP, SY_PUSH_Q_UK_KEEP_RATIO,
  SY_PUSH_Q_UK_HOLD_RATIO,
  SY_PUSH_Q_CRITICAL_START, SY_PUSH_Q_CRITICAL_START_RATIO, SY_PUSH_Q_CRITICAL_KEEP, SY_PUSH_Q_CRITICAL_KEEP_RATIO,
  SY_PUSH_Q_WOMEN, SY_PUSH_Q_WOMEN_START, SY_PUSH_Q_WOMEN_KEEP,
  SY_PUSH_Q_MEN, SY_PUSH_Q_MEN_START, SY_PUSH_Q_MEN_KEEP,
  SY_PUSH_Q_RATIO,
  SY_PUSH_N_Q
};

#define SY_PUSH_TABLES "Snook and Ciriello 1991; Potvin and others 2021 (from memory)"
#define SY_PUSH_FILTER "HSE, assessing pushing and pulling; L23"
#define SY_PUSH_QUICK "ISO/TR 12295 quick check (from memory)"
#define SY_PUSH_SYMBOL_ROWS(start_, keep_)                                                                            \
  [SY_PUSH_Q_INITIAL] = { "initial", SY_KIND_HAND_FORCE, N_ ("Force to start it"), start_ },                          \
  [SY_PUSH_Q_SUSTAINED] = { "sustained", SY_KIND_HAND_FORCE, N_ ("Force to keep it moving"), keep_ },                 \
  [SY_PUSH_Q_HOLD] = { "hold", SY_KIND_HAND_FORCE, N_ ("Force to hold it on the slope"), "W sin s" },                 \
  [SY_PUSH_Q_STOP] = { "stop", SY_KIND_HAND_FORCE, N_ ("Force to stop it, down the slope"), "W (sin s + stop)" },     \
  [SY_PUSH_Q_PSYCHO_START] = { "psycho.initial.limit", SY_KIND_HAND_FORCE, N_ ("Force accepted to start it"), SY_PUSH_TABLES }, \
  [SY_PUSH_Q_PSYCHO_START_RATIO] = { "psycho.initial.ratio", SY_KIND_RATIO, N_ ("Start against what is accepted"),    \
                                     SY_PUSH_TABLES },                                                                \
  [SY_PUSH_Q_PSYCHO_KEEP] = { "psycho.sustained.limit", SY_KIND_HAND_FORCE, N_ ("Force accepted to keep it moving"),        \
                              SY_PUSH_TABLES },                                                                       \
  [SY_PUSH_Q_PSYCHO_KEEP_RATIO] = { "psycho.sustained.ratio", SY_KIND_RATIO,                                          \
                                    N_ ("Moving against what is accepted"), SY_PUSH_TABLES },                         \
  [SY_PUSH_Q_UK_START] = { "uk.start", SY_KIND_HAND_FORCE, N_ ("UK guideline to start or stop"), SY_PUSH_FILTER },    \
  [SY_PUSH_Q_UK_START_RATIO] = { "uk.start.ratio", SY_KIND_RATIO, N_ ("Start against the UK guideline"),              \
                                 SY_PUSH_FILTER },                                                                    \
  [SY_PUSH_Q_UK_STOP_RATIO] = { "uk.stop.ratio", SY_KIND_RATIO, N_ ("Stop against the UK guideline"), SY_PUSH_FILTER }, \
  [SY_PUSH_Q_UK_KEEP] = { "uk.moving", SY_KIND_HAND_FORCE, N_ ("UK guideline to keep it moving"), SY_PUSH_FILTER },   \
  [SY_PUSH_Q_UK_KEEP_RATIO] = { "uk.moving.ratio", SY_KIND_RATIO, N_ ("Moving against the UK guideline"),             \
                                SY_PUSH_FILTER },                                                                     \
  [SY_PUSH_Q_UK_HOLD_RATIO] = { "uk.hold.ratio", SY_KIND_RATIO,                                                       \
                                N_ ("Holding against the UK guideline to keep moving"),                               \
                                "for holding common practice, no source" },                                           \
  [SY_PUSH_Q_CRITICAL_START] = { "critical.initial", SY_KIND_HAND_FORCE, N_ ("Critical force to start it"),           \
                                 SY_PUSH_QUICK },                                                                     \
  [SY_PUSH_Q_CRITICAL_START_RATIO] = { "critical.initial.ratio", SY_KIND_RATIO, N_ ("Start against the critical force"), \
                                       SY_PUSH_QUICK },                                                               \
  [SY_PUSH_Q_CRITICAL_KEEP] = { "critical.sustained", SY_KIND_HAND_FORCE, N_ ("Critical force to keep it moving"),    \
                                SY_PUSH_QUICK },                                                                      \
  [SY_PUSH_Q_CRITICAL_KEEP_RATIO] = { "critical.sustained.ratio", SY_KIND_RATIO,                                      \
                                      N_ ("Moving against the critical force"), SY_PUSH_QUICK },                      \
  [SY_PUSH_Q_WOMEN] = { "women.percent", SY_KIND_PERCENT, N_ ("Women who could"), SY_PUSH_TABLES },                   \
  [SY_PUSH_Q_WOMEN_START] = { "women.initial.percent", SY_KIND_PERCENT, N_ ("Women who could start it"), SY_PUSH_TABLES }, \
  [SY_PUSH_Q_WOMEN_KEEP] = { "women.sustained.percent", SY_KIND_PERCENT, N_ ("Women who could keep it moving"),       \
                             SY_PUSH_TABLES },                                                                        \
  [SY_PUSH_Q_MEN] = { "men.percent", SY_KIND_PERCENT, N_ ("Men who could"), SY_PUSH_TABLES },                         \
  [SY_PUSH_Q_MEN_START] = { "men.initial.percent", SY_KIND_PERCENT, N_ ("Men who could start it"), SY_PUSH_TABLES },  \
  [SY_PUSH_Q_MEN_KEEP] = { "men.sustained.percent", SY_KIND_PERCENT, N_ ("Men who could keep it moving"),             \
                           SY_PUSH_TABLES },                                                                          \
  [SY_PUSH_Q_RATIO] = { "ratio", SY_KIND_RATIO, N_ ("Largest part of a limit"), "the largest of the limits' ratios" }

#define SY_N_PUSH_LIMITS 8
extern const SyLimit sy_push_limits[SY_N_PUSH_LIMITS];

/* The duty and the forces; a force that is not known is NAN. */
typedef struct
{
  SyPushTask task;
  SyPushWho who;
  int percent;
  SyUnits units;
  SyPushNeeds needs;
} SyPushCase;

/* Facts that passed the check; the forces are left NAN. */
void sy_push_case_begin (const SyPushDuty *duty, SyUnits units, SyPushCase *out);
/* The largest of the limits' ratios; NAN: no force is known. */
double sy_push_case_ratio (const SyPushCase *push);
/* Quantities and what governs. */
void sy_push_case_put (const SyPushCase *push, SySink *sink);
/* What is to be said of who does it where, and of limits that do not speak. */
void sy_push_case_notes (const SyPushCase *push, const SyPushDuty *duty, SySink *sink);
/* percent is one of three. */
void sy_push_duty_check (const SyPushDuty *duty, SyProblems *problems);
/* "ratio = initial / limit" of the ratios of both methods. */
bool sy_push_formula (const SySink *sink, size_t symbol, SyUnits units, char *text);

/* ---- remedies ---- */

/* The largest part of a limit with one number of the facts, at @offset, changed; NAN: none. */
typedef double (*SyPushTry) (const void *facts, SyUnits units, size_t offset, double value);

typedef struct
{
  const char *path, *factor;
  SyKind kind;
  size_t offset;
  double now, best; /* the ratio does not rise on the way from one to the other */
} SyPushLever;

/* Values between the present one and the best that bring the ratio to 1, and a few rungs below it for stricter
   policies. Return value: how many were added to @changes, SY_PUSH_RUNGS at most. */
#define SY_PUSH_RUNGS 4
size_t sy_push_pull_lever (const SyPushLever *lever, const void *facts, SyUnits units, SyPushTry ratio,
                           SyChange *changes);

/* Levers of the duty, for both methods: 0 pace, 1 way, 2 height of the hands, 3 push or pull. @base is the offset of
   the duty in the facts. */
#define SY_PUSH_DUTY_FACTORS 4
size_t sy_push_duty_candidates (const SyPushDuty *duty, size_t base, const void *facts, SyUnits units, SyPushTry ratio,
                                size_t factor, SyChange *changes, SyChange *best, bool *has_best);
/* The largest mass at @offset with which every limit is kept; false: none, or the mass does not count. */
bool sy_push_heaviest (const void *facts, SyUnits units, SyPushTry ratio, size_t offset, double *mass);

#endif
