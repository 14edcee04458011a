/* SPDX-License-Identifier: MIT */
/* Sheets in the window: which are offered, what is drawn, and that what is saved is what the record's sheet is. */
#include "sy-test.h"

#include <gtk/gtk.h>
#include <sys/stat.h>

#include "sy-dossier-sheet.h"
#include "sy-i18n.h"
#include "sy-sheet-window.h"
#include "sy-test-facts.h"
#include "sy-test-page.h"
#include "sy-test-tree.h"
#include "sy-worker-sheet.h"

#define LIMIT_MS 20000

typedef struct
{
  char *folder, *store;
  SyWorker *worker;
  GtkWidget *window;
  SyRecordResult first, second;
} Fixture;

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  fixture->folder = g_dir_make_tmp ("sheets-XXXXXX", NULL);
  fixture->store = g_build_filename (fixture->folder, "shop.steelyard", NULL);
  fixture->worker = sy_worker_new (fixture->store, desk);
  assert_true (sy_test_save (fixture->worker, "Rings", 30, &fixture->first, NULL));
  assert_true (sy_test_save (fixture->worker, "Rings", 5, &fixture->second, NULL));
  fixture->window = sy_sheet_window_new (NULL, fixture->worker);
  gtk_window_present (GTK_WINDOW (fixture->window));
  *state = fixture;
  return 0;
}

static void
remove_all (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (folder);
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;
  gpointer window = fixture->window;

  g_object_add_weak_pointer (G_OBJECT (fixture->window), &window);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  sy_worker_stop (fixture->worker);
  for (int i = 0; i < 50 && window != NULL; i++)
    {
      sy_test_settle ();
      g_usleep (10000);
    }
  g_object_unref (fixture->worker);
  sy_record_result_clear (&fixture->first);
  sy_record_result_clear (&fixture->second);
  remove_all (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->store);
  g_free (fixture);
  return window == NULL ? 0 : -1; /* nothing holds the window back */
}

typedef struct
{
  GtkWidget *widget;
  const char *text;
} Shows;

static gboolean
shows (gpointer data)
{
  const Shows *expected = data;

  return sy_test_shows (expected->widget, expected->text);
}

static void
wait_text (GtkWidget *widget, const char *text)
{
  Shows expected = { widget, text };

  if (!sy_test_until (shows, &expected, LIMIT_MS))
    fail_msg ("\"%s\" is not shown", text);
}

static gboolean
is_offered (Fixture *fixture, const char *kind)
{
  return sy_test_find (fixture->window, sy_test_has_name, (gpointer) kind) != NULL;
}

