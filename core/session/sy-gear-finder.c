/* SPDX-License-Identifier: MIT */
#include "sy-gear-finder.h"

#include <math.h>
#include <string.h>

#include "sy-gear-place-private.h"

/* What is said of an item in a place. */
static const char not_assessed[] = N_ ("Its own facts cannot be assessed: {problem}");
static const char clashes[] = N_ ("Two revisions of it contradict each other; settle first which of them holds.");
static const char elsewhere[] = N_ ("The plan has it already, at {place}.");
static const char plan_not_assessed[] = N_ ("The plan cannot be assessed with it: {problem}");
static const char too_weak[] =
  N_ ("Too weak by {missing}: it would carry {demand}, and may carry {capacity} the way it is used there.");
static const char not_known[] = N_ ("What it would carry there, or may carry, is not known.");
static const char rule_exceeded[] =
  N_ ("With such a sling in every leg, the {rule} rule allows {capacity} for the whole; {mass} hang on it.");
static const char rule_open[] = N_ ("What the {rule} rule allows such a sling is not known.");
static const char too_long[] = N_ ("It is {length} long, the leg {leg} from the point to the hook: with it the leg hangs "
                                   "at another angle unless it is shortened.");
static const char rule_us[] = N_ ("US");
static const char rule_en[] = N_ ("European");

typedef struct
{
  SyDesk *desk;
  const SyAssessment *plan;
  const SyRigFacts *facts;
  const SyJson *document;
  SyTranslate translate;
  SyUnits units;
  GArray *candidates;       /* of SyGearCandidate                                */
  SyMemory *memory;
  SyProblems *problems;
  GPtrArray *fits;
} Search;

static char *
say_problem (const Search *search, const char *msgid, const char *problem)
{
  return sy_words_say (search->translate, msgid, "problem", problem, NULL);
}

static char *
first_problem (const SyProblems *problems)
{
  return problems->count > 0 ? sy_words_problem (&problems->items[0]) : g_strdup ("");
}

/* Candidates */

static int
kind_of (const SyJson *document)
{
  const char *id = document != NULL ? sy_json_member_text (document, "kind") : NULL;

  for (int i = 0; i < SY_N_GEAR_KINDS; i++)
    if (g_strcmp0 (id, sy_gear_kind_choices[i].id) == 0)
      return i;
  return -1;
}

static void
take_candidates (Search *search, const GPtrArray *gear)
{
  for (guint i = 0; i < gear->len; i++)
    {
      const SyRegisterItem *item = gear->pdata[i];
      SyGearCandidate candidate = { .item = item, .identity = "" };
      const char *text = item->facts;

      if (strcmp (item->item_kind, SY_ITEM_GEAR) != 0)
        continue;
      candidate.assessment = sy_register_assess (search->desk, item, search->plan->findings->as_of, search->problems);
      if (candidate.assessment != NULL)
        {
          text = candidate.assessment->text;
          candidate.facts = candidate.assessment->facts.values;
          candidate.units = candidate.assessment->facts.units;
        }
      else
        candidate.problem = first_problem (search->problems);
      candidate.document = sy_json_scan (text, strlen (text), SY_JSON_DOCUMENT_MAX, search->memory, search->problems);
      candidate.kind = kind_of (candidate.document);
      if (candidate.document != NULL && sy_json_member_text (candidate.document, "identity") != NULL)
        candidate.identity = sy_json_member_text (candidate.document, "identity");
      g_array_append_val (search->candidates, candidate);
    }
}

static void
clear_candidate (gpointer data)
{
  SyGearCandidate *candidate = data;

  g_clear_pointer (&candidate->assessment, sy_assessment_unref);
  g_clear_pointer (&candidate->problem, g_free);
}

/* One item in one place */

/* "element.A.shackle 1" + ".demand"; NAN absent. */
static double
value_there (const SyAssessment *plan, const char *stem, const char *what)
{
  g_autofree char *symbol = g_strconcat (stem, ".", what, NULL);
  const SyQuantity *quantity = sy_findings_quantity (plan->findings, symbol);

  return quantity != NULL ? quantity->value : NAN;
}

