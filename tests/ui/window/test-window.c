/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <glib/gstdio.h>

#include "sy-application.h"
#include "sy-registers.h"
#include "sy-settings.h"
#include "sy-task-page.h"
#include "sy-tasks-page.h"
#include "sy-test-tree.h"
#include "sy-test-wait.h"
#include "sy-window.h"

static SyApplication *application;

static GtkWidget *
new_window (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = sy_worker_new ("memory:", desk);
  GtkWidget *window = sy_window_new (GTK_APPLICATION (application), worker);

  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (window);
  return window;
}

static gboolean
is_gone (gpointer data)
{
  return *(gpointer *) data == NULL;
}

/* Closes a window and holds it to leave nothing of itself behind. */
static void
end_window (GtkWidget *window)
{
  gpointer gone = window;

  g_object_add_weak_pointer (G_OBJECT (window), &gone);
  gtk_window_destroy (GTK_WINDOW (window));
  assert_true (sy_test_until (is_gone, &gone, 20000));
}

/* The group in which a detailed action lives, as the window resolves it. */
static GActionGroup *
find_group (GtkWidget *window, const char *prefix)
{
  if (g_str_equal (prefix, "app"))
    return G_ACTION_GROUP (application);
  if (g_str_equal (prefix, "win"))
    return G_ACTION_GROUP (window);
  return NULL;
}

static void
assert_action (GtkWidget *window, const char *detailed, GVariant *given)
{
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = given != NULL ? g_variant_ref (given) : NULL;
  g_auto (GStrv) parts = NULL;
  GActionGroup *group;
  const GVariantType *type;

  if (target != NULL)
    name = g_strdup (detailed);
  else if (!g_action_parse_detailed_name (detailed, &name, &target, NULL))
    fail_msg ("%s is no action's name", detailed);
  parts = g_strsplit (name, ".", 2);
  group = find_group (window, parts[0]);
  if (group == NULL || !g_action_group_has_action (group, parts[1]))
    {
      fail_msg ("there is no action %s", name);
      return;
    }
  type = g_action_group_get_action_parameter_type (group, parts[1]);
  if ((type == NULL) != (target == NULL)
      || (target != NULL && !g_variant_is_of_type (target, type)))
    fail_msg ("%s has another target than its action takes", detailed);
}

static guint
walk_menu (GtkWidget *window, GMenuModel *menu)
{
  guint n = 0;

  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autoptr (GVariant) action = g_menu_model_get_item_attribute_value (menu, i, G_MENU_ATTRIBUTE_ACTION,
                                                                           G_VARIANT_TYPE_STRING);
      g_autoptr (GVariant) target = g_menu_model_get_item_attribute_value (menu, i, G_MENU_ATTRIBUTE_TARGET, NULL);
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SUBMENU);

      if (action != NULL)
        {
          assert_action (window, g_variant_get_string (action, NULL), target);
          n++;
        }
      else
        assert_null (target);
      n += section != NULL ? walk_menu (window, section) : 0;
      n += submenu != NULL ? walk_menu (window, submenu) : 0;
    }
  return n;
}

static void
every_item_of_the_menu_does_something (void **state)
{
  GtkWidget *window = new_window ();
  g_autoptr (GMenuModel) menu = sy_window_menu_model ();

  (void) state;
  assert_true (walk_menu (window, menu) >= 9);
  end_window (window);
}

static void
every_shortcut_does_something (void **state)
{
  GtkWidget *window = new_window ();
  g_auto (GStrv) names = gtk_application_list_action_descriptions (GTK_APPLICATION (application));
  const char *const wanted[] = { "<Control>n", "<Control>s", "<Control>z",      "<Control><Shift>z",
                                 "<Control>f", "<Alt>Left",  "<Control>u",      "<Control>p",
                                 "<Control>w", "<Control>q", "<Control>question" };

  (void) state;
  assert_true (g_strv_length (names) >= 11);
  for (gsize i = 0; names[i] != NULL; i++)
    assert_action (window, names[i], NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_auto (GStrv) actions = gtk_application_get_actions_for_accel (GTK_APPLICATION (application), wanted[i]);

      if (g_strv_length (actions) != 1)
        fail_msg ("%s belongs to %u actions", wanted[i], g_strv_length (actions));
    }
  end_window (window);
}

