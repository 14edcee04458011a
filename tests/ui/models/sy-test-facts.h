/* SPDX-License-Identifier: MIT */
#ifndef SY_TEST_FACTS_H
#define SY_TEST_FACTS_H

#include <glib/gstdio.h>

#include "sy-test-wait.h"
#include "sy-worker.h"

/* A lift that can be recorded; @mass in kg. New string. */
static inline char *
sy_test_facts (double mass, const char *place)
{
  return g_strdup_printf ("{\"method\":\"lift\",\"units\":\"metric\",\"place\":\"%s\",\"avoid\":{\"possible\":\"no\","
                          "\"why\":\"single pieces\"},\"load\":{\"typical\":%g,\"heaviest\":%g},"
                          "\"origin\":{\"H\":40,\"V\":40,\"A\":0},\"destination\":{\"H\":40,\"V\":100,\"A\":0},"
                          "\"control_at_destination\":true,\"frequency\":1,\"duration\":\"moderate\","
                          "\"coupling\":\"fair\",\"lifts_per_day\":240,\"conditions\":[],"
                          "\"assigned\":\"mixed-adults\"}",
                          place, mass, mass);
}

/* The end of one call, whichever it was. */
typedef struct
{
  GAsyncResult *result;
  GThread *thread;
} SyTestAnswer;

static inline void
sy_test_answered (GObject *source G_GNUC_UNUSED, GAsyncResult *result, gpointer user_data)
{
  SyTestAnswer *answer = user_data;

  answer->result = g_object_ref (result);
  answer->thread = g_thread_self ();
}

static inline gboolean
sy_test_has_answer (gpointer user_data)
{
  return ((SyTestAnswer *) user_data)->result != NULL;
}

/* Saves @facts as an item of that name and waits for it. Return value: whether it was saved. */
static inline gboolean
sy_test_record (SyWorker *worker, const char *name, const char *facts, SyRecordResult *saved, GError **error)
{
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };
  gboolean done;

  request->task = g_strdup (name);
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("first look");
  request->base = -1;
  request->facts = g_strdup (facts);
  sy_worker_save_async (worker, request, NULL, sy_test_answered, &answer);
  if (!sy_test_until (sy_test_has_answer, &answer, 20000))
    return FALSE;
  done = sy_worker_save_finish (worker, answer.result, saved, error);
  g_object_unref (answer.result);
  return done;
}

/* The same of a lift. */
static inline gboolean
sy_test_save (SyWorker *worker, const char *name, double mass, SyRecordResult *saved, GError **error)
{
  g_autofree char *facts = sy_test_facts (mass, "bay 3");

  return sy_test_record (worker, name, facts, saved, error);
}

/* A die of one block on four points, and an item of gear. New strings. */
static inline char *
sy_test_die (double weighed, const char *machine)
{
  return g_strdup_printf ("{\"method\":\"die-mass\",\"units\":\"metric\",\"place\":\"rack\",\"machine\":\"%s\","
                          "\"storage\":\"bay 4\",\"weighed\":%g,\"bodies\":[{\"label\":\"block\",\"shape\":\"block\","
                          "\"size\":[400,300,100],\"at\":[0,0,50],\"material\":\"steel\"}],\"points\":["
                          "{\"label\":\"A\",\"at\":[-180,-130,100]},{\"label\":\"B\",\"at\":[180,-130,100]},"
                          "{\"label\":\"C\",\"at\":[180,130,100]},{\"label\":\"D\",\"at\":[-180,130,100]}],"
                          "\"halves\":[\"upper\",\"lower\"],\"ties\":[\"two straps\"]}",
                          machine, weighed);
}

static inline char *
sy_test_gear (const char *kind, const char *wll, const char *due, const char *serves)
{
  return g_strdup_printf ("{\"method\":\"gear\",\"units\":\"metric\",\"place\":\"hall\",\"kind\":\"%s\","
                          "\"identity\":\"X-1\",\"wll\":\"%s\",\"rated_as\":\"leg\",\"due\":\"%s\","
                          "\"serves\":[%s],\"storage\":\"hook 1\",\"condition\":\"good\"}",
                          kind, wll, due, serves);
}

/* A folder of its own for everything that the program keeps for a person; call first of all. */
static inline char *
sy_test_home (void)
{
  char *home = g_dir_make_tmp ("steelyard-test-XXXXXX", NULL);

  g_setenv ("XDG_CONFIG_HOME", home, TRUE);
  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_setenv ("XDG_STATE_HOME", home, TRUE);
  g_setenv ("XDG_CACHE_HOME", home, TRUE);
  return home;
}

static inline void
sy_test_remove_tree (const char *path)
{
  GDir *dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *child = g_build_filename (path, name, NULL);

      if (g_file_test (child, G_FILE_TEST_IS_DIR) && !g_file_test (child, G_FILE_TEST_IS_SYMLINK))
        sy_test_remove_tree (child);
      else
        g_unlink (child);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (path);
}

#endif
