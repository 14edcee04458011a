/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-drawing.h"

/* ---- pictures ---- */

typedef struct
{
  cairo_surface_t *surface;
  cairo_t *cr;
  int width, height;
} Picture;

/* Clear, so that every pixel that was drawn on can be told. */
static Picture
begin_picture (int width, int height)
{
  Picture picture = { .width = width, .height = height };

  picture.surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  picture.cr = cairo_create (picture.surface);
  return picture;
}

static void
end_picture (Picture *picture)
{
  cairo_destroy (picture->cr);
  cairo_surface_destroy (picture->surface);
}

static const unsigned char *
pixel (const Picture *picture, int x, int y)
{
  cairo_surface_flush (picture->surface);
  return cairo_image_surface_get_data (picture->surface)
         + y * cairo_image_surface_get_stride (picture->surface) + 4 * x;
}

/* Opaque and nearly the full ink of the paper palette. */
static bool
is_ink (const Picture *picture, int x, int y)
{
  const unsigned char *p = pixel (picture, x, y);

  return p[3] > 200 && p[2] < 70 && p[1] < 80 && p[0] < 110;
}

/* Red well over blue: the warning colour, no other of the palette but the accent, which is not used
   here. */
static bool
is_warning (const Picture *picture, int x, int y)
{
  const unsigned char *p = pixel (picture, x, y);

  return p[3] > 200 && p[2] > 140 && p[0] < 60;
}

static bool
same_picture (const Picture *a, const Picture *b)
{
  for (int y = 0; y < a->height; y++)
    if (memcmp (pixel (a, 0, y), pixel (b, 0, y), (size_t) a->width * 4) != 0)
      return false;
  return true;
}

/* The longest row of ink pixels from @x0 on; its middle, or -1. */
static double
middle_of_longest (const Picture *picture, int x0, int y0, int y1, int *length)
{
  double middle = -1;

  *length = 0;
  for (int y = y0; y < y1; y++)
    for (int x = x0, run = 0; x < picture->width; x++)
      {
        run = is_ink (picture, x, y) ? run + 1 : 0;
        if (run > *length)
          {
            *length = run;
            middle = x - (run - 1) / 2.0;
          }
      }
  return middle;
}

static int
lowest_ink (const Picture *picture, int x0, int x1, int y1)
{
  for (int y = y1 - 1; y >= 0; y--)
    for (int x = x0; x < x1; x++)
      if (is_ink (picture, x, y))
        return y;
  return -1;
}

/* ---- the steelyard ---- */

#define BEAM_WIDTH 600
#define BEAM_HEIGHT 130

static Picture
draw_beam (double index, double tilt)
{
  Picture picture = begin_picture (BEAM_WIDTH, BEAM_HEIGHT);
  SyBeam beam = { .index = index,
                  .goal = 1,
                  .p5 = (double)NAN,
                  .p95 = (double)NAN,
                  .end = 3,
                  .symbol = "LI",
                  .beyond_text = "beyond 3",
                  .unbounded_text = "no limit holds",
                  .tilt = tilt };

  sy_drawing_beam (picture.cr, BEAM_WIDTH, BEAM_HEIGHT, &beam, &sy_palette_paper, NULL);
  return picture;
}

/* The load hangs at the left edge; its lowest ink tells how far the short arm is down. */
static int
load_bottom (double index)
{
  Picture picture = draw_beam (index, 1);
  int bottom = lowest_ink (&picture, 0, 40, BEAM_HEIGHT - 6);

  end_picture (&picture);
  return bottom;
}

static void
test_level_at_goal (void **state)
{
  Picture swung = draw_beam (1, 1), still = draw_beam (1, 0), over = draw_beam (1.001, 1),
          over_still = draw_beam (1.001, 0);

  (void) state;
  assert_true (same_picture (&swung, &still));
  assert_false (same_picture (&over, &over_still));
  end_picture (&swung);
  end_picture (&still);
  end_picture (&over);
  end_picture (&over_still);
}

static void
test_load_goes_down (void **state)
{
  int level = load_bottom (1), bottom = level;

  (void) state;
  assert_true (level > 0);
  assert_true (load_bottom (0.5) < level);
  for (double index = 1.2; index < 6; index += 0.4)
    {
      int next = load_bottom (index);

      assert_true (next >= bottom);
      bottom = next;
    }
  assert_true (bottom > level);
  assert_true (load_bottom ((double) INFINITY) >= bottom);
  assert_true (bottom < BEAM_HEIGHT - 8); /* bounded: never on the ground */
}

