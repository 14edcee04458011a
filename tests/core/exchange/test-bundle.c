/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-bundle.h"

#define N_LINES 4

static SyEvent *
make_event (guint64 number)
{
  SyEvent *event = sy_event_new (number == 1 ? SY_EVENT_POLICY : number == 3 ? SY_EVENT_ATTACHMENT : SY_EVENT_REVISION);

  sy_event_set (&event->item, number == 1 ? "" : "00112233aabbccdd");
  sy_event_set (&event->item_kind, number == 1 ? "policy" : SY_ITEM_TASK);
  sy_event_set (&event->name, "Ring “A”\n\\ \"to\" fixture\x7f");
  sy_event_set (&event->by, "Zoë Quill");
  sy_event_set (&event->why, "tab\there");
  sy_event_set (&event->claimed, "2026-03-04T05:06:07Z");
  sy_event_set (&event->written, "2026-03-04T05:06:07Z");
  event->clock_set = number == 2;
  sy_event_set (&event->facts, "{\"travel\":20.50,\"H\":\"16 in\"}");
  event->revision = (gint64) number;
  event->base = -1;
  if (number == 4)
    sy_event_set (&event->origin, "00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff00ff");
  return event;
}

/* Line 3 has its hashes only when @is_whole is FALSE. */
static GString *
make_bundle (gboolean is_whole)
{
  GString *body = g_string_new (NULL), *out = g_string_new (NULL);
  SyHash hash = { { 0 } };

  for (guint64 number = 1; number <= N_LINES; number++)
    {
      g_autoptr (SyEvent) event = make_event (number);
      g_autoptr (GBytes) bytes = sy_event_encode (event);
      SyHash event_hash;

      sy_hash_of (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &event_hash);
      sy_chain_next (&hash, number, bytes, &hash);
      sy_bundle_add (body, number, &hash, &event_hash, is_whole || number != 3 ? event : NULL);
    }
  sy_bundle_begin (out, "2026-03-05T00:00:00Z", "steelyard 0", N_LINES, &hash);
  g_string_append_len (out, body->str, (gssize) body->len);
  sy_bundle_end (out);
  g_string_free (body, TRUE);
  return out;
}

static gboolean
is_same_event (const SyEvent *a, const SyEvent *b)
{
  g_autoptr (GBytes) x = sy_event_encode (a);
  g_autoptr (GBytes) y = sy_event_encode (b);

  return g_bytes_equal (x, y);
}

/* Everything that the chain is about. */
static gboolean
is_what_was_written (const SyBundle *bundle, gboolean is_whole)
{
  gboolean same = bundle->lines->len == N_LINES && bundle->head_number == N_LINES;

  for (guint i = 0; same && i < N_LINES; i++)
    {
      const SyBundleLine *line = bundle->lines->pdata[i];
      g_autoptr (SyEvent) event = make_event (i + 1);

      same = line->number == i + 1
             && (line->event != NULL ? is_same_event (line->event, event) : !is_whole && i + 1 == 3);
    }
  return same;
}

static void
test_round_trip (void **state)
{
  (void) state;
  for (int is_whole = 0; is_whole < 2; is_whole++)
    {
      GString *text = make_bundle (is_whole);
      g_autoptr (GError) error = NULL;
      g_autoptr (SyBundle) bundle = sy_bundle_read (text->str, text->len, NULL, NULL, &error);

      if (bundle == NULL)
        fail_msg ("%s", error->message);
      assert_true (is_what_was_written (bundle, is_whole));
      assert_string_equal (bundle->made, "2026-03-05T00:00:00Z");
      assert_string_equal (bundle->program, "steelyard 0");
      assert_true (memcmp (&bundle->head_hash, &((SyBundleLine *) bundle->lines->pdata[3])->hash, sizeof (SyHash)) == 0);
      g_string_free (text, TRUE);
    }
}

