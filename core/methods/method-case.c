/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <string.h>

#include "case-sums.h"
#include "changeover-people.h"

/* Quantities */

enum { WINNER, N_OPTIONS, ANNUITY, DISCOUNT, YEARS, CHANGES, MACHINE, LABOUR, NOW_STOPPED, NOW_PERSON, NOW_HEAVIEST,
       NOW_INDEX, NOW_BACK, NOW_PEOPLE, N_SYMBOLS };

#define GIVEN "as given"
#define FINANCE "standard finance"
#define OWN "by its own method"
static const SySymbol symbols[N_SYMBOLS] = {
  [WINNER] = { "winner", SY_KIND_COUNT, N_ ("Option that wins, by number"), "best net present value of those assessed" },
  [N_OPTIONS] = { "options", SY_KIND_COUNT, N_ ("Options"), GIVEN },
  [ANNUITY] = { "annuity", SY_KIND_RATIO, N_ ("What 1 a year is worth now"), FINANCE },
  [DISCOUNT] = { "discount_rate", SY_KIND_PERCENT, N_ ("Discount rate a year"), GIVEN },
  [YEARS] = { "years", SY_KIND_COUNT, N_ ("Years counted"), GIVEN },
  [CHANGES] = { "changes_per_year", SY_KIND_COUNT, N_ ("Times a year"), "as given, or of the die change as it is" },
  [MACHINE] = { "machine_rate", SY_KIND_MONEY, N_ ("Machine, an hour"), GIVEN },
  [LABOUR] = { "labour_rate", SY_KIND_MONEY, N_ ("Labour, an hour"), GIVEN },
  [NOW_STOPPED] = { "as_is.stopped", SY_KIND_MINUTES, N_ ("As it is: machine stands, each time"), GIVEN },
  [NOW_PERSON] = { "as_is.person", SY_KIND_MINUTES, N_ ("As it is: minutes of all people, each time"), GIVEN },
  [NOW_HEAVIEST] = { "as_is.heaviest", SY_KIND_MASS, N_ ("As it is: heaviest mass by hand"), OWN },
  [NOW_INDEX] = { "as_is.index", SY_KIND_RATIO, N_ ("As it is: index"), OWN },
  [NOW_BACK] = { "as_is.back", SY_KIND_FORCE, N_ ("As it is: back compression, an estimate"), OWN },
  [NOW_PEOPLE] = { "as_is.people", SY_KIND_COUNT, N_ ("As it is: people"), OWN },
};

static const char *const named_symbols[] = {
  "option.*.capital", "option.*.training", "option.*.yearly", "option.*.stopped", "option.*.person", "option.*.person_hours",
  "option.*.saving",  "option.*.payback",  "option.*.npv",    "option.*.low",     "option.*.high",   "option.*.heaviest",
  "option.*.index",   "option.*.back",     "option.*.people",
};

typedef struct
{
  double heaviest, index, back, people;
} Handling;

/* What a part's own method says that stands side by side. */
static void
find_handling (const SyPartFacts *part, const SyContext *context, Handling *out)
{
  SyQuantity quantities[SY_QUANTITIES_MAX];
  SyContext inner = *context;
  SySink found;

  *out = (Handling) { NAN, NAN, NAN, NAN };
  if (part->method == NULL)
    return;
  inner.quantities_only = true;
  sy_sink_begin (&found, part->method, quantities, NULL);
  part->method->evaluate (part->facts, &inner, &found);
  const SyQuantity *change = sy_sink_quantity (&found, "heaviest_by_hand"), *people = sy_sink_quantity (&found, "people");
  const SyQuantity *back = sy_sink_quantity (&found, "back");
  const SyQuantity *index = found.index_symbol != NULL ? sy_sink_quantity (&found, found.index_symbol) : NULL;
  bool whole = strcmp (part->method->id, "changeover") == 0;
  if (whole)
    out->heaviest = change != NULL ? change->value : NAN;
  else if (sy_method_is_by_hand (part->method))
    out->heaviest = sy_part_heaviest (part, &inner, &found);
  out->index = index != NULL ? index->value : NAN;
  out->back = back != NULL ? back->value : NAN;
  out->people = whole && people != NULL ? people->value : fmax (sy_part_persons (part), 1);
}

