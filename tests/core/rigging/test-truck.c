/* SPDX-License-Identifier: MIT */
#include "sy-test.h"
#include "sy-truck.h"

/* 29 CFR 1910.178 Appendix A-5: 3,000 lb at 24 in is 72,000 in-lb; at 30 in that is 2,400 lb. */
static void
test_the_published_example (void **state)
{
  (void) state;
  assert_close (sy_truck_capacity (3000, 24, 30), 2400, 0, 1e-15);
  assert_close (sy_truck_capacity (3000, 24, 30) * 30, 72000, 0, 1e-15);
}

/* Statics: 3,000 kg at 500 mm, the load at 800 mm, front axle 450 mm behind the face. */
static void
test_both_forms (void **state)
{
  (void) state;
  assert_close (sy_truck_capacity (3000, 500, 800), 1875, 0, 1e-15);
  assert_close (sy_truck_capacity_fulcrum (3000, 500, 800, 450), 2280, 0, 1e-15);
}

static void
test_a_nearer_load_gains_nothing (void **state)
{
  (void) state;
  assert_same_bits (sy_truck_capacity (3000, 500, 500), 3000);
  assert_same_bits (sy_truck_capacity (3000, 500, 300), 3000);
  assert_same_bits (sy_truck_capacity_fulcrum (3000, 500, 300, 450), 3000);
}

/* The load moment rule is the stricter; both fall with the distance, the fulcrum form rises with its own. */
static void
test_properties (void **state)
{
  (void) state;
  for (double fulcrum = 0; fulcrum < 1000; fulcrum += 50)
    {
      double before = INFINITY, plate_before = INFINITY;

      for (double centre = 100; centre < 2000; centre += 12.5)
        {
          double plate = sy_truck_capacity (2500, 600, centre);
          double capacity = sy_truck_capacity_fulcrum (2500, 600, centre, fulcrum);

          assert_true (plate <= capacity * (1 + 1e-15));
          assert_true (capacity <= before && plate <= plate_before);
          assert_true (capacity <= sy_truck_capacity_fulcrum (2500, 600, centre, fulcrum + 50) * (1 + 1e-15));
          before = capacity;
          plate_before = plate;
        }
    }
}

static void
test_what_is_no_number_stays_so (void **state)
{
  (void) state;
  assert_true (isnan (sy_truck_capacity (3000, NAN, 800)));
  assert_true (isnan (sy_truck_capacity (3000, 500, NAN)));
  assert_true (isnan (sy_truck_capacity_fulcrum (3000, 500, 800, NAN)));
}

static void
test_side_shift (void **state)
{
  (void) state;
  assert_true (sy_truck_side_within (0, 0));
  assert_true (sy_truck_side_within (50, 50));
  assert_true (sy_truck_side_within (-50, 50));
  assert_false (sy_truck_side_within (50.001, 50));
  assert_false (sy_truck_side_within (-50.001, 50));
  assert_false (sy_truck_side_within (NAN, 50));
  assert_false (sy_truck_side_within (10, NAN));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_published_example),
    cmocka_unit_test (test_both_forms),
    cmocka_unit_test (test_a_nearer_load_gains_nothing),
    cmocka_unit_test (test_properties),
    cmocka_unit_test (test_what_is_no_number_stays_so),
    cmocka_unit_test (test_side_shift),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
