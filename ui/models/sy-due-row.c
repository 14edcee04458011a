/* SPDX-License-Identifier: MIT */
#include "sy-due-row.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-i18n.h"

#define WEEK 7

struct _SyDueRow
{
  GObject parent_instance;
  SyAction *action; /* NULL: a review */
  char *item, *item_name, *due;
  SyTrigger trigger;
  double left;  /* days from today to the day; NAN: none */
  char *folded; /* what it says, to be searched */
};

G_DEFINE_FINAL_TYPE (SyDueRow, sy_due_row, G_TYPE_OBJECT)

static void
sy_due_row_finalize (GObject *object)
{
  SyDueRow *self = SY_DUE_ROW (object);

  sy_action_free (self->action);
  g_free (self->item);
  g_free (self->item_name);
  g_free (self->due);
  g_free (self->folded);
  G_OBJECT_CLASS (sy_due_row_parent_class)->finalize (object);
}

static void
sy_due_row_class_init (SyDueRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_due_row_finalize;
}

static void
sy_due_row_init (SyDueRow *self)
{
  self->left = NAN;
}

static void
finish (SyDueRow *self, const char *item, const char *item_name, const char *due, double today)
{
  g_autofree char *what = NULL, *all = NULL;
  double day;

  self->item = g_strdup (item);
  self->item_name = g_strdup (item_name);
  self->due = g_strdup (due);
  if (sy_date_read (due, &day))
    self->left = day - today;
  what = sy_due_row_what (self);
  all = g_strjoin (" ", what, item_name, sy_due_row_get_assigned (self), self->action != NULL ? self->action->why : NULL, NULL);
  self->folded = g_utf8_casefold (all, -1);
}

SyDueRow *
sy_due_row_new_action (SyAction *action, double today)
{
  SyDueRow *self = g_object_new (SY_TYPE_DUE_ROW, NULL);

  self->action = action;
  finish (self, action->item, action->item_name, action->due, today);
  return self;
}

SyDueRow *
sy_due_row_new_review (const SyTask *task, double today)
{
  SyDueRow *self;

  if (*task->review_due == '\0')
    return NULL;
  self = g_object_new (SY_TYPE_DUE_ROW, NULL);
  if (!sy_trigger_from_id (task->review_trigger, &self->trigger))
    self->trigger = SY_TRIGGER_DATE;
  finish (self, task->id, task->name, task->review_due, today);
  return self;
}

static gboolean
same_action (const SyAction *a, const SyAction *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return a->line == b->line && g_str_equal (a->id, b->id);
}

gboolean
sy_due_row_equals (SyDueRow *self, SyDueRow *other)
{
  return same_action (self->action, other->action) && self->trigger == other->trigger && g_str_equal (self->item, other->item)
         && g_str_equal (self->item_name, other->item_name) && g_str_equal (self->due, other->due)
         && (self->left == other->left || (isnan (self->left) && isnan (other->left)));
}

const SyAction *
sy_due_row_get_action (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->action;
}

const char *
sy_due_row_get_key (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->action != NULL ? self->action->id : self->item;
}

const char *
sy_due_row_get_item (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->item;
}

const char *
sy_due_row_get_item_name (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->item_name;
}

const char *
sy_due_row_get_assigned (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->action != NULL ? self->action->assigned : "";
}

const char *
sy_due_row_get_due (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  return self->due;
}

SyDueWhen
sy_due_row_get_when (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), SY_DUE_NO_DATE);
  if (self->action != NULL && !self->action->open)
    return SY_DUE_CLOSED;
  if (*self->due == '\0')
    return SY_DUE_NO_DATE;
  if (self->left < 0)
    return SY_DUE_OVERDUE;
  return self->left < WEEK ? SY_DUE_THIS_WEEK : SY_DUE_LATER;
}

char *
sy_due_row_what (SyDueRow *self)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), NULL);
  if (self->action != NULL)
    return g_strdup (self->action->what);
  switch (self->trigger)
    {
    case SY_TRIGGER_DATE:
      return g_strdup (_("Review: the day that was set"));
    case SY_TRIGGER_ACCIDENT:
      return g_strdup (_("Review after an accident"));
    case SY_TRIGGER_CHANGE:
      return g_strdup (_("Review because the work is being changed"));
    }
  g_return_val_if_reached (NULL);
}

char *
sy_due_row_when_words (SyDueRow *self)
{
  const int days = isnan (self->left) ? 0 : (int) fabs (self->left);

  switch (sy_due_row_get_when (self))
    {
    case SY_DUE_OVERDUE:
      return g_strdup_printf (P_ ("Overdue by %d day", "Overdue by %d days", (gulong) days), days);
    case SY_DUE_THIS_WEEK:
      if (days == 0)
        return g_strdup (_("Due today"));
      return g_strdup_printf (P_ ("Due in %d day", "Due in %d days", (gulong) days), days);
    case SY_DUE_LATER:
      return g_strdup (_("Later"));
    case SY_DUE_NO_DATE:
      return g_strdup (_("Without a date"));
    case SY_DUE_CLOSED:
      return g_strdup (_("Closed"));
    }
  g_return_val_if_reached (NULL);
}

gboolean
sy_due_row_has (SyDueRow *self, char **words)
{
  g_return_val_if_fail (SY_IS_DUE_ROW (self), FALSE);
  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (self->folded, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

int
sy_due_row_compare (SyDueRow *self, SyDueRow *other)
{
  const int by_when = (int) sy_due_row_get_when (self) - (int) sy_due_row_get_when (other);
  const int by_day = by_when != 0 ? by_when : strcmp (self->due, other->due);
  const int by_name = by_day != 0 ? by_day : strcmp (self->item_name, other->item_name);

  return by_name != 0 ? by_name : strcmp (sy_due_row_get_key (self), sy_due_row_get_key (other));
}
