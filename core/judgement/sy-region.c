/* SPDX-License-Identifier: MIT */
#include "sy-region.h"

bool
sy_defers_to_is_of (const SyDefersTo *row, const SyMethod *method)
{
  if (row->methods == 0)
    return true;
  for (size_t i = 0; i < sy_method_count (); i++)
    if (sy_method_at (i) == method)
      return (row->methods >> i & 1u) != 0;
  return false;
}
