/* SPDX-License-Identifier: MIT */
#ifndef SY_JOURNAL_NARROW_H
#define SY_JOURNAL_NARROW_H

#include "sy-task-list.h"
#include "sy-worker-journal.h"

#include <gtk/gtk.h>

/*
 * By what the journal is narrowed: person, kind, first and last day, item by its name.
 * Signal "chosen": the filter is another than before.
 */
#define SY_TYPE_JOURNAL_NARROW (sy_journal_narrow_get_type ())
G_DECLARE_FINAL_TYPE (SyJournalNarrow, sy_journal_narrow, SY, JOURNAL_NARROW, GtkBox)

GtkWidget *sy_journal_narrow_new (SyTaskList *list);
/* Borrowed until it changes. */
const SyJournalFilter *sy_journal_narrow_get (SyJournalNarrow *narrow);
/* Takes @people. */
void sy_journal_narrow_set_people (SyJournalNarrow *narrow, char **people);
void sy_journal_narrow_clear (SyJournalNarrow *narrow);
/* Only this item. */
void sy_journal_narrow_set_item (SyJournalNarrow *narrow, const char *id, const char *name);

#endif
