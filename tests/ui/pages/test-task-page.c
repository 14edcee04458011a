/* SPDX-License-Identifier: MIT */
/* The page of a task, driven by its widgets and read back as a person would read it. */
#include "sy-test.h"

#include "sy-draft.h"
#include "sy-look-resource.h"
#include "sy-style.h"
#include "sy-task-page.h"
#include "sy-test-page.h"
#include "sy-test-wait.h"

#define LIMIT_MS 30000

typedef struct
{
  SyWorker *worker;
  GtkWidget *window;
  GtkWidget *page;
  guint saved;
} Fixture;

static GtkWidget *
need (Fixture *fixture, const char *name)
{
  GtkWidget *widget = sy_test_find_shown (fixture->page, name);

  if (widget == NULL)
    print_error ("no widget is called %s\n", name);
  assert_non_null (widget);
  return widget;
}

static void
type (Fixture *fixture, const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (need (fixture, name)), text);
}

static void
choose (Fixture *fixture, const char *name, guint line)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (need (fixture, name)), line);
}

static void
check (Fixture *fixture, const char *name)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (need (fixture, name)), TRUE);
}

static void
press (Fixture *fixture, const char *name)
{
  g_signal_emit_by_name (need (fixture, name), "clicked");
}

static const char *
read_label (Fixture *fixture, const char *name)
{
  return gtk_label_get_text (GTK_LABEL (need (fixture, name)));
}

static void
show_tab (Fixture *fixture, const char *name)
{
  gtk_stack_set_visible_child_name (GTK_STACK (need (fixture, "tabs")), name);
  sy_test_settle ();
}

static void
saved_cb (SyTaskPage *page G_GNUC_UNUSED, Fixture *fixture)
{
  fixture->saved++;
}

static gboolean
was_saved (gpointer data)
{
  return ((Fixture *) data)->saved > 0;
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static void
new_page (Fixture *fixture)
{
  fixture->page = sy_task_page_new (fixture->worker, "lift");
  fixture->saved = 0;
  g_signal_connect (fixture->page, "saved", G_CALLBACK (saved_cb), fixture);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
}

static int
set_up_with (void **state, SyDesk *desk)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (GPtrArray) drafts = sy_draft_list ("memory:");

  /* What the test before left behind. */
  for (guint i = 0; i < drafts->len; i++)
    sy_draft_remove (((SyDraft *) g_ptr_array_index (drafts, i))->id, "memory:");
  fixture->worker = sy_worker_new ("memory:", desk);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1110, 670);
  new_page (fixture);
  sy_task_page_begin_new (SY_TASK_PAGE (fixture->page), SY_UNITS_METRIC, NULL);
  gtk_window_present (GTK_WINDOW (fixture->window));
  *state = fixture;
  return sy_test_until (is_mapped, fixture->page, LIMIT_MS) ? 0 : -1;
}

static int
set_up (void **state)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return set_up_with (state, desk);
}

static int
set_up_in_region (void **state)
{
  g_autoptr (SyDesk) plain = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyDesk) desk = sy_desk_in_region (plain, "uk", NULL);

  return set_up_with (state, desk);
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *page = fixture->page;

  g_object_add_weak_pointer (G_OBJECT (page), (gpointer *) &page);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  sy_worker_stop (fixture->worker);
  sy_test_settle ();
  g_object_unref (fixture->worker);
  g_free (fixture);
  return page == NULL ? 0 : -1; /* nothing holds the page back */
}

/* 30 kg from 20 cm to 110 cm at 55 cm reach, once a minute for two hours. */
static void
enter_the_blank (Fixture *fixture)
{
  choose (fixture, "avoid.possible", 2);
  type (fixture, "name", "Blank to shear 9");
  choose (fixture, "assigned", 2);
  type (fixture, "load.typical", "30");
  type (fixture, "load.heaviest", "30");
  type (fixture, "origin.H", "55");
  type (fixture, "origin.V", "20");
  type (fixture, "origin.A", "0");
  type (fixture, "destination.H", "55");
  type (fixture, "destination.V", "110");
  type (fixture, "destination.A", "0");
  choose (fixture, "control_at_destination", 1);
  type (fixture, "frequency", "1");
  choose (fixture, "duration", 2);
  choose (fixture, "coupling", 2);
  g_signal_emit_by_name (gtk_widget_get_first_child (need (fixture, "conditions")), "activate");
}

