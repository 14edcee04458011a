/* SPDX-License-Identifier: MIT */
#include "sy-load-path.h"

#include <math.h>
#include <string.h>

#include "sy-capacity-view.h"
#include "sy-carriers.h"
#include "sy-i18n.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"

struct _SyLoadPath
{
  GtkBox parent_instance;

  GtkWidget *empty, *needed; /* said while there is nothing to show */
  GtkWidget *full;
  GtkWidget *bars;
  GtkWidget *legs;           /* the table */
  GtkWidget *things;
};

enum
{
  FACT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyLoadPath, sy_load_path, GTK_TYPE_BOX)

/* The legs */

static void
add_cell (GtkGrid *grid, int column, int row, const char *text, const char *css_class)
{
  GtkWidget *label = sy_part_label (text, css_class);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_widget_set_hexpand (label, column > 0);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

/* "–" where it is not known. */
static void
add_figure (GtkGrid *grid, int column, int row, double value, SyKind kind, SyUnits units)
{
  g_autofree char *text = isfinite (value) ? sy_words_quantity (value, kind, units) : g_strdup ("–");

  add_cell (grid, column, row, text, "sy-figures");
}

static double
leg_value (const SyFindings *findings, const char *label, const char *suffix)
{
  g_autofree char *symbol = g_strdup_printf ("leg.%s.%s", label, suffix);
  const SyQuantity *quantity = sy_findings_quantity (findings, symbol);

  return quantity != NULL && quantity->state == SY_STATE_VALUE ? quantity->value : NAN;
}

static void
add_leg (GtkGrid *grid, int row, const SyFindings *findings, const char *label)
{
  double angle = leg_value (findings, label, "angle");

  add_cell (grid, 0, row, label, "sy-strong");
  add_figure (grid, 1, row, angle, SY_KIND_ANGLE, findings->units);
  add_figure (grid, 2, row, 90 - angle, SY_KIND_ANGLE, findings->units);
  add_figure (grid, 3, row, leg_value (findings, label, "factor"), SY_KIND_RATIO, findings->units);
  add_figure (grid, 4, row, leg_value (findings, label, "tension"), SY_KIND_FORCE, findings->units);
  add_figure (grid, 5, row, leg_value (findings, label, "load"), SY_KIND_MASS, findings->units);
  add_figure (grid, 6, row, leg_value (findings, label, "elastic"), SY_KIND_MASS, findings->units);
}

static void
update_legs (SyLoadPath *self, const SyFindings *findings, const SyRigFacts *facts)
{
  const char *const titles[] = { _("Leg"),     _("From the vertical"), _("From the horizontal"),
                                 _("Factor"),  _("Tension"),           _("As mass"),
                                 _("Elastic") };
  const SyRigLeg *legs = facts->legs.items;
  GtkWidget *grid = gtk_grid_new ();
  int row = 1;

  sy_part_empty (self->legs);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  for (gsize i = 0; i < G_N_ELEMENTS (titles); i++)
    add_cell (GTK_GRID (grid), (int) i, 0, titles[i], "sy-note");
  for (gsize i = 0; i < facts->legs.count; i++)
    for (gsize k = 0; k < legs[i].point.count; k++)
      add_leg (GTK_GRID (grid), row++, findings, ((const char *const *) legs[i].point.items)[k]);
  gtk_widget_set_name (grid, "legs-table");
  gtk_box_append (GTK_BOX (self->legs), grid);
}

/* The things */

static const char *
kind_title (const SyCarrier *carrier)
{
  int kind = carrier->element != NULL ? carrier->element->kind : carrier->suspension->kind + SY_GEAR_HOIST;

  return sy_translate (sy_gear_kind_choices[kind].label);
}

static void
add_sentence (GString *words, const char *sentence)
{
  g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "", sentence);
}

/* The marking, and how much of it is left. */
static void
add_marking (GString *words, const SyCarrier *carrier, const SyFindings *findings)
{
  SyNumber wll = carrier->element != NULL ? carrier->element->wll : carrier->suspension->wll;
  g_autofree char *marked = NULL;
  g_autofree char *sentence = NULL;
  g_autofree char *left = NULL;
  g_autofree char *percent = NULL;

  if (!wll.given)
    {
      add_sentence (words, _("No marking was given: what it may carry is not known."));
      return;
    }
  marked = sy_words_quantity (wll.value, SY_KIND_MASS, findings->units);
  if (carrier->element == NULL || carrier->element->kind != SY_GEAR_SLING)
    sentence = g_strdup_printf (_("Marked %s."), marked);
  else if (carrier->element->rated_as == SY_RATED_LEG)
    sentence = g_strdup_printf (_("Marked %s for one leg, straight."), marked);
  else if (carrier->element->rated_as == SY_RATED_ASSEMBLY)
    sentence = g_strdup_printf (_("Marked %s for the whole sling at its angles."), marked);
  else
    sentence = g_strdup_printf (_("Marked %s; what that rates was not said."), marked);
  add_sentence (words, sentence);
  if (!isfinite (carrier->capacity))
    return;
  percent = sy_words_quantity (carrier->capacity / wll.value * 100, SY_KIND_PERCENT, findings->units);
  if (fabs (carrier->capacity / wll.value - 1) < 1e-9)
    left = g_strdup (_("Nothing is taken off it."));
  else
    left = g_strdup_printf (_("As it is used, %s of that is left."), percent);
  add_sentence (words, left);
}