static const char *
point_of (const Search *search, int leg)
{
  if (leg < 0)
    return "";
  return ((const char *const *) ((const SyRigLeg *) search->facts->legs.items)[leg].point.items)[0];
}

static char *
stem_of (const Search *search, const SyGearPlace *place, const char *label)
{
  return place->leg < 0 ? g_strconcat ("suspension.", label, NULL)
                        : g_strconcat ("element.", point_of (search, place->leg), ".", label, NULL);
}

/* What the item's own facts say against it. */
static gboolean
judge_item (const Search *search, const SyGearCandidate *candidate, SyGearFit *fit)
{
  const SyFindings *findings = candidate->assessment->findings;

  sy_register_add_reasons (fit->why, findings, SY_VERDICT_INCOMPLETE, FALSE, search->translate);
  sy_register_add_reasons (fit->remarks, findings, SY_VERDICT_INCOMPLETE, TRUE, search->translate);
  if (candidate->item->clash)
    sy_register_add_text (fit->why, sy_words_say (search->translate, clashes, NULL));
  return sy_verdict_rank (findings->verdict) < sy_verdict_rank (SY_VERDICT_INCOMPLETE);
}

static const char *
symbol_of (const SyReason *reason)
{
  return reason->quantity != NULL ? reason->quantity->symbol->symbol : "";
}

static gboolean
keeps_out (const SyReason *reason)
{
  return sy_verdict_rank (reason->verdict) >= sy_verdict_rank (SY_VERDICT_INCOMPLETE);
}

/* Reasons that the plan has about the item there, and about the leg where the item is its sling. What the item's own
   facts said already is not said again. */
static void
judge_reasons (const Search *search, const SyGearPlace *place, const SyAssessment *with, const char *label,
               gboolean is_standing, SyGearFit *fit)
{
  static const char *const said[] = { "element-withdrawn", "element-out-of-date", "element-no-due", "element-no-wll",
                                      "element-no-rating-basis", "marking-cannot-be-right", "day-not-known" };
  const char *point = point_of (search, place->leg);
  g_autofree char *subject = place->leg < 0 ? g_strdup (label) : g_strconcat (point, ", ", label, NULL);
  const SyFindings *findings = with->findings;

  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];
      const char *about = reason->note != NULL ? reason->note->subject : "";
      gboolean is_said = FALSE;

      if (strcmp (about, subject) != 0 && !(place->kind == SY_GEAR_SLING && strcmp (about, point) == 0))
        continue;
      for (gsize k = 0; k < G_N_ELEMENTS (said); k++)
        is_said = is_said || strcmp (reason->id, said[k]) == 0;
      if (is_said && !is_standing)
        continue;
      sy_register_add_text (keeps_out (reason) ? fit->why : fit->remarks,
                            sy_words_reason (findings, reason, search->translate));
    }
}

/* What forbids the lift however strong its gear is. */
static void
judge_plan (const Search *search, const SyAssessment *with, SyGearFit *fit)
{
  const SyFindings *findings = with->findings;

  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];

      if (sy_verdict_rank (reason->verdict) >= sy_verdict_rank (SY_VERDICT_OUTSIDE)
          && !g_str_has_suffix (symbol_of (reason), "utilisation")
          && (reason->note == NULL || *reason->note->subject == '\0'))
        sy_register_add_text (fit->why, sy_words_reason (findings, reason, search->translate));
    }
}

/* What the policy has to say about one utilisation. */
static void
judge_utilisation (const Search *search, const SyAssessment *with, const char *stem, gboolean only_remarks,
                   SyGearFit *fit)
{
  g_autofree char *symbol = g_strconcat (stem, ".utilisation", NULL);
  const SyFindings *findings = with->findings;

  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];

      if (strcmp (symbol_of (reason), symbol) == 0 && !(only_remarks && keeps_out (reason)))
        sy_register_add_text (keeps_out (reason) ? fit->why : fit->remarks,
                              sy_words_reason (findings, reason, search->translate));
    }
}

