/* SPDX-License-Identifier: MIT */
#include "sy-words.h"

#include <math.h>
#include <string.h>

#include "sy-deferring.h"
#include "sy-words-private.h"

static const SyTemplate reason_templates[] = {
  { "index-goal", N_ ("The {symbol} of {value} is over the goal of {limit}.") },
  { "index-goal-soon", N_ ("The {symbol} of {value} is over the goal of {limit}: improve the task soon.") },
  { "index-goal-now", N_ ("The {symbol} of {value} is over the goal of {limit}: improve the task now.") },
  { "index-limit", N_ ("The {symbol} of {value} is over {limit}: at such an index hands are not the answer.") },
  { "index-goal-unbounded", N_ ("No limit holds: a factor is beyond the equation, so the {symbol} has no bound.") },
  { "index-limit-unbounded",
    N_ ("No limit holds: a factor is beyond the equation, and hands are not the answer.") },
  { "mass-goal-unbounded", N_ ("No mass limit holds: a factor is beyond the equation.") },
  { "mass-goal", N_ ("The heaviest load is {value} times the mass limit for who may be assigned; the goal is {limit}.") },
  { "reference-mass",
    N_ ("The mass of {value} by person is over the reference mass of {limit} for who may be assigned.") },
  { "part-verdict", N_ ("{subject}: {verdict}.") },
  { "can-be-avoided", N_ ("This handling can be avoided, by the answer given; then it should be.") },
  { "near-limit",
    N_ ("Close to the limit: repeated measurements would put the index on both sides of {limit}, "
        "{value} of them over it.") },
};

static const char site_rule[] = N_ ("{symbol} is {value}; this policy's limit is {limit}.");

/* Notes: what the method excludes, what is missing, what is to be said with a result. */
static const SyTemplate note_templates[] = {
  { "one-hand", N_ ("Lifted with one hand: the equation holds for two hands only.") },
  { "several-persons", N_ ("Lifted by {value} persons together: the equation holds for one person; the mass is not divided.") },
  { "seated-or-kneeling", N_ ("Lifted seated or kneeling: outside the equation.") },
  { "restricted-space", N_ ("Not enough room to stand or step freely: outside the equation.") },
  { "unstable-load", N_ ("The load shifts, swings or spills: outside the equation.") },
  { "wheelbarrow-or-shovel", N_ ("Moved with a wheelbarrow or shovel: outside the equation.") },
  { "faster-than-75cm-s", N_ ("Lifted fast or with a jerk: outside the equation.") },
  { "slippery-floor", N_ ("The floor gives no sure footing: outside the equation.") },
  { "temperature-or-humidity", N_ ("Heat, cold or humidity beyond what the equation allows for.") },
  { "over-8h", N_ ("More than eight hours of work a day: outside the equation.") },
  { "other-handling-over-10-percent",
    N_ ("Other handling makes up more than a tenth of the work: outside the equation.") },
  { "carried-over-two-steps", N_ ("Carried more than one or two steps: outside the equation.") },
  { "unexpected-load", N_ ("The load may be heavier than expected, or stick and come free: outside the equation.") },
  { "sharp-or-hot", N_ ("Sharp edges or hot surfaces keep the load away from the body or out of a full grip: "
                        "outside the equation.") },
  { "protected-persons",
    N_ ("Done by someone who is pregnant, under age, injured or returning to work: the limits do not cover them.") },
  { "conditions-not-asked", N_ ("It was not asked whether a condition applies that the equation excludes.") },
  { "assigned-default",
    N_ ("Who may be assigned was not said; the policy's reference mass of {value} was used.") },
  { "control-assumed",
    N_ ("It was not said whether the load is placed with control; it was taken that it is.") },
  { "reach-minimum", N_ ("A reach under {value} counts as {value}.") },
  { "travel-minimum", N_ ("A vertical travel under {value} counts as {value}.") },
};

static const char from_memory[] =
  N_ ("The reference masses of ISO 11228-1 stand here from memory and were not checked against the standard; "
      "they may tighten a verdict but are never the only ground for a favourable one.");

static const char loosened[] = N_ ("This policy is looser than the program's own in at least one limit. Reason given: {why}");

static const char screening[] =
  N_ ("A screening result, not a permission to lift: local regulations and the judgement of a competent person "
      "come first.");

const char *
sy_words_find (const SyTemplate *templates, gsize n, const char *id)
{
  for (gsize i = 0; i < n; i++)
    if (strcmp (templates[i].id, id) == 0)
      return templates[i].text;
  return NULL;
}

static const char *(*const rooms[]) (const char *id) = {
  sy_words_rigging_template, sy_words_population_template, sy_words_sets_template,
  sy_words_team_template,    sy_words_push_template,       sy_words_carry_template,
  sy_words_changeover_template, sy_words_case_template,
};

