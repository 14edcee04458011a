/* SPDX-License-Identifier: MIT */
#ifndef SY_POLICY_FILE_H
#define SY_POLICY_FILE_H

#include <glib.h>

#include "sy-policy.h"

#define SY_EXCHANGE_ERROR (sy_exchange_error_quark ())
GQuark sy_exchange_error_quark (void);
typedef enum
{
  SY_EXCHANGE_ERROR_POLICY, /* no policy: the message names the place and what is allowed there */
} SyExchangeError;

/* The bytes of the policy that comes with the program (data/policies/steelyard-default.json); new reference. */
GBytes *sy_policy_builtin (void);

/* A policy that comes with the program by its short name: "default", or "uk-filter", which is the same with the guideline
   filter for lifting besides. NULL: no such name. New reference. */
GBytes *sy_policy_named (const char *name);

/**
 * sy_policy_read:
 * Strict: passes the scanner, no unknown members, every figure in range.
 * A policy that drops or loosens a row of the built-in one, or assumes a heavier reference mass, needs a text
 * in "loosened_because", which is then said with every result.
 * Parameters:   out  resolved and ready for use; written only on TRUE.
 */
gboolean sy_policy_read (const char *text, gsize length, SyPolicy *out, GError **error);

#endif
