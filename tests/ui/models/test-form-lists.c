/* SPDX-License-Identifier: MIT */
/* Vectors, lists of places and of texts, lists inside items of lists. */
#include "sy-test.h"

#include "sy-form.h"

static SyForm *
new_form (const char *method, SyUnits units)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  assert_non_null (desk);
  return sy_form_new (desk, method, units);
}

static void
set (SyForm *form, const char *const facts[][2], gsize n)
{
  for (gsize i = 0; i < n; i++)
    sy_form_set (form, facts[i][0], facts[i][1]);
}

/* A block on two points, hung 1000 mm under the hook. */
static SyForm *
new_lift (void)
{
  static const char *const facts[][2] = {
    { "mass", "1000" },           { "cg[0]", "0" },          { "cg[1]", "0" },        { "cg[2]", "-100" },
    { "points[0].label", "A" },   { "points[0].at[0]", "-500" }, { "points[0].at[1]", "0" }, { "points[0].at[2]", "0" },
    { "points[1].label", "B" },   { "points[1].at[0]", "500" },  { "points[1].at[1]", "0" }, { "points[1].at[2]", "0" },
    { "legs[0].point[0]", "A" },  { "legs[1].point[0]", "B" },   { "hook.above", "1000" },
  };
  SyForm *form = new_form ("rigged-lift", SY_UNITS_METRIC);

  set (form, facts, G_N_ELEMENTS (facts));
  return form;
}

static void
assert_document (SyForm *form, const char *expected)
{
  g_autofree char *document = sy_form_document (form);

  assert_string_equal (document, expected);
}

static void
assert_holds (SyForm *form, const char *part)
{
  g_autofree char *document = sy_form_document (form);

  if (strstr (document, part) == NULL)
    fail_msg ("%s is not in %s", part, document);
}

static void
assert_name (SyForm *form, const char *path, const char *name)
{
  g_autofree char *is = sy_form_dup_name (form, path, TRUE);

  assert_string_equal (is, name);
}

static void
a_lift_on_legs_is_typed_fact_by_fact (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  SyAssessment *assessment;

  (void) state;
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_document (form, "{\"method\":\"rigged-lift\",\"units\":\"metric\",\"mass\":1000,\"cg\":[0,0,-100],"
                         "\"points\":[{\"label\":\"A\",\"at\":[-500,0,0]},{\"label\":\"B\",\"at\":[500,0,0]}],"
                         "\"legs\":[{\"point\":\"A\"},{\"point\":\"B\"}],\"hook\":{\"above\":1000}}");
  assessment = sy_form_get_assessment (form);
  assert_non_null (assessment);
  /* atan (500/1000) from the vertical, by hand. */
  assert_close (sy_findings_quantity (assessment->findings, "leg.A.angle")->value, 26.565051177077990, 0, 1e-9);
}

static void
a_single_text_stands_alone_and_several_in_a_list (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);
  g_autoptr (SyForm) again = new_form ("rigged-lift", SY_UNITS_METRIC);
  g_autofree char *document = NULL;

  (void) state;
  sy_form_set (form, "ties[0]", "strap");
  assert_holds (form, "\"ties\":\"strap\"");
  sy_form_list_add (form, "ties");
  assert_holds (form, "\"ties\":\"strap\"");
  sy_form_set (form, "ties[2]", "two bolts");
  assert_int_equal (sy_form_list_count (form, "ties"), 3);
  assert_holds (form, "\"ties\":[\"strap\",\"two bolts\"]");
  sy_form_set (form, "legs[0].point[1]", "B");
  assert_holds (form, "\"point\":\"B\"");
  sy_form_set (form, "legs[0].point[0]", "A");
  document = sy_form_document (form);
  assert_true (sy_form_load_document (again, document, NULL));
  assert_string_equal (sy_form_get (again, "ties[1]"), "two bolts");
  assert_string_equal (sy_form_get (again, "legs[0].point[1]"), "B");
  assert_document (again, document);
  assert_false (sy_form_is_dirty (again));
}

