/* SPDX-License-Identifier: MIT */
#include "register-help.h"

#include "sy-lift-set-table.h"

/* Sets of lifts: from a table, in a sentence, line by line, and drawn. */

#define HEAD(kind) "{\"method\":\"lift-set\",\"units\":\"metric\",\"assigned\":\"men-20-45\",\"conditions\":[],\"combine\":\"" kind "\","
#define LIFT(label, mass, more) \
  "{\"label\":\"" label "\",\"load\":{\"typical\":" mass ",\"heaviest\":" mass "},\"origin\":{\"H\":25,\"V\":55,\"A\":45}," \
  "\"travel\":45,\"frequency\":3,\"coupling\":\"good\"" more "}"
#define COMPOSITE HEAD ("composite") "\"duration\":\"long\",\"lifts\":[" LIFT ("Tray", "4", "") "," LIFT ("Blank", "6", "") "]}"
#define SEQUENCE \
  HEAD ("sequence") "\"duration\":\"long\",\"lifts\":[" LIFT ("Tray", "4", ",\"duration\":\"short\",\"share\":0.75") "," \
    LIFT ("Blank", "6", ",\"duration\":\"short\",\"share\":0.25") "]}"
#define ROTA \
  HEAD ("sequence") "\"lifts\":[" LIFT ("Tray", "4", "") "," LIFT ("Blank", "6", "") "],\"rota\":[{\"label\":\"Ann\",\"turns\":[" \
    "{\"lift\":\"Tray\",\"minutes\":60}]},{\"label\":\"Bob\",\"turns\":[{\"lift\":\"2\",\"minutes\":90}]}]}"
#define VARIABLE HEAD ("variable") "\"duration\":\"long\",\"lifts\":[" LIFT ("Tray", "4", "") "," LIFT ("Blank", "6", "") "]}"
#define FIRST "task,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,frequency,coupling\n"

static void
test_the_result_in_a_sentence (void **state)
{
  static const struct
  {
    const char *facts, *words;
  } cases[] = {
    { COMPOSITE, "CLI 1.08; Blank adds most." },
    { HEAD ("composite") "\"duration\":\"long\",\"lifts\":[" LIFT ("Tray", "4", "") "]}", "CLI 0.43 of one lift." },
    { SEQUENCE, "SLI 0.58; Blank leads the rotation." },
    { ROTA, "SLI 0.45: Bob, worst at Blank." },
    { VARIABLE, "VLI 1.08; Blank is the highest of the sample." },
    { HEAD ("composite") "\"duration\":\"long\",\"lifts\":[" LIFT ("Tray", "4", "") ",{\"load\":{\"typical\":1,\"heaviest\":1},"
      "\"origin\":{\"H\":64,\"V\":55,\"A\":45},\"travel\":45,\"frequency\":3,\"coupling\":\"good\"}]}",
      "No limit holds: #2 is beyond the equation." },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree char *words = sy_words_result (assessment->findings, NULL);

      assert_string_equal (words, cases[i].words);
    }
}

