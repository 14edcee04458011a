/* SPDX-License-Identifier: MIT */
#include "scene-sheet.h"

/* A lift by a team drawn from documents: who stands where, the heavy end heavy, arrows to one scale. */

#define TEAM "{\"method\":\"team-lift\",\"units\":\"metric\",\"mass\":60,"
#define TWO "\"people\":[{\"label\":\"A\",\"at\":[0,0],\"height\":75},{\"label\":\"B\",\"at\":[600,0],\"height\":75}]"

static const char two[] = TEAM "\"cg\":[220,0]," TWO "}";
static const char stairs[] = TEAM "\"cg\":[300,0,200],\"slope\":35,\"uphill\":\"B\"," TWO "}";
static const char tips[] = TEAM "\"cg\":[-50,0]," TWO "}";
static const char four[]
  = TEAM "\"cg\":[80,30],\"people\":[{\"label\":\"A\",\"at\":[-500,-300],\"height\":75},{\"label\":\"B\",\"at\":[500,-300]},"
         "{\"label\":\"C\",\"at\":[500,300],\"height\":75},{\"label\":\"D\",\"at\":[-500,300],\"height\":75}]}";
static const char inches[]
  = "{\"method\":\"team-lift\",\"units\":\"us\",\"mass\":120,\"cg\":[10,0,5],\"people\":[{\"label\":\"A\",\"at\":[0,0],\"height\":30},"
    "{\"label\":\"B\",\"at\":[40,0],\"height\":36}]}";

static const char *const all[] = { two, stairs, tips, four, inches };

static int
count (const Sheet *sheet, SyMarkType type, SyRole role, gboolean heavy_only)
{
  int n = 0;

  for (int i = 0; i < sheet->scene.count; i++)
    n += sheet->marks[i].type == type && sheet->marks[i].role == role && (!heavy_only || sheet->marks[i].governing);
  return n;
}

static void
everybody_is_there_with_a_share (void **state)
{
  (void) state;
  for (size_t view = 0; view < 2; view++)
    {
      g_autofree Sheet *sheet = draw (two, view);

      assert_non_null (find_text (sheet, "A 38 kg"));
      assert_non_null (find_text (sheet, "B 22 kg"));
      assert_true (find_text (sheet, "A 38 kg")->governing);
      assert_false (find_text (sheet, "B 22 kg")->governing);
      assert_int_equal (count (sheet, SY_MARK_SIGN, SY_ROLE_GRAVITY, FALSE), 1);
      assert_int_equal (count (sheet, SY_MARK_ARROW, SY_ROLE_TENSION, FALSE), 2);
      assert_int_equal (count (sheet, SY_MARK_ARROW, SY_ROLE_TENSION, TRUE), 1);
      assert_int_equal (sheet->scene.kind, SY_KIND_LENGTH);
    }
}

static void
arrows_are_to_scale (void **state)
{
  static const struct
  {
    const char *text;
    double shares[4];
    int n;
  } cases[] = { { two, { 38, 22 }, 2 }, { four, { 25.2, 27, 33, 25.2 }, 4 } };

  (void) state;
  for (gsize c = 0; c < G_N_ELEMENTS (cases); c++)
    for (size_t view = 0; view < 2; view++)
      {
        g_autofree Sheet *sheet = draw (cases[c].text, view);
        int seen = 0;

        assert_string_equal (sheet->scene.force_text, "20 kg");
        for (int i = 0; i < sheet->scene.count; i++)
          {
            const SyMark *mark = &sheet->marks[i];

            if (mark->type != SY_MARK_ARROW)
              continue;
            double length = hypot (mark->points[1].x - mark->points[0].x, mark->points[1].y - mark->points[0].y);
            assert_float_equal (length / sheet->scene.force_length * 20, cases[c].shares[seen], 1e-6);
            seen++;
          }
        assert_int_equal (seen, cases[c].n);
      }
}

static void
the_slope_is_under_it (void **state)
{
  g_autofree Sheet *sheet = draw (stairs, 1), *level = draw (two, 1);
  const SyMark *angle = find_text (sheet, "35\302\260");

  (void) state;
  assert_non_null (angle);
  assert_string_equal (angle->fact, "slope");
  assert_int_equal (count (level, SY_MARK_ANGLE, SY_ROLE_MEASURE, FALSE), 0);
  assert_int_equal (count (level, SY_MARK_LINE, SY_ROLE_FLOOR, FALSE), 1);
  /* the weight meets the line of the hands on the side of A, who goes lower */
  const SyMark *a = NULL;
  for (int i = 0; i < sheet->scene.count && a == NULL; i++)
    if (g_str_has_prefix (sheet->marks[i].text, "A "))
      a = &sheet->marks[i];
  assert_non_null (a);
  assert_true (a->governing);
}

static void
places_can_be_moved_in_plan (void **state)
{
  g_autofree Sheet *sheet = draw (four, 0);
  const SyMark *b = NULL;

  (void) state;
  for (int i = 0; i < sheet->scene.count && b == NULL; i++)
    if (g_str_has_prefix (sheet->marks[i].text, "B "))
      b = &sheet->marks[i];
  assert_non_null (b);
  assert_string_equal (b->handle.fact, "people[1].at");
  assert_float_equal (b->handle.right[0], 1, 0);
  assert_float_equal (b->handle.up[1], 1, 0);
  /* there is no third coordinate to move */
  assert_float_equal (b->handle.right[2], 0, 0);
  assert_float_equal (b->handle.up[2], 0, 0);
}

static void
what_tips_has_no_shares (void **state)
{
  (void) state;
  for (size_t view = 0; view < 2; view++)
    {
      g_autofree Sheet *sheet = draw (tips, view);

      assert_int_equal (count (sheet, SY_MARK_ARROW, SY_ROLE_TENSION, FALSE), 0);
      assert_non_null (find_text (sheet, "A"));
      assert_true (sheet->scene.force_length == 0);
    }
}

static void
all_of_it_is_inside_and_fits_in_little_room (void **state)
{
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    for (size_t view = 0; view < 2; view++)
      for (int room = 0; room <= 40; room += 8)
        {
          g_autofree Sheet *sheet = draw_with (all[i], view, room);
          const SyScene *scene = &sheet->scene;

          assert_true (scene->count <= room);
          for (int k = 0; k < scene->count; k++)
            for (int p = 0; p < sheet->marks[k].n_points; p++)
              {
                assert_true (isfinite (sheet->marks[k].points[p].x) && isfinite (sheet->marks[k].points[p].y));
                assert_true (sheet->marks[k].points[p].x >= scene->x0 && sheet->marks[k].points[p].x <= scene->x1);
                assert_true (sheet->marks[k].points[p].y >= scene->y0 && sheet->marks[k].points[p].y <= scene->y1);
              }
        }
}

static void
it_is_drawn (void **state)
{
  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    for (size_t view = 0; view < 2; view++)
      {
        g_autofree Sheet *sheet = draw (all[i], view);
        cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 500, 400);
        cairo_t *cr = cairo_create (surface);

        sy_drawing_scene (cr, 500, 400, &sheet->scene, &sy_palette_paper, "Sans 8");
        assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (everybody_is_there_with_a_share),
    cmocka_unit_test (arrows_are_to_scale),
    cmocka_unit_test (the_slope_is_under_it),
    cmocka_unit_test (places_can_be_moved_in_plan),
    cmocka_unit_test (what_tips_has_no_shares),
    cmocka_unit_test (all_of_it_is_inside_and_fits_in_little_room),
    cmocka_unit_test (it_is_drawn),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
