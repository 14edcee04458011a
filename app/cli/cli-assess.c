/* SPDX-License-Identifier: MIT */
#include <errno.h>
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

#define FLUSH_BYTES (64u * 1024u)

static gboolean
flush (GString *out)
{
  gboolean good = fwrite (out->str, 1, out->len, stdout) == out->len;

  g_string_truncate (out, 0);
  return good;
}

/* Lines of any source, one at a time, never holding more than one line and what was read ahead. */
typedef struct
{
  FILE *from;
  char *block;
  gsize at, end;
  GString *line;
} LineReader;

/* FALSE at the end. A line that is too long is kept only up to one byte past the limit, which the scanner then
   refuses. */
static gboolean
next_line (LineReader *reader)
{
  gboolean any = FALSE;

  g_string_truncate (reader->line, 0);
  for (;;)
    {
      if (reader->at == reader->end)
        {
          reader->at = 0;
          reader->end = fread (reader->block, 1, FLUSH_BYTES, reader->from);
          if (reader->end == 0)
            return any;
        }
      any = TRUE;
      const char *start = reader->block + reader->at;
      gsize have = reader->end - reader->at;
      const char *newline = memchr (start, '\n', have);
      gsize take = newline ? (gsize) (newline - start) : have;
      gsize room = SY_JSON_LINE_MAX + 1 - MIN (reader->line->len, SY_JSON_LINE_MAX + 1);

      g_string_append_len (reader->line, start, (gssize) MIN (take, room));
      reader->at += take + (newline ? 1 : 0);
      if (newline)
        return TRUE;
    }
}

static int
assess_lines (SyDesk *desk, const char *file, SyJudgeFlags flags, gboolean worksheet)
{
  gboolean is_input = strcmp (file, "-") == 0;
  LineReader reader = { is_input ? stdin : fopen (file, "rb"), NULL, 0, 0, NULL };
  int code = CLI_DONE, number = 0;

  if (reader.from == NULL)
    return cli_say (CLI_PROBLEM, "%s: %s", file, g_strerror (errno));
  reader.block = g_malloc (FLUSH_BYTES);
  reader.line = g_string_new (NULL);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyFindings *findings = g_new0 (SyFindings, 1);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  GString *out = g_string_sized_new (2 * FLUSH_BYTES);

  while (next_line (&reader))
    {
      gsize length = reader.line->len;

      if (length > 0 && reader.line->str[length - 1] == '\r')
        length--;
      if (!sy_desk_assess_line (desk, reader.line->str, length, ++number, flags, worksheet, memory, findings, problems,
                                out))
        code = CLI_PROBLEM;
      if (out->len >= FLUSH_BYTES && !flush (out))
        break;
    }
  if (ferror (reader.from))
    code = cli_say (CLI_PROBLEM, _ ("%s: reading failed after line %d"), file, number);
  if (!flush (out) || fflush (stdout) != 0)
    code = cli_say (CLI_FAILED, _ ("standard output: %s"), g_strerror (errno));
  g_string_free (out, TRUE);
  g_string_free (reader.line, TRUE);
  g_free (reader.block);
  if (!is_input)
    fclose (reader.from);
  return code;
}

static int
assess_file (SyDesk *desk, const char *file, SyJudgeFlags flags, gboolean worksheet)
{
  g_autoptr (GError) error = NULL;
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = NULL;
  gsize length = 0;
  g_autofree char *text = cli_read (file, SY_JSON_DOCUMENT_MAX, &length, &error);
  g_autofree char *json = NULL;

  if (text == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  assessment = sy_desk_assess (desk, text, length, flags, problems);
  if (assessment == NULL)
    {
      cli_print_problems (file, problems);
      return CLI_PROBLEM;
    }
  json = sy_assessment_json (assessment, worksheet);
  puts (json);
  return CLI_DONE;
}

int
cli_assess (int argc, char **argv)
{
  gboolean lines = FALSE, remedies = FALSE, spread = FALSE, worksheet = FALSE;
  g_autofree char *policy = NULL, *region = NULL;
  const GOptionEntry entries[] = {
    { "lines", 0, 0, G_OPTION_ARG_NONE, &lines, N_ ("One facts object a line in, one findings object a line out"), NULL },
    { "remedies", 0, 0, G_OPTION_ARG_NONE, &remedies, N_ ("With --lines: add what would help, line by line"), NULL },
    { "spread", 0, 0, G_OPTION_ARG_NONE, &spread, N_ ("Add what repeated measurements would give"), NULL },
    { "worksheet", 0, 0, G_OPTION_ARG_NONE, &worksheet, N_ ("Add the rounded view of the printed manual"), NULL },
    CLI_POLICY_ENTRIES (&policy, &region),
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  int code = CLI_DONE;

  if (!cli_options (&argc, &argv, entries, "FILE…"))
    return CLI_PROBLEM;
  if (argc < 2 || (lines && argc != 2))
    return cli_say (CLI_PROBLEM, "%s", lines ? _ ("--lines needs exactly one file, or “-”") : _ ("no file was named"));
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);

  /* The remedies of one document are wanted; of a hundred thousand lines, only when asked for. */
  SyJudgeFlags flags = (spread ? SY_JUDGE_SPREAD : SY_JUDGE_PLAIN)
                       | (remedies || !lines ? SY_JUDGE_REMEDIES : SY_JUDGE_PLAIN);
  if (lines)
    return assess_lines (desk, argv[1], flags, worksheet);
  for (int i = 1; i < argc; i++)
    if (assess_file (desk, argv[i], flags, worksheet) != CLI_DONE)
      code = CLI_PROBLEM;
  return code;
}
