/* SPDX-License-Identifier: MIT */
/* The window of sheets for the eye: choices at the left, the pages beside them. */
#include "sy-sheet-window-private.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"

#define WIDTH 1180
#define HEIGHT 720
#define CHOICES_WIDTH 250

/* Callbacks */

static void
kind_cb (GtkCheckButton *button, SySheetWindow *self)
{
  if (self->filling || !gtk_check_button_get_active (button))
    return;
  self->kind = g_object_get_data (G_OBJECT (button), "sy-kind");
  sy_sheet_window_offer (self);
  sy_sheet_window_show_sheet (self);
}

static void
paper_cb (GtkCheckButton *button, SySheetWindow *self)
{
  if (self->filling || !gtk_check_button_get_active (button))
    return;
  self->paper = (SyPaper) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "sy-paper"));
  sy_sheet_window_show_sheet (self);
}

static void
revision_cb (GObject *object, GParamSpec *pspec, SySheetWindow *self)
{
  const guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));

  (void) object, (void) pspec;
  if (self->filling || at >= self->revisions->len)
    return;
  self->revision = g_array_index (self->revisions, gint64, at);
  sy_sheet_window_read (self);
}

static void
moved_cb (SySheetWindow *self)
{
  const int pages = sy_sheet_view_get_pages (SY_SHEET_VIEW (self->view));
  g_autofree char *where = g_strdup_printf (_("Page %d of %d"), sy_sheet_view_get_page (SY_SHEET_VIEW (self->view)), pages);
  g_autofree char *size = g_strdup_printf ("%.0f %%", 100 * sy_sheet_view_get_scale (SY_SHEET_VIEW (self->view)));

  gtk_label_set_text (GTK_LABEL (self->where), pages > 0 ? where : "");
  gtk_label_set_text (GTK_LABEL (self->size), size);
}

/* What is offered */

static void
offer_kinds (SySheetWindow *self)
{
  GtkWidget *first = NULL;

  if (sy_sheet_window_kind (self) == NULL)
    self->kind = self->n_kinds > 0 ? self->kinds[0].id : NULL;
  sy_part_empty (self->kinds_box);
  for (guint i = 0; i < self->n_kinds; i++)
    {
      GtkWidget *button = sy_part_radio (sy_translate (self->kinds[i].title));

      gtk_widget_set_name (button, self->kinds[i].id);
      g_object_set_data (G_OBJECT (button), "sy-kind", (gpointer) self->kinds[i].id);
      if (first != NULL)
        gtk_check_button_set_group (GTK_CHECK_BUTTON (button), GTK_CHECK_BUTTON (first));
      else
        first = button;
      gtk_check_button_set_active (GTK_CHECK_BUTTON (button), self->kinds[i].id == self->kind);
      g_signal_connect_object (button, "toggled", G_CALLBACK (kind_cb), self, 0);
      gtk_box_append (GTK_BOX (self->kinds_box), button);
    }
}

/* What is chosen moves with the keyboard: the buttons that have it must stay. */
static gboolean
kinds_are_offered (SySheetWindow *self)
{
  guint i = 0;

  for (GtkWidget *button = gtk_widget_get_first_child (self->kinds_box); button != NULL;
       button = gtk_widget_get_next_sibling (button), i++)
    if (i >= self->n_kinds || g_object_get_data (G_OBJECT (button), "sy-kind") != self->kinds[i].id)
      return FALSE;
  return i > 0 && i == self->n_kinds && sy_sheet_window_kind (self) != NULL;
}

static void
show_kind (SySheetWindow *self)
{
  for (GtkWidget *button = gtk_widget_get_first_child (self->kinds_box); button != NULL;
       button = gtk_widget_get_next_sibling (button))
    if (g_object_get_data (G_OBJECT (button), "sy-kind") == self->kind)
      gtk_check_button_set_active (GTK_CHECK_BUTTON (button), TRUE);
}

static void
offer_papers (SySheetWindow *self)
{
  const SyDossierKind *kind = sy_sheet_window_kind (self);
  const guint papers = kind != NULL ? kind->papers : 0;

  if (papers != 0 && (papers & (1u << self->paper)) == 0)
    self->paper = sy_paper_of_locale ();
  for (guint i = 0; i < SY_N_PAPERS; i++)
    gtk_widget_set_visible (self->papers[i], (papers & (1u << i)) != 0);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->papers[self->paper]), TRUE);
}

static char *
revision_words (const SyEvent *event, gboolean is_latest)
{
  g_autofree char *when = sy_stored_time_text (event->claimed);

  if (is_latest)
    return g_strdup_printf (_("Latest: revision %ld, %s"), (long) event->revision, when);
  return g_strdup_printf (_("Revision %ld, %s"), (long) event->revision, when);
}

static void
offer_revisions (SySheetWindow *self)
{
  const SyDossier *dossier = self->source != NULL && self->source->binder != NULL ? &self->source->binder->dossier : NULL;
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint shown = 0;

  g_array_set_size (self->revisions, 0);
  for (gsize i = dossier != NULL ? dossier->n_lines : 0; i > 0; i--)
    {
      const SyEvent *event = dossier->lines[i - 1].event;
      g_autofree char *words = NULL;

      if (event->kind != SY_EVENT_REVISION)
        continue;
      words = revision_words (event, event->revision == dossier->task->revision);
      if (event->revision == dossier->event->revision)
        shown = self->revisions->len;
      gtk_string_list_append (names, words);
      g_array_append_val (self->revisions, event->revision);
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->choice), G_LIST_MODEL (names));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), shown);
  gtk_widget_set_visible (self->choice_box, self->revisions->len > 0);
}

