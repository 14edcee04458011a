/* SPDX-License-Identifier: MIT */
#include "sy-marking.h"
#include "sy-test.h"
#include "sy-units.h"

#define TON (2000 * SY_KG_PER_LB)

static SyMarking
chain (double diameter, int grade)
{
  SyMarking out;

  assert_true (sy_marking_chain (diameter, grade, &out));
  return out;
}

static SyMarking
rope (double diameter)
{
  SyMarking out;

  assert_true (sy_marking_wire_rope (diameter, &out));
  return out;
}

/* OSHA, Guidance on Safe Sling Use, tables 1 and 2: in, mm, lb of grade 80 and 100 (0: not read). Marked by inch size
   or by the metric one a good marking passes; the grade above would not, nor would kg read as lb. */
static const double osha[][4] = {
  { 7 / 32., 5.5, 2100, 2700 }, { 9 / 32., 7, 3500, 4300 },   { 5 / 16., 8, 4500, 5700 },   { 3 / 8., 10, 7100, 8800 },
  { 1 / 2., 13, 12000, 15000 }, { 5 / 8., 16, 18100, 22600 }, { 3 / 4., 20, 28300, 35300 },
  { 7 / 8., 22, 34200, 42700 }, { 1, 26, 47700, 0 },          { 1.25, 32, 72300, 0 },
};

static void
test_osha_chain (void **state)
{
  (void) state;
  for (size_t i = 0; i < sizeof osha / sizeof osha[0]; i++)
    for (int by_inch = 0; by_inch < 2; by_inch++)
      {
        double size = by_inch ? osha[i][0] * 25.4 : osha[i][1];
        SyMarking eight = chain (size, 8), ten = chain (size, 10);

        assert_false (sy_marking_cannot_be (osha[i][2] * SY_KG_PER_LB, &eight));
        assert_true (sy_marking_cannot_be (osha[i][2], &eight));
        if (!by_inch)
          assert_close (eight.wll_kg / SY_KG_PER_LB, osha[i][2], 100, 0);
        if (osha[i][3] <= 0)
          continue;
        assert_false (sy_marking_cannot_be (osha[i][3] * SY_KG_PER_LB, &ten));
        assert_true (sy_marking_cannot_be (osha[i][3] * SY_KG_PER_LB, &eight));
        if (!by_inch)
          assert_close (ten.wll_kg / SY_KG_PER_LB, osha[i][3], 100, 0);
      }
}

/* EN 818-4 grade 8 and the usual grade 10, from memory: mm, t. */
static void
test_en_chain (void **state)
{
  static const double table[][3] = {
    { 6, 1.12, 1.4 }, { 7, 1.5, 1.9 },     { 8, 2.0, 2.5 },    { 10, 3.15, 4.0 }, { 13, 5.3, 6.7 },  { 16, 8, 10 },
    { 18, 10, 12.5 }, { 19, 11.2, 14 },    { 20, 12.5, 16.0 }, { 22, 15, 19 },    { 26, 21.2, 26.5 }, { 32, 31.5, 40 },
  };

  (void) state;
  for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
    {
      SyMarking eight = chain (table[i][0], 8), ten = chain (table[i][0], 10);

      assert_false (sy_marking_cannot_be (table[i][1] * 1000, &eight));
      assert_false (sy_marking_cannot_be (table[i][2] * 1000, &ten));
      assert_true (sy_marking_cannot_be (table[i][1] * 2000, &eight));
    }
}

/* The definition of the grade: 10 mm at 200 N/mm² is 31,416 N. */
static void
test_chain_grades (void **state)
{
  SyMarking out;

  (void) state;
  assert_close (chain (10, 8).wll_kg, 3204, 0.5, 0);
  assert_close (chain (10, 10).wll_kg, 1.25 * chain (10, 8).wll_kg, 0, 1e-15);
  assert_close (chain (10, 12).wll_kg, 1.5 * chain (10, 8).wll_kg, 0, 1e-15);
  assert_same_bits (chain (10, 0).wll_kg, chain (10, 12).wll_kg);
  assert_false (chain (10, 8).from_memory);
  assert_true (chain (10, 12).from_memory);
  assert_false (sy_marking_chain (0, 8, &out));
  assert_false (sy_marking_chain (-3, 8, &out));
  assert_false (sy_marking_chain (NAN, 8, &out));
}

/* Withdrawn CFR table N-184-4 and the tables for extra improved plow steel, from memory: in, tons. EN 13414-1 at
   1770, from memory: mm, kg. None is wrong; twice as much is. */
