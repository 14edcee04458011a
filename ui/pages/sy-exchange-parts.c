/* SPDX-License-Identifier: MIT */
#include "sy-exchange-parts.h"

#include "sy-i18n.h"
#include "sy-name.h"

#define WIDTH 760
#define HEIGHT 460

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

GtkWidget *
sy_exchange_body (GtkWindow *window)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_window_set_default_size (window, WIDTH, HEIGHT);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_window_set_child (window, box);
  return box;
}

GtkWidget *
sy_exchange_words (void)
{
  GtkWidget *words
    = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE, "wrap-mode",
                    PANGO_WRAP_WORD_CHAR, "selectable", TRUE, "visible", FALSE, NULL);

  gtk_widget_set_name (words, "words");
  return words;
}

void
sy_exchange_say (GtkWidget *words, const char *text, gboolean is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (words, "sy-problem");
  else
    gtk_widget_remove_css_class (words, "sy-problem");
  gtk_label_set_text (GTK_LABEL (words), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (words), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_widget_set_visible (words, *text != '\0');
}

static void
close_cb (GtkButton *button, GtkWindow *window)
{
  (void) button;
  gtk_window_close (window);
}

GtkWidget *
sy_exchange_close_button (GtkWindow *window)
{
  GtkWidget *button = sy_button_new (_("_Close"), NULL);

  gtk_widget_set_name (button, "close");
  g_signal_connect_object (button, "clicked", G_CALLBACK (close_cb), window, 0);
  return button;
}
