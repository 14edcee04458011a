/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_KINDS_H
#define SY_TASK_KINDS_H

#include "sy-method.h"

/* With what the thing is done; the choice of what to assess is offered by these groups. */
typedef enum
{
  SY_OFFER_HANDS,    /* people carry, push or lift it     */
  SY_OFFER_GEAR,     /* gear does                         */
  SY_OFFER_WHOLE,    /* several of these together         */
  SY_OFFER_REGISTER, /* kept in a register, not a task    */
} SyOffer;
#define SY_N_OFFERS 4

/* What a page calls the thing that a method assesses. Texts are N_(). */
typedef struct
{
  const char *method;     /* id                                                                       */
  const char *offer;      /* "Rigged lift (lift plan)"                                                */
  const char *what;       /* one sentence: when to take it                                            */
  const char *new_title;  /* "New lift plan"                                                          */
  const char *name_label; /* "Name of the plan"                                                       */
  const char *name_help;
  const char *first;      /* fact with which a new one begins; "name": its name                       */
  const char *no_result;  /* under the verdict while there is none                                    */
  const char *no_drawing; /* in the place of the drawings while there is none                         */
  const char *figure;     /* quantity beside the verdict, NULL: the method's index                    */
  const char *figure_name; /* what stands before that figure; NULL: the index symbol                  */
  SyOffer group;
} SyTaskKind;

/* Those that the registry has, in the order in which they are offered. @n receives how many; static. */
const SyTaskKind *const *sy_task_kinds (size_t *n);
/* Never NULL: a method that none was written for gets words that suit any. */
const SyTaskKind *sy_task_kind (const SyMethod *method);

#endif
