/* SPDX-License-Identifier: MIT */
/* The page of a task for methods other than the lift: a lift plan read as a person would read it, and every method's plan. */
#include "sy-test.h"

#include "sy-capacity-view.h"
#include "sy-draft.h"
#include "sy-look-resource.h"
#include "sy-new-page.h"
#include "sy-part-taker.h"
#include "sy-set-row.h"
#include "sy-style.h"
#include "sy-task-chooser.h"
#include "sy-task-kinds.h"
#include "sy-task-page.h"
#include "sy-task-plan.h"
#include "sy-test-page.h"
#include "sy-test-wait.h"

#define LIMIT_MS 30000

typedef struct
{
  SyWorker *worker;
  GtkWidget *window;
  GtkWidget *page;
} Fixture;

/* By the US rule, which counts unlike legs by the weaker. Two legs, 60° between them, over the centre: 1 t pulls each with 577.4 kg (1000 / 2 / cos 30°). %s: as of, the marking of the
   eyebolt at A, that of the sling at B. */
static const char plan[]
    = "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"as_of\":\"%s\",\"mass\":1000,\"mass_basis\":\"weighed\",\"cg\":[0,0,0],\"rule\":\"us\","
      "\"points\":[{\"label\":\"A\",\"at\":[-500,0,0],\"axis\":[0.5,0,0.8660254]},{\"label\":\"B\",\"at\":[500,0,0]}],"
      "\"legs\":[{\"point\":\"A\",\"hitch\":\"straight\",\"edge\":\"none\",\"material\":\"chain\",\"elements\":["
      "{\"label\":\"E1\",\"kind\":\"eyebolt\",\"wll\":%s,\"rated_as\":\"leg\",\"family\":\"asme\",\"shoulder\":true,"
      "\"due\":\"2027-01-01\"},"
      "{\"label\":\"S1\",\"kind\":\"sling\",\"wll\":4000,\"rated_as\":\"leg\",\"due\":\"2027-01-01\"}]},"
      "{\"point\":\"B\",\"hitch\":\"straight\",\"edge\":\"none\",\"material\":\"chain\",\"elements\":["
      "{\"label\":\"S2\",\"kind\":\"sling\",%s\"rated_as\":\"leg\",\"due\":\"2027-01-01\"}]}],"
      "\"hook\":{\"above\":866.0254},"
      "\"suspension\":[{\"label\":\"H1\",\"kind\":\"hoist\",\"wll\":3000,\"due\":\"2027-02-01\"}]}";

static GtkWidget *
need (Fixture *fixture, const char *name)
{
  GtkWidget *widget = sy_test_find_shown (fixture->page, name);

  if (widget == NULL)
    print_error ("no widget is called %s\n", name);
  assert_non_null (widget);
  return widget;
}

static const char *
read_label (Fixture *fixture, const char *name)
{
  return gtk_label_get_text (GTK_LABEL (need (fixture, name)));
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static void
show_page (Fixture *fixture, const char *method)
{
  fixture->page = sy_task_page_new (fixture->worker, method);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
}

static void
show_tab (Fixture *fixture, const char *name)
{
  gtk_stack_set_visible_child_name (GTK_STACK (need (fixture, "tabs")), name);
  sy_test_settle ();
}

static gboolean
has_tab (Fixture *fixture, const char *name)
{
  return gtk_stack_get_child_by_name (GTK_STACK (need (fixture, "tabs")), name) != NULL;
}

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (GPtrArray) drafts = sy_draft_list ("memory:");

  /* What the test before left behind. */
  for (guint i = 0; i < drafts->len; i++)
    sy_draft_remove (((SyDraft *) g_ptr_array_index (drafts, i))->id, "memory:");
  fixture->worker = sy_worker_new ("memory:", desk);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1110, 670);
  show_page (fixture, "rigged-lift");
  sy_task_page_begin_new (SY_TASK_PAGE (fixture->page), SY_UNITS_METRIC, NULL);
  gtk_window_present (GTK_WINDOW (fixture->window));
  *state = fixture;
  return sy_test_until (is_mapped, fixture->page, LIMIT_MS) ? 0 : -1;
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

/* Recording and opening */

static gboolean
has_answer (gpointer data)
{
  return *(GAsyncResult **) data != NULL;
}

