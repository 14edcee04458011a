/* SPDX-License-Identifier: MIT */
#include "sy-compare-page-private.h"

#include "sy-beside-view.h"
#include "sy-deed-form.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-stored-result.h"
#include "sy-task-chooser.h"
#include "sy-task-parts.h"
#include "sy-worker-deeds.h"

G_DEFINE_FINAL_TYPE (SyComparePage, sy_compare_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

void
sy_compare_page_say (SyComparePage *self, gboolean trouble, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->message), words);
  gtk_widget_set_visible (self->message, *words != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->message), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (trouble)
    gtk_widget_add_css_class (self->message, "sy-problem");
  else
    gtk_widget_remove_css_class (self->message, "sy-problem");
}

const SyRevision *
sy_compare_page_revision (const SyCompareSide *side)
{
  if (side->log == NULL)
    return NULL;
  return side->revision > 0 ? sy_item_log_find (side->log, side->revision) : sy_item_log_latest (side->log);
}

static void
update_result (SyComparePage *self)
{
  const SyRevision *revisions[2] = { sy_compare_page_revision (&self->sides[0]), sy_compare_page_revision (&self->sides[1]) };
  const gboolean has_both = revisions[0] != NULL && revisions[1] != NULL;

  g_clear_pointer (&self->beside, sy_beside_free);
  sy_part_empty (self->result);
  for (int i = 0; i < 2; i++)
    sy_part_empty (self->sides[i].head);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.print", has_both);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.save", has_both);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.swap", has_both);
  sy_compare_page_update_improve (self);
  if (has_both)
    {
      self->beside = sy_beside_new (revisions[0]->event, revisions[1]->event,
                                    sy_desk_policy (sy_worker_get_desk (self->worker)), sy_translate);
      for (int i = 0; i < 2; i++)
        gtk_box_append (GTK_BOX (self->sides[i].head), sy_beside_head_new (&self->beside->sides[i]));
      gtk_box_append (GTK_BOX (self->result), sy_beside_view_new (self->beside));
      return;
    }
  for (int i = 0; i < 2; i++)
    if (self->sides[i].trouble != NULL)
      gtk_box_append (GTK_BOX (self->result), sy_part_label (self->sides[i].trouble, "sy-problem"));
  if (self->sides[0].item == NULL || self->sides[1].item == NULL)
    gtk_box_append (GTK_BOX (self->result),
                    sy_part_label (_("Choose two: a task and its variant at another pace, or a task by hand and the same by "
                                     "cart. What changed stands beside what it bought."),
                                   "sy-quiet"));
}

static void
update_revisions (SyComparePage *self, SyCompareSide *side)
{
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);
  const SyRevision *chosen = sy_compare_page_revision (side);
  guint at = GTK_INVALID_LIST_POSITION;

  self->filling = TRUE;
  for (guint i = 0; side->log != NULL && i < side->log->revisions->len; i++)
    {
      const SyRevision *each = side->log->revisions->pdata[i];
      g_autofree char *when = sy_stored_time_text (each->event->claimed);
      g_autofree char *line
        = g_strdup_printf (_("Revision %ld · %s · %s"), (long) each->event->revision, when, each->event->by);

      gtk_string_list_append (lines, line);
      if (each == chosen)
        at = i;
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (side->revisions), G_LIST_MODEL (lines));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (side->revisions), at);
  gtk_widget_set_visible (side->revisions, side->log != NULL);
  self->filling = FALSE;
}

static void
update_side (SyComparePage *self, SyCompareSide *side)
{
  const SyRevision *chosen = sy_compare_page_revision (side);
  const char *name = chosen != NULL      ? chosen->event->name
                     : side->item != NULL ? _("Reading the record…")
                                          : _("Choose…");
  g_autofree char *words = g_strdup_printf (side == &self->sides[0] ? _("First: %s") : _("Second: %s"), name);

  gtk_label_set_text (GTK_LABEL (side->name), name);
  sy_name (side->choose, words);
  gtk_widget_set_tooltip_text (side->choose, name);
  update_revisions (self, side);
}

/* Topics: reading */

typedef struct
{
  SyComparePage *page;
  int side;
  guint asked;
} Question;

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autofree Question *question = data;
  g_autoptr (SyComparePage) self = question->page;
  SyCompareSide *side = &self->sides[question->side];
  g_autoptr (GError) error = NULL;
  GPtrArray *lines = sy_worker_events_finish (SY_WORKER (source), result, &error);
  SyItemLog *log = lines != NULL ? sy_item_log_new (lines) : NULL;

  /* Another one was chosen meanwhile, or the page is gone. */
  if (self->box == NULL || question->asked != side->asked)
    {
      g_clear_pointer (&log, sy_item_log_unref);
      return;
    }
  g_clear_pointer (&side->log, sy_item_log_unref);
  g_clear_pointer (&side->trouble, g_free);
  side->log = log;
  if (log == NULL)
    side->trouble = g_strdup (error != NULL ? error->message : _("There is no such task in this record."));
  update_side (self, side);
  update_result (self);
}

