/* SPDX-License-Identifier: MIT */
#include "sy-journal-check.h"

#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-progress-row.h"
#include "sy-show.h"
#include "sy-task-parts.h"

#include <string.h>

#define HEAD_DIGITS 64
#define LONG 200 /* bytes: more than a line or two */
#define LONG_HEIGHT 102

struct _SyJournalCheck
{
  GtkBox parent_instance;
  SyWorker *worker;
  GtkWidget *head, *verify, *rebuild, *progress, *words, *scroller;
  gboolean is_before_rebuild; /* what is being verified is what the lists are to be made from */
};

G_DEFINE_FINAL_TYPE (SyJournalCheck, sy_journal_check, GTK_TYPE_BOX)

enum
{
  FOUND,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
say (SyJournalCheck *self, const char *words, gboolean is_wrong)
{
  if (is_wrong)
    gtk_widget_add_css_class (self->words, "sy-problem");
  else
    gtk_widget_remove_css_class (self->words, "sy-problem");
  gtk_label_set_text (GTK_LABEL (self->words), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->words), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  /* What is wrapped asks for the height of its longest line alone. */
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scroller), strlen (words) > LONG ? LONG_HEIGHT : -1);
  gtk_widget_set_visible (self->scroller, *words != '\0');
}

static void
set_busy (SyJournalCheck *self, gboolean is_busy)
{
  sy_button_set_busy (self->verify, is_busy);
  sy_button_set_busy (self->rebuild, is_busy);
  sy_button_set_busy (self->head, is_busy);
  if (!is_busy)
    sy_progress_row_end (SY_PROGRESS_ROW (self->progress));
}

static void
say_error (SyJournalCheck *self, const GError *error)
{
  const gboolean is_stopped = g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);

  say (self, is_stopped ? _("Stopped. Nothing was found out, and nothing was changed.") : error->message, !is_stopped);
}

/* The figures of a head without the blanks between which a sheet prints them; NULL: these are none. New string. */
static char *
read_head (const char *text)
{
  GString *figures = g_string_new (NULL);

  for (; *text != '\0'; text++)
    if (!g_ascii_isspace (*text))
      g_string_append_c (figures, g_ascii_tolower (*text));
  if (figures->len == 0 || (figures->len == HEAD_DIGITS && strspn (figures->str, "0123456789abcdef") == HEAD_DIGITS))
    return g_string_free (figures, FALSE);
  g_string_free (figures, TRUE);
  return NULL;
}

/* Topics: verifying */

static void
say_seal (SyJournalCheck *self, const SyVerification *found)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *when = g_date_time_format (now, "%Y-%m-%d %H:%M");
  g_autofree char *words = sy_verification_words (found, sy_translate);
  g_autofree char *head = sy_hash_text (&found->head.hash);
  g_autofree char *seal = NULL;

  /* What holds says its head itself. */
  if (found->fault == SY_FAULT_NONE)
    /* Translators: time of day, and what was found in words. */
    seal = g_strdup_printf (_("Verified %s. %s\nWhat the pages list is held against the journal by “Rebuild the lists”."), when,
                            words);
  else
    /* Translators: time of day, what was found in words, and the line and hash up to which the journal holds. */
    seal = g_strdup_printf (_("Verified %s. %s\nHead of what holds: line %" G_GUINT64_FORMAT ", %s"), when, words,
                            found->head.number, head);
  say (self, seal, found->fault != SY_FAULT_NONE);
}

/* Lists that are made anew from lines that were changed, added or cut off would say what those say now, and what the lists still
   tell of what stood there would be gone. */
static gboolean
can_make_lists_of (const SyVerification *found)
{
  return found->fault == SY_FAULT_NONE || found->fault == SY_FAULT_PARTS || found->fault == SY_FAULT_FILE;
}

static void make_lists (SyJournalCheck *self);

static void
say_found (SyJournalCheck *self, const SyVerification *found)
{
  say_seal (self, found);
  if (self->is_before_rebuild)
    {
      g_autofree char *seal = g_strconcat (_("The lists were left as they are, because the journal does not hold."), "\n",
                                           gtk_label_get_text (GTK_LABEL (self->words)), NULL);

      say (self, seal, TRUE);
    }
  if (found->fault != SY_FAULT_NONE && found->line > 0)
    g_signal_emit (self, signals[FOUND], 0, found->line);
}

