/* SPDX-License-Identifier: MIT */
#include "scene-sheet.h"

/* Rigged lifts and dies drawn from documents: what is there, to which scale, and that it is drawn. */

#define FOUR_LEGS "\"legs\":[{\"point\":\"A\"},{\"point\":\"B\"},{\"point\":\"C\"},{\"point\":\"D\"}]"
#define CORNERS \
  "\"points\":[{\"label\":\"A\",\"at\":[-1000,-600,0]},{\"label\":\"B\",\"at\":[1000,-600,0]}," \
  "{\"label\":\"C\",\"at\":[1000,600,0]},{\"label\":\"D\",\"at\":[-1000,600,0]}]"
#define RIG "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"mass\":2000,\"mass_basis\":\"weighed\","

static const char level[] = RIG CORNERS ",\"cg\":[200,100,-100],\"bottom\":-300," FOUR_LEGS ",\"hook\":{\"above\":1500}}";
static const char mirrored[]
  = RIG "\"points\":[{\"label\":\"A\",\"at\":[1000,-600,0]},{\"label\":\"B\",\"at\":[-1000,-600,0]},"
        "{\"label\":\"C\",\"at\":[-1000,600,0]},{\"label\":\"D\",\"at\":[1000,600,0]}],\"cg\":[-200,100,-100],"
        "\"bottom\":-300," FOUR_LEGS ",\"hook\":{\"above\":1500}}";
static const char high_centre[] = RIG CORNERS ",\"cg\":[0,0,300]," FOUR_LEGS ",\"hook\":{\"at\":[0,0,1500]}}";
static const char outside[] = RIG CORNERS ",\"cg\":[1200,0,-100]," FOUR_LEGS ",\"hook\":{\"above\":1500}}";
static const char free_load[]
  = RIG CORNERS ",\"cg\":[150,-80,-200],\"legs\":[{\"point\":\"A\",\"length\":2000},{\"point\":\"B\",\"length\":2000},"
                "{\"point\":\"C\",\"length\":2000},{\"point\":\"D\",\"length\":2400}]}";
static const char us_lift[]
  = "{\"method\":\"rigged-lift\",\"units\":\"us\",\"mass\":1000,\"mass_basis\":\"weighed\",\"cg\":[0,0,-1],"
    "\"points\":[{\"label\":\"1\",\"at\":[-100,0,0]},{\"label\":\"2\",\"at\":[100,0,0]}],"
    "\"legs\":[{\"point\":\"1\"},{\"point\":\"2\"}],\"hook\":{\"above\":100}}";
static const char die[]
  = "{\"method\":\"die-mass\",\"units\":\"metric\"," CORNERS ",\"bodies\":["
    "{\"label\":\"shoe\",\"shape\":\"block\",\"size\":[2400,1400,100],\"at\":[0,0,50],\"material\":\"steel\"},"
    "{\"label\":\"pillar\",\"shape\":\"cylinder\",\"diameter\":80,\"height\":300,\"at\":[[-1000,0,250],[1000,0,250]],"
    "\"material\":\"steel\"},"
    "{\"label\":\"bush\",\"shape\":\"tube\",\"outer\":120,\"inner\":80,\"height\":60,\"axis\":\"x\",\"at\":[0,300,130],"
    "\"material\":\"bronze\"},"
    "{\"label\":\"lug\",\"shape\":\"prism\",\"area\":10000,\"height\":50,\"at\":[600,300,125],\"material\":\"steel\"},"
    "{\"label\":\"pocket\",\"shape\":\"block\",\"size\":[300,200,100],\"at\":[0,0,50],\"material\":\"steel\",\"cut\":true},"
    "{\"label\":\"spring\",\"mass\":3,\"at\":[-400,200,150]}]}";
static const char weighed_die[] = "{\"method\":\"die-mass\",\"units\":\"metric\",\"weighed\":400}";

