/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <math.h>

#include "sy-drawing.h"

#define WIDTH 560

typedef struct
{
  cairo_surface_t *surface;
  int height;
} Picture;

static Picture
draw (const SyCapacityBar *bars, int n, int governing, int hot, const SyPalette *palette)
{
  SyCapacityBars all = { .n_bars = n, .bars = bars, .governing = governing, .hot = hot, .notice = 0.75,
                         .notice_text = "75 %", .full_text = "100 %" };
  Picture picture = { .height = (int) ((n + 1) * SY_BAR_ROW) };
  cairo_t *cr;

  picture.surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, picture.height);
  cr = cairo_create (picture.surface);
  sy_palette_use (cr, &palette->paper, 1);
  cairo_paint (cr);
  sy_drawing_capacity_bars (cr, WIDTH, picture.height, &all, palette, NULL);
  cairo_destroy (cr);
  cairo_surface_flush (picture.surface);
  return picture;
}

static const unsigned char *
pixel (const Picture *picture, int x, int y)
{
  return cairo_image_surface_get_data (picture->surface)
         + y * cairo_image_surface_get_stride (picture->surface) + 4 * x;
}

static bool
is_ink (const Picture *picture, int x, int y)
{
  const unsigned char *p = pixel (picture, x, y);

  return p[2] < 70 && p[1] < 80 && p[0] < 110;
}

/* The longest run of full ink a little under the middle of a row: the heavy bar, clear of text. */
static int
ink_run (const Picture *picture, int row)
{
  int y = (int) ((row + 0.5) * SY_BAR_ROW) + 6, longest = 0;

  for (int x = 0, run = 0; x < WIDTH; x++)
    {
      run = is_ink (picture, x, y) ? run + 1 : 0;
      longest = run > longest ? run : longest;
    }
  return longest;
}

static const SyCapacityBar some[] = {
  { "A, E1", "519 / 500 kg", "103.7 %", 1.037, NULL },
  { "C, S3", "681 / 2000 kg", "34 %", 0.34, NULL },
  { "H1", "1000 kg", "", NAN, "capacity not known" },
};

static void
test_rows_are_found (void **state)
{
  SyCapacityBars bars = { .n_bars = 3, .bars = some };

  (void) state;
  for (int row = 0; row < 6; row++)
    for (double part = 0.01; part < 1; part += 0.3)
      assert_int_equal (sy_drawing_capacity_bars_at (&bars, (row + part) * SY_BAR_ROW),
                        row >= 1 && row <= 3 ? row - 1 : -1);
  assert_int_equal (sy_drawing_capacity_bars_at (&bars, -1), -1);
  assert_int_equal (sy_drawing_capacity_bars_at (&bars, 1e12), -1);
}

static void
test_length_is_the_ratio (void **state)
{
  static const SyCapacityBar halves[] = { { "A", "1 / 2 kg", "50 %", 0.5, NULL }, { "B", "1 / 1 kg", "100 %", 1, NULL } };
  Picture half = draw (halves, 2, 0, -1, &sy_palette_paper), full = draw (halves, 2, 1, -1, &sy_palette_paper);

  (void) state;
  assert_close (ink_run (&half, 1) * 2.0, ink_run (&full, 2), 4, 0);
  cairo_surface_destroy (half.surface);
  cairo_surface_destroy (full.surface);
}

static void
test_what_governs_is_heavy (void **state)
{
  Picture first = draw (some, 3, 0, -1, &sy_palette_paper), none = draw (some, 3, -1, -1, &sy_palette_paper);

  (void) state;
  assert_true (ink_run (&first, 1) > 80);
  assert_true (ink_run (&none, 1) < 20);
  assert_true (ink_run (&first, 2) < 20);
  cairo_surface_destroy (first.surface);
  cairo_surface_destroy (none.surface);
}

/* What is not known or has no limit is not drawn as nothing, and does not look like one another. */
static void
test_unknown_is_said (void **state)
{
  static const SyCapacityBar zero[] = { { "H1", "1000 kg", "", 0, NULL } };
  static const SyCapacityBar unknown[] = { { "H1", "1000 kg", "", NAN, "capacity not known" } };
  static const SyCapacityBar none[] = { { "H1", "1000 kg", "", INFINITY, "no capacity left" } };
  Picture a = draw (zero, 1, -1, -1, &sy_palette_paper), b = draw (unknown, 1, -1, -1, &sy_palette_paper),
          c = draw (none, 1, -1, -1, &sy_palette_paper);
  size_t size = (size_t) a.height * (size_t) cairo_image_surface_get_stride (a.surface);

  (void) state;
  assert_true (memcmp (pixel (&a, 0, 0), pixel (&b, 0, 0), size) != 0);
  assert_true (memcmp (pixel (&b, 0, 0), pixel (&c, 0, 0), size) != 0);
  cairo_surface_destroy (a.surface);
  cairo_surface_destroy (b.surface);
  cairo_surface_destroy (c.surface);
}

/* Far over what may be carried it still ends within the picture, with an arrow; the ones beside it stay readable. */
static void
test_far_over_stays_inside (void **state)
{
  static const SyCapacityBar far[] = { { "A", "9000 / 1 kg", "900000 %", 9000, NULL }, { "B", "1 / 2 kg", "50 %", 0.5, NULL } };
  Picture picture = draw (far, 2, 1, -1, &sy_palette_paper);

  (void) state;
  assert_true (ink_run (&picture, 2) > 40);
  cairo_surface_destroy (picture.surface);
}

static void
test_hot_row_only (void **state)
{
  Picture cold = draw (some, 3, 0, -1, &sy_palette_paper), hot = draw (some, 3, 0, 1, &sy_palette_paper);
  SyCapacityBars bars = { .n_bars = 3, .bars = some };
  int changed = 0;

  (void) state;
  for (int y = 0; y < cold.height; y++)
    if (memcmp (pixel (&cold, 0, y), pixel (&hot, 0, y), WIDTH * 4) != 0)
      {
        assert_int_equal (sy_drawing_capacity_bars_at (&bars, y + 0.5), 1);
        changed++;
      }
  assert_true (changed > 2);
  cairo_surface_destroy (cold.surface);
  cairo_surface_destroy (hot.surface);
}

/* Nothing to draw, names of any length and little room are no trouble. */
static void
test_little_room (void **state)
{
  static const SyCapacityBar one[] = {
    { "a name that is a good deal longer than any column of the picture is wide", "123456.7 / 123456.8 kg", "99.9 %",
      0.999, NULL },
  };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 40, 20);
  cairo_t *cr = cairo_create (surface);
  SyCapacityBars empty = { .governing = -1, .hot = -1, .notice = NAN, .full_text = "100 %" };
  SyCapacityBars long_name = { .n_bars = 1, .bars = one, .hot = 0, .notice = NAN, .full_text = "100 %" };

  (void) state;
  sy_drawing_capacity_bars (cr, 40, 20, &empty, &sy_palette_paper, NULL);
  sy_drawing_capacity_bars (cr, 40, 20, &long_name, &sy_palette_paper, NULL);
  assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_rows_are_found),
    cmocka_unit_test (test_length_is_the_ratio),
    cmocka_unit_test (test_what_governs_is_heavy),
    cmocka_unit_test (test_unknown_is_said),
    cmocka_unit_test (test_far_over_stays_inside),
    cmocka_unit_test (test_hot_row_only),
    cmocka_unit_test (test_little_room),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
