/* SPDX-License-Identifier: MIT */
#ifndef SY_KEY_CHOICE_H
#define SY_KEY_CHOICE_H

#include <gtk/gtk.h>

/*
 * One of several keys, or any. What is chosen stays chosen when the keys change, as long as it is among them.
 * Signal "chosen": another key than before.
 */
#define SY_TYPE_KEY_CHOICE (sy_key_choice_get_type ())
G_DECLARE_FINAL_TYPE (SyKeyChoice, sy_key_choice, SY, KEY_CHOICE, GtkWidget)

/* What a person reads for a key; static or the key itself. */
typedef const char *(*SyKeyWords) (const char *key);

/* @any: "Any machine"; @name: what it is for; @words NULL: keys are read as they are. */
GtkWidget *sy_key_choice_new (const char *any, const char *name, SyKeyWords words);
/* Takes @keys. */
void sy_key_choice_set_keys (SyKeyChoice *choice, char **keys);
/* NULL, or a key that is not there: any. */
void sy_key_choice_choose (SyKeyChoice *choice, const char *key);
/* NULL: any. Borrowed until the keys change. */
const char *sy_key_choice_get (SyKeyChoice *choice);

#endif
