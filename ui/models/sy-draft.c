/* SPDX-License-Identifier: MIT */
#include "sy-draft.h"

#include <glib/gstdio.h>
#include <string.h>

#include "sy-json.h"

#define SUFFIX ".json"
#define DAMAGED ".damaged-"
#define EDITION 1
/* The method of drafts that do not say one. */
#define FIRST_METHOD "lift"

G_DEFINE_QUARK (sy-draft-error-quark, sy_draft_error)

SyDraft *
sy_draft_new (const char *id)
{
  SyDraft *draft = g_new0 (SyDraft, 1);

  draft->id = g_strdup (id);
  draft->task = g_strdup ("");
  draft->method = g_strdup (FIRST_METHOD);
  draft->name = g_strdup ("");
  draft->units = g_strdup ("metric");
  draft->texts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  draft->longs = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_bytes_unref);
  return draft;
}

void
sy_draft_free (SyDraft *draft)
{
  if (draft == NULL)
    return;
  g_free (draft->id);
  g_free (draft->task);
  g_free (draft->method);
  g_free (draft->name);
  g_free (draft->units);
  g_hash_table_unref (draft->texts);
  g_hash_table_unref (draft->longs);
  g_free (draft);
}

/* The same store has one folder, however its path was written. */
static char *
drafts_folder (const char *store_uri)
{
  g_autofree char *path = g_canonicalize_filename (store_uri, NULL);
  g_autofree char *hash = g_compute_checksum_for_string (G_CHECKSUM_SHA256, path, -1);

  hash[16] = '\0';
  return g_build_filename (g_get_user_state_dir (), "steelyard", "drafts", hash, NULL);
}

static char *
draft_path (const char *folder, const char *id)
{
  g_autofree char *escaped = g_uri_escape_string (id, NULL, FALSE);
  g_autofree char *file = g_strconcat (escaped, SUFFIX, NULL);

  /* An id may begin with a dot; its file must neither hide nor climb. */
  if (file[0] == '.')
    {
      g_autofree char *shown = g_strconcat ("%2E", file + 1, NULL);

      return g_build_filename (folder, shown, NULL);
    }
  return g_build_filename (folder, file, NULL);
}

static int
compare_keys (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* Long lists as they are, for they are JSON. */
static void
write_longs (GString *out, GHashTable *longs)
{
  GHashTableIter iter;
  gpointer path, json;
  gboolean any = FALSE;

  if (g_hash_table_size (longs) == 0)
    return;
  g_string_append (out, ",\"longs\":{");
  g_hash_table_iter_init (&iter, longs);
  while (g_hash_table_iter_next (&iter, &path, &json))
    {
      gsize size;
      const char *text = g_bytes_get_data (json, &size);

      g_string_append (out, any ? ",\n" : "\n");
      any = TRUE;
      sy_json_write_text (out, path);
      g_string_append_c (out, ':');
      g_string_append_len (out, text, (gssize) size);
    }
  g_string_append_c (out, '}');
}

static char *
draft_text (const SyDraft *draft, gsize *length)
{
  GString *out = g_string_new (NULL);
  g_autofree gpointer *keys = NULL;
  guint n;

  g_string_append_printf (out, "{\"steelyard-draft\":%d,\"id\":", EDITION);
  sy_json_write_text (out, draft->id);
  g_string_append (out, ",\"task\":");
  sy_json_write_text (out, draft->task);
  g_string_append (out, ",\"method\":");
  sy_json_write_text (out, draft->method);
  g_string_append (out, ",\"name\":");
  sy_json_write_text (out, draft->name);
  g_string_append_printf (out, ",\"base\":%" G_GINT64_FORMAT ",\"units\":", draft->base);
  sy_json_write_text (out, draft->units);
  g_string_append_printf (out, ",\"saved_at\":%" G_GINT64_FORMAT ",\"texts\":{", draft->saved_at);
  keys = g_hash_table_get_keys_as_array (draft->texts, &n);
  qsort (keys, n, sizeof keys[0], compare_keys);
  for (guint i = 0; i < n; i++)
    {
      g_string_append (out, i == 0 ? "\n" : ",\n");
      sy_json_write_text (out, keys[i]);
      g_string_append_c (out, ':');
      sy_json_write_text (out, g_hash_table_lookup (draft->texts, keys[i]));
    }
  g_string_append_c (out, '}');
  write_longs (out, draft->longs);
  g_string_append (out, "}\n");
  *length = out->len;
  return g_string_free (out, FALSE);
}

/* NULL: not a draft as this program writes it. */
static SyDraft *
draft_from_text (const char *text, gsize length)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  /* The facts may be as long as a document by themselves. */
  const SyJson *root = sy_json_scan (text, length, 2 * SY_JSON_DOCUMENT_MAX, memory, problems);
  const char *id, *task, *method, *name, *units;
  const SyJson *texts, *longs;
  g_autoptr (SyDraft) draft = NULL;

  if (root == NULL)
    return NULL;
  id = sy_json_member_text (root, "id");
  task = sy_json_member_text (root, "task");
  method = sy_json_member_text (root, "method");
  name = sy_json_member_text (root, "name");
  units = sy_json_member_text (root, "units");
  texts = sy_json_member (root, "texts");
  if ((int) sy_json_member_number (root, "steelyard-draft", 0) != EDITION || id == NULL || *id == '\0'
      || task == NULL || (method == NULL && sy_json_member (root, "method") != NULL) || name == NULL
      || units == NULL || texts == NULL
      || texts->type != SY_JSON_OBJECT)
    return NULL;

  draft = sy_draft_new (id);
  g_free (draft->task);
  draft->task = g_strdup (task);
  if (method != NULL)
    {
      g_free (draft->method);
      draft->method = g_strdup (method);
    }
  g_free (draft->name);
  draft->name = g_strdup (name);
  g_free (draft->units);
  draft->units = g_strdup (units);
  draft->base = (gint64) sy_json_member_number (root, "base", 0);
  draft->saved_at = (gint64) sy_json_member_number (root, "saved_at", 0);
  for (const SyJson *item = texts->first; item != NULL; item = item->next)
    {
      if (item->type != SY_JSON_TEXT)
        return NULL;
      g_hash_table_insert (draft->texts, g_strdup (item->key), g_strdup (item->text));
    }
  longs = sy_json_member (root, "longs");
  for (const SyJson *item = longs != NULL ? longs->first : NULL; item != NULL; item = item->next)
    {
      if (item->type != SY_JSON_ARRAY || item->key == NULL)
        return NULL;
      g_hash_table_insert (draft->longs, g_strdup (item->key), g_bytes_new (item->raw, item->raw_length));
    }
  return g_steal_pointer (&draft);
}

