/* SPDX-License-Identifier: MIT */
#include "sy-task-section.h"

#include "sy-fact.h"
#include "sy-i18n.h"
#include "sy-list-rows.h"
#include "sy-prose-row.h"
#include "sy-set-row.h"
#include "sy-step-list.h"
#include "sy-task-parts.h"

#include <string.h>

struct _SyTaskSection
{
  GtkBox parent_instance;

  SyForm *form;
  const SyPlanSection *plan;
  GtkWidget *body;                /* what stands whatever the way */
  GtkWidget *ways;                /* GtkStack, NULL: one way or none */
  GtkWidget *radios[SY_PLAN_WAYS];
  GtkWidget *folds[SY_PLAN_WAYS]; /* how it was had, NULL where not asked */
  GtkWidget *steps[SY_PLAN_WAYS]; /* SyStepList, NULL: no list of steps */
  GHashTable *kept[SY_PLAN_WAYS]; /* path → text of ways that are not in use */
  gsize way;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (SyTaskSection, sy_task_section, GTK_TYPE_BOX)

/* Rows of facts */

static GtkWidget *
new_fact (SyTaskSection *self, const char *path, const SyPlanRow *row)
{
  const SyField *field = sy_form_find_field (self->form, path);
  GtkWidget *fact = field == NULL               ? NULL
                    : row != NULL && row->prose ? sy_prose_row_new (field)
                                                : sy_fact_new_for_field (field);

  g_return_val_if_fail (fact != NULL, NULL);
  if (row != NULL && row->checks)
    sy_set_row_make_checklist (SY_SET_ROW (fact));
  if (field->symbol == NULL && strcmp (field->label, self->plan->title) == 0)
    gtk_widget_set_visible (sy_fact_get_caption (SY_FACT (fact)), FALSE);
  sy_fact_bind (SY_FACT (fact), self->form, path);
  gtk_widget_set_hexpand (fact, TRUE);
  return fact;
}

static GtkWidget *
new_rows (SyTaskSection *self, const SyPlanRow *rows)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  for (gsize r = 0; r < SY_PLAN_ROWS && rows[r].paths[0] != NULL; r++)
    {
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
      /* A caption that needs two lines must not push its entry below the others. */
      g_autoptr (GtkSizeGroup) captions = gtk_size_group_new (GTK_SIZE_GROUP_VERTICAL);

      gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
      for (gsize c = 0; c < SY_PLAN_COLUMNS && rows[r].paths[c] != NULL; c++)
        {
          GtkWidget *fact = new_fact (self, rows[r].paths[c], &rows[r]);

          /* A lone figure is not drawn out over the whole column. */
          if (c == 0 && rows[r].paths[1] == NULL
              && sy_form_find_field (self->form, rows[r].paths[0])->type == SY_MEMBER_NUMBER)
            {
              gtk_box_set_homogeneous (GTK_BOX (row), FALSE);
              gtk_widget_set_hexpand (fact, FALSE);
              gtk_widget_set_size_request (fact, 200, -1);
            }
          gtk_size_group_add_widget (captions, sy_fact_get_caption (SY_FACT (fact)));
          gtk_box_append (GTK_BOX (row), fact);
        }
      gtk_box_append (GTK_BOX (box), row);
    }
  return box;
}

/* How it was had */

static gboolean
had_is_given (SyTaskSection *self, const char *group)
{
  const SyField *field = sy_form_find_field (self->form, group);

  for (gsize i = 0; field != NULL && i < field->n_members; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s.%s", group, field->members[i].name);

      if (sy_form_get (self->form, path)[0] != '\0')
        return TRUE;
    }
  return FALSE;
}

/* The fold's title says what is inside while it is closed. */
static void
title_fold (SyTaskSection *self, gsize way)
{
  const SyPlanWay *plan = &self->plan->ways[way];
  g_autoptr (GString) hows = g_string_new (NULL);
  g_autofree char *title = NULL;
  g_autofree char *name = NULL;
  guint given = 0;

  if (self->folds[way] == NULL)
    return;
  for (gsize h = 0; h < SY_PLAN_COLUMNS && plan->had[h] != NULL; h++)
    {
      g_autofree char *path = g_strdup_printf ("%s.how", plan->had[h]);
      g_autofree char *how = sy_form_dup_shown (self->form, path);

      given += had_is_given (self, plan->had[h]) ? 1 : 0;
      if (how[0] != '\0' && strstr (hows->str, how) == NULL)
        g_string_append_printf (hows, "%s%s", hows->len > 0 ? ", " : "", how);
    }
  if (hows->len > 0)
    title = g_strdup_printf (_("How it was had: %s"), hows->str);
  else
    title = g_strdup (given > 0 ? _("How it was had") : _("How it was had: not said"));
  gtk_expander_set_label (GTK_EXPANDER (self->folds[way]), title);
  name = g_strdup_printf (_("%s: %s"), sy_translate (self->plan->title), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->folds[way]), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
}