static const char *const all[]
  = { level, mirrored, high_centre, outside, free_load, us_lift, die, weighed_die };

static int
count (const Sheet *sheet, SyRole role)
{
  int n = 0;

  for (int i = 0; i < sheet->scene.count; i++)
    n += sheet->marks[i].role == role;
  return n;
}

/* ---- rigged lifts ---- */

static void
plan_of_four_legs (void **state)
{
  g_autofree Sheet *sheet = draw (level, 0);
  int heavy = 0;

  (void) state;
  assert_int_equal (count (sheet, SY_ROLE_POINT), 4);
  assert_int_equal (count (sheet, SY_ROLE_GRAVITY), 1);
  assert_int_equal (count (sheet, SY_ROLE_LEG), 4);
  assert_int_equal (count (sheet, SY_ROLE_TENSION), 4);
  assert_int_equal (count (sheet, SY_ROLE_POINTS), 1);
  assert_int_equal (count (sheet, SY_ROLE_SLACK), 0);
  assert_int_equal (count (sheet, SY_ROLE_SECTION), 0); /* every point is over the centre */
  assert_int_equal (count (sheet, SY_ROLE_HOOK), 0);    /* it is over the centre */
  for (int i = 0; i < 4; i++)
    heavy += find (sheet, SY_MARK_LINE, SY_ROLE_LEG, i)->governing;
  assert_int_equal (heavy, 1);
  /* The centre is 500 mm from the edge of y. */
  assert_non_null (find_text (sheet, "500 mm"));
  assert_non_null (find_text (sheet, "2000 mm"));
  assert_non_null (find_text (sheet, "1200 mm"));
  assert_int_equal (sheet->scene.kind, SY_KIND_LENGTH);
}

/* An arrow is as long as its figure says, on the scale that the drawing states, in each of three views. */
static void
pulls_are_to_scale (void **state)
{
  Sheet *views[] = { draw (level, 0), draw (level, 1), draw (level, 2) };
  static const double points[][3] = { { -1000, -600, 0 }, { 1000, -600, 0 }, { 1000, 600, 0 }, { -1000, 600, 0 } };
  static const double hook[3] = { 200, 100, 1500 };
  static const int axes[][2] = { { 0, 1 }, { 0, 2 }, { 1, 2 } };

  (void) state;
  for (int view = 0; view < 3; view++)
    {
      const SyScene *scene = &views[view]->scene;
      int seen = 0;

      for (int i = 0; i < scene->count; i++)
        {
          const SyMark *mark = &scene->marks[i];
          double force, scale, whole = 0;
          int at;

          if (mark->role != SY_ROLE_TENSION)
            continue;
          seen++;
          at = mark->fact[strlen ("points[")] - '0';
          force = g_ascii_strtod (mark->text, NULL);
          scale = scene->force_length / g_ascii_strtod (scene->force_text, NULL);
          for (int axis = 0; axis < 3; axis++)
            whole += (hook[axis] - points[at][axis]) * (hook[axis] - points[at][axis]);
          whole = sqrt (whole);
          /* The figure has three places. */
          for (int side = 0; side < 2; side++)
            {
              double part = (hook[axes[view][side]] - points[at][axes[view][side]]) / whole;
              double drawn = side == 0 ? mark->points[1].x - mark->points[0].x : mark->points[1].y - mark->points[0].y;

              assert_close (drawn, part * force * scale, 0.005 * force * scale, 0);
            }
        }
      assert_int_equal (seen, 4);
    }
  for (int view = 0; view < 3; view++)
    g_free (views[view]);
}

