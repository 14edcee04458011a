/* SPDX-License-Identifier: MIT */
#include "sy-gear-place-private.h"

#include <string.h>

static const SyJson *
child_at (const SyJson *array, int index)
{
  const SyJson *child = array != NULL && array->type == SY_JSON_ARRAY ? array->first : NULL;

  while (child != NULL && index-- > 0)
    child = child->next;
  return child;
}

const SyJson *
sy_gear_place_list (const SyJson *plan, int leg)
{
  if (leg < 0)
    return sy_json_member (plan, "suspension");
  const SyJson *at = child_at (sy_json_member (plan, "legs"), leg);
  return at != NULL ? sy_json_member (at, "elements") : NULL;
}

static const char *
label_of (const SyJson *element)
{
  const char *label = sy_json_member_text (element, "label");

  return label != NULL ? label : "";
}

char *
sy_gear_place_label (const SyJson *plan, const SyGearPlace *place, const SyGearCandidate *candidate)
{
  const SyJson *list = sy_gear_place_list (plan, place->leg);
  g_autoptr (GPtrArray) others = g_ptr_array_new ();
  int i = 0;

  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next, i++)
    if (i != place->at)
      g_ptr_array_add (others, (gpointer) label_of (each));
  g_ptr_array_add (others, NULL);
  return sy_gear_element_label (candidate->identity, candidate->item->name, place->element,
                                (const char *const *) others->pdata);
}

/* The element */

static void
begin (GString *out, const char *name)
{
  g_string_append_printf (out, "%s\"%s\":", out->str[out->len - 1] == '{' ? "" : ",", name);
}

static char *
write_element (const SyGearCandidate *candidate, const SyGearPlace *place, const char *label, const SyJson *planned,
               SyUnits units)
{
  gboolean in_leg = place->leg >= 0;
  g_autoptr (GArray) members
    = sy_gear_element (candidate->document, candidate->facts, candidate->units, label, in_leg, units);
  const SyJson *kept = planned != NULL ? sy_json_member (planned, sy_gear_element_kept (in_leg)) : NULL;
  GString *out = g_string_new ("{");

  for (guint i = 0; i < members->len; i++)
    {
      const SyGearMember *member = &g_array_index (members, SyGearMember, i);

      begin (out, member->name);
      if (member->quoted)
        sy_json_write_text (out, member->text);
      else
        g_string_append (out, member->text);
    }
  if (kept != NULL)
    {
      begin (out, kept->key);
      sy_json_write_tree (out, kept);
    }
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

/* The plan */

/* A list with one of its items replaced, or one added. */
static void
write_list (GString *out, const SyJson *list, int at, const char *element)
{
  int i = 0;

  g_string_append_c (out, '[');
  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next, i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      if (i == at)
        g_string_append (out, element);
      else
        sy_json_write_tree (out, each);
    }
  if (at == SY_GEAR_PLACE_APPEND)
    g_string_append_printf (out, "%s%s", i > 0 ? "," : "", element);
  g_string_append_c (out, ']');
}

/* A leg with the item in it; its sling is of what the item is of. */
static void
write_leg (GString *out, const SyJson *leg, const SyGearPlace *place, const SyGearCandidate *candidate,
           const char *element)
{
  gboolean is_sling = place->kind == SY_GEAR_SLING;
  const SyJson *material = sy_json_member (candidate->document, "material");

  g_string_append_c (out, '{');
  for (const SyJson *member = leg->first; member != NULL; member = member->next)
    if (strcmp (member->key, "elements") != 0 && !(is_sling && strcmp (member->key, "material") == 0))
      {
        if (out->str[out->len - 1] != '{')
          g_string_append_c (out, ',');
        sy_json_write_text (out, member->key);
        g_string_append_c (out, ':');
        sy_json_write_tree (out, member);
      }
  if (is_sling && material != NULL)
    {
      begin (out, "material");
      sy_json_write_tree (out, material);
    }
  begin (out, "elements");
  write_list (out, sy_json_member (leg, "elements"), place->at, element);
  g_string_append_c (out, '}');
}

/* Where the same kind is in another leg. */
static SyGearPlace
place_in (const SyJson *plan, int leg, SyGearKind kind)
{
  SyGearPlace place = { leg, SY_GEAR_PLACE_APPEND, kind, "" };
  const SyJson *list = sy_gear_place_list (plan, leg);
  int i = 0;

  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next, i++)
    if (g_strcmp0 (sy_json_member_text (each, "kind"), sy_gear_kind_choices[kind].id) == 0)
      {
        place.at = i;
        place.element = label_of (each);
        break;
      }
  return place;
}

