/* SPDX-License-Identifier: MIT */
#include "sy-gear-element.h"

#include <string.h>

static void
clear_member (gpointer data)
{
  g_free (((SyGearMember *) data)->text);
}

static void
take (GArray *members, const char *name, char *text, gboolean quoted)
{
  SyGearMember member = { name, text, quoted };

  g_array_append_val (members, member);
}

/* A fact of the item, with its unit where the plan has another. */
static void
copy_fact (GArray *members, const SyJson *gear, const char *name, SyKind kind, SyUnits units, SyUnits planned)
{
  const SyJson *fact = sy_json_member (gear, name);
  gboolean quoted = fact != NULL && fact->type == SY_JSON_TEXT, has_unit = TRUE;
  bool had_unit = true;
  double value;

  if (fact == NULL || fact->type == SY_JSON_NULL)
    return;
  g_autofree char *text = quoted ? g_strdup (fact->text) : g_strndup (fact->raw, fact->raw_length);
  if (kind != SY_KIND_COUNT && units != planned
      && sy_quantity_parse (text, strlen (text), kind, units, false, &value, &had_unit) == SY_TEXT_OK)
    has_unit = had_unit;
  if (has_unit)
    take (members, name, g_steal_pointer (&text), quoted);
  else
    take (members, name, g_strdup_printf ("%s %s", text, sy_unit_name (kind, units)), TRUE);
}

GArray *
sy_gear_element (const SyJson *gear, const SyGearFacts *facts, SyUnits units, const char *label, gboolean in_leg,
                 SyUnits planned)
{
  /* SY_KIND_COUNT: has no unit. */
  static const struct
  {
    const char *name;
    SyKind kind;
    gboolean only_in_leg;
  } copied[] = {
    { "kind", SY_KIND_COUNT, FALSE },      { "wll", SY_KIND_MASS, FALSE },       { "own_mass", SY_KIND_MASS, FALSE },
    { "withdrawn", SY_KIND_COUNT, FALSE }, { "rated_as", SY_KIND_COUNT, TRUE },  { "legs", SY_KIND_COUNT, TRUE },
    { "band", SY_KIND_COUNT, TRUE },       { "family", SY_KIND_COUNT, TRUE },    { "shoulder", SY_KIND_COUNT, TRUE },
    { "size", SY_KIND_LENGTH, TRUE },      { "grade", SY_KIND_COUNT, TRUE },
  };
  GArray *members = g_array_new (FALSE, FALSE, sizeof (SyGearMember));
  const char *due = facts != NULL ? sy_gear_due (facts) : sy_json_member_text (gear, "due");

  g_array_set_clear_func (members, clear_member);
  take (members, "label", g_strdup (label), TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (copied); i++)
    if (in_leg || !copied[i].only_in_leg)
      copy_fact (members, gear, copied[i].name, copied[i].kind, units, planned);
  /* Only a sling can be rated in another way than as it is. */
  if (in_leg && sy_json_member (gear, "rated_as") == NULL && g_strcmp0 (sy_json_member_text (gear, "kind"), "sling") != 0)
    take (members, "rated_as", g_strdup ("leg"), TRUE);
  if (due != NULL)
    take (members, "due", g_strdup (due), TRUE);
  return members;
}

const char *
sy_gear_element_kept (gboolean in_leg)
{
  return in_leg ? "side_angle" : "attachment";
}

char *
sy_gear_element_cut (const char *name)
{
  gsize length = strlen (name);

  if (length > SY_RIG_LABEL_MAX)
    length = (gsize) (g_utf8_find_prev_char (name, name + SY_RIG_LABEL_MAX + 1) - name);
  return g_strndup (name, length);
}

char *
sy_gear_element_label (const char *identity, const char *name, const char *planned, const char *const *others)
{
  const char *const wanted[] = { identity, name, planned };

  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autofree char *label = sy_gear_element_cut (wanted[i]);

      if (*label != '\0' && !g_strv_contains (others, label))
        return g_steal_pointer (&label);
    }
  for (int i = 1;; i++)
    {
      g_autofree char *label = g_strdup_printf ("#%d", i);

      if (!g_strv_contains (others, label))
        return g_steal_pointer (&label);
    }
}

static gboolean
is_screwed_in (SyGearKind kind)
{
  return kind == SY_GEAR_EYEBOLT || kind == SY_GEAR_HOIST_RING;
}

gboolean
sy_gear_kinds_stand_in (SyGearKind kind, SyGearKind other)
{
  return kind == other || (is_screwed_in (kind) && is_screwed_in (other));
}
