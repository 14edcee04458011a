/* SPDX-License-Identifier: MIT */
#include "sy-style.h"

#include <string.h>

/* The desktop's wish for dark, as sandboxed and other programs learn of it (XDG Desktop Portal, Settings). */
#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_SETTINGS "org.freedesktop.portal.Settings"
#define APPEARANCE "org.freedesktop.appearance"
#define COLOUR_SCHEME "color-scheme"
enum
{
  SCHEME_NONE = 0,
  SCHEME_DARK = 1,
  SCHEME_LIGHT = 2,
};

struct _SyStyleSheet
{
  GObject parent_instance;
  GdkDisplay *display;
  GtkSettings *settings;
  char *resource_path;
  gboolean strict;
  GtkCssProvider *colours, *rules;
  SyStyle style;
  gboolean dark;
  gboolean system_dark; /* what GTK's own settings said before anything was changed */
  guint32 scheme;
  GDBusConnection *bus;
  guint subscription;
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (SyStyleSheet, sy_style_sheet, G_TYPE_OBJECT)

static const char *const style_ids[] = { "system", "light", "dark" };

const char *
sy_style_id (SyStyle style)
{
  return style_ids[style];
}

SyStyle
sy_style_from_id (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (style_ids); i++)
    if (g_strcmp0 (id, style_ids[i]) == 0)
      return (SyStyle) i;
  return SY_STYLE_SYSTEM;
}

static void
parsing_error_cb (GtkCssProvider *provider, GtkCssSection *section, const GError *error,
                  SyStyleSheet *self)
{
  g_autofree char *where = gtk_css_section_to_string (section);

  (void) provider;
  if (self->strict)
    g_error ("%s: %s", where, error->message);
  g_warning ("%s: %s", where, error->message);
}

static GtkCssProvider *
add_provider (SyStyleSheet *self)
{
  GtkCssProvider *provider = gtk_css_provider_new ();

  g_signal_connect_object (provider, "parsing-error", G_CALLBACK (parsing_error_cb), self, 0);
  gtk_style_context_add_provider_for_display (self->display, GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  return provider;
}

static gboolean
wants_dark (SyStyleSheet *self)
{
  switch (self->style)
    {
    case SY_STYLE_LIGHT:
      return FALSE;
    case SY_STYLE_DARK:
      return TRUE;
    case SY_STYLE_SYSTEM:
      break;
    }
  if (self->scheme == SCHEME_NONE)
    return self->system_dark;
  return self->scheme == SCHEME_DARK;
}

static void
apply (SyStyleSheet *self, gboolean first)
{
  gboolean dark = wants_dark (self);
  g_autofree char *path = NULL;

  if (!first && dark == self->dark)
    return;
  self->dark = dark;
  path = g_build_path ("/", self->resource_path, dark ? "dark.css" : "light.css", NULL);
  gtk_css_provider_load_from_resource (self->colours, path);
  g_object_set (self->settings, "gtk-application-prefer-dark-theme", dark, NULL);
}

static void
take_scheme (SyStyleSheet *self, GVariant *value)
{
  /* The value comes in one or two wrappings, by the age of the portal. */
  g_autoptr (GVariant) inner = g_variant_ref (value);

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *next = g_variant_get_variant (inner);

      g_variant_unref (inner);
      inner = next;
    }
  if (!g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    return;
  self->scheme = g_variant_get_uint32 (inner);
  apply (self, FALSE);
}

static void
scheme_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyStyleSheet) self = SY_STYLE_SHEET (user_data);
  g_autoptr (GVariant) answer = g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);
  g_autoptr (GVariant) value = NULL;

  /* No portal: the desktop has no such wish. */
  if (answer == NULL)
    return;
  value = g_variant_get_child_value (answer, 0);
  take_scheme (self, value);
}

static void
setting_changed_cb (GDBusConnection *bus, const char *sender, const char *path, const char *interface,
                    const char *signal, GVariant *arguments, gpointer user_data)
{
  SyStyleSheet *self = SY_STYLE_SHEET (user_data);
  const char *space, *key;
  g_autoptr (GVariant) value = NULL;

  (void) bus, (void) sender, (void) path, (void) interface, (void) signal;
  if (!g_variant_is_of_type (arguments, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (arguments, "(&s&sv)", &space, &key, &value);
  if (g_str_equal (space, APPEARANCE) && g_str_equal (key, COLOUR_SCHEME))
    take_scheme (self, value);
}

static void
bus_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyStyleSheet) self = SY_STYLE_SHEET (user_data);

  (void) source;
  self->bus = g_bus_get_finish (result, NULL);
  if (self->bus == NULL || g_cancellable_is_cancelled (self->cancellable))
    return;
  self->subscription = g_dbus_connection_signal_subscribe (
    self->bus, PORTAL_NAME, PORTAL_SETTINGS, "SettingChanged", PORTAL_PATH, APPEARANCE,
    G_DBUS_SIGNAL_FLAGS_NONE, setting_changed_cb, self, NULL);
  g_dbus_connection_call (self->bus, PORTAL_NAME, PORTAL_PATH, PORTAL_SETTINGS, "Read",
                          g_variant_new ("(ss)", APPEARANCE, COLOUR_SCHEME), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NO_AUTO_START, 3000, self->cancellable, scheme_read_cb,
                          g_object_ref (self));
}

