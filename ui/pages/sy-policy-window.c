/* SPDX-License-Identifier: MIT */
#include "sy-policy-window.h"

#include "sy-desk.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-task-parts.h"

#include <string.h>

#define WIDTH 720
#define HEIGHT 540

char *
sy_policy_words (const char *text)
{
  g_autoptr (SyDesk) desk = sy_desk_new (text, strlen (text), NULL);
  const SyPolicy *policy = desk != NULL ? sy_desk_policy (desk) : NULL;

  if (policy == NULL)
    return NULL;
  if (*policy->loosened_because == '\0')
    /* Translators: name and version of a policy. */
    return g_strdup_printf (_("Policy %s, version %d. It loosens none of the program's own limits."), policy->id,
                            policy->version);
  return g_strdup_printf (_("Policy %s, version %d. It is looser than the program's own in at least one limit: %s"), policy->id,
                          policy->version, policy->loosened_because);
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

GtkWidget *
sy_policy_window_new (GtkWindow *parent, const char *text)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *view = gtk_text_view_new ();
  GtkEventController *keys = gtk_shortcut_controller_new ();
  g_autofree char *words = sy_policy_words (text);

  gtk_window_set_title (GTK_WINDOW (window), _("Policy"));
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (window, keys);

  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (view)), text, -1);
  gtk_text_view_set_editable (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_monospace (GTK_TEXT_VIEW (view), TRUE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_widget_add_css_class (view, "sy-text");
  gtk_widget_set_name (view, "policy");
  sy_name (view, _("The policy's text"));
  gtk_box_append (GTK_BOX (box), sy_part_label (words != NULL ? words : _("This is no policy that this edition can read."),
                                                words != NULL ? NULL : "sy-problem"));
  gtk_box_append (GTK_BOX (box), sy_part_scroller (view, _("The policy's text")));
  gtk_widget_set_vexpand (gtk_widget_get_last_child (box), TRUE);
  gtk_widget_set_margin_start (box, 18);
  gtk_widget_set_margin_end (box, 18);
  gtk_widget_set_margin_top (box, 18);
  gtk_widget_set_margin_bottom (box, 18);
  gtk_window_set_child (GTK_WINDOW (window), box);
  return window;
}
