/* SPDX-License-Identifier: MIT */
#include "sy-body.h"
#include "sy-material.h"
#include "sy-test.h"

static bool
sum_of (const SyBody *bodies, size_t n, double *mass, SyVec3 *cg)
{
  SyBodySum sum = { .gross = 0 };

  for (size_t i = 0; i < n; i++)
    sy_body_sum_add (&sum, &bodies[i]);
  return sy_body_sum_end (&sum, mass, cg);
}

#define LB_PER_KG (1 / SY_KG_PER_LB)

static const SyVec3 origin[] = { { 0, 0, 0 } };

static const SyMaterial *
find (const char *id)
{
  for (size_t i = 0; i < SY_N_MATERIALS; i++)
    if (strcmp (sy_materials ()[i].id, id) == 0)
      return &sy_materials ()[i];
  return NULL;
}

static double
metric_density (const char *id)
{
  return sy_density_of_lengths (sy_material_density (find (id), SY_UNITS_METRIC), SY_UNITS_METRIC);
}

/* A two-shoe die with a clearance pocket and four pillars; worked by hand from the geometry, mm and kg. */
static void
test_a_two_shoe_die (void **state)
{
  static const SyVec3 lower[] = { { 0, 0, 40 } }, upper[] = { { 0, 0, 365 } }, die[] = { { -100, 50, 125 } },
                      punch[] = { { -100, 50, 280 } }, pocket[] = { { -100, 50, 40 } },
                      pillars[] = { { -500, -300, 205 }, { 500, -300, 205 }, { 500, 300, 205 }, { -500, 300, 205 } };
  double steel = metric_density ("steel"), tool = metric_density ("tool-steel");
  const SyBody bodies[] = {
    { SY_BODY_BLOCK, .size = { 1200, 800, 80 }, .density = steel, .copies = 1, .at = lower, .n_at = 1 },
    { SY_BODY_BLOCK, .size = { 1200, 800, 70 }, .density = steel, .copies = 1, .at = upper, .n_at = 1 },
    { SY_BODY_BLOCK, .size = { 700, 500, 90 }, .density = tool, .copies = 1, .at = die, .n_at = 1 },
    { SY_BODY_BLOCK, .size = { 650, 450, 100 }, .density = tool, .copies = 1, .at = punch, .n_at = 1 },
    { SY_BODY_BLOCK, .size = { 300, 200, 80 }, .density = steel, .cut = true, .copies = 1, .at = pocket, .n_at = 1 },
    { SY_BODY_CYLINDER, .diameter = 50, .height = 250, .density = steel, .copies = 1, .at = pillars, .n_at = 4 },
  };
  static const double masses[] = { 602.88, 527.52, 245.70, 228.15, -37.68, 3.85 };
  double mass;
  SyVec3 cg;

  (void) state;
  for (size_t i = 0; i < 6; i++)
    assert_close (sy_body_mass (&bodies[i]), masses[i], 0.006, 0);
  assert_true (sum_of (bodies, 6, &mass, &cg));
  assert_close (mass, 1581.98, 0.005, 0);
  assert_close (cg.x, -27.57, 0.005, 0);
  assert_close (cg.y, 13.79, 0.005, 0);
  assert_close (cg.z, 197.79, 0.005, 0);
  /* Solid share of the envelope, and mass a square metre of plan. */
  assert_close (mass / (1200. * 800 * 400 * steel), 0.525, 0.0005, 0);
  assert_close (mass / (1.2 * 0.8), 1648, 0.5, 0);
}

/* US Navy, Hull Technician (14119): steel plate 68 × 44 × 1/2 in is 1,496 in³ and 424.86 lb at 0.284 lb/in³. */
static void
test_the_navys_steel_plate (void **state)
{
  const SyBody plate = { SY_BODY_BLOCK, .size = { 68, 44, 0.5 }, .density = 0.284 };

  (void) state;
  assert_close (sy_body_volume (&plate), 1496, 0, 1e-15);
  assert_close (sy_body_mass (&plate), 424.86, 0.005, 0);
  /* Our steel in US units, converted exactly, is 0.15 % less. */
  assert_close (sy_material_density (find ("steel"), SY_UNITS_US), 0.284, 0, 0.0015);
}

/* Shop Practice vol. 2: a forging of 171 3/7 in³ at 0.2779 lb/in³ weighs 47.64 lb. */
static void
test_a_forging (void **state)
{
  const SyBody forging = { SY_BODY_PRISM, .area = 171 + 3 / 7., .height = 1, .density = 0.2779 };

  (void) state;
  assert_close (sy_body_mass (&forging), 47.64, 0.005, 0);
}

