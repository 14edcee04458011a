/* SPDX-License-Identifier: MIT */
#include "sy-scene-move.h"

#include <string.h>

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

#define FONT_SCALE 0.82

/* Steps a key goes. */
#define STEPS_PLAIN 5
#define STEPS_SHIFT 25
#define STEPS_CONTROL 1

struct _SySceneView
{
  GtkDrawingArea parent_instance;

  const SyMethod *method;
  gsize view;
  gboolean has_scene;
  SyScene scene;
  SyMark *marks;

  gboolean movable;
  SyForm *form;           /* NULL: not bound to one */
  gboolean joins;         /* the step of undo of this drag was begun */
  const char *focus_fact; /* of the handle that keys move; NULL none */
  const char *hover_fact; /* under the pointer */
  SyHandle grabbed;       /* as it stood when it was taken hold of; fact NULL: nothing is dragged */
  SySceneMove last;       /* of this drag; fact NULL: not moved yet */
  gboolean lost;          /* what the drag led to cannot be drawn: it is gone when the drag ends */
  SyScene whole;          /* the part of the world that the drawing asks for, while another is shown */
};

enum
{
  MOVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SySceneView, sy_scene_view, GTK_TYPE_DRAWING_AREA)

/* ---- handles ---- */

static gboolean
is_handle (SySceneView *self, int mark)
{
  return self->movable && self->marks[mark].handle.fact != NULL;
}

/* The mark of a handle by its fact; -1: it is not drawn. */
static int
find_handle (SySceneView *self, const char *fact)
{
  for (int i = 0; self->has_scene && fact != NULL && i < self->scene.count; i++)
    if (is_handle (self, i) && strcmp (self->marks[i].handle.fact, fact) == 0)
      return i;
  return -1;
}

static int
nth_handle (SySceneView *self, guint handle)
{
  for (int i = 0; self->has_scene && i < self->scene.count; i++)
    if (is_handle (self, i) && handle-- == 0)
      return i;
  return -1;
}

static SySceneFit
fit_of (SySceneView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  g_autofree char *font = sy_view_font (widget, FONT_SCALE);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  SySceneFit fit = sy_drawing_scene_fit (cr, gtk_widget_get_width (widget), gtk_widget_get_height (widget),
                                         &self->scene, font);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return fit;
}

static int
handle_at (SySceneView *self, double x, double y)
{
  SySceneFit fit;

  if (!self->movable || !self->has_scene)
    return -1;
  fit = fit_of (self);
  return fit.scale > 0 ? sy_drawing_scene_handle_at (&self->scene, &fit, x, y) : -1;
}

/* Shows the part of the world that @from shows. */
static void
show_part (SySceneView *self, const SyScene *from)
{
  self->scene.x0 = from->x0;
  self->scene.y0 = from->y0;
  self->scene.x1 = from->x1;
  self->scene.y1 = from->y1;
}

static void
update_hot (SySceneView *self)
{
  gboolean focused = gtk_widget_is_focus (GTK_WIDGET (self));
  const char *fact = self->grabbed.fact != NULL ? self->grabbed.fact
                     : self->hover_fact != NULL ? self->hover_fact
                     : focused                  ? self->focus_fact
                                                : NULL;

  self->scene.hot = find_handle (self, fact);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- drawing and words ---- */

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SySceneView *self = SY_SCENE_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), FONT_SCALE);

  if (self->has_scene)
    sy_drawing_scene (cr, width, height, &self->scene, &palette, font);
}

/* The name of the point at which a pull is drawn; NULL for any other mark. */
static const char *
point_of (SySceneView *self, const SyMark *mark)
{
  for (int i = 0; mark->role == SY_ROLE_TENSION && i < self->scene.count; i++)
    if (self->marks[i].role == SY_ROLE_POINT && g_strcmp0 (self->marks[i].fact, mark->fact) == 0)
      return self->marks[i].text;
  return NULL;
}

