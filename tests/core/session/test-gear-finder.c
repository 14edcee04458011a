/* SPDX-License-Identifier: MIT */
#include "register-help.h"

#include "sy-gear-finder.h"

/* 1000 kg on two legs that hang 30 degrees from the vertical: 500 / cos 30 = 577.35 kg in each. */
#define LEG_LOAD (500 / cos (M_PI / 6))

#define SLING(label) "{\"label\":\"" label "\",\"kind\":\"sling\",\"wll\":2000,\"rated_as\":\"leg\",\"due\":\"2027-03-01\"}"
#define SHACKLE(label) \
  "{\"label\":\"" label "\",\"kind\":\"shackle\",\"wll\":2000,\"rated_as\":\"leg\",\"due\":\"2027-03-01\",\"side_angle\":0}"
#define LEG(point, more, elements) \
  "{\"point\":\"" point "\",\"hitch\":\"straight\",\"material\":\"chain\"" more ",\"elements\":[" elements "]}"
#define PLAN(legs) \
  "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"as_of\":\"2026-11-25\",\"mass\":1000,\"mass_basis\":\"weighed\"," \
  "\"allowance_percent\":0,\"dynamic_factor\":1,\"cg\":[0,0,-100],\"points\":[{\"label\":\"A\",\"at\":[-500,0,0]}," \
  "{\"label\":\"B\",\"at\":[500,0,0]}],\"hook\":{\"above\":866.0254037844386},\"legs\":[" legs "],\"suspension\":[" \
  "{\"label\":\"H-1\",\"kind\":\"hoist\",\"wll\":2000,\"due\":\"2027-03-01\"}]}"
#define NO_EDGE ",\"edge\":\"none\""
#define USUAL \
  PLAN (LEG ("A", NO_EDGE, SHACKLE ("S-A") "," SLING ("L-A")) "," LEG ("B", NO_EDGE, SHACKLE ("S-B") "," SLING ("L-B")))

static GPtrArray *
find (const char *text, const GPtrArray *gear)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) plan = sy_desk_assess (desk, text, strlen (text), SY_JUDGE_PLAIN, problems);

  if (plan == NULL)
    fail_msg ("%s: %s", problems->items[0].path, problems->items[0].allowed);
  return sy_gear_find (desk, plan, gear, NULL);
}

static const SyGearFit *
fit_of (const GPtrArray *fits, const char *leg, const char *name)
{
  for (guint i = 0; i < fits->len; i++)
    {
      const SyGearFit *fit = fits->pdata[i];
      if (strcmp (fit->leg, leg) == 0 && strcmp (fit->name, name) == 0)
        return fit;
    }
  fail_msg ("nothing is said of %s at %s", name, leg);
  return NULL;
}

static void
test_what_carries (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "shackle", "weak", "\"wll\":500");
  help_gear (gear, "shackle", "near", "\"wll\":700");
  help_gear (gear, "shackle", "strong", "\"wll\":2000");
  help_gear (gear, "shackle", "bare", "");
  help_gear (gear, "shackle", "withdrawn", "\"wll\":2000,\"withdrawn\":true");
  help_gear (gear, "shackle", "worn", "\"wll\":2000,\"condition\":\"worn\"");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_int_equal (fits->len, 2 * 6);
  const SyGearFit *fit = fit_of (fits, "A", "strong");
  assert_true (fit->fits);
  assert_int_equal (fit->why->len, 0);
  assert_string_equal (fit->kind, "shackle");
  assert_string_equal (fit->element, "S-A");
  assert_close (fit->utilisation, LEG_LOAD / 2000, 0, 1e-9);

  fit = fit_of (fits, "B", "near");
  assert_true (fit->fits);
  assert_close (fit->utilisation, LEG_LOAD / 700, 0, 1e-9);
  assert_says (fit->remarks, "75 %");

  fit = fit_of (fits, "A", "weak");
  assert_false (fit->fits);
  assert_close (fit->utilisation, LEG_LOAD / 500, 0, 1e-9);
  assert_says (fit->why, "Too weak by 77.4 kg"); /* 77.35, rounded to the far side */

  fit = fit_of (fits, "A", "bare");
  assert_false (fit->fits);
  assert_true (isnan (fit->utilisation));
  assert_int_equal (fit->why->len, 1);
  assert_says (fit->why, "No working load limit");

  fit = fit_of (fits, "A", "withdrawn");
  assert_false (fit->fits);
  assert_int_equal (fit->why->len, 1);
  assert_says (fit->why, "Withdrawn");

  fit = fit_of (fits, "A", "worn");
  assert_true (fit->fits);
  assert_says (fit->remarks, "Worn");

  /* Those that fit first, largest margin first; then the rest, what is not known last. */
  static const char *const order[] = { "strong", "worn", "near", "withdrawn", "weak", "bare" };
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    assert_string_equal (((SyGearFit *) fits->pdata[i])->name, order[i]);
}