typedef struct
{
  GtkWidget *window;
  GHashTable *titles; /* the overview holds each twice: once to be searched */
} Walk;

static gboolean
check_shortcut (GtkWidget *widget, gpointer data)
{
  Walk *walk = data;
  g_autofree char *action = NULL, *accelerator = NULL, *title = NULL;

  if (!GTK_IS_SHORTCUTS_SHORTCUT (widget))
    return FALSE;
  g_object_get (widget, "action-name", &action, "accelerator", &accelerator, "title", &title, NULL);
  assert_non_null (title);
  assert_true (*title != '\0');
  if (action != NULL && *action != '\0')
    {
      g_auto (GStrv) accels = gtk_application_get_accels_for_action (GTK_APPLICATION (application), action);

      assert_action (walk->window, action, NULL);
      if (g_strv_length (accels) == 0)
        fail_msg ("the overview shows %s, which has no shortcut", action);
    }
  else
    assert_non_null (accelerator);
  g_hash_table_add (walk->titles, g_steal_pointer (&title));
  return FALSE;
}

static void
the_overview_shows_what_there_is (void **state)
{
  GtkWidget *window = new_window ();
  GtkShortcutsWindow *overview = gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window));
  g_auto (GStrv) names = gtk_application_list_action_descriptions (GTK_APPLICATION (application));
  g_autoptr (GHashTable) titles = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Walk walk = { .window = window, .titles = titles };

  (void) state;
  assert_non_null (overview);
  sy_test_find (GTK_WIDGET (overview), check_shortcut, &walk);
  /* Every action with a shortcut is there, and Escape, F6 and F10, which are no actions; back is shown with Escape. Besides, six
     keys that hold only in a list of steps. */
  assert_int_equal (g_hash_table_size (titles), g_strv_length (names) + 2 + 6);
  end_window (window);
}

static guint
check_names (GtkWidget *widget)
{
  guint n = 0;

  if (sy_test_is_control (widget) && gtk_widget_get_mapped (widget) && gtk_widget_get_focusable (widget))
    {
      if (!sy_test_is_named (widget))
        fail_msg ("%s (%s) in %s has no name", G_OBJECT_TYPE_NAME (widget), gtk_widget_get_name (widget),
                  G_OBJECT_TYPE_NAME (gtk_widget_get_parent (widget)));
      n = 1;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += check_names (child);
  return n;
}

static void
every_control_of_every_page_has_a_name (void **state)
{
  GtkWidget *window = new_window ();
  const char *const pages[] = { "tasks", "survey", "limits" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      assert_true (gtk_widget_activate_action (window, "win.page", "s", pages[i]));
      assert_string_equal (sy_window_get_page (SY_WINDOW (window)), pages[i]);
      gtk_test_widget_wait_for_draw (window);
      assert_true (check_names (window) >= 4);
    }
  end_window (window);
}

static gboolean
action_enabled (GtkWidget *window, const char *name)
{
  return g_action_group_get_action_enabled (G_ACTION_GROUP (window), name);
}

static void
a_task_opens_in_the_place_of_the_list_and_goes_back (void **state)
{
  GtkWidget *window = new_window ();

  (void) state;
  assert_false (action_enabled (window, "save"));
  assert_false (action_enabled (window, "undo"));
  assert_false (action_enabled (window, "back"));
  assert_true (gtk_widget_activate_action (window, "win.new", NULL));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "task");
  assert_true (SY_IS_TASK_PAGE (sy_window_get_task_page (SY_WINDOW (window))));
  assert_true (action_enabled (window, "save"));
  assert_true (action_enabled (window, "undo"));
  assert_true (gtk_widget_activate_action (window, "win.back", NULL));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "tasks");
  assert_null (sy_window_get_task_page (SY_WINDOW (window)));
  assert_false (action_enabled (window, "save"));
  end_window (window);
}

