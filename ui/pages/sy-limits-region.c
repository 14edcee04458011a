/* SPDX-License-Identifier: MIT */
#include "sy-limits-region.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-regions.h"
#include "sy-settings.h"
#include "sy-task-parts.h"

/* ---- the choice ---- */

/* None, elsewhere, then those with titles. */
static GPtrArray *
list_choices (void)
{
  GPtrArray *out = g_ptr_array_new ();
  gsize n;
  const SyRegion *regions = sy_regions (&n);

  g_ptr_array_add (out, NULL);
  g_ptr_array_add (out, (gpointer) sy_regions_find ("other"));
  for (gsize i = 0; i < n; i++)
    if (&regions[i] != out->pdata[1])
      g_ptr_array_add (out, (gpointer) &regions[i]);
  return out;
}

static void
chosen_cb (GtkDropDown *choice, GParamSpec *pspec, GtkWidget *message)
{
  g_autoptr (GPtrArray) choices = list_choices ();
  guint at = gtk_drop_down_get_selected (choice);
  const SyRegion *region = at < choices->len ? choices->pdata[at] : NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;

  (void) pspec;
  if (!sy_settings_set (SY_SETTING_REGION, region != NULL ? region->id : "", &error))
    words = g_strdup_printf (_("The choice of region could not be kept: %s"), error->message);
  gtk_label_set_text (GTK_LABEL (message), words != NULL ? words : "");
  gtk_widget_set_visible (message, words != NULL);
}

static void
add_choice (GtkBox *box)
{
  g_autoptr (GPtrArray) choices = list_choices ();
  g_autofree char *kept = sy_settings_get (SY_SETTING_REGION);
  GtkStringList *names = gtk_string_list_new (NULL);
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *caption = gtk_label_new_with_mnemonic (_("_Region"));
  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (names), NULL);
  GtkWidget *when = sy_part_label (_("In force when the record is next opened, unless the program is begun with --policy or "
                                     "--region."),
                                   "sy-note");
  GtkWidget *message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "wrap", TRUE, "xalign", 0.0,
                                     "visible", FALSE, NULL);

  for (guint i = 0; i < choices->len; i++)
    {
      const SyRegion *region = choices->pdata[i];

      gtk_string_list_append (names, region != NULL ? region->title : C_ ("region", "None"));
      if (region != NULL && g_str_equal (region->id, kept))
        gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), i);
    }
  gtk_widget_set_name (choice, "region");
  sy_name (choice, _("Region"));
  gtk_label_set_mnemonic_widget (GTK_LABEL (caption), choice);
  gtk_widget_add_css_class (caption, "sy-quiet");
  gtk_widget_set_hexpand (when, TRUE);
  gtk_widget_set_valign (choice, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (bar), caption);
  gtk_box_append (GTK_BOX (bar), choice);
  gtk_box_append (GTK_BOX (bar), when);
  gtk_widget_set_margin_top (bar, 9);
  gtk_box_append (box, bar);
  gtk_box_append (box, message);
  g_signal_connect_object (choice, "notify::selected", G_CALLBACK (chosen_cb), message, 0);
}

/* ---- what is in force ---- */

static void
add_words (GtkBox *box, const char *words, const char *css_class, int margin_top)
{
  GtkWidget *label = sy_part_label (words, css_class);

  gtk_widget_set_margin_top (label, margin_top);
  gtk_box_append (box, label);
}

static char *
source_words (const char *source, gboolean from_memory)
{
  if (!from_memory)
    return g_strdup_printf (_("source: %s"), source);
  if (g_str_equal (source, "from memory"))
    return g_strdup (_("from memory: the text was not read for this"));
  return g_strdup_printf (_("source: %s; from memory: not all of it was read for this"), source);
}

static void
add_row (GtkBox *box, const char *name, const char *about, const char *note)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  gtk_box_append (GTK_BOX (row), sy_part_label (name, NULL));
  gtk_box_append (GTK_BOX (row), sy_part_label (about, "sy-quiet"));
  gtk_box_append (GTK_BOX (row), sy_part_label (note, "sy-note"));
  gtk_widget_add_css_class (row, "sy-row");
  gtk_box_append (box, row);
}

/* Which results it is about. */
static char *
methods_words (const SyDefersTo *row)
{
  g_autoptr (GString) out = g_string_new (NULL);

  if (row->methods == 0)
    return g_strdup (_("about every result"));
  for (size_t i = 0; i < sy_method_count (); i++)
    if (sy_defers_to_is_of (row, sy_method_at (i)))
      g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", sy_translate (sy_method_at (i)->title));
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
add_title (GtkBox *box, const SyDefersTo *row, gboolean is_rule)
{
  g_autofree char *name = g_strdup_printf ("%s%s%s", row->title, *row->section != '\0' ? ", " : "", row->section);
  g_autofree char *methods = methods_words (row);
  g_autofree char *source = is_rule ? g_strdup (_("rule of this site")) : source_words (row->source, row->from_memory);
  g_autofree char *note = g_strdup_printf ("%s · %s", methods, source);

  add_row (box, name, row->about, note);
}

static void
add_interval (GtkBox *box, const SyInterval *interval)
{
  const int months = interval->months, days = interval->days;
  g_autofree char *often = months > 0 ? g_strdup_printf (P_ ("every %d month", "every %d months", (gulong) months), months)
                           : days > 0 ? g_strdup_printf (P_ ("every %d day", "every %d days", (gulong) days), days)
                                      : g_strdup (interval->when);
  g_autofree char *name = g_strdup_printf ("%s: %s", interval->what, often);
  g_autofree char *about = g_strdup_printf ("%s, %s", interval->title, interval->section);
  g_autofree char *note = source_words (interval->source, interval->from_memory);

  add_row (box, name, about, note);
}

static void
add_region (GtkBox *box, const SyRegion *region)
{
  /* Translators: a part of the world, and which edition of what is known about it. */
  g_autofree char *words = g_strdup_printf (_("In force: %s, edition %s."), region->title, region->edition);

  add_words (box, words, "sy-strong", 12);
  for (int i = 0; i < region->n_defers_to; i++)
    add_title (box, &region->defers_to[i], FALSE);
  if (region->n_defers_to == 0)
    add_words (box, _("No titles: local regulations and a competent person."), NULL, 6);
  if (region->n_intervals > 0)
    add_words (box, _("Intervals of inspection. Those of gear of the registers are among the examinations below; the shortest "
                      "holds."),
               "sy-strong", 12);
  for (int i = 0; i < region->n_intervals; i++)
    add_interval (box, &region->intervals[i]);
}

GtkWidget *
sy_limits_region_new (const SyPolicy *policy)
{
  GtkBox *box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));

  gtk_widget_set_name (GTK_WIDGET (box), "limits-region");
  add_words (box, _("Information, no legal advice. Laws move: the text in force and a competent person come first."), "sy-prose",
             0);
  add_choice (box);
  if (policy->has_region)
    add_region (box, &policy->region);
  else
    add_words (box, _("In force: none. Results defer to local regulations and a competent person."), "sy-strong", 12);
  if (policy->n_rules > 0)
    add_words (box, _("Rules of this site"), "sy-strong", 12);
  for (int i = 0; i < policy->n_rules; i++)
    add_title (box, &policy->rules[i], TRUE);
  return GTK_WIDGET (box);
}
