/* SPDX-License-Identifier: MIT */
#include "sy-take.h"

#include <math.h>
#include <string.h>

#include "sy-gear-element.h"

/* Topics: texts on their way */

typedef struct
{
  GPtrArray *paths, *texts;
} Taken;

static void
taken_init (Taken *taken)
{
  taken->paths = g_ptr_array_new_with_free_func (g_free);
  taken->texts = g_ptr_array_new_with_free_func (g_free);
}

static void
put (Taken *taken, char *path, const char *text)
{
  g_ptr_array_add (taken->paths, path);
  g_ptr_array_add (taken->texts, g_strdup (text));
}

static void
give (Taken *taken, SyForm *plan)
{
  sy_form_set_many (plan, (const char *const *) taken->paths->pdata, (const char *const *) taken->texts->pdata,
                    taken->paths->len);
  g_ptr_array_unref (taken->paths);
  g_ptr_array_unref (taken->texts);
}

/* What is below a path goes before something else is put there. */
static void
clear_below (Taken *taken, SyForm *plan, const char *path, const char *kept)
{
  g_auto (GStrv) below = sy_form_list_paths_below (plan, path);

  for (gsize i = 0; below[i] != NULL; i++)
    if (kept == NULL || !g_str_has_suffix (below[i], kept))
      put (taken, g_strdup (below[i]), "");
}

/* The die as a form of its own in the units of the plan: bare numbers get the unit that they were typed in. */
static SyForm *
read_die (SyForm *plan, const SyRegisterItem *item, GError **error)
{
  SyUnits units = sy_form_get_units (plan);
  g_autoptr (SyForm) form = sy_form_new (sy_form_get_desk (plan), "die-mass", units);

  if (!sy_form_load_document (form, item->facts, error))
    return NULL;
  if (sy_form_get_units (form) != units)
    sy_form_set_units (form, units);
  return g_steal_pointer (&form);
}

/* Everything below a list of the item, under the same name in the plan. */
static void
copy_below (Taken *taken, SyForm *plan, SyForm *item, const char *path)
{
  g_auto (GStrv) below = sy_form_list_paths_below (item, path);

  if (below[0] == NULL)
    return;
  clear_below (taken, plan, path, NULL);
  put (taken, g_strdup (path), "");
  for (gsize i = 0; below[i] != NULL; i++)
    put (taken, g_strdup (below[i]), sy_form_get (item, below[i]));
}

/* Topics: dies */

static const SyQuantity *
find_quantity (SyForm *item, const char *symbol)
{
  const SyAssessment *assessment = sy_form_get_assessment (item);
  const SyQuantity *quantity
    = assessment != NULL ? sy_sink_quantity (&assessment->findings->sink, symbol) : NULL;

  return quantity != NULL && quantity->state == SY_STATE_VALUE ? quantity : NULL;
}

/* Places to a tenth of a millimetre or a hundredth of an inch; a mass never below what was worked out (our choice: finer
   than any of it can be measured). */
static char *
print_place (double value, SyUnits units)
{
  return sy_words_number (value, units == SY_UNITS_METRIC ? 1 : 2);
}

static char *
print_mass (double value)
{
  return sy_words_number (ceil (value * 10 - 1e-6) / 10, 1);
}

/* How the mass is known; a weighed one that says no other is weighed (the die's own rule). */
static const char *
basis_of (SyForm *die)
{
  const char *basis = sy_form_get (die, "mass_basis");

  if (*basis != '\0')
    return basis;
  return *sy_form_get (die, "weighed") != '\0' ? "weighed" : "drawing";
}

static void
take_mass (Taken *taken, SyForm *die)
{
  const char *weighed = sy_form_get (die, "weighed");
  const SyQuantity *mass = find_quantity (die, "mass");
  g_autofree char *computed = mass != NULL ? print_mass (mass->value) : NULL;

  if (*weighed == '\0' && computed == NULL)
    return;
  put (taken, g_strdup ("mass"), *weighed != '\0' ? weighed : computed);
  put (taken, g_strdup ("mass_basis"), basis_of (die));
  put (taken, g_strdup ("allowance_percent"), sy_form_get (die, "allowance_percent"));
}

static void
take_centre (Taken *taken, SyForm *die)
{
  static const char *const symbols[] = { "cg.x", "cg.y", "cg.z" };
  const SyQuantity *at[3];

  for (int i = 0; i < 3; i++)
    {
      at[i] = find_quantity (die, symbols[i]);
      if (at[i] == NULL)
        return;
    }
  for (int i = 0; i < 3; i++)
    {
      g_autofree char *text = print_place (at[i]->value, sy_form_get_units (die));

      put (taken, g_strdup_printf ("cg[%d]", i), text);
    }
}