/* Whoever goes through a list all day comes back to it. */
static void
back_leads_to_the_page_that_it_was_opened_from (void **state)
{
  static const char *const pages[] = { "actions", "improvements", "journal", "register", "changeovers", "tasks" };
  GtkWidget *window = new_window ();

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      assert_true (gtk_widget_activate_action (window, "win.page", "s", pages[i]));
      assert_true (gtk_widget_activate_action (window, i % 2 == 0 ? "win.open-follow-up" : "win.open-history", "s",
                                               "0123456789abcdef0123456789abcdef"));
      assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "task");
      assert_true (gtk_widget_activate_action (window, "win.back", NULL));
      assert_string_equal (sy_window_get_page (SY_WINDOW (window)), pages[i]);
    }
  /* So does the comparison of the two that an improvement is between. */
  assert_true (gtk_widget_activate_action (window, "win.page", "s", "improvements"));
  assert_true (gtk_widget_activate_action (window, "win.compare-both", "(sxsx)", "0123456789abcdef0123456789abcdef",
                                           (gint64) 1, "0123456789abcdef0123456789abcdef", (gint64) 2));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "compare");
  assert_true (gtk_widget_activate_action (window, "win.back", NULL));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "improvements");
  end_window (window);
}

/* What is begun is chosen, a lift first; it opens in the place of the list too. */
static void
what_is_begun_is_chosen (void **state)
{
  GtkWidget *window = new_window ();
  GtkWidget *lift;
  g_autofree char *title = NULL;

  (void) state;
  assert_true (gtk_widget_activate_action (window, "win.choose-new", NULL));
  gtk_test_widget_wait_for_draw (window);
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "new");
  assert_true (action_enabled (window, "back"));
  assert_false (action_enabled (window, "save"));
  lift = sy_test_find_name (window, "new:lift");
  assert_non_null (lift);
  assert_ptr_equal (gtk_root_get_focus (GTK_ROOT (window)), lift);
  assert_true (gtk_widget_activate_action (window, "win.back", NULL));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "tasks");
  assert_true (gtk_widget_activate_action (window, "win.new-item", "s", "rigged-lift"));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "task");
  g_object_get (sy_window_get_task_page (SY_WINDOW (window)), "title", &title, NULL);
  assert_string_equal (title, "New lift plan");
  /* A method that is not there begins nothing. */
  gtk_widget_activate_action (window, "win.back", NULL);
  gtk_widget_activate_action (window, "win.new-item", "s", "no-such-method");
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "tasks");
  end_window (window);
}

typedef struct
{
  char *id;
  gboolean done;
} Saved;

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Saved *saved = user_data;
  SyRecordResult made = { 0 };
  g_autoptr (GError) error = NULL;

  if (!sy_worker_save_finish (SY_WORKER (source), result, &made, &error))
    fail_msg ("not saved: %s", error->message);
  saved->id = g_strdup (made.task_id);
  saved->done = TRUE;
  sy_record_result_clear (&made);
}

static gboolean
is_saved (gpointer data)
{
  return ((Saved *) data)->done;
}

static gboolean
shows_task (gpointer window)
{
  return g_str_equal (sy_window_get_page (window), "task");
}

