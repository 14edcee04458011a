/* SPDX-License-Identifier: MIT */
#include <string.h>

#include <glib/gstdio.h>
#include <gtk/gtk.h>
#include <sqlite3.h>

#include "bench-lifts.h"
#include "sy-ledger-deeds.h"
#include "sy-store.h"
#include "sy-tasks-page.h"
#include "sy-task-view.h"

/*
 * bench-list [STORE]: a list of many tasks in the window's models and on a screen. A store that is not there is made, with
 * 100,000 tasks; without a name it is removed afterwards. Printed: filling the list against a bare SELECT of the same rows, a search against the bare query in the store's
 * index of words, changing the order against sorting as many plain numbers, and the frames of scrolling against those of a
 * bare column view of labels. What the main loop is held up by is measured as its longest turn.
 */

#define N_TASKS 100000
#define N_TEMPLATES 40
#define N_RUNS 7
#define N_FRAMES 120
#define FRAME_MS (1000.0 / 60)

/* Topics: a store */

static GPtrArray *
make_templates (void)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (GRand) random = g_rand_new_with_seed (7);
  GError *error = NULL;
  SyLedger *ledger = sy_ledger_open ("memory:", &error);
  GPtrArray *events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  for (int i = 0; i < N_TEMPLATES; i++)
    {
      g_autoptr (GString) facts = g_string_new (NULL);
      g_autofree char *name = g_strdup_printf ("template %d", i);
      SyRecordRequest request = { .task = name, .by = "A. Marsh", .why = "measured", .base = -1, .now = "2026-02-03T10:00:00Z" };
      SyRecordResult saved = { 0 };
      g_autoptr (GPtrArray) history = NULL;

      bench_lift_append (facts, random);
      if (!sy_ledger_record (ledger, desk, &request, facts->str, facts->len, problems, &saved, &error))
        g_error ("%s", error->message);
      history = sy_ledger_history (ledger, saved.task_id, SY_ITEM_TASK, &error);
      g_ptr_array_add (events, g_steal_pointer (&((SyRevision *) history->pdata[0])->event));
      sy_record_result_clear (&saved);
    }
  sy_ledger_close (ledger);
  return events;
}

static void
copy_event (SyEvent *to, const SyEvent *from)
{
  sy_event_set (&to->item_kind, from->item_kind);
  sy_event_set (&to->by, from->by);
  sy_event_set (&to->why, from->why);
  sy_event_set (&to->claimed, from->claimed);
  sy_event_set (&to->written, from->written);
  sy_event_set (&to->program, from->program);
  sy_event_set (&to->method, from->method);
  sy_event_set (&to->policy, from->policy);
  sy_event_set (&to->facts, from->facts);
  sy_event_set (&to->findings, from->findings);
  to->edition = from->edition;
  to->revision = 1;
}

static void
make_store (const char *path)
{
  static const char *const things[] = { "Blank", "Coil end", "Tray", "Ring", "Stripper plate", "Punch holder", "Scrap bin" };
  g_autoptr (GPtrArray) templates = make_templates ();
  GError *error = NULL;
  g_autoptr (SyStore) store = sy_store_open (path, &error);
  SyHead head = { 0 };

  if (store == NULL)
    g_error ("%s", error->message);
  for (int i = 0; i < N_TASKS; i += 2000)
    {
      g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);

      for (int k = i; k < i + 2000; k++)
        {
          SyEvent *event = sy_event_new (SY_EVENT_REVISION);
          g_autofree char *id = g_strdup_printf ("%08x-bench", k);
          g_autofree char *name = g_strdup_printf ("%s %d, press %d to pallet", things[k % 7], k, k % 60);

          copy_event (event, templates->pdata[k % N_TEMPLATES]);
          sy_event_set (&event->item, id);
          sy_event_set (&event->name, name);
          g_ptr_array_add (events, event);
        }
      if (!sy_store_append (store, &head, events, &head, &error))
        g_error ("%s", error->message);
    }
}

