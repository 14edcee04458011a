/* SPDX-License-Identifier: MIT */
#include "sy-task-private.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"
#include "sy-method.h"
#include "sy-number.h"

/* Every text that a task owns. */
static const gsize texts[] = {
  G_STRUCT_OFFSET (SyTask, id),
  G_STRUCT_OFFSET (SyTask, item_kind),
  G_STRUCT_OFFSET (SyTask, name),
  G_STRUCT_OFFSET (SyTask, place),
  G_STRUCT_OFFSET (SyTask, method),
  G_STRUCT_OFFSET (SyTask, units),
  G_STRUCT_OFFSET (SyTask, index_symbol),
  G_STRUCT_OFFSET (SyTask, lineage),
  G_STRUCT_OFFSET (SyTask, valid_until),
  G_STRUCT_OFFSET (SyTask, by),
  G_STRUCT_OFFSET (SyTask, why),
  G_STRUCT_OFFSET (SyTask, when),
  G_STRUCT_OFFSET (SyTask, search_text),
  G_STRUCT_OFFSET (SyTask, role),
  G_STRUCT_OFFSET (SyTask, policy),
  G_STRUCT_OFFSET (SyTask, program),
  G_STRUCT_OFFSET (SyTask, begun),
  G_STRUCT_OFFSET (SyTask, signed_by),
  G_STRUCT_OFFSET (SyTask, signed_role),
  G_STRUCT_OFFSET (SyTask, signed_when),
  G_STRUCT_OFFSET (SyTask, open_actions),
  G_STRUCT_OFFSET (SyTask, action_due),
  G_STRUCT_OFFSET (SyTask, review_due),
  G_STRUCT_OFFSET (SyTask, review_trigger),
  G_STRUCT_OFFSET (SyTask, detail.condition),
  G_STRUCT_OFFSET (SyTask, detail.machine),
  G_STRUCT_OFFSET (SyTask, detail.storage),
  G_STRUCT_OFFSET (SyTask, detail.gear_kind),
  G_STRUCT_OFFSET (SyTask, detail.identity),
  G_STRUCT_OFFSET (SyTask, detail.due),
};

const SyJson sy_task_nothing = { .type = SY_JSON_NULL };

static const SyJson *
scan (const char *text, SyMemory *memory)
{
  /* What is wrong with a document was said before it was stored; here its parts are merely absent. */
  SyProblems *problems = sy_memory_take (memory, sizeof *problems);
  const SyJson *root = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, memory, problems);

  return root != NULL ? root : &sy_task_nothing;
}

const SyJson *
sy_task_member (const SyJson *object, const char *key)
{
  const SyJson *member = sy_json_member (object, key);

  return member != NULL ? member : &sy_task_nothing;
}

const char *
sy_task_text (const SyJson *object, const char *key)
{
  const char *text = sy_json_member_text (object, key);

  return text != NULL ? text : "";
}

static const SyJson *
find_quantity (const SyJson *findings, const char *symbol)
{
  return sy_task_member (sy_task_member (findings, "quantities"), symbol);
}

/* NAN for none, INFINITY for one over a limit of zero. */
static double
read_value (const SyJson *quantity)
{
  const char *state = sy_json_member_text (quantity, "state");
  double value = sy_json_member_number (quantity, "value", NAN);

  return isnan (value) && g_strcmp0 (state, "unbounded") == 0 ? INFINITY : value;
}

static double
read_mass_kg (const SyJson *quantity)
{
  const char *unit = sy_json_member_text (quantity, "unit");
  double value = sy_json_member_number (quantity, "value", NAN);

  if (g_strcmp0 (unit, "kg") == 0)
    return value;
  return g_strcmp0 (unit, "lb") == 0 ? value * SY_KG_PER_LB : NAN;
}

static double
read_length_mm (const SyJson *quantity)
{
  const char *unit = sy_json_member_text (quantity, "unit");
  double value = sy_json_member_number (quantity, "value", NAN);

  if (g_strcmp0 (unit, "mm") == 0)
    return value;
  return g_strcmp0 (unit, "in") == 0 ? value * SY_MM_PER_IN : NAN;
}