static GtkWidget *
new_fold (SyTaskSection *self, const SyPlanWay *way)
{
  GtkWidget *fold, *box;

  if (way->had[0] == NULL)
    return NULL;
  fold = gtk_expander_new (NULL);
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  for (gsize h = 0; h < SY_PLAN_COLUMNS && way->had[h] != NULL; h++)
    {
      const SyField *group = sy_form_find_field (self->form, way->had[h]);
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

      if (way->had[1] != NULL)
        gtk_box_append (GTK_BOX (box), sy_part_label (sy_translate (group->label), "sy-strong"));
      gtk_box_set_homogeneous (GTK_BOX (row), TRUE);
      for (gsize i = 0; i < group->n_members; i++)
        {
          g_autofree char *path = g_strdup_printf ("%s.%s", way->had[h], group->members[i].name);

          gtk_box_append (GTK_BOX (row), new_fact (self, path, NULL));
        }
      gtk_box_append (GTK_BOX (box), row);
    }
  gtk_widget_add_css_class (box, "sy-had");
  gtk_expander_set_child (GTK_EXPANDER (fold), box);
  return fold;
}

/* Ways */

typedef void (*PathFunc) (SyTaskSection *self, gsize way, const char *path, gpointer data);

static void
each_leaf (SyTaskSection *self, gsize way, const char *path, PathFunc func, gpointer data)
{
  const SyField *field = sy_form_find_field (self->form, path);

  if (field == NULL)
    return;
  if (field->n_members == 0)
    {
      func (self, way, path, data);
      return;
    }
  if (field->type == SY_MEMBER_LIST)
    {
      func (self, way, path, data);
      for (guint item = 0; item < sy_form_list_count (self->form, path); item++)
        for (gsize i = 0; i < field->n_members; i++)
          {
            g_autofree char *at
                = g_strdup_printf ("%s[%u].%s", path, item, field->members[i].name);

            func (self, way, at, data);
          }
      return;
    }
  for (gsize i = 0; i < field->n_members; i++)
    {
      g_autofree char *at = g_strdup_printf ("%s.%s", path, field->members[i].name);

      each_leaf (self, way, at, func, data);
    }
}

/* Every fact that belongs to one way, with how it was had. */
static void
each_path (SyTaskSection *self, gsize way, PathFunc func, gpointer data)
{
  const SyPlanWay *plan = &self->plan->ways[way];

  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS; c++)
      if (plan->rows[r].paths[c] != NULL)
        each_leaf (self, way, plan->rows[r].paths[c], func, data);
  if (plan->list != NULL)
    each_leaf (self, way, plan->list, func, data);
  for (gsize h = 0; h < SY_PLAN_COLUMNS; h++)
    if (plan->had[h] != NULL)
      each_leaf (self, way, plan->had[h], func, data);
}

typedef struct
{
  GPtrArray *paths, *texts;
  gsize to; /* the way that comes into use */
} Batch;

/* How a fact was had can belong to both ways and then stays. */
static gboolean
is_had_in (SyTaskSection *self, gsize way, const char *path)
{
  for (gsize h = 0; h < SY_PLAN_COLUMNS; h++)
    if (self->plan->ways[way].had[h] != NULL && g_str_has_prefix (path, self->plan->ways[way].had[h]))
      return TRUE;
  return FALSE;
}

/* What is typed in a way that is left is kept here and comes back with the way. */
static void
put_away (SyTaskSection *self, gsize way, const char *path, gpointer data)
{
  Batch *batch = data;

  if (sy_form_get (self->form, path)[0] == '\0' || is_had_in (self, batch->to, path))
    return;
  g_hash_table_insert (self->kept[way], g_strdup (path), g_strdup (sy_form_get (self->form, path)));
  g_ptr_array_add (batch->paths, g_strdup (path));
  g_ptr_array_add (batch->texts, g_strdup (""));
}

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
bring_back (SyTaskSection *self, gsize way, Batch *batch)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new ();
  GHashTableIter iter;
  gpointer path;

  g_hash_table_iter_init (&iter, self->kept[way]);
  while (g_hash_table_iter_next (&iter, &path, NULL))
    g_ptr_array_add (paths, path);
  g_ptr_array_sort (paths, compare_paths);
  for (guint i = 0; i < paths->len; i++)
    {
      path = g_ptr_array_index (paths, i);
      g_ptr_array_add (batch->paths, g_strdup (path));
      g_ptr_array_add (batch->texts, g_strdup (g_hash_table_lookup (self->kept[way], path)));
    }
  g_hash_table_remove_all (self->kept[way]);
}

