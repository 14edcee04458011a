/* SPDX-License-Identifier: MIT */
#include "sy-improvements-page-private.h"

#include <math.h>
#include <string.h>

#include "sy-i18n.h"
#include "sy-improvement-sheet.h"
#include "sy-improvements-columns.h"
#include "sy-name.h"
#include "sy-paper-out.h"
#include "sy-quarters-view.h"
#include "sy-scroll.h"

G_DEFINE_FINAL_TYPE (SyImprovementsPage, sy_improvements_page, GTK_TYPE_WIDGET)

/* Topics: what is shown */

static void
say (SyImprovementsPage *self, gboolean trouble, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->message), words);
  gtk_widget_set_visible (self->message, *words != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->message), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (trouble)
    gtk_widget_add_css_class (self->message, "sy-problem");
  else
    gtk_widget_remove_css_class (self->message, "sy-problem");
}

/* Whether anything is in the log that may be listed. */
static gboolean
has_any (SyImprovementsPage *self)
{
  const GPtrArray *views = sy_improvement_list_get_views (self->rows);

  return views != NULL && views->len > 0;
}

static const char *
state_of (SyImprovementsPage *self)
{
  if (sy_improvement_list_get_error (self->rows) != NULL)
    return "error";
  if (g_list_model_get_n_items (G_LIST_MODEL (self->rows)) > 0)
    return "list";
  if (sy_improvement_list_get_views (self->rows) == NULL)
    return "loading";
  return has_any (self) ? "no-match" : "empty";
}

/* The first of them that is known of any improvement. */
static int
choose_gains (const SyQuarter *total, SyGain chosen[SY_QUARTER_ROWS_MAX])
{
  static const SyGain drawn[] = { SY_GAIN_INDEX, SY_GAIN_STOPPED, SY_GAIN_PERSONS, SY_GAIN_PERSON_MINUTES };
  int n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (drawn) && n < SY_QUARTER_ROWS_MAX; i++)
    if (total->n_known[drawn[i]] > 0)
      chosen[n++] = drawn[i];
  return n;
}

static void
show_bars (SyImprovementsPage *self, const GArray *quarters, const SyQuarter *total, const char *sentence)
{
  const int n = (int) quarters->len;
  g_auto (GStrv) labels = g_new0 (char *, quarters->len + 1), words = g_new0 (char *, quarters->len + 1);
  char **texts[SY_QUARTER_ROWS_MAX];
  double *values[SY_QUARTER_ROWS_MAX];
  SyGain gains[SY_QUARTER_ROWS_MAX];
  SyQuarterRow rows[SY_QUARTER_ROWS_MAX];
  const int n_rows = choose_gains (total, gains);
  const SyQuarters drawn = { .n_quarters = n, .quarters = (const char *const *) labels, .n_rows = n_rows, .rows = rows };

  for (int i = 0; i < n; i++)
    {
      const SyQuarter *quarter = &g_array_index (quarters, SyQuarter, i);

      labels[i] = sy_quarter_label (quarter);
      words[i] = sy_improvement_quarter_words (quarter);
    }
  for (int row = 0; row < n_rows; row++)
    {
      values[row] = g_new (double, quarters->len);
      texts[row] = g_new0 (char *, quarters->len + 1);
      for (int i = 0; i < n; i++)
        {
          values[row][i] = sy_quarter_figure (&g_array_index (quarters, SyQuarter, i), gains[row]);
          texts[row][i] = isnan (values[row][i]) ? g_strdup ("") : sy_gain_words (gains[row], values[row][i], SY_UNITS_METRIC);
        }
      rows[row] = (SyQuarterRow) { sy_translate (sy_gain_title (gains[row])), values[row], (const char *const *) texts[row] };
    }
  sy_quarters_view_set (SY_QUARTERS_VIEW (self->quarters), n > 0 && n_rows > 0 ? &drawn : NULL, (const char *const *) words,
                        sentence);
  for (int row = 0; row < n_rows; row++)
    {
      g_free (values[row]);
      g_strfreev (texts[row]);
    }
}

/* What the results that are shown defer to stands beside what every result says. */
static void
show_caution (SyImprovementsPage *self)
{
  const GPtrArray *views = sy_improvement_list_get_views (self->rows);
  g_autoptr (SyDeferring) deferring = sy_deferring_new ();
  g_autofree char *screening = sy_words_screening (sy_translate), *defers = NULL, *words = NULL;

  for (guint i = 0; views != NULL && i < views->len; i++)
    sy_deferring_add_all (deferring, ((const SyImprovementView *) views->pdata[i])->deferring);
  defers = sy_deferring_words (deferring, sy_translate);
  words = g_strjoin (*defers != '\0' ? " " : "", defers, screening, NULL);
  gtk_label_set_text (GTK_LABEL (self->caution), words);
}

