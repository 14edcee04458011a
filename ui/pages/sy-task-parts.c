/* SPDX-License-Identifier: MIT */
#include "sy-task-parts.h"

#include "sy-i18n.h"
#include "sy-name.h"

#include <math.h>
#include <string.h>

GtkWidget *
sy_part_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
sy_part_heading (const char *text)
{
  GtkWidget *label
      = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_HEADING, "label", text,
                      "xalign", 0.0, "wrap", TRUE, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                  GTK_ACCESSIBLE_PROPERTY_LEVEL, 2, -1);
  gtk_widget_add_css_class (label, "sy-section-title");
  return label;
}

GtkWidget *
sy_part_radio (const char *text)
{
  GtkWidget *radio = gtk_check_button_new ();
  GtkWidget *label = sy_part_label (text, NULL);

  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (radio), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (radio), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  return radio;
}

GtkWidget *
sy_part_two_lines (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (int i = 0; i < 2; i++)
    {
      GtkWidget *label = gtk_label_new (NULL);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
      if (i == 1)
        gtk_widget_add_css_class (label, "sy-note");
      gtk_box_append (GTK_BOX (box), label);
    }
  return box;
}

void
sy_part_set_lines (GtkWidget *lines, const char *name, const char *note)
{
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_first_child (lines)), name);
  gtk_label_set_text (GTK_LABEL (gtk_widget_get_last_child (lines)), note);
}

GtkWidget *
sy_part_scroller (GtkWidget *child, const char *name)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (scroller), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return scroller;
}

void
sy_part_empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

GtkWidget *
sy_part_with_action (GtkWidget *row, const char *about, const char *what)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *button = gtk_button_new_with_label (_("Open an action"));
  g_autofree char *name = g_strdup_printf (_("Open an action: %s"), what);
  g_autofree char *id = g_strdup_printf ("act-on:%s", about);

  sy_name (button, name);
  gtk_widget_set_name (button, id);
  gtk_widget_add_css_class (button, "sy-link");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "task.open-action");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(ss)", about, what);
  gtk_widget_set_hexpand (row, TRUE);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), button);
  return box;
}

typedef struct
{
  SyForm *form; /* borrowed: the page outlives its parts */
  SyPartUpdate update;
  gboolean stale;
} Follow;

void
sy_part_catch_up (GtkWidget *widget)
{
  Follow *follow = g_object_get_data (G_OBJECT (widget), "sy-follow");

  if (!follow->stale)
    return;
  follow->stale = FALSE;
  follow->update (widget, follow->form);
}

static void
changed_cb (SyForm *form G_GNUC_UNUSED, GtkWidget *widget)
{
  Follow *follow = g_object_get_data (G_OBJECT (widget), "sy-follow");

  follow->stale = TRUE;
  if (gtk_widget_get_mapped (widget))
    sy_part_catch_up (widget);
}

static void
map_cb (GtkWidget *widget, gpointer user_data G_GNUC_UNUSED)
{
  sy_part_catch_up (widget);
}

void
sy_part_follow (GtkWidget *widget, SyForm *form, SyPartUpdate update)
{
  Follow *follow = g_new0 (Follow, 1);

  follow->form = form;
  follow->update = update;
  g_object_set_data_full (G_OBJECT (widget), "sy-follow", follow, g_free);
  g_signal_connect_object (form, "changed", G_CALLBACK (changed_cb), widget, 0);
  g_signal_connect (widget, "map", G_CALLBACK (map_cb), NULL);
  update (widget, form);
}

char *
sy_part_index_text (const SyFindings *findings)
{
  const SyQuantity *index
      = findings != NULL ? sy_findings_quantity (findings, findings->sink.index_symbol) : NULL;
  double goal;

  if (index == NULL || index->state == SY_STATE_ABSENT)
    return g_strdup ("–");
  goal = sy_policy_goal (findings->policy, findings->method, findings->units).index;
  if (!isfinite (goal))
    goal = 1; /* the index is a ratio of limits that each have a row of their own */
  return sy_words_against (index->value, goal, SY_KIND_RATIO, findings->units);
}

double
sy_part_notice (const SyFindings *findings)
{
  double notice = NAN;

  for (int i = 0; i < findings->policy->n_rows; i++)
    {
      const SyPolicyRow *row = &findings->policy->rows[i];

      if (strcmp (row->method, findings->method->id) == 0 && g_str_has_suffix (row->symbol, "utilisation")
          && row->comparator == SY_OVER && row->verdict == SY_VERDICT_IMPROVE && !row->limit_is_symbol)
        notice = fmin (notice, row->limit[findings->units]);
    }
  return notice;
}

char *
sy_part_percent (double ratio, const SyFindings *findings)
{
  double notice = sy_part_notice (findings);
  double near = isfinite (notice) && fabs (ratio - notice) < fabs (ratio - 1) ? notice : 1;

  if (!isfinite (ratio))
    return g_strdup ("\342\210\236");
  return sy_words_against (ratio * 100, near * 100, SY_KIND_PERCENT, findings->units);
}

GtkWidget *
sy_part_tab (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (box, "sy-tab");
  return box;
}

gboolean
sy_part_begin_tab (GtkWidget *box, SyForm *form)
{
  g_autofree char *needed = NULL;

  sy_part_empty (box);
  if (sy_form_get_assessment (form) != NULL)
    return TRUE;
  needed = sy_part_problems_sentence (form);
  gtk_box_append (GTK_BOX (box), sy_part_label (sy_form_is_working (form) ? _("Being worked out…")
                                                                          : _("There is no result yet."),
                                                NULL));
  if (needed != NULL)
    gtk_box_append (GTK_BOX (box), sy_part_label (needed, "sy-quiet"));
  return FALSE;
}

void
sy_part_end_tab (GtkWidget *box)
{
  g_autofree char *screening = sy_words_screening (sy_translate);

  gtk_box_append (GTK_BOX (box), sy_part_label (screening, "sy-note"));
}

#define NAMED_MAX 3

/* The first few facts by name. */
static char *
name_problems (SyForm *form, gboolean missing)
{
  g_autoptr (GString) names = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < sy_form_count_problems (form); i++)
    {
      const char *path = sy_form_problem_path (form, i);
      g_autofree char *name = NULL;

      if (sy_form_is_missing (form, path) != missing || path[0] == '\0')
        continue;
      if (n++ >= NAMED_MAX)
        continue;
      name = sy_form_dup_name (form, path, FALSE);
      g_string_append_printf (names, "%s%s", names->len > 0 ? "; " : "", name);
    }
  if (n > NAMED_MAX)
    {
      g_autofree char *more
          = g_strdup_printf (P_("and %u more", "and %u more", n - NAMED_MAX), n - NAMED_MAX);

      g_string_append_printf (names, "; %s", more);
    }
  return g_strdup (names->str);
}

char *
sy_part_problems_sentence (SyForm *form)
{
  guint all = sy_form_count_problems (form), missing = sy_form_count_missing (form);
  g_autofree char *names = NULL;

  if (all == 0)
    return NULL;
  names = name_problems (form, all == missing);
  if (all > missing)
    {
      /* What belongs to no fact on the page is said as it is. */
      if (names[0] == '\0')
        return g_strdup (sy_form_problem_words (form, 0));
      return g_strdup_printf (P_("One fact cannot be right: %s.", "These facts cannot be right: %s.",
                                 all - missing),
                              names);
    }
  return g_strdup_printf (P_("One fact is still needed: %s.", "Facts still needed: %s.", missing),
                          names);
}
