/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "sy-lift-set-put.h"

/* Several lifts of one job: composite, sequential and variable lifting index, and a rota. */

#define ISO_MR "ISO 11228-1:2003 A.7 (from memory)"
#define ISO_MASS "ISO 11228-1:2003 Annex C (from memory)"

static const SySymbol symbols[SY_SET_N_SYMBOLS] = {
  [SY_SET_CLI] = { "CLI", SY_KIND_RATIO, N_ ("Composite lifting index"), SY_SET_CLI_SOURCE },
  [SY_SET_SLI] = { "SLI", SY_KIND_RATIO, N_ ("Sequential lifting index"), SY_SET_SLI_SOURCE },
  [SY_SET_VLI] = { "VLI", SY_KIND_RATIO, N_ ("Variable lifting index: the larger of both groupings"), SY_SET_VLI_SOURCE },
  [SY_SET_VLI_EQUAL] = { "VLI.equal", SY_KIND_RATIO, N_ ("Variable lifting index, categories of equal width"), SY_SET_VLI_SOURCE },
  [SY_SET_VLI_NTILE] = { "VLI.ntile", SY_KIND_RATIO, N_ ("Variable lifting index, categories of equal frequency"),
                         "ISO/TR 12295 (from memory)" },
  [SY_SET_K] = { "K", SY_KIND_RATIO, N_ ("Weight of the rotation"), SY_SET_SLI_SOURCE },
  [SY_SET_LIFTS] = { "lifts", SY_KIND_COUNT, N_ ("Lifts in the set"), "as given" },
  [SY_SET_F] = { "F", SY_KIND_FREQUENCY, N_ ("Lifting frequency of all together"), SY_SET_MANUAL " 1.2" },
  [SY_SET_INDEX_LIMIT] = { "index_limit", SY_KIND_RATIO, N_ ("Index at which the load is at its recommended limit"),
                           SY_SET_MANUAL " 1.4" },
  [SY_SET_MR_RATIO] = { "mR_ratio", SY_KIND_RATIO, N_ ("The index with the strictest reference mass"), ISO_MR },
  [SY_SET_MASS_EACH] = { "mass_each", SY_KIND_MASS, N_ ("Load by person, of the lift nearest its reference mass"),
                         "common practice, no source" },
  [SY_SET_M_REF] = { "m_ref", SY_KIND_MASS, N_ ("Reference mass of who may be assigned to that lift"), ISO_MASS },
  [SY_SET_PERSONS] = { "persons", SY_KIND_COUNT, N_ ("Persons"), "as given" },
  [SY_SET_LIFTS_PER_DAY] = { "lifts_per_day", SY_KIND_COUNT, N_ ("Lifts a day"), "as given, or pace × minutes of work" },
};

static const char *const named_symbols[] = {
  "lift.*.FILI", "lift.*.STLI", "lift.*.LI", "lift.*.LImax", "person.*.SLI", "equal.*.FILI", "ntile.*.FILI",
};
static const char *const index_symbols[] = { "CLI", "SLI", "VLI" };

static const SyLimit limits[] = {
  { "niosh-composite", N_ ("Composite lifting index"), SY_SET_MANUAL " (1994, rev. 9/2021)", false, "CLI", "index_limit", "CLI" },
  { "niosh-sequential", N_ ("Sequential lifting index"), "Waters, Lu, Occhipinti 2007", true, "SLI", "index_limit", "SLI" },
  { "niosh-variable", N_ ("Variable lifting index"), "Waters et al. 2016", false, "VLI", "index_limit", "VLI" },
  { "iso-mass", N_ ("The same with the reference mass of ISO 11228-1"), "ISO 11228-1:2003 A.7", true, "mR_ratio", "index_limit",
    "mR_ratio" },
  { "iso-reference", N_ ("Reference mass of ISO 11228-1"), "ISO 11228-1:2003 Annex C", true, "mass_each", "m_ref", NULL },
};

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  static const size_t index_of[] = { SY_SET_CLI, SY_SET_SLI, SY_SET_VLI };
  const SyLiftSetFacts *facts = data;
  SySetTally tally = { 0 };

  sink->index_symbol = index_symbols[facts->combine];
  if (facts->combine == SY_COMBINE_COMPOSITE)
    sy_set_composite (facts, context, sink, &tally);
  else if (facts->combine == SY_COMBINE_VARIABLE)
    sy_set_variable (facts, context, sink, &tally);
  else
    (facts->rota.given ? sy_set_rota : sy_set_rotation) (facts, context, sink, &tally);

  double index = sink->quantities[index_of[facts->combine]].value;
  sy_sink_value (sink, SY_SET_LIFTS, (double) facts->lifts.count);
  if (facts->combine != SY_COMBINE_SEQUENCE)
    sy_sink_value (sink, SY_SET_F, tally.per_min);
  sy_sink_value (sink, SY_SET_INDEX_LIMIT, 1);
  sy_sink_value (sink, SY_SET_MR_RATIO, index * sy_lift_constants (context->units)->load_constant / tally.reference);
  sy_sink_value (sink, SY_SET_MASS_EACH, tally.mass_each);
  sy_sink_value (sink, SY_SET_M_REF, tally.m_ref);
  sy_sink_value (sink, SY_SET_PERSONS, tally.persons);
  sy_sink_value (sink, SY_SET_LIFTS_PER_DAY, tally.a_day);
  if (!context->quantities_only)
    sy_lift_set_notes (facts, context, sink);
}

static const char *const view_titles[] = { N_ ("What adds to the index") };

extern const SyMethod sy_method_lift_set;
const SyMethod sy_method_lift_set = {
  .id = "lift-set",
  .title = N_ ("Several lifts"),
  .source = "Revised NIOSH lifting equation, DHHS (NIOSH) 94-110 (1994, rev. 9/2021), composite index; sequential index of "
            "Waters, Lu, Occhipinti 2007 (from memory); variable index of Waters et al. 2016; reference masses of "
            "ISO 11228-1:2003 (from memory)",
  .conditions_source = SY_SET_MANUAL " 1.2 (limitations)",
  .edition = 1,
  .item_kind = "task",
  .facts_size = sizeof (SyLiftSetFacts),
  .fields = sy_lift_set_fields,
  .n_fields = SY_N_LIFT_SET_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .index_symbol = "CLI",
  .index_symbols = index_symbols,
  .n_index_symbols = SY_LEN (index_symbols),
  .ratio_symbol = "mR_ratio",
  .limits = limits,
  .n_limits = SY_LEN (limits),
  .check = sy_lift_set_check,
  .evaluate = evaluate,
  .formula = sy_lift_set_formula,
  .named_formula = sy_lift_set_named_formula,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = sy_lift_set_scene,
};
