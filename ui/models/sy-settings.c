/* SPDX-License-Identifier: MIT */
#include "sy-settings.h"

#include <glib/gstdio.h>
#include <langinfo.h>

#define GROUP "steelyard"

static char *
settings_path (void)
{
  return g_build_filename (g_get_user_config_dir (), "steelyard", "settings.ini", NULL);
}

static GKeyFile *
read_settings (void)
{
  GKeyFile *file = g_key_file_new ();
  g_autofree char *path = settings_path ();

  /* Nothing here is worth a question: without the file everything has its default. */
  g_key_file_load_from_file (file, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
  return file;
}

static gboolean
write_settings (GKeyFile *file, GError **error)
{
  g_autofree char *path = settings_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  gsize length;
  g_autofree char *text = g_key_file_to_data (file, &length, NULL);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      int code = errno;

      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (code), "%s: %s", folder,
                   g_strerror (code));
      return FALSE;
    }
  return g_file_set_contents_full (path, text, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT, 0600,
                                   error);
}

char *
sy_settings_get (const char *key)
{
  g_autoptr (GKeyFile) file = read_settings ();
  char *value = g_key_file_get_string (file, GROUP, key, NULL);

  return value != NULL ? value : g_strdup ("");
}

gboolean
sy_settings_set (const char *key, const char *value, GError **error)
{
  g_autoptr (GKeyFile) file = read_settings ();

  g_key_file_set_string (file, GROUP, key, value);
  return write_settings (file, error);
}

SyUnits
sy_settings_get_units (const SyRegion *region)
{
  g_autofree char *id = sy_settings_get ("units");
  SyUnits units = SY_UNITS_METRIC;

  if (sy_units_from_id (id, &units))
    return units;
  if (region != NULL && region->has_units)
    return region->units;
#ifdef _NL_MEASUREMENT_MEASUREMENT
  /* A byte: 1 metric, 2 US (ISO/IEC TR 14652). */
  if (*nl_langinfo (_NL_MEASUREMENT_MEASUREMENT) == 2)
    return SY_UNITS_US;
#endif
  return SY_UNITS_METRIC;
}

gboolean
sy_settings_set_units (SyUnits units, GError **error)
{
  return sy_settings_set ("units", sy_units_id (units), error);
}

gboolean
sy_settings_get_size (int *width, int *height, gboolean *maximized)
{
  g_autoptr (GKeyFile) file = read_settings ();
  int w = g_key_file_get_integer (file, GROUP, "width", NULL);
  int h = g_key_file_get_integer (file, GROUP, "height", NULL);

  /* A size that no screen has is no size. */
  if (w < 200 || h < 200 || w > 16384 || h > 16384)
    return FALSE;
  *width = w;
  *height = h;
  *maximized = g_key_file_get_boolean (file, GROUP, "maximized", NULL);
  return TRUE;
}

gboolean
sy_settings_set_size (int width, int height, gboolean maximized, GError **error)
{
  g_autoptr (GKeyFile) file = read_settings ();

  g_key_file_set_integer (file, GROUP, "width", width);
  g_key_file_set_integer (file, GROUP, "height", height);
  g_key_file_set_boolean (file, GROUP, "maximized", maximized);
  return write_settings (file, error);
}
