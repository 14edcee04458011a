/* SPDX-License-Identifier: MIT */
#ifndef SY_FINDINGS_JSON_H
#define SY_FINDINGS_JSON_H

#include <glib.h>

#include "sy-findings.h"

/* Findings as one compact JSON object (no newline), in English; the contract is docs/facts.md. */
void sy_findings_write_json (GString *out, const SyFindings *findings, bool worksheet);

#endif
