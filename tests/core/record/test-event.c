/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-event.h"

#define N_RANDOM 2000

/* Where the fields of an event's canonical bytes stand: a version of 8 bytes, then length and content of each. */
#define VERSION_BYTES 8
#define LENGTH_BYTES 8
#define N_FIELDS 18

static char *
random_text (GRand *random)
{
  /* One to four bytes a character, with what text formats trip over: quotes, line ends, controls. */
  static const gunichar letters[]
    = { 'a', ' ', '"', '\\', '\n', '\t', 0x01, 0x7F, 0xE9, 0x308, 0x2009, 0xFFFD, 0x1F3CB, 0x10FFFF };
  GString *text = g_string_new (NULL);

  for (int n = g_rand_int_range (random, 0, 40); n > 0; n--)
    g_string_append_unichar (
      text, letters[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (letters))]);
  return g_string_free (text, FALSE);
}

static gint64
random_number (GRand *random)
{
  return (gint64) ((guint64) g_rand_int (random) << 32 | g_rand_int (random));
}

static SyEvent *
random_event (GRand *random)
{
  SyEvent *event
    = sy_event_new ((SyEventKind) g_rand_int_range (random, SY_EVENT_POLICY, SY_EVENT_KIND_LAST + 1));
  char **texts[]
    = { &event->item,    &event->item_kind, &event->name,    &event->by,     &event->role,
        &event->why,     &event->claimed,   &event->written, &event->program, &event->method,
        &event->policy,  &event->facts,     &event->findings };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = random_text (random);

      sy_event_set (texts[i], text);
    }
  event->clock_set = g_rand_boolean (random);
  event->edition = random_number (random);
  event->revision = random_number (random);
  event->base = random_number (random);
  return event;
}

static SyEvent *
some_event (void)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);

  sy_event_set (&event->item, "t1");
  sy_event_set (&event->item_kind, "task");
  sy_event_set (&event->name, "Blanks to the press");
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->role, "safety lead");
  sy_event_set (&event->why, "first measurement");
  sy_event_set (&event->claimed, "2026-03-04T05:06:07Z");
  sy_event_set (&event->written, "2026-03-04T05:06:08Z");
  sy_event_set (&event->program, "steelyard 0.1.0");
  sy_event_set (&event->method, "lift");
  event->edition = 1;
  sy_event_set (&event->policy, "steelyard-default 1");
  event->revision = 2;
  event->base = 1;
  sy_event_set (&event->facts, "{\"method\":\"lift\"}");
  sy_event_set (&event->findings, "{\"verdict\":\"improve\"}");
  return event;
}

static void
assert_equal_events (const SyEvent *a, const SyEvent *b)
{
  assert_int_equal (a->kind, b->kind);
  assert_string_equal (a->item, b->item);
  assert_string_equal (a->item_kind, b->item_kind);
  assert_string_equal (a->name, b->name);
  assert_string_equal (a->by, b->by);
  assert_string_equal (a->role, b->role);
  assert_string_equal (a->why, b->why);
  assert_string_equal (a->claimed, b->claimed);
  assert_string_equal (a->written, b->written);
  assert_int_equal (a->clock_set, b->clock_set);
  assert_string_equal (a->program, b->program);
  assert_string_equal (a->method, b->method);
  assert_true (a->edition == b->edition);
  assert_string_equal (a->policy, b->policy);
  assert_true (a->revision == b->revision);
  assert_true (a->base == b->base);
  assert_string_equal (a->facts, b->facts);
  assert_string_equal (a->findings, b->findings);
}

static guint64
read_length (const guint8 *data)
{
  guint64 value = 0;

  for (int i = 0; i < LENGTH_BYTES; i++)
    value = value << 8 | data[i];
  return value;
}

/* Where the content of field @index begins. */
static gsize
find_field (GBytes *bytes, int index)
{
  const guint8 *data = g_bytes_get_data (bytes, NULL);
  gsize at = VERSION_BYTES;

  for (int i = 0; i < index; i++)
    at += LENGTH_BYTES + (gsize) read_length (data + at);
  return at + LENGTH_BYTES;
}

static GBytes *
change_byte (GBytes *bytes, gsize at, guint8 value)
{
  gsize size;
  gconstpointer data = g_bytes_get_data (bytes, &size);
  guint8 *copy = g_memdup2 (data, size);

  assert_true (at < size);
  copy[at] = value;
  return g_bytes_new_take (copy, size);
}

