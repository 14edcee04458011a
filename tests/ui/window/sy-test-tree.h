/* SPDX-License-Identifier: MIT */
#ifndef SY_TEST_TREE_H
#define SY_TEST_TREE_H

#include <gtk/gtk.h>

/* Widgets of a window, found by name or type, never by position. */

typedef gboolean (*SyTestMatch) (GtkWidget *widget, gpointer data);

static inline GtkWidget *
sy_test_find (GtkWidget *root, SyTestMatch match, gpointer data)
{
  if (match (root, data))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = sy_test_find (child, match, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static inline gboolean
sy_test_has_name (GtkWidget *widget, gpointer name)
{
  return g_strcmp0 (gtk_widget_get_name (widget), name) == 0;
}

static inline gboolean
sy_test_shows_text (GtkWidget *widget, gpointer text)
{
  const char *shown = GTK_IS_LABEL (widget)         ? gtk_label_get_text (GTK_LABEL (widget))
                      : GTK_IS_INSCRIPTION (widget) ? gtk_inscription_get_text (GTK_INSCRIPTION (widget))
                                                    : NULL;

  return shown != NULL && gtk_widget_get_mapped (widget) && strstr (shown, text) != NULL;
}

static inline GtkWidget *
sy_test_find_name (GtkWidget *root, const char *name)
{
  return sy_test_find (root, sy_test_has_name, (gpointer) name);
}

/* A label or inscription that is shown and has @text in it. */
static inline gboolean
sy_test_shows (GtkWidget *root, const char *text)
{
  return sy_test_find (root, sy_test_shows_text, (gpointer) text) != NULL;
}

/* What a person can press, choose or write in. */
static inline gboolean
sy_test_is_control (GtkWidget *widget)
{
  return GTK_IS_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget) || GTK_IS_EDITABLE (widget)
         || GTK_IS_DROP_DOWN (widget) || GTK_IS_MENU_BUTTON (widget) || GTK_IS_SWITCH (widget)
         || GTK_IS_TEXT_VIEW (widget);
}

/* Whether assistive technology has a name for it: its own, that of a label, or the words it shows. */
static inline gboolean
sy_test_is_named (GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);

  if (gtk_test_accessible_has_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL))
    {
      /* What it is, as it is not this. A mnemonic's underscore would be read out. */
      g_autofree char *name = gtk_test_accessible_check_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL, "");

      return name != NULL && strchr (name, '_') == NULL;
    }
  return gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY);
}

#endif