static void
write_legs (GString *out, const SyJson *plan, SyUnits units, const SyGearPlace *place,
            const SyGearCandidate *candidate, gboolean everywhere)
{
  const SyJson *legs = sy_json_member (plan, "legs");
  int i = 0;

  g_string_append_c (out, '[');
  for (const SyJson *leg = legs->first; leg != NULL; leg = leg->next, i++)
    {
      SyGearPlace here = i == place->leg ? *place : place_in (plan, i, place->kind);

      if (i > 0)
        g_string_append_c (out, ',');
      if (i != place->leg && !everywhere)
        {
          sy_json_write_tree (out, leg);
          continue;
        }
      g_autofree char *label = sy_gear_place_label (plan, &here, candidate);
      g_autofree char *element = write_element (candidate, &here, label,
                                                child_at (sy_gear_place_list (plan, i), here.at), units);
      write_leg (out, leg, &here, candidate, element);
    }
  g_string_append_c (out, ']');
}

static void
write_suspension (GString *out, const SyJson *plan, SyUnits units, const SyGearPlace *place,
                  const SyGearCandidate *candidate)
{
  const SyJson *list = sy_gear_place_list (plan, place->leg);
  g_autofree char *label = sy_gear_place_label (plan, place, candidate);
  g_autofree char *element = write_element (candidate, place, label, child_at (list, place->at), units);

  write_list (out, list, place->at, element);
}

char *
sy_gear_place_write (const SyJson *plan, SyUnits units, const SyGearPlace *place, const SyGearCandidate *candidate,
                     gboolean everywhere)
{
  const char *changed = place->leg >= 0 ? "legs" : "suspension";
  GString *out = g_string_new ("{");

  for (const SyJson *member = plan->first; member != NULL; member = member->next)
    if (strcmp (member->key, changed) != 0)
      {
        if (out->len > 1)
          g_string_append_c (out, ',');
        sy_json_write_text (out, member->key);
        g_string_append_c (out, ':');
        sy_json_write_tree (out, member);
      }
  begin (out, changed);
  if (place->leg >= 0)
    write_legs (out, plan, units, place, candidate, everywhere);
  else
    write_suspension (out, plan, units, place, candidate);
  g_string_append_c (out, '}');
  return g_string_free (out, FALSE);
}

/* Elsewhere */

static gboolean
is_item (const SyJson *element, const SyGearCandidate *candidate)
{
  const char *label = label_of (element);
  g_autofree char *name = sy_gear_element_cut (candidate->item->name);

  return g_strcmp0 (sy_json_member_text (element, "kind"), sy_gear_kind_choices[candidate->kind].id) == 0
         && (strcmp (label, candidate->identity) == 0 || strcmp (label, name) == 0);
}

static const char *
leg_label (const SyJson *leg)
{
  const SyJson *point = sy_json_member (leg, "point");

  if (point != NULL && point->type == SY_JSON_ARRAY)
    point = point->first;
  return point != NULL && point->text != NULL ? point->text : "";
}

/* The element of a list that is the item, but for the one at @but. */
static const SyJson *
find_item (const SyJson *list, const SyGearCandidate *candidate, int but)
{
  int at = 0;

  for (const SyJson *each = list != NULL ? list->first : NULL; each != NULL; each = each->next, at++)
    if (at != but && is_item (each, candidate))
      return each;
  return NULL;
}

char *
sy_gear_place_elsewhere (const SyJson *plan, const SyGearPlace *place, const SyGearCandidate *candidate)
{
  const SyGearFacts *facts = candidate->facts;
  gboolean is_shared = facts->kind == SY_GEAR_MASTER_LINK
                       || (facts->kind == SY_GEAR_SLING && facts->rated_as == SY_RATED_ASSEMBLY && facts->legs.given
                           && facts->legs.value > 1);
  const SyJson *hung = find_item (sy_gear_place_list (plan, -1), candidate, place->leg < 0 ? place->at : -1);
  int i = 0;

  if (hung != NULL)
    return g_strdup (label_of (hung));
  for (const SyJson *leg = sy_json_member (plan, "legs")->first; leg != NULL; leg = leg->next, i++)
    if ((i == place->leg || !is_shared)
        && find_item (sy_gear_place_list (plan, i), candidate, i == place->leg ? place->at : -1) != NULL)
      return g_strdup (leg_label (leg));
  return NULL;
}