static void
put (SySink *sink, size_t symbol, double value)
{
  if (!isnan (value))
    sy_sink_value (sink, symbol, value);
}

static void
name (SySink *sink, const char *label, const char *suffix, SyKind kind, const char *words, const char *source, double value)
{
  if (!isnan (value))
    sy_sink_named (sink, "option", label, suffix, kind, words, source, value);
}

static const char *const swing_names[SY_N_CASE_INPUTS][2] = {
  [SY_INPUT_CAPITAL] = { "swing.capital.low", "swing.capital.high" },
  [SY_INPUT_TRAINING] = { "swing.training.low", "swing.training.high" },
  [SY_INPUT_RUNNING] = { "swing.running.low", "swing.running.high" },
  [SY_INPUT_EXAMINATION] = { "swing.examination.low", "swing.examination.high" },
  [SY_INPUT_MAINTENANCE] = { "swing.maintenance.low", "swing.maintenance.high" },
  [SY_INPUT_STOPPED] = { "swing.stopped.low", "swing.stopped.high" },
  [SY_INPUT_PERSON] = { "swing.person.low", "swing.person.high" },
  [SY_INPUT_NOW_STOPPED] = { "swing.as_is_stopped.low", "swing.as_is_stopped.high" },
  [SY_INPUT_NOW_PERSON] = { "swing.as_is_person.low", "swing.as_is_person.high" },
  [SY_INPUT_CHANGES] = { "swing.changes.low", "swing.changes.high" },
  [SY_INPUT_MACHINE] = { "swing.machine.low", "swing.machine.high" },
  [SY_INPUT_LABOUR] = { "swing.labour.low", "swing.labour.high" },
};

static void
put_swings (const char *label, const SyCaseInputs *inputs, SySink *sink)
{
  for (int k = 0; k < SY_N_CASE_INPUTS; k++)
    {
      const double *at = inputs->at[k];
      SyCaseSums low, high;

      if (!(at[SY_CASE_LOW] < at[SY_CASE_HIGH]))
        continue;
      sy_case_swing (inputs, (SyCaseInput) k, SY_CASE_LOW, &low);
      sy_case_swing (inputs, (SyCaseInput) k, SY_CASE_HIGH, &high);
      name (sink, label, swing_names[k][0], SY_KIND_MONEY, N_ ("Net present value with that input low"), FINANCE, low.npv);
      name (sink, label, swing_names[k][1], SY_KIND_MONEY, N_ ("Net present value with that input high"), FINANCE, high.npv);
    }
}

static void
put_sums (const char *label, const SyCaseInputs *inputs, SySink *sink)
{
  SyCaseSums low, expected, high;

  sy_case_sums (inputs, SY_CASE_LOW, &low);
  sy_case_sums (inputs, SY_CASE_EXPECTED, &expected);
  sy_case_sums (inputs, SY_CASE_HIGH, &high);
  name (sink, label, "saving", SY_KIND_MONEY, N_ ("Saving a year"), FINANCE, expected.saving);
  name (sink, label, "saving.low", SY_KIND_MONEY, N_ ("Saving a year, the least"), FINANCE, low.saving);
  name (sink, label, "saving.high", SY_KIND_MONEY, N_ ("Saving a year, the most"), FINANCE, high.saving);
  name (sink, label, "payback", SY_KIND_RATIO, N_ ("Payback in years"), FINANCE, expected.payback);
  name (sink, label, "npv", SY_KIND_MONEY, N_ ("Net present value"), FINANCE, expected.npv);
  name (sink, label, "npv.low", SY_KIND_MONEY, N_ ("Net present value, the least"), FINANCE, low.npv);
  name (sink, label, "npv.high", SY_KIND_MONEY, N_ ("Net present value, the most"), FINANCE, high.npv);
}

