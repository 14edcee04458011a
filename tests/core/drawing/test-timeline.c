/* SPDX-License-Identifier: MIT */
/* What happened to an item along time, read back from the picture. */
#include "sy-test.h"

#include <math.h>

#include "sy-timeline.h"

#define WIDTH 600
#define HEIGHT ((int) SY_TIMELINE_HEIGHT)

static const SyTimelineMark three[] = {
  { SY_TIMELINE_REVISION, 0, SY_SHAPE_HOOK, 2.1, "2.1" },
  { SY_TIMELINE_OTHER, 50, SY_SHAPE_GAP, NAN, "" },
  { SY_TIMELINE_REVISION, 100, SY_SHAPE_DOWN, 1.4, "1.4" },
  { SY_TIMELINE_REVISION, 300, SY_SHAPE_LEVEL, 0.9, "0.9" },
  { SY_TIMELINE_SIGNED, 301, SY_SHAPE_GAP, NAN, "signed off" },
};

static SyTimeline
timeline_of (const SyTimelineMark *marks, int n)
{
  return (SyTimeline) { .n_marks = n, .marks = marks, .goal = 1, .top = 3, .title = "LI", .goal_text = "goal 1",
                        .first_text = "2026-01-01", .last_text = "2026-11-26", .hot = -1 };
}

static cairo_surface_t *
draw (const SyTimeline *timeline, const SyPalette *palette)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  sy_palette_use (cr, &palette->paper, 1);
  cairo_paint (cr);
  sy_drawing_timeline (cr, WIDTH, HEIGHT, timeline, palette, NULL);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* How many pixels of a band differ from the paper. */
static int
count_marked (cairo_surface_t *surface, double left, double right, double top, double bottom)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  int n = 0;

  for (int y = (int) top; y < (int) bottom; y++)
    for (int x = (int) left; x < (int) right; x++)
      {
        const unsigned char *p = data + y * stride + 4 * x;

        n += p[2] < 150;
      }
  return n;
}

static int
is_same (cairo_surface_t *a, cairo_surface_t *b)
{
  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b),
                 (size_t) cairo_image_surface_get_stride (a) * HEIGHT) == 0;
}

static void
marks_stand_in_the_order_of_time (void **state G_GNUC_UNUSED)
{
  SyTimeline timeline = timeline_of (three, 5);
  double at[5];

  for (int i = 0; i < 5; i++)
    at[i] = sy_drawing_timeline_place (WIDTH, &timeline, i);
  for (int i = 1; i < 5; i++)
    assert_true (at[i] - at[i - 1] >= 7);
  /* twice the time, a wider gap */
  assert_true (at[3] - at[2] > at[2] - at[0]);
  assert_true (at[0] > 0 && at[4] < WIDTH);
}

static void
revisions_of_one_moment_are_still_told_apart (void **state G_GNUC_UNUSED)
{
  SyTimelineMark many[40];
  SyTimeline timeline = timeline_of (many, 10);

  for (int i = 0; i < 40; i++)
    many[i] = (SyTimelineMark) { SY_TIMELINE_REVISION, 7, SY_SHAPE_LEVEL, 0.5, "0.5" };
  for (int i = 1; i < 10; i++)
    assert_true (sy_drawing_timeline_place (WIDTH, &timeline, i) - sy_drawing_timeline_place (WIDTH, &timeline, i - 1)
                 >= 20);
  /* More than fit share the width. */
  timeline.n_marks = 40;
  assert_true (sy_drawing_timeline_place (WIDTH, &timeline, 39) < WIDTH);
  assert_true (sy_drawing_timeline_place (WIDTH, &timeline, 39) > sy_drawing_timeline_place (WIDTH, &timeline, 38));
}

static void
a_revision_is_found_where_it_stands (void **state G_GNUC_UNUSED)
{
  SyTimeline timeline = timeline_of (three, 5);

  assert_int_equal (sy_drawing_timeline_at (WIDTH, &timeline, sy_drawing_timeline_place (WIDTH, &timeline, 2) + 3), 2);
  assert_int_equal (sy_drawing_timeline_at (WIDTH, &timeline, sy_drawing_timeline_place (WIDTH, &timeline, 3)), 3);
  /* A tick is nothing to open, and far away is nothing. */
  assert_int_equal (sy_drawing_timeline_at (WIDTH, &timeline, 2), -1);
}