/* Topics: waiting and measuring */

static double longest_turn;

/* Until @done; the longest turn of the main loop is kept. */
static double
run_until (gboolean (*done) (gpointer data), gpointer data)
{
  const double start = bench_seconds ();

  while (!done (data))
    {
      const double turn = bench_seconds ();

      if (g_main_context_iteration (NULL, FALSE))
        longest_turn = MAX (longest_turn, bench_seconds () - turn);
      else
        g_usleep (50);
      if (bench_seconds () - start > 120)
        g_error ("nothing came");
    }
  return bench_seconds () - start;
}

static gboolean
is_loaded (gpointer list)
{
  return !sy_task_list_get_loading (list);
}

static gboolean
is_answered (gpointer view)
{
  return !sy_task_view_get_pending (view);
}

static guint
bare_query (sqlite3 *db, const char *sql, const char *argument, double *best)
{
  guint n = 0;

  for (int run = 0; run < N_RUNS; run++)
    {
      sqlite3_stmt *statement = NULL;
      const double start = bench_seconds ();

      if (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL) != SQLITE_OK)
        g_error ("%s", sqlite3_errmsg (db));
      if (argument != NULL)
        sqlite3_bind_text (statement, 1, argument, -1, SQLITE_STATIC);
      n = 0;
      while (sqlite3_step (statement) == SQLITE_ROW)
        {
          for (int i = 0; i < sqlite3_column_count (statement); i++)
            (void) sqlite3_column_blob (statement, i);
          n++;
        }
      sqlite3_finalize (statement);
      bench_keep_best (best, bench_seconds () - start);
    }
  return n;
}

/* Topics: the models */

static void
measure_searches (SyTaskView *view, sqlite3 *db)
{
  static const struct
  {
    const char *typed, *query;
  } words[] = { { "b", "b*" },       { "ri", "ri*" },           { "ring 4", "ring* AND 4*" },
                { "ring", "ring*" }, { "pallet", "pallet*" },   { "press 17", "press* AND 17*" },
                { "stripper 99", "stripper* AND 99*" }, { "zebra", "zebra*" } };

  puts ("search, as typed: milliseconds to the screen's model · bare query · times the query beyond 5 ms (reach: at most 3)");
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      double bare = G_MAXDOUBLE, whole = G_MAXDOUBLE;
      guint n = bare_query (db, "SELECT rowid FROM task_search WHERE task_search MATCH ?1", words[i].query, &bare);

      longest_turn = 0;
      for (int run = 0; run < N_RUNS; run++)
        {
          sy_task_view_search (view, words[i].typed);
          bench_keep_best (&whole, run_until (is_answered, view));
          if (run < N_RUNS - 1)
            sy_task_view_search (view, NULL);
        }
      if (g_list_model_get_n_items (G_LIST_MODEL (view)) != n)
        g_error ("“%s”: %u in the model, %u in the store", words[i].typed, g_list_model_get_n_items (G_LIST_MODEL (view)), n);
      printf ("  %-12s %6u rows %8.2f ms %8.2f ms %6.2f   longest turn %5.2f ms\n", words[i].typed, n, whole * 1e3, bare * 1e3,
              MAX (0, whole - 5e-3) / bare, longest_turn * 1e3);
      sy_task_view_search (view, NULL);
    }
}

static int
compare_doubles (const void *a, const void *b)
{
  const double left = *(const double *) a, right = *(const double *) b;

  return (left > right) - (left < right);
}