static void
verified_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalCheck) self = user_data;
  g_autoptr (GError) error = NULL;
  SyVerification found = { 0 };

  if (!sy_worker_verify_finish (SY_WORKER (source), result, &found, &error))
    {
      if (self->worker != NULL)
        {
          set_busy (self, FALSE);
          say_error (self, error);
        }
      return;
    }
  if (self->worker != NULL)
    {
      set_busy (self, FALSE);
      if (self->is_before_rebuild && can_make_lists_of (&found))
        make_lists (self);
      else
        say_found (self, &found);
    }
  sy_verification_clear (&found);
}

static void
verify_cb (GtkWidget *widget, SyJournalCheck *self)
{
  (void) widget;
  sy_journal_check_verify (self);
}

static void
edited_cb (GtkEditable *editable, SyJournalCheck *self)
{
  g_autofree char *head = read_head (gtk_editable_get_text (editable));

  /* While it is being typed it is not wrong yet. */
  if (head != NULL)
    sy_mark_wrong (self->head, FALSE);
}

/* Topics: making the lists anew */

static void
say_rebuild (SyJournalCheck *self, const SyRebuild *rebuild)
{
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words,
                          P_ ("Made anew from %" G_GUINT64_FORMAT " line of the journal. ",
                              "Made anew from %" G_GUINT64_FORMAT " lines of the journal. ", rebuild->lines),
                          rebuild->lines);
  if (rebuild->n_different == 0)
    g_string_append (words, _("The lists were what the journal says; nothing differed."));
  else
    g_string_append_printf (words,
                            P_ ("%" G_GUINT64_FORMAT " entry was not what the journal says and was put right:",
                                "%" G_GUINT64_FORMAT " entries were not what the journal says and were put right:",
                                rebuild->n_different),
                            rebuild->n_different);
  for (guint i = 0; i < rebuild->differences->len; i++)
    g_string_append_printf (words, "\n%s", (char *) rebuild->differences->pdata[i]);
  if (rebuild->n_different > rebuild->differences->len)
    g_string_append (words, "\n…");
  if (rebuild->n_different > 0)
    {
      g_string_append_c (words, '\n');
      g_string_append (words, _("Open the record again to see its lists as they now are."));
    }
  say (self, words->str, rebuild->n_different > 0);
}

static void
rebuilt_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SyJournalCheck) self = user_data;
  g_autoptr (GError) error = NULL;
  SyRebuild rebuild = { 0 };
  const gboolean done = sy_worker_rebuild_finish (SY_WORKER (source), result, &rebuild, &error);

  if (self->worker != NULL)
    {
      set_busy (self, FALSE);
      if (done)
        say_rebuild (self, &rebuild);
      else
        say_error (self, error);
    }
  sy_rebuild_clear (&rebuild);
}

static void
make_lists (SyJournalCheck *self)
{
  g_autoptr (GCancellable) cancellable = NULL;

  set_busy (self, TRUE);
  cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), _("Making the lists anew"));
  sy_worker_rebuild_async (self->worker, cancellable, sy_progress_row_step, self->progress, rebuilt_cb,
                           g_object_ref (self));
}

static void
rebuild_cb (GtkButton *button, SyJournalCheck *self)
{
  (void) button;
  sy_journal_check_rebuild (self);
}

/* Topics: building */

static void
sy_journal_check_dispose (GObject *object)
{
  SyJournalCheck *self = SY_JOURNAL_CHECK (object);

  if (self->worker != NULL)
    sy_progress_row_stop (SY_PROGRESS_ROW (self->progress));
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_journal_check_parent_class)->dispose (object);
}

static void
sy_journal_check_class_init (SyJournalCheckClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sy_journal_check_dispose;
  signals[FOUND] = g_signal_new ("found", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                 G_TYPE_UINT64);
}