static void
test_wire_rope (void **state)
{
  static const double us[][2] = {
    { 1 / 4., 0.59 }, { 3 / 8., 1.43 }, { 1 / 2., 2.53 }, { 5 / 8., 3.91 }, { 3 / 4., 5.6 }, { 7 / 8., 7.6 },
    { 1, 9.82 }, { 9 / 8., 12.03 }, { 1.25, 15 }, { 1.5, 21.09 },
  };
  static const double en[][2] = {
    { 8, 740 }, { 10, 1156 }, { 12, 1665 }, { 14, 2266 }, { 16, 2960 }, { 18, 3746 }, { 20, 4625 }, { 22, 5596 },
    { 24, 6660 }, { 26, 7816 }, { 28, 9064 }, { 32, 11839 },
  };
  SyMarking out;

  (void) state;
  for (size_t i = 0; i < sizeof us / sizeof us[0]; i++)
    {
      SyMarking largest = rope (us[i][0] * 25.4);

      assert_false (sy_marking_cannot_be (us[i][1] * TON, &largest));
      /* 1960 in place of 1770 */
      assert_false (sy_marking_cannot_be (us[i][1] * TON * 1960 / 1770, &largest));
      assert_true (sy_marking_cannot_be (us[i][1] * TON * 2.2, &largest));
    }
  for (size_t i = 0; i < sizeof en / sizeof en[0]; i++)
    {
      SyMarking largest = rope (en[i][0]);
      double formula = 0.356 * en[i][0] * en[i][0] * 1770 * 0.9 / 5 / SY_GRAVITY;

      /* The figures were worked out with 9.81. */
      assert_close (en[i][1], formula * SY_GRAVITY / 9.81, 0.6, 0);
      assert_false (sy_marking_cannot_be (formula * 1960 / 1770, &largest));
      assert_true (sy_marking_cannot_be (formula * 2, &largest));
    }
  assert_false (sy_marking_wire_rope (0, &out));
  assert_false (sy_marking_wire_rope (NAN, &out));
}

/* DIN 580 and ASME B18.15, from memory. */
static void
test_eyebolts (void **state)
{
  static const struct { SyEyeboltFamily family; double size, kg; } cases[] = {
    { SY_EYEBOLT_DIN_580, 10, 230 }, { SY_EYEBOLT_DIN_580, 12, 340 }, { SY_EYEBOLT_DIN_580, 16, 700 },
    { SY_EYEBOLT_DIN_580, 20, 1200 }, { SY_EYEBOLT_DIN_580, 24, 1800 }, { SY_EYEBOLT_DIN_580, 30, 3600 },
    { SY_EYEBOLT_DIN_580, 36, 5100 }, { SY_EYEBOLT_DIN_580, 64, 16000 },
    /* Between rows the larger; below the first row the first. */
    { SY_EYEBOLT_DIN_580, 8, 230 }, { SY_EYEBOLT_DIN_580, 27, 3600 },
    { SY_EYEBOLT_ASME, 0.25 * 25.4, 400 * SY_KG_PER_LB }, { SY_EYEBOLT_ASME, 25.4, 7880 * SY_KG_PER_LB },
    { SY_EYEBOLT_ASME_OLDER, 50.8, 32500 * SY_KG_PER_LB }, { SY_EYEBOLT_ASME, 24, 7880 * SY_KG_PER_LB },
    /* Written rounded: 5/8 in */
    { SY_EYEBOLT_ASME, 16, 2940 * SY_KG_PER_LB },
  };
  SyMarking out;

  (void) state;
  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
    {
      assert_true (sy_marking_eyebolt (cases[i].family, cases[i].size, &out));
      assert_close (out.wll_kg, cases[i].kg, 0, 1e-15);
      assert_false (sy_marking_cannot_be (cases[i].kg, &out));
      assert_true (sy_marking_cannot_be (cases[i].kg * 1.051, &out));
      assert_true (out.from_memory);
    }
  assert_false (sy_marking_eyebolt (SY_EYEBOLT_BS_4278, 20, &out));
  assert_false (sy_marking_eyebolt (SY_EYEBOLT_DIN_580, 72, &out));
  assert_false (sy_marking_eyebolt (SY_EYEBOLT_ASME, 57, &out));
  assert_false (sy_marking_eyebolt (SY_EYEBOLT_ASME, 0, &out));
  assert_false (sy_marking_eyebolt (SY_EYEBOLT_DIN_580, NAN, &out));
}

/* Up to 5 % over is rounding between tables. */
static void
test_five_percent (void **state)
{
  SyMarking largest = { .wll_kg = 1000 };

  (void) state;
  assert_false (sy_marking_cannot_be (1050, &largest));
  assert_true (sy_marking_cannot_be (1050.001, &largest));
}

static void
test_a_larger_size_never_has_less (void **state)
{
  double before[3] = { 0, 0, 0 };

  (void) state;
  for (int i = 1; i < 500; i++)
    {
      double size = i * 0.1;
      SyMarking eye;

      assert_true (chain (size, 8).wll_kg >= before[0] * 0.9); /* inch sizes count as the metric ones beside them */
      assert_true (rope (size).wll_kg > before[1]);
      assert_true (sy_marking_eyebolt (SY_EYEBOLT_ASME, size, &eye));
      assert_true (eye.wll_kg >= before[2]);
      before[0] = chain (size, 8).wll_kg;
      before[1] = rope (size).wll_kg;
      before[2] = eye.wll_kg;
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_osha_chain),
    cmocka_unit_test (test_en_chain),
    cmocka_unit_test (test_chain_grades),
    cmocka_unit_test (test_wire_rope),
    cmocka_unit_test (test_eyebolts),
    cmocka_unit_test (test_five_percent),
    cmocka_unit_test (test_a_larger_size_never_has_less),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
