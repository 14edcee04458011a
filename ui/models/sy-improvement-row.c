/* SPDX-License-Identifier: MIT */
#include "sy-improvement-row.h"

#include <math.h>
#include <string.h>

#include "sy-i18n.h"

struct _SyImprovementRow
{
  GObject parent_instance;
  GPtrArray *views;
  const SyImprovementView *view;
};

G_DEFINE_FINAL_TYPE (SyImprovementRow, sy_improvement_row, G_TYPE_OBJECT)

static void
sy_improvement_row_finalize (GObject *object)
{
  g_ptr_array_unref (SY_IMPROVEMENT_ROW (object)->views);
  G_OBJECT_CLASS (sy_improvement_row_parent_class)->finalize (object);
}

static void
sy_improvement_row_class_init (SyImprovementRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_improvement_row_finalize;
}

static void
sy_improvement_row_init (SyImprovementRow *self)
{
  (void) self;
}

SyImprovementRow *
sy_improvement_row_new (GPtrArray *views, const SyImprovementView *view)
{
  SyImprovementRow *self = g_object_new (SY_TYPE_IMPROVEMENT_ROW, NULL);

  self->views = g_ptr_array_ref (views);
  self->view = view;
  return self;
}

const SyImprovementView *
sy_improvement_row_get_view (SyImprovementRow *self)
{
  g_return_val_if_fail (SY_IS_IMPROVEMENT_ROW (self), NULL);
  return self->view;
}

gboolean
sy_improvement_row_equals (SyImprovementRow *self, SyImprovementRow *other)
{
  const SyImprovement *one = self->view->improvement, *two = other->view->improvement;

  return strcmp (one->id, two->id) == 0 && one->line == two->line && one->revision == two->revision
         && one->from_revision == two->from_revision && (self->view->beside == NULL) == (other->view->beside == NULL);
}

gboolean
sy_improvement_row_has (SyImprovementRow *self, char **words)
{
  const SyImprovement *improvement = self->view->improvement;
  g_autofree char *all = g_strjoin ("\n", improvement->what, improvement->idea_by, improvement->item_name,
                                    improvement->from_name, improvement->put_to_work, improvement->entered_by,
                                    improvement->why, NULL);
  g_autofree char *folded = g_utf8_casefold (all, -1);

  for (; *words != NULL; words++)
    if (strstr (folded, *words) == NULL)
      return FALSE;
  return TRUE;
}

/* Topics: words */

char *
sy_improvement_row_change (SyImprovementRow *self)
{
  const SyImprovement *improvement = self->view->improvement;

  if (strcmp (improvement->item, improvement->from_item) == 0)
    /* Translators: from which revision of a task to which. */
    return g_strdup_printf (_("%s: revision %ld → %ld"), improvement->item_name, (long) improvement->from_revision,
                            (long) improvement->revision);
  /* Translators: from a task and its revision to another. */
  return g_strdup_printf (_("%s (%ld) → %s (%ld)"), improvement->from_name, (long) improvement->from_revision,
                          improvement->item_name, (long) improvement->revision);
}

char *
sy_improvement_row_reached (SyImprovementRow *self)
{
  const SyBeside *beside = self->view->beside;

  if (self->view->improvement->withdrawn)
    return g_strdup (_("Withdrawn"));
  if (beside == NULL)
    return g_strdup ("–");
  if (self->view->reached)
    return g_strdup (_("Reached"));
  return g_strdup (beside->sides[1].has_verdict
                       && sy_verdict_rank (beside->sides[1].verdict) < sy_verdict_rank (SY_VERDICT_IMPROVE)
                     ? _("Held before")
                     : _("Not reached"));
}