/* The day is the plan's, whatever day the item was judged on when it was recorded. */
static void
test_the_day_is_the_plans (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (gear, SY_ITEM_GEAR, "old",
            "{\"method\":\"gear\",\"units\":\"metric\",\"as_of\":\"2026-01-15\",\"kind\":\"shackle\",\"rated_as\":\"leg\",\"identity\":\"old\","
            "\"wll\":2000,\"examinations\":[{\"result\":\"pass\",\"on\":\"2026-01-10\",\"next\":\"2026-07-10\"}]}");
  help_add (gear, SY_ITEM_GEAR, "new",
            "{\"method\":\"gear\",\"units\":\"metric\",\"as_of\":\"2028-01-15\",\"kind\":\"shackle\",\"rated_as\":\"leg\",\"identity\":\"new\","
            "\"wll\":2000,\"examinations\":[{\"result\":\"pass\",\"on\":\"2026-09-01\",\"next\":\"2027-03-01\"}]}");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_false (fit_of (fits, "A", "old")->fits);
  assert_int_equal (fit_of (fits, "A", "old")->why->len, 1);
  assert_says (fit_of (fits, "A", "old")->why, "2026-07-10");
  assert_true (fit_of (fits, "A", "new")->fits);
}

static void
test_units_of_the_item (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_add (gear, SY_ITEM_GEAR, "pounds",
            "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"shackle\",\"identity\":\"1\",\"wll\":2000,\"own_mass\":10,"
            "\"last_examined\":\"2026-09-01\",\"due\":\"2027-03-01\"}");
  help_add (gear, SY_ITEM_GEAR, "tonnes",
            "{\"method\":\"gear\",\"units\":\"us\",\"kind\":\"shackle\",\"identity\":\"2\",\"wll\":\"2 t\","
            "\"last_examined\":\"2026-09-01\",\"due\":\"2027-03-01\"}");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_close (fit_of (fits, "A", "pounds")->utilisation, LEG_LOAD / (2000 * 0.45359237), 0, 1e-9);
  assert_close (fit_of (fits, "A", "tonnes")->utilisation, LEG_LOAD / 2000, 0, 1e-9);
}

/* The rule for the sling as a whole: 1.4 x 800 = 1120 kg would do, but at over 80 % of that legs do not share evenly, and
   one counts (EN 818-6, from memory). */
static void
test_rule_for_the_whole (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "sling", "light", "\"wll\":800,\"rated_as\":\"leg\",\"material\":\"chain\"");
  help_gear (gear, "sling", "heavy", "\"wll\":2000,\"rated_as\":\"leg\",\"material\":\"chain\"");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_close (fit_of (fits, "A", "light")->utilisation, LEG_LOAD / 800, 0, 1e-9);
  assert_false (fit_of (fits, "A", "light")->fits);
  assert_says (fit_of (fits, "A", "light")->why, "European rule allows 800 kg");
  assert_true (fit_of (fits, "A", "heavy")->fits);
}

/* A weak sling in the other leg is not held against this one. */
static void
test_rule_is_asked_of_like_legs (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();
  static const char plan[] = PLAN (LEG ("A", NO_EDGE, SLING ("L-A")) "," LEG (
    "B", NO_EDGE, "{\"label\":\"L-B\",\"kind\":\"sling\",\"wll\":100,\"rated_as\":\"leg\",\"due\":\"2027-03-01\"}"));

  (void) state;
  help_gear (gear, "sling", "heavy", "\"wll\":2000,\"rated_as\":\"leg\",\"material\":\"chain\"");
  g_autoptr (GPtrArray) fits = find (plan, gear);

  assert_true (fit_of (fits, "A", "heavy")->fits);
}

