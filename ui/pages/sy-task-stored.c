/* SPDX-License-Identifier: MIT */
#include "sy-task-stored.h"

#include "sy-difference-table.h"
#include "sy-form.h"
#include "sy-i18n.h"
#include "sy-stored-result.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"

#include <math.h>
#include <string.h>

/* The stored findings as a tree in @memory; NULL when they cannot be read. */
static const SyJson *
scan_findings (const SyRevision *revision, SyMemory *memory)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  return sy_json_scan (revision->event->findings, strlen (revision->event->findings),
                       SY_JSON_DOCUMENT_MAX, memory, problems);
}

/* A line "name … value" */
static void
add_line (GtkWidget *box, const char *name, const char *value)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = sy_part_label (name, NULL);
  GtkWidget *figure = sy_part_label (value, "sy-figures");

  gtk_widget_set_hexpand (label, TRUE);
  gtk_label_set_xalign (GTK_LABEL (figure), 1);
  gtk_label_set_max_width_chars (GTK_LABEL (figure), 36);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), figure);
  gtk_box_append (GTK_BOX (box), row);
}

static void
add_facts (GtkWidget *box, SyForm *form)
{
  g_auto (GStrv) paths = sy_form_list_paths (form);

  gtk_box_append (GTK_BOX (box), sy_part_heading (_("Facts as they were typed")));
  for (guint i = 0; paths[i] != NULL; i++)
    {
      g_autofree char *name = sy_form_dup_name (form, paths[i], FALSE);
      g_autofree char *shown = sy_form_dup_shown (form, paths[i]);

      add_line (box, name, shown);
    }
}

static void
add_changes (GtkWidget *box, const SyRevision *before, const SyRevision *revision)
{
  g_autofree char *title = g_strdup_printf (_("Changed since revision %ld"), (long) before->event->revision);

  gtk_box_append (GTK_BOX (box), sy_part_heading (title));
  gtk_box_append (GTK_BOX (box), sy_difference_table_new (before->event, revision->event));
}

static void
add_quantities (GtkWidget *box, const SyJson *quantities)
{
  gtk_box_append (GTK_BOX (box), sy_part_heading (_("What was found then")));
  for (const SyJson *quantity = quantities->first; quantity != NULL; quantity = quantity->next)
    {
      const char *unit = sy_json_member_text (quantity, "unit");
      const char *date = sy_json_member_text (quantity, "value");
      double value = sy_json_member_number (quantity, "value", NAN);
      g_autofree char *number = g_strcmp0 (sy_json_member_text (quantity, "state"), "unbounded") == 0
                                    ? g_strdup (_("no limit holds"))
                                : date != NULL ? g_strdup (date)
                                               : sy_words_number (value, 4);
      g_autofree char *shown = unit == NULL || date != NULL || strcmp (unit, "1") == 0
                                   ? g_strdup (number)
                                   : g_strdup_printf ("%s %s", number, unit);

      add_line (box, quantity->key, shown);
    }
}

/* Reasons and cautions are stored in words, in one language. */
static void
add_words (GtkWidget *box, const SyJson *list, const char *title)
{
  if (list == NULL || list->first == NULL)
    return;
  gtk_box_append (GTK_BOX (box), sy_part_heading (title));
  for (const SyJson *item = list->first; item != NULL; item = item->next)
    {
      const char *text = item->type == SY_JSON_TEXT ? item->text : sy_json_member_text (item, "text");
      const char *source = item->type == SY_JSON_OBJECT ? sy_json_member_text (item, "source") : NULL;
      const char *id = item->type == SY_JSON_OBJECT ? sy_json_member_text (item, "verdict") : NULL;
      SyVerdict verdict;
      gboolean has = id != NULL && sy_verdict_from_id (id, &verdict);

      if (text != NULL)
        gtk_box_append (GTK_BOX (box), sy_reason_row_new (has ? &verdict : NULL, text, source));
    }
}

static void
add_result (GtkWidget *box, const SyRevision *revision)
{
  SyStoredResult result;
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *verdict = sy_verdict_label_new (FALSE);
  g_autofree char *index = NULL;

  sy_stored_result_read (revision->event, &result);
  index = sy_stored_index_text (&result);
  if (result.has_verdict)
    sy_verdict_label_set (SY_VERDICT_LABEL (verdict), sy_method_find (revision->event->method), result.verdict,
                          SY_URGENCY_NONE);
  else
    sy_verdict_label_set_none (SY_VERDICT_LABEL (verdict), _("No verdict that this edition knows"), "");
  gtk_widget_set_hexpand (verdict, TRUE);
  gtk_box_append (GTK_BOX (row), verdict);
  gtk_box_append (GTK_BOX (row), sy_part_label (index, "sy-trial-index"));
  gtk_box_append (GTK_BOX (box), row);
  sy_stored_result_clear (&result);
}

GtkWidget *
sy_task_stored_new (SyDesk *desk, const SyRevision *revision, const SyRevision *before)
{
  const SyEvent *event = revision->event;
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *root = scan_findings (revision, memory);
  g_autoptr (GError) error = NULL;
  g_autofree char *when = sy_stored_time_text (event->claimed);
  g_autofree char *notice = g_strdup_printf (
    _("Revision %ld as it was stored on %s by %s%s%s (“%s”): method %s edition %ld, policy %s, program %s. "
      "Read only; nothing here is recalculated."),
    (long) event->revision, when, event->by, event->role[0] != '\0' ? ", " : "", event->role, event->why, event->method,
    (long) event->edition, event->policy, event->program);
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkWidget *label = sy_part_label (notice, "sy-notice");

  gtk_widget_set_name (label, "stored-notice");
  gtk_box_append (GTK_BOX (box), label);
  add_result (box, revision);
  if (before != NULL)
    add_changes (box, before, revision);
  if (sy_method_find (event->method) != NULL)
    {
      g_autoptr (SyForm) form = sy_form_new (desk, event->method, SY_UNITS_METRIC);

      if (sy_form_load_document (form, event->facts, &error))
        {
          add_facts (box, form);
        }
      else
        gtk_box_append (GTK_BOX (box), sy_part_label (error->message, "sy-problem"));
    }
  if (root != NULL)
    {
      const SyJson *quantities = sy_json_member (root, "quantities");

      add_words (box, sy_json_member (root, "reasons"), _("Reasons"));
      add_words (box, sy_json_member (root, "cautions"), _("Cautions"));
      if (quantities != NULL)
        add_quantities (box, quantities);
    }
  gtk_box_append (GTK_BOX (box), sy_part_label (screening, "sy-note"));
  return box;
}