static void
show_totals (SyImprovementsPage *self)
{
  const GArray *quarters = sy_improvement_list_get_quarters (self->rows);
  const SyQuarter total = sy_improvement_total (quarters);
  g_autofree char *words = sy_improvement_total_words (&total);

  gtk_label_set_text (GTK_LABEL (self->totals), words);
  gtk_widget_set_visible (self->totals, total.n > 0);
  gtk_widget_set_visible (self->told, total.n > 0);
  sy_improvements_columns_show (GTK_COLUMN_VIEW (self->view), &total);
  show_bars (self, quarters, &total, words);
  show_caution (self);
}

void
sy_improvements_page_update (SyImprovementsPage *self)
{
  const char *error = sy_improvement_list_get_error (self->rows);
  const char *state;
  gboolean was_loading;

  if (self->box == NULL)
    return;
  was_loading = g_strcmp0 (sy_improvements_page_get_state (self), "loading") == 0;
  state = state_of (self);
  if (error != NULL)
    gtk_label_set_text (GTK_LABEL (self->error_words), error);
  gtk_stack_set_visible_child_name (GTK_STACK (self->states), state);
  gtk_widget_set_visible (self->below, self->chosen != NULL && g_str_equal (state, "list"));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "improvements.print", has_any (self));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "improvements.save", has_any (self));
  show_totals (self);
  /* What the person came for was not there yet when the page was shown. */
  if (was_loading && !g_str_equal (state, "loading") && gtk_widget_get_mapped (GTK_WIDGET (self)))
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
show_chosen (SyImprovementsPage *self)
{
  const SyImprovementView *view = self->chosen != NULL ? sy_improvement_row_get_view (self->chosen) : NULL;
  g_autofree char *change = NULL, *about = NULL, *history = NULL;

  sy_improvements_page_update (self);
  if (view == NULL)
    return;
  change = sy_improvement_row_change (self->chosen);
  about = g_strdup_printf ("%s. %s", view->improvement->what, change);
  history = sy_improvement_row_history (self->chosen);
  gtk_label_set_text (GTK_LABEL (self->about), about);
  gtk_label_set_text (GTK_LABEL (self->bought), view->beside != NULL ? view->beside->sentence : "");
  gtk_widget_set_visible (self->bought, view->beside != NULL);
  gtk_label_set_text (GTK_LABEL (self->history), history);
  gtk_widget_set_visible (self->compare, view->beside != NULL);
  gtk_widget_set_visible (self->withdraw, !view->improvement->withdrawn);
}

void
sy_improvements_page_choose (SyImprovementsPage *self, SyImprovementRow *row)
{
  const gboolean is_same = row != NULL && self->chosen != NULL
                           && strcmp (sy_improvement_row_get_view (row)->improvement->id,
                                      sy_improvement_row_get_view (self->chosen)->improvement->id) == 0;

  if (!is_same)
    sy_deed_form_close (SY_DEED_FORM (self->withdraw));
  g_set_object (&self->chosen, row);
  show_chosen (self);
}

/* Topics: what can be done */

void
sy_improvements_page_open (SyImprovementsPage *self, SyImprovementRow *row, gboolean compared)
{
  const SyImprovementView *view = sy_improvement_row_get_view (row);
  const SyImprovement *improvement = view->improvement;

  if (compared && view->beside != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.compare-both", "(sxsx)", improvement->from_item,
                                improvement->from_revision, improvement->item, improvement->revision);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-task", "s", improvement->item);
}

SyDeedAsk *
sy_improvements_page_make_withdrawal (SyDeedForm *form, gpointer user_data)
{
  SyImprovementsPage *self = user_data;
  g_autofree char *by = sy_deed_form_dup (form, "by"), *role = sy_deed_form_dup (form, "role");
  g_autofree char *why = sy_deed_form_dup (form, "why");
  const SyImprovement *improvement;
  SyDeedAsk *ask;

  if (self->chosen == NULL)
    return NULL;
  improvement = sy_improvement_row_get_view (self->chosen)->improvement;
  ask = sy_deed_ask_new (SY_EVENT_IMPROVEMENT, improvement->item, by, role, why);
  ask->deed.step = SY_STEP_WITHDRAW;
  ask->deed.improvement = g_strdup (improvement->id);
  return ask;
}

/* Topics: paper */

static SyFolio *
make_folio (GtkWidget *page, char **made, GError **error)
{
  SyImprovementsPage *self = SY_IMPROVEMENTS_PAGE (page);
  GPtrArray *views = sy_improvement_list_get_views (self->rows);
  const SyHead *head = sy_improvement_list_get_head (self->rows);
  gboolean clock_set;

  *made = has_any (self) ? sy_clock_now (&clock_set, error) : NULL;
  if (*made == NULL)
    return NULL;
  return sy_improvement_sheet_new (&(SyImprovementSheet) {
    .views = views, .head_line = head->number, .head = head->hash, .units = SY_UNITS_METRIC,
    .paper = sy_paper_choice_get (self->paper), .translate = sy_translate, .program = "steelyard " SY_VERSION,
    .made = *made });
}

