/* SPDX-License-Identifier: MIT */
#include "sy-survey-page.h"

#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-ledger.h"
#include "sy-name.h"

#define PROGRAM "steelyard " SY_VERSION

struct _SySurveyPage
{
  GtkWidget parent_instance;
  SySurveySheet sheet;
  GtkWidget *box, *units, *paper, *message, *desk;
};

G_DEFINE_FINAL_TYPE (SySurveyPage, sy_survey_page, GTK_TYPE_WIDGET)

/* Topics: preview */

static void
draw_page_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer user_data)
{
  SySurveyPage *self = SY_SURVEY_PAGE (user_data);
  int page = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "sy-page"));
  double page_width, page_height;

  sy_paper_size (self->sheet.paper, &page_width, &page_height);
  /* Paper stays paper, whatever the style of the window. */
  sy_palette_use (cr, &sy_palette_paper.paper, 1);
  cairo_paint (cr);
  cairo_scale (cr, width / page_width, height / page_height);
  sy_survey_draw (&self->sheet, page, cr);
}

static void
update_preview (SySurveyPage *self)
{
  int pages = sy_survey_pages (&self->sheet);
  GtkWidget *child;
  double width, height;

  while ((child = gtk_widget_get_first_child (self->desk)) != NULL)
    gtk_box_remove (GTK_BOX (self->desk), child);
  sy_paper_size (self->sheet.paper, &width, &height);
  for (int page = 0; page < pages; page++)
    {
      GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG,
                                      NULL);
      g_autofree char *name = g_strdup_printf (_("Measuring sheet, page %d of %d"), page + 1, pages);

      gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), (int) width);
      gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), (int) height);
      gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page_cb, self, NULL);
      g_object_set_data (G_OBJECT (area), "sy-page", GINT_TO_POINTER (page));
      gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (area, "sy-sheet");
      gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
      gtk_box_append (GTK_BOX (self->desk), area);
    }
}

static void
say (SySurveyPage *self, gboolean trouble, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->message), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->message), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (trouble)
    gtk_widget_add_css_class (self->message, "sy-problem");
  else
    gtk_widget_remove_css_class (self->message, "sy-problem");
}

static void
chosen_cb (GObject *object, GParamSpec *pspec, SySurveyPage *self)
{
  (void) object, (void) pspec;
  self->sheet.units = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->units)) == 1 ? SY_UNITS_US
                                                                                    : SY_UNITS_METRIC;
  self->sheet.paper = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper)) == 1 ? SY_PAPER_LETTER
                                                                                    : SY_PAPER_A4;
  say (self, FALSE, "");
  update_preview (self);
}

/* Topics: PDF */

gboolean
sy_survey_page_write (SySurveyPage *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  gboolean clock_set = FALSE;
  g_autofree char *now = NULL;
  g_autofree char *words = NULL;

  g_return_val_if_fail (SY_IS_SURVEY_PAGE (self), FALSE);
  now = sy_clock_now (&clock_set, &error);
  if (now == NULL || !sy_survey_write_pdf (&self->sheet, path, now, &error))
    {
      words = g_strdup_printf (_("The sheet was not saved: %s"), error->message);
      say (self, TRUE, words);
      return FALSE;
    }
  words = g_strdup_printf (_("Saved as %s"), path);
  say (self, FALSE, words);
  return TRUE;
}

static void
file_chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SySurveyPage) self = SY_SURVEY_PAGE (user_data);
  g_autoptr (GFile) file = sy_file_ask_save_finish (result);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  (void) source;
  if (path != NULL)
    sy_survey_page_write (self, path);
  else if (file != NULL)
    say (self, TRUE, _("The sheet was not saved: this place is not a folder of this computer."));
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  (void) name, (void) parameter;
  sy_file_ask_save_async (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, _("Save the measuring sheet"),
                          /* Translators: file name. */
                          _("measuring-sheet.pdf"), _("PDF documents"), "*.pdf", NULL, file_chosen_cb,
                          g_object_ref (widget));
}

/* Topics: printer */

static void
begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, SySurveyPage *self)
{
  (void) context;
  gtk_print_operation_set_n_pages (operation, sy_survey_pages (&self->sheet));
}

static void
print_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, SySurveyPage *self)
{
  double width, height;
  cairo_t *cr = gtk_print_context_get_cairo_context (context);

  (void) operation;
  sy_paper_size (self->sheet.paper, &width, &height);
  /* Another paper was chosen in the dialog: everything stays on it. */
  if (gtk_print_context_get_width (context) < width || gtk_print_context_get_height (context) < height)
    {
      double scale = MIN (gtk_print_context_get_width (context) / width,
                          gtk_print_context_get_height (context) / height);

      cairo_scale (cr, scale, scale);
    }
  sy_survey_draw (&self->sheet, page, cr);
}