/* There is always a place to type the first one; a blank one more changes nothing. */
static void
a_blank_text_is_no_change (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  assert_int_equal (sy_form_list_count (form, "ties"), 1);
  sy_form_list_add (form, "ties");
  assert_int_equal (sy_form_list_count (form, "ties"), 2);
  assert_false (sy_form_is_dirty (form));
  sy_form_set (form, "ties[1]", "strap");
  assert_true (sy_form_is_dirty (form));
  sy_form_set (form, "ties[1]", "");
  assert_false (sy_form_is_dirty (form));
  sy_form_list_remove (form, "ties", 0);
  sy_form_list_remove (form, "ties", 0);
  assert_int_equal (sy_form_list_count (form, "ties"), 1);
  assert_document (form, "{\"method\":\"rigged-lift\",\"units\":\"metric\"}");
}

static void
a_vector_is_absent_or_whole (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autoptr (SyForm) again = new_form ("rigged-lift", SY_UNITS_METRIC);
  g_autofree char *document = NULL;

  (void) state;
  sy_form_set (form, "points[0].axis[1]", " ");
  assert_int_equal (sy_form_count_problems (form), 0);
  sy_form_set (form, "points[0].axis[2]", "1");
  assert_int_equal (sy_form_count_problems (form), 2);
  assert_true (sy_form_is_missing (form, "points[0].axis[0]"));
  assert_true (sy_form_is_missing (form, "points[0].axis[1]"));
  assert_null (sy_form_get_problem (form, "points[0].axis[2]"));
  assert_string_equal (sy_form_get_problem (form, "points[0].axis[0]"), "Axis of the bolt: x is not given yet.");
  assert_holds (form, "\"axis\":[null,null,1]");
  document = sy_form_document (form);
  assert_true (sy_form_load_document (again, document, NULL));
  assert_string_equal (sy_form_get (again, "points[0].axis[1]"), "");
  assert_string_equal (sy_form_get (again, "points[0].axis[2]"), "1");
  sy_form_set (form, "points[0].axis[2]", "");
  assert_int_equal (sy_form_count_problems (form), 0);
}

/* A place in plan has two coordinates, one whose height need not be known two or three. */
static void
a_place_in_plan_has_two_coordinates (void **state)
{
  static const char *const facts[][2] = {
    { "mass", "40" },           { "cg[0]", "300" },           { "cg[1]", "0" },
    { "people[0].label", "A" }, { "people[0].at[0]", "0" },   { "people[0].at[1]", "0" }, { "people[0].height", "75" },
    { "people[1].label", "B" }, { "people[1].at[0]", "600" }, { "people[1].at[1]", "0" }, { "people[1].height", "75" },
  };
  static const char *const refused[] = { "\"cg\":[1]", "\"cg\":[1,2,3,4]", "\"people\":[{\"at\":[1,2,3]}]" };
  g_autoptr (SyForm) form = new_form ("team-lift", SY_UNITS_METRIC);
  g_autoptr (SyForm) again = new_form ("team-lift", SY_UNITS_METRIC);
  g_autofree char *document = NULL;

  (void) state;
  sy_form_set (form, "cg[0]", "300");
  assert_true (sy_form_is_missing (form, "cg[1]"));
  assert_false (sy_form_is_missing (form, "cg[2]"));
  set (form, facts, G_N_ELEMENTS (facts));
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_holds (form, "\"cg\":[300,0],");
  assert_holds (form, "\"at\":[600,0],");
  assert_null (sy_form_find_field (form, "people[0].at[2]"));
  assert_non_null (sy_form_find_field (form, "cg[2]"));
  sy_form_set (form, "cg[2]", "120");
  assert_holds (form, "\"cg\":[300,0,120],");
  sy_form_set (form, "cg[1]", "");
  assert_true (sy_form_is_missing (form, "cg[1]"));
  assert_holds (form, "\"cg\":[300,null,120],");
  sy_form_set (form, "cg[1]", "0");
  document = sy_form_document (form);
  assert_true (sy_form_load_document (again, document, NULL));
  assert_document (again, document);
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *wrong = g_strdup_printf ("{\"method\":\"team-lift\",\"units\":\"metric\",%s}", refused[i]);

      assert_false (sy_form_load_document (again, wrong, NULL));
    }
}

