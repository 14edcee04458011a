/* SPDX-License-Identifier: MIT */
#include "sy-sheet-view.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-name.h"

#define GAP 18
#define USUAL_DPI 96.0 /* what CSS and most desktops take an inch for */
/* Outside of these a monitor does not know its own size (our choice): a projector, a virtual display. */
#define DPI_MIN 50.0
#define DPI_MAX 400.0
#define SCREEN_PART 0.9 /* of what is seen, to go on by: a line or two stay in sight */

static const double scales[] = { 0.5, 0.75, 1, 1.25, 1.5, 2, 3 };

struct _SySheetView
{
  GtkWidget parent_instance;
  GtkWidget *scroller, *desk;
  SyFolio *folio; /* NULL: empty */
  char *title;
  double scale;   /* 1: as on paper */
  gboolean fits_width;
  int page;       /* last told */
  gboolean room_changed;
  guint settling;
};

enum
{
  MOVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SySheetView, sy_sheet_view, GTK_TYPE_WIDGET)

/* Topics: sizes */

/* Pixels of the window for an inch. */
static double
dots_an_inch (SySheetView *self)
{
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));
  GdkSurface *surface = native != NULL ? gtk_native_get_surface (native) : NULL;
  GdkMonitor *monitor
    = surface != NULL ? gdk_display_get_monitor_at_surface (gdk_surface_get_display (surface), surface) : NULL;
  GdkRectangle geometry;
  double dpi;

  if (monitor == NULL || gdk_monitor_get_width_mm (monitor) <= 0)
    return USUAL_DPI;
  gdk_monitor_get_geometry (monitor, &geometry);
  dpi = geometry.width * 25.4 / gdk_monitor_get_width_mm (monitor);
  return dpi >= DPI_MIN && dpi <= DPI_MAX ? dpi : USUAL_DPI;
}

static GtkAdjustment *
position_of (SySheetView *self)
{
  return gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
}

static double
room_of (SySheetView *self)
{
  return gtk_adjustment_get_page_size (gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller)));
}

static void
size_pages (SySheetView *self)
{
  double width, height, pixels = dots_an_inch (self) / 72;

  if (self->folio == NULL)
    return;
  sy_paper_size (sy_folio_paper (self->folio), &width, &height);
  if (self->fits_width && room_of (self) > 4 * GAP)
    self->scale = (room_of (self) - 2 * GAP) / (width * pixels);
  for (GtkWidget *area = gtk_widget_get_first_child (self->desk); area != NULL; area = gtk_widget_get_next_sibling (area))
    {
      gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), (int) round (width * pixels * self->scale));
      gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), (int) round (height * pixels * self->scale));
    }
  g_signal_emit (self, signals[MOVED], 0);
}

/* Topics: what is in sight */

/* From the top of the desk; FALSE: not laid out yet. */
static gboolean
place_of (SySheetView *self, GtkWidget *area, double *top, double *bottom)
{
  graphene_rect_t bounds;

  if (gtk_widget_get_height (area) < 1 || !gtk_widget_compute_bounds (area, self->desk, &bounds))
    return FALSE;
  *top = bounds.origin.y;
  *bottom = (double) bounds.origin.y + bounds.size.height;
  return TRUE;
}

/* Within a screen of what is seen. */
static gboolean
is_near (SySheetView *self, GtkWidget *area)
{
  const double value = gtk_adjustment_get_value (position_of (self));
  const double screen = gtk_adjustment_get_page_size (position_of (self));
  double top, bottom;

  return place_of (self, area, &top, &bottom) && bottom > value - screen && top < value + 2 * screen;
}

static void
draw_page_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  SySheetView *self = SY_SHEET_VIEW (user_data);
  const int page = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "sy-page"));
  const gboolean near = is_near (self, GTK_WIDGET (area));
  double page_width, page_height;

  /* Paper stays white, whatever the style of the window. */
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  g_object_set_data (G_OBJECT (area), "sy-drawn", GINT_TO_POINTER (near));
  if (!near || self->folio == NULL)
    return;
  sy_paper_size (sy_folio_paper (self->folio), &page_width, &page_height);
  cairo_scale (cr, width / page_width, height / page_height);
  sy_folio_draw (self->folio, page, cr);
}

/* After the layout, in the middle of which sizes must not change. */
static gboolean
settle_cb (gpointer data)
{
  SySheetView *self = data;
  const int before = self->page;

  self->settling = 0;
  if (self->room_changed && self->fits_width)
    size_pages (self);
  self->room_changed = FALSE;
  for (GtkWidget *area = gtk_widget_get_first_child (self->desk); area != NULL; area = gtk_widget_get_next_sibling (area))
    if (g_object_get_data (G_OBJECT (area), "sy-drawn") == NULL && is_near (self, area))
      gtk_widget_queue_draw (area);
  self->page = sy_sheet_view_get_page (self);
  if (self->page != before)
    g_signal_emit (self, signals[MOVED], 0);
  return G_SOURCE_REMOVE;
}

static void
moved_cb (SySheetView *self)
{
  if (self->settling == 0)
    self->settling = g_idle_add (settle_cb, self);
}

static void
room_cb (SySheetView *self)
{
  self->room_changed = TRUE;
  moved_cb (self);
}

/* Topics: pages */

static GtkWidget *
new_page (SySheetView *self, int page, int pages)
{
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  /* Translators: what a sheet is; which of its pages. */
  g_autofree char *name = g_strdup_printf (_("%s, page %d of %d"), self->title, page + 1, pages);

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page_cb, self, NULL);
  g_object_set_data (G_OBJECT (area), "sy-page", GINT_TO_POINTER (page));
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (area, "sy-sheet");
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return area;
}

