/* SPDX-License-Identifier: MIT */
#include "sy-task-row.h"

#include <math.h>

#include "sy-date.h"

struct _SyTaskRow
{
  GObject parent_instance;
  SyTask *task;
  char *name_key; /* made when first asked for */
  SyItemFigures *figures; /* NULL: not read */
  double until;   /* last day on which the verdict holds, days since 1970; NAN none */
  double review, action;
  double moment;
  double today;
  guint serial;
};

G_DEFINE_FINAL_TYPE (SyTaskRow, sy_task_row, G_TYPE_OBJECT)

enum
{
  ROW_ID = 1,
  ROW_NAME,
  ROW_PLACE,
  ROW_VERDICT,
  ROW_INDEX,
  ROW_RANK,
  ROW_MASS,
  ROW_REVISION,
  ROW_BY,
  ROW_WHEN,
  N_ROW_PROPERTIES
};
static GParamSpec *row_properties[N_ROW_PROPERTIES];

static gboolean
same_number (double a, double b)
{
  return (isnan (a) && isnan (b)) || !(a < b || a > b || isnan (a) || isnan (b));
}

static void
sy_task_row_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  const SyTask *task = SY_TASK_ROW (object)->task;

  switch (id)
    {
    case ROW_ID:
      g_value_set_string (value, task->id);
      break;
    case ROW_NAME:
      g_value_set_string (value, task->name);
      break;
    case ROW_PLACE:
      g_value_set_string (value, task->place);
      break;
    case ROW_VERDICT:
      g_value_set_int (value, (int) task->verdict);
      break;
    case ROW_INDEX:
      g_value_set_double (value, task->index);
      break;
    case ROW_RANK:
      g_value_set_double (value, task->rank);
      break;
    case ROW_MASS:
      g_value_set_double (value, task->mass_kg);
      break;
    case ROW_REVISION:
      g_value_set_int64 (value, task->revision);
      break;
    case ROW_BY:
      g_value_set_string (value, task->by);
      break;
    case ROW_WHEN:
      g_value_set_string (value, task->when);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
sy_task_row_finalize (GObject *object)
{
  SyTaskRow *self = SY_TASK_ROW (object);

  sy_task_free (self->task);
  g_free (self->name_key);
  sy_item_figures_free (self->figures);
  G_OBJECT_CLASS (sy_task_row_parent_class)->finalize (object);
}

static void
sy_task_row_class_init (SyTaskRowClass *klass)
{
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = sy_task_row_get_property;
  object_class->finalize = sy_task_row_finalize;

  row_properties[ROW_ID] = g_param_spec_string ("id", NULL, NULL, "", flags);
  row_properties[ROW_NAME] = g_param_spec_string ("name", NULL, NULL, "", flags);
  row_properties[ROW_PLACE] = g_param_spec_string ("place", NULL, NULL, "", flags);
  row_properties[ROW_VERDICT] = g_param_spec_int ("verdict", NULL, NULL, 0, SY_N_VERDICTS - 1, 0,
                                                  flags);
  row_properties[ROW_INDEX] = g_param_spec_double ("index", NULL, NULL, -INFINITY, INFINITY, 0, flags);
  row_properties[ROW_RANK] = g_param_spec_double ("rank", NULL, NULL, -INFINITY, INFINITY, 0, flags);
  row_properties[ROW_MASS] = g_param_spec_double ("mass", NULL, NULL, -INFINITY, INFINITY, 0, flags);
  row_properties[ROW_REVISION] = g_param_spec_int64 ("revision", NULL, NULL, 0, G_MAXINT64, 0, flags);
  row_properties[ROW_BY] = g_param_spec_string ("by", NULL, NULL, "", flags);
  row_properties[ROW_WHEN] = g_param_spec_string ("when", NULL, NULL, "", flags);
  g_object_class_install_properties (object_class, N_ROW_PROPERTIES, row_properties);
}

static void
sy_task_row_init (SyTaskRow *self)
{
  self->until = self->review = self->action = self->today = NAN;
}

static double
read_day (const char *text)
{
  double day;

  return text != NULL && sy_date_read (text, &day) ? day : NAN;
}

static double
read_moment (const char *text)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = text != NULL ? g_date_time_new_from_iso8601 (text, utc) : NULL;

  return time != NULL ? (double) g_date_time_to_unix (time) + g_date_time_get_microsecond (time) / 1e6 : -INFINITY;
}

static void
read_days (SyTaskRow *self)
{
  self->until = read_day (self->task->valid_until);
  self->review = read_day (self->task->review_due);
  self->action = read_day (self->task->action_due);
  self->moment = read_moment (self->task->when);
}

SyTaskRow *
sy_task_row_new_take (SyTask *task)
{
  SyTaskRow *self = g_object_new (SY_TYPE_TASK_ROW, NULL);

  self->task = task;
  read_days (self);
  return self;
}

SyTaskRow *
sy_task_row_new (const SyTask *task)
{
  return sy_task_row_new_take (sy_task_copy (task));
}

const char *
sy_register_item_kind (SyRegister which)
{
  static const char *const kinds[SY_N_REGISTERS] = {
    [SY_REGISTER_TASKS] = SY_ITEM_TASK,
    [SY_REGISTER_CHANGEOVERS] = SY_ITEM_CHANGEOVER,
    [SY_REGISTER_CASES] = SY_ITEM_CASE,
    [SY_REGISTER_DIES] = SY_ITEM_DIE,
    [SY_REGISTER_GEAR] = SY_ITEM_GEAR,
  };

  return kinds[which];
}

const SyTask *
sy_task_row_get_task (SyTaskRow *self)
{
  return self->task;
}