/* The facts are those of the earlier one, also what stands inside a step; the name is not, and the keyboard is on it. */
static void
a_new_one_begins_from_an_earlier_one (void **state)
{
  static const char facts[]
    = "{\"method\":\"changeover\",\"units\":\"metric\",\"machine\":\"Press 3\",\"people\":[\"Ann\",\"Ben\"],"
      "\"steps\":[{\"label\":\"Stop\",\"kind\":\"isolate\",\"when\":\"stopped\",\"minutes\":3,\"checks\":[\"isolated\"]},"
      "{\"label\":\"Lift\",\"kind\":\"lift\",\"when\":\"stopped\",\"minutes\":2,"
      "\"facts\":{\"method\":\"lift\",\"load\":{\"typical\":10,\"heaviest\":10},\"origin\":{\"H\":30,\"V\":75,\"A\":0},"
      "\"destination\":{\"H\":30,\"V\":90,\"A\":0},\"coupling\":\"good\",\"frequency\":1,\"duration\":\"short\"}}]}";
  GtkWidget *window = new_window (), *page, *name;
  SySaveRequest *request = sy_save_request_new ();
  Saved saved = { NULL, FALSE };
  g_autofree char *title = NULL;
  SyForm *form;

  (void) state;
  request->task = g_strdup ("Press 3, flange to tray");
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("walked through");
  request->is_new = TRUE;
  request->base = -1;
  request->facts = g_strdup (facts);
  sy_worker_save_async (sy_window_get_worker (SY_WINDOW (window)), request, NULL, saved_cb, &saved);
  assert_true (sy_test_until (is_saved, &saved, 20000));

  assert_true (gtk_widget_activate_action (window, "win.new-from-item", "s", saved.id));
  assert_true (sy_test_until (shows_task, window, 20000));
  page = sy_window_get_task_page (SY_WINDOW (window));
  form = sy_task_page_get_form (SY_TASK_PAGE (page));
  assert_string_equal (sy_form_get_method (form)->id, "changeover");
  assert_string_equal (sy_form_get (form, "machine"), "Press 3");
  assert_string_equal (sy_form_get (form, "steps[0].label"), "Stop");
  assert_non_null (strstr (sy_form_get (form, "steps[1].facts"), "\"heaviest\""));
  assert_string_equal (sy_form_get (form, "notes"), "Begun from “Press 3, flange to tray”, revision 1.");
  assert_null (sy_task_page_get_item (SY_TASK_PAGE (page)));
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (page)));
  name = sy_test_find_name (page, "name");
  assert_non_null (name);
  assert_true (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (window)), name)
               || gtk_root_get_focus (GTK_ROOT (window)) == name);
  sy_task_page_discard (SY_TASK_PAGE (page));

  /* In the list of changeovers there is no doubt what is begun. */
  assert_true (gtk_widget_activate_action (window, "win.page", "s", "changeovers"));
  assert_true (gtk_widget_activate_action (window, "win.choose-new", NULL));
  assert_string_equal (sy_window_get_page (SY_WINDOW (window)), "task");
  g_object_get (sy_window_get_task_page (SY_WINDOW (window)), "title", &title, NULL);
  assert_string_equal (title, "New changeover");
  g_free (saved.id);
  end_window (window);
}

/* A place for which there is no method is not there, by no way. */
static void
every_list_has_its_place (void **state)
{
  GtkWidget *window = new_window ();

  (void) state;
  for (int i = 0; i < SY_N_REGISTERS; i++)
    {
      const char *page = sy_register_page ((SyRegister) i)->page;
      GtkWidget *place = sy_test_find_name (window, page);

      assert_int_equal (place != NULL, sy_register_is_offered ((SyRegister) i));
      gtk_widget_activate_action (window, "win.page", "s", page);
      assert_int_equal (g_str_equal (sy_window_get_page (SY_WINDOW (window)), page), place != NULL);
    }
  end_window (window);
}

static void
what_the_page_of_a_task_is_asked_for_it_knows (void **state)
{
  GtkWidget *window = new_window ();
  GtkWidget *page;

  (void) state;
  gtk_widget_activate_action (window, "win.new", NULL);
  page = sy_window_get_task_page (SY_WINDOW (window));
  assert_true (gtk_widget_activate_action (page, "task.units", NULL));
  assert_true (gtk_widget_activate_action (page, "task.save", NULL));
  end_window (window);
}

static void
units_of_new_tasks_are_kept (void **state)
{
  GtkWidget *window = new_window ();
  g_autoptr (GVariant) first = NULL;
  g_autoptr (GVariant) second = NULL;
  g_autoptr (GVariant) again = NULL;

  (void) state;
  gtk_widget_activate_action (window, "win.default-units", "s", "metric");
  first = g_action_group_get_action_state (G_ACTION_GROUP (window), "default-units");
  assert_string_equal (g_variant_get_string (first, NULL), "metric");
  gtk_widget_activate_action (window, "win.units", NULL);
  second = g_action_group_get_action_state (G_ACTION_GROUP (window), "default-units");
  assert_string_equal (g_variant_get_string (second, NULL), "us");
  end_window (window);

  window = new_window ();
  again = g_action_group_get_action_state (G_ACTION_GROUP (window), "default-units");
  assert_string_equal (g_variant_get_string (again, NULL), "us");
  gtk_widget_activate_action (window, "win.default-units", "s", "metric");
  end_window (window);
}

