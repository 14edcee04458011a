/* SPDX-License-Identifier: MIT */
#include "sy-outline.h"
#include "sy-test.h"

/* Plane geometry throughout. */

static SyOutline
outline_of (const SyVec3 *points, int n)
{
  SyOutline outline;

  assert_true (sy_outline_make (points, n, &outline));
  return outline;
}

static void
test_a_rectangle (void **state)
{
  static const SyVec3 points[] = { { 5, 3, 9 }, { -5, -3, 0 }, { 5, -3, 1 }, { -5, 3, 2 },
                                   { 0, 0, 7 }, { 5, 0, 0 },   { 5, 3, 0 } };
  SyOutline outline = outline_of (points, 7);

  (void) state;
  /* What is inside, on an edge or there twice is no corner. */
  assert_int_equal (outline.n, 4);
  assert_close (sy_outline_width (&outline), 6, 1e-15, 0);
  assert_close (sy_outline_distance (&outline, 0, 0), 3, 1e-15, 0);
  assert_close (sy_outline_distance (&outline, 4, 1), 1, 1e-15, 0);
  assert_close (sy_outline_distance (&outline, 5, 1), 0, 0, 0);
  assert_close (sy_outline_distance (&outline, 5, 3), 0, 0, 0);
  assert_close (sy_outline_distance (&outline, 5.25, 1), -0.25, 1e-15, 0);
  /* Beyond a corner: from the corner. */
  assert_close (sy_outline_distance (&outline, 8, 7), -5, 1e-15, 0);
}

static void
test_corners_go_round_to_the_left (void **state)
{
  static const SyVec3 points[] = { { 0, 2, 0 }, { 3, 1, 0 }, { 1, -2, 0 }, { -2, -1, 0 }, { 0, 0, 0 } };
  SyOutline outline = outline_of (points, 5);
  double area = 0;

  (void) state;
  assert_int_equal (outline.n, 4);
  for (int i = 0; i < 4; i++)
    area += sy_vec3_cross (outline.corner[i], outline.corner[(i + 1) % 4]).z / 2;
  assert_close (area, 11, 1e-14, 0);
}

/* Legs 3 and 4: the height over the side of 5 is 12/5, the circle inside has radius 1. */
static void
test_a_triangle (void **state)
{
  static const SyVec3 points[] = { { 0, 0, 0 }, { 4, 0, 0 }, { 0, 3, 0 } };
  SyOutline outline = outline_of (points, 3);

  (void) state;
  assert_close (sy_outline_width (&outline), 2.4, 1e-15, 0);
  assert_close (sy_outline_distance (&outline, 1, 1), 1, 1e-15, 0);
  assert_close (sy_outline_distance (&outline, 4, 3), -2.4, 1e-15, 0);
}

static void
test_two_points_and_one (void **state)
{
  static const SyVec3 points[] = { { -1, 0, 0 }, { 1, 0, 5 } };
  static const SyVec3 same[] = { { 2, 2, 0 }, { 2, 2, 1 }, { 2, 2, 2 } };
  SyOutline line = outline_of (points, 2), place = outline_of (same, 3);

  (void) state;
  assert_int_equal (line.n, 2);
  assert_close (sy_outline_width (&line), 0, 0, 0);
  assert_close (sy_outline_distance (&line, 0.5, 0), 0, 0, 0);
  assert_close (sy_outline_distance (&line, 0.5, 0.25), -0.25, 1e-15, 0);
  assert_close (sy_outline_distance (&line, 4, 4), -5, 1e-15, 0);
  assert_int_equal (place.n, 1);
  assert_close (sy_outline_width (&place), 0, 0, 0);
  assert_close (sy_outline_distance (&place, 2, 2), 0, 0, 0);
  assert_close (sy_outline_distance (&place, 5, 6), -5, 1e-15, 0);
}

