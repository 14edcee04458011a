/* SPDX-License-Identifier: MIT */
#ifndef SY_RECORD_JSON_PRIVATE_H
#define SY_RECORD_JSON_PRIVATE_H

#include "sy-json.h"

/* Members of an object that has one already: ,"NAME":VALUE */
void sy_record_json_text (GString *out, const char *name, const char *value);
void sy_record_json_number (GString *out, const char *name, double value);
/* Who did it, in which role, when as claimed and as written, whether the clock was set, why. */
void sy_record_json_done (GString *out, const char *by, const char *role, const char *when, const char *written,
                          gboolean clock_set, const char *why);

#endif