static void
describe (SySceneView *self)
{
  const char *title = sy_translate (self->method->view_titles[self->view]);
  int focused = gtk_widget_is_focus (GTK_WIDGET (self)) ? find_handle (self, self->focus_fact) : -1;
  g_autoptr (GString) measures = g_string_new (NULL);
  g_autofree char *drawing = NULL;
  g_autofree char *handle = NULL;
  g_autofree char *description = NULL;

  for (int i = 0; self->has_scene && i < self->scene.count; i++)
    {
      const SyMark *mark = &self->marks[i];
      const char *point = point_of (self, mark);

      if (mark->text[0] == '\0' || mark->role == SY_ROLE_POINT || (mark->fact == NULL && mark->type != SY_MARK_DIMENSION))
        continue;
      g_string_append_printf (measures, "%s%s%s%s", measures->len > 0 ? ", " : "", point != NULL ? point : "",
                              point != NULL ? " " : "", mark->text);
    }
  if (!self->has_scene)
    drawing = g_strdup_printf (_("%s: nothing to draw yet"), title);
  else if (measures->len == 0)
    drawing = g_strdup_printf (_("%s, to scale"), title);
  else
    /* Translators: the name of a drawing and the measures in it. */
    drawing = g_strdup_printf (_("%s, to scale: %s"), title, measures->str);
  if (focused >= 0)
    {
      handle = sy_scene_move_describe (self->method, &self->marks[focused], self->scene.units);
      /* Translators: a handle and where it stands; then what the drawing shows. */
      description = g_strdup_printf (_("%s. The arrow keys move it. %s"), handle, drawing);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description != NULL ? description : drawing, -1);
}

static void
update_focusable (SySceneView *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), nth_handle (self, 0) >= 0);
}

/* ---- moving ---- */

static void
emit_moved (SySceneView *self, const SySceneMove *move, gboolean dragging)
{
  g_signal_emit (self, signals[MOVED], 0, move, dragging);
}

static void
moved_cb (SySceneView *self, const SySceneMove *move, gboolean dragging, gpointer user_data G_GNUC_UNUSED)
{
  if (self->form == NULL)
    return;
  if (sy_scene_move_apply (move, self->form, self->joins))
    self->joins = dragging || self->joins;
  if (!dragging)
    self->joins = FALSE;
}

gboolean
sy_scene_view_drag_begin (SySceneView *self, double x, double y)
{
  int mark;

  g_return_val_if_fail (SY_IS_SCENE_VIEW (self), FALSE);
  mark = handle_at (self, x, y);
  if (mark < 0)
    return FALSE;
  self->whole = self->scene;
  self->lost = FALSE;
  self->grabbed = self->marks[mark].handle;
  self->focus_fact = self->grabbed.fact;
  self->last.fact = NULL;
  self->joins = FALSE;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  update_hot (self);
  describe (self);
  return TRUE;
}

void
sy_scene_view_drag_update (SySceneView *self, double dx, double dy)
{
  SySceneFit fit;
  SySceneMove move;

  g_return_if_fail (SY_IS_SCENE_VIEW (self));
  if (self->grabbed.fact == NULL)
    return;
  fit = fit_of (self);
  if (!(fit.scale > 0)
      || !sy_scene_move_make (self->method, &self->grabbed, self->scene.units, dx / fit.scale, -dy / fit.scale, &move))
    return;
  self->last = move;
  emit_moved (self, &move, TRUE);
}

void
sy_scene_view_drag_end (SySceneView *self)
{
  SySceneMove last;

  g_return_if_fail (SY_IS_SCENE_VIEW (self));
  if (self->grabbed.fact == NULL)
    return;
  last = self->last;
  self->grabbed.fact = NULL;
  show_part (self, &self->whole);
  if (self->lost)
    self->has_scene = FALSE;
  if (last.fact != NULL)
    emit_moved (self, &last, FALSE);
  update_hot (self);
  describe (self);
}

gboolean
sy_scene_view_move (SySceneView *self, int right, int up)
{
  SySceneMove move;
  int mark;
  double step;

  g_return_val_if_fail (SY_IS_SCENE_VIEW (self), FALSE);
  mark = find_handle (self, self->focus_fact);
  if (mark < 0 || self->grabbed.fact != NULL)
    return FALSE;
  step = sy_scene_step (self->scene.units);
  if (sy_scene_move_make (self->method, &self->marks[mark].handle, self->scene.units, right * step, up * step, &move))
    emit_moved (self, &move, FALSE);
  return TRUE;
}