static void
save (Fixture *fixture, const char *why)
{
  fixture->saved = 0;
  type (fixture, "by", "A. Tester");
  type (fixture, "why", why);
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  assert_true (sy_test_until (was_saved, fixture, LIMIT_MS));
}

static void
the_result_follows_what_is_typed (void **state)
{
  Fixture *fixture = *state;

  assert_string_equal (read_label (fixture, "result-index"), "");
  enter_the_blank (fixture);
  assert_non_null (strstr (read_label (fixture, "result-sentence"), "LI "));
  assert_non_null (strstr (read_label (fixture, "result-sentence"), "55"));
  assert_true (g_ascii_strtod (read_label (fixture, "result-index"), NULL) > 3);
  type (fixture, "load.typical", "3");
  type (fixture, "load.heaviest", "3");
  assert_true (g_ascii_strtod (read_label (fixture, "result-index"), NULL) < 1);
}

static gboolean
has_child (gpointer widget)
{
  return gtk_widget_get_first_child (widget) != NULL;
}

static void
a_wrong_entry_blocks_saving_and_is_led_to (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *reach;

  enter_the_blank (fixture);
  type (fixture, "origin.H", "-5");
  assert_string_equal (read_label (fixture, "result-index"), "");
  type (fixture, "by", "A. Tester");
  type (fixture, "why", "first");
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  sy_test_settle ();
  assert_int_equal (fixture->saved, 0);
  assert_true (gtk_widget_get_visible (need (fixture, "saver-blocked")));
  reach = need (fixture, "origin.H");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (reach)), "-5");
  gtk_widget_grab_focus (need (fixture, "name"));
  press (fixture, "saver-blocked");
  assert_non_null (gtk_widget_get_focus_child (gtk_widget_get_parent (reach)));
  type (fixture, "origin.H", "55");
  assert_false (gtk_widget_get_visible (need (fixture, "saver-blocked")));
}

static void
a_remedy_is_tried_on_a_copy (void **state)
{
  Fixture *fixture = *state;
  g_autofree char *before = NULL;

  enter_the_blank (fixture);
  type (fixture, "load.typical", "10");
  type (fixture, "load.heaviest", "10");
  before = g_strdup (read_label (fixture, "result-index"));
  show_tab (fixture, "help");
  press (fixture, "remedy:origin.H");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55");
  assert_string_equal (read_label (fixture, "result-index"), before);
  press (fixture, "trial-leave");
  assert_null (sy_test_find_shown (fixture->page, "trial-use"));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55");
  press (fixture, "remedy:origin.H");
  press (fixture, "trial-use");
  assert_true (g_ascii_strtod (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), NULL)
               < 55);
  assert_string_not_equal (read_label (fixture, "result-index"), before);
  assert_true (gtk_widget_activate_action (fixture->page, "task.undo", NULL));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55");
  assert_string_equal (read_label (fixture, "result-index"), before);
}

static void
what_is_saved_stands_in_the_history (void **state)
{
  Fixture *fixture = *state;
  gboolean dirty = FALSE;
  g_autofree char *title = NULL;

  enter_the_blank (fixture);
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  save (fixture, "first measurement");
  g_object_get (fixture->page, "dirty", &dirty, "title", &title, NULL);
  assert_false (dirty);
  assert_string_equal (title, "Blank to shear 9");
  assert_true (g_str_has_prefix (read_label (fixture, "saver-words"), "Saved as revision 1, "));
  type (fixture, "origin.H", "50");
  save (fixture, "pallet turned");
  assert_true (g_str_has_prefix (read_label (fixture, "saver-words"), "Saved as revision 2, "));
  type (fixture, "origin.H", "49");
  assert_false (g_str_has_prefix (read_label (fixture, "saver-words"), "Saved as"));
}

static gboolean
two_revisions_are_listed (gpointer data)
{
  return sy_test_find_shown (((Fixture *) data)->page, "revision:2") != NULL;
}

