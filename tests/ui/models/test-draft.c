/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <sys/stat.h>

#include "sy-draft.h"
#include "sy-test-facts.h"

#define STORE "/somewhere/shop.store"

static char *home;

static void
set (SyDraft *draft, const char *path, const char *text)
{
  g_hash_table_insert (draft->texts, g_strdup (path), g_strdup (text));
}

static SyDraft *
new_draft (const char *id, gint64 saved_at)
{
  SyDraft *draft = sy_draft_new (id);

  g_free (draft->name);
  draft->name = g_strdup ("Blank to shear 2");
  draft->base = 3;
  draft->saved_at = saved_at;
  set (draft, "load.heaviest", "30 kg");
  set (draft, "origin.H", "wrong \"entry\"");
  set (draft, "notes", "two\nlines\tand \\ a tab, Ü€, \x01 and \xf0\x9f\xa7\xb0");
  set (draft, "sessions[0].work", " 12,5 ");
  set (draft, "place", "");
  return draft;
}

static void
assert_same (const SyDraft *a, const SyDraft *b)
{
  GHashTableIter iter;
  gpointer key, value;

  assert_string_equal (a->id, b->id);
  assert_string_equal (a->task, b->task);
  assert_string_equal (a->method, b->method);
  assert_string_equal (a->name, b->name);
  assert_string_equal (a->units, b->units);
  assert_int_equal (a->base, b->base);
  assert_int_equal (a->saved_at, b->saved_at);
  assert_int_equal (g_hash_table_size (a->texts), g_hash_table_size (b->texts));
  g_hash_table_iter_init (&iter, a->texts);
  while (g_hash_table_iter_next (&iter, &key, &value))
    {
      assert_non_null (g_hash_table_lookup (b->texts, key));
      assert_string_equal (value, g_hash_table_lookup (b->texts, key));
    }
}

/* The only file under the folder of drafts whose name ends so. New string. */
static char *
find_file (const char *folder, const char *suffix)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  char *found = NULL;

  while (dir != NULL && found == NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        found = find_file (path, suffix);
      else if (g_str_has_suffix (name, suffix))
        found = g_strdup (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  return found;
}

static void
every_text_comes_back_as_typed (void **state)
{
  g_autoptr (SyDraft) draft = new_draft ("task-1", 1700000000);
  g_autoptr (SyDraft) back = NULL;

  (void) state;
  assert_true (sy_draft_write (draft, STORE, NULL));
  back = sy_draft_read ("task-1", STORE, NULL);
  assert_non_null (back);
  assert_same (draft, back);
  sy_draft_remove ("task-1", STORE);
  assert_null (sy_draft_read ("task-1", STORE, NULL));
}

static void
only_its_owner_reads_it (void **state)
{
  g_autoptr (SyDraft) draft = new_draft ("task-1", 1);
  g_autofree char *path = NULL;
  g_autofree char *folder = NULL;
  struct stat info;

  (void) state;
  umask (0);
  assert_true (sy_draft_write (draft, STORE, NULL));
  path = find_file (home, ".json");
  assert_non_null (path);
  assert_int_equal (stat (path, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0600);
  folder = g_path_get_dirname (path);
  assert_int_equal (stat (folder, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0700);
  /* Written over, too. */
  assert_true (sy_draft_write (draft, STORE, NULL));
  assert_int_equal (stat (path, &info), 0);
  assert_int_equal (info.st_mode & 0777, 0600);
  sy_draft_remove ("task-1", STORE);
}

static void
none_is_no_error (void **state)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) list = sy_draft_list ("/nowhere/else.store");

  (void) state;
  assert_null (sy_draft_read ("never", STORE, &error));
  assert_null (error);
  assert_int_equal (list->len, 0);
}

static void
a_damaged_one_is_set_aside_with_every_byte (void **state)
{
  g_autoptr (SyDraft) draft = new_draft ("task-1", 1);
  g_autofree char *path = NULL, *whole = NULL;
  gsize length;

  (void) state;
  assert_true (sy_draft_write (draft, STORE, NULL));
  path = find_file (home, ".json");
  assert_true (g_file_get_contents (path, &whole, &length, NULL));

  /* Cut anywhere before its last bracket it is damaged, and never passes for a shorter draft. */
  for (gsize cut = 0; cut < length - 1; cut++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (SyDraft) back = NULL;
      g_autofree char *kept = NULL;
      gsize kept_length;

      assert_true (g_file_set_contents (path, whole, (gssize) cut, NULL));
      back = sy_draft_read ("task-1", STORE, &error);
      assert_null (back);
      assert_true (g_error_matches (error, SY_DRAFT_ERROR, SY_DRAFT_ERROR_DAMAGED));
      assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
      assert_true (g_file_get_contents (error->message, &kept, &kept_length, NULL));
      assert_int_equal (kept_length, cut);
      assert_memory_equal (kept, whole, cut);
      if (cut % 50 != 0)
        g_unlink (error->message);
    }
}

static void
damaged_ones_do_not_hide_one_another (void **state)
{
  g_autoptr (SyDraft) draft = new_draft ("task-2", 1);
  g_autoptr (GPtrArray) aside = NULL;
  g_autoptr (GPtrArray) before = sy_draft_list_set_aside (STORE);
  guint n = before->len;

  (void) state;
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *path = NULL;
      g_autoptr (GPtrArray) list = NULL;

      assert_true (sy_draft_write (draft, STORE, NULL));
      path = find_file (home, "task-2.json");
      assert_true (g_file_set_contents (path, i == 0 ? "" : i == 1 ? "[]" : "{\"steelyard-draft\":1}", -1, NULL));
      list = sy_draft_list (STORE);
      assert_int_equal (list->len, 0);
    }
  aside = sy_draft_list_set_aside (STORE);
  assert_int_equal (aside->len, n + 3);
}