static void
put_option (const SyCaseFacts *facts, size_t i, const SyContext *context, SySink *sink)
{
  const SyCaseOption *option = (const SyCaseOption *) facts->options.items + i;
  SyCaseInputs inputs;
  Handling handling;

  sy_case_inputs (facts, i, context, &inputs);
  const double (*at)[3] = (const double (*)[3]) inputs.at;
  const int e = SY_CASE_EXPECTED;
  find_handling (&option->part, context, &handling);
  name (sink, option->label, "capital", SY_KIND_MONEY, N_ ("Price"), GIVEN, at[SY_INPUT_CAPITAL][e]);
  name (sink, option->label, "training", SY_KIND_MONEY, N_ ("Training, once"), GIVEN, at[SY_INPUT_TRAINING][e]);
  name (sink, option->label, "yearly", SY_KIND_MONEY, N_ ("Running, examination and maintenance, a year"), GIVEN,
        at[SY_INPUT_RUNNING][e] + at[SY_INPUT_EXAMINATION][e] + at[SY_INPUT_MAINTENANCE][e]);
  name (sink, option->label, "stopped", SY_KIND_MINUTES, N_ ("Machine stands, each time"), GIVEN, at[SY_INPUT_STOPPED][e]);
  name (sink, option->label, "person", SY_KIND_MINUTES, N_ ("Minutes of all people, each time"), GIVEN,
        at[SY_INPUT_PERSON][e]);
  name (sink, option->label, "person_hours", SY_KIND_RATIO, N_ ("Person-hours a year"), "minutes \xc3\x97 times a year / 60",
        at[SY_INPUT_PERSON][e] * at[SY_INPUT_CHANGES][e] / 60);
  name (sink, option->label, "heaviest", SY_KIND_MASS, N_ ("Heaviest mass by hand"), OWN, handling.heaviest);
  name (sink, option->label, "index", SY_KIND_RATIO, N_ ("Index"), OWN, handling.index);
  name (sink, option->label, "back", SY_KIND_FORCE, N_ ("Back compression, an estimate"), OWN, handling.back);
  name (sink, option->label, "people", SY_KIND_COUNT, N_ ("People"), OWN, handling.people);
  put_sums (option->label, &inputs, sink);
  put_swings (option->label, &inputs, sink);
}

static void
evaluate (const void *data, const SyContext *context, SySink *sink)
{
  const SyCaseFacts *facts = data;
  SyContext own = *context;
  SyCaseInputs inputs;
  Handling now;

  own.today = sy_as_of (&facts->common, context);
  sy_case_inputs (facts, 0, &own, &inputs);
  find_handling (&facts->as_is.part, &own, &now);
  put (sink, N_OPTIONS, (double) facts->options.count);
  put (sink, ANNUITY, sy_case_annuity (&inputs));
  put (sink, DISCOUNT, inputs.discount);
  put (sink, YEARS, inputs.years);
  put (sink, CHANGES, inputs.at[SY_INPUT_CHANGES][SY_CASE_EXPECTED]);
  put (sink, MACHINE, inputs.at[SY_INPUT_MACHINE][SY_CASE_EXPECTED]);
  put (sink, LABOUR, inputs.at[SY_INPUT_LABOUR][SY_CASE_EXPECTED]);
  put (sink, NOW_STOPPED, inputs.at[SY_INPUT_NOW_STOPPED][SY_CASE_EXPECTED]);
  put (sink, NOW_PERSON, inputs.at[SY_INPUT_NOW_PERSON][SY_CASE_EXPECTED]);
  put (sink, NOW_HEAVIEST, now.heaviest);
  put (sink, NOW_INDEX, now.index);
  put (sink, NOW_BACK, now.back);
  put (sink, NOW_PEOPLE, now.people);
  for (size_t i = 0; i < facts->options.count; i++)
    put_option (facts, i, &own, sink);
  if (context->quantities_only)
    return;
  sy_as_of_say (&facts->common, context, sink);
  sy_sink_note (sink, "case-no-promise", SY_NOTE_CAUTION);
}

