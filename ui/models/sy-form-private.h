/* SPDX-License-Identifier: MIT */
#ifndef SY_FORM_PRIVATE_H
#define SY_FORM_PRIVATE_H

#include "sy-form.h"

typedef struct
{
  char *path;       /* of a fact of the form; "" where it belongs to none */
  char *words;
  gboolean missing; /* not given, as against given wrongly */
} SyFormProblem;

/* The whole state of the texts: what undo goes back to. */
typedef struct
{
  GHashTable *texts; /* char* → char* */
  GHashTable *longs; /* char* → GBytes: path of a long list and its items as JSON, as typed; texts has their number */
  SyUnits units;
} SyFormState;

struct _SyForm
{
  GObject parent_instance;

  SyDesk *desk;
  const SyMethod *method;
  SyFormState now;
  SyFormState clean;
  GPtrArray *undo, *redo; /* of SyFormState, the newest last */
  char *typing;           /* path of the step that typing may still join, NULL for none */
  gint64 typed_at;        /* monotonic microseconds */

  gboolean ask_missing;
  gboolean stale;         /* what follows is of older texts */
  gboolean background;    /* a large form is assessed beside the main loop */
  gboolean working;       /* … and is now */
  gboolean only_result;   /* "changed" tells of a result, not of a text */
  guint serial;           /* of the texts */
  SyAssessment *assessment;
  GPtrArray *problems;    /* of SyFormProblem */
};

/* sy-form.c: a change of the texts: remember, put any number of texts, tell. */
/* @typing names the field that is typed in, NULL for any other change. */
void sy_form_begin_step (SyForm *form, const char *typing);
void sy_form_put (SyForm *form, const char *path, const char *text);
void sy_form_end_step (SyForm *form);

/* sy-form-document.c */
char *sy_form_build_document (SyForm *form);
/* The same without units, as facts inside facts. */
char *sy_form_build_part (SyForm *form);
/* The path in the form of a path in its document, which numbers neither a single item nor blank ones. New string. */
char *sy_form_path_from_document (SyForm *form, const char *path);

/* sy-form-read.c */
/* Fills @to, which is empty; FALSE with the error set: not a document of the method. */
gboolean sy_form_read_document (SyForm *form, const char *facts, SyFormState *to, GError **error);
/* The items of a list, a JSON array, into @to. */
gboolean sy_form_read_list (const SyField *field, const char *path, const SyJson *array, SyFormState *to, GError **error);
/* The members at a path: the two tables one after the other at the root. */
const SyField *sy_form_field_at (SyForm *form, gsize i);
gsize sy_form_n_fields (SyForm *form);
gboolean sy_form_is_json_number (const char *text);
/* How many items a list has in @texts. */
guint sy_form_count_items (GHashTable *texts, const char *path);

/* sy-form-long.c */
GHashTable *sy_form_new_longs (void);
GHashTable *sy_form_copy_longs (GHashTable *longs);
gboolean sy_form_longs_equal (GHashTable *a, GHashTable *b);
/* Whether a list of so many items at a path is kept as a whole. */
gboolean sy_form_keeps_whole (const SyField *field, const char *path, guint n);
/* The items of a long list; NULL where it is not one. */
const char *sy_form_long_json (SyForm *form, const char *path, gsize *length);
/* Whether a path is that of a long list, or below one. */
gboolean sy_form_is_in_long (SyForm *form, const char *path);
/* Writes the unit behind every bare number, in @units. */
void sy_form_long_write_units (SyForm *form, SyUnits units);
/* Whether an assessment takes longer than a keystroke may. */
gboolean sy_form_is_large (SyForm *form);
/* Begins to assess the present texts beside the main loop; "changed" comes when it is done. */
void sy_form_begin_work (SyForm *form);

/* sy-form-part.c */
/* Bare numbers inside get the unit of the form written behind them: @units come. */
void sy_form_part_write_units (SyForm *form, const char *path, SyUnits units);
/* Where a path leads into facts inside facts: their own path, a new string in @outer, and what follows it, a path
   inside them; NULL: it does not. */
const char *sy_form_split_part (SyForm *form, const char *path, char **outer);
/* What is wrong @inside the facts at a path, as their own form says it; NULL: they cannot be read. */
char *sy_form_part_problem_words (SyForm *form, const char *path, const char *inside, const SyProblem *problem);

/* sy-form-lists.c: the lists on the way to a path get as many items as it names. */
void sy_form_cover_items (SyForm *form, const char *path);

/* sy-form-paths.c */
#define SY_FORM_N_COORDINATES 3
typedef struct
{
  const SyField *field;
  guint n_items; /* how many numbers stand behind the field's name: "at[1][2]" has two */
  guint items[2];
} SyFormPlace;
/* Follows a path down the table; @outer (may be NULL) receives a SyFormPlace for each group and list on the way. FALSE:
   it leads nowhere. */
gboolean sy_form_find_place (SyForm *form, const char *path, SyFormPlace *place, GArray *outer);
/* Whether the place is a list itself, not one of its items. */
gboolean sy_form_place_is_list (const SyFormPlace *place);

/* Calls @visit for every fact that can hold a text, items of lists included. @path: of a whole field. */
typedef void (*SyLeafFunc) (SyForm *form, const SyField *field, const char *path, gpointer data);
void sy_form_walk (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data);
/* The same for what is at a path and below it, which may be an item of a list or one fact. */
void sy_form_walk_path (SyForm *form, const char *path, SyLeafFunc visit, gpointer data);

/* sy-form-result.c */
/* Works out what follows of the texts, here and now. */
void sy_form_work_out (SyForm *form);
/* Takes over what a copy of the form, with the same texts, has worked out, and tells. */
void sy_form_take_result (SyForm *form, SyForm *copy);
void sy_form_problem_free (gpointer data);

/* sy-form-words.c */
/* @of: the path that the problem is about, @path: the fact it is put at. */
char *sy_form_problem_to_words (SyForm *form, const SyProblem *problem, const char *of, const char *path);

#endif
