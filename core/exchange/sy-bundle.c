/* SPDX-License-Identifier: MIT */
#include "sy-bundle-private.h"

#include <string.h>

#include "sy-json.h"

G_DEFINE_QUARK (sy-bundle-error-quark, sy_bundle_error)

/* How many bytes are read between two calls of the progress function. */
#define PROGRESS_BYTES (1024u * 1024u)

/* Everything that reading a bundle needs at hand. The document is cut at its list of lines, so that no more than one
   line's tree is in memory and it can be stopped at any line. */
typedef struct
{
  const char *text;
  gsize length;
  gsize first, end; /* of the list of lines: behind its "[", at its "]" */
  SyMemory *memory;
  SyProblems *problems;
  SyBundle *bundle;
  GError **error;
} Reader;

G_GNUC_PRINTF (3, 4)
static gboolean
refuse (Reader *reader, guint64 line, const char *format, ...)
{
  va_list arguments;
  g_autofree char *what = NULL;

  va_start (arguments, format);
  what = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (line == 0)
    g_set_error (reader->error, SY_BUNDLE_ERROR, SY_BUNDLE_ERROR_INVALID, "The bundle does not hold: %s.", what);
  else
    g_set_error (reader->error, SY_BUNDLE_ERROR, SY_BUNDLE_ERROR_INVALID,
                 "The bundle does not hold at line %" G_GUINT64_FORMAT ": %s.", line, what);
  return FALSE;
}

static gboolean
refuse_problem (Reader *reader, guint64 line)
{
  const SyProblem *problem = &reader->problems->items[0];

  return refuse (reader, line, "%s: expected %s, found %s", problem->path, problem->allowed, problem->given);
}

