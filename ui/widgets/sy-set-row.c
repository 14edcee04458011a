/* SPDX-License-Identifier: MIT */
#include "sy-set-row.h"

#include "sy-i18n.h"

#include <string.h>

struct _SySetRow
{
  GtkBox parent_instance;

  const SyField *field;
  SyFactFrame frame;
  GtkWidget *group; /* holds the checks */
  GtkWidget *none;
  GPtrArray *checks; /* one a choice, borrowed */
  char *text;
  gboolean loading;
  gboolean checklist;
};

static void sy_set_row_fact_init (SyFactInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SySetRow, sy_set_row, GTK_TYPE_BOX,
                               G_IMPLEMENT_INTERFACE (SY_TYPE_FACT, sy_set_row_fact_init))

static void
read_checks (SySetRow *row)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < row->checks->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (row->checks, i)))
      {
        if (text->len > 0)
          g_string_append_c (text, ' ');
        g_string_append (text, row->field->choices[i].id);
      }
  if (text->len == 0 && gtk_check_button_get_active (GTK_CHECK_BUTTON (row->none)))
    g_string_append_c (text, '-');
  g_free (row->text);
  row->text = g_string_free (text, FALSE);
}

static void
toggled_cb (GtkCheckButton *check, SySetRow *row)
{
  if (row->loading)
    return;
  row->loading = TRUE;
  if (gtk_check_button_get_active (check))
    {
      if (GTK_WIDGET (check) == row->none)
        for (guint i = 0; i < row->checks->len; i++)
          gtk_check_button_set_active (g_ptr_array_index (row->checks, i), FALSE);
      else
        gtk_check_button_set_active (GTK_CHECK_BUTTON (row->none), FALSE);
    }
  row->loading = FALSE;
  read_checks (row);
  sy_fact_edited (SY_FACT (row));
}

static const char *
get_text (SyFact *fact)
{
  return SY_SET_ROW (fact)->text;
}

static void
set_text (SyFact *fact, const char *text)
{
  SySetRow *row = SY_SET_ROW (fact);
  g_auto (GStrv) ids = g_strsplit (text, " ", -1);

  row->loading = TRUE;
  for (guint i = 0; i < row->checks->len; i++)
    gtk_check_button_set_active (g_ptr_array_index (row->checks, i),
                                 g_strv_contains ((const char *const *) ids, row->field->choices[i].id));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->none), strcmp (text, "-") == 0);
  row->loading = FALSE;
  g_free (row->text);
  row->text = g_strdup (text);
}

/* How many are open: they stand above, unticked. */
static char *
dup_open (SySetRow *row)
{
  guint open = 0;

  for (guint i = 0; i < row->checks->len; i++)
    open += gtk_check_button_get_active (g_ptr_array_index (row->checks, i)) ? 0 : 1;
  if (open == 0)
    return g_strdup (_("Everything is checked."));
  if (open == row->checks->len)
    return g_strdup (_("Nothing is checked yet."));
  return g_strdup_printf (P_("%u check is still open.", "%u checks are still open.", open), open);
}

static void
set_note (SyFact *fact, const char *words, const char *aid)
{
  SySetRow *row = SY_SET_ROW (fact);
  g_autofree char *open = row->checklist ? dup_open (row) : NULL;

  if (aid == NULL && open != NULL)
    aid = open;
  else if (aid == NULL && row->text[0] == '\0')
    aid = _("Not asked yet: the record stays incomplete.");
  sy_fact_frame_note (&row->frame, row->group, words, aid);
  gtk_widget_set_visible (row->frame.note, words != NULL || aid != NULL);
}

static void
set_name (SyFact *fact, const char *name, SyUnits units G_GNUC_UNUSED)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (SY_SET_ROW (fact)->group),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
get_field (SyFact *fact)
{
  return SY_SET_ROW (fact)->group;
}

static void
sy_set_row_fact_init (SyFactInterface *iface)
{
  iface->get_text = get_text;
  iface->set_text = set_text;
  iface->set_note = set_note;
  iface->set_name = set_name;
  iface->get_field = get_field;
}

