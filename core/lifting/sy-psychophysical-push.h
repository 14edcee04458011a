/* SPDX-License-Identifier: MIT */
#ifndef SY_PSYCHOPHYSICAL_PUSH_H
#define SY_PSYCHOPHYSICAL_PUSH_H

/*
 * The forces with which people accept to push and pull: the tables of Snook and Ciriello 1991 and the equations of
 * Potvin, Ciriello, Snook and others 2021. Both from memory; twenty-one of the women's figures at the lowest handle
 * were read second-hand, in a note that quotes a reprint of the tables. Forces in kgf, as printed.
 */

typedef enum { SY_WAY_PUSH, SY_WAY_PULL } SyPushWay;
typedef enum { SY_HANDS_WOMEN, SY_HANDS_MEN } SyHands;
#define SY_N_HANDS 2
/* To start it, to keep it moving. */
typedef enum { SY_PUSH_INITIAL, SY_PUSH_SUSTAINED } SyPushForce;
#define SY_N_PUSH_FORCES 2

typedef struct
{
  SyPushWay way;
  double height_cm;  /* of the hands over the floor, 0 or more */
  double distance_m; /* over 0                                 */
  double per_min;    /* exertions a minute, over 0             */
} SyPushTask;

/**
 * sy_push_table:
 * The force that a percentage of people accept, by the 1991 tables at 2.1 m. Off their grid the next more demanding
 * value counts (practitioners' guide to the tables): the shorter interval, the longer distance, and of the two handle
 * heights on either side the one with the smaller force. Of longer ways only 90 % of men pushing at the start with
 * hands at 95 cm are known, to 61 m: that caps other handles, a quicker pace than its own and longer ways too.
 * Parameters:   percent  90, 75 or 50.
 * Return value: NAN where the tables have no figure: hands above or below their handles, more than 10 a minute, a
 * longer way.
 */
double sy_push_table (const SyPushTask *task, SyHands hands, SyPushForce force, int percent);

/**
 * sy_push_equation:
 * The same by the equations, which hold for pushing. The heights are those of the tables' handles, distances 2.1 m
 * (a shorter one counts as 2.1 m) to 61 m, at most 10 a minute and less often than once in 8 h as once in 8 h.
 * Return value: NAN outside.
 */
double sy_push_equation (const SyPushTask *task, SyHands hands, SyPushForce force, int percent);

/**
 * sy_push_accepted:
 * The smaller of table and equation; NAN where neither has a figure.
 */
double sy_push_accepted (const SyPushTask *task, SyHands hands, SyPushForce force, int percent);

/**
 * sy_push_percent:
 * The percentage of people who accept a force: the lowest that table and equation give, where a cell of the table is
 * the normal distribution through its 90 % and its 50 %. A more leisurely column of the table that gives fewer counts
 * too.
 * Parameters:   kgf  the force, 0 or more.
 * Return value: 0 to 100; NAN where neither has a figure.
 */
double sy_push_percent (const SyPushTask *task, SyHands hands, SyPushForce force, double kgf);

#endif
