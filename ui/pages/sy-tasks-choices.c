/* SPDX-License-Identifier: MIT */
#include "sy-tasks-choices.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-tasks-narrow.h"

enum
{
  ONLY_OPEN,
  ONLY_NOT_SIGNED,
  ALSO_RETIRED,
  N_CHECKS
};

struct _SyTasksChoices
{
  GtkWidget parent_instance;
  SyTaskList *list;
  const SyRegisterPage *page;
  SyTaskChoice choice;
  GtkWidget *narrow[SY_N_NARROWS]; /* NULL: the page has no such */
  GtkWidget *check[N_CHECKS];
  GtkWidget *more, *popover;
  guint reading;    /* idle in which the keys in the bar are read */
  gboolean several; /* is being set: told once, afterwards        */
};

G_DEFINE_FINAL_TYPE (SyTasksChoices, sy_tasks_choices, GTK_TYPE_WIDGET)

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* Topics: what is chosen */

/* How much is on under "More". */
static guint
count_more (SyTasksChoices *self)
{
  guint n = 0;

  for (gsize i = 0; i < self->page->n_more; i++)
    n += sy_key_choice_get (SY_KEY_CHOICE (self->narrow[self->page->more[i]])) != NULL;
  for (int i = 0; i < N_CHECKS; i++)
    n += (guint) gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check[i]));
  return n;
}

static void
update (SyTasksChoices *self)
{
  guint n = count_more (self);
  g_autofree char *label = NULL, *name = NULL;

  for (int i = 0; i < SY_N_NARROWS; i++)
    if (self->narrow[i] != NULL)
      sy_tasks_narrow_choose ((SyNarrow) i, sy_key_choice_get (SY_KEY_CHOICE (self->narrow[i])), &self->choice);
  self->choice.open = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check[ONLY_OPEN]));
  self->choice.not_signed = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check[ONLY_NOT_SIGNED]));
  self->choice.retired = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->check[ALSO_RETIRED]));

  /* Translators: a button; how many of the choices behind it are on. */
  label = n > 0 ? g_strdup_printf (_("More (%u)"), n) : g_strdup (_("More"));
  name = n > 0 ? g_strdup_printf (P_ ("More choices, %u on", "More choices, %u on", n), n) : g_strdup (_("More choices"));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->more), label);
  sy_name (self->more, name);
}

static void
chosen (SyTasksChoices *self)
{
  if (self->several)
    return;
  update (self);
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
key_chosen_cb (SyKeyChoice *choice, SyTasksChoices *self)
{
  (void) choice;
  chosen (self);
}

static void
toggled_cb (GtkCheckButton *button, SyTasksChoices *self)
{
  (void) button;
  chosen (self);
}

static void
clear_cb (GtkButton *button, SyTasksChoices *self)
{
  (void) button;
  sy_tasks_choices_clear (self);
}

/* Topics: what can be chosen */

static void
read_keys (SyTasksChoices *self, SyNarrow narrow)
{
  if (sy_tasks_narrow_is_read (narrow))
    sy_tasks_narrow_read (self->narrow[narrow], narrow, G_LIST_MODEL (self->list), self->choice.item_kind);
}

static gboolean
read_cb (gpointer user_data)
{
  SyTasksChoices *self = user_data;

  self->reading = 0;
  read_keys (self, self->page->narrow);
  /* One that is no longer there is no longer chosen. */
  for (gsize i = 0; i < self->page->n_more; i++)
    if (sy_key_choice_get (SY_KEY_CHOICE (self->narrow[self->page->more[i]])) != NULL)
      read_keys (self, self->page->more[i]);
  return G_SOURCE_REMOVE;
}

static void
list_changed_cb (GListModel *model, guint position, guint removed, guint added, SyTasksChoices *self)
{
  (void) model, (void) position, (void) removed, (void) added;
  /* Once, however many rows are announced one after the other. */
  if (self->reading == 0)
    self->reading = g_idle_add_full (G_PRIORITY_LOW, read_cb, self, NULL);
}

/* What is behind the button is read when it is pressed. */
static void
opened_cb (GtkWidget *popover, SyTasksChoices *self)
{
  (void) popover;
  for (gsize i = 0; i < self->page->n_more; i++)
    read_keys (self, self->page->more[i]);
}

/* Topics: building */

static void
add_narrow (SyTasksChoices *self, SyNarrow narrow)
{
  self->narrow[narrow] = sy_tasks_narrow_new (narrow);
  gtk_widget_set_valign (self->narrow[narrow], GTK_ALIGN_CENTER);
  g_signal_connect_object (self->narrow[narrow], "chosen", G_CALLBACK (key_chosen_cb), self, 0);
}

static void
build_more (SyTasksChoices *self)
{
  static const struct
  {
    const char *name, *label;
  } checks[N_CHECKS] = {
    [ONLY_OPEN] = { "only-open", N_ ("Only with open _actions") },
    [ONLY_NOT_SIGNED] = { "only-not-signed", N_ ("Only _not signed off as it stands") },
    [ALSO_RETIRED] = { "also-retired", N_ ("Also what is _retired") },
  };
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *clear = sy_button_new (_("_Clear all choices"), NULL);
  int line = 0;

  gtk_grid_set_row_spacing (GTK_GRID (grid), 9);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_widget_set_margin_start (grid, 6);
  gtk_widget_set_margin_end (grid, 6);
  gtk_widget_set_margin_top (grid, 6);
  gtk_widget_set_margin_bottom (grid, 6);
  for (gsize i = 0; i < self->page->n_more; i++, line++)
    {
      GtkWidget *title = gtk_label_new (sy_tasks_narrow_title (self->page->more[i]));

      add_narrow (self, self->page->more[i]);
      gtk_label_set_xalign (GTK_LABEL (title), 0);
      gtk_grid_attach (GTK_GRID (grid), title, 0, line, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), self->narrow[self->page->more[i]], 1, line, 1, 1);
    }
  for (int i = 0; i < N_CHECKS; i++, line++)
    {
      self->check[i] = gtk_check_button_new_with_mnemonic (sy_translate (checks[i].label));
      gtk_widget_set_name (self->check[i], checks[i].name);
      g_signal_connect_object (self->check[i], "toggled", G_CALLBACK (toggled_cb), self, 0);
      gtk_grid_attach (GTK_GRID (grid), self->check[i], 0, line, 2, 1);
    }
  sy_name (self->check[ONLY_OPEN], _("Only with open actions"));
  sy_name (self->check[ONLY_NOT_SIGNED], _("Only not signed off as it stands"));
  sy_name (self->check[ALSO_RETIRED], _("Also what is retired"));
  g_signal_connect_object (clear, "clicked", G_CALLBACK (clear_cb), self, 0);
  gtk_grid_attach (GTK_GRID (grid), clear, 0, line, 2, 1);

  self->popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->popover), grid);
  g_signal_connect_object (self->popover, "show", G_CALLBACK (opened_cb), self, 0);
  self->more = gtk_menu_button_new ();
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->more), self->popover);
  gtk_widget_set_name (self->more, "more");
  gtk_widget_set_tooltip_text (self->more, _("More choices of what is shown"));
  gtk_widget_set_valign (self->more, GTK_ALIGN_CENTER);
}

