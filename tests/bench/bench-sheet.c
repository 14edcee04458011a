/* SPDX-License-Identifier: MIT */
/* A sheet from findings to the bytes of its PDF, against bare Cairo and Pango that draw the same texts and lines into a PDF
   of as many pages. What a sheet draws is written down once, at the calls of Cairo and Pango themselves (linked with
   --wrap). */
#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "sy-desk.h"
#include "sy-task-sheet.h"

#define ROUNDS 41

/* ---- what was drawn ---- */

typedef enum { TEXT, STROKE, FILL, PAGE } DeedKind;

typedef struct
{
  DeedKind kind;
  cairo_matrix_t matrix;
  double red, green, blue, alpha;
  /* TEXT */
  char *words, *font;
  double x, y;
  int width;
  /* STROKE, FILL */
  cairo_path_t *path;
  double line;
  double dashes[8];
  int n_dashes;
} Deed;

static GArray *deeds; /* NULL: nothing is written down */

void __real_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout);
void __real_pango_cairo_show_layout_line (cairo_t *cr, PangoLayoutLine *line);
void __real_cairo_stroke (cairo_t *cr);
void __real_cairo_fill (cairo_t *cr);
void __real_cairo_fill_preserve (cairo_t *cr);
void __real_cairo_show_page (cairo_t *cr);
void __wrap_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout);
void __wrap_pango_cairo_show_layout_line (cairo_t *cr, PangoLayoutLine *line);
void __wrap_cairo_stroke (cairo_t *cr);
void __wrap_cairo_fill (cairo_t *cr);
void __wrap_cairo_fill_preserve (cairo_t *cr);
void __wrap_cairo_show_page (cairo_t *cr);

static Deed
begin_deed (DeedKind kind, cairo_t *cr)
{
  Deed deed = { .kind = kind };

  cairo_get_matrix (cr, &deed.matrix);
  cairo_pattern_get_rgba (cairo_get_source (cr), &deed.red, &deed.green, &deed.blue, &deed.alpha);
  return deed;
}

static void
note_text (cairo_t *cr, PangoLayout *layout, const char *words, gsize length, int width, double up)
{
  Deed deed = begin_deed (TEXT, cr);

  deed.words = g_strndup (words, length);
  deed.font = pango_font_description_to_string (pango_layout_get_font_description (layout));
  deed.width = width;
  cairo_get_current_point (cr, &deed.x, &deed.y);
  deed.y -= up;
  g_array_append_val (deeds, deed);
}

void
__wrap_pango_cairo_show_layout (cairo_t *cr, PangoLayout *layout)
{
  const char *words = pango_layout_get_text (layout);

  if (deeds != NULL)
    note_text (cr, layout, words, strlen (words), pango_layout_get_width (layout), 0);
  __real_pango_cairo_show_layout (cr, layout);
}

void
__wrap_pango_cairo_show_layout_line (cairo_t *cr, PangoLayoutLine *line)
{
  if (deeds != NULL)
    note_text (cr, line->layout, pango_layout_get_text (line->layout) + line->start_index, (gsize) line->length, -1,
               (double) pango_layout_get_baseline (line->layout) / PANGO_SCALE);
  __real_pango_cairo_show_layout_line (cr, line);
}

static void
note_path (DeedKind kind, cairo_t *cr)
{
  Deed deed = begin_deed (kind, cr);
  double offset;

  deed.path = cairo_copy_path (cr);
  deed.line = cairo_get_line_width (cr);
  deed.n_dashes = cairo_get_dash_count (cr);
  cairo_get_dash (cr, deed.dashes, &offset);
  g_array_append_val (deeds, deed);
}

void
__wrap_cairo_stroke (cairo_t *cr)
{
  if (deeds != NULL)
    note_path (STROKE, cr);
  __real_cairo_stroke (cr);
}

void
__wrap_cairo_fill (cairo_t *cr)
{
  if (deeds != NULL)
    note_path (FILL, cr);
  __real_cairo_fill (cr);
}

void
__wrap_cairo_fill_preserve (cairo_t *cr)
{
  if (deeds != NULL)
    note_path (FILL, cr);
  __real_cairo_fill_preserve (cr);
}

void
__wrap_cairo_show_page (cairo_t *cr)
{
  if (deeds != NULL)
    g_array_append_val (deeds, ((Deed) { .kind = PAGE }));
  __real_cairo_show_page (cr);
}

