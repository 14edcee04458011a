/* SPDX-License-Identifier: MIT */
/* Rows for vectors, for several texts or places, and for lists inside items. */
#include "sy-test.h"

#include "sy-list-rows.h"
#include "sy-quantity-entry.h"
#include "sy-test-wait.h"

static SyForm *
new_form (const char *method)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);

  return sy_form_new (desk, method, SY_UNITS_METRIC);
}

/* In a window of its own, where the focus has somewhere to go. */
typedef GtkWidget Rooted;

static Rooted *
put_in_window (GtkWidget *widget)
{
  gtk_window_set_child (GTK_WINDOW (gtk_window_new ()), widget);
  return widget;
}

static void
close_window (Rooted *widget)
{
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (widget)));
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Rooted, close_window)

static Rooted *
new_bound (SyForm *form, const char *path)
{
  GtkWidget *fact = sy_fact_new_for_field (sy_form_find_field (form, path));

  sy_fact_bind (SY_FACT (fact), form, path);
  return put_in_window (fact);
}

static Rooted *
new_rows (SyForm *form, const char *path)
{
  return put_in_window (sy_list_rows_new (form, path));
}

static GtkWidget *
find (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (strcmp (gtk_widget_get_name (widget), name) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, name);
  return found;
}

/* The check says "equal" for anything when there is no test backend: see test-facts.c. */
static gboolean
is_named (GtkWidget *widget, const char *label)
{
  g_autofree char *wrong
      = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label);

  return wrong == NULL;
}

static GtkWidget *
find_button (GtkWidget *widget, const char *label)
{
  GtkWidget *found = NULL;

  if (GTK_IS_BUTTON (widget) && is_named (widget, label))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_button (child, label);
  return found;
}

static void
press (GtkWidget *widget, const char *label)
{
  GtkWidget *button = find_button (widget, label);

  if (button == NULL)
    fail_msg ("no button \"%s\"", label);
  assert_true (gtk_widget_get_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

static gboolean
can_press (GtkWidget *widget, const char *label)
{
  GtkWidget *button = find_button (widget, label);

  assert_non_null (button);
  return gtk_widget_get_sensitive (button);
}

static void
type (GtkWidget *widget, const char *path, const char *text)
{
  GtkWidget *field = find (widget, path);

  if (field == NULL)
    fail_msg ("nothing at \"%s\"", path);
  gtk_editable_set_text (GTK_EDITABLE (field), text);
}

static const char *
shows (GtkWidget *widget, const char *path)
{
  GtkWidget *field = find (widget, path);

  return field != NULL ? gtk_editable_get_text (GTK_EDITABLE (field)) : NULL;
}

static void
a_vector_is_three_entries_with_names (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) fact = new_bound (form, "cg");
  GtkWidget *x = find (fact, "cg[0]"), *y = find (fact, "cg[1]"), *z = find (fact, "cg[2]");

  (void) state;
  assert_ptr_equal (sy_fact_get_field (SY_FACT (fact)), x);
  assert_string_equal (sy_fact_get_path (SY_FACT (fact)), "cg");
  assert_false (is_named (x, "no such label"));
  assert_true (is_named (x, "Centre of gravity: x, mm"));
  assert_true (is_named (y, "Centre of gravity: y, mm"));
  assert_true (is_named (z, "Centre of gravity: z, mm"));
  gtk_editable_set_text (GTK_EDITABLE (x), "12");
  gtk_editable_set_text (GTK_EDITABLE (z), "1 ft");
  assert_string_equal (sy_form_get (form, "cg[0]"), "12");
  assert_string_equal (sy_form_get (form, "cg[2]"), "1 ft");
  sy_form_set_ask_missing (form, TRUE);
  assert_true (gtk_widget_has_css_class (y, "sy-wrong"));
  assert_false (gtk_widget_has_css_class (x, "sy-wrong"));
  sy_form_set (form, "cg[1]", "5");
  assert_string_equal (gtk_editable_get_text (GTK_EDITABLE (y)), "5");
  assert_false (gtk_widget_has_css_class (y, "sy-wrong"));
}

static void
two_texts_have_an_entry_each (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) fact = new_bound (form, "legs[0].point");
  GtkWidget *first = find (fact, "legs[0].point[0]");

  (void) state;
  assert_true (is_named (first, "Leg 1: From point"));
  type (fact, "legs[0].point[0]", "A");
  type (fact, "legs[0].point[1]", "B");
  assert_true (is_named (first, "Leg 1: From point 1"));
  assert_string_equal (sy_form_get (form, "legs[0].point[1]"), "B");
  assert_null (find (fact, "legs[0].point[2]"));
  assert_int_equal (sy_form_list_count (form, "legs"), 1);
}