static void
assert_refused (GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  SyEvent *event = sy_event_decode (bytes, &error);

  assert_null (event);
  assert_true (g_error_matches (error, SY_RECORD_ERROR, SY_RECORD_ERROR_BYTES));
}

static void
a_new_event_has_empty_texts (void **state)
{
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_POLICY);

  (void) state;
  assert_int_equal (event->kind, SY_EVENT_POLICY);
  assert_string_equal (event->item, "");
  assert_string_equal (event->findings, "");
  sy_event_set (&event->name, "x");
  sy_event_set (&event->name, event->name); /* its own text */
  assert_string_equal (event->name, "x");
  sy_event_set (&event->name, NULL);
  assert_string_equal (event->name, "");
}

static void
what_is_encoded_decodes_to_the_same (void **state)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260304);

  (void) state;
  for (int i = 0; i < N_RANDOM; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SyEvent) event = random_event (random);
      g_autoptr (GBytes) bytes = sy_event_encode (event);
      g_autoptr (SyEvent) again = sy_event_decode (bytes, &error);
      g_autoptr (GBytes) bytes_again = NULL;

      assert_null (error);
      assert_non_null (again);
      assert_equal_events (again, event);
      bytes_again = sy_event_encode (again);
      assert_true (g_bytes_equal (bytes, bytes_again));
    }
}

/* Written out by hand from the description in the header: the bytes on disk must never drift. */
static void
the_bytes_are_as_described (void **state)
{
  static const guint8 version_and_kind[]
    = { 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 8, 0, 0, 0, 0, 0, 0, 0, 2 };
  static const guint8 item[] = { 0, 0, 0, 0, 0, 0, 0, 2, 't', '1' };
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  const guint8 *data = g_bytes_get_data (bytes, NULL);

  (void) state;
  assert_memory_equal (data, version_and_kind, sizeof version_and_kind);
  assert_memory_equal (data + sizeof version_and_kind, item, sizeof item);
  assert_int_equal (find_field (bytes, N_FIELDS) - LENGTH_BYTES, g_bytes_get_size (bytes));
}

static void
every_truncated_prefix_is_refused (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);

  (void) state;
  for (gsize size = 0; size < g_bytes_get_size (bytes); size++)
    {
      /* A copy of exactly that size, so that reading past it is seen by the sanitizer. */
      g_autoptr (GBytes) prefix = g_bytes_new (g_bytes_get_data (bytes, NULL), size);

      assert_refused (prefix);
    }
}

static void
trailing_bytes_are_refused (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  gsize size;
  const guint8 *data = g_bytes_get_data (bytes, &size);
  g_autoptr (GByteArray) longer = g_byte_array_new ();
  g_autoptr (GBytes) more = NULL;

  (void) state;
  g_byte_array_append (longer, data, (guint) size);
  g_byte_array_append (longer, (const guint8 *) "", 1);
  more = g_byte_array_free_to_bytes (g_steal_pointer (&longer));
  assert_refused (more);
}

static void
another_version_is_refused (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);

  (void) state;
  for (gsize at = 0; at < VERSION_BYTES; at++)
    {
      g_autoptr (GBytes) other = change_byte (bytes, at, 2);

      assert_refused (other);
    }
}

static void
lengths_beyond_the_end_are_refused (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);

  (void) state;
  for (int field = 0; field < N_FIELDS; field++)
    for (gsize i = 1; i <= LENGTH_BYTES; i++)
      {
        /* 0xFF in the highest byte would overflow a careless sum. */
        g_autoptr (GBytes) wrong = change_byte (bytes, find_field (bytes, field) - i, 0xFF);

        assert_refused (wrong);
      }
}

static void
bad_text_and_bad_values_are_refused (void **state)
{
  static const struct
  {
    int field;
    gsize at;
    guint8 value;
  } cases[] = {
    { 0, 7, 0 },     /* no kind                   */
    { 0, 7, SY_EVENT_KIND_LAST + 1 }, /* a kind that is not known */
    { 0, 0, 1 },     /* the same, far off         */
    { 3, 0, 0 },     /* NUL at the start          */
    { 3, 5, 0 },     /* NUL inside                */
    { 3, 5, 0x80 },  /* no character begins so    */
    { 3, 18, 0xC3 }, /* cut in a character        */
    { 9, 0, 2 },     /* neither yes nor no        */
    { 16, 1, 0xFF }, /* in the facts              */
    { 17, 1, 0xFF }, /* in the findings           */
  };
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GBytes) wrong
        = change_byte (bytes, find_field (bytes, cases[i].field) + cases[i].at, cases[i].value);

      assert_refused (wrong);
    }
}