static void
test_each_line_can_be_redone (void **state)
{
  static const struct
  {
    const char *facts, *symbol, *line; /* NULL: none */
  } cases[] = {
    { COMPOSITE, "lift.1.HM", NULL },
    { COMPOSITE, "lift.1.VM", "VM = 1 \xe2\x88\x92 0.003 \xc3\x97 20 = 0.94" },
    { COMPOSITE, "lift.1.DM", "DM = 0.82 + 4.5 / 45 = 0.92" },
    { COMPOSITE, "lift.1.AM", "AM = 1 \xe2\x88\x92 0.0032 \xc3\x97 45 = 0.856" },
    { COMPOSITE, "lift.1.FIRWL",
      "FIRWL = 23 \xc3\x97 1 \xc3\x97 0.94 \xc3\x97 0.92 \xc3\x97 0.856 \xc3\x97 1 = 17.026 kg" },
    { COMPOSITE, "lift.1.FM", "FM = FM(3 / min) = 0.55" },
    { COMPOSITE, "lift.1.STRWL", "STRWL = 17.026 \xc3\x97 0.55 = 9.3644 kg" },
    { COMPOSITE, "lift.1.FILI", "FILI = 4 / 17.026 = 0.2349" },
    { COMPOSITE, "lift.1.STLI", "STLI = 4 / 9.3644 = 0.4271" },
    { COMPOSITE, "term.1.delta", "delta = 6 / 9.3644 = 0.6407" },
    { COMPOSITE, "term.2.FM_before", "FM_before = FM(3 / min) = 0.55" },
    { COMPOSITE, "term.2.FM_after", "FM_after = FM(6 / min) = 0.27" },
    { COMPOSITE, "term.2.delta", "delta = 0.2349 \xc3\x97 (1 / 0.27 \xe2\x88\x92 1 / 0.55) = 0.443" },
    { COMPOSITE, "CLI", "CLI = 0.6407 + 0.443 = 1.0837" },
    { COMPOSITE, "mR_ratio", "mR_ratio = 1.0837 \xc3\x97 23 / 25 = 0.997" },
    { SEQUENCE, "lift.2.LI", "LI = 6 / (17.026 \xc3\x97 0.88) = 0.4005" },
    { SEQUENCE, "lift.2.LImax", "LImax = 6 / (17.026 \xc3\x97 0.55) = 0.6407" },
    { SEQUENCE, "K", "K = (0.4271 \xc3\x97 0.75 + 0.6407 \xc3\x97 0.25) / 0.6407 = 0.75" },
    { SEQUENCE, "SLI", "SLI = 0.4005 + (0.6407 \xe2\x88\x92 0.4005) \xc3\x97 0.75 = 0.5807" },
    { ROTA, "person.Bob.SLI", NULL },
    { ROTA, "SLI", "SLI = 0.4461 + (0.4461 \xe2\x88\x92 0.4461) \xc3\x97 1 = 0.4461" },
    { VARIABLE, "equal.1.delta", "delta = 0.3524 / 0.55 = 0.6407" },
    { VARIABLE, "equal.6.FM", "FM = FM(6 / min) = 0.27" },
    { VARIABLE, "ntile.5.delta", "delta = 0.2349 \xc3\x97 (1 / 0.27 \xe2\x88\x92 1 / 0.55) = 0.443" },
    { VARIABLE, "VLI.equal", "VLI.equal = 0.6407 + 0.443 = 1.0837" },
    { VARIABLE, "VLI", NULL },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree char *line = sy_words_formula (assessment->findings,
                                                sy_findings_quantity (assessment->findings, cases[i].symbol));

      if (cases[i].line == NULL)
        assert_null (line);
      else
        assert_string_equal (line, cases[i].line);
    }
}

static void
test_the_drawing_says_what_each_lift_adds (void **state)
{
  static const struct
  {
    const char *facts, *texts;
  } cases[] = {
    { COMPOSITE, "1|Blank 0.64|Tray +0.44|CLI 1.08|" },
    { SEQUENCE, "1|Blank 0.4|Blank +0.06|Tray +0.12|SLI 0.58|" },
    { VARIABLE, "VLI.equal 1.08|0.23|3|\xc3\x97" "1|0.35|3|\xc3\x97" "1|VLI.ntile 1.08|0.23|3|\xc3\x97" "1|0.35|3|\xc3\x97" "1|" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (SyAssessment) assessment = help_assess (cases[i].facts);
      g_autofree SyMark *marks = g_new0 (SyMark, SY_SCENE_MARKS_MAX);
      g_autoptr (GString) texts = g_string_new (NULL);
      SyScene scene;

      sy_assessment_scene (assessment, 0, marks, SY_SCENE_MARKS_MAX, &scene);
      for (int k = 0; k < scene.count; k++)
        if (marks[k].text[0] != '\0')
          g_string_append_printf (texts, "%s|", marks[k].text);
      assert_string_equal (texts->str, cases[i].texts);
      assert_true (scene.x1 > scene.x0 && scene.y1 > scene.y0);
    }
}

/* The document, or what is wrong: "line column value allowed unit". */
static char *
take_table (const char *text, const SyLiftSetRequest *request)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  g_autoptr (GPtrArray) bad = NULL;
  g_autoptr (GError) error = NULL;
  char *document = sy_lift_table_set (desk, bytes, request, &bad, &error);
  GString *out;

  if (document != NULL)
    {
      assert_int_equal (bad->len, 0);
      return document;
    }
  if (error != NULL)
    return g_strdup (error->message);
  out = g_string_new (NULL);
  for (guint i = 0; i < bad->len; i++)
    {
      const SyBadCell *cell = bad->pdata[i];
      g_string_append_printf (out, "%d %s %s: %s\n", (int) cell->line, cell->column, cell->value, cell->allowed);
    }
  return g_string_free (out, FALSE);
}

