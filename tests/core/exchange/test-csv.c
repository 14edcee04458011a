/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-csv.h"

#define MARK "\xef\xbb\xbf"

/* Cells joined by "|", rows by "/", so that a case reads in one line. */
static char *
read_flat (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyCsv) csv = sy_csv_read (text, strlen (text), &error);
  GString *out = g_string_new (NULL);

  if (csv == NULL)
    g_string_append_printf (out, "! %s", error->message);
  for (guint i = 0; csv != NULL && i < csv->rows->len; i++)
    {
      const SyCsvRow *row = csv->rows->pdata[i];
      g_autofree char *cells = g_strjoinv ("|", row->cells);

      assert_int_equal (g_strv_length (row->cells), row->n_cells);
      g_string_append_printf (out, "%s%s", i > 0 ? "/" : "", cells);
    }
  return g_string_free (out, FALSE);
}

static void
test_reading (void **state)
{
  /* RFC 4180, section 2, in its order, and what spreadsheets do besides. */
  static const struct
  {
    const char *text, *cells;
  } cases[] = {
    { "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx" },
    { "aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx" },
    { "a b,c \r\n d,e", "a b|c / d|e" },
    { "\"aaa\",\"bbb\"\r\nzzz,yyy", "aaa|bbb/zzz|yyy" },
    { "\"aaa\",\"b\r\nbb\"\r\nzzz,yyy", "aaa|b\r\nbb/zzz|yyy" },
    { "\"aaa\",\"b\"\"bb\"", "aaa|b\"bb" },
    { "a,b\nc,d\n", "a|b/c|d" },
    { MARK "a;b\r\n1,5;\"2;3\"\r\n", "a|b/1,5|2;3" },
    { MARK "\"a,b\";c\n", "a,b|c" },
    { "a,b\n,\n\"\",\n", "a|b/|/|" },
    { "a,b\n\n\r\nc,d\n\n", "a|b/c|d" },
    { "a\nb\n", "a/b" },
    { "a,b\n1\n1,2,3\n", "a|b/1/1|2|3" },
    { "a,b,\n", "a|b|" },
    { "\"\"\"\",x", "\"|x" },
    { "", "! line 1: given nothing; allowed: the names of the columns" },
    { MARK "\r\n", "! line 1: given nothing; allowed: the names of the columns" },
    { "a,b\n\"x\"y,z", "! line 2: given text behind a closing quote; allowed: a separator or the end of the line; a quote "
                       "inside quotes is written twice" },
    { "a,b\nx\"y,z", "! line 2: given a quote inside a cell; allowed: a cell in quotes, with quotes in it written twice" },
    { "a,b\n1,2\n\"x\n\n,z", "! line 3: given a quote that is not closed; allowed: a closing quote" },
    { "a,b\rc,d", "! line 1: given a carriage return alone; allowed: lines that end in CRLF or LF" },
    { "a,b\n\xff,d", "! line 2: given bytes that are no UTF-8 text; allowed: UTF-8 (save the table as “CSV UTF-8”)" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *cells = read_flat (cases[i].text);

      assert_string_equal (cells, cases[i].cells);
    }
}

static void
test_lines_are_those_of_the_file (void **state)
{
  static const char text[] = "a,b\r\n\"1\n2\",x\r\n\r\n3,4\r\n";
  g_autoptr (SyCsv) csv = sy_csv_read (text, strlen (text), NULL);

  (void) state;
  assert_int_equal (csv->rows->len, 3);
  assert_int_equal (((SyCsvRow *) csv->rows->pdata[1])->line, 2);
  assert_int_equal (((SyCsvRow *) csv->rows->pdata[2])->line, 5);
}

static void
test_a_nul_byte_is_refused (void **state)
{
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_null (sy_csv_read ("a,b\n1\0,2\n", 9, &error));
  assert_int_equal (error->code, SY_CSV_ERROR_TEXT);
}

static void
test_writing (void **state)
{
  static const struct
  {
    const char *text, *cell;
  } cases[] = {
    { "plain", "plain" },           { "", "" },
    { "a,b", "\"a,b\"" },           { "a;b", "\"a;b\"" },
    { "say \"so\"", "\"say \"\"so\"\"\"" }, { "two\nlines", "\"two\nlines\"" },
    { " blank", "\" blank\"" },     { "=1+1", "'=1+1" },
    /* behind what some spreadsheets take away, and in full width */
    { " =1", "\"' =1\"" },          { "\"=1", "\"'\"\"=1\"" },       { "\302\240=1", "'\302\240=1" },
    { "\342\200\213@a", "'\342\200\213@a" }, { "\357\274\235\061", "'\357\274\235\061" }, { "\n=1", "\"'\n=1\"" },
    { "a=1", "a=1" },
    { "+1", "'+1" },                { "-1", "'-1" },
    { "@x", "'@x" },                { "\tx", "'\tx" },
    { "\rx", "\"'\rx\"" },          { "=\"a\",b", "\"'=\"\"a\"\",b\"" },
    { "1=2", "1=2" },
  };
  static const struct
  {
    double value;
    const char *cell;
  } numbers[] = { { -2.5, "-2.5" }, { 0.1, "0.1" }, { 3, "3" }, { NAN, "" }, { INFINITY, "unbounded" } };
  g_autoptr (GString) row = g_string_new (NULL);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);

      sy_csv_add_text (out, TRUE, cases[i].text);
      assert_string_equal (out->str, cases[i].cell);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);

      sy_csv_add_number (out, TRUE, numbers[i].value);
      assert_string_equal (out->str, numbers[i].cell);
    }
  sy_csv_begin (row);
  sy_csv_add_text (row, TRUE, "a");
  sy_csv_add_number (row, FALSE, 1.5);
  sy_csv_end_row (row);
  assert_string_equal (row->str, MARK "a,1.5\r\n");
}

static void
test_what_is_written_reads_back (void **state)
{
  static const char *const letters[] = { "a", ",", ";", "\"", "\n", "\r\n", "é", " ", "1", "." };
  g_autoptr (GRand) random = g_rand_new_with_seed (4180);

  (void) state;
  for (int i = 0; i < 2000; i++)
    {
      g_autoptr (GString) out = g_string_new (NULL);
      g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
      g_autoptr (SyCsv) csv = NULL;
      const SyCsvRow *row;

      /* The first row says which separator it is. */
      sy_csv_begin (out);
      g_string_append (out, "x,y\r\n");
      for (int n = 0; n < 3; n++)
        {
          g_autoptr (GString) text = g_string_new ("t");

          for (int k = g_rand_int_range (random, 0, 8); k > 0; k--)
            g_string_append (text, letters[g_rand_int_range (random, 0, (gint32) G_N_ELEMENTS (letters))]);
          sy_csv_add_text (out, n == 0, text->str);
          g_ptr_array_add (texts, g_strdup (text->str));
        }
      sy_csv_end_row (out);
      csv = sy_csv_read (out->str, out->len, NULL);
      assert_non_null (csv);
      assert_int_equal (csv->rows->len, 2);
      row = csv->rows->pdata[1];
      assert_int_equal (row->n_cells, 3);
      for (guint n = 0; n < 3; n++)
        assert_string_equal (row->cells[n], texts->pdata[n]);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_reading),
    cmocka_unit_test (test_lines_are_those_of_the_file),
    cmocka_unit_test (test_a_nul_byte_is_refused),
    cmocka_unit_test (test_writing),
    cmocka_unit_test (test_what_is_written_reads_back),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
