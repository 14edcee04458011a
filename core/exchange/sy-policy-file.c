/* SPDX-License-Identifier: MIT */
#include "sy-policy-file.h"

#include <gio/gio.h>
#include <string.h>

#include "sy-json.h"
#include "sy-policy-resource.h"

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

/* The first thing wrong is kept; the readers below go on and change nothing that matters. */
typedef struct
{
  GError **error;
  gboolean failed;
} Reader;

G_GNUC_PRINTF (3, 4)
static void
fail (Reader *reader, const SyJson *at, const char *format, ...)
{
  va_list args;
  g_autofree char *text = NULL;

  if (reader->failed)
    return;
  reader->failed = TRUE;
  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (reader->error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY, "policy, line %d%s%s: %s",
               at ? at->line : 1, at && at->key ? ", " : "", at && at->key ? at->key : "", text);
}

static void
known_members (Reader *reader, const SyJson *object, const char *const *names)
{
  if (object->type != SY_JSON_OBJECT)
    {
      fail (reader, object, "an object was expected");
      return;
    }
  for (const SyJson *member = object->first; member != NULL; member = member->next)
    if (!g_strv_contains (names, member->key))
      fail (reader, member, "unknown member");
}

static void
read_text (Reader *reader, const SyJson *object, const char *name, char *to, gsize size, gboolean required)
{
  const SyJson *member = sy_json_member (object, name);

  *to = '\0';
  if (member == NULL && !required)
    return;
  if (member == NULL)
    fail (reader, object, "\"%s\" is missing: a text", name);
  else if (member->type != SY_JSON_TEXT || member->text_length == 0 || member->text_length >= size)
    fail (reader, member, "a text of 1 to %" G_GSIZE_FORMAT " bytes was expected", size - 1);
  else
    memcpy (to, member->text, member->text_length + 1);
}

static double
read_number (Reader *reader, const SyJson *object, const char *name, double low, double high)
{
  const SyJson *member = sy_json_member (object, name);

  if (member == NULL)
    fail (reader, object, "\"%s\" is missing: a number from %g to %g", name, low, high);
  else if (member->type != SY_JSON_NUMBER || member->number < low || member->number > high)
    fail (reader, member, "a number from %g to %g was expected", low, high);
  else
    return member->number;
  return low;
}

static const SyJson *
read_part (Reader *reader, const SyJson *object, const char *name, SyJsonType type)
{
  const SyJson *member = sy_json_member (object, name);

  if (member == NULL)
    fail (reader, object, "\"%s\" is missing", name);
  else if (member->type != type)
    fail (reader, member, "%s was expected", type == SY_JSON_ARRAY ? "a list" : "an object");
  else
    return member;
  return NULL;
}

static gboolean
read_flag (Reader *reader, const SyJson *object, const char *name)
{
  const SyJson *member = sy_json_member (object, name);

  if (member != NULL && member->type != SY_JSON_TRUE && member->type != SY_JSON_FALSE)
    fail (reader, member, "true or false was expected");
  return member != NULL && member->type == SY_JSON_TRUE;
}

static void
read_row (Reader *reader, const SyJson *object, SyPolicyRow *row)
{
  static const char *const names[] = { "id",    "method",  "symbol", "over",        "over_us", "under", "under_us",
                                       "over_symbol", "verdict", "source", "from_memory", NULL };
  char verdict[SY_POLICY_ID_MAX];
  int limits = 0;

  known_members (reader, object, names);
  read_text (reader, object, "id", row->id, sizeof row->id, TRUE);
  read_text (reader, object, "method", row->method, sizeof row->method, TRUE);
  read_text (reader, object, "symbol", row->symbol, sizeof row->symbol, TRUE);
  read_text (reader, object, "source", row->source, sizeof row->source, TRUE);
  read_text (reader, object, "verdict", verdict, sizeof verdict, TRUE);
  if (!reader->failed && !sy_verdict_from_id (verdict, &row->verdict))
    fail (reader, sy_json_member (object, "verdict"), "no verdict: \"%s\"", verdict);
  row->comparator = SY_OVER;
  if (sy_json_member (object, "over_symbol") != NULL)
    {
      limits++;
      row->limit_is_symbol = true;
      read_text (reader, object, "over_symbol", row->limit_symbol, sizeof row->limit_symbol, TRUE);
    }
  for (int i = 0; i < 2; i++)
    {
      const char *name = i == 0 ? "over" : "under", *us = i == 0 ? "over_us" : "under_us";
      if (sy_json_member (object, name) == NULL)
        continue;
      limits++;
      row->comparator = i == 0 ? SY_OVER : SY_UNDER;
      row->limit[SY_UNITS_METRIC] = read_number (reader, object, name, 0, 1e6);
      row->limit[SY_UNITS_US] = sy_json_member (object, us) ? read_number (reader, object, us, 0, 1e6)
                                                            : row->limit[SY_UNITS_METRIC];
    }
  if (limits != 1)
    fail (reader, object, "exactly one of \"over\", \"under\", \"over_symbol\" was expected");
  row->from_memory = read_flag (reader, object, "from_memory");
}

