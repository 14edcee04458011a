/* SPDX-License-Identifier: MIT */
#ifndef STORE_HELP_H
#define STORE_HELP_H

#include "sy-test.h"

#include "sy-store.h"

/* What the tests of the store share: events with little in them, and calls that must work. */

static inline SyEvent *
help_policy (const char *facts)
{
  SyEvent *event = sy_event_new (SY_EVENT_POLICY);

  sy_event_set (&event->item_kind, "policy");
  sy_event_set (&event->name, "house rules");
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->facts, facts);
  return event;
}

/* @index, @lifts: JSON, such as "2.5" or "null"; @index "" is one without a limit. */
static inline SyEvent *
help_revision (const char *id, gint64 revision, const char *name, const char *verdict,
               const char *index, const char *lifts)
{
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);

  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, "task");
  sy_event_set (&event->name, name);
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->role, "safety lead");
  sy_event_set (&event->why, "measured");
  sy_event_set (&event->claimed, "2026-03-04T05:06:07Z");
  sy_event_set (&event->written, "2026-03-04T05:06:07Z");
  sy_event_set (&event->method, "lift");
  event->revision = revision;
  event->base = revision - 1;
  sy_event_set (&event->facts, "{\"units\":\"metric\",\"place\":\"Bay 12, Nähe Tor\"}");
  g_free (event->findings);
  event->findings = g_strdup_printf (
    "{\"index\":\"LI\",\"verdict\":\"%s\",\"quantities\":{\"LI\":{\"value\":%s,\"unit\":\"1\"%s},"
    "\"lifts_per_day\":{\"value\":%s,\"unit\":\"1\"},\"mass_each\":{\"value\":12.1,\"unit\":\"kg\"}},"
    "\"reasons\":[{\"id\":\"goal\",\"text\":\"The reach costs most\"}]}",
    verdict, *index != '\0' ? index : "null", *index != '\0' ? "" : ",\"state\":\"unbounded\"", lifts);
  return event;
}

/* The same for a die or gear, whose method has no lifts a day: without a rank. */
static inline SyEvent *
help_item (const char *item_kind, const char *id, gint64 revision, const char *name, const char *verdict)
{
  SyEvent *event = help_revision (id, revision, name, verdict, "0.5", "null");

  sy_event_set (&event->item_kind, item_kind);
  sy_event_set (&event->method, strcmp (item_kind, SY_ITEM_DIE) == 0 ? "die-mass" : item_kind);
  sy_event_set (&event->facts,
                "{\"units\":\"metric\",\"machine\":\"Press 4\",\"storage\":\"Rack C\",\"identity\":\"SH-07\","
                "\"kind\":\"shackle\",\"wll\":0.1,\"serves\":[\"Press 4\"],\"due\":\"2027-03-01\",\"withdrawn\":true}");
  g_free (event->findings);
  event->findings = g_strdup_printf (
    "{\"verdict\":\"%s\",\"quantities\":{\"mass_with_allowance\":{\"value\":0.3,\"unit\":\"kg\"},"
    "\"cg.x\":{\"value\":0.1,\"unit\":\"mm\"},\"cg.z\":{\"value\":-7,\"unit\":\"mm\"},"
    "\"valid_until\":{\"value\":\"2027-01-31\",\"unit\":\"date\"}}}",
    verdict);
  return event;
}

static inline SyEvent *
help_attachment (const char *id, const char *name)
{
  SyEvent *event = sy_event_new (SY_EVENT_ATTACHMENT);

  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, "task");
  sy_event_set (&event->name, name);
  sy_event_set (&event->by, "R. Example");
  sy_event_set (&event->facts, "{\"file\":\"photograph of the bay\"}");
  return event;
}

static inline SyHead
help_head (SyStore *store)
{
  g_autoptr (GError) error = NULL;
  SyHead head;

  assert_true (sy_store_head (store, &head, &error));
  assert_null (error);
  return head;
}