static void
measure_orders (SyTaskView *view, guint n)
{
  static const struct
  {
    const char *name;
    SyTaskColumn column;
  } columns[] = { { "name", SY_BY_NAME },   { "place", SY_BY_PLACE }, { "index", SY_BY_INDEX }, { "rank", SY_BY_RANK },
                  { "review", SY_BY_REVIEW }, { "day", SY_BY_DAY },     { "verdict", SY_BY_VERDICT } };
  g_autofree double *numbers = g_new (double, n);
  double bare = G_MAXDOUBLE;

  for (int run = 0; run < N_RUNS; run++)
    {
      g_autoptr (GRand) random = g_rand_new_with_seed (3);
      double start;

      for (guint i = 0; i < n; i++)
        numbers[i] = g_rand_double (random);
      start = bench_seconds ();
      qsort (numbers, n, sizeof *numbers, compare_doubles);
      bench_keep_best (&bare, bench_seconds () - start);
    }
  printf ("order of %u rows: milliseconds · times sorting as many numbers (%.2f ms)\n", n, bare * 1e3);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      double best = G_MAXDOUBLE;

      for (int run = 0; run < N_RUNS; run++)
        {
          const SyTaskKey key = { columns[i].column, run & 1 };
          const double start = bench_seconds ();

          sy_task_view_sort (view, &key, 1);
          bench_keep_best (&best, bench_seconds () - start);
        }
      printf ("  %-8s %8.2f ms %6.2f\n", columns[i].name, best * 1e3, best / bare);
    }
}

/* Topics: frames */

typedef struct
{
  GtkAdjustment *adjustment;
  double step; /* pixels a frame; a whole screen, or far away */
  double start, longest, sum;
  guint frames, late, missed;
} Scroll;

static void
before_cb (GdkFrameClock *clock, Scroll *scroll)
{
  double to = gtk_adjustment_get_value (scroll->adjustment) + scroll->step;
  double end = gtk_adjustment_get_upper (scroll->adjustment) - gtk_adjustment_get_page_size (scroll->adjustment);

  (void) clock;
  scroll->start = bench_seconds ();
  if (end > 0)
    gtk_adjustment_set_value (scroll->adjustment, to > end ? to - end : to);
}

static void
after_cb (GdkFrameClock *clock, Scroll *scroll)
{
  const double ms = (bench_seconds () - scroll->start) * 1e3;

  (void) clock;
  scroll->longest = MAX (scroll->longest, ms);
  scroll->sum += ms;
  scroll->frames++;
  scroll->late += ms > FRAME_MS;
  scroll->missed += ms > 2 * FRAME_MS;
}

static gboolean
has_frames (gpointer scroll)
{
  return ((Scroll *) scroll)->frames >= N_FRAMES;
}

static gboolean
never (gpointer end)
{
  return bench_seconds () > *(double *) end;
}

static void
settle (double seconds)
{
  double end = bench_seconds () + seconds;

  run_until (never, &end);
}

static void
scroll_by (const char *what, GtkWidget *scrolled, double step, double *longest)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (scrolled);
  Scroll scroll = { gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled)), step, 0, 0, 0, 0, 0, 0 };
  gulong before, after;

  gtk_adjustment_set_value (scroll.adjustment, 0);
  settle (0.3);
  before = g_signal_connect (clock, "before-paint", G_CALLBACK (before_cb), &scroll);
  after = g_signal_connect (clock, "after-paint", G_CALLBACK (after_cb), &scroll);
  gdk_frame_clock_begin_updating (clock);
  run_until (has_frames, &scroll);
  gdk_frame_clock_end_updating (clock);
  g_signal_handler_disconnect (clock, before);
  g_signal_handler_disconnect (clock, after);
  printf ("  %-22s mean %6.2f ms, longest %6.2f ms, %u over one frame, %u over two\n", what, scroll.sum / scroll.frames,
          scroll.longest, scroll.late, scroll.missed);
  *longest = scroll.longest;
}

