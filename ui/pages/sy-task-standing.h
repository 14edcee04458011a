/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_STANDING_H
#define SY_TASK_STANDING_H

#include <gtk/gtk.h>

#include "sy-item-log.h"

/* How an item stands, in words: new strings, "" where there is nothing to say. Days are as written, today by the program's
   clock. */

/* "Revision 3 signed off by …, foreman, 2026-11-26", "Not signed off", "Signed off was revision 2; revision 3 is newer". */
char *sy_standing_signed (const SyItemLog *log);
/* "Review due 2026-12-01", "Review overdue since …, after an accident". */
char *sy_standing_review (const SyItemLog *log);
/* "2 actions open, the first due on 2026-12-01". */
char *sy_standing_actions (const SyItemLog *log);
/* "Taken out of use on … by …: …". */
char *sy_standing_retired (const SyItemLog *log);
/* "Revision 4 was made from revision 2 like revision 3: both are kept." of @revision; "" where it clashes with none. */
char *sy_standing_clash (const SyItemLog *log, gint64 revision);

/* Whether a day ("2026-12-01", "" for none) is past. */
gboolean sy_standing_is_past (const char *day);

/* The line at the head of a page: all of it, what needs attention first; leads to the follow-up by the widget action
   "task.follow-up", and from a clash to what differs by "task.compare". */
GtkWidget *sy_task_standing_new (void);
/* NULL: not saved yet. */
void sy_task_standing_set (GtkWidget *standing, const SyItemLog *log);

#endif
