/* SPDX-License-Identifier: MIT */
#include "sy-policy-file.h"

#include <gio/gio.h>
#include <string.h>

#include "sy-policy-resource.h"
#include "sy-reader-private.h"

#define POLICY_BYTES_MAX (256u * 1024u)

G_DEFINE_QUARK (sy-exchange-error-quark, sy_exchange_error)

static const char *const builtin_names[] = { "default", "uk-filter" };

GBytes *
sy_policy_named (const char *name)
{
  /* Naming the resource keeps the linker from dropping it out of the static library. */
  GResource *resource = sy_policy_get_resource ();
  g_autoptr (GError) error = NULL;
  GBytes *bytes = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (builtin_names); i++)
    if (strcmp (builtin_names[i], name) == 0)
      {
        g_autofree char *path = g_strdup_printf ("/org/steelyard/policies/steelyard-%s.json", name);

        bytes = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
        if (bytes == NULL)
          g_error ("the program was built without its policy: %s", error->message);
      }
  return bytes;
}

GBytes *
sy_policy_builtin (void)
{
  return sy_policy_named (builtin_names[0]);
}

static void
read_row (SyReader *reader, const SyJson *object, SyPolicyRow *row)
{
  static const char *const names[] = { "id",    "method",  "symbol", "over",        "over_us", "under", "under_us",
                                       "over_symbol", "verdict", "source", "from_memory", NULL };
  char verdict[SY_POLICY_ID_MAX];
  int limits = 0;

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "id", row->id, sizeof row->id, TRUE);
  sy_reader_text (reader, object, "method", row->method, sizeof row->method, TRUE);
  sy_reader_text (reader, object, "symbol", row->symbol, sizeof row->symbol, TRUE);
  sy_reader_text (reader, object, "source", row->source, sizeof row->source, TRUE);
  sy_reader_text (reader, object, "verdict", verdict, sizeof verdict, TRUE);
  if (!reader->failed && !sy_verdict_from_id (verdict, &row->verdict))
    sy_reader_fail (reader, sy_json_member (object, "verdict"), "no verdict: \"%s\"", verdict);
  row->comparator = SY_OVER;
  if (sy_json_member (object, "over_symbol") != NULL)
    {
      limits++;
      row->limit_is_symbol = true;
      sy_reader_text (reader, object, "over_symbol", row->limit_symbol, sizeof row->limit_symbol, TRUE);
    }
  for (int i = 0; i < 2; i++)
    {
      const char *name = i == 0 ? "over" : "under", *us = i == 0 ? "over_us" : "under_us";
      if (sy_json_member (object, name) == NULL)
        continue;
      limits++;
      row->comparator = i == 0 ? SY_OVER : SY_UNDER;
      row->limit[SY_UNITS_METRIC] = sy_reader_number (reader, object, name, 0, 1e6);
      row->limit[SY_UNITS_US] = sy_json_member (object, us) ? sy_reader_number (reader, object, us, 0, 1e6)
                                                            : row->limit[SY_UNITS_METRIC];
    }
  if (limits != 1)
    sy_reader_fail (reader, object, "exactly one of \"over\", \"under\", \"over_symbol\" was expected");
  row->from_memory = sy_reader_flag (reader, object, "from_memory");
}

static void
read_tolerance (SyReader *reader, const SyJson *object, SyTolerance *tolerance)
{
  static const char *const names[] = { "method", "fact", "unit", "measured", "drawing", "estimated", "source",
                                       NULL };
  static const char *const hows[SY_N_HOW] = { "measured", "drawing", "estimated" };
  char unit[SY_POLICY_ID_MAX];

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "method", tolerance->method, sizeof tolerance->method, TRUE);
  sy_reader_text (reader, object, "fact", tolerance->fact, sizeof tolerance->fact, TRUE);
  sy_reader_text (reader, object, "source", tolerance->source, sizeof tolerance->source, TRUE);
  sy_reader_text (reader, object, "unit", unit, sizeof unit, TRUE);
  if (!reader->failed && strcmp (unit, "cm") != 0 && strcmp (unit, "%") != 0 && strcmp (unit, "deg") != 0)
    sy_reader_fail (reader, sy_json_member (object, "unit"), "one of cm, deg, %% was expected");
  tolerance->percent = strcmp (unit, "%") == 0;
  for (int how = 0; how < SY_N_HOW; how++)
    {
      double half = sy_reader_number (reader, object, hows[how], 0, 1000);
      tolerance->by_how[how][SY_UNITS_METRIC] = half;
      tolerance->by_how[how][SY_UNITS_US] = strcmp (unit, "cm") == 0 ? half / SY_CM_PER_IN : half;
    }
}

