/* SPDX-License-Identifier: MIT */
#include "sy-carriers.h"

#include <math.h>
#include <string.h>

#include "sy-i18n.h"
#include "sy-task-parts.h"
#include "sy-task-plan.h"

static void
carrier_free (gpointer data)
{
  SyCarrier *carrier = data;

  g_free (carrier->name);
  g_free (carrier->subject);
  g_free (carrier->path);
  g_free (carrier);
}

static double
value_of (const SyFindings *findings, const char *prefix, const char *suffix)
{
  g_autofree char *symbol = prefix != NULL ? g_strdup_printf ("%s.%s", prefix, suffix) : g_strdup (suffix);
  const SyQuantity *quantity = sy_findings_quantity (findings, symbol);

  if (quantity == NULL || quantity->state == SY_STATE_ABSENT)
    return NAN;
  return quantity->state == SY_STATE_UNBOUNDED ? INFINITY : quantity->value;
}

/* Takes @name and @path. */
static SyCarrier *
add (GPtrArray *list, char *name, char *path, double demand, double capacity, double ratio)
{
  SyCarrier *carrier = g_new0 (SyCarrier, 1);

  carrier->name = name;
  carrier->path = path;
  carrier->demand = demand;
  carrier->capacity = capacity;
  carrier->ratio = ratio;
  g_ptr_array_add (list, carrier);
  return carrier;
}

/* NULL: the findings do not have it, because nothing hangs. Takes @name and @path. */
static SyCarrier *
add_named (GPtrArray *list, const SyFindings *findings, const char *prefix, char *name, char *path)
{
  double demand = value_of (findings, prefix, "demand");
  SyCarrier *carrier;

  if (isnan (demand))
    {
      g_free (name);
      g_free (path);
      return NULL;
    }
  carrier = add (list, name, path, demand, value_of (findings, prefix, "capacity"),
                 value_of (findings, prefix, "utilisation"));
  carrier->governs = strcmp (prefix, findings->sink.governing) == 0;
  return carrier;
}

/* A master link that an earlier leg lists too is one and the same. */
static gboolean
is_listed (GPtrArray *list, const SyRigElement *element)
{
  for (guint i = 0; i < list->len && element->kind == SY_GEAR_MASTER_LINK; i++)
    {
      SyCarrier *other = g_ptr_array_index (list, i);

      if (other->element != NULL && other->element->kind == SY_GEAR_MASTER_LINK
          && strcmp (other->element->label, element->label) == 0)
        return TRUE;
    }
  return FALSE;
}

static void
add_leg (GPtrArray *list, const SyFindings *findings, const SyRigLeg *leg, gsize at)
{
  const SyRigElement *elements = leg->elements.items;
  const char *label = ((const char *const *) leg->point.items)[0];

  for (gsize i = 0; i < leg->elements.count; i++)
    {
      g_autofree char *prefix = g_strdup_printf ("element.%s.%s", label, elements[i].label);
      SyCarrier *carrier;

      if (is_listed (list, &elements[i]))
        continue;
      /* Translators: a piece of gear and the lifting point of the leg that it is in. */
      carrier = add_named (list, findings, prefix, g_strdup_printf (_("%s at %s"), elements[i].label, label),
                           g_strdup_printf ("legs[%" G_GSIZE_FORMAT "].elements[%" G_GSIZE_FORMAT "].wll", at, i));
      if (carrier == NULL)
        continue;
      carrier->element = &elements[i];
      carrier->leg = label;
      carrier->subject = g_strdup_printf ("%s, %s", label, elements[i].label);
    }
}

static void
add_rig (GPtrArray *list, const SyFindings *findings, const SyRigFacts *facts)
{
  const SyRigLeg *legs = facts->legs.items;
  const SyRigSuspension *suspension = facts->suspension.items;

  for (gsize i = 0; i < facts->legs.count; i++)
    add_leg (list, findings, &legs[i], i);
  for (gsize i = 0; i < facts->suspension.count; i++)
    {
      g_autofree char *prefix = g_strdup_printf ("suspension.%s", suspension[i].label);
      SyCarrier *carrier = add_named (list, findings, prefix, g_strdup (suspension[i].label),
                                      g_strdup_printf ("suspension[%" G_GSIZE_FORMAT "].wll", i));

      if (carrier == NULL)
        continue;
      carrier->suspension = &suspension[i];
      carrier->subject = g_strdup (suspension[i].label);
    }
}

