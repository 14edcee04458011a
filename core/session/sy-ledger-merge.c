/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-deed.h"
#include "sy-json.h"
#include "sy-ledger-exchange-private.h"

/* What a bundle adds to a journal, and under which numbers. */

/* How many lines are looked at between two calls of the progress function (our choice). */
#define PROGRESS_LINES 64

/* An item as it is here, with what is to be added. */
typedef struct
{
  char *id, *kind, *name;
  char *name_here;     /* before the import; NULL: it is not here          */
  gint64 latest;       /* revision                                         */
  GHashTable *numbers; /* revision there → revision here, both gint64      */
} Item;

/* What bears an identity here. */
typedef struct
{
  SyHash identity; /* key */
  const Item *item;
  gint64 revision;
  guint64 number;       /* of its line here, 0: it comes from the bundle */
  const SyEvent *event; /* where it does                                 */
} Known;

typedef struct
{
  SyStore *store;
  const SyBundle *bundle;
  const SyWatch *watch;
  SyHead head;
  GHashTable *known;   /* set of Known                                               */
  GHashTable *bare;    /* set of SyHash: events of which the bundle has only hashes  */
  GHashTable *items;   /* id → Item                                                  */
  GHashTable *threads; /* id of an action or improvement → id of its item, both char * */
  GPtrArray *touched;  /* of Item, borrowed: those that a revision was added to      */
  SyMerge *out;
  GError *failed;
} Merge;

static guint
hash_hash (gconstpointer key)
{
  guint value;

  memcpy (&value, key, sizeof value);
  return value;
}

static gboolean
hash_equal (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, sizeof (SyHash)) == 0;
}

static void
item_free (gpointer data)
{
  Item *item = data;

  g_free (item->id);
  g_free (item->kind);
  g_free (item->name);
  g_free (item->name_here);
  g_hash_table_unref (item->numbers);
  g_free (item);
}

static Item *
begin_item (Merge *merge, const SyEvent *event)
{
  Item *item = g_new0 (Item, 1);

  item->id = g_strdup (event->item);
  item->kind = g_strdup (event->item_kind);
  item->name = g_strdup (event->name);
  item->numbers = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
  g_hash_table_insert (merge->items, item->id, item);
  return item;
}

/* 0: not known. */
static gint64
number_here (const Item *item, gint64 revision_there)
{
  const gint64 *here = g_hash_table_lookup (item->numbers, &revision_there);

  return here != NULL ? *here : 0;
}

static void
set_number (const Item *item, gint64 there, gint64 here)
{
  g_hash_table_insert (item->numbers, g_memdup2 (&there, sizeof there), g_memdup2 (&here, sizeof here));
}

static void
add_known (Merge *merge, const Known *known)
{
  g_hash_table_add (merge->known, g_memdup2 (known, sizeof *known));
}

/* What is begun once and goes on under an id. FALSE: the line belongs to none. */
static gboolean
read_thread (const SyEvent *event, char **id, gboolean *begins)
{
  SyDeed deed;

  if ((event->kind != SY_EVENT_ACTION && event->kind != SY_EVENT_IMPROVEMENT) || !sy_deed_read (event, &deed))
    return FALSE;
  *begins = deed.step == SY_STEP_OPEN || deed.step == SY_STEP_ADD;
  *id = g_strdup (event->kind == SY_EVENT_ACTION ? deed.action : deed.improvement);
  sy_deed_clear (&deed);
  return TRUE;
}

static void
note_thread (Merge *merge, const SyEvent *event)
{
  char *id;
  gboolean begins;

  if (!read_thread (event, &id, &begins))
    return;
  if (begins && !g_hash_table_contains (merge->threads, id))
    g_hash_table_insert (merge->threads, g_steal_pointer (&id), g_strdup (event->item));
  g_free (id);
}

/* A line of the journal here. */
static gboolean
take_own (const SyLine *line, gpointer user_data)
{
  Merge *merge = user_data;
  const SyEvent *event = line->event;
  Item *item = g_hash_table_lookup (merge->items, event->item);
  SyHash identity, own;

  if (line->number > merge->head.number)
    return FALSE;
  sy_event_identity (event, &identity);
  if (event->kind == SY_EVENT_REVISION)
    {
      if (item == NULL)
        item = begin_item (merge, event);
      item->latest = event->revision;
      sy_event_set (&item->name, event->name);
      sy_event_set (&item->name_here, event->name);

      /* This very line, of which the bundle has the hash only: its number is the same there. */
      own = identity;
      if (*event->origin != '\0')
        {
          g_autoptr (GBytes) bytes = sy_event_encode (event);

          sy_hash_of (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &own);
        }
      if (g_hash_table_contains (merge->bare, &own))
        set_number (item, event->revision, event->revision);
    }
  note_thread (merge, event);
  add_known (merge, &(Known) { .identity = identity, .item = item, .number = line->number,
                               .revision = event->kind == SY_EVENT_REVISION ? event->revision : 0 });
  return line->number % PROGRESS_LINES != 0
         || sy_watch (merge->watch, line->number, 2 * merge->head.number, &merge->failed);
}

