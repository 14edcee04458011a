/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

int
cli_say (int code, const char *format, ...)
{
  va_list args;
  g_autofree char *text = NULL;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  fprintf (stderr, "steelyard-cli: %s\n", text);
  return code;
}

int
cli_say_error (int code, const GError *error)
{
  return cli_say (code, "%s", error->message);
}

gboolean
cli_options (int *argc, char ***argv, const GOptionEntry *entries, const char *arguments)
{
  g_autoptr (GOptionContext) context = g_option_context_new (arguments);
  g_autoptr (GError) error = NULL;
  g_autofree char *program = g_strconcat ("steelyard-cli ", (*argv)[0], NULL);

  g_set_prgname (program);
  g_option_context_add_main_entries (context, entries, SY_GETTEXT_DOMAIN);
  if (g_option_context_parse (context, argc, argv, &error))
    {
      gboolean clock_set;
      g_autofree char *now = sy_clock_now (&clock_set, &error);

      /* A day that is none would be past no other: nothing would be told as due. */
      if (now == NULL)
        {
          cli_say_error (CLI_PROBLEM, error);
          return FALSE;
        }
      /* "--" only ends the options */
      if (*argc > 1 && strcmp ((*argv)[1], "--") == 0)
        {
          for (int i = 1; i + 1 < *argc; i++)
            (*argv)[i] = (*argv)[i + 1];
          (*argc)--;
        }
      return TRUE;
    }
  cli_say_error (CLI_PROBLEM, error);
  return FALSE;
}

void
cli_print_problems (const char *file, const SyProblems *problems)
{
  for (int i = 0; i < problems->count; i++)
    {
      g_autofree char *text = sy_words_problem (&problems->items[i]);
      fprintf (stderr, "%s:%d: %s\n", file, problems->items[i].line, text);
    }
  if (problems->dropped > 0)
    fprintf (stderr, ngettext ("%s: %d further problem\n", "%s: %d further problems\n", (gulong) problems->dropped),
             file, problems->dropped);
}

char *
cli_read (const char *file, gsize max, gsize *length, GError **error)
{
  gboolean is_input = strcmp (file, "-") == 0;
  FILE *from = is_input ? stdin : fopen (file, "rb");
  GString *text;
  gsize got;
  int code = 0;

  if (from == NULL)
    {
      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (errno), "%s: %s", file, g_strerror (errno));
      return NULL;
    }
  text = g_string_new (NULL);
  do
    {
      gsize old = text->len, want = MIN (max + 1 - old, 65536);
      g_string_set_size (text, old + want);
      got = fread (text->str + old, 1, want, from);
      if (got == 0 && ferror (from))
        code = errno ? errno : EIO;
      g_string_truncate (text, old + got);
    }
  while (got > 0 && text->len <= max);
  if (!is_input)
    fclose (from);
  if (code != 0)
    {
      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (code), "%s: %s", file, g_strerror (code));
      g_string_free (text, TRUE);
      return NULL;
    }
  *length = text->len;
  return g_string_free (text, FALSE);
}

static SyDesk *
desk_of_policy (const char *policy_file, GError **error)
{
  g_autofree char *text = NULL;
  gsize length = 0;

  if (policy_file == NULL)
    return sy_desk_new (NULL, 0, error);
  SyDesk *named = sy_desk_new_named (policy_file, error);
  if (named != NULL || (error != NULL && *error != NULL))
    return named;
  text = cli_read (policy_file, SY_JSON_DOCUMENT_MAX, &length, error);
  return text ? sy_desk_new (text, length, error) : NULL;
}

SyDesk *
cli_desk (const char *policy_file, const char *region, GError **error)
{
  g_autoptr (SyDesk) desk = desk_of_policy (policy_file, error);

  return desk != NULL ? sy_desk_in_region (desk, region, error) : NULL;
}
