/* SPDX-License-Identifier: MIT */
#ifndef SY_PAPER_OUT_H
#define SY_PAPER_OUT_H

#include <gtk/gtk.h>

#include "sy-folio.h"

/* How what a page shows comes on paper: to a printer, and as PDF. The same for every page that has something to print. */

typedef struct
{
  /* What is to be printed as it is now, new, with the moment to be said in a PDF (new string). NULL with the error; NULL
     without one: there is nothing. */
  SyFolio *(*make) (GtkWidget *page, char **made, GError **error);
  /* "": nothing is said any more. Not called once the page is gone. */
  void (*say) (GtkWidget *page, gboolean trouble, const char *words);
  /* N_() */
  const char *ask;         /* over the question where to save: "Save the register"                    */
  const char *job;         /* to the printer's queue: "Register"                                      */
  const char *not_saved;   /* "The register was not saved: {why}"                                     */
  const char *not_printed; /* likewise */
  const char *sent;        /* "The register was sent to the printer."                                 */
} SyPaperOut;

/* Writes the PDF; whether it did, and why not, is said. FALSE, and nothing said, where there is nothing. */
gboolean sy_paper_out_write (GtkWidget *page, const SyPaperOut *out, const char *path);
/* Asks where, then writes; @file is proposed. @out: static, here and below. */
void sy_paper_out_save (GtkWidget *page, const SyPaperOut *out, const char *file);
/* Asks for a printer, then prints. */
void sy_paper_out_print (GtkWidget *page, const SyPaperOut *out);

/* A choice among the papers of an office, the locale's first chosen; with its caption, both at the end of @bar. */
GtkWidget *sy_paper_choice_add (GtkBox *bar);
SyPaper sy_paper_choice_get (GtkWidget *choice);
/* The paper that the locale prints on. */
SyPaper sy_paper_of_locale (void);

#endif