static gboolean
is_out (const SyAssessment *plan, const char *symbol)
{
  for (int i = 0; i < plan->findings->n_reasons; i++)
    if (strcmp (symbol_of (&plan->findings->reasons[i]), symbol) == 0 && keeps_out (&plan->findings->reasons[i]))
      return TRUE;
  return FALSE;
}

/* What else is over its limit only because the item weighs more than what was planned. */
static void
judge_others (const Search *search, const SyAssessment *with, const char *stem, SyGearFit *fit)
{
  g_autofree char *own = g_strconcat (stem, ".utilisation", NULL);
  const SyFindings *findings = with->findings;

  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];
      const char *symbol = symbol_of (reason);

      if (keeps_out (reason) && g_str_has_suffix (symbol, ".utilisation") && strcmp (symbol, own) != 0
          && !g_str_has_prefix (symbol, "rule.") && !is_out (search->plan, symbol))
        sy_register_add_text (fit->why, sy_words_reason (findings, reason, search->translate));
    }
}

static void
judge_strength (const Search *search, const SyAssessment *with, const char *stem, SyGearFit *fit)
{
  double demand = value_there (with, stem, "demand"), capacity = value_there (with, stem, "capacity");

  fit->utilisation = value_there (with, stem, "utilisation");
  if (fit->utilisation > 1)
    {
      g_autofree char *needs = sy_words_against (demand, capacity, SY_KIND_MASS, search->units);
      g_autofree char *may = sy_words_against (capacity, demand, SY_KIND_MASS, search->units);
      g_autofree char *missing = sy_words_directed (demand - capacity, HUGE_VAL, SY_KIND_MASS, search->units);

      sy_register_add_text (fit->why, sy_words_say (search->translate, too_weak, "demand", needs, "capacity", may,
                                                       "missing", missing, NULL));
    }
  else if (!isnan (fit->utilisation))
    judge_utilisation (search, with, stem, FALSE, fit);
  else if (fit->why->len == 0)
    sy_register_add_text (fit->why, sy_words_say (search->translate, not_known, NULL));
}

static gboolean
asks_rule (const Search *search, SyRule rule)
{
  return search->facts->rule < 0 || search->facts->rule == SY_RULE_BOTH || search->facts->rule == (int) rule;
}

/* Whether the rule is known to hold, by the policy's limit too. */
static gboolean
keeps_rule (const SyAssessment *plan, const char *rule)
{
  g_autofree char *symbol = g_strconcat (rule, ".utilisation", NULL);

  return !is_out (plan, symbol) && value_there (plan, rule, "utilisation") <= 1;
}

/* The rules for the sling as a whole. */
static void
judge_rules (Search *search, const SyGearPlace *place, const SyGearCandidate *candidate, const SyAssessment *with,
             SyGearFit *fit)
{
  static const struct
  {
    SyRule rule;
    const char *stem, *name;
  } rules[] = { { SY_RULE_US, "rule.us", rule_us }, { SY_RULE_EN, "rule.en", rule_en } };
  g_autoptr (SyAssessment) alike = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    {
      const char *name = search->translate ? search->translate (rules[i].name) : rules[i].name;

      if (!asks_rule (search, rules[i].rule))
        continue;
      judge_utilisation (search, with, rules[i].stem, TRUE, fit);
      if (keeps_rule (with, rules[i].stem))
        continue;
      if (alike == NULL)
        {
          g_autofree char *text = sy_gear_place_write (search->document, search->units, place, candidate, TRUE);
          alike = sy_desk_assess (search->desk, text, strlen (text), SY_JUDGE_PLAIN, search->problems);
        }
      if (alike != NULL && keeps_rule (alike, rules[i].stem))
        continue;
      double capacity = alike != NULL ? value_there (alike, rules[i].stem, "capacity") : NAN;
      if (isnan (capacity))
        {
          sy_register_add_text (fit->why, sy_words_say (search->translate, rule_open, "rule", name, NULL));
          continue;
        }
      double utilisation = value_there (alike, rules[i].stem, "utilisation");
      double mass = isfinite (utilisation) ? capacity * utilisation : value_there (alike, "hook", "load");
      g_autofree char *may = sy_words_against (capacity, mass, SY_KIND_MASS, search->units);
      g_autofree char *hangs = sy_words_against (mass, capacity, SY_KIND_MASS, search->units);
      sy_register_add_text (fit->why, sy_words_say (search->translate, rule_exceeded, "rule", name, "capacity", may,
                                                       "mass", hangs, NULL));
    }
}

