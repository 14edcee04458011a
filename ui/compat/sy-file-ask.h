/* SPDX-License-Identifier: MIT */
#ifndef SY_FILE_ASK_H
#define SY_FILE_ASK_H

#include <gtk/gtk.h>

/* Asks where to save; asks again by itself before a file is replaced. To be GtkFileDialog in GTK 4.10.
   @pattern: "*.pdf" with its name in words; NULL: any. */
void sy_file_ask_save_async (GtkWindow *parent, const char *title, const char *suggested_name,
                             const char *pattern_name, const char *pattern, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer user_data);
/* New reference; NULL: the person thought better of it. */
GFile *sy_file_ask_save_finish (GAsyncResult *result);

/* Asks for a file that is there. */
void sy_file_ask_open_async (GtkWindow *parent, const char *title, GCancellable *cancellable, GAsyncReadyCallback callback,
                             gpointer user_data);
GFile *sy_file_ask_open_finish (GAsyncResult *result); /* likewise */

#endif
