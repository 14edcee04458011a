/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "lift-scene.h"
#include "sy-drawing.h"

typedef void (*Fill) (SyScene *, const SyLiftPosition *, const SyLiftPosition *, double,
                      const char *);
static const Fill fills[] = { sy_lift_scene_side, sy_lift_scene_above };

static const SyLiftPosition from = { 55, 20, 0 }, to = { 45, 110, 30 };

/* The n-th dimension or angle that shows a fact. */
static const SyMark *
find_fact (const SyScene *scene, const char *fact, int n)
{
  for (int i = 0; i < scene->count; i++)
    if (scene->marks[i].fact && strcmp (scene->marks[i].fact, fact) == 0 && n-- == 0)
      return &scene->marks[i];
  return NULL;
}

static double
span (const SyMark *mark)
{
  return hypot (mark->points[1].x - mark->points[0].x, mark->points[1].y - mark->points[0].y);
}

static int
count_governing (const SyScene *scene)
{
  int count = 0;

  for (int i = 0; i < scene->count; i++)
    count += scene->marks[i].governing;
  return count;
}

static void
assert_measure (const SyScene *scene, const char *fact, int n, const char *text, double length)
{
  const SyMark *mark = find_fact (scene, fact, n);

  assert_non_null (mark);
  assert_string_equal (mark->text, text);
  assert_close (span (mark), length, 1e-9, 0);
}

static void
test_side (void **state)
{
  SyMark marks[SY_LIFT_SCENE_MARKS];
  SyScene scene;

  (void) state;
  sy_scene_begin (&scene, SY_UNITS_METRIC, marks, SY_LIFT_SCENE_MARKS);
  sy_lift_scene_side (&scene, &from, &to, 90, "destination.VM");
  assert_measure (&scene, "origin.H", 0, "H 55 cm", 55);
  assert_measure (&scene, "origin.V", 0, "V 20 cm", 20);
  assert_measure (&scene, "destination.H", 0, "H 45 cm", 45);
  assert_measure (&scene, "destination.V", 0, "V 110 cm", 110);
  assert_measure (&scene, "destination.V", 1, "D 90 cm", 90);
  assert_null (find_fact (&scene, "travel", 0));

  /* A height is upright, a reach lies flat, and the two reaches do not coincide. */
  assert_true (find_fact (&scene, "origin.V", 0)->points[0].x
               == find_fact (&scene, "origin.V", 0)->points[1].x);
  assert_true (find_fact (&scene, "origin.H", 0)->points[0].y
               != find_fact (&scene, "destination.H", 0)->points[0].y);
  assert_true (find_fact (&scene, "destination.V", 0)->governing);
  assert_int_equal (count_governing (&scene), 1);
}

static void
test_above (void **state)
{
  SyMark marks[SY_LIFT_SCENE_MARKS];
  SyScene scene;
  const SyMark *angle;

  (void) state;
  sy_scene_begin (&scene, SY_UNITS_METRIC, marks, SY_LIFT_SCENE_MARKS);
  sy_lift_scene_above (&scene, &from, &to, 90, "destination.AM");
  assert_measure (&scene, "origin.H", 0, "H 55 cm", 55);
  assert_measure (&scene, "destination.H", 0, "H 45 cm", 45);
  assert_string_equal (find_fact (&scene, "origin.A", 0)->text, "A 0\302\260");
  angle = find_fact (&scene, "destination.A", 0);
  assert_string_equal (angle->text, "A 30\302\260");
  assert_close (atan2 (angle->points[2].x, angle->points[2].y) * 180 / acos (-1), 30, 1e-9, 0);
  assert_true (angle->governing);
  assert_int_equal (count_governing (&scene), 1);
}

static void
test_travel_only (void **state)
{
  SyMark marks[SY_LIFT_SCENE_MARKS];
  SyScene scene;
  bool path = false;

  (void) state;
  sy_scene_begin (&scene, SY_UNITS_METRIC, marks, SY_LIFT_SCENE_MARKS);
  sy_lift_scene_side (&scene, &from, NULL, 72.5, "origin.DM");
  assert_measure (&scene, "travel", 0, "D 72.5 cm", 72.5);
  assert_true (find_fact (&scene, "travel", 0)->governing);
  for (int i = 0; i < scene.count; i++)
    {
      assert_true (scene.marks[i].role != SY_ROLE_DESTINATION);
      if (scene.marks[i].role == SY_ROLE_PATH)
        {
          path = true;
          assert_true (scene.marks[i].points[1].y > scene.marks[i].points[0].y);
        }
    }
  assert_true (path);
}

