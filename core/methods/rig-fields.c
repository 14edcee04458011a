/* SPDX-License-Identifier: MIT */
#include "sy-rig-facts.h"

/* The table of fields of a rigged lift. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define FROM_ONE { SY_BOUND_CLOSED, { 1, 1 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define UP_TO(value) { SY_BOUND_CLOSED, { value, value } }
/* Places within ten kilometres of the origin: beyond, something was mistyped. Common practice, no source. */
#define PLACES .low = { SY_BOUND_CLOSED, { -1e7, -1e7 } }, .high = { SY_BOUND_CLOSED, { 1e7, 1e7 } }
#define ABSOLUTE_ZERO { SY_BOUND_CLOSED, { -273.15, -459.67 } }

#define NUMBER(struct_, member_, kind_) \
  .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (struct_, member_)
#define TEXT(struct_, member_) .type = SY_MEMBER_TEXT, .offset = offsetof (struct_, member_)
#define CHOICE(struct_, member_, choices_) \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (struct_, member_), .choices = choices_, .n_choices = SY_LEN (choices_)
#define BOOLEAN(struct_, member_) .type = SY_MEMBER_BOOL, .offset = offsetof (struct_, member_)

/* Choices */

const SyChoice sy_rated_as_choices[2] = {
  [SY_RATED_LEG] = { "leg", N_ ("One leg, straight"), N_ ("what one part carries straight up") },
  [SY_RATED_ASSEMBLY] = { "assembly", N_ ("The whole sling"), N_ ("with the legs and the angles on its tag") },
};

const SyChoice sy_band_choices[SY_N_BANDS] = {
  [SY_BAND_0_30] = { "0-30", N_ ("0 to 30\xc2\xb0 from the vertical"), N_ ("60\xc2\xb0 and steeper from the horizontal") },
  [SY_BAND_0_45] = { "0-45", N_ ("0 to 45\xc2\xb0 from the vertical"), N_ ("45\xc2\xb0 and steeper from the horizontal") },
  [SY_BAND_0_60] = { "0-60", N_ ("0 to 60\xc2\xb0 from the vertical"), N_ ("30\xc2\xb0 and steeper from the horizontal") },
  [SY_BAND_45_60] = { "45-60", N_ ("45 to 60\xc2\xb0 from the vertical"), N_ ("30 to 45\xc2\xb0 from the horizontal") },
};

const SyChoice sy_family_choices[SY_N_EYEBOLT_FAMILIES] = {
  { "asme", N_ ("Shoulder eyebolt, US"), N_ ("stamped with its axial limit; a quarter of it at an angle") },
  { "asme-older", N_ ("Shoulder eyebolt, older US table"), N_ ("only where its maker says so") },
  { "din-580", N_ ("Collar eyebolt, DIN 580"), N_ ("stamped with its axial limit; up to 45\xc2\xb0") },
  { "bs-4278", N_ ("Collar eyebolt, BS 4278"), N_ ("stamped with its axial limit; up to 45\xc2\xb0") },
};

const SyChoice sy_sling_material_choices[SY_N_SLING_MATERIALS] = {
  { "chain", N_ ("Chain"), NULL },
  { "wire-rope", N_ ("Wire rope, steel core"), NULL },
  { "wire-rope-fibre-core", N_ ("Wire rope, fibre core"), NULL },
  { "rope", N_ ("Rope, kind not known"), NULL },
  { "fibre-rope", N_ ("Natural fibre rope"), NULL },
  { "textile", N_ ("Web or round sling, kind not known"), NULL },
  { "polyester", N_ ("Polyester"), NULL },
  { "polyamide", N_ ("Polyamide"), NULL },
  { "polypropylene", N_ ("Polypropylene"), NULL },
};