G_GNUC_PRINTF (3, 4)
static gboolean
refuse (Merge *merge, const SyBundleLine *line, const char *format, ...)
{
  va_list arguments;
  g_autofree char *what = NULL;

  va_start (arguments, format);
  what = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (&merge->failed, SY_LEDGER_ERROR, SY_LEDGER_ERROR_BUNDLE,
               "Nothing was taken over. Line %" G_GUINT64_FORMAT " of the bundle: %s.", line->number, what);
  return FALSE;
}

static gboolean
check_event (Merge *merge, const SyBundleLine *line)
{
  g_autofree char *wrong = sy_merge_check_event (line->event);

  return wrong == NULL || refuse (merge, line, "%s", wrong);
}

/* The event as it is or, where its numbers are others here, as one that names its origin. */
static void
add_event (Merge *merge, const SyBundleLine *line, const Item *item, const SyHash *identity, gint64 revision, gint64 base)
{
  SyEvent *event = line->event;

  if (event->revision != revision || event->base != base)
    {
      g_autoptr (GBytes) bytes = sy_event_encode (event);
      g_autofree char *origin = sy_hash_text (identity);

      event = sy_event_decode (bytes, NULL);
      event->revision = revision;
      event->base = base;
      sy_event_set (&event->origin, origin);
      g_ptr_array_add (merge->out->owned, event);
    }
  g_ptr_array_add (merge->out->events, event);
  note_thread (merge, event);
  add_known (merge, &(Known) { .identity = *identity, .item = item, .revision = revision, .event = event });
}

static void
say_renumbered (Merge *merge, const Item *item, const SyEvent *event, gint64 revision, gint64 base)
{
  g_ptr_array_add (merge->out->conflicts,
                   g_strdup_printf ("%s “%s” (%s): revision %" G_GINT64_FORMAT " of the bundle is revision %" G_GINT64_FORMAT
                                    " here, made from revision %" G_GINT64_FORMAT
                                    "; this record has gone on by itself, and all are kept",
                                    item->kind, event->name, item->id, event->revision, revision, base));
}

static gboolean
check_revision (Merge *merge, const SyBundleLine *line, const Item *item)
{
  const SyEvent *event = line->event;

  if (event->revision < 1 || event->base < 0 || event->base >= event->revision)
    return refuse (merge, line, "expected a revision made from an earlier one, found %" G_GINT64_FORMAT " from %" G_GINT64_FORMAT,
                   event->revision, event->base);
  if (number_here (item, event->revision) != 0)
    return refuse (merge, line, "expected one revision %" G_GINT64_FORMAT " of “%s”, found another", event->revision,
                   event->name);
  /* Each line before it was held against this, too. */
  if (event->revision > 1 && number_here (item, event->revision - 1) == 0)
    return refuse (merge, line,
                   "expected revision %" G_GINT64_FORMAT " of “%s” before it, found it neither in the bundle nor here",
                   event->revision - 1, event->name);
  if (event->base > 0 && number_here (item, event->base) == 0)
    return refuse (merge, line,
                   "expected revision %" G_GINT64_FORMAT " of “%s”, from which it was made, found it neither in the "
                   "bundle nor here", event->base, event->name);
  return TRUE;
}

static gboolean
add_revision (Merge *merge, const SyBundleLine *line, Item *item, const SyHash *identity)
{
  const SyEvent *event = line->event;
  gint64 base;

  if (item == NULL)
    item = begin_item (merge, event);
  if (!check_revision (merge, line, item))
    return FALSE;
  base = event->base > 0 ? number_here (item, event->base) : 0;
  item->latest++;
  set_number (item, event->revision, item->latest);
  add_event (merge, line, item, identity, item->latest, base);
  if (event->revision != item->latest)
    say_renumbered (merge, item, event, item->latest, base);
  sy_event_set (&item->name, event->name);
  g_ptr_array_add (merge->touched, item);
  return TRUE;
}