static void
test_an_empty_journal (void **state)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (SyBundle) bundle = NULL;
  SyHash zeros = { { 0 } };

  (void) state;
  sy_bundle_begin (text, "2026-03-05T00:00:00Z", "steelyard 0", 0, &zeros);
  sy_bundle_end (text);
  bundle = sy_bundle_read (text->str, text->len, NULL, NULL, NULL);
  assert_non_null (bundle);
  assert_int_equal (bundle->lines->len, 0);
}

static char *
refusal_of (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  SyBundle *bundle = sy_bundle_read (text, length, NULL, NULL, &error);

  if (bundle != NULL)
    {
      sy_bundle_free (bundle);
      return g_strdup ("read");
    }
  assert_int_equal (error->domain, SY_BUNDLE_ERROR);
  assert_int_equal (error->code, SY_BUNDLE_ERROR_INVALID);
  return g_strdup (error->message);
}

static void
test_refusals_name_line_and_what_was_expected (void **state)
{
  static const struct
  {
    const char *from, *to, *named;
  } cases[] = {
    { "\"by\":\"Zoë", "\"by\":\"Zoe", "at line 1: “event_hash”: expected" },
    { "\"line\":2", "\"line\":3", "at line 2: “line”: expected 2, found 3" },
    { "\"line\":2", "\"line\":2.0", "at line 2: “line”: expected a whole number, found 2.0" },
    { "\"clock_set\":true", "\"clock_set\":1", "at line 2: “clock_set”: expected true or false, found a number" },
    { "\"clock_set\":true", "\"clock_set\":false", "at line 2: “event_hash”: expected" },
    { "\"kind\":\"policy\"", "\"kind\":\"licence\"", "at line 1: “kind”: expected a kind of event, found licence" },
    { "\"role\":\"\",", "", "at line 1: “event”: expected a member “role”, found none" },
    { "\"role\":\"\",", "\"role\":\"\",\"rule\":\"\",", "at line 1: “event”: expected no member “rule”, found it" },
    { "\"role\":\"\",", "\"role\":\"\",\"role\":\"\",", "at line 1: $.event.role" },
    { "\"role\":\"\",", "\"role\":null,", "at line 1: “role”: expected a text, found null" },
    { "\"findings\":\"\"", "\"findings\":\"\",\"origin\":\"\"", "at line 1: “origin”: expected a hash or no such member" },
    { "\"head\":{\"line\":4", "\"head\":{\"line\":5", "“head”: expected 5 lines, found 4" },
    { "\"head\":{\"line\":4", "\"head\":{\"line\":-4", "“head”: expected a line, found -4" },
    { "journal 1\"", "journal 2\"", "“bundle”: expected “steelyard journal 1”, found steelyard journal 2" },
    { "\"made\":\"2026-03-05T00:00:00Z\"", "\"made\":\"2026-03-05\"", "“made”: expected a time" },
    { "\"lines\":[", "\"rows\":[", "expected a JSON document with a list “lines”, found none" },
    { "\"lines\":[", "\"lines\":[],\"lines\":[", "$" },
    { "\n]}", ",\n]}", "at line 4: expected a line behind the comma, found the end" },
    { "\n]}", "\n] }", "read" },
    { "\n]}", "\n]}x", "" },
    { "},\n{\"line\":2", "}\n{\"line\":2", "at line 1: expected a comma or the end behind it" },
    { "\"00ff00", "\"00FF00", "at line 4: " },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GString *text = make_bundle (TRUE);
      g_autofree char *message = NULL;

      assert_int_equal (g_string_replace (text, cases[i].from, cases[i].to, 1), 1);
      message = refusal_of (text->str, text->len);
      if (strstr (message, cases[i].named) == NULL || (strcmp (message, "read") == 0) != (strcmp (cases[i].named, "read") == 0))
        fail_msg ("%s → %s: “%s” does not name “%s”", cases[i].from, cases[i].to, message, cases[i].named);
      g_string_free (text, TRUE);
    }
}