static void
texts_come_and_go (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) fact = new_bound (form, "ties");

  (void) state;
  assert_non_null (find (fact, "ties[0]"));
  type (fact, "ties[0]", "strap");
  press (fact, "What holds the other half: Add another");
  type (fact, "ties[1]", "bolts");
  assert_int_equal (sy_form_list_count (form, "ties"), 2);
  press (fact, "What holds the other half: take 1 away");
  assert_null (find (fact, "ties[1]"));
  assert_string_equal (shows (fact, "ties[0]"), "bolts");
  sy_form_undo (form);
  assert_string_equal (shows (fact, "ties[0]"), "strap");
  assert_string_equal (shows (fact, "ties[1]"), "bolts");
}

static void
places_come_and_go (void **state)
{
  g_autoptr (SyForm) form = new_form ("die-mass");
  g_autoptr (Rooted) fact = new_bound (form, "bodies[0].at");

  (void) state;
  assert_non_null (find (fact, "bodies[0].at[0][2]"));
  press (fact, "Body 1: Place of its centre: Add another");
  type (fact, "bodies[0].at[1][2]", "7");
  assert_true (is_named (find (fact, "bodies[0].at[1][2]"), "Body 1: Place of its centre 2: z, mm"));
  press (fact, "Body 1: Place of its centre: take 1 away");
  assert_string_equal (shows (fact, "bodies[0].at[0][2]"), "7");
}

static void
legs_have_elements (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "legs");
  GtkWidget *entry;

  (void) state;
  press (rows, "Legs: Add: Leg");
  press (rows, "Legs: Add: Leg");
  assert_int_equal (sy_form_list_count (form, "legs"), 2);
  type (rows, "legs[1].point[0]", "B");
  press (rows, "Leg 2: Elements: Add: Element");
  press (rows, "Leg 2: Elements: Add: Element");
  type (rows, "legs[1].elements[1].label", "sling");
  type (rows, "legs[1].elements[1].wll", "500");
  assert_string_equal (sy_form_get (form, "legs[1].elements[1].wll"), "500");
  assert_true (is_named (find (rows, "legs[1].elements[1].wll"), "Leg 2: Element 2: Working load limit WLL, kg"));
  press (rows, "Leg 2: Element 2: Move up");
  assert_string_equal (shows (rows, "legs[1].elements[0].label"), "sling");
  assert_false (can_press (rows, "Leg 2: Element 1: Move up"));
  assert_true (can_press (rows, "Leg 2: Element 1: Move down"));
  assert_false (can_press (rows, "Leg 2: Element 2: Move down"));
  press (rows, "Leg 2: Duplicate");
  assert_string_equal (shows (rows, "legs[2].elements[0].wll"), "500");
  press (rows, "Leg 1: Take away");
  assert_string_equal (shows (rows, "legs[0].elements[0].wll"), "500");
  assert_null (find (rows, "legs[2].point[0]"));
  /* The widgets of what stays are the same: what is typed in does not lose the focus. */
  entry = find (rows, "legs[0].elements[0].wll");
  gtk_editable_set_text (GTK_EDITABLE (entry), "600");
  assert_ptr_equal (find (rows, "legs[0].elements[0].wll"), entry);
  sy_form_undo (form);
  sy_form_undo (form);
  assert_string_equal (shows (rows, "legs[1].elements[0].wll"), "500");
  assert_string_equal (shows (rows, "legs[0].point[0]"), "");
}

static void
a_full_list_takes_no_more (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "legs");

  (void) state;
  for (guint i = 0; i < 4; i++)
    press (rows, "Legs: Add: Leg");
  assert_false (can_press (rows, "Legs: Add: Leg"));
  assert_false (can_press (rows, "Leg 1: Duplicate"));
  press (rows, "Leg 4: Take away");
  assert_true (can_press (rows, "Legs: Add: Leg"));
  assert_true (can_press (rows, "Leg 1: Duplicate"));
}

static gboolean
has_text (GtkWidget *widget, const char *text)
{
  if (GTK_IS_LABEL (widget) && strcmp (gtk_label_get_text (GTK_LABEL (widget)), text) == 0)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (has_text (child, text))
      return TRUE;
  return FALSE;
}

static void
headings_say_what_an_item_calls_itself (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "legs");

  (void) state;
  sy_form_list_add (form, "legs");
  assert_true (has_text (rows, "Leg 1"));
  sy_form_set (form, "legs[0].point[0]", "A");
  assert_true (has_text (rows, "Leg 1 · A"));
  sy_form_set (form, "legs[0].point[1]", "B");
  assert_true (has_text (rows, "Leg 1 · A, B"));
  sy_form_set (form, "legs[0].elements[0].label", "chain 8");
  assert_true (has_text (rows, "Element 1 · chain 8"));
}

