/* SPDX-License-Identifier: MIT */
#include "sy-deed.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-json.h"
#include "sy-method.h"

#define ID_DIGITS 16
/* Up to here a double counts every whole number. */
#define COUNT_MAX 9007199254740992.0

/* What a member of a document is, and with it what is refused. */
typedef enum
{
  MEMBER_TEXT,      /* any text                        */
  MEMBER_SAID,      /* a text that is not blank        */
  MEMBER_HASH,      /* 64 hex digits                   */
  MEMBER_ID,        /* 16 hex digits                   */
  MEMBER_ITEM_KIND, /* SY_ITEM_TASK …                  */
  MEMBER_DATE,
  MEMBER_DATE_OR_NONE,
  MEMBER_STEP,
  MEMBER_TRIGGER,
  MEMBER_FLAG,
  MEMBER_COUNT,
} MemberType;

typedef struct
{
  const char *name;
  MemberType type;
  gsize offset;
} Member;

#define OF(member) G_STRUCT_OFFSET (SyDeed, member)

static const Member signature[] = {
  { "line_hash", MEMBER_HASH, OF (line_hash) },
  { "competence", MEMBER_TEXT, OF (competence) },
};

static const Member action_open[] = {
  { "step", MEMBER_STEP, OF (step) },       { "action", MEMBER_ID, OF (action) },
  { "what", MEMBER_SAID, OF (what) },       { "about", MEMBER_TEXT, OF (about) },
  { "assigned", MEMBER_TEXT, OF (assigned) }, { "due", MEMBER_DATE_OR_NONE, OF (due) },
};

static const Member action_assign[] = {
  { "step", MEMBER_STEP, OF (step) },
  { "action", MEMBER_ID, OF (action) },
  { "assigned", MEMBER_TEXT, OF (assigned) },
  { "due", MEMBER_DATE_OR_NONE, OF (due) },
};

static const Member action_close[] = {
  { "step", MEMBER_STEP, OF (step) },
  { "action", MEMBER_ID, OF (action) },
  { "evidence", MEMBER_SAID, OF (evidence) },
};

static const Member review[] = {
  { "trigger", MEMBER_TRIGGER, OF (trigger) },
  { "due", MEMBER_DATE, OF (due) },
};

static const Member retirement[] = {
  { "retired", MEMBER_FLAG, OF (retired) },
};

static const Member told[] = {
  { "who", MEMBER_SAID, OF (who) },
  { "mass", MEMBER_SAID, OF (mass) },
  { "heaviest_side", MEMBER_SAID, OF (heaviest_side) },
};

static const Member import[] = {
  { "head", MEMBER_HASH, OF (head) },
  { "lines", MEMBER_COUNT, OF (lines) },
};

static const Member improvement_add[] = {
  { "step", MEMBER_STEP, OF (step) },
  { "improvement", MEMBER_ID, OF (improvement) },
  { "what", MEMBER_SAID, OF (what) },
  { "from_item", MEMBER_ID, OF (from_item) },
  { "from_kind", MEMBER_ITEM_KIND, OF (from_kind) },
  { "from_name", MEMBER_SAID, OF (from_name) },
  { "from_revision", MEMBER_COUNT, OF (from_revision) },
  { "from_hash", MEMBER_HASH, OF (from_hash) },
  { "to_hash", MEMBER_HASH, OF (to_hash) },
  { "idea_by", MEMBER_SAID, OF (idea_by) },
  { "put_to_work", MEMBER_DATE, OF (put_to_work) },
};

static const Member improvement_withdraw[] = {
  { "step", MEMBER_STEP, OF (step) },
  { "improvement", MEMBER_ID, OF (improvement) },
};

typedef struct
{
  SyEventKind kind;
  SyDeedStep step; /* of a kind that has steps */
  gboolean names_revision;
  const Member *members;
  gsize n_members;
} Shape;

