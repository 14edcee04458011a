/* SPDX-License-Identifier: MIT */
#include "sy-timeline-view.h"

#include "sy-i18n.h"
#include "sy-stored-result.h"
#include "sy-style.h"
#include "sy-timeline.h"
#include "sy-view.h"

#include <math.h>
#include <string.h>

/* Where the line of an index ends: that of a lift at 3, as the steelyard's arm; what is a part of a capacity at 150 % (our
   choice: over 100 % nothing may be lifted). */
#define TOP_INDEX 3.0
#define TOP_UTILISATION 1.5
#define LOW_HEIGHT 72
#define SAID_MAX 6 /* figures in the sentence */

struct _SyTimelineView
{
  GtkDrawingArea parent_instance;

  GArray *marks;    /* of SyTimelineMark, texts in texts     */
  GPtrArray *texts;
  GArray *revisions; /* of gint64, for each mark; 0: it is none */
  GPtrArray *words;  /* for each mark                           */
  SyTimeline timeline;
  char *goal_text, *first_text, *last_text;
  char *sentence;
};

enum
{
  OPEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTimelineView, sy_timeline_view, GTK_TYPE_DRAWING_AREA)

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data G_GNUC_UNUSED)
{
  SyTimelineView *self = SY_TIMELINE_VIEW (area);
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);

  sy_drawing_timeline (cr, width, height, &self->timeline, &palette, font);
}

/* The focus, and what assistive technology reads of it. */
static void
set_hot (SyTimelineView *self, int hot)
{
  const char *words = hot >= 0 ? g_ptr_array_index (self->words, (guint) hot) : self->sentence;

  self->timeline.hot = hot;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words != NULL ? words : "", -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), words);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
open_mark (SyTimelineView *self, int mark)
{
  if (mark >= 0)
    g_signal_emit (self, signals[OPEN], 0, g_array_index (self->revisions, gint64, mark));
}