static void
elevations (void **state)
{
  (void) state;
  for (size_t view = 1; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (level, view);
      const SyMark *hook = find (sheet, SY_MARK_SIGN, SY_ROLE_HOOK, 0);
      const SyMark *body = find (sheet, SY_MARK_POLYGON, SY_ROLE_BODY, 0);
      const SyMark *height = find_text (sheet, "1500 mm");

      assert_close (hook->points[0].x, view == 1 ? 200 : 100, 0, 0);
      assert_close (hook->points[0].y, 1500, 0, 0);
      assert_non_null (body);
      assert_string_equal (height->fact, "hook.above");
      assert_close (height->points[1].y - height->points[0].y, 1500, 0, 0);
      /* The angle is shown where the flattest leg is seen best: along x. */
      assert_int_equal (find (sheet, SY_MARK_ANGLE, SY_ROLE_MEASURE, 0) != NULL, view == 1);
    }
}

static void
what_is_held_below_the_centre (void **state)
{
  g_autofree Sheet *sheet = draw (high_centre, 0);
  const SyMark *section = find (sheet, SY_MARK_POLYGON, SY_ROLE_SECTION, 0);

  (void) state;
  /* At the height of the centre, 300 of 1500, the legs have come in by a fifth. */
  assert_non_null (section);
  assert_int_equal (section->n_points, 4);
  for (int i = 0; i < 4; i++)
    {
      assert_close (fabs (section->points[i].x), 800, 1e-9, 0);
      assert_close (fabs (section->points[i].y), 480, 1e-9, 0);
    }
  assert_non_null (find_text (sheet, "480 mm"));
}

/* Where nothing balances, nothing is drawn of pulls, heights and margins. */
static void
nothing_that_is_not_known (void **state)
{
  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (outside, view);

      assert_int_equal (count (sheet, SY_ROLE_POINT), 4);
      assert_int_equal (count (sheet, SY_ROLE_GRAVITY), 1);
      assert_int_equal (count (sheet, SY_ROLE_SLACK), 4);
      assert_int_equal (count (sheet, SY_ROLE_LEG), 0);
      assert_int_equal (count (sheet, SY_ROLE_TENSION), 0);
      assert_int_equal (count (sheet, SY_ROLE_HOOK), view > 0);
      assert_null (find (sheet, SY_MARK_ANGLE, SY_ROLE_MEASURE, 0));
      assert_true (sheet->scene.force_length == 0);
    }
}

/* A free load is drawn as it hangs: its centre under the hook; no leg longer than it is; the loose one dashed. */
static void
free_load_hangs (void **state)
{
  g_autofree Sheet *sheet = draw (free_load, 1);
  g_autofree Sheet *plan = draw (free_load, 0);
  const SyMark *hook = find (sheet, SY_MARK_SIGN, SY_ROLE_HOOK, 0);
  const SyMark *cg = find (sheet, SY_MARK_SIGN, SY_ROLE_GRAVITY, 0);

  (void) state;
  assert_close (hook->points[0].x, cg->points[0].x, 1e-6, 0);
  assert_true (hook->points[0].y > cg->points[0].y);
  assert_null (hook->handle.fact);
  assert_int_equal (count (plan, SY_ROLE_SLACK), 1);
  assert_int_equal (count (plan, SY_ROLE_LEG), 3);
  for (int i = 0; i < 3; i++)
    {
      const SyMark *leg = find (sheet, SY_MARK_LINE, SY_ROLE_LEG, i), *above = find (plan, SY_MARK_LINE, SY_ROLE_LEG, i);
      double dx = leg->points[1].x - leg->points[0].x, dz = leg->points[1].y - leg->points[0].y;
      double dy = above->points[1].y - above->points[0].y;

      assert_close (sqrt (dx * dx + dy * dy + dz * dz), 2000, 1e-5, 0);
    }
  /* The load is turned: its points are no longer at one height. */
  assert_true (fabs (find (sheet, SY_MARK_SIGN, SY_ROLE_POINT, 0)->points[0].y
                     - find (sheet, SY_MARK_SIGN, SY_ROLE_POINT, 1)->points[0].y)
               > 10);
}

