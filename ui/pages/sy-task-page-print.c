/* SPDX-License-Identifier: MIT */
/* A task page and paper: what is shown is what its sheets are of. */
#include "sy-i18n.h"
#include "sy-sheet-window.h"
#include "sy-task-page-private.h"
#include "sy-task-parts.h"

#include <string.h>

/* The revision that is being looked at in the history; 0: the latest. */
static gint64
shown_revision (SyTaskPage *self)
{
  const char *tab = gtk_stack_get_visible_child_name (GTK_STACK (self->tabs));

  return g_strcmp0 (tab, "history") == 0 ? sy_task_history_get_shown (self->history) : 0;
}

void
sy_task_page_print (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyTaskPage *self = SY_TASK_PAGE (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *window;

  (void) name, (void) parameter;
  if (self->facts == NULL)
    return;
  window = sy_sheet_window_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->worker);
  if (self->task_id != NULL)
    sy_sheet_window_open (SY_SHEET_WINDOW (window), self->task_id, shown_revision (self), sy_task_page_get_dirty (self));
  else
    {
      g_autofree char *facts = sy_form_document (self->form), *problem = sy_part_problems_sentence (self->form);

      sy_sheet_window_open_facts (SY_SHEET_WINDOW (window), sy_task_form_get_name (self->facts), facts, problem);
    }
  gtk_window_present (GTK_WINDOW (window));
}
