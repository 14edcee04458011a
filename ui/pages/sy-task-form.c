/* SPDX-License-Identifier: MIT */
#include "sy-task-form.h"

#include "sy-i18n.h"
#include "sy-list-rows.h"
#include "sy-long-table.h"
#include "sy-name.h"
#include "sy-task-kinds.h"
#include "sy-task-parts.h"
#include "sy-task-section.h"
#include "sy-text-row.h"

#include <string.h>

struct _SyTaskForm
{
  GtkBox parent_instance;

  SyForm *form;
  SyField name_field;  /* the name belongs to the record, not to the method's facts; here it looks like one */
  GtkWidget *name;
  GPtrArray *sections; /* of SyTaskSection, borrowed              */
  GPtrArray *takers;   /* buttons that lead to the register, borrowed */
};

enum
{
  NAME_EDITED,
  TAKE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (SyTaskForm, sy_task_form, GTK_TYPE_BOX)

static void
name_edited_cb (SyFact *fact G_GNUC_UNUSED, SyTaskForm *self)
{
  sy_fact_set_note (SY_FACT (self->name), NULL, NULL);
  g_signal_emit (self, signals[NAME_EDITED], 0);
}

static void
take_cb (GtkButton *button, SyTaskForm *self)
{
  g_signal_emit (self, signals[TAKE], 0, g_object_get_data (G_OBJECT (button), "sy-take"));
}

static gboolean
has_path (const SyPlanRow *rows, const char *path)
{
  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS; c++)
      if (rows[r].paths[c] != NULL
          && (strcmp (rows[r].paths[c], path) == 0
              || (g_str_has_prefix (rows[r].paths[c], path) && rows[r].paths[c][strlen (path)] == '.')))
        return TRUE;
  return FALSE;
}

/* Whether the plan shows a field of the table somewhere. "had" is shown with the facts that it is about. */
static gboolean
is_planned (const SyPlanSection *sections, gsize n, const char *name)
{
  for (gsize s = 0; s < n; s++)
    {
      if (has_path (sections[s].rows, name))
        return TRUE;
      for (gsize w = 0; w < SY_PLAN_WAYS; w++)
        {
          const SyPlanWay *way = &sections[s].ways[w];

          if (has_path (way->rows, name) || (way->list != NULL && strcmp (way->list, name) == 0))
            return TRUE;
          for (gsize h = 0; h < SY_PLAN_COLUMNS; h++)
            if (way->had[h] != NULL && g_str_has_prefix (way->had[h], name)
                && way->had[h][strlen (name)] == '.')
              return TRUE;
        }
    }
  return FALSE;
}

static void
add_leaves (SyTaskForm *self, GtkWidget *box, const SyField *field, const char *path)
{
  GtkWidget *fact = sy_fact_new_for_field (field);

  if (fact != NULL)
    {
      sy_fact_bind (SY_FACT (fact), self->form, path);
      gtk_box_append (GTK_BOX (box), fact);
      return;
    }
  if (field->type == SY_MEMBER_LIST)
    {
      gtk_box_append (GTK_BOX (box), sy_part_label (sy_translate (field->label), "sy-strong"));
      gtk_box_append (GTK_BOX (box), sy_list_rows_new (self->form, path));
      return;
    }
  for (gsize i = 0; i < field->n_members; i++)
    {
      g_autofree char *member = g_strdup_printf ("%s.%s", path, field->members[i].name);

      add_leaves (self, box, &field->members[i], member);
    }
}

/* A method's facts that no section names must be reachable all the same. */
static void
add_rest (SyTaskForm *self, const SyPlanSection *sections, gsize n)
{
  const SyMethod *method = sy_form_get_method (self->form);
  GtkWidget *rest = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_add_css_class (rest, "sy-section");
  gtk_box_append (GTK_BOX (rest), sy_part_heading (_("Further facts")));
  for (gsize i = 0; i < method->n_fields; i++)
    if (!is_planned (sections, n, method->fields[i].name))
      add_leaves (self, rest, &method->fields[i], method->fields[i].name);
  if (gtk_widget_get_last_child (rest) == gtk_widget_get_first_child (rest))
    g_object_unref (g_object_ref_sink (rest));
  else
    gtk_box_append (GTK_BOX (self), rest);
}

static void
sy_task_form_dispose (GObject *object)
{
  SyTaskForm *self = SY_TASK_FORM (object);

  g_clear_object (&self->form);
  g_clear_object (&self->name);
  g_clear_pointer (&self->sections, g_ptr_array_unref);
  g_clear_pointer (&self->takers, g_ptr_array_unref);
  G_OBJECT_CLASS (sy_task_form_parent_class)->dispose (object);
}

