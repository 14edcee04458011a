/* SPDX-License-Identifier: MIT */
#include "bench-store.h"

#include <time.h>

#include "bench-lifts.h"

#define N_LIFTS 300u
#define N_BATCH 2000u

static const char *const parts[] = { "Blank", "Coil end", "Ring", "Bracket", "Insert", "Tray", "Profile", "Cover sheet" };
static const char *const ways[] = { "press to pallet", "rack to bench", "cradle to shear", "conveyor to washer",
                                    "table to furnace", "stand to trolley" };
static const char *const people[] = { "Ivo Tannick", "Dessa Hollin", "Q. Falk", "B. Ostler", "R. Example" };
static const char *const reasons[] = { "Measured anew", "Pallet turned", "Asked for by the line crew", "After a near miss" };

typedef struct
{
  char *facts, *findings;
} Lift;

static const Lift *
lifts_once (SyDesk *desk)
{
  static Lift lifts[N_LIFTS];
  g_autoptr (GRand) random = NULL;
  g_autofree SyProblems *problems = NULL;

  if (lifts[0].facts != NULL)
    return lifts;
  random = g_rand_new_with_seed (4);
  problems = g_new0 (SyProblems, 1);
  for (guint i = 0; i < N_LIFTS; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (SyAssessment) assessment = NULL;

      bench_lift_append (text, random);
      assessment = sy_desk_assess (desk, text->str, text->len, SY_JUDGE_RECORD | SY_JUDGE_REMEDIES | SY_JUDGE_SPREAD,
                                   problems);
      if (assessment == NULL)
        g_error ("%s: %s", text->str, problems->items[0].path);
      lifts[i] = (Lift) { g_strdup (assessment->text), sy_assessment_json (assessment, false) };
    }
  return lifts;
}

SyEvent *
bench_revision (SyDesk *desk, guint task, gint64 revision, guint which)
{
  const Lift *lift = &lifts_once (desk)[which % N_LIFTS];
  SyEvent *event = sy_event_new (SY_EVENT_REVISION);
  g_autofree char *id = g_strdup_printf ("%016x", task + 1);
  g_autofree char *name = g_strdup_printf ("%s %06u, %s", parts[task % G_N_ELEMENTS (parts)], task,
                                           ways[task / 7 % G_N_ELEMENTS (ways)]);
  g_autofree char *when = g_strdup_printf ("20%02u-%02u-%02uT08:%02u:00Z", 10 + (guint) revision % 16, task % 12 + 1,
                                           which % 28 + 1, which % 60);

  sy_event_set (&event->item, id);
  sy_event_set (&event->item_kind, SY_ITEM_TASK);
  sy_event_set (&event->name, name);
  sy_event_set (&event->by, people[which % G_N_ELEMENTS (people)]);
  sy_event_set (&event->role, "foreman");
  sy_event_set (&event->why, reasons[which / 3 % G_N_ELEMENTS (reasons)]);
  sy_event_set (&event->claimed, when);
  sy_event_set (&event->written, when);
  sy_event_set (&event->program, "steelyard " SY_VERSION);
  sy_event_set (&event->method, "lift");
  event->edition = 1;
  sy_event_set (&event->policy, "steelyard-default 2");
  event->revision = revision;
  event->base = revision - 1;
  sy_event_set (&event->facts, lift->facts);
  sy_event_set (&event->findings, lift->findings);
  return event;
}

static void
append (SyStore *store, GPtrArray *events, SyHead *head)
{
  g_autoptr (GError) error = NULL;

  if (events->len > 0 && !sy_store_append (store, head, events, head, &error))
    g_error ("%s", error->message);
  g_ptr_array_set_size (events, 0);
}

static SyEvent *
adopt_policy (SyDesk *desk)
{
  SyEvent *event = sy_event_new (SY_EVENT_POLICY);
  gsize length;
  const char *text = sy_desk_policy_text (desk, &length);
  g_autofree char *own = g_strndup (text, length);

  sy_event_set (&event->item_kind, "policy");
  sy_event_set (&event->name, sy_desk_policy (desk)->id);
  sy_event_set (&event->by, people[0]);
  sy_event_set (&event->claimed, "2010-01-01T08:00:00Z");
  sy_event_set (&event->written, "2010-01-01T08:00:00Z");
  sy_event_set (&event->facts, own);
  return event;
}

void
bench_fill_store (const char *path, guint n_tasks, guint n_revisions)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, &error);
  g_autoptr (SyStore) store = sy_store_open (path, &error);
  g_autoptr (GPtrArray) events = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_event_free);
  g_autofree gint64 *revisions = g_new0 (gint64, n_tasks);
  g_autoptr (GRand) random = g_rand_new_with_seed (9);
  SyHead head;

  if (store == NULL || !sy_store_head (store, &head, &error))
    g_error ("%s", error->message);
  g_ptr_array_add (events, adopt_policy (desk));
  for (guint i = 0; i < n_revisions; i++)
    {
      guint task = i < n_tasks ? i : (guint) g_rand_int_range (random, 0, (gint32) n_tasks);

      g_ptr_array_add (events, bench_revision (desk, task, ++revisions[task], i));
      if (events->len == N_BATCH)
        append (store, events, &head);
    }
  append (store, events, &head);
}

double
bench_cpu_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec + 1e-9 * (double) now.tv_nsec;
}
