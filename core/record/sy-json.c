/* SPDX-License-Identifier: MIT */
#include "sy-json.h"

#include <string.h>

#include "sy-json-place.h"
#include "sy-number.h"

/* Above this many members a hash table looks for duplicate keys. */
#define FEW_MEMBERS 24

typedef struct
{
  const char *start, *at, *end;
  int line;
  SyMemory *memory;
  SyProblems *problems;
} Scan;

void
sy_json_place_write (GString *path, const SyJsonPlace *place)
{
  if (place == NULL)
    {
      g_string_append_c (path, '$');
      return;
    }
  sy_json_place_write (path, place->outer);
  if (place->key != NULL)
    g_string_append_printf (path, ".%s", place->key);
  else
    g_string_append_printf (path, "[%" G_GSIZE_FORMAT "]", place->item);
}

static void
report (Scan *scan, SyProblemKind kind, const SyJsonPlace *place, const char *given, const char *allowed)
{
  g_autoptr (GString) path = g_string_new (NULL);

  sy_json_place_write (path, place);
  sy_problems_add (scan->problems, kind, scan->line, path->str, given, allowed, "");
}

/* What stands at the scanner, short enough for a message; bytes that are no text are spelled. */
static char *
excerpt (const Scan *scan)
{
  GString *text = g_string_new (NULL);
  const char *p = scan->at;

  if (p == scan->end)
    return g_string_free (g_string_assign (text, "the end of the text"), FALSE);
  gboolean is_word = g_ascii_isalnum (*p) || *p == '-' || *p == '+' || *p == '.';
  for (int i = 0; i < 20 && p < scan->end && (*p != '\n' || text->len == 0); i++)
    {
      if (is_word && *p != '\0' && strchr (",]} \t\r:", *p) != NULL)
        break;
      gunichar c = g_utf8_get_char_validated (p, scan->end - p);
      if (c == (gunichar) -1 || c == (gunichar) -2 || c < 0x20)
        {
          g_string_append_printf (text, "\\x%02x", (unsigned char) *p);
          p++;
        }
      else
        {
          g_string_append_unichar (text, c);
          p = g_utf8_next_char (p);
        }
    }
  return g_string_free (text, FALSE);
}

static void
report_here (Scan *scan, const SyJsonPlace *place, const char *allowed)
{
  g_autofree char *given = excerpt (scan);

  report (scan, SY_PROBLEM_SYNTAX, place, given, allowed);
}

static void
skip_blanks (Scan *scan)
{
  while (scan->at < scan->end)
    {
      char c = *scan->at;
      if (c == '\n')
        scan->line++;
      else if (c != ' ' && c != '\t' && c != '\r')
        break;
      scan->at++;
    }
}

static bool
is_digit (const Scan *scan, const char *p)
{
  return p < scan->end && *p >= '0' && *p <= '9';
}

static bool
scan_number (Scan *scan, const SyJsonPlace *place, SyJson *node)
{
  const char *p = scan->at;

  if (p < scan->end && *p == '-')
    p++;
  if (!is_digit (scan, p))
    goto bad;
  if (*p == '0' && is_digit (scan, p + 1))
    goto bad;
  while (is_digit (scan, p))
    p++;
  if (p < scan->end && *p == '.')
    {
      p++;
      if (!is_digit (scan, p))
        goto bad;
      while (is_digit (scan, p))
        p++;
    }
  if (p < scan->end && (*p == 'e' || *p == 'E'))
    {
      p++;
      if (p < scan->end && (*p == '+' || *p == '-'))
        p++;
      if (!is_digit (scan, p))
        goto bad;
      while (is_digit (scan, p))
        p++;
    }
  if (p < scan->end && (g_ascii_isalnum (*p) || *p == '.' || *p == '_'))
    goto bad;

  node->type = SY_JSON_NUMBER;
  node->raw = scan->at;
  node->raw_length = (size_t) (p - scan->at);
  if (!sy_number_read_json (node->raw, node->raw_length, &node->number))
    {
      g_autofree char *given = excerpt (scan);
      report (scan, SY_PROBLEM_RANGE, place, given, "a finite number, at most about 1.8e308");
      return false;
    }
  scan->at = p;
  return true;

bad:
  report_here (scan, place, "a number in decimal digits without leading zeros");
  return false;
}

static int
hex_digits (const Scan *scan, const char *p)
{
  int value = 0;

  if (scan->end - p < 4)
    return -1;
  for (int i = 0; i < 4; i++)
    {
      int digit = g_ascii_xdigit_value (p[i]);
      if (digit < 0)
        return -1;
      value = value * 16 + digit;
    }
  return value;
}

