/* SPDX-License-Identifier: MIT */

/* Linked into sanitized test programs only. Past 2048 quarks (every name of a widget is one) GLib goes over to a larger table
   and leaves its first one behind on purpose, for threads that may still read it: that is no leak of ours. The table is found
   before, among the variables of GLib, and the leak check told of it alone. */

#define _GNU_SOURCE 1 /* dl_iterate_phdr */
#include <glib.h>
#include <link.h>
#include <string.h>

/* Of the sanitizers; its header is not with every compiler. */
size_t __sanitizer_get_allocated_size (const volatile void *p);
int __sanitizer_get_ownership (const volatile void *p);
void __lsan_ignore_object (const void *p);

/* What GLib 2.74 begins with: g_quark_init() in gquark.c. */
#define FIRST_TABLE (2048 * sizeof (char *))

typedef struct
{
  GQuark quark;
  const char *text;
} Known;

static int
look_in (struct dl_phdr_info *info, size_t size, void *data)
{
  const Known *known = data;

  (void) size;
  if (strstr (info->dlpi_name, "libglib-2.0.so") == NULL)
    return 0;
  for (int i = 0; i < info->dlpi_phnum; i++)
    {
      const ElfW (Phdr) *part = &info->dlpi_phdr[i];
      const char *begin = (const char *) info->dlpi_addr + part->p_vaddr;

      if (part->p_type != PT_LOAD || (part->p_flags & PF_W) == 0)
        continue;
      for (size_t at = 0; at + sizeof (void *) <= part->p_memsz; at += sizeof (void *))
        {
          const char *const *table;

          memcpy (&table, begin + at, sizeof table);
          if (table != NULL && __sanitizer_get_ownership (table) && __sanitizer_get_allocated_size (table) == FIRST_TABLE
              && table[known->quark] == known->text)
            {
              __lsan_ignore_object (table);
              return 1;
            }
        }
    }
  return 0;
}

__attribute__ ((constructor)) static void
keep_quarks (void)
{
  const GQuark quark = g_quark_from_static_string ("steelyard-test-keep-quarks");
  Known known = { quark, g_quark_to_string (quark) };

  dl_iterate_phdr (look_in, &known);
}
