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
/* The path in the form of a path in its document, which numbers neither a single item nor blank ones. New string. */
char *sy_form_path_from_document (SyForm *form, const char *path);

/* sy-form-read.c */
/* Fills @texts; FALSE with the error set: not a document of the method. */
gboolean sy_form_read_document (SyForm *form, const char *facts, GHashTable *texts, SyUnits *units,
                                GError **error);
/* The members at a path: the two tables one after the other at the root. */
const SyField *sy_form_field_at (SyForm *form, gsize i);
gsize sy_form_n_fields (SyForm *form);
gboolean sy_form_is_json_number (const char *text);
/* How many items a list has in @texts. */
guint sy_form_count_items (GHashTable *texts, const char *path);

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
void sy_form_problem_free (gpointer data);

/* sy-form-words.c */
/* @of: the path that the problem is about, @path: the fact it is put at. */
char *sy_form_problem_to_words (SyForm *form, const SyProblem *problem, const char *of, const char *path);

#endif
