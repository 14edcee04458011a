/* SPDX-License-Identifier: MIT */
#include "sy-difference-table.h"

#include "sy-difference-words.h"
#include "sy-i18n.h"
#include "sy-task-parts.h"
#include "sy-words.h"

#include <string.h>

/* Topics: values as a reader sees them */

/* Stored to the last bit; read with four decimals, unless two values would then look the same. */
static char *
result_text (const SyMethod *method, const SyDifference *difference, const char *value)
{
  SyVerdict verdict;
  char *end;
  double number;
  g_autofree char *rounded = NULL, *other = NULL;

  if (strcmp (difference->path, "verdict") == 0 && sy_verdict_from_id (value, &verdict))
    return g_strdup (sy_translate (sy_verdict_title_for (method, verdict)));
  if (strcmp (value, "unbounded") == 0)
    return g_strdup (_("no limit holds"));
  number = g_ascii_strtod (value, &end);
  if (end == value || *end != '\0')
    return g_strdup (value);
  rounded = sy_words_number (number, 4);
  if (difference->before != NULL && difference->after != NULL)
    {
      other = sy_words_number (g_ascii_strtod (value == difference->before ? difference->after : difference->before, NULL), 4);
      if (strcmp (rounded, other) == 0)
        return g_strdup (value);
    }
  return g_steal_pointer (&rounded);
}

static char *
value_text (const SyMethod *method, const SyDifference *difference, const char *value, const char *none)
{
  g_autofree char *shown = NULL;

  if (value == NULL)
    return g_strdup (none);
  shown = difference->part == SY_PART_FACTS    ? sy_difference_fact_words (method, difference, value, sy_translate)
          : difference->part == SY_PART_RESULT ? result_text (method, difference, value)
                                               : g_strdup (value);
  if (difference->unit[0] == '\0' || strcmp (value, "unbounded") == 0)
    return g_steal_pointer (&shown);
  return g_strdup_printf ("%s %s", shown, difference->unit);
}

/* Topics: the table */

typedef struct
{
  GtkWidget *box;
  const SyMethod *method;
} Table;

static GtkWidget *
new_cell (const char *text, GtkAccessibleRole role, const char *css_class)
{
  GtkWidget *cell = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "label", text, "xalign", 0.0, "wrap", TRUE,
                                  "wrap-mode", PANGO_WRAP_WORD_CHAR, "valign", GTK_ALIGN_START, NULL);

  if (css_class != NULL)
    gtk_widget_add_css_class (cell, css_class);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  return cell;
}

static void
add_row (Table *table, const char *name, const char *before, const char *after, gboolean is_heading)
{
  const GtkAccessibleRole role = is_heading ? GTK_ACCESSIBLE_ROLE_COLUMN_HEADER : GTK_ACCESSIBLE_ROLE_CELL;
  const char *look = is_heading ? "sy-quiet" : "sy-figures";
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_ROW, "spacing", 12, "homogeneous",
                                 TRUE, NULL);
  /* Translators: a row of a table read out: what, its value before, its value after. */
  g_autofree char *words = g_strdup_printf (_("%s: %s; now %s"), name, before, after);

  if (!is_heading)
    gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_box_append (GTK_BOX (row), new_cell (name, role, is_heading ? look : NULL));
  gtk_box_append (GTK_BOX (row), new_cell (before, role, look));
  gtk_box_append (GTK_BOX (row), new_cell (after, role, look));
  gtk_widget_add_css_class (row, "sy-row");
  gtk_box_append (GTK_BOX (table->box), row);
}

static void
add_part (Table *table, GPtrArray *differences, SyDifferencePart part, const char *title)
{
  gboolean begun = FALSE;

  for (guint i = 0; i < differences->len; i++)
    {
      const SyDifference *difference = differences->pdata[i];
      g_autofree char *name = NULL, *before = NULL, *after = NULL;

      if (difference->part != part)
        continue;
      if (!begun)
        gtk_box_append (GTK_BOX (table->box), sy_part_label (title, "sy-strong"));
      begun = TRUE;
      name = sy_difference_name_words (difference, sy_translate);
      before = value_text (table->method, difference, difference->before, _("not there"));
      after = value_text (table->method, difference, difference->after, _("gone"));
      add_row (table, name, before, after, FALSE);
    }
}

static GtkWidget *
new_table (const SyEvent *before, const SyEvent *after, gboolean judged)
{
  g_autoptr (GPtrArray) differences = sy_difference_of (before, after);
  Table table = { .method = sy_method_find (after->method) };
  g_autofree char *old = g_strdup_printf (_("Revision %ld"), (long) before->revision);
  g_autofree char *new = g_strdup_printf (_("Revision %ld"), (long) after->revision);

  table.box = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_TABLE, "orientation",
                            GTK_ORIENTATION_VERTICAL, "spacing", 3, NULL);
  gtk_widget_set_name (table.box, "differences");
  gtk_accessible_update_property (GTK_ACCESSIBLE (table.box), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  judged ? _("What judging again changes") : _("Differences"), -1);
  if (differences->len == 0)
    gtk_box_append (GTK_BOX (table.box),
                    sy_part_label (judged ? _("No difference: the same facts give the same result today.")
                                          : _("No difference in facts, result or basis."),
                                   NULL));
  else
    add_row (&table, _("What"), judged ? _("As stored") : old, judged ? _("Judged today") : new, TRUE);
  if (judged)
    add_part (&table, differences, SY_PART_BASIS, _("Basis"));
  add_part (&table, differences, SY_PART_FACTS, _("Facts"));
  add_part (&table, differences, SY_PART_RESULT, _("Result"));
  if (!judged)
    add_part (&table, differences, SY_PART_BASIS, _("Basis"));
  return table.box;
}

GtkWidget *
sy_difference_table_new (const SyEvent *before, const SyEvent *after)
{
  return new_table (before, after, FALSE);
}

GtkWidget *
sy_difference_table_new_judged (const SyEvent *stored, const SyEvent *judged)
{
  return new_table (stored, judged, TRUE);
}
