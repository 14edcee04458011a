/* SPDX-License-Identifier: MIT */
#include "sy-test.h"

#include <gtk/gtk.h>

#include "sy-look-resource.h"
#include "sy-style.h"
#include "sy-test-wait.h"

#define LOOK "/org/steelyard/Steelyard/look"

static char *
read_sheet (const char *name)
{
  g_autofree char *path = g_build_path ("/", LOOK, name, NULL);
  g_autoptr (GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

  assert_non_null (bytes);
  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

/* name → GdkRGBA of every @define-color of a sheet. */
static GHashTable *
read_colours (const char *sheet)
{
  GHashTable *colours = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autofree char *text = read_sheet (sheet);
  g_autoptr (GRegex) regex = g_regex_new ("@define-color (\\w+) (#\\w+);", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;

  for (g_regex_match (regex, text, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *value = g_match_info_fetch (match, 2);
      GdkRGBA *rgba = g_new (GdkRGBA, 1);

      assert_true (gdk_rgba_parse (rgba, value));
      assert_true (g_hash_table_insert (colours, g_match_info_fetch (match, 1), rgba));
    }
  assert_true (g_hash_table_size (colours) >= 10);
  return colours;
}

/* Relative luminance and contrast as WCAG 2.1 defines them. */
static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (const GdkRGBA *c)
{
  return 0.2126 * linear ((double) c->red) + 0.7152 * linear ((double) c->green)
         + 0.0722 * linear ((double) c->blue);
}

static double
contrast (GHashTable *colours, const char *a, const char *b)
{
  const GdkRGBA *first = g_hash_table_lookup (colours, a), *second = g_hash_table_lookup (colours, b);
  double high, low;

  assert_non_null (first);
  assert_non_null (second);
  high = MAX (luminance (first), luminance (second));
  low = MIN (luminance (first), luminance (second));
  return (high + 0.05) / (low + 0.05);
}

static void
assert_contrast (const char *sheet)
{
  static const char *const grounds[] = { "sy_paper", "sy_raised", "sy_shade", "sy_chosen" };
  static const char *const texts[] = { "sy_ink", "sy_quiet", "sy_accent_text", "sy_warning" };
  static const char *const lines[] = { "sy_line", "sy_accent" };
  g_autoptr (GHashTable) colours = read_colours (sheet);

  for (gsize g = 0; g < G_N_ELEMENTS (grounds); g++)
    {
      for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
        if (contrast (colours, texts[i], grounds[g]) < 4.5)
          fail_msg ("%s: %s on %s has %.2f:1, text needs 4.5", sheet, texts[i], grounds[g],
                    contrast (colours, texts[i], grounds[g]));
      for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
        if (contrast (colours, lines[i], grounds[g]) < 3)
          fail_msg ("%s: %s on %s has %.2f:1, a line needs 3", sheet, lines[i], grounds[g],
                    contrast (colours, lines[i], grounds[g]));
    }
  assert_true (contrast (colours, "sy_on_accent", "sy_accent") >= 4.5);
}

static void
text_can_be_read_on_every_ground (void **state)
{
  (void) state;
  assert_contrast ("light.css");
  assert_contrast ("dark.css");
}

static void
light_and_dark_name_the_same_colours (void **state)
{
  g_autoptr (GHashTable) light = read_colours ("light.css");
  g_autoptr (GHashTable) dark = read_colours ("dark.css");
  GHashTableIter iter;
  gpointer name;

  (void) state;
  assert_int_equal (g_hash_table_size (light), g_hash_table_size (dark));
  g_hash_table_iter_init (&iter, light);
  while (g_hash_table_iter_next (&iter, &name, NULL))
    assert_true (g_hash_table_contains (dark, name));
}

static void
rules_use_only_named_colours (void **state)
{
  g_autofree char *text = read_sheet ("style.css");
  g_autoptr (GHashTable) light = read_colours ("light.css");
  g_autoptr (GRegex) plain = g_regex_new (":[^;{}]*(#[0-9a-fA-F]{3}|rgb)", 0, 0, NULL);
  g_autoptr (GRegex) named = g_regex_new ("@(\\w+)", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  guint used = 0;

  (void) state;
  assert_false (g_regex_match (plain, text, 0, NULL));
  for (g_regex_match (named, text, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *name = g_match_info_fetch (match, 1);

      used++;
      if (!g_hash_table_contains (light, name))
        fail_msg ("style.css: @%s is not in light.css", name);
    }
  assert_true (used > 30);
}

static void
assert_colour (const SyColour *colour, const char *text)
{
  GdkRGBA rgba;

  assert_true (gdk_rgba_parse (&rgba, text));
  assert_close (colour->red, (double) rgba.red, 1e-6, 0);
  assert_close (colour->green, (double) rgba.green, 1e-6, 0);
  assert_close (colour->blue, (double) rgba.blue, 1e-6, 0);
}

static void
drawings_take_their_colours_from_the_sheet (void **state)
{
  GtkWidget *widget = g_object_ref_sink (gtk_label_new ("x"));
  SyPalette palette = sy_style_palette (widget);
  g_autoptr (SyStyleSheet) sheet = NULL;

  (void) state;
  /* Without a sheet: those of paper. */
  assert_memory_equal (&palette, &sy_palette_paper, sizeof palette);

  /* Strict: a fault in a sheet would end this program. */
  sheet = sy_style_sheet_new (gdk_display_get_default (), LOOK, TRUE);
  sy_style_sheet_set (sheet, SY_STYLE_LIGHT);
  palette = sy_style_palette (widget);
  assert_colour (&palette.paper, "#fbfaf6");
  assert_colour (&palette.ink, "#1d2b44");
  assert_colour (&palette.hairline, "#c9c6bb");
  assert_colour (&palette.accent, "#8a6a1f");
  assert_colour (&palette.warning, "#a63c14");

  sy_style_sheet_set (sheet, SY_STYLE_DARK);
  assert_true (sy_style_sheet_is_dark (sheet));
  palette = sy_style_palette (widget);
  assert_colour (&palette.paper, "#161b22");
  assert_colour (&palette.ink, "#e8e6df");
  assert_colour (&palette.hairline, "#3a4250");
  assert_colour (&palette.accent, "#d9b45b");
  assert_colour (&palette.warning, "#f0875a");

  sy_style_sheet_set (sheet, SY_STYLE_SYSTEM);
  assert_false (sy_style_sheet_is_dark (sheet));
  g_object_unref (widget);
}

static void
ids_of_styles_come_back (void **state)
{
  (void) state;
  for (int i = SY_STYLE_SYSTEM; i <= SY_STYLE_DARK; i++)
    assert_int_equal (sy_style_from_id (sy_style_id ((SyStyle) i)), i);
  assert_int_equal (sy_style_from_id ("no such"), SY_STYLE_SYSTEM);
  assert_int_equal (sy_style_from_id (""), SY_STYLE_SYSTEM);
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (text_can_be_read_on_every_ground),
    cmocka_unit_test (light_and_dark_name_the_same_colours),
    cmocka_unit_test (rules_use_only_named_colours),
    cmocka_unit_test (drawings_take_their_colours_from_the_sheet),
    cmocka_unit_test (ids_of_styles_come_back),
  };

  gtk_init ();
  (void) sy_look_get_resource ();
  return cmocka_run_group_tests (tests, NULL, NULL);
}