static void
ask (SyComparePage *self, int side)
{
  Question *question = g_new0 (Question, 1);

  *question = (Question) { g_object_ref (self), side, ++self->sides[side].asked };
  sy_worker_events_async (self->worker, self->sides[side].item, NULL, read_cb, question);
}

/* Somebody saved: a side that follows the newest shows that. */
static void
changed_cb (SyWorker *worker, SyComparePage *self)
{
  (void) worker;
  for (int i = 0; i < 2; i++)
    if (self->sides[i].item != NULL)
      ask (self, i);
}

/* Topics: choosing */

static void
revision_cb (GObject *object, GParamSpec *pspec, SyComparePage *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (object));

  (void) pspec;
  for (int i = 0; i < 2 && !self->filling; i++)
    if ((gpointer) self->sides[i].revisions == (gpointer) object && self->sides[i].log != NULL
        && at < self->sides[i].log->revisions->len)
      {
        self->sides[i].revision = ((SyRevision *) self->sides[i].log->revisions->pdata[at])->event->revision;
        gtk_label_set_text (GTK_LABEL (self->sides[i].name), sy_compare_page_revision (&self->sides[i])->event->name);
        update_result (self);
      }
}

static void
chosen_cb (SyTaskChooser *chooser, const char *id, SyComparePage *self)
{
  int side = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (chooser), "sy-side"));

  sy_compare_page_set (self, side, id, 0);
  gtk_widget_grab_focus (self->sides[side].choose);
}

/* Like is compared with like, where one is there. */
static SyRegister
find_register (SyComparePage *self, int side)
{
  for (int i = 0; i < 2; i++)
    {
      const SyRevision *revision = sy_compare_page_revision (&self->sides[i == 0 ? 1 - side : side]);

      for (int which = 0; revision != NULL && which < SY_N_REGISTERS; which++)
        if (g_str_equal (sy_register_item_kind ((SyRegister) which), revision->event->item_kind))
          return (SyRegister) which;
    }
  return SY_REGISTER_TASKS;
}

void
sy_compare_page_choose (SyComparePage *self, int side)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *chooser;

  g_return_if_fail (SY_IS_COMPARE_PAGE (self));
  chooser = sy_task_chooser_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, self->list, find_register (self, side),
                                 self->units, side == 0 ? _("What to compare") : _("What to compare it with"), _("C_ompare"));
  g_object_set_data (G_OBJECT (chooser), "sy-side", GINT_TO_POINTER (side));
  g_signal_connect_object (chooser, "chosen", G_CALLBACK (chosen_cb), self, 0);
  gtk_window_present (GTK_WINDOW (chooser));
}

static void
choose_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name;
  sy_compare_page_choose (SY_COMPARE_PAGE (widget), g_variant_get_int32 (parameter) == 0 ? 0 : 1);
}

static void
swap_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SyComparePage *self = SY_COMPARE_PAGE (widget);
  g_autofree char *item = g_strdup (self->sides[0].item);
  gint64 revision = self->sides[0].revision;
  g_autofree char *other = g_strdup (self->sides[1].item);

  (void) name, (void) parameter;
  sy_compare_page_set (self, 0, other, self->sides[1].revision);
  sy_compare_page_set (self, 1, item, revision);
}

/* Topics: building */

static GtkWidget *
new_side (SyComparePage *self, int at)
{
  SyCompareSide *side = &self->sides[at];
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  const char *caption = at == 0 ? _("First") : _("Second");

  side->choose = gtk_button_new ();
  side->name = gtk_label_new (NULL);
  gtk_label_set_ellipsize (GTK_LABEL (side->name), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (side->name), 0);
  gtk_button_set_child (GTK_BUTTON (side->choose), side->name);
  gtk_widget_set_name (side->choose, at == 0 ? "compare-first" : "compare-second");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (side->choose), "compare.choose");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (side->choose), "i", at);
  side->revisions = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_name (side->revisions, at == 0 ? "compare-first-revision" : "compare-second-revision");
  sy_name (side->revisions, at == 0 ? _("Revision of the first") : _("Revision of the second"));
  g_signal_connect_object (side->revisions, "notify::selected", G_CALLBACK (revision_cb), self, 0);
  side->head = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (box), sy_part_label (caption, "sy-strong"));
  gtk_box_append (GTK_BOX (box), side->choose);
  gtk_box_append (GTK_BOX (box), side->revisions);
  gtk_box_append (GTK_BOX (box), side->head);
  return box;
}

