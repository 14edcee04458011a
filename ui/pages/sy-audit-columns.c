/* SPDX-License-Identifier: MIT */
#include "sy-audit-columns.h"

#include <math.h>
#include <string.h>

#include "sy-audit-list.h"
#include "sy-audit-words.h"
#include "sy-i18n.h"
#include "sy-scroll.h"
#include "sy-view.h"

#define NONE "–"
#define SHAPE_SIZE 16

typedef enum
{
  BY_KIND,
  BY_NAME,
  BY_PLACE,
  BY_VERDICT,
  BY_INDEX,
  BY_MADE,
  BY_SIGNED,
  BY_REVIEW,
  BY_OPEN,
  BY_TOLD,
  BY_GAPS,
} Column;

/* Topics: words */

static char *
or_none (const char *text)
{
  return g_strdup (*text != '\0' ? text : NONE);
}

static const char *
kind_words (const char *item_kind)
{
  if (strcmp (item_kind, SY_ITEM_DIE) == 0)
    return C_ ("kind of item", "Die");
  if (strcmp (item_kind, SY_ITEM_GEAR) == 0)
    return C_ ("kind of item", "Gear");
  if (strcmp (item_kind, SY_ITEM_CHANGEOVER) == 0)
    return C_ ("kind of item", "Change");
  return strcmp (item_kind, SY_ITEM_CASE) == 0 ? C_ ("kind of item", "Case") : C_ ("kind of item", "Task");
}

static char *
index_words (const SyTask *task)
{
  const gboolean is_part = strcmp (task->index_symbol, "utilisation") == 0;

  if (isnan (task->index))
    return g_strdup (NONE);
  if (isinf (task->index))
    return g_strdup (is_part ? _("none left") : _("no limit"));
  if (is_part)
    return sy_words_against (task->index * 100, 100, SY_KIND_PERCENT, SY_UNITS_METRIC);
  return sy_words_number (task->index, 2);
}

static char *
signed_words (const SyTask *task)
{
  if (task->signed_revision == 0)
    return g_strdup (_("Not signed off"));
  if (task->signed_revision != task->revision)
    /* Translators: only an earlier revision was signed off; its number, by whom. */
    return g_strdup_printf (_("Only revision %" G_GINT64_FORMAT " · %s"), task->signed_revision, task->signed_by);
  if (task->signed_own)
    /* Translators: who signed off, having made the revision. */
    return g_strdup_printf (_("Own signature · %s"), task->signed_by);
  return g_strdup (task->signed_by);
}

/* Every gap by which it is not assessed, one after another; that it is not signed off has a column of its own. */
static char *
gap_words (const SyAuditRow *row)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < SY_N_AUDIT_GAPS; i++)
    if (row->gaps & SY_AUDIT_NOT_ASSESSED & (1u << i))
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", sy_translate (sy_audit_gap_words ((SyAuditGap) (1u << i))));
  return g_string_free (out, FALSE);
}

/* New string. */
static char *
words_of (const SyAuditRow *row, Column column)
{
  const SyTask *task = row->task;

  switch (column)
    {
    case BY_KIND:
      return g_strdup (kind_words (task->item_kind));
    case BY_NAME:
      return g_strdup (task->name);
    case BY_PLACE:
      return or_none (task->place);
    case BY_VERDICT:
      return g_strdup (sy_translate (sy_verdict_title_for (sy_method_find (task->method), task->verdict)));
    case BY_INDEX:
      return index_words (task);
    case BY_MADE:
      /* Translators: number of a revision, and who made it. */
      return g_strdup_printf (C_ ("revision", "%" G_GINT64_FORMAT " · %s"), task->revision, task->by);
    case BY_SIGNED:
      return signed_words (task);
    case BY_REVIEW:
      /* Translators: the day of a review, which is past. */
      return row->review_overdue ? g_strdup_printf (_("%s · overdue"), task->review_due) : or_none (task->review_due);
    case BY_OPEN:
      return g_strdup_printf ("%" G_GINT64_FORMAT, task->n_open);
    case BY_TOLD:
      return g_strdup (task->told_revision == task->revision ? C_ ("told", "Yes")
                       : task->told_revision > 0             ? C_ ("told", "Before")
                                                             : C_ ("told", "No"));
    case BY_GAPS:
      return gap_words (row);
    }
  g_return_val_if_reached (NULL);
}

/* What the cell says in full: the words of the printed register. New string; NULL: what it shows. */
static char *
explained (const SyAuditRow *row, Column column)
{
  g_autofree char *first = NULL, *second = NULL;

  switch (column)
    {
    case BY_VERDICT:
    case BY_INDEX:
      first = sy_audit_verdict_words (row, sy_translate);
      second = sy_audit_basis_words (row, sy_translate);
      return g_strdup_printf ("%s\n%s", first, second);
    case BY_MADE:
      return sy_audit_made_words (row, sy_translate);
    case BY_SIGNED:
      return sy_audit_signed_words (row, sy_translate);
    case BY_REVIEW:
    case BY_OPEN:
    case BY_TOLD:
      return sy_audit_due_words (row, sy_translate);
    case BY_GAPS:
      first = sy_audit_missing_words (row, sy_translate);
      return *first != '\0' ? g_steal_pointer (&first) : NULL;
    case BY_KIND:
    case BY_NAME:
    case BY_PLACE:
      return NULL;
    }
  return NULL;
}