static void
answered_cb (GObject *source G_GNUC_UNUSED, GAsyncResult *result, gpointer data)
{
  *(GAsyncResult **) data = g_object_ref (result);
}

/* New string: the id. */
static char *
record (Fixture *fixture, const char *name, const char *facts)
{
  SySaveRequest *request = sy_save_request_new ();
  SyRecordResult saved = { 0 };
  g_autoptr (GAsyncResult) result = NULL;
  g_autoptr (GError) error = NULL;
  char *id;

  request->task = g_strdup (name);
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("first look");
  request->base = -1;
  request->facts = g_strdup (facts);
  sy_worker_save_async (fixture->worker, request, NULL, answered_cb, &result);
  assert_true (sy_test_until (has_answer, &result, LIMIT_MS));
  if (!sy_worker_save_finish (fixture->worker, result, &saved, &error))
    fail_msg ("%s: %s", name, error->message);
  id = g_strdup (saved.task_id);
  sy_record_result_clear (&saved);
  return id;
}

static gboolean
is_open (gpointer data)
{
  Fixture *fixture = data;
  g_autofree char *title = NULL;

  g_object_get (fixture->page, "title", &title, NULL);
  return g_str_has_prefix (title, "Opened ");
}

static void
open_facts (Fixture *fixture, const char *facts)
{
  g_autofree char *id = record (fixture, "Opened item", facts);

  /* As a window opens it: not knowing yet what it is. */
  show_page (fixture, NULL);
  sy_task_page_open (SY_TASK_PAGE (fixture->page), id);
  assert_true (sy_test_until (is_open, fixture, LIMIT_MS));
  sy_test_settle ();
}

static void
open_plan (Fixture *fixture, const char *as_of, const char *eyebolt, const char *sling)
{
  g_autofree char *facts = g_strdup_printf (plan, as_of, eyebolt, sling);

  open_facts (fixture, facts);
}

/* A lift plan */

static char *
bar_words (Fixture *fixture, const char *view, guint i)
{
  return sy_capacity_view_dup_words (SY_CAPACITY_VIEW (need (fixture, view)), i);
}

static void
an_opened_plan_says_what_is_weakest (void **state)
{
  Fixture *fixture = *state;
  g_autofree char *first = NULL;

  open_plan (fixture, "2026-11-25", "600", "\"wll\":800,");
  assert_string_equal (sy_task_page_get_method (SY_TASK_PAGE (fixture->page))->id, "rigged-lift");
  assert_string_equal (read_label (fixture, "result-index"), "96.2 %");
  assert_string_equal (read_label (fixture, "result-valid"), "Holds until 2027-01-01");
  first = bar_words (fixture, "capacity", 0);
  assert_string_equal (first, "E1 at A: 577.4 / 600 kg, 96.2 %");
  assert_non_null (strstr (read_label (fixture, "result-sentence"), "E1"));
}

static void
a_pressed_bar_leads_to_its_fact (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *wll;

  open_plan (fixture, "2026-11-25", "600", "\"wll\":800,");
  sy_capacity_view_press (SY_CAPACITY_VIEW (need (fixture, "capacity")), 0);
  sy_test_settle ();
  wll = need (fixture, "legs[0].elements[0].wll");
  assert_non_null (gtk_widget_get_focus_child (gtk_widget_get_parent (wll)));
  gtk_editable_set_text (GTK_EDITABLE (wll), "500");
  assert_string_equal (read_label (fixture, "result-index"), "115.5 %");
}

static void
the_load_path_has_everything_that_carries (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *all;
  guint n;

  open_plan (fixture, "2026-11-25", "600", "\"wll\":800,");
  assert_true (sy_capacity_view_count (SY_CAPACITY_VIEW (need (fixture, "capacity"))) == 4);
  g_signal_emit_by_name (need (fixture, "capacity-more"), "clicked");
  sy_test_settle ();
  all = need (fixture, "capacity-all");
  assert_true (gtk_widget_get_mapped (all));
  n = sy_capacity_view_count (SY_CAPACITY_VIEW (all));
  assert_true (n >= 4); /* three in the legs and the hoist; the rules of slings beside them */
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *words = bar_words (fixture, "capacity-all", i);

      assert_non_null (strchr (words, '%'));
    }
  /* Both conventions of an angle stand beside one another: 30° and 60°. */
  assert_string_equal (gtk_label_get_text (GTK_LABEL (gtk_grid_get_child_at (GTK_GRID (need (fixture, "legs-table")), 1, 1))),
                       "30°");
  assert_string_equal (gtk_label_get_text (GTK_LABEL (gtk_grid_get_child_at (GTK_GRID (need (fixture, "legs-table")), 2, 1))),
                       "60°");
}