static GtkWidget *
new_bar (SyComparePage *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *space = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_hexpand (space, TRUE);
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("S_wap"), "compare.swap"));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("Put in the improvement _log…"), "compare.improve"));
  gtk_box_append (GTK_BOX (bar), space);
  self->paper = sy_paper_choice_add (GTK_BOX (bar));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("Save as P_DF…"), "compare.save"));
  gtk_box_append (GTK_BOX (bar), sy_button_new (_("_Print…"), "compare.print"));
  gtk_widget_set_margin_start (bar, 18);
  gtk_widget_set_margin_end (bar, 18);
  gtk_widget_set_margin_top (bar, 12);
  gtk_widget_set_margin_bottom (bar, 6);
  return bar;
}

static void
build (SyComparePage *self)
{
  g_autofree char *screening = sy_words_screening (sy_translate);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *heads = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->message = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                                "selectable", TRUE, "visible", FALSE, "margin-start", 18, "margin-end", 18, NULL);
  gtk_widget_set_name (self->message, "message");
  gtk_box_set_homogeneous (GTK_BOX (heads), TRUE);
  gtk_box_append (GTK_BOX (heads), new_side (self, 0));
  gtk_box_append (GTK_BOX (heads), new_side (self, 1));
  self->result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (column), heads);
  gtk_box_append (GTK_BOX (column), self->result);
  gtk_box_append (GTK_BOX (column), sy_compare_page_new_improve (self));
  gtk_widget_add_css_class (column, "sy-tab");
  self->scroller = sy_part_scroller (column, _("Comparison"));
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_box_append (GTK_BOX (self->box), new_bar (self));
  gtk_box_append (GTK_BOX (self->box), self->message);
  gtk_box_append (GTK_BOX (self->box), self->scroller);
  gtk_box_append (GTK_BOX (self->box), sy_part_label (screening, "sy-caution"));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  for (int i = 0; i < 2; i++)
    update_side (self, &self->sides[i]);
  update_result (self);
}

static gboolean
sy_compare_page_grab_focus (GtkWidget *widget)
{
  SyComparePage *self = SY_COMPARE_PAGE (widget);

  return gtk_widget_grab_focus (self->sides[self->sides[0].item == NULL ? 0 : 1].choose);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_compare_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (SY_COMPARE_PAGE (widget)->box, direction);
}

static void
sy_compare_page_dispose (GObject *object)
{
  SyComparePage *self = SY_COMPARE_PAGE (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  for (int i = 0; i < 2; i++)
    {
      g_clear_pointer (&self->sides[i].item, g_free);
      g_clear_pointer (&self->sides[i].log, sy_item_log_unref);
      g_clear_pointer (&self->sides[i].trouble, g_free);
    }
  g_clear_pointer (&self->beside, sy_beside_free);
  g_clear_object (&self->list);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_compare_page_parent_class)->dispose (object);
}

static void
sy_compare_page_class_init (SyComparePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_compare_page_dispose;
  widget_class->grab_focus = sy_compare_page_grab_focus;
  widget_class->focus = sy_compare_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-compare");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "compare.choose", "i", choose_action);
  gtk_widget_class_install_action (widget_class, "compare.swap", NULL, swap_action);
  gtk_widget_class_install_action (widget_class, "compare.improve", NULL, sy_compare_page_improve);
  gtk_widget_class_install_action (widget_class, "compare.print", NULL, sy_compare_page_print);
  gtk_widget_class_install_action (widget_class, "compare.save", NULL, sy_compare_page_save);
}

static void
sy_compare_page_init (SyComparePage *self)
{
  (void) self;
}

GtkWidget *
sy_compare_page_new (SyWorker *worker, SyTaskList *list, SyUnits units)
{
  SyComparePage *self = g_object_new (SY_TYPE_COMPARE_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->list = g_object_ref (list);
  self->units = units;
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  build (self);
  sy_name (GTK_WIDGET (self), _("Comparison"));
  return GTK_WIDGET (self);
}

void
sy_compare_page_set (SyComparePage *self, int at, const char *item, gint64 revision)
{
  SyCompareSide *side;

  g_return_if_fail (SY_IS_COMPARE_PAGE (self) && (at == 0 || at == 1));
  side = &self->sides[at];
  sy_compare_page_say (self, FALSE, "");
  sy_deed_form_close (SY_DEED_FORM (self->improve));
  g_clear_pointer (&side->log, sy_item_log_unref);
  g_clear_pointer (&side->trouble, g_free);
  g_free (side->item);
  side->item = g_strdup (item);
  side->revision = revision;
  side->asked++;
  update_side (self, side);
  update_result (self);
  if (item != NULL)
    ask (self, at);
}

const char *
sy_compare_page_get_item (SyComparePage *self, int side)
{
  g_return_val_if_fail (SY_IS_COMPARE_PAGE (self), NULL);
  return self->sides[side].item;
}