/* What was said of the thing itself, and of a sling what was said of its leg. */
static gboolean
is_about (const SyNote *note, const SyCarrier *carrier)
{
  if (strcmp (note->subject, carrier->subject) == 0)
    return TRUE;
  return carrier->element != NULL && carrier->element->kind == SY_GEAR_SLING && strcmp (note->subject, carrier->leg) == 0;
}

static void
add_thing (GtkWidget *box, const SyCarrier *carrier, const SyFindings *findings)
{
  g_autofree char *figures = sy_carrier_dup_figures (carrier, findings);
  g_autofree char *percent = sy_carrier_dup_percent (carrier, findings);
  const char *kind = kind_title (carrier);
  g_autofree char *words
      = g_strdup_printf ("%s · %s: %s, %s", carrier->name, kind, figures,
                         isfinite (carrier->ratio) ? percent : sy_carrier_said (carrier));
  g_autoptr (GString) quiet = g_string_new (NULL);

  add_marking (quiet, carrier, findings);
  for (int i = 0; i < findings->sink.n_notes; i++)
    if (is_about (&findings->sink.notes[i], carrier))
      {
        g_autofree char *note = sy_words_note (findings, &findings->sink.notes[i], sy_translate);

        add_sentence (quiet, note);
      }
  gtk_box_append (GTK_BOX (box), sy_reason_row_new (NULL, words, quiet->len > 0 ? quiet->str : NULL));
}

static void
update_things (SyLoadPath *self, GPtrArray *carriers, const SyFindings *findings)
{
  sy_part_empty (self->things);
  for (guint i = 0; i < carriers->len; i++)
    {
      const SyCarrier *carrier = g_ptr_array_index (carriers, i);

      /* The rules have no marking of their own. */
      if (carrier->element != NULL || carrier->suspension != NULL)
        add_thing (self->things, carrier, findings);
    }
}

static void
update (GtkWidget *widget, SyForm *form)
{
  SyLoadPath *self = SY_LOAD_PATH (widget);
  SyAssessment *assessment = sy_form_get_assessment (form);
  g_autoptr (GPtrArray) carriers = assessment != NULL ? sy_carriers_list (assessment) : NULL;
  gboolean full = carriers != NULL && carriers->len > 0;

  gtk_widget_set_visible (self->empty, !full);
  gtk_widget_set_visible (self->full, full);
  if (assessment == NULL)
    {
      g_autofree char *needed = sy_part_problems_sentence (form);

      gtk_label_set_text (GTK_LABEL (self->needed), needed != NULL ? needed : "");
      return;
    }
  gtk_label_set_text (GTK_LABEL (self->needed),
                      _("Nothing carries yet: as it is given the load does not hang, or no element is listed."));
  if (!full)
    return;
  sy_carriers_show (carriers, assessment->findings, 0, SY_CAPACITY_VIEW (self->bars));
  update_legs (self, assessment->findings, assessment->facts.values);
  update_things (self, carriers, assessment->findings);
}

static void
pressed_cb (SyCapacityView *view G_GNUC_UNUSED, const char *path, SyLoadPath *self)
{
  g_signal_emit (self, signals[FACT], 0, path);
}

static void
sy_load_path_class_init (SyLoadPathClass *class G_GNUC_UNUSED)
{
  signals[FACT] = g_signal_new ("fact", SY_TYPE_LOAD_PATH, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
}

static void
sy_load_path_init (SyLoadPath *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->empty = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->needed = sy_part_label (NULL, "sy-quiet");
  gtk_box_append (GTK_BOX (self->empty), sy_part_label (_("There is no load path yet."), NULL));
  gtk_box_append (GTK_BOX (self->empty), self->needed);
  self->full = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->bars = sy_capacity_view_new ();
  gtk_widget_set_name (self->bars, "capacity-all");
  g_signal_connect (self->bars, "pressed", G_CALLBACK (pressed_cb), self);
  self->legs = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->things = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->full), sy_part_heading (_("Load against capacity")));
  gtk_box_append (GTK_BOX (self->full), self->bars);
  gtk_box_append (GTK_BOX (self->full), sy_part_label (_("Press a bar to go to its fact."), "sy-note"));
  gtk_box_append (GTK_BOX (self->full), sy_part_heading (_("Legs")));
  gtk_box_append (GTK_BOX (self->full), self->legs);
  gtk_box_append (GTK_BOX (self->full),
                  sy_part_label (_("The tension is the largest that statics allows however the legs share; beside it what "
                                   "each pulls if all stretch alike, which decides nothing."),
                                 "sy-note"));
  gtk_box_append (GTK_BOX (self->full), sy_part_heading (_("What was taken off each marking")));
  gtk_box_append (GTK_BOX (self->full), self->things);
  gtk_box_append (GTK_BOX (self), self->empty);
  gtk_box_append (GTK_BOX (self), self->full);
}

GtkWidget *
sy_load_path_new (SyForm *form)
{
  GtkWidget *self = g_object_new (SY_TYPE_LOAD_PATH, NULL);

  sy_part_follow (self, form, update);
  return self;
}
