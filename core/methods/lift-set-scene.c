/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-facts.h"

/* Diagrams of a set: a stair of what each lift adds to the index, or the categories of a sample by both groupings. */

#define WIDE 100.0
#define HIGH 56.0
#define GAP 12.0
/* With more steps only those that add so much of the whole are named. */
#define NAMED_STEPS 12
#define NAMED_PART 0.05

static double
value_of (const SySink *sink, const char *prefix, size_t n, const char *name)
{
  char symbol[SY_NAMED_TEXT_MAX];
  SyText text = { symbol, sizeof symbol, 0 };

  sy_text_add (&text, prefix);
  sy_text_add_number (&text, (double) n);
  sy_text_add (&text, ".");
  sy_text_add (&text, name);
  const SyQuantity *quantity = sy_sink_quantity (sink, symbol);
  return quantity ? quantity->value : NAN;
}

/* ---- marks ---- */

static void
put_box (SyScene *scene, SyRole role, double x0, double y0, double x1, double y1)
{
  SyMark *mark = sy_scene_add (scene, SY_MARK_POLYGON, role);

  sy_scene_include (scene, x0, y0);
  sy_scene_include (scene, x1, y1);
  if (mark == NULL)
    return;
  mark->governing = role == SY_ROLE_GOVERNING;
  mark->n_points = 4;
  mark->points[0] = (SyPoint) { x0, y0 };
  mark->points[1] = (SyPoint) { x1, y0 };
  mark->points[2] = (SyPoint) { x1, y1 };
  mark->points[3] = (SyPoint) { x0, y1 };
}

static void
put_line (SyScene *scene, SyMarkType type, SyRole role, SyPoint from, SyPoint to)
{
  SyMark *mark = sy_scene_add (scene, type, role);

  sy_scene_include (scene, from.x, from.y);
  sy_scene_include (scene, to.x, to.y);
  if (mark == NULL)
    return;
  mark->n_points = 2;
  mark->points[0] = from;
  mark->points[1] = to;
}

/* A text of a name, a sign before a figure, and the figure to @decimals; NAN for none. */
static void
put_text (SyScene *scene, double x, double y, const char *name, const char *sign, double value, int decimals)
{
  SyMark *mark = sy_scene_add (scene, SY_MARK_TEXT, SY_ROLE_THIN);

  sy_scene_include (scene, x, y);
  if (mark == NULL)
    return;
  SyText text = { mark->text, sizeof mark->text, 0 };
  mark->n_points = 1;
  mark->points[0] = (SyPoint) { x, y };
  sy_text_add (&text, name);
  if (isnan (value))
    return;
  sy_text_add (&text, *name ? " " : "");
  sy_text_add (&text, sign);
  if (isinf (value))
    sy_text_add (&text, "\xe2\x88\x9e");
  else
    sy_text_add_rounded (&text, value, decimals);
}

/* ---- the stair ---- */

typedef struct
{
  size_t lift; /* from 0 */
  double delta;
} Step;

/* A first step and one for each lift of a sequence. */
#define STEPS_MAX (SY_LIFT_TASKS_MAX + 1)

static int
composite_steps (const SySink *sink, Step *steps)
{
  int n = 0;

  for (size_t k = 1; k <= SY_LIFT_TASKS_MAX; k++)
    {
      double delta = value_of (sink, "term.", k, "delta");
      if (isnan (delta))
        break;
      steps[n++] = (Step) { (size_t) value_of (sink, "term.", k, "lift") - 1, delta };
    }
  return n;
}

/* LI of the lift that leads, then what each lift's share of K brings on top. */
static int
sequence_steps (const SyLiftSetFacts *facts, const SySink *sink, Step *steps)
{
  size_t in[SY_LIFT_TASKS_MAX];
  double li = NAN, li_max = NAN;
  int n = 0;

  for (size_t i = 0; i < facts->lifts.count && i < SY_LIFT_TASKS_MAX; i++)
    {
      double order = value_of (sink, "lift.", i + 1, "order");
      if (isnan (order))
        continue;
      in[(size_t) order - 1] = i;
      n++;
    }
  if (n == 0)
    return 0;
  li = value_of (sink, "lift.", in[0] + 1, "LI");
  li_max = value_of (sink, "lift.", in[0] + 1, "LImax");
  steps[0] = (Step) { in[0], isfinite (li_max) ? li : INFINITY };
  for (int i = 0; i < n && isfinite (li_max); i++)
    steps[i + 1] = (Step) { in[i], (li_max - li) * value_of (sink, "lift.", in[i] + 1, "LImax")
                                     * value_of (sink, "lift.", in[i] + 1, "share") / li_max };
  return isfinite (li_max) ? n + 1 : 1;
}