/* What is given seldom is folded away until it is given, is wrong, or is looked for. */
static void
what_is_seldom_is_folded_while_blank (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "points");
  SyListRows *list = SY_LIST_ROWS (rows);

  (void) state;
  sy_form_list_add (form, "points");
  sy_form_list_add (form, "points");
  assert_non_null (find (rows, "points[0].at[0]"));
  assert_null (find (rows, "points[0].body"));
  sy_form_set (form, "points[0].size", "30");
  assert_string_equal (shows (rows, "points[0].size"), "30");
  assert_non_null (find (rows, "points[0].axis[0]"));
  assert_null (find (rows, "points[1].size"));
  assert_false (sy_list_rows_reveal (list, "points[1].at[0]"));
  assert_false (sy_list_rows_reveal (list, "legs[1].edge"));
  assert_true (sy_list_rows_reveal (list, "points[1].axis[2]"));
  assert_non_null (find (rows, "points[1].axis[2]"));
  assert_false (sy_list_rows_reveal (list, "points[1].axis[2]"));
}

/* A block needs its size; that a cylinder needs a diameter is seen when it is one. */
static void
what_another_fact_asks_for_is_unfolded (void **state)
{
  g_autoptr (SyForm) form = new_form ("die-mass");
  g_autoptr (Rooted) rows = new_rows (form, "bodies");

  (void) state;
  sy_form_list_add (form, "bodies");
  sy_form_set (form, "bodies[0].shape", "block");
  assert_null (find (rows, "bodies[0].diameter"));
  sy_form_set (form, "bodies[0].shape", "cylinder");
  assert_non_null (find (rows, "bodies[0].diameter"));
  assert_false (gtk_widget_has_css_class (find (rows, "bodies[0].diameter"), "sy-wrong"));
}

static void
a_fold_inside_a_nested_list_is_found (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "legs");

  (void) state;
  sy_form_list_add (form, "legs[0].elements");
  assert_null (find (rows, "legs[0].elements[0].grade"));
  assert_true (sy_list_rows_reveal (SY_LIST_ROWS (rows), "legs[0].elements[0].grade"));
  assert_non_null (find (rows, "legs[0].elements[0].grade"));
  assert_null (find (rows, "legs[0].temperature"));
}

static void
a_list_that_is_missing_is_marked_when_asked (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "legs");
  GtkWidget *add = find (rows, "legs");

  (void) state;
  assert_false (gtk_widget_has_css_class (add, "sy-wrong"));
  sy_form_set_ask_missing (form, TRUE);
  assert_true (gtk_widget_has_css_class (add, "sy-wrong"));
  assert_true (has_text (rows, "Legs: none is given yet."));
  sy_form_list_add (form, "legs");
  assert_false (gtk_widget_has_css_class (add, "sy-wrong"));
  assert_false (has_text (rows, "Legs: none is given yet."));
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static gboolean
has_focus (GtkWidget *window, GtkWidget *widget)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (window));

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

static void
the_keyboard_is_never_left_nowhere (void **state)
{
  g_autoptr (SyForm) form = new_form ("rigged-lift");
  g_autoptr (Rooted) rows = new_rows (form, "points");
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (rows));

  (void) state;
  gtk_window_present (GTK_WINDOW (window));
  assert_true (sy_test_until (is_mapped, rows, 10000));
  press (rows, "Lifting points: Add: Point");
  assert_true (has_focus (window, find (rows, "points[0].label")));
  press (rows, "Lifting points: Add: Point");
  press (rows, "Lifting points: Add: Point");
  assert_true (has_focus (window, find (rows, "points[2].label")));
  press (rows, "Point 2: Move up");
  assert_true (has_focus (window, find_button (rows, "Point 1: Move down")));
  press (rows, "Point 1: Move down");
  assert_true (has_focus (window, find_button (rows, "Point 2: Move down")));
  press (rows, "Point 1: Duplicate");
  assert_true (has_focus (window, find (rows, "points[1].label")));
  press (rows, "Point 1: Take away");
  assert_true (has_focus (window, find_button (rows, "Point 1: Take away")));
  press (rows, "Point 3: Take away");
  assert_true (has_focus (window, find (rows, "points")));
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (a_vector_is_three_entries_with_names),
    cmocka_unit_test (two_texts_have_an_entry_each),
    cmocka_unit_test (texts_come_and_go),
    cmocka_unit_test (places_come_and_go),
    cmocka_unit_test (legs_have_elements),
    cmocka_unit_test (a_full_list_takes_no_more),
    cmocka_unit_test (headings_say_what_an_item_calls_itself),
    cmocka_unit_test (what_is_seldom_is_folded_while_blank),
    cmocka_unit_test (what_another_fact_asks_for_is_unfolded),
    cmocka_unit_test (a_fold_inside_a_nested_list_is_found),
    cmocka_unit_test (a_list_that_is_missing_is_marked_when_asked),
    cmocka_unit_test (the_keyboard_is_never_left_nowhere),
  };

  gtk_init ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
