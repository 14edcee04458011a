/* SPDX-License-Identifier: MIT */
#ifndef SY_APPLICATION_H
#define SY_APPLICATION_H

#include <gtk/gtk.h>

#define SY_APPLICATION_ID "org.steelyard.Steelyard"
#define SY_RESOURCE_PATH "/org/steelyard/Steelyard"

/*
 * The program: options, style, shortcuts, one window for each store.
 * With STEELYARD_TEST set in the environment it stands alone beside others of its kind, moves nothing by itself
 * and does not forgive a fault in a style sheet.
 */
#define SY_TYPE_APPLICATION (sy_application_get_type ())
G_DECLARE_FINAL_TYPE (SyApplication, sy_application, SY, APPLICATION, GtkApplication)

SyApplication *sy_application_new (void);

/* $XDG_DATA_HOME/steelyard/steelyard.store; its folder is made, owner-only. NULL with the error. New string. */
char *sy_application_default_store (GError **error);

#endif
