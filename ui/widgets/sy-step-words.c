/* SPDX-License-Identifier: MIT */
#include "sy-step-words.h"

#include "sy-changeover-facts.h"
#include "sy-i18n.h"
#include "sy-verdict.h"

#include <string.h>

const SyField *
sy_step_member (const SyField *list, const char *name)
{
  for (gsize i = 0; i < list->n_members; i++)
    if (strcmp (list->members[i].name, name) == 0)
      return &list->members[i];
  return NULL;
}

const SyField *
sy_step_facts_member (const SyField *list)
{
  for (gsize i = 0; i < list->n_members; i++)
    if (list->members[i].type == SY_MEMBER_FACTS)
      return &list->members[i];
  return NULL;
}

static const char *
get (SyForm *form, const char *list, guint at, const char *member)
{
  g_autofree char *path = g_strdup_printf ("%s[%u].%s", list, at, member);

  return sy_form_get (form, path);
}

static int
find_choice (const SyField *field, const char *id)
{
  for (gsize i = 0; field != NULL && i < field->n_choices; i++)
    if (strcmp (field->choices[i].id, id) == 0)
      return (int) i;
  return -1;
}

static int
choice_of (SyForm *form, const char *list, guint at, const char *member)
{
  return find_choice (sy_step_member (sy_form_find_field (form, list), member), get (form, list, at, member));
}

static gboolean
is_step (const SyField *list)
{
  const SyField *kind = sy_step_member (list, "kind");

  return kind != NULL && kind->choices == sy_step_kind_choices;
}

/* Topics: how it stands */

void
sy_step_state_clear (SyStepState *state)
{
  g_free (state->words);
  *state = (SyStepState) { 0 };
}

/* As the whole has it: with its day, its policy and what its notes say of the step. */
static gboolean
say_from_whole (const SyFindings *findings, const char *label, SyStepState *state)
{
  const SyMethod *method = NULL;

  for (int i = 0; i < findings->n_parts; i++)
    if (findings->parts[i].method != NULL && g_strcmp0 (findings->parts[i].label, label) == 0 && !state->said)
      {
        state->said = TRUE;
        state->verdict = findings->parts[i].verdict;
        method = findings->parts[i].method;
      }
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];

      if (reason->note == NULL || strcmp (reason->note->subject, label) != 0
          || g_str_has_prefix (reason->id, "person-"))
        continue;
      if (g_str_has_prefix (reason->id, "check-"))
        {
          state->missing++;
          continue;
        }
      if (!state->said || sy_verdict_rank (reason->verdict) > sy_verdict_rank (state->verdict))
        {
          state->verdict = reason->verdict;
          method = NULL;
        }
      state->said = TRUE;
    }
  if (state->said)
    state->words = g_strdup (sy_translate (sy_verdict_title_for (method, state->verdict)));
  return state->said;
}

static void
say_needed (SyStepState *state, char *words)
{
  state->said = TRUE;
  state->verdict = SY_VERDICT_INCOMPLETE;
  state->words = words;
}

static void
say_from_part (SyForm *form, const char *path, SyStepState *state)
{
  const SyMethod *method = sy_form_get_part_method (form, path);
  g_autoptr (SyForm) part = sy_form_new_part (form, path, NULL);
  SyAssessment *assessment = part != NULL ? sy_form_get_assessment (part) : NULL;
  guint n = part != NULL ? sy_form_count_problems (part) : 0;

  if (part == NULL)
    say_needed (state, g_strdup (_("Cannot be read")));
  else if (assessment == NULL && n == sy_form_count_missing (part))
    say_needed (state, g_strdup_printf (P_ ("%u fact missing", "%u facts missing", n), n));
  else if (assessment == NULL)
    say_needed (state, g_strdup_printf (P_ ("%u fact to mend", "%u facts to mend", n), n));
  else
    {
      state->said = TRUE;
      state->verdict = assessment->findings->verdict;
      state->words = g_strdup (sy_translate (sy_verdict_title_for (method, state->verdict)));
    }
}

void
sy_step_state_of (SyForm *form, const char *list, guint at, SyStepState *state)
{
  const SyField *field = sy_form_find_field (form, list);
  g_autofree char *path = g_strdup_printf ("%s[%u].%s", list, at, sy_step_facts_member (field)->name);
  SyAssessment *assessment = sy_form_get_assessment (form);
  int kind = choice_of (form, list, at, "kind");

  *state = (SyStepState) { 0 };
  if (assessment != NULL && say_from_whole (assessment->findings, get (form, list, at, "label"), state))
    return;
  if (sy_form_get (form, path)[0] != '\0')
    say_from_part (form, path, state);
  else if (!is_step (field) || (kind >= 0 && sy_step_handles ((SyStepKind) kind)))
    say_needed (state, g_strdup (_("Not assessed yet")));
}

/* Topics: words */

/* Beside others, whether the machine stands needs the machine. */
static const char *
choice_words (const SyField *member, int choice)
{
  if (strcmp (member->name, "when") == 0)
    return choice == SY_WHEN_STOPPED ? _("Machine stopped") : _("Machine running");
  return sy_translate (member->choices[choice].label);
}

