/* SPDX-License-Identifier: MIT */
#include "sy-capacity-view.h"

#include <math.h>

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

typedef struct
{
  char *name, *figures, *percent, *said, *path;
  double ratio;
} Bar;

struct _SyCapacityView
{
  GtkDrawingArea parent_instance;

  GPtrArray *bars;  /* of Bar           */
  GArray *drawn;    /* of SyCapacityBar */
  double notice;
  char *notice_text;
  int governing;
  int pointed; /* bar under the pointer, -1 none         */
  int chosen;  /* bar that the keyboard has chosen, -1 none */
};

enum
{
  PRESSED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyCapacityView, sy_capacity_view, GTK_TYPE_DRAWING_AREA)

static void
bar_free (gpointer data)
{
  Bar *bar = data;

  g_free (bar->name);
  g_free (bar->figures);
  g_free (bar->percent);
  g_free (bar->said);
  g_free (bar->path);
  g_free (bar);
}

static int
count (SyCapacityView *self)
{
  return (int) self->bars->len;
}

static SyCapacityBars
all_bars (SyCapacityView *self)
{
  return (SyCapacityBars) {
    .n_bars = (int) self->drawn->len,
    .bars = (const SyCapacityBar *) (const void *) self->drawn->data,
    .governing = self->governing,
    .hot = -1,
    .notice = self->notice,
    .notice_text = self->notice_text,
    .full_text = "100 %",
  };
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyCapacityView *self = SY_CAPACITY_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.9);
  SyCapacityBars bars = all_bars (self);

  bars.hot = self->pointed >= 0 ? self->pointed
             : gtk_widget_has_focus (GTK_WIDGET (area)) ? self->chosen
                                                       : -1;
  if (bars.n_bars > 0)
    sy_drawing_capacity_bars (cr, width, height, &bars, &palette, font);
}

static void
describe (SyCapacityView *self)
{
  g_autoptr (GString) words = g_string_new (NULL);

  if (self->chosen >= 0 && self->chosen < count (self))
    {
      g_autofree char *bar = sy_capacity_view_dup_words (self, (guint) self->chosen);

      g_string_printf (words, _("Bar %d of %d: %s. Return goes to the fact."), self->chosen + 1, count (self), bar);
    }
  else
    for (guint i = 0; i < self->bars->len; i++)
      {
        g_autofree char *bar = sy_capacity_view_dup_words (self, i);

        g_string_append_printf (words, "%s%s", i > 0 ? "; " : "", bar);
      }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words->str, -1);
}

static void
choose (SyCapacityView *self, int i)
{
  self->chosen = i;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state, SyCapacityView *self)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0 || count (self) == 0)
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      choose (self, MIN (self->chosen + 1, count (self) - 1));
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
      sy_capacity_view_press (self, self->chosen);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static int
bar_at (SyCapacityView *self, double y)
{
  SyCapacityBars bars = all_bars (self);

  return sy_drawing_capacity_bars_at (&bars, y);
}

static void
motion_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, double x G_GNUC_UNUSED, double y,
           SyCapacityView *self)
{
  int bar = bar_at (self, y);

  if (bar == self->pointed)
    return;
  self->pointed = bar;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), bar >= 0 ? "pointer" : NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
leave_cb (GtkEventControllerMotion *controller, SyCapacityView *self)
{
  motion_cb (controller, 0, -1, self);
}

static void
released_cb (GtkGestureClick *gesture G_GNUC_UNUSED, int n_press G_GNUC_UNUSED, double x G_GNUC_UNUSED, double y,
             SyCapacityView *self)
{
  sy_capacity_view_press (self, bar_at (self, y));
}

static void
focus_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyCapacityView *self)
{
  choose (self, count (self) > 0 ? MAX (self->chosen, 0) : -1);
}

static void
sy_capacity_view_finalize (GObject *object)
{
  SyCapacityView *self = SY_CAPACITY_VIEW (object);

  g_ptr_array_unref (self->bars);
  g_array_unref (self->drawn);
  g_free (self->notice_text);
  G_OBJECT_CLASS (sy_capacity_view_parent_class)->finalize (object);
}

static void
sy_capacity_view_class_init (SyCapacityViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_capacity_view_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-bars");
  signals[PRESSED] = g_signal_new ("pressed", SY_TYPE_CAPACITY_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
sy_capacity_view_init (SyCapacityView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->bars = g_ptr_array_new_with_free_func (bar_free);
  self->drawn = g_array_new (FALSE, FALSE, sizeof (SyCapacityBar));
  self->pointed = self->chosen = self->governing = -1;
  self->notice = NAN;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 300);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Load against capacity"),
                                  -1);
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
sy_capacity_view_new (void)
{
  return g_object_new (SY_TYPE_CAPACITY_VIEW, NULL);
}

void
sy_capacity_view_begin (SyCapacityView *self, double notice, const char *notice_text)
{
  g_return_if_fail (SY_IS_CAPACITY_VIEW (self));
  g_array_set_size (self->drawn, 0);
  g_ptr_array_set_size (self->bars, 0);
  self->governing = -1;
  self->notice = notice;
  g_free (self->notice_text);
  self->notice_text = g_strdup (notice_text);
}

void
sy_capacity_view_add (SyCapacityView *self, const char *name, const char *figures, const char *percent,
                      double ratio, const char *said, gboolean governs, const char *path)
{
  Bar *bar = g_new0 (Bar, 1);
  SyCapacityBar drawn;

  bar->name = g_strdup (name);
  bar->figures = g_strdup (figures);
  bar->percent = g_strdup (percent);
  bar->said = g_strdup (said);
  bar->path = g_strdup (path);
  bar->ratio = ratio;
  drawn = (SyCapacityBar) { bar->name, bar->figures, bar->percent, ratio, bar->said };
  if (governs && self->governing < 0)
    self->governing = count (self);
  g_ptr_array_add (self->bars, bar);
  g_array_append_val (self->drawn, drawn);
}

void
sy_capacity_view_end (SyCapacityView *self)
{
  if (self->chosen >= count (self))
    self->chosen = count (self) - 1;
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    self->chosen = -1;
  self->pointed = -1;
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), (int) (SY_BAR_ROW * (count (self) + 1)));
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

guint
sy_capacity_view_count (SyCapacityView *self)
{
  return self->bars->len;
}

char *
sy_capacity_view_dup_words (SyCapacityView *self, guint i)
{
  const Bar *bar = g_ptr_array_index (self->bars, i);
  const char *outcome = isfinite (bar->ratio) ? bar->percent : bar->said;

  if (bar->figures == NULL || bar->figures[0] == '\0')
    return g_strdup_printf ("%s: %s", bar->name, outcome);
  return g_strdup_printf ("%s: %s, %s", bar->name, bar->figures, outcome);
}

void
sy_capacity_view_press (SyCapacityView *self, int i)
{
  g_return_if_fail (SY_IS_CAPACITY_VIEW (self));
  if (i >= 0 && i < count (self))
    {
      /* The text may be replaced while the signal runs. */
      g_autofree char *path = g_strdup (((Bar *) g_ptr_array_index (self->bars, (guint) i))->path);

      g_signal_emit (self, signals[PRESSED], 0, path);
    }
}
