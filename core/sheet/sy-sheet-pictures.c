/* SPDX-License-Identifier: MIT */
/* Drawings on paper are those on screen. */
#include <math.h>
#include <string.h>

#include "sy-task-sheet-private.h"

#define BEAM_HEIGHT 92
#define LAST_GRADUATION 3.0

/* ---- the steelyard ---- */

typedef struct
{
  SyBeam beam;
  char *symbol, *beyond, *unbounded;
} Beam;

static void
free_beam (gpointer data)
{
  Beam *beam = data;

  g_free (beam->symbol);
  g_free (beam->beyond);
  g_free (beam->unbounded);
  g_free (beam);
}

static void
draw_beam (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data)
{
  sy_drawing_beam (cr, width, height, &((Beam *) data)->beam, palette, "Sans 9px");
}

void
sy_sheet_add_beam (SyFolio *folio, const SyTaskSheet *sheet)
{
  const SyFindings *findings = sheet->findings;
  const char *symbol = findings->sink.index_symbol;
  const SyQuantity *index = symbol != NULL ? sy_findings_quantity (findings, symbol) : NULL;
  double goal = sy_policy_goal (findings->policy, findings->method, findings->units).index;
  Beam *beam;

  if (index == NULL || index->state == SY_STATE_ABSENT || findings->method->by_capacity)
    return;
  beam = g_new0 (Beam, 1);
  beam->symbol = g_strdup (sy_sheet_symbol (symbol));
  beam->beyond = g_strdup (sy_sheet_in (sheet, N_ ("beyond 3")));
  beam->unbounded = g_strdup (sy_sheet_in (sheet, N_ ("no limit holds")));
  beam->beam = (SyBeam) {
    .index = index->state == SY_STATE_UNBOUNDED ? INFINITY : index->value, .goal = isfinite (goal) ? goal : 1,
    .p5 = findings->spread.present ? findings->spread.p5 : NAN,
    .p95 = findings->spread.present ? findings->spread.p95 : NAN, .end = LAST_GRADUATION, .symbol = beam->symbol,
    .beyond_text = beam->beyond, .unbounded_text = beam->unbounded, .tilt = 1,
  };
  sy_folio_pictures (folio, &(SyFolioPicture) { "", 1, draw_beam, beam, free_beam }, 1, BEAM_HEIGHT);
}

/* ---- scenes ---- */

typedef struct
{
  SyScene scene;
  char *font;
} View;

static void
free_view (gpointer data)
{
  View *view = data;

  g_free (view->scene.marks);
  g_free (view->font);
  g_free (view);
}

static void
draw_view (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data)
{
  const View *view = data;

  sy_drawing_scene (cr, width, height, &view->scene, palette, view->font);
}

SyFolioPicture
sy_sheet_view (const SyTaskSheet *sheet, gsize at, double share, const char *font)
{
  const SyFacts *facts = sheet->facts;
  View *view = g_new0 (View, 1);
  SyMark *marks = g_new (SyMark, SY_SCENE_MARKS_MAX);

  sy_scene_begin (&view->scene, facts->units, marks, SY_SCENE_MARKS_MAX);
  facts->method->scene (facts->values, facts->units, &sheet->findings->sink, at, &view->scene);
  view->scene.marks = g_memdup2 (marks, (gsize) view->scene.count * sizeof *marks);
  view->scene.room = view->scene.count;
  view->font = g_strdup (font);
  g_free (marks);
  return (SyFolioPicture) { sy_sheet_in (sheet, facts->method->view_titles[at]), share, draw_view, view, free_view };
}

void
sy_sheet_add_views (SyFolio *folio, const SyTaskSheet *sheet, double height, const char *font)
{
  const gsize n = sheet->facts->method->n_views;
  gsize at = 0;

  /* In pairs; the first of an odd number has a row to itself. */
  while (at < n)
    {
      const guint beside = at == 0 && n % 2 == 1 ? 1 : 2;
      SyFolioPicture pictures[2];

      for (guint i = 0; i < beside; i++)
        pictures[i] = sy_sheet_view (sheet, at++, 1.0 / beside, font);
      sy_folio_pictures (folio, pictures, beside, height);
    }
}
