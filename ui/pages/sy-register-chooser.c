/* SPDX-License-Identifier: MIT */
#include "sy-register-chooser.h"

#include "sy-i18n.h"
#include "sy-item-search.h"
#include "sy-name.h"
#include "sy-take.h"

#define WIDTH 560
#define HEIGHT 520

struct _SyRegisterChooser
{
  GtkWindow parent_instance;
  SyWorker *worker;
  SyRegister which;
  SyForm *plan;
  SyItemSearch *search; /* a child */
  GtkWidget *where, *take;
  GPtrArray *places; /* of SyTakePlace, as in the drop-down */
  char *chosen;      /* id of what is being read, NULL: none */
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (SyRegisterChooser, sy_register_chooser, GTK_TYPE_WINDOW)

/* Topics: taking */

static gboolean
take_item (SyRegisterChooser *self, const SyRegisterItem *item, GError **error)
{
  guint where;

  if (self->which == SY_REGISTER_DIES)
    return sy_take_die (self->plan, item, error);
  where = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->where));
  if (where >= self->places->len)
    return FALSE;
  return sy_take_gear (self->plan, item, self->places->pdata[where], error);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SyRegisterChooser) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) revisions = sy_worker_history_finish (SY_WORKER (source), result, &error);
  g_autofree char *id = g_steal_pointer (&self->chosen);

  if (self->plan == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (revisions != NULL && revisions->len > 0)
    {
      const SyRevision *latest = revisions->pdata[revisions->len - 1];
      g_autoptr (SyRegisterItem) item
        = sy_register_item_new (id, latest->event->name, latest->event->item_kind, latest->event->facts);

      if (take_item (self, item, &error))
        {
          gtk_window_destroy (GTK_WINDOW (self));
          return;
        }
    }
  sy_item_search_say (self->search, error != NULL ? error->message : _("It cannot be taken into this plan."));
}

static void
picked_cb (SyItemSearch *search, SyTaskRow *row, SyRegisterChooser *self)
{
  (void) search;
  if (self->chosen != NULL || !gtk_widget_get_sensitive (self->take))
    return;
  self->chosen = g_strdup (sy_task_row_get_task (row)->id);
  sy_worker_history_async (self->worker, self->chosen, self->cancellable, read_cb, g_object_ref (self));
}

/* Topics: choosing */

static char *
dup_place_words (const SyTakePlace *place)
{
  if (*place->leg == '\0')
    /* Translators: above the hook of a lift plan. */
    return *place->element != '\0' ? g_strdup_printf (_("Hung from: in place of %s"), place->element)
                                   : g_strdup (_("Hung from: as one more"));
  return *place->element != '\0' ? g_strdup_printf (_("Leg %s: in place of %s"), place->leg, place->element)
                                 : g_strdup_printf (_("Leg %s: as one more, next to the hook"), place->leg);
}

/* The places follow the kind of what is selected. */
static void
selected_cb (SyItemSearch *search, SyRegisterChooser *self)
{
  SyTaskRow *row = sy_item_search_get_selected (search);
  gboolean can = row != NULL;

  if (row != NULL && self->which == SY_REGISTER_GEAR)
    {
      g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);

      g_clear_pointer (&self->places, g_ptr_array_unref);
      self->places = sy_take_places (self->plan, sy_task_row_get_task (row)->detail.gear_kind);
      for (guint i = 0; i < self->places->len; i++)
        {
          g_autofree char *place = dup_place_words (self->places->pdata[i]);

          gtk_string_list_append (words, place);
        }
      gtk_drop_down_set_model (GTK_DROP_DOWN (self->where), G_LIST_MODEL (words));
      can = self->places->len > 0;
      sy_item_search_say (search, can ? "" : _("A lift plan has no place for it: legs come first, and a fork truck or cart has a "
                                              "plan of its own."));
    }
  gtk_widget_set_sensitive (self->take, can);
}

/* Topics: building */

static void
build (SyRegisterChooser *self, SyTaskList *list)
{
  static const SyTaskColumn of_die[] = { SY_BY_MACHINE, SY_BY_MASS, SY_BY_BALANCE, SY_BY_STORAGE };
  static const SyTaskColumn of_gear[] = { SY_BY_GEAR, SY_BY_IDENTITY, SY_BY_WLL, SY_BY_DUE, SY_BY_STORAGE };
  gboolean is_die = self->which == SY_REGISTER_DIES;
  SyItemNote note = { is_die ? of_die : of_gear, is_die ? G_N_ELEMENTS (of_die) : G_N_ELEMENTS (of_gear) };

  self->where = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_name (self->where, "where");
  sy_name (self->where, _("Where in the plan"));
  gtk_widget_set_visible (self->where, !is_die);
  gtk_widget_set_hexpand (self->where, TRUE);
  self->search = SY_ITEM_SEARCH (sy_item_search_new (list, self->which, note, sy_form_get_units (self->plan)));
  self->take = sy_item_search_fill (self->search, GTK_WINDOW (self), self->where, _("_Take it into the plan"), "take");
  g_signal_connect_object (self->search, "picked", G_CALLBACK (picked_cb), self, 0);
  g_signal_connect_object (self->search, "selected", G_CALLBACK (selected_cb), self, 0);
  selected_cb (self->search, self);
}

static void
sy_register_chooser_dispose (GObject *object)
{
  SyRegisterChooser *self = SY_REGISTER_CHOOSER (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->plan);
  g_clear_object (&self->worker);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->chosen, g_free);
  G_OBJECT_CLASS (sy_register_chooser_parent_class)->dispose (object);
}

static void
sy_register_chooser_class_init (SyRegisterChooserClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_register_chooser_dispose;
}

static void
sy_register_chooser_init (SyRegisterChooser *self)
{
  self->cancellable = g_cancellable_new ();
}

GtkWidget *
sy_register_chooser_new (GtkWindow *parent, SyWorker *worker, SyTaskList *list, SyRegister which, SyForm *plan)
{
  SyRegisterChooser *self = g_object_new (
    SY_TYPE_REGISTER_CHOOSER, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE, "title",
    which == SY_REGISTER_DIES ? _("Take a die from the register") : _("Take gear from the register"),
    "default-width", WIDTH, "default-height", HEIGHT, NULL);

  self->worker = g_object_ref (worker);
  self->which = which;
  self->plan = g_object_ref (plan);
  build (self, list);
  return GTK_WIDGET (self);
}

GListModel *
sy_register_chooser_get_rows (SyRegisterChooser *self)
{
  return sy_item_search_get_rows (self->search);
}

void
sy_register_chooser_set_search (SyRegisterChooser *self, const char *search)
{
  sy_item_search_find (self->search, search);
}

void
sy_register_chooser_take (SyRegisterChooser *self, guint row)
{
  sy_item_search_pick (self->search, row);
}
