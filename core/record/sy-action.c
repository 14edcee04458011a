/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-deed.h"

/* Every text that an action owns. */
static const gsize texts[] = {
  G_STRUCT_OFFSET (SyAction, id),        G_STRUCT_OFFSET (SyAction, item),
  G_STRUCT_OFFSET (SyAction, item_kind), G_STRUCT_OFFSET (SyAction, item_name),
  G_STRUCT_OFFSET (SyAction, what),      G_STRUCT_OFFSET (SyAction, about),
  G_STRUCT_OFFSET (SyAction, assigned),  G_STRUCT_OFFSET (SyAction, due),
  G_STRUCT_OFFSET (SyAction, opened_by), G_STRUCT_OFFSET (SyAction, opened_when),
  G_STRUCT_OFFSET (SyAction, why),       G_STRUCT_OFFSET (SyAction, closed_by),
  G_STRUCT_OFFSET (SyAction, closed_when), G_STRUCT_OFFSET (SyAction, evidence),
};

void
sy_action_free (SyAction *action)
{
  if (action == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_free (G_STRUCT_MEMBER (char *, action, texts[i]));
  g_free (action);
}

SyAction *
sy_action_copy (const SyAction *action)
{
  SyAction *copy = g_memdup2 (action, sizeof *action);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, copy, texts[i]) = g_strdup (G_STRUCT_MEMBER (char *, copy, texts[i]));
  return copy;
}

static SyAction *
open_action (const SyEvent *event, const SyDeed *deed)
{
  SyAction *action = g_new0 (SyAction, 1);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, action, texts[i]) = g_strdup ("");
  sy_event_set (&action->id, deed->action);
  sy_event_set (&action->item, event->item);
  sy_event_set (&action->item_kind, event->item_kind);
  sy_event_set (&action->what, deed->what);
  sy_event_set (&action->about, deed->about);
  sy_event_set (&action->assigned, deed->assigned);
  sy_event_set (&action->due, deed->due);
  sy_event_set (&action->opened_by, event->by);
  sy_event_set (&action->opened_when, event->claimed);
  sy_event_set (&action->why, event->why);
  action->open = TRUE;
  return action;
}

/* What is closed stays as it was closed, whatever comes after it from another record. */
static void
change_action (SyAction *action, const SyEvent *event, const SyDeed *deed)
{
  if (!action->open || deed->step == SY_STEP_OPEN)
    return;
  if (deed->step == SY_STEP_ASSIGN)
    {
      sy_event_set (&action->assigned, deed->assigned);
      sy_event_set (&action->due, deed->due);
      return;
    }
  action->open = FALSE;
  sy_event_set (&action->closed_by, event->by);
  sy_event_set (&action->closed_when, event->claimed);
  sy_event_set (&action->evidence, deed->evidence);
}

SyAction *
sy_action_apply (SyAction *action, const SyEvent *event, guint64 line)
{
  SyDeed deed;

  if (event->kind != SY_EVENT_ACTION || !sy_deed_read (event, &deed))
    return action;
  if (action == NULL && deed.step == SY_STEP_OPEN)
    action = open_action (event, &deed);
  else if (action == NULL || strcmp (action->id, deed.action) != 0 || strcmp (action->item, event->item) != 0)
    {
      sy_deed_clear (&deed);
      return action;
    }
  else
    change_action (action, event, &deed);
  sy_event_set (&action->item_name, event->name);
  action->line = line;
  sy_deed_clear (&deed);
  return action;
}
