/* SPDX-License-Identifier: MIT */
#ifndef SY_SHEET_WINDOW_PRIVATE_H
#define SY_SHEET_WINDOW_PRIVATE_H

#include "sy-dossier-sheet.h"
#include "sy-sheet-window.h"
#include "sy-worker-sheet.h"

struct _SySheetWindow
{
  GtkWindow parent_instance;
  SyWorker *worker;
  char *item;          /* id; NULL: never saved      */
  gint64 revision;     /* asked for, 0: the latest   */
  gboolean has_unsaved;
  char *name, *facts, *problem; /* never saved       */
  GCancellable *cancellable;    /* of reading        */
  SySheetSource *source;        /* NULL: not read yet */
  SyDossierKind kinds[SY_DOSSIER_KINDS_MAX];
  guint n_kinds;
  const char *kind;    /* id, static; stays where it is offered again; NULL: none was chosen */
  SyPaper paper;       /* on which the sheet is      */
  GArray *revisions;   /* of gint64: as the choice has them, newest first */
  gboolean filling;    /* choices are changed by the window itself */
  GtkWidget *view, *kinds_box, *papers[SY_N_PAPERS], *choice, *choice_box, *note, *message, *again, *where, *size;
};

/* sy-sheet-window.c */
/* NULL: none. */
const SyDossierKind *sy_sheet_window_kind (SySheetWindow *self);
/* For what is chosen. */
void sy_sheet_window_show_sheet (SySheetWindow *self);
void sy_sheet_window_read (SySheetWindow *self);

/* sy-sheet-window-layout.c: what stands where */
void sy_sheet_window_build (SySheetWindow *self);
/* Offers what the source has; a kind or paper that it has not is changed to one that it has. */
void sy_sheet_window_offer (SySheetWindow *self);

#endif
