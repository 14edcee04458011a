/* SPDX-License-Identifier: MIT */
#include "sy-limits-page.h"

#include "sy-i18n.h"
#include "sy-limits-region.h"
#include "sy-limits-words.h"
#include "sy-verdict-label.h"

#include <math.h>

struct _SyLimitsPage
{
  GtkWidget parent_instance;
  SyDesk *desk;
  SyUnits units;
  GtkWidget *scrolled, *column;
};

G_DEFINE_FINAL_TYPE (SyLimitsPage, sy_limits_page, GTK_TYPE_WIDGET)

#define COLUMN_WIDTH 860

static GtkWidget *
new_label (const char *words, const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
add (SyLimitsPage *self, GtkWidget *child, int margin_top)
{
  gtk_widget_set_margin_top (child, margin_top);
  gtk_box_append (GTK_BOX (self->column), child);
}

static void
add_heading (SyLimitsPage *self, const char *words)
{
  GtkWidget *heading = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_HEADING, "label",
                                     words, "xalign", 0.0, "wrap", TRUE, NULL);

  gtk_widget_add_css_class (heading, "sy-heading");
  add (self, heading, 24);
}

static void
add_prose (SyLimitsPage *self, const char *words)
{
  GtkWidget *label = new_label (words, "sy-prose");

  gtk_label_set_max_width_chars (GTK_LABEL (label), 70);
  gtk_widget_set_halign (label, GTK_ALIGN_START);
  add (self, label, 6);
}

/* A limit, what it asks for, and under it where it comes from. */
static void
add_limit (SyLimitsPage *self, const SyPolicyRow *row)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *verdict = sy_verdict_label_new (FALSE);
  g_autofree char *words = sy_limits_row_words (row, self->units);
  g_autofree char *source = sy_source_words (row->source, row->from_memory);
  /* Translators: the name by which the record knows a limit, and where its figure comes from. */
  g_autofree char *note = g_strdup_printf (_("%s · source: %s"), row->id, source);

  gtk_box_append (GTK_BOX (left), new_label (words, NULL));
  gtk_box_append (GTK_BOX (left), new_label (note, "sy-note"));
  gtk_widget_set_hexpand (left, TRUE);
  sy_verdict_label_set (SY_VERDICT_LABEL (verdict), NULL, row->verdict, SY_URGENCY_NONE);
  gtk_widget_set_size_request (verdict, 270, -1);
  gtk_widget_set_hexpand (verdict, FALSE);
  gtk_widget_set_valign (verdict, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (line), left);
  gtk_box_append (GTK_BOX (line), verdict);
  gtk_widget_add_css_class (line, "sy-row");
  add (self, line, 0);
}

static void
add_tolerances (SyLimitsPage *self, const SyPolicy *policy)
{
  const char *const headings[] = { _("Fact"), _("Measured"), _("From a drawing"), _("Estimated"), _("Source") };
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 9);
  for (int i = 0; i < (int) G_N_ELEMENTS (headings); i++)
    gtk_grid_attach (GTK_GRID (grid), new_label (headings[i], "sy-quiet"), i, 0, 1, 1);
  for (int i = 0; i < policy->n_tolerances; i++)
    {
      const SyTolerance *tolerance = &policy->tolerances[i];
      g_autofree char *fact = sy_tolerance_fact_words (tolerance);
      g_autofree char *source = sy_source_words (tolerance->source, FALSE);
      GtkWidget *note = new_label (source, "sy-note");

      gtk_grid_attach (GTK_GRID (grid), new_label (fact, NULL), 0, i + 1, 1, 1);
      for (int how = 0; how < SY_N_HOW; how++)
        {
          g_autofree char *words = sy_tolerance_words (tolerance, (SyHow) how, self->units);

          gtk_grid_attach (GTK_GRID (grid), new_label (words, "sy-figures"), how + 1, i + 1, 1, 1);
        }
      gtk_widget_set_hexpand (note, TRUE);
      gtk_grid_attach (GTK_GRID (grid), note, SY_N_HOW + 1, i + 1, 1, 1);
    }
  add (self, grid, 12);
}

static void
add_policy (SyLimitsPage *self, const SyPolicy *policy)
{
  g_autofree char *version = g_strdup_printf (_("%s, version %d. A site may tighten a limit freely and loosen one only "
                                                "with a reason, which then stands on every sheet."),
                                              policy->id, policy->version);
  g_autofree char *assigned = sy_assigned_words (policy);
  g_autofree char *who = g_strdup_printf (_("Where a task does not say who may be assigned, this is taken: %s."),
                                          assigned);
  g_autofree char *urgency = g_strdup_printf (_("“Improve the task” is said to be soon over an index of %g and now "
                                                "over %g."),
                                              policy->soon_over, policy->now_over);

  add_heading (self, policy->title);
  add_prose (self, version);
  add_prose (self, who);
  add_prose (self, urgency);
  add_prose (self, sy_policy_context (policy, self->units, NAN).wants_filter
                     ? _("This policy has the guideline filter of the UK guidance on lifting besides: no limit, but over it a "
                         "fuller assessment is called for.")
                     : _("A policy with the guideline filter of the UK guidance on lifting comes with the program too: begin it "
                         "with --policy uk-filter."));
  add_heading (self, _("Region: what results defer to"));
  add (self, sy_limits_region_new (policy), 6);

  add_heading (self, _("Limits"));
  add_prose (self, _("A figure equal to its limit is within it. The strictest verdict governs; every reason is kept."));
  for (size_t m = 0; m < sy_method_count (); m++)
    {
      const SyMethod *method = sy_method_at (m);
      gboolean titled = FALSE;

      for (int i = 0; i < policy->n_rows; i++)
        if (policy->rows[i].of == method)
          {
            if (!titled)
              add (self, new_label (sy_translate (method->title), "sy-strong"), 12);
            titled = TRUE;
            add_limit (self, &policy->rows[i]);
          }
    }
}

