/* SPDX-License-Identifier: MIT */
#include "sy-register-sheet.h"

#include <string.h>

static const char *
in_words (SyTranslate translate, const char *msgid)
{
  return translate != NULL ? translate (msgid) : msgid;
}

static void
add_table (SyFolio *folio, SyTranslate translate)
{
  const SyFolioColumn columns[] = {
    { in_words (translate, N_ ("Item, place")), 0.22, SY_TYPE_STRONG },
    { in_words (translate, N_ ("In force")), 0.3, SY_TYPE_NOTE },
    { in_words (translate, N_ ("Signed off")), 0.24, SY_TYPE_NOTE },
    { in_words (translate, N_ ("Due, told")), 0.24, SY_TYPE_NOTE },
  };

  sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
}

static char *
item_words (const SyTask *task)
{
  return *task->place != '\0' ? g_strdup_printf ("%s\n%s", task->name, task->place) : g_strdup (task->name);
}

static void
add_row (SyFolio *folio, const SyAuditRow *row, SyTranslate translate)
{
  g_autofree char *item = item_words (row->task), *verdict = sy_audit_verdict_words (row, translate);
  g_autofree char *made = sy_audit_made_words (row, translate), *basis = sy_audit_basis_words (row, translate);
  g_autofree char *force = g_strdup_printf ("%s\n%s\n%s", verdict, made, basis);
  g_autofree char *signed_off = sy_audit_signed_words (row, translate), *due = sy_audit_due_words (row, translate);
  const char *cells[] = { item, force, signed_off, due };

  sy_folio_row (folio, cells);
}

static void
add_items (SyFolio *folio, const SyAudit *audit, SyTranslate translate)
{
  static const struct
  {
    const char *kind, *title;
  } kinds[] = {
    { SY_ITEM_TASK, N_ ("Tasks in force") },
    { SY_ITEM_CHANGEOVER, N_ ("Die changes in force") },
    { SY_ITEM_CASE, N_ ("Cases for a lift aid in force") },
    { SY_ITEM_DIE, N_ ("Dies in force") },
    { SY_ITEM_GEAR, N_ ("Gear in force") },
  };
  const char *last = "";

  for (guint i = 0; i < audit->rows->len; i++)
    {
      const SyAuditRow *row = audit->rows->pdata[i];

      for (gsize k = 0; k < G_N_ELEMENTS (kinds) && strcmp (row->task->item_kind, last) != 0; k++)
        if (strcmp (row->task->item_kind, kinds[k].kind) == 0)
          {
            last = kinds[k].kind;
            sy_folio_heading (folio, in_words (translate, kinds[k].title));
            add_table (folio, translate);
          }
      add_row (folio, row, translate);
    }
}

static void
add_missing (SyFolio *folio, const SyAudit *audit, SyTranslate translate)
{
  const SyFolioColumn columns[] = {
    { in_words (translate, N_ ("Item, place")), 0.35, SY_TYPE_STRONG },
    { in_words (translate, N_ ("Why")), 0.65, SY_TYPE_NOTE },
  };

  sy_folio_heading (folio, in_words (translate, N_ ("Not assessed, or no longer")));
  sy_folio_paragraph (folio, in_words (translate, sy_audit_elsewhere), SY_TYPE_BODY);
  if (sy_audit_count (audit, SY_AUDIT_NOT_ASSESSED) > 0)
    sy_folio_table (folio, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < audit->rows->len; i++)
    {
      const SyAuditRow *row = audit->rows->pdata[i];
      g_autofree char *item = item_words (row->task), *why = sy_audit_missing_words (row, translate);
      const char *cells[] = { item, why };

      if ((row->gaps & SY_AUDIT_NOT_ASSESSED) != 0)
        sy_folio_row (folio, cells);
    }
}

SyFolio *
sy_register_sheet_new (const SyRegisterSheet *sheet)
{
  const SyAudit *audit = sheet->audit;
  SyTranslate translate = sheet->translate;
  g_autofree char *subtitle
    = sy_words_say (translate, N_ ("As at the end of {day} (UTC)"), "day", audit->day, NULL);
  g_autofree char *head = sy_audit_head_words (audit, translate), *policies = sy_audit_policy_words (audit, translate);
  g_autofree char *lines = *policies != '\0' ? g_strconcat (head, "\n", policies, NULL) : g_strdup (head);
  g_autofree char *counts = sy_audit_count_words (audit, translate);
  g_autofree char *foot = sy_deferring_words (audit->deferring, translate);
  const SyFolioHead said = { .paper = sheet->paper, .translate = translate,
                             .title = in_words (translate, N_ ("Register of assessments")), .subtitle = subtitle,
                             .head = lines, .program = sheet->program, .made = sheet->made, .foot = foot };
  SyFolio *folio = sy_folio_new (&said);

  sy_folio_paragraph (folio, counts, SY_TYPE_BODY);
  sy_folio_paragraph (folio, in_words (translate, sy_audit_day_means), SY_TYPE_NOTE);
  add_items (folio, audit, translate);
  if (audit->rows->len == 0)
    sy_folio_paragraph (folio, in_words (translate, N_ ("Nothing was in force on that day.")), SY_TYPE_BODY);
  add_missing (folio, audit, translate);
  if (audit->retired->len > 0)
    {
      sy_folio_heading (folio, in_words (translate, N_ ("Out of use")));
      add_table (folio, translate);
    }
  for (guint i = 0; i < audit->retired->len; i++)
    add_row (folio, audit->retired->pdata[i], translate);
  return folio;
}