/* A leg takes the material of the sling that is put into it. */
static void
test_material_and_edge (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();
  static const char plan[] = PLAN (LEG ("A", ",\"edge\":\"bare\"", SLING ("L-A")) "," LEG ("B", "", SLING ("L-B")));

  (void) state;
  help_gear (gear, "sling", "web", "\"wll\":3000,\"rated_as\":\"leg\",\"material\":\"polyester\"");
  help_gear (gear, "sling", "something", "\"wll\":3000,\"rated_as\":\"leg\"");
  g_autoptr (GPtrArray) fits = find (plan, gear);

  assert_false (fit_of (fits, "A", "web")->fits);
  assert_says (fit_of (fits, "A", "web")->why, "bare edge");
  assert_false (fit_of (fits, "B", "web")->fits);
  assert_says (fit_of (fits, "B", "web")->why, "it was not asked whether it runs over an edge");
  assert_false (fit_of (fits, "A", "something")->fits);
  assert_says (fit_of (fits, "A", "something")->why, "what the sling is made of");
}

static void
test_where_it_is_already (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "shackle", "S-B", "\"wll\":2000");
  help_gear (gear, "sling", "L-B", "\"wll\":4000,\"rated_as\":\"assembly\",\"legs\":2,\"band\":\"0-45\","
                                   "\"material\":\"chain\"");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_false (fit_of (fits, "A", "S-B")->fits);
  assert_says (fit_of (fits, "A", "S-B")->why, "at B");
  assert_true (fit_of (fits, "B", "S-B")->fits);
  assert_true (fit_of (fits, "A", "L-B")->fits); /* it has two legs */
}

/* A shackle of 1001 kg is strong enough, but what it hangs from is not. */
static void
test_what_it_weighs (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "shackle", "anchor", "\"wll\":20000,\"own_mass\":1001");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_close (fit_of (fits, "A", "anchor")->utilisation, LEG_LOAD / 20000, 0, 1e-9);
  assert_false (fit_of (fits, "A", "anchor")->fits);
  assert_says (fit_of (fits, "A", "anchor")->why, "H-1 is loaded to 100.1 %");
}

static void
test_a_plan_without_gear (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();
  static const char plan[]
    = "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"as_of\":\"2026-11-25\",\"mass\":1000,\"mass_basis\":\"weighed\","
      "\"cg\":[0,0,-100],\"points\":[{\"label\":\"A\",\"at\":[-500,0,0]},{\"label\":\"B\",\"at\":[500,0,0]}],"
      "\"hook\":{\"above\":866.0254037844386},\"legs\":[{\"point\":\"A\",\"hitch\":\"straight\",\"edge\":\"none\"},"
      "{\"point\":\"B\",\"hitch\":\"straight\",\"edge\":\"none\"}]}";

  (void) state;
  help_gear (gear, "sling", "chain", "\"wll\":2000,\"rated_as\":\"leg\",\"material\":\"chain\",\"length\":3000");
  help_gear (gear, "shackle", "shackle", "\"wll\":2000");
  help_gear (gear, "hoist", "hoist", "\"wll\":1000");
  help_gear (gear, "hoist", "small hoist", "\"wll\":900");
  help_gear (gear, "eyebolt", "eyebolt", "\"wll\":2000");
  g_autoptr (GPtrArray) fits = find (plan, gear);

  assert_int_equal (fits->len, 2 * 2 + 2);
  assert_true (fit_of (fits, "A", "chain")->fits);
  assert_says (fit_of (fits, "A", "chain")->remarks, "3000 mm long, the leg 1000 mm");
  assert_string_equal (fit_of (fits, "A", "chain")->element, "");
  assert_true (fit_of (fits, "B", "shackle")->fits);
  assert_true (fit_of (fits, "", "hoist")->fits); /* 100 % is within it */
  assert_says (fit_of (fits, "", "hoist")->remarks, "notice");
  assert_false (fit_of (fits, "", "small hoist")->fits);
}