static void
what_may_be_carried_and_is_not_known_is_said (void **state)
{
  Fixture *fixture = *state;
  guint n;
  g_autofree char *last = NULL;

  open_plan (fixture, "2026-11-25", "600", "");
  show_tab (fixture, "path");
  n = sy_capacity_view_count (SY_CAPACITY_VIEW (need (fixture, "capacity-all")));
  last = bar_words (fixture, "capacity-all", n - 1);
  assert_string_equal (last, "S2 at B: 577.4 kg, capacity not known");
}

static void
a_plan_past_its_day_is_said_to_be_expired (void **state)
{
  Fixture *fixture = *state;

  open_plan (fixture, "2027-01-02", "600", "\"wll\":800,");
  assert_string_equal (read_label (fixture, "result-valid"), "Expired: held until 2027-01-01");
}

static void
a_tab_stands_only_where_there_is_something_in_it (void **state)
{
  Fixture *fixture = *state;

  assert_true (has_tab (fixture, "pictures"));
  assert_true (has_tab (fixture, "path"));
  assert_false (has_tab (fixture, "help"));
  assert_false (has_tab (fixture, "spread"));
  assert_true (has_tab (fixture, "history"));
  show_page (fixture, "lift");
  assert_false (has_tab (fixture, "path"));
  assert_true (has_tab (fixture, "help"));
  assert_true (has_tab (fixture, "spread"));
}

static void
what_is_checked_is_counted (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *group = need (fixture, "checks");
  GtkWidget *row = gtk_widget_get_ancestor (group, SY_TYPE_SET_ROW);
  GtkWidget *note = gtk_widget_get_last_child (row);

  assert_false (gtk_widget_get_visible (sy_set_row_get_check (SY_SET_ROW (row), "-")));
  assert_string_equal (gtk_label_get_text (GTK_LABEL (note)), "Nothing is checked yet.");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (sy_set_row_get_check (SY_SET_ROW (row), "trial-lift")), TRUE);
  assert_string_equal (gtk_label_get_text (GTK_LABEL (note)), "7 checks are still open.");
}

/* A hook that is not given is shown as such once something was loaded. */
static void
a_load_that_hangs_free_is_shown_so (void **state)
{
  Fixture *fixture = *state;
  g_autofree char *given = g_strdup_printf (plan, "2026-11-25", "600", "\"wll\":800,");
  g_auto (GStrv) parts = g_strsplit (given, "\"hook\":{\"above\":866.0254},", 2);
  g_autofree char *facts = g_strconcat (parts[0], parts[1], NULL);

  open_facts (fixture, facts);
  assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (need (fixture, "way:hook:2"))));
  open_plan (fixture, "2026-11-25", "601", "\"wll\":800,");
  assert_true (gtk_check_button_get_active (GTK_CHECK_BUTTON (need (fixture, "way:hook:0"))));
}

/* Beginning, and what is kept of it */

static gboolean
draft_is_there (gpointer data G_GNUC_UNUSED)
{
  g_autoptr (GPtrArray) drafts = sy_draft_list ("memory:");

  return drafts->len > 0;
}

static void
a_new_plan_keeps_its_method_in_its_draft (void **state)
{
  Fixture *fixture = *state;
  g_autofree char *title = NULL;
  g_autoptr (GPtrArray) drafts = NULL;
  const SyDraft *draft;

  g_object_get (fixture->page, "title", &title, NULL);
  assert_string_equal (title, "New lift plan");
  gtk_editable_set_text (GTK_EDITABLE (need (fixture, "mass")), "1,5 t");
  assert_true (sy_test_until (draft_is_there, NULL, LIMIT_MS));
  drafts = sy_draft_list ("memory:");
  draft = g_ptr_array_index (drafts, 0);
  assert_string_equal (draft->method, "rigged-lift");
  show_page (fixture, draft->method);
  sy_task_page_begin_new (SY_TASK_PAGE (fixture->page), SY_UNITS_METRIC, draft->id);
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "mass"))), "1,5 t");
}