static void
a_wrong_coordinate_is_named_where_it_is (void **state)
{
  g_autoptr (SyForm) form = new_lift ();

  (void) state;
  sy_form_set (form, "points[1].at[0]", "far");
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_string_equal (sy_form_problem_path (form, 0), "points[1].at[0]");
  assert_string_equal (sy_form_get_problem (form, "points[1].at[0]"), "“far” is not a number.");
  sy_form_set (form, "points[1].at[0]", "0,5 m");
  assert_int_equal (sy_form_count_problems (form), 0);
  sy_form_set (form, "points[1].axis[0]", "0");
  sy_form_set (form, "points[1].axis[1]", "0");
  sy_form_set (form, "points[1].axis[2]", "0");
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_string_equal (sy_form_problem_path (form, 0), "points[1].axis[0]");
  assert_non_null (strstr (sy_form_problem_words (form, 0), "Axis of the bolt: “[0, 0, 0]”"));
}

static void
what_is_missing_is_asked_where_it_can_be_typed (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  assert_true (sy_form_is_missing (form, "mass"));
  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *path = g_strdup_printf ("cg[%u]", i);

      assert_true (sy_form_is_missing (form, path));
    }
  assert_true (sy_form_is_missing (form, "points"));
  assert_true (sy_form_is_missing (form, "legs"));
  assert_string_equal (sy_form_get_problem (form, "legs"), "Legs: none is given yet.");
  sy_form_list_add (form, "legs");
  assert_null (sy_form_get_problem (form, "legs"));
  assert_true (sy_form_is_missing (form, "legs[0].point[0]"));
  sy_form_list_add (form, "legs[0].elements");
  assert_true (sy_form_is_missing (form, "legs[0].elements[0].label"));
  assert_true (sy_form_is_missing (form, "legs[0].elements[0].kind"));
  assert_int_equal (sy_form_count_missing (form), sy_form_count_problems (form));
}

/* What the method finds between the facts of a leg stands at the first of its points. */
static void
a_conflict_of_texts_stands_at_the_first (void **state)
{
  g_autoptr (SyForm) form = new_lift ();

  (void) state;
  sy_form_set (form, "legs[1].point[0]", "Z");
  assert_string_equal (sy_form_problem_path (form, 0), "legs[1].point[0]");
  sy_form_set (form, "legs[1].point[0]", "B");
  sy_form_set (form, "legs[1].hitch", "basket");
  assert_string_equal (sy_form_problem_path (form, 0), "legs[1].point[0]");
  assert_non_null (strstr (sy_form_problem_words (form, 0), "two points"));
}

static void
facts_inside_items_of_items_are_found (void **state)
{
  static const char *const leads_nowhere[] = {
    "", "cg[3]", "cg[0][0]", "cg[]", "cg[x]", "mass[0]", "legs[0][1]", "legs[0].elements[1].nothing", "hook[0]", "ties[0][0]",
    "points[0].at[1][1]", "legs[0", "legs[0]x", "cg.x", "ties[99999999999]", "checks[0]",
  };
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  assert_string_equal (sy_form_find_field (form, "legs[0].elements[1].wll")->name, "wll");
  assert_string_equal (sy_form_find_field (form, "points[2].at[1]")->name, "at");
  assert_string_equal (sy_form_find_field (form, "legs[3].point[1]")->name, "point");
  for (gsize i = 0; i < G_N_ELEMENTS (leads_nowhere); i++)
    assert_null (sy_form_find_field (form, leads_nowhere[i]));
  assert_true (sy_form_is_measure (form, "points[2].at[1]"));
  assert_false (sy_form_is_measure (form, "points[2].at"));
  assert_true (sy_form_is_measure (form, "mass"));
  assert_false (sy_form_is_measure (form, "ties[0]"));
}