void
sy_sheet_window_offer (SySheetWindow *self)
{
  self->filling = TRUE;
  if (!kinds_are_offered (self))
    offer_kinds (self);
  show_kind (self);
  offer_papers (self);
  offer_revisions (self);
  self->filling = FALSE;
}

/* Layout */

static GtkWidget *
new_papers (SySheetWindow *self)
{
  const char *const titles[SY_N_PAPERS]
    = { [SY_PAPER_A4] = _("A4"), [SY_PAPER_LETTER] = _("Letter"), [SY_PAPER_A5] = _("A5") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  for (guint i = 0; i < SY_N_PAPERS; i++)
    {
      self->papers[i] = sy_part_radio (titles[i]);
      gtk_widget_set_name (self->papers[i], sy_paper_id ((SyPaper) i));
      g_object_set_data (G_OBJECT (self->papers[i]), "sy-paper", GINT_TO_POINTER ((int) i));
      if (i > 0)
        gtk_check_button_set_group (GTK_CHECK_BUTTON (self->papers[i]), GTK_CHECK_BUTTON (self->papers[0]));
      gtk_widget_set_visible (self->papers[i], FALSE);
      g_signal_connect_object (self->papers[i], "toggled", G_CALLBACK (paper_cb), self, 0);
      gtk_box_append (GTK_BOX (box), self->papers[i]);
    }
  return box;
}

static GtkWidget *
new_revisions (SySheetWindow *self)
{
  self->choice_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->choice = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_name (self->choice, "sheet-revision");
  sy_name (self->choice, _("Revision"));
  g_signal_connect_object (self->choice, "notify::selected", G_CALLBACK (revision_cb), self, 0);
  gtk_box_append (GTK_BOX (self->choice_box), sy_part_heading (_("Revision")));
  gtk_box_append (GTK_BOX (self->choice_box), self->choice);
  gtk_widget_set_visible (self->choice_box, FALSE);
  return self->choice_box;
}

static GtkWidget *
new_choices (SySheetWindow *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->kinds_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  self->note = sy_part_label ("", NULL);
  gtk_widget_set_name (self->note, "sheet-note");
  gtk_widget_set_visible (self->note, FALSE);
  self->message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "wrap", TRUE, "wrap-mode",
                                PANGO_WRAP_WORD_CHAR, "xalign", 0.0, "selectable", TRUE, "visible", FALSE, NULL);
  gtk_widget_set_name (self->message, "sheet-message");
  self->again = sy_button_new (_("Read it _again"), "sheet.again");
  gtk_widget_set_name (self->again, "sheet-again");
  gtk_widget_set_visible (self->again, FALSE);
  gtk_box_append (GTK_BOX (column), sy_part_heading (_("Sheet")));
  gtk_box_append (GTK_BOX (column), self->kinds_box);
  gtk_box_append (GTK_BOX (column), sy_part_heading (_("Paper")));
  gtk_box_append (GTK_BOX (column), new_papers (self));
  gtk_box_append (GTK_BOX (column), new_revisions (self));
  gtk_box_append (GTK_BOX (column), self->note);
  gtk_box_append (GTK_BOX (column), self->message);
  gtk_box_append (GTK_BOX (column), self->again);
  return column;
}

static GtkWidget *
new_left (SySheetWindow *self)
{
  GtkWidget *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);
  GtkWidget *scroller = sy_part_scroller (new_choices (self), _("What to print"));
  GtkWidget *print = sy_button_new (_("_Print…"), "sheet.print");

  gtk_widget_add_css_class (print, "suggested-action");
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_size_request (left, CHOICES_WIDTH, -1);
  gtk_box_append (GTK_BOX (left), scroller);
  gtk_box_append (GTK_BOX (left), print);
  gtk_box_append (GTK_BOX (left), sy_button_new (_("_Save as PDF…"), "sheet.save"));
  gtk_box_append (GTK_BOX (left), sy_button_new (_("_Close"), "window.close"));
  gtk_widget_set_margin_start (left, 12);
  gtk_widget_set_margin_end (left, 12);
  gtk_widget_set_margin_top (left, 12);
  gtk_widget_set_margin_bottom (left, 12);
  return left;
}

static GtkWidget *
new_right (SySheetWindow *self)
{
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *smaller = sy_button_new ("−", "sheet.smaller");
  GtkWidget *larger = sy_button_new ("+", "sheet.larger");

  self->where = gtk_label_new ("");
  self->size = gtk_label_new ("");
  self->view = sy_sheet_view_new ();
  gtk_widget_set_hexpand (self->where, TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->where), 0);
  gtk_widget_set_name (self->where, "sheet-where");
  gtk_label_set_width_chars (GTK_LABEL (self->size), 6);
  sy_name (smaller, _("Smaller"));
  sy_name (larger, _("Larger"));
  gtk_box_append (GTK_BOX (bar), self->where);
  gtk_box_append (GTK_BOX (bar), smaller);
  gtk_box_append (GTK_BOX (bar), self->size);
  gtk_box_append (GTK_BOX (bar), larger);
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("As on _paper"), "sheet.real"));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("Fit _width"), "sheet.width"));
  gtk_widget_set_margin_start (bar, 12);
  gtk_widget_set_margin_end (bar, 12);
  gtk_widget_set_margin_top (bar, 6);
  gtk_widget_set_margin_bottom (bar, 6);
  g_signal_connect_object (self->view, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (right), bar);
  gtk_box_append (GTK_BOX (right), self->view);
  return right;
}

void
sy_sheet_window_build (SySheetWindow *self)
{
  GtkWidget *columns = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->revisions = g_array_new (FALSE, FALSE, sizeof (gint64));
  gtk_box_append (GTK_BOX (columns), new_left (self));
  gtk_box_append (GTK_BOX (columns), new_right (self));
  gtk_window_set_child (GTK_WINDOW (self), columns);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
}