/* Engineering drawing tutorial: a cast bar of 100 × 30 × 25 mm at 0.0072 g/mm³ weighs 540 g. */
static void
test_a_cast_bar (void **state)
{
  const SyBody bar = { SY_BODY_BLOCK, .size = { 100, 30, 25 }, .density = metric_density ("grey-iron") };

  (void) state;
  assert_close (sy_body_mass (&bar), 0.540, 0, 1e-12);
}

/* Lobben's machinists' handbook, p. 142: a cast-iron ball weighs 0.1377 D³ lb. A ball is a third of a cylinder of
   diameter and twice its height: π/6·D³. Implies 454 lb/ft³, within what is published for cast iron. */
static void
test_a_cast_ball (void **state)
{
  const SyBody ball = { SY_BODY_CYLINDER, .diameter = 1, .height = 2 / 3., .density = 1 };
  double density = 0.1377 / sy_body_mass (&ball);

  (void) state;
  assert_close (density * 1728, 454, 0.6, 0);
  assert_true (density > sy_material_density (find ("grey-iron"), SY_UNITS_US));
  assert_true (density < sy_material_density (find ("cast-iron"), SY_UNITS_US));
}

/* Geometry: a tube is one cylinder less another; without a hole it is the cylinder; a thin wall keeps its digits. */
static void
test_a_tube_is_a_cylinder_with_a_hole (void **state)
{
  const SyBody cylinder = { SY_BODY_CYLINDER, .diameter = 80, .height = 60, .density = 2 };
  const SyBody hole = { SY_BODY_CYLINDER, .diameter = 50, .height = 60, .density = 2, .cut = true };
  const SyBody tube = { SY_BODY_TUBE, .outer = 80, .inner = 50, .height = 60, .density = 2 };
  const SyBody solid = { SY_BODY_TUBE, .outer = 80, .inner = 0, .height = 60, .density = 2 };
  const SyBody thin = { SY_BODY_TUBE, .outer = 1000.0625, .inner = 1000, .height = 1, .density = 1 };

  (void) state;
  assert_close (sy_body_mass (&tube), sy_body_mass (&cylinder) + sy_body_mass (&hole), 0, 1e-14);
  assert_close (sy_body_mass (&solid), sy_body_mass (&cylinder), 0, 1e-15);
  assert_close (sy_body_mass (&thin), M_PI * 31.2509765625, 0, 1e-15);
  assert_true (sy_body_volume (&hole) > 0 && sy_body_mass (&hole) < 0);
}

/* US Navy 14080 and Army TM 55-1500-342-23: 200 lb at 50 in balances 100 lb at 100 in on the other side. */
static void
test_a_see_saw (void **state)
{
  static const SyVec3 left[] = { { -50, 0, 0 } }, right[] = { { 100, 0, 0 } };
  const SyBody bodies[] = {
    { SY_BODY_POINT, .mass = 200, .copies = 1, .at = left, .n_at = 1 },
    { SY_BODY_POINT, .mass = 100, .copies = 1, .at = right, .n_at = 1 },
  };
  double mass;
  SyVec3 cg;

  (void) state;
  assert_true (sum_of (bodies, 2, &mass, &cg));
  assert_true (mass >= 300 && mass <= 300);
  assert_close (cg.x, 0, 1e-15, 0);
}

/* Copies at one place weigh as much as a list of that many places, all the same. */
static void
test_copies (void **state)
{
  static const SyVec3 places[] = { { 3, 4, 5 }, { 3, 4, 5 }, { 3, 4, 5 } };
  const SyBody copies[] = { { SY_BODY_POINT, .mass = 0.1, .copies = 3, .at = places, .n_at = 1 } };
  const SyBody listed[] = { { SY_BODY_POINT, .mass = 0.1, .copies = 1, .at = places, .n_at = 3 } };
  double a, b;
  SyVec3 at_a, at_b;

  (void) state;
  assert_true (sum_of (copies, 1, &a, &at_a));
  assert_true (sum_of (listed, 1, &b, &at_b));
  assert_close (a, b, 0, 1e-15);
  assert_close (at_a.z, 5, 0, 1e-15);
  assert_close (at_b.z, 5, 0, 1e-15);
}

