/* SPDX-License-Identifier: MIT */
#ifndef SY_ARENA_H
#define SY_ARENA_H

#include <stddef.h>

/* Memory for lists, owned by the caller. The plain C rooms never allocate on their own. */
typedef struct
{
  char *next;                               /* first free byte                                    */
  char *end;                                /* one past the last byte                             */
  void *(*more) (void *user, size_t *size); /* a further block of at least *size, or NULL; may be NULL */
  void *user;
} SyArena;

/**
 * sy_arena_take:
 * Return value: @size zeroed bytes aligned for any type, or NULL when the arena and its @more are
 *               exhausted. The bytes live as long as the caller keeps the arena's memory.
 */
void *sy_arena_take (SyArena *arena, size_t size);

#endif
