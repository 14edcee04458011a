/* SPDX-License-Identifier: MIT */
#include "sy-solve.h"
#include "sy-test.h"

/* Arithmetic: 2·(1,0,0) − 3·(1,1,0) + 5·(0,1,2). */
static void
test_three_directions (void **state)
{
  SyVec3 a = sy_vec3 (1, 0, 0), b = sy_vec3 (1, 1, 0), c = sy_vec3 (0, 1, 2);
  double out[3];

  (void) state;
  assert_true (sy_solve3 (a, b, c, sy_vec3 (-1, 2, 10), out));
  assert_close (out[0], 2, 1e-15, 0);
  assert_close (out[1], -3, 1e-15, 0);
  assert_close (out[2], 5, 1e-15, 0);
}

static void
test_directions_in_a_plane_are_refused (void **state)
{
  double out[3] = { 7, 7, 7 };

  (void) state;
  assert_false (sy_solve3 (sy_vec3 (1, 0, 0), sy_vec3 (0, 1, 0), sy_vec3 (1, 1, 0), sy_vec3 (0, 0, 1), out));
  assert_false (sy_solve3 (sy_vec3 (0, 0, 0), sy_vec3 (0, 1, 0), sy_vec3 (0, 0, 1), sy_vec3 (0, 0, 1), out));
  assert_true (out[0] == 7);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_three_directions),
    cmocka_unit_test (test_directions_in_a_plane_are_refused),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