/* It is begun once, before anything else is done about it, and belongs to one item. */
static gboolean
check_thread (Merge *merge, const SyBundleLine *line)
{
  const SyEvent *event = line->event;
  const gboolean is_action = event->kind == SY_EVENT_ACTION;
  g_autofree char *id = NULL;
  const char *item;
  gboolean begins;

  if (!read_thread (event, &id, &begins))
    return TRUE;
  item = g_hash_table_lookup (merge->threads, id);
  if (begins)
    return item == NULL
           || refuse (merge, line, is_action ? "expected the id of a new action, found %s, which was opened before"
                                             : "expected the id of a new improvement, found %s, which is there already", id);
  return g_strcmp0 (item, event->item) == 0
         || refuse (merge, line, is_action ? "expected an action that was opened about “%s” before, found %s"
                                           : "expected an improvement of “%s” from before, found %s", event->name, id);
}

/* What is about an item besides its revisions. */
static gboolean
add_about (Merge *merge, const SyBundleLine *line, const Item *item, const SyHash *identity)
{
  const SyEvent *event = line->event;
  gint64 revision = 0;

  if (item == NULL)
    return refuse (merge, line, "expected the item %s, which it is about, found it neither in the bundle nor here",
                   event->item);
  if (event->revision != 0)
    revision = number_here (item, event->revision);
  if (revision == 0 && event->revision != 0)
    return refuse (merge, line,
                   "expected revision %" G_GINT64_FORMAT " of “%s”, which it is about, found it neither in the bundle "
                   "nor here", event->revision, item->name);
  if (!check_thread (merge, line))
    return FALSE;
  add_event (merge, line, item, identity, revision, event->base);
  return TRUE;
}

/* What stays of a line wherever it goes: all but its numbers and its origin. */
static void
hash_content (const SyEvent *event, SyHash *out)
{
  g_autoptr (GBytes) bytes = sy_event_encode (event);
  g_autoptr (SyEvent) bare = sy_event_decode (bytes, NULL);
  g_autoptr (GBytes) content = NULL;

  bare->revision = bare->base = 0;
  sy_event_set (&bare->origin, "");
  content = sy_event_encode (bare);
  sy_hash_of (g_bytes_get_data (content, NULL), g_bytes_get_size (content), out);
}

static gboolean
hash_first (const SyLine *line, gpointer user_data)
{
  hash_content (line->event, user_data);
  return FALSE;
}

/* That one of the two bears the identity of the other only says so: it could be a forgery, of a line that is here or of one
   that it came before. */
static gboolean
check_same (Merge *merge, const SyBundleLine *line, const Known *known)
{
  SyHash here = { { 0 } }, there;

  if (known->event != NULL)
    hash_content (known->event, &here);
  else if (!sy_store_scan (merge->store, known->number, hash_first, &here, &merge->failed))
    return FALSE;
  hash_content (line->event, &there);
  if (hash_equal (&here, &there))
    return TRUE;
  return known->number == 0
           ? refuse (merge, line, "expected one line of this origin, found another that says something else")
           : refuse (merge, line, "expected what line %" G_GUINT64_FORMAT " here says, which bears the same origin, found "
                                  "something else; one of the two is forged", known->number);
}

/* One that is here already; a revision tells under which number. */
static gboolean
take_known (Merge *merge, const SyBundleLine *line, const Known *known)
{
  const SyEvent *event = line->event;
  gint64 here;

  if (event->kind != SY_EVENT_REVISION)
    return check_same (merge, line, known);
  if (known->item == NULL || strcmp (known->item->id, event->item) != 0 || known->revision == 0)
    return refuse (merge, line, "expected the origin of a revision of “%s”, found that of another line", event->name);
  if (!check_same (merge, line, known))
    return FALSE;
  here = number_here (known->item, event->revision);
  if (here != 0 && here != known->revision)
    return refuse (merge, line, "expected one revision %" G_GINT64_FORMAT " of “%s”, found another", event->revision,
                   event->name);
  set_number (known->item, event->revision, known->revision);
  return TRUE;
}