static void
chosen_cb (SyTaskPage *page, const char *item_kind, gpointer data)
{
  static const char *const paths[] = { "die", "mass" };
  static const char *const texts[] = { "Draw die D-9", "2350" };

  *(char **) data = g_strdup (item_kind);
  sy_task_page_take (page, paths, texts, G_N_ELEMENTS (paths));
}

static void
a_section_can_be_filled_from_the_register (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *button = need (fixture, "take:load");
  g_autofree char *asked = NULL;

  assert_false (gtk_widget_get_visible (button));
  sy_task_page_set_chooser (SY_TASK_PAGE (fixture->page), chosen_cb, &asked);
  assert_true (gtk_widget_get_visible (button));
  g_signal_emit_by_name (button, "clicked");
  assert_string_equal (asked, "die");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "mass"))), "2350");
  assert_true (gtk_widget_activate_action (fixture->page, "task.undo", NULL));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "mass"))), "");
}

/* Every method */

static void
assert_rows (const SyMethod *method, const SyPlanRow *rows)
{
  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS; c++)
      if (rows[r].paths[c] != NULL && sy_method_field (method, rows[r].paths[c], NULL) == NULL)
        fail_msg ("%s has no fact %s", method->id, rows[r].paths[c]);
}

static void
every_plan_names_facts_that_there_are (void **state)
{
  (void) state;
  for (gsize i = 0; i < sy_method_count (); i++)
    {
      const SyMethod *method = sy_method_at (i);
      gsize n;
      const SyPlanSection *sections = sy_task_plan (method, &n);
      const SyPlanCarrier *carriers;

      assert_true (n > 0);
      for (gsize s = 0; s < n; s++)
        {
          assert_rows (method, sections[s].rows);
          for (gsize w = 0; w < SY_PLAN_WAYS; w++)
            {
              assert_rows (method, sections[s].ways[w].rows);
              if (sections[s].ways[w].list != NULL)
                assert_non_null (sy_method_field (method, sections[s].ways[w].list, NULL));
            }
        }
      carriers = sy_task_plan_carriers (method, &n);
      for (gsize c = 0; c < n; c++)
        assert_non_null (sy_method_field (method, carriers[c].fact, NULL));
    }
}

static gboolean
has_path (const SyPlanRow *rows, const char *name)
{
  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS; c++)
      if (rows[r].paths[c] != NULL && g_str_has_prefix (rows[r].paths[c], name)
          && strchr (".", rows[r].paths[c][strlen (name)]) != NULL)
        return TRUE;
  return FALSE;
}

/* "Further facts" is for methods that nobody has made a plan for yet. */
static void
every_fact_has_its_place (void **state)
{
  (void) state;
  for (gsize i = 0; i < sy_method_count (); i++)
    {
      const SyMethod *method = sy_method_at (i);
      gsize n;
      const SyPlanSection *sections = sy_task_plan (method, &n);

      for (gsize f = 0; f < method->n_fields; f++)
        {
          const char *name = method->fields[f].name;
          gboolean planned = strcmp (name, "had") == 0; /* stands with what it is about */

          for (gsize s = 0; s < n && !planned; s++)
            {
              planned = has_path (sections[s].rows, name);
              for (gsize w = 0; w < SY_PLAN_WAYS && !planned; w++)
                planned = has_path (sections[s].ways[w].rows, name)
                          || g_strcmp0 (sections[s].ways[w].list, name) == 0;
            }
          if (!planned)
            fail_msg ("the plan of %s has no place for %s", method->id, name);
        }
    }
}

