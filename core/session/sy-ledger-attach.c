/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-json.h"
#include "sy-ledger-private.h"

#define NAME_BYTES_MAX 255

/* What the JSON around a content in base64, which takes four letters for three bytes, may come to at most. */
#define DOCUMENT_MAX (SY_ATTACHMENT_MAX / 3 * 4 + 64u * 1024u)

/* Registered media types; of anything else it is only said that it is bytes. */
static const struct
{
  const char *ending, *media;
} media_types[] = {
  { ".csv", "text/csv" },         { ".jpeg", "image/jpeg" },      { ".jpg", "image/jpeg" },
  { ".json", "application/json" }, { ".pdf", "application/pdf" }, { ".png", "image/png" },
  { ".stl", "model/stl" },        { ".svg", "image/svg+xml" },    { ".tif", "image/tiff" },
  { ".tiff", "image/tiff" },      { ".txt", "text/plain" },       { ".webp", "image/webp" },
};

static const char *
media_of (const char *name)
{
  g_autofree char *lower = g_ascii_strdown (name, -1);

  for (gsize i = 0; i < G_N_ELEMENTS (media_types); i++)
    if (g_str_has_suffix (lower, media_types[i].ending))
      return media_types[i].media;
  return "application/octet-stream";
}

static gboolean
is_file_name (const char *name)
{
  if (strlen (name) > NAME_BYTES_MAX || strcmp (name, ".") == 0 || strcmp (name, "..") == 0)
    return FALSE;
  for (const char *at = name; *at != '\0'; at = g_utf8_next_char (at))
    if (*at == '/' || g_unichar_iscntrl (g_utf8_get_char (at)))
      return FALSE;
  return TRUE;
}

static gboolean
check_request (const SyAttachRequest *request, gsize size, GError **error)
{
  const SyLedgerText texts[] = {
    { "item", request->item, TRUE, FALSE }, { "file", request->name, TRUE, FALSE }, { "by", request->by, TRUE, TRUE },
    { "why", request->why, TRUE, FALSE },   { "role", request->role, FALSE, TRUE },
  };

  if (!sy_ledger_check_texts (texts, G_N_ELEMENTS (texts), error))
    return FALSE;
  if (!is_file_name (request->name))
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_FILE,
                   "file: given “%s”; allowed: the name of a file without folders, at most %d bytes", request->name,
                   NAME_BYTES_MAX);
      return FALSE;
    }
  if (size == 0 || size > SY_ATTACHMENT_MAX)
    {
      g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_FILE,
                   "%s: given %s bytes; allowed: 1 to %u", request->name, size == 0 ? "0" : "more", SY_ATTACHMENT_MAX);
      return FALSE;
    }
  return TRUE;
}

static char *
sha256_of (GBytes *content)
{
  SyHash hash;
  gsize size;
  gconstpointer data = g_bytes_get_data (content, &size);

  sy_hash_of (data, size, &hash);
  return sy_hash_text (&hash);
}

static char *
write_facts (const char *name, GBytes *content)
{
  GString *out = g_string_new ("{\"file\":");
  gsize size;
  const guint8 *data = g_bytes_get_data (content, &size);
  g_autofree char *sha256 = sha256_of (content);
  g_autofree char *letters = g_base64_encode (data, size);

  sy_json_write_text (out, name);
  g_string_append_printf (out, ",\"media\":\"%s\",\"bytes\":%" G_GSIZE_FORMAT ",\"sha256\":\"%s\",\"content\":\"",
                          media_of (name), size, sha256);
  g_string_append (out, letters);
  g_string_append (out, "\"}");
  return g_string_free (out, FALSE);
}

static const SyJson *
scan_facts (const SyEvent *event, SyMemory *memory)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);

  return sy_json_scan (event->facts, strlen (event->facts), DOCUMENT_MAX, memory, problems);
}

