/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_PRIVATE_H
#define SY_TASK_PRIVATE_H

#include "sy-json.h"
#include "sy-task.h"

/* What sy_task_apply() is made of. A member of a document that is absent is &sy_task_nothing, whose members are absent too. */
extern const SyJson sy_task_nothing;
const SyJson *sy_task_member (const SyJson *object, const char *key);
const char *sy_task_text (const SyJson *object, const char *key); /* "" where there is none */

/* Topics: what happened to an item (sy-task-fold.c) */

/* Where a revision stands among the others: number, clash, lineage, and what of a review it settles. */
void sy_task_take_history (SyTask *task, const SyEvent *revision);
/* Signature, action, review, retirement, told; one that cannot be read says nothing. */
void sy_task_take_deed (SyTask *task, const SyEvent *event);

/* Topics: words to search (sy-task-search.c) */

/* Those of the revision anew; those of what was done about the item stay. */
void sy_task_take_words (SyTask *task, const SyEvent *revision, const SyJson *facts, const SyJson *findings);
/* Adds one, should it not be there; blank says nothing. */
void sy_task_add_words (SyTask *task, const char *words);

#endif
