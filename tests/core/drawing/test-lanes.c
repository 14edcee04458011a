/* SPDX-License-Identifier: MIT */
/* A die change as lanes, read back from the picture. */
#include "sy-test.h"

#include <math.h>

#include "sy-lanes.h"

#define WIDTH 700

static const char *const names[] = { "Ann", "Ben", "Cem" };
/* Ann stops, both lift, Cem is never needed; Ben fetches meanwhile; a check that takes no time. */
static const SyLaneBar four[] = {
  { "1", "Stop and isolate", 0, 10, 1u, true, false, false, SY_SHAPE_LEVEL, false },
  { "2", "Fetch the new die", 0, 8, 2u, true, true, true, SY_SHAPE_DOWN, false },
  { "3", "Lift the old die out", 10, 30, 3u, true, false, true, SY_SHAPE_HOOK, true },
  { "4", "Look", 30, 30, 1u, false, false, false, SY_SHAPE_LEVEL, false },
};

static SyLanes
lanes_of (const SyLaneBar *bars, int n)
{
  return (SyLanes) {
    .n_lanes = 3, .lanes = names, .n_bars = n, .bars = bars, .end = 40, .stands_from = 0, .stands_to = 30,
    .machine_text = "Machine", .stands_text = "stands 30 min", .minutes_text = "Minutes",
    .keys = { "machine stopped", "running", "could be while it runs", "must not be done so" }, .hot = -1,
  };
}

static cairo_surface_t *
draw (const SyLanes *lanes, SyLanesFit *fit)
{
  const int height = (int) sy_drawing_lanes_height (lanes);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, height);
  cairo_t *cr = cairo_create (surface);

  sy_palette_use (cr, &sy_palette_paper.paper, 1);
  cairo_paint (cr);
  sy_drawing_lanes (cr, WIDTH, height, lanes, &sy_palette_paper, NULL);
  if (fit != NULL)
    *fit = sy_drawing_lanes_fit (cr, WIDTH, height, lanes, NULL);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* How much ink is on a line across the picture. */
static int
count_dark (cairo_surface_t *surface, double left, double right, double y)
{
  const unsigned char *row = cairo_image_surface_get_data (surface) + (int) y * cairo_image_surface_get_stride (surface);
  int n = 0;

  for (int x = (int) left; x < (int) right; x++)
    n += row[4 * x + 2] < 120;
  return n;
}

static unsigned char
tone_at (cairo_surface_t *surface, double x, double y)
{
  return cairo_image_surface_get_data (surface)[(int) y * cairo_image_surface_get_stride (surface) + 4 * (int) x + 2];
}

static double
middle_of (const SyLanesFit *fit, int lane)
{
  return fit->top + (lane + 0.5) * fit->lane;
}

static void
a_bar_is_found_where_it_stands (void **state G_GNUC_UNUSED)
{
  const SyLanes lanes = lanes_of (four, 4);
  SyLanesFit fit;

  cairo_surface_destroy (draw (&lanes, &fit));
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 5 * fit.scale, middle_of (&fit, 0)), 0);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 5 * fit.scale, middle_of (&fit, 1)), 1);
  /* of two people in each lane, and between them */
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 20 * fit.scale, middle_of (&fit, 0)), 2);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 20 * fit.scale, middle_of (&fit, 1)), 2);
  /* what takes no time can still be pressed */
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 30 * fit.scale + 3, middle_of (&fit, 0)), 3);
  /* nobody at work, an empty lane, names, head and axis */
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 9 * fit.scale, middle_of (&fit, 1)), -1);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 20 * fit.scale, middle_of (&fit, 2)), -1);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, 10, middle_of (&fit, 0)), -1);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 5 * fit.scale, 4), -1);
  assert_int_equal (sy_drawing_lanes_at (&lanes, &fit, fit.left + 5 * fit.scale, fit.axis + 4), -1);
}

static void
arrows_go_through_all_bars_in_time (void **state G_GNUC_UNUSED)
{
  const SyLanes lanes = lanes_of (four, 4);
  int at = -1;

  for (int i = 0; i < 4; i++)
    {
      at = sy_drawing_lanes_beside (&lanes, at, 1);
      assert_int_equal (at, i);
    }
  assert_int_equal (sy_drawing_lanes_beside (&lanes, 3, 1), -1);
  assert_int_equal (sy_drawing_lanes_beside (&lanes, 0, -1), -1);
  assert_int_equal (sy_drawing_lanes_beside (&lanes, -1, -1), 3);
  assert_int_equal (sy_drawing_lanes_beside (&lanes, 2, -1), 1);
  /* to the other person and back; Cem has nothing */
  assert_int_equal (sy_drawing_lanes_across (&lanes, 0, 1), 1);
  assert_int_equal (sy_drawing_lanes_across (&lanes, 1, -1), 0);
  assert_int_equal (sy_drawing_lanes_across (&lanes, 1, 1), -1);
  assert_int_equal (sy_drawing_lanes_across (&lanes, 2, -1), -1);
  assert_int_equal (sy_drawing_lanes_across (&lanes, -1, 1), -1);
}

