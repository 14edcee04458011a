/* SPDX-License-Identifier: MIT */
#include "sy-i18n.h"
#include "sy-window.h"

static void
append_section (GMenu *menu, const char *label, GMenu *section)
{
  g_menu_append_section (menu, label, G_MENU_MODEL (section));
}

GMenuModel *
sy_window_menu_model (void)
{
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) start = g_menu_new ();
  g_autoptr (GMenu) exchange = g_menu_new ();
  g_autoptr (GMenu) style = g_menu_new ();
  g_autoptr (GMenu) units = g_menu_new ();
  g_autoptr (GMenu) help = g_menu_new ();

  g_menu_append (start, _("_New…"), "win.choose-new");
  g_menu_append (start, _("_Measure a lift"), "win.new");
  g_menu_append (start, _("New _from an earlier one…"), "win.new-from");
  g_menu_append (start, _("New _variant of this"), "win.new-variant");
  g_menu_append (start, _("_Compare with…"), "win.compare");
  g_menu_append (start, _("Pr_int…"), "win.print-task");
  g_menu_append (start, _("_Print a measuring sheet"), "win.survey");
  g_menu_append (start, _("The _register as at a day"), "win.page::register");
  append_section (menu, NULL, start);

  g_menu_append (exchange, _("_Hand over…"), "win.export");
  g_menu_append (exchange, _("Take over a _bundle…"), "win.import-bundle");
  g_menu_append (exchange, _("_Take lifts from a table…"), "win.import-lifts");
  append_section (menu, _("Exchange"), exchange);

  g_menu_append (style, _("_Follow the system"), "app.style::system");
  g_menu_append (style, _("_Light"), "app.style::light");
  g_menu_append (style, _("_Dark"), "app.style::dark");
  append_section (menu, _("Style"), style);

  g_menu_append (units, _("M_etric (cm, kg)"), "win.default-units::metric");
  g_menu_append (units, _("_US (in, lb)"), "win.default-units::us");
  append_section (menu, _("Units of new tasks"), units);

  g_menu_append (help, _("_Keyboard shortcuts"), "win.show-help-overlay");
  g_menu_append (help, _("_About Steelyard"), "app.about");
  append_section (menu, NULL, help);
  return G_MENU_MODEL (menu);
}