static void
sy_task_form_class_init (SyTaskFormClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_form_dispose;
  signals[NAME_EDITED] = g_signal_new ("name-edited", SY_TYPE_TASK_FORM, G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 0);
  signals[TAKE] = g_signal_new ("take", SY_TYPE_TASK_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
}

static void
sy_task_form_init (SyTaskForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-facts");
  self->sections = g_ptr_array_new ();
  self->takers = g_ptr_array_new ();
}

/* A section that can be filled from the register has a button for it, once somebody opens the register. */
static void
add_taker (SyTaskForm *self, SyTaskSection *section, const SyPlanSection *plan)
{
  GtkWidget *button = sy_button_new (_("_Take from the register…"), NULL);
  g_autofree char *name = g_strdup_printf ("take:%s", plan->id);

  gtk_widget_set_name (button, name);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_visible (button, FALSE);
  g_object_set_data (G_OBJECT (button), "sy-take", (gpointer) plan->take);
  g_signal_connect (button, "clicked", G_CALLBACK (take_cb), self);
  sy_task_section_add_first (section, button);
  g_ptr_array_add (self->takers, button);
}

static GtkWidget *
new_form (SyForm *form, gboolean is_part)
{
  SyTaskForm *self = g_object_new (SY_TYPE_TASK_FORM, NULL);
  gsize n;
  const SyPlanSection *sections = sy_task_plan (sy_form_get_method (form), &n);

  const SyTaskKind *kind = sy_task_kind (sy_form_get_method (form));

  self->form = g_object_ref (form);
  self->name_field = (SyField) { .name = "name", .label = kind->name_label, .help = kind->name_help,
                                 .type = SY_MEMBER_TEXT, .required = true };
  self->name = sy_text_row_new (&self->name_field);
  gtk_widget_set_name (sy_fact_get_field (SY_FACT (self->name)), "name");
  g_signal_connect (self->name, "edited", G_CALLBACK (name_edited_cb), self);
  g_object_ref_sink (self->name);
  for (gsize i = 0; i < n; i++)
    {
      GtkWidget *section;

      /* Whether a part can be avoided is asked of the whole. */
      if (is_part && strcmp (sections[i].id, "avoid") == 0)
        continue;
      section = sy_task_section_new (form, &sections[i]);
      if (sections[i].has_name && !is_part)
        sy_task_section_add_first (SY_TASK_SECTION (section), self->name);
      if (sections[i].take != NULL)
        add_taker (self, SY_TASK_SECTION (section), &sections[i]);
      g_ptr_array_add (self->sections, section);
      gtk_box_append (GTK_BOX (self), section);
    }
  add_rest (self, sections, n);
  return GTK_WIDGET (self);
}

GtkWidget *
sy_task_form_new (SyForm *form)
{
  return new_form (form, FALSE);
}

GtkWidget *
sy_task_form_new_part (SyForm *form)
{
  return new_form (form, TRUE);
}

void
sy_task_form_settle (SyTaskForm *self)
{
  for (guint i = 0; i < self->sections->len; i++)
    sy_task_section_settle (g_ptr_array_index (self->sections, i));
}

void
sy_task_form_offer_register (SyTaskForm *self, gboolean offer)
{
  for (guint i = 0; i < self->takers->len; i++)
    gtk_widget_set_visible (g_ptr_array_index (self->takers, i), offer);
}

const char *
sy_task_form_get_name (SyTaskForm *self)
{
  return sy_fact_get_text (SY_FACT (self->name));
}

void
sy_task_form_set_name (SyTaskForm *self, const char *name)
{
  sy_fact_set_text (SY_FACT (self->name), name);
  sy_fact_set_note (SY_FACT (self->name), NULL, NULL);
}

void
sy_task_form_mark_name (SyTaskForm *self, const char *words)
{
  sy_fact_set_note (SY_FACT (self->name), words, NULL);
}

static GtkWidget *
find_named (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (strcmp (gtk_widget_get_name (widget), name) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_get_child_visible (child))
      found = find_named (child, name);
  return found;
}

static gboolean
focus_now (SyTaskForm *self, const char *path)
{
  GtkWidget *field = find_named (GTK_WIDGET (self), path);

  return field != NULL
         && (gtk_widget_grab_focus (field) || gtk_widget_child_focus (field, GTK_DIR_TAB_FORWARD));
}

/* A place in a long list, which has no entry: its row. */
static gboolean
focus_row (SyTaskForm *self, const char *path)
{
  g_autofree char *list = g_strndup (path, strcspn (path, "["));
  GtkWidget *rows, *table;

  if (strlen (list) == strlen (path) || sy_form_list_get_long (self->form, list) == NULL)
    return FALSE;
  rows = find_named (GTK_WIDGET (self), list);
  table = rows != NULL ? gtk_widget_get_ancestor (rows, SY_TYPE_LONG_TABLE) : NULL;
  return table != NULL
         && sy_long_table_show_item (SY_LONG_TABLE (table), (guint) g_ascii_strtoull (path + strlen (list) + 1, NULL, 10));
}

typedef struct
{
  char *path;
  guint frames; /* to wait for */
} FocusLater;

static void
focus_later_free (gpointer data)
{
  FocusLater *later = data;

  g_free (later->path);
  g_free (later);
}

static gboolean
focus_later_cb (GtkWidget *widget, GdkFrameClock *clock G_GNUC_UNUSED, gpointer data)
{
  FocusLater *later = data;
  GtkRoot *root = gtk_widget_get_root (widget);

  if (later->frames-- > 0)
    return G_SOURCE_CONTINUE;
  /* Only a change of the focus scrolls to it. */
  if (root != NULL)
    gtk_root_set_focus (root, NULL);
  focus_now (SY_TASK_FORM (widget), later->path);
  return G_SOURCE_REMOVE;
}

gboolean
sy_task_form_focus (SyTaskForm *self, const char *path)
{
  gboolean revealed = FALSE;
  gboolean found;

  /* The fact may stand in a way or a fold that is not shown now. */
  for (guint i = 0; i < self->sections->len; i++)
    revealed |= sy_task_section_reveal (g_ptr_array_index (self->sections, i), path);
  found = focus_now (self, path) || focus_row (self, path);
  /* What has just come into sight has its place only after the next layout, which follows the next tick. */
  if (revealed && found)
    {
      FocusLater *later = g_new0 (FocusLater, 1);

      later->path = g_strdup (path);
      later->frames = 1;
      gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_later_cb, later, focus_later_free);
    }
  return found;
}