/* What is said by a reason or a note, wherever its words are. */
static const char *
find_words (const char *id)
{
  const char *text = sy_words_find (reason_templates, G_N_ELEMENTS (reason_templates), id);

  if (text == NULL)
    text = sy_words_find (note_templates, G_N_ELEMENTS (note_templates), id);
  for (gsize i = 0; text == NULL && i < G_N_ELEMENTS (rooms); i++)
    text = rooms[i](id);
  return text;
}

/* What a sentence can be filled with: a value and its limit, what it is about. */
typedef struct
{
  const SyFindings *findings;
  SyTranslate translate;
  const SyPartShown *part;  /* NULL: not about a part    */
  const SyNote *note;       /* NULL: a row of the policy */
  const char *symbol;
  gboolean has_value, has_limit;
  double value, limit;
  SyKind kind, limit_kind;
} Fill;

static char *
fill_words (const char *name, gconstpointer data)
{
  const Fill *fill = data;
  SyUnits units = fill->findings->units;

  if (strcmp (name, "symbol") == 0)
    return g_strdup (fill->symbol);
  if (strcmp (name, "subject") == 0 && fill->part != NULL)
    return g_strdup (fill->part->label);
  if (strcmp (name, "verdict") == 0 && fill->part != NULL)
    {
      const char *title = sy_verdict_title_for (fill->part->method, fill->part->verdict);
      return g_strdup (fill->translate ? fill->translate (title) : title);
    }
  if (strcmp (name, "subject") == 0 && fill->note == NULL)
    return sy_words_thing (fill->findings, fill->symbol, fill->translate);
  if (strcmp (name, "subject") == 0)
    return g_strdup (fill->note->subject);
  if (strcmp (name, "value") == 0 && fill->has_value)
    return fill->has_limit && fill->kind == fill->limit_kind && fill->kind != SY_KIND_PERCENT
             ? sy_words_against (fill->value, fill->limit, fill->kind, units)
             : sy_words_quantity (fill->value, fill->kind, units);
  if (strcmp (name, "limit") == 0 && fill->has_limit)
    return fill->limit_kind == SY_KIND_PERCENT || fill->limit_kind == SY_KIND_RATIO
             ? sy_words_number (fill->limit, 2)
             : sy_words_quantity (fill->limit, fill->limit_kind, units);
  /* a ratio said in percent */
  if (strcmp (name, "value%") == 0 && fill->has_value)
    return sy_words_against (fill->value * 100, fill->has_limit ? fill->limit * 100 : NAN, SY_KIND_PERCENT, units);
  if (strcmp (name, "limit%") == 0 && fill->has_limit)
    return sy_words_quantity (fill->limit * 100, SY_KIND_PERCENT, units);
  if (strcmp (name, "third") == 0 && fill->note != NULL && fill->note->n_args > 2)
    return sy_words_quantity (fill->note->args[2], fill->note->kinds[2], units);
  return NULL;
}

/* A sentence that is about one of several things says which, also where its own words do not. */
static char *
say (const char *text, SyTranslate translate, const Fill *fill)
{
  g_autofree char *said = sy_words_fill (text, translate, fill_words, fill);

  if (fill->note == NULL || fill->note->subject[0] == '\0' || strstr (text, "{subject}") != NULL)
    return g_steal_pointer (&said);
  return g_strconcat (fill->note->subject, ": ", said, NULL);
}

char *
sy_words_reason (const SyFindings *findings, const SyReason *reason, SyTranslate translate)
{
  const Fill fill = { findings, translate, reason->part, reason->note, reason->quantity ? reason->quantity->symbol->symbol : "",
                      reason->has_value, reason->has_limit, reason->value, reason->limit, reason->kind,
                      reason->note != NULL && reason->note->n_args > 1 ? reason->note->kinds[1] : reason->kind };
  g_autofree char *special = NULL;
  const char *text = NULL;

  if (reason->has_value && isinf (reason->value))
    special = g_strconcat (reason->id, "-unbounded", NULL);
  else if (reason->urgency != SY_URGENCY_NONE)
    special = g_strconcat (reason->id, reason->urgency == SY_URGENCY_NOW ? "-now" : "-soon", NULL);
  if (special != NULL)
    text = find_words (special);
  if (text == NULL)
    text = find_words (reason->id);
  return say (text ? text : site_rule, translate, &fill);
}

