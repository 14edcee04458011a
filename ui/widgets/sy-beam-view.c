/* SPDX-License-Identifier: MIT */
#include "sy-beam-view.h"

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

#include <math.h>

#define FOLLOW_US (150 * 1000)
#define LAST_GRADUATION 3.0

struct _SyBeamView
{
  GtkDrawingArea parent_instance;

  SyBeam beam;         /* as it is to be; symbol belongs to the method's table */
  double from, shown;  /* where the poise set out, where it stands */
  gint64 began;        /* frame time; 0: not moving */
  guint tick;
};

G_DEFINE_FINAL_TYPE (SyBeamView, sy_beam_view, GTK_TYPE_DRAWING_AREA)

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyBeamView *self = SY_BEAM_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);
  SyBeam beam = self->beam;

  beam.index = self->shown;
  beam.beyond_text = _("beyond 3");
  beam.unbounded_text = _("no limit holds");
  sy_drawing_beam (cr, width, height, &beam, &palette, font);
}

static void
stop_following (SyBeamView *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
  self->tick = 0;
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data G_GNUC_UNUSED)
{
  SyBeamView *self = SY_BEAM_VIEW (widget);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  double part;

  if (self->began == 0)
    self->began = now;
  part = CLAMP ((double) (now - self->began) / FOLLOW_US, 0, 1);
  /* Slows down towards its place. */
  self->shown = self->from + (self->beam.index - self->from) * (1 - pow (1 - part, 3));
  gtk_widget_queue_draw (widget);
  if (part < 1)
    return G_SOURCE_CONTINUE;
  self->shown = self->beam.index;
  self->tick = 0;
  return G_SOURCE_REMOVE;
}

static gboolean
may_move (GtkWidget *widget)
{
  gboolean animations = TRUE;

  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &animations, NULL);
  return animations && gtk_widget_get_mapped (widget);
}

static void
sy_beam_view_dispose (GObject *object)
{
  stop_following (SY_BEAM_VIEW (object));
  G_OBJECT_CLASS (sy_beam_view_parent_class)->dispose (object);
}

static void
sy_beam_view_class_init (SyBeamViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_beam_view_dispose;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sy_beam_view_init (SyBeamView *self)
{
  self->beam = (SyBeam) { .index = NAN, .goal = 1, .p5 = NAN, .p95 = NAN, .end = LAST_GRADUATION,
                          .symbol = "", .tilt = 1 };
  self->shown = NAN;
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 300);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), 96);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Steelyard"), -1);
}

GtkWidget *
sy_beam_view_new (void)
{
  return g_object_new (SY_TYPE_BEAM_VIEW, NULL);
}

void
sy_beam_view_set_findings (SyBeamView *self, const SyFindings *findings, const char *sentence)
{
  SyBeam *beam = &self->beam;
  const SyQuantity *index;

  g_return_if_fail (SY_IS_BEAM_VIEW (self));
  index = findings != NULL ? sy_findings_quantity (findings, findings->sink.index_symbol) : NULL;
  beam->index = index == NULL || index->state == SY_STATE_ABSENT ? NAN
                : index->state == SY_STATE_UNBOUNDED             ? INFINITY
                                                                 : index->value;
  /* "worst.index" is a name among quantities, nothing to write on a weight. */
  beam->symbol = index != NULL && strchr (findings->sink.index_symbol, '.') == NULL ? findings->sink.index_symbol : "";
  beam->goal = findings != NULL
                   ? sy_policy_goal (findings->policy, findings->method, findings->units).index
                   : 1;
  /* A ratio of limits that each have a row of their own. */
  if (!isfinite (beam->goal))
    beam->goal = 1;
  beam->p5 = findings != NULL && findings->spread.present ? findings->spread.p5 : NAN;
  beam->p95 = findings != NULL && findings->spread.present ? findings->spread.p95 : NAN;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence,
                                  -1);
  stop_following (self);
  if (isfinite (beam->index) && isfinite (self->shown) && beam->index != self->shown
      && may_move (GTK_WIDGET (self)))
    {
      self->from = self->shown;
      self->began = 0;
      self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
    }
  else
    self->shown = beam->index;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
sy_beam_view_get_shown (SyBeamView *self)
{
  return self->shown;
}

/* A mass against a limit */

struct _SyMassView
{
  GtkDrawingArea parent_instance;

  double mass, limit;
  char *mass_text, *limit_text;
};

G_DEFINE_FINAL_TYPE (SyMassView, sy_mass_view, GTK_TYPE_DRAWING_AREA)

static void
draw_mass_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height,
              gpointer user_data G_GNUC_UNUSED)
{
  SyMassView *self = SY_MASS_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);
  const SyMassArm arm = { self->mass, self->limit, self->mass_text, self->limit_text };

  if (self->mass_text != NULL)
    sy_drawing_mass_arm (cr, width, height, &arm, &palette, font);
}

static void
sy_mass_view_finalize (GObject *object)
{
  SyMassView *self = SY_MASS_VIEW (object);

  g_free (self->mass_text);
  g_free (self->limit_text);
  G_OBJECT_CLASS (sy_mass_view_parent_class)->finalize (object);
}

static void
sy_mass_view_class_init (SyMassViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_mass_view_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sy_mass_view_init (SyMassView *self)
{
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 240);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), 60);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_mass_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Mass against the reference mass"), -1);
}

GtkWidget *
sy_mass_view_new (void)
{
  return g_object_new (SY_TYPE_MASS_VIEW, NULL);
}

void
sy_mass_view_set (SyMassView *self, double mass, double limit, const char *mass_text,
                  const char *limit_text, const char *sentence)
{
  g_return_if_fail (SY_IS_MASS_VIEW (self));
  g_free (self->mass_text);
  g_free (self->limit_text);
  self->mass = mass;
  self->limit = limit;
  self->mass_text = g_strdup (mass_text);
  self->limit_text = g_strdup (limit_text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