static gboolean
is_blank (char c)
{
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

static gsize
skip_blanks (const Reader *reader, gsize at)
{
  while (at < reader->length && is_blank (reader->text[at]))
    at++;
  return at;
}

/* Behind the string that begins at @at. */
static gsize
skip_string (const Reader *reader, gsize at)
{
  for (at++; at < reader->length && reader->text[at] != '"'; at++)
    if (reader->text[at] == '\\')
      at++;
  return MIN (at + 1, reader->length);
}

/* Behind the object or list that begins at @at; whether it is one at all is the scanner's matter. */
static gsize
skip_nest (const Reader *reader, gsize at)
{
  gsize depth = 0;

  while (at < reader->length)
    {
      char c = reader->text[at];

      if (c == '"')
        {
          at = skip_string (reader, at);
          continue;
        }
      at++;
      if (c == '{' || c == '[')
        depth++;
      else if ((c == '}' || c == ']') && --depth == 0)
        return at;
    }
  return at;
}

/* The list of lines is the value of the outermost object's "lines", written just so. */
static gboolean
find_lines (Reader *reader)
{
  static const char key[] = "\"lines\"";
  gsize at = skip_blanks (reader, 0);

  if (at == reader->length || reader->text[at] != '{')
    return FALSE;
  for (at++; at < reader->length; at = skip_blanks (reader, at))
    {
      gsize from = at;

      if (reader->text[at] == '{' || reader->text[at] == '[')
        at = skip_nest (reader, at);
      else if (reader->text[at] != '"')
        at++;
      else
        {
          at = skip_string (reader, at);
          gsize colon = skip_blanks (reader, at);
          gsize list = colon < reader->length ? skip_blanks (reader, colon + 1) : colon;

          if (at - from != sizeof key - 1 || memcmp (reader->text + from, key, sizeof key - 1) != 0
              || list >= reader->length || reader->text[colon] != ':' || reader->text[list] != '[')
            continue;
          reader->first = list + 1;
          reader->end = skip_nest (reader, list) - 1;
          return reader->text[reader->end] == ']';
        }
    }
  return FALSE;
}

static const SyJson *
scan (Reader *reader, const char *text, gsize length)
{
  sy_memory_reset (reader->memory);
  sy_problems_clear (reader->problems);
  return sy_json_scan (text, length, length, reader->memory, reader->problems);
}

static const char *
type_name (const SyJson *value)
{
  static const char *const names[] = {
    [SY_JSON_NULL] = "null",     [SY_JSON_FALSE] = "false",   [SY_JSON_TRUE] = "true",     [SY_JSON_NUMBER] = "a number",
    [SY_JSON_TEXT] = "a text",   [SY_JSON_ARRAY] = "a list",  [SY_JSON_OBJECT] = "an object",
  };

  return value == NULL ? "nothing" : names[value->type];
}

/* Exactly these members; the last @n_optional of them may be absent. */
static gboolean
check_members (Reader *reader, guint64 line, const SyJson *object, const char *what, const char *const *names,
               gsize n_names, gsize n_optional)
{
  if (object == NULL || object->type != SY_JSON_OBJECT)
    return refuse (reader, line, "%s: expected an object, found %s", what, type_name (object));
  for (const SyJson *child = object->first; child != NULL; child = child->next)
    {
      gboolean is_known = FALSE;

      for (gsize i = 0; i < n_names; i++)
        is_known = is_known || strcmp (names[i], child->key) == 0;
      if (!is_known)
        return refuse (reader, line, "%s: expected no member “%s”, found it", what, child->key);
    }
  for (gsize i = 0; i + n_optional < n_names; i++)
    if (sy_json_member (object, names[i]) == NULL)
      return refuse (reader, line, "%s: expected a member “%s”, found none", what, names[i]);
  return TRUE;
}

static gboolean
read_number (Reader *reader, guint64 line, const SyJson *object, const char *name, gint64 *out)
{
  const SyJson *value = sy_json_member (object, name);
  g_autofree char *raw = g_strndup (value->raw, value->raw_length);

  if (value->type == SY_JSON_NUMBER && g_ascii_string_to_signed (raw, 10, G_MININT64, G_MAXINT64, out, NULL)
      && strcmp (raw, "-0") != 0)
    return TRUE;
  return refuse (reader, line, "“%s”: expected a whole number, found %s", name,
                 value->type == SY_JSON_NUMBER ? raw : type_name (value));
}

/* In one way of writing only: no capitals. */
static gboolean
read_hash (Reader *reader, guint64 line, const SyJson *object, const char *name, SyHash *out)
{
  const SyJson *value = sy_json_member (object, name);
  g_autofree char *again = NULL;

  if (value->type == SY_JSON_TEXT && sy_hash_from_text (value->text, out))
    again = sy_hash_text (out);
  if (again != NULL && strcmp (again, value->text) == 0)
    return TRUE;
  return refuse (reader, line, "“%s”: expected 64 digits 0 to 9 and a to f, found %s", name,
                 value->type == SY_JSON_TEXT ? value->text : type_name (value));
}

static gboolean
refuse_hash (Reader *reader, guint64 line, const char *name, const SyHash *expected, const SyHash *found)
{
  g_autofree char *expected_text = sy_hash_text (expected);
  g_autofree char *found_text = sy_hash_text (found);

  return refuse (reader, line, "“%s”: expected %s, found %s", name, expected_text, found_text);
}

static gboolean
read_head (Reader *reader, const SyJson *head)
{
  static const char *const names[] = { "line", "hash" };
  gint64 number = 0;

  if (!check_members (reader, 0, head, "“head”", names, G_N_ELEMENTS (names), 0)
      || !read_number (reader, 0, head, "line", &number) || !read_hash (reader, 0, head, "hash", &reader->bundle->head_hash))
    return FALSE;
  if (number < 0)
    return refuse (reader, 0, "“head”: expected a line, found %" G_GINT64_FORMAT, number);
  reader->bundle->head_number = (guint64) number;
  return TRUE;
}

static gboolean
is_time (const char *text)
{
  g_autoptr (GDateTime) time = strlen (text) >= 20 ? g_date_time_new_from_iso8601 (text, NULL) : NULL;

  return time != NULL;
}

/* Everything but the lines. */
static gboolean
read_frame (Reader *reader)
{
  static const char *const names[] = { "bundle", "made", "program", "head", "lines" };
  g_autoptr (GString) frame = NULL;
  const SyJson *root;
  const char *mark, *made, *program;

  if (!find_lines (reader))
    return refuse (reader, 0, "expected a JSON document with a list “lines”, found none");
  frame = g_string_new_len (reader->text, (gssize) reader->first);
  g_string_append_len (frame, reader->text + reader->end, (gssize) (reader->length - reader->end));
  root = scan (reader, frame->str, frame->len);
  if (root == NULL)
    return refuse_problem (reader, 0);
  mark = sy_json_member_text (root, "bundle");
  if (g_strcmp0 (mark, SY_BUNDLE_MARK) != 0)
    return refuse (reader, 0, "“bundle”: expected “%s”, found %s", SY_BUNDLE_MARK, mark != NULL ? mark : "none");
  if (!check_members (reader, 0, root, "the document", names, G_N_ELEMENTS (names), 0)
      || !read_head (reader, sy_json_member (root, "head")))
    return FALSE;
  made = sy_json_member_text (root, "made");
  program = sy_json_member_text (root, "program");
  if (made == NULL || !is_time (made))
    return refuse (reader, 0, "“made”: expected a time as 2026-03-12T09:40:00Z, found %s", made != NULL ? made : "no text");
  if (program == NULL)
    return refuse (reader, 0, "“program”: expected a text, found none");
  reader->bundle->made = g_strdup (made);
  reader->bundle->program = g_strdup (program);
  return TRUE;
}

static gboolean
read_field (Reader *reader, guint64 line, const SyJson *object, const SyBundleField *field, SyEvent *event)
{
  const SyJson *value = sy_json_member (object, field->name);
  gpointer place = (guint8 *) event + field->offset;

  switch (field->type)
    {
    case SY_BUNDLE_KIND:
      if (value->type == SY_JSON_TEXT && sy_event_kind_from_id (value->text, place))
        return TRUE;
      return refuse (reader, line, "“%s”: expected a kind of event, found %s", field->name,
                     value->type == SY_JSON_TEXT ? value->text : type_name (value));
    case SY_BUNDLE_TEXT:
      if (value->type != SY_JSON_TEXT)
        return refuse (reader, line, "“%s”: expected a text, found %s", field->name, type_name (value));
      sy_event_set (place, value->text);
      return TRUE;
    case SY_BUNDLE_NUMBER:
      return read_number (reader, line, object, field->name, place);
    case SY_BUNDLE_FLAG:
      *(gboolean *) place = value->type == SY_JSON_TRUE;
      return value->type == SY_JSON_TRUE || value->type == SY_JSON_FALSE
             || refuse (reader, line, "“%s”: expected true or false, found %s", field->name, type_name (value));
    }
  g_assert_not_reached ();
}

static gboolean
read_event (Reader *reader, SyBundleLine *line, const SyJson *object)
{
  const char *names[SY_BUNDLE_N_FIELDS];
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_REVISION);
  g_autoptr (GBytes) bytes = NULL;
  SyHash hash;
  gsize size;
  gconstpointer data;

  for (gsize i = 0; i < SY_BUNDLE_N_FIELDS; i++)
    names[i] = sy_bundle_fields[i].name;
  if (!check_members (reader, line->number, object, "“event”", names, SY_BUNDLE_N_FIELDS, 1))
    return FALSE;
  for (gsize i = 0; i < SY_BUNDLE_N_FIELDS; i++)
    if (sy_json_member (object, names[i]) != NULL
        && !read_field (reader, line->number, object, &sy_bundle_fields[i], event))
      return FALSE;
  if (sy_json_member (object, "origin") != NULL && *event->origin == '\0')
    return refuse (reader, line->number, "“origin”: expected a hash or no such member, found an empty text");
  bytes = sy_event_encode (event);
  data = g_bytes_get_data (bytes, &size);
  sy_hash_of (data, size, &hash);
  if (memcmp (&hash, &line->event_hash, sizeof hash) != 0)
    return refuse_hash (reader, line->number, "event_hash", &hash, &line->event_hash);
  line->event = sy_event_decode (bytes, NULL);
  return line->event != NULL || refuse (reader, line->number, "“event”: expected canonical fields, found others");
}