static void
a_lower_index_stands_lower (void **state G_GNUC_UNUSED)
{
  const SyTimelineMark high[] = { { SY_TIMELINE_REVISION, 0, SY_SHAPE_HOOK, 2.9, "" } };
  const SyTimelineMark low[] = { { SY_TIMELINE_REVISION, 0, SY_SHAPE_LEVEL, 0.2, "" } };
  SyTimeline a = timeline_of (high, 1), b = timeline_of (low, 1);
  cairo_surface_t *one = draw (&a, &sy_palette_paper), *other = draw (&b, &sy_palette_paper);
  double x = sy_drawing_timeline_place (WIDTH, &a, 0);

  /* A point is a disc of some 28 pixels; lines that run through both pictures are thin. */
  assert_true (count_marked (one, x - 5, x + 5, 18, 32) > count_marked (other, x - 5, x + 5, 18, 32) + 12);
  assert_true (count_marked (other, x - 5, x + 5, 60, 82) > count_marked (one, x - 5, x + 5, 60, 82) + 12);
  cairo_surface_destroy (one);
  cairo_surface_destroy (other);
}

static void
what_has_no_bound_stands_at_the_stop (void **state G_GNUC_UNUSED)
{
  const SyTimelineMark beyond[] = { { SY_TIMELINE_REVISION, 0, SY_SHAPE_HOOK, INFINITY, "\342\210\236" } };
  const SyTimelineMark none[] = { { SY_TIMELINE_REVISION, 0, SY_SHAPE_HOOK, NAN, "" } };
  SyTimeline a = timeline_of (beyond, 1), b = timeline_of (none, 1);
  cairo_surface_t *one = draw (&a, &sy_palette_paper), *other = draw (&b, &sy_palette_paper);
  double x = sy_drawing_timeline_place (WIDTH, &a, 0);

  assert_true (count_marked (one, x - 5, x + 5, 17, 27) > 15);
  /* Without an index there is no line to read, and no goal. */
  assert_int_equal (count_marked (other, 0, WIDTH, 0, 80), 0);
  cairo_surface_destroy (one);
  cairo_surface_destroy (other);
}

static void
signing_off_and_the_focus_show (void **state G_GNUC_UNUSED)
{
  SyTimeline with = timeline_of (three, 5), without = timeline_of (three, 4), hot = with;
  cairo_surface_t *a = draw (&with, &sy_palette_paper), *b = draw (&without, &sy_palette_paper), *c;
  double x = sy_drawing_timeline_place (WIDTH, &with, 4);

  assert_true (count_marked (a, x - 8, x + 8, HEIGHT - 60, HEIGHT - 20) > 20);
  hot.hot = 2;
  c = draw (&hot, &sy_palette_paper);
  assert_false (is_same (a, b));
  assert_false (is_same (a, c));
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
  cairo_surface_destroy (c);
}

static void
nothing_is_drawn_of_nothing (void **state G_GNUC_UNUSED)
{
  SyTimeline none = timeline_of (NULL, 0);
  cairo_surface_t *surface = draw (&none, &sy_palette_paper);

  assert_int_equal (count_marked (surface, 0, WIDTH, 0, HEIGHT), 0);
  assert_int_equal (sy_drawing_timeline_at (WIDTH, &none, 100), -1);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (marks_stand_in_the_order_of_time),
    cmocka_unit_test (revisions_of_one_moment_are_still_told_apart),
    cmocka_unit_test (a_revision_is_found_where_it_stands),
    cmocka_unit_test (a_lower_index_stands_lower),
    cmocka_unit_test (what_has_no_bound_stands_at_the_stop),
    cmocka_unit_test (signing_off_and_the_focus_show),
    cmocka_unit_test (nothing_is_drawn_of_nothing),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