static const SyChoice hitch_choices[] = {
  [SY_HITCH_STRAIGHT] = { "straight", N_ ("Straight"), N_ ("from the point to the hook") },
  [SY_HITCH_CHOKE] = { "choke", N_ ("Choke"), N_ ("through its own eye, round the load") },
  [SY_HITCH_BASKET] = { "basket", N_ ("Basket"), N_ ("under the load, both ends to the hook") },
};
static const SyChoice edge_choices[] = {
  [SY_EDGE_NONE] = { "none", N_ ("No edge"), NULL },
  [SY_EDGE_PROTECTED] = { "protected", N_ ("Edge with protection"), NULL },
  [SY_EDGE_BARE] = { "bare", N_ ("Bare edge"), NULL },
};
static const SyChoice element_kinds[] = {
  [SY_GEAR_SLING] = { "sling", N_ ("Sling"), NULL },
  [SY_GEAR_SHACKLE] = { "shackle", N_ ("Shackle"), NULL },
  [SY_GEAR_EYEBOLT] = { "eyebolt", N_ ("Eyebolt"), NULL },
  [SY_GEAR_HOIST_RING] = { "hoist-ring", N_ ("Swivel hoist ring"), NULL },
  [SY_GEAR_HOOK] = { "hook", N_ ("Hook"), NULL },
  [SY_GEAR_MASTER_LINK] = { "master-link", N_ ("Master link"), N_ ("carries every leg") },
};
/* Index + SY_GEAR_HOIST is the kind of gear. */
static const SyChoice suspension_kinds[] = {
  { "hoist", N_ ("Hoist"), NULL },
  { "crane", N_ ("Crane"), NULL },
  { "beam", N_ ("Beam"), NULL },
  { "truck", N_ ("Fork truck"), NULL },
};
static const SyChoice rule_choices[] = {
  [SY_RULE_US] = { "us", N_ ("US"), N_ ("two legs count; the flattest angle") },
  [SY_RULE_EN] = { "en", N_ ("European"), N_ ("mode factors, derated where legs are unlike") },
  [SY_RULE_BOTH] = { "both", N_ ("Both, the stricter governs"), NULL },
};
static const SyChoice check_choices[] = {
  { "gear-looked-over", N_ ("Every sling, shackle and point looked over for damage, marked and in date"), NULL },
  { "points-sound", N_ ("Lifting points screwed down to the shoulder, torqued, holes clean"), NULL },
  { "die-free", N_ ("Clamps off, hoses and cables off, die free of bolster and slide"), NULL },
  { "halves-tied", N_ ("Halves tied together, springs and gas cylinders let down"), NULL },
  { "slugs-and-fluid-out", N_ ("Slugs, scrap and fluid out"), NULL },
  { "way-clear", N_ ("The way and the landing place clear, nobody under or beside the load"), NULL },
  { "tag-line", N_ ("A tag line on, and somebody to hold it"), NULL },
  { "trial-lift", N_ ("Trial lift: a hand's breadth up, stopped, level and holding"), NULL },
};

/* Points */

const SyField sy_rig_point_fields[SY_RIG_N_POINT_FIELDS] = {
  { .name = "label", .label = N_ ("Name of the point"), .help = N_ ("As it is painted on the die."),
    TEXT (SyRigPoint, label), .required = true },
  { .name = "at", .label = N_ ("Place"), .help = N_ ("Where the sling or eye pulls, in the coordinates of the load."),
    .type = SY_MEMBER_VECTOR, .kind = SY_KIND_LENGTH, .offset = offsetof (SyRigPoint, at), .required = true, PLACES },
  { .name = "axis", .label = N_ ("Axis of the bolt"), .help = N_ ("Its direction out of the load: 0, 0, 1 points up."),
    .type = SY_MEMBER_VECTOR, .kind = SY_KIND_RATIO, .offset = offsetof (SyRigPoint, axis), .seldom = true },
  { .name = "body", .label = N_ ("Half"), .help = N_ ("The half of a die that the point sits on; empty for a load in one piece."),
    TEXT (SyRigPoint, body), .seldom = true },
  { .name = "size", .label = N_ ("Thread"), .help = N_ ("Nominal diameter."), NUMBER (SyRigPoint, size, SY_KIND_LENGTH),
    .low = OVER_ZERO, .seldom = true },
};

/* Legs */

static const SyField element_fields[] = {
  { .name = "label", .label = N_ ("Name or number"), .help = N_ ("As marked on it."), TEXT (SyRigElement, label),
    .required = true },
  { .name = "kind", .label = N_ ("What it is"), CHOICE (SyRigElement, kind, element_kinds), .required = true },
  { .name = "wll", .symbol = "WLL", .label = N_ ("Working load limit"), .help = N_ ("As marked; nothing is taken from a table."),
    NUMBER (SyRigElement, wll, SY_KIND_MASS), .low = OVER_ZERO },
  { .name = "rated_as", .label = N_ ("What the marking rates"), CHOICE (SyRigElement, rated_as, sy_rated_as_choices) },
  { .name = "legs", .label = N_ ("Legs on the tag"), NUMBER (SyRigElement, legs, SY_KIND_COUNT), .whole = true,
    .low = FROM_ONE, .high = UP_TO (4), .range_source = "slings have one to four legs" },
  { .name = "band", .label = N_ ("Angles on the tag"), CHOICE (SyRigElement, band, sy_band_choices) },
  { .name = "due", .label = N_ ("Next examination"), .help = N_ ("Of the thorough examination, from its last report."),
    .type = SY_MEMBER_DATE, .offset = offsetof (SyRigElement, due) },
  { .name = "own_mass", .label = N_ ("Own mass"), NUMBER (SyRigElement, own_mass, SY_KIND_MASS), .low = FROM_ZERO,
    .default_text = N_ ("taken as nothing"), .seldom = true },
  { .name = "family", .label = N_ ("Family of eyebolt"), CHOICE (SyRigElement, family, sy_family_choices),
    .seldom = true },
  { .name = "shoulder", .label = N_ ("Has a shoulder"), BOOLEAN (SyRigElement, shoulder), .seldom = true },
  { .name = "side_angle", .label = N_ ("Pull from the shackle's line"), NUMBER (SyRigElement, side_angle, SY_KIND_ANGLE),
    .low = FROM_ZERO, .high = UP_TO (180), .default_text = N_ ("taken as in line"), .seldom = true },
  { .name = "size", .label = N_ ("Nominal size"), .help = N_ ("Chain or rope diameter, thread: to check the marking."),
    NUMBER (SyRigElement, size, SY_KIND_LENGTH), .low = OVER_ZERO, .seldom = true },
  { .name = "grade", .label = N_ ("Grade of chain"), NUMBER (SyRigElement, grade, SY_KIND_COUNT), .low = OVER_ZERO,
    .seldom = true },
  { .name = "withdrawn", .label = N_ ("Withdrawn from use"), BOOLEAN (SyRigElement, withdrawn), .seldom = true },
};

