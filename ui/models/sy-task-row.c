/* SPDX-License-Identifier: MIT */
#include "sy-task-row.h"

#include <math.h>

#include "sy-date.h"

struct _SyTaskRow
{
  GObject parent_instance;
  SyTask *task;
  char *name_key; /* made when first asked for */
  char *folded;
  double until;   /* last day on which the verdict holds, days since 1970; NAN none */
  double today;
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
  g_free (self->folded);
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
  self->until = self->today = NAN;
}

static void
read_until (SyTaskRow *self)
{
  if (!sy_date_read (self->task->valid_until, &self->until))
    self->until = NAN;
}

SyTaskRow *
sy_task_row_new (const SyTask *task)
{
  SyTaskRow *self = g_object_new (SY_TYPE_TASK_ROW, NULL);

  self->task = sy_task_copy (task);
  read_until (self);
  return self;
}

const char *
sy_register_item_kind (SyRegister which)
{
  static const char *const kinds[SY_N_REGISTERS] = {
    [SY_REGISTER_TASKS] = SY_ITEM_TASK,
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

const char *
sy_task_row_get_folded (SyTaskRow *self)
{
  if (self->folded == NULL)
    {
      g_autofree char *whole = g_utf8_normalize (self->task->search_text, -1,
                                                 G_NORMALIZE_ALL_COMPOSE);

      self->folded = g_utf8_casefold (whole != NULL ? whole : "", -1);
    }
  return self->folded;
}

static gboolean
same_detail (const SyItemDetail *a, const SyItemDetail *b)
{
  gboolean same = same_number (a->mass_with_allowance_kg, b->mass_with_allowance_kg)
                  && same_number (a->wll_kg, b->wll_kg) && a->withdrawn == b->withdrawn
                  && g_strcmp0 (a->machine, b->machine) == 0 && g_strcmp0 (a->storage, b->storage) == 0
                  && g_strcmp0 (a->gear_kind, b->gear_kind) == 0 && g_strcmp0 (a->identity, b->identity) == 0;

  for (gsize i = 0; i < G_N_ELEMENTS (a->cg_mm); i++)
    same = same && same_number (a->cg_mm[i], b->cg_mm[i]);
  return same;
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
  any = g_strcmp0 (old->search_text, task->search_text) != 0 || old->clash != task->clash
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
  sy_task_free (old);
  read_until (self);
  g_clear_pointer (&self->name_key, g_free);
  g_clear_pointer (&self->folded, g_free);
  for (guint i = ROW_ID; i < N_ROW_PROPERTIES; i++)
    if (changed[i])
      g_object_notify_by_pspec (G_OBJECT (self), row_properties[i]);
  return TRUE;
}

gboolean
sy_task_row_set_today (SyTaskRow *self, double today)
{
  double before = sy_task_row_get_days_left (self);

  self->today = today;
  return !same_number (before, sy_task_row_get_days_left (self));
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
