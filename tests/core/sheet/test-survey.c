/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib/gstdio.h>

#include "sy-method.h"
#include "sy-sheet.h"
#include "sy-survey-words.h"

#define CREATED "2026-11-25T10:42:00Z"

typedef struct
{
  char *folder;
} Place;

static int
make_folder (void **state)
{
  Place *place = g_new0 (Place, 1);

  place->folder = g_dir_make_tmp ("sy-survey-XXXXXX", NULL);
  assert_non_null (place->folder);
  *state = place;
  return 0;
}

static int
remove_folder (void **state)
{
  Place *place = *state;
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place);
  return 0;
}

static SySurveySheet
sheet_of (SyUnits units, SyPaper paper)
{
  return (SySurveySheet) { .units = units, .paper = paper, .program = "steelyard test" };
}

/* The path of a new sheet; free it. */
static char *
write_sheet (const Place *place, const SySurveySheet *sheet, const char *name)
{
  char *path = g_build_filename (place->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  if (!sy_survey_write_pdf (sheet, path, CREATED, &error))
    fail_msg ("%s", error->message);
  return path;
}

static char *
run_tool (const char *const *arguments)
{
  char *output = NULL;
  int status = -1;
  g_autoptr (GError) error = NULL;

  if (!g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output, NULL,
                     &status, &error))
    fail_msg ("%s", error->message);
  assert_int_equal (status, 0);
  return output;
}

/* The words of the sheet in the order in which they were set, one blank between two. */
static char *
read_words (const char *path)
{
  const char *arguments[] = { "pdftotext", "-raw", "-enc", "UTF-8", path, "-", NULL };
  g_autofree char *text = run_tool (arguments);
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f\r\t", -1);
  GString *line = g_string_new (NULL);

  for (int i = 0; words[i]; i++)
    if (*words[i])
      g_string_append_printf (line, "%s%s", line->len ? " " : "", words[i]);
  return g_string_free (line, FALSE);
}

static void
assert_says (const char *words, const char *wanted)
{
  if (!strstr (words, wanted))
    fail_msg ("the sheet does not say: %s", wanted);
}

static void
test_same_bytes (void **state)
{
  SySurveySheet metric = sheet_of (SY_UNITS_METRIC, SY_PAPER_A4),
                us = sheet_of (SY_UNITS_US, SY_PAPER_A4);
  g_autofree char *first = write_sheet (*state, &metric, "first.pdf");
  g_autofree char *second = write_sheet (*state, &metric, "second.pdf");
  g_autofree char *third = write_sheet (*state, &us, "third.pdf");
  g_autofree char *a = NULL, *b = NULL, *c = NULL;
  gsize a_size, b_size, c_size;

  assert_true (g_file_get_contents (first, &a, &a_size, NULL));
  assert_true (g_file_get_contents (second, &b, &b_size, NULL));
  assert_true (g_file_get_contents (third, &c, &c_size, NULL));
  assert_int_equal (a_size, b_size);
  assert_memory_equal (a, b, a_size);
  assert_false (a_size == c_size && memcmp (a, c, a_size) == 0);
}

