/* SPDX-License-Identifier: MIT */
#include "sy-store-private.h"

/* Decomposed, so that accents stand apart as marks, and without case. */
static char *
fold_case (const char *text)
{
  g_autofree char *apart = g_utf8_normalize (text, -1, G_NORMALIZE_ALL);

  return g_utf8_casefold (apart != NULL ? apart : "", -1);
}

char *
sy_store_fold (const char *text)
{
  g_autofree char *folded = fold_case (text);
  GString *out = g_string_new (NULL);
  gboolean in_word = FALSE;

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      if (g_unichar_ismark (letter))
        continue;
      if (!g_unichar_isalnum (letter))
        {
          in_word = FALSE;
          continue;
        }
      if (!in_word)
        g_string_append_c (out, ' ');
      in_word = TRUE;
      g_string_append_unichar (out, letter);
    }
  return g_string_free (out, FALSE);
}

char *
sy_store_name_key (const char *name)
{
  g_autofree char *folded = fold_case (name);
  GString *out = g_string_new (NULL);

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    if (!g_unichar_ismark (g_utf8_get_char (at)))
      g_string_append_unichar (out, g_utf8_get_char (at));
  return g_string_free (out, FALSE);
}
