/* SPDX-License-Identifier: MIT */
#ifndef SY_FACT_H
#define SY_FACT_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * What every widget has in which one fact is given: a text as typed, a problem in words, a name. Signal "edited": the
 * person changed the text (never sent for sy_fact_set_text). A widget for a vector or for several texts is made of such
 * widgets: it has a text and a note of its own no more than the signal, and is there to be bound.
 */
#define SY_TYPE_FACT (sy_fact_get_type ())
G_DECLARE_INTERFACE (SyFact, sy_fact, SY, FACT, GtkWidget)

struct _SyFactInterface
{
  GTypeInterface parent_iface;

  const char *(*get_text) (SyFact *fact);
  void (*set_text) (SyFact *fact, const char *text);
  /* @words NULL: none. @aid: said where there is no problem; NULL: nothing. */
  void (*set_note) (SyFact *fact, const char *words, const char *aid);
  /* @name for assistive technology; @units the unit system of bare numbers. */
  void (*set_name) (SyFact *fact, const char *name, SyUnits units);
  /* The widget that takes the text: gets the fact's path as its widget name. */
  GtkWidget *(*get_field) (SyFact *fact);
  /* Only where it is made of others, instead of all the above but get_field: binds those. */
  void (*bind) (SyFact *fact, SyForm *form, const char *path);
};

const char *sy_fact_get_text (SyFact *fact);
void sy_fact_set_text (SyFact *fact, const char *text);
void sy_fact_set_note (SyFact *fact, const char *words, const char *aid);
void sy_fact_set_name (SyFact *fact, const char *name, SyUnits units);
GtkWidget *sy_fact_get_field (SyFact *fact);
void sy_fact_edited (SyFact *fact);

/* Ties the widget to a path of a form: texts, problems and names follow both ways from now on. */
void sy_fact_bind (SyFact *fact, SyForm *form, const char *path);
const char *sy_fact_get_path (SyFact *fact); /* NULL: not bound */

/* The label above: to be hidden where a heading says the same, to be kept level with those beside it. */
GtkWidget *sy_fact_get_caption (SyFact *fact);

/* The widget that suits a field: a quantity entry, choice, set, text, vector, several or part row. NULL for groups and
   lists. */
GtkWidget *sy_fact_new_for_field (const SyField *field);

/* Caption and note, alike in all of them: the caption names the fact, the note under it says what is wrong or helps. */
typedef struct
{
  GtkWidget *caption, *note;
} SyFactFrame;
/* Puts a caption at the start of @box; the note is put at its end by sy_fact_frame_end. */
void sy_fact_frame_begin (SyFactFrame *frame, GtkBox *box, const SyField *field);
void sy_fact_frame_end (SyFactFrame *frame, GtkBox *box);
/* Shows the note and marks @field as invalid and described by it. */
void sy_fact_frame_note (SyFactFrame *frame, GtkWidget *field, const char *words, const char *aid);

#endif
