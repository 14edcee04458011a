/* SPDX-License-Identifier: MIT */
#include "sy-application.h"

#include <glib/gstdio.h>

#include "sy-i18n.h"
#include "sy-look-resource.h"
#include "sy-settings.h"
#include "sy-style.h"
#include "sy-window.h"
#include "sy-words.h"

struct _SyApplication
{
  GtkApplication parent_instance;
  SyStyleSheet *sheet;
};

G_DEFINE_FINAL_TYPE (SyApplication, sy_application, GTK_TYPE_APPLICATION)

static gboolean
in_test (void)
{
  const char *value = g_getenv ("STEELYARD_TEST");

  return value != NULL && *value != '\0';
}

/* Topics: actions */

static void
style_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyApplication *self = user_data;
  SyStyle style = sy_style_from_id (g_variant_get_string (parameter, NULL));
  g_autoptr (GError) error = NULL;

  sy_style_sheet_set (self->sheet, style);
  g_simple_action_set_state (action, g_variant_new_string (sy_style_id (style)));
  if (!sy_settings_set (SY_SETTING_STYLE, sy_style_id (style), &error))
    g_message ("The choice of style could not be kept: %s", error->message);
}

static void
about_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (user_data));
  g_autofree char *screening = sy_words_screening (sy_translate);
  g_autofree char *comments = g_strdup_printf ("%s\n\n%s",
                                               _("Assesses how heavy things are moved in a workshop, and keeps the "
                                                 "record."),
                                               screening);

  (void) action, (void) parameter;
  gtk_show_about_dialog (parent, "program-name", _("Steelyard"), "version", SY_VERSION, "logo-icon-name",
                         SY_APPLICATION_ID, "comments", comments, "license-type", GTK_LICENSE_MIT_X11, NULL);
}

/* Every window closes as if by hand, so that each may ask about what is not saved. */
static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (user_data)));

  (void) action, (void) parameter;
  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
}

static const GActionEntry actions[] = {
  { .name = "style", .activate = style_action, .parameter_type = "s", .state = "'system'" },
  { .name = "about", .activate = about_action },
  { .name = "quit", .activate = quit_action },
};

typedef struct
{
  const char *action;
  const char *accels[3];
} Shortcut;

static const Shortcut shortcuts[] = {
  { "win.choose-new", { "<Control>n" } },
  { "win.new-from", { "<Control><Shift>n" } },
  { "win.save", { "<Control>s" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.search", { "<Control>f" } },
  { "win.back", { "<Alt>Left" } },
  { "win.units", { "<Control>u" } },
  { "win.print", { "<Control>p" } },
  { "win.page::tasks", { "<Alt>1" } },
  { "win.page::changeovers", { "<Alt>2" } },
  { "win.page::cases", { "<Alt>3" } },
  { "win.page::dies", { "<Alt>4" } },
  { "win.page::gear", { "<Alt>5" } },
  { "win.page::actions", { "<Alt>6" } },
  { "win.page::journal", { "<Alt>7" } },
  { "win.page::register", { "<Alt>8" } },
  { "win.page::matrix", { "<Alt>9" } },
  { "win.compare", { "<Control>d" } },
  { "win.export", { "<Control>e" } },
  { "win.import-bundle", { "<Control>i" } },
  { "win.import-lifts", { "<Control><Shift>i" } },
  { "win.show-help-overlay", { "<Control>question" } },
  { "win.close", { "<Control>w" } },
  { "app.quit", { "<Control>q" } },
};

/* Topics: windows */

char *
sy_application_default_store (GError **error)
{
  g_autofree char *folder = g_build_filename (g_get_user_data_dir (), "steelyard", NULL);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      int code = errno;

      g_set_error (error, G_FILE_ERROR, g_file_error_from_errno (code), "%s: %s", folder, g_strerror (code));
      return NULL;
    }
  return g_build_filename (folder, "steelyard.store", NULL);
}

static GtkWindow *
find_window (SyApplication *self, const char *store)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (SY_IS_WINDOW (l->data)
        && g_str_equal (sy_worker_get_store (sy_window_get_worker (l->data)), store))
      return l->data;
  return NULL;
}