static void
build (SyJournalCheck *self)
{
  GtkWidget *bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *caption = gtk_label_new_with_mnemonic (_("_Head from a sheet"));

  self->head = gtk_entry_new ();
  self->verify = sy_button_new (_("_Verify"), NULL);
  self->rebuild = sy_button_new (_("Re_build the lists"), NULL);
  self->progress = sy_progress_row_new ();
  self->words = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, "xalign", 0.0, "wrap", TRUE,
                              "wrap-mode", PANGO_WRAP_WORD_CHAR, "selectable", TRUE, NULL);
  self->scroller = gtk_scrolled_window_new ();

  gtk_label_set_mnemonic_widget (GTK_LABEL (caption), self->head);
  gtk_widget_add_css_class (caption, "sy-quiet");
  gtk_widget_set_name (self->head, "head");
  gtk_widget_set_name (self->verify, "verify");
  gtk_widget_set_name (self->rebuild, "rebuild");
  gtk_widget_set_name (self->words, "seal");
  sy_name (self->head, _("Head from a sheet"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->head), _("64 figures, may be left empty"));
  gtk_widget_set_tooltip_text (self->head, _("The head of the journal that stands on a sheet printed earlier: with it, a journal "
                                             "whose end was cut off is found out"));
  gtk_widget_set_hexpand (self->head, TRUE);
  gtk_widget_add_css_class (self->head, "sy-figures");
  gtk_widget_set_tooltip_text (self->verify, _("Compute the chain of the journal anew and hold every line against it"));
  gtk_widget_set_tooltip_text (self->rebuild, _("Make the lists anew from the journal and say what differed"));
  gtk_widget_add_css_class (self->words, "sy-figures");
  g_signal_connect (self->head, "activate", G_CALLBACK (verify_cb), self);
  g_signal_connect (self->head, "changed", G_CALLBACK (edited_cb), self);
  g_signal_connect (self->verify, "clicked", G_CALLBACK (verify_cb), self);
  g_signal_connect (self->rebuild, "clicked", G_CALLBACK (rebuild_cb), self);

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->words);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scroller), 150);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_visible (self->scroller, FALSE);

  gtk_box_append (GTK_BOX (bar), caption);
  gtk_box_append (GTK_BOX (bar), self->head);
  gtk_box_append (GTK_BOX (bar), self->verify);
  gtk_box_append (GTK_BOX (bar), self->rebuild);
  gtk_box_append (GTK_BOX (self), bar);
  gtk_box_append (GTK_BOX (self), self->progress);
  gtk_box_append (GTK_BOX (self), self->scroller);
}

static void
sy_journal_check_init (SyJournalCheck *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  build (self);
}

GtkWidget *
sy_journal_check_new (SyWorker *worker)
{
  SyJournalCheck *self = g_object_new (SY_TYPE_JOURNAL_CHECK, NULL);

  self->worker = g_object_ref (worker);
  return GTK_WIDGET (self);
}

void
sy_journal_check_set_head (SyJournalCheck *self, const char *text)
{
  g_return_if_fail (SY_IS_JOURNAL_CHECK (self));
  gtk_editable_set_text (GTK_EDITABLE (self->head), text);
}

void
sy_journal_check_verify (SyJournalCheck *self)
{
  g_autofree char *text = NULL;
  g_autoptr (GCancellable) cancellable = NULL;
  SyHash known;

  g_return_if_fail (SY_IS_JOURNAL_CHECK (self));
  if (sy_journal_check_is_busy (self))
    return;
  text = read_head (gtk_editable_get_text (GTK_EDITABLE (self->head)));
  sy_mark_wrong (self->head, text == NULL);
  if (text == NULL)
    {
      say (self, _("A head has 64 figures, 0 to 9 and a to f. Type it as the sheet has it, or leave it empty."), TRUE);
      gtk_widget_grab_focus (self->head);
      return;
    }
  say (self, "", FALSE);
  set_busy (self, TRUE);
  self->is_before_rebuild = FALSE;
  cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), _("Verifying the journal"));
  sy_worker_verify_async (self->worker, sy_hash_from_text (text, &known) ? &known : NULL, cancellable, sy_progress_row_step,
                          self->progress, verified_cb, g_object_ref (self));
}

void
sy_journal_check_rebuild (SyJournalCheck *self)
{
  g_autoptr (GCancellable) cancellable = NULL;

  g_return_if_fail (SY_IS_JOURNAL_CHECK (self));
  if (sy_journal_check_is_busy (self))
    return;
  say (self, "", FALSE);
  set_busy (self, TRUE);
  self->is_before_rebuild = TRUE;
  cancellable = sy_progress_row_begin (SY_PROGRESS_ROW (self->progress), _("Verifying the journal"));
  sy_worker_verify_async (self->worker, NULL, cancellable, sy_progress_row_step, self->progress, verified_cb,
                          g_object_ref (self));
}

gboolean
sy_journal_check_is_busy (SyJournalCheck *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_CHECK (self), FALSE);
  return sy_progress_row_is_busy (SY_PROGRESS_ROW (self->progress));
}

const char *
sy_journal_check_get_words (SyJournalCheck *self)
{
  g_return_val_if_fail (SY_IS_JOURNAL_CHECK (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->words));
}
