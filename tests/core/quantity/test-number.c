/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <locale.h>
#include <stdlib.h>
#include <unistd.h>

#include "sy-number.h"

#define N_RANDOM 1000000
#define N_SHORTEST 20000

/* SplitMix64: the same patterns on every machine. */
static uint64_t
next_bits (uint64_t *state)
{
  uint64_t z = *state += 0x9E3779B97F4A7C15u;

  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
  return z ^ (z >> 31);
}

static double
random_finite (uint64_t *state)
{
  double value;

  do
    {
      uint64_t bits = next_bits (state);

      memcpy (&value, &bits, sizeof value);
    }
  while (!isfinite (value));
  return value;
}

/* Facts are short decimals more often than random bits. */
static double
random_short (uint64_t *state)
{
  static const double scale[] = { 1, 10, 100, 1000, 1e4, 1e6, 1e9 };

  return (double) (int64_t) (next_bits (state) % 2000000) / scale[next_bits (state) % 7] - 100;
}

static void
check_round_trip (double value)
{
  char text[SY_NUMBER_TEXT_MAX];
  size_t length = sy_number_print (value, text), used = 0;
  double back = NAN, json = NAN, expected = value == 0 ? 0.0 : value;

  assert_int_equal (length, strlen (text));
  assert_null (strchr (text, ','));
  assert_int_equal (sy_number_parse (text, length, &back, &used), SY_TEXT_OK);
  assert_int_equal (used, length);
  assert_same_bits (back, expected);
  assert_true (sy_number_read_json (text, length, &json));
  assert_same_bits (json, expected);
}

static void
test_every_number_reads_back_to_the_same_bits (void **state)
{
  uint64_t random = 1;

  (void) state;
  for (int i = 0; i < N_RANDOM / 2; i++)
    {
      check_round_trip (random_finite (&random));
      check_round_trip (random_short (&random));
    }
  check_round_trip (0.0);
  check_round_trip (-0.0);
  check_round_trip (5e-324);
  check_round_trip (2.2250738585072009e-308);
  check_round_trip (1.7976931348623157e308);
  check_round_trip (0.1 + 0.2);
}

