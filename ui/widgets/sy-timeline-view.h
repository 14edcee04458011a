/* SPDX-License-Identifier: MIT */
#ifndef SY_TIMELINE_VIEW_H
#define SY_TIMELINE_VIEW_H

#include <gtk/gtk.h>

#include "sy-desk.h"
#include "sy-item-log.h"

/*
 * What happened to an item along time. One image whose description says it in a sentence; arrow keys step through the
 * revisions, whose words are then the description, Return or a press opens one.
 * Signal "open" (gint64 revision).
 */
#define SY_TYPE_TIMELINE_VIEW (sy_timeline_view_get_type ())
G_DECLARE_FINAL_TYPE (SyTimelineView, sy_timeline_view, SY, TIMELINE_VIEW, GtkDrawingArea)

GtkWidget *sy_timeline_view_new (void);
/* @desk: whose policy has the goal. NULL @log: nothing yet. */
void sy_timeline_view_set (SyTimelineView *view, const SyItemLog *log, SyDesk *desk);
/* Steps to the next revision (@by 1) or back (-1) and describes it. */
void sy_timeline_view_step (SyTimelineView *view, int by);
/* The sentence about the whole; borrowed. */
const char *sy_timeline_view_get_sentence (SyTimelineView *view);

#endif
