/* SPDX-License-Identifier: MIT */
#include "sy-journal-narrow.h"

#include "sy-date.h"
#include "sy-i18n.h"
#include "sy-journal-line.h"
#include "sy-key-choice.h"
#include "sy-name.h"

#define ITEM_CHARS 14

struct _SyJournalNarrow
{
  GtkBox parent_instance;
  SyTaskList *list;
  GtkWidget *person, *kind, *from, *to, *item;
  char *by, *from_day, *to_day, *item_id; /* the filter's */
  SyJournalFilter filter;
  gboolean is_setting; /* several are set together */
};

G_DEFINE_FINAL_TYPE (SyJournalNarrow, sy_journal_narrow, GTK_TYPE_BOX)

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const char *
kind_words (const char *key)
{
  SyEventKind kind;

  return sy_event_kind_from_id (key, &kind) ? sy_journal_kind_words (kind) : key;
}

/* NULL: none, or none yet. New string. */
static char *
read_day (GtkWidget *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
  double days;

  if (sy_date_read (text, &days))
    {
      sy_mark_wrong (entry, FALSE);
      return g_steal_pointer (&text);
    }
  sy_mark_wrong (entry, *text != '\0');
  return NULL;
}

/* The item that a name means: the one that is called so, or the only one whose name has it. New string; NULL: none. */
static char *
find_item (SyJournalNarrow *self, const char *name)
{
  const GPtrArray *rows = sy_task_list_rows (self->list);
  g_autofree char *sought = g_utf8_casefold (name, -1);
  const char *found = NULL;
  guint n_found = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const SyTask *task = sy_task_row_get_task (rows->pdata[i]);
      g_autofree char *own = g_utf8_casefold (task->name, -1);

      if (g_str_equal (own, sought))
        return g_strdup (task->id);
      if (g_strstr_len (own, -1, sought) == NULL)
        continue;
      found = task->id;
      n_found++;
    }
  return n_found == 1 ? g_strdup (found) : NULL;
}

static void
renew (SyJournalNarrow *self)
{
  const char *kind = sy_key_choice_get (SY_KEY_CHOICE (self->kind));

  if (self->is_setting)
    return;
  g_free (self->by);
  g_free (self->from_day);
  g_free (self->to_day);
  self->by = g_strdup (sy_key_choice_get (SY_KEY_CHOICE (self->person)));
  self->from_day = read_day (self->from);
  self->to_day = read_day (self->to);
  self->filter = (SyJournalFilter) { .by = self->by, .from = self->from_day, .to = self->to_day, .item = self->item_id };
  if (kind != NULL)
    sy_event_kind_from_id (kind, &self->filter.kind);
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
chosen_cb (SyKeyChoice *choice, SyJournalNarrow *self)
{
  (void) choice;
  renew (self);
}

static void
day_cb (GtkEditable *entry, SyJournalNarrow *self)
{
  (void) entry;
  renew (self);
}

static void
item_cb (GtkEditable *entry, SyJournalNarrow *self)
{
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (entry)));

  if (self->is_setting)
    return;
  g_free (self->item_id);
  self->item_id = *name != '\0' ? find_item (self, name) : NULL;
  sy_mark_wrong (self->item, *name != '\0' && self->item_id == NULL);
  renew (self);
}

static void
sy_journal_narrow_dispose (GObject *object)
{
  g_clear_object (&SY_JOURNAL_NARROW (object)->list);
  G_OBJECT_CLASS (sy_journal_narrow_parent_class)->dispose (object);
}

static void
sy_journal_narrow_finalize (GObject *object)
{
  SyJournalNarrow *self = SY_JOURNAL_NARROW (object);

  g_free (self->by);
  g_free (self->from_day);
  g_free (self->to_day);
  g_free (self->item_id);
  G_OBJECT_CLASS (sy_journal_narrow_parent_class)->finalize (object);
}

