/* SPDX-License-Identifier: MIT */
#ifndef SY_PRINT_FOLIO_H
#define SY_PRINT_FOLIO_H

#include <gtk/gtk.h>

#include "sy-folio.h"

/* How printing ended: @error NULL and @sent FALSE: the person thought better of it. */
typedef void (*SyPrinted) (gboolean sent, const GError *error, gpointer user_data);

/* Asks for a printer over the window of @widget and prints on the folio's own paper. Takes @folio. @printed is not called once @widget is gone. */
void sy_print_folio (GtkWidget *widget, SyFolio *folio, const char *name, SyPrinted printed);

#endif