/* Any single changed byte either is refused or decodes to something that encodes to just those bytes. */
static void
no_two_byte_strings_are_one_event (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  int accepted = 0;

  (void) state;
  for (gsize at = 0; at < g_bytes_get_size (bytes); at++)
    for (int value = 0; value < 256; value += 5)
      {
        g_autoptr (GBytes) changed = change_byte (bytes, at, (guint8) value);
        g_autoptr (SyEvent) other = sy_event_decode (changed, NULL);
        g_autoptr (GBytes) again = NULL;

        if (other == NULL)
          continue;
        accepted++;
        again = sy_event_encode (other);
        assert_true (g_bytes_equal (again, changed));
      }
  assert_true (accepted > 0);
}

/* SHA-256 (FIPS 180-4): the messages of one and of two blocks are the examples of FIPS 180-2, appendix B.1 and
   B.2; the empty one is the first of NIST's short-message vectors (CAVP). */
static void
sha256_gives_the_published_values (void **state)
{
  static const struct
  {
    const char *message, *digest;
  } cases[] = {
    { "abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" },
    { "", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855" },
    { "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SyHash hash;
      g_autofree char *text = NULL;

      sy_hash_of (cases[i].message, strlen (cases[i].message), &hash);
      text = sy_hash_text (&hash);
      assert_string_equal (text, cases[i].digest);
    }
}

static void
a_hash_is_read_back_from_its_text (void **state)
{
  static const char digits[] = "00ff10Aba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f";
  static const char *const wrong[] = { "", "0", "00ff", "00ff10zz" };
  SyHash hash, kept;
  g_autofree char *text = NULL;
  g_autofree char *lower = g_ascii_strdown (digits, -1);
  g_autofree char *longer = g_strconcat (digits, "0", NULL);
  g_autofree char *bad = g_strdup (digits);

  (void) state;
  assert_true (sy_hash_from_text (digits, &hash));
  text = sy_hash_text (&hash);
  assert_string_equal (text, lower);
  kept = hash;
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    assert_false (sy_hash_from_text (wrong[i], &hash));
  assert_false (sy_hash_from_text (longer, &hash));
  for (gsize i = 0; i < 2 * SY_HASH_BYTES; i++)
    {
      bad[i] = 'g';
      assert_false (sy_hash_from_text (bad, &hash));
      bad[i] = digits[i];
    }
  assert_memory_equal (&hash, &kept, sizeof hash); /* untouched by what was refused */
}

/* The chain laid out by hand: tag, previous hash, number in 8 bytes, hash of the event. */
static void
a_line_is_hashed_as_described (void **state)
{
  static const char tag[] = "steelyard journal line 1";
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  g_autoptr (GByteArray) line = g_byte_array_new ();
  const guint8 number[] = { 0, 0, 0, 0, 0, 0, 1, 2 };
  SyHash previous = { { 0 } }, content, expected, actual;

  (void) state;
  previous.bytes[0] = 7;
  sy_hash_of (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &content);
  g_byte_array_append (line, (const guint8 *) tag, sizeof tag - 1);
  g_byte_array_append (line, previous.bytes, SY_HASH_BYTES);
  g_byte_array_append (line, number, sizeof number);
  g_byte_array_append (line, content.bytes, SY_HASH_BYTES);
  sy_hash_of (line->data, line->len, &expected);
  sy_chain_next (&previous, 0x102, bytes, &actual);
  assert_memory_equal (&actual, &expected, sizeof actual);
  sy_chain_next (&previous, 0x102, bytes, &previous); /* out may be previous */
  assert_memory_equal (&previous, &expected, sizeof actual);
}

static void
hash_event (const SyEvent *event, SyHash *out)
{
  const SyHash zeros = { { 0 } };
  g_autoptr (GBytes) bytes = sy_event_encode (event);

  sy_chain_next (&zeros, 1, bytes, out);
}

static void
assert_differs (const SyEvent *event, const SyHash *from)
{
  SyHash hash;

  hash_event (event, &hash);
  assert_memory_not_equal (&hash, from, sizeof hash);
}

static void
the_chain_changes_with_each_field (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  char **texts[]
    = { &event->item,    &event->item_kind, &event->name,    &event->by,     &event->role,
        &event->why,     &event->claimed,   &event->written, &event->program, &event->method,
        &event->policy,  &event->facts,     &event->findings };
  gint64 *numbers[] = { &event->edition, &event->revision, &event->base };
  SyHash hash, again;

  (void) state;
  hash_event (event, &hash);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *before = g_strdup (*texts[i]);
      g_autofree char *longer = g_strconcat (before, " ", NULL);

      sy_event_set (texts[i], longer);
      assert_differs (event, &hash);
      sy_event_set (texts[i], before);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      ++*numbers[i];
      assert_differs (event, &hash);
      --*numbers[i];
    }
  event->clock_set = TRUE;
  assert_differs (event, &hash);
  event->clock_set = FALSE;
  event->kind = SY_EVENT_POLICY;
  assert_differs (event, &hash);
  event->kind = SY_EVENT_REVISION;
  hash_event (event, &again);
  assert_memory_equal (&again, &hash, sizeof hash);
}

/* Text moved from the end of one field to the start of the next is another event. */
static void
the_borders_of_fields_count (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  SyHash hash;

  (void) state;
  sy_event_set (&event->by, "ab");
  sy_event_set (&event->role, "c");
  hash_event (event, &hash);
  sy_event_set (&event->by, "a");
  sy_event_set (&event->role, "bc");
  assert_differs (event, &hash);
}

static void
the_chain_changes_with_number_and_past (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  SyHash previous = { { 0 } }, first, other;

  (void) state;
  sy_chain_next (&previous, 1, bytes, &first);
  sy_chain_next (&previous, 2, bytes, &other);
  assert_memory_not_equal (&first, &other, sizeof first);
  previous.bytes[SY_HASH_BYTES - 1] = 1;
  sy_chain_next (&previous, 1, bytes, &other);
  assert_memory_not_equal (&first, &other, sizeof first);
}

/* Topics: kinds, origin, identity, a look without decoding */

#define ORIGIN "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"

static void
each_kind_has_an_id (void **state)
{
  SyEventKind kind = SY_EVENT_POLICY;

  (void) state;
  for (int i = SY_EVENT_POLICY; i <= SY_EVENT_KIND_LAST; i++)
    {
      assert_true (sy_event_kind_from_id (sy_event_kind_id ((SyEventKind) i), &kind));
      assert_int_equal (kind, i);
    }
  assert_null (sy_event_kind_id ((SyEventKind) 0));
  assert_null (sy_event_kind_id ((SyEventKind) (SY_EVENT_KIND_LAST + 1)));
  assert_false (sy_event_kind_from_id ("", &kind));
  assert_false (sy_event_kind_from_id ("Policy", &kind));
}

static void
an_origin_is_kept_and_makes_another_version (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) plain = sy_event_encode (event);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (SyEvent) again = NULL;
  gsize plain_size = g_bytes_get_size (plain), size;
  const guint8 *data;

  (void) state;
  sy_event_set (&event->origin, ORIGIN);
  bytes = sy_event_encode (event);
  data = g_bytes_get_data (bytes, &size);
  assert_int_equal (data[7], 2);
  assert_int_equal (size, plain_size + LENGTH_BYTES + strlen (ORIGIN));
  again = sy_event_decode (bytes, NULL);
  assert_non_null (again);
  assert_string_equal (again->origin, ORIGIN);
  assert_equal_events (again, event);

  /* a version 1 with an origin, a version 2 without, an origin in capitals: none is canonical */
  g_autoptr (GBytes) first = change_byte (bytes, 7, 1);
  g_autoptr (GBytes) second = change_byte (plain, 7, 2);
  g_autoptr (GBytes) capital = change_byte (bytes, size - 1, 'F');
  assert_refused (first);
  assert_refused (second);
  assert_refused (capital);
}

