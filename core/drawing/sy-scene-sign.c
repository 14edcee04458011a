/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-scene-canvas.h"

/* Signs are of one size on every sheet: a lifting point, the centre of gravity, the hook, a part without extent. */

#define PI 3.14159265358979323846

double
sy_scene_sign_radius (const SySceneCanvas *view, const SyMark *mark)
{
  return (mark->role == SY_ROLE_HOOK ? 7.0 : mark->role == SY_ROLE_GRAVITY ? 6.0 : 4.5) * view->weight;
}

static bool
is_grip (const SySceneCanvas *view, const SyMark *mark)
{
  return view->scene->handles && mark->handle.fact != NULL;
}

static void
circle (cairo_t *cr, SyPoint at, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * PI);
}

static void
draw_ring (SySceneCanvas *view, SyPoint at, double radius, const SyColour *colour, bool filled)
{
  cairo_t *cr = view->cr;

  circle (cr, at, radius);
  sy_palette_use (cr, filled ? colour : &view->palette->paper, 1);
  cairo_fill_preserve (cr);
  sy_palette_use (cr, colour, 1);
  cairo_set_line_width (cr, 1.6 * view->weight);
  cairo_stroke (cr);
}

/* A circle in quarters, two of them filled, as on drawings of bodies that are to be balanced. */
static void
draw_quarters (SySceneCanvas *view, SyPoint at, double radius, const SyColour *colour)
{
  cairo_t *cr = view->cr;

  draw_ring (view, at, radius, colour, false);
  for (int i = 0; i < 2; i++)
    {
      cairo_move_to (cr, at.x, at.y);
      cairo_arc (cr, at.x, at.y, radius, i * PI - PI / 2, i * PI);
      cairo_close_path (cr);
    }
  cairo_fill (cr);
}

/* The bowl opens to the side; the load hangs at the lowest place, which is the point itself. */
static void
draw_hook (SySceneCanvas *view, SyPoint at, double radius, const SyColour *colour)
{
  cairo_t *cr = view->cr;
  double bowl = 0.75 * radius, middle = at.y - bowl;

  sy_palette_use (cr, colour, 1);
  cairo_set_line_width (cr, 2.6 * view->weight);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_new_sub_path (cr);
  cairo_arc (cr, at.x, middle, bowl, -0.1 * PI, 1.1 * PI);
  cairo_stroke (cr);
  cairo_move_to (cr, at.x + bowl * cos (0.1 * PI), middle - bowl * sin (0.1 * PI));
  cairo_line_to (cr, at.x, middle - 1.6 * bowl);
  cairo_line_to (cr, at.x, middle - 2.4 * bowl);
  cairo_stroke (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  draw_ring (view, (SyPoint) { at.x, middle - 2.9 * bowl }, 0.5 * bowl, colour, false);
}

static void
draw_cross (SySceneCanvas *view, SyPoint at, double arm, const SyColour *colour)
{
  sy_palette_use (view->cr, colour, 1);
  cairo_set_line_width (view->cr, 1.2 * view->weight);
  cairo_move_to (view->cr, at.x - arm, at.y);
  cairo_line_to (view->cr, at.x + arm, at.y);
  cairo_move_to (view->cr, at.x, at.y - arm);
  cairo_line_to (view->cr, at.x, at.y + arm);
  cairo_stroke (view->cr);
}

void
sy_scene_draw_sign (SySceneCanvas *view, const SyMark *mark)
{
  SyPoint at = sy_scene_on_sheet (view, mark->points[0]);
  bool grip = is_grip (view, mark);
  const SyColour *colour = grip ? &view->palette->accent : &view->palette->ink;
  double radius = sy_scene_sign_radius (view, mark);

  if (mark->role == SY_ROLE_GRAVITY)
    draw_quarters (view, at, radius, colour);
  else if (mark->role == SY_ROLE_HOOK)
    draw_hook (view, at, radius, colour);
  else if (mark->role == SY_ROLE_BODY || mark->role == SY_ROLE_POCKET)
    draw_cross (view, at, radius, colour);
  else
    draw_ring (view, at, radius, colour, grip);

  if (grip && view->scene->hot >= 0 && mark == &view->scene->marks[view->scene->hot])
    {
      circle (view->cr, at, SY_SCENE_GRIP);
      sy_palette_use (view->cr, &view->palette->accent, 1);
      cairo_set_line_width (view->cr, 1.6);
      cairo_stroke (view->cr);
    }
}