static const SyField leg_fields[] = {
  { .name = "point", .label = N_ ("From point"), .help = N_ ("The name of a point; a basket has two."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyRigLeg, point), .required = true, .max_items = 2 },
  { .name = "hitch", .label = N_ ("Hitch"), CHOICE (SyRigLeg, hitch, hitch_choices) },
  { .name = "material", .label = N_ ("Sling of"), CHOICE (SyRigLeg, material, sy_sling_material_choices) },
  { .name = "edge", .label = N_ ("Over an edge"), CHOICE (SyRigLeg, edge, edge_choices) },
  { .name = "length", .label = N_ ("Length"), .help = N_ ("From the point to the hook, with what is between."),
    NUMBER (SyRigLeg, length, SY_KIND_LENGTH), .low = OVER_ZERO },
  { .name = "choke_angle", .label = N_ ("Angle of choke"), NUMBER (SyRigLeg, choke_angle, SY_KIND_ANGLE), .low = FROM_ZERO,
    .high = UP_TO (180), .seldom = true },
  { .name = "temperature", .label = N_ ("Temperature"), .help = N_ ("Of the sling in use; hot dies."),
    NUMBER (SyRigLeg, temperature, SY_KIND_TEMPERATURE), .low = ABSOLUTE_ZERO, .seldom = true },
  { .name = "d_over_D", .label = N_ ("Bend of the rope"),
    .help = N_ ("Diameter of the bend over that of the rope, such as 25; or the other way round, 0.04."),
    NUMBER (SyRigLeg, bend, SY_KIND_RATIO), .low = OVER_ZERO, .seldom = true },
  { .name = "elements", .label = N_ ("Elements"), .help = N_ ("From the load up: eyebolt, shackle, sling, master link."),
    .type = SY_MEMBER_LIST, .offset = offsetof (SyRigLeg, elements), .members = element_fields,
    .n_members = SY_LEN (element_fields), .group_size = sizeof (SyRigElement), .max_items = SY_RIG_ELEMENTS_MAX,
    .item_label = N_ ("Element") },
};

static const SyField hook_fields[] = {
  { .name = "at", .label = N_ ("Place of the hook"), .type = SY_MEMBER_VECTOR, .kind = SY_KIND_LENGTH,
    .offset = offsetof (SyRigFacts, hook.at), PLACES },
  { .name = "above", .label = N_ ("Height over the highest point"), .help = N_ ("The hook over the centre of gravity."),
    NUMBER (SyRigFacts, hook.above, SY_KIND_LENGTH), PLACES },
};

static const SyField suspension_fields[] = {
  { .name = "label", .label = N_ ("Name or number"), TEXT (SyRigSuspension, label), .required = true },
  { .name = "kind", .label = N_ ("What it is"), CHOICE (SyRigSuspension, kind, suspension_kinds), .required = true },
  { .name = "wll", .symbol = "WLL", .label = N_ ("Working load limit"), .help = N_ ("As marked."),
    NUMBER (SyRigSuspension, wll, SY_KIND_MASS), .low = OVER_ZERO },
  { .name = "due", .label = N_ ("Next examination"), .type = SY_MEMBER_DATE, .offset = offsetof (SyRigSuspension, due) },
  { .name = "own_mass", .label = N_ ("Own mass"), .help = N_ ("Of a beam: what the hoist above it carries too."),
    NUMBER (SyRigSuspension, own_mass, SY_KIND_MASS), .low = FROM_ZERO, .default_text = N_ ("taken as nothing"),
    .seldom = true },
  { .name = "attachment", .label = N_ ("Rated hook attachment on the forks"),
    .help = N_ ("A fork truck lifts a hung load only with an attachment that its plate rates."),
    BOOLEAN (SyRigSuspension, attachment), .seldom = true },
  { .name = "withdrawn", .label = N_ ("Withdrawn from use"), BOOLEAN (SyRigSuspension, withdrawn), .seldom = true },
};