static void
names_say_the_leg_the_element_and_the_coordinate (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_auto (GStrv) paths = NULL;

  (void) state;
  assert_name (form, "cg[0]", "Centre of gravity: x, mm");
  assert_name (form, "points[1].at[2]", "Point 2: Place: z, mm");
  assert_name (form, "points[1].axis[2]", "Point 2: Axis of the bolt: z");
  assert_name (form, "legs[0].elements[1].wll", "Leg 1: Element 2: Working load limit WLL, kg");
  assert_name (form, "legs[0].elements[1]", "Leg 1: Element 2");
  assert_name (form, "legs[0].elements", "Leg 1: Elements");
  assert_name (form, "legs[1].point[0]", "Leg 2: From point");
  sy_form_set (form, "legs[1].point[1]", "A");
  assert_name (form, "legs[1].point[0]", "Leg 2: From point 1");
  assert_name (form, "legs[1].point[1]", "Leg 2: From point 2");
  sy_form_set (form, "legs[1].elements[1].wll", "5");
  sy_form_set (form, "legs[1].elements[0].wll", "5");
  sy_form_set (form, "ties[1]", "x");
  sy_form_set (form, "ties[0]", "x");
  sy_form_set (form, "suspension[0].wll", "5");
  paths = sy_form_list_paths (form);
  assert_int_equal (g_strv_length (paths), 15 + 1 + 2 + 2 + 1);
  for (guint i = 0; paths[i] != NULL; i++)
    assert_true (g_hash_table_add (names, sy_form_dup_name (form, paths[i], TRUE)));
}

static void
lists_inside_items_come_go_and_change_places (void **state)
{
  static const char *const facts[][2] = {
    { "legs[0].point[0]", "A" },          { "legs[0].elements[0].label", "eye" },
    { "legs[0].elements[1].label", "shackle" }, { "legs[0].elements[2].label", "sling" },
    { "legs[1].point[0]", "B" },          { "legs[1].elements[0].label", "chain" },
  };
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  set (form, facts, G_N_ELEMENTS (facts));
  assert_int_equal (sy_form_list_count (form, "legs[0].elements"), 3);
  sy_form_list_move (form, "legs[0].elements", 2, 0);
  assert_string_equal (sy_form_get (form, "legs[0].elements[0].label"), "sling");
  assert_string_equal (sy_form_get (form, "legs[0].elements[1].label"), "eye");
  assert_string_equal (sy_form_get (form, "legs[0].elements[2].label"), "shackle");
  sy_form_list_move (form, "legs[0].elements", 0, 1);
  assert_string_equal (sy_form_get (form, "legs[0].elements[0].label"), "eye");
  assert_string_equal (sy_form_get (form, "legs[0].elements[1].label"), "sling");
  sy_form_undo (form);
  sy_form_undo (form);
  assert_string_equal (sy_form_get (form, "legs[0].elements[0].label"), "eye");
  sy_form_list_duplicate (form, "legs", 0);
  assert_int_equal (sy_form_list_count (form, "legs"), 3);
  assert_int_equal (sy_form_list_count (form, "legs[1].elements"), 3);
  assert_string_equal (sy_form_get (form, "legs[1].elements[2].label"), "sling");
  assert_string_equal (sy_form_get (form, "legs[0].elements[2].label"), "sling");
  assert_string_equal (sy_form_get (form, "legs[2].elements[0].label"), "chain");
  sy_form_list_remove (form, "legs", 0);
  assert_int_equal (sy_form_list_count (form, "legs"), 2);
  assert_string_equal (sy_form_get (form, "legs[1].elements[0].label"), "chain");
  assert_int_equal (sy_form_list_count (form, "legs[1].elements"), 1);
  assert_int_equal (sy_form_list_count (form, "legs[2].elements"), 0);
  sy_form_list_remove (form, "legs[0].elements", 1);
  assert_string_equal (sy_form_get (form, "legs[0].elements[1].label"), "sling");
  assert_string_equal (sy_form_get (form, "legs[0].elements[2].label"), "");
  sy_form_undo (form);
  sy_form_undo (form);
  sy_form_undo (form);
  assert_int_equal (sy_form_list_count (form, "legs"), 2);
  assert_string_equal (sy_form_get (form, "legs[0].elements[1].label"), "shackle");
}

static void
a_list_is_not_made_longer_than_it_may_be (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  for (guint i = 0; i < 6; i++)
    sy_form_list_add (form, "legs");
  assert_int_equal (sy_form_list_count (form, "legs"), 4);
  sy_form_list_duplicate (form, "legs", 1);
  assert_int_equal (sy_form_list_count (form, "legs"), 4);
  sy_form_list_add (form, "legs[0].point");
  sy_form_list_add (form, "legs[0].point");
  assert_int_equal (sy_form_list_count (form, "legs[0].point"), 2);
}

