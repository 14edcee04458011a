/* SPDX-License-Identifier: MIT */
#ifndef SY_DRAFTS_H
#define SY_DRAFTS_H

#include <gtk/gtk.h>

/*
 * What is not saved yet, a quiet line each, and what could not be read; nothing where there is neither.
 * A line asks its window for "win.open-draft" (s: draft).
 */
#define SY_TYPE_DRAFTS (sy_drafts_get_type ())
G_DECLARE_FINAL_TYPE (SyDrafts, sy_drafts, SY, DRAFTS, GtkWidget)

/* @item_kind: SY_ITEM_TASK …, static. Among those of tasks stands also what could not be read. */
GtkWidget *sy_drafts_new (const char *store_uri, const char *item_kind);
/* Reads the drafts anew. */
void sy_drafts_refresh (SyDrafts *drafts);

#endif
