/* SPDX-License-Identifier: MIT */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <json-glib/json-glib.h>

#include "bench-lifts.h"

/*
 * bench-lines CLI: `assess --lines` on many lifts against a json-glib parse of the same file, line by line,
 * plus the exact printing of as many numbers as came out, each by trying 15, 16 and 17 digits and reading back.
 * One thread on either side; wall time, the program's start included.
 */

#define N_LINES 100000
#define N_RUNS 3

static void
write_lifts (const char *path)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (2);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < N_LINES; i++)
    {
      bench_lift_append (text, random);
      g_string_append_c (text, '\n');
    }
  if (!g_file_set_contents (path, text->str, (gssize) text->len, &error))
    g_error ("%s", error->message);
}

static double
run_cli (const char *cli, const char *in, const char *out)
{
  double start = bench_seconds ();
  pid_t child = fork ();
  int status = 0;

  if (child == 0)
    {
      int file = open (out, O_WRONLY | O_CREAT | O_TRUNC, 0600);

      if (file < 0 || dup2 (file, STDOUT_FILENO) < 0)
        _exit (126);
      execl (cli, cli, "assess", "--lines", in, (char *) NULL);
      _exit (127);
    }
  if (child < 0 || waitpid (child, &status, 0) < 0 || !WIFEXITED (status) || WEXITSTATUS (status) != 0)
    g_error ("%s assess --lines %s ended badly (%d)", cli, in, status);
  return bench_seconds () - start;
}

/* Every number outside of texts. */
static GArray *
numbers_of (const char *text, gsize length)
{
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (double));
  gboolean quoted = FALSE;

  for (gsize i = 0; i < length; i++)
    {
      if (text[i] == '\\' && quoted)
        i++;
      else if (text[i] == '"')
        quoted = !quoted;
      else if (!quoted && (g_ascii_isdigit (text[i]) || text[i] == '-'))
        {
          char *end;
          double value = g_ascii_strtod (text + i, &end);

          g_array_append_val (numbers, value);
          i = (gsize) (end - text) - 1;
        }
    }
  return numbers;
}

static double
parse_all (const char *path)
{
  double start = bench_seconds ();
  g_autofree char *text = NULL;
  gsize length, lines = 0;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();

  if (!g_file_get_contents (path, &text, &length, &error))
    g_error ("%s", error->message);
  for (char *line = text, *end; (end = memchr (line, '\n', length - (gsize) (line - text))); line = end + 1)
    {
      if (!json_parser_load_from_data (parser, line, end - line, &error))
        g_error ("%s", error->message);
      lines++;
    }
  g_assert (lines == N_LINES);
  return bench_seconds () - start;
}

static double
print_all (const GArray *numbers, guint64 *sum)
{
  double start = bench_seconds ();

  for (guint i = 0; i < numbers->len; i++)
    {
      double value = g_array_index (numbers, double, i);
      char text[40];

      for (int digits = 15; digits <= 17; digits++)
        {
          *sum += (guint64) snprintf (text, sizeof text, "%.*g", digits, value);
          if (strtod (text, NULL) == value)
            break;
        }
    }
  return bench_seconds () - start;
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("steelyard-bench-XXXXXX", &error);
  double ours = G_MAXDOUBLE, parsing = G_MAXDOUBLE, printing = G_MAXDOUBLE;
  guint64 sum = 0;

  if (argc != 2 || folder == NULL)
    g_error ("usage: bench-lines CLI");

  g_autofree char *in = g_build_filename (folder, "in.jsonl", NULL);
  g_autofree char *out = g_build_filename (folder, "out.jsonl", NULL);
  g_autofree char *answers = NULL;
  gsize length;

  write_lifts (in);
  for (int run = 0; run < N_RUNS; run++)
    bench_keep_best (&ours, run_cli (argv[1], in, out));
  if (!g_file_get_contents (out, &answers, &length, &error))
    g_error ("%s", error->message);

  g_autoptr (GArray) numbers = numbers_of (answers, length);

  if (numbers->len < N_LINES)
    g_error ("only %u numbers in %d answers", numbers->len, N_LINES);
  for (int run = 0; run < N_RUNS; run++)
    {
      bench_keep_best (&parsing, parse_all (in));
      bench_keep_best (&printing, print_all (numbers, &sum));
    }
  g_print ("lines: %d lifts, %" G_GSIZE_FORMAT " MB out, %u numbers, best of %d (check %" G_GUINT64_FORMAT ")\n",
           N_LINES, length / 1000000, numbers->len, N_RUNS, sum);
  g_print ("  json-glib parse   %6.2f s\n  exact printing    %6.2f s\n", parsing, printing);
  g_print ("  assess --lines    %6.2f s  %.0f lifts a second\n", ours, N_LINES / ours);
  g_print ("  ratio             %6.2f    (reach: at most 1.6)\n", ours / (parsing + printing));
  g_unlink (in);
  g_unlink (out);
  g_rmdir (folder);
  return EXIT_SUCCESS;
}
