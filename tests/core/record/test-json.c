/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-json.h"

/* Source of what is a document: RFC 8259; what is stricter: the format's own rules in docs/facts.md. */

static const SyJson *
scan (const char *text, gssize length, SyMemory *memory, SyProblems *problems)
{
  sy_problems_clear (problems);
  return sy_json_scan (text, length < 0 ? strlen (text) : (size_t) length, SY_JSON_DOCUMENT_MAX, memory, problems);
}

static void
test_accepts (void **state)
{
  static const char *const good[] = {
    "null", " true\n", "0", "-0", "1e3", "1E+3", "1.5e-3", "\"\"", "\"\\u00e9\\ud83d\\ude00\\n\"", "[]", "{}",
    "[1,2,[3,{\"a\":null}]]", "{\"a\":1,\"b\":{\"a\":1}}", "\t{ \"a\" : [ ] }\r\n", "\"\xc3\xa9\"", "9007199254740993",
    "4.9e-324", "1e-400",
  };
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
    if (scan (good[i], -1, memory, problems) == NULL)
      fail_msg ("refused %s: allowed %s", good[i], problems->items[0].allowed);
}

static void
test_refuses (void **state)
{
  static const char *const bad[] = {
    "", " ", "{", "[1,]", "{\"a\":1,}", "{a:1}", "{'a':1}", "[1 2]", "{\"a\" 1}", "01", "-", "+1", "1.", ".5", "1e",
    "0x10", "007", "NaN", "Infinity", "-Infinity", "1e400", "nul", "nullx", "truefalse", "\"", "\"\\x\"", "\"\\u12\"",
    "\"\\ud800\"", "\"\\udc00\"", "\"\\u0000\"", "\"a\nb\"", "{} {}", "1 1", "[] // c", "/* c */ []", "# c\n[]",
    "\xef\xbb\xbf{}", "\"\xff\"", "\"\xc0\x80\"", "{\"a\":1,\"a\":2}", "{\"\\u0061\":1,\"a\":2}", "[1_000]", "1,5",
    "\"\\", "{\"a\":", "[\"a\"", "{\"a\":1 \"b\":2}",
  };
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      if (scan (bad[i], -1, memory, problems) != NULL)
        fail_msg ("accepted %s", bad[i]);
      assert_true (problems->count > 0);
      assert_true (problems->items[0].path[0] == '$' && *problems->items[0].given && *problems->items[0].allowed);
    }
  assert_null (scan ("[1]\0", 4, memory, problems)); /* a NUL byte behind the document */
}

static void
test_truncated (void **state)
{
  static const char text[] = "{\"load\":{\"typical\":1.5e2,\"x\":\"\\u00e9\xc3\xa9\"},\"list\":[true,null,{\"a\":[]}]}";
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  assert_non_null (scan (text, -1, memory, problems));
  for (gsize length = 0; length < sizeof text - 1; length++)
    {
      /* a copy of exactly that length, so that reading on would be seen by the sanitizer */
      g_autofree char *copy = g_memdup2 (text, MAX (length, 1));
      sy_memory_reset (memory);
      assert_null (scan (copy, (gssize) length, memory, problems));
    }
}

static void
test_depth (void **state)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  for (int depth = 31; depth <= 5000; depth = depth < 34 ? depth + 1 : depth * 3)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      for (int i = 0; i < depth; i++)
        g_string_append_c (text, '[');
      for (int i = 0; i < depth; i++)
        g_string_append_c (text, ']');
      assert_int_equal (scan (text->str, -1, memory, problems) != NULL, depth <= 32);
    }
}

static void
test_places (void **state)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  scan ("{\"a\":[1,\n{\"b\":\n\n x}]}", -1, memory, problems);
  assert_string_equal (problems->items[0].path, "$.a[1].b");
  assert_int_equal (problems->items[0].line, 4);
  assert_string_equal (problems->items[0].given, "x");
}

/* Duplicate keys are found among many members too. */
static void
test_many_members (void **state)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  (void) state;
  for (int twin = 0; twin < 100; twin += 33)
    {
      g_autoptr (GString) text = g_string_new ("{");
      for (int i = 0; i < 100; i++)
        g_string_append_printf (text, "\"k%d\":%d,", i, i);
      g_autofree char *sound = g_strconcat (text->str, "\"last\":0}", NULL);
      assert_non_null (scan (sound, -1, memory, problems));
      g_string_append_printf (text, "\"k%d\":0}", twin);
      assert_null (scan (text->str, -1, memory, problems));
      assert_int_equal (problems->items[0].kind, SY_PROBLEM_DUPLICATE);
    }
}

/* What is written reads back as it was. */
static void
test_writer (void **state)
{
  static const char text[] = "{\"a\":\"q\\\"\\\\\\n\\t\\u0001é\",\"n\":[1.50,-0,1e3,true,null],\"o\":{}}";
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (GString) once = g_string_new (NULL);
  g_autoptr (GString) twice = g_string_new (NULL);

  (void) state;
  sy_json_write_tree (once, scan (text, -1, memory, problems));
  sy_json_write_tree (twice, scan (once->str, -1, memory, problems));
  assert_string_equal (once->str, text);
  assert_string_equal (twice->str, text);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_accepts), cmocka_unit_test (test_refuses),      cmocka_unit_test (test_truncated),
    cmocka_unit_test (test_depth),   cmocka_unit_test (test_places),       cmocka_unit_test (test_many_members),
    cmocka_unit_test (test_writer),
  };

  return cmocka_run_group_tests_name ("json", tests, NULL, NULL);
}
