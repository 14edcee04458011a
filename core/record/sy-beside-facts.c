/* SPDX-License-Identifier: MIT */
/* What was typed on both sides, value by value in units that can be read beside each other. */
#include <math.h>
#include <string.h>

#include "sy-beside-private.h"
#include "sy-difference-words.h"

/* One side of a fact. */
typedef struct
{
  char *words;     /* as typed, with its unit        */
  double value;    /* in the common units; NAN: none */
  gboolean foreign; /* typed in another unit than the common one */
} Fact;

/* The same value in the common units; "" where it says nothing new. */
static char *
converted (const SyBesideWork *work, const Fact *fact, SyKind kind)
{
  const char *unit = sy_words_unit (kind, work->beside->units);
  g_autofree char *number = NULL;

  if (isnan (fact->value) || !fact->foreign)
    return g_strdup ("");
  number = sy_words_number (fact->value, 4);
  return g_strdup_printf (" = %s%s%s", number, *unit != '\0' ? " " : "", unit);
}

static Fact
read_fact (const SyBesideWork *work, int side, const SyDifference *difference, const SyField *field, const char *text)
{
  const SyBesideSide *of = &work->beside->sides[side];
  Fact fact = { .value = NAN };
  bool had_unit = false;
  double value;
  char *shown;

  if (text == NULL)
    return fact;
  shown = sy_difference_fact_words (of->method, difference, text, work->translate);
  if (field != NULL && field->type == SY_MEMBER_NUMBER
      && sy_quantity_parse (text, strlen (text), field->kind, of->units, false, &value, &had_unit) == SY_TEXT_OK)
    {
      char plain[SY_NUMBER_TEXT_MAX];
      g_autofree char *own = NULL;

      fact.value = sy_unit_convert (field->kind, value, of->units, work->beside->units);
      sy_number_print (fact.value, plain);
      own = g_strdup_printf ("%s %s", plain, sy_unit_name (field->kind, work->beside->units));
      fact.foreign = had_unit ? strcmp (own, text) != 0 : of->units != work->beside->units;
      /* a pace and an angle are the same in both */
      if (!had_unit && strcmp (sy_unit_name (field->kind, of->units), sy_unit_name (field->kind, work->beside->units)) == 0)
        fact.foreign = FALSE;
    }
  if (*difference->unit != '\0' && !had_unit)
    {
      g_autofree char *alone = shown;

      shown = g_strdup_printf ("%s %s", alone, difference->unit);
    }
  fact.words = shown;
  return fact;
}

static void
add_fact (SyBesideWork *work, const SyDifference *difference)
{
  const SyBesideSide *sides = work->beside->sides;
  const SyMethod *method = sides[1].method != NULL ? sides[1].method : sides[0].method;
  const SyField *field = sy_difference_field (method, difference->path);
  const SyKind kind = field != NULL ? field->kind : SY_KIND_RATIO;
  g_autofree char *name = sy_difference_name_words (difference, work->translate);
  Fact facts[2] = { read_fact (work, 0, difference, field, difference->before),
                    read_fact (work, 1, difference, field, difference->after) };
  SyBesideRow *row;
  char *texts[2];

  /* 18 kg and 39.68… lb: what was typed differs only by its unit */
  if (sides[0].units != sides[1].units && !isnan (facts[0].value)
      && fabs (facts[0].value - facts[1].value) <= 1e-9 * fabs (facts[0].value))
    {
      g_free (facts[0].words);
      g_free (facts[1].words);
      return;
    }
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *also = converted (work, &facts[i], kind);

      texts[i] = facts[i].words != NULL ? g_strconcat (facts[i].words, also, NULL) : NULL;
      g_free (facts[i].words);
    }
  row = sy_beside_add (work->beside->changed, difference->path, name, texts[0], texts[1]);
  row->values[0] = facts[0].value;
  row->values[1] = facts[1].value;
}

void
sy_beside_facts (SyBesideWork *work)
{
  g_autoptr (GPtrArray) differences = sy_difference_of (work->read[0].event, work->read[1].event);

  for (guint i = 0; i < differences->len; i++)
    if (((SyDifference *) differences->pdata[i])->part == SY_PART_FACTS)
      add_fact (work, differences->pdata[i]);
}