static void
mirrored_is_mirrored (void **state)
{
  static const SyRole roles[] = { SY_ROLE_POINT, SY_ROLE_GRAVITY, SY_ROLE_LEG, SY_ROLE_TENSION, SY_ROLE_HOOK };

  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *a = draw (level, view);
      g_autofree Sheet *b = draw (mirrored, view);
      double sign = view == 2 ? 1 : -1;

      assert_int_equal (a->scene.count, b->scene.count);
      for (int i = 0; i < a->scene.count; i++)
        for (size_t r = 0; r < sizeof roles / sizeof roles[0]; r++)
          {
            const SyMark *one = &a->marks[i], *other = &b->marks[i];

            if (one->role != roles[r])
              continue;
            assert_int_equal (other->role, one->role);
            assert_int_equal (other->governing, one->governing);
            assert_string_equal (other->text, one->text);
            for (int p = 0; p < one->n_points; p++)
              {
                assert_close (other->points[p].x, sign * one->points[p].x, 1e-9, 1e-12);
                assert_close (other->points[p].y, one->points[p].y, 1e-9, 1e-12);
              }
          }
    }
}

static void
us_units (void **state)
{
  g_autofree Sheet *plan = draw (us_lift, 0);
  g_autofree Sheet *front = draw (us_lift, 1);

  (void) state;
  assert_non_null (find_text (plan, "200 in"));
  assert_non_null (find_text (front, "100 in"));
  assert_non_null (find_text (front, "707 lbf"));
  assert_non_null (find_text (front, "45\302\260"));
  assert_non_null (strstr (front->scene.force_text, "lbf"));
}

/* ---- handles ---- */

static const SyMark *
handle_of (const Sheet *sheet, const char *fact)
{
  for (int i = 0; i < sheet->scene.count; i++)
    if (sheet->marks[i].handle.fact != NULL && strcmp (sheet->marks[i].handle.fact, fact) == 0)
      return &sheet->marks[i];
  return NULL;
}

static void
handles_move_what_is_seen (void **state)
{
  static const int axes[][2] = { { 0, 1 }, { 0, 2 }, { 1, 2 } };

  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (level, view);
      const SyHandle *point = &handle_of (sheet, "points[2].at")->handle;

      for (int i = 0; i < 3; i++)
        {
          assert_close (point->right[i], i == axes[view][0], 0, 0);
          assert_close (point->up[i], i == axes[view][1], 0, 0);
        }
      assert_close (point->value[0], 1000, 0, 0);
      assert_non_null (handle_of (sheet, "cg"));
      assert_int_equal (handle_of (sheet, "hook.above") != NULL, view > 0);
    }

  /* A hook that is given as a place goes up and down only, and goes along with the centre. */
  g_autofree Sheet *front = draw (high_centre, 1);
  const SyHandle *hook = &handle_of (front, "hook.at")->handle;

  assert_true (hook->up[2] == 1 && hook->right[0] == 0 && !hook->number);
  assert_string_equal (handle_of (front, "cg")->handle.also, "hook.at");
}

/* Of a load that hangs askew a handle moves along the axes of the drawing all the same. */
static void
handles_of_a_load_askew (void **state)
{
  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (free_load, view);
      const SyHandle *point = &handle_of (sheet, "points[1].at")->handle;
      double right = 0, up = 0, both = 0;

      assert_null (handle_of (sheet, "hook.above"));
      assert_null (handle_of (sheet, "hook.at"));
      for (int i = 0; i < 3; i++)
        {
          right += point->right[i] * point->right[i];
          up += point->up[i] * point->up[i];
          both += point->right[i] * point->up[i];
        }
      assert_close (right, 1, 1e-12, 0);
      assert_close (up, 1, 1e-12, 0);
      assert_close (both, 0, 1e-12, 0);
    }
}

