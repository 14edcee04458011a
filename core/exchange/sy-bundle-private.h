/* SPDX-License-Identifier: MIT */
#ifndef SY_BUNDLE_PRIVATE_H
#define SY_BUNDLE_PRIVATE_H

#include "sy-bundle.h"

/* What writing and reading a bundle have in common: the names of its members. */

#define SY_BUNDLE_MARK "steelyard journal 1"

typedef enum
{
  SY_BUNDLE_KIND,
  SY_BUNDLE_TEXT,
  SY_BUNDLE_NUMBER,
  SY_BUNDLE_FLAG,
} SyBundleType;

typedef struct
{
  const char *name;
  SyBundleType type;
  gsize offset; /* in SyEvent */
} SyBundleField;

/* The members of an event, in the order of its canonical bytes; the last, "origin", is there when it is not empty. */
#define SY_BUNDLE_N_FIELDS 19
extern const SyBundleField sy_bundle_fields[SY_BUNDLE_N_FIELDS];

#endif