/* The desk of a policy by its short name ("uk-filter"), or of a policy file as meant from where the command was given. */
static SyDesk *
new_desk (GApplicationCommandLine *line, const char *policy, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autofree char *text = NULL;
  SyDesk *named = sy_desk_new_named (policy, &failed);
  gsize length;

  if (named == NULL && failed == NULL)
    {
      g_autoptr (GFile) file = g_application_command_line_create_file_for_arg (line, policy);

      if (!g_file_load_contents (file, NULL, &text, &length, NULL, error))
        return NULL;
      return sy_desk_new (text, length, error);
    }
  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  return named;
}

/* The built-in policy in the region of this person's choice. One that there is no more is left out, and said. */
static SyDesk *
own_desk (GError **error)
{
  g_autofree char *region = sy_settings_get (SY_SETTING_REGION);
  g_autoptr (GError) failed = NULL;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, error);
  SyDesk *in_region = desk != NULL && *region != '\0' ? sy_desk_in_region (desk, region, &failed) : NULL;

  if (failed != NULL)
    g_message ("The region that was chosen is not in force: %s", failed->message);
  return in_region != NULL ? in_region : g_steal_pointer (&desk);
}

/* As asked for on the command line; NULL without an error: nothing was. */
static SyDesk *
asked_desk (GApplicationCommandLine *line, const char *policy, const char *region, GError **error)
{
  g_autoptr (SyDesk) desk = NULL;

  if (policy == NULL && region == NULL)
    return NULL;
  desk = policy != NULL ? new_desk (line, policy, error) : sy_desk_new (NULL, 0, error);
  return desk != NULL ? sy_desk_in_region (desk, region, error) : NULL;
}

/* @desk NULL: the built-in policy in the region that was chosen, or that of the window in which the store is open.
   Return value: FALSE with the error when there is nothing to show. */
static gboolean
present_store (SyApplication *self, const char *store, SyDesk *desk, gboolean begin_new, GError **error)
{
  GtkWindow *window = find_window (self, store);

  if (window != NULL && desk != NULL)
    {
      const char *open = sy_desk_policy (sy_worker_get_desk (sy_window_get_worker (SY_WINDOW (window))))->id;

      if (!g_str_equal (open, sy_desk_policy (desk)->id))
        {
          g_set_error (error, G_IO_ERROR, G_IO_ERROR_BUSY,
                       _("the record is open under the policy %s; close its window to open it under another one"), open);
          return FALSE;
        }
    }
  if (window == NULL)
    {
      g_autoptr (SyDesk) own = desk != NULL ? sy_desk_ref (desk) : own_desk (error);
      g_autoptr (SyWorker) worker = NULL;

      if (own == NULL)
        return FALSE;
      worker = sy_worker_new (store, own);
      window = GTK_WINDOW (sy_window_new (GTK_APPLICATION (self), worker));
    }
  gtk_window_present (window);
  if (begin_new)
    gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL);
  return TRUE;
}

static int
sy_application_command_line (GApplication *application, GApplicationCommandLine *line)
{
  GVariantDict *options = g_application_command_line_get_options_dict (line);
  gboolean begin_new = g_variant_dict_contains (options, "new");
  g_autoptr (GError) error = NULL;
  g_autofree char *store = NULL;
  g_autoptr (SyDesk) desk = NULL;
  const char *given = NULL, *policy = NULL, *region = NULL;

  g_variant_dict_lookup (options, "policy", "^&ay", &policy);
  g_variant_dict_lookup (options, "region", "&s", &region);
  desk = asked_desk (line, policy, region, &error);
  if (error != NULL)
    {
      g_application_command_line_printerr (line, "steelyard: %s%s%s\n", policy != NULL ? policy : "", policy != NULL ? ": " : "",
                                           error->message);
      return 1;
    }
  if (g_variant_dict_lookup (options, "store", "^&ay", &given))
    {
      /* A path is meant from where the command was given; "memory:" is no path. */
      g_autoptr (GFile) file = g_application_command_line_create_file_for_arg (line, given);

      store = g_str_has_prefix (given, "memory:") ? g_strdup (given) : g_file_get_path (file);
      if (store == NULL)
        store = g_strdup (given);
    }
  else
    store = sy_application_default_store (&error);

  if (store == NULL || !present_store (SY_APPLICATION (application), store, desk, begin_new, &error))
    {
      g_application_command_line_printerr (line, "steelyard: %s\n", error->message);
      return 1;
    }
  return 0;
}