/* The text between quotes, unescaped; NULL after a report. */
static char *
scan_text (Scan *scan, const SyJsonPlace *place, size_t *length)
{
  const char *first = scan->at + 1, *p = first;
  bool escaped = false;

  while (p < scan->end && *p != '"')
    {
      if ((unsigned char) *p < 0x20)
        {
          scan->at = p;
          report_here (scan, place, "text without control characters; write them as escapes");
          return NULL;
        }
      if (*p == '\\')
        {
          escaped = true;
          p++;
          if (p == scan->end)
            break;
        }
      p++;
    }
  if (p >= scan->end)
    {
      scan->at = scan->end;
      report_here (scan, place, "text that ends with a quotation mark");
      return NULL;
    }
  const char *last = p;
  if (!escaped)
    {
      scan->at = last + 1;
      *length = (size_t) (last - first);
      return sy_memory_text (scan->memory, first, *length);
    }

  char *text = sy_memory_take (scan->memory, (size_t) (last - first) + 1), *to = text;
  for (p = first; p < last; p++)
    {
      if (*p != '\\')
        {
          *to++ = *p;
          continue;
        }
      static const char escapes[] = "\"\\/bfnrt", plain[] = "\"\\/\b\f\n\r\t";
      const char *found;
      scan->at = p;
      p++;
      if (*p == 'u')
        {
          int unit = hex_digits (scan, p + 1);
          gunichar c = (gunichar) unit;
          bool high = unit >= 0xd800 && unit < 0xdc00;
          if (unit <= 0 || (unit >= 0xdc00 && unit < 0xe000)
              || (high && (last - p < 11 || p[5] != '\\' || p[6] != 'u')))
            goto bad;
          p += 4;
          if (high)
            {
              int low = hex_digits (scan, p + 3);
              if (low < 0xdc00 || low > 0xdfff)
                goto bad;
              c = 0x10000u + (((gunichar) unit - 0xd800u) << 10) + ((gunichar) low - 0xdc00u);
              p += 6;
            }
          to += g_unichar_to_utf8 (c, to);
        }
      else if (*p != '\0' && (found = strchr (escapes, *p)) != NULL)
        *to++ = plain[found - escapes];
      else
        goto bad;
    }
  scan->at = last + 1;
  *length = (size_t) (to - text);
  return text;

bad:
  report_here (scan, place, "an escape of JSON (\\\" \\\\ \\/ \\b \\f \\n \\r \\t \\uXXXX, not \\u0000)");
  return NULL;
}

static bool scan_value (Scan *scan, const SyJsonPlace *place, int depth, SyJson *node);

static bool
word (Scan *scan, const char *text, SyJsonType type, SyJson *node)
{
  size_t length = strlen (text);

  if ((size_t) (scan->end - scan->at) < length || memcmp (scan->at, text, length) != 0
      || ((size_t) (scan->end - scan->at) > length && g_ascii_isalnum (scan->at[length])))
    return false;
  node->type = type;
  node->raw = scan->at;
  node->raw_length = length;
  scan->at += length;
  return true;
}

static void
append_child (SyJson *parent, SyJson **last, SyJson *child)
{
  if (*last == NULL)
    parent->first = child;
  else
    (*last)->next = child;
  *last = child;
  parent->n_children++;
}

static bool
scan_array (Scan *scan, const SyJsonPlace *place, int depth, SyJson *node)
{
  SyJson *last = NULL;

  node->type = SY_JSON_ARRAY;
  scan->at++;
  skip_blanks (scan);
  if (scan->at < scan->end && *scan->at == ']')
    {
      scan->at++;
      return true;
    }
  for (;;)
    {
      SyJsonPlace item = { place, NULL, node->n_children };
      SyJson *child = sy_memory_take (scan->memory, sizeof *child);

      if (!scan_value (scan, &item, depth, child))
        return false;
      append_child (node, &last, child);
      skip_blanks (scan);
      if (scan->at < scan->end && *scan->at == ']')
        {
          scan->at++;
          return true;
        }
      if (scan->at == scan->end || *scan->at != ',')
        {
          report_here (scan, place, "a comma or ] after an item of a list");
          return false;
        }
      scan->at++;
    }
}

/* True when the key is there already. */
static bool
key_taken (const SyJson *object, const char *key, GHashTable **keys)
{
  if (object->n_children < FEW_MEMBERS)
    {
      for (const SyJson *child = object->first; child != NULL; child = child->next)
        if (strcmp (child->key, key) == 0)
          return true;
      return false;
    }
  if (*keys == NULL)
    {
      *keys = g_hash_table_new (g_str_hash, g_str_equal);
      for (const SyJson *child = object->first; child != NULL; child = child->next)
        g_hash_table_add (*keys, (gpointer) child->key);
    }
  return !g_hash_table_add (*keys, (gpointer) key);
}

