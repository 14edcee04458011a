/* SPDX-License-Identifier: MIT */
#include "sy-limit-words.h"

#include <math.h>
#include <string.h>

#include "sy-json.h"

/* "30 kg": as it is stored, in the unit that it is stored with. */
static char *
stored_quantity (const SyJson *root, const char *symbol)
{
  const SyJson *quantity = symbol != NULL ? sy_json_member (sy_json_member (root, "quantities"), symbol) : NULL;
  const char *unit = quantity != NULL ? sy_json_member_text (quantity, "unit") : NULL;
  double value = quantity != NULL ? sy_json_member_number (quantity, "value", NAN) : NAN;
  g_autofree char *number = isfinite (value) ? sy_words_number (value, 2) : g_strdup ("–");

  if (unit == NULL || strcmp (unit, "1") == 0)
    return g_steal_pointer (&number);
  return g_strdup_printf ("%s %s", number, unit);
}

static const char *
text_of (const SyJson *limit, const char *key)
{
  const char *text = sy_json_member_text (limit, key);

  return text != NULL ? text : "";
}

static gboolean
says (const SyJson *limit, const char *key)
{
  const SyJson *flag = sy_json_member (limit, key);

  return flag != NULL && flag->type == SY_JSON_TRUE;
}

static char *
line_words (const SyJson *root, const SyJson *limit, SyTranslate translate)
{
  const char *title = text_of (limit, "title"), *edition = text_of (limit, "edition");
  g_autofree char *value = stored_quantity (root, sy_json_member_text (limit, "value"));
  g_autofree char *at = stored_quantity (root, sy_json_member_text (limit, "limit"));
  double ratio = sy_json_member_number (limit, "ratio", INFINITY);
  g_autofree char *times = sy_words_number (ratio, 2);
  gboolean governs = says (limit, "governs");
  g_autofree char *words = NULL;

  if (isinf (ratio))
    words = sy_words_say (translate,
                          governs ? N_ ("{title} (governs): {value}; no limit holds. {edition}.")
                                  : N_ ("{title}: {value}; no limit holds. {edition}."),
                          "title", translate != NULL ? translate (title) : title, "value", value, "edition", edition, NULL);
  else
    words = sy_words_say (translate,
                          governs ? N_ ("{title} (governs): {value} against {limit}, {ratio} times the limit. {edition}.")
                                  : N_ ("{title}: {value} against {limit}, {ratio} times the limit. {edition}."),
                          "title", translate != NULL ? translate (title) : title, "value", value, "limit", at, "ratio", times,
                          "edition", edition, NULL);
  if (!says (limit, "from_memory"))
    return g_steal_pointer (&words);
  {
    g_autofree char *memory
      = sy_words_say (translate, N_ ("From memory, not checked against the standard."), NULL);

    return g_strdup_printf ("%s %s", words, memory);
  }
}

char *
sy_limit_words (const char *findings, SyTranslate translate)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (findings, strlen (findings), SY_JSON_DOCUMENT_MAX, memory, problems);
  const SyJson *limits = root != NULL ? sy_json_member (root, "limits") : NULL;
  GString *out = g_string_new (NULL);

  for (const SyJson *limit = limits != NULL ? limits->first : NULL; limit != NULL; limit = limit->next)
    {
      g_autofree char *line = line_words (root, limit, translate);

      g_string_append_printf (out, "%s%s", out->len > 0 ? "\n" : "", line);
    }
  return g_string_free (out, FALSE);
}
