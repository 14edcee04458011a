/* SPDX-License-Identifier: MIT */
#include "die-scene.h"
#include "sy-body.h"
#include "sy-die-facts.h"
#include "sy-lift.h"
#include "sy-mass-basis.h"
#include "sy-material.h"
#include "sy-outline.h"

/* What a die weighs and where it balances; and what the register keeps of it. */

#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
#define GEOMETRY "plane and solid geometry"

/* Fields */

static const SyChoice shape_choices[] = {
  [SY_BODY_BLOCK] = { "block", N_ ("Block"), N_ ("size") },
  [SY_BODY_CYLINDER] = { "cylinder", N_ ("Cylinder"), N_ ("diameter and height") },
  [SY_BODY_TUBE] = { "tube", N_ ("Tube"), N_ ("outer and inner diameter, height") },
  [SY_BODY_PRISM] = { "prism", N_ ("Prism"), N_ ("area of its section, height") },
};
static const SyChoice axis_choices[] = {
  [SY_AXIS_X] = { "x", N_ ("x"), NULL },
  [SY_AXIS_Y] = { "y", N_ ("y"), NULL },
  [SY_AXIS_Z] = { "z", N_ ("z, upright"), NULL },
};
/* In the order of sy_materials. */
static const SyChoice material_choices[SY_N_MATERIALS] = {
  { "steel", N_ ("Steel"), NULL },
  { "cast-steel", N_ ("Cast steel"), NULL },
  { "tool-steel", N_ ("Tool steel"), NULL },
  { "tool-steel-d2", N_ ("Tool steel D2"), NULL },
  { "tool-steel-h13", N_ ("Tool steel H13"), NULL },
  { "tool-steel-m2", N_ ("High-speed steel M2"), NULL },
  { "cast-iron", N_ ("Cast iron"), NULL },
  { "grey-iron", N_ ("Grey cast iron"), NULL },
  { "ductile-iron", N_ ("Ductile iron"), NULL },
  { "white-iron", N_ ("White cast iron"), NULL },
  { "malleable-iron", N_ ("Malleable iron"), NULL },
  { "stainless", N_ ("Stainless steel"), NULL },
  { "aluminium", N_ ("Aluminium"), NULL },
  { "aluminium-7075", N_ ("Aluminium 2014 or 7075"), NULL },
  { "brass", N_ ("Brass"), NULL },
  { "bronze", N_ ("Bronze"), NULL },
  { "aluminium-bronze", N_ ("Aluminium bronze"), NULL },
  { "beryllium-copper", N_ ("Beryllium copper"), NULL },
  { "copper", N_ ("Copper"), NULL },
  { "carbide", N_ ("Cemented carbide"), NULL },
  { "polyurethane", N_ ("Polyurethane"), NULL },
  { "nylon", N_ ("Nylon"), NULL },
  { "rubber", N_ ("Rubber"), NULL },
  { "zinc-alloy", N_ ("Zinc die alloy"), NULL },
  { "oil", N_ ("Oil"), NULL },
  { "water", N_ ("Water"), NULL },
};
static const SyChoice assigned_choices[] = {
  [SY_ASSIGNED_ANY_AGE] = { "any-age", N_ ("Anybody"), NULL },
  [SY_ASSIGNED_MIXED_ADULTS] = { "mixed-adults", N_ ("Adults, women and men"), NULL },
  [SY_ASSIGNED_MEN_20_45] = { "men-20-45", N_ ("Men of 20 to 45 years"), NULL },
};

#define LENGTH(member_) \
  .type = SY_MEMBER_NUMBER, .kind = SY_KIND_LENGTH, .offset = offsetof (SyDieBody, member_), .low = OVER_ZERO, \
  .range_source = GEOMETRY

