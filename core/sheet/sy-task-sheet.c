/* SPDX-License-Identifier: MIT */
/* The kinds of sheets of one assessment. A new one is a file of its own and a row here. */
#include <string.h>

#include "sy-task-sheet-private.h"

#define OFFICE ((1u << SY_PAPER_A4) | (1u << SY_PAPER_LETTER))
#define ANY (OFFICE | (1u << SY_PAPER_A5))

static gboolean
is_rigged (const SyMethod *method)
{
  return strcmp (method->id, "rigged-lift") == 0;
}

static gboolean
is_changeover (const SyMethod *method)
{
  return strcmp (method->id, "changeover") == 0;
}

static gboolean
is_case (const SyMethod *method)
{
  return strcmp (method->id, "case") == 0;
}

/* What is decided at a desk hangs on no wall. */
static gboolean
is_of_the_floor (const SyMethod *method)
{
  return !is_case (method);
}

static const SyTaskSheetKind kinds[] = {
  { "assessment", N_ ("Assessment"), NULL, OFFICE, sy_assessment_sheet_new },
  { "lift-plan", N_ ("Lift plan"), is_rigged, OFFICE, sy_lift_plan_sheet_new },
  { "changeover", N_ ("Changeover plan"), is_changeover, OFFICE, sy_changeover_sheet_new },
  { "case", N_ ("Case on one page"), is_case, OFFICE, sy_case_sheet_new },
  { "card", N_ ("Card for the wall"), is_of_the_floor, ANY, sy_card_sheet_new },
};

const SyTaskSheetKind *
sy_task_sheet_kinds (gsize *n)
{
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

const SyTaskSheetKind *
sy_task_sheet_kind (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].id, id) == 0)
      return &kinds[i];
  return NULL;
}

gboolean
sy_task_sheet_fits (const SyTaskSheetKind *kind, const SyMethod *method)
{
  return kind->is_of == NULL || kind->is_of (method);
}

gboolean
sy_task_sheet_takes (const SyTaskSheetKind *kind, SyPaper paper)
{
  return (kind->papers & (1u << paper)) != 0;
}

const char *
sy_sheet_in (const SyTaskSheet *sheet, const char *msgid)
{
  return sheet->translate != NULL && *msgid != '\0' ? sheet->translate (msgid) : msgid;
}