/* ---- Parts and which of them wins ---- */

/* As it is, then the facts and the aid of every option. */
static bool
part (const void *data, size_t i, SyPartFacts *out, const char **label)
{
  const SyCaseFacts *facts = data;
  const SyCaseOption *options = facts->options.items;

  if (i > 2 * facts->options.count)
    return false;
  *out = i == 0 ? facts->as_is.part : i % 2 == 1 ? options[(i - 1) / 2].part : options[(i - 1) / 2].aid;
  *label = i == 0 ? N_ ("As it is") : options[(i - 1) / 2].label;
  return true;
}

/* Why an option cannot win; NULL: it can. */
static const char *
why_not (const SyCaseOption *option, SyPartStands as_facts, SyPartStands as_aid, double npv)
{
  if (!sy_case_is_assessed (option))
    return "case-option-not-assessed";
  if (as_facts == SY_PART_REFUSED || as_aid == SY_PART_REFUSED)
    return "case-option-refused";
  if (as_facts == SY_PART_OPEN || as_aid == SY_PART_OPEN)
    return "case-option-open";
  return isnan (npv) ? "case-option-no-figures" : NULL;
}

/* What a record needs of the option that wins. */
static void
add_winner_notes (const SyCaseOption *option, SySink *sink)
{
  bool is_gear = option->kind < SY_AID_TWO_PERSON;

  if (is_gear && !sy_text_says (option->when_down))
    sy_sink_note_on (sink, "case-when-down-missing", SY_NOTE_MISSING, option->label);
  if (is_gear && (!option->examination_given || !option->maintenance_given || !option->running_given))
    sy_sink_note_on (sink, "case-yearly-missing", SY_NOTE_MISSING, option->label);
  if (option->capital.expected.value > 0 && !sy_text_says (option->quote_number))
    sy_sink_note_on (sink, "case-no-quote", SY_NOTE_CAUTION, option->label);
}

static void
choose (const void *data, const SyContext *context, const SyPartStands *stands, size_t n, bool *counts, SySink *sink)
{
  const SyCaseFacts *facts = data;
  const SyCaseOption *options = facts->options.items;
  const char *why[SY_CASE_OPTIONS_MAX] = { NULL };
  SyContext own = *context;
  double best = 0;
  int winner = -1;

  own.today = sy_as_of (&facts->common, context);
  for (size_t i = 0; i < facts->options.count && 2 * i + 2 < n; i++)
    {
      SyCaseInputs inputs;
      SyCaseSums sums;

      sy_case_inputs (facts, i, &own, &inputs);
      sy_case_sums (&inputs, SY_CASE_EXPECTED, &sums);
      why[i] = why_not (&options[i], stands[2 * i + 1], stands[2 * i + 2], sums.npv);
      if (why[i] == NULL && (winner < 0 || sums.npv > best))
        {
          winner = (int) i;
          best = sums.npv;
        }
    }
  for (size_t i = 0; i < facts->options.count; i++)
    if (why[i] != NULL)
      sy_sink_note_on (sink, why[i], winner < 0 ? SY_NOTE_NEEDED : SY_NOTE_CAUTION, options[i].label);
  if (winner < 0)
    {
      sy_sink_note (sink, "case-no-winner", SY_NOTE_NEEDED);
      return;
    }
  counts[2 * winner + 1] = counts[2 * winner + 2] = true;
  sy_sink_value (sink, WINNER, winner + 1);
  SyText text = { sink->governing_text, sizeof sink->governing_text, 0 };
  sy_text_add (&text, "option.");
  sy_text_add (&text, options[winner].label);
  sy_text_add (&text, ".npv");
  sink->governing = sink->governing_text;
  add_winner_notes (&options[winner], sink);
}