static void
line_free (gpointer data)
{
  SyBundleLine *line = data;

  sy_event_free (line->event);
  g_free (line);
}

/* @previous: the hash of the line before, replaced by this one's. */
static gboolean
read_line (Reader *reader, gsize from, gsize to, SyHash *previous)
{
  static const char *const names[] = { "line", "hash", "event_hash", "event" };
  SyBundleLine *line = g_new0 (SyBundleLine, 1);
  const guint64 number = reader->bundle->lines->len + 1u;
  const SyJson *root = scan (reader, reader->text + from, to - from), *event;
  gint64 claimed = 0;
  SyHash hash;

  g_ptr_array_add (reader->bundle->lines, line);
  line->number = number;
  if (root == NULL)
    return refuse_problem (reader, number);
  if (!check_members (reader, number, root, "the line", names, G_N_ELEMENTS (names), 1)
      || !read_number (reader, number, root, "line", &claimed)
      || !read_hash (reader, number, root, "hash", &line->hash)
      || !read_hash (reader, number, root, "event_hash", &line->event_hash))
    return FALSE;
  if (claimed != (gint64) number)
    return refuse (reader, number, "“line”: expected %" G_GUINT64_FORMAT ", found %" G_GINT64_FORMAT, number, claimed);
  event = sy_json_member (root, "event");
  if (event != NULL && !read_event (reader, line, event))
    return FALSE;
  sy_chain_link (previous, number, &line->event_hash, &hash);
  if (memcmp (&hash, &line->hash, sizeof hash) != 0)
    return refuse_hash (reader, number, "hash", &hash, &line->hash);
  *previous = hash;
  return TRUE;
}

