/* SPDX-License-Identifier: MIT */
#include "sy-memory.h"

#include <string.h>

#define BLOCK_BYTES (64u * 1024u)

typedef struct Block
{
  struct Block *next;
  size_t size;
  char *bytes;
} Block;

struct SyMemory
{
  SyArena arena;
  Block *first;
  Block *last; /* in use; those behind it are kept from before a reset */
};

static void *
more (void *user, size_t *size)
{
  SyMemory *memory = user;
  Block *next = memory->last ? memory->last->next : memory->first;

  /* A kept block serves again when it is large enough. */
  if (next == NULL || next->size < *size)
    {
      Block *block = g_new (Block, 1);
      block->size = MAX (*size, BLOCK_BYTES);
      block->bytes = g_malloc (block->size);
      block->next = next;
      if (memory->last != NULL)
        memory->last->next = block;
      else
        memory->first = block;
      next = block;
    }
  memory->last = next;
  *size = next->size;
  return next->bytes;
}

SyMemory *
sy_memory_new (void)
{
  SyMemory *memory = g_new0 (SyMemory, 1);

  memory->arena.more = more;
  memory->arena.user = memory;
  return memory;
}

void
sy_memory_free (SyMemory *memory)
{
  if (memory == NULL)
    return;
  for (Block *block = memory->first; block != NULL;)
    {
      Block *next = block->next;
      g_free (block->bytes);
      g_free (block);
      block = next;
    }
  g_free (memory);
}

void
sy_memory_reset (SyMemory *memory)
{
  memory->last = NULL;
  memory->arena.next = NULL;
  memory->arena.end = NULL;
}

void *
sy_memory_take (SyMemory *memory, size_t size)
{
  void *taken = sy_arena_take (&memory->arena, size);

  if (taken == NULL)
    g_error ("out of memory: %" G_GSIZE_FORMAT " bytes", size);
  return taken;
}

char *
sy_memory_text (SyMemory *memory, const char *text, size_t length)
{
  char *copy = sy_memory_take (memory, length + 1);

  memcpy (copy, text, length);
  return copy;
}
