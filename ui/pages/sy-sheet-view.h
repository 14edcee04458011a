/* SPDX-License-Identifier: MIT */
#ifndef SY_SHEET_VIEW_H
#define SY_SHEET_VIEW_H

#include <gtk/gtk.h>

#include "sy-folio.h"

/*
 * Pages as they will be printed, under each other on a desk: in the size that they have on paper, or another. Only what is near
 * to being seen is drawn, so that a document may have any number of pages.
 * Signal "moved": another page is in sight, or its size changed.
 */
#define SY_TYPE_SHEET_VIEW (sy_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (SySheetView, sy_sheet_view, SY, SHEET_VIEW, GtkWidget)

GtkWidget *sy_sheet_view_new (void);
/* Takes @folio; NULL: an empty desk. @title: what it is, for assistive technology. Page and size stay as far as they can. */
void sy_sheet_view_take (SySheetView *view, SyFolio *folio, const char *title);
int sy_sheet_view_get_pages (SySheetView *view);
/* In sight, from 1; 0: there is none. */
int sy_sheet_view_get_page (SySheetView *view);

typedef enum
{
  SY_SHEET_REAL,  /* as large as on paper, where the monitor tells how large it is; else at 96 dots an inch */
  SY_SHEET_WIDTH, /* as wide as there is room */
  SY_SHEET_LARGER,
  SY_SHEET_SMALLER,
} SySheetZoom;
void sy_sheet_view_zoom (SySheetView *view, SySheetZoom zoom);
gboolean sy_sheet_view_fits_width (SySheetView *view);
/* 1: as on paper. */
double sy_sheet_view_get_scale (SySheetView *view);
/* By screens; -1: one up. */
void sy_sheet_view_scroll (SySheetView *view, int screens);
/* To the first page or the last. */
void sy_sheet_view_go (SySheetView *view, gboolean last);

#endif