/* A sling that is longer than the leg it is to be. */
static void
judge_length (const Search *search, const SyGearPlace *place, const SyGearCandidate *candidate, SyGearFit *fit)
{
  const SyRigLeg *leg = (const SyRigLeg *) search->facts->legs.items + place->leg;
  const SyRigPoint *point = sy_rig_point (search->facts, point_of (search, place->leg));
  SyVec3 hook = sy_vec3 (value_there (search->plan, "hook", "x"), value_there (search->plan, "hook", "y"),
                         value_there (search->plan, "hook", "z"));
  double own = sy_unit_convert (SY_KIND_LENGTH, candidate->facts->length.value, candidate->units, search->units);

  if (!candidate->facts->length.given || leg->hitch == SY_HITCH_BASKET)
    return;
  double length = sy_vec3_length (sy_vec3_sub (hook, sy_vector_vec3 (&point->at)));
  /* A tape reads to 1 mm. Common practice, no source. */
  if (!(own > length + sy_unit_convert (SY_KIND_LENGTH, 1, SY_UNITS_METRIC, search->units)))
    return;
  g_autofree char *its = sy_words_quantity (own, SY_KIND_LENGTH, search->units);
  g_autofree char *of_leg = sy_words_quantity (length, SY_KIND_LENGTH, search->units);
  sy_register_add_text (fit->remarks, sy_words_say (search->translate, too_long, "length", its, "leg", of_leg, NULL));
}

static SyGearFit *
try_item (Search *search, const SyGearPlace *place, const SyGearCandidate *candidate)
{
  SyGearFit *fit = g_new0 (SyGearFit, 1);

  fit->leg = g_strdup (point_of (search, place->leg));
  fit->kind = g_strdup (sy_gear_kind_choices[place->kind].id);
  fit->element = g_strdup (place->element);
  fit->item = g_strdup (candidate->item->id);
  fit->name = g_strdup (candidate->item->name);
  fit->identity = g_strdup (candidate->identity);
  fit->utilisation = NAN;
  fit->why = g_ptr_array_new_with_free_func (g_free);
  fit->remarks = g_ptr_array_new_with_free_func (g_free);

  if (candidate->assessment == NULL)
    {
      sy_register_add_text (fit->why, say_problem (search, not_assessed, candidate->problem));
      return fit;
    }
  gboolean is_standing = judge_item (search, candidate, fit);
  g_autofree char *other = sy_gear_place_elsewhere (search->document, place, candidate);
  if (other != NULL)
    sy_register_add_text (fit->why, sy_words_say (search->translate, elsewhere, "place", other, NULL));

  g_autofree char *text = sy_gear_place_write (search->document, search->units, place, candidate, FALSE);
  g_autoptr (SyAssessment) with = sy_desk_assess (search->desk, text, strlen (text), SY_JUDGE_PLAIN, search->problems);
  if (with == NULL)
    {
      g_autofree char *problem = first_problem (search->problems);
      sy_register_add_text (fit->why, say_problem (search, plan_not_assessed, problem));
      return fit;
    }
  g_autofree char *label = sy_gear_place_label (search->document, place, candidate);
  g_autofree char *stem = stem_of (search, place, label);
  judge_reasons (search, place, with, label, is_standing, fit);
  judge_plan (search, with, fit);
  judge_strength (search, with, stem, fit);
  judge_others (search, with, stem, fit);
  if (place->kind == SY_GEAR_SLING && !isnan (fit->utilisation))
    {
      judge_rules (search, place, candidate, with, fit);
      judge_length (search, place, candidate, fit);
    }
  fit->fits = fit->why->len == 0;
  return fit;
}