/* NULL document: one that cannot be read, of which there is nothing to tell but the line. */
static SyAttachment *
make_attachment (const SyEvent *event, const SyJson *document)
{
  SyAttachment *attachment = g_new0 (SyAttachment, 1);
  const char *media = document != NULL ? sy_json_member_text (document, "media") : NULL;
  const char *sha256 = document != NULL ? sy_json_member_text (document, "sha256") : NULL;
  double bytes = document != NULL ? sy_json_member_number (document, "bytes", 0) : 0;

  attachment->item = g_strdup (event->item);
  attachment->name = g_strdup (event->name);
  attachment->media = g_strdup (media != NULL ? media : "");
  attachment->bytes = bytes >= 0 && bytes <= SY_ATTACHMENT_MAX ? (guint64) bytes : 0;
  attachment->sha256 = g_strdup (sha256 != NULL ? sha256 : "");
  attachment->when = g_strdup (event->claimed);
  attachment->by = g_strdup (event->by);
  attachment->role = g_strdup (event->role);
  attachment->why = g_strdup (event->why);
  return attachment;
}

void
sy_attachment_free (SyAttachment *attachment)
{
  if (attachment == NULL)
    return;
  g_free (attachment->item);
  g_free (attachment->name);
  g_free (attachment->media);
  g_free (attachment->sha256);
  g_free (attachment->when);
  g_free (attachment->by);
  g_free (attachment->role);
  g_free (attachment->why);
  g_free (attachment);
}

/* A file on its way into the record. */
typedef struct
{
  const SyAttachRequest *request;
  const char *facts;
  SyEvent *event; /* set with @head when it is there */
  SyHead head;
} Attaching;

static gboolean
write_attachment (SyStore *store, gpointer data, GError **error)
{
  Attaching *attaching = data;
  const SyAttachRequest *request = attaching->request;
  const SyLedgerAuthor author = { request->by, request->role, request->why, request->now, request->clock_set };
  g_autoptr (GPtrArray) events = g_ptr_array_new ();
  g_autoptr (SyEvent) made = NULL;
  g_autoptr (SyTask) item = NULL;
  SyHead seen;

  if (!sy_store_head (store, &seen, error))
    return FALSE;
  item = sy_store_find (store, request->item, request->item_kind, error);
  if (item == NULL)
    return FALSE;
  made = sy_ledger_begin_event (SY_EVENT_ATTACHMENT, &author);
  sy_event_set (&made->item, item->id);
  sy_event_set (&made->item_kind, item->item_kind);
  sy_event_set (&made->name, request->name);
  sy_event_set (&made->facts, attaching->facts);
  g_ptr_array_add (events, made);
  if (!sy_store_append (store, &seen, events, &attaching->head, error))
    return FALSE;
  attaching->event = g_steal_pointer (&made);
  return TRUE;
}

SyAttachment *
sy_ledger_attach (SyLedger *ledger, const SyAttachRequest *request, GBytes *content, GError **error)
{
  g_autofree char *facts = NULL;
  g_autoptr (SyMemory) memory = NULL;
  Attaching attaching = { .request = request };
  SyAttachment *attachment;

  if (!check_request (request, g_bytes_get_size (content), error))
    return NULL;
  facts = write_facts (request->name, content);
  attaching.facts = facts;
  if (!sy_ledger_write (ledger, write_attachment, &attaching, error))
    return NULL;
  memory = sy_memory_new ();
  attachment = make_attachment (attaching.event, scan_facts (attaching.event, memory));
  attachment->line = attaching.head.number;
  attachment->hash = attaching.head.hash;
  sy_event_free (attaching.event);
  return attachment;
}

static gboolean
add_attachment (const SyLine *line, gpointer user_data)
{
  GPtrArray *attachments = user_data;
  g_autoptr (SyMemory) memory = sy_memory_new ();
  SyAttachment *attachment = make_attachment (line->event, scan_facts (line->event, memory));

  attachment->line = line->number;
  attachment->hash = line->hash;
  g_ptr_array_add (attachments, attachment);
  return TRUE;
}