static void
sy_journal_narrow_class_init (SyJournalNarrowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_journal_narrow_dispose;
  G_OBJECT_CLASS (klass)->finalize = sy_journal_narrow_finalize;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
add_entry (SyJournalNarrow *self, const char *caption, const char *name, const char *hint, const char *id, int chars,
           GCallback changed)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (caption);
  GtkWidget *entry = gtk_entry_new ();

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
  gtk_widget_add_css_class (label, "sy-quiet");
  gtk_widget_set_name (entry, id);
  sy_name (entry, name);
  gtk_widget_set_tooltip_text (entry, name);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), hint);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), chars);
  g_signal_connect_object (entry, "changed", changed, self, 0);
  gtk_box_append (GTK_BOX (self), label);
  gtk_box_append (GTK_BOX (self), entry);
  return entry;
}

static void
sy_journal_narrow_init (SyJournalNarrow *self)
{
  g_autoptr (GStrvBuilder) kinds = g_strv_builder_new ();

  for (int kind = SY_EVENT_POLICY; kind <= SY_EVENT_KIND_LAST; kind++)
    g_strv_builder_add (kinds, sy_event_kind_id ((SyEventKind) kind));
  gtk_box_set_spacing (GTK_BOX (self), 9);
  self->person = sy_key_choice_new (_("Anybody"), _("Show only what this person did"), NULL);
  self->kind = sy_key_choice_new (_("Any kind"), _("Show only lines of this kind"), kind_words);
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->kind), g_strv_builder_end (kinds));
  gtk_widget_set_name (self->person, "person");
  gtk_widget_set_name (self->kind, "kind");
  gtk_widget_set_valign (self->person, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->kind, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->person, "chosen", G_CALLBACK (chosen_cb), self, 0);
  g_signal_connect_object (self->kind, "chosen", G_CALLBACK (chosen_cb), self, 0);
  gtk_box_append (GTK_BOX (self), self->person);
  gtk_box_append (GTK_BOX (self), self->kind);
  self->from = add_entry (self, _("_From"), _("First day, like 2026-03-01"), _("any day"), "from", 10, G_CALLBACK (day_cb));
  self->to = add_entry (self, _("_to"), _("Last day, like 2026-03-31"), _("any day"), "to", 10, G_CALLBACK (day_cb));
  self->item = add_entry (self, _("_Item"), _("Show only lines about this item"), _("any, by its name"), "item", ITEM_CHARS,
                          G_CALLBACK (item_cb));
  gtk_widget_set_hexpand (self->item, TRUE);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->item), -1);
}

GtkWidget *
sy_journal_narrow_new (SyTaskList *list)
{
  SyJournalNarrow *self = g_object_new (SY_TYPE_JOURNAL_NARROW, NULL);

  self->list = g_object_ref (list);
  return GTK_WIDGET (self);
}

const SyJournalFilter *
sy_journal_narrow_get (SyJournalNarrow *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_NARROW (self), NULL);
  return &self->filter;
}

void
sy_journal_narrow_set_people (SyJournalNarrow *self, char **people)
{
  g_return_if_fail (SY_IS_JOURNAL_NARROW (self));
  sy_key_choice_set_keys (SY_KEY_CHOICE (self->person), people);
}

void
sy_journal_narrow_clear (SyJournalNarrow *self)
{
  g_return_if_fail (SY_IS_JOURNAL_NARROW (self));
  self->is_setting = TRUE;
  sy_key_choice_choose (SY_KEY_CHOICE (self->person), NULL);
  sy_key_choice_choose (SY_KEY_CHOICE (self->kind), NULL);
  gtk_editable_set_text (GTK_EDITABLE (self->from), "");
  gtk_editable_set_text (GTK_EDITABLE (self->to), "");
  self->is_setting = FALSE;
  sy_journal_narrow_set_item (self, NULL, "");
}

void
sy_journal_narrow_set_item (SyJournalNarrow *self, const char *id, const char *name)
{
  g_return_if_fail (SY_IS_JOURNAL_NARROW (self));
  self->is_setting = TRUE;
  g_free (self->item_id);
  self->item_id = g_strdup (id);
  gtk_editable_set_text (GTK_EDITABLE (self->item), name);
  sy_mark_wrong (self->item, FALSE);
  self->is_setting = FALSE;
  renew (self);
}
