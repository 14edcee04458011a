/* SPDX-License-Identifier: MIT */
/* What stands on a card: short lines of what was assessed, so that whoever stands there stays within it. */
#include <math.h>
#include <string.h>

#include "sy-deed.h"
#include "sy-difference-words.h"
#include "sy-task-sheet-private.h"

/* What is said of a fact, a quantity, a caution or a method. */
typedef struct
{
  const char *path, *words;
  const char *also, *with_also; /* said in one where both were given; NULL: no second */
} Line;

/* ---- the main line ---- */

static const struct
{
  const char *method, *words;
} good[] = {
  { "lift", N_ ("By hand, one person") },
  { "lift-set", N_ ("By hand, one person each lift") },
  { "team-lift", N_ ("By hand, {persons} together") },
  { "carry", N_ ("By hand, only as given") },
  { "push", N_ ("By hand, only as given") },
  { "slide", N_ ("By hand, only as given") },
  { "rigged-lift", N_ ("Only as drawn, with this gear") },
  { "truck", N_ ("By fork truck, only as given") },
  { "cart", N_ ("On the cart, only as given") },
  { "changeover", N_ ("Only as planned") },
};

static double
quantity_of (const SyTaskSheet *sheet, const char *symbol)
{
  const SyQuantity *quantity = sy_findings_quantity (sheet->findings, symbol);

  return quantity == NULL || quantity->state != SY_STATE_VALUE ? NAN : quantity->value;
}

char *
sy_card_headline (const SyTaskSheet *sheet)
{
  const SyMethod *method = sheet->findings->method;
  const SyVerdict verdict = sy_sheet_verdict (sheet);
  const double persons = quantity_of (sheet, "persons");
  g_autofree char *number = isfinite (persons) ? sy_words_number (persons, 0) : g_strdup ("–");

  switch (verdict)
    {
    case SY_VERDICT_BY_HAND:
    case SY_VERDICT_WITHIN_CAPACITY:
      for (gsize i = 0; i < G_N_ELEMENTS (good); i++)
        if (strcmp (good[i].method, method->id) == 0)
          return sy_words_say (sheet->translate, good[i].words, "persons", number, NULL);
      break;
    case SY_VERDICT_INCOMPLETE:
    case SY_VERDICT_OUTSIDE:
      return g_strdup (sy_sheet_in (sheet, N_ ("Not assessed: ask first")));
    case SY_VERDICT_MECHANICAL:
      return g_strdup (sy_sheet_in (sheet, N_ ("Not by hand: use a lift aid")));
    case SY_VERDICT_IMPROVE:
    case SY_VERDICT_DO_NOT_LIFT:
      break;
    }
  return g_strdup (sy_sheet_in (sheet, sy_verdict_title_for (method, verdict)));
}

/* ---- mass and balance ---- */

/* Of several loads the heaviest, in the document's unit; NAN: none was given. */
static double
heaviest_of (const SyTaskSheet *sheet, GPtrArray *facts)
{
  double heaviest = NAN, value;
  bool had_unit;

  for (guint i = 0; i < facts->len; i++)
    {
      const SySheetFact *fact = facts->pdata[i];

      if (g_str_has_suffix (fact->path, "].load.heaviest")
          && sy_quantity_parse (fact->value, strlen (fact->value), SY_KIND_MASS, sheet->findings->units, false, &value,
                                &had_unit) == SY_TEXT_OK)
        heaviest = fmax (heaviest, value);
    }
  return heaviest;
}

char *
sy_card_mass (const SyTaskSheet *sheet, GPtrArray *facts)
{
  static const Line found[] = {
    { "mass_with_allowance", N_ ("{mass}, allowance in it") },
    { "wll", N_ ("Carries up to {mass}") },
    { "heaviest_by_hand", N_ ("Heaviest by hand: {mass}") },
    { "mass", "{mass}" },
    { "gross_mass", "{mass}" },
  };
  static const char *const given[] = { "load.heaviest", "mass", "gross_mass", "cart.gross_mass" };
  const SyUnits units = sheet->findings->units;
  const double heaviest = heaviest_of (sheet, facts);

  for (gsize i = 0; i < G_N_ELEMENTS (found); i++)
    if (isfinite (quantity_of (sheet, found[i].path)))
      {
        g_autofree char *mass = sy_words_quantity (quantity_of (sheet, found[i].path), SY_KIND_MASS, units);

        return sy_words_say (sheet->translate, found[i].words, "mass", mass, NULL);
      }
  if (isfinite (heaviest))
    {
      g_autofree char *mass = sy_words_quantity (heaviest, SY_KIND_MASS, units);

      return sy_words_say (sheet->translate, N_ ("Up to {mass}"), "mass", mass, NULL);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (given); i++)
    if (sy_sheet_fact (facts, given[i]) != NULL)
      return g_strdup (sy_sheet_fact (facts, given[i]));
  if (!sy_card_has_load (sheet))
    return g_strdup ("");
  return g_strdup (sy_sheet_in (sheet, N_ ("Mass not given")));
}

