/* SPDX-License-Identifier: MIT */
#include "sy-find-gear.h"

#include <math.h>

#include "sy-i18n.h"
#include "sy-lookup.h"
#include "sy-name.h"
#include "sy-take.h"
#include "sy-task-parts.h"
#include "sy-tasks-cells.h"

#define WAIT_MS 400 /* typing goes on meanwhile */

struct _SyFindGear
{
  GtkBox parent_instance;
  SyWorker *worker;
  SyForm *form; /* borrowed: the page outlives its parts */
  GtkWidget *said, *places;
  GPtrArray *fits; /* of SyGearFit, NULL: not looked yet */
  GCancellable *cancellable;
  guint timer;
  gboolean asking, stale;
};

G_DEFINE_FINAL_TYPE (SyFindGear, sy_find_gear, GTK_TYPE_BOX)

/* Topics: putting in */

typedef struct
{
  SyFindGear *self;
  char *item, *leg, *element;
} Put;

static void
put_free (gpointer data, GClosure *closure)
{
  Put *put = data;

  (void) closure;
  g_free (put->item);
  g_free (put->leg);
  g_free (put->element);
  g_free (put);
}

static void
say (SyFindGear *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->said), words);
  gtk_widget_set_visible (self->said, *words != '\0');
}

/* The item as it now stands in the record. */
static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Put *put = data;
  SyFindGear *self = put->self;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) revisions = sy_worker_history_finish (SY_WORKER (source), result, &error);
  SyTakePlace *place = self->form != NULL ? sy_take_find_place (self->form, put->leg, put->element) : NULL;

  if (self->form == NULL)
    ;
  else if (revisions == NULL || revisions->len == 0)
    say (self, error != NULL ? error->message : _("It is no longer in the register."));
  else if (place == NULL)
    say (self, _("The plan has no such place any more."));
  else
    {
      const SyRevision *latest = revisions->pdata[revisions->len - 1];
      g_autoptr (SyRegisterItem) item
        = sy_register_item_new (put->item, latest->event->name, SY_ITEM_GEAR, latest->event->facts);

      if (!sy_take_gear (self->form, item, place, &error))
        say (self, error->message);
    }
  sy_take_place_free (place);
  g_object_unref (self);
  put_free (put, NULL);
}

static void
put_cb (GtkButton *button, const Put *put)
{
  Put *job = g_new (Put, 1);

  (void) button;
  job->self = g_object_ref (put->self);
  job->item = g_strdup (put->item);
  job->leg = g_strdup (put->leg);
  job->element = g_strdup (put->element);
  sy_worker_history_async (put->self->worker, put->item, put->self->cancellable, read_cb, job);
}

/* Topics: what is shown */

static char *
percent (const SyGearFit *fit)
{
  if (isnan (fit->utilisation))
    return g_strdup (_("not known"));
  if (isinf (fit->utilisation))
    return g_strdup (_("nothing left"));
  /* Never rounded down to 100 from above. */
  return g_strdup_printf ("%.0f %%", ceil (fit->utilisation * 100 - 1e-9));
}

static char *
dup_called (const SyGearFit *fit)
{
  if (*fit->identity == '\0' || g_strrstr (fit->name, fit->identity) != NULL)
    return g_strdup (fit->name);
  /* Translators: name and mark of an item of gear. */
  return g_strdup_printf (_("%s (%s)"), fit->name, fit->identity);
}

static void
add_texts (GtkWidget *box, const GPtrArray *texts, const char *css_class)
{
  for (guint i = 0; i < texts->len; i++)
    gtk_box_append (GTK_BOX (box), sy_part_label (texts->pdata[i], css_class));
}

static void
add_fit (SyFindGear *self, GtkWidget *box, const SyGearFit *fit, const char *place)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *button = sy_button_new (_("Put it in"), NULL);
  g_autofree char *figure = percent (fit);
  g_autofree char *called = dup_called (fit);
  /* Translators: puts an item of gear into a place of the plan: "Put S-1 in: Leg A · Shackle". */
  g_autofree char *name = g_strdup_printf (_("Put %s in: %s"), called, place);
  GtkWidget *figures = gtk_label_new (figure);
  Put *put = g_new (Put, 1);

  put->self = self;
  put->item = g_strdup (fit->item);
  put->leg = g_strdup (fit->leg);
  put->element = g_strdup (fit->element);
  gtk_widget_add_css_class (figures, "sy-figures");
  gtk_widget_set_size_request (figures, 54, -1);
  gtk_label_set_xalign (GTK_LABEL (figures), 1);
  gtk_widget_set_valign (figures, GTK_ALIGN_START);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_set_hexpand (texts, TRUE);
  sy_name (button, name);
  g_signal_connect_data (button, "clicked", G_CALLBACK (put_cb), put, put_free, 0);
  gtk_box_append (GTK_BOX (texts), sy_part_label (called, NULL));
  add_texts (texts, fit->why, "sy-note");
  add_texts (texts, fit->remarks, "sy-note");
  gtk_box_append (GTK_BOX (row), figures);
  gtk_box_append (GTK_BOX (row), texts);
  if (fit->fits)
    gtk_box_append (GTK_BOX (row), button);
  else
    g_object_unref (g_object_ref_sink (button));
  gtk_widget_add_css_class (row, "sy-reason");
  gtk_box_append (GTK_BOX (box), row);
}