/* ---- pointer and keys ---- */

static void
drag_begin_cb (GtkGestureDrag *drag, double x, double y, SySceneView *self)
{
  gtk_gesture_set_state (GTK_GESTURE (drag), sy_scene_view_drag_begin (self, x, y) ? GTK_EVENT_SEQUENCE_CLAIMED
                                                                                    : GTK_EVENT_SEQUENCE_DENIED);
}

static void
drag_update_cb (GtkGestureDrag *drag G_GNUC_UNUSED, double dx, double dy, SySceneView *self)
{
  sy_scene_view_drag_update (self, dx, dy);
}

static void
drag_end_cb (GtkGestureDrag *drag G_GNUC_UNUSED, double dx G_GNUC_UNUSED, double dy G_GNUC_UNUSED, SySceneView *self)
{
  sy_scene_view_drag_end (self);
}

static void
cancel_cb (GtkGesture *gesture G_GNUC_UNUSED, GdkEventSequence *sequence G_GNUC_UNUSED, SySceneView *self)
{
  sy_scene_view_drag_end (self);
}

static void
hover (SySceneView *self, int mark)
{
  const char *fact = mark >= 0 ? self->marks[mark].handle.fact : NULL;

  if (g_strcmp0 (fact, self->hover_fact) == 0)
    return;
  self->hover_fact = fact;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), fact != NULL ? "grab" : NULL);
  update_hot (self);
}

static void
motion_cb (GtkEventControllerMotion *motion G_GNUC_UNUSED, double x, double y, SySceneView *self)
{
  if (self->grabbed.fact == NULL)
    hover (self, handle_at (self, x, y));
}

static void
leave_cb (GtkEventControllerMotion *motion G_GNUC_UNUSED, SySceneView *self)
{
  if (self->grabbed.fact == NULL)
    hover (self, -1);
}

static gboolean
key_cb (GtkEventControllerKey *key G_GNUC_UNUSED, guint keyval, guint keycode G_GNUC_UNUSED, GdkModifierType state,
        SySceneView *self)
{
  int steps = state & GDK_SHIFT_MASK ? STEPS_SHIFT : state & GDK_CONTROL_MASK ? STEPS_CONTROL : STEPS_PLAIN;

  if (state & GDK_ALT_MASK)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return sy_scene_view_move (self, -steps, 0);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return sy_scene_view_move (self, steps, 0);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return sy_scene_view_move (self, 0, -steps);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return sy_scene_view_move (self, 0, steps);
    default:
      return FALSE;
    }
}

static void
focus_changed_cb (GtkEventControllerFocus *focus, SySceneView *self)
{
  int first = nth_handle (self, 0);

  if (gtk_event_controller_focus_is_focus (focus) && find_handle (self, self->focus_fact) < 0)
    self->focus_fact = first >= 0 ? self->marks[first].handle.fact : NULL;
  update_hot (self);
  describe (self);
}

/* Tab goes from handle to handle before it goes on. */
static gboolean
sy_scene_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SySceneView *self = SY_SCENE_VIEW (widget);
  int n = (int) sy_scene_view_count_handles (self), next = direction == GTK_DIR_TAB_BACKWARD ? n - 1 : 0;

  if (n == 0 || (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD))
    return GTK_WIDGET_CLASS (sy_scene_view_parent_class)->focus (widget, direction);
  for (int i = 0; i < n && gtk_widget_is_focus (widget); i++)
    if (g_strcmp0 (sy_scene_view_handle_fact (self, (guint) i), self->focus_fact) == 0)
      next = i + (direction == GTK_DIR_TAB_FORWARD ? 1 : -1);
  if (next < 0 || next >= n)
    return FALSE;
  self->focus_fact = sy_scene_view_handle_fact (self, (guint) next);
  if (!gtk_widget_is_focus (widget) && !gtk_widget_grab_focus (widget))
    return FALSE;
  update_hot (self);
  describe (self);
  return TRUE;
}