static const SyLiftSetRequest sampled = { .duration = "long", .frequency = (double) NAN, .units = SY_UNITS_US };

static void
test_a_table_becomes_one_set (void **state)
{
  g_autofree char *plain = take_table (FIRST "A,10,\"12,5\",12,30,0,16 in,0.3,fair\n\n\"B, odd\",8,9,14,20,10,16,0.5,good\n", &sampled);
  g_autofree char *paced = take_table ("label,units,load.typical,load.heaviest,origin.H,origin.V,origin.A,travel,coupling\n"
                                       ",metric,10,12,30,50,0,40,fair\n", &(SyLiftSetRequest) { .frequency = 2 });

  (void) state;
  assert_string_equal (plain,
                       "{\"method\":\"lift-set\",\"units\":\"us\",\"combine\":\"variable\",\"duration\":\"long\",\"lifts\":[\n"
                       "{\"label\":\"A\",\"load\":{\"typical\":10,\"heaviest\":12.5},\"origin\":{\"H\":12,\"V\":30,\"A\":0},"
                       "\"travel\":\"16 in\",\"frequency\":0.3,\"coupling\":\"fair\"},\n"
                       "{\"label\":\"B, odd\",\"load\":{\"typical\":8,\"heaviest\":9},\"origin\":{\"H\":14,\"V\":20,\"A\":10},"
                       "\"travel\":16,\"frequency\":0.5,\"coupling\":\"good\"}\n]}");
  assert_string_equal (paced, "{\"method\":\"lift-set\",\"units\":\"metric\",\"combine\":\"variable\",\"frequency\":2,\"lifts\":[\n"
                              "{\"load\":{\"typical\":10,\"heaviest\":12},\"origin\":{\"H\":30,\"V\":50,\"A\":0},\"travel\":40,"
                              "\"coupling\":\"fair\"}\n]}");
}

static void
test_every_bad_cell_is_told (void **state)
{
  static const struct
  {
    const char *table, *said;
  } cases[] = {
    { FIRST "A,10,9,12,30,0,16,0.3,fair\nB,8,9,14,20,10,16,,god\nC,8,9,14\n",
      "4  4 cells: 9 cells, as in the first line\n" },
    { FIRST "A,10,9,12,30,0,16,0.3,fair\nB,8,9,14,-2,10,16,1,god\n",
      "2 load.heaviest 9: not less than load.typical\n"
      "3 origin.V -2: a number of at least 0, or text with a unit (cm, mm, m, in, ft)\n3 coupling god: one of: good, fair, poor\n" },
    { "task,place,sessions\nA,hall,1\n",
      "1 place place: \xe2\x80\x9ctask\xe2\x80\x9d or a field of a lift in a set, as \xe2\x80\x9csteelyard-cli methods "
      "lift-set\xe2\x80\x9d names them\n1 sessions sessions: work_minutes and recovery_minutes, or duration; a day in several parts "
      "is entered as a document\n" },
    { "task,units,coupling\nA,us,fair\nB,metric,fair\n", "3 units metric: the same on every line\n" },
    { "task,units,coupling\nA,si,fair\n", "2 units si: one of: metric, us\n" },
    { "task,label\nA,B\n", "1 label label: \xe2\x80\x9ctask\xe2\x80\x9d or \xe2\x80\x9clabel\xe2\x80\x9d: one name of a lift\n" },
    { FIRST, "The table has no lift: only a first line." },
    { "", "This is no table: line 1: given nothing; allowed: the names of the columns" },
  };

  (void) state;
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *said = take_table (cases[i].table, &sampled);

      assert_string_equal (said, cases[i].said);
    }
}

int
main (void)
{
  const struct CMUnitTest tests[] = {
    cmocka_unit_test (test_the_result_in_a_sentence),
    cmocka_unit_test (test_each_line_can_be_redone),
    cmocka_unit_test (test_the_drawing_says_what_each_lift_adds),
    cmocka_unit_test (test_a_table_becomes_one_set),
    cmocka_unit_test (test_every_bad_cell_is_told),
  };

  return cmocka_run_group_tests (tests, help_set_up, help_tear_down);
}
