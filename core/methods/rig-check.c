/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-rig-facts.h"

/* Facts of a rigged lift that exclude one another. */

/* A path such as "$.legs[1].elements[0].label", put together without printing. */
typedef struct
{
  char text[SY_PROBLEM_PATH_MAX];
} Path;

static Path
item_path (const char *list, size_t index, const char *member)
{
  Path path;
  SyText text = { path.text, sizeof path.text, 0 };

  sy_text_add (&text, list);
  sy_text_add (&text, "[");
  sy_text_add_number (&text, (double) index);
  sy_text_add (&text, "]");
  sy_text_add (&text, member);
  return path;
}

static void
conflict (SyProblems *problems, SyProblemKind kind, const Path *path, const char *given, const char *allowed)
{
  sy_problems_add (problems, kind, 0, path->text, given, allowed, "");
}

/* Control characters, and those that turn the direction of writing: they make a reason read as something else. */
bool
sy_rig_name_hides (const char *label)
{
  for (const unsigned char *at = (const unsigned char *) label; *at != '\0'; at++)
    if (*at < 0x20 || *at == 0x7f
        || (at[0] == 0xe2 && ((at[1] == 0x80 && at[2] >= 0xaa && at[2] <= 0xae)
                              || (at[1] == 0x81 && at[2] >= 0xa6 && at[2] <= 0xa9))))
      return true;
  return false;
}

void
sy_check_label (const char *label, const char *list, size_t index, const char *const *before, SyProblems *problems)
{
  Path path = item_path (list, index, ".label");

  if (label == NULL)
    return; /* missing: said by the reader */
  if (!sy_text_says (label) || strlen (label) > SY_RIG_LABEL_MAX || sy_rig_name_hides (label))
    {
      conflict (problems, SY_PROBLEM_SIZE, &path, label, "a name of 1 to 40 bytes, without control characters");
      return;
    }
  for (size_t i = 0; i < index; i++)
    if (before[i] != NULL && strcmp (before[i], label) == 0)
      {
        conflict (problems, SY_PROBLEM_CONFLICT, &path, label, "a name that no other in the list has");
        return;
      }
}

void
sy_rig_check_points (const SyList *points, const char *list, SyProblems *problems)
{
  const SyRigPoint *items = points->items;
  const char *labels[SY_RIG_POINTS_MAX];

  for (size_t i = 0; i < points->count && i < SY_RIG_POINTS_MAX; i++)
    {
      sy_check_label (items[i].label, list, i, labels, problems);
      labels[i] = items[i].label;
      if (items[i].axis.given && sy_vec3_length (sy_vector_vec3 (&items[i].axis)) == 0)
        {
          Path path = item_path (list, i, ".axis");
          conflict (problems, SY_PROBLEM_RANGE, &path, "[0, 0, 0]", "a direction: at least one of the three not 0");
        }
    }
}

const SyRigPoint *
sy_rig_point (const SyRigFacts *facts, const char *label)
{
  const SyRigPoint *points = facts->points.items;

  for (size_t i = 0; i < facts->points.count; i++)
    if (points[i].label != NULL && strcmp (points[i].label, label) == 0)
      return &points[i];
  return NULL;
}

/* Points of a leg: known, and each pulled by one leg only. */
static void
check_leg_points (const SyRigFacts *facts, size_t at, const char **used, size_t *n_used, SyProblems *problems)
{
  const SyRigLeg *leg = (const SyRigLeg *) facts->legs.items + at;
  const char *const *labels = leg->point.items;
  Path path = item_path ("$.legs", at, ".point");
  bool basket = leg->hitch == SY_HITCH_BASKET;

  if (!leg->point.given)
    return;
  if (leg->hitch < 0 ? leg->point.count < 1 || leg->point.count > 2 : leg->point.count != (basket ? 2 : 1))
    {
      conflict (problems, SY_PROBLEM_CONFLICT, &path, leg->point.count == 1 ? "one point" : leg->point.count == 0 ? "no point" : "two points",
                basket ? "two points: a basket takes hold at two" : "one point; only a basket has two");
      return;
    }
  for (size_t i = 0; i < leg->point.count; i++)
    {
      if (sy_rig_point (facts, labels[i]) == NULL)
        {
          conflict (problems, SY_PROBLEM_CONFLICT, &path, labels[i], "the label of one of the points");
          continue;
        }
      for (size_t k = 0; k < *n_used; k++)
        if (strcmp (used[k], labels[i]) == 0)
          {
            conflict (problems, SY_PROBLEM_CONFLICT, &path, labels[i], "a point that no other leg pulls");
            break;
          }
      used[(*n_used)++] = labels[i];
    }
}

