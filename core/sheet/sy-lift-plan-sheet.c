/* SPDX-License-Identifier: MIT */
/* The plan of a lift by a crane or hoist: how the load hangs, what carries it, what is looked at before. */
#include <math.h>
#include <string.h>

#include "sy-rig-facts.h"
#include "sy-task-sheet-private.h"

#define FONT "Sans 7.5px"
#define VIEW_HEIGHT 182 /* plan and elevations stand on the first page */

static double
value_of (const SyFindings *findings, const char *prefix, const char *name, const char *suffix)
{
  g_autofree char *symbol = *prefix != '\0' ? g_strdup_printf ("%s.%s.%s", prefix, name, suffix) : g_strdup (suffix);
  const SyQuantity *quantity = sy_findings_quantity (findings, symbol);

  return quantity == NULL || quantity->state == SY_STATE_ABSENT ? NAN : quantity->value;
}

/* "–" where it is not known. */
static char *
figure (const SyFindings *findings, double value, SyKind kind)
{
  return isfinite (value) ? sy_words_quantity (value, kind, findings->units) : g_strdup ("–");
}

/* ---- what carries ---- */

/* A thing that carries, as marked and as it is used. */
typedef struct
{
  const char *where, *label;
  int kind;         /* SyGearKind, -1 not said */
  SyNumber wll;
  const char *due;
  gboolean withdrawn;
  char *symbol;     /* "element.A.E-1" */
} Carrier;

static void
add_carrier (SyFolio *folio, const SyTaskSheet *sheet, const Carrier *carrier)
{
  const SyFindings *findings = sheet->findings;
  g_autofree char *demand_symbol = g_strconcat (carrier->symbol, ".demand", NULL);
  g_autofree char *capacity_symbol = g_strconcat (carrier->symbol, ".capacity", NULL);
  g_autofree char *used_symbol = g_strconcat (carrier->symbol, ".utilisation", NULL);
  const double demand = value_of (findings, "", "", demand_symbol);
  const double capacity = value_of (findings, "", "", capacity_symbol);
  const double used = value_of (findings, "", "", used_symbol);
  const double wll = carrier->wll.given ? carrier->wll.value : NAN;
  const char *kind_words = carrier->kind >= 0 ? sy_sheet_in (sheet, sy_gear_kind_choices[carrier->kind].label) : "";
  g_autofree char *kind = g_strdup_printf ("%s%s%s", carrier->label, *kind_words != '\0' ? ", " : "", kind_words);
  g_autofree char *marked = figure (findings, wll, SY_KIND_MASS);
  g_autofree char *left = figure (findings, capacity / wll, SY_KIND_RATIO);
  g_autofree char *load = figure (findings, demand, SY_KIND_MASS), *may = figure (findings, capacity, SY_KIND_MASS);
  g_autofree char *percent = isnan (used) ? g_strdup ("–") : sy_sheet_percent (findings, used);
  const char *due = carrier->withdrawn     ? sy_sheet_in (sheet, N_ ("withdrawn"))
                    : carrier->due != NULL ? carrier->due
                                           : "–";
  const char *cells[] = { carrier->where, kind, marked, left, may, load, percent, due };

  if (strcmp (carrier->symbol, findings->sink.governing) == 0)
    sy_folio_row_in (folio, cells, SY_TYPE_NOTE_STRONG);
  else
    sy_folio_row (folio, cells);
}

static void
add_leg_elements (SyFolio *folio, const SyTaskSheet *sheet, const SyRigLeg *leg)
{
  const SyRigElement *elements = leg->elements.items;
  const char *point = ((const char *const *) leg->point.items)[0];

  for (gsize i = 0; i < leg->elements.count; i++)
    {
      const SyRigElement *each = &elements[i];
      g_autofree char *symbol = g_strdup_printf ("element.%s.%s", point, each->label);

      add_carrier (folio, sheet, &(Carrier) { point, each->label, each->kind, each->wll, each->due, each->withdrawn == 1,
                                              symbol });
    }
}

static void
add_carriers (SyFolio *folio, const SyTaskSheet *sheet, const SyRigFacts *facts)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Point")), 0.1, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("What carries")), 0.26, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Marked WLL")), 0.11, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Factor")), 0.08, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("May carry")), 0.11, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Carries")), 0.11, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Used")), 0.1, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Due")), 0.13, SY_TYPE_NOTE },
  };
  const SyRigLeg *legs = facts->legs.items;
  const SyRigSuspension *suspension = facts->suspension.items;

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("What carries it")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < facts->legs.count; i++)
    add_leg_elements (folio, sheet, &legs[i]);
  for (gsize i = 0; i < facts->suspension.count; i++)
    {
      const SyRigSuspension *each = &suspension[i];
      g_autofree char *symbol = g_strdup_printf ("suspension.%s", each->label);

      add_carrier (folio, sheet, &(Carrier) { sy_sheet_in (sheet, N_ ("hook")), each->label,
                                              each->kind >= 0 ? each->kind + SY_GEAR_HOIST : -1, each->wll, each->due,
                                              each->withdrawn == 1, symbol });
    }
  sy_folio_paragraph (
    folio, sy_sheet_in (sheet, N_ ("Factor: what is left of the marking as it is used. Heavy: what governs.")), SY_TYPE_NOTE);
}

/* ---- legs ---- */

