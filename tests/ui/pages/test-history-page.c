/* SPDX-License-Identifier: MIT */
/* What an auditor and a safety lead do with one item: its history, comparing, signing off, following up. */
#include "sy-test.h"

#include "sy-look-resource.h"
#include "sy-style.h"
#include "sy-task-page.h"
#include "sy-test-facts.h"
#include "sy-test-page.h"
#include "sy-timeline-view.h"
#include "sy-worker-deeds.h"

#define LIMIT_MS 30000

typedef struct
{
  SyWorker *worker;
  GtkWidget *window, *page;
  char *item;
  const char *wanted; /* a widget that is waited for */
  const char *words;  /* or words in it              */
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

static gboolean
is_there (gpointer data)
{
  Fixture *fixture = data;
  GtkWidget *widget = sy_test_find_shown (fixture->page, fixture->wanted);

  return widget != NULL && gtk_widget_get_mapped (widget)
         && (fixture->words == NULL || strstr (gtk_label_get_text (GTK_LABEL (widget)), fixture->words) != NULL);
}

static void
await (Fixture *fixture, const char *name, const char *words)
{
  fixture->wanted = name;
  fixture->words = words;
  if (!sy_test_until (is_there, fixture, LIMIT_MS))
    print_error ("%s never came: %s\n", name, words != NULL ? words : "");
  assert_true (is_there (fixture));
}

static void
press (Fixture *fixture, const char *name)
{
  g_signal_emit_by_name (need (fixture, name), "clicked");
  sy_test_settle ();
}

static void
type (Fixture *fixture, const char *name, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (need (fixture, name)), text);
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

/* A revision as another window or program saves it. */
static void
save_elsewhere (Fixture *fixture, double mass, gint64 base)
{
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };
  SyRecordResult saved = { 0 };

  request->is_new = fixture->item == NULL;
  request->task = g_strdup (fixture->item != NULL ? fixture->item : "ring");
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup_printf ("weighed at %g", mass);
  request->base = fixture->item != NULL ? base : -1;
  request->facts = sy_test_facts (mass, "hall");
  sy_worker_save_async (fixture->worker, request, NULL, sy_test_answered, &answer);
  assert_true (sy_test_until (sy_test_has_answer, &answer, LIMIT_MS));
  assert_true (sy_worker_save_finish (fixture->worker, answer.result, &saved, NULL));
  if (fixture->item == NULL)
    fixture->item = g_strdup (saved.task_id);
  sy_record_result_clear (&saved);
  g_object_unref (answer.result);
}

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  fixture->worker = sy_worker_new ("memory:", desk);
  save_elsewhere (fixture, 30, 0);
  save_elsewhere (fixture, 12, 1);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1110, 670);
  fixture->page = sy_task_page_new (fixture->worker, "lift");
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  sy_task_page_open (SY_TASK_PAGE (fixture->page), fixture->item);
  gtk_window_present (GTK_WINDOW (fixture->window));
  await (fixture, "standing-words", "Not signed off");
  *state = fixture;
  return 0;
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
  g_free (fixture->item);
  g_free (fixture);
  return page == NULL ? 0 : -1; /* nothing holds the page back */
}

static void
sign (Fixture *fixture, const char *by)
{
  show_tab (fixture, "follow-up");
  press (fixture, "sign");
  type (fixture, "sign-by", by);
  type (fixture, "sign-role", "foreman");
  press (fixture, "sign-now");
}

static void
the_timeline_is_one_image_that_says_itself (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *timeline;
  const char *sentence;
  g_autofree char *told = NULL;

  show_tab (fixture, "history");
  timeline = need (fixture, "timeline");
  gtk_test_accessible_assert_role (timeline, GTK_ACCESSIBLE_ROLE_IMG);
  sentence = sy_timeline_view_get_sentence (SY_TIMELINE_VIEW (timeline));
  assert_non_null (strstr (sentence, "2 revisions, from "));
  assert_non_null (strstr (sentence, "LI "));
  assert_non_null (strstr (sentence, "not signed off"));
  told = gtk_test_accessible_check_property (GTK_ACCESSIBLE (timeline), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence);
  assert_null (told);
}

static void
the_keyboard_steps_through_the_timeline (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *timeline;
  const char *first;

  show_tab (fixture, "history");
  timeline = need (fixture, "timeline");
  assert_true (gtk_widget_get_focusable (timeline));
  sy_timeline_view_step (SY_TIMELINE_VIEW (timeline), 1);
  first = gtk_widget_get_tooltip_text (timeline);
  assert_true (g_str_has_prefix (first, "Revision 1, "));
  sy_timeline_view_step (SY_TIMELINE_VIEW (timeline), 1);
  assert_true (g_str_has_prefix (gtk_widget_get_tooltip_text (timeline), "Revision 2, "));
  g_signal_emit_by_name (timeline, "open", (gint64) 1);
  assert_non_null (strstr (read_label (fixture, "stored-notice"), "Revision 1 as it was stored on "));
}