GPtrArray *
sy_ledger_attachments (SyLedger *ledger, const char *item, const char *item_kind, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (GPtrArray) attachments = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_attachment_free);
  g_autoptr (SyTask) found = sy_store_find (store, item, item_kind, error);

  if (found == NULL
      || !sy_store_scan_item (store, found->id, SY_EVENT_ATTACHMENT, add_attachment, attachments, error))
    return NULL;
  return g_steal_pointer (&attachments);
}

/* Which attachment is looked for, and its facts once it is found. */
typedef struct
{
  const char *name;
  guint64 line;
  SyEvent *event; /* with nothing in it but the facts */
  guint64 found;
} Wanted;

static gboolean
keep_wanted (const SyLine *line, gpointer user_data)
{
  Wanted *wanted = user_data;

  if (strcmp (line->event->name, wanted->name) != 0 || (wanted->line != 0 && wanted->line != line->number))
    return TRUE;
  sy_event_set (&wanted->event->facts, line->event->facts);
  wanted->found = line->number;
  return TRUE;
}

/* The content, when it has the size and the hash that the document names, else NULL. @actual receives the hash of what there
   is; new string. */
static GBytes *
read_content (const SyJson *document, char **actual)
{
  const char *letters = document != NULL ? sy_json_member_text (document, "content") : NULL;
  const char *sha256 = document != NULL ? sy_json_member_text (document, "sha256") : NULL;
  g_autoptr (GBytes) content = NULL;
  guchar *data;
  gsize size;

  data = letters != NULL ? g_base64_decode (letters, &size) : NULL;
  content = data != NULL ? g_bytes_new_take (data, size) : g_bytes_new (NULL, 0);
  *actual = sha256_of (content);
  if (letters != NULL && g_strcmp0 (*actual, sha256) == 0
      && sy_json_member_number (document, "bytes", -1) == (double) g_bytes_get_size (content))
    return g_steal_pointer (&content);
  return NULL;
}

static GBytes *
take_content (const Wanted *wanted, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *document = scan_facts (wanted->event, memory);
  const char *sha256 = document != NULL ? sy_json_member_text (document, "sha256") : NULL;
  g_autofree char *actual = NULL;
  GBytes *content = read_content (document, &actual);

  if (content == NULL)
    g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_CONTENT,
                 "“%s” (line %" G_GUINT64_FORMAT " of the journal) is not what was attached: the record names the "
                 "SHA-256 %s, the content has %s.",
                 wanted->name, wanted->found, sha256 != NULL ? sha256 : "of nothing", actual);
  return content;
}

gboolean
sy_ledger_attachment_holds (const SyEvent *event)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *document = scan_facts (event, memory);
  const char *file = document != NULL ? sy_json_member_text (document, "file") : NULL;
  g_autofree char *actual = NULL;
  g_autoptr (GBytes) content = read_content (document, &actual);

  return content != NULL && g_strcmp0 (file, event->name) == 0 && *event->name != '\0' && is_file_name (event->name);
}

GBytes *
sy_ledger_attachment_content (SyLedger *ledger, const char *item, const char *item_kind, const char *name,
                              guint64 line, GError **error)
{
  SyStore *store = sy_ledger_store (ledger);
  g_autoptr (SyTask) found = sy_store_find (store, item, item_kind, error);
  g_autoptr (SyEvent) event = sy_event_new (SY_EVENT_ATTACHMENT);
  Wanted wanted = { .name = name, .line = line, .event = event };

  if (found == NULL
      || !sy_store_scan_item (store, found->id, SY_EVENT_ATTACHMENT, keep_wanted, &wanted, error))
    return NULL;
  if (wanted.found != 0)
    return take_content (&wanted, error);
  g_set_error (error, SY_LEDGER_ERROR, SY_LEDGER_ERROR_NO_FILE, "“%s” has no file “%s” attached to it.", found->name,
               name);
  return NULL;
}