static void
test_us_units (void **state)
{
  static const SyLiftPosition at = { 18.25, 15, 45 };
  SyMark marks[SY_LIFT_SCENE_MARKS], metric_marks[SY_LIFT_SCENE_MARKS];
  SyScene scene, metric;

  (void) state;
  sy_scene_begin (&scene, SY_UNITS_US, marks, SY_LIFT_SCENE_MARKS);
  sy_lift_scene_side (&scene, &at, NULL, 21, "");
  assert_measure (&scene, "origin.H", 0, "H 18.3 in", 18.25);
  assert_int_equal (count_governing (&scene), 0);

  /* The same lift in the other system is the same picture in other numbers. */
  sy_scene_begin (&metric, SY_UNITS_METRIC, metric_marks, SY_LIFT_SCENE_MARKS);
  sy_lift_scene_side (&metric, &(SyLiftPosition){ 18.25 * SY_CM_PER_IN, 15 * SY_CM_PER_IN, 45 },
                      NULL, 21 * SY_CM_PER_IN, NULL);
  assert_int_equal (metric.count, scene.count);
  assert_close (metric.x1 - metric.x0, (scene.x1 - scene.x0) * SY_CM_PER_IN, 0, 1e-9);
  assert_close (metric.y1 - metric.y0, (scene.y1 - scene.y0) * SY_CM_PER_IN, 0, 1e-9);
}

/* Every point of every mark is inside the part of the world that is shown, also for odd lifts. */
static void
test_everything_shown (void **state)
{
  static const SyLiftPosition odd[] = {
    { 25, 75, 0 },    { 63, 0, 135 },    { 0.5, 139, 12 },
    { 400, 300, 90 }, { 30, 170, 11.9 }, { 4, 140, 180 },
  };

  (void) state;
  for (size_t i = 0; i < sizeof odd / sizeof odd[0]; i++)
    for (size_t j = 0; j <= sizeof odd / sizeof odd[0]; j++)
      for (int view = 0; view < 2; view++)
        {
          SyMark marks[SY_LIFT_SCENE_MARKS];
          SyScene scene;

          sy_scene_begin (&scene, SY_UNITS_METRIC, marks, SY_LIFT_SCENE_MARKS);
          fills[view] (&scene, &odd[i], j == i ? NULL : &odd[j % 6], 50, "origin.HM");
          assert_in_range (scene.count, 10, SY_LIFT_SCENE_MARKS - 1);
          for (int m = 0; m < scene.count; m++)
            for (int p = 0; p < marks[m].n_points; p++)
              {
                assert_true (marks[m].points[p].x >= scene.x0 && marks[m].points[p].x <= scene.x1);
                assert_true (marks[m].points[p].y >= scene.y0 && marks[m].points[p].y <= scene.y1);
              }
        }
}

static void
test_too_little_room (void **state)
{
  (void) state;
  for (int room = 0; room < 30; room++)
    for (int view = 0; view < 2; view++)
      {
        SyMark marks[31];
        SyScene scene;

        memset (marks, 0x5a, sizeof marks);
        sy_scene_begin (&scene, SY_UNITS_METRIC, marks, room);
        fills[view] (&scene, &from, &to, 90, NULL);
        assert_in_range (scene.count, 0, room);
        for (size_t i = 0; i < sizeof marks[0]; i++)
          assert_int_equal (((unsigned char *) &marks[room])[i], 0x5a);
      }
}

/* What governs is drawn with more ink. */
static unsigned long
ink_of (const char *governing, int view)
{
  SyMark marks[SY_LIFT_SCENE_MARKS];
  SyScene scene;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 420, 360);
  cairo_t *cr = cairo_create (surface);
  unsigned long ink = 0;

  sy_scene_begin (&scene, SY_UNITS_METRIC, marks, SY_LIFT_SCENE_MARKS);
  fills[view] (&scene, &from, &to, 90, governing);
  sy_drawing_scene (cr, 420, 360, &scene, &sy_palette_paper, NULL);
  cairo_surface_flush (surface);
  for (int y = 0; y < 360; y++)
    for (int x = 0; x < 420; x++)
      ink += 255u
             - cairo_image_surface_get_data (
                 surface)[y * cairo_image_surface_get_stride (surface) + 4 * x + 2];
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static void
test_governing_is_heavier (void **state)
{
  (void) state;
  assert_true (ink_of ("origin.HM", 0) > ink_of (NULL, 0));
  assert_true (ink_of ("destination.VM", 0) > ink_of (NULL, 0));
  assert_true (ink_of ("destination.AM", 1) > ink_of (NULL, 1));
  assert_int_equal (ink_of ("origin.FM", 0), ink_of (NULL, 0)); /* no dimension shows the pace */
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_side),
    cmocka_unit_test (test_above),
    cmocka_unit_test (test_travel_only),
    cmocka_unit_test (test_us_units),
    cmocka_unit_test (test_everything_shown),
    cmocka_unit_test (test_too_little_room),
    cmocka_unit_test (test_governing_is_heavier),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
