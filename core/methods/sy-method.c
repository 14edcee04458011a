/* SPDX-License-Identifier: MIT */
#include "sy-method.h"

#include <math.h>
#include <string.h>

#include "sy-date.h"

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

/* Bytes of a blank at the beginning of a text, 0 for none: ASCII, no-break space, the spaces of U+2000 to U+200B, U+3000,
   U+FEFF. */
static size_t
blank_length (const char *text)
{
  const unsigned char *at = (const unsigned char *) text;

  if (at[0] == ' ' || (at[0] >= '\t' && at[0] <= '\r'))
    return 1;
  if (at[0] == 0xc2 && at[1] == 0xa0)
    return 2;
  if ((at[0] == 0xe2 && at[1] == 0x80 && at[2] >= 0x80 && at[2] <= 0x8b) || (at[0] == 0xe3 && at[1] == 0x80 && at[2] == 0x80)
      || (at[0] == 0xef && at[1] == 0xbb && at[2] == 0xbf))
    return 3;
  return 0;
}

bool
sy_text_says (const char *text)
{
  if (text == NULL)
    return false;
  for (size_t blank; (blank = blank_length (text)) > 0; text += blank)
    ;
  return *text != '\0';
}

bool
sy_text_same (const char *a, const char *b)
{
  for (size_t blank; (blank = blank_length (a)) > 0; a += blank)
    ;
  for (size_t blank; (blank = blank_length (b)) > 0; b += blank)
    ;
  while (*a != '\0' && *a == *b)
    a++, b++;
  return !sy_text_says (a) && !sy_text_says (b);
}

void
sy_method_clear (const SyMethod *method, void *facts)
{
  memset (facts, 0, method->facts_size);
  sy_fields_clear (sy_common_fields, sy_n_common_fields, facts);
  sy_fields_clear (method->fields, method->n_fields, facts);
}

const SyChoice sy_basis_choices[SY_N_BASES] = {
  { "weighed", N_ ("Weighed"), N_ ("on a scale or a load cell") },
  { "plate", N_ ("From its plate"), N_ ("marked on it by who made it") },
  { "drawing", N_ ("From a drawing"), N_ ("worked out from its bodies") },
  { "estimated", N_ ("Estimated"), N_ ("by eye or by asking") },
};

const SyChoice sy_gear_kind_choices[SY_N_GEAR_KINDS] = {
  [SY_GEAR_SLING] = { "sling", N_ ("Sling"), NULL },
  [SY_GEAR_SHACKLE] = { "shackle", N_ ("Shackle"), NULL },
  [SY_GEAR_EYEBOLT] = { "eyebolt", N_ ("Eyebolt"), NULL },
  [SY_GEAR_HOIST_RING] = { "hoist-ring", N_ ("Swivel hoist ring"), NULL },
  [SY_GEAR_HOOK] = { "hook", N_ ("Hook"), NULL },
  [SY_GEAR_MASTER_LINK] = { "master-link", N_ ("Master link"), NULL },
  [SY_GEAR_HOIST] = { "hoist", N_ ("Hoist"), NULL },
  [SY_GEAR_CRANE] = { "crane", N_ ("Crane"), NULL },
  [SY_GEAR_BEAM] = { "beam", N_ ("Beam"), NULL },
  [SY_GEAR_TRUCK] = { "truck", N_ ("Fork truck"), NULL },
  [SY_GEAR_CART] = { "cart", N_ ("Cart"), NULL },
  [SY_GEAR_MANIPULATOR] = { "manipulator", N_ ("Manipulator"), NULL },
};

void
sy_sink_begin (SySink *sink, const SyMethod *method, SyQuantity *quantities, SyNamed *named)
{
  sink->quantities = quantities;
  sink->n_quantities = method->n_symbols;
  for (size_t i = 0; i < method->n_symbols; i++)
    quantities[i] = (SyQuantity) { &method->symbols[i], 0, SY_STATE_ABSENT };
  sink->named = named;
  sink->n_named = 0;
  sink->n_notes = 0;
  for (int i = 0; i < SY_N_NOTE_CLASSES; i++)
    sink->dropped[i] = false;
  sink->governing_end = 0;
  sink->governing = "";
  sink->governing_text[0] = '\0';
  sink->index_symbol = method->index_symbol;
}

void
sy_sink_value (SySink *sink, size_t symbol, double value)
{
  SyQuantity *quantity = &sink->quantities[symbol];

  quantity->value = value;
  quantity->state = isfinite (value) ? SY_STATE_VALUE : SY_STATE_UNBOUNDED;
}

/* Appends a part after a dot. */
static void
add_part (SyText *text, const char *part)
{
  if (*part == '\0')
    return;
  sy_text_add (text, text->at > 0 ? "." : "");
  sy_text_add (text, part);
}