static void
show_way (SyTaskSection *self, gsize way)
{
  self->way = way;
  self->loading = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->radios[way]), TRUE);
  self->loading = FALSE;
  gtk_stack_set_visible_child_name (GTK_STACK (self->ways), self->plan->ways[way].label);
}

static void
way_toggled_cb (GtkCheckButton *radio, SyTaskSection *self)
{
  Batch batch;
  gsize from = self->way, to = 0;

  if (self->loading || !gtk_check_button_get_active (radio))
    return;
  while (GTK_WIDGET (radio) != self->radios[to])
    to++;
  if (to == from)
    return;
  batch.paths = g_ptr_array_new_with_free_func (g_free);
  batch.texts = g_ptr_array_new_with_free_func (g_free);
  batch.to = to;
  each_path (self, from, put_away, &batch);
  bring_back (self, to, &batch);
  show_way (self, to);
  sy_form_set_many (self->form, (const char *const *) batch.paths->pdata,
                    (const char *const *) batch.texts->pdata, batch.paths->len);
  g_ptr_array_unref (batch.paths);
  g_ptr_array_unref (batch.texts);
}

static void
note_given (SyTaskSection *self, gsize way G_GNUC_UNUSED, const char *path, gpointer data)
{
  gboolean *given = data;

  /* How something was had may belong to two ways alike. */
  if (!g_str_has_prefix (path, "had.") && sy_form_get (self->form, path)[0] != '\0')
    *given = TRUE;
}

static gboolean
way_is_given (SyTaskSection *self, gsize way)
{
  gboolean given = FALSE;

  each_path (self, way, note_given, &given);
  return given;
}

static gboolean
rows_apply (SyTaskSection *self, const SyPlanRow *rows, gboolean *any)
{
  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS && rows[r].paths[c] != NULL; c++)
      {
        *any = TRUE;
        if (sy_form_applies (self->form, rows[r].paths[c]))
          return TRUE;
      }
  return FALSE;
}

/* A section is there while one of its facts is asked for. */
static gboolean
section_applies (SyTaskSection *self)
{
  gboolean any = FALSE, applies = rows_apply (self, self->plan->rows, &any);

  for (gsize w = 0; w < SY_PLAN_WAYS && !applies; w++)
    {
      const SyPlanWay *way = &self->plan->ways[w];

      any |= way->list != NULL;
      applies = rows_apply (self, way->rows, &any) || (way->list != NULL && sy_form_applies (self->form, way->list));
    }
  return applies || !any;
}

/* What was loaded or undone may be given another way than is shown. */
static void
follow_form (SyTaskSection *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), section_applies (self));
  for (gsize w = 0; w < SY_PLAN_WAYS; w++)
    title_fold (self, w);
  if (self->ways == NULL || way_is_given (self, self->way))
    return;
  for (gsize w = 0; w < SY_PLAN_WAYS && self->radios[w] != NULL; w++)
    if (way_is_given (self, w))
      {
        show_way (self, w);
        return;
      }
}

static void
form_changed_cb (SyForm *form G_GNUC_UNUSED, SyTaskSection *self)
{
  follow_form (self);
}

static GtkWidget *
new_way (SyTaskSection *self, gsize w)
{
  const SyPlanWay *way = &self->plan->ways[w];
  GtkWidget *box = new_rows (self, way->rows);

  if (way->list != NULL && sy_step_list_suits (self->form, way->list))
    {
      self->steps[w] = sy_step_list_new (self->form, way->list);
      gtk_box_append (GTK_BOX (box), self->steps[w]);
    }
  else if (way->list != NULL)
    gtk_box_append (GTK_BOX (box), sy_list_rows_new (self->form, way->list));
  self->folds[w] = new_fold (self, way);
  if (self->folds[w] != NULL)
    gtk_box_append (GTK_BOX (box), self->folds[w]);
  return box;
}

