/* SPDX-License-Identifier: MIT */
#include "sy-quarters-view.h"

#include "sy-style.h"
#include "sy-view.h"

#define BETWEEN 18.0 /* rows that stand beside each other */

struct _SyQuartersView
{
  GtkDrawingArea parent_instance;

  int n, hot;
  char **labels, **words; /* of each quarter */
  char *sentence;
  int n_rows;
  struct
  {
    char *title;
    double *values;
    char **texts;
  } rows[SY_QUARTER_ROWS_MAX];
};

enum
{
  TOLD,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyQuartersView, sy_quarters_view, GTK_TYPE_DRAWING_AREA)

/* Topics: drawing */

static double
row_width (SyQuartersView *self, double width)
{
  return (width - BETWEEN * (self->n_rows - 1)) / self->n_rows;
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyQuartersView *self = SY_QUARTERS_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);

  for (int i = 0; i < self->n_rows; i++)
    {
      const SyQuarterRow row = { self->rows[i].title, self->rows[i].values, (const char *const *) self->rows[i].texts };
      const SyQuarters quarters = { .n_quarters = self->n, .quarters = (const char *const *) self->labels, .n_rows = 1,
                                    .rows = &row, .heavy = self->hot >= 0 ? self->hot : self->n - 1, .hot = self->hot };

      cairo_save (cr);
      cairo_translate (cr, i * (row_width (self, width) + BETWEEN), 0);
      sy_drawing_quarters (cr, row_width (self, width), height, &quarters, &palette, font);
      cairo_restore (cr);
    }
}

/* The quarter that lies at @x, -1 none. */
static int
find_at (SyQuartersView *self, double x)
{
  const double width = self->n_rows > 0 ? row_width (self, gtk_widget_get_width (GTK_WIDGET (self))) : 0;
  const SyQuarters quarters = { .n_quarters = self->n };

  for (int i = 0; i < self->n_rows; i++, x -= width + BETWEEN)
    if (x >= 0 && x < width)
      return sy_drawing_quarters_at (width, &quarters, x);
  return -1;
}

/* Topics: which quarter is told about */

static void
set_hot (SyQuartersView *self, int hot)
{
  const char *words = hot >= 0 ? self->words[hot] : self->sentence;

  self->hot = hot;
  /* A tooltip replaces the description: it comes first. */
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), hot >= 0 ? words : NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words != NULL ? words : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[TOLD], 0, words != NULL ? words : "");
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state G_GNUC_UNUSED, SyQuartersView *self)
{
  switch (key)
    {
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      sy_quarters_view_step (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      sy_quarters_view_step (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Home:
      set_hot (self, self->n > 0 ? 0 : -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_End:
      set_hot (self, self->n - 1);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
focus_left_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyQuartersView *self)
{
  set_hot (self, -1);
}

static void
moved_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, double x, double y G_GNUC_UNUSED, SyQuartersView *self)
{
  int hot = find_at (self, x);

  if (hot != self->hot && hot >= 0)
    set_hot (self, hot);
}

static void
pointer_left_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, SyQuartersView *self)
{
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    set_hot (self, -1);
}

/* Topics: building */

static void
clear (SyQuartersView *self)
{
  g_clear_pointer (&self->labels, g_strfreev);
  g_clear_pointer (&self->words, g_strfreev);
  g_clear_pointer (&self->sentence, g_free);
  for (int i = 0; i < self->n_rows; i++)
    {
      g_clear_pointer (&self->rows[i].title, g_free);
      g_clear_pointer (&self->rows[i].values, g_free);
      g_clear_pointer (&self->rows[i].texts, g_strfreev);
    }
  self->n = self->n_rows = 0;
}

static void
sy_quarters_view_finalize (GObject *object)
{
  clear (SY_QUARTERS_VIEW (object));
  G_OBJECT_CLASS (sy_quarters_view_parent_class)->finalize (object);
}

static void
sy_quarters_view_class_init (SyQuartersViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_quarters_view_finalize;
  signals[TOLD] = g_signal_new ("told", SY_TYPE_QUARTERS_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-timeline");
}

static void
sy_quarters_view_init (SyQuartersView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new (), *focus = gtk_event_controller_focus_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->hot = -1;
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 320);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), (int) (SY_QUARTER_ROW + SY_QUARTER_FOOT));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_name (GTK_WIDGET (self), "quarters");
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_left_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (moved_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (pointer_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

GtkWidget *
sy_quarters_view_new (const char *name)
{
  GtkWidget *self = g_object_new (SY_TYPE_QUARTERS_VIEW, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return self;
}

static char **
copy_texts (const char *const *texts, int n)
{
  char **copy = g_new0 (char *, n + 1);

  for (int i = 0; i < n; i++)
    copy[i] = g_strdup (texts != NULL && texts[i] != NULL ? texts[i] : "");
  return copy;
}

void
sy_quarters_view_set (SyQuartersView *self, const SyQuarters *quarters, const char *const *words, const char *sentence)
{
  g_return_if_fail (SY_IS_QUARTERS_VIEW (self));
  clear (self);
  gtk_widget_set_visible (GTK_WIDGET (self), quarters != NULL);
  if (quarters != NULL)
    {
      self->n = quarters->n_quarters;
      self->labels = copy_texts (quarters->quarters, self->n);
      self->words = copy_texts (words, self->n);
      self->sentence = g_strdup (sentence);
      self->n_rows = MIN (quarters->n_rows, SY_QUARTER_ROWS_MAX);
      for (int i = 0; i < self->n_rows; i++)
        {
          self->rows[i].title = g_strdup (quarters->rows[i].title);
          self->rows[i].values = g_memdup2 (quarters->rows[i].values, sizeof (double) * (gsize) self->n);
          self->rows[i].texts = copy_texts (quarters->rows[i].texts, self->n);
        }
    }
  set_hot (self, self->hot < self->n ? self->hot : -1);
}

void
sy_quarters_view_step (SyQuartersView *self, int by)
{
  g_return_if_fail (SY_IS_QUARTERS_VIEW (self));
  if (self->n > 0)
    set_hot (self, self->hot < 0 ? (by > 0 ? 0 : self->n - 1) : CLAMP (self->hot + by, 0, self->n - 1));
}

int
sy_quarters_view_get_hot (SyQuartersView *self)
{
  g_return_val_if_fail (SY_IS_QUARTERS_VIEW (self), -1);
  return self->hot;
}