static bool
scan_object (Scan *scan, const SyJsonPlace *place, int depth, SyJson *node)
{
  g_autoptr (GHashTable) keys = NULL;
  SyJson *last = NULL;

  node->type = SY_JSON_OBJECT;
  scan->at++;
  skip_blanks (scan);
  if (scan->at < scan->end && *scan->at == '}')
    {
      scan->at++;
      return true;
    }
  for (;;)
    {
      size_t key_length;

      skip_blanks (scan);
      if (scan->at == scan->end || *scan->at != '"')
        {
          report_here (scan, place, "a key in quotation marks");
          return false;
        }
      int line = scan->line;
      char *key = scan_text (scan, place, &key_length);
      if (key == NULL)
        return false;
      SyJsonPlace member = { place, key, 0 };
      if (key_taken (node, key, &keys))
        report (scan, SY_PROBLEM_DUPLICATE, &member, key, "each key once");
      skip_blanks (scan);
      if (scan->at == scan->end || *scan->at != ':')
        {
          report_here (scan, &member, "a colon after the key");
          return false;
        }
      scan->at++;
      SyJson *child = sy_memory_take (scan->memory, sizeof *child);
      child->key = key;
      if (!scan_value (scan, &member, depth, child))
        return false;
      child->line = line;
      append_child (node, &last, child);
      skip_blanks (scan);
      if (scan->at < scan->end && *scan->at == '}')
        {
          scan->at++;
          return true;
        }
      if (scan->at == scan->end || *scan->at != ',')
        {
          report_here (scan, place, "a comma or } after a member");
          return false;
        }
      scan->at++;
    }
}

static bool
scan_value (Scan *scan, const SyJsonPlace *place, int depth, SyJson *node)
{
  skip_blanks (scan);
  node->line = scan->line;
  if (scan->at == scan->end)
    {
      report_here (scan, place, "a value");
      return false;
    }
  const char *start = scan->at;
  bool good;

  switch (*scan->at)
    {
    case '{':
    case '[':
      if (depth == SY_JSON_DEPTH_MAX)
        {
          report (scan, SY_PROBLEM_SIZE, place, "more than 32 levels", "at most 32 levels of { and [");
          return false;
        }
      good = *scan->at == '{' ? scan_object (scan, place, depth + 1, node)
                              : scan_array (scan, place, depth + 1, node);
      break;
    case '"':
      node->type = SY_JSON_TEXT;
      node->text = scan_text (scan, place, &node->text_length);
      good = node->text != NULL;
      break;
    case '-':
    case '0': case '1': case '2': case '3': case '4':
    case '5': case '6': case '7': case '8': case '9':
      return scan_number (scan, place, node);
    default:
      if (word (scan, "true", SY_JSON_TRUE, node) || word (scan, "false", SY_JSON_FALSE, node)
          || word (scan, "null", SY_JSON_NULL, node))
        return true;
      report_here (scan, place, "a JSON value (object, list, text, number, true, false, null)");
      return false;
    }
  node->raw = start;
  node->raw_length = (size_t) (scan->at - start);
  return good;
}

const SyJson *
sy_json_scan (const char *text, size_t length, size_t max, SyMemory *memory, SyProblems *problems)
{
  int before = problems->count + problems->dropped;
  const SyJson *root = sy_json_scan_on (text, length, max, memory, problems);

  return problems->count + problems->dropped == before ? root : NULL;
}

const SyJson *
sy_json_scan_on (const char *text, size_t length, size_t max, SyMemory *memory, SyProblems *problems)
{
  Scan scan = { text, text, text + length, 1, memory, problems };
  const char *bad;

  if (length > max)
    {
      g_autofree char *given = g_strdup_printf ("%" G_GSIZE_FORMAT " bytes", length);
      g_autofree char *allowed = g_strdup_printf ("at most %" G_GSIZE_FORMAT " bytes", max);
      sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$", given, allowed, "");
      return NULL;
    }
  if (!g_utf8_validate_len (text, length, &bad))
    {
      for (scan.at = text; scan.at < bad; scan.at++)
        scan.line += *scan.at == '\n';
      report_here (&scan, NULL, "valid UTF-8 text without U+0000");
      return NULL;
    }

  SyJson *root = sy_memory_take (memory, sizeof *root);
  if (!scan_value (&scan, NULL, 0, root))
    return NULL;
  skip_blanks (&scan);
  if (scan.at != scan.end)
    {
      report_here (&scan, NULL, "nothing after the document: exactly one JSON document");
      return NULL;
    }
  return root;
}

const SyJson *
sy_json_member (const SyJson *object, const char *key)
{
  if (object == NULL || object->type != SY_JSON_OBJECT)
    return NULL;
  for (const SyJson *child = object->first; child != NULL; child = child->next)
    if (strcmp (child->key, key) == 0)
      return child;
  return NULL;
}

const char *
sy_json_member_text (const SyJson *object, const char *key)
{
  const SyJson *member = sy_json_member (object, key);

  return member != NULL && member->type == SY_JSON_TEXT ? member->text : NULL;
}

double
sy_json_member_number (const SyJson *object, const char *key, double fallback)
{
  const SyJson *member = sy_json_member (object, key);

  return member != NULL && member->type == SY_JSON_NUMBER ? member->number : fallback;
}