static const Shape shapes[] = {
  { SY_EVENT_SIGNATURE, 0, TRUE, signature, G_N_ELEMENTS (signature) },
  { SY_EVENT_ACTION, SY_STEP_OPEN, FALSE, action_open, G_N_ELEMENTS (action_open) },
  { SY_EVENT_ACTION, SY_STEP_ASSIGN, FALSE, action_assign, G_N_ELEMENTS (action_assign) },
  { SY_EVENT_ACTION, SY_STEP_CLOSE, FALSE, action_close, G_N_ELEMENTS (action_close) },
  { SY_EVENT_REVIEW, 0, FALSE, review, G_N_ELEMENTS (review) },
  { SY_EVENT_RETIREMENT, 0, FALSE, retirement, G_N_ELEMENTS (retirement) },
  { SY_EVENT_TOLD, 0, TRUE, told, G_N_ELEMENTS (told) },
  { SY_EVENT_IMPORT, 0, FALSE, import, G_N_ELEMENTS (import) },
  { SY_EVENT_IMPROVEMENT, SY_STEP_ADD, TRUE, improvement_add, G_N_ELEMENTS (improvement_add) },
  { SY_EVENT_IMPROVEMENT, SY_STEP_WITHDRAW, FALSE, improvement_withdraw, G_N_ELEMENTS (improvement_withdraw) },
};

/* Every text that a deed owns. */
static const gsize texts[] = {
  OF (line_hash), OF (competence), OF (action), OF (what), OF (about), OF (assigned),
  OF (due),       OF (evidence),   OF (who),    OF (mass), OF (heaviest_side), OF (head),
  OF (improvement), OF (from_item), OF (from_kind), OF (from_name), OF (from_hash), OF (to_hash),
  OF (idea_by),   OF (put_to_work),
};

static const char *const step_ids[] = {
  [SY_STEP_OPEN] = "open",
  [SY_STEP_ASSIGN] = "assign",
  [SY_STEP_CLOSE] = "close",
  [SY_STEP_ADD] = "add",
  [SY_STEP_WITHDRAW] = "withdraw",
};

static const char *const trigger_ids[SY_N_TRIGGERS] = {
  [SY_TRIGGER_DATE] = "date",
  [SY_TRIGGER_ACCIDENT] = "accident",
  [SY_TRIGGER_CHANGE] = "change",
};

static int
find_id (const char *const *ids, gsize n, const char *id)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (ids[i], id) == 0)
      return (int) i;
  return -1;
}

const char *
sy_trigger_id (SyTrigger trigger)
{
  return trigger_ids[trigger];
}

gboolean
sy_trigger_from_id (const char *id, SyTrigger *trigger)
{
  int found = find_id (trigger_ids, G_N_ELEMENTS (trigger_ids), id);

  if (found < 0)
    return FALSE;
  *trigger = (SyTrigger) found;
  return TRUE;
}

static gboolean
has_steps (SyEventKind kind)
{
  return kind == SY_EVENT_ACTION || kind == SY_EVENT_IMPROVEMENT;
}

static const Shape *
find_shape (SyEventKind kind, SyDeedStep step)
{
  for (gsize i = 0; i < G_N_ELEMENTS (shapes); i++)
    if (shapes[i].kind == kind && (!has_steps (kind) || shapes[i].step == step))
      return &shapes[i];
  return NULL;
}

void
sy_deed_clear (SyDeed *deed)
{
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_free (G_STRUCT_MEMBER (char *, deed, texts[i]));
  memset (deed, 0, sizeof *deed);
}

static void
write_member (GString *out, const SyDeed *deed, const Member *member)
{
  const char *text;

  g_string_append_printf (out, "\"%s\":", member->name);
  switch (member->type)
    {
    case MEMBER_STEP:
      sy_json_write_text (out, step_ids[deed->step]);
      break;
    case MEMBER_TRIGGER:
      sy_json_write_text (out, trigger_ids[deed->trigger]);
      break;
    case MEMBER_FLAG:
      g_string_append (out, G_STRUCT_MEMBER (gboolean, deed, member->offset) ? "true" : "false");
      break;
    case MEMBER_COUNT:
      g_string_append_printf (out, "%" G_GINT64_FORMAT, G_STRUCT_MEMBER (gint64, deed, member->offset));
      break;
    case MEMBER_TEXT:
    case MEMBER_SAID:
    case MEMBER_HASH:
    case MEMBER_ID:
    case MEMBER_ITEM_KIND:
    case MEMBER_DATE:
    case MEMBER_DATE_OR_NONE:
      text = G_STRUCT_MEMBER (char *, deed, member->offset);
      sy_json_write_text (out, text != NULL ? text : "");
      break;
    }
}

