/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-case-facts.h"
#include "sy-changeover-facts.h"
#include "sy-rig-facts.h"

/* The fields of a case for an aid, and what excludes what. */

#define FROM_ZERO { SY_BOUND_CLOSED, { 0, 0 } }
#define OVER_ZERO { SY_BOUND_OPEN, { 0, 0 } }
#define UP_TO(top) { SY_BOUND_CLOSED, { top, top } }

const SyChoice sy_aid_kind_choices[SY_N_AID_KINDS] = {
  [SY_AID_HOIST] = { "hoist", N_ ("Hoist"), NULL },
  [SY_AID_JIB] = { "jib", N_ ("Jib with balancer"), NULL },
  [SY_AID_CART] = { "cart", N_ ("Die cart with rollers"), NULL },
  [SY_AID_TABLE] = { "table", N_ ("Lift table"), NULL },
  [SY_AID_MANIPULATOR] = { "manipulator", N_ ("Manipulator"), NULL },
  [SY_AID_ROBOT] = { "robot", N_ ("Robot"), NULL },
  [SY_AID_ARM] = { "arm", N_ ("Support arm"), NULL },
  [SY_AID_TWO_PERSON] = { "two-person", N_ ("Two-person method"), NULL },
  [SY_AID_REDESIGN] = { "redesign", N_ ("Redesign of the part"), NULL },
  [SY_AID_OTHER] = { "other", N_ ("Other"), NULL },
};

#define END(name_, label_, kind_, top_, required_)                                                                        \
  { .name = #name_, .label = N_ (label_), .type = SY_MEMBER_NUMBER, .kind = kind_, .offset = offsetof (SyEstimate, name_), \
    .required = required_, .low = FROM_ZERO, .high = UP_TO (top_), .range_source = "common practice, no source" }
#define ENDS(kind_, top_)                                                                                            \
  { END (low, "Low", kind_, top_, false), END (expected, "Expected", kind_, top_, true),                               \
    END (high, "High", kind_, top_, false) }
static const SyField money_ends[] = ENDS (SY_KIND_MONEY, 1e12);
static const SyField minute_ends[] = ENDS (SY_KIND_MINUTES, 14400);
static const SyField count_ends[] = ENDS (SY_KIND_COUNT, 10000000);