static void
an_old_revision_is_shown_as_stored_and_can_begin_a_new_one (void **state)
{
  Fixture *fixture = *state;

  enter_the_blank (fixture);
  save (fixture, "first measurement");
  type (fixture, "origin.H", "50");
  save (fixture, "pallet turned");
  show_tab (fixture, "history");
  assert_true (sy_test_until (two_revisions_are_listed, fixture, LIMIT_MS));
  press (fixture, "revision:1");
  assert_non_null (strstr (read_label (fixture, "stored-notice"), "Revision 1 as it was stored"));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "50");
  press (fixture, "history-revise");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55");
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  save (fixture, "as it was");
  assert_true (g_str_has_prefix (read_label (fixture, "saver-words"), "Saved as revision 3, "));
}

static void
who_and_why_are_asked_for (void **state)
{
  Fixture *fixture = *state;

  enter_the_blank (fixture);
  type (fixture, "by", " ");
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  sy_test_settle ();
  assert_int_equal (fixture->saved, 0);
  assert_non_null (strstr (read_label (fixture, "saver-words"), "By whom and why"));
  save (fixture, "first");
}

typedef struct
{
  Fixture *fixture;
  const char *text;
} Expected;

static gboolean
reach_is (gpointer data)
{
  Expected *expected = data;
  GtkWidget *entry = sy_test_find_shown (expected->fixture->page, "origin.H");

  return entry != NULL && strcmp (gtk_editable_get_text (GTK_EDITABLE (entry)), expected->text) == 0;
}

static gboolean
has_a_task (gpointer data)
{
  return *(GPtrArray **) data != NULL;
}

static void
tasks_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  *(GPtrArray **) data = sy_worker_tasks_finish (SY_WORKER (source), result, NULL);
}

static char *
the_only_task (Fixture *fixture)
{
  GPtrArray *tasks = NULL;
  char *id;

  sy_worker_tasks_async (fixture->worker, NULL, tasks_cb, &tasks);
  assert_true (sy_test_until (has_a_task, &tasks, LIMIT_MS));
  assert_int_equal (tasks->len, 1);
  id = g_strdup (((SyTask *) g_ptr_array_index (tasks, 0))->id);
  g_ptr_array_unref (tasks);
  return id;
}

static void
an_unsaved_change_survives_and_is_offered (void **state)
{
  Fixture *fixture = *state;
  Expected stored = { fixture, "55" }, typed = { fixture, "48,5" };
  g_autofree char *id = NULL;

  enter_the_blank (fixture);
  save (fixture, "first");
  id = the_only_task (fixture);
  type (fixture, "origin.H", "48,5");
  new_page (fixture); /* the page is gone, as after a crash, and no save happened */
  sy_task_page_open (SY_TASK_PAGE (fixture->page), id);
  assert_true (sy_test_until (reach_is, &stored, LIMIT_MS));
  assert_true (gtk_widget_get_visible (gtk_widget_get_parent (need (fixture, "notice-yes"))));
  press (fixture, "notice-yes");
  assert_true (sy_test_until (reach_is, &typed, LIMIT_MS));
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  save (fixture, "closer");
  assert_null (sy_draft_read (id, "memory:", NULL));
}

static gboolean
draft_is_there (gpointer data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) drafts = sy_draft_list ("memory:");

  return drafts->len > 0;
}

static gboolean
draft_is_gone (gpointer data G_GNUC_UNUSED)
{
  return !draft_is_there (NULL);
}

static void
typing_writes_a_draft_and_saving_removes_it (void **state)
{
  Fixture *fixture = *state;

  assert_false (draft_is_there (NULL));
  type (fixture, "origin.H", "far out");
  assert_true (sy_test_until (draft_is_there, NULL, LIMIT_MS));
  enter_the_blank (fixture);
  save (fixture, "first");
  assert_true (sy_test_until (draft_is_gone, NULL, LIMIT_MS));
  type (fixture, "origin.H", "51");
  assert_true (sy_test_until (draft_is_there, NULL, LIMIT_MS));
  sy_task_page_discard (SY_TASK_PAGE (fixture->page));
  assert_true (draft_is_gone (NULL));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55");
}

