/* SPDX-License-Identifier: MIT */
#include "sy-name.h"

static void
set_label (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
sy_name (GtkWidget *widget, const char *name)
{
  set_label (widget, name);
  if (GTK_IS_DROP_DOWN (widget) || GTK_IS_MENU_BUTTON (widget))
    set_label (gtk_widget_get_first_child (widget), name);
  else if (GTK_IS_EDITABLE (widget))
    {
      GtkEditable *inner = gtk_editable_get_delegate (GTK_EDITABLE (widget));

      if (GTK_IS_WIDGET (inner) && GTK_WIDGET (inner) != widget)
        set_label (GTK_WIDGET (inner), name);
    }
}

GtkWidget *
sy_button_new (const char *mnemonic_label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (mnemonic_label);
  GtkWidget *label = gtk_widget_get_first_child (button);

  sy_name (button, gtk_label_get_text (GTK_LABEL (label)));
  if (action != NULL)
    gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

void
sy_mark_wrong (GtkWidget *entry, gboolean is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (entry, "sy-wrong");
  else
    gtk_widget_remove_css_class (entry, "sy-wrong");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}