char *
sy_step_dup_note (SyForm *form, const char *list, guint at)
{
  static const char *const members[] = { "kind", "when" };
  GString *note = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
    {
      const SyField *member = sy_step_member (sy_form_find_field (form, list), members[i]);
      int choice = choice_of (form, list, at, members[i]);

      if (choice >= 0)
        g_string_append_printf (note, "%s%s", note->len > 0 ? " · " : "", choice_words (member, choice));
    }
  return g_string_free (note, FALSE);
}

char *
sy_step_dup_minutes (SyForm *form, const char *list, guint at)
{
  const char *text = sy_step_member (sy_form_find_field (form, list), "minutes") != NULL ? get (form, list, at, "minutes") : "";

  return text[0] != '\0' && g_ascii_isdigit (text[strlen (text) - 1]) ? g_strdup_printf (_("%s min"), text) : g_strdup (text);
}

static gboolean
is_taken (SyForm *form, const char *list, const char *name)
{
  for (guint i = 0; i < sy_form_list_count (form, list); i++)
    if (strcmp (get (form, list, i, "label"), name) == 0)
      return TRUE;
  return FALSE;
}

char *
sy_step_dup_unique (SyForm *form, const char *list, const char *name)
{
  char *unique = g_strdup (name);

  for (guint n = 2; is_taken (form, list, unique); n++)
    {
      g_free (unique);
      unique = g_strdup_printf ("%s %u", name, n);
    }
  return unique;
}

char *
sy_step_dup_half (const char *text)
{
  g_autofree char *point = g_strdelimit (g_strdup (text), ",", '.');
  char *end, half[G_ASCII_DTOSTR_BUF_SIZE];
  double value = g_ascii_strtod (point, &end);

  if (end == point || !g_ascii_isdigit (point[0]) || strpbrk (end, "0123456789") != NULL)
    return g_strdup ("");
  g_ascii_formatd (half, sizeof half, "%.10g", value / 2);
  return g_strconcat (half, text + (end - point), NULL);
}

/* Topics: what follows of its kind */

#define BIT(check) SY_CHECK_BIT (SY_CHECK_##check)

/* What machine and dies do not have is not asked for. */
static unsigned long
not_there (SyForm *form)
{
  static const struct
  {
    const char *id;
    unsigned long bits;
  } without[SY_N_WITHOUT] = {
    { "slide", BIT (BLOCKED) | BIT (BLOCKS_OUT) },
    { "pressure", BIT (PRESSURE) },
    { "heat", BIT (HOT) },
    { "halves", BIT (TIED) },
  };
  g_auto (GStrv) ids = g_strsplit (sy_form_get (form, "without"), " ", -1);
  unsigned long bits = 0;

  for (gsize i = 0; i < SY_N_WITHOUT; i++)
    if (g_strv_contains ((const char *const *) ids, without[i].id))
      bits |= without[i].bits;
  return bits;
}

static char *
dup_why (SyCheck check, gboolean here)
{
  bool from_memory;
  const char *regulation = sy_check_regulation (check, &from_memory);
  const char *told = from_memory && strstr (regulation, "from memory") == NULL ? _(" (from memory)") : "";

  /* Translators: a check of a step of a die change; then the regulation that asks for it. */
  return here ? g_strdup_printf (_("Asked for in this step: %s%s"), sy_translate (regulation), told)
              : g_strdup_printf (_("Asked for in this step or before it: %s%s"), sy_translate (regulation), told);
}

char **
sy_step_dup_asked (SyForm *form, const char *list, guint at)
{
  const SyField *field = sy_form_find_field (form, list), *checks = sy_step_member (field, "checks");
  g_autofree char *path = NULL;
  SyChangeoverStep step = { 0 };
  SyStepNeeds needs;
  char **asked;

  step.kind = choice_of (form, list, at, "kind");
  if (!is_step (field) || checks == NULL || checks->choices != sy_check_choices || step.kind < 0)
    return NULL;
  path = g_strdup_printf ("%s[%u].%s", list, at, sy_step_facts_member (field)->name);
  step.when = choice_of (form, list, at, "when");
  step.part.method = sy_form_get_part_method (form, path);
  needs = sy_step_needs (&step);
  asked = g_new0 (char *, SY_N_CHECKS);
  for (int i = 0; i < SY_N_CHECKS; i++)
    if (((needs.here | needs.before) & ~not_there (form)) & SY_CHECK_BIT (i))
      asked[i] = dup_why ((SyCheck) i, (needs.here & SY_CHECK_BIT (i)) != 0);
  return asked;
}

void
sy_step_asked_free (char **asked)
{
  for (int i = 0; asked != NULL && i < SY_N_CHECKS; i++)
    g_free (asked[i]);
  g_free (asked);
}

const char *const *
sy_step_suggested (const char *kind)
{
  static const char *const nothing[] = { NULL };
  static const struct
  {
    const char *kind, *methods[5];
  } suggested[] = {
    { "draw", { "slide", "push", NULL } },
    { "lift", { "lift", "team-lift", "rigged-lift", NULL } },
    { "carry", { "carry", "team-lift", NULL } },
    { "roll", { "cart", "push", NULL } },
    { "truck", { "truck", NULL } },
    { "store", { "truck", "cart", "rigged-lift", "carry", NULL } },
    { "bring", { "truck", "cart", "rigged-lift", "carry", NULL } },
    { "set", { "slide", "rigged-lift", "lift", NULL } },
    { "turn", { "rigged-lift", NULL } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (suggested); i++)
    if (strcmp (suggested[i].kind, kind) == 0)
      return suggested[i].methods;
  return nothing;
}