/* Where the poise stands: the widest ink under the level arm, right of the stand. */
static double
poise_at (double index)
{
  Picture picture = draw_beam (index, 0);
  int length;
  double middle = middle_of_longest (&picture, 150, 60, BEAM_HEIGHT - 10, &length);

  end_picture (&picture);
  assert_true (length >= 12);
  return middle;
}

static void
test_poise_monotone (void **state)
{
  double last = poise_at (0.25), first = last, one;

  (void) state;
  for (double index = 0.3; index <= 3; index += 0.1)
    {
      double next = poise_at (index);

      assert_true (next > last);
      last = next;
    }
  /* Equal steps of the index are equal steps on the arm. */
  one = poise_at (1);
  assert_close (poise_at (2) - one, (poise_at (3) - one) / 2, 1.01, 0);
  assert_true (poise_at (3.2) > last);
  assert_true (poise_at (3.2) == poise_at ((double) INFINITY));
  assert_true (first < one);
}

static void
test_nothing_on_empty_arm (void **state)
{
  Picture empty = draw_beam ((double) NAN, 1), still = draw_beam ((double) NAN, 0);
  int length;

  (void) state;
  assert_true (same_picture (&empty, &still));
  middle_of_longest (&empty, 150, 60, BEAM_HEIGHT - 10, &length);
  assert_int_equal (length, 0);
  end_picture (&empty);
  end_picture (&still);
}

static void
test_same_twice (void **state)
{
  Picture a = draw_beam (2.1, 1), b = draw_beam (2.1, 1), c = draw_beam (2.2, 1);

  (void) state;
  assert_true (same_picture (&a, &b));
  assert_false (same_picture (&a, &c));
  end_picture (&a);
  end_picture (&b);
  end_picture (&c);
}

/* ---- the bars ---- */

static const SyBar some_bars[] = {
  { "H", "55 cm", 0.45 }, { "V", "20 cm", 0.83 }, { "D", "90 cm", 0.87 },
  { "A", "0\302\260", 1 },   { "F", "1 / min", 0.88 }, { "C", "fair", 0.95 },
};

static Picture
draw_bars (const SyBar *bars, int n, int hot)
{
  Picture picture = begin_picture (520, (int) ((n + 2) * SY_BAR_ROW));
  SyBars whole = { .start = 23,
                   .start_text = "23 kg",
                   .end_text = "6 kg RWL",
                   .n_bars = n,
                   .bars = bars,
                   .hot = hot };

  sy_drawing_bars (picture.cr, picture.width, picture.height, &whole, &sy_palette_paper, NULL);
  return picture;
}

/* How far right anything is drawn in the middle of a row. */
static int
row_end (const Picture *picture, int row)
{
  for (int x = picture->width - 1; x >= 0; x--)
    if (pixel (picture, x, (int) ((row + 0.5) * SY_BAR_ROW))[3] > 100)
      return x;
  return -1;
}

static void
test_bars_at (void **state)
{
  SyBars bars = { .n_bars = 6, .bars = some_bars };

  (void) state;
  for (int row = 0; row < 8; row++)
    for (double part = 0; part < 1; part += 0.24)
      assert_int_equal (sy_drawing_bars_at (&bars, (row + part) * SY_BAR_ROW),
                        row == 7 ? -1 : row - 1);
  assert_int_equal (sy_drawing_bars_at (&bars, -1), -1);
  assert_int_equal (sy_drawing_bars_at (&bars, 1e12), -1);
}

static void
test_bars_hot_row (void **state)
{
  Picture cold = draw_bars (some_bars, 6, -1), hot = draw_bars (some_bars, 6, 2);
  SyBars bars = { .n_bars = 6, .bars = some_bars };
  int changed = 0;

  (void) state;
  /* What the hot bar changes lies in the row in which a pointer finds it. */
  for (int y = 0; y < cold.height; y++)
    if (memcmp (pixel (&cold, 0, y), pixel (&hot, 0, y), (size_t) cold.width * 4) != 0)
      {
        assert_int_equal (sy_drawing_bars_at (&bars, y + 0.5), 2);
        changed++;
      }
  assert_true (changed > 2);
  end_picture (&cold);
  end_picture (&hot);
}

static void
test_bars_lengths (void **state)
{
  static const SyBar ones[] = { { "H", "25 cm", 1 }, { "V", "75 cm", 1 } };
  static const SyBar half[] = { { "H", "50 cm", 0.5 }, { "V", "75 cm", 1 } };
  static const SyBar zero[] = { { "H", "70 cm", 0 }, { "V", "20 cm", 0.8 } };
  Picture whole = draw_bars (ones, 2, -1), halved = draw_bars (half, 2, -1),
          none = draw_bars (zero, 2, -1);
  int start = row_end (&none, 3), full = row_end (&whole, 0);

  (void) state;
  assert_int_equal (row_end (&whole, 3), full);
  assert_close (row_end (&halved, 3), (row_end (&none, 3) + full) / 2.0, 3, 0);
  /* A factor of 0 takes all, and nothing of the rest stands right of the beginning. */
  assert_int_equal (row_end (&none, 1), row_end (&none, 0));
  assert_int_equal (row_end (&none, 2), start);
  end_picture (&whole);
  end_picture (&halved);
  end_picture (&none);
}