static void
put_stair (const SyLiftSetFacts *facts, const char *index, SyScene *scene, const Step *steps, int n)
{
  double total = 0, most = 0, at = 0, width = WIDE / n;

  for (int i = 0; i < n; i++)
    {
      total += isfinite (steps[i].delta) ? steps[i].delta : 0;
      most = fmax (most, steps[i].delta);
    }
  double unit = HIGH / fmax (total, 1.2);

  put_line (scene, SY_MARK_LINE, SY_ROLE_OUTLINE, (SyPoint) { 0, 0 }, (SyPoint) { WIDE, 0 });
  put_line (scene, SY_MARK_LINE, SY_ROLE_CENTRE, (SyPoint) { -4, unit }, (SyPoint) { WIDE + 4, unit });
  put_text (scene, -5, unit + 2, "", "", 1, 0);
  for (int i = 0; i < n; i++)
    {
      double x = i * width, delta = steps[i].delta;
      char name[SY_LIFT_NAME_MAX];

      sy_lift_name (facts, steps[i].lift, name);
      if (!isfinite (delta))
        {
          put_line (scene, SY_MARK_ARROW, SY_ROLE_GOVERNING, (SyPoint) { x + width / 2, at * unit },
                    (SyPoint) { x + width / 2, HIGH + 6 });
          put_text (scene, x + width / 2, HIGH + 9, name, "", delta, 0);
          break;
        }
      put_box (scene, delta >= most ? SY_ROLE_GOVERNING : SY_ROLE_SUPPORT, x, at * unit, x + width, (at + delta) * unit);
      at += delta;
      if (n <= NAMED_STEPS || delta >= NAMED_PART * total)
        put_text (scene, x + width / 2, at * unit + 3, name, i > 0 ? "+" : "", delta, 2);
    }
  if (isfinite (most))
    {
      put_line (scene, SY_MARK_LINE, SY_ROLE_THIN, (SyPoint) { WIDE, at * unit }, (SyPoint) { WIDE + 16, at * unit });
      put_text (scene, WIDE + 9, at * unit + 2, index, "", at, 2);
    }
  sy_scene_include (scene, -6, -6);
  sy_scene_include (scene, WIDE + 20, HIGH + 12);
}

/* ---- categories ---- */

/* Bars of one grouping, from the lowest category to the highest: the mean FILI below, frequency and count above. */
static void
put_categories (const SySink *sink, SyScene *scene, const char *prefix, const char *index, double left)
{
  double frequency[SY_LIFT_CATEGORIES_MAX + 1], most = 0, best = 0;
  const SyQuantity *vli = sy_sink_quantity (sink, index);
  size_t last = 0, governing = 0;

  for (size_t k = 1; k <= SY_LIFT_CATEGORIES_MAX; k++)
    {
      double delta = value_of (sink, prefix, k, "delta");
      frequency[k] = value_of (sink, prefix, k, "frequency");
      if (isnan (frequency[k]))
        continue;
      last = k;
      most = fmax (most, frequency[k]);
      governing = delta > best ? k : governing;
      best = fmax (best, delta);
    }
  put_line (scene, SY_MARK_LINE, SY_ROLE_OUTLINE, (SyPoint) { left, 0 }, (SyPoint) { left + WIDE / 2, 0 });
  if (vli != NULL)
    put_text (scene, left + WIDE / 4, HIGH + 14, index, "", vli->value, 2);
  for (size_t k = last; k >= 1; k--)
    {
      double width = WIDE / 2 / (double) last, x = left + (double) (last - k) * width;
      double high = most > 0 ? frequency[k] / most * HIGH : 0;

      if (isnan (frequency[k]))
        continue;
      put_box (scene, k == governing ? SY_ROLE_GOVERNING : SY_ROLE_SUPPORT, x + width / 10, 0, x + width - width / 10,
               fmax (high, 0.3));
      put_text (scene, x + width / 2, -4, "", "", value_of (sink, prefix, k, "FILI"), 2);
      put_text (scene, x + width / 2, high + 3, "", "", frequency[k], 2);
      put_text (scene, x + width / 2, high + 7, "", "\xc3\x97", value_of (sink, prefix, k, "count"), 0);
    }
}

void
sy_lift_set_scene (const void *data, SyUnits units, const SySink *sink, size_t view, SyScene *scene)
{
  const SyLiftSetFacts *facts = data;
  Step steps[STEPS_MAX];
  int n;

  (void) units;
  (void) view;
  scene->kind = SY_KIND_RATIO;
  if (facts->combine == SY_COMBINE_VARIABLE)
    {
      put_categories (sink, scene, "equal.", "VLI.equal", 0);
      put_categories (sink, scene, "ntile.", "VLI.ntile", WIDE / 2 + GAP);
      sy_scene_include (scene, -4, -9);
      sy_scene_include (scene, WIDE + GAP + 4, HIGH + 20);
      return;
    }
  n = facts->combine == SY_COMBINE_COMPOSITE ? composite_steps (sink, steps) : sequence_steps (facts, sink, steps);
  if (n > 0)
    put_stair (facts, sink->index_symbol, scene, steps, n);
}
