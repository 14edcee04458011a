/* SPDX-License-Identifier: MIT */
#ifndef SY_SEAL_H
#define SY_SEAL_H

#include <gtk/gtk.h>

#include "sy-worker.h"

/* Whether the journal holds: verified when somebody asks, what was found and when in words. It stands there until the journal
   moves on. */
#define SY_TYPE_SEAL (sy_seal_get_type ())
G_DECLARE_FINAL_TYPE (SySeal, sy_seal, SY, SEAL, GtkBox)

GtkWidget *sy_seal_new (SyWorker *worker);

#endif
