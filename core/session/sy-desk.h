/* SPDX-License-Identifier: MIT */
#ifndef SY_DESK_H
#define SY_DESK_H

#include "sy-facts.h"
#include "sy-findings.h"
#include "sy-words.h"

/* Registry and policy: immutable once made; any thread. */
typedef struct SyDesk SyDesk;

/* @policy_text NULL: the built-in policy. */
SyDesk *sy_desk_new (const char *policy_text, gsize length, GError **error);
/* By a policy that comes with the program: "default", "uk-filter". NULL without an error: no such name. */
SyDesk *sy_desk_new_named (const char *policy_name, GError **error);
/* The same policy with a region that comes with the program ("uk") put into it; @id NULL: a further reference. NULL with
   the error: no such region, or the policy has one. */
SyDesk *sy_desk_in_region (SyDesk *desk, const char *id, GError **error);
SyDesk *sy_desk_ref (SyDesk *desk);
void sy_desk_unref (SyDesk *desk);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyDesk, sy_desk_unref)
const SyPolicy *sy_desk_policy (const SyDesk *desk);
const char *sy_desk_policy_text (const SyDesk *desk, gsize *length); /* the policy's own bytes */

/* One document assessed: facts, findings and the memory under them. Immutable; any thread. */
typedef struct SyAssessment SyAssessment;
struct SyAssessment
{
  SyFacts facts;
  const SyFindings *findings;
  const char *text;      /* the document, compact, numbers as typed */
};
SyAssessment *sy_assessment_ref (SyAssessment *assessment);
void sy_assessment_unref (SyAssessment *assessment);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyAssessment, sy_assessment_unref)

/**
 * sy_desk_assess:
 * Parameters:   text, length  one facts document.
 *               flags         SyJudgeFlags.
 *               problems      cleared, then receives every problem, unknown fields first. Not NULL.
 * Return value: a new assessment, or NULL when there are problems.
 */
SyAssessment *sy_desk_assess (SyDesk *desk, const char *text, gsize length, SyJudgeFlags flags,
                              SyProblems *problems);

/**
 * sy_desk_assess_line:
 * The same for one line of many, reusing @memory and @findings: appends the findings JSON or the problems JSON
 * and a newline to @out. Return value: false when it was the problems.
 */
bool sy_desk_assess_line (SyDesk *desk, const char *text, gsize length, int line, SyJudgeFlags flags,
                          bool worksheet, SyMemory *memory, SyFindings *findings, SyProblems *problems,
                          GString *out);

/* Findings JSON of an assessment; new string. */
char *sy_assessment_json (const SyAssessment *assessment, bool worksheet);

/* Fills a view of the lift into @marks. */
void sy_assessment_scene (const SyAssessment *assessment, size_t view, SyMark *marks, int room,
                          SyScene *scene);

#endif
