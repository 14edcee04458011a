/* SPDX-License-Identifier: MIT */
/* What is compared, put in the improvement log: the first was before, the second is after. */
#include <string.h>

#include "sy-compare-page-private.h"
#include "sy-i18n.h"
#include "sy-improvement-form.h"
#include "sy-task-parts.h"

static SyDeedAsk *
make (SyDeedForm *form, gpointer user_data)
{
  SyComparePage *self = user_data;
  const SyRevision *before = sy_compare_page_revision (&self->sides[0]), *after = sy_compare_page_revision (&self->sides[1]);

  /* One of them is being read anew, or is another one meanwhile. */
  if (before == NULL || after == NULL)
    return NULL;
  return sy_improvement_form_ask (form, after->event->item, after->event->revision, before->event->item,
                                  before->event->revision);
}

static void
opened_cb (SyDeedForm *form, SyComparePage *self)
{
  (void) form;
  sy_compare_page_say (self, FALSE, "");
}

static void
done_cb (SyDeedForm *form, SyComparePage *self)
{
  (void) form;
  sy_compare_page_say (self, FALSE, _("It is in the improvement log."));
}

GtkWidget *
sy_compare_page_new_improve (SyComparePage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->improve_words = sy_part_label (NULL, "sy-note");
  gtk_widget_set_name (self->improve_words, "improve-words");
  self->improve = sy_improvement_form_new (self->worker, "improve");
  sy_deed_form_set_make (SY_DEED_FORM (self->improve), make, self);
  g_signal_connect_object (self->improve, "opened", G_CALLBACK (opened_cb), self, 0);
  g_signal_connect_object (self->improve, "done", G_CALLBACK (done_cb), self, 0);
  gtk_box_append (GTK_BOX (box), self->improve_words);
  gtk_box_append (GTK_BOX (box), self->improve);
  return box;
}

void
sy_compare_page_update_improve (SyComparePage *self)
{
  const SyRevision *before = sy_compare_page_revision (&self->sides[0]), *after = sy_compare_page_revision (&self->sides[1]);
  const gboolean takes = before != NULL && after != NULL && sy_improvement_form_takes (before->event->item_kind)
                         && sy_improvement_form_takes (after->event->item_kind);
  const gboolean is_one = takes && strcmp (before->event->item, after->event->item) == 0;
  const gboolean in_order = takes && (!is_one || before->event->revision < after->event->revision);

  g_autofree char *words = NULL;

  if (in_order)
    /* Translators: from a task and its revision to another. */
    words = g_strdup_printf (_("From %s, revision %ld, to %s, revision %ld"), before->event->name,
                             (long) before->event->revision, after->event->name, (long) after->event->revision);
  sy_deed_form_set_subject (SY_DEED_FORM (self->improve), words != NULL ? words : "");
  gtk_widget_set_visible (self->improve_words, takes);
  gtk_widget_set_visible (self->improve, in_order);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.improve", in_order);
  gtk_label_set_text (GTK_LABEL (self->improve_words),
                      in_order ? _("Where the work was changed from the first to the second, this can stand in the improvement log "
                                   "with who thought of it.")
                               : _("An improvement leads from an earlier revision to a later one: swap the two, or choose two "
                                   "revisions, to put it in the improvement log."));
}

void
sy_compare_page_improve (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_deed_form_open (SY_DEED_FORM (SY_COMPARE_PAGE (widget)->improve));
}