/* ---- the shapes ---- */

static void
test_shapes (void **state)
{
  (void) state;
  for (int size = 16; size <= 32; size += 16)
    {
      Picture pictures[6];

      for (int shape = 0; shape < 6; shape++)
        {
          int inked = 0, warned = 0;

          pictures[shape] = begin_picture (size, size);
          sy_drawing_shape (pictures[shape].cr, size, (SyShape) shape, &sy_palette_paper);
          for (int y = 0; y < size; y++)
            for (int x = 0; x < size; x++)
              {
                inked += pixel (&pictures[shape], x, y)[3] > 100;
                warned += is_warning (&pictures[shape], x, y);
              }
          assert_in_range (inked, size * size / 10, size * size * 6 / 10);
          /* The warning colour belongs to the struck hook alone. */
          assert_true ((warned > size) == (shape == SY_SHAPE_HOOK_STRUCK));
          for (int other = 0; other < shape; other++)
            assert_false (same_picture (&pictures[other], &pictures[shape]));
        }
      for (int shape = 0; shape < 6; shape++)
        end_picture (&pictures[shape]);
    }
}

/* ---- scenes ---- */

static void
put_circle (SyScene *scene, double x, double y, double radius)
{
  SyMark *mark = sy_scene_add (scene, SY_MARK_CIRCLE, SY_ROLE_ORIGIN);

  mark->points[0] = (SyPoint) { x, y };
  mark->n_points = 1;
  mark->radius = radius;
}

static void
put_square (SyScene *scene, double x, double y, double side)
{
  SyMark *mark = sy_scene_add (scene, SY_MARK_POLYGON, SY_ROLE_ORIGIN);

  mark->points[0] = (SyPoint) { x, y };
  mark->points[1] = (SyPoint) { x + side, y };
  mark->points[2] = (SyPoint) { x + side, y + side };
  mark->points[3] = (SyPoint) { x, y + side };
  mark->n_points = 4;
}

static void
test_equal_scale (void **state)
{
  static const int sizes[][2] = { { 300, 200 }, { 400, 700 }, { 1200, 500 } };

  (void) state;
  for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++)
    {
      Picture picture = begin_picture (sizes[i][0], sizes[i][1]);
      SyMark marks[2];
      SyScene scene;
      int x0 = picture.width, x1 = 0, y0 = picture.height, y1 = 0;

      sy_scene_begin (&scene, SY_UNITS_METRIC, marks, 2);
      put_square (&scene, 20, 50, 60);
      sy_scene_include (&scene, 0, 0);
      sy_scene_include (&scene, 200, 130);
      sy_drawing_scene (picture.cr, picture.width, picture.height, &scene, &sy_palette_paper, NULL);
      for (int y = 0; y < picture.height - 30; y++)
        for (int x = 0; x < picture.width; x++)
          if (is_ink (&picture, x, y))
            {
              x0 = x < x0 ? x : x0;
              x1 = x > x1 ? x : x1;
              y0 = y < y0 ? y : y0;
              y1 = y > y1 ? y : y1;
            }
      assert_true (x1 - x0 > 40);
      assert_close (x1 - x0, y1 - y0, 2, 0);
      end_picture (&picture);
    }
}

/* Scenes that hold nothing to scale by are paper, not a division by zero. */
static void
test_degenerate_scenes (void **state)
{
  SyMark marks[3];
  SyScene scene;

  (void) state;
  for (int kind = 0; kind < 4; kind++)
    {
      Picture picture = begin_picture (kind == 3 ? 12 : 300, 200);

      sy_scene_begin (&scene, SY_UNITS_US, marks, 3);
      if (kind > 0)
        sy_scene_include (&scene, 3, 4);
      if (kind > 1)
        sy_scene_include (&scene, 3, 9);
      sy_scene_include (&scene, (double) NAN, 3);
      sy_scene_add (&scene, SY_MARK_DIMENSION, SY_ROLE_MEASURE); /* no points */
      sy_drawing_scene (picture.cr, picture.width, picture.height, &scene, &sy_palette_paper, NULL);
      assert_int_equal (cairo_status (picture.cr), CAIRO_STATUS_SUCCESS);
      assert_int_equal (pixel (&picture, 5, 5)[3], 255);
      end_picture (&picture);
    }
}

