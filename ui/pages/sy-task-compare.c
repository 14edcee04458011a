/* SPDX-License-Identifier: MIT */
#include "sy-task-compare.h"

#include "sy-difference-table.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-task-standing.h"

struct _SyTaskCompare
{
  GtkBox parent_instance;

  SyItemLog *log;
  GtkWidget *sides[2]; /* drop-downs, one line a revision, oldest first */
  GtkWidget *result;
};

G_DEFINE_FINAL_TYPE (SyTaskCompare, sy_task_compare, GTK_TYPE_BOX)

static const SyEvent *
chosen (SyTaskCompare *self, int side)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->sides[side]));

  return at < self->log->revisions->len ? ((SyRevision *) self->log->revisions->pdata[at])->event : NULL;
}

static void
chosen_cb (GObject *dropdown G_GNUC_UNUSED, GParamSpec *pspec G_GNUC_UNUSED, SyTaskCompare *self)
{
  const SyEvent *before = chosen (self, 0), *after = chosen (self, 1);
  g_autofree char *clash = NULL;

  sy_part_empty (self->result);
  if (before == NULL || after == NULL)
    return;
  clash = sy_standing_clash (self->log, MAX (before->revision, after->revision));
  if (*clash != '\0')
    gtk_box_append (GTK_BOX (self->result), sy_part_label (clash, "sy-notice"));
  gtk_box_append (GTK_BOX (self->result), sy_difference_table_new (before, after));
}

static void
sy_task_compare_dispose (GObject *object)
{
  g_clear_pointer (&SY_TASK_COMPARE (object)->log, sy_item_log_unref);
  G_OBJECT_CLASS (sy_task_compare_parent_class)->dispose (object);
}

static void
sy_task_compare_class_init (SyTaskCompareClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_compare_dispose;
}

static void
sy_task_compare_init (SyTaskCompare *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

/* "2 · 2026-03-01 · by whom" */
static char *
line_of (const SyEvent *event)
{
  g_autofree char *when = sy_stored_time_text (event->claimed);

  return g_strdup_printf (_("Revision %ld · %s · %s"), (long) event->revision, when, event->by);
}

static void
add_side (SyTaskCompare *self, GtkWidget *grid, int side, const char *caption, const char *name, gint64 revision)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  GtkWidget *label = sy_part_label (caption, "sy-caption");
  guint at = 0;

  for (guint i = 0; i < self->log->revisions->len; i++)
    {
      const SyEvent *event = ((SyRevision *) self->log->revisions->pdata[i])->event;

      g_ptr_array_add (lines, line_of (event));
      if (event->revision == revision)
        at = i;
    }
  g_ptr_array_add (lines, NULL);
  self->sides[side] = gtk_drop_down_new_from_strings ((const char *const *) lines->pdata);
  gtk_widget_set_name (self->sides[side], name);
  sy_name (self->sides[side], caption);
  gtk_widget_set_hexpand (self->sides[side], TRUE);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sides[side]), at);
  g_signal_connect (self->sides[side], "notify::selected", G_CALLBACK (chosen_cb), self);
  gtk_grid_attach (GTK_GRID (grid), label, 0, side, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), self->sides[side], 1, side, 1, 1);
}

GtkWidget *
sy_task_compare_new (SyItemLog *log, gint64 before, gint64 after)
{
  SyTaskCompare *self = g_object_new (SY_TYPE_TASK_COMPARE, NULL);
  GtkWidget *grid = gtk_grid_new ();

  self->log = sy_item_log_ref (log);
  self->result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  add_side (self, grid, 0, _("Compare"), "compare-before", before);
  add_side (self, grid, 1, _("With"), "compare-after", after);
  gtk_box_append (GTK_BOX (self), grid);
  gtk_box_append (GTK_BOX (self), self->result);
  chosen_cb (NULL, NULL, self);
  return GTK_WIDGET (self);
}