static void
nearest_handle_within_reach (void **state)
{
  g_autofree Sheet *sheet = draw (level, 0);
  const SySceneFit fit = { 0.1, 150, 150 };
  const SyMark *cg = find (sheet, SY_MARK_SIGN, SY_ROLE_GRAVITY, 0);
  double x = fit.left + fit.scale * cg->points[0].x, y = fit.bottom - fit.scale * cg->points[0].y;

  (void) state;
  assert_ptr_equal (&sheet->marks[sy_drawing_scene_handle_at (&sheet->scene, &fit, x + 8, y - 8)], cg);
  assert_ptr_equal (&sheet->marks[sy_drawing_scene_handle_at (&sheet->scene, &fit, x + 12, y)], cg);
  assert_int_equal (sy_drawing_scene_handle_at (&sheet->scene, &fit, x + 9, y - 9), -1);
}

/* ---- dies ---- */

static void
die_from_three_sides (void **state)
{
  /* The shoe, two pillars, the bush, the lug; of the tube the bore, and the pocket; the spring is a sign. */
  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (die, view);

      assert_int_equal (count (sheet, SY_ROLE_BODY), 6);
      assert_int_equal (count (sheet, SY_ROLE_POCKET), 2);
      assert_int_equal (count (sheet, SY_ROLE_POINT), 4);
      assert_int_equal (count (sheet, SY_ROLE_GRAVITY), 1);
      assert_int_equal (count (sheet, SY_ROLE_POINTS), view == 0);
      assert_non_null (find (sheet, SY_MARK_SIGN, SY_ROLE_BODY, 0));
      /* Round bodies are round along their axis. */
      assert_int_equal (find (sheet, SY_MARK_CIRCLE, SY_ROLE_BODY, 0) != NULL, view != 1);
      assert_non_null (find_text (sheet, view == 2 ? "1400 mm" : "2400 mm"));
      assert_null (handle_of (sheet, "cg"));
    }
}

static void
prism_is_a_square_of_its_area (void **state)
{
  g_autofree Sheet *sheet = draw (die, 0);
  const SyMark *lug = find (sheet, SY_MARK_POLYGON, SY_ROLE_BODY, 2); /* after the shoe and the bush */

  (void) state;
  assert_close (lug->points[2].x - lug->points[0].x, 100, 1e-9, 0);
  assert_close (lug->points[2].y - lug->points[0].y, 100, 1e-9, 0);
}

/* ---- of all ---- */

static void
everything_is_shown (void **state)
{
  (void) state;
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    for (size_t view = 0; view < 3; view++)
      {
        g_autofree Sheet *sheet = draw (all[i], view);
        const SyScene *scene = &sheet->scene;

        for (int m = 0; m < scene->count; m++)
          for (int p = 0; p < scene->marks[m].n_points; p++)
            {
              SyPoint at = scene->marks[m].points[p];
              double radius = scene->marks[m].radius;

              assert_true (at.x - radius >= scene->x0 && at.x + radius <= scene->x1);
              assert_true (at.y - radius >= scene->y0 && at.y + radius <= scene->y1);
            }
      }
}

static void
too_little_room (void **state)
{
  (void) state;
  for (int room = 0; room < 30; room++)
    for (size_t view = 0; view < 3; view++)
      {
        g_autofree Sheet *sheet = draw_with (view == 0 ? die : level, view, room);

        assert_in_range (sheet->scene.count, 0, room);
        assert_null (sheet->marks[room].handle.fact);
        assert_int_equal (sheet->marks[room].n_points, 0);
      }
}

/* ---- as drawn ---- */

#define WIDTH 360
#define HEIGHT 330

typedef struct
{
  long ink, brass, outside;
} Pixels;