static void
what_is_typed_one_way_comes_back_with_it (void **state)
{
  Fixture *fixture = *state;

  enter_the_blank (fixture);
  check (fixture, "way:pace:1");
  sy_test_settle ();
  assert_string_equal (read_label (fixture, "result-index"), "");
  type (fixture, "lifts", "30");
  type (fixture, "in_minutes", "15");
  assert_string_not_equal (read_label (fixture, "result-index"), "");
  check (fixture, "way:pace:0");
  sy_test_settle ();
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "frequency"))), "1");
  assert_string_not_equal (read_label (fixture, "result-index"), "");
  check (fixture, "way:pace:1");
  sy_test_settle ();
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "lifts"))), "30");
}

static void
units_are_switched_without_a_change_of_meaning (void **state)
{
  Fixture *fixture = *state;

  enter_the_blank (fixture);
  assert_true (gtk_widget_activate_action (fixture->page, "task.units", NULL));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "origin.H"))), "55 cm");
  assert_string_not_equal (read_label (fixture, "result-index"), "");
}

static void
everything_that_can_be_used_has_a_name (void **state)
{
  static const char *const tabs[] = { "pictures", "help", "findings", "reasons", "spread", "history" };
  Fixture *fixture = *state;

  enter_the_blank (fixture);
  for (gsize i = 0; i < G_N_ELEMENTS (tabs); i++)
    {
      g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      guint checked = 0;

      show_tab (fixture, tabs[i]);
      sy_test_audit (fixture->page, names, &checked);
      assert_true (checked > 20);
    }
  assert_true (has_child (fixture->page));
}

/* The page fits a small window: what it needs at least is no more than there is. */
static void
the_page_fits_a_small_window (void **state)
{
  Fixture *fixture = *state;
  int width, height;

  enter_the_blank (fixture);
  gtk_widget_measure (fixture->page, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (fixture->page, GTK_ORIENTATION_VERTICAL, 1100, &height, NULL, NULL, NULL);
  assert_true (width <= 1000); /* of 1100: longer words need room too */
  assert_true (height <= 650);
}

/* What is said under a result is what its findings and sheets say, whole, in a small window too. */
static void
what_it_defers_to_stands_under_the_result (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *label;
  const char *words;
  int width, height;

  enter_the_blank (fixture);
  label = need (fixture, "result-cautions");
  words = gtk_label_get_text (GTK_LABEL (label));
  assert_true (g_str_has_prefix (words, "A screening result, not a permission to lift"));
  assert_non_null (strstr (words, " Defers to: Manual Handling Operations Regulations 1992 (SI 1992/2793) reg. 4(1)(a), "));
  assert_non_null (strstr (words, " (from memory); local regulations and a competent person."));
  assert_int_equal (gtk_label_get_ellipsize (GTK_LABEL (label)), PANGO_ELLIPSIZE_NONE);
  gtk_widget_measure (fixture->page, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (fixture->page, GTK_ORIENTATION_VERTICAL, 1100, &height, NULL, NULL, NULL);
  assert_true (width <= 1000);
  assert_true (height <= 650);
}

int
main (void)
{
#define PAGE_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    PAGE_TEST (the_result_follows_what_is_typed),
    PAGE_TEST (a_wrong_entry_blocks_saving_and_is_led_to),
    PAGE_TEST (a_remedy_is_tried_on_a_copy),
    PAGE_TEST (typing_writes_a_draft_and_saving_removes_it),
    PAGE_TEST (what_is_saved_stands_in_the_history),
    PAGE_TEST (an_old_revision_is_shown_as_stored_and_can_begin_a_new_one),
    PAGE_TEST (who_and_why_are_asked_for),
    PAGE_TEST (an_unsaved_change_survives_and_is_offered),
    PAGE_TEST (what_is_typed_one_way_comes_back_with_it),
    PAGE_TEST (units_are_switched_without_a_change_of_meaning),
    PAGE_TEST (everything_that_can_be_used_has_a_name),
    PAGE_TEST (the_page_fits_a_small_window),
    cmocka_unit_test_setup_teardown (what_it_defers_to_stands_under_the_result, set_up_in_region, tear_down),
  };
  SyStyleSheet *sheet;
  int failed;

  gtk_init ();
  (void) sy_look_get_resource ();
  sheet = sy_style_sheet_new (gdk_display_get_default (), "/org/steelyard/Steelyard/look", TRUE);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  g_object_unref (sheet);
  return failed;
}
