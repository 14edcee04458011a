/* SPDX-License-Identifier: MIT */
#ifndef SY_TEST_PAGE_H
#define SY_TEST_PAGE_H

#include "sy-test.h"

#include <gtk/gtk.h>

/* A widget by its name among those that are shown; NULL for none. */
static inline GtkWidget *
sy_test_find_shown (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (strcmp (gtk_widget_get_name (widget), name) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_get_child_visible (child))
      found = sy_test_find_shown (child, name);
  return found;
}

/* Everything that can be used has a name for assistive technology, and no two entries the same; @checked receives how many
   there are. */
static inline void
sy_test_audit (GtkWidget *widget, GHashTable *names, guint *checked)
{
  GtkAccessibleRole role = gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget));
  gboolean by_content = GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL;

  if (!gtk_widget_get_mapped (widget))
    return;
  by_content |= GTK_IS_CHECK_BUTTON (widget) && gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)) != NULL;
  if ((GTK_IS_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget) || GTK_IS_ENTRY (widget)
       || GTK_IS_DROP_DOWN (widget) || GTK_IS_TEXT_VIEW (widget) || GTK_IS_EXPANDER (widget)
       || role == GTK_ACCESSIBLE_ROLE_IMG)
      && !by_content && !(GTK_IS_TOGGLE_BUTTON (widget) && role == GTK_ACCESSIBLE_ROLE_TAB))
    {
      gboolean named
          = gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL)
            || gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget),
                                                 GTK_ACCESSIBLE_RELATION_LABELLED_BY);

      if (!named)
        print_error ("%s \"%s\" has no accessible name\n", G_OBJECT_TYPE_NAME (widget),
                     gtk_widget_get_name (widget));
      assert_true (named);
      (*checked)++;
      if (GTK_IS_ENTRY (widget))
        {
          g_autofree char *label = NULL;

          /* Fields of the save bar are named by their labels. */
          if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
            return;
          label = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget),
                                                      GTK_ACCESSIBLE_PROPERTY_LABEL, "");
          if (!g_hash_table_add (names, g_strdup (label)))
            fail_msg ("two entries are called %s", label);
        }
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    sy_test_audit (child, names, checked);
}

#endif