static void
add_leg (SyFolio *folio, const SyTaskSheet *sheet, const char *point, const SyRigLeg *leg)
{
  const SyFindings *findings = sheet->findings;
  const double angle = value_of (findings, "leg", point, "angle");
  g_autofree char *length = figure (findings, leg->length.given ? leg->length.value : NAN, SY_KIND_LENGTH);
  g_autofree char *vertical = figure (findings, angle, SY_KIND_ANGLE);
  g_autofree char *level = figure (findings, 90 - angle, SY_KIND_ANGLE);
  g_autofree char *factor = figure (findings, value_of (findings, "leg", point, "factor"), SY_KIND_RATIO);
  g_autofree char *tension = figure (findings, value_of (findings, "leg", point, "tension"), SY_KIND_FORCE);
  g_autofree char *load = figure (findings, value_of (findings, "leg", point, "load"), SY_KIND_MASS);
  const char *cells[] = { point, length, vertical, level, factor, tension, load };

  sy_folio_row (folio, cells);
}

static void
add_legs (SyFolio *folio, const SyTaskSheet *sheet, const SyRigFacts *facts)
{
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Leg to point")), 0.18, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Length given")), 0.14, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("From the vertical")), 0.14, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("From the horizontal")), 0.15, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Angle factor")), 0.12, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("Tension")), 0.13, SY_TYPE_NOTE },
    { sy_sheet_in (sheet, N_ ("As mass")), 0.14, SY_TYPE_NOTE },
  };
  const SyRigLeg *legs = facts->legs.items;

  if (facts->legs.count == 0)
    return;
  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Legs")));
  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (gsize i = 0; i < facts->legs.count; i++)
    for (gsize k = 0; k < legs[i].point.count; k++)
      add_leg (folio, sheet, ((const char *const *) legs[i].point.items)[k], &legs[i]);
  sy_folio_paragraph (
    folio, sy_sheet_in (sheet, N_ ("The tension is the largest that statics allows however the legs share.")), SY_TYPE_NOTE);
}

/* ---- the load, and before it leaves the floor ---- */

static void
add_load (SyFolio *folio, const SyTaskSheet *sheet, const SyRigFacts *facts)
{
  const SyFindings *findings = sheet->findings;
  const SyFolioColumn columns[] = {
    { sy_sheet_in (sheet, N_ ("Load")), 0.25, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("Mass")), 0.15, SY_TYPE_BODY },
    { sy_sheet_in (sheet, N_ ("With its allowance")), 0.18, SY_TYPE_STRONG },
    { sy_sheet_in (sheet, N_ ("In the hook")), 0.15, SY_TYPE_STRONG },
    { sy_sheet_in (sheet, N_ ("Where it balances")), 0.27, SY_TYPE_BODY },
  };
  g_autofree char *mass = figure (findings, facts->mass.given ? facts->mass.value : NAN, SY_KIND_MASS);
  g_autofree char *planned = figure (findings, value_of (findings, "", "", "mass_with_allowance"), SY_KIND_MASS);
  g_autofree char *hook = figure (findings, value_of (findings, "", "", "hook.load"), SY_KIND_MASS);
  g_autoptr (GPtrArray) given = sy_sheet_facts (sheet, FALSE);
  g_autofree char *balance = sy_card_balance (sheet, given);
  const char *cells[] = { facts->die != NULL ? facts->die : sheet->event->name, mass, planned, hook, balance };

  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  sy_folio_row (folio, cells);
}

static void
add_checks (SyFolio *folio, const SyTaskSheet *sheet, const SyRigFacts *facts)
{
  const SyField *field = sy_method_field (sheet->findings->method, "checks", NULL);

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("Before the lift")));
  sy_folio_paragraph (folio,
                      sy_sheet_in (sheet, N_ ("Tick at the load, every time: what was answered when it was assessed is said "
                                              "beside it.")),
                      SY_TYPE_NOTE);
  for (gsize i = 0; field != NULL && i < field->n_choices; i++)
    {
      const gboolean asked = (facts->checks.bits & (1ul << i)) != 0;
      g_autofree char *words = g_strdup_printf ("%s (%s)", sy_sheet_in (sheet, field->choices[i].label),
                                                asked ? sy_sheet_in (sheet, N_ ("was checked"))
                                                      : sy_sheet_in (sheet, N_ ("was not said to be checked")));

      sy_folio_tick (folio, words, SY_TYPE_BODY);
    }
  sy_folio_tick (folio,
                 sy_sheet_in (sheet, N_ ("Every due date in the table above lies ahead; nothing was changed for something "
                                         "else")),
                 SY_TYPE_BODY);
}

/* The plan large, the elevations beside each other under it. */
static void
add_views (SyFolio *folio, const SyTaskSheet *sheet)
{
  const gsize n = sheet->facts->method->n_views;

  sy_folio_heading (folio, sy_sheet_in (sheet, N_ ("How it hangs")));
  for (gsize at = 0; at < n;)
    {
      const guint beside = at == 0 && n % 2 == 1 ? 1 : 2;
      SyFolioPicture pictures[2];

      for (guint i = 0; i < beside; i++)
        pictures[i] = sy_sheet_view (sheet, at++, 1.0 / beside, FONT);
      sy_folio_pictures (folio, pictures, beside, VIEW_HEIGHT);
    }
}

SyFolio *
sy_lift_plan_sheet_new (const SyTaskSheet *sheet)
{
  const SyRigFacts *facts = sheet->facts->values;
  SyFolio *folio = sy_sheet_begin (sheet, N_ ("Lift plan"));

  sy_sheet_add_lead (folio, sheet);
  add_load (folio, sheet, facts);
  add_views (folio, sheet);
  add_carriers (folio, sheet, facts);
  add_legs (folio, sheet, facts);
  sy_sheet_add_reasons (folio, sheet);
  add_checks (folio, sheet, facts);
  sy_sheet_add_cautions (folio, sheet);
  sy_sheet_sign_off (folio, sheet);
  return folio;
}