/* The C library is the judge of what the text says, not our own reader. */
static void
test_the_text_is_a_json_number_and_the_c_library_reads_the_same (void **state)
{
  uint64_t random = 2;

  (void) state;
  for (int i = 0; i < N_SHORTEST; i++)
    {
      double value = i % 2 ? random_finite (&random) : random_short (&random);
      char text[SY_NUMBER_TEXT_MAX], *end;

      sy_number_print (value, text);
      assert_same_bits (strtod (text, &end), value == 0 ? 0.0 : value);
      assert_int_equal (*end, '\0');
      for (const char *c = text; *c; c++)
        assert_non_null (strchr ("0123456789.-+eE", *c));

      const char *digits = text + (text[0] == '-');

      assert_true (digits[0] >= '0' && digits[0] <= '9');
      assert_false (digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9');
      assert_true (text[strlen (text) - 1] >= '0' && text[strlen (text) - 1] <= '9');
    }
}

static int
significant_digits (const char *text)
{
  int digits = 0, trailing = 0;

  for (const char *c = text; *c && *c != 'e' && *c != 'E'; c++)
    if (*c >= '0' && *c <= '9' && (digits > 0 || *c != '0'))
      {
        digits++;
        trailing = *c == '0' ? trailing + 1 : 0;
      }
  return digits - trailing;
}

static void
test_it_prints_the_shortest_of_15_16_and_17_digits (void **state)
{
  uint64_t random = 3;

  (void) state;
  for (int i = 0; i < N_SHORTEST; i++)
    {
      double value = i % 2 ? random_finite (&random) : random_short (&random);
      char text[SY_NUMBER_TEXT_MAX], wanted[64];

      for (int digits = 15; digits <= 17; digits++)
        {
          snprintf (wanted, sizeof wanted, "%.*g", digits, value);
          if (strtod (wanted, NULL) == value)
            break;
        }
      sy_number_print (value, text);
      if (significant_digits (text) > significant_digits (wanted))
        fail_msg ("%s where %s is enough", text, wanted);
    }
}

static void
test_zero_has_no_sign (void **state)
{
  char text[SY_NUMBER_TEXT_MAX];

  (void) state;
  sy_number_print (-0.0, text);
  assert_string_equal (text, "0");
  sy_number_print (0.0, text);
  assert_string_equal (text, "0");
}

typedef struct
{
  const char *text;
  SyTextStatus status;
  double value;
  size_t used;
} Reading;

static const Reading readings[] = {
  { "12", SY_TEXT_OK, 12, 2 },
  { "12.5", SY_TEXT_OK, 12.5, 4 },
  { "12,5", SY_TEXT_OK, 12.5, 4 },
  { "12,50", SY_TEXT_OK, 12.5, 5 },
  { "12,5000", SY_TEXT_OK, 12.5, 7 },
  { "1.250", SY_TEXT_OK, 1.25, 5 },
  { "-3.5", SY_TEXT_OK, -3.5, 4 },
  { "2.5e3", SY_TEXT_OK, 2500, 5 },
  { "2.5E-3", SY_TEXT_OK, 0.0025, 6 },
  { "  7", SY_TEXT_OK, 7, 3 },
  { "44 lb", SY_TEXT_OK, 44, 2 },
  { "44lb", SY_TEXT_OK, 44, 2 },
  { "1,250", SY_TEXT_AMBIGUOUS, 0, 0 },
  { "0,125", SY_TEXT_AMBIGUOUS, 0, 0 },
  { "-1,250", SY_TEXT_AMBIGUOUS, 0, 0 },
  { "1,250 kg", SY_TEXT_AMBIGUOUS, 0, 0 },
  { "", SY_TEXT_EMPTY, 0, 0 },
  { "   ", SY_TEXT_EMPTY, 0, 0 },
  { "kg", SY_TEXT_NOT_NUMBER, 0, 0 },
  { "inf", SY_TEXT_NOT_NUMBER, 0, 0 },
  { "nan", SY_TEXT_NOT_NUMBER, 0, 0 },
  { "-", SY_TEXT_NOT_NUMBER, 0, 0 },
  { ",", SY_TEXT_NOT_NUMBER, 0, 0 },
  { "e5", SY_TEXT_NOT_NUMBER, 0, 0 },
  { "1e999", SY_TEXT_TOO_LARGE, 0, 0 },
  { "-1e999", SY_TEXT_TOO_LARGE, 0, 0 },
  /* Correct rounding: half-way cases and numbers that other readers got wrong. */
  { "9007199254740993", SY_TEXT_OK, 9007199254740992.0, 16 },
  { "9007199254740995", SY_TEXT_OK, 9007199254740996.0, 16 },
  { "2.2250738585072011e-308", SY_TEXT_OK, 2.2250738585072011e-308, 23 },
  { "1.7976931348623158e308", SY_TEXT_OK, 1.7976931348623157e308, 22 },
  { "0.1000000000000000055511151231257827021181583404541015625", SY_TEXT_OK, 0.1, 57 },
};

static void
check_readings (void)
{
  for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++)
    {
      const Reading *r = &readings[i];
      double value = -777;
      size_t used = 0;
      SyTextStatus status = sy_number_parse (r->text, strlen (r->text), &value, &used);

      if (status != r->status)
        fail_msg ("\"%s\": status %d, not %d", r->text, (int) status, (int) r->status);
      assert_same_bits (value, status == SY_TEXT_OK ? r->value : -777);
      if (status == SY_TEXT_OK)
        assert_int_equal (used, r->used);
    }
}

static void
test_text_is_read_or_refused (void **state)
{
  (void) state;
  check_readings ();
}

static void
test_only_the_given_length_is_read (void **state)
{
  double value = 0;
  size_t used = 0;

  (void) state;
  assert_int_equal (sy_number_parse ("12345", 3, &value, &used), SY_TEXT_OK);
  assert_same_bits (value, 123.0);
  assert_int_equal (sy_number_parse ("1,2505", 5, &value, &used), SY_TEXT_AMBIGUOUS);
  assert_int_equal (sy_number_parse ("1e9", 0, &value, &used), SY_TEXT_EMPTY);
  assert_true (sy_number_read_json ("1.5e10", 3, &value));
  assert_same_bits (value, 1.5);
  assert_false (sy_number_read_json ("1e400", 5, &value));
}

typedef struct
{
  const char *text;
  SyKind kind;
  SyUnits units;
  SyTextStatus status;
  double value;
} Measure;