static gboolean
read_lines (Reader *reader, SyBundleProgress progress, gpointer user_data)
{
  gsize at = skip_blanks (reader, reader->first), next_call = 0;
  SyHash hash = { { 0 } };

  while (at < reader->end)
    {
      gsize to = skip_nest (reader, at);

      if (progress != NULL && at >= next_call)
        {
          next_call = at + PROGRESS_BYTES;
          if (!progress (at, reader->length, user_data))
            {
              g_set_error_literal (reader->error, SY_BUNDLE_ERROR, SY_BUNDLE_ERROR_STOPPED, "Stopped.");
              return FALSE;
            }
        }
      if (reader->text[at] != '{' || to > reader->end)
        return refuse (reader, reader->bundle->lines->len + 1u, "expected an object, found something else");
      if (!read_line (reader, at, to, &hash))
        return FALSE;
      at = skip_blanks (reader, to);
      if (at == reader->end)
        break;
      if (reader->text[at] != ',')
        return refuse (reader, reader->bundle->lines->len, "expected a comma or the end behind it, found something else");
      at = skip_blanks (reader, at + 1);
      if (at == reader->end)
        return refuse (reader, reader->bundle->lines->len, "expected a line behind the comma, found the end");
    }
  if (reader->bundle->lines->len != reader->bundle->head_number)
    return refuse (reader, 0, "“head”: expected %" G_GUINT64_FORMAT " lines, found %u", reader->bundle->head_number,
                   reader->bundle->lines->len);
  if (memcmp (&hash, &reader->bundle->head_hash, sizeof hash) != 0)
    return refuse_hash (reader, 0, "head", &hash, &reader->bundle->head_hash);
  return TRUE;
}

void
sy_bundle_free (SyBundle *bundle)
{
  if (bundle == NULL)
    return;
  g_free (bundle->made);
  g_free (bundle->program);
  g_ptr_array_unref (bundle->lines);
  g_free (bundle);
}

SyBundle *
sy_bundle_read (const char *text, gsize length, SyBundleProgress progress, gpointer user_data, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyBundle) bundle = g_new0 (SyBundle, 1);
  Reader reader = { .text = text, .length = length, .memory = memory, .problems = problems, .bundle = bundle,
                    .error = error };

  bundle->lines = g_ptr_array_new_with_free_func (line_free);
  if (!read_frame (&reader) || !read_lines (&reader, progress, user_data))
    return NULL;
  return g_steal_pointer (&bundle);
}