static gboolean
key_cb (GtkEventControllerKey *controller G_GNUC_UNUSED, guint key, guint code G_GNUC_UNUSED,
        GdkModifierType state G_GNUC_UNUSED, SyTimelineView *self)
{
  switch (key)
    {
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      sy_timeline_view_step (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      sy_timeline_view_step (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Home:
      set_hot (self, -1);
      sy_timeline_view_step (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_End:
      set_hot (self, -1);
      sy_timeline_view_step (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
      open_mark (self, self->timeline.hot);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
focus_left_cb (GtkEventControllerFocus *controller G_GNUC_UNUSED, SyTimelineView *self)
{
  set_hot (self, -1);
}

static void
pressed_cb (GtkGestureClick *gesture G_GNUC_UNUSED, int n G_GNUC_UNUSED, double x, double y G_GNUC_UNUSED,
            SyTimelineView *self)
{
  open_mark (self, sy_drawing_timeline_at (gtk_widget_get_width (GTK_WIDGET (self)), &self->timeline, x));
}

static void
moved_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, double x, double y G_GNUC_UNUSED, SyTimelineView *self)
{
  int hot = sy_drawing_timeline_at (gtk_widget_get_width (GTK_WIDGET (self)), &self->timeline, x);

  if (hot != self->timeline.hot && hot >= 0)
    set_hot (self, hot);
}

static void
pointer_left_cb (GtkEventControllerMotion *controller G_GNUC_UNUSED, SyTimelineView *self)
{
  if (!gtk_widget_has_focus (GTK_WIDGET (self)))
    set_hot (self, -1);
}

static void
clear (SyTimelineView *self)
{
  g_array_set_size (self->marks, 0);
  g_array_set_size (self->revisions, 0);
  g_ptr_array_set_size (self->texts, 0);
  g_ptr_array_set_size (self->words, 0);
  g_clear_pointer (&self->goal_text, g_free);
  g_clear_pointer (&self->first_text, g_free);
  g_clear_pointer (&self->last_text, g_free);
  g_clear_pointer (&self->sentence, g_free);
  self->timeline = (SyTimeline) { .goal = NAN, .top = TOP_INDEX, .title = "", .goal_text = "", .first_text = "",
                                  .last_text = "", .hot = -1 };
}

static void
sy_timeline_view_finalize (GObject *object)
{
  SyTimelineView *self = SY_TIMELINE_VIEW (object);

  clear (self);
  g_array_unref (self->marks);
  g_array_unref (self->revisions);
  g_ptr_array_unref (self->texts);
  g_ptr_array_unref (self->words);
  G_OBJECT_CLASS (sy_timeline_view_parent_class)->finalize (object);
}

static void
sy_timeline_view_class_init (SyTimelineViewClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_timeline_view_finalize;
  signals[OPEN] = g_signal_new ("open", SY_TYPE_TIMELINE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_INT64);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-timeline");
}

static void
sy_timeline_view_init (SyTimelineView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new (), *focus = gtk_event_controller_focus_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->marks = g_array_new (FALSE, FALSE, sizeof (SyTimelineMark));
  self->revisions = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->texts = g_ptr_array_new_with_free_func (g_free);
  self->words = g_ptr_array_new_with_free_func (g_free);
  clear (self);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self), 320);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self), draw_cb, NULL, NULL);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_name (GTK_WIDGET (self), "timeline");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Timeline"), -1);
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
sy_timeline_view_new (void)
{
  return g_object_new (SY_TYPE_TIMELINE_VIEW, NULL);
}

/* What a line of the journal is on the timeline */

static double
seconds_of (const SyEvent *event, double after)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (event->claimed, NULL);

  /* Clocks go back; the journal's order stands. */
  return time != NULL ? fmax (after, (double) g_date_time_to_unix (time)) : after;
}

static const char *
keep (SyTimelineView *self, char *text)
{
  g_ptr_array_add (self->texts, text);
  return text;
}

static void
add_revision (SyTimelineView *self, const SyEvent *event, SyTimelineMark *mark)
{
  g_autofree char *day = sy_stored_day_text (event->claimed), *index = NULL;
  SyStoredResult result;

  sy_stored_result_read (event, &result);
  index = sy_stored_index_text (&result);
  mark->kind = SY_TIMELINE_REVISION;
  mark->shape = sy_view_shape (result.has_verdict ? result.verdict : SY_VERDICT_INCOMPLETE);
  mark->index = result.index;
  mark->text = keep (self, sy_stored_index_number (&result));
  if (result.index_symbol != NULL && strcmp (result.index_symbol, "utilisation") == 0)
    self->timeline.top = TOP_UTILISATION;
  if (result.index_symbol != NULL)
    self->timeline.title
        = keep (self, g_strdup (self->timeline.top < TOP_INDEX ? _("Utilisation") : sy_words_index_sign (result.index_symbol, sy_translate)));
  /* Translators: one step on a timeline: number, day, verdict, index, who. */
  g_ptr_array_add (self->words,
                   g_strdup_printf (_("Revision %ld, %s: %s%s%s, by %s. Return opens it."), (long) event->revision, day,
                                    sy_stored_verdict_text (event, &result), index[0] != '\0' ? ", " : "", index, event->by));
  sy_stored_result_clear (&result);
}

static void
add_mark (SyTimelineView *self, const SyRevision *line)
{
  const SyEvent *event = line->event;
  const double after = self->marks->len > 0 ? g_array_index (self->marks, SyTimelineMark, self->marks->len - 1).time : -1e15;
  SyTimelineMark mark = { SY_TIMELINE_OTHER, seconds_of (event, after), SY_SHAPE_GAP, NAN, "" };
  gint64 revision = event->kind == SY_EVENT_REVISION ? event->revision : 0;

  if (revision != 0)
    add_revision (self, event, &mark);
  else
    {
      if (event->kind == SY_EVENT_SIGNATURE)
        {
          mark.kind = SY_TIMELINE_SIGNED;
          /* Translators: under a mark on a timeline; %ld: which revision. */
          mark.text = keep (self, g_strdup_printf (_("signed off: %ld"), (long) event->revision));
        }
      g_ptr_array_add (self->words, sy_deed_words (event, sy_translate));
    }
  g_array_append_val (self->marks, mark);
  g_array_append_val (self->revisions, revision);
}

/* "3 revisions from … to …: LI 2.1, 1.4, 0.9; revision 3 is signed off by …." */
static char *
make_sentence (SyTimelineView *self, const SyItemLog *log)
{
  GString *out = g_string_new (NULL);
  const guint n = log->revisions->len;
  guint left_out = n > SAID_MAX ? n - SAID_MAX : 0, at = 0;
  gboolean is_first = TRUE;

  if (n == 1)
    g_string_append_printf (out, _("One revision, on %s"), self->first_text);
  else
    g_string_append_printf (out, _("%u revisions, from %s to %s"), n, self->first_text, self->last_text);
  for (guint i = 0; i < self->marks->len; i++)
    {
      const SyTimelineMark *mark = &g_array_index (self->marks, SyTimelineMark, i);

      if (mark->kind != SY_TIMELINE_REVISION || at++ < left_out || isnan (mark->index))
        continue;
      if (is_first)
        g_string_append_printf (out, ": %s %s", self->timeline.title, left_out > 0 ? "… " : "");
      g_string_append_printf (out, "%s%s", is_first ? "" : ", ", mark->text);
      is_first = FALSE;
    }
  g_string_append (out, "; ");
  if (log->task->signed_revision == 0)
    g_string_append (out, _("not signed off."));
  else
    {
      g_autofree char *day = sy_stored_day_text (log->task->signed_when);

      g_string_append_printf (out, _("revision %ld was signed off by %s on %s."), (long) log->task->signed_revision,
                              log->task->signed_by, day);
    }
  return g_string_free (out, FALSE);
}

void
sy_timeline_view_set (SyTimelineView *self, const SyItemLog *log, SyDesk *desk)
{
  const SyMethod *method = log != NULL ? sy_method_find (log->task->method) : NULL;
  gboolean has_index = FALSE;

  g_return_if_fail (SY_IS_TIMELINE_VIEW (self));
  clear (self);
  gtk_widget_set_visible (GTK_WIDGET (self), log != NULL);
  if (log == NULL)
    return;
  for (guint i = 0; i < log->lines->len; i++)
    add_mark (self, log->lines->pdata[i]);
  for (guint i = 0; i < self->marks->len; i++)
    has_index = has_index || !isnan (g_array_index (self->marks, SyTimelineMark, i).index);
  self->first_text = sy_stored_day_text (((SyRevision *) log->lines->pdata[0])->event->claimed);
  self->last_text = sy_stored_day_text (((SyRevision *) log->lines->pdata[log->lines->len - 1])->event->claimed);
  self->timeline.n_marks = (int) self->marks->len;
  self->timeline.marks = (const SyTimelineMark *) (gconstpointer) self->marks->data;
  self->timeline.first_text = self->first_text;
  self->timeline.last_text = strcmp (self->first_text, self->last_text) != 0 ? self->last_text : "";
  if (method != NULL)
    self->timeline.goal = sy_policy_goal (sy_desk_policy (desk), method, SY_UNITS_METRIC).index;
  if (!isfinite (self->timeline.goal))
    self->timeline.goal = NAN;
  else
    {
      const gboolean is_part = self->timeline.top < TOP_INDEX;
      g_autofree char *number = sy_words_number (self->timeline.goal * (is_part ? 100 : 1), 2);

      self->goal_text = g_strdup_printf (is_part ? _("goal %s %%") : _("goal %s"), number);
      self->timeline.goal_text = self->goal_text;
    }
  self->sentence = make_sentence (self, log);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self), has_index ? (int) SY_TIMELINE_HEIGHT : LOW_HEIGHT);
  set_hot (self, -1);
}

void
sy_timeline_view_step (SyTimelineView *self, int by)
{
  int n = (int) self->marks->len, at;

  g_return_if_fail (SY_IS_TIMELINE_VIEW (self));
  at = self->timeline.hot >= 0 ? self->timeline.hot + by : by > 0 ? 0 : n - 1;
  while (at >= 0 && at < n && g_array_index (self->revisions, gint64, at) == 0)
    at += by;
  if (at >= 0 && at < n)
    set_hot (self, at);
}

const char *
sy_timeline_view_get_sentence (SyTimelineView *self)
{
  return self->sentence;
}
