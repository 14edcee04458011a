/* SPDX-License-Identifier: MIT */
#ifndef SY_BESIDE_PRIVATE_H
#define SY_BESIDE_PRIVATE_H

#include "sy-beside.h"
#include "sy-json.h"

/* What is read of one of the two while they are compared. */
typedef struct
{
  const SyEvent *event;
  const SyJson *findings; /* NULL: cannot be read */
} SyBesideRead;

typedef struct
{
  SyBeside *beside;
  SyBesideRead read[2];
  const SyPolicy *policy;
  SyTranslate translate;
} SyBesideWork;

const char *sy_beside_say (const SyBesideWork *work, const char *msgid);
/* Adds a row; texts are consumed. */
SyBesideRow *sy_beside_add (GPtrArray *rows, const char *id, const char *name, char *before, char *after);
/* A quantity of a side by its symbol. FALSE: there is none. */
gboolean sy_beside_quantity (const SyBesideWork *work, int side, const char *symbol, double *value, SyKind *kind);
/* Which of two numbers is better: @sense -1 the smaller, 1 the larger. */
SyTurn sy_beside_turn (double before, double after, int sense);

void sy_beside_facts (SyBesideWork *work);
void sy_beside_bought (SyBesideWork *work);
void sy_beside_limits (SyBesideWork *work);
void sy_beside_reasons (SyBesideWork *work);

#endif