char *
sy_improvement_gain_words (SyGain gain, double value)
{
  g_autofree char *figure = NULL;

  if (isnan (value))
    return g_strdup ("–");
  if (value == 0)
    return g_strdup (_("the same"));
  figure = sy_words_quantity (fabs (value), sy_gain_kind (gain), SY_UNITS_METRIC);
  if (gain == SY_GAIN_PERSONS && value > 0)
    /* Translators: so many persons less than before. */
    return g_strdup_printf (_("%s fewer"), figure);
  /* Translators: a figure with its unit, by which something is less than before, or more. */
  return value > 0 ? g_strdup_printf (_("%s less"), figure) : g_strdup_printf (_("%s more"), figure);
}

char *
sy_improvement_row_gain (SyImprovementRow *self, SyGain gain)
{
  return sy_improvement_gain_words (gain, self->view->gains[gain]);
}

char *
sy_improvement_row_history (SyImprovementRow *self)
{
  const SyImprovement *improvement = self->view->improvement;
  g_autoptr (GString) words = g_string_new (NULL);

  /* Translators: by whom and when an improvement was put in the log. */
  g_string_append_printf (words, _("Entered by %s, %.10s."), improvement->entered_by, improvement->entered_when);
  if (*improvement->why != '\0')
    g_string_append_printf (words, " %s", improvement->why);
  if (improvement->withdrawn)
    {
      g_string_append_c (words, ' ');
      g_string_append_printf (words, _("Withdrawn by %s, %.10s: %s It does not count."), improvement->withdrawn_by,
                              improvement->withdrawn_when, improvement->withdrawn_why);
    }
  if (self->view->beside == NULL)
    g_string_append_printf (words, " %s", _("One of the two assessments is not in this record, so that what it bought is not "
                                            "known here."));
  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* Topics: totals */

/* What became less or more by @figure, as @known improvements tell it. */
static char *
gain_sentence (SyGain gain, const char *figure, int known)
{
  /* Translators: by how much less or more, and of how many improvements that is known. */
  switch (gain)
    {
    case SY_GAIN_INDEX:
      return g_strdup_printf (_("index %s in the mean (of %d)"), figure, known);
    case SY_GAIN_MASS:
      return g_strdup_printf (_("heaviest mass by hand %s (of %d)"), figure, known);
    case SY_GAIN_STOPPED:
      return g_strdup_printf (_("machine stands %s a change (of %d)"), figure, known);
    case SY_GAIN_PERSON_MINUTES:
      return g_strdup_printf (_("all people %s a change (of %d)"), figure, known);
    case SY_GAIN_PERSONS:
      return g_strdup_printf (_("persons %s a change (of %d)"), figure, known);
    }
  g_return_val_if_reached (NULL);
}

static void
append_total (GString *words, const SyQuarter *total, const char *between)
{
  static const SyGain told[] = { SY_GAIN_INDEX, SY_GAIN_STOPPED, SY_GAIN_PERSON_MINUTES, SY_GAIN_PERSONS };
  g_autofree char *n = g_strdup_printf (P_ ("%d improvement", "%d improvements", (gulong) total->n), total->n);
  g_autofree char *reached
    = g_strdup_printf (P_ ("%d reached a favourable verdict", "%d reached a favourable verdict", (gulong) total->n_reached),
                       total->n_reached);

  g_string_append_printf (words, "%s%s%s", n, between, reached);
  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const SyGain gain = told[i];
      g_autofree char *figure = sy_improvement_gain_words (gain, sy_quarter_figure (total, gain));
      g_autofree char *sentence = gain_sentence (gain, figure, total->n_known[gain]);

      if (total->n_known[gain] > 0)
        g_string_append_printf (words, "%s%s", between, sentence);
    }
}

char *
sy_improvement_total_words (const SyQuarter *total)
{
  GString *words = g_string_new (NULL);

  append_total (words, total, " · ");
  return g_string_free (words, FALSE);
}

char *
sy_improvement_quarter_words (const SyQuarter *quarter)
{
  GString *words = g_string_new (NULL);
  g_autofree char *label = sy_quarter_label (quarter);

  g_string_append_printf (words, "%s: ", label);
  append_total (words, quarter, ", ");
  return g_string_free (words, FALSE);
}
