/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-deed.h"
#include "sy-words-private.h"

static const char unreadable[] = N_ ("What was written here cannot be read.");

/* Which sentence says it. */
static const SyTemplate templates[] = {
  { "signature", N_ ("Signed off in the role of {role}") },
  { "signature-competence", N_ ("Signed off in the role of {role}; competence: {competence}") },
  { "open", N_ ("Action opened: {what}") },
  { "open-assigned", N_ ("Action opened: {what}; for {assigned}") },
  { "open-due", N_ ("Action opened: {what}; due {due}") },
  { "open-assigned-due", N_ ("Action opened: {what}; for {assigned}, due {due}") },
  { "assign", N_ ("Action assigned to nobody yet") },
  { "assign-assigned", N_ ("Action assigned to {assigned}") },
  { "assign-due", N_ ("Action assigned to nobody yet, due {due}") },
  { "assign-assigned-due", N_ ("Action assigned to {assigned}, due {due}") },
  { "close", N_ ("Action closed: {evidence}") },
  { "date", N_ ("To be reviewed on {due}") },
  { "accident", N_ ("To be reviewed on {due}, after an accident") },
  { "change", N_ ("To be reviewed on {due}, because the work is being changed") },
  { "retired", N_ ("Taken out of use") },
  { "not-retired", N_ ("Taken back into use") },
  { "told", N_ ("Told to {who}: {mass}, heaviest side {heaviest_side}") },
  { "import", N_ ("Lines taken over from another record: {lines}") },
  { "improvement", N_ ("Improvement, thought of by {idea_by}: {what}") },
  { "improvement-withdrawn", N_ ("Improvement withdrawn") },
};

typedef struct
{
  const SyEvent *event;
  const SyDeed *deed;
} Fill;

static char *
fill_words (const char *name, gconstpointer data)
{
  const Fill *fill = data;
  const SyDeed *deed = fill->deed;
  const struct
  {
    const char *name, *text;
  } known[] = {
    { "role", fill->event->role }, { "competence", deed->competence }, { "what", deed->what },
    { "assigned", deed->assigned }, { "due", deed->due },              { "evidence", deed->evidence },
    { "who", deed->who },          { "mass", deed->mass },             { "heaviest_side", deed->heaviest_side },
    { "idea_by", deed->idea_by },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    if (strcmp (name, known[i].name) == 0)
      return g_strdup (known[i].text);
  return strcmp (name, "lines") == 0 ? g_strdup_printf ("%" G_GINT64_FORMAT, deed->lines) : NULL;
}

/* New string. */
static char *
template_id (const SyDeed *deed)
{
  switch (deed->kind)
    {
    case SY_EVENT_SIGNATURE:
      return g_strdup (*deed->competence != '\0' ? "signature-competence" : "signature");
    case SY_EVENT_ACTION:
      if (deed->step == SY_STEP_CLOSE)
        return g_strdup ("close");
      return g_strconcat (deed->step == SY_STEP_OPEN ? "open" : "assign", *deed->assigned != '\0' ? "-assigned" : "",
                          *deed->due != '\0' ? "-due" : "", NULL);
    case SY_EVENT_REVIEW:
      return g_strdup (sy_trigger_id (deed->trigger));
    case SY_EVENT_RETIREMENT:
      return g_strdup (deed->retired ? "retired" : "not-retired");
    case SY_EVENT_IMPROVEMENT:
      return g_strdup (deed->step == SY_STEP_ADD ? "improvement" : "improvement-withdrawn");
    case SY_EVENT_TOLD:
    case SY_EVENT_IMPORT:
    case SY_EVENT_POLICY:
    case SY_EVENT_REVISION:
    case SY_EVENT_ATTACHMENT:
      break;
    }
  return g_strdup (sy_event_kind_id (deed->kind));
}

char *
sy_deed_words (const SyEvent *event, SyTranslate translate)
{
  SyDeed deed;
  const Fill fill = { event, &deed };
  g_autofree char *id = NULL;
  char *words;

  if (event->kind < SY_EVENT_SIGNATURE || event->kind > SY_EVENT_KIND_LAST)
    return g_strdup ("");
  if (!sy_deed_read (event, &deed))
    return g_strdup (translate != NULL ? translate (unreadable) : unreadable);
  id = template_id (&deed);
  words = sy_words_fill (sy_words_find (templates, G_N_ELEMENTS (templates), id), translate, fill_words, &fill);
  sy_deed_clear (&deed);
  return words;
}