static void
sy_set_row_finalize (GObject *object)
{
  SySetRow *row = SY_SET_ROW (object);

  g_free (row->text);
  g_ptr_array_unref (row->checks);
  G_OBJECT_CLASS (sy_set_row_parent_class)->finalize (object);
}

static void
sy_set_row_class_init (SySetRowClass *class)
{
  G_OBJECT_CLASS (class)->finalize = sy_set_row_finalize;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "sy-set");
}

static void
sy_set_row_init (SySetRow *row)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (row), GTK_ORIENTATION_VERTICAL);
  row->text = g_strdup ("");
  row->checks = g_ptr_array_new ();
}

/* A check whose words may take two lines. */
static GtkWidget *
new_check (SySetRow *row, const char *words)
{
  GtkWidget *check = gtk_check_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *label = gtk_label_new (words), *why = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_NONE);
  gtk_label_set_wrap (GTK_LABEL (why), TRUE);
  gtk_label_set_xalign (GTK_LABEL (why), 0);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (why), GTK_NATURAL_WRAP_NONE);
  gtk_widget_add_css_class (why, "sy-note");
  gtk_widget_set_visible (why, FALSE);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), why);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (check), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_add_css_class (check, "sy-check");
  g_signal_connect (check, "toggled", G_CALLBACK (toggled_cb), row);
  return check;
}

GtkWidget *
sy_set_row_new (const SyField *field)
{
  SySetRow *row = g_object_new (SY_TYPE_SET_ROW, NULL);

  row->field = field;
  sy_fact_frame_begin (&row->frame, GTK_BOX (row), field);
  row->group = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role",
                             GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  row->none = new_check (row, _("Asked: none of these applies"));
  gtk_widget_add_css_class (row->none, "sy-none");
  gtk_box_append (GTK_BOX (row->group), row->none);
  for (gsize i = 0; i < field->n_choices; i++)
    {
      GtkWidget *check = new_check (row, sy_translate (field->choices[i].label));

      g_ptr_array_add (row->checks, check);
      gtk_box_append (GTK_BOX (row->group), check);
    }
  gtk_box_append (GTK_BOX (row), row->group);
  sy_fact_frame_end (&row->frame, GTK_BOX (row));
  set_name (SY_FACT (row), sy_translate (field->label), SY_UNITS_METRIC);
  set_note (SY_FACT (row), NULL, NULL);
  return GTK_WIDGET (row);
}

void
sy_set_row_make_checklist (SySetRow *row)
{
  row->checklist = TRUE;
  gtk_widget_set_visible (row->none, FALSE);
  set_note (SY_FACT (row), NULL, NULL);
}

/* The words of why, under those of the choice. */
static GtkWidget *
why_of (GtkWidget *check)
{
  return gtk_widget_get_last_child (gtk_check_button_get_child (GTK_CHECK_BUTTON (check)));
}

static void
say_why (GtkWidget *check, const char *words)
{
  if (strcmp (gtk_label_get_text (GTK_LABEL (why_of (check))), words != NULL ? words : "") == 0)
    return;
  gtk_label_set_text (GTK_LABEL (why_of (check)), words != NULL ? words : "");
  gtk_widget_set_visible (why_of (check), words != NULL);
  if (words != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

void
sy_set_row_ask (SySetRow *row, const char *const *words)
{
  GtkWidget *last = row->none;

  for (int asked = 1; asked >= 0; asked--)
    for (guint i = 0; i < row->checks->len; i++)
      {
        GtkWidget *check = g_ptr_array_index (row->checks, i);
        const char *why = words != NULL ? words[i] : NULL;

        if ((why != NULL) != asked)
          continue;
        say_why (check, why);
        /* Only what stands elsewhere is moved: the keyboard may be on it. */
        if (gtk_widget_get_prev_sibling (check) != last)
          gtk_box_reorder_child_after (GTK_BOX (row->group), check, last);
        last = check;
      }
}

GtkWidget *
sy_set_row_get_check (SySetRow *row, const char *id)
{
  if (strcmp (id, "-") == 0)
    return row->none;
  for (gsize i = 0; i < row->field->n_choices; i++)
    if (strcmp (row->field->choices[i].id, id) == 0)
      return g_ptr_array_index (row->checks, i);
  return NULL;
}
