/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "sy-json.h"
#include "sy-number.h"

void
sy_json_write_text (GString *out, const char *text)
{
  const char *plain = text;

  g_string_append_c (out, '"');
  for (const char *p = text;; p++)
    {
      unsigned char c = (unsigned char) *p;

      if (c >= 0x20 && c != '"' && c != '\\' && c != 0x7f)
        continue;
      g_string_append_len (out, plain, p - plain);
      plain = p + 1;
      if (c == '\0')
        break;
      if (c == '"' || c == '\\')
        {
          g_string_append_c (out, '\\');
          g_string_append_c (out, (char) c);
        }
      else if (c == '\n')
        g_string_append (out, "\\n");
      else if (c == '\t')
        g_string_append (out, "\\t");
      else
        g_string_append_printf (out, "\\u%04x", c);
    }
  g_string_append_c (out, '"');
}

void
sy_json_write_number (GString *out, double value)
{
  char number[SY_NUMBER_TEXT_MAX];

  if (isfinite (value))
    g_string_append_len (out, number, (gssize) sy_number_print (value, number));
  else
    g_string_append (out, "null");
}

void
sy_json_write_tree (GString *out, const SyJson *tree)
{
  switch (tree->type)
    {
    case SY_JSON_NULL:
    case SY_JSON_FALSE:
    case SY_JSON_TRUE:
    case SY_JSON_NUMBER:
      g_string_append_len (out, tree->raw, (gssize) tree->raw_length);
      break;
    case SY_JSON_TEXT:
      sy_json_write_text (out, tree->text);
      break;
    case SY_JSON_ARRAY:
    case SY_JSON_OBJECT:
      g_string_append_c (out, tree->type == SY_JSON_ARRAY ? '[' : '{');
      for (const SyJson *child = tree->first; child != NULL; child = child->next)
        {
          if (child != tree->first)
            g_string_append_c (out, ',');
          if (child->key != NULL)
            {
              sy_json_write_text (out, child->key);
              g_string_append_c (out, ':');
            }
          sy_json_write_tree (out, child);
        }
      g_string_append_c (out, tree->type == SY_JSON_ARRAY ? ']' : '}');
      break;
    }
}
