/* SPDX-License-Identifier: MIT */
#include "sy-task-findings.h"

#include "sy-i18n.h"
#include "sy-task-named.h"
#include "sy-task-parts.h"
#include "sy-task-plan.h"
#include "sy-verdict-label.h"

#include <math.h>
#include <string.h>

/* Findings */

/* "origin.HM" → the end's title; NULL for what belongs to no end. */
static const char *
end_title (const SyFindings *findings, const char *symbol)
{
  gsize n;
  const SyPlanEnd *ends = sy_task_plan_ends (findings->method, &n);

  for (gsize i = 0; i < n; i++)
    if (g_str_has_prefix (symbol, ends[i].id) && symbol[strlen (ends[i].id)] == '.')
      return sy_translate (ends[i].title);
  return NULL;
}

static GtkWidget *
new_quantity (const SyFindings *findings, const SyQuantity *quantity, const char *short_symbol)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *symbol = sy_part_label (short_symbol, "sy-strong");
  GtkWidget *label = sy_part_label (sy_translate (quantity->symbol->label), NULL);
  g_autofree char *value = sy_words_quantity (quantity->value, quantity->symbol->kind, findings->units);
  GtkWidget *figure = sy_part_label (value, "sy-figures");
  g_autofree char *formula = sy_words_formula (findings, quantity);

  gtk_label_set_width_chars (GTK_LABEL (symbol), 9);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_label_set_wrap (GTK_LABEL (figure), FALSE);
  gtk_box_append (GTK_BOX (top), symbol);
  gtk_box_append (GTK_BOX (top), label);
  gtk_box_append (GTK_BOX (top), figure);
  gtk_box_append (GTK_BOX (row), top);
  if (formula != NULL)
    {
      GtkWidget *line = sy_part_label (formula, "sy-formula");

      gtk_label_set_selectable (GTK_LABEL (line), TRUE);
      gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL, formula, -1);
      gtk_box_append (GTK_BOX (row), line);
    }
  if (quantity->symbol->source != NULL)
    gtk_box_append (GTK_BOX (row), sy_part_label (quantity->symbol->source, "sy-note"));
  gtk_widget_add_css_class (row, "sy-quantity-row");
  return row;
}

/* "leg.A.tension": what it is of, as far as the last dot, and the rest. */
static char *
dup_subject (const SyNamed *named)
{
  const char *first = strchr (named->text, '.'), *last = strrchr (named->text, '.');

  return first == last ? g_strndup (named->text, (gsize) (last - named->text))
                       : g_strndup (first + 1, (gsize) (last - first - 1));
}

static char *
subject_title (const SyNamed *named)
{
  g_autofree char *subject = dup_subject (named);
  char *dot;

  if (g_str_has_prefix (named->text, "leg."))
    return g_strdup_printf (_("Leg %s"), subject);
  dot = g_str_has_prefix (named->text, "element.") ? strchr (subject, '.') : NULL;
  if (dot == NULL)
    return g_steal_pointer (&subject);
  *dot = '\0';
  return g_strdup_printf (_("%s at %s"), dot + 1, subject);
}

/* Quantities of what the facts name, thing by thing. */
static void
add_named (GtkWidget *box, const SyFindings *findings)
{
  g_autofree char *title = NULL;

  for (gsize i = 0; i < findings->sink.n_named; i++)
    {
      const SyNamed *named = &findings->named[i];
      g_autofree char *of = subject_title (named);
      const char *last = strrchr (named->text, '.');

      if (named->quantity.state == SY_STATE_ABSENT)
        continue;
      if (g_strcmp0 (of, title) != 0)
        gtk_box_append (GTK_BOX (box), sy_part_heading (of));
      g_free (title);
      title = g_steal_pointer (&of);
      gtk_box_append (GTK_BOX (box), new_quantity (findings, &named->quantity, last != NULL ? last + 1 : named->text));
    }
}

static void
update_findings (GtkWidget *box, SyForm *form)
{
  const SyFindings *findings;
  const char *title = NULL;

  if (!sy_part_begin_tab (box, form))
    return;
  findings = sy_form_get_assessment (form)->findings;
  /* What holds for the whole task first, then end by end. */
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("As a whole")));
  for (gsize i = 0; i < findings->method->n_symbols; i++)
    {
      const SyQuantity *quantity = &findings->quantities[i];

      if (quantity->state != SY_STATE_ABSENT && end_title (findings, quantity->symbol->symbol) == NULL)
        gtk_box_append (GTK_BOX (box), new_quantity (findings, quantity, quantity->symbol->symbol));
    }
  for (gsize i = 0; i < findings->method->n_symbols; i++)
    {
      const SyQuantity *quantity = &findings->quantities[i];
      const char *of = end_title (findings, quantity->symbol->symbol);

      if (quantity->state == SY_STATE_ABSENT || of == NULL)
        continue;
      if (g_strcmp0 (of, title) != 0)
        gtk_box_append (GTK_BOX (box), sy_part_heading (of));
      title = of;
      gtk_box_append (GTK_BOX (box), new_quantity (findings, quantity, strchr (quantity->symbol->symbol, '.') + 1));
    }
  /* A load path is read thing by thing, what several people or lifts share line by line. */
  if (strcmp (findings->method->id, "rigged-lift") == 0)
    add_named (box, findings);
  else
    sy_task_named_add (box, form, findings);
  {
    g_autofree char *method
        = g_strdup_printf (_("Method: %s, edition %d here. Policy: %s, version %d."),
                           findings->method->source, findings->method->edition, findings->policy->title,
                           findings->policy->version);

    gtk_box_append (GTK_BOX (box), sy_part_label (method, "sy-note"));
  }
  sy_part_end_tab (box);
}

