/* SPDX-License-Identifier: MIT */
#ifndef STORE_DEEDS_H
#define STORE_DEEDS_H

#include "store-help.h"

/* What is done about an item, as small events for the tests of the store. */

static inline SyEvent *
help_deed (const char *id, SyDeed deed, const char *by, const char *day)
{
  SyEvent *event = sy_event_new (deed.kind);
  g_autofree char *facts = sy_deed_write (&deed);
  g_autofree char *time = g_strconcat (day, "T10:00:00Z", NULL);

  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, SY_ITEM_TASK);
  sy_event_set (&event->name, "A task");
  sy_event_set (&event->by, by);
  sy_event_set (&event->role, "foreman");
  sy_event_set (&event->why, "asked for");
  sy_event_set (&event->claimed, time);
  sy_event_set (&event->written, time);
  sy_event_set (&event->facts, facts);
  return event;
}

static inline SyEvent *
help_signature (const char *id, gint64 revision, const char *by, const char *day)
{
  g_autofree char *hash = g_strnfill (64, 'a');
  const SyDeed deed = { .kind = SY_EVENT_SIGNATURE, .line_hash = hash, .competence = (char *) "course of 2024" };
  SyEvent *event = help_deed (id, deed, by, day);

  event->revision = revision;
  return event;
}

static inline SyEvent *
help_open_action (const char *id, const char *action, const char *what, const char *due, const char *day)
{
  const SyDeed deed = { .kind = SY_EVENT_ACTION, .step = SY_STEP_OPEN, .action = (char *) action,
                        .what = (char *) what, .due = (char *) due, .assigned = (char *) "M. Fitter" };

  return help_deed (id, deed, "R. Example", day);
}

static inline SyEvent *
help_close_action (const char *id, const char *action, const char *day)
{
  const SyDeed deed = { .kind = SY_EVENT_ACTION, .step = SY_STEP_CLOSE, .action = (char *) action,
                        .evidence = (char *) "seen on the floor" };

  return help_deed (id, deed, "M. Fitter", day);
}

static inline SyEvent *
help_review (const char *id, const char *due, const char *day)
{
  const SyDeed deed = { .kind = SY_EVENT_REVIEW, .trigger = SY_TRIGGER_DATE, .due = (char *) due };

  return help_deed (id, deed, "R. Example", day);
}

static inline SyEvent *
help_retire (const char *id, gboolean retired, const char *day)
{
  const SyDeed deed = { .kind = SY_EVENT_RETIREMENT, .retired = retired };

  return help_deed (id, deed, "R. Example", day);
}

static inline SyEvent *
help_revision_on (const char *id, gint64 revision, const char *name, const char *verdict, const char *by, const char *day)
{
  SyEvent *event = help_revision (id, revision, name, verdict, "1.5", "10");
  g_autofree char *time = g_strconcat (day, "T09:00:00Z", NULL);

  sy_event_set (&event->by, by);
  sy_event_set (&event->claimed, time);
  sy_event_set (&event->written, time);
  return event;
}

#define ACTION_1 "1111111111111111"
#define ACTION_2 "2222222222222222"

/* 1 policy · 2 a1 · 3 b1 · 4 a2 · 5 sign a2 · 6 open 1 of a · 7 open 2 of b · 8 review a · 9 close 2 · 10 a3 · 11 retire b */
static inline void
help_story (SyStore *store)
{
  SyEvent *policy = help_policy ("{\"goal\":1}");

  sy_event_set (&policy->claimed, "2026-03-01T08:00:00Z");
  sy_event_set (&policy->written, "2026-03-01T08:00:00Z");
  help_append (store, policy, help_revision_on ("a", 1, "Coil", "mechanical", "R. Example", "2026-03-01"),
               help_revision_on ("b", 1, "Blank", "by-hand", "P. Other", "2026-03-02"), NULL);
  help_append (store, help_revision_on ("a", 2, "Coil", "improve", "P. Other", "2026-03-05"),
               help_signature ("a", 2, "R. Example", "2026-03-06"),
               help_open_action ("a", ACTION_1, "Raise the table", "2026-06-01", "2026-03-07"),
               help_open_action ("b", ACTION_2, "Mark the bin", "", "2026-03-08"));
  help_append (store, help_review ("a", "2026-12-01", "2026-03-09"), help_close_action ("b", ACTION_2, "2026-03-10"),
               help_revision_on ("a", 3, "Coil to slitter", "by-hand", "R. Example", "2026-04-01"),
               help_retire ("b", TRUE, "2026-04-02"));
}

#endif