static void
coordinates_keep_their_meaning_in_other_units (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autofree char *aid = sy_form_dup_aid (form, "points[0].at[0]");
  g_autofree char *shown = sy_form_dup_shown (form, "points[0].at[0]");

  (void) state;
  assert_non_null (strstr (aid, "in"));
  assert_string_equal (shown, "-500 mm");
  sy_form_set (form, "points[0].axis[0]", "0");
  sy_form_set (form, "points[0].axis[1]", "0");
  sy_form_set (form, "points[0].axis[2]", "1");
  sy_form_set_units (form, SY_UNITS_US);
  assert_string_equal (sy_form_get (form, "points[0].at[0]"), "-500 mm");
  assert_string_equal (sy_form_get (form, "cg[2]"), "-100 mm");
  assert_string_equal (sy_form_get (form, "points[0].axis[2]"), "1");
  assert_string_equal (sy_form_get (form, "legs[0].point[0]"), "A");
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_close (sy_findings_quantity (sy_form_get_assessment (form)->findings, "leg.A.angle")->value,
                26.565051177077990, 0, 1e-9);
}

/* One place stands alone in the document, several in a list; a blank one between them is passed over. */
static void
places_are_one_or_several (void **state)
{
  static const char *const facts[][2] = {
    { "bodies[0].label", "pillar" },  { "bodies[0].shape", "cylinder" }, { "bodies[0].diameter", "50" },
    { "bodies[0].height", "200" },    { "bodies[0].material", "steel" }, { "bodies[0].at[0][0]", "1" },
    { "bodies[0].at[0][1]", "2" },    { "bodies[0].at[0][2]", "3" },
  };
  g_autoptr (SyForm) form = new_form ("die-mass", SY_UNITS_METRIC);
  g_autoptr (SyForm) again = new_form ("die-mass", SY_UNITS_METRIC);
  g_autofree char *document = NULL;

  (void) state;
  sy_form_list_add (form, "bodies");
  assert_true (sy_form_is_missing (form, "bodies[0].at[0][1]"));
  set (form, facts, G_N_ELEMENTS (facts));
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_holds (form, "\"at\":[1,2,3]");
  assert_name (form, "bodies[0].at[0][1]", "Body 1: Place of its centre: y, mm");
  sy_form_set (form, "bodies[0].at[0][1]", "wide");
  assert_string_equal (sy_form_problem_path (form, 0), "bodies[0].at[0][1]");
  sy_form_set (form, "bodies[0].at[0][1]", "2");
  sy_form_set (form, "bodies[0].at[2][0]", "4");
  sy_form_set (form, "bodies[0].at[2][1]", "5");
  assert_int_equal (sy_form_list_count (form, "bodies[0].at"), 3);
  assert_holds (form, "\"at\":[[1,2,3],[4,5,null]]");
  assert_int_equal (sy_form_count_problems (form), 1);
  assert_true (sy_form_is_missing (form, "bodies[0].at[2][2]"));
  sy_form_set (form, "bodies[0].at[2][2]", "6");
  assert_int_equal (sy_form_count_problems (form), 0);
  assert_name (form, "bodies[0].at[2][1]", "Body 1: Place of its centre 3: y, mm");
  document = sy_form_document (form);
  assert_true (sy_form_load_document (again, document, NULL));
  assert_int_equal (sy_form_list_count (again, "bodies[0].at"), 2);
  assert_string_equal (sy_form_get (again, "bodies[0].at[1][2]"), "6");
  assert_document (again, document);
  sy_form_list_remove (form, "bodies[0].at", 0);
  assert_holds (form, "\"at\":[4,5,6]");
}

static void
what_cannot_be_a_vector_is_refused (void **state)
{
  static const char *const refused[] = { "\"cg\":5", "\"cg\":[1,2]", "\"cg\":[1,2,3,4]", "\"cg\":[1,2,[3]]",
                                         "\"cg\":{}", "\"ties\":5", "\"ties\":[[]]", "\"ties\":[1]", "\"ties\":{}" };
  g_autoptr (SyForm) form = new_form ("rigged-lift", SY_UNITS_METRIC);

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *document = g_strdup_printf ("{\"method\":\"rigged-lift\",\"units\":\"metric\",%s}", refused[i]);
      g_autoptr (GError) error = NULL;

      assert_false (sy_form_load_document (form, document, &error));
      assert_true (g_error_matches (error, SY_FORM_ERROR, SY_FORM_ERROR_DOCUMENT));
    }
}

