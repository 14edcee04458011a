/* SPDX-License-Identifier: MIT */
#include "sy-task-limits.h"

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-style.h"
#include "sy-task-parts.h"

#include <math.h>

/* All bars have one measure; it does not grow without end with the worst of them. */
#define END_LEAST 1.25
#define END_MOST 3.0

/* Words */

static char *
dup_ratio (const SyFindings *findings, const SyLimitShown *shown)
{
  return isinf (shown->ratio) ? g_strdup ("∞")
                              : sy_words_against (shown->ratio, shown->goal, SY_KIND_RATIO, findings->units);
}

/* What is held against what. */
static char *
dup_pair (const SyFindings *findings, const SyLimitShown *shown)
{
  const SyQuantity *value = shown->value, *at = shown->at;
  g_autofree char *given = isinf (value->value) ? g_strdup ("∞")
                                                : sy_words_against (value->value, at->value, value->symbol->kind,
                                                                    findings->units);
  g_autofree char *limit = sy_words_quantity (at->value, at->symbol->kind, findings->units);

  /* Translators: a figure of the task and the limit it is held against, each with its name:
     "Heaviest mass: 18 kg; Recommended weight limit: 8.6 kg". */
  return g_strdup_printf (_("%s: %s; %s: %s"), sy_translate (value->symbol->label), given,
                          sy_translate (at->symbol->label), limit);
}

static char *
dup_outcome (const SyFindings *findings, const SyLimitShown *shown)
{
  g_autofree char *ratio = dup_ratio (findings, shown);
  g_autofree char *goal = NULL;

  if (isinf (shown->ratio))
    return g_strdup (_("no limit holds"));
  if (shown->goal == 1)
    return g_strdup_printf (shown->ratio > 1 ? _("%s × the limit: over it") : _("%s × the limit: within it"), ratio);
  goal = sy_words_quantity (shown->goal, SY_KIND_RATIO, findings->units);
  return g_strdup_printf (shown->ratio > shown->goal ? _("%s × the limit: over the goal of %s")
                                                     : _("%s × the limit: within the goal of %s"),
                          ratio, goal);
}

static const char *
from_memory_words (void)
{
  return _("From memory, not checked against the standard.");
}

char *
sy_task_limits_dup_words (const SyFindings *findings, const SyLimitShown *shown)
{
  g_autoptr (GString) words = g_string_new (sy_translate (shown->limit->title));
  g_autofree char *pair = dup_pair (findings, shown);
  g_autofree char *outcome = dup_outcome (findings, shown);

  if (shown->governs)
    g_string_append_printf (words, " (%s)", _("governs"));
  g_string_append_printf (words, ": %s. %s. %s.", outcome, pair, sy_translate (shown->limit->edition));
  if (shown->limit->from_memory)
    g_string_append_printf (words, " %s", from_memory_words ());
  return g_strdup (words->str);
}

/* The bar */

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));

  sy_drawing_limit_bar (cr, width, height, data, &palette);
}

/* The words beside it say the same. */
static GtkWidget *
new_bar (const SyLimitShown *shown, double end)
{
  GtkWidget *area
      = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);
  SyLimitBar *bar = g_new0 (SyLimitBar, 1);

  *bar = (SyLimitBar) { .part = shown->ratio / shown->goal, .end = end, .governs = shown->governs };
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), (int) SY_LIMIT_BAR_HEIGHT);
  gtk_widget_set_hexpand (area, TRUE);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_cb, bar, g_free);
  return area;
}

/* Rows */

static double
find_end (const SyFindings *findings)
{
  double end = END_LEAST;

  for (int i = 0; i < findings->n_limits; i++)
    if (isfinite (findings->limits[i].ratio))
      end = fmax (end, findings->limits[i].ratio / findings->limits[i].goal * 1.05);
  return fmin (end, END_MOST);
}

static GtkWidget *
new_row (const SyFindings *findings, const SyLimitShown *shown, double end)
{
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 1, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_LIST_ITEM, NULL);
  GtkWidget *top = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *words = sy_task_limits_dup_words (findings, shown);
  g_autofree char *pair = dup_pair (findings, shown);
  g_autofree char *outcome = dup_outcome (findings, shown);
  const char *name = sy_translate (shown->limit->title);
  /* Translators: the title of the limit that is the strictest of several. */
  g_autofree char *title = shown->governs ? g_strdup_printf (_("%s · governs"), name) : g_strdup (name);
  GtkWidget *label = sy_part_label (title, shown->governs ? "sy-strong" : NULL);
  GtkWidget *figure = sy_part_label (outcome, "sy-figures");

  sy_name (row, words);
  gtk_widget_set_name (row, shown->limit->id);
  gtk_widget_add_css_class (row, "sy-quantity-row");
  gtk_widget_set_hexpand (label, TRUE);
  gtk_label_set_xalign (GTK_LABEL (figure), 1);
  gtk_label_set_wrap (GTK_LABEL (figure), FALSE);
  gtk_widget_set_valign (figure, GTK_ALIGN_START);
  if (shown->governs)
    gtk_widget_add_css_class (figure, "sy-strong");
  gtk_box_append (GTK_BOX (top), label);
  gtk_box_append (GTK_BOX (top), figure);
  gtk_box_append (GTK_BOX (row), top);
  gtk_box_append (GTK_BOX (row), new_bar (shown, end));
  gtk_box_append (GTK_BOX (row), sy_part_label (pair, NULL));
  gtk_box_append (GTK_BOX (row), sy_part_label (sy_translate (shown->limit->edition), "sy-note"));
  if (shown->limit->from_memory)
    {
      GtkWidget *memory = sy_part_label (from_memory_words (), "sy-note");

      gtk_widget_add_css_class (memory, "sy-strong");
      gtk_box_append (GTK_BOX (row), memory);
    }
  return row;
}

static void
update (GtkWidget *box, SyForm *form)
{
  const SyFindings *findings;
  GtkWidget *list;
  double end;

  if (!sy_part_begin_tab (box, form))
    return;
  findings = sy_form_get_assessment (form)->findings;
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("Limits beside each other")));
  if (findings->n_limits == 0)
    {
      gtk_box_append (GTK_BOX (box), sy_part_label (_("None of the published limits could be worked out for these facts."),
                                                    "sy-quiet"));
      return;
    }
  end = find_end (findings);
  list = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role", GTK_ACCESSIBLE_ROLE_LIST,
                       NULL);
  gtk_widget_set_name (list, "limits");
  sy_name (list, _("Limits beside each other"));
  for (int i = 0; i < findings->n_limits; i++)
    gtk_box_append (GTK_BOX (list), new_row (findings, &findings->limits[i], end));
  gtk_box_append (GTK_BOX (box), list);
  gtk_box_append (GTK_BOX (box),
                  sy_part_label (_("The notch is where the policy wants each to stay. The strictest governs; none makes up for "
                                   "another."),
                                 "sy-note"));
  sy_part_end_tab (box);
}

GtkWidget *
sy_task_limits_new (SyForm *form)
{
  GtkWidget *box = sy_part_tab ();

  sy_part_follow (box, form, update);
  return box;
}