static const Measure measures[] = {
  { "44 lb", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_OK, 44 * SY_KG_PER_LB },
  { "44 lb", SY_KIND_MASS, SY_UNITS_US, SY_TEXT_OK, 44 },
  { "44lb", SY_KIND_MASS, SY_UNITS_US, SY_TEXT_OK, 44 },
  { "20 kg", SY_KIND_MASS, SY_UNITS_US, SY_TEXT_OK, 20 / SY_KG_PER_LB },
  { "500 g", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_OK, 0.5 },
  { "16 in", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 16 * SY_CM_PER_IN },
  { "12,5 cm", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 12.5 },
  { "  63 cm  ", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 63 },
  /* On a published limit: no last bit may push it over. */
  { "630 mm", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 63 },
  { "0.63 m", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 63 },
  { "1.75 m", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_OK, 175 },
  { "63.5 cm", SY_KIND_REACH, SY_UNITS_US, SY_TEXT_OK, 25 },
  { "635 mm", SY_KIND_REACH, SY_UNITS_US, SY_TEXT_OK, 25 },
  { "177.8 cm", SY_KIND_REACH, SY_UNITS_US, SY_TEXT_OK, 70 },
  { "25.4 cm", SY_KIND_REACH, SY_UNITS_US, SY_TEXT_OK, 10 },
  { "45 °", SY_KIND_ANGLE, SY_UNITS_METRIC, SY_TEXT_OK, 45 },
  { "45 deg", SY_KIND_ANGLE, SY_UNITS_US, SY_TEXT_OK, 45 },
  { "2 h", SY_KIND_MINUTES, SY_UNITS_METRIC, SY_TEXT_OK, 120 },
  { "4 ft", SY_KIND_LENGTH, SY_UNITS_METRIC, SY_TEXT_OK, 1219.2 },
  { "2 kN", SY_KIND_FORCE, SY_UNITS_METRIC, SY_TEXT_OK, 2 },
  { "2 kN", SY_KIND_HAND_FORCE, SY_UNITS_METRIC, SY_TEXT_OK, 2000 },
  { "0.2836 lb/in3", SY_KIND_DENSITY, SY_UNITS_US, SY_TEXT_OK, 0.2836 },
  { "212 degF", SY_KIND_TEMPERATURE, SY_UNITS_METRIC, SY_TEXT_OK, 100 },
  { "-40 \xc2\xb0" "C", SY_KIND_TEMPERATURE, SY_UNITS_US, SY_TEXT_OK, -40 },
  { "100 %", SY_KIND_SLOPE, SY_UNITS_METRIC, SY_TEXT_OK, 45 },
  { "44 cm", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_WRONG_UNIT, 0 },
  { "44 kg", SY_KIND_REACH, SY_UNITS_METRIC, SY_TEXT_WRONG_UNIT, 0 },
  { "44 lb lb", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_WRONG_UNIT, 0 },
  { "44", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_NO_UNIT, 0 },
  { "44 ", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_NO_UNIT, 0 },
  { "", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_EMPTY, 0 },
  { "kg", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_NOT_NUMBER, 0 },
  { "1,250 kg", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_AMBIGUOUS, 0 },
  { "1e999 kg", SY_KIND_MASS, SY_UNITS_METRIC, SY_TEXT_TOO_LARGE, 0 },
};

static void
check_measures (void)
{
  for (size_t i = 0; i < sizeof measures / sizeof measures[0]; i++)
    {
      const Measure *m = &measures[i];
      double value = -777;
      bool had_unit = false;
      SyTextStatus status
        = sy_quantity_parse (m->text, strlen (m->text), m->kind, m->units, true, &value, &had_unit);

      if (status != m->status)
        fail_msg ("\"%s\": status %d, not %d", m->text, (int) status, (int) m->status);
      if (status == SY_TEXT_OK)
        {
          assert_same_bits (value, m->value);
          assert_true (had_unit);
        }
      else
        assert_same_bits (value, -777);
    }
}

static void
test_measures_are_read_in_the_unit_of_the_document (void **state)
{
  double value = 0;
  bool had_unit = true;

  (void) state;
  check_measures ();
  assert_int_equal (
    sy_quantity_parse ("44", 2, SY_KIND_MASS, SY_UNITS_US, false, &value, &had_unit), SY_TEXT_OK);
  assert_same_bits (value, 44.0);
  assert_false (had_unit);
  assert_int_equal (
    sy_quantity_parse ("44 cm", 5, SY_KIND_MASS, SY_UNITS_US, false, &value, NULL),
    SY_TEXT_WRONG_UNIT);
}

/* Refused; whether as no number or as a wrong unit is not settled. */
static void
test_what_is_no_plain_decimal_is_refused (void **state)
{
  static const char *const texts[]
    = { "0x20 cm", "1.2.3 cm", "1,2,3 cm", "1e cm", "1.5,5 cm", "--5 cm", "5- cm", "infinity cm" };
  double value = -777;

  (void) state;
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    if (sy_quantity_parse (texts[i], strlen (texts[i]), SY_KIND_REACH, SY_UNITS_METRIC, true, &value,
                           NULL)
        == SY_TEXT_OK)
      fail_msg ("\"%s\" was read as %g", texts[i], value);
  assert_same_bits (value, -777);
}

