/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <sys/stat.h>

#include "sy-settings.h"
#include "sy-test-facts.h"

static char *home;

static char *
file_path (void)
{
  return g_build_filename (home, "steelyard", "settings.ini", NULL);
}

static void
what_is_set_comes_back_and_the_rest_stays (void **state)
{
  g_autofree char *none = sy_settings_get (SY_SETTING_AUTHOR);
  g_autofree char *author = NULL, *style = NULL;

  (void) state;
  assert_string_equal (none, "");
  assert_true (sy_settings_set (SY_SETTING_AUTHOR, "M. Ö=[x]\n; y", NULL));
  assert_true (sy_settings_set (SY_SETTING_STYLE, "dark", NULL));
  assert_true (sy_settings_set_units (SY_UNITS_US, NULL));
  author = sy_settings_get (SY_SETTING_AUTHOR);
  style = sy_settings_get (SY_SETTING_STYLE);
  assert_string_equal (author, "M. Ö=[x]\n; y");
  assert_string_equal (style, "dark");
  assert_int_equal (sy_settings_get_units (NULL), SY_UNITS_US);
}

static void
only_its_owner_reads_it (void **state)
{
  g_autofree char *path = file_path ();
  struct stat info;

  (void) state;
  umask (0);
  assert_true (sy_settings_set (SY_SETTING_AUTHOR, "x", NULL));
  assert_int_equal (stat (path, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0600);
}

static void
a_size_that_no_screen_has_is_none (void **state)
{
  int width = 1, height = 2;
  gboolean maximized = FALSE;

  (void) state;
  assert_true (sy_settings_set_size (1100, 700, TRUE, NULL));
  assert_true (sy_settings_get_size (&width, &height, &maximized));
  assert_int_equal (width, 1100);
  assert_int_equal (height, 700);
  assert_true (maximized);
  assert_true (sy_settings_set_size (-5, 1000000, FALSE, NULL));
  assert_false (sy_settings_get_size (&width, &height, &maximized));
  assert_int_equal (width, 1100);
}

static void
a_spoilt_file_counts_as_empty (void **state)
{
  g_autofree char *path = file_path ();
  g_autofree char *style = NULL, *author = NULL;

  (void) state;
  assert_true (g_file_set_contents (path, "\x00\xff[steely", 8, NULL));
  style = sy_settings_get (SY_SETTING_STYLE);
  assert_string_equal (style, "");
  assert_int_equal (sy_settings_get_units (NULL), SY_UNITS_METRIC);
  assert_true (sy_settings_set (SY_SETTING_AUTHOR, "again", NULL));
  author = sy_settings_get (SY_SETTING_AUTHOR);
  assert_string_equal (author, "again");
}

static void
a_place_that_cannot_be_written_is_an_error (void **state)
{
  g_autofree char *folder = g_build_filename (home, "steelyard", NULL);
  g_autofree char *away = g_strconcat (folder, "-away", NULL);
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_int_equal (g_rename (folder, away), 0);
  assert_true (g_file_set_contents (folder, "in the way", -1, NULL));
  assert_false (sy_settings_set (SY_SETTING_AUTHOR, "x", &error));
  assert_non_null (error);
}

/* The person's choice, else the region's, else the locale's; a region without units says nothing. */
static void
a_region_brings_its_units_where_none_were_chosen (void **state)
{
  const SyRegion us = { .has_units = true, .units = SY_UNITS_US }, none = { .has_units = false, .units = SY_UNITS_US };
  g_autofree char *path = file_path ();

  (void) state;
  assert_true (g_file_set_contents (path, "", 0, NULL));
  assert_int_equal (sy_settings_get_units (&us), SY_UNITS_US);
  assert_int_equal (sy_settings_get_units (&none), SY_UNITS_METRIC);
  assert_true (sy_settings_set_units (SY_UNITS_METRIC, NULL));
  assert_int_equal (sy_settings_get_units (&us), SY_UNITS_METRIC);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (what_is_set_comes_back_and_the_rest_stays),
    cmocka_unit_test (only_its_owner_reads_it),
    cmocka_unit_test (a_size_that_no_screen_has_is_none),
    cmocka_unit_test (a_spoilt_file_counts_as_empty),
    cmocka_unit_test (a_region_brings_its_units_where_none_were_chosen),
    cmocka_unit_test (a_place_that_cannot_be_written_is_an_error),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