const char *
sy_task_row_get_name_key (SyTaskRow *self)
{
  if (self->name_key == NULL)
    {
      g_autofree char *folded = g_utf8_casefold (self->task->name, -1);

      self->name_key = g_utf8_collate_key_for_filename (folded, -1);
    }
  return self->name_key;
}

static gboolean
same_detail (const SyItemDetail *a, const SyItemDetail *b)
{
  gboolean same = same_number (a->mass_with_allowance_kg, b->mass_with_allowance_kg)
                  && same_number (a->wll_kg, b->wll_kg) && a->withdrawn == b->withdrawn
                  && g_strcmp0 (a->machine, b->machine) == 0 && g_strcmp0 (a->storage, b->storage) == 0
                  && g_strcmp0 (a->gear_kind, b->gear_kind) == 0
                  && g_strcmp0 (a->condition, b->condition) == 0 && g_strcmp0 (a->identity, b->identity) == 0;

  for (gsize i = 0; i < G_N_ELEMENTS (a->cg_mm); i++)
    same = same && same_number (a->cg_mm[i], b->cg_mm[i]);
  return same;
}

/* What is done about an item besides revising it. */
static gboolean
same_deeds (const SyTask *a, const SyTask *b)
{
  return a->seat == b->seat && a->retired == b->retired && a->n_open == b->n_open
         && a->signed_revision == b->signed_revision && a->told_revision == b->told_revision
         && g_strcmp0 (a->signed_by, b->signed_by) == 0 && g_strcmp0 (a->signed_when, b->signed_when) == 0
         && g_strcmp0 (a->action_due, b->action_due) == 0 && g_strcmp0 (a->review_due, b->review_due) == 0
         && g_strcmp0 (a->review_trigger, b->review_trigger) == 0;
}

gboolean
sy_task_row_update (SyTaskRow *self, const SyTask *task)
{
  SyTask *old = self->task;
  gboolean changed[N_ROW_PROPERTIES] = { FALSE };
  gboolean any = FALSE;

  g_return_val_if_fail (g_str_equal (old->id, task->id), FALSE);

  changed[ROW_NAME] = !g_str_equal (old->name, task->name);
  changed[ROW_PLACE] = !g_str_equal (old->place, task->place);
  changed[ROW_VERDICT] = old->verdict != task->verdict;
  changed[ROW_INDEX] = !same_number (old->index, task->index);
  changed[ROW_RANK] = !same_number (old->rank, task->rank);
  changed[ROW_MASS] = !same_number (old->mass_kg, task->mass_kg);
  changed[ROW_REVISION] = old->revision != task->revision;
  changed[ROW_BY] = g_strcmp0 (old->by, task->by) != 0;
  changed[ROW_WHEN] = g_strcmp0 (old->when, task->when) != 0;
  /* What has no property is still shown or searched. */
  any = old->clash != task->clash || !same_deeds (old, task)
        || g_strcmp0 (old->units, task->units) != 0 || g_strcmp0 (old->why, task->why) != 0
        || g_strcmp0 (old->index_symbol, task->index_symbol) != 0
        || g_strcmp0 (old->valid_until, task->valid_until) != 0 || !same_detail (&old->detail, &task->detail)
        || !same_number (old->persons, task->persons)
        || !same_number (old->lifts_per_day, task->lifts_per_day);
  for (guint i = ROW_ID; i < N_ROW_PROPERTIES; i++)
    any = any || changed[i];
  if (!any)
    return FALSE;

  self->task = sy_task_copy (task);
  /* Others look at the id, which is for ever the same. */
  g_free (self->task->id);
  self->task->id = g_steal_pointer (&old->id);
  sy_task_free (old);
  read_days (self);
  self->serial++;
  g_clear_pointer (&self->name_key, g_free);
  for (guint i = ROW_ID; i < N_ROW_PROPERTIES; i++)
    if (changed[i])
      g_object_notify_by_pspec (G_OBJECT (self), row_properties[i]);
  return TRUE;
}

const SyItemFigures *
sy_task_row_get_figures (SyTaskRow *self)
{
  return self->figures != NULL && self->figures->revision == self->task->revision ? self->figures : NULL;
}

void
sy_task_row_take_figures (SyTaskRow *self, SyItemFigures *figures)
{
  sy_item_figures_free (self->figures);
  self->figures = figures;
  self->serial++;
}

gboolean
sy_task_row_set_today (SyTaskRow *self, double today)
{
  gboolean has_day = !isnan (self->until) || !isnan (self->review) || !isnan (self->action);
  gboolean changed = has_day && !same_number (self->today, today);

  self->today = today;
  self->serial += changed;
  return changed;
}

guint
sy_task_row_get_serial (SyTaskRow *self)
{
  return self->serial;
}

double
sy_task_row_get_moment (SyTaskRow *self)
{
  return self->moment;
}

double
sy_task_row_get_review_left (SyTaskRow *self)
{
  return self->review - self->today;
}

double
sy_task_row_get_action_left (SyTaskRow *self)
{
  return self->action - self->today;
}

gboolean
sy_task_row_is_signed (SyTaskRow *self)
{
  return self->task->signed_revision != 0 && self->task->signed_revision == self->task->revision;
}

double
sy_task_row_get_days_left (SyTaskRow *self)
{
  return self->until - self->today;
}

gboolean
sy_task_row_is_expired (SyTaskRow *self)
{
  return self->today > self->until;
}

SyVerdict
sy_task_row_get_verdict (SyTaskRow *self)
{
  if (sy_task_row_is_expired (self)
      && sy_verdict_rank (self->task->verdict) < sy_verdict_rank (SY_VERDICT_INCOMPLETE))
    return SY_VERDICT_INCOMPLETE;
  return self->task->verdict;
}