static void
add_gear_rules (SyLimitsPage *self, const SyPolicy *policy)
{
  g_autofree char *allowances = sy_allowance_words (policy);

  add_heading (self, _("What is added to a mass"));
  add_prose (self, _("By how the mass was had, where a task or die does not say otherwise. No published figure was found; "
                     "these are assumed."));
  add_prose (self, allowances);
  add_heading (self, _("How often gear is thoroughly examined"));
  add_prose (self, _("Data of the policy, with the regulation that asks for it named as information. What local "
                     "regulations or the maker ask for comes first."));
  for (int i = 0; i < policy->n_examinations; i++)
    {
      const SyExaminationRule *rule = &policy->examinations[i];
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
      g_autofree char *words = sy_examination_words (rule);
      g_autofree char *source = sy_source_words (rule->regulation, rule->from_memory);

      gtk_box_append (GTK_BOX (row), new_label (words, NULL));
      gtk_box_append (GTK_BOX (row), new_label (source, "sy-note"));
      gtk_widget_add_css_class (row, "sy-row");
      add (self, row, 0);
    }
}

static void
add_spread (SyLimitsPage *self, const SyPolicy *policy)
{
  g_autofree char *words = g_strdup_printf (
    _("The spread shows what repeated measurements would give: every measured fact is drawn %d times from a normal "
      "distribution within its range. Seed %llu, so that the same facts always give the same spread. It is a share of "
      "repeated measurements, not a chance of injury."),
    policy->draws, policy->seed);

  add_heading (self, _("How closely facts are known"));
  add_prose (self, _("Half-widths within which 95 of 100 repeated measurements would lie. The form can say otherwise "
                     "for one task."));
  add_tolerances (self, policy);
  add_prose (self, words);
}

static void
add_methods (SyLimitsPage *self)
{
  add_heading (self, _("Methods"));
  for (size_t i = 0; i < sy_method_count (); i++)
    {
      const SyMethod *method = sy_method_at (i);
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
      g_autofree char *source = g_strdup_printf (_("%s · source: %s · edition %d of this program's calculation"),
                                                 method->id, method->source, method->edition);

      gtk_box_append (GTK_BOX (row), new_label (sy_translate (method->title), NULL));
      gtk_box_append (GTK_BOX (row), new_label (source, "sy-note"));
      gtk_widget_add_css_class (row, "sy-row");
      add (self, row, 0);
    }
}

static void
build (SyLimitsPage *self)
{
  const SyPolicy *policy = sy_desk_policy (self->desk);
  GtkWidget *caution = NULL;
  g_autofree char *screening = sy_words_screening (sy_translate);

  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_margin_start (self->column, 24);
  gtk_widget_set_margin_end (self->column, 24);
  gtk_widget_set_margin_bottom (self->column, 24);
  gtk_widget_set_size_request (self->column, COLUMN_WIDTH, -1);
  gtk_widget_set_halign (self->column, GTK_ALIGN_START);
  add_policy (self, policy);
  add_gear_rules (self, policy);
  add_spread (self, policy);
  add_methods (self);
  caution = new_label (screening, "sy-note");
  add (self, caution, 24);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->column);
}

static void
sy_limits_page_dispose (GObject *object)
{
  SyLimitsPage *self = SY_LIMITS_PAGE (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_pointer (&self->desk, sy_desk_unref);
  G_OBJECT_CLASS (sy_limits_page_parent_class)->dispose (object);
}

static gboolean
sy_limits_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SY_LIMITS_PAGE (widget)->scrolled);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before; and once what scrolls has the focus itself, it
   would not go on to what is in it. */
static gboolean
sy_limits_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyLimitsPage *self = SY_LIMITS_PAGE (widget);

  if (direction == GTK_DIR_TAB_FORWARD && gtk_widget_is_focus (self->scrolled))
    return gtk_widget_child_focus (self->column, direction);
  return gtk_widget_child_focus (self->scrolled, direction);
}

static void
sy_limits_page_class_init (SyLimitsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_limits_page_dispose;
  widget_class->grab_focus = sy_limits_page_grab_focus;
  widget_class->focus = sy_limits_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-limits");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_limits_page_init (SyLimitsPage *self)
{
  self->scrolled = gtk_scrolled_window_new ();
  /* It is scrolled by its own keys: there is little to press in it. */
  gtk_widget_set_focusable (self->scrolled, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Limits in force"), -1);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
sy_limits_page_new (SyDesk *desk, SyUnits units)
{
  SyLimitsPage *self = g_object_new (SY_TYPE_LIMITS_PAGE, NULL);

  self->desk = sy_desk_ref (desk);
  self->units = units;
  build (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Limits"), -1);
  return GTK_WIDGET (self);
}

void
sy_limits_page_set_units (SyLimitsPage *self, SyUnits units)
{
  g_return_if_fail (SY_IS_LIMITS_PAGE (self));
  if (self->units == units)
    return;
  self->units = units;
  build (self);
}
