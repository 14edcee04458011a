/* SPDX-License-Identifier: MIT */
#include "sy-beside-view.h"

#include "sy-drawing.h"
#include "sy-i18n.h"
#include "sy-style.h"
#include "sy-task-parts.h"
#include "sy-verdict-label.h"
#include "sy-view.h"

#include <math.h>

#define BEAM_WIDTH 240
#define BEAM_HEIGHT 84
#define LAST_GRADUATION 3.0
#define NAME_SHARE 5  /* of the width of a row, in twelfths */
#define VALUE_SHARE 3
#define TURN_SHARE 1

/* Topics: the head of a side */

static void
draw_beam_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  SyBeam beam = *(const SyBeam *) data;
  SyPalette palette = sy_style_palette (GTK_WIDGET (area));
  g_autofree char *font = sy_view_font (GTK_WIDGET (area), 0.86);

  beam.beyond_text = _("beyond 3");
  beam.unbounded_text = _("no limit holds");
  sy_drawing_beam (cr, width, height, &beam, &palette, font);
}

static GtkWidget *
new_beam (const SyBesideSide *side)
{
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, "content-width", BEAM_WIDTH,
                                  "content-height", BEAM_HEIGHT, "hexpand", TRUE, NULL);
  SyBeam *beam = g_new0 (SyBeam, 1);

  *beam = (SyBeam) { .index = side->index, .goal = isnan (side->goal) ? 1 : side->goal, .p5 = NAN, .p95 = NAN,
                     .end = LAST_GRADUATION, .symbol = g_intern_string (side->index_symbol), .tilt = 1 };
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_beam_cb, beam, g_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Steelyard"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, side->index_words, -1);
  return area;
}

GtkWidget *
sy_beside_head_new (const SyBesideSide *side)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *verdict = sy_verdict_label_new (FALSE);

  if (side->has_verdict)
    sy_verdict_label_set (SY_VERDICT_LABEL (verdict), side->method, side->verdict, SY_URGENCY_NONE);
  else
    sy_verdict_label_set_none (SY_VERDICT_LABEL (verdict), side->verdict_words, "");
  gtk_box_append (GTK_BOX (head), verdict);
  if (!isnan (side->index))
    gtk_box_append (GTK_BOX (head), new_beam (side));
  gtk_box_append (GTK_BOX (head), sy_part_label (side->index_words, "sy-figures"));
  gtk_box_append (GTK_BOX (head), sy_part_label (side->title, "sy-note"));
  return head;
}

/* Topics: tables */

static const char *
turn_words (SyTurn turn)
{
  switch (turn)
    {
    case SY_TURN_BETTER:
      /* Translators: of two values beside each other, the second against the first. */
      return _("better");
    case SY_TURN_WORSE:
      return _("worse");
    case SY_TURN_NONE:
      break;
    }
  return "";
}

static void
add_cell (GtkGrid *row, const char *text, int at, int share, GtkAccessibleRole role, const char *css_class)
{
  GtkWidget *cell;

  /* What says nothing only keeps its place: a cell without a name would be read out as such. */
  if (*text == '\0')
    {
      gtk_grid_attach (row, g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_NONE, NULL), at, 0, share, 1);
      return;
    }
  cell = g_object_new (GTK_TYPE_LABEL, "accessible-role", role, "label", text, "xalign", 0.0, "wrap", TRUE, "wrap-mode",
                       PANGO_WRAP_WORD_CHAR, "valign", GTK_ALIGN_START, "hexpand", TRUE, "width-chars", 1, NULL);
  if (css_class != NULL)
    gtk_widget_add_css_class (cell, css_class);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_grid_attach (row, cell, at, 0, share, 1);
}

static GtkWidget *
add_row (GtkWidget *table, const char *const *cells, gboolean is_heading, const char *turn_class)
{
  const GtkAccessibleRole role = is_heading ? GTK_ACCESSIBLE_ROLE_COLUMN_HEADER : GTK_ACCESSIBLE_ROLE_CELL;
  const char *look = is_heading ? "sy-quiet" : "sy-figures";
  GtkWidget *row = g_object_new (GTK_TYPE_GRID, "accessible-role", GTK_ACCESSIBLE_ROLE_ROW, "column-spacing", 12,
                                 "column-homogeneous", TRUE, NULL);
  int at = 0;

  add_cell (GTK_GRID (row), cells[0], at, NAME_SHARE, role, is_heading ? "sy-strong" : NULL);
  at += NAME_SHARE;
  for (int i = 1; i <= 2; i++, at += VALUE_SHARE)
    add_cell (GTK_GRID (row), cells[i], at, VALUE_SHARE, role, look);
  add_cell (GTK_GRID (row), cells[3], at, TURN_SHARE, role, turn_class);
  gtk_widget_add_css_class (row, "sy-row");
  gtk_box_append (GTK_BOX (table), row);
  return row;
}

static void
add_table (GtkWidget *box, GPtrArray *rows, const char *name, const char *title)
{
  GtkWidget *table = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_TABLE, "orientation",
                                   GTK_ORIENTATION_VERTICAL, "spacing", 0, NULL);
  const char *const heading[] = { title, _("First"), _("Second"), "" };

  gtk_widget_set_name (table, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (table), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  add_row (table, heading, TRUE, NULL);
  for (guint i = 0; i < rows->len; i++)
    {
      const SyBesideRow *each = rows->pdata[i];
      const char *const cells[] = { each->name, each->texts[0] != NULL ? each->texts[0] : "–",
                                    each->texts[1] != NULL ? each->texts[1] : "–", turn_words (each->turn) };
      GtkWidget *row = add_row (table, cells, FALSE, "sy-strong");
      /* Translators: a row of a table read out: what, the first value, the second. */
      g_autofree char *both = g_strdup_printf (_("%s: first %s, second %s"), cells[0], cells[1], cells[2]);
      g_autofree char *words = g_strconcat (both, *cells[3] != '\0' ? ", " : "", cells[3], NULL);

      gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
    }
  gtk_box_append (GTK_BOX (box), table);
}

GtkWidget *
sy_beside_view_new (const SyBeside *beside)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *sentence = sy_part_label (beside->sentence, "sy-strong");

  gtk_widget_set_name (sentence, "compare-sentence");
  gtk_box_append (GTK_BOX (box), sentence);
  for (guint i = 0; i < beside->remarks->len; i++)
    gtk_box_append (GTK_BOX (box), sy_part_label (beside->remarks->pdata[i], "sy-notice"));
  if (beside->changed->len > 0)
    add_table (box, beside->changed, "compare-changed", _("What changed"));
  else if (beside->same_method)
    gtk_box_append (GTK_BOX (box), sy_part_label (_("No fact differs."), NULL));
  add_table (box, beside->bought, "compare-bought", _("What it bought"));
  if (beside->limits->len > 0)
    add_table (box, beside->limits, "compare-limits", _("Limits"));
  if (beside->reasons->len > 0)
    add_table (box, beside->reasons, "compare-reasons", _("Reasons"));
  return box;
}
