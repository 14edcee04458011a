/* SPDX-License-Identifier: MIT */
#include "sy-step-row.h"

#include "sy-i18n.h"
#include "sy-step-words.h"
#include "sy-view.h"

#include <string.h>

struct _SyStepRow
{
  GtkButton parent_instance;

  SyForm *form;
  char *list;
  guint item;
  GtkWidget *number, *title, *minutes, *note, *shape, *state, *missing;
  char *text, *label, *kind;    /* that the state is of     */
  SyAssessment *assessment;     /* … and of which whole     */
  SyUnits units;
  SyStepState now;
};

enum { DROPPED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyStepRow, sy_step_row, GTK_TYPE_BUTTON)

static void
set_text (GtkWidget *label, const char *text)
{
  if (strcmp (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_visible (label, text[0] != '\0');
}

static const char *
get (SyStepRow *self, const char *member)
{
  g_autofree char *path = g_strdup_printf ("%s[%u].%s", self->list, self->item, member);

  return sy_form_get (self->form, path);
}

static gboolean
differs (char **kept, const char *now)
{
  if (g_strcmp0 (*kept, now) == 0)
    return FALSE;
  g_free (*kept);
  *kept = g_strdup (now);
  return TRUE;
}

/* Assessing facts takes a while; most changes are of another step. */
static void
follow_state (SyStepRow *self)
{
  const SyField *facts = sy_step_facts_member (sy_form_find_field (self->form, self->list));
  SyAssessment *assessment = sy_form_get_assessment (self->form);
  gboolean changed = differs (&self->text, get (self, facts->name));

  changed |= differs (&self->label, get (self, "label"));
  changed |= differs (&self->kind, get (self, "kind"));
  changed |= self->units != sy_form_get_units (self->form) || self->assessment != assessment;
  if (!changed)
    return;
  self->units = sy_form_get_units (self->form);
  g_clear_pointer (&self->assessment, sy_assessment_unref);
  self->assessment = assessment != NULL ? sy_assessment_ref (assessment) : NULL;
  sy_step_state_clear (&self->now);
  sy_step_state_of (self->form, self->list, self->item, &self->now);
}

/* "Step 3: Lift, Lift · Machine stopped, 5 min, Not assessed yet". */
static char *
dup_name (SyStepRow *self, const char *item_label, const char *const *words)
{
  GString *name = g_string_new (NULL);
  const char *label = get (self, "label");

  g_string_printf (name, "%s %u%s%s", item_label, self->item + 1, label[0] != '\0' ? ": " : "", label);
  for (gsize i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0')
      g_string_append_printf (name, ", %s", words[i]);
  return g_string_free (name, FALSE);
}

void
sy_step_row_follow (SyStepRow *self)
{
  const SyField *field = sy_form_find_field (self->form, self->list);
  const char *item_label = sy_translate (field->item_label != NULL ? field->item_label : field->label);
  g_autofree char *number = g_strdup_printf ("%u", self->item + 1);
  g_autofree char *note = sy_step_dup_note (self->form, self->list, self->item);
  g_autofree char *minutes = sy_step_dup_minutes (self->form, self->list, self->item);
  g_autofree char *missing = NULL, *name = NULL;
  const char *label = get (self, "label");

  follow_state (self);
  missing = self->now.missing > 0
                ? g_strdup_printf (P_ ("%u check missing", "%u checks missing", self->now.missing), self->now.missing)
                : g_strdup ("");
  set_text (self->number, number);
  set_text (self->title, label[0] != '\0' ? label : _("(no name)"));
  set_text (self->minutes, minutes);
  set_text (self->note, note);
  set_text (self->state, self->now.said ? self->now.words : "");
  set_text (self->missing, missing);
  gtk_widget_set_visible (self->shape, self->now.said);
  if (self->now.said)
    sy_shape_set (self->shape, self->now.verdict);
  name = dup_name (self, item_label, (const char *const[]) { note, minutes, sy_step_row_get_state (self), missing, NULL });
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
sy_step_row_set_open (SyStepRow *self, gboolean open)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
  if (open)
    gtk_widget_add_css_class (GTK_WIDGET (self), "sy-open");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "sy-open");
}

const char *
sy_step_row_get_state (SyStepRow *self)
{
  return self->now.said ? self->now.words : "";
}

guint
sy_step_row_get_item (SyStepRow *self)
{
  return self->item;
}

/* Topics: dragging */

static GdkContentProvider *
prepare_cb (GtkDragSource *source G_GNUC_UNUSED, double x G_GNUC_UNUSED, double y G_GNUC_UNUSED, SyStepRow *self)
{
  return gdk_content_provider_new_typed (SY_TYPE_STEP_ROW, self);
}

static void
drag_begin_cb (GtkDragSource *source, GdkDrag *drag G_GNUC_UNUSED, SyStepRow *self)
{
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (GTK_WIDGET (self));

  gtk_drag_source_set_icon (source, picture, 0, 0);
}

static gboolean
drop_cb (GtkDropTarget *target G_GNUC_UNUSED, const GValue *value, double x G_GNUC_UNUSED, double y G_GNUC_UNUSED,
         SyStepRow *self)
{
  SyStepRow *from = g_value_get_object (value);

  if (from == NULL || from == self || from->form != self->form || strcmp (from->list, self->list) != 0)
    return FALSE;
  g_signal_emit (self, signals[DROPPED], 0, from->item);
  return TRUE;
}

static GtkWidget *
new_handle (SyStepRow *self)
{
  GtkWidget *handle = gtk_image_new_from_icon_name ("list-drag-handle-symbolic");
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (SY_TYPE_STEP_ROW, GDK_ACTION_MOVE);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (prepare_cb), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  gtk_widget_add_controller (handle, GTK_EVENT_CONTROLLER (source));
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
  gtk_widget_add_css_class (handle, "sy-handle");
  return handle;
}

/* Topics: class */

static void
sy_step_row_dispose (GObject *object)
{
  SyStepRow *self = SY_STEP_ROW (object);

  g_clear_object (&self->form);
  g_clear_pointer (&self->list, g_free);
  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->label, g_free);
  g_clear_pointer (&self->kind, g_free);
  g_clear_pointer (&self->assessment, sy_assessment_unref);
  sy_step_state_clear (&self->now);
  G_OBJECT_CLASS (sy_step_row_parent_class)->dispose (object);
}

static void
sy_step_row_class_init (SyStepRowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_step_row_dispose;
  signals[DROPPED] = g_signal_new ("dropped", SY_TYPE_STEP_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                   G_TYPE_UINT);
}

static GtkWidget *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
sy_step_row_init (SyStepRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *first = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *second = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->number = new_label ("sy-figures");
  self->title = new_label ("sy-strong");
  self->minutes = new_label ("sy-quiet");
  self->note = new_label ("sy-quiet");
  self->shape = sy_shape_new (SY_VERDICT_INCOMPLETE, 16);
  self->state = new_label (NULL);
  self->missing = new_label ("sy-strong");
  gtk_label_set_width_chars (GTK_LABEL (self->number), 2);
  gtk_label_set_xalign (GTK_LABEL (self->number), 1);
  gtk_widget_set_valign (self->number, GTK_ALIGN_START);
  gtk_widget_add_css_class (self->minutes, "sy-figures");
  gtk_label_set_ellipsize (GTK_LABEL (self->minutes), PANGO_ELLIPSIZE_NONE);
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_widget_set_hexpand (self->note, TRUE);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (first), self->title);
  gtk_box_append (GTK_BOX (first), self->minutes);
  gtk_box_append (GTK_BOX (second), self->note);
  gtk_box_append (GTK_BOX (second), self->shape);
  gtk_box_append (GTK_BOX (second), self->state);
  gtk_box_append (GTK_BOX (words), first);
  gtk_box_append (GTK_BOX (words), second);
  gtk_box_append (GTK_BOX (words), self->missing);
  gtk_box_append (GTK_BOX (line), new_handle (self));
  gtk_box_append (GTK_BOX (line), self->number);
  gtk_box_append (GTK_BOX (line), words);
  gtk_button_set_child (GTK_BUTTON (self), line);
  gtk_widget_add_css_class (GTK_WIDGET (self), "flat");
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-step");
  sy_step_row_set_open (self, FALSE);
}

GtkWidget *
sy_step_row_new (SyForm *form, const char *list, guint item)
{
  SyStepRow *self = g_object_new (SY_TYPE_STEP_ROW, NULL);
  g_autofree char *name = g_strdup_printf ("%s[%u]", list, item);

  self->form = g_object_ref (form);
  self->list = g_strdup (list);
  self->item = item;
  gtk_widget_set_name (GTK_WIDGET (self), name);
  sy_step_row_follow (self);
  return GTK_WIDGET (self);
}
