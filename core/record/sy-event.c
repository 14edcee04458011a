/* SPDX-License-Identifier: MIT */
#include "sy-event.h"

#include <string.h>

G_DEFINE_QUARK (sy-record-error-quark, sy_record_error)

/* First of the canonical bytes; a change of the table of fields is a new version. */
#define CANONICAL_VERSION 1u
/* The same fields and then the origin, which is never empty. */
#define CANONICAL_VERSION_ORIGIN 2u

#define NUMBER_BYTES 8

typedef enum
{
  FIELD_KIND,
  FIELD_TEXT,
  FIELD_NUMBER,
  FIELD_FLAG,
} FieldType;

typedef struct
{
  const char *name;
  FieldType type;
  gsize offset;
} Field;

/* The canonical order. Only ever changed together with the version. */
static const Field fields[] = {
  { "kind", FIELD_KIND, G_STRUCT_OFFSET (SyEvent, kind) },
  { "item", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, item) },
  { "item kind", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, item_kind) },
  { "name", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, name) },
  { "by", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, by) },
  { "role", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, role) },
  { "why", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, why) },
  { "claimed", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, claimed) },
  { "written", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, written) },
  { "clock set", FIELD_FLAG, G_STRUCT_OFFSET (SyEvent, clock_set) },
  { "program", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, program) },
  { "method", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, method) },
  { "edition", FIELD_NUMBER, G_STRUCT_OFFSET (SyEvent, edition) },
  { "policy", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, policy) },
  { "revision", FIELD_NUMBER, G_STRUCT_OFFSET (SyEvent, revision) },
  { "base", FIELD_NUMBER, G_STRUCT_OFFSET (SyEvent, base) },
  { "facts", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, facts) },
  { "findings", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, findings) },
};

static const Field origin_field = { "origin", FIELD_TEXT, G_STRUCT_OFFSET (SyEvent, origin) };

static const char *const kind_ids[] = {
  [SY_EVENT_POLICY] = "policy",         [SY_EVENT_REVISION] = "revision", [SY_EVENT_ATTACHMENT] = "attachment",
  [SY_EVENT_SIGNATURE] = "signature",   [SY_EVENT_ACTION] = "action",     [SY_EVENT_REVIEW] = "review",
  [SY_EVENT_RETIREMENT] = "retirement", [SY_EVENT_TOLD] = "told",         [SY_EVENT_IMPORT] = "import",
  [SY_EVENT_IMPROVEMENT] = "improvement",
};

/* What is left of the bytes that are being decoded. */
typedef struct
{
  const guint8 *data;
  gsize size;
} Rest;

static gpointer
place_of (SyEvent *event, const Field *field)
{
  return (guint8 *) event + field->offset;
}

static gconstpointer
look_at (const SyEvent *event, const Field *field)
{
  return (const guint8 *) event + field->offset;
}

static void
put_number (guint8 *out, guint64 value)
{
  for (int i = 0; i < NUMBER_BYTES; i++)
    out[i] = (guint8) (value >> (8 * (NUMBER_BYTES - 1 - i)));
}

static guint64
get_number (const guint8 *data)
{
  guint64 value = 0;

  for (int i = 0; i < NUMBER_BYTES; i++)
    value = value << 8 | data[i];
  return value;
}

static void
append_number (GByteArray *out, guint64 value)
{
  guint8 bytes[NUMBER_BYTES];

  put_number (bytes, value);
  g_byte_array_append (out, bytes, sizeof bytes);
}

static void
append_counted (GByteArray *out, gconstpointer data, gsize size)
{
  append_number (out, size);
  g_byte_array_append (out, data, size);
}

static void
append_field (GByteArray *out, const SyEvent *event, const Field *field)
{
  gconstpointer place = look_at (event, field);
  guint8 number[NUMBER_BYTES];
  guint8 flag;
  const char *text;

  switch (field->type)
    {
    case FIELD_KIND:
      put_number (number, (guint64) * (const SyEventKind *) place);
      append_counted (out, number, sizeof number);
      break;
    case FIELD_NUMBER:
      put_number (number, (guint64) * (const gint64 *) place);
      append_counted (out, number, sizeof number);
      break;
    case FIELD_FLAG:
      flag = *(const gboolean *) place ? 1 : 0;
      append_counted (out, &flag, sizeof flag);
      break;
    case FIELD_TEXT:
      text = *(char *const *) place;
      append_counted (out, text, strlen (text));
      break;
    }
}

G_GNUC_PRINTF (2, 3)
static gboolean
refuse (GError **error, const char *format, ...)
{
  va_list arguments;
  g_autofree char *why = NULL;

  va_start (arguments, format);
  why = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (error, SY_RECORD_ERROR, SY_RECORD_ERROR_BYTES, "These bytes are no event: %s.", why);
  return FALSE;
}