static void
every_method_has_a_page (void **state)
{
  Fixture *fixture = *state;

  for (gsize i = 0; i < sy_method_count (); i++)
    {
      const SyMethod *method = sy_method_at (i);
      g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      g_autofree char *title = NULL;
      guint checked = 0;
      int width, height;

      show_page (fixture, method->id);
      sy_task_page_begin_new (SY_TASK_PAGE (fixture->page), SY_UNITS_METRIC, NULL);
      assert_true (sy_test_until (is_mapped, fixture->page, LIMIT_MS));
      sy_test_settle ();
      g_object_get (fixture->page, "title", &title, NULL);
      assert_true (g_str_has_prefix (title, "New "));
      assert_string_equal (read_label (fixture, "result-index"), "");
      sy_test_audit (fixture->page, names, &checked);
      assert_true (checked > 10);
      gtk_widget_measure (fixture->page, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
      gtk_widget_measure (fixture->page, GTK_ORIENTATION_VERTICAL, 1100, &height, NULL, NULL, NULL);
      if (width > 1000 || height > 650)
        fail_msg ("%s needs %d × %d", method->id, width, height);
    }
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static GPtrArray *
list_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  GPtrArray *files = g_ptr_array_new_with_free_func (g_free);
  const char *file;

  assert_non_null (dir);
  while ((file = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (files, g_strdup (file));
  g_ptr_array_sort (files, compare_names);
  return files;
}

/* Opens every document of a folder of the demo, or every @step-th from @first: nothing may be said against it on the
   way. */
static void
open_folder (Fixture *fixture, const char *name, guint first, guint step, guint least)
{
  g_autofree char *folder = g_build_filename (g_getenv ("SY_SOURCE_DIR"), "data", "demo", name, NULL);
  g_autoptr (GPtrArray) files = list_folder (folder);
  guint opened = 0;

  for (guint i = first; i < files->len; i += step)
    {
      g_autofree char *path = g_build_filename (folder, files->pdata[i], NULL);
      g_autofree char *facts = NULL;
      g_autofree char *item = g_strdup_printf ("Opened %s", (char *) files->pdata[i]);
      g_autofree char *id = NULL;

      assert_true (g_file_get_contents (path, &facts, NULL, NULL));
      id = record (fixture, item, facts);
      show_page (fixture, NULL);
      sy_task_page_open (SY_TASK_PAGE (fixture->page), id);
      assert_true (sy_test_until (is_open, fixture, LIMIT_MS));
      show_tab (fixture, "findings");
      if (has_tab (fixture, "path"))
        show_tab (fixture, "path");
      opened++;
    }
  assert_true (opened >= least);
}

/* The plans are many: each process opens those of its number, from 1. */
#define PLAN_PARTS 3
static guint plan_part = 1;

static void
every_plan_of_this_part_opens (void **state)
{
  assert_in_range (plan_part, 1, PLAN_PARTS);
  open_folder (*state, "plans", plan_part - 1, PLAN_PARTS, 2);
}

static void
every_die_of_the_demo_opens (void **state)
{
  open_folder (*state, "dies", 0, 1, 5);
}

static void
every_case_of_the_demo_opens (void **state)
{
  open_folder (*state, "cases", 0, 1, 1);
}

/* The third step is a die that is slid: its facts open on a page of their own, what is typed there changes the whole, and the
   way back leads to the step. */
static void
the_facts_of_a_step_open_inside_its_change (void **state)
{
  static const char step[] = "steps[2].facts";
  Fixture *fixture = *state;
  SyTaskPage *page;
  SyForm *form;
  g_autofree char *before = NULL;
  GtkWidget *entry;

  open_folder (fixture, "changeovers", 0, 2, 1);
  page = SY_TASK_PAGE (fixture->page);
  form = sy_task_page_get_form (page);
  assert_non_null (sy_form_get_assessment (form));
  assert_string_equal (sy_form_get_part_method (form, step)->id, "slide");
  before = g_strdup (sy_form_get (form, step));
  assert_true (gtk_widget_activate_action (fixture->page, "task.open-part", "s", step));
  entry = need (fixture, "mass");
  assert_true (sy_test_until (is_mapped, entry, LIMIT_MS));
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), "46");
  assert_null (sy_test_find_shown (fixture->page, "name"));
  gtk_editable_set_text (GTK_EDITABLE (entry), "52");
  assert_non_null (strstr (sy_form_get (form, step), "\"mass\":52"));
  assert_true (sy_form_is_dirty (form));
  /* undone from outside, the page follows */
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, step), before);
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, "mass"))), "46");
  g_signal_emit_by_name (need (fixture, "part-back"), "clicked");
  assert_non_null (sy_test_find_shown (fixture->page, "name"));
  assert_string_equal (gtk_widget_get_name (gtk_root_get_focus (GTK_ROOT (fixture->window))), step);
  /* taken away while it is open, it closes */
  assert_true (gtk_widget_activate_action (fixture->page, "task.open-part", "s", step));
  sy_form_remove_part (form, step);
  assert_null (sy_test_find_shown (fixture->page, "part-back"));
  assert_true (sy_form_can_undo (form));
}