char *
sy_deed_write (const SyDeed *deed)
{
  const Shape *shape = find_shape (deed->kind, deed->step);
  GString *out = g_string_new ("{");

  for (gsize i = 0; shape != NULL && i < shape->n_members; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      write_member (out, deed, &shape->members[i]);
    }
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

static gboolean
is_hex (const char *text, gsize digits)
{
  return strlen (text) == digits && strspn (text, "0123456789abcdef") == digits;
}

static gboolean
is_fit (const char *text, MemberType type)
{
  double days;

  switch (type)
    {
    case MEMBER_SAID:
      return sy_text_says (text);
    case MEMBER_HASH:
      return is_hex (text, 2 * SY_HASH_BYTES);
    case MEMBER_ID:
      return is_hex (text, ID_DIGITS);
    case MEMBER_ITEM_KIND:
      return sy_item_kind_place (text) >= 0;
    case MEMBER_DATE:
      return sy_date_read (text, &days);
    case MEMBER_DATE_OR_NONE:
      return *text == '\0' || sy_date_read (text, &days);
    case MEMBER_TEXT:
    case MEMBER_STEP:
    case MEMBER_TRIGGER:
    case MEMBER_FLAG:
    case MEMBER_COUNT:
      break;
    }
  return type == MEMBER_TEXT;
}

static gboolean
read_member (const SyJson *value, const Member *member, SyDeed *deed)
{
  int found;

  if (value == NULL)
    return FALSE;
  switch (member->type)
    {
    case MEMBER_STEP:
      return TRUE; /* read before: it says which members there are */
    case MEMBER_TRIGGER:
      found = find_id (trigger_ids, G_N_ELEMENTS (trigger_ids), value->type == SY_JSON_TEXT ? value->text : NULL);
      deed->trigger = found < 0 ? SY_TRIGGER_DATE : (SyTrigger) found;
      return found >= 0;
    case MEMBER_FLAG:
      G_STRUCT_MEMBER (gboolean, deed, member->offset) = value->type == SY_JSON_TRUE;
      return value->type == SY_JSON_TRUE || value->type == SY_JSON_FALSE;
    case MEMBER_COUNT:
      if (value->type != SY_JSON_NUMBER || !(value->number >= 0 && value->number <= COUNT_MAX)
          || value->number != floor (value->number))
        return FALSE;
      G_STRUCT_MEMBER (gint64, deed, member->offset) = (gint64) value->number;
      return TRUE;
    case MEMBER_TEXT:
    case MEMBER_SAID:
    case MEMBER_HASH:
    case MEMBER_ID:
    case MEMBER_ITEM_KIND:
    case MEMBER_DATE:
    case MEMBER_DATE_OR_NONE:
      break;
    }
  if (value->type != SY_JSON_TEXT || !is_fit (value->text, member->type))
    return FALSE;
  sy_event_set (&G_STRUCT_MEMBER (char *, deed, member->offset), value->text);
  return TRUE;
}

static gboolean
read_document (const SyEvent *event, SyMemory *memory, SyDeed *deed)
{
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (event->facts, strlen (event->facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  const Shape *shape;
  int step = 0;

  if (root == NULL || root->type != SY_JSON_OBJECT)
    return FALSE;
  if (has_steps (event->kind))
    step = find_id (step_ids, G_N_ELEMENTS (step_ids), sy_json_member_text (root, "step"));
  if (step < 0)
    return FALSE;
  shape = find_shape (event->kind, (SyDeedStep) step);
  /* No key is there twice, so that as many members as are known, all found, are the known ones. */
  if (shape == NULL || root->n_children != shape->n_members || (shape->names_revision && event->revision < 1))
    return FALSE;
  deed->step = (SyDeedStep) step;
  for (gsize i = 0; i < shape->n_members; i++)
    if (!read_member (sy_json_member (root, shape->members[i].name), &shape->members[i], deed))
      return FALSE;
  return TRUE;
}

gboolean
sy_deed_read (const SyEvent *event, SyDeed *deed)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();

  memset (deed, 0, sizeof *deed);
  deed->kind = event->kind;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, deed, texts[i]) = g_strdup ("");
  if (event->kind >= SY_EVENT_SIGNATURE && read_document (event, memory, deed))
    return TRUE;
  sy_deed_clear (deed);
  return FALSE;
}