static void
sy_tasks_choices_dispose (GObject *object)
{
  SyTasksChoices *self = SY_TASKS_CHOICES (object);
  GtkWidget *child;

  g_clear_handle_id (&self->reading, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->list);
  g_clear_pointer (&self->choice.method, g_free);
  g_clear_pointer (&self->choice.place, g_free);
  g_clear_pointer (&self->choice.machine, g_free);
  g_clear_pointer (&self->choice.gear_kind, g_free);
  G_OBJECT_CLASS (sy_tasks_choices_parent_class)->dispose (object);
}

static void
sy_tasks_choices_class_init (SyTasksChoicesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_tasks_choices_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[CHOSEN] = g_signal_new ("chosen", SY_TYPE_TASKS_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
sy_tasks_choices_init (SyTasksChoices *self)
{
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))), 12);
}

GtkWidget *
sy_tasks_choices_new (SyRegister which, SyTaskList *list)
{
  SyTasksChoices *self = g_object_new (SY_TYPE_TASKS_CHOICES, NULL);

  self->list = g_object_ref (list);
  self->page = sy_register_page (which);
  self->choice.item_kind = sy_register_item_kind (which);
  add_narrow (self, self->page->narrow);
  add_narrow (self, SY_NARROW_DUE);
  build_more (self);
  gtk_widget_set_parent (self->narrow[self->page->narrow], GTK_WIDGET (self));
  gtk_widget_set_parent (self->narrow[SY_NARROW_DUE], GTK_WIDGET (self));
  gtk_widget_set_parent (self->more, GTK_WIDGET (self));
  sy_name (GTK_WIDGET (self), _("What is shown"));
  g_signal_connect_object (list, "items-changed", G_CALLBACK (list_changed_cb), self, 0);
  read_keys (self, self->page->narrow);
  update (self);
  return GTK_WIDGET (self);
}

const SyTaskChoice *
sy_tasks_choices_get (SyTasksChoices *self)
{
  return &self->choice;
}

void
sy_tasks_choices_set (SyTasksChoices *self, SyNarrow narrow, const char *key)
{
  g_return_if_fail (SY_IS_TASKS_CHOICES (self));
  if (self->narrow[narrow] == NULL)
    return;
  if (key != NULL)
    read_keys (self, narrow);
  sy_key_choice_choose (SY_KEY_CHOICE (self->narrow[narrow]), key);
}

void
sy_tasks_choices_set_retired (SyTasksChoices *self, gboolean retired)
{
  g_return_if_fail (SY_IS_TASKS_CHOICES (self));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check[ALSO_RETIRED]), retired);
}

void
sy_tasks_choices_clear (SyTasksChoices *self)
{
  g_return_if_fail (SY_IS_TASKS_CHOICES (self));
  self->several = TRUE;
  for (int i = 0; i < SY_N_NARROWS; i++)
    if (self->narrow[i] != NULL)
      sy_key_choice_choose (SY_KEY_CHOICE (self->narrow[i]), NULL);
  for (int i = 0; i < N_CHECKS; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->check[i]), FALSE);
  self->several = FALSE;
  chosen (self);
}
