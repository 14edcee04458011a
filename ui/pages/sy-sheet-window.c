/* SPDX-License-Identifier: MIT */
#include "sy-sheet-window.h"

#include "sy-i18n.h"
#include "sy-paper-out.h"
#include "sy-sheet-window-private.h"

#include <string.h>

G_DEFINE_FINAL_TYPE (SySheetWindow, sy_sheet_window, GTK_TYPE_WINDOW)

/* Topics: what is said */

static void
say (GtkWidget *window, gboolean trouble, const char *words)
{
  SySheetWindow *self = SY_SHEET_WINDOW (window);

  gtk_label_set_text (GTK_LABEL (self->message), words);
  gtk_widget_set_visible (self->message, *words != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->message), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  if (trouble)
    gtk_widget_add_css_class (self->message, "sy-problem");
  else
    gtk_widget_remove_css_class (self->message, "sy-problem");
}

static void
note (SySheetWindow *self, const char *words)
{
  gtk_label_set_text (GTK_LABEL (self->note), words);
  gtk_widget_set_visible (self->note, *words != '\0');
}

static void
update_note (SySheetWindow *self)
{
  const SySheetSource *source = self->source;
  g_autofree char *words = NULL;

  if (self->item == NULL && source->binder == NULL)
    words = g_strdup_printf (_("There is no sheet yet. %s"), self->problem != NULL ? self->problem : source->unreadable);
  else if (self->item == NULL)
    words = g_strdup (_("This was never saved: it is in no record, and the sheet says so."));
  else if (source->unreadable != NULL)
    words = g_strdup_printf (_("This revision can no longer be worked out: %s. Only its history can be printed."),
                             source->unreadable);
  else if (self->has_unsaved)
    words = g_strdup_printf (_("What is typed and not saved is not on the sheet. It shows revision %ld, as it was saved."),
                             (long) source->binder->dossier.event->revision);
  note (self, words != NULL ? words : "");
}

/* Topics: the sheet */

const SyDossierKind *
sy_sheet_window_kind (SySheetWindow *self)
{
  for (guint i = 0; i < self->n_kinds; i++)
    if (g_strcmp0 (self->kinds[i].id, self->kind) == 0)
      return &self->kinds[i];
  return NULL;
}

static SyFolio *
make_folio (GtkWidget *window, char **made, GError **error)
{
  SySheetWindow *self = SY_SHEET_WINDOW (window);

  (void) error;
  if (sy_sheet_window_kind (self) == NULL)
    return NULL;
  *made = g_strdup (self->source->made);
  return sy_dossier_sheet_new (&self->source->binder->dossier,
                               &(SyDossierAsk) { .kind = self->kind, .paper = self->paper, .translate = sy_translate,
                                                 .program = "steelyard " SY_VERSION, .made = self->source->made });
}

static const SyPaperOut paper_out = {
  .make = make_folio,
  .say = say,
  .ask = N_ ("Save the sheet"),
  .job = N_ ("Sheet"),
  .not_saved = N_ ("The sheet was not saved: {why}"),
  .not_printed = N_ ("The sheet was not printed: {why}"),
  .sent = N_ ("The sheet was sent to the printer."),
};

void
sy_sheet_window_show_sheet (SySheetWindow *self)
{
  const SyDossierKind *kind = sy_sheet_window_kind (self);
  g_autofree char *made = NULL;
  SyFolio *folio = make_folio (GTK_WIDGET (self), &made, NULL);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.print", folio != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.save", folio != NULL);
  sy_sheet_view_take (SY_SHEET_VIEW (self->view), folio, kind != NULL ? sy_translate (kind->title) : "");
}

/* Topics: reading */

static void
drop_source (SySheetWindow *self)
{
  /* The pages hold what they are drawn from. */
  if (self->view != NULL)
    sy_sheet_view_take (SY_SHEET_VIEW (self->view), NULL, "");
  g_clear_pointer (&self->source, sy_sheet_source_free);
  self->n_kinds = 0;
}

static void
take_source (SySheetWindow *self, SySheetSource *source)
{
  const gboolean is_first = self->source == NULL;

  drop_source (self);
  self->source = source;
  self->n_kinds = source->binder != NULL ? sy_dossier_kinds (&source->binder->dossier, self->kinds) : 0;
  if (source->binder != NULL)
    {
      g_autofree char *title = g_strdup_printf (_("Print: %s"), source->binder->dossier.event->name);

      gtk_window_set_title (GTK_WINDOW (self), title);
    }
  sy_sheet_window_offer (self);
  update_note (self);
  /* What the person came for was not there yet when the window was shown. */
  if (is_first)
    gtk_widget_child_focus (self->kinds_box, GTK_DIR_TAB_FORWARD);
  sy_sheet_window_show_sheet (self);
}

