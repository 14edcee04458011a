/* SPDX-License-Identifier: MIT */
/* Totals by quarter, read back from the picture. */
#include "sy-test.h"

#include <math.h>

#include "sy-quarters.h"

#define WIDTH 480
#define HEIGHT ((int) (3 * SY_QUARTER_ROW + SY_QUARTER_FOOT))

static const char *const names[] = { "2026 Q1", "2026 Q2", "2026 Q3", "2026 Q4" };
static const double index_values[] = { 0.4, 1.2, NAN, 0 };
static const double minutes[] = { -12, 41, 7, -3 };
static const double people[] = { 1, 0, 1, 2 };
static const char *const index_texts[] = { "0.4", "1.2", "", "0" };
static const char *const minute_texts[] = { "\342\210\22212", "41", "7", "\342\210\2223" };
static const char *const people_texts[] = { "1", "0", "1", "2" };
static const SyQuarterRow rows[] = {
  { "Index", index_values, index_texts }, { "Minutes", minutes, minute_texts }, { "People", people, people_texts },
};

static SyQuarters
quarters_of (int n_quarters, int n_rows)
{
  return (SyQuarters) { .n_quarters = n_quarters, .quarters = names, .n_rows = n_rows, .rows = rows, .heavy = 3, .hot = -1 };
}

static cairo_surface_t *
draw (const SyQuarters *quarters, int width)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  sy_palette_use (cr, &sy_palette_paper.paper, 1);
  cairo_paint (cr);
  sy_drawing_quarters (cr, width, HEIGHT, quarters, &sy_palette_paper, NULL);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* Pixels of a column of the picture that are not paper. */
static int
count_marked (cairo_surface_t *surface, double x, double top, double bottom)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  int n = 0;

  for (int y = (int) top; y < (int) bottom; y++)
    n += data[y * stride + 4 * (int) x + 2] < 235;
  return n;
}

static void
a_larger_total_is_a_longer_bar (void **state G_GNUC_UNUSED)
{
  const SyQuarters quarters = quarters_of (4, 3);
  cairo_surface_t *surface = draw (&quarters, WIDTH);
  /* beside the figures, which stand in the middle */
  const double one = sy_drawing_quarters_place (WIDTH, &quarters, 0) - 15;
  const double two = sy_drawing_quarters_place (WIDTH, &quarters, 1) - 15;
  const double none = sy_drawing_quarters_place (WIDTH, &quarters, 2) - 15;

  const int short_bar = count_marked (surface, one, 24, 98), long_bar = count_marked (surface, two, 24, 98);
  assert_true (long_bar > 2 * short_bar);
  assert_true (short_bar > 8);
  /* what is not known is no bar: only the zero line */
  assert_true (count_marked (surface, none, 24, 102) <= 3);
  cairo_surface_destroy (surface);
}

static void
less_than_nothing_hangs_below_the_line (void **state G_GNUC_UNUSED)
{
  const double down[] = { -10, 0, 0, 0 }, up[] = { 10, 0, 0, 0 };
  const SyQuarterRow below = { "Minutes", down, NULL }, above = { "Minutes", up, NULL };
  SyQuarters a = quarters_of (4, 1), b = quarters_of (4, 1);
  const double x = sy_drawing_quarters_place (WIDTH, &a, 0) - 15.5;

  a.rows = &below;
  b.rows = &above;
  cairo_surface_t *hanging = draw (&a, WIDTH), *standing = draw (&b, WIDTH);

  /* the zero line is the first thing met from the other end */
  assert_memory_not_equal (cairo_image_surface_get_data (hanging), cairo_image_surface_get_data (standing),
                           (size_t) cairo_image_surface_get_stride (hanging) * HEIGHT);
  assert_true (count_marked (hanging, WIDTH - 20, 24, 60) > 0);    /* zero line near the top */
  assert_true (count_marked (standing, WIDTH - 20, 24, 60) == 0);
  assert_true (count_marked (hanging, x, 60, HEIGHT - 60) > 0);
  cairo_surface_destroy (hanging);
  cairo_surface_destroy (standing);
}

static void
a_quarter_is_found_where_it_stands (void **state G_GNUC_UNUSED)
{
  SyQuarters quarters = quarters_of (4, 1);

  for (int i = 0; i < 4; i++)
    assert_int_equal (sy_drawing_quarters_at (WIDTH, &quarters, sy_drawing_quarters_place (WIDTH, &quarters, i)), i);
  assert_int_equal (sy_drawing_quarters_at (WIDTH, &quarters, 1), -1);
  assert_int_equal (sy_drawing_quarters_at (WIDTH, &quarters, WIDTH), -1);
  quarters.n_quarters = 0;
  assert_int_equal (sy_drawing_quarters_at (WIDTH, &quarters, 100), -1);
}

static void
many_quarters_and_little_room_draw_without_running_out (void **state G_GNUC_UNUSED)
{
  const char *many[40];
  double values[40];
  const char *texts[40];

  for (int i = 0; i < 40; i++)
    {
      many[i] = "2026 Q1";
      values[i] = i % 3 - 1;
      texts[i] = "123 min";
    }
  const SyQuarterRow row = { "A title that is longer than there is room for in a narrow drawing", values, texts };
  SyQuarters quarters = { .n_quarters = 40, .quarters = many, .n_rows = 1, .rows = &row, .heavy = 39, .hot = 2 };
  const int widths[] = { 8, 120, 900 };

  for (size_t i = 0; i < G_N_ELEMENTS (widths); i++)
    cairo_surface_destroy (draw (&quarters, widths[i]));
}

static void
nothing_is_drawn_of_nothing (void **state G_GNUC_UNUSED)
{
  const SyQuarters quarters = { .heavy = -1, .hot = -1 };
  cairo_surface_t *surface = draw (&quarters, WIDTH);

  assert_int_equal (count_marked (surface, WIDTH / 2, 0, HEIGHT), 0);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_larger_total_is_a_longer_bar),
    cmocka_unit_test (less_than_nothing_hangs_below_the_line),
    cmocka_unit_test (a_quarter_is_found_where_it_stands),
    cmocka_unit_test (many_quarters_and_little_room_draw_without_running_out),
    cmocka_unit_test (nothing_is_drawn_of_nothing),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