static void
test_file_mode (void **state)
{
  SySurveySheet sheet = sheet_of (SY_UNITS_METRIC, SY_PAPER_A4);
  g_autofree char *path = g_build_filename (((Place *) *state)->folder, "open.pdf", NULL);
  g_autofree char *written = NULL;
  GStatBuf status;

  /* Also where a file that others may read was there before. */
  assert_true (g_file_set_contents_full (path, "x", 1, G_FILE_SET_CONTENTS_NONE, 0666, NULL));
  written = write_sheet (*state, &sheet, "open.pdf");
  assert_int_equal (g_stat (written, &status), 0);
  assert_int_equal (status.st_mode & 0777, 0600);

  /* Nothing temporary is left beside it. */
  g_autoptr (GDir) dir = g_dir_open (((Place *) *state)->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    assert_true (g_str_has_suffix (name, ".pdf"));
}

static void
test_refuses_no_folder (void **state)
{
  SySurveySheet sheet = sheet_of (SY_UNITS_METRIC, SY_PAPER_A4);
  g_autofree char *path = g_build_filename (((Place *) *state)->folder, "none", "sheet.pdf", NULL);
  g_autoptr (GError) error = NULL;

  assert_false (sy_survey_write_pdf (&sheet, path, CREATED, &error));
  assert_non_null (error);
  assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

static void
test_pages (void **state)
{
  for (int paper = SY_PAPER_A4; paper <= SY_PAPER_LETTER; paper++)
    {
      SySurveySheet sheet = sheet_of (SY_UNITS_METRIC, (SyPaper) paper);
      g_autofree char *path = write_sheet (*state, &sheet, "pages.pdf");
      const char *arguments[] = { "pdfinfo", path, NULL };
      g_autofree char *info = run_tool (arguments);
      g_autofree char *pages = g_strdup_printf ("Pages: %d", sy_survey_pages (&sheet));
      g_auto (GStrv) parts = g_strsplit_set (info, " ", -1);
      GString *tight = g_string_new (NULL);

      for (int i = 0; parts[i]; i++)
        if (*parts[i])
          g_string_append_printf (tight, "%s%s", tight->len ? " " : "", parts[i]);
      assert_true (sy_survey_pages (&sheet) <= 2);
      assert_says (tight->str, pages);
      assert_says (tight->str, "Tagged: yes");
      assert_says (tight->str, "Title: Measuring sheet for a lift");
      assert_says (tight->str, "Creator: steelyard test");
      assert_says (tight->str, paper == SY_PAPER_A4 ? "(A4)" : "612 x 792");
      g_string_free (tight, TRUE);
    }
}

static void
test_words (void **state)
{
  for (int units = 0; units < SY_N_UNITS; units++)
    for (int paper = SY_PAPER_A4; paper <= SY_PAPER_LETTER; paper++)
      {
        SySurveySheet sheet = sheet_of ((SyUnits) units, (SyPaper) paper);
        g_autofree char *path = write_sheet (*state, &sheet, "words.pdf");
        g_autofree char *words = read_words (path);
        g_autofree char *screening = sy_words_screening (NULL);

        for (int i = 0; i < SY_SURVEY_CONDITIONS; i++)
          assert_says (words, sy_survey_question (i, (SyUnits) units));
        assert_says (words, sy_survey_caution);
        assert_says (words, screening);
        assert_says (words, "Page 1 of 2");
        assert_says (words, "Page 2 of 2");
        assert_says (words, "Signature of the one who measured");
        assert_says (words, units == SY_UNITS_US ? "pounds" : "kilograms");
        /* The example in the pictures shows where, never how much. */
        assert_null (strstr (words, "H 55"));
        assert_null (strstr (words, "D 93"));
      }
}

/* Each condition that the form asks about is asked on paper, in the same order. */
static void
test_conditions_complete (void **state)
{
  const SyMethod *lift = sy_method_find ("lift");
  const SyField *field = sy_field_find (lift->fields, lift->n_fields, "conditions", NULL);

  (void) state;
  assert_non_null (field);
  assert_int_equal (field->n_choices, SY_SURVEY_CONDITIONS);
  for (int i = 0; i < SY_SURVEY_CONDITIONS; i++)
    assert_string_equal (sy_survey_conditions[i].id, field->choices[i].id);
}

static const char *
into_german (const char *msgid)
{
  if (strcmp (msgid, "Notes") == 0)
    return "Notizen";
  return strcmp (msgid, "Page {page} of {pages}") == 0 ? "Seite {page} von {pages}" : msgid;
}

static void
test_translated (void **state)
{
  SySurveySheet sheet = sheet_of (SY_UNITS_METRIC, SY_PAPER_A4);

  sheet.translate = into_german;

  g_autofree char *path = write_sheet (*state, &sheet, "translated.pdf");
  g_autofree char *words = read_words (path);

  assert_says (words, "Notizen");
  assert_says (words, "Seite 2 von 2");
  assert_null (strstr (words, "Page 2"));
}

/* What is written is what is drawn: no ink outside the margins of the page. */
static void
test_margins (void **state)
{
  (void) state;
  for (int paper = SY_PAPER_A4; paper <= SY_PAPER_LETTER; paper++)
    for (int page = 0; page < 2; page++)
      {
        SySurveySheet sheet = sheet_of (SY_UNITS_US, (SyPaper) paper);
        double width, height;

        sy_paper_size ((SyPaper) paper, &width, &height);

        cairo_rectangle_t extents = { 0, 0, width, height };
        cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
        cairo_t *cr = cairo_create (surface);

        sy_survey_draw (&sheet, page, cr);
        cairo_recording_surface_ink_extents (surface, &extents.x, &extents.y, &extents.width,
                                             &extents.height);
        assert_true (extents.x >= 40 && extents.x + extents.width <= width - 38);
        assert_true (extents.y >= 36 && extents.y + extents.height <= height - 28);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_same_bytes),
    cmocka_unit_test (test_file_mode),
    cmocka_unit_test (test_refuses_no_folder),
    cmocka_unit_test (test_pages),
    cmocka_unit_test (test_words),
    cmocka_unit_test (test_conditions_complete),
    cmocka_unit_test (test_translated),
    cmocka_unit_test (test_margins),
  };

  return cmocka_run_group_tests (tests, make_folder, remove_folder);
}