static void
two_revisions_are_compared (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *table;

  show_tab (fixture, "history");
  press (fixture, "history-compare");
  table = need (fixture, "differences");
  gtk_test_accessible_assert_role (table, GTK_ACCESSIBLE_ROLE_TABLE);
  assert_non_null (gtk_widget_get_next_sibling (gtk_widget_get_first_child (table)));
  assert_int_equal (gtk_drop_down_get_selected (GTK_DROP_DOWN (need (fixture, "compare-before"))), 0);
  assert_int_equal (gtk_drop_down_get_selected (GTK_DROP_DOWN (need (fixture, "compare-after"))), 1);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (need (fixture, "compare-before")), 1);
  table = need (fixture, "differences");
  assert_string_equal (gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (table))),
                       "No difference in facts, result or basis.");
  press (fixture, "history-back");
  assert_non_null (need (fixture, "timeline"));
}

static void
what_judging_again_changes_is_shown_and_saved_only_when_asked (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "history");
  press (fixture, "revision:1");
  press (fixture, "history-judge");
  assert_non_null (strstr (read_label (fixture, "judged-notice"), "nothing is saved by this"));
  assert_string_equal (gtk_label_get_text (GTK_LABEL (gtk_widget_get_first_child (need (fixture, "differences")))),
                       "No difference: the same facts give the same result today.");
  assert_false (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  press (fixture, "judged-save");
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "why"))), "revision 1 judged again");
  type (fixture, "by", "I. Tannick");
  type (fixture, "role", "safety lead");
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  await (fixture, "saver-words", "Saved as revision 3, ");
  /* It was made from the first, as the second was. */
  await (fixture, "standing-clash", "Revision 3 was made from revision 1 like revision 2: both are kept.");
  press (fixture, "standing-compare");
  assert_non_null (need (fixture, "differences"));
}

static void
a_revision_is_signed_off_in_place (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "follow-up");
  press (fixture, "sign");
  assert_non_null (strstr (read_label (fixture, "sign-subject"), "Revision 2, made by A. Tester"));
  type (fixture, "sign-by", "I. Tannick");
  type (fixture, "sign-role", "");
  press (fixture, "sign-now");
  assert_non_null (strstr (read_label (fixture, "sign-said"), "needed"));
  type (fixture, "sign-role", "foreman");
  assert_false (gtk_widget_get_visible (need (fixture, "sign-author")));
  press (fixture, "sign-now");
  await (fixture, "standing-words", "Revision 2 signed off by I. Tannick, foreman, ");
  assert_null (strstr (read_label (fixture, "standing-words"), "the person who made it"));
  save_elsewhere (fixture, 11, 2);
  await (fixture, "standing-words", "Signed off was revision 2; revision 3 is newer");
}

static void
signing_what_one_made_is_said_before_and_after (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "follow-up");
  press (fixture, "sign");
  type (fixture, "sign-by", "a. tester");
  assert_true (gtk_widget_get_visible (need (fixture, "sign-author")));
  sign (fixture, "a. tester");
  await (fixture, "standing-words", "signed by the person who made it");
  await (fixture, "signed-words", "signed by the person who made it");
}

static void
an_action_begins_with_a_reason (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *button = NULL;

  assert_true (gtk_widget_activate_action (fixture->page, "task.open-action", "(ss)", "lift-li", "raise the pallet"));
  sy_test_settle ();
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "open-action-what"))), "raise the pallet");
  type (fixture, "open-action-by", "I. Tannick");
  type (fixture, "open-action-due", "tomorrow");
  press (fixture, "open-action-now");
  assert_non_null (strstr (read_label (fixture, "open-action-said"), "2026-12-01"));
  type (fixture, "open-action-due", "2099-12-01");
  press (fixture, "open-action-now");
  await (fixture, "standing-words", "1 action open, the first due on 2099-12-01");
  /* Beside every remedy stands a button that does the same. */
  show_tab (fixture, "help");
  button = sy_test_find_shown (fixture->page, "act-on:largest-mass");
  if (button != NULL)
    assert_string_equal (gtk_actionable_get_action_name (GTK_ACTIONABLE (button)), "task.open-action");
  show_tab (fixture, "history");
  assert_non_null (sy_test_find_shown (fixture->page, "line:4"));
}

static GtkWidget *
find_prefixed (GtkWidget *widget, const char *prefix)
{
  GtkWidget *found = g_str_has_prefix (gtk_widget_get_name (widget), prefix) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_prefixed (child, prefix);
  return found;
}

static const char *
focused (Fixture *fixture)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (fixture->window));

  return focus != NULL ? gtk_widget_get_name (focus) : "nothing";
}

static gboolean
has_no_open_action (gpointer data)
{
  return find_prefixed (((Fixture *) data)->page, "close:") == NULL;
}