static void
say_of_paper (GtkWidget *page, gboolean trouble, const char *words)
{
  say (SY_IMPROVEMENTS_PAGE (page), trouble, words);
}

static const SyPaperOut paper_out = {
  .make = make_folio,
  .say = say_of_paper,
  .ask = N_ ("Save the improvement log"),
  .job = N_ ("Improvement log"),
  .not_saved = N_ ("The improvement log was not saved: {why}"),
  .not_printed = N_ ("The improvement log was not printed: {why}"),
  .sent = N_ ("The improvement log was sent to the printer."),
};

gboolean
sy_improvements_page_write (SyImprovementsPage *self, const char *path)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENTS_PAGE (self), FALSE);
  return sy_paper_out_write (GTK_WIDGET (self), &paper_out, path);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  /* Translators: file name. */
  sy_paper_out_save (widget, &paper_out, _("improvements.pdf"));
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_paper_out_print (widget, &paper_out);
}

/* Topics: the widget */

static void
sy_improvements_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sy_improvements_page_parent_class)->map (widget);
  sy_improvement_list_set_watched (SY_IMPROVEMENTS_PAGE (widget)->rows, TRUE);
}

static void
sy_improvements_page_unmap (GtkWidget *widget)
{
  sy_improvement_list_set_watched (SY_IMPROVEMENTS_PAGE (widget)->rows, FALSE);
  GTK_WIDGET_CLASS (sy_improvements_page_parent_class)->unmap (widget);
}

static gboolean
sy_improvements_page_grab_focus (GtkWidget *widget)
{
  SyImprovementsPage *self = SY_IMPROVEMENTS_PAGE (widget);

  if (g_str_equal (sy_improvements_page_get_state (self), "list") && sy_focus_rows (GTK_COLUMN_VIEW (self->view)))
    return TRUE;
  return gtk_widget_child_focus (self->box, GTK_DIR_TAB_FORWARD);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_improvements_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SyImprovementsPage *self = SY_IMPROVEMENTS_PAGE (widget);

  if (sy_tab_leaves_rows (GTK_COLUMN_VIEW (self->view), direction)
      && gtk_widget_child_focus (direction == GTK_DIR_TAB_FORWARD ? self->below : self->quarters, direction))
    return TRUE;
  return gtk_widget_child_focus (self->box, direction);
}

static void
sy_improvements_page_dispose (GObject *object)
{
  SyImprovementsPage *self = SY_IMPROVEMENTS_PAGE (object);

  if (self->box != NULL)
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->view), NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->chosen);
  g_clear_object (&self->rows);
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_improvements_page_parent_class)->dispose (object);
}

static void
sy_improvements_page_class_init (SyImprovementsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_improvements_page_dispose;
  widget_class->map = sy_improvements_page_map;
  widget_class->unmap = sy_improvements_page_unmap;
  widget_class->grab_focus = sy_improvements_page_grab_focus;
  widget_class->focus = sy_improvements_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-improvements");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "improvements.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "improvements.save", NULL, save_action);
}

static void
sy_improvements_page_init (SyImprovementsPage *self)
{
  (void) self;
}

GtkWidget *
sy_improvements_page_new (SyWorker *worker)
{
  SyImprovementsPage *self = g_object_new (SY_TYPE_IMPROVEMENTS_PAGE, NULL);

  self->worker = g_object_ref (worker);
  self->rows = sy_improvement_list_new (worker);
  sy_improvements_page_build (self);
  show_chosen (self);
  sy_name (GTK_WIDGET (self), _("Improvements"));
  return GTK_WIDGET (self);
}

GListModel *
sy_improvements_page_get_rows (SyImprovementsPage *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENTS_PAGE (self), NULL);
  return G_LIST_MODEL (self->rows);
}

const char *
sy_improvements_page_get_state (SyImprovementsPage *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENTS_PAGE (self), NULL);
  return gtk_stack_get_visible_child_name (GTK_STACK (self->states));
}

void
sy_improvements_page_set_search (SyImprovementsPage *self, const char *search)
{
  g_return_if_fail (SY_IS_IMPROVEMENTS_PAGE (self));
  gtk_editable_set_text (GTK_EDITABLE (self->search), search);
}

void
sy_improvements_page_select (SyImprovementsPage *self, guint position)
{
  g_return_if_fail (SY_IS_IMPROVEMENTS_PAGE (self));
  gtk_single_selection_set_selected (self->selection, position);
}