static void
read_allowances (SyReader *reader, const SyJson *object, SyPolicy *policy)
{
  static const char *const names[] = { "weighed", "plate", "drawing", "estimated", "source", NULL };
  char source[SY_POLICY_SOURCE_MAX];

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "source", source, sizeof source, TRUE);
  for (int i = 0; i < SY_N_BASES; i++)
    policy->allowance_percent[i] = sy_reader_number (reader, object, sy_basis_choices[i].id, 0, 1000);
}

static void
read_examination (SyReader *reader, const SyJson *object, SyExaminationRule *rule)
{
  static const char *const names[] = { "kind", "months", "regulation", "from_memory", NULL };
  char kind[SY_POLICY_ID_MAX];

  sy_reader_members (reader, object, names);
  sy_reader_text (reader, object, "kind", kind, sizeof kind, TRUE);
  sy_reader_text (reader, object, "regulation", rule->regulation, sizeof rule->regulation, TRUE);
  rule->months = (int) sy_reader_number (reader, object, "months", 1, 1200);
  rule->from_memory = sy_reader_flag (reader, object, "from_memory");
  rule->kind = sy_reader_gear_kind (reader, sy_json_member (object, "kind"), kind);
}

static void
read_policy (SyReader *reader, const SyJson *root, SyPolicy *policy)
{
  static const char *const names[] = { "id", "version", "title", "assigned", "urgency", "spread", "rows",
                                       "tolerances", "loosened_because", "allowances", "examinations", "region", "rules",
                                       NULL };
  static const char *const urgency_names[] = { "soon_over", "now_over", NULL };
  static const char *const spread_names[] = { "seed", "draws", NULL };
  static const char *const assigned_ids[] = { "any-age", "mixed-adults", "men-20-45" };
  char assigned[SY_POLICY_ID_MAX];
  const SyJson *part;

  sy_reader_members (reader, root, names);
  sy_reader_text (reader, root, "id", policy->id, sizeof policy->id, TRUE);
  policy->version = (int) sy_reader_number (reader, root, "version", 1, 1e6);
  sy_reader_text (reader, root, "title", policy->title, sizeof policy->title, TRUE);
  sy_reader_text (reader, root, "loosened_because", policy->loosened_because, sizeof policy->loosened_because, FALSE);
  sy_reader_text (reader, root, "assigned", assigned, sizeof assigned, TRUE);
  policy->default_assigned = -1;
  for (int i = 0; i < 3; i++)
    if (strcmp (assigned, assigned_ids[i]) == 0)
      policy->default_assigned = i;
  if (policy->default_assigned < 0)
    sy_reader_fail (reader, sy_json_member (root, "assigned"), "one of any-age, mixed-adults, men-20-45 was expected");
  if ((part = sy_reader_part (reader, root, "urgency", SY_JSON_OBJECT)) != NULL)
    {
      sy_reader_members (reader, part, urgency_names);
      policy->soon_over = sy_reader_number (reader, part, "soon_over", 0, 1000);
      policy->now_over = sy_reader_number (reader, part, "now_over", policy->soon_over, 1000);
    }
  if ((part = sy_reader_part (reader, root, "spread", SY_JSON_OBJECT)) != NULL)
    {
      sy_reader_members (reader, part, spread_names);
      policy->seed = (unsigned long long) sy_reader_number (reader, part, "seed", 0, 9007199254740992.0);
      policy->draws = (int) sy_reader_number (reader, part, "draws", 100, 100000);
    }
  if ((part = sy_reader_part (reader, root, "rows", SY_JSON_ARRAY)) != NULL)
    {
      if (part->n_children > SY_POLICY_ROWS_MAX)
        sy_reader_fail (reader, part, "at most %d rows", SY_POLICY_ROWS_MAX);
      for (const SyJson *row = part->first; row != NULL && !reader->failed; row = row->next)
        read_row (reader, row, &policy->rows[policy->n_rows++]);
    }
  if ((part = sy_reader_part (reader, root, "tolerances", SY_JSON_ARRAY)) != NULL)
    {
      if (part->n_children > SY_POLICY_TOLERANCES_MAX)
        sy_reader_fail (reader, part, "at most %d tolerances", SY_POLICY_TOLERANCES_MAX);
      for (const SyJson *row = part->first; row != NULL && !reader->failed; row = row->next)
        read_tolerance (reader, row, &policy->tolerances[policy->n_tolerances++]);
    }
  /* What a site's policy says nothing of stays as the program's own policy has it: see inherit. */
  part = sy_json_member (root, "allowances");
  if (part != NULL)
    read_allowances (reader, part, policy);
  else
    policy->allowance_percent[0] = -1;
  part = sy_reader_list (reader, root, "examinations", SY_EXAMINATION_RULES_MAX);
  for (const SyJson *rule = part != NULL ? part->first : NULL; rule != NULL && !reader->failed; rule = rule->next)
    read_examination (reader, rule, &policy->examinations[policy->n_examinations++]);
  part = sy_json_member (root, "region");
  policy->has_region = part != NULL;
  if (part != NULL)
    sy_reader_region (reader, part, &policy->region);
  part = sy_reader_list (reader, root, "rules", SY_POLICY_RULES_MAX);
  for (const SyJson *rule = part != NULL ? part->first : NULL; rule != NULL && !reader->failed; rule = rule->next)
    sy_reader_rule (reader, rule, &policy->rules[policy->n_rules++]);
  if (reader->failed)
    return;
  int unknown = sy_policy_resolve (policy);
  if (unknown >= 0)
    sy_reader_fail (reader, root, "row \"%s\" names a method or symbol that does not exist", policy->rows[unknown].id);
}