/* Of the rows; choices have some of their own. */
static GtkWidget *
find_scrolled (GtkWidget *widget)
{
  if (GTK_IS_COLUMN_VIEW (widget))
    return gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_scrolled (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
measure_scrolling (const char *title, GtkWidget *child, double longest[3])
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scrolled = find_scrolled (child);

  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  longest_turn = 0;
  gtk_window_present (GTK_WINDOW (window));
  settle (1.5);
  printf ("%s: longest turn until it is there %.2f ms\n", title, longest_turn * 1e3);
  scroll_by ("by three rows a frame", scrolled, 100, &longest[0]);
  scroll_by ("by a screen a frame", scrolled, 560, &longest[1]);
  scroll_by ("far away each frame", scrolled, 777777, &longest[2]);
  gtk_window_destroy (GTK_WINDOW (window));
  settle (0.2);
}

static void
setup_label_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  GtkWidget *label = gtk_label_new (NULL);

  (void) factory, (void) user_data;
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_label_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer user_data)
{
  (void) factory, (void) user_data;
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

static GtkWidget *
new_bare (guint n_columns)
{
  GtkStringList *strings = gtk_string_list_new (NULL);
  GtkWidget *scrolled = gtk_scrolled_window_new (), *view;

  for (int i = 0; i < N_TASKS; i++)
    {
      g_autofree char *text = g_strdup_printf ("row %d of a bare list", i);

      gtk_string_list_append (strings, text);
    }
  view = gtk_column_view_new (GTK_SELECTION_MODEL (gtk_single_selection_new (G_LIST_MODEL (strings))));
  for (guint i = 0; i < n_columns; i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column = NULL;

      g_signal_connect (factory, "setup", G_CALLBACK (setup_label_cb), NULL);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_label_cb), NULL);
      column = gtk_column_view_column_new ("Bare", factory);
      gtk_column_view_column_set_fixed_width (column, 140);
      gtk_column_view_append_column (GTK_COLUMN_VIEW (view), column);
    }
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);
  return scrolled;
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("bench-list-XXXXXX", NULL);
  g_autofree char *made = g_build_filename (folder, "many.steelyard", NULL);
  const char *path = argc > 1 ? argv[1] : made;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autoptr (SyWorker) worker = NULL;
  g_autoptr (SyTaskList) list = NULL;
  g_autoptr (SyTaskView) view = NULL;
  const SyTaskKey by_rank = { SY_BY_RANK, TRUE };
  double filled, bare = G_MAXDOUBLE, own[3], others[3];
  sqlite3 *db = NULL;
  guint n;

  gtk_init ();
  setvbuf (stdout, NULL, _IOLBF, 0);
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    make_store (path);
  if (sqlite3_open_v2 (path, &db, SQLITE_OPEN_READONLY, NULL) != SQLITE_OK)
    g_error ("%s", sqlite3_errmsg (db));
  n = bare_query (db, "SELECT * FROM task", NULL, &bare);
  worker = sy_worker_new (path, desk);
  list = sy_task_list_new (worker);
  view = sy_task_view_new (list, SY_ITEM_TASK, &by_rank, 1);
  filled = run_until (is_loaded, list);
  printf ("filled with %u items after %.0f ms, on the worker's thread; a bare SELECT of them %.0f ms: %.2f times\n"
          "  longest turn of the main loop meanwhile %.2f ms\n",
          n, filled * 1e3, bare * 1e3, filled / bare, longest_turn * 1e3);
  measure_searches (view, db);
  measure_orders (view, g_list_model_get_n_items (G_LIST_MODEL (view)));
  puts ("scrolling, longest frames (reach: none misses more than one, 33 ms)");
  measure_scrolling ("a bare column view of labels", new_bare (8), others);
  measure_scrolling ("the list of tasks", sy_tasks_page_new (worker, list, SY_REGISTER_TASKS, SY_UNITS_METRIC), own);
  printf ("  the longest frames are %.2f, %.2f and %.2f times the bare view's\n", own[0] / others[0], own[1] / others[1],
          own[2] / others[2]);
  sqlite3_close (db);
  g_clear_object (&view);
  g_clear_object (&list);
  sy_worker_stop (worker);
  if (argc < 2)
    g_unlink (path);
  g_rmdir (folder);
  return 0;
}
