/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-date.h"
#include "sy-deed.h"
#include "sy-task-private.h"

/* Enough of a hash that two people are never taken for one. */
#define PERSON_DIGITS 16

/* What cannot be seen is no part of a name: controls, formats such as joiners and soft hyphens, variation selectors, fillers
   (Unicode, Default_Ignorable_Code_Point). */
static gboolean
is_unseen (gunichar letter)
{
  const GUnicodeType type = g_unichar_type (letter);

  return type == G_UNICODE_CONTROL || type == G_UNICODE_FORMAT || letter == 0x034f || letter == 0x115f || letter == 0x1160
         || (letter >= 0xfe00 && letter <= 0xfe0f) || (letter >= 0xe0100 && letter <= 0xe01ef);
}

/* What a person is told by: a hash of the name without its case, and with one blank for every run of blanks. */
static char *
person_key (const char *name)
{
  g_autofree char *composed = g_utf8_normalize (name, -1, G_NORMALIZE_ALL_COMPOSE);
  g_autofree char *folded = g_utf8_casefold (composed != NULL ? composed : name, -1);
  g_autoptr (GString) plain = g_string_new (NULL);
  gboolean in_blank = FALSE;
  SyHash hash;
  char *key;

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar letter = g_utf8_get_char (at);

      if (g_unichar_isspace (letter))
        {
          in_blank = TRUE;
          continue;
        }
      if (is_unseen (letter))
        continue;
      if (in_blank && plain->len > 0)
        g_string_append_c (plain, ' ');
      in_blank = FALSE;
      g_string_append_unichar (plain, letter);
    }
  sy_hash_of (plain->str, plain->len, &hash);
  key = sy_hash_text (&hash);
  key[PERSON_DIGITS] = '\0';
  return key;
}

/* One step of a lineage, "2<1~0f…": a revision, what it was made from and by whom. */
typedef struct
{
  gint64 revision, base;
  const char *person; /* not terminated */
} Step;

/* Takes the next step off; FALSE at the end. */
static gboolean
next_step (const char **lineage, Step *step)
{
  char *end;

  if (**lineage == '\0')
    return FALSE;
  step->revision = g_ascii_strtoll (*lineage, &end, 10);
  step->base = *end == '<' ? g_ascii_strtoll (end + 1, &end, 10) : 0;
  step->person = *end == '~' ? end + 1 : "";
  *lineage = end + strcspn (end, " ");
  *lineage += strspn (*lineage, " ");
  return TRUE;
}

/* The latest revision that was made from @base, 0 for none. */
static gint64
find_sibling (const char *lineage, gint64 base)
{
  gint64 sibling = 0;
  Step step;

  while (next_step (&lineage, &step))
    if (step.base == base)
      sibling = step.revision;
  return sibling;
}

/* FALSE when there is no such revision. */
static gboolean
find_revision (const char *lineage, gint64 revision, Step *step)
{
  gboolean found = FALSE;
  Step each;

  while (next_step (&lineage, &each))
    if (each.revision == revision)
      {
        *step = each;
        found = TRUE;
      }
  return found;
}

static void
add_step (SyTask *task, const SyEvent *event)
{
  g_autofree char *person = person_key (event->by);
  char *lineage = g_strdup_printf ("%s%s%" G_GINT64_FORMAT "<%" G_GINT64_FORMAT "~%s", task->lineage,
                                   *task->lineage != '\0' ? " " : "", event->revision, event->base, person);

  g_free (task->lineage);
  task->lineage = lineage;
}

/* A review because of something is settled by the next revision that was made here, one for a day by the first of that day or
   later. */
static void
settle_review (SyTask *task, const SyEvent *revision)
{
  const gboolean waits_for_day
    = strcmp (task->review_trigger, sy_trigger_id (SY_TRIGGER_DATE)) == 0 || *revision->origin != '\0';

  if (*task->review_due == '\0')
    return;
  if (waits_for_day && strncmp (revision->claimed, task->review_due, strlen (task->review_due)) < 0)
    return;
  sy_event_set (&task->review_due, "");
  sy_event_set (&task->review_trigger, "");
}