static void
test_lines_removed_or_moved_are_refused (void **state)
{
  GString *text = make_bundle (TRUE);
  g_auto (GStrv) lines = g_strsplit (text->str, "\n", -1); /* the frame, four lines, the end, "" */

  (void) state;
  for (int i = 1; i <= N_LINES; i++)
    {
      g_autoptr (GString) without = g_string_new (NULL);
      g_autoptr (GString) twice = g_string_new (NULL);
      g_autofree char *message = NULL, *other = NULL;

      for (int n = 0; lines[n] != NULL; n++)
        {
          if (n != i)
            g_string_append_printf (without, "%s\n", lines[n]);
          g_string_append_printf (twice, "%s\n", lines[n]);
          if (n == i && n < N_LINES)
            g_string_append_printf (twice, "%s\n", lines[n]);
        }
      message = refusal_of (without->str, without->len);
      assert_string_not_equal (message, "read");
      other = refusal_of (twice->str, twice->len);
      if (i < N_LINES)
        assert_string_not_equal (other, "read");
    }
  g_string_free (text, TRUE);
}

/* Every byte, with a bit that makes another letter of it, one that changes its case, and one that is no ASCII. No flip is read
   as another record: it is refused, or what it changed is no part of the chain, or is
   another way of writing the same (a blank, a digit of a \u escape). */
static void
test_every_flipped_byte (void **state)
{
  static const guint8 masks[] = { 0x01, 0x20, 0x80 };
  GString *text = make_bundle (FALSE);
  guint n_refused = 0, n_same = 0, n_beside = 0;

  (void) state;
  for (gsize at = 0; at < text->len; at++)
    for (gsize i = 0; i < G_N_ELEMENTS (masks); i++)
      {
        g_autoptr (SyBundle) bundle = NULL;

        text->str[at] ^= (char) masks[i];
        bundle = sy_bundle_read (text->str, text->len, NULL, NULL, NULL);
        if (bundle == NULL)
          n_refused++;
        else if (!is_what_was_written (bundle, FALSE))
          fail_msg ("byte %" G_GSIZE_FORMAT " with 0x%02x changed what was read", at, masks[i]);
        else if (strcmp (bundle->made, "2026-03-05T00:00:00Z") != 0 || strcmp (bundle->program, "steelyard 0") != 0)
          n_beside++;
        else
          n_same++;
        text->str[at] ^= (char) masks[i];
      }
  print_message ("%u flips: %u refused, %u in “made” and “program”, %u another way of writing the same\n",
                 n_refused + n_beside + n_same, n_refused, n_beside, n_same);
  /* "made" and "program" have 31 letters between them; line ends and hexadecimal digits of escapes are few. */
  assert_true (n_beside <= G_N_ELEMENTS (masks) * 31);
  assert_true (n_same <= 10);
  g_string_free (text, TRUE);
}

static void
test_every_cut_is_refused (void **state)
{
  GString *text = make_bundle (TRUE);

  (void) state;
  for (gsize length = 0; length + 1 < text->len; length++) /* the last byte is a line end */
    assert_null (sy_bundle_read (text->str, length, NULL, NULL, NULL));
  g_string_free (text, TRUE);
}

static gboolean
stop (guint64 done, guint64 of, gpointer user_data)
{
  assert_true (done <= of);
  ++*(int *) user_data;
  return FALSE;
}

static void
test_stopping (void **state)
{
  GString *text = make_bundle (TRUE);
  g_autoptr (GError) error = NULL;
  int calls = 0;

  (void) state;
  assert_null (sy_bundle_read (text->str, text->len, stop, &calls, &error));
  assert_int_equal (error->code, SY_BUNDLE_ERROR_STOPPED);
  assert_int_equal (calls, 1);
  g_string_free (text, TRUE);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_round_trip),
    cmocka_unit_test (test_an_empty_journal),
    cmocka_unit_test (test_refusals_name_line_and_what_was_expected),
    cmocka_unit_test (test_lines_removed_or_moved_are_refused),
    cmocka_unit_test (test_every_flipped_byte),
    cmocka_unit_test (test_every_cut_is_refused),
    cmocka_unit_test (test_stopping),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
