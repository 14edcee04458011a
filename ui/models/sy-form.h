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
 * "legs[0].elements[1].wll". A vector is three facts, "cg[0]", "cg[1]" and "cg[2]", absent when all three are blank; of a
 * list of vectors and of a list of texts each item has its number even where the document writes a single one without
 * a list: "bodies[0].at[1][2]", "legs[0].point[0]". Texts: a number or a coordinate holds what was typed ("16 in",
 * "12,5"); a choice its id; a bool "true" or "false"; a set its ids separated by blanks, "-" for "asked, none applies",
 * "" for not asked; a list the number of its items.
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

/* The field of a path in the method's table, list items included; NULL when there is none. A coordinate and an item
   of a list have the field of the whole. */
const SyField *sy_form_find_field (SyForm *form, const char *path);
/* Whether one measure is typed at a path: a number, or one coordinate of a vector. */
gboolean sy_form_is_measure (SyForm *form, const char *path);
/* What a path is called, unique within the form (translated): "Origin: H"; with the unit: "Origin: H, cm";
   "Leg 1: Element 2: Working load limit WLL"; "Centre of gravity: x"; an item: "Leg 1: Element 2". New string. */
char *sy_form_dup_name (SyForm *form, const char *path, gboolean with_unit);

const char *sy_form_get (SyForm *form, const char *path); /* "" when empty */
/* One step of undo; typing on in the same field within a second joins the step. Emits "changed". */
void sy_form_set (SyForm *form, const char *path, const char *text);
/* Several at once as one step of undo (a remedy). */
void sy_form_set_many (SyForm *form, const char *const *paths, const char *const *texts, gsize n);
/* The same; with @joins it belongs to the step before (a drag goes on). FALSE: nothing differed, no step was made. */
gboolean sy_form_set_on (SyForm *form, const char *const *paths, const char *const *texts, gsize n, gboolean joins);
char *sy_form_get_number_as (SyForm *form, const char *path, SyUnits units); /* "= 40.6 cm" aid; NULL */
/* The aid for what is typed: the other unit, or the form's own where another was written. New string or NULL. */
char *sy_form_dup_aid (SyForm *form, const char *path);

/* Whether a fact is asked for beside what else is given: a share of the time only of a lift in a sequence. What stands
   there always is. */
gboolean sy_form_applies (SyForm *form, const char *path);
/* Whether that can change. */
gboolean sy_form_may_not_apply (SyForm *form, const char *path);

/* Items of a list, of lists inside items too; every change is one step of undo. A list of texts or of vectors has at
   least one item, which may be blank; blank ones do not go into the document. A list is not made longer than its
   field allows. */
guint sy_form_list_count (SyForm *form, const char *path);
void sy_form_list_add (SyForm *form, const char *path);
void sy_form_list_remove (SyForm *form, const char *path, guint item);
/* A copy of an item, with all that is inside it, right behind it. */
void sy_form_list_duplicate (SyForm *form, const char *path, guint item);
/* One more item in place @at (the count: at the end), blank, or with @copies a copy of the one before that place, and these
   texts (NULL with @n 0: none), whose paths are told as they are then; all of it one step of undo. FALSE, and nothing
   changed: the list is full. */
gboolean sy_form_list_insert (SyForm *form, const char *path, guint at, gboolean copies, const char *const *paths,
                              const char *const *texts, gsize n);
/* Gives an item another place; those between move up. */
void sy_form_list_move (SyForm *form, const char *path, guint from, guint to);

/* A list that may have more than SY_FORM_LONG_FIELD items is not typed beyond SY_FORM_ITEMS_TYPED: with more, which come
   from a document or a table, it is kept whole as JSON, and its items have no texts. */