static int
compare_fits (gconstpointer a, gconstpointer b)
{
  const SyGearFit *one = *(const SyGearFit *const *) a, *other = *(const SyGearFit *const *) b;

  if (one->fits != other->fits)
    return one->fits ? -1 : 1;
  if (isnan (one->utilisation) != isnan (other->utilisation))
    return isnan (one->utilisation) ? 1 : -1;
  if (one->utilisation < other->utilisation || one->utilisation > other->utilisation)
    return one->utilisation < other->utilisation ? -1 : 1;
  return g_utf8_collate (one->name, other->name);
}

static void
search_place (Search *search, const SyGearPlace *place)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();

  for (guint i = 0; i < search->candidates->len; i++)
    {
      const SyGearCandidate *candidate = &g_array_index (search->candidates, SyGearCandidate, i);

      if (candidate->kind >= 0 && sy_gear_kinds_stand_in ((SyGearKind) candidate->kind, place->kind))
        g_ptr_array_add (found, try_item (search, place, candidate));
    }
  g_ptr_array_sort (found, compare_fits);
  for (guint i = 0; i < found->len; i++)
    g_ptr_array_add (search->fits, found->pdata[i]);
}

/* Places */

/* Of a kind in a list: the element that carries most in the plan as it stands. */
static gboolean
find_place (const Search *search, int leg, SyGearKind kind, SyGearPlace *out)
{
  const SyJson *list = sy_gear_place_list (search->document, leg);
  double most = -1;
  int at = 0;

  *out = (SyGearPlace) { leg, SY_GEAR_PLACE_APPEND, kind, "" };
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next, at++)
    if (strcmp (sy_json_member_text (each, "kind"), sy_gear_kind_choices[kind].id) == 0)
      {
        const char *label = sy_json_member_text (each, "label");
        g_autofree char *stem = stem_of (search, out, label);
        double demand = value_there (search->plan, stem, "demand");

        if (out->at >= 0 && !(demand > most))
          continue;
        out->at = at;
        out->element = label;
        most = isnan (demand) ? -1 : demand;
      }
  return out->at >= 0;
}

static void
search_list (Search *search, int leg, SyGearKind from, SyGearKind to)
{
  const SyJson *list = sy_gear_place_list (search->document, leg);
  gboolean is_empty = list == NULL || list->first == NULL;

  for (SyGearKind kind = from; kind <= to; kind++)
    {
      SyGearPlace place;

      if (find_place (search, leg, kind, &place) || (leg >= 0 && kind == SY_GEAR_SLING)
          || (is_empty && (kind == SY_GEAR_SHACKLE || kind == SY_GEAR_HOIST)))
        search_place (search, &place);
    }
}

GPtrArray *
sy_gear_find (SyDesk *desk, const SyAssessment *plan, const GPtrArray *gear, SyTranslate translate)
{
  Search search = { .desk = desk, .plan = plan, .translate = translate, .units = plan->facts.units };

  search.fits = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_gear_fit_free);
  if (strcmp (plan->facts.method->id, "rigged-lift") != 0)
    return search.fits;
  search.memory = sy_memory_new ();
  search.problems = g_new0 (SyProblems, 1);
  search.candidates = g_array_new (FALSE, FALSE, sizeof (SyGearCandidate));
  g_array_set_clear_func (search.candidates, clear_candidate);
  search.facts = plan->facts.values;
  search.document = sy_json_scan (plan->text, strlen (plan->text), SY_JSON_DOCUMENT_MAX, search.memory, search.problems);
  take_candidates (&search, gear);

  for (size_t i = 0; i < search.facts->legs.count; i++)
    search_list (&search, (int) i, SY_GEAR_SLING, SY_GEAR_MASTER_LINK);
  search_list (&search, -1, SY_GEAR_HOIST, SY_GEAR_TRUCK);

  g_array_unref (search.candidates);
  g_free (search.problems);
  sy_memory_free (search.memory);
  return search.fits;
}
