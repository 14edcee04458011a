/* SPDX-License-Identifier: MIT */
#ifndef SCENE_SHEET_H
#define SCENE_SHEET_H

#include "sy-desk.h"
#include "sy-drawing.h"
#include "sy-test.h"

/* A scene drawn from a document of facts, and its marks by what they are. */

typedef struct
{
  SyScene scene;
  SyMark marks[SY_SCENE_MARKS_MAX];
} Sheet;

/* Into room for @room marks; g_free() it. */
G_GNUC_UNUSED static Sheet *
draw_with (const char *text, size_t view, int room)
{
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, text, strlen (text), SY_JUDGE_PLAIN, problems);
  Sheet *sheet = g_new0 (Sheet, 1);

  if (assessment == NULL)
    print_error ("%s: %s\n", problems->items[0].path, problems->items[0].allowed);
  assert_non_null (assessment);
  sy_assessment_scene (assessment, view, sheet->marks, room, &sheet->scene);
  return sheet;
}

G_GNUC_UNUSED static Sheet *
draw (const char *text, size_t view)
{
  return draw_with (text, view, SY_SCENE_MARKS_MAX);
}

/* The @n-th of its kind, NULL: there are not so many. */
G_GNUC_UNUSED static const SyMark *
find (const Sheet *sheet, SyMarkType type, SyRole role, int n)
{
  for (int i = 0; i < sheet->scene.count; i++)
    if (sheet->marks[i].type == type && sheet->marks[i].role == role && n-- == 0)
      return &sheet->marks[i];
  return NULL;
}

G_GNUC_UNUSED static const SyMark *
find_text (const Sheet *sheet, const char *text)
{
  for (int i = 0; i < sheet->scene.count; i++)
    if (strcmp (sheet->marks[i].text, text) == 0)
      return &sheet->marks[i];
  return NULL;
}

#endif