static void
newest_first_and_each_store_its_own (void **state)
{
  g_autoptr (SyDraft) a = new_draft ("new-1", 10);
  g_autoptr (SyDraft) b = new_draft ("new-2", 30);
  g_autoptr (SyDraft) c = new_draft ("new-3", 20);
  g_autoptr (SyDraft) other = new_draft ("new-4", 40);
  g_autoptr (GPtrArray) list = NULL;

  (void) state;
  assert_true (sy_draft_write (a, STORE, NULL));
  assert_true (sy_draft_write (b, STORE, NULL));
  assert_true (sy_draft_write (c, STORE, NULL));
  assert_true (sy_draft_write (other, "/another.store", NULL));
  list = sy_draft_list ("/somewhere/../somewhere/shop.store");
  assert_int_equal (list->len, 3);
  assert_string_equal (((SyDraft *) list->pdata[0])->id, "new-2");
  assert_string_equal (((SyDraft *) list->pdata[1])->id, "new-3");
  assert_string_equal (((SyDraft *) list->pdata[2])->id, "new-1");
}

static void
an_id_cannot_leave_its_folder (void **state)
{
  const char *const ids[] = { "../../up", "..", ".hidden", "a/b", "name with blanks %2E" };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (SyDraft) draft = new_draft (ids[i], 1);
      g_autoptr (SyDraft) back = NULL;

      assert_true (sy_draft_write (draft, "/third.store", NULL));
      back = sy_draft_read (ids[i], "/third.store", NULL);
      assert_non_null (back);
      assert_same (draft, back);
    }
  {
    g_autoptr (GPtrArray) list = sy_draft_list ("/third.store");

    assert_int_equal (list->len, G_N_ELEMENTS (ids));
  }
}

static void
a_place_that_cannot_be_written_is_an_error (void **state)
{
  g_autoptr (SyDraft) draft = new_draft ("task-9", 1);
  g_autoptr (GError) error = NULL;
  g_autofree char *drafts = g_build_filename (home, "steelyard", NULL);
  g_autofree char *away = g_strconcat (drafts, "-away", NULL);

  (void) state;
  assert_int_equal (g_rename (drafts, away), 0);
  assert_true (g_file_set_contents (drafts, "in the way", -1, NULL));
  assert_false (sy_draft_write (draft, STORE, &error));
  assert_non_null (error);
  assert_int_equal (g_unlink (drafts), 0);
  assert_int_equal (g_rename (away, drafts), 0);
}

/* Drafts from before there were several methods do not say theirs. */
static void
a_draft_says_whose_facts_it_holds (void **state)
{
  static const char *const old = "{\"steelyard-draft\":1,\"id\":\"t9\",\"task\":\"t9\",\"name\":\"Old\",\"base\":1,"
                                 "\"units\":\"us\",\"saved_at\":5,\"texts\":{\"origin.H\":\"20\"}}";
  static const char *const wrong = "{\"steelyard-draft\":1,\"id\":\"t9\",\"task\":\"t9\",\"method\":7,\"name\":\"Old\","
                                   "\"base\":1,\"units\":\"us\",\"saved_at\":5,\"texts\":{}}";
  g_autoptr (SyDraft) draft = new_draft ("t9", 10);
  g_autoptr (SyDraft) read = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;

  (void) state;
  assert_string_equal (draft->method, "lift");
  g_free (draft->method);
  draft->method = g_strdup ("rigged-lift");
  assert_true (sy_draft_write (draft, "/elsewhere/methods.store", NULL));
  read = sy_draft_read ("t9", "/elsewhere/methods.store", NULL);
  assert_same (draft, read);
  path = find_file (home, "t9.json");
  assert_true (g_file_set_contents (path, old, -1, NULL));
  g_clear_pointer (&read, sy_draft_free);
  read = sy_draft_read ("t9", "/elsewhere/methods.store", NULL);
  assert_string_equal (read->method, "lift");
  assert_string_equal (g_hash_table_lookup (read->texts, "origin.H"), "20");
  assert_true (g_file_set_contents (path, wrong, -1, NULL));
  assert_null (sy_draft_read ("t9", "/elsewhere/methods.store", &error));
  assert_true (g_error_matches (error, SY_DRAFT_ERROR, SY_DRAFT_ERROR_DAMAGED));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (every_text_comes_back_as_typed),
    cmocka_unit_test (only_its_owner_reads_it),
    cmocka_unit_test (none_is_no_error),
    cmocka_unit_test (a_damaged_one_is_set_aside_with_every_byte),
    cmocka_unit_test (damaged_ones_do_not_hide_one_another),
    cmocka_unit_test (newest_first_and_each_store_its_own),
    cmocka_unit_test (an_id_cannot_leave_its_folder),
    cmocka_unit_test (a_place_that_cannot_be_written_is_an_error),
    cmocka_unit_test (a_draft_says_whose_facts_it_holds),
  };
  int failed;

  home = sy_test_home ();
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_test_remove_tree (home);
  g_free (home);
  return failed;
}
