/* SPDX-License-Identifier: MIT */
/* The page of a task on a disk that is full: what was typed stays, the page says why, and the save works once there is
   room. */
#include "sy-test.h"

#include <glib/gstdio.h>

#include "fault-vfs.h"
#include "sy-draft.h"
#include "sy-task-page.h"
#include "sy-test-page.h"
#include "sy-test-wait.h"

#define LIMIT_MS 30000

typedef struct
{
  char *folder, *path;
  SyWorker *worker;
  GtkWidget *window, *page;
  guint saved;
} Fixture;

static GtkWidget *
need (Fixture *fixture, const char *name)
{
  GtkWidget *widget = sy_test_find_shown (fixture->page, name);

  if (widget == NULL)
    fail_msg ("no widget is called %s", name);
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
assert_typed (Fixture *fixture, const char *name, const char *text)
{
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (need (fixture, name))), text);
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
says_the_disk_is_full (gpointer data)
{
  return strstr (gtk_label_get_text (GTK_LABEL (need (data, "saver-words"))), "the disk is full") != NULL;
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static int
set_up (void **state)
{
  Fixture *fixture = g_new0 (Fixture, 1);
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  fixture->folder = g_dir_make_tmp ("steelyard-form-XXXXXX", NULL);
  fixture->path = g_build_filename (fixture->folder, "record.steelyard", NULL);
  fixture->worker = sy_worker_new (fixture->path, desk);
  fixture->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1110, 670);
  fixture->page = sy_task_page_new (fixture->worker, "lift");
  g_signal_connect (fixture->page, "saved", G_CALLBACK (saved_cb), fixture);
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->page);
  sy_task_page_begin_new (SY_TASK_PAGE (fixture->page), SY_UNITS_METRIC, NULL);
  gtk_window_present (GTK_WINDOW (fixture->window));
  *state = fixture;
  return sy_test_until (is_mapped, fixture->page, LIMIT_MS) ? 0 : -1;
}

static int
tear_down (void **state)
{
  Fixture *fixture = *state;

  gtk_window_destroy (GTK_WINDOW (fixture->window));
  sy_worker_stop (fixture->worker);
  sy_test_settle ();
  g_object_unref (fixture->worker);
  g_unlink (fixture->path);
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture->path);
  g_free (fixture);
  return 0;
}

static void
enter_a_lift (Fixture *fixture)
{
  choose (fixture, "avoid.possible", 2);
  type (fixture, "name", "Blank to shear 9");
  choose (fixture, "assigned", 2);
  type (fixture, "load.typical", "30");
  type (fixture, "load.heaviest", "30,5");
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
  type (fixture, "by", "A. Tester");
  type (fixture, "why", "first measurement");
}

static void
what_was_typed_stays_when_a_save_fails (void **state)
{
  Fixture *fixture = *state;

  enter_a_lift (fixture);
  fault_vfs_arm (FAULT_WRITE, 1, SQLITE_FULL, FAULT_LASTING);
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  assert_true (sy_test_until (says_the_disk_is_full, fixture, LIMIT_MS));
  assert_true (fault_vfs_disarm ());
  assert_int_equal (fixture->saved, 0);
  assert_true (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
  assert_typed (fixture, "name", "Blank to shear 9");
  assert_typed (fixture, "load.heaviest", "30,5");
  assert_typed (fixture, "origin.V", "20");
  assert_typed (fixture, "by", "A. Tester");
  assert_typed (fixture, "why", "first measurement");
  /* there is room again */
  assert_true (gtk_widget_activate_action (fixture->page, "task.save", NULL));
  assert_true (sy_test_until (was_saved, fixture, LIMIT_MS));
  assert_false (sy_task_page_get_dirty (SY_TASK_PAGE (fixture->page)));
}

int
main (void)
{
  const struct CMUnitTest tests[]
    = { cmocka_unit_test_setup_teardown (what_was_typed_stays_when_a_save_fails, set_up, tear_down) };

  fault_vfs_install ();
  gtk_init ();
  return cmocka_run_group_tests_name ("form", tests, NULL, NULL);
}
