/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_WORDS_H
#define SY_AUDIT_WORDS_H

#include "sy-audit.h"
#include "sy-words.h"

/* The register as at a day in words; new strings; @translate NULL: English. */

/* "Improve the task · LI 1.34". */
char *sy_audit_verdict_words (const SyAuditRow *row, SyTranslate translate);
/* "Revision 3 of 2026-03-01, made by Ann Bell, safety lead". */
char *sy_audit_made_words (const SyAuditRow *row, SyTranslate translate);
/* Method and edition, policy, program; that limits are looser than the program's own, where they are. */
char *sy_audit_basis_words (const SyAuditRow *row, SyTranslate translate);
/* Who signed which revision, in which role, with which competence; that it is the signer's own. */
char *sy_audit_signed_words (const SyAuditRow *row, SyTranslate translate);
/* What falls due and whether workers were told mass and heaviest side: sentences, a line each. */
char *sy_audit_due_words (const SyAuditRow *row, SyTranslate translate);
/* Why it is not assessed, or no longer, and what was not given or asked: sentences, a line each; "" where it is. */
char *sy_audit_missing_words (const SyAuditRow *row, SyTranslate translate);
/* The counts: sentences with " · " between. */
char *sy_audit_count_words (const SyAudit *audit, SyTranslate translate);
/* Where the journal ended on that day and where it ends now: a line each. */
char *sy_audit_head_words (const SyAudit *audit, SyTranslate translate);
/* The policies that what is in force was judged under, with the reason where limits are looser: a line each. */
char *sy_audit_policy_words (const SyAudit *audit, SyTranslate translate);
/* That work in no task of this record is not assessed at all; what a day is here. N_(). */
extern const char sy_audit_elsewhere[], sy_audit_day_means[];

#endif
