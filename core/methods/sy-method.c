/* SPDX-License-Identifier: MIT */
#include "sy-method.h"

#include <math.h>
#include <string.h>

#define SY_METHOD(id) extern const SyMethod sy_method_##id;
#include "sy-methods.def"
#undef SY_METHOD

static const SyMethod *const registry[] = {
#define SY_METHOD(id) &sy_method_##id,
#include "sy-methods.def"
#undef SY_METHOD
};

const SyChoice sy_how_choices[SY_N_HOW] = {
  { "measured", N_ ("Measured"), N_ ("with a tape, a scale or a count") },
  { "drawing", N_ ("From a drawing or plate"), N_ ("read from paper, not checked on the floor") },
  { "estimated", N_ ("Estimated"), N_ ("by eye or by asking") },
};

static const SyChoice avoid_choices[] = {
  { "yes", N_ ("Yes, it can be avoided"), NULL },
  { "no", N_ ("No, it cannot be avoided now"), NULL },
};

static const SyField avoid_members[] = {
  { .name = "possible", .label = N_ ("Can this handling be avoided?"), .type = SY_MEMBER_CHOICE,
    .help = N_ ("Ask this before anything is measured."),
    .offset = offsetof (SyCommonFacts, avoid), .choices = avoid_choices,
    .n_choices = SY_LEN (avoid_choices), .required = true },
  { .name = "why", .label = N_ ("Why, or why not"), .type = SY_MEMBER_TEXT,
    .help = N_ ("What was considered, and what stands in the way."),
    .offset = offsetof (SyCommonFacts, avoid_why) },
};

const SyField sy_common_fields[] = {
  { .name = "avoid", .label = N_ ("Avoiding the handling"), .type = SY_MEMBER_GROUP, .offset = 0,
    .members = avoid_members, .n_members = SY_LEN (avoid_members), .group_size = sizeof (SyCommonFacts),
    .present_offset = offsetof (SyCommonFacts, avoid_given) },
  { .name = "place", .label = N_ ("Place"), .type = SY_MEMBER_TEXT,
    .help = N_ ("Where it is done: hall, machine, station."), .offset = offsetof (SyCommonFacts, place) },
  { .name = "measured_by", .label = N_ ("Measured by"), .type = SY_MEMBER_TEXT,
    .help = N_ ("Who held the tape."), .offset = offsetof (SyCommonFacts, measured_by) },
  { .name = "measured_on", .label = N_ ("Measured on"), .type = SY_MEMBER_DATE,
    .help = N_ ("Year-month-day."), .offset = offsetof (SyCommonFacts, measured_on) },
  { .name = "as_of", .label = N_ ("As of"), .type = SY_MEMBER_DATE,
    .help = N_ ("The day on which due dates are judged; today when left empty."),
    .offset = offsetof (SyCommonFacts, as_of) },
  { .name = "notes", .label = N_ ("Notes"), .type = SY_MEMBER_TEXT,
    .offset = offsetof (SyCommonFacts, notes) },
};
const size_t sy_n_common_fields = SY_LEN (sy_common_fields);

size_t
sy_method_count (void)
{
  return SY_LEN (registry);
}

const SyMethod *
sy_method_at (size_t i)
{
  return registry[i];
}

const SyMethod *
sy_method_find (const char *id)
{
  for (size_t i = 0; i < SY_LEN (registry); i++)
    if (strcmp (registry[i]->id, id) == 0)
      return registry[i];
  return NULL;
}

const SyField *
sy_method_field (const SyMethod *method, const char *path, size_t *offset)
{
  const SyField *field = sy_field_find (method->fields, method->n_fields, path, offset);

  return field ? field : sy_field_find (sy_common_fields, sy_n_common_fields, path, offset);
}

void
sy_method_clear (const SyMethod *method, void *facts)
{
  memset (facts, 0, method->facts_size);
  sy_fields_clear (sy_common_fields, sy_n_common_fields, facts);
  sy_fields_clear (method->fields, method->n_fields, facts);
}

void
sy_sink_begin (SySink *sink, const SyMethod *method, SyQuantity *quantities)
{
  sink->quantities = quantities;
  sink->n_quantities = method->n_symbols;
  for (size_t i = 0; i < method->n_symbols; i++)
    quantities[i] = (SyQuantity) { &method->symbols[i], 0, SY_STATE_ABSENT };
  sink->n_notes = 0;
  sink->governing_end = 0;
  sink->governing = "";
  sink->index_symbol = method->index_symbol;
}

void
sy_sink_value (SySink *sink, size_t symbol, double value)
{
  SyQuantity *quantity = &sink->quantities[symbol];

  quantity->value = value;
  quantity->state = isfinite (value) ? SY_STATE_VALUE : SY_STATE_UNBOUNDED;
}

SyNote *
sy_sink_note (SySink *sink, const char *id, SyNoteClass note_class)
{
  for (int i = 0; i < sink->n_notes; i++)
    if (strcmp (sink->notes[i].id, id) == 0)
      return NULL; /* said once is enough */
  if (sink->n_notes == SY_NOTES_MAX)
    return NULL;
  SyNote *note = &sink->notes[sink->n_notes++];
  note->id = id;
  note->note_class = note_class;
  note->n_args = 0;
  return note;
}

void
sy_note_arg (SyNote *note, SyKind kind, double value)
{
  if (note == NULL || note->n_args == SY_NOTE_ARGS)
    return;
  note->kinds[note->n_args] = kind;
  note->args[note->n_args++] = value;
}
