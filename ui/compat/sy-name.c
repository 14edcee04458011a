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
