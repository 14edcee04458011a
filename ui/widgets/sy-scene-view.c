/* SPDX-License-Identifier: MIT */
#include "sy-scene-view.h"

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-view.h"

#define MARKS 192

struct _SySceneView
{
  GtkDrawingArea parent_instance;

  const SyMethod *method;
  gsize view;
  gboolean has_scene;
  SyScene scene;
  SyMark *marks;
};

G_DEFINE_FINAL_TYPE (SySceneView, sy_scene_view, GTK_TYPE_DRAWING_AREA)

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SySceneView *self = SY_SCENE_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.82);

  if (self->has_scene)
    sy_drawing_scene (cr, width, height, &self->scene, &palette, font);
}

static void
describe (SySceneView *self)
{
  const char *title = sy_translate (self->method->view_titles[self->view]);
  g_autoptr (GString) measures = g_string_new (NULL);
  g_autofree char *description = NULL;

  for (int i = 0; self->has_scene && i < self->scene.count; i++)
    if (self->marks[i].fact != NULL && self->marks[i].text[0] != '\0')
      g_string_append_printf (measures, "%s%s", measures->len > 0 ? ", " : "", self->marks[i].text);
  if (self->has_scene)
    /* Translators: the name of a drawing and the measures in it. */
    description = g_strdup_printf (_("%s, to scale: %s"), title, measures->str);
  else
    description = g_strdup_printf (_("%s: nothing to draw yet"), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
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
  G_OBJECT_CLASS (class)->finalize = sy_scene_view_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
sy_scene_view_init (SySceneView *self)
{
  self->marks = g_new0 (SyMark, MARKS);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 240);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), 236);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

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
  g_return_if_fail (SY_IS_SCENE_VIEW (self));
  self->has_scene = assessment != NULL;
  if (assessment != NULL)
    sy_assessment_scene (assessment, self->view, self->marks, MARKS, &self->scene);
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
