/* SPDX-License-Identifier: MIT */
#ifndef SY_IMPROVEMENT_FORM_H
#define SY_IMPROVEMENT_FORM_H

#include "sy-deed-form.h"

/* The form in place that puts an improvement in the log: what was done, who thought of it, since when. Between which two
   revisions is the business of the page that has it. */

/* A SyDeedForm; @id as there. The day of today stands in it when it is opened. */
GtkWidget *sy_improvement_form_new (SyWorker *worker, const char *id);
/* For the form's make: after is revision @revision of @item, before @from_revision of @from_item. NULL after saying what is wrong. */
SyDeedAsk *sy_improvement_form_ask (SyDeedForm *form, const char *item, gint64 revision, const char *from_item,
                                    gint64 from_revision);
/* Whether the log takes items of a kind: tasks and changeovers. */
gboolean sy_improvement_form_takes (const char *item_kind);

#endif
