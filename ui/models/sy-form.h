/* SPDX-License-Identifier: MIT */
#ifndef SY_FORM_H
#define SY_FORM_H

#include <gio/gio.h>

#include "sy-desk.h"
#include "sy-draft.h"

/*
 * The facts of one task as texts, path by path, exactly as typed; the document, the problems and the assessment
 * that come of them; undo and redo. No widget is needed to test it.
 *
 * Paths are those of documents: "load.heaviest", "origin.H", "conditions", "had.origin.H.how",
 * "sessions[0].work". Texts: a number field holds what was typed ("16 in", "12,5"); a choice its id; a bool "true" or
 * "false"; a set its ids separated by blanks, "-" for "asked, none applies", "" for not asked.
 */
#define SY_TYPE_FORM (sy_form_get_type ())
G_DECLARE_FINAL_TYPE (SyForm, sy_form, SY, FORM, GObject)

SyForm *sy_form_new (SyDesk *desk, const char *method, SyUnits units);

const SyMethod *sy_form_get_method (SyForm *form);
SyUnits sy_form_get_units (SyForm *form);
/* Switches the unit system: bare numbers keep their meaning by getting their unit written behind them
   ("55" becomes "55 cm"); one step of undo. */
void sy_form_set_units (SyForm *form, SyUnits units);

const char *sy_form_get (SyForm *form, const char *path); /* "" when empty */
/* One step of undo; typing on in the same field within a second joins the step. Emits "changed". */
void sy_form_set (SyForm *form, const char *path, const char *text);
/* Several at once as one step of undo (a remedy). */
void sy_form_set_many (SyForm *form, const char *const *paths, const char *const *texts, gsize n);
char *sy_form_get_number_as (SyForm *form, const char *path, SyUnits units); /* "= 40.6 cm" aid; NULL */

/* Fills from a stored document (typed texts come back as typed); clears undo. FALSE: not a facts document. */
gboolean sy_form_load_document (SyForm *form, const char *facts, GError **error);
void sy_form_load_draft (SyForm *form, const SyDraft *draft);
void sy_form_fill_draft (SyForm *form, SyDraft *draft); /* units and texts */
SyForm *sy_form_copy (SyForm *form);

/* The document as it would be recorded; always JSON, also with problems. New string. */
char *sy_form_document (SyForm *form);

/* The result of the present texts, NULL while there are problems. Borrowed. Always up to date. */
SyAssessment *sy_form_get_assessment (SyForm *form);
/* The problem of a path in words (translated), NULL when it has none. Missing facts are problems too:
   sy_form_is_missing tells them from wrong entries. Borrowed until the next change. */
const char *sy_form_get_problem (SyForm *form, const char *path);
gboolean sy_form_is_missing (SyForm *form, const char *path);
guint sy_form_count_problems (SyForm *form);

gboolean sy_form_can_undo (SyForm *form);
gboolean sy_form_can_redo (SyForm *form);
void sy_form_undo (SyForm *form);
void sy_form_redo (SyForm *form);

/* Whether the texts differ from what was loaded (or from empty). */
gboolean sy_form_is_dirty (SyForm *form);
void sy_form_mark_clean (SyForm *form);

/* Signals: "changed" (after any change, with everything above up to date). */

#endif