static void
read_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (SySheetWindow) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (SySheetSource) source = sy_worker_sheet_finish (SY_WORKER (object), result, &error);

  if (self->view == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  gtk_widget_set_visible (self->again, source == NULL);
  if (source != NULL)
    {
      say (GTK_WIDGET (self), FALSE, "");
      take_source (self, g_steal_pointer (&source));
    }
  else
    {
      g_autofree char *words = g_strdup_printf (_("The record could not be read: %s"), error->message);

      say (GTK_WIDGET (self), TRUE, words);
    }
}

void
sy_sheet_window_read (SySheetWindow *self)
{
  g_cancellable_cancel (self->cancellable);
  g_object_unref (self->cancellable);
  self->cancellable = g_cancellable_new ();
  gtk_widget_set_visible (self->again, FALSE);
  say (GTK_WIDGET (self), FALSE, _("Reading the record…"));
  if (self->item != NULL)
    sy_worker_sheet_async (self->worker, self->item, self->revision, self->cancellable, read_cb, g_object_ref (self));
  else
    sy_worker_sheet_of_facts_async (self->worker, self->name, self->facts, self->cancellable, read_cb, g_object_ref (self));
}

static void
changed_cb (SyWorker *worker, SySheetWindow *self)
{
  (void) worker;
  if (self->view == NULL || self->item == NULL || self->source == NULL)
    return;
  /* What is being read must not change under the reader. */
  gtk_widget_set_visible (self->again, TRUE);
  say (GTK_WIDGET (self), FALSE, _("The record has moved on since this was read."));
}

/* Topics: actions */

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_paper_out_print (widget, &paper_out);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SySheetWindow *self = SY_SHEET_WINDOW (widget);
  const char *of = *self->source->binder->dossier.event->name != '\0' ? self->source->binder->dossier.event->name : _("New");
  /* Translators: file name: what it is of, which kind of sheet. */
  g_autofree char *file = g_strdup_printf (_("%s, %s.pdf"), of, sy_translate (sy_sheet_window_kind (self)->title));

  (void) name, (void) parameter;
  g_strdelimit (file, "/\\:", '-');
  sy_paper_out_save (widget, &paper_out, file);
}

static void
again_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  sy_sheet_window_read (SY_SHEET_WINDOW (widget));
}

static void
zoom_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const struct
  {
    const char *name;
    SySheetZoom zoom;
  } zooms[] = {
    { "sheet.real", SY_SHEET_REAL },
    { "sheet.width", SY_SHEET_WIDTH },
    { "sheet.larger", SY_SHEET_LARGER },
    { "sheet.smaller", SY_SHEET_SMALLER },
  };

  (void) parameter;
  for (gsize i = 0; i < G_N_ELEMENTS (zooms); i++)
    if (strcmp (zooms[i].name, name) == 0)
      sy_sheet_view_zoom (SY_SHEET_VIEW (SY_SHEET_WINDOW (widget)->view), zooms[i].zoom);
}

/* (i): screens; those beyond a hundred: to one end. */
static void
scroll_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SySheetView *view = SY_SHEET_VIEW (SY_SHEET_WINDOW (widget)->view);
  const int screens = g_variant_get_int32 (parameter);

  (void) name;
  if (ABS (screens) > 100)
    sy_sheet_view_go (view, screens > 0);
  else
    sy_sheet_view_scroll (view, screens);
}

/* Topics: the widget */

static void
sy_sheet_window_dispose (GObject *object)
{
  SySheetWindow *self = SY_SHEET_WINDOW (object);

  g_cancellable_cancel (self->cancellable);
  drop_source (self);
  self->view = NULL;
  g_clear_object (&self->worker);
  G_OBJECT_CLASS (sy_sheet_window_parent_class)->dispose (object);
}

static void
sy_sheet_window_finalize (GObject *object)
{
  SySheetWindow *self = SY_SHEET_WINDOW (object);

  g_object_unref (self->cancellable);
  g_clear_pointer (&self->revisions, g_array_unref);
  g_free (self->item);
  g_free (self->name);
  g_free (self->facts);
  g_free (self->problem);
  G_OBJECT_CLASS (sy_sheet_window_parent_class)->finalize (object);
}

