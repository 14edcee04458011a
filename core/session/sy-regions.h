/* SPDX-License-Identifier: MIT */
#ifndef SY_REGIONS_H
#define SY_REGIONS_H

#include <glib.h>

#include "sy-region.h"

/* Regions that come with the program, for the doors. */

/* All of them, by id; static, any thread. */
const SyRegion *sy_regions (gsize *n);
/* NULL: no such region. */
const SyRegion *sy_regions_find (const char *id);

/* JSON, one object without newline: id, title, edition, units and how many rows it has; one row of it. */
void sy_region_write_json (GString *out, const SyRegion *region);
void sy_defers_to_write_json (GString *out, const SyDefersTo *row);
void sy_interval_write_json (GString *out, const SyInterval *interval);

#endif
