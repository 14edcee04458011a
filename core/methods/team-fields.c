/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-lift-facts.h"
#include "sy-rig-facts.h"
#include "sy-team-facts.h"

/* The fields of a lift by a team, what excludes one another in them, and their way into the statics. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
/* Places within ten kilometres of the origin: beyond, something was mistyped. Common practice, no source. */
#define PLACES .low = { SY_BOUND_CLOSED, { -1e7, -1e7 } }, .high = { SY_BOUND_CLOSED, { 1e7, 1e7 } }
#define MANUAL "NIOSH 94-110"

#define NUMBER(struct_, member_, kind_) .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (struct_, member_)
#define CHOICE(struct_, member_, choices_) \
  .type = SY_MEMBER_CHOICE, .offset = offsetof (struct_, member_), .choices = choices_, .n_choices = SY_LEN (choices_)

static const SyField person_fields[] = {
  { .name = "label", .label = N_ ("Name"), .help = N_ ("Of the person or the place: A, left, Kim."), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyTeamPerson, label), .required = true },
  { .name = "at", .label = N_ ("Place of the hands"), .help = N_ ("Midway between the two hands, seen from above."),
    .type = SY_MEMBER_VECTOR, .kind = SY_KIND_LENGTH, .offset = offsetof (SyTeamPerson, at), .required = true,
    .coordinates = SY_COORDINATES_PLAN, PLACES },
  { .name = "height", .symbol = "V", .label = N_ ("Height of the hands"),
    .help = N_ ("Floor to grip where that person stands, at the lowest point of the lift."),
    NUMBER (SyTeamPerson, height, SY_KIND_REACH), .low = FROM_ZERO, .range_source = MANUAL " 1.3.2" },
  { .name = "reach", .symbol = "H", .label = N_ ("Reach"),
    .help = N_ ("Mid-point between the ankles to the grip, along the floor."),
    NUMBER (SyTeamPerson, reach, SY_KIND_REACH), .low = OVER_ZERO, .range_source = MANUAL " 1.3.1",
    .default_text = N_ ("close to the body: 25 cm, 10 in") },
  { .name = "assigned", .label = N_ ("Who it may be"), .help = N_ ("Sets the reference mass."),
    CHOICE (SyTeamPerson, assigned, sy_lift_assigned_choices), .default_text = N_ ("the policy's") },
};

const SyField sy_team_fields[SY_TEAM_N_FIELDS] = {
  { .name = "mass", .symbol = "m", .label = N_ ("Mass"), .help = N_ ("The heaviest that is lifted here, with what is on it."),
    NUMBER (SyTeamFacts, mass, SY_KIND_MASS), .required = true, .low = OVER_ZERO },
  { .name = "cg", .label = N_ ("Centre of gravity"),
    .help = N_ ("In the same plan as the hands; z is its height over the hands, below 0 where it hangs under them."),
    .type = SY_MEMBER_VECTOR, .kind = SY_KIND_LENGTH, .offset = offsetof (SyTeamFacts, cg), .required = true,
    .coordinates = SY_COORDINATES_EITHER, PLACES },
  { .name = "people", .label = N_ ("People"), .help = N_ ("Two to four; where each one's hands are."), .type = SY_MEMBER_LIST,
    .offset = offsetof (SyTeamFacts, people), .members = person_fields, .n_members = SY_LEN (person_fields),
    .group_size = sizeof (SyTeamPerson), .max_items = SY_TEAM_MAX, .required = true, .item_label = N_ ("Person"),
    .range_source = "UK HSE: more than four are unlikely to work" },
  { .name = "slope", .symbol = "s", .label = N_ ("Slope or stairs"), .help = N_ ("Degrees, or 2 %; the steepest on the way."),
    NUMBER (SyTeamFacts, slope, SY_KIND_SLOPE), .low = FROM_ZERO, .high = { SY_BOUND_OPEN, { 90, 90 } },
    .default_text = N_ ("level") },
  { .name = "uphill", .label = N_ ("Who goes uphill"), .help = N_ ("Names of those at the upper end, on a slope or stairs."),
    .type = SY_MEMBER_TEXTS, .offset = offsetof (SyTeamFacts, uphill), .max_items = SY_TEAM_MAX - 1,
    .default_text = N_ ("the way round that loads one person most") },
  { .name = "travel", .symbol = "D", .label = N_ ("Travel"), .help = N_ ("How far up the hands go from their height."),
    NUMBER (SyTeamFacts, travel, SY_KIND_REACH), .low = FROM_ZERO, .range_source = MANUAL " 1.3.3",
    .default_text = N_ ("only the height given is judged") },
  { .name = "frequency", .symbol = "F", .label = N_ ("Pace"), .help = N_ ("Lifts a minute."),
    NUMBER (SyTeamFacts, frequency, SY_KIND_FREQUENCY), .low = FROM_ZERO, .range_source = MANUAL " 1.2",
    .default_text = N_ ("seldom: 0.2 a minute at the most") },
  { .name = "duration", .label = N_ ("Duration"), CHOICE (SyTeamFacts, duration, sy_lift_duration_choices),
    .default_text = N_ ("short where the pace is not given, else long") },
  { .name = "coupling", .label = N_ ("Grip"), .help = N_ ("The worst of all."),
    CHOICE (SyTeamFacts, coupling, sy_lift_coupling_choices), .default_text = N_ ("poor") },
};