static const SyField body_fields[] = {
  { .name = "label", .label = N_ ("Name of the body"), .help = N_ ("As on the drawing: lower shoe, pillar."),
    .type = SY_MEMBER_TEXT, .offset = offsetof (SyDieBody, label), .required = true },
  { .name = "shape", .label = N_ ("Shape"), .help = N_ ("Left empty for a part of known mass."), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (SyDieBody, shape), .choices = shape_choices, .n_choices = SY_LEN (shape_choices) },
  { .name = "size", .label = N_ ("Size"), .help = N_ ("Along x, y and z."), .type = SY_MEMBER_VECTOR,
    .kind = SY_KIND_LENGTH, .offset = offsetof (SyDieBody, size), .low = OVER_ZERO, .range_source = GEOMETRY },
  { .name = "diameter", .label = N_ ("Diameter"), LENGTH (diameter), .seldom = true },
  { .name = "outer", .label = N_ ("Outer diameter"), LENGTH (outer), .seldom = true },
  { .name = "inner", .label = N_ ("Inner diameter"), LENGTH (inner), .seldom = true },
  { .name = "area", .label = N_ ("Area of the section"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_AREA,
    .offset = offsetof (SyDieBody, area), .low = OVER_ZERO, .range_source = GEOMETRY, .seldom = true },
  { .name = "height", .label = N_ ("Height along its axis"), LENGTH (height), .seldom = true },
  { .name = "axis", .label = N_ ("Axis"), .type = SY_MEMBER_CHOICE, .offset = offsetof (SyDieBody, axis),
    .choices = axis_choices, .n_choices = SY_LEN (axis_choices), .default_text = N_ ("z, upright"),
    .seldom = true },
  { .name = "at", .label = N_ ("Place of its centre"), .help = N_ ("One place, or one for each of several alike."),
    .type = SY_MEMBER_VECTORS, .kind = SY_KIND_LENGTH, .offset = offsetof (SyDieBody, at), .required = true,
    .max_items = SY_DIE_PLACES_MAX },
  { .name = "material", .label = N_ ("Material"), .type = SY_MEMBER_CHOICE, .offset = offsetof (SyDieBody, material),
    .choices = material_choices, .n_choices = SY_LEN (material_choices) },
  { .name = "density", .label = N_ ("Density"), .help = N_ ("In place of a material."), .type = SY_MEMBER_NUMBER,
    .kind = SY_KIND_DENSITY, .offset = offsetof (SyDieBody, density), .low = OVER_ZERO, .seldom = true },
  { .name = "mass", .symbol = "m", .label = N_ ("Mass of the part"), .help = N_ ("In place of a shape: a spring, a bought part."),
    .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MASS, .offset = offsetof (SyDieBody, mass), .low = OVER_ZERO },
  { .name = "count", .label = N_ ("How many"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_COUNT, .whole = true,
    .offset = offsetof (SyDieBody, count), .low = FROM_ONE, .high = UP_TO (100000), .default_text = N_ ("one at each place"),
    .seldom = true },
  { .name = "cut", .label = N_ ("A pocket or hole: taken away"), .type = SY_MEMBER_BOOL,
    .offset = offsetof (SyDieBody, cut), .default_text = N_ ("no"), .seldom = true },
};

static const SyField fields[] = {
  { .name = "machine", .label = N_ ("Machine"), .help = N_ ("The press or line that it belongs to."), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyDieFacts, machine) },
  { .name = "drawing", .label = N_ ("Drawing or picture"), .help = N_ ("Its number, or where it lies."),
    .type = SY_MEMBER_TEXT, .offset = offsetof (SyDieFacts, drawing) },
  { .name = "storage", .label = N_ ("Storage place"), .type = SY_MEMBER_TEXT, .offset = offsetof (SyDieFacts, storage) },
  { .name = "weighed", .label = N_ ("Weighed mass"), .help = N_ ("On a scale or load cells; goes before what is worked out."),
    .type = SY_MEMBER_NUMBER, .kind = SY_KIND_MASS, .offset = offsetof (SyDieFacts, weighed), .low = OVER_ZERO },
  { .name = "mass_basis", .label = N_ ("How the mass was had"), .type = SY_MEMBER_CHOICE,
    .offset = offsetof (SyDieFacts, mass_basis), .choices = sy_basis_choices, .n_choices = SY_N_BASES,
    .default_text = N_ ("weighed where a weighed mass is given, otherwise from a drawing") },
  { .name = "allowance_percent", .label = N_ ("Allowance"), .help = N_ ("Added to the mass for what is not known."),
    .type = SY_MEMBER_NUMBER, .kind = SY_KIND_PERCENT, .offset = offsetof (SyDieFacts, allowance_percent),
    .low = FROM_ZERO, .high = UP_TO (1000), .default_text = N_ ("the policy's, by how the mass was had") },
  { .name = "bodies", .label = N_ ("Bodies"), .help = N_ ("Plates, blocks, pillars, pockets: what it is put together from."),
    .type = SY_MEMBER_LIST, .offset = offsetof (SyDieFacts, bodies), .members = body_fields,
    .n_members = SY_LEN (body_fields), .group_size = sizeof (SyDieBody), .max_items = SY_DIE_BODIES_MAX,
    .item_label = N_ ("Body") },
  { .name = "points", .label = N_ ("Lifting points"), .type = SY_MEMBER_LIST, .offset = offsetof (SyDieFacts, points),
    .members = sy_rig_point_fields, .n_members = SY_RIG_N_POINT_FIELDS, .group_size = sizeof (SyRigPoint),
    .max_items = SY_RIG_POINTS_MAX, .item_label = N_ ("Point") },
  { .name = "halves", .label = N_ ("Halves that it opens into"), .help = N_ ("Lower shoe, upper shoe; empty for one piece."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyDieFacts, halves), .max_items = SY_DIE_HALVES_MAX },
  { .name = "ties", .label = N_ ("What ties the halves for lifting"), .help = N_ ("Straps, bolts, pins."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyDieFacts, ties), .max_items = 16 },
  { .name = "assigned", .label = N_ ("Who may be assigned"), .help = N_ ("Sets the reference mass for hands."),
    .type = SY_MEMBER_CHOICE, .offset = offsetof (SyDieFacts, assigned), .choices = assigned_choices,
    .n_choices = SY_LEN (assigned_choices), .default_text = N_ ("the policy's") },
};

/* Quantities */

enum
{
  MASS, MASS_WITH_ALLOWANCE, MASS_COMPUTED, CG_X, CG_Y, CG_Z, POINTS_MARGIN, M_REF,
  N_SYMBOLS
};

static const SySymbol symbols[N_SYMBOLS] = {
  [MASS] = { "mass", SY_KIND_MASS, N_ ("Mass"), "weighed, or the sum of the bodies" },
  [MASS_WITH_ALLOWANCE] = { "mass_with_allowance", SY_KIND_MASS, N_ ("Mass with its allowance"),
                            "mass \xc3\x97 (1 + allowance)" },
  [MASS_COMPUTED] = { "mass_computed", SY_KIND_MASS, N_ ("Sum of the bodies"), "volume \xc3\x97 density" },
  [CG_X] = { "cg.x", SY_KIND_LENGTH, N_ ("Centre of gravity, x"), "sum of moments / mass" },
  [CG_Y] = { "cg.y", SY_KIND_LENGTH, N_ ("Centre of gravity, y"), "sum of moments / mass" },
  [CG_Z] = { "cg.z", SY_KIND_LENGTH, N_ ("Centre of gravity, z"), "sum of moments / mass" },
  [POINTS_MARGIN] = { "points.margin", SY_KIND_LENGTH, N_ ("Centre of gravity inside the lifting points"), GEOMETRY },
  [M_REF] = { "m_ref", SY_KIND_MASS, N_ ("Reference mass of who may be assigned"),
              "ISO 11228-1:2003 Annex C (from memory)" },
};

/* Near the edge of the points: a tenth of their narrow width. Assumed, no source. */
#define NEAR_EDGE 0.1
/* A weighed and a computed mass that differ by more tell of something forgotten. Assumed, no source. */
#define DIFFERS 0.1

/* Copies of a body at one of its places. */
static double
copies_of (const SyDieBody *body)
{
  return body->at.count == 1 && body->count.given ? body->count.value : 1;
}

/* A body as core/rigging takes it; @places: room for SY_DIE_PLACES_MAX. */
static void
read_body (const SyDieBody *body, SyUnits units, SyVec3 *places, SyBody *out)
{
  const SyVector *at = body->at.items;
  double density = body->density.given ? body->density.value
                   : body->material >= 0 ? sy_material_density (&sy_materials ()[body->material], units)
                                         : 0;

  *out = (SyBody) {
    .shape = body->shape < 0 ? SY_BODY_POINT : (SyBodyShape) body->shape,
    .size = { body->size.at[0], body->size.at[1], body->size.at[2] },
    .diameter = body->diameter.value,
    .outer = body->outer.value,
    .inner = body->inner.value,
    .height = body->height.value,
    .area = body->area.value,
    .density = sy_density_of_lengths (density, units),
    .mass = body->mass.value,
    .cut = body->cut == 1,
    .copies = copies_of (body),
    .at = places,
    .n_at = body->at.count,
  };
  for (size_t i = 0; i < body->at.count && i < SY_DIE_PLACES_MAX; i++)
    places[i] = sy_vector_vec3 (&at[i]);
}

static bool
sum_bodies (const SyDieFacts *facts, SyUnits units, double *mass, SyVec3 *cg)
{
  const SyDieBody *bodies = facts->bodies.items;
  SyBodySum sum = { .gross = 0 };

  for (size_t i = 0; i < facts->bodies.count; i++)
    {
      SyVec3 places[SY_DIE_PLACES_MAX];
      SyBody one;

      read_body (&bodies[i], units, places, &one);
      sy_body_sum_add (&sum, &one);
    }
  return sy_body_sum_end (&sum, mass, cg);
}

static void
judge_points (const SyDieFacts *facts, SyVec3 cg, SySink *sink)
{
  const SyRigPoint *points = facts->points.items;
  SyVec3 places[SY_RIG_POINTS_MAX];
  SyOutline outline;
  int n = 0;

  for (size_t i = 0; i < facts->points.count && i < SY_RIG_POINTS_MAX; i++)
    places[n++] = sy_vector_vec3 (&points[i].at);
  /* One or two points have no inside: how a load hangs from them is for a plan of the lift. */
  if (n < 3 || !sy_outline_make (places, n, &outline) || outline.n < 3)
    return;
  double margin = sy_outline_distance (&outline, cg.x, cg.y), width = sy_outline_width (&outline);
  sy_sink_value (sink, POINTS_MARGIN, margin);
  if (margin < 0)
    {
      SyNote *note = sy_sink_note (sink, "die-centre-outside-points", SY_NOTE_REFUSED);
      sy_note_arg (note, SY_KIND_LENGTH, -margin);
      sy_note_source (note, "points.margin", "statics: nothing outside the points can be balanced by them", false);
    }
  else if (margin < NEAR_EDGE * width)
    {
      SyNote *note = sy_sink_note (sink, "die-centre-near-edge", SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_LENGTH, margin);
      sy_note_arg (note, SY_KIND_LENGTH, NEAR_EDGE * width);
      sy_note_source (note, "points.margin", "assumed, no source: a tenth of the narrow width of the points", false);
    }
}

static void
judge_halves (const SyDieFacts *facts, SySink *sink)
{
  const SyRigPoint *points = facts->points.items;
  const char *const *ties = facts->ties.items;
  const char *body = NULL;
  bool several = false, tied = false;

  for (size_t i = 0; i < facts->points.count; i++)
    if (sy_text_says (points[i].body))
      {
        several = several || (body != NULL && !sy_text_same (body, points[i].body));
        body = points[i].body;
      }
  for (size_t i = 0; i < facts->ties.count; i++)
    tied = tied || sy_text_says (ties[i]);
  if (facts->halves.count > 1 && facts->points.count > 0 && !several && !tied)
    sy_note_source (body != NULL ? sy_sink_note_on (sink, "half-held-by-nothing", SY_NOTE_REFUSED, body)
                                 : sy_sink_note (sink, "die-halves-of-points-not-known", SY_NOTE_REFUSED),
                    NULL, "common practice, no source", false);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyDieFacts *facts = data;
  SyUnits units = context->units;
  double computed = 0, allowance;
  SyVec3 cg;
  bool has_bodies = facts->bodies.count > 0;
  bool has_centre = has_bodies && sum_bodies (facts, units, &computed, &cg);
  double mass = facts->weighed.given ? facts->weighed.value : computed;
  SyBasis basis = facts->mass_basis >= 0  ? (SyBasis) facts->mass_basis
                  : facts->weighed.given ? SY_BASIS_WEIGHED
                                         : SY_BASIS_DRAWING;

  allowance = sy_mass_allowance (&facts->allowance_percent, basis, context);
  sy_sink_value (sink, MASS, mass);
  sy_sink_value (sink, MASS_WITH_ALLOWANCE, mass * (1 + allowance / 100));
  sy_sink_value (sink, M_REF,
                 sy_lift_reference_mass ((SyAssigned) (facts->assigned >= 0 ? facts->assigned : context->default_assigned),
                                         units));
  if (has_bodies)
    sy_sink_value (sink, MASS_COMPUTED, computed);
  if (has_centre)
    {
      sy_sink_value (sink, CG_X, cg.x);
      sy_sink_value (sink, CG_Y, cg.y);
      sy_sink_value (sink, CG_Z, cg.z);
      judge_points (facts, cg, sink);
    }
  else
    sy_sink_note (sink, "die-no-centre", SY_NOTE_NEEDED);
  if (facts->weighed.given && has_bodies && fabs (computed - mass) > DIFFERS * mass)
    {
      SyNote *note = sy_sink_note (sink, "die-weighed-differs", SY_NOTE_IMPROVE);
      sy_note_arg (note, SY_KIND_MASS, computed);
      sy_note_arg (note, SY_KIND_MASS, mass);
      sy_note_source (note, "mass_computed", "assumed, no source: a tenth", false);
    }
  judge_halves (facts, sink);
  sy_mass_say (sink, &facts->allowance_percent, basis, allowance, context);
  sy_sink_note (sink, "die-how-not-assessed", SY_NOTE_NEEDED);
  sy_sink_note (sink, "die-free", SY_NOTE_CAUTION);
  sy_sink_note (sink, "slugs-and-fluid-out", SY_NOTE_CAUTION);
  sink->governing = "mass_with_allowance";
}

/* Cross-field check */

typedef struct
{
  const char *name;
  size_t offset;
  bool vector;
  unsigned shapes; /* bit by SyBodyShape */
} Member;

#define SHAPE(shape) (1u << (shape))

static const Member members[] = {
  { "size", offsetof (SyDieBody, size), true, SHAPE (SY_BODY_BLOCK) },
  { "diameter", offsetof (SyDieBody, diameter), false, SHAPE (SY_BODY_CYLINDER) },
  { "outer", offsetof (SyDieBody, outer), false, SHAPE (SY_BODY_TUBE) },
  { "inner", offsetof (SyDieBody, inner), false, SHAPE (SY_BODY_TUBE) },
  { "area", offsetof (SyDieBody, area), false, SHAPE (SY_BODY_PRISM) },
  { "height", offsetof (SyDieBody, height), false,
    SHAPE (SY_BODY_CYLINDER) | SHAPE (SY_BODY_TUBE) | SHAPE (SY_BODY_PRISM) },
  { "mass", offsetof (SyDieBody, mass), false, SHAPE (SY_BODY_POINT) },
};

static void
body_problem (SyProblems *problems, SyProblemKind kind, size_t index, const char *member, const char *given,
              const char *allowed)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, "$.bodies[");
  sy_text_add_number (&text, (double) index);
  sy_text_add (&text, "].");
  sy_text_add (&text, member);
  sy_problems_add (problems, kind, 0, path, given, allowed, "");
}

