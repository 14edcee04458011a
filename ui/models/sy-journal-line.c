/* SPDX-License-Identifier: MIT */
#include "sy-journal-line.h"

#include <string.h>

#include "sy-i18n.h"
#include "sy-method.h"

struct _SyJournalLine
{
  GObject parent_instance;
  guint64 number;
  SyJournalRow *row;
};

G_DEFINE_FINAL_TYPE (SyJournalLine, sy_journal_line, G_TYPE_OBJECT)

enum
{
  PROP_ROW = 1,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

static void
sy_journal_line_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_ROW)
    g_value_set_pointer (value, SY_JOURNAL_LINE (object)->row);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
sy_journal_line_finalize (GObject *object)
{
  g_clear_pointer (&SY_JOURNAL_LINE (object)->row, sy_journal_row_free);
  G_OBJECT_CLASS (sy_journal_line_parent_class)->finalize (object);
}

static void
sy_journal_line_class_init (SyJournalLineClass *klass)
{
  G_OBJECT_CLASS (klass)->get_property = sy_journal_line_get_property;
  G_OBJECT_CLASS (klass)->finalize = sy_journal_line_finalize;
  props[PROP_ROW] = g_param_spec_pointer ("row", NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
}

static void
sy_journal_line_init (SyJournalLine *self)
{
  (void) self;
}

SyJournalLine *
sy_journal_line_new (guint64 number)
{
  SyJournalLine *self = g_object_new (SY_TYPE_JOURNAL_LINE, NULL);

  self->number = number;
  return self;
}

guint64
sy_journal_line_get_number (SyJournalLine *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LINE (self), 0);
  return self->number;
}

const SyJournalRow *
sy_journal_line_get_row (SyJournalLine *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_LINE (self), NULL);
  return self->row;
}

void
sy_journal_line_take_row (SyJournalLine *self, SyJournalRow *row)
{
  g_return_if_fail (SY_IS_JOURNAL_LINE (self));
  g_return_if_fail (row != NULL && row->number == self->number);
  g_clear_pointer (&self->row, sy_journal_row_free);
  self->row = row;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ROW]);
}

/* Topics: words */

const char *
sy_journal_kind_words (SyEventKind kind)
{
  switch (kind)
    {
    case SY_EVENT_POLICY:
      return _("Policy adopted");
    case SY_EVENT_REVISION:
      return _("Revision");
    case SY_EVENT_ATTACHMENT:
      return _("File attached");
    case SY_EVENT_SIGNATURE:
      return _("Sign-off");
    case SY_EVENT_ACTION:
      return _("Action");
    case SY_EVENT_REVIEW:
      return _("Review");
    case SY_EVENT_RETIREMENT:
      return _("Retirement");
    case SY_EVENT_TOLD:
      return _("Workers told");
    case SY_EVENT_IMPORT:
      return _("Taken over");
    case SY_EVENT_IMPROVEMENT:
      return _("Improvement");
    }
  return "";
}

/* "2026-03-01T09:00:00Z" as people read it; anything else as it stands. */
static char *
moment (const char *when)
{
  return strlen (when) >= 16 && when[10] == 'T' ? g_strdup_printf ("%.10s %.5s", when, when + 11) : g_strdup (when);
}

char *
sy_journal_row_when (const SyJournalRow *row)
{
  g_autofree char *when = moment (row->when);

  /* Translators: a time that was set and did not come from the computer's clock. */
  return row->clock_set ? g_strdup_printf (_("%s (set)"), when) : g_steal_pointer (&when);
}

char *
sy_journal_row_who (const SyJournalRow *row)
{
  /* Translators: a person and in which role. */
  return *row->role != '\0' ? g_strdup_printf (_("%s (%s)"), row->by, row->role) : g_strdup (row->by);
}

/* A method whose words for verdicts are those of the kind. */
static const char *
method_of (const char *item_kind)
{
  if (g_str_equal (item_kind, SY_ITEM_DIE))
    return "die-mass";
  if (g_str_equal (item_kind, SY_ITEM_TASK))
    return "lift";
  return item_kind; /* gear, changeover and case have one method each, of that name */
}

char *
sy_journal_row_what (const SyJournalRow *row)
{
  SyVerdict verdict;

  if (row->kind == SY_EVENT_REVISION && sy_verdict_from_id (row->verdict, &verdict))
    /* Translators: number of a revision and its verdict. */
    return g_strdup_printf (_("%d: %s"), (int) row->revision,
                            sy_translate (sy_verdict_title_for (sy_method_find (method_of (row->item_kind)), verdict)));
  return g_strdup (row->words);
}
