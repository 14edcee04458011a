/* SPDX-License-Identifier: MIT */
#include "sy-matrix-why.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-matrix-table.h"
#include "sy-name.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"
#include "sy-words.h"

#define HEIGHT 172

struct _SyMatrixWhy
{
  GtkBox parent_instance;
  GtkWidget *content;
  char *die, *gear;
};

G_DEFINE_FINAL_TYPE (SyMatrixWhy, sy_matrix_why, GTK_TYPE_BOX)

static char *
mass_words (double kg, SyUnits units)
{
  return sy_words_quantity (sy_unit_convert (SY_KIND_MASS, kg, SY_UNITS_METRIC, units), SY_KIND_MASS, units);
}

/* "285 kg on 1000 kg: 29 %"; NULL where one of the two is not known. */
static char *
figures (const SyMatrixCell *cell, SyUnits units)
{
  g_autofree char *mass = NULL, *limit = NULL, *percent = NULL;

  if (isnan (cell->mass_kg) || isnan (cell->wll_kg))
    return NULL;
  mass = mass_words (cell->mass_kg, units);
  limit = mass_words (cell->wll_kg, units);
  percent = sy_matrix_cell_percent (cell);
  /* Translators: the mass of a die with allowance, what may be carried, and the part that the first is of the second. */
  return g_strdup_printf (_("%s of %s that it may carry: %s"), mass, limit, percent);
}

static void
add_open (GtkWidget *line, const char *label, const char *id)
{
  GtkWidget *button = sy_button_new (label, NULL);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-task");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", id);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (line), button);
}

static GtkWidget *
new_heading (const SyMatrixCell *cell)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  /* Translators: a die, and what is to carry it. */
  g_autofree char *words = g_strdup_printf (_("%s with %s"), cell->die_name, cell->gear_name);
  GtkWidget *heading = sy_part_heading (words);

  gtk_widget_set_hexpand (heading, TRUE);
  gtk_box_append (GTK_BOX (line), heading);
  add_open (line, _("Open the _die"), cell->die);
  add_open (line, _("Open the _gear"), cell->gear);
  return line;
}

void
sy_matrix_why_set (SyMatrixWhy *self, const SyMatrixCell *cell, SyUnits units)
{
  GtkBox *content = GTK_BOX (self->content);
  g_autofree char *numbers = cell != NULL ? figures (cell, units) : NULL;
  GtkWidget *verdict;

  sy_part_empty (self->content);
  g_clear_pointer (&self->die, g_free);
  g_clear_pointer (&self->gear, g_free);
  gtk_widget_set_visible (GTK_WIDGET (self), cell != NULL);
  if (cell == NULL)
    return;
  self->die = g_strdup (cell->die);
  self->gear = g_strdup (cell->gear);
  verdict = sy_verdict_label_new (FALSE);
  sy_verdict_label_set (SY_VERDICT_LABEL (verdict), NULL, cell->verdict, SY_URGENCY_NONE);
  gtk_box_append (content, new_heading (cell));
  gtk_box_append (content, verdict);
  if (numbers != NULL)
    gtk_box_append (content, sy_part_label (numbers, "sy-figures"));
  for (guint i = 0; i < cell->why->len; i++)
    gtk_box_append (content, sy_part_label (cell->why->pdata[i], NULL));
  for (guint i = 0; i < cell->remarks->len; i++)
    gtk_box_append (content, sy_part_label (cell->remarks->pdata[i], "sy-note"));
}

const char *
sy_matrix_why_get_die (SyMatrixWhy *self)
{
  return self->die;
}

const char *
sy_matrix_why_get_gear (SyMatrixWhy *self)
{
  return self->gear;
}

static void
sy_matrix_why_finalize (GObject *object)
{
  SyMatrixWhy *self = SY_MATRIX_WHY (object);

  g_free (self->die);
  g_free (self->gear);
  G_OBJECT_CLASS (sy_matrix_why_parent_class)->finalize (object);
}

static void
sy_matrix_why_class_init (SyMatrixWhyClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_matrix_why_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_matrix_why_init (SyMatrixWhy *self)
{
  GtkWidget *scroller;

  self->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_add_css_class (self->content, "sy-tab");
  scroller = sy_part_scroller (self->content, _("Why"));
  gtk_widget_set_hexpand (scroller, TRUE);
  gtk_widget_set_size_request (scroller, -1, HEIGHT);
  gtk_widget_set_vexpand (scroller, FALSE);
  gtk_box_append (GTK_BOX (self), scroller);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
sy_matrix_why_new (void)
{
  GtkWidget *self = g_object_new (SY_TYPE_MATRIX_WHY, NULL);

  sy_name (self, _("Why"));
  return self;
}
