/* SPDX-License-Identifier: MIT */
#include "sy-paper-out.h"

#include "sy-file-ask.h"
#include "sy-i18n.h"
#include "sy-name.h"
#include "sy-print-folio.h"

static void
say_why (GtkWidget *page, const SyPaperOut *out, const char *template, const char *why)
{
  g_autofree char *words = sy_words_say (sy_translate, template, "why", why, NULL);

  out->say (page, TRUE, words);
}

/* A page that somebody still holds, but that has left its window, says nothing any more. */
static gboolean
is_gone (GtkWidget *page)
{
  return gtk_widget_get_first_child (page) == NULL;
}

gboolean
sy_paper_out_write (GtkWidget *page, const SyPaperOut *out, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *made = NULL, *words = NULL;
  g_autoptr (SyFolio) folio = out->make (page, &made, &error);

  if (folio == NULL && error == NULL)
    return FALSE;
  if (folio == NULL || !sy_folio_write_pdf (folio, path, made, &error))
    {
      say_why (page, out, out->not_saved, error->message);
      return FALSE;
    }
  words = g_strdup_printf (_("Saved as %s"), path);
  out->say (page, FALSE, words);
  return TRUE;
}

/* Topics: asking where */

typedef struct
{
  GtkWidget *page;
  const SyPaperOut *out;
} Asked;

static void
file_chosen_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Asked *asked = user_data;
  g_autoptr (GFile) file = sy_file_ask_save_finish (result);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  (void) source;
  if (path != NULL && !is_gone (asked->page))
    sy_paper_out_write (asked->page, asked->out, path);
  else if (file != NULL && !is_gone (asked->page))
    say_why (asked->page, asked->out, asked->out->not_saved, _("this place is not a folder of this computer."));
  g_object_unref (asked->page);
  g_free (asked);
}

static GtkWindow *
window_of (GtkWidget *page)
{
  GtkRoot *root = gtk_widget_get_root (page);

  return GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL;
}

void
sy_paper_out_save (GtkWidget *page, const SyPaperOut *out, const char *file)
{
  Asked *asked = g_new0 (Asked, 1);

  asked->page = g_object_ref (page);
  asked->out = out;
  sy_file_ask_save_async (window_of (page), sy_translate (out->ask), file, _("PDF documents"), "*.pdf", NULL, file_chosen_cb,
                          asked);
}

/* Topics: printing */

static void
printed_cb (gboolean sent, const GError *error, gpointer user_data)
{
  GtkWidget *page = user_data;
  const SyPaperOut *out = g_object_get_data (G_OBJECT (page), "sy-paper-out");

  if (is_gone (page))
    return;
  if (error != NULL)
    say_why (page, out, out->not_printed, error->message);
  else if (sent)
    out->say (page, FALSE, sy_translate (out->sent));
}

void
sy_paper_out_print (GtkWidget *page, const SyPaperOut *out)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *made = NULL;
  SyFolio *folio = out->make (page, &made, &error);

  if (error != NULL)
    say_why (page, out, out->not_printed, error->message);
  if (folio == NULL)
    return;
  out->say (page, FALSE, "");
  g_object_set_data (G_OBJECT (page), "sy-paper-out", (gpointer) out);
  sy_print_folio (page, folio, sy_translate (out->job), printed_cb);
}

/* Topics: the paper */

SyPaper
sy_paper_of_locale (void)
{
  return g_strcmp0 (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) == 0 ? SY_PAPER_LETTER : SY_PAPER_A4;
}

GtkWidget *
sy_paper_choice_add (GtkBox *bar)
{
  const char *const papers[] = { _("A4"), _("Letter"), NULL };
  GtkWidget *caption = gtk_label_new_with_mnemonic (_("P_aper"));
  GtkWidget *choice = gtk_drop_down_new_from_strings (papers);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), sy_paper_of_locale () == SY_PAPER_LETTER ? 1 : 0);
  sy_name (choice, _("Paper"));
  gtk_label_set_mnemonic_widget (GTK_LABEL (caption), choice);
  gtk_widget_add_css_class (caption, "sy-quiet");
  gtk_box_append (bar, caption);
  gtk_box_append (bar, choice);
  return choice;
}

SyPaper
sy_paper_choice_get (GtkWidget *choice)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (choice)) == 1 ? SY_PAPER_LETTER : SY_PAPER_A4;
}