/* What the method itself has one of: the plan says where. */
static void
add_planned (GPtrArray *list, const SyFindings *findings)
{
  gsize n;
  const SyPlanCarrier *planned = sy_task_plan_carriers (findings->method, &n);

  for (gsize i = 0; i < n; i++)
    {
      double ratio = value_of (findings, NULL, planned[i].ratio);
      SyCarrier *carrier;

      if (isnan (ratio))
        continue;
      carrier = add (list, g_strdup (sy_translate (planned[i].name)), g_strdup (planned[i].fact),
                     planned[i].demand != NULL ? value_of (findings, NULL, planned[i].demand) : NAN,
                     planned[i].capacity != NULL ? value_of (findings, NULL, planned[i].capacity) : NAN, ratio);
      carrier->governs = g_strcmp0 (planned[i].governing, findings->sink.governing) == 0;
    }
}

static int
compare (gconstpointer a, gconstpointer b)
{
  const SyCarrier *first = *(SyCarrier *const *) a, *second = *(SyCarrier *const *) b;

  if (isnan (first->ratio) != isnan (second->ratio))
    return isnan (first->ratio) ? 1 : -1;
  if (isnan (first->ratio) || first->ratio == second->ratio)
    return second->governs - first->governs;
  return first->ratio > second->ratio ? -1 : 1;
}

GPtrArray *
sy_carriers_list (const SyAssessment *assessment)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (carrier_free);

  if (strcmp (assessment->facts.method->id, "rigged-lift") == 0)
    add_rig (list, assessment->findings, assessment->facts.values);
  add_planned (list, assessment->findings);
  g_ptr_array_sort (list, compare);
  return list;
}

char *
sy_carrier_dup_figures (const SyCarrier *carrier, const SyFindings *findings)
{
  g_autofree char *demand = NULL;
  g_autofree char *capacity = NULL;

  if (isnan (carrier->demand))
    return g_strdup ("");
  if (!isfinite (carrier->capacity))
    return sy_words_quantity (carrier->demand, SY_KIND_MASS, findings->units);
  demand = sy_words_against (carrier->demand, carrier->capacity, SY_KIND_MASS, findings->units);
  capacity = sy_words_against (carrier->capacity, carrier->demand, SY_KIND_MASS, findings->units);
  /* The unit once. */
  if (strchr (demand, ' ') != NULL)
    *strrchr (demand, ' ') = '\0';
  return g_strdup_printf ("%s / %s", demand, capacity);
}

char *
sy_carrier_dup_percent (const SyCarrier *carrier, const SyFindings *findings)
{
  return isfinite (carrier->ratio) ? sy_part_percent (carrier->ratio, findings) : g_strdup ("");
}

const char *
sy_carrier_said (const SyCarrier *carrier)
{
  if (isfinite (carrier->ratio))
    return NULL;
  return isnan (carrier->ratio) ? _("capacity not known") : _("no capacity left");
}

void
sy_carriers_show (GPtrArray *carriers, const SyFindings *findings, guint most, SyCapacityView *view)
{
  double notice = sy_part_notice (findings);
  g_autofree char *notice_text
      = isfinite (notice) ? sy_words_quantity (notice * 100, SY_KIND_PERCENT, findings->units) : NULL;

  sy_capacity_view_begin (view, notice, notice_text);
  for (guint i = 0; i < carriers->len && (most == 0 || i < most); i++)
    {
      const SyCarrier *carrier = g_ptr_array_index (carriers, i);
      g_autofree char *figures = sy_carrier_dup_figures (carrier, findings);
      g_autofree char *percent = sy_carrier_dup_percent (carrier, findings);

      sy_capacity_view_add (view, carrier->name, figures, percent, carrier->ratio, sy_carrier_said (carrier),
                            carrier->governs, carrier->path);
    }
  sy_capacity_view_end (view);
}
