/* SPDX-License-Identifier: MIT */
#ifndef SY_JSON_PLACE_H
#define SY_JSON_PLACE_H

#include <glib.h>

/* Where one stands in a document, kept on the stack and written out only for a report. */
typedef struct SyJsonPlace
{
  const struct SyJsonPlace *outer; /* NULL: the place is directly under the document */
  const char *key;                 /* of a member; NULL: an item of a list           */
  gsize item;
} SyJsonPlace;

/* "$.sessions[0].work"; NULL is the document itself, "$". */
void sy_json_place_write (GString *path, const SyJsonPlace *place);

#endif