#define ESTIMATE(facts_, member_, name_, label_, ends_, help_)                                                       \
  { .name = name_, .label = N_ (label_), .help = help_, .type = SY_MEMBER_GROUP, .offset = offsetof (facts_, member_), \
    .members = ends_, .n_members = SY_LEN (ends_), .group_size = sizeof (SyEstimate),                                  \
    .present_offset = offsetof (facts_, member_##_given) }

static const SyField as_is_members[] = {
  { .name = "facts", .label = N_ ("How it is done now"), .type = SY_MEMBER_FACTS, .required = true,
    .help = N_ ("A task or a die change, by its own method."), .offset = offsetof (SyCaseAsIs, part) },
  ESTIMATE (SyCaseAsIs, stopped, "stopped", "Machine stands, each time", minute_ends,
            N_ ("Left empty: from the die change.")),
  ESTIMATE (SyCaseAsIs, person, "person_minutes", "Minutes of all people, each time", minute_ends,
            N_ ("Left empty: from the die change.")),
};

static const SyField option_members[] = {
  { .name = "label", .label = N_ ("Option"), .type = SY_MEMBER_TEXT, .required = true,
    .offset = offsetof (SyCaseOption, label) },
  { .name = "kind", .label = N_ ("Kind of aid"), .type = SY_MEMBER_CHOICE, .offset = offsetof (SyCaseOption, kind),
    .choices = sy_aid_kind_choices, .n_choices = SY_N_AID_KINDS },
  { .name = "facts", .label = N_ ("How it would be done"), .type = SY_MEMBER_FACTS,
    .offset = offsetof (SyCaseOption, part) },
  { .name = "aid", .label = N_ ("How the aid is assessed"), .type = SY_MEMBER_FACTS,
    .help = N_ ("Its lift plan, truck, cart or push."), .offset = offsetof (SyCaseOption, aid) },
  ESTIMATE (SyCaseOption, capital, "capital", "Price", money_ends, NULL),
  { .name = "quote_number", .label = N_ ("Quote number"), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyCaseOption, quote_number) },
  { .name = "quote_date", .label = N_ ("Quote of"), .type = SY_MEMBER_DATE, .offset = offsetof (SyCaseOption, quote_date) },
  { .name = "lead_weeks", .label = N_ ("Lead time in weeks"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_RATIO,
    .offset = offsetof (SyCaseOption, lead_weeks), .low = FROM_ZERO, .high = UP_TO (1000),
    .range_source = "common practice, no source" },
  ESTIMATE (SyCaseOption, training, "training", "Training, once", money_ends, NULL),
  ESTIMATE (SyCaseOption, running, "running", "Running, a year", money_ends, NULL),
  ESTIMATE (SyCaseOption, examination, "examination", "Examination, a year", money_ends, NULL),
  ESTIMATE (SyCaseOption, maintenance, "maintenance", "Maintenance, a year", money_ends, NULL),
  ESTIMATE (SyCaseOption, stopped, "stopped", "Machine stands, each time", minute_ends,
            N_ ("Left empty: from the die change.")),
  ESTIMATE (SyCaseOption, person, "person_minutes", "Minutes of all people, each time", minute_ends,
            N_ ("Left empty: from the die change.")),
  { .name = "when_down", .label = N_ ("When the aid is down"), .type = SY_MEMBER_TEXT,
    .help = N_ ("What is done then."), .offset = offsetof (SyCaseOption, when_down) },
};

static const SyField approval_members[] = {
  { .name = "who", .label = N_ ("Approved by"), .type = SY_MEMBER_TEXT, .offset = offsetof (SyCaseApproval, who) },
  { .name = "role", .label = N_ ("As"), .type = SY_MEMBER_TEXT, .offset = offsetof (SyCaseApproval, role) },
  { .name = "date", .label = N_ ("On"), .type = SY_MEMBER_DATE, .offset = offsetof (SyCaseApproval, date) },
};

const SyField sy_case_fields[SY_N_CASE_FIELDS] = {
  { .name = "as_is", .label = N_ ("As it is"), .type = SY_MEMBER_GROUP, .offset = offsetof (SyCaseFacts, as_is),
    .members = as_is_members, .n_members = SY_LEN (as_is_members), .group_size = sizeof (SyCaseAsIs), .required = true,
    .present_offset = offsetof (SyCaseFacts, as_is_given) },
  { .name = "options", .label = N_ ("Options"), .type = SY_MEMBER_LIST, .item_label = N_ ("Option"), .required = true,
    .offset = offsetof (SyCaseFacts, options), .members = option_members, .n_members = SY_LEN (option_members),
    .group_size = sizeof (SyCaseOption), .max_items = SY_CASE_OPTIONS_MAX },
  { .name = "currency", .label = N_ ("Currency"), .type = SY_MEMBER_TEXT, .offset = offsetof (SyCaseFacts, currency) },
  ESTIMATE (SyCaseFacts, changes, "changes_per_year", "Times a year", count_ends, NULL),
  ESTIMATE (SyCaseFacts, labour_rate, "labour_rate", "Labour, an hour", money_ends, NULL),
  ESTIMATE (SyCaseFacts, machine_rate, "machine_rate", "Machine, an hour", money_ends, NULL),
  { .name = "discount_rate", .label = N_ ("Discount rate a year"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_PERCENT,
    .offset = offsetof (SyCaseFacts, discount_rate), .low = FROM_ZERO, .high = UP_TO (100),
    .range_source = "common practice, no source" },
  { .name = "years", .label = N_ ("Years counted"), .type = SY_MEMBER_NUMBER, .kind = SY_KIND_COUNT, .whole = true,
    .offset = offsetof (SyCaseFacts, years), .low = { SY_BOUND_CLOSED, { 1, 1 } }, .high = UP_TO (50),
    .range_source = "common practice, no source" },
  { .name = "approval", .label = N_ ("Approval"), .type = SY_MEMBER_GROUP, .offset = offsetof (SyCaseFacts, approval),
    .members = approval_members, .n_members = SY_LEN (approval_members), .group_size = sizeof (SyCaseApproval),
    .present_offset = offsetof (SyCaseFacts, approval_given) },
};

/* ---- Check ---- */

/* Path of a fact of the @i-th option, or of the whole (@i below 0). */
static void
refuse (SyProblems *problems, SyProblemKind kind, int i, const char *member, const char *given, const char *allowed)
{
  char path[SY_PROBLEM_PATH_MAX];
  SyText text = { path, sizeof path, 0 };

  sy_text_add (&text, "$.");
  if (i >= 0)
    {
      sy_text_add (&text, "options[");
      sy_text_add_number (&text, i);
      sy_text_add (&text, "].");
    }
  sy_text_add (&text, member);
  sy_problems_add (problems, kind, 0, path, given, allowed, "");
}

static void
check_estimate (const SyEstimate *estimate, int i, const char *member, SyProblems *problems)
{
  bool low = estimate->low.given && estimate->expected.given && estimate->low.value > estimate->expected.value;
  bool high = estimate->high.given && estimate->expected.given && estimate->high.value < estimate->expected.value;
  char given[SY_NUMBER_TEXT_MAX];

  if (!low && !high)
    return;
  sy_number_print (estimate->expected.value, given);
  refuse (problems, SY_PROBLEM_CONFLICT, i, member, given, "low, expected and high in rising order");
}

static bool
is_aid_method (const SyMethod *method)
{
  static const char *const ids[] = { "rigged-lift", "truck", "cart", "push", "slide" };

  for (size_t k = 0; k < SY_LEN (ids); k++)
    if (strcmp (method->id, ids[k]) == 0)
      return true;
  return false;
}

static void
check_part (const SyPartFacts *part, bool is_aid, int i, const char *method_path, const char *day_path, SyProblems *problems)
{
  if (part->method == NULL)
    return;
  const SyCommonFacts *common = part->facts;
  bool is_task = strcmp (part->method->item_kind, "task") == 0 || strcmp (part->method->item_kind, "changeover") == 0;
  if (is_aid ? !is_aid_method (part->method) : !is_task)
    refuse (problems, SY_PROBLEM_CONFLICT, i, method_path, part->method->id,
            is_aid ? "one of: rigged-lift, truck, cart, push, slide" : "a method by which a load is moved, or a changeover");
  if (common->as_of != NULL)
    refuse (problems, SY_PROBLEM_CONFLICT, i, day_path, common->as_of, "nothing: the day of the whole case holds");
}

static void
check_option (const SyCaseFacts *facts, int i, SyProblems *problems)
{
  const SyCaseOption *options = facts->options.items, *option = &options[i];

  check_part (&option->part, false, i, "facts.method", "facts.as_of", problems);
  check_part (&option->aid, true, i, "aid.method", "aid.as_of", problems);
  check_estimate (&option->capital, i, "capital.expected", problems);
  check_estimate (&option->training, i, "training.expected", problems);
  check_estimate (&option->running, i, "running.expected", problems);
  check_estimate (&option->examination, i, "examination.expected", problems);
  check_estimate (&option->maintenance, i, "maintenance.expected", problems);
  check_estimate (&option->stopped, i, "stopped.expected", problems);
  check_estimate (&option->person, i, "person_minutes.expected", problems);
  if (option->label == NULL)
    return; /* said by the reader */
  if (!sy_text_says (option->label) || strlen (option->label) > SY_CASE_LABEL_MAX || sy_rig_name_hides (option->label))
    refuse (problems, SY_PROBLEM_SIZE, i, "label", option->label, "a name of 1 to 80 bytes, without control characters");
  for (int k = 0; k < i; k++)
    if (options[k].label != NULL && sy_text_same (options[k].label, option->label))
      {
        refuse (problems, SY_PROBLEM_DUPLICATE, i, "label", option->label, "each option's name once");
        return;
      }
}

void
sy_case_check (const void *data, SyUnits units, SyProblems *problems)
{
  const SyCaseFacts *facts = data;

  (void) units;
  if (facts->options.given && facts->options.count == 0)
    refuse (problems, SY_PROBLEM_SIZE, -1, "options", "an empty list", "at least one option");
  check_part (&facts->as_is.part, false, -1, "as_is.facts.method", "as_is.facts.as_of", problems);
  check_estimate (&facts->as_is.stopped, -1, "as_is.stopped.expected", problems);
  check_estimate (&facts->as_is.person, -1, "as_is.person_minutes.expected", problems);
  check_estimate (&facts->changes, -1, "changes_per_year.expected", problems);
  check_estimate (&facts->labour_rate, -1, "labour_rate.expected", problems);
  check_estimate (&facts->machine_rate, -1, "machine_rate.expected", problems);
  for (size_t i = 0; i < facts->options.count; i++)
    check_option (facts, (int) i, problems);
}

/* ---- What an aid must have ---- */

static bool
speaks_for (const SyMethod *method, SyAidKind kind)
{
  if (method == NULL)
    return false;
  switch (kind)
    {
    case SY_AID_HOIST:
    case SY_AID_JIB:
    case SY_AID_MANIPULATOR:
      return strcmp (method->id, "rigged-lift") == 0;
    case SY_AID_CART:
      return strcmp (method->id, "cart") == 0 || strcmp (method->id, "truck") == 0 || strcmp (method->id, "push") == 0;
    case SY_AID_TABLE:
    case SY_AID_ROBOT:
    case SY_AID_ARM:
      return method->by_capacity && strcmp (method->item_kind, "task") == 0;
    case SY_AID_TWO_PERSON:
    case SY_AID_REDESIGN:
    case SY_AID_OTHER:
      break;
    }
  return true;
}

bool
sy_case_is_assessed (const SyCaseOption *option)
{
  const SyPartFacts *part = &option->part;

  if (part->method == NULL || option->kind < 0)
    return false;
  if (speaks_for (option->aid.method, (SyAidKind) option->kind) || speaks_for (part->method, (SyAidKind) option->kind))
    return true;
  if (strcmp (part->method->id, "changeover") != 0)
    return false;
  const SyChangeoverFacts *change = part->facts;
  const SyChangeoverStep *steps = change->steps.items;
  for (size_t i = 0; i < change->steps.count; i++)
    if (speaks_for (steps[i].part.method, (SyAidKind) option->kind))
      return true;
  return false;
}
