/* SPDX-License-Identifier: MIT */
#include "sy-bars-view.h"

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

#define BARS_MAX 12

struct _SyBarsView
{
  GtkDrawingArea parent_instance;

  SyBar bars[BARS_MAX]; /* their texts are owned */
  char *paths[BARS_MAX];
  SyBars all;
  char *start_text, *end_text;
  int pointed; /* bar under the pointer, -1 none */
  int chosen;  /* bar that the keyboard has chosen, -1 none */
};

enum
{
  PRESSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyBarsView, sy_bars_view, GTK_TYPE_DRAWING_AREA)

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyBarsView *self = SY_BARS_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.9);
  SyBars bars = self->all;

  bars.hot = self->pointed >= 0 ? self->pointed
             : gtk_widget_has_focus (GTK_WIDGET (area)) ? self->chosen
                                                       : -1;
  if (bars.n_bars > 0)
    sy_drawing_bars (cr, width, height, &bars, &palette, font);
}

static void
describe (SyBarsView *self)
{
  g_autoptr (GString) words = g_string_new (NULL);

  if (self->chosen >= 0 && self->chosen < self->all.n_bars)
    {
      const SyBar *bar = &self->bars[self->chosen];

      g_string_printf (words, _("Bar %d of %d: %s %s × %.2f. Return goes to the fact."),
                       self->chosen + 1, self->all.n_bars, bar->symbol, bar->fact, bar->factor);
    }
  else
    {
      for (int i = 0; i < self->all.n_bars; i++)
        g_string_append_printf (words, "%s%s %s × %.2f", i > 0 ? ", " : "", self->bars[i].symbol,
                                self->bars[i].fact, self->bars[i].factor);
      if (self->all.n_bars > 0)
        g_string_append_printf (words, " → %s", self->end_text);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words->str, -1);
}

static void
choose (SyBarsView *self, int i)
{
  self->chosen = i;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
sy_bars_view_press (SyBarsView *self, int i)
{
  g_return_if_fail (SY_IS_BARS_VIEW (self));
  if (i >= 0 && i < self->all.n_bars)
    {
      /* The text may be replaced while the signal runs. */
      g_autofree char *path = g_strdup (self->paths[i]);

      g_signal_emit (self, signals[PRESSED], 0, path);
    }
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state, SyBarsView *self)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0 || self->all.n_bars == 0)
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      choose (self, MIN (self->chosen + 1, self->all.n_bars - 1));
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      choose (self, MAX (self->chosen - 1, 0));
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
      if (self->chosen < 0)
        return GDK_EVENT_PROPAGATE;
      sy_bars_view_press (self, self->chosen);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
motion_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, double x G_GNUC_UNUSED, double y,
           SyBarsView *self)
{
  int bar = self->all.n_bars > 0 ? sy_drawing_bars_at (&self->all, y) : -1;

  if (bar == self->pointed)
    return;
  self->pointed = bar;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), bar >= 0 ? "pointer" : NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
leave_cb (GtkEventControllerMotion *controller, SyBarsView *self)
{
  motion_cb (controller, 0, -1, self);
}

static void
released_cb (GtkGestureClick *gesture G_GNUC_UNUSED, int n_press G_GNUC_UNUSED,
             double x G_GNUC_UNUSED, double y, SyBarsView *self)
{
  if (self->all.n_bars > 0)
    sy_bars_view_press (self, sy_drawing_bars_at (&self->all, y));
}

static void
focus_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyBarsView *self)
{
  choose (self, self->all.n_bars > 0 ? MAX (self->chosen, 0) : -1);
}

static void
clear (SyBarsView *self)
{
  for (int i = 0; i < self->all.n_bars; i++)
    {
      g_free ((char *) self->bars[i].symbol);
      g_free ((char *) self->bars[i].fact);
      g_free (self->paths[i]);
    }
  self->all.n_bars = 0;
  g_clear_pointer (&self->start_text, g_free);
  g_clear_pointer (&self->end_text, g_free);
}

static void
sy_bars_view_finalize (GObject *object)
{
  clear (SY_BARS_VIEW (object));
  G_OBJECT_CLASS (sy_bars_view_parent_class)->finalize (object);
}

static void
sy_bars_view_class_init (SyBarsViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_bars_view_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-bars");
  signals[PRESSED] = g_signal_new ("pressed", SY_TYPE_BARS_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sy_bars_view_init (SyBarsView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->pointed = self->chosen = -1;
  self->all.bars = self->bars;
  self->all.hot = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 300);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("What takes the limit down"), -1);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (focus, "enter", G_CALLBACK (focus_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (gtk_widget_queue_draw), self);
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
sy_bars_view_new (void)
{
  return g_object_new (SY_TYPE_BARS_VIEW, NULL);
}

void
sy_bars_view_begin (SyBarsView *self, double start, const char *start_text, const char *end_text)
{
  g_return_if_fail (SY_IS_BARS_VIEW (self));
  clear (self);
  self->start_text = g_strdup (start_text);
  self->end_text = g_strdup (end_text);
  self->all.start = start;
  self->all.start_text = self->start_text;
  self->all.end_text = self->end_text;
}

void
sy_bars_view_add (SyBarsView *self, const char *symbol, const char *fact, double factor,
                  const char *path)
{
  int i = self->all.n_bars;

  g_return_if_fail (i < BARS_MAX);
  self->bars[i] = (SyBar) { g_strdup (symbol), g_strdup (fact), factor };
  self->paths[i] = g_strdup (path);
  self->all.n_bars++;
}

void
sy_bars_view_end (SyBarsView *self)
{
  if (self->chosen >= self->all.n_bars)
    self->chosen = self->all.n_bars - 1;
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    self->chosen = -1;
  self->pointed = -1;
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self),
                                       (int) (SY_BAR_ROW * (self->all.n_bars + 2)));
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
