/* SPDX-License-Identifier: MIT */
#include "sy-gear-finder.h"

#include <math.h>

#include "sy-json.h"

void
sy_gear_fit_free (SyGearFit *fit)
{
  if (fit == NULL)
    return;
  g_free (fit->leg);
  g_free (fit->kind);
  g_free (fit->element);
  g_free (fit->item);
  g_free (fit->name);
  g_free (fit->identity);
  g_ptr_array_unref (fit->why);
  g_ptr_array_unref (fit->remarks);
  g_free (fit);
}

void
sy_gear_fit_write_json (GString *out, const SyGearFit *fit)
{
  g_autofree char *caution = sy_words_screening (NULL);

  g_string_append_c (out, '{');
  sy_register_write_text (out, "leg", fit->leg);
  sy_register_write_text (out, "kind", fit->kind);
  sy_register_write_text (out, "element", fit->element);
  sy_register_write_text (out, "item", fit->item);
  sy_register_write_text (out, "name", fit->name);
  sy_register_write_text (out, "identity", fit->identity);
  g_string_append (out, ",\"utilisation\":");
  sy_json_write_number (out, fit->utilisation);
  if (isinf (fit->utilisation))
    g_string_append (out, ",\"state\":\"unbounded\"");
  g_string_append_printf (out, ",\"fits\":%s", fit->fits ? "true" : "false");
  sy_register_write_texts (out, "why", fit->why);
  sy_register_write_texts (out, "remarks", fit->remarks);
  sy_register_write_text (out, "caution", caution);
  g_string_append_c (out, '}');
}
