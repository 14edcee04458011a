/* SPDX-License-Identifier: MIT */
#ifndef SY_DEED_FORM_H
#define SY_DEED_FORM_H

#include <gtk/gtk.h>

#include "sy-worker-deeds.h"

/*
 * A form in place for one deed: a button that opens it, by whom and in which role, what the deed needs besides, and what came
 * of it, which stays until the next. Who and role are remembered for the next time.
 * Signals: "opened" (so that others can close); "done".
 */
#define SY_TYPE_DEED_FORM (sy_deed_form_get_type ())
G_DECLARE_FINAL_TYPE (SyDeedForm, sy_deed_form, SY, DEED_FORM, GtkBox)

/* Entries are called ID-by, ID-role, ID-why …; captions are translated. */
typedef struct
{
  const char *id;      /* "why", "what", "due" …                  */
  const char *caption;
  const char *purpose; /* NULL for none                           */
  gboolean required;
} SyDeedField;

/* The deed that was typed; NULL after saying what is wrong with sy_deed_form_say(). */
typedef SyDeedAsk *(*SyDeedMake) (SyDeedForm *form, gpointer user_data);

/* @id: "sign"; @button: with mnemonic, opens the form, NULL: only sy_deed_form_open() does; @title: what the entries are told
   apart by, "Sign off"; @act: with mnemonic, does it; @role_needed: for a sign-off. */
GtkWidget *sy_deed_form_new (SyWorker *worker, const char *id, const char *title, const char *button, const char *act,
                             gboolean role_needed);
void sy_deed_form_add (SyDeedForm *form, const SyDeedField *fields, gsize n);
/* Something else to be chosen, or words; stands under what was added before. */
void sy_deed_form_add_widget (SyDeedForm *form, const char *caption, GtkWidget *widget);
void sy_deed_form_set_make (SyDeedForm *form, SyDeedMake make, gpointer user_data);

GtkWidget *sy_deed_form_get_entry (SyDeedForm *form, const char *id);
/* Without blanks around it. New string. */
char *sy_deed_form_dup (SyDeedForm *form, const char *id);
void sy_deed_form_set (SyDeedForm *form, const char *id, const char *text);
/* What it is about, over the entries; "" for nothing. */
void sy_deed_form_set_subject (SyDeedForm *form, const char *words);
/* Under the form; @wrong: in the colour of a wrong entry. "" for nothing. */
void sy_deed_form_say (SyDeedForm *form, const char *words, gboolean wrong);
void sy_deed_form_open (SyDeedForm *form);
void sy_deed_form_close (SyDeedForm *form);

/* Whether a text is a day, "2026-12-01". "" is none and is fine. */
gboolean sy_deed_day_is_fine (const char *text);

#endif
