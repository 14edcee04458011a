/* SPDX-License-Identifier: MIT */
#include "sy-lanes-view.h"

#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

struct _SyLanesView
{
  GtkDrawingArea parent_instance;

  SyLanes lanes;
  SyLanesFit fit; /* of the last drawing */
  char **words;   /* of each bar         */
  char *sentence;
  gpointer owner;
  GDestroyNotify free_owner;
};

enum
{
  FACT,
  TOLD,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyLanesView, sy_lanes_view, GTK_TYPE_DRAWING_AREA)

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyLanesView *self = SY_LANES_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);

  if (self->lanes.n_lanes <= 0)
    return;
  self->fit = sy_drawing_lanes_fit (cr, width, height, &self->lanes, font);
  sy_drawing_lanes (cr, width, height, &self->lanes, &palette, font);
}

/* The bar that is told about, and what assistive technology reads of it. */
static void
set_hot (SyLanesView *self, int hot)
{
  const char *words = hot >= 0 ? self->words[hot] : self->sentence;

  self->lanes.hot = hot;
  /* A tooltip replaces the description: it comes first. */
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), hot >= 0 ? words : NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words != NULL ? words : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[TOLD], 0, words != NULL ? words : "");
}

static void
open_bar (SyLanesView *self, int bar)
{
  g_autofree char *path = NULL;

  if (bar < 0)
    return;
  path = g_strdup_printf ("steps[%d]", bar);
  g_signal_emit (self, signals[FACT], 0, path);
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state G_GNUC_UNUSED, SyLanesView *self)
{
  switch (key)
    {
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      sy_lanes_view_step (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      sy_lanes_view_step (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      sy_lanes_view_cross (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      sy_lanes_view_cross (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Home:
      set_hot (self, sy_drawing_lanes_beside (&self->lanes, -1, 1));
      return GDK_EVENT_STOP;
    case GDK_KEY_End:
      set_hot (self, sy_drawing_lanes_beside (&self->lanes, -1, -1));
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
      open_bar (self, self->lanes.hot);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
focus_left_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyLanesView *self)
{
  set_hot (self, -1);
}

static void
pressed_cb (GtkGestureClick *gesture G_GNUC_UNUSED, int n G_GNUC_UNUSED, double x, double y, SyLanesView *self)
{
  open_bar (self, sy_drawing_lanes_at (&self->lanes, &self->fit, x, y));
}

static void
moved_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, double x, double y, SyLanesView *self)
{
  int hot = sy_drawing_lanes_at (&self->lanes, &self->fit, x, y);

  if (hot != self->lanes.hot && hot >= 0)
    set_hot (self, hot);
}

static void
pointer_left_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, SyLanesView *self)
{
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    set_hot (self, -1);
}

static void
clear (SyLanesView *self)
{
  g_clear_pointer (&self->words, g_strfreev);
  g_clear_pointer (&self->sentence, g_free);
  if (self->free_owner != NULL)
    self->free_owner (self->owner);
  self->free_owner = NULL;
  self->owner = NULL;
  self->lanes = (SyLanes) { .hot = -1 };
  self->fit = (SyLanesFit) { .lane = 0 };
}

static void
sy_lanes_view_finalize (GObject *object)
{
  clear (SY_LANES_VIEW (object));
  G_OBJECT_CLASS (sy_lanes_view_parent_class)->finalize (object);
}

static void
sy_lanes_view_class_init (SyLanesViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_lanes_view_finalize;
  signals[FACT] = g_signal_new ("fact", SY_TYPE_LANES_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  signals[TOLD] = g_signal_new ("told", SY_TYPE_LANES_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-timeline");
}

static void
sy_lanes_view_init (SyLanesView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new (), *focus = gtk_event_controller_focus_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  clear (self);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 320);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_name (GTK_WIDGET (self), "lanes");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Who does what when"), -1);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (moved_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (pointer_left_cb), self);
  g_signal_connect (click, "released", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
sy_lanes_view_new (void)
{
  return g_object_new (SY_TYPE_LANES_VIEW, NULL);
}

void
sy_lanes_view_set (SyLanesView *self, const SyLanes *lanes, const char *const *words, const char *sentence, gpointer owner,
                   GDestroyNotify free_owner)
{
  int hot;

  g_return_if_fail (SY_IS_LANES_VIEW (self));
  hot = self->lanes.hot;
  clear (self);
  gtk_widget_set_visible (GTK_WIDGET (self), lanes != NULL);
  if (lanes != NULL)
    {
      self->lanes = *lanes;
      self->words = g_new0 (char *, lanes->n_bars + 1);
      for (int i = 0; i < lanes->n_bars; i++)
        self->words[i] = g_strdup (words[i]);
      self->sentence = g_strdup (sentence);
      gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), (int) sy_drawing_lanes_height (lanes));
    }
  self->owner = owner;
  self->free_owner = free_owner;
  set_hot (self, hot < self->lanes.n_bars ? hot : -1);
}

void
sy_lanes_view_step (SyLanesView *self, int by)
{
  int next;

  g_return_if_fail (SY_IS_LANES_VIEW (self));
  next = sy_drawing_lanes_beside (&self->lanes, self->lanes.hot, by);
  if (next >= 0)
    set_hot (self, next);
}

void
sy_lanes_view_cross (SyLanesView *self, int by)
{
  int next;

  g_return_if_fail (SY_IS_LANES_VIEW (self));
  if (self->lanes.hot < 0)
    {
      sy_lanes_view_step (self, by);
      return;
    }
  next = sy_drawing_lanes_across (&self->lanes, self->lanes.hot, by);
  if (next >= 0)
    set_hot (self, next);
}

int
sy_lanes_view_get_hot (SyLanesView *self)
{
  return self->lanes.hot;
}
