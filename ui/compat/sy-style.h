/* SPDX-License-Identifier: MIT */
#ifndef SY_STYLE_H
#define SY_STYLE_H

#include <gtk/gtk.h>

#include "sy-palette.h"

typedef enum { SY_STYLE_SYSTEM, SY_STYLE_LIGHT, SY_STYLE_DARK } SyStyle;

/* "system", "light", "dark"; from_id gives SYSTEM for anything else. */
const char *sy_style_id (SyStyle style);
SyStyle sy_style_from_id (const char *id);

/*
 * The style sheet of one display: what it looks like (style.css) and its colours (light.css or dark.css), taken from
 * @resource_path. Follows the desktop's wish for dark unless told otherwise.
 */
#define SY_TYPE_STYLE_SHEET (sy_style_sheet_get_type ())
G_DECLARE_FINAL_TYPE (SyStyleSheet, sy_style_sheet, SY, STYLE_SHEET, GObject)

/* @strict: a fault in a style sheet ends the program (tests). */
SyStyleSheet *sy_style_sheet_new (GdkDisplay *display, const char *resource_path, gboolean strict);
void sy_style_sheet_set (SyStyleSheet *sheet, SyStyle style);
SyStyle sy_style_sheet_get (SyStyleSheet *sheet);
gboolean sy_style_sheet_is_dark (SyStyleSheet *sheet);

/* The named colours (sy_paper, sy_ink, sy_hairline, sy_accent, sy_warning) for drawings on @widget; those of paper
   where the style sheet is not loaded. */
SyPalette sy_style_palette (GtkWidget *widget);

#endif