static void
the_keyboard_stays_where_a_deed_was_done (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *button;

  show_tab (fixture, "follow-up");
  press (fixture, "sign");
  type (fixture, "sign-by", "I. Tannick");
  type (fixture, "sign-role", "foreman");
  gtk_widget_grab_focus (need (fixture, "sign-now"));
  press (fixture, "sign-now");
  await (fixture, "standing-words", "signed off");
  assert_string_equal (focused (fixture), "sign");
  assert_true (gtk_widget_activate_action (fixture->page, "task.open-action", "(ss)", "lift-li", "raise the pallet"));
  gtk_widget_grab_focus (need (fixture, "open-action-now"));
  press (fixture, "open-action-now");
  await (fixture, "standing-words", "1 action open");
  assert_string_equal (focused (fixture), "open-action");
  /* A form that a button of a row opens leaves to what comes after it. */
  button = find_prefixed (fixture->page, "close:");
  assert_non_null (button);
  g_signal_emit_by_name (button, "clicked");
  sy_test_settle ();
  type (fixture, "close-action-evidence", "seen");
  gtk_widget_grab_focus (need (fixture, "close-action-now"));
  press (fixture, "close-action-now");
  assert_true (sy_test_until (has_no_open_action, fixture, LIMIT_MS));
  assert_string_equal (focused (fixture), "open-action");
}

/* The whole form can be seen, though it is opened by a page that was not in front. */
static void
a_form_that_opens_is_scrolled_to (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *act, *viewport;
  graphene_rect_t bounds;

  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1110, 480);
  assert_true (gtk_widget_activate_action (fixture->page, "task.open-action", "(ss)", "lift-li", "raise the pallet"));
  await (fixture, "open-action-now", NULL);
  sy_test_settle ();
  act = need (fixture, "open-action-now");
  viewport = gtk_widget_get_ancestor (act, GTK_TYPE_VIEWPORT);
  assert_true (gtk_widget_compute_bounds (need (fixture, "open-action-what"), viewport, &bounds));
  assert_true (bounds.origin.y >= 0);
  assert_true (bounds.origin.y + bounds.size.height <= (float) gtk_widget_get_height (viewport));
}

static void
out_of_use_is_said_at_the_head (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "follow-up");
  press (fixture, "retire");
  type (fixture, "retire-by", "I. Tannick");
  type (fixture, "retire-why", "the line is gone");
  press (fixture, "retire-now");
  await (fixture, "standing-retired", "Out of use since ");
  await (fixture, "use-words", "the line is gone");
  press (fixture, "take-back");
  type (fixture, "take-back-why", "it came back");
  press (fixture, "take-back-now");
  await (fixture, "use-words", "In use.");
}

static void
who_was_told_what_is_kept (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "follow-up");
  press (fixture, "tell");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "tell-mass"))), "12 kg");
  type (fixture, "tell-by", "I. Tannick");
  type (fixture, "tell-who", "shift 2");
  type (fixture, "tell-side", "even");
  press (fixture, "tell-now");
  show_tab (fixture, "history");
  await (fixture, "line:4", NULL);
}

static void
the_journal_is_verified_and_what_was_found_stays (void **state)
{
  Fixture *fixture = *state;

  show_tab (fixture, "history");
  press (fixture, "seal-verify");
  await (fixture, "seal-words", "lines of the journal hold");
  await (fixture, "seal-when", "Verified on ");
  save_elsewhere (fixture, 10, 2);
  await (fixture, "seal-words", "moved on");
}

static void
a_newer_revision_is_told (void **state)
{
  Fixture *fixture = *state;

  save_elsewhere (fixture, 10, 2);
  await (fixture, "notice-yes", NULL);
  press (fixture, "notice-yes");
  assert_non_null (strstr (read_label (fixture, "stored-notice"), "Revision 3"));
}

static void
everything_that_can_be_used_has_a_name (void **state)
{
  static const char *const forms[] = { "sign", "open-action", "review", "tell", "retire" };
  Fixture *fixture = *state;

  show_tab (fixture, "follow-up");
  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      guint checked = 0;

      press (fixture, forms[i]);
      sy_test_audit (fixture->page, names, &checked);
      assert_true (checked > 20);
    }
  show_tab (fixture, "history");
  press (fixture, "history-compare");
  {
    g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
    guint checked = 0;

    sy_test_audit (fixture->page, names, &checked);
  }
}

int
main (void)
{
#define PAGE_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest tests[] = {
    PAGE_TEST (the_timeline_is_one_image_that_says_itself),
    PAGE_TEST (the_keyboard_steps_through_the_timeline),
    PAGE_TEST (two_revisions_are_compared),
    PAGE_TEST (what_judging_again_changes_is_shown_and_saved_only_when_asked),
    PAGE_TEST (a_revision_is_signed_off_in_place),
    PAGE_TEST (signing_what_one_made_is_said_before_and_after),
    PAGE_TEST (the_keyboard_stays_where_a_deed_was_done),
    PAGE_TEST (a_form_that_opens_is_scrolled_to),
    PAGE_TEST (an_action_begins_with_a_reason),
    PAGE_TEST (out_of_use_is_said_at_the_head),
    PAGE_TEST (who_was_told_what_is_kept),
    PAGE_TEST (the_journal_is_verified_and_what_was_found_stays),
    PAGE_TEST (a_newer_revision_is_told),
    PAGE_TEST (everything_that_can_be_used_has_a_name),
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
