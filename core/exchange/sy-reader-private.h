/* SPDX-License-Identifier: MIT */
#ifndef SY_READER_PRIVATE_H
#define SY_READER_PRIVATE_H

#include <glib.h>

#include "sy-json.h"
#include "sy-policy.h"

/* Strict reading of a policy or region. The first thing wrong is kept; the readers go on and change nothing that matters. */
typedef struct
{
  GError **error;
  const char *what; /* "policy": begins every message */
  gboolean failed;
} SyReader;

/* The document as a tree in @memory, at most @max bytes; NULL, and failed, where it is none. */
const SyJson *sy_reader_scan (SyReader *reader, const char *text, gsize length, gsize max, SyMemory *memory);
void sy_reader_fail (SyReader *reader, const SyJson *at, const char *format, ...) G_GNUC_PRINTF (3, 4);
/* That it is an object and has no members but these (NULL-terminated). */
void sy_reader_members (SyReader *reader, const SyJson *object, const char *const *names);
/* A text into @to, "" where it may be absent and is. */
void sy_reader_text (SyReader *reader, const SyJson *object, const char *name, char *to, gsize size, gboolean required);
double sy_reader_number (SyReader *reader, const SyJson *object, const char *name, double low, double high);
/* A required list or object; NULL, and failed, where it is none. */
const SyJson *sy_reader_part (SyReader *reader, const SyJson *object, const char *name, SyJsonType type);
/* A list that may be absent, of at most @max; NULL: absent, or failed. */
const SyJson *sy_reader_list (SyReader *reader, const SyJson *object, const char *name, gsize max);
gboolean sy_reader_flag (SyReader *reader, const SyJson *object, const char *name);
/* A kind of gear; the first one where there is no such kind, and failed. */
SyGearKind sy_reader_gear_kind (SyReader *reader, const SyJson *at, const char *id);

/* A region, alone or in a policy. */
void sy_reader_region (SyReader *reader, const SyJson *object, SyRegion *region);
/* A rule of a site: a title as in a region, whose section may be absent and whose source is the site. */
void sy_reader_rule (SyReader *reader, const SyJson *object, SyDefersTo *rule);

#endif
