/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_SAVER_H
#define SY_TASK_SAVER_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * The bar at the foot of a task page: by whom, in which role, why, Save; and what stands in the way, or what happened.
 * Signals: "save"; "go" (string path): the person pressed the sentence that names what is missing or wrong.
 */
#define SY_TYPE_TASK_SAVER (sy_task_saver_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskSaver, sy_task_saver, SY, TASK_SAVER, GtkBox)

typedef enum
{
  SY_SAVER_PLAIN,   /* how things are            */
  SY_SAVER_BLOCKED, /* pressing goes to @path    */
  SY_SAVER_FAILED,  /* saving did not succeed    */
} SySaverTone;

GtkWidget *sy_task_saver_new (void);
const char *sy_task_saver_get_by (SyTaskSaver *self);
const char *sy_task_saver_get_role (SyTaskSaver *self); /* "" for none */
const char *sy_task_saver_get_why (SyTaskSaver *self);
void sy_task_saver_set_why (SyTaskSaver *self, const char *why);
/* @path: where SY_SAVER_BLOCKED leads, NULL for the other tones. */
void sy_task_saver_say (SyTaskSaver *self, SySaverTone tone, const char *words, const char *path);
/* Marks what the bar itself lacks; TRUE when both are there. Puts the keyboard on the first that is not. */
gboolean sy_task_saver_check (SyTaskSaver *self);
/* Puts the keyboard where the reason is typed. */
void sy_task_saver_ask_why (SyTaskSaver *self);
void sy_task_saver_set_busy (SyTaskSaver *self, gboolean busy);

#endif
