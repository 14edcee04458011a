/* SPDX-License-Identifier: MIT */
#include "sy-task-kinds.h"

#include <glib.h>
#include <string.h>

static const SyTaskKind kinds[] = {
  { .method = "lift",
    .offer = N_ ("One lift"),
    .what = N_ ("A person lifts and puts down by hand: reach, height, pace and grip against the lifting equation."),
    .new_title = N_ ("New task"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is lifted and where it goes, as people here call it."),
    .first = "avoid.possible",
    .no_result = N_ ("The steelyard moves as soon as every fact it needs is there."),
    .no_drawing = N_ ("The lift is drawn to scale here, from the side and from above, once the facts on the left are "
                      "given.") },
  { .method = "lift-set",
    .offer = N_ ("Several lifts, a rotation, or sampled lifts"),
    .what = N_ ("A shift that is not one lift: a composite index of a job's lifts, turns at several jobs with a rota, or a "
                "long list of lifts as they were sampled."),
    .new_title = N_ ("New set of lifts"),
    .name_label = N_ ("Name of the set"),
    .name_help = N_ ("The job, the rota or the bay, as people here call it."),
    .first = "avoid.possible",
    .no_result = N_ ("How the lifts belong together and every lift's facts are needed before anything can be said."),
    .no_drawing = N_ ("What each lift adds to the index is drawn here once the lifts on the left are given.") },
  { .method = "team-lift",
    .offer = N_ ("Lift by two to four people"),
    .what = N_ ("Several people lift one load: what each of them carries by where they stand, on the level, a slope or "
                "stairs."),
    .new_title = N_ ("New team lift"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is lifted and by how many, as people here call it."),
    .first = "avoid.possible",
    .no_result = N_ ("The mass, its centre and the place of every person are needed before anything can be said."),
    .no_drawing = N_ ("The load, its centre and the people are drawn to scale here once they are given."),
    .figure_name = N_ ("Ratio") },
  { .method = "carry",
    .offer = N_ ("Carry"),
    .what = N_ ("A load is carried some way by hand: mass, distance and pace, over the minute, the hour and the shift."),
    .new_title = N_ ("New carry"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is carried from where to where."),
    .first = "avoid.possible",
    .no_result = N_ ("Mass, distance, pace and height of the hands are needed before anything can be said."),
    .no_drawing = N_ ("The way is drawn here once the facts on the left are given."),
    .figure_name = N_ ("Ratio") },
  { .method = "push",
    .offer = N_ ("Push or pull"),
    .what = N_ ("Hands move a cart or a load on wheels: the force to start, to keep going, to stop and to hold, and who can."),
    .new_title = N_ ("New push or pull"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is pushed or pulled from where to where."),
    .first = "avoid.possible",
    .no_result = N_ ("The forces as measured, or the cart and its way, are needed before anything can be said."),
    .no_drawing = N_ ("The person, the forces and the way are drawn to scale here once the facts on the left are given."),
    .figure_name = N_ ("Ratio") },
  { .method = "slide",
    .offer = N_ ("Slide"),
    .what = N_ ("A die or another load is slid over a bolster, a table or rollers: the force by mass, friction and slope."),
    .new_title = N_ ("New slide"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is slid from where to where."),
    .first = "avoid.possible",
    .no_result = N_ ("The mass, the surface and the height of the hands are needed before anything can be said."),
    .no_drawing = N_ ("The load on its surface is drawn to scale here once the facts on the left are given."),
    .figure_name = N_ ("Ratio") },
  { .method = "rigged-lift",
    .group = SY_OFFER_GEAR,
    .offer = N_ ("Rigged lift (lift plan)"),
    .what = N_ ("A die or another load hangs from a hoist or crane: what every leg, eyebolt, shackle and hook carries "
                "against what it may carry."),
    .new_title = N_ ("New lift plan"),
    .name_label = N_ ("Name of the plan"),
    .name_help = N_ ("What is lifted, from where to where, as people here call it."),
    .first = "avoid.possible",
    .no_result = N_ ("Mass, centre of gravity, points and legs are needed before anything can be said."),
    .no_drawing = N_ ("The load, its points and its legs are drawn to scale here once they are given."),
    .figure_name = N_ ("Utilisation") },
  { .method = "truck",
    .group = SY_OFFER_GEAR,
    .offer = N_ ("Fork truck"),
    .what = N_ ("A load on the forks: what the truck may lift at that height, with that attachment and that load "
                "centre."),
    .new_title = N_ ("New truck move"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is moved with which truck."),
    .first = "avoid.possible",
    .no_result = N_ ("The plate of the truck and the load are needed before anything can be said."),
    .no_drawing = N_ ("The truck and its load are drawn to scale here once the facts on the left are given."),
    .figure_name = N_ ("Utilisation") },
  { .method = "cart",
    .group = SY_OFFER_GEAR,
    .offer = N_ ("Cart"),
    .what = N_ ("A load on wheels against what its cart may carry: slope, brake, and what tips it."),
    .new_title = N_ ("New cart move"),
    .name_label = N_ ("Name of the task"),
    .name_help = N_ ("What is pushed from where to where."),
    .first = "avoid.possible",
    .no_result = N_ ("The masses, the wheels and the floor are needed before anything can be said."),
    .no_drawing = N_ ("The cart is drawn to scale here once the facts on the left are given."),
    .figure_name = N_ ("Utilisation") },
  { .method = "changeover",
    .group = SY_OFFER_WHOLE,
    .offer = N_ ("Die change"),
    .what = N_ ("All steps of a changeover: who does what when, how long the machine stands, what hands must not do, which "
                "checks are missing."),
    .new_title = N_ ("New changeover"),
    .name_label = N_ ("Name of the changeover"),
    .name_help = N_ ("The machine and the dies, as people here call them."),
    .first = "avoid.possible",
    .no_result = N_ ("The people, and every step with its minutes, are needed before anything can be said."),
    .no_drawing = N_ ("The change is drawn here, a lane for each person, once its steps are given."),
    .figure_name = N_ ("Worst index") },
  { .method = "case",
    .group = SY_OFFER_WHOLE,
    .offer = N_ ("Case for an aid"),
    .what = N_ ("The work as it is beside up to five ways to do it: verdicts, people, minutes, cost, and when it is paid "
                "back."),
    .new_title = N_ ("New case"),
    .name_label = N_ ("Name of the case"),
    .name_help = N_ ("What is to be bought or changed, and for which work."),
    .first = "name",
    .no_result = N_ ("The work as it is and one option are needed before anything can be said."),
    .no_drawing = N_ ("What each option costs and saves is drawn here once they are given."),
    .figure_name = N_ ("Payback") },
  { .method = "die-mass",
    .offer = N_ ("Die"),
    .what = N_ ("Its mass and centre of gravity, weighed or put together from its plates, and its lifting points."),
    .new_title = N_ ("New die"),
    .name_label = N_ ("Name of the die"),
    .name_help = N_ ("As it is painted on it or stands on the drawing."),
    .first = "name",
    .no_result = N_ ("Nothing can be said before there is a weighed mass or a body, and what was begun is complete."),
    .no_drawing = N_ ("The die is drawn to scale here once its bodies are given."),
    .figure = "mass",
    .figure_name = N_ ("Mass"),
    .group = SY_OFFER_REGISTER },
  { .method = "gear",
    .offer = N_ ("Gear item"),
    .what = N_ ("A sling, shackle, hoist or truck: what it may carry and when its examination is due."),
    .new_title = N_ ("New item of gear"),
    .name_label = N_ ("Name of the item"),
    .name_help = N_ ("What people here call it, with its number."),
    .first = "name",
    .no_result = N_ ("Nothing can be said before its kind and its mark are given, and every fact can be right."),
    .no_drawing = N_ ("There is nothing to draw."),
    .group = SY_OFFER_REGISTER },
};

const SyTaskKind *const *
sy_task_kinds (size_t *n)
{
  static const SyTaskKind *offered[G_N_ELEMENTS (kinds)];
  size_t count = 0;

  for (size_t i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (sy_method_find (kinds[i].method) != NULL)
      offered[count++] = &kinds[i];
  *n = count;
  return offered;
}

const SyTaskKind *
sy_task_kind (const SyMethod *method)
{
  static const SyTaskKind other = { .method = "",
                              .new_title = N_ ("New task"),
                              .name_label = N_ ("Name of the task"),
                              .first = "name",
                              .no_result = N_ ("There is no result yet."),
                              .no_drawing = N_ ("There is no result yet.") };

  for (size_t i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].method, method->id) == 0)
      return &kinds[i];
  return &other;
}
