/* SPDX-License-Identifier: MIT */
#ifndef SY_REGION_FILE_H
#define SY_REGION_FILE_H

#include <glib.h>

#include "sy-region.h"

/* Ids of the regions that come with the program (data/regions), by id; NULL-terminated, static. */
const char *const *sy_region_ids (void);
/* The bytes of one of them; NULL: no such region. New reference. */
GBytes *sy_region_bytes (const char *id);

/**
 * sy_region_read:
 * Strict: passes the scanner, no unknown members, every figure in range, every row with its source.
 * Parameters:   out  written only on TRUE.
 * Errors:       SY_EXCHANGE_ERROR_POLICY: the message names the place and what is allowed there.
 */
gboolean sy_region_read (const char *text, gsize length, SyRegion *out, GError **error);

/**
 * sy_region_into_policy:
 * The text of a policy with a region put in as its member "region", and "-REGION" behind its id: what the record then keeps,
 * so that it can be read years later what results deferred to.
 * Return value: new; NULL with SY_EXCHANGE_ERROR_POLICY: no such region, the policy has one already, or is none.
 */
GBytes *sy_region_into_policy (const char *policy, gsize length, const char *id, GError **error);

#endif