static void
stopped_running_and_movable_look_different (void **state G_GNUC_UNUSED)
{
  SyLaneBar bars[3];
  unsigned char tones[3];
  int hatched[3];

  for (int i = 0; i < 3; i++)
    {
      bars[i] = four[0];
      bars[i].number = bars[i].label = "";
      bars[i].stopped = i != 1;
      bars[i].can_run = i == 2;
      const SyLanes lanes = lanes_of (&bars[i], 1);
      SyLanesFit fit;
      cairo_surface_t *surface = draw (&lanes, &fit);

      tones[i] = tone_at (surface, fit.left + 3, fit.top + fit.lane - 9);
      hatched[i] = 0;
      for (int x = 4; x < 60; x++)
        hatched[i] += tone_at (surface, fit.left + x, middle_of (&fit, 0))
                      != tone_at (surface, fit.left + x + 1, middle_of (&fit, 0));
      cairo_surface_destroy (surface);
    }
  assert_true (tones[0] < tones[1] - 20);
  assert_int_equal (hatched[0], 0);
  assert_int_equal (hatched[1], 0);
  assert_true (hatched[2] > 10);
}

static void
a_strict_verdict_has_a_heavy_outline (void **state G_GNUC_UNUSED)
{
  SyLaneBar bar = four[0];
  SyLanes lanes = lanes_of (&bar, 1);
  SyLanesFit fit;
  cairo_surface_t *light = draw (&lanes, &fit), *heavy;
  int thin = 0, thick = 0;

  bar.heavy = true;
  heavy = draw (&lanes, NULL);
  for (int y = (int) fit.top; y < fit.top + fit.lane; y++)
    {
      thin += count_dark (light, fit.left + 40, fit.left + 41, y);
      thick += count_dark (heavy, fit.left + 40, fit.left + 41, y);
    }
  assert_true (thick > thin + 2);
  cairo_surface_destroy (light);
  cairo_surface_destroy (heavy);
}

static void
the_machine_stands_under_its_edge (void **state G_GNUC_UNUSED)
{
  SyLanes lanes = lanes_of (four, 4), none = lanes;
  SyLanesFit fit;
  cairo_surface_t *with, *without;

  none.stands_to = 0;
  none.stands_text = "need not stand";
  with = draw (&lanes, &fit);
  without = draw (&none, NULL);
  /* the edge is there from end to end, and not where it runs; the empty lane is shaded as far */
  assert_true (count_dark (with, fit.left + 2, fit.left + 40, SY_LANES_HEAD - 9) > 30);
  assert_int_equal (count_dark (with, fit.left + 32 * fit.scale, fit.right, SY_LANES_HEAD - 9), 0);
  assert_true (tone_at (with, fit.left + 20 * fit.scale, middle_of (&fit, 2))
               < tone_at (with, fit.left + 36 * fit.scale, middle_of (&fit, 2)));
  assert_int_equal (count_dark (without, fit.left + 20 * fit.scale, fit.left + 30 * fit.scale, SY_LANES_HEAD - 9), 0);
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
}

/* From a minute to days: figures of the axis never run into each other. */
static void
ticks_are_round_and_have_room (void **state G_GNUC_UNUSED)
{
  for (double end = 1; end < 90000; end *= 1.7)
    {
      SyLanes lanes = lanes_of (four, 0);
      SyLanesFit fit;

      lanes.end = end;
      cairo_surface_destroy (draw (&lanes, &fit));
      assert_true (fit.tick * fit.scale >= 40);
      assert_true (fit.tick == floor (fit.tick));
      assert_true (fit.left + end * fit.scale <= fit.right + 0.01);
    }
}

static void
sixty_steps_in_no_room_at_all (void **state G_GNUC_UNUSED)
{
  SyLaneBar many[60];
  SyLanes lanes;
  const int widths[] = { 1, 60, 320 };

  for (int i = 0; i < 60; i++)
    {
      many[i] = four[i % 4];
      many[i].start = i;
      many[i].end = i + (i % 4 != 3);
      many[i].label = "A step with far more words than there is room for in its bar";
    }
  lanes = lanes_of (many, 60);
  for (size_t i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, widths[i], 40);
      cairo_t *cr = cairo_create (surface);

      lanes.hot = (int) i;
      sy_drawing_lanes (cr, widths[i], 40, &lanes, &sy_palette_paper, NULL);
      assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

/* One bar's words stay inside it: a picture without its neighbour is the same beyond its edges. */
static void
words_end_with_their_bar (void **state G_GNUC_UNUSED)
{
  SyLaneBar bar = four[2];
  SyLanes lanes = lanes_of (&bar, 1);
  SyLanesFit fit;
  cairo_surface_t *words, *none;

  bar.label = "A step with far more words than there is room for in its bar, however wide the drawing is made for it";
  words = draw (&lanes, &fit);
  bar.label = "";
  none = draw (&lanes, NULL);
  for (int y = (int) fit.top; y < fit.axis; y++)
    for (int x = (int) (fit.left + 30 * fit.scale) + 2; x < WIDTH; x++)
      assert_int_equal (tone_at (words, x, y), tone_at (none, x, y));
  cairo_surface_destroy (words);
  cairo_surface_destroy (none);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_bar_is_found_where_it_stands),
    cmocka_unit_test (arrows_go_through_all_bars_in_time),
    cmocka_unit_test (stopped_running_and_movable_look_different),
    cmocka_unit_test (a_strict_verdict_has_a_heavy_outline),
    cmocka_unit_test (the_machine_stands_under_its_edge),
    cmocka_unit_test (ticks_are_round_and_have_room),
    cmocka_unit_test (sixty_steps_in_no_room_at_all),
    cmocka_unit_test (words_end_with_their_bar),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