static void
read_tolerance (Reader *reader, const SyJson *object, SyTolerance *tolerance)
{
  static const char *const names[] = { "method", "fact", "unit", "measured", "drawing", "estimated", "source",
                                       NULL };
  static const char *const hows[SY_N_HOW] = { "measured", "drawing", "estimated" };
  char unit[SY_POLICY_ID_MAX];

  known_members (reader, object, names);
  read_text (reader, object, "method", tolerance->method, sizeof tolerance->method, TRUE);
  read_text (reader, object, "fact", tolerance->fact, sizeof tolerance->fact, TRUE);
  read_text (reader, object, "source", tolerance->source, sizeof tolerance->source, TRUE);
  read_text (reader, object, "unit", unit, sizeof unit, TRUE);
  if (!reader->failed && strcmp (unit, "cm") != 0 && strcmp (unit, "%") != 0 && strcmp (unit, "deg") != 0)
    fail (reader, sy_json_member (object, "unit"), "one of cm, deg, %% was expected");
  tolerance->percent = strcmp (unit, "%") == 0;
  for (int how = 0; how < SY_N_HOW; how++)
    {
      double half = read_number (reader, object, hows[how], 0, 1000);
      tolerance->by_how[how][SY_UNITS_METRIC] = half;
      tolerance->by_how[how][SY_UNITS_US] = strcmp (unit, "cm") == 0 ? half / SY_CM_PER_IN : half;
    }
}

static void
read_allowances (Reader *reader, const SyJson *object, SyPolicy *policy)
{
  static const char *const names[] = { "weighed", "plate", "drawing", "estimated", "source", NULL };
  char source[SY_POLICY_SOURCE_MAX];

  known_members (reader, object, names);
  read_text (reader, object, "source", source, sizeof source, TRUE);
  for (int i = 0; i < SY_N_BASES; i++)
    policy->allowance_percent[i] = read_number (reader, object, sy_basis_choices[i].id, 0, 1000);
}

static void
read_examination (Reader *reader, const SyJson *object, SyExaminationRule *rule)
{
  static const char *const names[] = { "kind", "months", "regulation", "from_memory", NULL };
  char kind[SY_POLICY_ID_MAX];
  gboolean known = FALSE;

  known_members (reader, object, names);
  read_text (reader, object, "kind", kind, sizeof kind, TRUE);
  read_text (reader, object, "regulation", rule->regulation, sizeof rule->regulation, TRUE);
  rule->months = (int) read_number (reader, object, "months", 1, 1200);
  rule->from_memory = read_flag (reader, object, "from_memory");
  for (int i = 0; i < SY_N_GEAR_KINDS; i++)
    if (strcmp (kind, sy_gear_kind_choices[i].id) == 0)
      {
        rule->kind = (SyGearKind) i;
        known = TRUE;
      }
  if (!known)
    fail (reader, sy_json_member (object, "kind"), "a kind of gear was expected");
}