/* Draws the sheet into the middle of a larger picture that is clear. */
static Pixels
render (Sheet *sheet, bool handles, int hot)
{
  const int edge = 16;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH + 2 * edge, HEIGHT + 2 * edge);
  cairo_t *cr = cairo_create (surface);
  Pixels pixels = { 0, 0, 0 };

  sheet->scene.handles = handles;
  sheet->scene.hot = hot;
  cairo_translate (cr, edge, edge);
  sy_drawing_scene (cr, WIDTH, HEIGHT, &sheet->scene, &sy_palette_paper, "Sans 8");
  assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_surface_flush (surface);
  for (int y = 0; y < HEIGHT + 2 * edge; y++)
    for (int x = 0; x < WIDTH + 2 * edge; x++)
      {
        const unsigned char *p
          = cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface) + 4 * x;

        if (x < edge || y < edge || x >= WIDTH + edge || y >= HEIGHT + edge)
          pixels.outside += p[3] > 0;
        else if (p[2] < 70 && p[1] < 80 && p[0] < 110)
          pixels.ink++;
        else if (p[2] > 110 && p[2] < 180 && p[0] < 80)
          pixels.brass++;
      }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return pixels;
}

static void
brass_is_what_can_be_grabbed (void **state)
{
  (void) state;
  for (size_t view = 0; view < 3; view++)
    {
      g_autofree Sheet *sheet = draw (level, view);
      int first = 0;
      Pixels plain, grips, hot;

      while (sheet->marks[first].handle.fact == NULL)
        first++;
      plain = render (sheet, false, -1);
      grips = render (sheet, true, -1);
      hot = render (sheet, true, first);
      assert_true (plain.brass < 5); /* blends of ink and paper are not brass */
      assert_true (grips.brass > 100);
      assert_true (hot.brass > grips.brass + 40);
      assert_true (grips.ink > 500);
    }
}

static void
inside_the_picture (void **state)
{
  (void) state;
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    for (size_t view = 0; view < 3; view++)
      {
        g_autofree Sheet *sheet = draw (all[i], view);

        assert_int_equal (render (sheet, true, -1).outside, 0);
      }
}

static void
governing_leg_is_heavier (void **state)
{
  g_autofree Sheet *sheet = draw (level, 1);
  long heavy = render (sheet, false, -1).ink, light;

  (void) state;
  for (int i = 0; i < sheet->scene.count; i++)
    sheet->marks[i].governing = false;
  light = render (sheet, false, -1).ink;
  assert_true (heavy > light + 50);
}

static void
fit_is_where_it_is_drawn (void **state)
{
  g_autofree Sheet *sheet = draw (level, 0);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SySceneFit fit = sy_drawing_scene_fit (cr, WIDTH, HEIGHT, &sheet->scene, "Sans 8");

  (void) state;
  assert_true (fit.scale > 0);
  assert_true (fit.left + fit.scale * sheet->scene.x0 >= 0 && fit.left + fit.scale * sheet->scene.x1 <= WIDTH);
  assert_true (fit.bottom - fit.scale * sheet->scene.y1 >= 0 && fit.bottom - fit.scale * sheet->scene.y0 <= HEIGHT);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (plan_of_four_legs),
    cmocka_unit_test (pulls_are_to_scale),
    cmocka_unit_test (elevations),
    cmocka_unit_test (what_is_held_below_the_centre),
    cmocka_unit_test (nothing_that_is_not_known),
    cmocka_unit_test (free_load_hangs),
    cmocka_unit_test (mirrored_is_mirrored),
    cmocka_unit_test (us_units),
    cmocka_unit_test (handles_move_what_is_seen),
    cmocka_unit_test (handles_of_a_load_askew),
    cmocka_unit_test (nearest_handle_within_reach),
    cmocka_unit_test (die_from_three_sides),
    cmocka_unit_test (prism_is_a_square_of_its_area),
    cmocka_unit_test (everything_is_shown),
    cmocka_unit_test (too_little_room),
    cmocka_unit_test (brass_is_what_can_be_grabbed),
    cmocka_unit_test (inside_the_picture),
    cmocka_unit_test (governing_leg_is_heavier),
    cmocka_unit_test (fit_is_where_it_is_drawn),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