/* The label of something that carries: "legs[1].elements[0].label"; what hangs under the hook in its order. */
static gboolean
is_carrier (const char *path, gboolean at_the_hook)
{
  if (!g_str_has_suffix (path, "].label"))
    return FALSE;
  if (at_the_hook)
    return g_str_has_prefix (path, "suspension[");
  return g_str_has_prefix (path, "legs[") && strstr (path, ".elements[") != NULL;
}

char *
sy_card_gear (const SyTaskSheet *sheet, GPtrArray *facts)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (int at_the_hook = 1; at_the_hook >= 0; at_the_hook--)
    for (guint i = 0; i < facts->len; i++)
      {
        const SySheetFact *fact = facts->pdata[i];

        if (is_carrier (fact->path, at_the_hook))
          g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", fact->value);
      }
  if (names->len == 0)
    return g_strdup ("");
  return sy_words_say (sheet->translate, N_ ("Gear: {names}"), "names", names->str, NULL);
}

/* As told to those who do it; FALSE: they were not. */
static gboolean
add_told (GString *out, const SyTaskSheet *sheet)
{
  const SyEvent *event = sy_sheet_told (sheet);
  g_autofree char *words = NULL;
  SyDeed deed;

  if (event == NULL || !sy_deed_read (event, &deed))
    return FALSE;
  words = sy_words_say (sheet->translate, N_ ("Heaviest side: {side}"), "side", deed.heaviest_side, NULL);
  g_string_append (out, words);
  sy_deed_clear (&deed);
  return TRUE;
}

static const char *const axes[] = { "x", "y", "z" };

static void
add_coordinate (GString *out, const SyTaskSheet *sheet, int axis, double value)
{
  g_autofree char *number = sy_words_number (value, sheet->findings->units == SY_UNITS_US ? 2 : 0);

  g_string_append_printf (out, "%s%s %s", out->len > 0 ? ", " : "", axes[axis], number);
}

/* As worked out, or as given; FALSE: neither. */
static gboolean
add_place (GString *out, const SyTaskSheet *sheet)
{
  size_t offset = 0;
  const SyField *field = sy_method_field (sheet->findings->method, "cg", &offset);
  const SyVector *given = field != NULL && field->type == SY_MEMBER_VECTOR
                            ? (const SyVector *) (const void *) ((const char *) sheet->facts->values + offset)
                            : NULL;

  for (int i = 0; i < 3; i++)
    {
      g_autofree char *symbol = g_strdup_printf ("cg.%s", axes[i]);

      if (isfinite (quantity_of (sheet, symbol)))
        add_coordinate (out, sheet, i, quantity_of (sheet, symbol));
      else if (given != NULL && given->given && !(given->plan && i == 2))
        add_coordinate (out, sheet, i, given->at[i]);
    }
  if (out->len > 0)
    g_string_append_printf (out, " %s", sy_unit_name (SY_KIND_LENGTH, sheet->findings->units));
  return out->len > 0;
}

char *
sy_card_balance (const SyTaskSheet *sheet, GPtrArray *facts)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (!add_place (out, sheet) && sy_sheet_fact (facts, "cg_height") != NULL)
    g_string_append_printf (out, "%s %s", sy_sheet_fact (facts, "cg_height"), sy_sheet_in (sheet, N_ ("over the floor")));
  if (out->len > 0)
    return sy_words_say (sheet->translate, N_ ("Centre of gravity: {place}"), "place", out->str, NULL);
  if (!add_told (out, sheet))
    g_string_append (out, sy_sheet_in (sheet, N_ ("Centre of gravity: not given")));
  return g_string_free (g_steal_pointer (&out), FALSE);
}

/* ---- do and do not ---- */

static const Line do_facts[] = {
  { "origin.H", N_ ("Take it up no farther from you than {value}."), "origin.V",
    N_ ("Take it up {also} high, no farther from you than {value}.") },
  { "destination.H", N_ ("Put it down no farther from you than {value}."), "destination.V",
    N_ ("Put it down {also} high, no farther from you than {value}.") },
  { "handle_height", N_ ("Hands at {value}.") },
  { "height", N_ ("Carry it with the hands at {value}.") },
  { "push_height", N_ ("Push with the hands at {value}.") },
  { "hook.above", N_ ("Hook {value} over the points, as drawn.") },
  { "actual_centre", N_ ("Load centre {value} from the forks, or less.") },
  { "lift_height", N_ ("Lift no higher than {value}.") },
};
static const Line never_facts[] = {
  { "load.heaviest", N_ ("Nothing heavier than {value}.") },
  { "frequency", N_ ("No faster than {value}.") },
  { "distance", N_ ("No farther than {value}.") },
  { "slope", N_ ("No steeper way than {value}.") },
  { "incline", N_ ("No steeper than {value}.") },
};
/* By caution: what it says, as short as it can be said. */
static const Line do_notes[] = {
  { "trial-lift", N_ ("Trial lift: a hand's breadth, stop, look.") },
  { "tag-line", N_ ("Guide it with a tag line.") },
  { "die-free", N_ ("Clamps off, die free of the press.") },
  { "slugs-and-fluid-out", N_ ("Slugs, scrap and fluid out.") },
  { "gear-look-over", N_ ("Look it over before every use.") },
  { "truck-load-low", N_ ("Drive with the load low, mast back.") },
  { "cart-way-and-stops", N_ ("Way clear, wheel stops, decks level.") },
};
static const Line never_notes[] = {
  { "never-under-the-load", N_ ("Nobody under or beside the load.") },
};

