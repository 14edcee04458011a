/* SPDX-License-Identifier: MIT */
#include <libintl.h>
#include <locale.h>

#include "sy-application.h"

int
main (int argc, char **argv)
{
  g_autoptr (SyApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (SY_GETTEXT_DOMAIN, SY_LOCALE_DIR);
  bind_textdomain_codeset (SY_GETTEXT_DOMAIN, "UTF-8");
  /* The first is what assistive technology calls the program, the second what people do. */
  g_set_prgname (SY_APPLICATION_ID);
  g_set_application_name ("Steelyard");
  application = sy_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