/* A mass as typed: a number in the document's unit, or a text with a unit of its own. */
static double
read_fact_kg (const SyJson *facts, const char *key)
{
  const SyJson *mass = sy_task_member (facts, key);
  SyUnits units;
  double value = NAN;

  if (mass->type == SY_JSON_NUMBER && sy_units_from_id (sy_task_text (facts, "units"), &units))
    value = sy_unit_convert (SY_KIND_MASS, mass->number, units, SY_UNITS_METRIC);
  else if (mass->type == SY_JSON_TEXT)
    sy_quantity_parse (mass->text, mass->text_length, SY_KIND_MASS, SY_UNITS_METRIC, true, &value, NULL);
  return value;
}

/* The text where it is a date, else "". */
static const char *
date_or_empty (const SyJson *object, const char *key)
{
  const char *text = sy_task_text (object, key);
  double days;

  return sy_date_read (text, &days) ? text : "";
}

static gboolean
has_lifts_per_day (const char *method_id)
{
  const SyMethod *method = sy_method_find (method_id);

  for (gsize i = 0; method != NULL && i < method->n_symbols; i++)
    if (strcmp (method->symbols[i].symbol, "lifts_per_day") == 0)
      return TRUE;
  return FALSE;
}

static double
rank_of (double index, double persons, double lifts_per_day)
{
  /* No pace makes a lift that no limit allows less pressing. */
  return isinf (index) ? INFINITY : index * persons * lifts_per_day;
}

/* Whether the findings carry the caution. */
static gboolean
has_caution (const SyJson *findings, const char *id)
{
  for (const SyJson *each = sy_task_member (findings, "cautions")->first; each != NULL; each = each->next)
    if (strcmp (sy_task_text (each, "id"), id) == 0)
      return TRUE;
  return FALSE;
}

static void
take_findings (SyTask *task, const SyJson *findings)
{
  const char *verdict = sy_json_member_text (findings, "verdict");

  /* Findings that cannot be read never count as a lift within the limits. */
  if (verdict == NULL || !sy_verdict_from_id (verdict, &task->verdict))
    task->verdict = SY_VERDICT_INCOMPLETE;
  sy_event_set (&task->index_symbol, sy_task_text (findings, "index"));
  task->index = read_value (find_quantity (findings, task->index_symbol));
  task->persons = sy_json_member_number (find_quantity (findings, "persons"), "value", 1.0);
  if (strcmp (task->item_kind, SY_ITEM_CHANGEOVER) == 0)
    task->persons = sy_json_member_number (find_quantity (findings, "people"), "value", 1.0);
  task->lifts_per_day = read_value (find_quantity (findings, "lifts_per_day"));
  task->rank = has_lifts_per_day (task->method)
                 ? rank_of (task->index, task->persons, task->lifts_per_day)
                 : NAN;
  task->loosened = has_caution (findings, "policy-loosened");
}

static void
take_mass (SyTask *task, const SyJson *facts, const SyJson *findings)
{
  double with_allowance = read_mass_kg (find_quantity (findings, "mass_with_allowance"));

  task->mass_kg = read_mass_kg (find_quantity (findings, "mass_each")) * task->persons;
  if (isnan (task->mass_kg))
    task->mass_kg = with_allowance;
  if (isnan (task->mass_kg)) /* a cart */
    task->mass_kg = read_fact_kg (facts, "gross_mass");
  if (isnan (task->mass_kg)) /* a die change */
    task->mass_kg = read_mass_kg (find_quantity (findings, "heaviest_by_hand"));
  task->detail.mass_with_allowance_kg = strcmp (task->item_kind, SY_ITEM_DIE) == 0 ? with_allowance : NAN;
}

static void
take_valid_until (SyTask *task, const SyJson *facts, const SyJson *findings)
{
  const char *day = date_or_empty (find_quantity (findings, "valid_until"), "value");

  sy_event_set (&task->valid_until, *day != '\0' ? day : date_or_empty (facts, "due"));
}

static char *
join_machines (const SyJson *machines)
{
  GString *out = g_string_new (NULL);

  for (const SyJson *each = machines->type == SY_JSON_ARRAY ? machines->first : NULL; each != NULL;
       each = each->next)
    if (each->type == SY_JSON_TEXT)
      g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", each->text);
  return g_string_free (out, FALSE);
}