GtkWidget *
sy_task_findings_new (SyForm *form)
{
  GtkWidget *box = sy_part_tab ();

  sy_part_follow (box, form, update_findings);
  return box;
}

/* Reasons and cautions */

static void
update_reasons (GtkWidget *box, SyForm *form)
{
  const SyFindings *findings;

  if (!sy_part_begin_tab (box, form))
    {
      sy_part_end_tab (box);
      return;
    }
  findings = sy_form_get_assessment (form)->findings;
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("Reasons")));
  if (findings->n_reasons == 0)
    gtk_box_append (GTK_BOX (box),
                    sy_part_label (_("Nothing speaks against it under this policy."), "sy-quiet"));
  for (int i = 0; i < findings->n_reasons; i++)
    {
      const SyReason *reason = &findings->reasons[i];
      g_autofree char *words = sy_words_reason (findings, reason, sy_translate);
      g_autofree char *source = NULL;

      if (reason->source != NULL && reason->source[0] != '\0')
        source = reason->from_memory
                     ? g_strdup_printf (_("Source: %s. From memory: not checked against the source."),
                                        reason->source)
                     : g_strdup_printf (_("Source: %s."), reason->source);
      else if (reason->from_memory)
        source = g_strdup (_("From memory: not checked against a source."));
      gtk_box_append (GTK_BOX (box),
                      sy_part_with_action (sy_reason_row_new (&reason->verdict, words, source), reason->id, words));
    }
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("Cautions")));
  for (int i = 0; i < sy_words_n_cautions (findings); i++)
    {
      g_autofree char *words = sy_words_caution (findings, i, NULL, sy_translate);

      gtk_box_append (GTK_BOX (box), sy_reason_row_new (NULL, words, NULL));
    }
}

GtkWidget *
sy_task_reasons_new (SyForm *form)
{
  GtkWidget *box = sy_part_tab ();

  sy_part_follow (box, form, update_reasons);
  return box;
}

/* Spread */

static void
add_figure (GtkGrid *grid, int row, const char *label, const char *value)
{
  GtkWidget *words = sy_part_label (label, NULL);
  GtkWidget *figure = sy_part_label (value, "sy-figures");

  gtk_widget_set_hexpand (words, TRUE);
  gtk_label_set_xalign (GTK_LABEL (figure), 1);
  gtk_grid_attach (grid, words, 0, row, 1, 1);
  gtk_grid_attach (grid, figure, 1, row, 1, 1);
}

static char *
spread_figure (const SyFindings *findings, double value)
{
  return isinf (value) ? g_strdup (_("no limit holds"))
                       : sy_words_against (value, findings->spread.goal, SY_KIND_RATIO, findings->units);
}

static void
update_spread (GtkWidget *box, SyForm *form)
{
  const SyFindings *findings;
  const SySpread *spread;
  GtkWidget *grid;

  if (!sy_part_begin_tab (box, form))
    return;
  findings = sy_form_get_assessment (form)->findings;
  spread = &findings->spread;
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("What repeated measurements would give")));
  if (!spread->present)
    {
      gtk_box_append (GTK_BOX (box), sy_part_label (_("No fact of this task varies."), "sy-quiet"));
      return;
    }
  grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  {
    g_autofree char *low = spread_figure (findings, spread->p5);
    g_autofree char *middle = spread_figure (findings, spread->median);
    g_autofree char *high = spread_figure (findings, spread->p95);
    g_autofree char *share = sy_words_quantity (spread->share_over_goal * 100, SY_KIND_PERCENT,
                                                findings->units);
    g_autofree char *goal = sy_words_quantity (spread->goal, SY_KIND_RATIO, findings->units);
    g_autofree char *over = g_strdup_printf (_("Share of repeated measurements over the goal of %s"), goal);

    add_figure (GTK_GRID (grid), 0, _("5th percentile: one in twenty would be lower"), low);
    add_figure (GTK_GRID (grid), 1, _("Median"), middle);
    add_figure (GTK_GRID (grid), 2, _("95th percentile: one in twenty would be higher"), high);
    add_figure (GTK_GRID (grid), 3, over, share);
  }
  gtk_box_append (GTK_BOX (box), grid);
  if (spread->driver != NULL)
    {
      g_autofree char *name = sy_form_dup_name (form, spread->driver, FALSE);
      g_autofree char *part
          = sy_words_quantity (spread->driver_share * 100, SY_KIND_PERCENT, findings->units);
      g_autofree char *words = g_strdup_printf (
        _("What moves the index most is “%s” (%s of the spread): measure that more closely first."), name,
        part);

      gtk_box_append (GTK_BOX (box), sy_part_label (words, NULL));
    }
  {
    g_autofree char *draws = g_strdup_printf (
      _("From %d draws with the tolerances given in the form, or the policy's by how each fact was had."),
      spread->draws);

    gtk_box_append (GTK_BOX (box), sy_part_label (draws, "sy-note"));
  }
  gtk_box_append (GTK_BOX (box),
                  sy_part_label (_("This is a share of repeated measurements, not a chance of injury."),
                                 "sy-strong"));
  sy_part_end_tab (box);
}

GtkWidget *
sy_task_spread_new (SyForm *form)
{
  GtkWidget *box = sy_part_tab ();

  sy_part_follow (box, form, update_spread);
  return box;
}
