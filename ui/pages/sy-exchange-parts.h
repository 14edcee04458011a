/* SPDX-License-Identifier: MIT */
#ifndef SY_EXCHANGE_PARTS_H
#define SY_EXCHANGE_PARTS_H

#include <gtk/gtk.h>

/* What the windows that hand over and take over have in common. */

/* The body of a window, which Escape closes; its size is set. */
GtkWidget *sy_exchange_body (GtkWindow *window);
/* A label for what came of it, announced when it changes. */
GtkWidget *sy_exchange_words (void);
void sy_exchange_say (GtkWidget *words, const char *text, gboolean is_wrong);
GtkWidget *sy_exchange_close_button (GtkWindow *window);

#endif