static char *
dup_place (const SyGearFit *fit)
{
  const char *kind = sy_gear_kind_words (fit->kind);
  /* Translators: a leg of a lift plan, or what the hook hangs from, and a kind of gear. */
  g_autofree char *place = *fit->leg != '\0' ? g_strdup_printf (_("Leg %s · %s"), fit->leg, kind)
                                             : g_strdup_printf (_("Hung from · %s"), kind);

  if (*fit->element == '\0')
    return g_steal_pointer (&place);
  /* Translators: a place of a lift plan, and what stands there now. */
  return g_strdup_printf (_("%s (now %s)"), place, fit->element);
}

static gboolean
same_place (const SyGearFit *a, const SyGearFit *b)
{
  return g_str_equal (a->leg, b->leg) && g_str_equal (a->kind, b->kind) && g_str_equal (a->element, b->element);
}

/* Fits @from up to, not including, the return value: those of one place, what fits first. */
static guint
add_place (SyFindGear *self, guint from)
{
  const SyGearFit *first = self->fits->pdata[from];
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rest = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *place = dup_place (first);
  guint i = from, out = 0;

  gtk_widget_add_css_class (box, "sy-section");
  gtk_box_append (GTK_BOX (box), sy_part_heading (place));
  for (; i < self->fits->len && same_place (self->fits->pdata[i], first); i++)
    {
      const SyGearFit *fit = self->fits->pdata[i];

      add_fit (self, fit->fits ? box : rest, fit, place);
      out += fit->fits ? 0 : 1;
    }
  if (out == i - from)
    gtk_box_append (GTK_BOX (box), sy_part_label (_("Nothing in the register carries it, in date."), "sy-strong"));
  if (out > 0)
    {
      g_autofree char *words = g_strdup_printf (P_ ("%u item does not", "%u items do not", out), out);
      g_autofree char *name = g_strdup_printf (_("%s: %s"), place, words);
      GtkWidget *expander = gtk_expander_new (words);

      gtk_expander_set_child (GTK_EXPANDER (expander), rest);
      sy_name (expander, name);
      gtk_box_append (GTK_BOX (box), expander);
    }
  else
    g_object_unref (g_object_ref_sink (rest));
  gtk_box_append (GTK_BOX (self->places), box);
  return i;
}

static void
show (SyFindGear *self)
{
  sy_part_empty (self->places);
  say (self, self->fits->len > 0 ? "" : _("The register has no gear for any place of this plan."));
  for (guint i = 0; i < self->fits->len;)
    i = add_place (self, i);
}

/* Topics: looking */

static void look (SyFindGear *self);

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyFindGear) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) fits = sy_lookup_gear_finish (result, &error);

  (void) source;
  self->asking = FALSE;
  if (self->form == NULL)
    return;
  if (fits == NULL)
    say (self, error->message);
  else
    {
      g_clear_pointer (&self->fits, g_ptr_array_unref);
      self->fits = g_steal_pointer (&fits);
      show (self);
    }
  if (self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    look (self);
}

static void
look (SyFindGear *self)
{
  SyAssessment *plan = sy_form_get_assessment (self->form);
  g_autofree char *needed = plan == NULL ? sy_part_problems_sentence (self->form) : NULL;

  self->stale = self->asking;
  if (self->asking)
    return;
  if (plan == NULL)
    {
      sy_part_empty (self->places);
      say (self, needed != NULL ? needed : "");
      return;
    }
  self->asking = TRUE;
  if (self->fits == NULL)
    say (self, _("Looking through the register…"));
  sy_lookup_gear_async (self->worker, plan, self->cancellable, answered_cb, g_object_ref (self));
}

static gboolean
look_cb (gpointer user_data)
{
  SyFindGear *self = user_data;

  self->timer = 0;
  look (self);
  return G_SOURCE_REMOVE;
}

static void
look_soon (SyFindGear *self)
{
  self->stale = TRUE;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  g_clear_handle_id (&self->timer, g_source_remove);
  self->timer = g_timeout_add (WAIT_MS, look_cb, self);
}

static void
changed_cb (GObject *object, SyFindGear *self)
{
  (void) object;
  look_soon (self);
}

static void
sy_find_gear_map (GtkWidget *widget)
{
  SyFindGear *self = SY_FIND_GEAR (widget);

  GTK_WIDGET_CLASS (sy_find_gear_parent_class)->map (widget);
  if (self->stale)
    look (self);
}

static void
sy_find_gear_dispose (GObject *object)
{
  SyFindGear *self = SY_FIND_GEAR (object);

  self->form = NULL;
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->fits, g_ptr_array_unref);
  G_OBJECT_CLASS (sy_find_gear_parent_class)->dispose (object);
}

static void
sy_find_gear_class_init (SyFindGearClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_find_gear_dispose;
  GTK_WIDGET_CLASS (klass)->map = sy_find_gear_map;
}

static void
sy_find_gear_init (SyFindGear *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-tab");
  self->cancellable = g_cancellable_new ();
  self->stale = TRUE;
  self->said = sy_part_label (NULL, NULL);
  self->places = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self),
                  sy_part_label (_("Gear of the register in the places of this plan, each tried there with every "
                                   "reduction that applies; the figure is its part of what it may carry."),
                                 "sy-quiet"));
  gtk_box_append (GTK_BOX (self), self->said);
  gtk_box_append (GTK_BOX (self), self->places);
}

GtkWidget *
sy_find_gear_new (SyWorker *worker, SyForm *form)
{
  SyFindGear *self = g_object_new (SY_TYPE_FIND_GEAR, NULL);

  self->worker = g_object_ref (worker);
  self->form = form;
  g_signal_connect_object (form, "changed", G_CALLBACK (changed_cb), self, 0);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  return GTK_WIDGET (self);
}