/* "(1 − 1 / 1.08^5) / 0.08 = 3.99271" */
static bool
formula (const SySink *sink, size_t symbol, SyUnits units, char *text)
{
  const SyQuantity *q = sink->quantities;
  SyText line = { text, SY_FORMULA_MAX, 0 };

  (void) units;
  if (symbol != ANNUITY || q[ANNUITY].state == SY_STATE_ABSENT)
    return false;
  double rate = q[DISCOUNT].value / 100;
  if (rate > 0)
    {
      sy_text_add (&line, "(1 \xe2\x88\x92 1 / ");
      sy_text_add_rounded (&line, 1 + rate, 9);
      sy_text_add (&line, "^");
      sy_text_add_number (&line, q[YEARS].value);
      sy_text_add (&line, ") / ");
      sy_text_add_rounded (&line, rate, 9);
      sy_text_add (&line, " = ");
    }
  sy_text_add_rounded (&line, q[ANNUITY].value, 6);
  return true;
}

static double
own_value (const SySink *sink, const SyNamed *named, size_t cut, const char *suffix)
{
  char symbol[SY_NAMED_TEXT_MAX];
  SyText text = { symbol, sizeof symbol, 0 };

  sy_text_add (&text, named->text);
  text.at = strlen (named->text) - cut;
  sy_text_add (&text, suffix);
  const SyQuantity *quantity = sy_sink_quantity (sink, symbol);
  return quantity != NULL ? quantity->value : NAN;
}

/* "9000 × 3.99271 − (20000 + 0) = 15934.39"; "(20000 + 0) / 9000 = 2.22" */
static bool
named_formula (const SySink *sink, const SyNamed *named, SyUnits units, char *text)
{
  SyText line = { text, SY_FORMULA_MAX, 0 };
  bool npv = sy_symbol_matches (named->text, "option.*.npv"), payback = sy_symbol_matches (named->text, "option.*.payback");
  size_t cut = npv ? strlen ("npv") : strlen ("payback");

  (void) units;
  if ((!npv && !payback) || named->quantity.state != SY_STATE_VALUE)
    return false;
  if (npv)
    {
      sy_text_add_rounded (&line, own_value (sink, named, cut, "saving"), 2);
      sy_text_add (&line, " \xc3\x97 ");
      sy_text_add_rounded (&line, sink->quantities[ANNUITY].value, 6);
      sy_text_add (&line, " \xe2\x88\x92 ");
    }
  sy_text_add (&line, "(");
  sy_text_add_rounded (&line, own_value (sink, named, cut, "capital"), 2);
  sy_text_add (&line, " + ");
  sy_text_add_rounded (&line, own_value (sink, named, cut, "training"), 2);
  sy_text_add (&line, ")");
  if (payback)
    {
      sy_text_add (&line, " / ");
      sy_text_add_rounded (&line, own_value (sink, named, cut, "saving"), 2);
    }
  sy_text_add (&line, " = ");
  sy_text_add_rounded (&line, named->quantity.value, 2);
  return true;
}

extern const SyMethod sy_method_case;
const SyMethod sy_method_case = {
  .id = "case",
  .title = N_ ("Case for a lift aid"),
  .source = "Every option by its own methods; pay-back and net present value: standard finance",
  .conditions_source = "common practice, no source",
  .edition = 1,
  .item_kind = "case",
  .dated = true,
  .good_title = N_ ("The best option is within its limits"),
  .good_meaning = N_ ("The option with the best net present value is assessed and within the limits of its own methods."),
  .improve_title = N_ ("The best option still wants improving"),
  .memory_caution = N_ ("Limits of the options may stand here from memory: open an option to see which."),
  .facts_size = sizeof (SyCaseFacts),
  .fields = sy_case_fields,
  .n_fields = SY_N_CASE_FIELDS,
  .symbols = symbols,
  .n_symbols = SY_LEN (symbols),
  .named_symbols = named_symbols,
  .n_named_symbols = SY_LEN (named_symbols),
  .check = sy_case_check,
  .evaluate = evaluate,
  .formula = formula,
  .named_formula = named_formula,
  .part = part,
  .choose = choose,
};
