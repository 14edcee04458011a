/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>

#include "cli.h"
#include "sy-regions.h"

static int
print_rows (const char *id)
{
  g_autoptr (GString) out = g_string_new (NULL);
  const SyRegion *region = sy_regions_find (id);

  if (region == NULL)
    return cli_say (CLI_PROBLEM, _ ("no region “%s”; `steelyard-cli regions` lists them"), id);
  for (int i = 0; i < region->n_defers_to; i++)
    {
      g_string_truncate (out, 0);
      sy_defers_to_write_json (out, &region->defers_to[i]);
      puts (out->str);
    }
  for (int i = 0; i < region->n_intervals; i++)
    {
      g_string_truncate (out, 0);
      sy_interval_write_json (out, &region->intervals[i]);
      puts (out->str);
    }
  return CLI_DONE;
}

int
cli_regions (int argc, char **argv)
{
  const GOptionEntry entries[] = { { NULL } };
  gsize n;
  const SyRegion *regions = sy_regions (&n);

  if (!cli_options (&argc, &argv, entries, "[ID]"))
    return CLI_PROBLEM;
  if (argc > 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("at most one region can be named"));
  if (argc == 2)
    return print_rows (argv[1]);
  for (gsize i = 0; i < n; i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);

      sy_region_write_json (out, &regions[i]);
      puts (out->str);
    }
  return CLI_DONE;
}

int
cli_policy (int argc, char **argv)
{
  g_autofree char *policy = NULL, *region = NULL;
  const GOptionEntry entries[] = { CLI_POLICY_ENTRIES (&policy, &region), { NULL } };
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = NULL;
  const char *text;
  gsize length;

  if (!cli_options (&argc, &argv, entries, NULL))
    return CLI_PROBLEM;
  if (argc > 1)
    return cli_say (CLI_PROBLEM, _ ("unexpected: %s"), argv[1]);
  desk = cli_desk (policy, region, &error);
  if (desk == NULL)
    return cli_say_error (CLI_PROBLEM, error);
  text = sy_desk_policy_text (desk, &length);
  return fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0 ? CLI_DONE : CLI_FAILED;
}