gboolean
sy_take_die (SyForm *plan, const SyRegisterItem *item, GError **error)
{
  static const char *const lists[] = { "points", "halves", "ties" };
  g_autoptr (SyForm) die = read_die (plan, item, error);
  Taken taken;

  if (die == NULL)
    return FALSE;
  taken_init (&taken);
  put (&taken, g_strdup ("die"), item->name);
  take_mass (&taken, die);
  take_centre (&taken, die);
  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    copy_below (&taken, plan, die, lists[i]);
  give (&taken, plan);
  return TRUE;
}

/* Topics: places for gear */

void
sy_take_place_free (SyTakePlace *place)
{
  if (place == NULL)
    return;
  g_free (place->path);
  g_free (place->leg);
  g_free (place->element);
  g_free (place->kind);
  g_free (place);
}

static const char *
get_member (SyForm *form, const char *path, const char *member)
{
  g_autofree char *whole = g_strdup_printf ("%s.%s", path, member);

  return sy_form_get (form, whole);
}

/* @at: in the list; behind its end for a new one. */
static SyTakePlace *
new_place (SyForm *plan, const char *list, const char *leg, guint at)
{
  SyTakePlace *place = g_new0 (SyTakePlace, 1);

  place->path = g_strdup_printf ("%s[%u]", list, at);
  place->leg = g_strdup (leg);
  place->element = g_strdup (get_member (plan, place->path, "label"));
  place->kind = g_strdup (get_member (plan, place->path, "kind"));
  return place;
}

static char *
dup_leg_list (guint leg)
{
  return g_strdup_printf ("legs[%u].elements", leg);
}

static const char *
get_leg_point (SyForm *plan, guint leg)
{
  g_autofree char *path = g_strdup_printf ("legs[%u].point[0]", leg);

  return sy_form_get (plan, path);
}

static int
gear_kind (const char *id)
{
  for (int i = 0; i < SY_N_GEAR_KINDS; i++)
    if (strcmp (sy_gear_kind_choices[i].id, id) == 0)
      return i;
  return -1;
}

static gboolean
stands_in (const char *kind, const char *other)
{
  int one = gear_kind (kind), two = gear_kind (other);

  return one >= 0 && two >= 0 && sy_gear_kinds_stand_in ((SyGearKind) one, (SyGearKind) two);
}

static void
add_places (GPtrArray *places, SyForm *plan, const char *list, const char *leg, const char *kind, gboolean is_new)
{
  guint n = sy_form_list_count (plan, list);

  if (is_new)
    {
      /* Elements are listed from the load up: what is screwed into the load does not come after them. */
      if (n == 0 || !stands_in (kind, "eyebolt"))
        g_ptr_array_add (places, new_place (plan, list, leg, n));
      return;
    }
  for (guint i = 0; i < n; i++)
    {
      SyTakePlace *place = new_place (plan, list, leg, i);

      if (stands_in (kind, place->kind))
        g_ptr_array_add (places, place);
      else
        sy_take_place_free (place);
    }
}

static gboolean
has_choice (SyForm *plan, const char *path, const char *id)
{
  const SyField *field = sy_form_find_field (plan, path);

  for (gsize i = 0; field != NULL && i < field->n_choices; i++)
    if (field->choices[i].id != NULL && strcmp (field->choices[i].id, id) == 0)
      return TRUE;
  return FALSE;
}

GPtrArray *
sy_take_places (SyForm *plan, const char *kind)
{
  GPtrArray *places = g_ptr_array_new_with_free_func ((GDestroyNotify) sy_take_place_free);
  gboolean above = has_choice (plan, "suspension[0].kind", kind);
  gboolean below = has_choice (plan, "legs[0].elements[0].kind", kind);

  for (int is_new = 0; is_new < 2; is_new++)
    {
      for (guint i = 0; below && i < sy_form_list_count (plan, "legs"); i++)
        {
          g_autofree char *list = dup_leg_list (i);

          add_places (places, plan, list, get_leg_point (plan, i), kind, is_new);
        }
      if (above)
        add_places (places, plan, "suspension", "", kind, is_new);
    }
  return places;
}

static SyTakePlace *
find_in_list (SyForm *plan, const char *list, const char *leg, const char *element)
{
  guint n = sy_form_list_count (plan, list);

  for (guint i = 0; *element != '\0' && i < n; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s[%u]", list, i);

      if (strcmp (get_member (plan, path, "label"), element) == 0)
        return new_place (plan, list, leg, i);
    }
  return *element == '\0' ? new_place (plan, list, leg, n) : NULL;
}

SyTakePlace *
sy_take_find_place (SyForm *plan, const char *leg, const char *element)
{
  if (*leg == '\0')
    return find_in_list (plan, "suspension", leg, element);
  for (guint i = 0; i < sy_form_list_count (plan, "legs"); i++)
    if (strcmp (get_leg_point (plan, i), leg) == 0)
      {
        g_autofree char *list = dup_leg_list (i);

        return find_in_list (plan, list, leg, element);
      }
  return NULL;
}