static void
print_done_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, SySurveyPage *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *words = NULL;

  switch (result)
    {
    case GTK_PRINT_OPERATION_RESULT_ERROR:
      gtk_print_operation_get_error (operation, &error);
      words = g_strdup_printf (_("The sheet was not printed: %s"), error->message);
      say (self, TRUE, words);
      break;
    case GTK_PRINT_OPERATION_RESULT_APPLY:
      say (self, FALSE, _("The sheet was sent to the printer."));
      break;
    case GTK_PRINT_OPERATION_RESULT_CANCEL:
    case GTK_PRINT_OPERATION_RESULT_IN_PROGRESS:
      break;
    }
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SySurveyPage *self = SY_SURVEY_PAGE (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  g_autoptr (GtkPaperSize) size = gtk_paper_size_new (
    self->sheet.paper == SY_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  (void) name, (void) parameter;
  gtk_page_setup_set_paper_size (setup, size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, _("Measuring sheet"));
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect_object (operation, "begin-print", G_CALLBACK (begin_print_cb), self, 0);
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (print_page_cb), self, 0);
  g_signal_connect_object (operation, "done", G_CALLBACK (print_done_cb), self, 0);
  say (self, FALSE, "");
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, NULL);
}

/* Topics: building */

static GtkWidget *
new_choice (SySurveyPage *self, GtkWidget *bar, const char *caption, const char *name,
            const char *const *labels, guint selected)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (caption);
  GtkWidget *choice = gtk_drop_down_new_from_strings (labels);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), selected);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), choice);
  sy_name (choice, name);
  gtk_widget_add_css_class (label, "sy-quiet");
  gtk_box_append (GTK_BOX (bar), label);
  gtk_box_append (GTK_BOX (bar), choice);
  g_signal_connect_object (choice, "notify::selected", G_CALLBACK (chosen_cb), self, 0);
  return choice;
}

static void
build (SySurveyPage *self)
{
  const char *const units[] = { _("Metric (cm, kg)"), _("US (in, lb)"), NULL };
  const char *const papers[] = { _("A4"), _("Letter"), NULL };
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *intro = gtk_label_new (_("Take this to the floor: where to put the tape, what to count, what to ask. "
                                      "Fill it in at the task, then measure the lift here."));
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *print = sy_button_new (_("_Print…"), "survey.print");
  GtkWidget *space = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, NULL);
  self->desk = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  self->units = new_choice (self, bar, _("_Units"), _("Units"), units, self->sheet.units == SY_UNITS_US);
  self->paper = new_choice (self, bar, _("P_aper"), _("Paper"), papers, self->sheet.paper == SY_PAPER_LETTER);

  gtk_widget_set_hexpand (space, TRUE);
  gtk_widget_add_css_class (print, "suggested-action");
  gtk_box_append (GTK_BOX (bar), space);
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("Save as P_DF…"), "survey.save"));
  gtk_box_append (GTK_BOX (bar), print);
  gtk_widget_set_margin_start (bar, 18);
  gtk_widget_set_margin_end (bar, 18);
  gtk_widget_set_margin_top (bar, 12);

  gtk_label_set_wrap (GTK_LABEL (intro), TRUE);
  gtk_label_set_xalign (GTK_LABEL (intro), 0);
  gtk_widget_set_margin_start (intro, 18);
  gtk_widget_set_margin_end (intro, 18);
  gtk_widget_set_margin_top (intro, 12);

  gtk_label_set_wrap (GTK_LABEL (self->message), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->message), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (self->message), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->message), 0);
  gtk_widget_set_margin_start (self->message, 18);
  gtk_widget_set_margin_end (self->message, 18);
  gtk_widget_set_margin_bottom (self->message, 6);

  gtk_widget_set_margin_top (self->desk, 18);
  gtk_widget_set_margin_bottom (self->desk, 18);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->desk);
  gtk_widget_add_css_class (scrolled, "sy-desk");
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_set_focusable (scrolled, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Measuring sheet as it will be printed"), -1);

  gtk_box_append (GTK_BOX (self->box), bar);
  gtk_box_append (GTK_BOX (self->box), intro);
  gtk_box_append (GTK_BOX (self->box), self->message);
  gtk_box_append (GTK_BOX (self->box), scrolled);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  update_preview (self);
}

static void
sy_survey_page_dispose (GObject *object)
{
  SySurveyPage *self = SY_SURVEY_PAGE (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sy_survey_page_parent_class)->dispose (object);
}

static gboolean
sy_survey_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_child_focus (SY_SURVEY_PAGE (widget)->box, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_survey_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (SY_SURVEY_PAGE (widget)->box, direction);
}

static void
sy_survey_page_class_init (SySurveyPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_survey_page_dispose;
  widget_class->grab_focus = sy_survey_page_grab_focus;
  widget_class->focus = sy_survey_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-survey");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "survey.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "survey.save", NULL, save_action);
}

static void
sy_survey_page_init (SySurveyPage *self)
{
  self->sheet.translate = sy_translate;
  self->sheet.program = PROGRAM;
}

/* The paper that the locale prints on. */
static SyPaper
default_paper (void)
{
  const char *name = gtk_paper_size_get_default ();

  return g_strcmp0 (name, GTK_PAPER_NAME_LETTER) == 0 ? SY_PAPER_LETTER : SY_PAPER_A4;
}

GtkWidget *
sy_survey_page_new (SyUnits units)
{
  SySurveyPage *self = g_object_new (SY_TYPE_SURVEY_PAGE, NULL);

  self->sheet.units = units;
  self->sheet.paper = default_paper ();
  build (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("Measuring sheet"), -1);
  return GTK_WIDGET (self);
}

void
sy_survey_page_set_units (SySurveyPage *self, SyUnits units)
{
  g_return_if_fail (SY_IS_SURVEY_PAGE (self));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->units), units == SY_UNITS_US ? 1 : 0);
}