const char *
sy_sink_named (SySink *sink, const char *prefix, const char *name, const char *suffix, SyKind kind, const char *label,
               const char *source, double value)
{
  if (sink->named == NULL || sink->n_named == SY_NAMED_MAX)
    return NULL;
  SyNamed *named = &sink->named[sink->n_named++];
  SyText text = { named->text, sizeof named->text, 0 };
  add_part (&text, prefix);
  add_part (&text, name);
  add_part (&text, suffix);
  named->symbol = (SySymbol) { named->text, kind, label, source };
  named->quantity = (SyQuantity) { &named->symbol, value, isfinite (value) ? SY_STATE_VALUE : SY_STATE_UNBOUNDED };
  return named->text;
}

/* How much a class weighs; what weighs less gives way when there is no room. */
static int
weight_of (SyNoteClass note_class)
{
  static const signed char weights[SY_N_NOTE_CLASSES] = {
    [SY_NOTE_CAUTION] = 0, [SY_NOTE_MISSING] = 1, [SY_NOTE_IMPROVE] = 2, [SY_NOTE_NEEDED] = 3,
    [SY_NOTE_EXCLUDED] = 4, [SY_NOTE_REFUSED] = 5,
  };

  return weights[note_class];
}

/* A place for a note of that class; NULL: none, and it is remembered that there was one. */
static SyNote *
take_room (SySink *sink, SyNoteClass note_class)
{
  int least = sink->n_notes - 1;

  if (sink->n_notes < SY_NOTES_MAX)
    return &sink->notes[sink->n_notes++];
  for (int i = sink->n_notes - 1; i >= 0; i--)
    if (weight_of (sink->notes[i].note_class) < weight_of (sink->notes[least].note_class))
      least = i;
  bool gives_way = weight_of (sink->notes[least].note_class) < weight_of (note_class);
  sink->dropped[gives_way ? sink->notes[least].note_class : note_class] = true;
  return gives_way ? &sink->notes[least] : NULL;
}

SyNote *
sy_sink_note_on (SySink *sink, const char *id, SyNoteClass note_class, const char *subject)
{
  size_t length = strnlen (subject, SY_NOTE_SUBJECT_MAX - 1);

  /* cut between characters, not within one */
  while (length > 0 && subject[length] != '\0' && ((unsigned char) subject[length] & 0xc0) == 0x80)
    length--;
  for (int i = 0; i < sink->n_notes; i++)
    if (strcmp (sink->notes[i].id, id) == 0 && strlen (sink->notes[i].subject) == length
        && memcmp (sink->notes[i].subject, subject, length) == 0)
      return NULL; /* said once is enough */
  SyNote *note = take_room (sink, note_class);
  if (note == NULL)
    return NULL;
  note->id = id;
  note->note_class = note_class;
  memcpy (note->subject, subject, length);
  note->subject[length] = '\0';
  note->n_args = 0;
  note->symbol = note->source = NULL;
  note->from_memory = false;
  return note;
}

SyNote *
sy_sink_note (SySink *sink, const char *id, SyNoteClass note_class)
{
  return sy_sink_note_on (sink, id, note_class, "");
}

void
sy_note_arg (SyNote *note, SyKind kind, double value)
{
  if (note == NULL || note->n_args == SY_NOTE_ARGS)
    return;
  note->kinds[note->n_args] = kind;
  note->args[note->n_args++] = value;
}

void
sy_note_source (SyNote *note, const char *symbol, const char *source, bool from_memory)
{
  if (note == NULL)
    return;
  note->symbol = symbol;
  note->source = source;
  note->from_memory = from_memory;
}

double
sy_as_of (const SyCommonFacts *common, const SyContext *context)
{
  double days;

  return common->as_of != NULL && sy_date_read (common->as_of, &days) ? days : context->today;
}

void
sy_as_of_say (const SyCommonFacts *common, const SyContext *context, SySink *sink)
{
  double day = sy_as_of (common, context);

  if (!isnan (context->today) && day != context->today)
    sy_note_arg (sy_sink_note (sink, "as-of-another-day", SY_NOTE_CAUTION), SY_KIND_DATE, day);
}

bool
sy_symbol_matches (const char *symbol, const char *pattern)
{
  const char *star = strchr (pattern, '*');
  size_t before = star ? (size_t) (star - pattern) : strlen (pattern);
  size_t after = star ? strlen (star + 1) : 0, length = strlen (symbol);

  if (star == NULL)
    return strcmp (symbol, pattern) == 0;
  return length > before + after && memcmp (symbol, pattern, before) == 0
         && memcmp (symbol + length - after, star + 1, after) == 0;
}

const SyQuantity *
sy_sink_quantity (const SySink *sink, const char *symbol)
{
  for (size_t i = 0; i < sink->n_quantities; i++)
    if (strcmp (sink->quantities[i].symbol->symbol, symbol) == 0)
      return sink->quantities[i].state == SY_STATE_ABSENT ? NULL : &sink->quantities[i];
  for (size_t i = 0; i < sink->n_named; i++)
    if (strcmp (sink->named[i].text, symbol) == 0)
      return &sink->named[i].quantity;
  return NULL;
}