char *
sy_words_note (const SyFindings *findings, const SyNote *note, SyTranslate translate)
{
  const Fill fill = { findings, translate, NULL, note, note->symbol ? note->symbol : "", note->n_args > 0, note->n_args > 1,
                      note->args[0], note->n_args > 1 ? note->args[1] : NAN, note->kinds[0],
                      note->n_args > 1 ? note->kinds[1] : note->kinds[0] };
  const char *text = find_words (note->id);

  return say (text ? text : note->id, translate, &fill);
}

/* Notes that are said as cautions: those that did not become a reason. */
static const SyNote *
caution_note (const SyFindings *findings, int wanted)
{
  int found = 0;

  for (int i = 0; i < findings->sink.n_notes; i++)
    {
      const SyNote *note = &findings->sink.notes[i];
      gboolean reason = FALSE;

      for (int k = 0; k < findings->n_reasons; k++)
        reason = reason || findings->reasons[k].note == note;
      if (!reason && found++ == wanted)
        return note;
    }
  return NULL;
}

/* What is said of figures that stand from memory; NULL where there are none. */
static const char *
memory_words (const SyFindings *findings)
{
  if (findings->method->memory_caution != NULL)
    return findings->method->memory_caution;
  for (int i = 0; i < findings->policy->n_rows; i++)
    if (findings->policy->rows[i].of == findings->method && findings->policy->rows[i].from_memory)
      return from_memory;
  return NULL;
}

static gboolean
is_loosened (const SyFindings *findings)
{
  return *findings->policy->loosened_because != '\0';
}

static char *
fill_loosened (const char *name, gconstpointer data)
{
  const SyFindings *findings = data;

  return strcmp (name, "why") == 0 ? g_strdup (findings->policy->loosened_because) : NULL;
}

int
sy_words_n_foot (const SyFindings *findings)
{
  return sy_policy_says_defers_to (findings->policy) ? 2 : 1;
}

int
sy_words_n_cautions (const SyFindings *findings)
{
  const int foot = sy_words_n_foot (findings);
  int n = foot;

  while (caution_note (findings, n - foot) != NULL)
    n++;
  return n + (memory_words (findings) ? 1 : 0) + (is_loosened (findings) ? 1 : 0);
}

char *
sy_words_caution (const SyFindings *findings, int i, const char **id, SyTranslate translate)
{
  const int foot = sy_words_n_foot (findings);
  const SyNote *note = i >= foot ? caution_note (findings, i - foot) : NULL;
  gboolean is_last = i == sy_words_n_cautions (findings) - 1;
  gboolean is_policy = note == NULL && is_last && is_loosened (findings);

  if (id != NULL)
    *id = i == 0 ? "screening" : i < foot ? "defers-to" : note ? note->id : is_policy ? "policy-loosened" : "from-memory";
  if (i == 0)
    return sy_words_screening (translate);
  if (i < foot)
    {
      g_autoptr (SyDeferring) deferring = sy_deferring_new ();

      sy_deferring_add_policy (deferring, findings->policy, findings->method);
      return sy_deferring_words (deferring, translate);
    }
  if (note != NULL)
    return sy_words_note (findings, note, translate);
  if (is_policy)
    return sy_words_fill (loosened, translate, fill_loosened, findings);
  const char *words = memory_words (findings);

  return g_strdup (translate ? translate (words) : words);
}

char *
sy_words_screening (SyTranslate translate)
{
  return g_strdup (translate ? translate (screening) : screening);
}

char *
sy_words_problem (const SyProblem *problem)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%s: given %s; allowed: %s", problem->path,
                          *problem->given ? problem->given : "nothing", problem->allowed);
  g_string_append_printf (text, "; unit: %s", *problem->unit ? problem->unit : "none");
  return g_string_free (text, FALSE);
}

/* Remedies */

static const SyTemplate change_templates[] = {
  { "origin.H", N_ ("Bring the load closer at the origin: a reach of {to} in place of {from}.") },
  { "origin.V", N_ ("Present the load at another height: hands at {to} in place of {from} at the origin.") },
  { "origin.A", N_ ("Turn less at the origin: {to} in place of {from}.") },
  { "destination.H", N_ ("Put it down closer: a reach of {to} in place of {from} at the destination.") },
  { "destination.V", N_ ("Put it down at another height: hands at {to} in place of {from} at the destination.") },
  { "destination.A", N_ ("Turn less at the destination: {to} in place of {from}.") },
  { "travel", N_ ("Shorten the way up or down: {to} in place of {from}.") },
  { "frequency", N_ ("Slow the pace to {to} from {from}.") },
  { "lifts", N_ ("Lift less often: {to} lifts in place of {from} in the minutes counted.") },
  { "duration", N_ ("Shorten the work with light work between: class {to} in place of {from}.") },
  { "recovery_minutes", N_ ("Lengthen the light work after each spell to {to} from {from}.") },
  { "coupling", N_ ("Give it a better grip: {to} in place of {from}.") },
  { "control_at_destination",
    N_ ("Do away with placing it with control at the destination: let it slide, drop into a guide, or be received.") },
  { "largest-mass", N_ ("As the task stands, {to} is the heaviest load within every goal.") },
};

