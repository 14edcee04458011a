/* SPDX-License-Identifier: MIT */
#include "sy-task-stored.h"

#include "sy-form.h"
#include "sy-i18n.h"
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

void
sy_stored_result_read (const SyRevision *revision, SyStoredResult *out)
{
  g_autoptr (SyMemory) memory = sy_memory_new ();
  const SyJson *root = scan_findings (revision, memory);
  const char *verdict = root != NULL ? sy_json_member_text (root, "verdict") : NULL;
  const char *symbol = root != NULL ? sy_json_member_text (root, "index") : NULL;
  const SyJson *quantities = root != NULL ? sy_json_member (root, "quantities") : NULL;
  const SyJson *index = symbol != NULL && quantities != NULL ? sy_json_member (quantities, symbol) : NULL;

  *out = (SyStoredResult) { .index = NAN };
  out->has_verdict = verdict != NULL && sy_verdict_from_id (verdict, &out->verdict);
  if (index == NULL)
    return;
  out->index_symbol = g_strdup (symbol);
  out->index = g_strcmp0 (sy_json_member_text (index, "state"), "unbounded") == 0
                   ? INFINITY
                   : sy_json_member_number (index, "value", NAN);
}

void
sy_stored_result_clear (SyStoredResult *result)
{
  g_clear_pointer (&result->index_symbol, g_free);
}

char *
sy_stored_index_text (const SyStoredResult *result)
{
  g_autofree char *number = NULL;

  if (result->index_symbol == NULL || isnan (result->index))
    return g_strdup ("");
  if (strcmp (result->index_symbol, "utilisation") == 0 && isfinite (result->index))
    {
      number = sy_words_quantity (result->index * 100, SY_KIND_PERCENT, SY_UNITS_METRIC);
      /* Translators: of what something may carry: "Utilisation 93 %". */
      return g_strdup_printf (_("Utilisation %s"), number);
    }
  number = sy_words_quantity (result->index, SY_KIND_RATIO, SY_UNITS_METRIC);
  return g_strdup_printf ("%s %s", result->index_symbol, number);
}

char *
sy_stored_time_text (const char *stored)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_iso8601 (stored, NULL);
  g_autoptr (GDateTime) local = time != NULL ? g_date_time_to_local (time) : NULL;

  return local != NULL ? g_date_time_format (local, "%Y-%m-%d %H:%M") : g_strdup (stored);
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
add_difference (GtkWidget *box, SyForm *before, SyForm *after, gint64 base, GHashTable *seen, SyForm *list)
{
  g_auto (GStrv) paths = sy_form_list_paths (list);

  for (guint i = 0; paths[i] != NULL; i++)
    {
      g_autofree char *name = sy_form_dup_name (list, paths[i], FALSE);
      g_autofree char *old = sy_form_dup_shown (before, paths[i]);
      g_autofree char *new = sy_form_dup_shown (after, paths[i]);
      g_autofree char *words = NULL;

      if (strcmp (old, new) == 0 || !g_hash_table_add (seen, g_strdup (paths[i])))
        continue;
      if (g_hash_table_size (seen) == 1)
        {
          g_autofree char *title
              = g_strdup_printf (_("Changed since revision %ld"), (long) base);

          gtk_box_append (GTK_BOX (box), sy_part_heading (title));
        }
      words = g_strdup_printf (_("%s in place of %s"), new[0] != '\0' ? new : _("nothing"),
                               old[0] != '\0' ? old : _("nothing"));
      add_line (box, name, words);
    }
}

static void
add_changes (GtkWidget *box, SyForm *form, const SyRevision *before, SyDesk *desk)
{
  g_autoptr (SyForm) old = sy_form_new (desk, sy_form_get_method (form)->id, SY_UNITS_METRIC);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  if (!sy_form_load_document (old, before->event->facts, NULL))
    return;
  add_difference (box, old, form, before->event->revision, seen, form);
  /* What was taken away stands only in the older one. */
  add_difference (box, old, form, before->event->revision, seen, old);
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

  sy_stored_result_read (revision, &result);
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
    _("Revision %ld as it was stored: saved %s by %s (“%s”). Read only; nothing here is "
      "recalculated. %s, method edition %ld, policy %s."),
    (long) event->revision, when, event->by, event->why, event->program, (long) event->edition,
    event->policy);
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkWidget *label = sy_part_label (notice, "sy-notice");

  gtk_widget_set_name (label, "stored-notice");
  gtk_box_append (GTK_BOX (box), label);
  add_result (box, revision);
  if (sy_method_find (event->method) != NULL)
    {
      g_autoptr (SyForm) form = sy_form_new (desk, event->method, SY_UNITS_METRIC);

      if (sy_form_load_document (form, event->facts, &error))
        {
          if (before != NULL)
            add_changes (box, form, before, desk);
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
