/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-rig-facts.h"

/* Facts of a rigged lift that exclude one another. */

/* A path such as "$.legs[1].elements[0].label", put together without printing. */
typedef struct
{
  char text[SY_PROBLEM_PATH_MAX];
  size_t length;
} Path;

static void
add_text (Path *path, const char *more)
{
  size_t length = strlen (more);

  if (length > sizeof path->text - 1 - path->length)
    length = sizeof path->text - 1 - path->length;
  memcpy (path->text + path->length, more, length);
  path->length += length;
  path->text[path->length] = '\0';
}

static void
add_index (Path *path, size_t index)
{
  char number[SY_NUMBER_TEXT_MAX];

  sy_number_print ((double) index, number);
  add_text (path, "[");
  add_text (path, number);
  add_text (path, "]");
}

static Path
item_path (const char *list, size_t index, const char *member)
{
  Path path = { "", 0 };

  add_text (&path, list);
  add_index (&path, index);
  add_text (&path, member);
  return path;
}

static void
conflict (SyProblems *problems, SyProblemKind kind, const Path *path, const char *given, const char *allowed)
{
  sy_problems_add (problems, kind, 0, path->text, given, allowed, "");
}

/* A name must be there, short enough to stand in a symbol, and unlike those before it in the list. */
static void
check_label (const char *label, const char *list, size_t index, const char *const *before, SyProblems *problems)
{
  Path path = item_path (list, index, ".label");

  if (label == NULL)
    return; /* missing: said by the reader */
  if (*label == '\0' || strlen (label) > SY_RIG_LABEL_MAX)
    {
      conflict (problems, SY_PROBLEM_SIZE, &path, label, "a name of 1 to 40 bytes");
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
      check_label (items[i].label, list, i, labels, problems);
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

static void
check_elements (const SyRigLeg *leg, size_t at, SyProblems *problems)
{
  const SyRigElement *elements = leg->elements.items;
  const char *labels[SY_RIG_ELEMENTS_MAX];
  Path list = item_path ("$.legs", at, ".elements");

  for (size_t i = 0; i < leg->elements.count && i < SY_RIG_ELEMENTS_MAX; i++)
    {
      check_label (elements[i].label, list.text, i, labels, problems);
      labels[i] = elements[i].label;
    }
}

static void
check_hook (const SyRigFacts *facts, SyUnits units, SyProblems *problems)
{
  static const Path at_path = { "$.hook.at", 0 }, hook_path = { "$.hook", 0 };
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
      char given[SY_NUMBER_TEXT_MAX];
      Path offset = { "", 0 };

      sy_number_print (off, given);
      add_text (&offset, given);
      add_text (&offset, " off the centre of gravity in plan");
      sy_problems_add (problems, SY_PROBLEM_CONFLICT, 0, at_path.text, offset.text,
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
      check_elements (&legs[i], i, problems);
      if (legs[i].choke_angle.given && legs[i].hitch >= 0 && legs[i].hitch != SY_HITCH_CHOKE)
        {
          Path path = item_path ("$.legs", i, ".choke_angle");
          conflict (problems, SY_PROBLEM_CONFLICT, &path, "an angle of choke", "only with the hitch \"choke\"");
        }
    }
  for (size_t i = 0; i < facts->suspension.count && i < SY_RIG_SUSPENSION_MAX; i++)
    {
      check_label (suspension[i].label, "$.suspension", i, labels, problems);
      labels[i] = suspension[i].label;
    }
  check_hook (facts, units, problems);
}
