/* SPDX-License-Identifier: MIT */
#ifndef SY_SETTINGS_H
#define SY_SETTINGS_H

#include <gio/gio.h>

#include "sy-region.h"

/*
 * What the program remembers about this person, not about any task: a key file, owner-only,
 * $XDG_CONFIG_HOME/steelyard/settings.ini. Read and written whole at each call, so that two windows do not
 * overwrite what the other remembered. A file that cannot be read counts as empty.
 */
#define SY_SETTING_AUTHOR "author" /* who saved last, as typed     */
#define SY_SETTING_ROLE "role"     /* in which role               */
#define SY_SETTING_STYLE "style"   /* "system", "light" or "dark"  */
#define SY_SETTING_REGION "region" /* id of a region; "" for none */

/* New string, "" when it was never set. */
char *sy_settings_get (const char *key);
/* Return value: FALSE with the error when it could not be written. */
gboolean sy_settings_set (const char *key, const char *value, GError **error);

/* Unit system of a new task: what was chosen, else that of the region in force (NULL: none), else what the locale measures in. */
SyUnits sy_settings_get_units (const SyRegion *region);
gboolean sy_settings_set_units (SyUnits units, GError **error);

/* FALSE when no size was kept; the values are then untouched. */
gboolean sy_settings_get_size (int *width, int *height, gboolean *maximized);
gboolean sy_settings_set_size (int width, int height, gboolean maximized, GError **error);

#endif
