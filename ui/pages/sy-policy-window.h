/* SPDX-License-Identifier: MIT */
#ifndef SY_POLICY_WINDOW_H
#define SY_POLICY_WINDOW_H

#include <gtk/gtk.h>

/* What a policy is called and whether it loosens anything, in one sentence; NULL: @text is no policy. New string. */
char *sy_policy_words (const char *text);
/* A window over @parent with a policy's own text. */
GtkWidget *sy_policy_window_new (GtkWindow *parent, const char *text);

#endif