/* ---- into the statics ---- */

static bool
is_ahead (const SyTeamFacts *facts, const char *label)
{
  const char *const *labels = facts->uphill.items;

  for (size_t i = 0; i < facts->uphill.count; i++)
    if (label != NULL && strcmp (labels[i], label) == 0)
      return true;
  return false;
}

/* From the middle of those behind to the middle of those ahead; false: both are one place, or one of the two has nobody. */
static bool
way_up (const SyTeam *team, const bool ahead[SY_TEAM_MAX], double uphill[2])
{
  double x[2] = { 0, 0 }, y[2] = { 0, 0 };
  int n[2] = { 0, 0 };

  for (int i = 0; i < team->n; i++)
    {
      x[ahead[i]] += team->x[i];
      y[ahead[i]] += team->y[i];
      n[ahead[i]]++;
    }
  if (n[0] == 0 || n[1] == 0)
    return false;
  uphill[0] = x[1] / n[1] - x[0] / n[0];
  uphill[1] = y[1] / n[1] - y[0] / n[0];
  return uphill[0] != 0 || uphill[1] != 0;
}

/* Where it was not said who goes ahead: each by itself in turn, and the way that loads one person most, by that person's
   reference mass. */
static void
find_worst_way (SyTeamCase *out, SyUnits units)
{
  double most = -1;

  out->can_lie = false;
  for (int first = 0; first < out->team.n; first++)
    {
      bool ahead[SY_TEAM_MAX] = { false };
      SyTeam team = out->team;
      SyTeamShares shares;
      double largest = 0;

      ahead[first] = true;
      if (!way_up (&team, ahead, team.uphill) || !sy_team_shares (&team, &shares))
        continue;
      for (int i = 0; i < team.n; i++)
        {
          int assigned = out->people[i].assigned;
          SyAssigned who = assigned >= 0 ? (SyAssigned) assigned : SY_ASSIGNED_MIXED_ADULTS;

          largest = fmax (largest, shares.worst[i] / sy_lift_reference_mass (who, units));
        }
      if (!shares.balanced)
        largest = (double) INFINITY; /* it tips that way */
      if (largest <= most)
        continue;
      most = largest;
      out->can_lie = true;
      out->team = team;
      out->shares = shares;
    }
}

void
sy_team_case (const SyTeamFacts *facts, SyUnits units, SyTeamCase *out)
{
  const double cm = units == SY_UNITS_US ? 1 : 10; /* of a height, in the unit of places */
  SyTeam *team = &out->team;
  bool ahead[SY_TEAM_MAX];
  double mean = 0;
  int known = 0;

  *out = (SyTeamCase) { .people = facts->people.items, .known_direction = true };
  team->n = (int) facts->people.count;
  for (int i = 0; i < team->n; i++)
    {
      team->x[i] = out->people[i].at.at[0];
      team->y[i] = out->people[i].at.at[1];
      ahead[i] = is_ahead (facts, out->people[i].label);
      if (out->people[i].height.given)
        {
          mean += out->people[i].height.value;
          known++;
        }
    }
  /* A height that was not given is that of the others: it tilts nothing. */
  for (int i = 0; i < team->n; i++)
    team->height[i] = cm * (out->people[i].height.given ? out->people[i].height.value : known > 0 ? mean / known : 0);
  for (int i = 0; i < 3; i++)
    team->cg[i] = facts->cg.at[i];
  team->slope_deg = facts->slope.given ? facts->slope.value : 0;
  if (team->slope_deg > 0 && !way_up (team, ahead, team->uphill))
    {
      out->known_direction = false;
      find_worst_way (out, units);
    }
  else
    out->can_lie = sy_team_shares (team, &out->shares);
}

