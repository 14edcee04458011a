/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"
#include "sy-sheet.h"

static const char *
translate (const char *msgid)
{
  return gettext (msgid);
}

int
cli_sheet (int argc, char **argv)
{
  g_autofree char *kind = NULL, *out = NULL, *units = NULL, *paper = NULL;
  const GOptionEntry entries[] = {
    { "kind", 0, 0, G_OPTION_ARG_STRING, &kind, N_ ("survey: the blank measuring sheet"), N_ ("KIND") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_ ("The PDF to write"), N_ ("FILE") },
    { "units", 0, 0, G_OPTION_ARG_STRING, &units, N_ ("metric or us"), N_ ("UNITS") },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &paper, N_ ("a4 or letter"), N_ ("PAPER") },
    { NULL }
  };
  g_autoptr (GError) error = NULL;
  g_autofree char *now = NULL;
  gboolean clock_set;
  SySurveySheet sheet = { .units = SY_UNITS_METRIC, .paper = SY_PAPER_A4, .translate = translate,
                          .program = "steelyard " SY_VERSION };

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  if (kind == NULL || strcmp (kind, "survey") != 0)
    return cli_say (CLI_PROBLEM, _ ("--kind: given %s; allowed: survey"), kind ? kind : _ ("nothing"));
  if (out == NULL)
    return cli_say (CLI_PROBLEM, "%s", _ ("-o: given nothing; allowed: the path of the PDF to write"));
  if (units != NULL && !sy_units_from_id (units, &sheet.units))
    return cli_say (CLI_PROBLEM, _ ("--units: given %s; allowed: metric, us"), units);
  if (paper != NULL && strcmp (paper, "letter") == 0)
    sheet.paper = SY_PAPER_LETTER;
  else if (paper != NULL && strcmp (paper, "a4") != 0)
    return cli_say (CLI_PROBLEM, _ ("--paper: given %s; allowed: a4, letter"), paper);
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  if (!sy_survey_write_pdf (&sheet, out, now, &error))
    return cli_say_error (CLI_FAILED, error);
  return CLI_DONE;
}