void
sy_task_take_history (SyTask *task, const SyEvent *revision)
{
  if (revision->base != task->revision)
    {
      task->clash = find_sibling (task->lineage, revision->base);
      if (task->clash == 0)
        task->clash = task->revision;
    }
  else if (*revision->origin == '\0')
    task->clash = 0; /* one that came from another record was made without knowing what is here: it settles nothing */
  add_step (task, revision);
  task->revision = revision->revision;
  settle_review (task, revision);
}

static void
take_signature (SyTask *task, const SyEvent *event)
{
  g_autofree char *signer = person_key (event->by);
  Step step;

  if (!find_revision (task->lineage, event->revision, &step))
    return;
  task->signed_revision = event->revision;
  sy_event_set (&task->signed_by, event->by);
  sy_event_set (&task->signed_role, event->role);
  sy_event_set (&task->signed_when, event->claimed);
  task->signed_own = strncmp (step.person, signer, PERSON_DIGITS) == 0;
}

/* How many actions are open and which date comes first, from the list of them. */
static void
count_actions (SyTask *task)
{
  g_auto (GStrv) open = g_strsplit (task->open_actions, " ", -1);
  const char *due = "";

  task->n_open = 0;
  for (char **each = open; *each != NULL; each++)
    {
      const char *mark = strchr (*each, '=');

      if (mark == NULL)
        continue;
      task->n_open++;
      /* written so, the earlier day comes first in the alphabet */
      if (mark[1] != '\0' && (*due == '\0' || strcmp (mark + 1, due) < 0))
        due = mark + 1;
    }
  sy_event_set (&task->action_due, due);
}

static void
take_action (SyTask *task, const SyDeed *deed)
{
  g_auto (GStrv) open = g_strsplit (task->open_actions, " ", -1);
  g_autofree char *begin = g_strconcat (deed->action, "=", NULL);
  g_autofree char *entry = g_strconcat (begin, deed->due, NULL);
  GString *out = g_string_new (NULL);
  gboolean found = FALSE;

  for (char **each = open; *each != NULL; each++)
    {
      gboolean is_it = g_str_has_prefix (*each, begin);

      found = found || is_it;
      if (**each == '\0' || (is_it && deed->step == SY_STEP_CLOSE))
        continue;
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "",
                              is_it && deed->step == SY_STEP_ASSIGN ? entry : *each);
    }
  if (!found && deed->step == SY_STEP_OPEN)
    g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", entry);
  g_free (task->open_actions);
  task->open_actions = g_string_free (out, FALSE);
  count_actions (task);
}

static void
take_review (SyTask *task, const SyDeed *deed)
{
  sy_event_set (&task->review_due, deed->due);
  sy_event_set (&task->review_trigger, sy_trigger_id (deed->trigger));
}

static void
take_told (SyTask *task, const SyEvent *event)
{
  Step step;

  if (find_revision (task->lineage, event->revision, &step))
    task->told_revision = MAX (task->told_revision, event->revision);
}

void
sy_task_take_deed (SyTask *task, const SyEvent *event)
{
  SyDeed deed;

  if (!sy_deed_read (event, &deed))
    return;
  switch (event->kind)
    {
    case SY_EVENT_SIGNATURE:
      take_signature (task, event);
      break;
    case SY_EVENT_ACTION:
      take_action (task, &deed);
      break;
    case SY_EVENT_REVIEW:
      take_review (task, &deed);
      break;
    case SY_EVENT_RETIREMENT:
      task->retired = deed.retired;
      break;
    case SY_EVENT_TOLD:
      take_told (task, event);
      break;
    case SY_EVENT_POLICY:
    case SY_EVENT_REVISION:
    case SY_EVENT_ATTACHMENT:
    case SY_EVENT_IMPORT:
    case SY_EVENT_IMPROVEMENT: /* changes nothing about the item */
      break;
    }
  sy_task_add_words (task, event->by);
  sy_task_add_words (task, event->why);
  sy_task_add_words (task, deed.what);
  sy_task_add_words (task, deed.assigned);
  sy_task_add_words (task, deed.who);
  sy_task_add_words (task, deed.idea_by);
  sy_deed_clear (&deed);
}