static const char *
focused (Fixture *fixture)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (fixture->window));

  if (GTK_IS_TEXT (focus))
    focus = gtk_widget_get_parent (focus);
  return focus != NULL ? gtk_widget_get_name (focus) : "";
}

/* Steps are closed until one is looked into: what is wrong in it opens it. */
static void
what_is_wrong_in_a_step_leads_into_it (void **state)
{
  Fixture *fixture = *state;
  SyTaskPage *page;
  SyForm *form;

  open_folder (fixture, "changeovers", 0, 2, 1);
  page = SY_TASK_PAGE (fixture->page);
  form = sy_task_page_get_form (page);
  assert_null (sy_test_find_shown (fixture->page, "steps[3].minutes"));
  sy_form_set (form, "steps[3].minutes", "soon");
  assert_string_equal (sy_form_problem_path (form, 0), "steps[3].minutes");
  sy_task_page_focus_fact (page, sy_form_problem_path (form, 0));
  assert_string_equal (focused (fixture), "steps[3].minutes");
  /* of what is inside a part it is the part that is told of */
  sy_task_page_focus_fact (page, "steps[2].facts");
  assert_string_equal (focused (fixture), "steps[2].facts");
  assert_null (sy_test_find_shown (fixture->page, "steps[3].minutes"));
  /* back leads out of the part, then it is for the window */
  assert_true (gtk_widget_activate_action (fixture->page, "task.open-part", "s", "steps[2].facts"));
  need (fixture, "part-back");
  assert_true (sy_task_page_go_back (page));
  assert_string_equal (focused (fixture), "steps[2].facts");
  assert_false (sy_task_page_go_back (page));
}

static GtkWindow *
find_chooser (void)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *at = windows; at != NULL; at = at->next)
    if (SY_IS_TASK_CHOOSER (at->data))
      return at->data;
  return NULL;
}

static gboolean
has_rows (gpointer chooser)
{
  return g_list_model_get_n_items (sy_task_chooser_get_rows (chooser)) > 0;
}

static gboolean
is_taken (gpointer form)
{
  const SyMethod *method = sy_form_get_part_method (form, "steps[0].facts");

  return method != NULL && strcmp (method->id, "lift") == 0;
}

static void
a_step_takes_the_facts_of_a_task (void **state)
{
  Fixture *fixture = *state;
  g_autofree char *path = g_build_filename (g_getenv ("SY_SOURCE_DIR"), "data", "demo", "blank-to-shear-2.1.json", NULL);
  g_autofree char *task = NULL, *id = NULL;
  g_autoptr (SyTaskList) list = sy_task_list_new (fixture->worker);
  g_autoptr (SyForm) part = NULL;
  SyForm *form;
  GtkWindow *chooser;

  assert_true (g_file_get_contents (path, &task, NULL, NULL));
  id = record (fixture, "Blank to shear 2", task);
  show_page (fixture, "changeover");
  form = sy_task_page_get_form (SY_TASK_PAGE (fixture->page));
  sy_form_set (form, "steps[0].label", "Lift it out");
  /* nothing is asked where nobody offers a record */
  assert_true (gtk_widget_activate_action (fixture->page, "task.take-part", "(ss)", "steps[0].facts", "task"));
  assert_null (find_chooser ());
  sy_part_taker_offer (GTK_WINDOW (fixture->window), fixture->worker, list);
  assert_true (gtk_widget_activate_action (fixture->page, "task.take-part", "(ss)", "steps[0].facts", "task"));
  chooser = find_chooser ();
  assert_non_null (chooser);
  assert_true (sy_test_until (has_rows, chooser, LIMIT_MS));
  sy_task_chooser_choose (SY_TASK_CHOOSER (chooser), 0);
  assert_true (sy_test_until (is_taken, form, LIMIT_MS));
  part = sy_form_new_part (form, "steps[0].facts", NULL);
  assert_string_not_equal (sy_form_get (part, "load.heaviest"), "");
  assert_string_equal (sy_form_get (part, "place"), "");
  need (fixture, "part-back");
}