/* Elements are listed from the load up: what is screwed into the load is never above a sling, a sling never above what
   collects the legs. The order decides whose own mass hangs below whom. */
static void
check_order (const SyRigElement *elements, size_t i, const char *list, SyProblems *problems)
{
  Path path = item_path (list, i, ".kind");
  bool point = elements[i].kind == SY_GEAR_EYEBOLT || elements[i].kind == SY_GEAR_HOIST_RING;

  for (size_t k = 0; k < i; k++)
    if ((point && (elements[k].kind == SY_GEAR_SLING || elements[k].kind == SY_GEAR_MASTER_LINK))
        || (elements[i].kind == SY_GEAR_SLING && elements[k].kind == SY_GEAR_MASTER_LINK))
      {
        conflict (problems, SY_PROBLEM_CONFLICT, &path, point ? "a lifting point above a sling" : "a sling above a master link",
                  "elements from the load up: lifting point, shackle, sling, master link");
        return;
      }
}

/* Quantities are called after leg and element with a dot between: two must not come to the same name. */
static bool
join_alike (const char *leg, const char *element, const char *other_leg, const char *other)
{
  size_t n = strlen (leg), m = strlen (other_leg);
  char one[2 * SY_RIG_LABEL_MAX + 2], two[2 * SY_RIG_LABEL_MAX + 2];

  if (n > SY_RIG_LABEL_MAX || m > SY_RIG_LABEL_MAX || strlen (element) > SY_RIG_LABEL_MAX || strlen (other) > SY_RIG_LABEL_MAX)
    return false;
  memcpy (one, leg, n);
  one[n] = '.';
  memcpy (one + n + 1, element, strlen (element) + 1);
  memcpy (two, other_leg, m);
  two[m] = '.';
  memcpy (two + m + 1, other, strlen (other) + 1);
  return strcmp (one, two) == 0;
}

static void
check_joined (const SyRigFacts *facts, size_t at, size_t i, SyProblems *problems)
{
  const SyRigLeg *legs = facts->legs.items;
  const SyRigElement *own = legs[at].elements.items;

  if (own[i].label == NULL || legs[at].point.count == 0)
    return;
  for (size_t leg = 0; leg < at; leg++)
    for (size_t k = 0; k < legs[leg].elements.count; k++)
      {
        const SyRigElement *other = (const SyRigElement *) legs[leg].elements.items + k;
        if (other->label != NULL && legs[leg].point.count > 0
            && join_alike (((const char *const *) legs[at].point.items)[0], own[i].label,
                           ((const char *const *) legs[leg].point.items)[0], other->label))
          {
            Path list = item_path ("$.legs", at, ".elements");
            Path path = item_path (list.text, i, ".label");
            conflict (problems, SY_PROBLEM_CONFLICT, &path, own[i].label,
                      "a name that, put behind its point's with a dot, is no other's");
            return;
          }
      }
}

static void
check_elements (const SyRigFacts *facts, size_t at, SyProblems *problems)
{
  const SyRigLeg *leg = (const SyRigLeg *) facts->legs.items + at;
  const SyRigElement *elements = leg->elements.items;
  const char *labels[SY_RIG_ELEMENTS_MAX];
  Path list = item_path ("$.legs", at, ".elements");

  for (size_t i = 0; i < leg->elements.count && i < SY_RIG_ELEMENTS_MAX; i++)
    {
      sy_check_label (elements[i].label, list.text, i, labels, problems);
      labels[i] = elements[i].label;
      check_order (elements, i, list.text, problems);
      check_joined (facts, at, i, problems);
    }
}

