/* SPDX-License-Identifier: MIT */
#include "register-help.h"

/* What a die, a rigged lift, a truck, a cart and a die change come to, in a sentence; and one line of their working. */

#define DIE "{\"method\":\"die-mass\",\"units\":\"metric\",\"weighed\":1582"
#define TRUCK "{\"method\":\"truck\",\"units\":\"metric\",\"mass\":1740,\"mass_basis\":\"weighed\",\"rating\":3000"
#define CART "{\"method\":\"cart\",\"units\":\"metric\",\"gross_mass\":300,\"rated_load\":500,\"rolling_coefficient\":0.02," \
  "\"start_factor\":2"
#define LIFT(wll) \
  "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"mass\":1000,\"mass_basis\":\"weighed\",\"cg\":[0,0,0]," \
  "\"hook\":{\"above\":1000},\"points\":[{\"label\":\"A\",\"at\":[0,0,100]}],\"legs\":[{\"point\":\"A\",\"elements\":[" \
  "{\"label\":\"E1\",\"kind\":\"sling\"" wll "}]}]}"

#define HANDS(mass)                                                                                                      \
  ",\"facts\":{\"method\":\"lift\",\"load\":{\"typical\":" mass ",\"heaviest\":" mass                                      \
  "},\"origin\":{\"H\":25,\"V\":75,\"A\":0},\"travel\":25,\"frequency\":0.2,\"duration\":\"short\",\"coupling\":\"good\"}"
#define FORKS(rating)                                                                                                    \
  ",\"facts\":{\"method\":\"truck\",\"mass\":1740,\"mass_basis\":\"weighed\",\"rating\":" rating                              \
  ",\"rated_centre\":500,\"actual_centre\":500}"
#define STEP(label, when, rest) \
  "{\"label\":\"" label "\",\"kind\":\"store\",\"when\":\"" when "\",\"minutes\":20.5" rest "}"
#define CHANGE(steps) \
  "{\"method\":\"changeover\",\"units\":\"metric\",\"people\":1,\"changes_per_year\":60,\"steps\":[" steps "]}"

static void
test_the_result_in_a_sentence (void **state)
{
  static const struct
  {
    const char *facts, *words;
  } cases[] = {
    { DIE "}", "1582 kg, with its allowance 1582 kg; where it balances is not known." },
    { DIE ",\"allowance_percent\":10,\"bodies\":[{\"label\":\"a\",\"mass\":1500,\"at\":[-28.4,13.8,197.8]}]}",
      "1582 kg, with its allowance 1740.2 kg; balances at x -28, y 14, z 198 mm." },
    { LIFT (",\"wll\":1075,\"rated_as\":\"leg\""), "Weakest: E1 at A, 93 % of what it may carry as it is used." },
    { LIFT (",\"wll\":999.99999,\"rated_as\":\"leg\""),
      "Weakest: E1 at A, 100.000001 % of what it may carry as it is used." },
    { LIFT (""), "1000 kg in the hook; what its gear may carry is not known." },
    { TRUCK ",\"rated_centre\":500,\"actual_centre\":800}",
      "1740 kg on the forks: 92.8 % of the 1875 kg that the plate leaves at this load centre." },
    { TRUCK "}", "1740 kg on the forks; what the plate leaves at this load centre is not known." },
    { CART "}", "Nearest to a limit: its rated load, 60 %." },
    { CART ",\"slope\":0}", "Nearest to a limit: its rated load, 60 %; 118 N to start it." },
    { CART ",\"slope\":0,\"track\":400,\"wheelbase\":800,\"cg_height\":700,\"push_height\":1000,\"deceleration\":0.2}",
      "Nearest to a limit: tipping, 70 %; 118 N to start it." },
    { "{\"method\":\"cart\",\"units\":\"metric\",\"gross_mass\":300}", "What it may carry and what tips it is not known." },
    { CHANGE (STEP ("a", "stopped", "")), "1 step; the machine stands 20.5 min." },
    { CHANGE (STEP ("a", "running", "")), "1 step; the machine need not stand." },
    { CHANGE (STEP ("a", "stopped", HANDS ("12")) "," STEP ("b", "stopped", "")),
      "2 steps; the machine stands 41 min; heaviest by hand 12 kg." },
    { CHANGE (STEP ("a", "stopped", HANDS ("24")) "," STEP ("b", "running", FORKS ("1000"))),
      "1 of 2 steps hands must not do; the machine stands 20.5 min; heaviest by hand 24 kg." },
    { CHANGE (STEP ("a", "running", HANDS ("24")) "," STEP ("b", "running", HANDS ("22"))),
      "2 of 2 steps hands must not do; the machine need not stand; heaviest by hand 24 kg." },
    { CHANGE (STEP ("a", "stopped", FORKS ("1000")) "," STEP ("b", "running", HANDS ("5"))),
      "1 of 2 steps must not be done as planned; the machine stands 20.5 min; heaviest by hand 5 kg." },
    { CHANGE (STEP ("a", "stopped", FORKS ("1000")) "," STEP ("b", "stopped", FORKS ("1100"))),
      "2 of 2 steps must not be done as planned; the machine stands 41 min." },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree char *words = sy_words_result (assessment->findings, NULL);

      assert_string_equal (words, cases[i].words);
    }
}

static void
test_a_line_of_the_working (void **state)
{
  static const struct
  {
    const char *facts, *symbol, *line; /* NULL: none */
  } cases[] = {
    { TRUCK ",\"rated_centre\":500,\"actual_centre\":800}", "utilisation", "1740 kg / 1875 kg = 0.928" },
    { TRUCK ",\"rated_centre\":500,\"actual_centre\":800}", "capacity", NULL },
    { CART ",\"slope\":0,\"track\":800,\"wheelbase\":800,\"cg_height\":700,\"push_height\":1000}", "tipping",
      "117.7 N / 1176.8 N = 0.1" },
    { CART ",\"slope\":0,\"track\":800,\"wheelbase\":800,\"cg_height\":700,\"push_height\":1000,\"deceleration\":0.2}",
      "tipping", NULL }, /* the stop is nearer to tipping it */
    { LIFT (",\"wll\":2000,\"rated_as\":\"leg\""), "element.A.E1.utilisation", "1000 kg / 2000 kg = 0.5" },
    { CHANGE (STEP ("a", "stopped", "") "," STEP ("b", "running", "")), "year.stopped.hours",
      "20.5 min \xc3\x97 60 / 60 = 20.5" },
    { CHANGE (STEP ("a", "stopped", "") "," STEP ("b", "running", "")), "year.person.hours", "41 min \xc3\x97 60 / 60 = 41" },
    { CHANGE (STEP ("a", "stopped", "")), "stopped.elapsed", NULL },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      const SyQuantity *quantity = sy_findings_quantity (assessment->findings, cases[i].symbol);

      assert_non_null (quantity);
      g_autofree char *line = sy_words_formula (assessment->findings, quantity);
      if (cases[i].line == NULL)
        assert_null (line);
      else
        {
          assert_non_null (line);
          assert_string_equal (line, cases[i].line);
        }
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_result_in_a_sentence),
    cmocka_unit_test (test_a_line_of_the_working),
  };
  int failed;

  desk = sy_desk_new (NULL, 0, NULL);
  failed = cmocka_run_group_tests (tests, NULL, NULL);
  sy_desk_unref (desk);
  return failed;
}