static gboolean
take_line (Merge *merge, const SyBundleLine *line)
{
  const SyEvent *event = line->event;
  const Known *known;
  Item *item;
  SyHash identity;

  if (event == NULL)
    {
      merge->out->hashes_only++;
      return TRUE;
    }
  if (event->kind == SY_EVENT_IMPORT)
    {
      merge->out->left++;
      return TRUE;
    }
  sy_event_identity (event, &identity);
  known = g_hash_table_lookup (merge->known, &identity);
  if (known != NULL)
    {
      merge->out->known++;
      return take_known (merge, line, known);
    }
  item = g_hash_table_lookup (merge->items, event->item);
  if (!check_event (merge, line))
    return FALSE;
  if (event->kind == SY_EVENT_POLICY)
    {
      add_event (merge, line, NULL, &identity, event->revision, event->base);
      return TRUE;
    }
  if (item != NULL && strcmp (item->kind, event->item_kind) != 0)
    return refuse (merge, line, "expected “%s” to be of the kind “%s” as it is here, found “%s”", item->name, item->kind,
                   event->item_kind);
  return event->kind == SY_EVENT_REVISION ? add_revision (merge, line, item, &identity)
                                          : add_about (merge, line, item, &identity);
}

static char *
name_key (const Item *item)
{
  return g_strconcat (item->kind, "\n", item->name, NULL);
}

/* Items that came, or got another name, and now share it with one of their kind. */
static void
say_same_names (Merge *merge)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);
  GHashTableIter iter;
  gpointer value;

  for (guint i = 0; i < merge->touched->len; i++)
    {
      const Item *item = merge->touched->pdata[i];

      if (g_strcmp0 (item->name, item->name_here) != 0)
        g_hash_table_insert (names, name_key (item), g_ptr_array_new ());
    }
  if (g_hash_table_size (names) == 0)
    return;
  g_hash_table_iter_init (&iter, merge->items);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      g_autofree char *key = name_key (value);
      GPtrArray *items = g_hash_table_lookup (names, key);

      if (items != NULL)
        g_ptr_array_add (items, value);
    }
  for (guint i = 0; i < merge->touched->len; i++)
    {
      const Item *item = merge->touched->pdata[i];
      g_autofree char *key = name_key (item);
      GPtrArray *items = g_hash_table_lookup (names, key);

      for (guint n = 0; items != NULL && n < items->len; n++)
        if (items->pdata[n] != item)
          g_ptr_array_add (merge->out->conflicts,
                           g_strdup_printf ("%s “%s”: two items have that name now, %s and, from the bundle, %s", item->kind,
                                            item->name, ((const Item *) items->pdata[n])->id, item->id));
      /* said once */
      g_hash_table_remove (names, key);
    }
}

static gboolean
take_bundle (Merge *merge)
{
  const GPtrArray *lines = merge->bundle->lines;

  for (guint i = 0; i < lines->len; i++)
    if (!take_line (merge, lines->pdata[i])
        || (i % PROGRESS_LINES == 0
            && !sy_watch (merge->watch, lines->len + i, 2 * (guint64) lines->len, &merge->failed)))
      return FALSE;
  return TRUE;
}

void
sy_merge_clear (SyMerge *merge)
{
  g_clear_pointer (&merge->events, g_ptr_array_unref);
  g_clear_pointer (&merge->owned, g_ptr_array_unref);
  g_clear_pointer (&merge->conflicts, g_ptr_array_unref);
}

gboolean
sy_merge_read (SyStore *store, const SyHead *head, const SyBundle *bundle, const SyWatch *watch, SyMerge *out,
               GError **error)
{
  g_autoptr (GHashTable) known = g_hash_table_new_full (hash_hash, hash_equal, g_free, NULL);
  g_autoptr (GHashTable) bare = g_hash_table_new (hash_hash, hash_equal);
  g_autoptr (GHashTable) items = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, item_free);
  g_autoptr (GHashTable) threads = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GPtrArray) touched = g_ptr_array_new ();
  Merge merge = { .store = store, .bundle = bundle, .watch = watch, .head = *head, .known = known, .bare = bare,
                  .items = items, .threads = threads, .touched = touched, .out = out };

  *out = (SyMerge) { .events = g_ptr_array_new (),
                     .owned = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free),
                     .conflicts = g_ptr_array_new_with_free_func (g_free) };
  for (guint i = 0; i < bundle->lines->len; i++)
    {
      SyBundleLine *line = bundle->lines->pdata[i];

      if (line->event == NULL)
        g_hash_table_add (bare, &line->event_hash);
    }
  if (sy_store_scan (store, 1, take_own, &merge, error) && merge.failed == NULL && take_bundle (&merge))
    {
      say_same_names (&merge);
      return TRUE;
    }
  if (merge.failed != NULL)
    g_propagate_error (error, merge.failed);
  sy_merge_clear (out);
  return FALSE;
}
