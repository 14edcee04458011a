/* SPDX-License-Identifier: MIT */
#include "sy-new-page.h"

#include "sy-i18n.h"
#include "sy-task-kinds.h"
#include "sy-task-parts.h"

#define WIDTH 820
#define COLUMNS 2

struct _SyNewPage
{
  GtkWidget parent_instance;

  GtkWidget *scroller;
  GtkWidget *first; /* one lift */
};

G_DEFINE_FINAL_TYPE (SyNewPage, sy_new_page, GTK_TYPE_WIDGET)

static GtkWidget *
new_offer (const SyTaskKind *kind)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  const char *offer = sy_translate (kind->offer), *what = sy_translate (kind->what);
  g_autofree char *id = g_strdup_printf ("new:%s", kind->method);
  GtkWidget *words = sy_part_label (what, "sy-note");

  gtk_box_append (GTK_BOX (box), sy_part_label (offer, "sy-strong"));
  gtk_box_append (GTK_BOX (box), words);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_set_name (button, id);
  gtk_widget_add_css_class (button, "sy-offer");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, offer,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, what, -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.new-item");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", kind->method);
  return button;
}

/* Side by side, so that all that can be assessed is seen at once. */
static void
add_offers (SyNewPage *self, GtkWidget *column, SyOffer group, const char *title)
{
  gsize n;
  const SyTaskKind *const *kinds = sy_task_kinds (&n);
  GtkWidget *grid = gtk_grid_new ();
  int count = 0;

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_box_append (GTK_BOX (column), sy_part_heading (title));
  gtk_box_append (GTK_BOX (column), grid);
  for (gsize i = 0; i < n; i++)
    {
      GtkWidget *offer;

      if (kinds[i]->group != group)
        continue;
      offer = new_offer (kinds[i]);
      if (self->first == NULL)
        self->first = offer;
      gtk_grid_attach (GTK_GRID (grid), offer, count % COLUMNS, count / COLUMNS, 1, 1);
      count++;
    }
}

static gboolean
sy_new_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (SY_NEW_PAGE (widget)->first);
}

/* Without this, Tab would come in by way of grab_focus, past what stands before. */
static gboolean
sy_new_page_focus (GtkWidget *widget, GtkDirectionType direction)
{
  return gtk_widget_child_focus (SY_NEW_PAGE (widget)->scroller, direction);
}

static void
sy_new_page_dispose (GObject *object)
{
  g_clear_pointer (&SY_NEW_PAGE (object)->scroller, gtk_widget_unparent);
  G_OBJECT_CLASS (sy_new_page_parent_class)->dispose (object);
}

static void
sy_new_page_class_init (SyNewPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = sy_new_page_dispose;
  widget_class->grab_focus = sy_new_page_grab_focus;
  widget_class->focus = sy_new_page_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sy-new");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sy_new_page_init (SyNewPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_widget_set_size_request (column, WIDTH, -1);
  gtk_widget_set_halign (column, GTK_ALIGN_CENTER);
  gtk_widget_set_margin_top (column, 12);
  gtk_widget_set_margin_start (column, 24);
  gtk_widget_set_margin_end (column, 24);
  gtk_widget_set_margin_bottom (column, 12);
  add_offers (self, column, SY_OFFER_HANDS, _("By hand"));
  add_offers (self, column, SY_OFFER_GEAR, _("With gear"));
  add_offers (self, column, SY_OFFER_WHOLE, _("The whole change, and the case for an aid"));
  add_offers (self, column, SY_OFFER_REGISTER, _("For the registers"));
  self->scroller = sy_part_scroller (column, _("What is to be assessed?"));
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}

GtkWidget *
sy_new_page_new (void)
{
  return g_object_new (SY_TYPE_NEW_PAGE, NULL);
}
