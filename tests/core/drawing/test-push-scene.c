/* SPDX-License-Identifier: MIT */
#include "scene-sheet.h"

/* Pushing, pulling and sliding from the side: forces to one scale, the slope the way it goes, what governs heavy. */

#define DUTY "\"handle_height\":100,\"distance\":2,\"frequency\":0.1,\"conditions\":[]"
#define CART(way, units) \
  "{\"method\":\"push\",\"units\":\"" units "\",\"way\":\"" way "\"," DUTY ",\"cart\":{\"gross_mass\":600," \
  "\"rolling_coefficient\":0.02,\"start_factor\":2,\"slope\":2,\"brake\":\"parking\",\"stop_deceleration\":0.01}}"
static const char measured[]
  = "{\"method\":\"push\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"initial\":100,\"sustained\":80}";
static const char nothing[] = "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100}";
static const char die[] =
    "{\"method\":\"slide\",\"units\":\"metric\",\"way\":\"push\"," DUTY ",\"mass\":100,\"friction\":0.05,"
                          "\"incline\":4,\"direction\":\"down\",\"held\":\"stops\"}";

static double
length_of (const SyMark *arrow)
{
  double dx = arrow->points[1].x - arrow->points[0].x, dy = arrow->points[1].y - arrow->points[0].y;

  return sqrt (dx * dx + dy * dy);
}

/* 600 kg, 2 %, 2 degrees: 440.5, 322.9, 205.3 N; stopped 264.2 N. */
static void
forces_are_to_scale (void **state)
{
  g_autofree Sheet *sheet = draw (CART ("push", "metric"), 0);
  static const double newton[] = { 440.5, 322.9, 205.3, 264.2 };

  (void) state;
  assert_string_equal (sheet->scene.force_text, "441 N");
  for (int i = 0; i < 4; i++)
    assert_close (length_of (find (sheet, SY_MARK_ARROW, SY_ROLE_TENSION, i)),
                  sheet->scene.force_length * newton[i] / newton[0], 0.05, 0);
  assert_non_null (find_text (sheet, "Fi 441 N"));
  assert_non_null (find_text (sheet, "Fs 323 N"));
  assert_non_null (find_text (sheet, "Fh 205 N"));
  assert_non_null (find_text (sheet, "Fb 264 N"));
  assert_non_null (find_text (sheet, "m 600 kg"));
  assert_string_equal (find_text (sheet, "s 2\302\260")->fact, "cart.slope");
  assert_string_equal (find_text (sheet, "h 100 cm")->fact, "handle_height");
}

static void
what_governs_is_heavy (void **state)
{
  g_autofree Sheet *cart = draw (CART ("push", "metric"), 0);
  g_autofree Sheet *force = draw (measured, 0);

  (void) state;
  /* the move, at 322.9 of 68.6 N; and of the measured forces too, at 80 of 68.6 N */
  assert_false (find (cart, SY_MARK_ARROW, SY_ROLE_TENSION, 0)->governing);
  assert_true (find (cart, SY_MARK_ARROW, SY_ROLE_TENSION, 1)->governing);
  assert_true (find (force, SY_MARK_ARROW, SY_ROLE_TENSION, 1)->governing);
  assert_null (find (force, SY_MARK_ARROW, SY_ROLE_TENSION, 2));
}

/* Pushed, it goes up and away; pulled, up and towards whoever pulls. */
static void
the_way_it_goes (void **state)
{
  g_autofree Sheet *push = draw (CART ("push", "metric"), 0);
  g_autofree Sheet *pull = draw (CART ("pull", "metric"), 0);
  g_autofree Sheet *down = draw (die, 0);
  const SyMark *up = find (push, SY_MARK_ARROW, SY_ROLE_TENSION, 0);
  const SyMark *to = find (pull, SY_MARK_ARROW, SY_ROLE_TENSION, 0);
  const SyMark *floor = find (pull, SY_MARK_LINE, SY_ROLE_FLOOR, 1);
  const SyMark *bolster = find (down, SY_MARK_POLYGON, SY_ROLE_SUPPORT, 0);

  (void) state;
  assert_true (up->points[1].x > up->points[0].x && up->points[1].y > up->points[0].y);
  assert_true (to->points[1].x < to->points[0].x && to->points[1].y > to->points[0].y);
  assert_true (floor->points[1].y < floor->points[0].y);
  assert_true (bolster->points[1].y < bolster->points[0].y);
}

static void
us_units (void **state)
{
  g_autofree Sheet *sheet = draw (CART ("push", "us"), 0);

  (void) state;
  assert_non_null (find_text (sheet, "h 100 in"));
  assert_non_null (find_text (sheet, "m 600 lb"));
  assert_string_equal (sheet->scene.force_text, "45 lbf");
  assert_close (sheet->scene.force_length, 100 / 2.54, 0, 1e-12);
}

static void
nothing_that_is_not_known (void **state)
{
  g_autofree Sheet *sheet = draw (nothing, 0);

  (void) state;
  assert_null (find (sheet, SY_MARK_ARROW, SY_ROLE_TENSION, 0));
  assert_close (sheet->scene.force_length, 0, 0, 0);
  assert_true (sheet->scene.count > 8);
}

/* Every mark is inside what is shown, whatever room there is for them. */
static void
everything_is_shown (void **state)
{
  const char *const all[] = { CART ("push", "metric"), CART ("pull", "us"), measured, nothing, die };

  (void) state;
  for (size_t k = 0; k < G_N_ELEMENTS (all); k++)
    for (int room = SY_SCENE_MARKS_MAX; room >= 0; room = room > 30 ? 30 : room - 1)
      {
        g_autofree Sheet *sheet = draw_with (all[k], 0, room);
        const SyScene *scene = &sheet->scene;

        assert_true (scene->count <= room);
        for (int i = 0; i < scene->count; i++)
          for (int p = 0; p < sheet->marks[i].n_points; p++)
            {
              SyPoint at = sheet->marks[i].points[p];
              assert_true (at.x >= scene->x0 && at.x <= scene->x1 && at.y >= scene->y0 && at.y <= scene->y1);
            }
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (forces_are_to_scale),       cmocka_unit_test (what_governs_is_heavy),
    cmocka_unit_test (the_way_it_goes),           cmocka_unit_test (us_units),
    cmocka_unit_test (nothing_that_is_not_known), cmocka_unit_test (everything_is_shown),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
