/* SPDX-License-Identifier: MIT */
#include "sy-task-chooser.h"

#include "sy-item-search.h"

#define WIDTH 560
#define HEIGHT 520

struct _SyTaskChooser
{
  GtkWindow parent_instance;
  SyItemSearch *search; /* a child */
  GtkWidget *choose;
  gboolean chosen;
};

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskChooser, sy_task_chooser, GTK_TYPE_WINDOW)

static void
picked_cb (SyItemSearch *search, SyTaskRow *row, SyTaskChooser *self)
{
  g_autofree char *id = NULL;

  (void) search;
  if (self->chosen)
    return;
  self->chosen = TRUE;
  id = g_strdup (sy_task_row_get_task (row)->id);
  g_object_ref (self);
  g_signal_emit (self, signals[CHOSEN], 0, id);
  gtk_window_destroy (GTK_WINDOW (self));
  g_object_unref (self);
}

static void
selected_cb (SyItemSearch *search, SyTaskChooser *self)
{
  gtk_widget_set_sensitive (self->choose, sy_item_search_get_selected (search) != NULL);
}

static void
sy_task_chooser_class_init (SyTaskChooserClass *klass)
{
  (void) klass;
  signals[CHOSEN] = g_signal_new ("chosen", SY_TYPE_TASK_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_STRING);
}

static void
sy_task_chooser_init (SyTaskChooser *self)
{
  (void) self;
}

GtkWidget *
sy_task_chooser_new (GtkWindow *parent, SyTaskList *list, SyRegister which, SyUnits units, const char *title, const char *choose)
{
  static const SyTaskColumn columns[] = { SY_BY_VERDICT, SY_BY_INDEX, SY_BY_MASS, SY_BY_MACHINE, SY_BY_PLACE, SY_BY_DAY };
  const SyItemNote note = { columns, G_N_ELEMENTS (columns) };
  SyTaskChooser *self = g_object_new (SY_TYPE_TASK_CHOOSER, "transient-for", parent, "modal", TRUE, "destroy-with-parent", TRUE,
                                      "title", title, "default-width", WIDTH, "default-height", HEIGHT, NULL);

  self->search = SY_ITEM_SEARCH (sy_item_search_new (list, which, note, units));
  self->choose = sy_item_search_fill (self->search, GTK_WINDOW (self), NULL, choose, "choose");
  g_signal_connect_object (self->search, "picked", G_CALLBACK (picked_cb), self, 0);
  g_signal_connect_object (self->search, "selected", G_CALLBACK (selected_cb), self, 0);
  selected_cb (self->search, self);
  return GTK_WIDGET (self);
}

GListModel *
sy_task_chooser_get_rows (SyTaskChooser *self)
{
  g_return_val_if_fail (SY_IS_TASK_CHOOSER (self), NULL);
  return sy_item_search_get_rows (self->search);
}

void
sy_task_chooser_set_search (SyTaskChooser *self, const char *search)
{
  g_return_if_fail (SY_IS_TASK_CHOOSER (self));
  sy_item_search_find (self->search, search);
}

void
sy_task_chooser_choose (SyTaskChooser *self, guint row)
{
  g_return_if_fail (SY_IS_TASK_CHOOSER (self));
  sy_item_search_pick (self->search, row);
}