/* Topics: gear */

/* An item of gear on its way into a plan. */
typedef struct
{
  SyForm *form;             /* in units of its own      */
  const SyJson *document;
  const SyGearFacts *facts; /* NULL: cannot be assessed */
  const char *name;
} Gear;

/* "legs[0].elements" of "legs[0].elements[1]", and 1. */
static char *
dup_list (const char *path, guint *at)
{
  const char *bracket = strrchr (path, '[');

  *at = (guint) g_ascii_strtoull (bracket + 1, NULL, 10);
  return g_strndup (path, (gsize) (bracket - path));
}

static char *
dup_label (SyForm *plan, const Gear *gear, const char *path)
{
  g_autoptr (GPtrArray) others = g_ptr_array_new_with_free_func (g_free);
  guint at;
  g_autofree char *list = dup_list (path, &at);

  for (guint i = 0; i < sy_form_list_count (plan, list); i++)
    {
      g_autofree char *other = g_strdup_printf ("%s[%u]", list, i);

      if (i != at)
        g_ptr_array_add (others, g_strdup (get_member (plan, other, "label")));
    }
  g_ptr_array_add (others, NULL);
  return sy_gear_element_label (sy_form_get (gear->form, "identity"), gear->name, get_member (plan, path, "label"),
                                (const char *const *) others->pdata);
}

static void
take_element (Taken *taken, SyForm *plan, const Gear *gear, const char *path)
{
  gboolean in_leg = !g_str_has_prefix (path, "suspension[");
  g_autofree char *label = dup_label (plan, gear, path);
  g_autofree char *kept = g_strconcat (".", sy_gear_element_kept (in_leg), NULL);
  g_autoptr (GArray) members = sy_gear_element (gear->document, gear->facts, sy_form_get_units (gear->form), label, in_leg,
                                                sy_form_get_units (plan));

  clear_below (taken, plan, path, kept);
  for (guint i = 0; i < members->len; i++)
    {
      const SyGearMember *member = &g_array_index (members, SyGearMember, i);

      put (taken, g_strdup_printf ("%s.%s", path, member->name), member->text);
    }
}

/* "legs[0]" of "legs[0].elements[1]"; the leg is of what its sling is of. */
static void
take_material (Taken *taken, const Gear *gear, const char *path)
{
  const char *dot = strchr (path, '.');
  const char *material = sy_form_get (gear->form, "material");

  if (dot != NULL && *material != '\0')
    put (taken, g_strdup_printf ("%.*s.material", (int) (dot - path), path), material);
}

static void
take_everything (SyForm *plan, const Gear *gear, const SyTakePlace *place)
{
  gboolean is_sling = strcmp (sy_form_get (gear->form, "kind"), "sling") == 0;
  gboolean everywhere = is_sling && strcmp (sy_form_get (gear->form, "rated_as"), "assembly") == 0
                        && strcmp (sy_form_get (gear->form, "legs"), "1") != 0;
  g_autoptr (GPtrArray) others = sy_take_places (plan, "sling");
  g_autofree char *last = NULL;
  Taken taken;
  guint at;

  taken_init (&taken);
  take_element (&taken, plan, gear, place->path);
  if (is_sling)
    take_material (&taken, gear, place->path);
  for (guint i = 0; everywhere && i < others->len; i++)
    {
      const SyTakePlace *other = others->pdata[i];
      g_autofree char *list = dup_list (other->path, &at);

      /* In one place of a leg. */
      if (*other->kind == '\0' || g_str_has_prefix (place->path, list) || g_strcmp0 (list, last) == 0)
        continue;
      take_element (&taken, plan, gear, other->path);
      take_material (&taken, gear, other->path);
      g_free (last);
      last = g_steal_pointer (&list);
    }
  give (&taken, plan);
}

gboolean
sy_take_gear (SyForm *plan, const SyRegisterItem *item, const SyTakePlace *place, GError **error)
{
  g_autoptr (SyForm) form = sy_form_new (sy_form_get_desk (plan), "gear", sy_form_get_units (plan));
  g_autoptr (SyMemory) memory = sy_memory_new ();
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  Gear gear = { .form = form, .name = item->name };
  const SyAssessment *assessment;

  if (!sy_form_load_document (form, item->facts, error))
    return FALSE;
  assessment = sy_form_get_assessment (form);
  gear.facts = assessment != NULL ? assessment->facts.values : NULL;
  gear.document = sy_json_scan (item->facts, strlen (item->facts), SY_JSON_DOCUMENT_MAX, memory, problems);
  take_everything (plan, &gear, place);
  return TRUE;
}
