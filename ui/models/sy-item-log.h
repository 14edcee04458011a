/* SPDX-License-Identifier: MIT */
#ifndef SY_ITEM_LOG_H
#define SY_ITEM_LOG_H

#include "sy-ledger-deeds.h"

/* All that the record has about one item, and what comes of it: a fold of its lines, as the store makes it. Immutable once
   made, so that several parts of a page can hold it. */
typedef struct SyItemLog SyItemLog;
struct SyItemLog
{
  GPtrArray *lines;     /* of SyRevision, oldest first; events of any kind */
  GPtrArray *revisions; /* those of lines that are revisions               */
  SyTask *task;         /* as it stands                                    */
  GPtrArray *actions;   /* of SyAction: open ones first, by due date (none last); then closed ones, latest first */
  gint64 *clashes;      /* for each of revisions: the one beside which it stands, 0 for none */
  gatomicrefcount refs;
};

/* Takes @lines. NULL: no revision is among them. */
SyItemLog *sy_item_log_new (GPtrArray *lines);
SyItemLog *sy_item_log_ref (SyItemLog *log);
void sy_item_log_unref (SyItemLog *log);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyItemLog, sy_item_log_unref)

/* NULL: there is none. Borrowed. */
const SyRevision *sy_item_log_find (const SyItemLog *log, gint64 revision);
const SyRevision *sy_item_log_latest (const SyItemLog *log);
/* With which revision a revision clashed when it was made, 0 for none. */
gint64 sy_item_log_clash (const SyItemLog *log, gint64 revision);
/* Who made a revision and who signs it are the same person, as the record tells people: by name, whatever its case and
   blanks. FALSE where there is no such revision. */
gboolean sy_item_log_is_author (const SyItemLog *log, gint64 revision, const char *name);

/* Revision @revision of the log judged anew with the method and the policy of @desk: a copy of its event with other findings
   and basis. NULL with the error where the facts are none any more. Free with sy_event_free(). */
SyEvent *sy_item_log_judge (const SyItemLog *log, gint64 revision, SyDesk *desk, GError **error);

#endif