static void
add_ways (SyTaskSection *self)
{
  GtkWidget *choice;

  if (self->plan->ways[0].label == NULL)
    {
      gtk_box_append (GTK_BOX (self), new_way (self, 0));
      return;
    }
  choice = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_HORIZONTAL, "spacing", 18,
                         "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  sy_translate (self->plan->title), -1);
  self->ways = gtk_stack_new ();
  gtk_stack_set_vhomogeneous (GTK_STACK (self->ways), FALSE);
  for (gsize w = 0; w < SY_PLAN_WAYS && self->plan->ways[w].label != NULL; w++)
    {
      const char *label = self->plan->ways[w].label;
      g_autofree char *name = g_strdup_printf ("way:%s:%" G_GSIZE_FORMAT, self->plan->id, w);

      self->radios[w] = sy_part_radio (sy_translate (label));
      gtk_widget_set_name (self->radios[w], name);
      if (w > 0)
        gtk_check_button_set_group (GTK_CHECK_BUTTON (self->radios[w]),
                                    GTK_CHECK_BUTTON (self->radios[0]));
      else
        gtk_check_button_set_active (GTK_CHECK_BUTTON (self->radios[w]), TRUE);
      g_signal_connect (self->radios[w], "toggled", G_CALLBACK (way_toggled_cb), self);
      gtk_box_append (GTK_BOX (choice), self->radios[w]);
      gtk_stack_add_named (GTK_STACK (self->ways), new_way (self, w), label);
      self->kept[w] = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
    }
  gtk_box_append (GTK_BOX (self), choice);
  gtk_box_append (GTK_BOX (self), self->ways);
}

static void
sy_task_section_dispose (GObject *object)
{
  SyTaskSection *self = SY_TASK_SECTION (object);

  g_clear_object (&self->form);
  for (gsize w = 0; w < SY_PLAN_WAYS; w++)
    g_clear_pointer (&self->kept[w], g_hash_table_unref);
  G_OBJECT_CLASS (sy_task_section_parent_class)->dispose (object);
}

static void
sy_task_section_class_init (SyTaskSectionClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sy_task_section_dispose;
}

static void
sy_task_section_init (SyTaskSection *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "sy-section");
}

GtkWidget *
sy_task_section_new (SyForm *form, const SyPlanSection *plan)
{
  SyTaskSection *self = g_object_new (SY_TYPE_TASK_SECTION, NULL);

  self->form = g_object_ref (form);
  self->plan = plan;
  gtk_box_append (GTK_BOX (self), sy_part_heading (sy_translate (plan->title)));
  if (plan->help != NULL)
    gtk_box_append (GTK_BOX (self), sy_part_label (sy_translate (plan->help), "sy-note"));
  self->body = new_rows (self, plan->rows);
  gtk_box_append (GTK_BOX (self), self->body);
  add_ways (self);
  g_signal_connect_object (form, "changed", G_CALLBACK (form_changed_cb), self, 0);
  follow_form (self);
  return GTK_WIDGET (self);
}

/* Where none of the ways is given and one stands for that, it is shown. */
void
sy_task_section_settle (SyTaskSection *self)
{
  for (gsize w = 0; w < SY_PLAN_WAYS && self->ways != NULL; w++)
    if (way_is_given (self, w))
      return;
  for (gsize w = 0; w < SY_PLAN_WAYS && self->ways != NULL && self->radios[w] != NULL; w++)
    if (self->plan->ways[w].rows[0].paths[0] == NULL && self->plan->ways[w].list == NULL)
      show_way (self, w);
}

void
sy_task_section_add_first (SyTaskSection *self, GtkWidget *widget)
{
  gtk_box_prepend (GTK_BOX (self->body), widget);
}

static gboolean
rows_have (const SyPlanRow *rows, const char *path)
{
  for (gsize r = 0; r < SY_PLAN_ROWS; r++)
    for (gsize c = 0; c < SY_PLAN_COLUMNS; c++)
      if (g_strcmp0 (rows[r].paths[c], path) == 0)
        return TRUE;
  return FALSE;
}

gboolean
sy_task_section_reveal (SyTaskSection *self, const char *path)
{
  gboolean revealed = FALSE;

  for (gsize w = 0; w < SY_PLAN_WAYS; w++)
    {
      const SyPlanWay *way = &self->plan->ways[w];
      gboolean in_list = way->list != NULL && g_str_has_prefix (path, way->list);
      gboolean had = FALSE;

      for (gsize h = 0; h < SY_PLAN_COLUMNS; h++)
        had |= way->had[h] != NULL && g_str_has_prefix (path, way->had[h]);
      if (had && self->folds[w] != NULL && !gtk_expander_get_expanded (GTK_EXPANDER (self->folds[w])))
        {
          gtk_expander_set_expanded (GTK_EXPANDER (self->folds[w]), TRUE);
          revealed = TRUE;
        }
      if ((rows_have (way->rows, path) || in_list) && self->radios[w] != NULL && w != self->way
          && !way_is_given (self, self->way))
        {
          show_way (self, w);
          revealed = TRUE;
        }
      if (in_list && self->steps[w] != NULL)
        revealed |= sy_step_list_reveal (SY_STEP_LIST (self->steps[w]), path);
    }
  return revealed;
}