/* Moves a file that cannot be read out of the way, under a name that nothing has yet. */
static void
set_aside (const char *path, GError **error)
{
  g_autofree char *to = NULL;

  for (int i = 1;; i++)
    {
      g_free (to);
      to = g_strdup_printf ("%s" DAMAGED "%d", path, i);
      if (!g_file_test (to, G_FILE_TEST_EXISTS))
        break;
    }
  if (g_rename (path, to) != 0)
    {
      g_set_error (error, SY_DRAFT_ERROR, SY_DRAFT_ERROR_DAMAGED, "%s", path);
      return;
    }
  g_set_error (error, SY_DRAFT_ERROR, SY_DRAFT_ERROR_DAMAGED, "%s", to);
}

static SyDraft *
read_path (const char *path, GError **error)
{
  g_autofree char *text = NULL;
  gsize length;
  GError *why = NULL;
  SyDraft *draft;

  if (!g_file_get_contents (path, &text, &length, &why))
    {
      if (g_error_matches (why, G_FILE_ERROR, G_FILE_ERROR_NOENT))
        g_error_free (why);
      else
        g_propagate_error (error, why);
      return NULL;
    }
  draft = draft_from_text (text, length);
  if (draft == NULL)
    set_aside (path, error);
  return draft;
}

gboolean
sy_draft_write (const SyDraft *draft, const char *store_uri, GError **error)
{
  g_autofree char *folder = drafts_folder (store_uri);
  g_autofree char *path = draft_path (folder, draft->id);
  gsize length;
  g_autofree char *text = draft_text (draft, &length);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      int code = errno;

      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (code), "%s: %s", folder,
                   g_strerror (code));
      return FALSE;
    }
  return g_file_set_contents_full (path, text, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT, 0600,
                                   error);
}

SyDraft *
sy_draft_read (const char *id, const char *store_uri, GError **error)
{
  g_autofree char *folder = drafts_folder (store_uri);
  g_autofree char *path = draft_path (folder, id);

  return read_path (path, error);
}

void
sy_draft_remove (const char *id, const char *store_uri)
{
  g_autofree char *folder = drafts_folder (store_uri);
  g_autofree char *path = draft_path (folder, id);

  g_unlink (path);
}

static int
compare_newest_first (gconstpointer a, gconstpointer b)
{
  const SyDraft *first = *(const SyDraft *const *) a, *second = *(const SyDraft *const *) b;

  if (first->saved_at != second->saved_at)
    return first->saved_at < second->saved_at ? 1 : -1;
  return strcmp (first->id, second->id);
}

GPtrArray *
sy_draft_list (const char *store_uri)
{
  GPtrArray *drafts = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_draft_free);
  g_autofree char *folder = drafts_folder (store_uri);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  /* Names first: reading may rename. */
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, SUFFIX))
      g_ptr_array_add (names, g_build_filename (folder, name, NULL));
  for (guint i = 0; i < names->len; i++)
    {
      SyDraft *draft = read_path (names->pdata[i], NULL);

      if (draft != NULL)
        g_ptr_array_add (drafts, draft);
    }
  g_ptr_array_sort (drafts, compare_newest_first);
  return drafts;
}

GPtrArray *
sy_draft_list_set_aside (const char *store_uri)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *folder = drafts_folder (store_uri);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (strstr (name, SUFFIX DAMAGED) != NULL)
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  return paths;
}
