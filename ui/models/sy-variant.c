/* SPDX-License-Identifier: MIT */
#include "sy-variant.h"

#include <gio/gio.h>

#include "sy-i18n.h"

/* Takes @origin. */
static SyDraft *
new_draft (SyForm *form, const char *name, char *origin)
{
  SyDraft *draft = sy_draft_new ("variant");
  const char *notes;

  sy_form_fill_draft (form, draft);
  g_free (draft->name);
  draft->name = g_strdup (name);
  notes = g_hash_table_lookup (draft->texts, "notes");
  g_hash_table_replace (draft->texts, g_strdup ("notes"),
                        notes != NULL && *notes != '\0' ? g_strdup_printf ("%s\n%s", notes, origin) : g_strdup (origin));
  g_free (origin);
  return draft;
}

SyDraft *
sy_variant_new (SyForm *form, const char *name, gint64 revision)
{
  /* Translators: name of the variant of a task. */
  g_autofree char *own = g_strdup_printf (_("%s (variant)"), name);

  /* Translators: a name, and the number of a revision. */
  return new_draft (form, own, revision > 0 ? g_strdup_printf (_("Variant of “%s”, revision %ld."), name, (long) revision)
                                            : g_strdup_printf (_("Variant of “%s”."), name));
}

SyDraft *
sy_variant_new_from (SyDesk *desk, const SyEvent *revision, GError **error)
{
  SyUnits units = SY_UNITS_METRIC;
  g_autoptr (SyForm) form = NULL;

  if (sy_method_find (revision->method) == NULL)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED, _("This edition has no method “%s”."), revision->method);
      return NULL;
    }
  form = sy_form_new (desk, revision->method, units);
  if (!sy_form_load_document (form, revision->facts, error))
    return NULL;
  /* Translators: a name, and the number of a revision. */
  return new_draft (form, "", g_strdup_printf (_("Begun from “%s”, revision %ld."), revision->name,
                                               (long) revision->revision));
}