static void
take_detail (SyTask *task, const SyJson *facts, const SyJson *findings)
{
  static const char *const axes[] = { "cg.x", "cg.y", "cg.z" };
  const gboolean is_die = strcmp (task->item_kind, SY_ITEM_DIE) == 0;
  const gboolean is_gear = strcmp (task->item_kind, SY_ITEM_GEAR) == 0;
  const gboolean is_changeover = strcmp (task->item_kind, SY_ITEM_CHANGEOVER) == 0;
  SyItemDetail *detail = &task->detail;
  g_autofree char *serves = join_machines (sy_task_member (facts, "serves"));

  for (gsize i = 0; i < G_N_ELEMENTS (axes); i++)
    detail->cg_mm[i] = is_die ? read_length_mm (find_quantity (findings, axes[i])) : NAN;
  sy_event_set (&detail->machine, is_die || is_changeover ? sy_task_text (facts, "machine") : is_gear ? serves : "");
  sy_event_set (&detail->storage, is_die || is_gear ? sy_task_text (facts, "storage") : "");
  sy_event_set (&detail->gear_kind, is_gear ? sy_task_text (facts, "kind") : "");
  sy_event_set (&detail->identity, is_gear ? sy_task_text (facts, "identity") : "");
  detail->wll_kg = is_gear ? read_fact_kg (facts, "wll") : NAN;
  sy_event_set (&detail->due, is_gear ? date_or_empty (facts, "due") : "");
  detail->withdrawn = is_gear && sy_task_member (facts, "withdrawn")->type == SY_JSON_TRUE;
  sy_event_set (&detail->condition, is_gear ? sy_task_text (facts, "condition") : "");
}

SyTask *
sy_task_new (void)
{
  SyTask *task = g_new0 (SyTask, 1);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, task, texts[i]) = g_strdup ("");
  task->verdict = SY_VERDICT_INCOMPLETE;
  task->index = task->mass_kg = task->lifts_per_day = task->rank = NAN;
  task->persons = 1.0;
  task->detail.mass_with_allowance_kg = task->detail.wll_kg = NAN;
  for (gsize i = 0; i < G_N_ELEMENTS (task->detail.cg_mm); i++)
    task->detail.cg_mm[i] = NAN;
  return task;
}

SyTask *
sy_task_copy (const SyTask *task)
{
  SyTask *copy = g_memdup2 (task, sizeof *task);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    G_STRUCT_MEMBER (char *, copy, texts[i]) = g_strdup (G_STRUCT_MEMBER (char *, copy, texts[i]));
  return copy;
}

void
sy_task_free (SyTask *task)
{
  if (task == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_free (G_STRUCT_MEMBER (char *, task, texts[i]));
  g_free (task);
}

static void
take_revision (SyTask *task, const SyEvent *event)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *facts = scan (event->facts, memory);
  const SyJson *findings = scan (event->findings, memory);

  sy_event_set (&task->item_kind, event->item_kind);
  sy_event_set (&task->name, event->name);
  sy_event_set (&task->method, event->method);
  task->edition = event->edition;
  sy_event_set (&task->policy, event->policy);
  sy_event_set (&task->program, event->program);
  sy_task_take_history (task, event);
  take_findings (task, findings);
  take_mass (task, facts, findings);
  take_valid_until (task, facts, findings);
  take_detail (task, facts, findings);
  sy_event_set (&task->by, event->by);
  sy_event_set (&task->role, event->role);
  sy_event_set (&task->why, event->why);
  sy_event_set (&task->when, event->claimed);
  sy_event_set (&task->place, sy_task_text (facts, "place"));
  sy_event_set (&task->units, sy_task_text (facts, "units"));
  sy_task_take_words (task, event, facts, findings);
}

SyTask *
sy_task_apply (SyTask *task, const SyEvent *event)
{
  if (event->kind == SY_EVENT_REVISION)
    {
      if (task == NULL)
        {
          task = sy_task_new ();
          sy_event_set (&task->id, event->item);
          sy_event_set (&task->begun, event->claimed);
        }
      take_revision (task, event);
    }
  else if (task != NULL)
    sy_task_take_deed (task, event);
  return task;
}

gboolean
sy_task_is_expired (const SyTask *task, double today)
{
  double last;

  return sy_date_read (task->valid_until, &last) && today > last;
}