static void
test_units_are_named_and_found (void **state)
{
  (void) state;
  for (int kind = 0; kind < SY_N_KINDS; kind++)
    for (int units = 0; units < SY_N_UNITS; units++)
      {
        const char *name = sy_unit_name ((SyKind) kind, (SyUnits) units);
        double metric = 0, own = 0;

        assert_non_null (name);
        if (strcmp (name, "1") == 0 || strcmp (name, "date") == 0)
          continue;
        if (!sy_unit_read ((SyKind) kind, SY_UNITS_METRIC, 3, name, strlen (name), &metric))
          fail_msg ("kind %d does not know its own unit \"%s\"", kind, name);
        assert_close (sy_unit_convert ((SyKind) kind, 3, (SyUnits) units, SY_UNITS_METRIC), metric, 0, 1e-15);
        assert_true (sy_unit_read ((SyKind) kind, (SyUnits) units, 3, name, strlen (name), &own));
        assert_same_bits (own, 3);
        assert_true (strlen (sy_unit_list ((SyKind) kind)) > 0);
      }
  assert_same_bits (sy_unit_convert (SY_KIND_REACH, 10, SY_UNITS_US, SY_UNITS_METRIC), 25.4);
  assert_same_bits (sy_unit_convert (SY_KIND_MASS, 20, SY_UNITS_METRIC, SY_UNITS_US),
                    20 / SY_KG_PER_LB);
  assert_same_bits (sy_unit_convert (SY_KIND_ANGLE, 62.5, SY_UNITS_US, SY_UNITS_METRIC), 62.5);
}

/* A locale with a decimal comma, made here so that the test does not hang on what is installed. */
static const char comma_source[] = "comment_char %\nescape_char /\nLC_NUMERIC\n"
                                   "decimal_point \"<U002C>\"\nthousands_sep \"<U002E>\"\n"
                                   "grouping 3;3\nEND LC_NUMERIC\n";
static const char comma_characters[]
  = "<code_set_name> ANSI_X3.4-1968\n<comment_char> %\n<escape_char> /\nCHARMAP\n"
    "<U0000>..<U007F> /x00 ASCII\nEND CHARMAP\n";

static void
write_file (const char *folder, const char *name, const char *text)
{
  char path[256];

  snprintf (path, sizeof path, "%s/%s", folder, name);

  FILE *file = fopen (path, "w");

  assert_non_null (file);
  assert_true (fputs (text, file) >= 0);
  assert_int_equal (fclose (file), 0);
}

static void
test_a_locale_with_a_decimal_comma_changes_nothing (void **state)
{
  char folder[] = "/tmp/steelyard-locale-XXXXXX", command[512], text[32];
  uint64_t random = 4;

  (void) state;
  assert_non_null (mkdtemp (folder));
  write_file (folder, "comma.src", comma_source);
  write_file (folder, "characters", comma_characters);
  /* localedef warns of the categories that this locale lacks and ends with 1; setlocale is the judge. */
  snprintf (command, sizeof command,
            "cd %s && localedef --quiet -c -f ./characters -i comma.src ./comma >/dev/null 2>&1",
            folder);
  (void) !system (command);
  setenv ("LOCPATH", folder, 1);

  const char *set = setlocale (LC_NUMERIC, "comma");

  snprintf (text, sizeof text, "%.1f", 1.5);
  snprintf (command, sizeof command, "rm -r %s", folder);
  (void) !system (command);
  assert_non_null (set);
  assert_string_equal (text, "1,5");

  for (int i = 0; i < N_SHORTEST; i++)
    {
      check_round_trip (random_finite (&random));
      check_round_trip (random_short (&random));
    }
  check_readings ();
  check_measures ();
  setlocale (LC_NUMERIC, "C");
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_every_number_reads_back_to_the_same_bits),
    cmocka_unit_test (test_the_text_is_a_json_number_and_the_c_library_reads_the_same),
    cmocka_unit_test (test_it_prints_the_shortest_of_15_16_and_17_digits),
    cmocka_unit_test (test_zero_has_no_sign),
    cmocka_unit_test (test_text_is_read_or_refused),
    cmocka_unit_test (test_only_the_given_length_is_read),
    cmocka_unit_test (test_measures_are_read_in_the_unit_of_the_document),
    cmocka_unit_test (test_what_is_no_plain_decimal_is_refused),
    cmocka_unit_test (test_units_are_named_and_found),
    cmocka_unit_test (test_a_locale_with_a_decimal_comma_changes_nothing),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
