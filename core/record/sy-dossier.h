/* SPDX-License-Identifier: MIT */
#ifndef SY_DOSSIER_H
#define SY_DOSSIER_H

#include "sy-facts.h"
#include "sy-findings.h"
#include "sy-task.h"

/* A line of the journal about an item. */
typedef struct
{
  guint64 number;
  SyHash hash;
  const SyEvent *event;
} SyHistoryLine;

/* What can be put on paper about one item: one of its revisions worked out now, and all that happened to it. Or a facts
   document that is in no record. All is borrowed. */
typedef struct
{
  const SyFacts *facts;        /* NULL: they are none any more, or were not worked out */
  const SyFindings *findings;  /* of @facts, with remedies; NULL with them             */
  const SyEvent *event;        /* the revision; of a facts document only name and facts are filled             */
  const SyTask *task;          /* the item as it stands; NULL: a facts document, and what follows is not there */
  guint64 line;                /* of the revision in the journal */
  SyHash hash;
  guint64 head_line;           /* of the journal */
  SyHash head;
  const SyHistoryLine *lines;  /* all about the item, oldest first */
  gsize n_lines;
} SyDossier;

#endif
