/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include "sy-folio.h"
#include "sy-task-sheet.h"

#define CREATED "2026-11-25T10:42:00Z"

static SyFolio *
folio_new (SyPaper paper, gboolean large)
{
  return sy_folio_new (&(SyFolioHead) { .paper = paper, .title = "Title", .subtitle = "Of something", .head = "",
                                        .program = "steelyard test", .made = CREATED, .large = large });
}

/* What a page is given to draw into. */
typedef struct
{
  double width, height;
  int drawn, freed;
} Seen;

static void
draw_cb (cairo_t *cr, double width, double height, const SyPalette *palette, gpointer data)
{
  Seen *seen = data;

  (void) cr, (void) palette;
  seen->width = width;
  seen->height = height;
  seen->drawn++;
}

static void
free_cb (gpointer data)
{
  ((Seen *) data)->freed++;
}

static void
draw_all (SyFolio *folio)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  for (int page = 0; page < sy_folio_pages (folio); page++)
    sy_folio_draw (folio, page, cr);
  assert_int_equal (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_empty (void **state)
{
  g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A4, FALSE);

  (void) state;
  assert_int_equal (sy_folio_pages (folio), 1);
  draw_all (folio);
}

static void
test_pictures_stay_on_the_page (void **state)
{
  g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A5, TRUE);
  Seen seen = { 0 };

  (void) state;
  sy_folio_paragraph (folio, "Before it", SY_TYPE_BODY);
  sy_folio_pictures (folio, &(SyFolioPicture) { "Caption", 1, draw_cb, &seen, free_cb }, 1, 5000);
  /* it does not fit beside what stands before it, and is lowered to fit at all */
  assert_int_equal (sy_folio_pages (folio), 2);
  draw_all (folio);
  assert_int_equal (seen.drawn, 1);
  assert_true (seen.height < 600 && seen.height > 300);
  sy_folio_free (g_steal_pointer (&folio));
  assert_int_equal (seen.freed, 1);
}

static void
test_pictures_share_the_width (void **state)
{
  g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A4, FALSE);
  Seen one = { 0 }, two = { 0 };
  const SyFolioPicture pictures[] = { { "", 0.5, draw_cb, &one, NULL }, { "b", 0.5, draw_cb, &two, NULL } };

  (void) state;
  sy_folio_pictures (folio, pictures, 2, 100);
  draw_all (folio);
  assert_true (one.width > 200 && one.width == two.width);
  assert_float_equal (one.height, 100, 1e-9);
}

static void
test_fill_takes_what_is_left (void **state)
{
  g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A5, TRUE);
  Seen seen = { 0 };

  (void) state;
  sy_folio_pictures (folio, &(SyFolioPicture) { "", 1, draw_cb, &seen, NULL }, 1, 100);
  sy_folio_fill (folio, 70);
  assert_int_equal (sy_folio_pages (folio), 1);
  draw_all (folio);
  assert_float_equal (seen.height, 170, 1e-9);
  sy_folio_fill (folio, 10000);
  assert_int_equal (sy_folio_pages (folio), 1);
  draw_all (folio);
  assert_true (seen.height > 300 && seen.height < 600);
}

/* A row that is higher than a page, and a word that is wider than a column. */
static void
test_rows_go_on (void **state)
{
  g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A4, FALSE);
  g_autofree char *long_text = g_strnfill (30000, 'w');
  const SyFolioColumn columns[] = { { "A", 0.1, SY_TYPE_NOTE }, { "B", 0.9, SY_TYPE_NOTE } };
  const char *cells[] = { "1", long_text };

  (void) state;
  sy_folio_heading (folio, "Heading");
  sy_folio_table (folio, columns, 2);
  sy_folio_row (folio, cells);
  sy_folio_row_in (folio, (const char *const[]) { "2", "b" }, SY_TYPE_NOTE_STRONG);
  assert_true (sy_folio_pages (folio) > 3);
  draw_all (folio);
}

/* Type that is larger than the page: a page a line, and an end. */
static void
test_title_that_fills_the_page (void **state)
{
  g_autofree char *title = g_strnfill (20000, 'w');
  g_autoptr (SyFolio) folio = sy_folio_new (&(SyFolioHead) { .paper = SY_PAPER_A5, .title = title, .subtitle = "", .head = "",
                                                             .program = "p", .made = CREATED, .scale = 3, .large = TRUE });

  (void) state;
  sy_folio_lead (folio, &(SyFolioLead) { .size = 64, .shape = SY_SHAPE_HOOK, .words = "Not by hand", .type = SY_TYPE_POSTER,
                                         .share = 1 });
  sy_folio_paragraph (folio, "One line, two lines, three lines, and more of them than fit", SY_TYPE_POSTER);
  assert_true (sy_folio_pages (folio) >= 2);
  draw_all (folio);
}

static void
test_same_bytes (void **state)
{
  GBytes *bytes[2];

  (void) state;
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (SyFolio) folio = folio_new (SY_PAPER_A4, FALSE);
      const char *labels[] = { "Name", "Day" };

      sy_folio_tick (folio, "Slings looked over", SY_TYPE_BODY);
      sy_folio_blanks (folio, labels, 2, 22);
      bytes[i] = sy_folio_pdf_bytes (folio, CREATED, NULL);
      assert_non_null (bytes[i]);
    }
  assert_true (g_bytes_equal (bytes[0], bytes[1]));
  g_bytes_unref (bytes[1]);
  g_bytes_unref (bytes[0]);
}

static void
test_papers (void **state)
{
  SyPaper paper;
  double width, height;

  (void) state;
  for (int i = 0; i < SY_N_PAPERS; i++)
    {
      assert_true (sy_paper_from_id (sy_paper_id ((SyPaper) i), &paper));
      assert_int_equal (paper, i);
    }
  assert_false (sy_paper_from_id ("a3", &paper));
  sy_paper_size (SY_PAPER_A5, &width, &height);
  assert_float_equal (width, 148 / 25.4 * 72, 1e-9);
  assert_float_equal (height, 210 / 25.4 * 72, 1e-9);
}

static void
test_kinds (void **state)
{
  gsize n;
  const SyTaskSheetKind *kinds = sy_task_sheet_kinds (&n);

  (void) state;
  assert_true (n >= 3);
  for (gsize i = 0; i < n; i++)
    {
      assert_ptr_equal (sy_task_sheet_kind (kinds[i].id), &kinds[i]);
      assert_true (sy_task_sheet_takes (&kinds[i], SY_PAPER_A4));
      assert_non_null (kinds[i].make);
    }
  assert_null (sy_task_sheet_kind ("poster"));
  assert_true (sy_task_sheet_fits (sy_task_sheet_kind ("lift-plan"), sy_method_find ("rigged-lift")));
  assert_false (sy_task_sheet_fits (sy_task_sheet_kind ("lift-plan"), sy_method_find ("lift")));
  assert_true (sy_task_sheet_takes (sy_task_sheet_kind ("card"), SY_PAPER_A5));
  assert_false (sy_task_sheet_takes (sy_task_sheet_kind ("assessment"), SY_PAPER_A5));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_empty),
    cmocka_unit_test (test_pictures_stay_on_the_page),
    cmocka_unit_test (test_pictures_share_the_width),
    cmocka_unit_test (test_fill_takes_what_is_left),
    cmocka_unit_test (test_rows_go_on),
    cmocka_unit_test (test_title_that_fills_the_page),
    cmocka_unit_test (test_same_bytes),
    cmocka_unit_test (test_papers),
    cmocka_unit_test (test_kinds),
  };

  return cmocka_run_group_tests_name ("folio", tests, NULL, NULL);
}