static void
check_body (const SyDieBody *body, size_t index, SyProblems *problems)
{
  SyBodyShape shape = body->shape < 0 ? SY_BODY_POINT : (SyBodyShape) body->shape;
  const char *name = body->shape < 0 ? "a part without a shape" : shape_choices[shape].id;

  for (size_t i = 0; i < SY_LEN (members); i++)
    {
      const char *at = (const char *) body + members[i].offset;
      bool given = members[i].vector ? ((const SyVector *) (const void *) at)->given
                                     : ((const SyNumber *) (const void *) at)->given;
      bool wanted = (members[i].shapes & SHAPE (shape)) != 0;

      if (given && !wanted)
        body_problem (problems, SY_PROBLEM_CONFLICT, index, members[i].name, name,
                      body->shape < 0 ? "mass alone, without a shape" : "the measures of its shape alone");
      else if (!given && wanted)
        body_problem (problems, SY_PROBLEM_MISSING, index, members[i].name, "nothing",
                      body->shape < 0 ? "a mass over 0, or a shape with its measures" : "a measure over 0 of that shape");
    }
  if (body->shape >= 0 && body->material < 0 && !body->density.given)
    body_problem (problems, SY_PROBLEM_MISSING, index, "material", "nothing", "a material, or a density");
  if (body->material >= 0 && body->density.given)
    body_problem (problems, SY_PROBLEM_CONFLICT, index, "density", "both material and density", "one of the two");
  if (body->shape < 0 && (body->material >= 0 || body->density.given))
    body_problem (problems, SY_PROBLEM_CONFLICT, index, body->density.given ? "density" : "material", "a part of known mass",
                  "mass alone, or a shape");
  if (shape == SY_BODY_TUBE && body->outer.given && body->inner.given && body->inner.value >= body->outer.value)
    {
      char given[SY_NUMBER_TEXT_MAX];
      sy_number_print (body->inner.value, given);
      body_problem (problems, SY_PROBLEM_CONFLICT, index, "inner", given, "under the outer diameter");
    }
  if (body->at.given && body->at.count == 0)
    body_problem (problems, SY_PROBLEM_SIZE, index, "at", "an empty list", "[x, y, z] or a list of these");
  if (body->at.count > 1 && body->count.given && body->count.value != (double) body->at.count)
    {
      char given[SY_NUMBER_TEXT_MAX];
      sy_number_print (body->count.value, given);
      body_problem (problems, SY_PROBLEM_CONFLICT, index, "count", given, "as many as there are places, or left out");
    }
}