/* ---- class ---- */

static void
sy_scene_view_dispose (GObject *object)
{
  g_clear_object (&SY_SCENE_VIEW (object)->form);
  G_OBJECT_CLASS (sy_scene_view_parent_class)->dispose (object);
}

static void
sy_scene_view_finalize (GObject *object)
{
  g_free (SY_SCENE_VIEW (object)->marks);
  G_OBJECT_CLASS (sy_scene_view_parent_class)->finalize (object);
}

static void
sy_scene_view_class_init (SySceneViewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_scene_view_dispose;
  G_OBJECT_CLASS (class)->finalize = sy_scene_view_finalize;
  GTK_WIDGET_CLASS (class)->focus = sy_scene_view_focus;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  signals[MOVED] = g_signal_new ("moved", SY_TYPE_SCENE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                 G_TYPE_POINTER, G_TYPE_BOOLEAN);
}

static void
add_controllers (SySceneView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect (focus, "enter", G_CALLBACK (focus_changed_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (focus_changed_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, key);
  gtk_widget_add_controller (widget, focus);
}

static void
sy_scene_view_init (SySceneView *self)
{
  self->marks = g_new0 (SyMark, SY_SCENE_MARKS_MAX);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 240);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), 236);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

/* ---- public ---- */

GtkWidget *
sy_scene_view_new (const SyMethod *method, gsize view)
{
  SySceneView *self = g_object_new (SY_TYPE_SCENE_VIEW, NULL);

  self->method = method;
  self->view = view;
  describe (self);
  return GTK_WIDGET (self);
}

void
sy_scene_view_set_assessment (SySceneView *self, const SyAssessment *assessment)
{
  SyScene shown;

  g_return_if_fail (SY_IS_SCENE_VIEW (self));
  if (self->grabbed.fact != NULL)
    self->lost = assessment == NULL;
  if (self->grabbed.fact != NULL && assessment == NULL)
    return;
  shown = self->scene;
  self->has_scene = assessment != NULL;
  if (assessment != NULL)
    sy_assessment_scene (assessment, self->view, self->marks, SY_SCENE_MARKS_MAX, &self->scene);
  self->scene.handles = self->movable;
  if (self->grabbed.fact != NULL)
    {
      /* What is drawn under the pointer stays under it. */
      self->whole = self->scene;
      show_part (self, &shown);
    }
  update_focusable (self);
  update_hot (self);
  describe (self);
}

void
sy_scene_view_set_movable (SySceneView *self, gboolean movable)
{
  g_return_if_fail (SY_IS_SCENE_VIEW (self));
  if (movable && !self->movable)
    add_controllers (self);
  self->movable = movable;
  self->scene.handles = movable;
  update_focusable (self);
  update_hot (self);
}

void
sy_scene_view_bind_form (SySceneView *self, SyForm *form)
{
  g_return_if_fail (SY_IS_SCENE_VIEW (self) && self->form == NULL);
  self->form = g_object_ref (form);
  g_signal_connect (self, "moved", G_CALLBACK (moved_cb), NULL);
  sy_scene_view_set_movable (self, TRUE);
}

guint
sy_scene_view_count_handles (SySceneView *self)
{
  guint n = 0;

  while (nth_handle (self, n) >= 0)
    n++;
  return n;
}

const char *
sy_scene_view_handle_fact (SySceneView *self, guint handle)
{
  int mark = nth_handle (self, handle);

  return mark >= 0 ? self->marks[mark].handle.fact : NULL;
}

gboolean
sy_scene_view_handle_place (SySceneView *self, guint handle, double *x, double *y)
{
  int mark = nth_handle (self, handle);
  SySceneFit fit;

  if (mark < 0)
    return FALSE;
  fit = fit_of (self);
  *x = fit.left + fit.scale * self->marks[mark].points[0].x;
  *y = fit.bottom - fit.scale * self->marks[mark].points[0].y;
  return fit.scale > 0;
}

const char *
sy_scene_view_get_focus_fact (SySceneView *self)
{
  return gtk_widget_is_focus (GTK_WIDGET (self)) ? self->focus_fact : NULL;
}