/* Takes the next counted bytes off the rest. */
static gboolean
take_counted (Rest *rest, const Field *field, const guint8 **data, gsize *size, GError **error)
{
  guint64 length;

  if (rest->size < NUMBER_BYTES)
    return refuse (error, "they end before the length of “%s”", field->name);
  length = get_number (rest->data);
  rest->data += NUMBER_BYTES;
  rest->size -= NUMBER_BYTES;
  if (length > rest->size)
    return refuse (error, "“%s” claims to be longer than what is left", field->name);
  *data = rest->data;
  *size = (gsize) length;
  rest->data += length;
  rest->size -= (gsize) length;
  return TRUE;
}

static gboolean
take_field (Rest *rest, SyEvent *event, const Field *field, GError **error)
{
  gpointer place = place_of (event, field);
  const guint8 *data = NULL;
  gsize size = 0;

  if (!take_counted (rest, field, &data, &size, error))
    return FALSE;
  switch (field->type)
    {
    case FIELD_KIND:
      if (size != NUMBER_BYTES || get_number (data) < SY_EVENT_POLICY
          || get_number (data) > SY_EVENT_KIND_LAST)
        return refuse (error, "the kind of event is not known");
      *(SyEventKind *) place = (SyEventKind) get_number (data);
      break;
    case FIELD_NUMBER:
      if (size != NUMBER_BYTES)
        return refuse (error, "“%s” is no number", field->name);
      *(gint64 *) place = (gint64) get_number (data);
      break;
    case FIELD_FLAG:
      if (size != 1 || data[0] > 1)
        return refuse (error, "“%s” is neither yes nor no", field->name);
      *(gboolean *) place = data[0];
      break;
    case FIELD_TEXT:
      /* With a length given, g_utf8_validate() refuses NUL bytes as well. */
      if (!g_utf8_validate ((const char *) data, (gssize) size, NULL))
        return refuse (error, "“%s” is not valid UTF-8 text", field->name);
      g_free (*(char **) place);
      *(char **) place = g_strndup ((const char *) data, size);
      break;
    }
  return TRUE;
}

SyEvent *
sy_event_new (SyEventKind kind)
{
  SyEvent *event = g_new0 (SyEvent, 1);

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    if (fields[i].type == FIELD_TEXT)
      *(char **) place_of (event, &fields[i]) = g_strdup ("");
  event->origin = g_strdup ("");
  event->kind = kind;
  return event;
}

void
sy_event_free (SyEvent *event)
{
  if (event == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    if (fields[i].type == FIELD_TEXT)
      g_free (*(char **) place_of (event, &fields[i]));
  g_free (event->origin);
  g_free (event);
}

void
sy_event_set (char **text, const char *value)
{
  char *copy = g_strdup (value != NULL ? value : "");

  g_free (*text);
  *text = copy;
}

GBytes *
sy_event_encode (const SyEvent *event)
{
  GByteArray *out = g_byte_array_new ();
  gboolean has_origin = *event->origin != '\0';

  append_number (out, has_origin ? CANONICAL_VERSION_ORIGIN : CANONICAL_VERSION);
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    append_field (out, event, &fields[i]);
  if (has_origin)
    append_field (out, event, &origin_field);
  return g_byte_array_free_to_bytes (out);
}

static gboolean
take_origin (Rest *rest, SyEvent *event, GError **error)
{
  g_autofree char *text = NULL;
  SyHash hash;

  if (!take_field (rest, event, &origin_field, error))
    return FALSE;
  if (sy_hash_from_text (event->origin, &hash))
    text = sy_hash_text (&hash);
  /* In one way of writing it only: no capitals. */
  return g_strcmp0 (text, event->origin) == 0 || refuse (error, "the origin is no hash");
}

SyEvent *
sy_event_decode (GBytes *bytes, GError **error)
{
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_REVISION);
  Rest rest;
  guint64 version;

  rest.data = g_bytes_get_data (bytes, &rest.size);
  version = rest.size < NUMBER_BYTES ? 0 : get_number (rest.data);
  if (version != CANONICAL_VERSION && version != CANONICAL_VERSION_ORIGIN)
    {
      refuse (error, "they begin with neither version %u nor version %u", CANONICAL_VERSION, CANONICAL_VERSION_ORIGIN);
      return NULL;
    }
  rest.data += NUMBER_BYTES;
  rest.size -= NUMBER_BYTES;
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    if (!take_field (&rest, event, &fields[i], error))
      return NULL;
  if (version == CANONICAL_VERSION_ORIGIN && !take_origin (&rest, event, error))
    return NULL;
  if (rest.size != 0)
    {
      refuse (error, "%" G_GSIZE_FORMAT " bytes too many at the end", rest.size);
      return NULL;
    }
  return g_steal_pointer (&event);
}

