/* SPDX-License-Identifier: MIT */
#include "sy-pdf.h"

#include <cairo-pdf.h>
#include <string.h>

static const char *const paper_ids[SY_N_PAPERS] = { "a4", "letter", "a5" };

const char *
sy_paper_id (SyPaper paper)
{
  return paper_ids[paper];
}

gboolean
sy_paper_from_id (const char *id, SyPaper *paper)
{
  for (int i = 0; i < SY_N_PAPERS; i++)
    if (strcmp (id, paper_ids[i]) == 0)
      {
        *paper = (SyPaper) i;
        return TRUE;
      }
  return FALSE;
}

/* Millimetres are exact by definition of the formats (ISO 216; 8.5 by 11 in). */
void
sy_paper_size (SyPaper paper, double *width_pt, double *height_pt)
{
  static const double sizes[SY_N_PAPERS][2] = {
    [SY_PAPER_A4] = { 210 / 25.4 * 72, 297 / 25.4 * 72 },
    [SY_PAPER_LETTER] = { 612, 792 },
    [SY_PAPER_A5] = { 148 / 25.4 * 72, 210 / 25.4 * 72 },
  };

  *width_pt = sizes[paper][0];
  *height_pt = sizes[paper][1];
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

GBytes *
sy_pdf_bytes (const SyPdf *pdf, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double width, height;

  sy_paper_size (pdf->paper, &width, &height);

  cairo_surface_t *surface
      = cairo_pdf_surface_create_for_stream (append_bytes, bytes, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, pdf->title);
  if (pdf->program)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, pdf->program);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, pdf->created);
  cairo_tag_begin (cr, "Document", NULL);
  for (int page = 0; page < pdf->pages; page++)
    {
      pdf->draw (pdf->sheet, page, cr);
      cairo_show_page (cr);
    }
  cairo_tag_end (cr, "Document");
  cairo_surface_finish (surface);

  cairo_status_t status = cairo_status (cr);

  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error_literal (error, G_FILE_ERROR, G_FILE_ERROR_FAILED,
                           cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

gboolean
sy_pdf_write (const SyPdf *pdf, const char *path, GError **error)
{
  g_autoptr (GBytes) bytes = sy_pdf_bytes (pdf, error);
  gconstpointer data;
  gsize size;

  if (bytes == NULL)
    return FALSE;
  data = g_bytes_get_data (bytes, &size);
  /* A temporary file beside it that takes its name when all is on the disk. */
  return g_file_set_contents_full (path, data, (gssize) size,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                   0600, error);
}