static void
read_policy (Reader *reader, const SyJson *root, SyPolicy *policy)
{
  static const char *const names[] = { "id", "version", "title", "assigned", "urgency", "spread", "rows",
                                       "tolerances", "loosened_because", "allowances", "examinations", NULL };
  static const char *const urgency_names[] = { "soon_over", "now_over", NULL };
  static const char *const spread_names[] = { "seed", "draws", NULL };
  static const char *const assigned_ids[] = { "any-age", "mixed-adults", "men-20-45" };
  char assigned[SY_POLICY_ID_MAX];
  const SyJson *part;

  known_members (reader, root, names);
  read_text (reader, root, "id", policy->id, sizeof policy->id, TRUE);
  policy->version = (int) read_number (reader, root, "version", 1, 1e6);
  read_text (reader, root, "title", policy->title, sizeof policy->title, TRUE);
  read_text (reader, root, "loosened_because", policy->loosened_because, sizeof policy->loosened_because, FALSE);
  read_text (reader, root, "assigned", assigned, sizeof assigned, TRUE);
  policy->default_assigned = -1;
  for (int i = 0; i < 3; i++)
    if (strcmp (assigned, assigned_ids[i]) == 0)
      policy->default_assigned = i;
  if (policy->default_assigned < 0)
    fail (reader, sy_json_member (root, "assigned"), "one of any-age, mixed-adults, men-20-45 was expected");
  if ((part = read_part (reader, root, "urgency", SY_JSON_OBJECT)) != NULL)
    {
      known_members (reader, part, urgency_names);
      policy->soon_over = read_number (reader, part, "soon_over", 0, 1000);
      policy->now_over = read_number (reader, part, "now_over", policy->soon_over, 1000);
    }
  if ((part = read_part (reader, root, "spread", SY_JSON_OBJECT)) != NULL)
    {
      known_members (reader, part, spread_names);
      policy->seed = (unsigned long long) read_number (reader, part, "seed", 0, 9007199254740992.0);
      policy->draws = (int) read_number (reader, part, "draws", 100, 100000);
    }
  if ((part = read_part (reader, root, "rows", SY_JSON_ARRAY)) != NULL)
    {
      if (part->n_children > SY_POLICY_ROWS_MAX)
        fail (reader, part, "at most %d rows", SY_POLICY_ROWS_MAX);
      for (const SyJson *row = part->first; row != NULL && !reader->failed; row = row->next)
        read_row (reader, row, &policy->rows[policy->n_rows++]);
    }
  if ((part = read_part (reader, root, "tolerances", SY_JSON_ARRAY)) != NULL)
    {
      if (part->n_children > SY_POLICY_TOLERANCES_MAX)
        fail (reader, part, "at most %d tolerances", SY_POLICY_TOLERANCES_MAX);
      for (const SyJson *row = part->first; row != NULL && !reader->failed; row = row->next)
        read_tolerance (reader, row, &policy->tolerances[policy->n_tolerances++]);
    }
  /* What a site's policy says nothing of stays as the program's own policy has it: see inherit. */
  part = sy_json_member (root, "allowances");
  if (part != NULL)
    read_allowances (reader, part, policy);
  else
    policy->allowance_percent[0] = -1;
  part = sy_json_member (root, "examinations");
  if (part != NULL && (part->type != SY_JSON_ARRAY || part->n_children > SY_EXAMINATION_RULES_MAX))
    fail (reader, part, "a list of at most %d rules was expected", SY_EXAMINATION_RULES_MAX);
  else if (part != NULL)
    for (const SyJson *rule = part->first; rule != NULL && !reader->failed; rule = rule->next)
      read_examination (reader, rule, &policy->examinations[policy->n_examinations++]);
  if (reader->failed)
    return;
  int unknown = sy_policy_resolve (policy);
  if (unknown >= 0)
    fail (reader, root, "row \"%s\" names a method or symbol that does not exist", policy->rows[unknown].id);
}

static gboolean
parse (const char *text, gsize length, SyPolicy *out, GError **error)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  Reader reader = { error, FALSE };
  const SyJson *root = sy_json_scan (text, length, POLICY_BYTES_MAX, memory, problems);

  if (root == NULL)
    {
      const SyProblem *first = &problems->items[0];
      g_set_error (error, sy_exchange_error_quark (), SY_EXCHANGE_ERROR_POLICY,
                   "policy, line %d, %s: given %s, allowed %s", first->line, first->path, first->given,
                   first->allowed);
      return FALSE;
    }
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

gboolean
sy_policy_read (const char *text, gsize length, SyPolicy *out, GError **error)
{
  g_autoptr (GBytes) bytes = sy_policy_builtin ();
  g_autofree SyPolicy *policy = g_new0 (SyPolicy, 1);
  g_autofree SyPolicy *builtin = g_new0 (SyPolicy, 1);
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  const char *row;

  if (!parse (data, size, builtin, error) || !parse (text, length, policy, error))
    return FALSE;
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
  *out = *policy;
  return TRUE;
}