/* Where the halves are named, a point sits on one of them. */
static void
check_halves (const SyRigFacts *facts, SyProblems *problems)
{
  const SyRigPoint *points = facts->points.items;
  const char *const *halves = facts->halves.items;

  for (size_t i = 0; i < facts->points.count && facts->halves.count > 0; i++)
    {
      bool known = !sy_text_says (points[i].body);

      for (size_t k = 0; k < facts->halves.count; k++)
        known = known || sy_text_same (points[i].body, halves[k]);
      if (!known)
        {
          Path path = item_path ("$.points", i, ".body");
          conflict (problems, SY_PROBLEM_CONFLICT, &path, points[i].body, "one of the halves");
        }
    }
}

static void
check_hook (const SyRigFacts *facts, SyUnits units, SyProblems *problems)
{
  static const Path at_path = { "$.hook.at" }, hook_path = { "$.hook" };
  /* Facts are held to 1 mm: what a tape reads. Common practice, no source. */
  double allowed = sy_unit_convert (SY_KIND_LENGTH, 1, SY_UNITS_METRIC, units);

  if (!facts->hook_given)
    return;
  if (facts->hook.at.given == facts->hook.above.given)
    {
      conflict (problems, facts->hook.at.given ? SY_PROBLEM_CONFLICT : SY_PROBLEM_MISSING, &hook_path,
                facts->hook.at.given ? "both at and above" : "nothing",
                "at [x, y, z], or above; leave the hook out for a load that hangs free");
      return;
    }
  if (!facts->hook.at.given || !facts->cg.given)
    return;
  double dx = facts->hook.at.at[0] - facts->cg.at[0], dy = facts->hook.at.at[1] - facts->cg.at[1];
  double off = sqrt (dx * dx + dy * dy);
  if (off > allowed * (1 + 1e-9))
    {
      char given[SY_PROBLEM_GIVEN_MAX];
      SyText offset = { given, sizeof given, 0 };

      sy_text_add_number (&offset, off);
      sy_text_add (&offset, " off the centre of gravity in plan");
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, at_path.text, given,
                       units == SY_UNITS_US ? "a hook within 0.0393700787401575 in (1 mm) of the centre of gravity: a load held level hangs under it"
                                            : "a hook within 1 mm of the centre of gravity: a load held level hangs under it",
                       sy_unit_name (SY_KIND_LENGTH, units));
    }
}

void
sy_rig_check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyRigFacts *facts = data;
  const SyRigLeg *legs = facts->legs.items;
  const SyRigSuspension *suspension = facts->suspension.items;
  const char *used[2 * SY_RIG_LEGS_MAX], *labels[SY_RIG_SUSPENSION_MAX];
  size_t n_used = 0;

  if (facts->points.given && facts->points.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.points", "an empty list", "1 to 32 points", "");
  if (facts->legs.given && facts->legs.count == 0)
    sy_problems_add (problems, SY_PROBLEM_SIZE, 0, "$.legs", "an empty list", "1 to 4 legs", "");
  sy_rig_check_points (&facts->points, "$.points", problems);
  for (size_t i = 0; i < facts->legs.count; i++)
    {
      check_leg_points (facts, i, used, &n_used, problems);
      check_elements (facts, i, problems);
      if (legs[i].choke_angle.given && legs[i].hitch >= 0 && legs[i].hitch != SY_HITCH_CHOKE)
        {
          Path path = item_path ("$.legs", i, ".choke_angle");
          conflict (problems, SY_PROBLEM_CONFLICT, &path, "an angle of choke", "only with the hitch \"choke\"");
        }
    }
  for (size_t i = 0; i < facts->suspension.count && i < SY_RIG_SUSPENSION_MAX; i++)
    {
      sy_check_label (suspension[i].label, "$.suspension", i, labels, problems);
      labels[i] = suspension[i].label;
    }
  check_halves (facts, problems);
  check_hook (facts, units, problems);
}