static void
a_new_item_can_be_chosen_of_every_kind (void **state)
{
  Fixture *fixture = *state;
  GtkWidget *choice = sy_new_page_new ();
  GtkWidget *lift;
  g_autoptr (GSimpleActionGroup) actions = g_simple_action_group_new ();
  g_autoptr (GSimpleAction) new_item = g_simple_action_new ("new-item", G_VARIANT_TYPE_STRING);
  gsize n;
  const SyTaskKind *const *kinds = sy_task_kinds (&n);

  g_action_map_add_action (G_ACTION_MAP (actions), G_ACTION (new_item));
  gtk_widget_insert_action_group (fixture->window, "win", G_ACTION_GROUP (actions));
  gtk_window_set_child (GTK_WINDOW (fixture->window), choice);
  fixture->page = choice;
  assert_true (sy_test_until (is_mapped, choice, LIMIT_MS));
  assert_int_equal (n, sy_method_count ());
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("new:%s", kinds[i]->method);

      assert_non_null (sy_test_find_shown (choice, name));
    }
  lift = sy_test_find_shown (choice, "new:lift");
  assert_true (gtk_widget_grab_focus (choice));
  assert_ptr_equal (gtk_root_get_focus (GTK_ROOT (fixture->window)), lift);
}

/* Every name of a widget becomes a quark, and past 4096 of them GLib leaves a table behind that the leak check reports (of the
   first one tests/support/keep-quarks.c takes care). So what opens every page runs in processes of its own: "methods",
   "demo-plans" with the number of a part, "demo-dies". */
int
main (int argc, char **argv)
{
#define PAGE_TEST(name) cmocka_unit_test_setup_teardown (name, set_up, tear_down)
  const struct CMUnitTest plans[] = {
    PAGE_TEST (an_opened_plan_says_what_is_weakest),
    PAGE_TEST (a_pressed_bar_leads_to_its_fact),
    PAGE_TEST (the_load_path_has_everything_that_carries),
    PAGE_TEST (what_may_be_carried_and_is_not_known_is_said),
    PAGE_TEST (a_plan_past_its_day_is_said_to_be_expired),
    PAGE_TEST (a_tab_stands_only_where_there_is_something_in_it),
    PAGE_TEST (what_is_checked_is_counted),
    PAGE_TEST (a_load_that_hangs_free_is_shown_so),
    PAGE_TEST (a_new_plan_keeps_its_method_in_its_draft),
    PAGE_TEST (a_section_can_be_filled_from_the_register),
  };
  const struct CMUnitTest methods[] = {
    cmocka_unit_test (every_plan_names_facts_that_there_are),
    cmocka_unit_test (every_fact_has_its_place),
    PAGE_TEST (every_method_has_a_page),
    PAGE_TEST (a_new_item_can_be_chosen_of_every_kind),
  };
  const struct CMUnitTest demo_plans[] = {
    PAGE_TEST (every_plan_of_this_part_opens),
  };
  const struct CMUnitTest demo_dies[] = {
    PAGE_TEST (every_die_of_the_demo_opens),
  };
  const struct CMUnitTest parts[] = {
    PAGE_TEST (the_facts_of_a_step_open_inside_its_change),
    PAGE_TEST (what_is_wrong_in_a_step_leads_into_it),
    PAGE_TEST (a_step_takes_the_facts_of_a_task),
  };
  const struct CMUnitTest cases[] = {
    PAGE_TEST (every_case_of_the_demo_opens),
  };
  const char *which = argc > 1 ? argv[1] : "plans";
  SyStyleSheet *sheet;
  int failed;

  gtk_init ();
  (void) sy_look_get_resource ();
  sheet = sy_style_sheet_new (gdk_display_get_default (), "/org/steelyard/Steelyard/look", TRUE);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  if (argc > 2)
    plan_part = (guint) g_ascii_strtoull (argv[2], NULL, 10);
  failed = strcmp (which, "demo-plans") == 0   ? cmocka_run_group_tests (demo_plans, NULL, NULL)
           : strcmp (which, "parts") == 0        ? cmocka_run_group_tests (parts, NULL, NULL)
           : strcmp (which, "demo-cases") == 0   ? cmocka_run_group_tests (cases, NULL, NULL)
           : strcmp (which, "demo-dies") == 0    ? cmocka_run_group_tests (demo_dies, NULL, NULL)
           : strcmp (which, "methods") == 0      ? cmocka_run_group_tests (methods, NULL, NULL)
                                                 : cmocka_run_group_tests (plans, NULL, NULL);
  g_object_unref (sheet);
  return failed;
}