static void
sy_style_sheet_dispose (GObject *object)
{
  SyStyleSheet *self = SY_STYLE_SHEET (object);

  g_cancellable_cancel (self->cancellable);
  if (self->subscription != 0)
    g_dbus_connection_signal_unsubscribe (self->bus, self->subscription);
  self->subscription = 0;
  g_clear_object (&self->bus);
  if (self->display != NULL)
    {
      gtk_style_context_remove_provider_for_display (self->display,
                                                     GTK_STYLE_PROVIDER (self->colours));
      gtk_style_context_remove_provider_for_display (self->display, GTK_STYLE_PROVIDER (self->rules));
    }
  g_clear_object (&self->colours);
  g_clear_object (&self->rules);
  g_clear_object (&self->display);
  G_OBJECT_CLASS (sy_style_sheet_parent_class)->dispose (object);
}

static void
sy_style_sheet_finalize (GObject *object)
{
  SyStyleSheet *self = SY_STYLE_SHEET (object);

  g_clear_object (&self->cancellable);
  g_free (self->resource_path);
  G_OBJECT_CLASS (sy_style_sheet_parent_class)->finalize (object);
}

static void
sy_style_sheet_class_init (SyStyleSheetClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = sy_style_sheet_dispose;
  object_class->finalize = sy_style_sheet_finalize;
}

static void
sy_style_sheet_init (SyStyleSheet *self)
{
  self->cancellable = g_cancellable_new ();
}

/* Whether the theme that the desktop chose is itself a dark one. */
static gboolean
theme_is_dark (GtkSettings *settings)
{
  g_autofree char *theme = NULL;
  gboolean dark = FALSE;

  g_object_get (settings, "gtk-theme-name", &theme, "gtk-application-prefer-dark-theme", &dark, NULL);
  return dark || (theme != NULL && (g_str_has_suffix (theme, "-dark") || g_str_has_suffix (theme, ":dark")));
}

SyStyleSheet *
sy_style_sheet_new (GdkDisplay *display, const char *resource_path, gboolean strict)
{
  SyStyleSheet *self = g_object_new (SY_TYPE_STYLE_SHEET, NULL);
  g_autofree char *rules = g_build_path ("/", resource_path, "style.css", NULL);

  self->display = g_object_ref (display);
  self->settings = gtk_settings_get_for_display (display);
  self->resource_path = g_strdup (resource_path);
  self->strict = strict;
  self->system_dark = theme_is_dark (self->settings);
  self->colours = add_provider (self);
  self->rules = add_provider (self);
  apply (self, TRUE);
  gtk_css_provider_load_from_resource (self->rules, rules);
  g_bus_get (G_BUS_TYPE_SESSION, self->cancellable, bus_cb, g_object_ref (self));
  return self;
}

void
sy_style_sheet_set (SyStyleSheet *self, SyStyle style)
{
  g_return_if_fail (SY_IS_STYLE_SHEET (self));
  self->style = style;
  apply (self, FALSE);
}

SyStyle
sy_style_sheet_get (SyStyleSheet *self)
{
  g_return_val_if_fail (SY_IS_STYLE_SHEET (self), SY_STYLE_SYSTEM);
  return self->style;
}

gboolean
sy_style_sheet_is_dark (SyStyleSheet *self)
{
  g_return_val_if_fail (SY_IS_STYLE_SHEET (self), FALSE);
  return self->dark;
}

static void
look_up (GtkStyleContext *context, const char *name, SyColour *colour)
{
  GdkRGBA rgba;

  if (!gtk_style_context_lookup_color (context, name, &rgba))
    return;
  colour->red = (double) rgba.red;
  colour->green = (double) rgba.green;
  colour->blue = (double) rgba.blue;
}

SyPalette
sy_style_palette (GtkWidget *widget)
{
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  SyPalette palette = sy_palette_paper;

  look_up (context, "sy_paper", &palette.paper);
  look_up (context, "sy_ink", &palette.ink);
  look_up (context, "sy_hairline", &palette.hairline);
  look_up (context, "sy_accent", &palette.accent);
  look_up (context, "sy_warning", &palette.warning);
  return palette;
}