int
sy_team_heaviest (const SyTeamCase *team)
{
  const SyTeamShares *shares = &team->shares;
  int at = 0;

  /* Of those who may have to carry as much, the one who does where all are equally stiff. */
  for (int i = 1; i < team->team.n; i++)
    if (shares->worst[i] > shares->worst[at] + 1e-9
        || (shares->worst[i] > shares->worst[at] - 1e-9 && shares->elastic[i] > shares->elastic[at] + 1e-9))
      at = i;
  return at;
}

/* ---- check ---- */

static void
person_problem (SyProblems *problems, SyProblemKind kind, size_t index, const char *member, const char *given,
                const char *allowed)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, "$.people[");
  sy_text_add_number (&text, (double) index);
  sy_text_add (&text, "].");
  sy_text_add (&text, member);
  sy_problems_add (problems, kind, 0, path, given, allowed, "");
}

/* Hands nearer to one another than a millimetre are in one place. Assumed, no source. */
static bool
is_one_place (const SyVector *a, const SyVector *b, SyUnits units)
{
  const double least = units == SY_UNITS_US ? 1 / SY_MM_PER_IN : 1;

  return fabs (a->at[0] - b->at[0]) < least && fabs (a->at[1] - b->at[1]) < least;
}

static void
check_person (const SyTeamPerson *people, size_t i, SyUnits units, SyProblems *problems)
{
  const char *label = people[i].label;

  if (label != NULL && (!sy_text_says (label) || strlen (label) > SY_TEAM_LABEL_MAX || sy_rig_name_hides (label)))
    person_problem (problems, SY_PROBLEM_SIZE, i, "label", label, "a name of 1 to 40 bytes, without control characters");
  for (size_t k = 0; k < i; k++)
    {
      if (label != NULL && people[k].label != NULL && strcmp (label, people[k].label) == 0)
        person_problem (problems, SY_PROBLEM_CONFLICT, i, "label", label, "a name that nobody else has");
      if (people[i].at.given && people[k].at.given && is_one_place (&people[i].at, &people[k].at, units))
        person_problem (problems, SY_PROBLEM_CONFLICT, i, "at", "the place of another person",
                        "a place of its own, a millimetre or more away");
    }
}

static void
check_uphill (const SyTeamFacts *facts, SyProblems *problems)
{
  static const char allowed[] = "labels of the people at the upper end, not of all of them";
  const SyTeamPerson *people = facts->people.items;
  const char *const *labels = facts->uphill.items;
  size_t ahead = 0;

  if (!facts->uphill.given)
    return;
  if (!facts->slope.given)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.uphill", "without a slope", "only beside slope", "");
  for (size_t i = 0; i < facts->uphill.count; i++)
    {
      bool found = false;

      for (size_t k = 0; k < facts->people.count; k++)
        found = found || (people[k].label != NULL && strcmp (people[k].label, labels[i]) == 0);
      if (!found)
        sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.uphill", labels[i], "the label of one of the people", "");
    }
  for (size_t k = 0; k < facts->people.count; k++)
    ahead += is_ahead (facts, people[k].label);
  if (ahead == 0 || ahead == facts->people.count)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.uphill", ahead == 0 ? "nobody" : "everybody", allowed, "");
}

void
sy_team_check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyTeamFacts *facts = data;
  const SyTeamPerson *people = facts->people.items;
  int before = problems->count + problems->dropped;
  bool placed = true;
  SyTeamCase team;

  if (facts->people.given && facts->people.count < 2)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.people", facts->people.count == 0 ? "nobody" : "one person",
                     "2 to 4 people; what one person lifts is method lift", "");
  for (size_t i = 0; i < facts->people.count; i++)
    {
      check_person (people, i, units, problems);
      placed = placed && people[i].at.given;
    }
  check_uphill (facts, problems);
  if (problems->count + problems->dropped > before || facts->people.count < 2 || !placed)
    return;
  sy_team_case (facts, units, &team);
  if (!team.can_lie)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.people", "hands that differ more in height than they are apart",
                     "heights that differ by less than the distance between the hands, and a tilt under 90 degrees",
                     sy_unit_name (SY_KIND_REACH, units));
  else if (!team.known_direction && facts->uphill.given)
    sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, "$.uphill", "an upper end in the middle of the others",
                     "people at one end of the load", "");
}