/* Methods that have words of their own for their facts. */
static const char *(*const change_rooms[]) (const SyMethod *method, const char *path) = {
  sy_words_carry_change, sy_words_push_change,
};

static const char *
change_words (const SyMethod *method, const char *path)
{
  const char *text = NULL;

  for (gsize i = 0; text == NULL && i < G_N_ELEMENTS (change_rooms); i++)
    text = change_rooms[i](method, path);
  return text ? text : sy_words_find (change_templates, G_N_ELEMENTS (change_templates), path);
}

static const char other_change[] = N_ ("Change {path} to {to} from {from}.");
static const char reaches_goal[] = N_ ("With that the {symbol} is {index}, within the goals of this policy.");
static const char falls_short[] = N_ ("With that the {symbol} is {index}, which is not enough by itself.");
/* Where the index is the largest part of several limits. */
static const char reaches_part[] = N_ ("This gives {index} of the strictest limit, within the goals of this policy.");
static const char falls_short_part[] = N_ ("This gives {index} times the strictest limit, which is not enough by itself.");
static const char no_limit[] = N_ ("No limit holds even then.");

typedef struct
{
  const SyFindings *findings;
  const SyRemedy *remedy;
  const SyChange *change;
  double before;
} RemedyFill;

static char *
change_value (const RemedyFill *fill, double value, gboolean is_new)
{
  const SyChange *change = fill->change;

  if (change->type == SY_CHANGE_CHOICE)
    {
      const SyField *field = sy_method_field (fill->findings->method, change->path, NULL);
      gsize at = (gsize) value;
      return g_strdup (field && at < field->n_choices ? field->choices[at].id : "");
    }
  if (!is_new)
    {
      char *text = sy_words_quantity (value, change->kind, fill->findings->units);
      g_autofree char *new_text = change_value (fill, change->value, TRUE);
      char number[SY_NUMBER_TEXT_MAX];

      /* where rounding hides the difference the old one is told as it is */
      if (strcmp (text, new_text) != 0)
        return text;
      g_free (text);
      sy_number_print (value, number);
      return g_strdup_printf ("%s %s", number, sy_unit_name (change->kind, fill->findings->units));
    }
  /* shown on the far side of the exact value, so that doing what is written is enough */
  return sy_words_directed (value, change->value < fill->before ? -HUGE_VAL : HUGE_VAL, change->kind,
                            fill->findings->units);
}

static char *
fill_remedy (const char *name, gconstpointer data)
{
  const RemedyFill *fill = data;

  if (strcmp (name, "to") == 0)
    return change_value (fill, fill->change->value, TRUE);
  if (strcmp (name, "from") == 0)
    return change_value (fill, fill->before, FALSE);
  if (strcmp (name, "path") == 0)
    return g_strdup (fill->change->path);
  if (strcmp (name, "symbol") == 0)
    return g_strdup (fill->findings->sink.index_symbol);
  if (strcmp (name, "index") == 0)
    return sy_words_quantity (fill->remedy->index, SY_KIND_RATIO, fill->findings->units);
  return NULL;
}

char *
sy_words_remedy (const SyFindings *findings, const SyRemedy *remedy, SyTranslate translate)
{
  GString *text = g_string_new (NULL);
  RemedyFill fill = { findings, remedy, NULL, 0 };
  gboolean is_mass = strcmp (remedy->id, "largest-mass") == 0;

  for (int i = 0; i < remedy->n_changes; i++)
    {
      const char *id = is_mass ? remedy->id : remedy->changes[i].path;
      const char *msgid = change_words (findings->method, id);

      fill.change = &remedy->changes[i];
      /* the mass is shown rounded down, whichever way it differs from the present one */
      fill.before = is_mass ? HUGE_VAL : remedy->before[i];
      g_autofree char *sentence = sy_words_fill (msgid ? msgid : other_change, translate, fill_remedy, &fill);
      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", sentence);
    }
  if (!is_mass)
    {
      gboolean is_part = g_strcmp0 (findings->sink.index_symbol, "ratio") == 0;
      const char *msgid = isinf (remedy->index) ? no_limit
                          : remedy->reaches     ? (is_part ? reaches_part : reaches_goal)
                                                : (is_part ? falls_short_part : falls_short);
      g_autofree char *sentence = sy_words_fill (msgid, translate, fill_remedy, &fill);
      g_string_append_printf (text, " %s", sentence);
    }
  return g_string_free (text, FALSE);
}
