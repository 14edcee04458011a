/* SPDX-License-Identifier: MIT */
#include "bench-lifts.h"
#include "sy-desk.h"
#include "sy-drawing.h"

/*
 * What one motion of a drag costs in a plan of four legs: the facts judged, three views filled, three views drawn.
 * It has to be done within a frame (16 ms) with room for what the window does beside it.
 */

#define N_MOVES 60
#define N_RUNS 5
#define WIDTH 360
#define HEIGHT 330

static const char plan[]
  = "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"mass\":2000,\"mass_basis\":\"weighed\",\"cg\":[%d,100,-100],"
    "\"points\":[{\"label\":\"A\",\"at\":[-1000,-600,0]},{\"label\":\"B\",\"at\":[1000,-600,0]},"
    "{\"label\":\"C\",\"at\":[1000,600,0]},{\"label\":\"D\",\"at\":[-1000,600,0]}],"
    "\"legs\":[{\"point\":\"A\"},{\"point\":\"B\"},{\"point\":\"C\"},{\"point\":\"D\"}],\"hook\":{\"above\":1500}}";

static double
run (SyDesk *desk, SyMark *marks, cairo_surface_t *surface, double *judging)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  double start = bench_seconds (), judged = 0;

  for (int i = 0; i < N_MOVES; i++)
    {
      g_autofree char *text = g_strdup_printf (plan, 5 * i);
      double before = bench_seconds ();
      g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, text, strlen (text), SY_JUDGE_PLAIN, problems);

      judged += bench_seconds () - before;
      for (gsize view = 0; view < 3; view++)
        {
          cairo_t *cr = cairo_create (surface);
          SyScene scene;

          sy_assessment_scene (assessment, view, marks, SY_SCENE_MARKS_MAX, &scene);
          scene.handles = true;
          sy_drawing_scene (cr, WIDTH, HEIGHT, &scene, &sy_palette_paper, "Sans 8");
          cairo_destroy (cr);
        }
    }
  *judging = judged / N_MOVES * 1000;
  return (bench_seconds () - start) / N_MOVES * 1000;
}

int
main (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  SyMark *marks = g_new0 (SyMark, SY_SCENE_MARKS_MAX);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  double best = 1e9, judging = 0;

  for (int i = 0; i < N_RUNS; i++)
    {
      double judged, whole = run (desk, marks, surface, &judged);

      if (whole < best)
        {
          best = whole;
          judging = judged;
        }
    }
  g_print ("one motion of a drag, judged and drawn in three views: %.2f ms, of which judging %.3f ms\n", best, judging);
  cairo_surface_destroy (surface);
  g_free (marks);
  return 0;
}