const SyField sy_rig_fields[SY_RIG_N_FIELDS] = {
  { .name = "die", .label = N_ ("Die or load"), .help = N_ ("Its name in the register."), TEXT (SyRigFacts, die) },
  { .name = "mass", .symbol = "m", .label = N_ ("Mass"), .help = N_ ("Of all that leaves the floor, without the gear."),
    NUMBER (SyRigFacts, mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO },
  { .name = "mass_basis", .label = N_ ("How the mass was had"), CHOICE (SyRigFacts, mass_basis, sy_basis_choices) },
  { .name = "allowance_percent", .label = N_ ("Allowance"), .help = N_ ("Added to the mass for what is not known."),
    NUMBER (SyRigFacts, allowance_percent, SY_KIND_PERCENT), .low = FROM_ZERO, .high = UP_TO (1000),
    .default_text = N_ ("the policy's, by how the mass was had") },
  { .name = "dynamic_factor", .label = N_ ("Dynamic factor"), .help = N_ ("For jerks when hoisting."),
    NUMBER (SyRigFacts, dynamic_factor, SY_KIND_RATIO), .low = FROM_ONE, .high = UP_TO (10), .default_text = N_ ("1.0") },
  { .name = "cg", .symbol = "G", .label = N_ ("Centre of gravity"), .help = N_ ("In the coordinates of the load."),
    .type = SY_MEMBER_VECTOR, .kind = SY_KIND_LENGTH, .offset = offsetof (SyRigFacts, cg), .required = true, PLACES },
  { .name = "bottom", .label = N_ ("Underside"), .help = N_ ("Its height in the coordinates of the load."),
    NUMBER (SyRigFacts, bottom, SY_KIND_LENGTH), PLACES, .default_text = N_ ("the lowest of the points and the centre of gravity") },
  { .name = "points", .label = N_ ("Lifting points"), .type = SY_MEMBER_LIST, .offset = offsetof (SyRigFacts, points),
    .members = sy_rig_point_fields, .n_members = SY_LEN (sy_rig_point_fields), .group_size = sizeof (SyRigPoint),
    .required = true, .max_items = SY_RIG_POINTS_MAX, .item_label = N_ ("Point") },
  { .name = "halves", .label = N_ ("Halves that it opens into"), .help = N_ ("Lower shoe, upper shoe; empty for one piece."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyRigFacts, halves), .max_items = 8 },
  { .name = "ties", .label = N_ ("What holds the other half"),
    .help = N_ ("Straps, bolts, pins that tie the halves of a die lifted by one half."), .type = SY_MEMBER_TEXTS,
    .offset = offsetof (SyRigFacts, ties), .max_items = 16 },
  { .name = "legs", .label = N_ ("Legs"), .type = SY_MEMBER_LIST, .offset = offsetof (SyRigFacts, legs),
    .members = leg_fields, .n_members = SY_LEN (leg_fields), .group_size = sizeof (SyRigLeg), .required = true,
    .max_items = SY_RIG_LEGS_MAX, .item_label = N_ ("Leg") },
  { .name = "hook", .label = N_ ("Hook"), .help = N_ ("Left empty, the load hangs free on the lengths of its legs."),
    .type = SY_MEMBER_GROUP, .offset = 0, .members = hook_fields, .n_members = SY_LEN (hook_fields),
    .group_size = sizeof (SyRigFacts), .present_offset = offsetof (SyRigFacts, hook_given) },
  { .name = "suspension", .label = N_ ("Hung from"), .help = N_ ("From the hook up: beam, hoist, crane."),
    .type = SY_MEMBER_LIST, .offset = offsetof (SyRigFacts, suspension), .members = suspension_fields,
    .n_members = SY_LEN (suspension_fields), .group_size = sizeof (SyRigSuspension),
    .max_items = SY_RIG_SUSPENSION_MAX, .item_label = N_ ("Part") },
  { .name = "rule", .label = N_ ("Rule for the sling"), CHOICE (SyRigFacts, rule, rule_choices),
    .default_text = N_ ("both, the stricter governs") },
  { .name = "stiffness", .symbol = "k", .label = N_ ("Stiffness of a leg"),
    .help = N_ ("For the working with unlike lengths only."), NUMBER (SyRigFacts, stiffness, SY_KIND_STIFFNESS),
    .low = OVER_ZERO, .default_text = N_ ("4 kN/mm, assumed") },
  { .name = "checks", .label = N_ ("Checked before the lift"), .type = SY_MEMBER_SET,
    .offset = offsetof (SyRigFacts, checks), .choices = check_choices, .n_choices = SY_LEN (check_choices) },
};