static void
check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyDieFacts *facts = data;
  const SyDieBody *bodies = facts->bodies.items;
  int before = problems->count + problems->dropped;
  double mass;
  SyVec3 cg;

  for (size_t i = 0; i < facts->bodies.count; i++)
    check_body (&bodies[i], i, problems);
  sy_rig_check_points (&facts->points, "$.points", problems);
  if (facts->bodies.count == 0 && !facts->weighed.given)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.bodies", "nothing", "bodies, or a weighed mass",
                     "");
  if (facts->weighed.given && facts->mass_basis >= 0 && facts->mass_basis != SY_BASIS_WEIGHED)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.mass_basis", sy_basis_choices[facts->mass_basis].id,
                     "weighed, beside a weighed mass", "");
  if (!facts->weighed.given && facts->mass_basis == SY_BASIS_WEIGHED)
    sy_problems_add (problems, SY_PROBLEM_MISSING, 0, "$.weighed", "nothing", "the mass that was weighed, over 0",
                     sy_unit_name (SY_KIND_MASS, units));
  if (problems->count + problems->dropped == before && facts->bodies.count > 0 && !sum_bodies (facts, units, &mass, &cg))
    {
      char given[SY_NUMBER_TEXT_MAX] = "no mass that is a number";
      if (isfinite (mass))
        sy_number_print (mass, given);
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.bodies", given,
                       "a mass over 0, and not more cut away than there is", sy_unit_name (SY_KIND_MASS, units));
    }
}

static const char *const view_titles[] = { N_ ("From above"), N_ ("From the front"), N_ ("From the side") };

extern const SyMethod sy_method_die_mass;
const SyMethod sy_method_die_mass = {
  .id = "die-mass",
  .title = N_ ("Die"),
  .source = "Geometry and sums of moments (the procedure of US Navy training manual 14080); densities as named at each "
            "material; order of preference marking, weighing, calculation: DOE-STD-1090-96 section 12.1",
  .conditions_source = "DOE-STD-1090-96 section 12.1",
  .edition = 1,
  .item_kind = "die",
  .improve_title = N_ ("Look at it again"),
  .improve_meaning = N_ ("A figure or a point of it asks for a second look."),
  .memory_caution = N_ ("The reference mass for hands and a few densities stand here from memory; they may tighten a verdict "
                        "but are never the only ground for a favourable one."),
  .facts_size = sizeof (SyDieFacts),
  .fields = fields,
  .n_fields = SY_LEN (fields),
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .check = check,
  .evaluate = evaluate,
  .n_views = SY_LEN (view_titles),
  .view_titles = view_titles,
  .scene = sy_die_scene,
};
