/* SPDX-License-Identifier: MIT */
#include "sy-arena.h"

#include <stdalign.h>
#include <stdint.h>
#include <string.h>

void *
sy_arena_take (SyArena *arena, size_t size)
{
  const size_t grain = alignof (max_align_t);

  if (size > SIZE_MAX - grain)
    return NULL;
  size = (size + grain - 1) / grain * grain;

  size_t pad = arena->next ? (grain - (uintptr_t) arena->next % grain) % grain : 0;
  if (arena->next == NULL || (size_t) (arena->end - arena->next) < pad + size)
    {
      size_t got = size + grain;
      char *block = arena->more ? arena->more (arena->user, &got) : NULL;
      if (block == NULL)
        return NULL;
      arena->next = block;
      arena->end = block + got;
      pad = (grain - (uintptr_t) block % grain) % grain;
    }

  char *taken = arena->next + pad;
  arena->next = taken + size;
  memset (taken, 0, size);
  return taken;
}