static void
style_can_be_chosen (void **state)
{
  GtkWidget *window = new_window ();
  gboolean dark = FALSE;

  (void) state;
  g_action_group_activate_action (G_ACTION_GROUP (application), "style", g_variant_new_string ("dark"));
  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark, NULL);
  assert_true (dark);
  g_action_group_activate_action (G_ACTION_GROUP (application), "style", g_variant_new_string ("light"));
  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark, NULL);
  assert_false (dark);
  end_window (window);
}

static GtkWidget *
find_dialog (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (toplevels, i);

      if (GTK_IS_MESSAGE_DIALOG (window))
        return window;
    }
  return NULL;
}

static gboolean
is_dirty (gpointer page)
{
  return sy_task_page_get_dirty (page);
}

/* A window with a new task in which something is typed. */
static GtkWidget *
new_dirty_window (void)
{
  GtkWidget *window = new_window ();
  GtkWidget *page, *entry;

  gtk_widget_activate_action (window, "win.new", NULL);
  gtk_test_widget_wait_for_draw (window);
  page = sy_window_get_task_page (SY_WINDOW (window));
  entry = sy_test_find_name (page, "load.heaviest");
  assert_non_null (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), "30 kg");
  assert_true (sy_test_until (is_dirty, page, 20000));
  return window;
}

static guint
count_drafts (void)
{
  g_autoptr (GPtrArray) drafts = sy_draft_list ("memory:");

  return drafts->len;
}

static void
closing_with_unsaved_changes_asks (void **state)
{
  GtkWidget *window = new_dirty_window ();
  gpointer gone = window;
  guint before;

  (void) state;
  g_object_add_weak_pointer (G_OBJECT (window), &gone);
  gtk_window_close (GTK_WINDOW (window));
  assert_non_null (find_dialog ());
  /* Asked once, however often the window is told to close. */
  gtk_window_close (GTK_WINDOW (window));

  /* Thinking better of it keeps everything as it was. */
  gtk_window_close (GTK_WINDOW (find_dialog ()));
  sy_test_settle ();
  assert_non_null (gone);
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (sy_window_get_task_page (SY_WINDOW (window)))));

  /* Kept as a draft it is offered the next time. */
  gtk_window_close (GTK_WINDOW (window));
  gtk_dialog_response (GTK_DIALOG (find_dialog ()), 1);
  assert_true (sy_test_until (is_gone, &gone, 20000));
  before = count_drafts ();
  assert_true (before >= 1);
  window = new_window ();
  assert_true (sy_test_shows (window, "Not saved yet"));
  end_window (window);
}

static void
discarding_leaves_no_draft (void **state)
{
  guint before = count_drafts ();
  GtkWidget *window = new_dirty_window ();
  gpointer gone = window;

  (void) state;
  g_object_add_weak_pointer (G_OBJECT (window), &gone);
  gtk_window_close (GTK_WINDOW (window));
  gtk_dialog_response (GTK_DIALOG (find_dialog ()), 0);
  assert_true (sy_test_until (is_gone, &gone, 20000));
  assert_int_equal (count_drafts (), before);
}

static void
going_back_keeps_what_was_typed (void **state)
{
  guint before = count_drafts ();
  GtkWidget *window = new_dirty_window ();

  (void) state;
  gtk_widget_activate_action (window, "win.back", NULL);
  assert_int_equal (count_drafts (), before + 1);
  assert_true (sy_test_shows (window, "Not saved yet"));
  end_window (window);
}

static void
it_fits_a_small_screen (void **state)
{
  GtkWidget *window = new_window ();
  int minimum_width, minimum_height;

  (void) state;
  gtk_widget_activate_action (window, "win.new", NULL);
  gtk_test_widget_wait_for_draw (window);
  gtk_widget_measure (window, GTK_ORIENTATION_HORIZONTAL, -1, &minimum_width, NULL, NULL, NULL);
  gtk_widget_measure (window, GTK_ORIENTATION_VERTICAL, 1280, &minimum_height, NULL, NULL, NULL);
  assert_in_range (minimum_width, 1, 1280);
  assert_in_range (minimum_height, 1, 720);
  end_window (window);
}

