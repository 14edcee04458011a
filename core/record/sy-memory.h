/* SPDX-License-Identifier: MIT */
#ifndef SY_MEMORY_H
#define SY_MEMORY_H

#include <glib.h>

#include "sy-arena.h"

/* Memory behind an arena: blocks that are reused after a reset and freed together. One thread at a time. */
typedef struct SyMemory SyMemory;

SyMemory *sy_memory_new (void);
void sy_memory_free (SyMemory *memory); /* NULL is fine */
void sy_memory_reset (SyMemory *memory);
/* @size zeroed bytes; never NULL (aborts when the machine is out of memory). */
void *sy_memory_take (SyMemory *memory, size_t size);
/* A NUL-terminated copy. */
char *sy_memory_text (SyMemory *memory, const char *text, size_t length);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyMemory, sy_memory_free)

#endif