/* On a slant, thirds are not exact: they must not open an inside. */
static void
test_points_on_a_line (void **state)
{
  SyVec3 points[7];
  SyOutline outline;

  (void) state;
  for (int i = 0; i < 7; i++)
    points[i] = sy_vec3 (1000 + i * 100 / 3., 200 + i * 10 / 7. * 3.3, i);
  outline = outline_of (points, 7);
  assert_int_equal (outline.n, 2);
  assert_close (sy_outline_width (&outline), 0, 0, 0);
  assert_close (sy_outline_distance (&outline, points[3].x, points[3].y), 0, 1e-9, 0);
  assert_true (sy_outline_distance (&outline, points[3].x, points[3].y) <= 0);
  assert_close (sy_outline_distance (&outline, points[6].x + 3, points[6].y), -3, 0, 0.02);
}

static void
test_too_many_or_none_are_refused (void **state)
{
  SyVec3 points[SY_OUTLINE_MAX + 1];
  SyOutline outline = { .n = 77 };

  (void) state;
  for (int i = 0; i <= SY_OUTLINE_MAX; i++)
    points[i] = sy_vec3 (cos (i * 0.09), sin (i * 0.09), 0);
  assert_false (sy_outline_make (points, 0, &outline));
  assert_false (sy_outline_make (points, SY_OUTLINE_MAX + 1, &outline));
  assert_int_equal (outline.n, 77);
  assert_true (sy_outline_make (points, SY_OUTLINE_MAX, &outline));
  assert_int_equal (outline.n, SY_OUTLINE_MAX);
}

/* Points all round a circle of radius 2: width and distance are those of the polygon of 60. */
static void
test_a_circle (void **state)
{
  SyVec3 points[60];
  SyOutline outline;
  double apothem = 2 * cos (M_PI / 60);

  (void) state;
  for (int i = 0; i < 60; i++)
    points[i * 7 % 60] = sy_vec3 (10 + 2 * cos (i * M_PI / 30), -4 + 2 * sin (i * M_PI / 30), 0);
  outline = outline_of (points, 60);
  assert_int_equal (outline.n, 60);
  assert_close (sy_outline_width (&outline), 2 * apothem, 1e-13, 0);
  assert_close (sy_outline_distance (&outline, 10, -4), apothem, 1e-13, 0);
}

/* Turned and moved, inside stays as far inside. */
static void
test_turning_changes_nothing (void **state)
{
  static const SyVec3 points[] = { { -600, -400, 0 }, { 600, -380, 0 }, { 550, 400, 0 }, { -600, 390, 0 },
                                   { 20, 30, 0 } };
  static const double at[][2] = { { 0, 0 }, { 590, -300 }, { 700, 100 }, { -650, -450 } };
  SyOutline outline = outline_of (points, 5);

  (void) state;
  for (int step = 0; step < 360; step++)
    {
      double c = cos (step * M_PI / 180), s = sin (step * M_PI / 180);
      SyVec3 turned[5];
      SyOutline other;

      for (int i = 0; i < 5; i++)
        turned[i] = sy_vec3 (c * points[i].x - s * points[i].y + 30, s * points[i].x + c * points[i].y - 70, 0);
      other = outline_of (turned, 5);
      assert_int_equal (other.n, 4);
      assert_close (sy_outline_width (&other), sy_outline_width (&outline), 1e-9, 0);
      for (int i = 0; i < 4; i++)
        assert_close (sy_outline_distance (&other, c * at[i][0] - s * at[i][1] + 30, s * at[i][0] + c * at[i][1] - 70),
                      sy_outline_distance (&outline, at[i][0], at[i][1]), 1e-9, 0);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_rectangle),
    cmocka_unit_test (test_corners_go_round_to_the_left),
    cmocka_unit_test (test_a_triangle),
    cmocka_unit_test (test_two_points_and_one),
    cmocka_unit_test (test_points_on_a_line),
    cmocka_unit_test (test_too_many_or_none_are_refused),
    cmocka_unit_test (test_a_circle),
    cmocka_unit_test (test_turning_changes_nothing),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