static void
an_event_is_known_by_its_origin_or_its_bytes (void **state)
{
  g_autoptr (SyEvent) event = some_event ();
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  SyHash expected, actual;
  gsize size;
  gconstpointer data = g_bytes_get_data (bytes, &size);

  (void) state;
  sy_hash_of (data, size, &expected);
  sy_event_identity (event, &actual);
  assert_memory_equal (&actual, &expected, sizeof actual);
  sy_event_set (&event->origin, ORIGIN);
  event->revision = 9;
  assert_true (sy_hash_from_text (ORIGIN, &expected));
  sy_event_identity (event, &actual);
  assert_memory_equal (&actual, &expected, sizeof actual);
}

static void
a_look_finds_kind_and_item (void **state)
{
  g_autoptr (SyEvent) event = some_event ();

  (void) state;
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (GBytes) bytes = sy_event_encode (event);
      gsize size, length = 0;
      const guint8 *data = g_bytes_get_data (bytes, &size);
      const char *item = NULL;
      gint64 kind = 0;

      assert_true (sy_event_peek (data, size, &kind, &item, &length));
      assert_int_equal (kind, SY_EVENT_REVISION);
      assert_int_equal (length, 2);
      assert_memory_equal (item, "t1", length);
      for (gsize shorter = 0; shorter < size; shorter++)
        {
          guint8 *copy = g_memdup2 (data, shorter > 0 ? shorter : 1); /* so that a step too far is seen */

          assert_false (sy_event_peek (copy, shorter, &kind, &item, &length));
          g_free (copy);
        }
      sy_event_set (&event->origin, ORIGIN);
    }
}