static void
add_key (GtkWidgetClass *klass, guint key, GdkModifierType modifiers, const char *action)
{
  gtk_widget_class_add_binding_action (klass, key, modifiers, action, NULL);
}

static void
sy_sheet_window_class_init (SySheetWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sy_sheet_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = sy_sheet_window_finalize;
  gtk_widget_class_install_action (widget_class, "sheet.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "sheet.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "sheet.again", NULL, again_action);
  gtk_widget_class_install_action (widget_class, "sheet.real", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "sheet.width", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "sheet.larger", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "sheet.smaller", NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "sheet.scroll", "i", scroll_action);
  add_key (widget_class, GDK_KEY_Escape, 0, "window.close");
  add_key (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close");
  add_key (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "sheet.print");
  add_key (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "sheet.save");
  add_key (widget_class, GDK_KEY_0, 0, "sheet.real");
  add_key (widget_class, GDK_KEY_KP_0, 0, "sheet.real");
  add_key (widget_class, GDK_KEY_plus, 0, "sheet.larger");
  add_key (widget_class, GDK_KEY_KP_Add, 0, "sheet.larger");
  add_key (widget_class, GDK_KEY_minus, 0, "sheet.smaller");
  add_key (widget_class, GDK_KEY_KP_Subtract, 0, "sheet.smaller");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Down, 0, "sheet.scroll", "i", 1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Up, 0, "sheet.scroll", "i", -1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_End, 0, "sheet.scroll", "i", G_MAXINT);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Home, 0, "sheet.scroll", "i", -G_MAXINT);
}

static void
sy_sheet_window_init (SySheetWindow *self)
{
  self->cancellable = g_cancellable_new ();
  self->paper = sy_paper_of_locale ();
}

GtkWidget *
sy_sheet_window_new (GtkWindow *parent, SyWorker *worker)
{
  SySheetWindow *self
    = g_object_new (SY_TYPE_SHEET_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, "title", _("Print"), NULL);

  self->worker = g_object_ref (worker);
  g_signal_connect_object (worker, "changed", G_CALLBACK (changed_cb), self, 0);
  sy_sheet_window_build (self);
  sy_sheet_window_show_sheet (self);
  return GTK_WIDGET (self);
}

void
sy_sheet_window_open (SySheetWindow *self, const char *item, gint64 revision, gboolean has_unsaved)
{
  g_return_if_fail (SY_IS_SHEET_WINDOW (self));
  g_free (self->item);
  self->item = g_strdup (item);
  self->revision = revision;
  self->has_unsaved = has_unsaved;
  sy_sheet_window_read (self);
}

void
sy_sheet_window_open_facts (SySheetWindow *self, const char *name, const char *facts, const char *problem)
{
  g_return_if_fail (SY_IS_SHEET_WINDOW (self));
  g_clear_pointer (&self->item, g_free);
  g_free (self->name);
  self->name = g_strdup (name);
  g_free (self->facts);
  self->facts = g_strdup (facts);
  g_free (self->problem);
  self->problem = g_strdup (problem);
  sy_sheet_window_read (self);
}

const char *
sy_sheet_window_get_kind (SySheetWindow *self)
{
  const SyDossierKind *kind;

  g_return_val_if_fail (SY_IS_SHEET_WINDOW (self), NULL);
  kind = sy_sheet_window_kind (self);
  return kind != NULL ? kind->id : NULL;
}

gboolean
sy_sheet_window_choose (SySheetWindow *self, const char *kind, SyPaper paper)
{
  g_return_val_if_fail (SY_IS_SHEET_WINDOW (self), FALSE);
  for (guint i = 0; i < self->n_kinds; i++)
    if (strcmp (self->kinds[i].id, kind) == 0 && (self->kinds[i].papers & (1u << paper)) != 0)
      {
        self->kind = self->kinds[i].id;
        self->paper = paper;
        sy_sheet_window_offer (self);
        sy_sheet_window_show_sheet (self);
        return TRUE;
      }
  return FALSE;
}

SySheetView *
sy_sheet_window_get_view (SySheetWindow *self)
{
  g_return_val_if_fail (SY_IS_SHEET_WINDOW (self), NULL);
  return SY_SHEET_VIEW (self->view);
}

gboolean
sy_sheet_window_write (SySheetWindow *self, const char *path)
{
  g_return_val_if_fail (SY_IS_SHEET_WINDOW (self), FALSE);
  return sy_paper_out_write (GTK_WIDGET (self), &paper_out, path);
}