/* ---- the same, bare ---- */

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
redo (cairo_t *cr, PangoContext *context, const Deed *deed, PangoFontDescription *font)
{
  PangoLayout *layout;

  if (deed->kind == PAGE)
    {
      __real_cairo_show_page (cr);
      return;
    }
  cairo_set_matrix (cr, &deed->matrix);
  cairo_set_source_rgba (cr, deed->red, deed->green, deed->blue, deed->alpha);
  if (deed->kind == TEXT)
    {
      layout = pango_layout_new (context);
      pango_layout_set_font_description (layout, font);
      pango_layout_set_text (layout, deed->words, -1);
      if (deed->width > 0)
        {
          pango_layout_set_width (layout, deed->width);
          pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
        }
      cairo_move_to (cr, deed->x, deed->y);
      __real_pango_cairo_show_layout (cr, layout);
      cairo_new_path (cr);
      g_object_unref (layout);
      return;
    }
  cairo_append_path (cr, deed->path);
  if (deed->kind == FILL)
    {
      __real_cairo_fill (cr);
      return;
    }
  cairo_set_line_width (cr, deed->line);
  cairo_set_dash (cr, deed->dashes, deed->n_dashes, 0);
  __real_cairo_stroke (cr);
}

static gsize
draw_bare (SyPaper paper)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GHashTable) fonts
    = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) pango_font_description_free);
  PangoContext *context = sy_page_context_new ();
  double width, height;

  sy_paper_size (paper, &width, &height);

  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append_bytes, bytes, width, height);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < deeds->len; i++)
    {
      const Deed *deed = &g_array_index (deeds, Deed, i);
      PangoFontDescription *font = deed->font != NULL ? g_hash_table_lookup (fonts, deed->font) : NULL;

      if (deed->font != NULL && font == NULL)
        g_hash_table_insert (fonts, deed->font, font = pango_font_description_from_string (deed->font));
      redo (cr, context, deed, font);
    }
  cairo_surface_finish (surface);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  g_object_unref (context);
  return bytes->len;
}

/* ---- measuring ---- */

static gsize
draw_sheet (const SyTaskSheetKind *kind, const SyTaskSheet *sheet)
{
  g_autoptr (SyFolio) folio = kind->make (sheet);
  g_autoptr (GBytes) bytes = sy_folio_pdf_bytes (folio, sheet->made, NULL);

  return g_bytes_get_size (bytes);
}

/* Milliseconds of work: what else the machine does is not counted. */
static double
now (void)
{
  struct timespec time;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &time);
  return (double) time.tv_sec * 1e3 + (double) time.tv_nsec / 1e6;
}

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

static void
measure (const SyTaskSheetKind *kind, const SyTaskSheet *sheet, const char *name)
{
  double ratios[ROUNDS], own[ROUNDS], bare[ROUNDS];
  gsize size = 0, bare_size = 0;
  int texts = 0, lines = 0;
  GArray *written = g_array_new (FALSE, FALSE, sizeof (Deed));

  deeds = written;
  draw_sheet (kind, sheet);
  for (guint i = 0; i < deeds->len; i++)
    {
      texts += g_array_index (deeds, Deed, i).kind == TEXT;
      lines += g_array_index (deeds, Deed, i).kind == STROKE || g_array_index (deeds, Deed, i).kind == FILL;
    }
  for (int i = 0; i < ROUNDS; i++)
    {
      double begun = now (), between;

      deeds = NULL;
      size = draw_sheet (kind, sheet);
      between = now ();
      deeds = written;
      bare_size = draw_bare (sheet->paper);
      own[i] = between - begun;
      bare[i] = now () - between;
      ratios[i] = own[i] / bare[i];
    }
  deeds = NULL;
  qsort (ratios, ROUNDS, sizeof *ratios, compare);
  qsort (own, ROUNDS, sizeof *own, compare);
  qsort (bare, ROUNDS, sizeof *bare, compare);
  printf ("%-24s %-11s %4d texts %4d lines: sheet %.2f ms (%zu bytes), bare %.2f ms (%zu bytes): %.2f times\n", name,
          kind->id, texts, lines, own[ROUNDS / 2], size, bare[ROUNDS / 2], bare_size, ratios[ROUNDS / 2]);
}

static void
measure_document (SyDesk *desk, const char *path)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = NULL;
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_REVISION);
  g_autofree char *text = NULL, *name = g_path_get_basename (path);
  gsize length, n;
  const SyTaskSheetKind *kinds = sy_task_sheet_kinds (&n);

  if (!g_file_get_contents (path, &text, &length, NULL)
      || (assessment = sy_desk_assess (desk, text, length, SY_JUDGE_REMEDIES, problems)) == NULL)
    {
      fprintf (stderr, "%s: not assessed\n", path);
      exit (1);
    }
  sy_event_set (&event->name, name);
  sy_event_set (&event->facts, assessment->text);
  for (gsize i = 0; i < n; i++)
    {
      const SyTaskSheet sheet = { .facts = &assessment->facts, .findings = assessment->findings, .event = event,
                                  .paper = sy_task_sheet_takes (&kinds[i], SY_PAPER_A5) ? SY_PAPER_A5 : SY_PAPER_A4,
                                  .program = "steelyard", .made = "2026-06-02T09:00:00Z" };

      if (sy_task_sheet_fits (&kinds[i], assessment->facts.method))
        measure (&kinds[i], &sheet, name);
    }
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, &error);

  for (int i = 1; i < argc; i++)
    measure_document (desk, argv[i]);
  return 0;
}