static gboolean
parse (const char *text, gsize length, SyPolicy *out, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  SyReader reader = { error, "policy", FALSE };
  const SyJson *root = sy_reader_scan (&reader, text, length, POLICY_BYTES_MAX, memory);

  if (root != NULL)
    read_policy (&reader, root, policy);
  if (reader.failed)
    return FALSE;
  *out = *policy;
  return TRUE;
}

/* Months between examinations of a kind of gear; a kind without a rule has none that is too long. */
static int
interval_of (const SyPolicy *policy, SyGearKind kind)
{
  int months = 0;

  for (int i = 0; i < policy->n_examinations; i++)
    if (policy->examinations[i].kind == kind)
      months = months == 0 ? policy->examinations[i].months : MIN (months, policy->examinations[i].months);
  return months == 0 ? G_MAXINT : months;
}

/* The id of a built-in row that @policy drops or loosens, NULL for none. */
static const char *
loosened_row (const SyPolicy *builtin, const SyPolicy *policy)
{
  for (int i = 0; i < builtin->n_rows; i++)
    {
      const SyPolicyRow *own = &builtin->rows[i];
      gboolean kept = FALSE;

      for (int k = 0; k < policy->n_rows && !kept; k++)
        {
          const SyPolicyRow *row = &policy->rows[k];
          kept = strcmp (row->symbol, own->symbol) == 0 && row->of == own->of
                 && row->comparator == own->comparator && row->limit_is_symbol == own->limit_is_symbol
                 && strcmp (row->limit_symbol, own->limit_symbol) == 0
                 && sy_verdict_rank (row->verdict) >= sy_verdict_rank (own->verdict);
          for (int u = 0; u < SY_N_UNITS; u++)
            kept = kept && (own->comparator == SY_OVER ? row->limit[u] <= own->limit[u]
                                                       : row->limit[u] >= own->limit[u]);
        }
      if (!kept)
        return own->id;
    }
  for (int i = 0; i < SY_N_BASES; i++)
    if (policy->allowance_percent[i] < builtin->allowance_percent[i])
      return "allowances";
  for (int i = 0; i < builtin->n_examinations; i++)
    if (interval_of (policy, builtin->examinations[i].kind) > builtin->examinations[i].months)
      return sy_gear_kind_choices[builtin->examinations[i].kind].id;
  return policy->default_assigned > builtin->default_assigned ? "assigned" : NULL;
}

/* Whether one of the first @n rows is about the method. */
static gboolean
says_of (const SyPolicy *policy, int n, const SyMethod *method)
{
  for (int i = 0; i < n; i++)
    if (policy->rows[i].of == method)
      return TRUE;
  return FALSE;
}