/* A row is read by these. */
static char *
row_words (const SyAuditRow *row)
{
  g_autofree char *verdict = sy_audit_verdict_words (row, sy_translate), *signature = signed_words (row->task);
  g_autofree char *gaps = gap_words (row);

  if (row->gaps & SY_AUDIT_NOT_ASSESSED)
    /* Translators: name of an item, its verdict, who signed it off, and why it is not assessed. */
    return g_strdup_printf (_("%s: %s; %s; %s"), row->task->name, verdict, signature, gaps);
  /* Translators: name of an item, its verdict, who signed it off. */
  return g_strdup_printf (_("%s: %s; %s"), row->task->name, verdict, signature);
}

/* Topics: cells */

static GtkWidget *
new_text (Column column)
{
  GtkWidget *text = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (text), column == BY_INDEX || column == BY_OPEN ? 1.0F : 0.0F);
  gtk_inscription_set_yalign (GTK_INSCRIPTION (text), 0);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (text), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (text), 3);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (text), 6);
  gtk_widget_set_hexpand (text, TRUE);
  if (column == BY_INDEX || column == BY_OPEN || column == BY_REVIEW || column == BY_MADE)
    gtk_widget_add_css_class (text, "sy-figures");
  if (column == BY_KIND || column == BY_PLACE)
    gtk_widget_add_css_class (text, "sy-quiet");
  return text;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  GtkWidget *child = new_text ((Column) GPOINTER_TO_INT (column));

  (void) factory;
  if (GPOINTER_TO_INT (column) == BY_VERDICT)
    {
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

      gtk_box_append (GTK_BOX (box), sy_shape_new (SY_VERDICT_INCOMPLETE, SHAPE_SIZE));
      gtk_box_append (GTK_BOX (box), child);
      child = box;
    }
  gtk_list_item_set_child (item, child);
}

static gboolean
is_strong (const SyAuditRow *row, Column column)
{
  return (column == BY_GAPS && (row->gaps & SY_AUDIT_NOT_ASSESSED) != 0) || (column == BY_REVIEW && row->review_overdue)
         || (column == BY_OPEN && row->action_overdue);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer column)
{
  const SyAuditRow *row = sy_audit_item_get_row (gtk_list_item_get_item (item));
  const Column which = (Column) GPOINTER_TO_INT (column);
  GtkWidget *child = gtk_list_item_get_child (item), *text = child;
  g_autofree char *words = words_of (row, which), *full = explained (row, which), *all = NULL;

  (void) factory;
  if (which == BY_VERDICT)
    {
      text = gtk_widget_get_last_child (child);
      sy_shape_set (gtk_widget_get_first_child (child), row->task->verdict);
      all = row_words (row);
    }
  gtk_inscription_set_text (GTK_INSCRIPTION (text), words);
  if (is_strong (row, which))
    gtk_widget_add_css_class (text, "sy-strong");
  else
    gtk_widget_remove_css_class (text, "sy-strong");
  gtk_widget_set_tooltip_text (child, full != NULL ? full : *words != '\0' ? words : NULL);
  sy_name_row_of (child, all, *words != '\0' ? words : NONE);
}

void
sy_audit_columns_add (GtkColumnView *view)
{
  const struct
  {
    Column column;
    const char *title, *tooltip;
    int width;        /* px                          */
    gboolean expands; /* takes a part of what is left */
  } columns[] = {
    { BY_KIND, _("Kind"), _("Task, die change, case for an aid, die or gear"), 62, FALSE },
    { BY_NAME, _("Name"), _("Name in the record on that day"), 138, TRUE },
    { BY_VERDICT, _("Verdict"), _("What the revision in force says, under the policy it was judged by"), 150, FALSE },
    { BY_INDEX, _("Index"), _("The load against what may be carried: lifting index, or utilisation"), 72, FALSE },
    { BY_GAPS, _("Not assessed"), _("Why it is not assessed, or no longer"), 130, TRUE },
    { BY_SIGNED, _("Signed off"), _("By whom; an own signature is the signer's of what the signer made"), 116, FALSE },
    { BY_MADE, _("Revision"), _("The one in force, and who made it"), 66, FALSE },
    { BY_REVIEW, _("Review due"), _("When the assessment is to be looked at again"), 158, FALSE },
    { BY_OPEN, _("Open"), _("Open actions"), 48, FALSE },
    { BY_TOLD, _("Told"), _("Whether workers were told mass and heaviest side of the revision in force"), 48, FALSE },
    { BY_PLACE, _("Place"), _("Where it is done or kept"), 60, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      gpointer which = GINT_TO_POINTER ((int) columns[i].column);
      g_autoptr (GtkColumnViewColumn) column = NULL;
      GtkWidget *heading;

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), which);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), which);
      column = gtk_column_view_column_new (columns[i].title, factory);
      gtk_column_view_column_set_resizable (column, TRUE);
      gtk_column_view_column_set_fixed_width (column, columns[i].width);
      gtk_column_view_column_set_expand (column, columns[i].expands);
      gtk_column_view_append_column (view, column);
      heading = sy_column_heading (view, i);
      if (heading != NULL)
        gtk_widget_set_tooltip_text (heading, columns[i].tooltip);
      if (columns[i].column == BY_INDEX || columns[i].column == BY_OPEN)
        sy_align_heading_end (view, i);
    }
}
