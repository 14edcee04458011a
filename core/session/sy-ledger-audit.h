/* SPDX-License-Identifier: MIT */
#ifndef SY_LEDGER_AUDIT_H
#define SY_LEDGER_AUDIT_H

#include "sy-audit.h"
#include "sy-ledger.h"

/**
 * sy_ledger_audit:
 * The register as the record knew it at the end of a day, in UTC, by when its lines were written.
 * Parameters:   day       "2026-11-26", not NULL. Any day; before the first line it is empty.
 *               progress  as sy_store_as_at() has it; may be NULL.
 * Return value: new; NULL with the error: SY_LEDGER_ERROR_DEED for a day that is none, or what the store says.
 */
SyAudit *sy_ledger_audit (SyLedger *ledger, const char *day, SyProgressFunc progress, gpointer user_data, GError **error);

#endif
