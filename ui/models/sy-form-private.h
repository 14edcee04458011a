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

/* sy-form-document.c */
char *sy_form_build_document (SyForm *form);
/* Fills @texts; FALSE with the error set: not a document of the method. */
gboolean sy_form_read_document (SyForm *form, const char *facts, GHashTable *texts, SyUnits *units,
                                GError **error);
/* The members at a path: the two tables one after the other at the root. */
const SyField *sy_form_field_at (SyForm *form, gsize i);
gsize sy_form_n_fields (SyForm *form);
gboolean sy_form_is_json_number (const char *text);
/* How many items a list has in @texts. */
guint sy_form_count_items (GHashTable *texts, const char *path);

/* sy-form-paths.c: calls @visit for every fact that can hold a text, items of lists included. */
typedef void (*SyLeafFunc) (SyForm *form, const SyField *field, const char *path, gpointer data);
void sy_form_walk (SyForm *form, const SyField *field, const char *path, SyLeafFunc visit, gpointer data);

/* sy-form-result.c */
void sy_form_problem_free (gpointer data);

/* sy-form-words.c */
char *sy_form_problem_to_words (SyForm *form, const SyProblem *problem, const char *path);

#endif