/* Overwrites, cuts, repeats: somewhere, and of a run of bytes too. */
static GBytes *
mutate (GBytes *bytes, GRand *random)
{
  gsize size;
  const guint8 *data = g_bytes_get_data (bytes, &size);
  g_autoptr (GByteArray) out = g_byte_array_new ();
  guint at = (guint) g_rand_int_range (random, 0, (gint32) size);
  guint length = (guint) g_rand_int_range (random, 1, 12);

  g_byte_array_append (out, data, (guint) size);
  length = MIN (length, out->len - at);
  switch (g_rand_int_range (random, 0, 6))
    {
    case 0:
      g_byte_array_remove_range (out, at, length);
      break;
    case 1:
      g_byte_array_append (out, data + at, length);
      break;
    default:
      out->data[at] = (guint8) g_rand_int_range (random, 0, 256);
      break;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}

static void
a_look_takes_what_can_be_decoded_and_nothing_else (void **state)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20261126);
  int taken = 0, refused = 0;

  (void) state;
  for (int i = 0; i < N_RANDOM; i++)
    {
      g_autoptr (SyEvent) event = random_event (random);
      g_autoptr (GBytes) bytes = NULL, changed = NULL;
      g_autoptr (SyEvent) decoded = NULL;
      gsize size, length = 0;
      const guint8 *data;
      const char *item = NULL;
      gint64 kind = 0;

      if (g_rand_boolean (random))
        sy_event_set (&event->origin, ORIGIN);
      bytes = sy_event_encode (event);
      changed = mutate (bytes, random);
      decoded = sy_event_decode (changed, NULL);
      data = g_bytes_get_data (changed, &size);
      assert_int_equal (sy_event_peek (data, size, &kind, &item, &length), decoded != NULL);
      if (decoded == NULL)
        {
          refused++;
          continue;
        }
      taken++;
      assert_int_equal (kind, decoded->kind);
      assert_int_equal (length, strlen (decoded->item));
      assert_memory_equal (item, decoded->item, length);
    }
  assert_true (taken > N_RANDOM / 20 && refused > N_RANDOM / 20);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_new_event_has_empty_texts),
    cmocka_unit_test (what_is_encoded_decodes_to_the_same),
    cmocka_unit_test (the_bytes_are_as_described),
    cmocka_unit_test (every_truncated_prefix_is_refused),
    cmocka_unit_test (trailing_bytes_are_refused),
    cmocka_unit_test (another_version_is_refused),
    cmocka_unit_test (lengths_beyond_the_end_are_refused),
    cmocka_unit_test (bad_text_and_bad_values_are_refused),
    cmocka_unit_test (no_two_byte_strings_are_one_event),
    cmocka_unit_test (sha256_gives_the_published_values),
    cmocka_unit_test (a_hash_is_read_back_from_its_text),
    cmocka_unit_test (a_line_is_hashed_as_described),
    cmocka_unit_test (the_chain_changes_with_each_field),
    cmocka_unit_test (the_borders_of_fields_count),
    cmocka_unit_test (the_chain_changes_with_number_and_past),
    cmocka_unit_test (each_kind_has_an_id),
    cmocka_unit_test (an_origin_is_kept_and_makes_another_version),
    cmocka_unit_test (an_event_is_known_by_its_origin_or_its_bytes),
    cmocka_unit_test (a_look_finds_kind_and_item),
    cmocka_unit_test (a_look_takes_what_can_be_decoded_and_nothing_else),
  };

  return cmocka_run_group_tests_name ("event", tests, NULL, NULL);
}
