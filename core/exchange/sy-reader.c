/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-policy-file.h"
#include "sy-reader-private.h"

const SyJson *
sy_reader_scan (SyReader *reader, const char *text, gsize length, gsize max, SyMemory *memory)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  const SyJson *root = sy_json_scan (text, length, max, memory, problems);
  const SyProblem *first = &problems->items[0];

  if (root == NULL)
    {
      g_set_error (reader->error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY, "%s, line %d, %s: given %s, allowed %s",
                   reader->what, first->line, first->path, first->given, first->allowed);
      reader->failed = TRUE;
    }
  return root;
}

void
sy_reader_fail (SyReader *reader, const SyJson *at, const char *format, ...)
{
  va_list args;
  g_autofree char *text = NULL;

  if (reader->failed)
    return;
  reader->failed = TRUE;
  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (reader->error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY, "%s, line %d%s%s: %s", reader->what,
               at ? at->line : 1, at && at->key ? ", " : "", at && at->key ? at->key : "", text);
}

void
sy_reader_members (SyReader *reader, const SyJson *object, const char *const *names)
{
  if (object->type != SY_JSON_OBJECT)
    {
      sy_reader_fail (reader, object, "an object was expected");
      return;
    }
  for (const SyJson *member = object->first; member != NULL; member = member->next)
    if (!g_strv_contains (names, member->key))
      sy_reader_fail (reader, member, "unknown member");
}

void
sy_reader_text (SyReader *reader, const SyJson *object, const char *name, char *to, gsize size, gboolean required)
{
  const SyJson *member = sy_json_member (object, name);

  *to = '\0';
  if (member == NULL && !required)
    return;
  if (member == NULL)
    sy_reader_fail (reader, object, "\"%s\" is missing: a text", name);
  else if (member->type != SY_JSON_TEXT || member->text_length == 0 || member->text_length >= size)
    sy_reader_fail (reader, member, "a text of 1 to %" G_GSIZE_FORMAT " bytes was expected", size - 1);
  else
    memcpy (to, member->text, member->text_length + 1);
}

double
sy_reader_number (SyReader *reader, const SyJson *object, const char *name, double low, double high)
{
  const SyJson *member = sy_json_member (object, name);

  if (member == NULL)
    sy_reader_fail (reader, object, "\"%s\" is missing: a number from %g to %g", name, low, high);
  else if (member->type != SY_JSON_NUMBER || member->number < low || member->number > high)
    sy_reader_fail (reader, member, "a number from %g to %g was expected", low, high);
  else
    return member->number;
  return low;
}

const SyJson *
sy_reader_part (SyReader *reader, const SyJson *object, const char *name, SyJsonType type)
{
  const SyJson *member = sy_json_member (object, name);

  if (member == NULL)
    sy_reader_fail (reader, object, "\"%s\" is missing", name);
  else if (member->type != type)
    sy_reader_fail (reader, member, "%s was expected", type == SY_JSON_ARRAY ? "a list" : "an object");
  else
    return member;
  return NULL;
}

const SyJson *
sy_reader_list (SyReader *reader, const SyJson *object, const char *name, gsize max)
{
  const SyJson *member = sy_json_member (object, name);

  if (member == NULL || (member->type == SY_JSON_ARRAY && member->n_children <= max))
    return member;
  sy_reader_fail (reader, member, "a list of at most %" G_GSIZE_FORMAT " was expected", max);
  return NULL;
}

gboolean
sy_reader_flag (SyReader *reader, const SyJson *object, const char *name)
{
  const SyJson *member = sy_json_member (object, name);

  if (member != NULL && member->type != SY_JSON_TRUE && member->type != SY_JSON_FALSE)
    sy_reader_fail (reader, member, "true or false was expected");
  return member != NULL && member->type == SY_JSON_TRUE;
}

SyGearKind
sy_reader_gear_kind (SyReader *reader, const SyJson *at, const char *id)
{
  for (int i = 0; i < SY_N_GEAR_KINDS; i++)
    if (g_strcmp0 (id, sy_gear_kind_choices[i].id) == 0)
      return (SyGearKind) i;
  sy_reader_fail (reader, at, "a kind of gear was expected");
  return (SyGearKind) 0;
}