/* Nothing fits a lift that is not allowed however strong its gear is. */
static void
test_geometry_that_is_not_allowed (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();
  g_auto (GStrv) halves = g_strsplit (USUAL, "866.0254037844386", 2);
  g_autofree char *flat = g_strjoinv ("200", halves);
  g_auto (GStrv) aside = g_strsplit (USUAL, "\"cg\":[0,0,-100]", 2);
  g_autofree char *outside = g_strjoinv ("\"cg\":[700,0,-100]", aside);

  (void) state;
  help_gear (gear, "shackle", "strong", "\"wll\":20000");
  g_autoptr (GPtrArray) fits = find (flat, gear);
  assert_false (fit_of (fits, "A", "strong")->fits);
  assert_says (fit_of (fits, "A", "strong")->why, "flatter than");

  g_autoptr (GPtrArray) others = find (outside, gear);
  assert_false (fit_of (others, "A", "strong")->fits);
  assert_true (isnan (fit_of (others, "A", "strong")->utilisation));
  assert_says (fit_of (others, "A", "strong")->why, "outside the lifting points");
}

static void
test_what_cannot_be_known (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "shackle", "two of one base", "\"wll\":2000")->clash = TRUE;
  help_gear (gear, "shackle", "nonsense", "\"wll\":-1");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  assert_false (fit_of (fits, "A", "two of one base")->fits);
  assert_says (fit_of (fits, "A", "two of one base")->why, "revisions");
  assert_false (fit_of (fits, "A", "nonsense")->fits);
  assert_says (fit_of (fits, "A", "nonsense")->why, "$.wll");

  g_autoptr (GPtrArray) none = find ("{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"hoist\",\"identity\":\"1\"}", gear);
  assert_int_equal (none->len, 0);
}

/* Labels hold 40 bytes and are cut between characters; a name that a neighbour has is not used twice. */
static void
test_long_and_equal_names (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();

  (void) state;
  help_gear (gear, "shackle", "Sch\xc3\xa4kel mit einem sehr langen Namen f\xc3\xbcr drei Zeilen", "\"wll\":2000");
  help_gear (gear, "shackle", "L-A", "\"wll\":2000");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);

  for (guint i = 0; i < fits->len; i++)
    assert_true (((SyGearFit *) fits->pdata[i])->fits);
}

static void
test_json (void **state)
{
  g_autoptr (GPtrArray) gear = help_items ();
  g_autoptr (GString) out = g_string_new (NULL);

  (void) state;
  help_gear (gear, "shackle", "bare", "");
  g_autoptr (GPtrArray) fits = find (USUAL, gear);
  sy_gear_fit_write_json (out, fits->pdata[0]);
  if (!g_str_has_prefix (out->str, "{\"leg\":\"A\",\"kind\":\"shackle\",\"element\":\"S-A\",\"item\":\"bare\",\"name\":\"bare\","
                                   "\"identity\":\"bare\",\"utilisation\":null,\"fits\":false,\"why\":[\"No working"))
    fail_msg ("%s", out->str);
  assert_non_null (strstr (out->str, "\"caution\":\"A screening result"));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_what_carries),
    cmocka_unit_test (test_the_day_is_the_plans),
    cmocka_unit_test (test_units_of_the_item),
    cmocka_unit_test (test_rule_for_the_whole),
    cmocka_unit_test (test_rule_is_asked_of_like_legs),
    cmocka_unit_test (test_material_and_edge),
    cmocka_unit_test (test_where_it_is_already),
    cmocka_unit_test (test_what_it_weighs),
    cmocka_unit_test (test_a_plan_without_gear),
    cmocka_unit_test (test_geometry_that_is_not_allowed),
    cmocka_unit_test (test_what_cannot_be_known),
    cmocka_unit_test (test_long_and_equal_names),
    cmocka_unit_test (test_json),
  };

  return cmocka_run_group_tests_name ("gear-finder", tests, help_set_up, help_tear_down);
}
