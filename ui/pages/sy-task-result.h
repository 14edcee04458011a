/* SPDX-License-Identifier: MIT */
#ifndef SY_TASK_RESULT_H
#define SY_TASK_RESULT_H

#include <gtk/gtk.h>

#include "sy-form.h"

/*
 * The result in short, always in sight: verdict, figure, until when it holds, the sentence and the cautions in a line;
 * between them the steelyard, or for what is judged by capacity the weakest of what carries.
 * Signals: "cautions": the person wants to read them all; "path": or everything that carries; "fact" (string path): a bar
 * was pressed.
 */
#define SY_TYPE_TASK_RESULT (sy_task_result_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskResult, sy_task_result, SY, TASK_RESULT, GtkBox)

GtkWidget *sy_task_result_new (SyForm *form);

/*
 * The result in pictures: the drawings; of a lift also the mass against the reference mass, what takes the limit down.
 * Signal "fact" (string path): a bar was pressed.
 */
#define SY_TYPE_TASK_PICTURES (sy_task_pictures_get_type ())
G_DECLARE_FINAL_TYPE (SyTaskPictures, sy_task_pictures, SY, TASK_PICTURES, GtkBox)

GtkWidget *sy_task_pictures_new (SyForm *form);

#endif