static void
test_scene_full (void **state)
{
  SyMark marks[2];
  SyScene scene;

  (void) state;
  sy_scene_begin (&scene, SY_UNITS_METRIC, marks, 2);
  assert_non_null (sy_scene_add (&scene, SY_MARK_LINE, SY_ROLE_THIN));
  assert_non_null (sy_scene_add (&scene, SY_MARK_LINE, SY_ROLE_THIN));
  assert_null (sy_scene_add (&scene, SY_MARK_LINE, SY_ROLE_THIN));
  assert_int_equal (scene.count, 2);
}

/* ---- all of them keep inside their box ---- */

static void
draw_any (cairo_t *cr, int what, double width, double height)
{
  static const SyMassArm mass_arm
      = { 30, 20, "30 kg, the heaviest that occurs", "20 kg reference mass" };
  SyBeam beam = { .index = (double)INFINITY,
                  .goal = 1,
                  .p5 = 2,
                  .p95 = (double)INFINITY,
                  .end = 3,
                  .symbol = "LI",
                  .beyond_text = "beyond 3",
                  .unbounded_text = "no limit holds at all",
                  .tilt = 1 };
  SyBars bars = { .start = 23, .start_text = "23 kg", .end_text = "6 kg RWL", .n_bars = 6,
                  .bars = some_bars, .hot = 5 };
  SyMark marks[4];
  SyScene scene;

  switch (what)
    {
    case 0:
      sy_drawing_beam (cr, width, height, &beam, &sy_palette_paper, NULL);
      break;
    case 1:
      sy_drawing_mass_arm (cr, width, height, &mass_arm, &sy_palette_paper, NULL);
      break;
    case 2:
      sy_drawing_bars (cr, width, height, &bars, &sy_palette_paper, NULL);
      break;
    case 3:
      sy_drawing_shape (cr, height, SY_SHAPE_HOOK_STRUCK, &sy_palette_paper);
      break;
    default:
      sy_scene_begin (&scene, SY_UNITS_METRIC, marks, 4);
      put_circle (&scene, 0, 0, 500); /* larger than what is shown */
      sy_scene_include (&scene, -20, -20);
      sy_scene_include (&scene, 90, 60);
      sy_drawing_scene (cr, width, height, &scene, &sy_palette_paper, NULL);
      break;
    }
}

static void
test_inside_the_box (void **state)
{
  static const int widths[] = { 300, 640, 1200 };
  const int edge = 20, height = 100;

  (void) state;
  for (int what = 0; what < 5; what++)
    for (size_t i = 0; i < sizeof widths / sizeof widths[0]; i++)
      {
        Picture picture = begin_picture (widths[i] + 2 * edge, height + 2 * edge);
        int inside = 0;

        cairo_translate (picture.cr, edge, edge);
        draw_any (picture.cr, what, widths[i], height);
        for (int y = 0; y < picture.height; y++)
          for (int x = 0; x < picture.width; x++)
            if (x < edge || y < edge || x >= picture.width - edge || y >= picture.height - edge)
              assert_int_equal (pixel (&picture, x, y)[3], 0);
            else
              inside += pixel (&picture, x, y)[3] > 0;
        assert_true (inside > 200);
        end_picture (&picture);
      }
}

/* Figures stand in columns: equally wide whatever the digits. */
static void
test_text (void **state)
{
  Picture picture = begin_picture (200, 40);
  double ones, eights;

  (void) state;
  ones = sy_drawing_text (picture.cr, 10, 20, 0, "1111", NULL);
  eights = sy_drawing_text (picture.cr, 100, 30, 1, "8888", NULL);
  assert_true (ones > 10);
  assert_close (ones, eights, 1e-9, 0);
  assert_true (sy_drawing_text (picture.cr, 0, 0, 0, "", NULL) == 0);
  end_picture (&picture);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_level_at_goal),
    cmocka_unit_test (test_load_goes_down),
    cmocka_unit_test (test_poise_monotone),
    cmocka_unit_test (test_nothing_on_empty_arm),
    cmocka_unit_test (test_same_twice),
    cmocka_unit_test (test_bars_at),
    cmocka_unit_test (test_bars_hot_row),
    cmocka_unit_test (test_bars_lengths),
    cmocka_unit_test (test_shapes),
    cmocka_unit_test (test_equal_scale),
    cmocka_unit_test (test_degenerate_scenes),
    cmocka_unit_test (test_scene_full),
    cmocka_unit_test (test_inside_the_box),
    cmocka_unit_test (test_text),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
