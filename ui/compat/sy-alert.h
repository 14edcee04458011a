/* SPDX-License-Identifier: MIT */
#ifndef SY_ALERT_H
#define SY_ALERT_H

#include <gtk/gtk.h>

/*
 * A question over a window, answered later. To be GtkAlertDialog once GTK 4.10 is at hand.
 */
#define SY_ALERT_CLOSED (-1) /* Escape, or the parent went away */

/**
 * sy_alert_async:
 * Parameters:   answers   labels with mnemonics, NULL-terminated; their numbers are the result.
 *               safe      number of the answer that Return gives.
 *               harmful   number of the answer that loses something, or -1.
 *               callback  gets no source object; the parent may be gone by then.
 */
void sy_alert_async (GtkWindow *parent, const char *question, const char *detail,
                     const char *const *answers, int safe, int harmful, GCancellable *cancellable,
                     GAsyncReadyCallback callback, gpointer user_data);
/* The number of the answer, or SY_ALERT_CLOSED. */
int sy_alert_finish (GAsyncResult *result);

#endif