void
sy_sheet_view_take (SySheetView *self, SyFolio *folio, const char *title)
{
  const int pages = folio != NULL ? sy_folio_pages (folio) : 0;
  GtkWidget *child;

  g_return_if_fail (SY_IS_SHEET_VIEW (self));
  while ((child = gtk_widget_get_first_child (self->desk)) != NULL)
    gtk_box_remove (GTK_BOX (self->desk), child);
  g_clear_pointer (&self->folio, sy_folio_free);
  self->folio = folio;
  self->page = 0; /* told again once it is laid out */
  g_free (self->title);
  self->title = g_strdup (title);
  for (int page = 0; page < pages; page++)
    gtk_box_append (GTK_BOX (self->desk), new_page (self, page, pages));
  size_pages (self);
  g_signal_emit (self, signals[MOVED], 0);
}

int
sy_sheet_view_get_pages (SySheetView *self)
{
  g_return_val_if_fail (SY_IS_SHEET_VIEW (self), 0);
  return self->folio != NULL ? sy_folio_pages (self->folio) : 0;
}

int
sy_sheet_view_get_page (SySheetView *self)
{
  int page = 0;

  g_return_val_if_fail (SY_IS_SHEET_VIEW (self), 0);
  /* The last that begins above the middle of what is seen. */
  for (GtkWidget *area = gtk_widget_get_first_child (self->desk); area != NULL; area = gtk_widget_get_next_sibling (area))
    {
      double top, bottom;
      const gboolean placed = place_of (self, area, &top, &bottom);

      if (page > 0 && (!placed || top > gtk_adjustment_get_value (position_of (self))
                                         + gtk_adjustment_get_page_size (position_of (self)) / 2))
        break;
      page++;
    }
  return page;
}

/* Topics: moving */

static double
next_scale (double scale, gboolean larger)
{
  const gsize n = G_N_ELEMENTS (scales);

  for (gsize i = 0; i < n; i++)
    if (larger && scales[i] > scale + 0.01)
      return scales[i];
    else if (!larger && scales[n - 1 - i] < scale - 0.01)
      return scales[n - 1 - i];
  return scale;
}

void
sy_sheet_view_zoom (SySheetView *self, SySheetZoom zoom)
{
  g_return_if_fail (SY_IS_SHEET_VIEW (self));
  self->fits_width = zoom == SY_SHEET_WIDTH;
  if (zoom == SY_SHEET_REAL)
    self->scale = 1;
  else if (zoom != SY_SHEET_WIDTH)
    self->scale = next_scale (self->scale, zoom == SY_SHEET_LARGER);
  size_pages (self);
}

gboolean
sy_sheet_view_fits_width (SySheetView *self)
{
  g_return_val_if_fail (SY_IS_SHEET_VIEW (self), FALSE);
  return self->fits_width;
}

double
sy_sheet_view_get_scale (SySheetView *self)
{
  g_return_val_if_fail (SY_IS_SHEET_VIEW (self), 1);
  return self->scale;
}

void
sy_sheet_view_scroll (SySheetView *self, int screens)
{
  GtkAdjustment *position;

  g_return_if_fail (SY_IS_SHEET_VIEW (self));
  position = position_of (self);
  gtk_adjustment_set_value (position, gtk_adjustment_get_value (position)
                                        + screens * SCREEN_PART * gtk_adjustment_get_page_size (position));
}

void
sy_sheet_view_go (SySheetView *self, gboolean last)
{
  GtkAdjustment *position;

  g_return_if_fail (SY_IS_SHEET_VIEW (self));
  position = position_of (self);
  gtk_adjustment_set_value (position, last ? gtk_adjustment_get_upper (position) : gtk_adjustment_get_lower (position));
}

/* Topics: the widget */

static void
sy_sheet_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sy_sheet_view_parent_class)->map (widget);
  /* On which monitor it is was not known until now. */
  size_pages (SY_SHEET_VIEW (widget));
}

static void
sy_sheet_view_dispose (GObject *object)
{
  SySheetView *self = SY_SHEET_VIEW (object);

  g_clear_handle_id (&self->settling, g_source_remove);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_pointer (&self->folio, sy_folio_free);
  g_clear_pointer (&self->title, g_free);
  G_OBJECT_CLASS (sy_sheet_view_parent_class)->dispose (object);
}

static void
sy_sheet_view_class_init (SySheetViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_sheet_view_dispose;
  widget_class->map = sy_sheet_view_map;
  signals[MOVED]
    = g_signal_new ("moved", SY_TYPE_SHEET_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_sheet_view_init (SySheetView *self)
{
  GtkAdjustment *across;

  self->scale = 1;
  self->desk = gtk_box_new (GTK_ORIENTATION_VERTICAL, GAP);
  gtk_widget_set_margin_top (self->desk, GAP);
  gtk_widget_set_margin_bottom (self->desk, GAP);
  gtk_widget_set_margin_start (self->desk, GAP);
  gtk_widget_set_margin_end (self->desk, GAP);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->desk);
  gtk_widget_add_css_class (self->scroller, "sy-desk");
  gtk_widget_set_focusable (self->scroller, TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_name (self->scroller, "sheet-pages");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scroller), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Sheet as it will be printed"), -1);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  g_signal_connect_object (position_of (self), "value-changed", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (position_of (self), "changed", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (across, "notify::page-size", G_CALLBACK (room_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
sy_sheet_view_new (void)
{
  return g_object_new (SY_TYPE_SHEET_VIEW, NULL);
}
