/* SPDX-License-Identifier: MIT */
/* What stands around the pages: the line above them and the rail beside them. */
#include "sy-window-private.h"

#include "sy-i18n.h"
#include "sy-name.h"

GtkWidget *
sy_window_new_header (SyWindow *self)
{
  GtkWidget *header = gtk_header_bar_new ();
  GtkWidget *titles = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *menu = gtk_menu_button_new ();
  g_autoptr (GMenuModel) model = sy_window_menu_model ();

  self->back = gtk_button_new_from_icon_name ("go-previous-symbolic");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->back), "win.back");
  sy_name (self->back, _("Back to the list"));
  gtk_widget_set_tooltip_text (self->back, _("Back to the list"));

  self->title = gtk_label_new (NULL);
  self->subtitle = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->title, "sy-title");
  gtk_widget_add_css_class (self->subtitle, "sy-subtitle");
  gtk_label_set_ellipsize (GTK_LABEL (self->title), PANGO_ELLIPSIZE_END);
  gtk_label_set_ellipsize (GTK_LABEL (self->subtitle), PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (titles, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (titles), self->title);
  gtk_box_append (GTK_BOX (titles), self->subtitle);

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (menu), "open-menu-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (menu), model);
  gtk_menu_button_set_primary (GTK_MENU_BUTTON (menu), TRUE);
  gtk_widget_set_name (menu, "primary-menu");
  sy_name (menu, _("Main menu"));
  gtk_widget_set_tooltip_text (menu, _("Main menu"));

  self->print = sy_button_new (_("Pr_int…"), "win.print-task");
  gtk_widget_set_name (self->print, "print");
  gtk_widget_set_tooltip_text (self->print, _("Its sheets: an assessment, a plan, a card for the wall, its history"));
  gtk_widget_set_visible (self->print, FALSE);

  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), self->back);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (header), titles);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), menu);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (header), self->print);
  return header;
}

static void
add_place (GtkWidget *rail, const char *page, const char *title)
{
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *label = gtk_label_new (title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_button_set_child (GTK_BUTTON (button), label);
  gtk_widget_set_name (button, page);
  sy_name (button, title);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", page);
  gtk_box_append (GTK_BOX (rail), button);
}

GtkWidget *
sy_window_new_rail (void)
{
  const char *const names[] = { "actions", "improvements", "journal", "register", "matrix", "survey", "limits" };
  const char *const labels[] = { _("Actions"), _("Improvements"), _("Journal"), _("Register"), _("What lifts what"),
                                 _("Measuring sheet"), _("Limits") };
  GtkWidget *rail = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  gtk_widget_add_css_class (rail, "sy-rail");
  for (int i = 0; i < SY_N_REGISTERS; i++)
    {
      const SyRegisterPage *page = sy_register_page ((SyRegister) i);

      if (sy_register_is_offered ((SyRegister) i))
        add_place (rail, page->page, sy_translate (page->title));
    }
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    add_place (rail, names[i], labels[i]);
  return rail;
}

static gboolean
escape_cb (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  (void) arguments, (void) user_data;
  if (!g_action_group_get_action_enabled (G_ACTION_GROUP (widget), "back"))
    return FALSE;
  return gtk_widget_activate_action (widget, "win.back", NULL);
}

/* After everything inside: a popover or a search that is open takes Escape for itself. */
void
sy_window_add_escape (SyWindow *self)
{
  GtkEventController *controller = gtk_shortcut_controller_new ();

  gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_BUBBLE);
  gtk_shortcut_controller_add_shortcut (
    GTK_SHORTCUT_CONTROLLER (controller),
    gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                      gtk_callback_action_new (escape_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}
