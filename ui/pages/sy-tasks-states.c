/* SPDX-License-Identifier: MIT */
#include "sy-tasks-states.h"

#include "sy-i18n.h"
#include "sy-name.h"

GtkWidget *
sy_tasks_state_new (const char *heading, const char *prose, GtkWidget **prose_label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *title = gtk_label_new (heading);
  GtkWidget *words = gtk_label_new (prose);

  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (title, "sy-heading");
  gtk_widget_add_css_class (words, "sy-prose");
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (words), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (words), 66);
  gtk_label_set_justify (GTK_LABEL (words), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), words);
  if (prose_label != NULL)
    *prose_label = words;
  return box;
}

static GtkWidget *
add_buttons (GtkWidget *state)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  gtk_widget_set_halign (buttons, GTK_ALIGN_CENTER);
  gtk_widget_set_margin_top (buttons, 12);
  gtk_box_append (GTK_BOX (state), buttons);
  return buttons;
}

GtkWidget *
sy_tasks_begin_new (const SyRegisterPage *page)
{
  GtkWidget *button = sy_button_new (sy_translate (page->begin), NULL);
  GtkActionable *actionable = GTK_ACTIONABLE (button);

  if (page->method == NULL)
    gtk_actionable_set_action_name (actionable, "win.choose-new");
  else
    {
      gtk_actionable_set_action_name (actionable, "win.new-item");
      gtk_actionable_set_action_target (actionable, "s", page->method);
    }
  gtk_widget_add_css_class (button, "suggested-action");
  return button;
}

GtkWidget *
sy_tasks_state_empty (const SyRegisterPage *page)
{
  GtkWidget *state = sy_tasks_state_new (sy_translate (page->empty), sy_translate (page->empty_words), NULL);
  GtkWidget *buttons = add_buttons (state);

  gtk_box_append (GTK_BOX (buttons), sy_tasks_begin_new (page));
  if (page->survey != NULL)
    gtk_box_append (GTK_BOX (buttons), sy_button_new (sy_translate (page->survey), "win.survey"));
  return state;
}

GtkWidget *
sy_tasks_state_no_match (const SyRegisterPage *page, GtkWidget **show_all)
{
  GtkWidget *state
    = sy_tasks_state_new (sy_translate (page->no_match), sy_translate (page->no_match_words), NULL);

  *show_all = sy_button_new (sy_translate (page->show_all), NULL);
  gtk_box_append (GTK_BOX (add_buttons (state)), *show_all);
  return state;
}

GtkWidget *
sy_tasks_state_error (const char *store, GtkWidget **error_words, GtkWidget **retry)
{
  GtkWidget *state = sy_tasks_state_new (_("The record cannot be read"), "", error_words);
  g_autofree char *where = g_strdup_printf (_("Asked for: %s. Nothing in it was changed. What is not saved yet "
                                              "stays with you as a draft."),
                                            store);
  GtkWidget *place = gtk_label_new (where);

  gtk_widget_add_css_class (*error_words, "sy-problem");
  gtk_label_set_selectable (GTK_LABEL (*error_words), TRUE);
  gtk_label_set_wrap (GTK_LABEL (place), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (place), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (place), 66);
  gtk_label_set_justify (GTK_LABEL (place), GTK_JUSTIFY_CENTER);
  gtk_box_append (GTK_BOX (state), place);
  *retry = sy_button_new (_("_Try again"), NULL);
  gtk_box_append (GTK_BOX (add_buttons (state)), *retry);
  return state;
}
