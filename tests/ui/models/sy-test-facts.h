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

/* Saves a new task and waits for it. Return value: whether it was saved. */
static inline gboolean
sy_test_save (SyWorker *worker, const char *name, double mass, SyRecordResult *saved, GError **error)
{
  SySaveRequest *request = sy_save_request_new ();
  SyTestAnswer answer = { NULL, NULL };
  gboolean done;

  request->task = g_strdup (name);
  request->by = g_strdup ("A. Tester");
  request->why = g_strdup ("first look");
  request->base = -1;
  request->facts = sy_test_facts (mass, "bay 3");
  sy_worker_save_async (worker, request, NULL, sy_test_answered, &answer);
  if (!sy_test_until (sy_test_has_answer, &answer, 20000))
    return FALSE;
  done = sy_worker_save_finish (worker, answer.result, saved, error);
  g_object_unref (answer.result);
  return done;
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