static char *
demo (const char *folder, const char *file)
{
  g_autofree char *data = g_path_get_dirname (SY_DEMO_LIFTS), *path = g_build_filename (data, folder, file, NULL);
  char *text = NULL;

  assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

static void
kinds_follow_the_method (void **state)
{
  Fixture *fixture = *state;
  SySheetWindow *window = SY_SHEET_WINDOW (fixture->window);
  g_autofree char *plan = demo ("plans", "tray-die-to-bolster.1.json");

  sy_sheet_window_open (window, fixture->second.task_id, 0, FALSE);
  wait_text (fixture->window, "Page 1 of ");
  assert_string_equal (sy_sheet_window_get_kind (window), "assessment");
  assert_true (is_offered (fixture, "card") && is_offered (fixture, "history"));
  assert_false (is_offered (fixture, "lift-plan"));
  assert_false (sy_sheet_window_choose (window, "lift-plan", SY_PAPER_A4));
  assert_false (sy_sheet_window_choose (window, "assessment", SY_PAPER_A5));
  assert_true (sy_sheet_window_choose (window, "card", SY_PAPER_A5));
  /* A paper that another kind is not on does not stay with it. */
  gtk_check_button_set_active (
    GTK_CHECK_BUTTON (sy_test_find (fixture->window, sy_test_has_name, "history")), TRUE);
  assert_string_equal (sy_sheet_window_get_kind (window), "history");
  assert_false (gtk_widget_get_visible (sy_test_find (fixture->window, sy_test_has_name, "a5")));

  sy_sheet_window_open_facts (window, "Tray die", plan, NULL);
  wait_text (fixture->window, "This was never saved");
  assert_true (is_offered (fixture, "lift-plan") && is_offered (fixture, "card"));
  assert_false (is_offered (fixture, "history"));
  assert_string_equal (sy_sheet_window_get_kind (window), "assessment");
}

static GBytes *
bytes_of_record (Fixture *fixture, const char *kind, SyPaper paper, gint64 revision)
{
  g_autoptr (SyLedger) ledger = sy_ledger_open (fixture->store, NULL);
  g_autoptr (SyBinder) binder = sy_binder_of_record (ledger, "Rings", NULL, revision, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree char *now = NULL;
  g_autoptr (SyFolio) folio = NULL;
  gboolean clock_set;

  assert_non_null (binder);
  assert_true (sy_binder_assess (binder, problems));
  now = sy_clock_now (&clock_set, NULL);
  folio = sy_dossier_sheet_new (&binder->dossier,
                                &(SyDossierAsk) { .kind = kind, .paper = paper, .translate = sy_translate,
                                                  .program = "steelyard " SY_VERSION, .made = now });
  return sy_folio_pdf_bytes (folio, now, NULL);
}

static void
what_is_saved_is_the_sheet_of_the_record (void **state)
{
  Fixture *fixture = *state;
  SySheetWindow *window = SY_SHEET_WINDOW (fixture->window);
  const struct
  {
    const char *kind;
    SyPaper paper;
  } wanted[] = { { "assessment", SY_PAPER_LETTER }, { "card", SY_PAPER_A5 }, { "history", SY_PAPER_A4 } };
  g_autofree char *path = g_build_filename (fixture->folder, "sheet.pdf", NULL);

  assert_false (sy_sheet_window_write (window, path));
  sy_sheet_window_open (window, fixture->second.task_id, 1, FALSE);
  wait_text (fixture->window, "Page 1 of ");
  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autoptr (GBytes) expected = bytes_of_record (fixture, wanted[i].kind, wanted[i].paper, 1);
      g_autofree char *written = NULL;
      gsize length;
      struct stat about;

      assert_true (sy_sheet_window_choose (window, wanted[i].kind, wanted[i].paper));
      assert_true (sy_sheet_window_write (window, path));
      assert_true (g_file_get_contents (path, &written, &length, NULL));
      assert_int_equal (length, g_bytes_get_size (expected));
      assert_memory_equal (written, g_bytes_get_data (expected, NULL), length);
      assert_int_equal (stat (path, &about), 0);
      assert_int_equal (about.st_mode & 0777, 0600);
    }
  wait_text (fixture->window, "Saved as ");
  assert_false (sy_sheet_window_write (window, "/nowhere/sheet.pdf"));
  wait_text (fixture->window, "The sheet was not saved: ");
}

/* A screen further each time. */
static gboolean
goes_on_to_the_last (gpointer window)
{
  SySheetView *view = sy_sheet_window_get_view (window);

  assert_true (gtk_widget_activate_action (window, "sheet.scroll", "i", 1));
  return sy_sheet_view_get_page (view) == sy_sheet_view_get_pages (view);
}

static void
every_page_is_drawn (void **state)
{
  Fixture *fixture = *state;
  SySheetWindow *window = SY_SHEET_WINDOW (fixture->window);
  SySheetView *view = sy_sheet_window_get_view (window);
  g_autofree char *change = demo ("changeovers", "flange-die-by-hand.1.json");
  int pages;

  sy_sheet_window_open_facts (window, "Flange die", change, NULL);
  wait_text (fixture->window, "Page 1 of ");
  pages = sy_sheet_view_get_pages (view);
  assert_true (pages > 1);
  assert_true (sy_test_until (goes_on_to_the_last, fixture->window, LIMIT_MS));
  sy_sheet_view_go (view, FALSE);
  assert_int_equal (sy_sheet_view_get_page (view), 1);
  assert_float_equal (sy_sheet_view_get_scale (view), 1, 0);
  assert_true (gtk_widget_activate_action (fixture->window, "sheet.larger", NULL));
  assert_float_equal (sy_sheet_view_get_scale (view), 1.25, 0);
  assert_true (gtk_widget_activate_action (fixture->window, "sheet.width", NULL));
  assert_true (sy_sheet_view_fits_width (view));
  assert_true (gtk_widget_activate_action (fixture->window, "sheet.real", NULL));
  assert_float_equal (sy_sheet_view_get_scale (view), 1, 0);
}

static void
what_the_sheet_does_not_show_is_said (void **state)
{
  Fixture *fixture = *state;
  SySheetWindow *window = SY_SHEET_WINDOW (fixture->window);
  SyRecordResult third = { 0 };

  sy_sheet_window_open (window, fixture->second.task_id, 0, TRUE);
  wait_text (fixture->window, "It shows revision 2, as it was saved.");
  assert_true (sy_test_save (fixture->worker, "Rings", 6, &third, NULL));
  wait_text (fixture->window, "The record has moved on");
  assert_true (gtk_widget_activate_action (fixture->window, "sheet.again", NULL));
  wait_text (fixture->window, "It shows revision 3, as it was saved.");
  sy_sheet_window_open (window, "0000000000000000", 0, FALSE);
  wait_text (fixture->window, "The record could not be read: ");
  sy_sheet_window_open_facts (window, "", "{\"method\":\"lift\"}", "The load is still needed.");
  wait_text (fixture->window, "There is no sheet yet. The load is still needed.");
  assert_null (sy_sheet_window_get_kind (window));
  assert_int_equal (sy_sheet_view_get_pages (sy_sheet_window_get_view (window)), 0);
  sy_record_result_clear (&third);
}

static void
everything_has_a_name (void **state)
{
  Fixture *fixture = *state;
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint checked = 0;

  sy_sheet_window_open (SY_SHEET_WINDOW (fixture->window), fixture->second.task_id, 0, FALSE);
  wait_text (fixture->window, "Page 1 of ");
  sy_test_audit (gtk_window_get_child (GTK_WINDOW (fixture->window)), names, &checked);
  assert_true (checked > 0);
}

int
main (void)
{
#define WINDOW_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    WINDOW_TEST (kinds_follow_the_method),
    WINDOW_TEST (what_is_saved_is_the_sheet_of_the_record),
    WINDOW_TEST (every_page_is_drawn),
    WINDOW_TEST (what_the_sheet_does_not_show_is_said),
    WINDOW_TEST (everything_has_a_name),
  };

  g_setenv ("STEELYARD_CLOCK", "2026-11-26T08:00:00Z", TRUE);
  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