#define SY_FORM_ITEMS_TYPED 40
#define SY_FORM_LONG_FIELD 500
gboolean sy_form_is_long_field (const SyField *list);
/* The items of a list that is kept whole, a JSON array; NULL: each has its texts. Borrowed until the next change. */
GBytes *sy_form_list_get_long (SyForm *form, const char *path);
/* Replaces all items by those of a JSON array, in one step of undo. FALSE, and nothing changed: not such a list. */
gboolean sy_form_list_replace (SyForm *form, const char *path, const char *json, GError **error);
/* Takes all items away in one step of undo. */
void sy_form_list_clear (SyForm *form, const char *path);

/* Facts inside facts (SY_MEMBER_FACTS: how a step of a die change moves its load) are one text: a facts document without units.
   They are typed in a form of their own, which has the units of the outer one as long as both live: make it anew
   after sy_form_set_units. */
gboolean sy_form_is_part (SyForm *form, const char *path);
/* The form of the facts at a path, clean; NULL with the error set: none are given, or they cannot be read. */
SyForm *sy_form_new_part (SyForm *form, const char *path, GError **error);
/* Puts what such a form holds, with or without problems, in its place; typing on joins one step of undo. */
void sy_form_set_part (SyForm *form, const char *path, SyForm *part);
/* Begins with no facts of a method; what was there goes. A step of undo of its own, as is taking them away. */
void sy_form_begin_part (SyForm *form, const char *path, const char *method);
void sy_form_remove_part (SyForm *form, const char *path);
/* Whether facts of a method may stand inside the form's: a way to move a load, and over them a change as a whole. */
gboolean sy_form_may_be_part (SyForm *form, const SyMethod *method);
/* Puts a whole facts document of the record there, told in the form's units and without what is said of the whole only (place, day,
   whether it can be avoided); a step of undo. FALSE, and nothing changed: it may not stand there. */
gboolean sy_form_take_part (SyForm *form, const char *path, const char *facts, GError **error);
/* Puts there what stands at another such path; a step of undo. */
void sy_form_copy_part (SyForm *form, const char *path, const char *from);
/* NULL: none are given. */
const SyMethod *sy_form_get_part_method (SyForm *form, const char *path);

/* Fills from a stored document (typed texts come back as typed); clears undo. FALSE: not a facts document. */
gboolean sy_form_load_document (SyForm *form, const char *facts, GError **error);
/* The same, but as one step of undo over what is there: an old revision becomes the start of a new one. */
gboolean sy_form_take_document (SyForm *form, const char *facts, GError **error);
/* Empties it: a new task. Clean, nothing to undo. */
void sy_form_clear (SyForm *form, SyUnits units);
/* FALSE, and nothing changed: the draft is of another method (draft->method says which). */
gboolean sy_form_load_draft (SyForm *form, const SyDraft *draft);
void sy_form_fill_draft (SyForm *form, SyDraft *draft); /* method, units and texts */
SyForm *sy_form_copy (SyForm *form);
/* The paths that have a text, in the order of the table; free with g_strfreev. */
char **sy_form_list_paths (SyForm *form);
/* The paths at and below one ("hook", "legs[0]", "cg") that have a text, lists before their items: what is to be
   emptied and can be set again in this order. */
char **sy_form_list_paths_below (SyForm *form, const char *path);
/* Whether nothing is typed at a path and below it. */
gboolean sy_form_is_blank (SyForm *form, const char *path);
/* A text as a person reads it: a choice's label, a set's labels. New string. */
char *sy_form_dup_shown (SyForm *form, const char *path);

/* The document as it would be recorded; always JSON, also with problems. New string. */
char *sy_form_document (SyForm *form);

/* A form with a long list takes a while to assess. With @background it is done beside the main loop: what follows then
   stays as it was before the last change (nothing after a load) until "changed" comes once more. Otherwise, and with
   every other form, it is always up to date. */
void sy_form_set_background (SyForm *form, gboolean background);
gboolean sy_form_is_working (SyForm *form);
/* While "changed" is told: no text changed, a result came. */
gboolean sy_form_tells_only_result (SyForm *form);
/* Brings it up to date now, whatever it takes. */
void sy_form_settle (SyForm *form);

/* The result of the present texts, NULL while there are problems. Borrowed. */
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