static void
the_default_store_has_a_folder_of_its_owner (void **state)
{
  g_autofree char *store = sy_application_default_store (NULL);
  g_autofree char *folder = g_path_get_dirname (store);
  GStatBuf info;

  (void) state;
  assert_true (g_str_has_prefix (store, g_get_user_data_dir ()));
  assert_int_equal (g_stat (folder, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0700);
}

/* The region of this person is in force in a record that is opened, and brings its units. */
static void
a_record_is_opened_in_the_region_that_was_chosen (void **state)
{
  const char *const regions[] = { "us", "nowhere", "" }, *const policies[] = { "steelyard-default-us", "steelyard-default",
                                                                               "steelyard-default" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (regions); i++)
    {
      GtkWindow *window;

      assert_true (sy_settings_set (SY_SETTING_REGION, regions[i], NULL));
      g_application_activate (G_APPLICATION (application));
      window = gtk_application_get_windows (GTK_APPLICATION (application))->data;
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      assert_string_equal (sy_desk_policy (sy_worker_get_desk (sy_window_get_worker (SY_WINDOW (window))))->id, policies[i]);
      end_window (GTK_WIDGET (window));
    }
}

/* Every name of a widget becomes a quark, and past 4096 of them GLib leaves a table behind that the leak check reports (of the
   first one tests/support/keep-quarks.c takes care). So what opens many pages runs in processes of its own. */
int
main (int argc, char **argv)
{
  const struct CMUnitTest pages[] = {
    cmocka_unit_test (every_control_of_every_page_has_a_name),
  };
  const struct CMUnitTest places[] = {
    cmocka_unit_test (back_leads_to_the_page_that_it_was_opened_from),
  };
  const struct CMUnitTest chosen[] = {
    cmocka_unit_test (what_is_begun_is_chosen),
  };
  const struct CMUnitTest begun[] = {
    cmocka_unit_test (a_new_one_begins_from_an_earlier_one),
    cmocka_unit_test (every_list_has_its_place),
    cmocka_unit_test (a_record_is_opened_in_the_region_that_was_chosen),
  };
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_item_of_the_menu_does_something),
    cmocka_unit_test (every_shortcut_does_something),
    cmocka_unit_test (the_overview_shows_what_there_is),
    cmocka_unit_test (a_task_opens_in_the_place_of_the_list_and_goes_back),
    cmocka_unit_test (what_the_page_of_a_task_is_asked_for_it_knows),
    cmocka_unit_test (units_of_new_tasks_are_kept),
    cmocka_unit_test (style_can_be_chosen),
    cmocka_unit_test (closing_with_unsaved_changes_asks),
    cmocka_unit_test (discarding_leaves_no_draft),
    cmocka_unit_test (going_back_keeps_what_was_typed),
    cmocka_unit_test (it_fits_a_small_screen),
    cmocka_unit_test (the_default_store_has_a_folder_of_its_owner),
  };
  const char *which = argc > 1 ? argv[1] : "";
  int failed;

  g_setenv ("STEELYARD_TEST", "1", TRUE);
  g_set_prgname (SY_APPLICATION_ID);
  g_set_application_name ("Steelyard");
  application = sy_application_new ();
  g_application_register (G_APPLICATION (application), NULL, NULL);
  failed = g_str_equal (which, "pages")    ? cmocka_run_group_tests (pages, NULL, NULL)
           : g_str_equal (which, "begun")  ? cmocka_run_group_tests (begun, NULL, NULL)
           : g_str_equal (which, "chosen") ? cmocka_run_group_tests (chosen, NULL, NULL)
           : g_str_equal (which, "places") ? cmocka_run_group_tests (places, NULL, NULL)
                                           : cmocka_run_group_tests (tests, NULL, NULL);
  g_object_unref (application);
  return failed;
}