static const Line do_methods[] = {
  { "lift", N_ ("Keep it close. Turn with your feet, not with your back.") },
  { "lift-set", N_ ("Keep it close. Turn with your feet, not with your back.") },
  { "team-lift", N_ ("One of you gives the word; all lift and lower on it.") },
  { "carry", N_ ("Walk where you can see the floor; put it down when it gets heavy.") },
  { "push", N_ ("Push rather than pull; look where it goes.") },
  { "slide", N_ ("Hands and feet clear of where it goes.") },
};
static const Line never_methods[] = {
  { "lift", N_ ("Not with one hand, not by jerks, not when something of it has changed.") },
  { "lift-set", N_ ("Not in another order or faster than it was planned.") },
  { "team-lift", N_ ("Not with fewer people.") },
  { "carry", N_ ("Not over stairs or slippery floor.") },
  { "push", N_ ("Not by one person where it starts only with a jerk.") },
  { "slide", N_ ("Do not stand where it would come down.") },
  { "rigged-lift", N_ ("No other gear, point or angle than drawn.") },
  { "truck", N_ ("Nobody on the forks or beside the mast.") },
  { "cart", N_ ("Nobody downhill of it.") },
};

static void
add_of_facts (const SyTaskSheet *sheet, GPtrArray *facts, const Line *lines, gsize n, GPtrArray *out)
{
  for (gsize i = 0; i < n; i++)
    {
      const char *value = sy_sheet_fact (facts, lines[i].path);

      const char *also = lines[i].also != NULL ? sy_sheet_fact (facts, lines[i].also) : NULL;

      if (value != NULL)
        g_ptr_array_add (out, sy_words_say (sheet->translate, also != NULL ? lines[i].with_also : lines[i].words, "value",
                                            value, "also", also != NULL ? also : "", NULL));
    }
}

static void
add_of_method (const SyTaskSheet *sheet, const Line *lines, gsize n, GPtrArray *out)
{
  for (gsize i = 0; i < n; i++)
    if (strcmp (lines[i].path, sheet->findings->method->id) == 0)
      g_ptr_array_add (out, g_strdup (sy_sheet_in (sheet, lines[i].words)));
}

static void
add_of_notes (const SyTaskSheet *sheet, const Line *lines, gsize n_lines, GPtrArray *out)
{
  const int n = sy_words_n_cautions (sheet->findings);

  for (int i = sy_words_n_foot (sheet->findings); i < n; i++)
    {
      const char *id;
      g_autofree char *words = sy_words_caution (sheet->findings, i, &id, sheet->translate);

      for (gsize k = 0; k < n_lines; k++)
        if (strcmp (lines[k].path, id) == 0)
          g_ptr_array_add (out, g_strdup (sy_sheet_in (sheet, lines[k].words)));
    }
}

/* Whom to ask before it is touched. */
static char *
ask_words (const SyTaskSheet *sheet)
{
  if (*sheet->event->by == '\0')
    return g_strdup (sy_sheet_in (sheet, N_ ("Leave it where it is. Ask a competent person.")));
  return sy_words_say (sheet->translate, N_ ("Leave it where it is. Ask {who}."), "who", sheet->event->by, NULL);
}

void
sy_card_lines (const SyTaskSheet *sheet, GPtrArray *facts, GPtrArray *done, GPtrArray *never)
{
  const gboolean may = sy_verdict_rank (sy_sheet_verdict (sheet)) <= sy_verdict_rank (SY_VERDICT_IMPROVE);

  /* What is not to be done at all has no way in which it is done. */
  if (may)
    {
      add_of_facts (sheet, facts, do_facts, G_N_ELEMENTS (do_facts), done);
      add_of_method (sheet, do_methods, G_N_ELEMENTS (do_methods), done);
      add_of_notes (sheet, do_notes, G_N_ELEMENTS (do_notes), done);
      add_of_facts (sheet, facts, never_facts, G_N_ELEMENTS (never_facts), never);
      add_of_method (sheet, never_methods, G_N_ELEMENTS (never_methods), never);
      add_of_notes (sheet, never_notes, G_N_ELEMENTS (never_notes), never);
    }
  else
    {
      g_ptr_array_add (done, ask_words (sheet));
      g_ptr_array_add (never, g_strdup (sy_sheet_in (sheet, N_ ("Do not try it out."))));
    }
}
