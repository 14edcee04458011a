/* SPDX-License-Identifier: MIT */
#ifndef SY_PDF_H
#define SY_PDF_H

#include "sy-sheet.h"

/* Any sheet as a PDF: tagged, owner-only permission, the same bytes for the same pages and @created. */
typedef struct
{
  SyPaper paper;
  const char *title, *program; /* program NULL: not said */
  const char *created;         /* RFC 3339               */
  int pages;
  void (*draw) (gconstpointer sheet, int page, cairo_t *cr);
  gconstpointer sheet;
} SyPdf;
/* In memory; NULL with the error. */
GBytes *sy_pdf_bytes (const SyPdf *pdf, GError **error);
gboolean sy_pdf_write (const SyPdf *pdf, const char *path, GError **error);

#endif