/* Appends and frees up to four events at the store's own head. */
static inline SyHead
help_append (SyStore *store, SyEvent *first, SyEvent *second, SyEvent *third, SyEvent *fourth)
{
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autoptr (GError) error = NULL;
  SyEvent *each[] = { first, second, third, fourth };
  SyHead head = help_head (store);

  for (int i = 0; i < 4 && each[i] != NULL; i++)
    g_ptr_array_add (events, each[i]);
  if (!sy_store_append (store, &head, events, &head, &error))
    fail_msg ("%s", error->message);
  return head;
}

/* Tries to append one event, which is freed, at a given head. */
static inline gboolean
help_try (SyStore *store, const SyHead *expected, SyEvent *event, GError **error)
{
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);

  g_ptr_array_add (events, event);
  return sy_store_append (store, expected, events, NULL, error);
}

static inline void
help_assert_error (const GError *error, SyStoreError code, const char *named)
{
  assert_non_null (error);
  if (!g_error_matches (error, SY_STORE_ERROR, (int) code))
    fail_msg ("other error: %s %d: %s", g_quark_to_string (error->domain), error->code,
              error->message);
  if (strstr (error->message, named) == NULL)
    {
      /* fail_msg goes on by longjmp, which makes the compiler see a path on which there is no text */
      print_error ("not named: ");
      print_error ("%s", named ? named : "nothing");
      fail ();
    }
}

/* Ids of tasks in their order: "b a c". */
static inline char *
help_ids (GPtrArray *tasks)
{
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < tasks->len; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? " " : "",
                            ((SyTask *) g_ptr_array_index (tasks, i))->id);
  return g_string_free (ids, FALSE);
}

static inline char *
help_list (SyStore *store, const SyTaskFilter *filter, guint limit)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) tasks = sy_store_list (store, filter, limit, &error);

  if (tasks == NULL)
    fail_msg ("%s", error->message);
  return help_ids (tasks);
}

static inline void
help_assert_list (SyStore *store, const SyTaskFilter *filter, guint limit, const char *expected)
{
  g_autofree char *ids = help_list (store, filter, limit);

  assert_string_equal (ids, expected);
}

static inline void
help_assert_search (SyStore *store, const char *search, const char *expected)
{
  const SyTaskFilter filter = { .search = search, .order = SY_ORDER_NAME };
  g_autofree char *ids = help_list (store, &filter, 0);

  if (strcmp (ids, expected) != 0)
    fail_msg ("search “%s” found “%s”, not “%s”", search, ids, expected);
}

/* A folder of its own for a test, and its removal with the files in it. */
static inline char *
help_new_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("steelyard-store-XXXXXX", &error);

  assert_non_null (folder);
  return folder;
}

static inline void
help_remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      assert_int_equal (remove (path), 0);
    }
  assert_int_equal (remove (folder), 0);
}

/* Topics: one store a test, over each backend */

typedef struct
{
  SyStore *store;
  char *folder; /* NULL for memory */
} HelpFixture;

static inline int
help_set_up_memory (void **state)
{
  HelpFixture *fixture = g_new0 (HelpFixture, 1);

  fixture->store = sy_store_open ("memory:", NULL);
  *state = fixture;
  return fixture->store != NULL ? 0 : -1;
}

static inline int
help_set_up_sqlite (void **state)
{
  HelpFixture *fixture = g_new0 (HelpFixture, 1);
  g_autofree char *path = NULL;

  fixture->folder = help_new_folder ();
  path = g_build_filename (fixture->folder, "record.steelyard", NULL);
  fixture->store = sy_store_open (path, NULL);
  *state = fixture;
  return fixture->store != NULL ? 0 : -1;
}

static inline int
help_tear_down (void **state)
{
  HelpFixture *fixture = *state;

  sy_store_close (fixture->store);
  if (fixture->folder != NULL)
    help_remove_folder (fixture->folder);
  g_free (fixture->folder);
  g_free (fixture);
  return 0;
}

#endif
