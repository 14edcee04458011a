/* SPDX-License-Identifier: MIT */
#include "sy-print-folio.h"

static const char *const paper_names[SY_N_PAPERS]
  = { [SY_PAPER_A4] = GTK_PAPER_NAME_A4, [SY_PAPER_LETTER] = GTK_PAPER_NAME_LETTER, [SY_PAPER_A5] = GTK_PAPER_NAME_A5 };

typedef struct
{
  SyFolio *folio;
  SyPrinted printed;
} Job;

static void
free_job (gpointer data)
{
  sy_folio_free (((Job *) data)->folio);
  g_free (data);
}

static Job *
job_of (GtkPrintOperation *operation)
{
  return g_object_get_data (G_OBJECT (operation), "sy-job");
}

static void
begin_cb (GtkPrintOperation *operation, GtkPrintContext *context, gpointer user_data)
{
  (void) context, (void) user_data;
  gtk_print_operation_set_n_pages (operation, sy_folio_pages (job_of (operation)->folio));
}

static void
page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, gpointer user_data)
{
  const Job *job = job_of (operation);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height, scale;

  (void) user_data;
  sy_paper_size (sy_folio_paper (job->folio), &width, &height);
  /* Another paper was chosen in the dialog: everything stays on it. */
  scale = MIN (gtk_print_context_get_width (context) / width, gtk_print_context_get_height (context) / height);
  if (scale < 1)
    cairo_scale (cr, scale, scale);
  sy_folio_draw (job->folio, page, cr);
}

static void
done_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, GtkWidget *widget)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    gtk_print_operation_get_error (operation, &error);
  job_of (operation)->printed (result == GTK_PRINT_OPERATION_RESULT_APPLY, error, widget);
}

void
sy_print_folio (GtkWidget *widget, SyFolio *folio, const char *name, SyPrinted printed)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  g_autoptr (GtkPaperSize) size = gtk_paper_size_new (paper_names[sy_folio_paper (folio)]);
  Job *job = g_new0 (Job, 1);

  job->folio = folio;
  job->printed = printed;
  g_object_set_data_full (G_OBJECT (operation), "sy-job", job, free_job);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_cb), NULL);
  g_signal_connect (operation, "draw-page", G_CALLBACK (page_cb), NULL);
  g_signal_connect_object (operation, "done", G_CALLBACK (done_cb), widget, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, NULL);
}