static void
test_nothing_left_has_no_centre (void **state)
{
  const SyBody bodies[] = {
    { SY_BODY_BLOCK, .size = { 0.1, 0.2, 0.3 }, .density = 7.85, .copies = 3, .at = origin, .n_at = 1 },
    { SY_BODY_BLOCK, .size = { 0.3, 0.1, 0.2 }, .density = 7.85, .copies = 3, .at = origin, .n_at = 1, .cut = true },
    { SY_BODY_POINT, .mass = 1, .copies = 1, .at = origin, .n_at = 1, .cut = true },
  };
  double mass = 7;
  SyVec3 cg = { 7, 7, 7 };

  (void) state;
  assert_false (sum_of (bodies, 2, &mass, &cg));
  assert_close (mass, 0, 1e-15, 0);
  assert_false (sum_of (bodies, 3, &mass, &cg));
  assert_close (mass, -1, 0, 1e-14);
  assert_false (sum_of (NULL, 0, &mass, &cg));
  assert_true (cg.x >= 7 && cg.z >= 7);
}

/* The whole is where its parts are: moving everything moves the centre and nothing else, to the last digits. */
static void
test_far_from_the_origin (void **state)
{
  static const SyVec3 near[] = { { 0, 0, 0 }, { 1, 0, 0 } }, far[] = { { 1e7, -1e7, 1e7 }, { 1e7 + 1, -1e7, 1e7 } };
  SyBody bodies[] = {
    { SY_BODY_BLOCK, .size = { 1, 1, 1 }, .density = 7.1, .copies = 1, .at = near, .n_at = 2 },
    { SY_BODY_BLOCK, .size = { 0.5, 0.5, 0.5 }, .density = 7.1, .copies = 1, .at = near, .n_at = 1, .cut = true },
  };
  double mass, again;
  SyVec3 cg, moved;

  (void) state;
  assert_true (sum_of (bodies, 2, &mass, &cg));
  assert_close (cg.x, 1 / 1.875, 0, 1e-15);
  bodies[0].at = bodies[1].at = far;
  assert_true (sum_of (bodies, 2, &again, &moved));
  assert_same_bits (again, mass);
  assert_close (moved.x - 1e7, cg.x, 1e-8, 0);
  assert_close (moved.y, -1e7, 0, 1e-15);
}

/* International yard and pound: 1 lb/in³ is 27,679.904710203… kg/m³. */
static void
test_densities_convert_exactly (void **state)
{
  (void) state;
  assert_close (SY_KG_M3_PER_LB_IN3, 27679.904710203125, 0, 1e-15);
  /* The other column of the same published table. */
  assert_close (sy_material_density (find ("aluminium"), SY_UNITS_US), 0.098, 0.0005, 0);
  assert_close (sy_material_density (find ("copper"), SY_UNITS_US), 0.322, 0.0005, 0);
  assert_close (sy_material_density (find ("brass"), SY_UNITS_US), 0.311, 0.0005, 0);
  assert_close (sy_density_of_lengths (7850, SY_UNITS_METRIC), 7.85e-6, 0, 1e-15);
  assert_close (sy_density_of_lengths (0.2836, SY_UNITS_US), 0.2836, 0, 0);
}

static void
test_the_same_block_in_both_units (void **state)
{
  const SyMaterial *steel = find ("steel");
  const SyBody metric = { SY_BODY_BLOCK, .size = { 254, 508, 127 }, .density = metric_density ("steel") };
  const SyBody us = { SY_BODY_BLOCK, .size = { 10, 20, 5 }, .density = sy_material_density (steel, SY_UNITS_US) };

  (void) state;
  assert_close (sy_body_mass (&us), sy_body_mass (&metric) * LB_PER_KG, 0, 1e-14);
}

static void
test_every_material_has_an_id_a_name_and_a_source (void **state)
{
  const SyMaterial *all = sy_materials ();

  (void) state;
  for (size_t i = 0; i < SY_N_MATERIALS; i++)
    {
      assert_ptr_equal (find (all[i].id), &all[i]); /* no other has that id */
      assert_true (all[i].label[0] != '\0' && all[i].source[0] != '\0');
      assert_true (all[i].density_kg_m3 >= 900 && all[i].density_kg_m3 <= 15000);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_a_two_shoe_die),
    cmocka_unit_test (test_the_navys_steel_plate),
    cmocka_unit_test (test_a_forging),
    cmocka_unit_test (test_a_cast_bar),
    cmocka_unit_test (test_a_cast_ball),
    cmocka_unit_test (test_a_tube_is_a_cylinder_with_a_hole),
    cmocka_unit_test (test_a_see_saw),
    cmocka_unit_test (test_copies),
    cmocka_unit_test (test_nothing_left_has_no_centre),
    cmocka_unit_test (test_far_from_the_origin),
    cmocka_unit_test (test_densities_convert_exactly),
    cmocka_unit_test (test_the_same_block_in_both_units),
    cmocka_unit_test (test_every_material_has_an_id_a_name_and_a_source),
  };
  return cmocka_run_group_tests (tests, NULL, NULL);
}