/* How much is looked at letter by letter after what is not plain, before eight bytes are tried again. */
#define LETTERS_BYTES 64

/* As g_utf8_validate() has it; nearly all bytes are characters by themselves, and of these eight are told at once. */
static gboolean
is_text (const guint8 *data, gsize size)
{
  const guint64 ones = G_GUINT64_CONSTANT (0x0101010101010101), tops = ones << 7;
  gsize at = 0;

  while (at < size)
    {
      const char *end;

      for (guint64 eight; at + sizeof eight <= size; at += sizeof eight)
        {
          memcpy (&eight, data + at, sizeof eight);
          /* a byte of 128 or more or, where all are below that, one of zero */
          if (((eight | (eight - ones)) & tops) != 0)
            break;
        }
      /* It may end within a letter, but then after others. */
      if (!g_utf8_validate ((const char *) data + at, (gssize) MIN (size - at, LETTERS_BYTES), &end)
          && end == (const char *) data + at)
        return FALSE;
      at = (gsize) (end - (const char *) data);
    }
  return TRUE;
}

static gboolean
is_origin (const guint8 *data, gsize size)
{
  for (gsize i = 0; i < size; i++)
    if (!g_ascii_isdigit (data[i]) && (data[i] < 'a' || data[i] > 'f'))
      return FALSE;
  return size == 2 * SY_HASH_BYTES;
}

static gboolean
may_stand (const Field *field, const guint8 *data, gsize size)
{
  switch (field->type)
    {
    case FIELD_KIND:
      return size == NUMBER_BYTES && get_number (data) >= SY_EVENT_POLICY && get_number (data) <= SY_EVENT_KIND_LAST;
    case FIELD_NUMBER:
      return size == NUMBER_BYTES;
    case FIELD_FLAG:
      return size == 1 && data[0] <= 1;
    case FIELD_TEXT:
      return is_text (data, size);
    }
  g_assert_not_reached ();
}

gboolean
sy_event_peek (const guint8 *data, gsize size, gint64 *kind, const char **item, gsize *item_length)
{
  Rest rest = { data, size };
  const guint8 *field;
  gsize length;
  guint64 version = size < NUMBER_BYTES ? 0 : get_number (data);

  if (version != CANONICAL_VERSION && version != CANONICAL_VERSION_ORIGIN)
    return FALSE;
  rest.data += NUMBER_BYTES;
  rest.size -= NUMBER_BYTES;
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      if (!take_counted (&rest, &fields[i], &field, &length, NULL) || !may_stand (&fields[i], field, length))
        return FALSE;
      if (fields[i].type == FIELD_KIND)
        *kind = (gint64) get_number (field);
      if (fields[i].offset == G_STRUCT_OFFSET (SyEvent, item))
        {
          *item = (const char *) field;
          *item_length = length;
        }
    }
  if (version == CANONICAL_VERSION_ORIGIN
      && (!take_counted (&rest, &origin_field, &field, &length, NULL) || !is_origin (field, length)))
    return FALSE;
  return rest.size == 0;
}

const SyItemKind sy_item_kinds[SY_N_ITEM_KINDS] = {
  { SY_ITEM_TASK, "a task" }, { SY_ITEM_CHANGEOVER, "a changeover" }, { SY_ITEM_CASE, "a case" },
  { SY_ITEM_DIE, "a die" },   { SY_ITEM_GEAR, "an item of gear" },
};

int
sy_item_kind_place (const char *item_kind)
{
  for (int i = 0; i < SY_N_ITEM_KINDS; i++)
    if (strcmp (item_kind, sy_item_kinds[i].id) == 0)
      return i;
  return -1;
}

const char *
sy_event_kind_id (SyEventKind kind)
{
  return (guint) kind < G_N_ELEMENTS (kind_ids) ? kind_ids[kind] : NULL;
}

gboolean
sy_event_kind_from_id (const char *id, SyEventKind *kind)
{
  for (gsize i = SY_EVENT_POLICY; i < G_N_ELEMENTS (kind_ids); i++)
    if (strcmp (kind_ids[i], id) == 0)
      {
        *kind = (SyEventKind) i;
        return TRUE;
      }
  return FALSE;
}

void
sy_event_identity (const SyEvent *event, SyHash *out)
{
  g_autoptr (GBytes) bytes = NULL;
  gsize size;
  gconstpointer data;

  if (sy_hash_from_text (event->origin, out))
    return;
  bytes = sy_event_encode (event);
  data = g_bytes_get_data (bytes, &size);
  sy_hash_of (data, size, out);
}
