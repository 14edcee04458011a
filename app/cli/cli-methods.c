/* SPDX-License-Identifier: MIT */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli.h"

static void
print_field (const char *prefix, const SyField *field)
{
  g_autofree char *path = *prefix ? g_strconcat (prefix, ".", field->name, NULL) : g_strdup (field->name);
  char metric[SY_PROBLEM_ALLOWED_MAX], us[SY_PROBLEM_ALLOWED_MAX];

  if (field->type == SY_MEMBER_GROUP || field->type == SY_MEMBER_LIST)
    {
      g_autofree char *inner = field->type == SY_MEMBER_LIST ? g_strconcat (path, "[]", NULL) : g_strdup (path);
      printf ("%s\n  %s%s%s\n", inner, field->label, field->required ? "; required" : "",
              field->type == SY_MEMBER_LIST ? "; a list" : "");
      for (size_t i = 0; i < field->n_members; i++)
        print_field (inner, &field->members[i]);
      return;
    }
  sy_field_allowed (field, SY_UNITS_METRIC, metric, sizeof metric);
  sy_field_allowed (field, SY_UNITS_US, us, sizeof us);
  printf ("%s\n  %s%s\n", path, field->label, field->required ? "; required" : "");
  if (field->type == SY_MEMBER_NUMBER || field->type == SY_MEMBER_VECTOR || field->type == SY_MEMBER_VECTORS)
    {
      const char *unit = sy_unit_name (field->kind, SY_UNITS_METRIC);
      const char *unit_us = sy_unit_name (field->kind, SY_UNITS_US);
      printf ("  unit: %s (metric), %s (us)\n", strcmp (unit, "1") == 0 ? "none" : unit,
              strcmp (unit_us, "1") == 0 ? "none" : unit_us);
    }
  if (strcmp (metric, us) == 0)
    printf ("  allowed: %s\n", metric);
  else
    printf ("  allowed: %s (metric); %s (us)\n", metric, us);
  printf ("  default: %s\n", field->default_text ? field->default_text : field->required ? "none" : "not given");
  if (field->range_source != NULL)
    printf ("  source: %s\n", field->range_source);
  if (field->help != NULL)
    printf ("  %s\n", field->help);
}

int
cli_methods (int argc, char **argv)
{
  const GOptionEntry entries[] = { { NULL } };
  const SyMethod *method;

  if (!cli_options (&argc, &argv, entries, "[ID]"))
    return CLI_PROBLEM;
  if (argc > 2)
    return cli_say (CLI_PROBLEM, "%s", _ ("at most one method can be named"));
  if (argc < 2)
    {
      for (size_t i = 0; i < sy_method_count (); i++)
        {
          method = sy_method_at (i);
          printf ("%s\t%s\tedition %d\t%s\n", method->id, method->title, method->edition, method->source);
        }
      return CLI_DONE;
    }
  method = sy_method_find (argv[1]);
  if (method == NULL)
    return cli_say (CLI_PROBLEM, _ ("no method “%s”; `steelyard-cli methods` lists them"), argv[1]);
  printf ("%s: %s, edition %d\nsource: %s\n\n", method->id, method->title, method->edition, method->source);
  printf ("method\n  \"%s\"; required\nunits\n  \"metric\" or \"us\"; required\n", method->id);
  for (size_t i = 0; i < method->n_fields; i++)
    print_field ("", &method->fields[i]);
  for (size_t i = 0; i < sy_n_common_fields; i++)
    print_field ("", &sy_common_fields[i]);
  printf ("\nquantities\n");
  for (size_t i = 0; i < method->n_symbols; i++)
    printf ("  %s\t%s, %s\t%s\t%s\n", method->symbols[i].symbol, sy_unit_name (method->symbols[i].kind, SY_UNITS_METRIC),
            sy_unit_name (method->symbols[i].kind, SY_UNITS_US), method->symbols[i].label, method->symbols[i].source);
  return CLI_DONE;
}