static int
sy_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  (void) application;
  if (g_variant_dict_contains (options, "version"))
    {
      g_print ("steelyard %s\n", SY_VERSION);
      return 0;
    }
  return -1;
}

static void
sy_application_startup (GApplication *application)
{
  SyApplication *self = SY_APPLICATION (application);
  g_autofree char *style = NULL;
  GAction *action;

  /* The linker drops a resource to which nothing refers. */
  (void) sy_look_get_resource ();
  G_APPLICATION_CLASS (sy_application_parent_class)->startup (application);

  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  for (guint i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), shortcuts[i].action, shortcuts[i].accels);

  if (in_test ())
    g_object_set (gtk_settings_get_default (), "gtk-enable-animations", FALSE, NULL);
  self->sheet = sy_style_sheet_new (gdk_display_get_default (), SY_RESOURCE_PATH "/look", in_test ());
  style = sy_settings_get (SY_SETTING_STYLE);
  sy_style_sheet_set (self->sheet, sy_style_from_id (style));
  action = g_action_map_lookup_action (G_ACTION_MAP (self), "style");
  g_simple_action_set_state (G_SIMPLE_ACTION (action),
                             g_variant_new_string (sy_style_id (sy_style_sheet_get (self->sheet))));
  gtk_window_set_default_icon_name (SY_APPLICATION_ID);
}

static void
sy_application_activate (GApplication *application)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *store = sy_application_default_store (&error);

  if (store == NULL || !present_store (SY_APPLICATION (application), store, NULL, FALSE, &error))
    g_printerr ("steelyard: %s\n", error->message);
}

static void
sy_application_shutdown (GApplication *application)
{
  g_clear_object (&SY_APPLICATION (application)->sheet);
  G_APPLICATION_CLASS (sy_application_parent_class)->shutdown (application);
}

static void
sy_application_class_init (SyApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->startup = sy_application_startup;
  application_class->activate = sy_application_activate;
  application_class->command_line = sy_application_command_line;
  application_class->handle_local_options = sy_application_handle_local_options;
  application_class->shutdown = sy_application_shutdown;
}

static void
sy_application_init (SyApplication *self)
{
  const GOptionEntry entries[] = {
    { "store", 's', 0, G_OPTION_ARG_FILENAME, NULL, _("Open the record kept in FILE"), _("FILE") },
    { "policy", 'p', 0, G_OPTION_ARG_FILENAME, NULL, _("Judge by the policy in FILE, or by one that comes with the program: uk-filter"),
      _("FILE") },
    { "region", 'r', 0, G_OPTION_ARG_STRING, NULL, _("What results defer to: au, ca, eu, other, uk or us"), _("REGION") },
    { "new", 'n', 0, G_OPTION_ARG_NONE, NULL, _("Begin with a new lift"), NULL },
    { "version", 'v', 0, G_OPTION_ARG_NONE, NULL, _("Print the version"), NULL },
    { NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), entries);
}

SyApplication *
sy_application_new (void)
{
  GApplicationFlags flags = G_APPLICATION_HANDLES_COMMAND_LINE;

  if (in_test ())
    flags |= G_APPLICATION_NON_UNIQUE;
  return g_object_new (SY_TYPE_APPLICATION, "application-id", SY_APPLICATION_ID, "flags", flags,
                       "resource-base-path", SY_RESOURCE_PATH, NULL);
}