/* A policy takes over from the program's own what it says nothing of: the rows of a method, the allowances, the
   examinations. So a policy that was written before a method existed does not leave that method without limits.
   FALSE: no room. */
static gboolean
inherit (const SyPolicy *builtin, SyPolicy *policy)
{
  int own = policy->n_rows;

  for (int i = 0; i < builtin->n_rows; i++)
    {
      if (says_of (policy, own, builtin->rows[i].of))
        continue;
      if (policy->n_rows == SY_POLICY_ROWS_MAX)
        return FALSE;
      policy->row_of[policy->n_rows] = builtin->row_of[i];
      policy->rows[policy->n_rows++] = builtin->rows[i];
    }
  if (policy->allowance_percent[0] < 0)
    memcpy (policy->allowance_percent, builtin->allowance_percent, sizeof policy->allowance_percent);
  if (policy->n_examinations == 0)
    {
      policy->n_examinations = builtin->n_examinations;
      memcpy (policy->examinations, builtin->examinations, sizeof policy->examinations);
    }
  return TRUE;
}

/* What the region asks of a kind of gear is a rule like the others: of all that are about a kind the shortest holds, so that it
   can only be sooner for it. FALSE, and said: no room. */
static gboolean
add_intervals (SyPolicy *policy, gboolean inherited, GError **error)
{
  SyExaminationRule rules[SY_EXAMINATION_RULES_MAX];
  int n = 0, own = policy->n_examinations;

  for (int i = 0; i < policy->region.n_intervals; i++)
    for (int kind = 0; kind < SY_N_GEAR_KINDS; kind++)
      {
        const SyInterval *interval = &policy->region.intervals[i];

        if (interval->months == 0 || (interval->kinds >> kind & 1u) == 0)
          continue;
        if (own + n == SY_EXAMINATION_RULES_MAX)
          {
            g_set_error (error, SY_EXCHANGE_ERROR, SY_EXCHANGE_ERROR_POLICY,
                         "policy: at most %d examinations with those of its region", SY_EXAMINATION_RULES_MAX);
            return FALSE;
          }
        rules[n] = (SyExaminationRule) { .kind = (SyGearKind) kind, .months = interval->months,
                                         .from_memory = interval->from_memory };
        if (g_snprintf (rules[n].regulation, sizeof rules[n].regulation, "%s %s: %s", interval->title, interval->section,
                        interval->what) >= (int) sizeof rules[n].regulation)
          {
            g_set_error (error, SY_EXCHANGE_ERROR, SY_EXCHANGE_ERROR_POLICY,
                         "policy, region: title, section and what of \"%s\" are together over %d bytes", interval->what,
                         SY_RULE_TEXT_MAX - 4);
            return FALSE;
          }
        n++;
      }
  /* after what the program says, before what the site says */
  if (!inherited)
    memmove (&policy->examinations[n], policy->examinations, (gsize) own * sizeof policy->examinations[0]);
  memcpy (&policy->examinations[inherited ? own : 0], rules, (gsize) n * sizeof rules[0]);
  policy->n_examinations = own + n;
  return TRUE;
}

gboolean
sy_policy_read (const char *text, gsize length, SyPolicy *out, GError **error)
{
  g_autoptr (GBytes) bytes = sy_policy_builtin ();
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  g_autofree SyPolicy *builtin = g_new0 (SyPolicy, 1);
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  const char *row;
  gboolean inherited;

  if (!parse (data, size, builtin, error) || !parse (text, length, policy, error))
    return FALSE;
  inherited = policy->n_examinations == 0;
  if (!inherit (builtin, policy))
    {
      g_set_error (error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY, "policy: at most %d rows",
                   SY_POLICY_ROWS_MAX);
      return FALSE;
    }
  row = loosened_row (builtin, policy);
  if (row != NULL && !sy_text_says (policy->loosened_because))
    {
      g_set_error (error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY,
                   "policy: \"%s\" is looser than the built-in policy (or missing); that needs a written reason in "
                   "\"loosened_because\"",
                   row);
      return FALSE;
    }
  if (!add_intervals (policy, inherited, error))
    return FALSE;
  *out = *policy;
  return TRUE;
}