/* What a way of giving something holds is taken out and put back as a whole. */
static void
what_is_below_a_path_can_be_taken_out_and_put_back (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *before = NULL;
  g_auto (GStrv) paths = NULL;
  g_autofree const char **blank = NULL;
  guint n;

  (void) state;
  sy_form_set (form, "legs[0].elements[1].label", "sling");
  before = sy_form_document (form);
  paths = sy_form_list_paths_below (form, "legs");
  n = g_strv_length (paths);
  assert_int_equal (n, 1 + 2 + 2 + 2); /* legs, two points with their number, elements, a label */
  assert_string_equal (paths[0], "legs");
  blank = g_new (const char *, n);
  for (guint i = 0; i < n; i++)
    {
      g_ptr_array_add (texts, g_strdup (sy_form_get (form, paths[i])));
      blank[i] = "";
    }
  sy_form_set_many (form, (const char *const *) paths, blank, n);
  assert_int_equal (sy_form_list_count (form, "legs"), 0);
  sy_form_set_many (form, (const char *const *) paths, (const char *const *) texts->pdata, n);
  assert_document (form, before);
  g_strfreev (g_steal_pointer (&paths));
  paths = sy_form_list_paths_below (form, "points[1].at");
  assert_int_equal (g_strv_length (paths), 3);
}

static void
a_draft_of_another_method_is_not_taken (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autoptr (SyForm) again = new_form ("rigged-lift", SY_UNITS_US);
  g_autoptr (SyForm) other = new_form ("lift", SY_UNITS_METRIC);
  g_autoptr (SyDraft) draft = sy_draft_new ("new-1");
  g_autofree char *document = sy_form_document (form);

  (void) state;
  sy_form_fill_draft (form, draft);
  assert_string_equal (draft->method, "rigged-lift");
  assert_true (sy_form_load_draft (again, draft));
  assert_document (again, document);
  sy_form_set (other, "origin.H", "55");
  assert_false (sy_form_load_draft (other, draft));
  assert_string_equal (sy_form_get (other, "origin.H"), "55");
}

static void
a_copy_has_all_items (void **state)
{
  g_autoptr (SyForm) form = new_lift ();
  g_autoptr (SyForm) copy = sy_form_copy (form);
  g_autofree char *document = sy_form_document (form);

  (void) state;
  assert_document (copy, document);
  sy_form_list_remove (copy, "points", 0);
  assert_document (form, document);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_lift_on_legs_is_typed_fact_by_fact),
    cmocka_unit_test (a_single_text_stands_alone_and_several_in_a_list),
    cmocka_unit_test (a_blank_text_is_no_change),
    cmocka_unit_test (a_vector_is_absent_or_whole),
    cmocka_unit_test (a_place_in_plan_has_two_coordinates),
    cmocka_unit_test (a_wrong_coordinate_is_named_where_it_is),
    cmocka_unit_test (what_is_missing_is_asked_where_it_can_be_typed),
    cmocka_unit_test (a_conflict_of_texts_stands_at_the_first),
    cmocka_unit_test (facts_inside_items_of_items_are_found),
    cmocka_unit_test (names_say_the_leg_the_element_and_the_coordinate),
    cmocka_unit_test (lists_inside_items_come_go_and_change_places),
    cmocka_unit_test (a_list_is_not_made_longer_than_it_may_be),
    cmocka_unit_test (coordinates_keep_their_meaning_in_other_units),
    cmocka_unit_test (places_are_one_or_several),
    cmocka_unit_test (what_cannot_be_a_vector_is_refused),
    cmocka_unit_test (what_is_below_a_path_can_be_taken_out_and_put_back),
    cmocka_unit_test (a_draft_of_another_method_is_not_taken),
    cmocka_unit_test (a_copy_has_all_items),
  };

  return cmocka_run_group_tests (tests, NULL, NULL);
}
