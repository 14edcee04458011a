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
 * "false"; a set its ids separated by blanks, "-" for "asked, none applies", "" for not asked; a list the number of its
 * items.
 */
#define SY_TYPE_FORM (sy_form_get_type ())
G_DECLARE_FINAL_TYPE (SyForm, sy_form, SY, FORM, GObject)

SyForm *sy_form_new (SyDesk *desk, const char *method, SyUnits units);

const SyMethod *sy_form_get_method (SyForm *form);
SyDesk *sy_form_get_desk (SyForm *form);
SyUnits sy_form_get_units (SyForm *form);
/* Switches the unit system: bare numbers keep their meaning by getting their unit written behind them
   ("55" becomes "55 cm"); one step of undo. */
void sy_form_set_units (SyForm *form, SyUnits units);

/* The field of a path in the method's table, list items included; NULL when there is none. */
const SyField *sy_form_find_field (SyForm *form, const char *path);
/* What a path is called, unique within the form (translated): "Origin: H"; with the unit: "Origin: H, cm". New string. */
char *sy_form_dup_name (SyForm *form, const char *path, gboolean with_unit);

const char *sy_form_get (SyForm *form, const char *path); /* "" when empty */
/* One step of undo; typing on in the same field within a second joins the step. Emits "changed". */
void sy_form_set (SyForm *form, const char *path, const char *text);
/* Several at once as one step of undo (a remedy). */
void sy_form_set_many (SyForm *form, const char *const *paths, const char *const *texts, gsize n);
char *sy_form_get_number_as (SyForm *form, const char *path, SyUnits units); /* "= 40.6 cm" aid; NULL */
/* The aid for what is typed: the other unit, or the form's own where another was written. New string or NULL. */
char *sy_form_dup_aid (SyForm *form, const char *path);

/* Items of a list; adding and taking away are one step of undo each. */
guint sy_form_list_count (SyForm *form, const char *path);
void sy_form_list_add (SyForm *form, const char *path);
void sy_form_list_remove (SyForm *form, const char *path, guint item);

/* Fills from a stored document (typed texts come back as typed); clears undo. FALSE: not a facts document. */
gboolean sy_form_load_document (SyForm *form, const char *facts, GError **error);
/* The same, but as one step of undo over what is there: an old revision becomes the start of a new one. */
gboolean sy_form_take_document (SyForm *form, const char *facts, GError **error);
/* Empties it: a new task. Clean, nothing to undo. */
void sy_form_clear (SyForm *form, SyUnits units);
void sy_form_load_draft (SyForm *form, const SyDraft *draft);
void sy_form_fill_draft (SyForm *form, SyDraft *draft); /* units and texts */
SyForm *sy_form_copy (SyForm *form);
/* The paths that have a text, in the order of the table; free with g_strfreev. */
char **sy_form_list_paths (SyForm *form);
/* A text as a person reads it: a choice's label, a set's labels. New string. */
char *sy_form_dup_shown (SyForm *form, const char *path);

/* The document as it would be recorded; always JSON, also with problems. New string. */
char *sy_form_document (SyForm *form);

/* The result of the present texts, NULL while there are problems. Borrowed. Always up to date. */
SyAssessment *sy_form_get_assessment (SyForm *form);
/* The problem of a path in words (translated), NULL when it has none. Missing facts are problems too:
   sy_form_is_missing tells them from wrong entries. Borrowed until the next change. */
const char *sy_form_get_problem (SyForm *form, const char *path);
gboolean sy_form_is_missing (SyForm *form, const char *path);
guint sy_form_count_problems (SyForm *form);
/* Problem @i, wrong entries before missing ones: its path and its words; borrowed until the next change. */
const char *sy_form_problem_path (SyForm *form, guint i);
const char *sy_form_problem_words (SyForm *form, guint i);
guint sy_form_count_missing (SyForm *form);
/* Whether what is missing is to be shown beside each fact, as it is once saving was tried. Emits "changed". */
void sy_form_set_ask_missing (SyForm *form, gboolean ask);
gboolean sy_form_get_ask_missing (SyForm *form);

gboolean sy_form_can_undo (SyForm *form);
gboolean sy_form_can_redo (SyForm *form);
void sy_form_undo (SyForm *form);
void sy_form_redo (SyForm *form);

/* Whether the texts differ from what was loaded (or from empty). */
gboolean sy_form_is_dirty (SyForm *form);
void sy_form_mark_clean (SyForm *form);

#define SY_FORM_ERROR (sy_form_error_quark ())
GQuark sy_form_error_quark (void);
typedef enum
{
  SY_FORM_ERROR_DOCUMENT, /* not a facts document of this method */
} SyFormError;

/* Signals: "changed" (after any change, with everything above up to date). */

#endif
