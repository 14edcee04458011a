/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "bench-lifts.h"
#include "sy-desk.h"

/*
 * A die change of 40 steps worked out anew, as after every keystroke: from its bytes to findings, and the judging by
 * itself against judging the same parts alone, each by its own method.
 */

#define N_STEPS 40
#define N_PEOPLE 4
#define N_ROUNDS 20
#define N_RUNS 15
#define FRAME_MS (1000.0 / 60)

static const char lift[] = "{\"method\":\"lift\",\"load\":{\"typical\":9,\"heaviest\":11},\"origin\":{\"H\":35,\"V\":60,\"A\":10},"
                           "\"destination\":{\"H\":40,\"V\":110,\"A\":0},\"control_at_destination\":true,\"frequency\":0.5,"
                           "\"duration\":\"short\",\"coupling\":\"fair\",\"conditions\":[]}";
static const char carry[] = "{\"method\":\"carry\",\"mass\":9,\"distance\":6,\"frequency\":0.2,\"height\":80,\"conditions\":[]}";
static const char slide[] = "{\"method\":\"slide\",\"way\":\"push\",\"mass\":200,\"surface\":\"rollers\",\"friction\":0.03,"
                            "\"incline\":0,\"handle_height\":95,\"distance\":1,\"frequency\":0.05,\"conditions\":[]}";
static const char truck[] = "{\"method\":\"truck\",\"mass\":300,\"mass_basis\":\"weighed\",\"rating\":2000,\"lift_height\":500,"
                            "\"attachment\":\"none\",\"plate_read\":true,\"rated_centre\":500,\"actual_centre\":500,"
                            "\"hung\":false,\"due\":\"2029-06-01\"}";
/* Four legs that statics does not settle: the dearest of the parts. */
static const char rigged[]
  = "{\"method\":\"rigged-lift\",\"mass\":300,\"mass_basis\":\"weighed\",\"cg\":[20,10,100],\"points\":["
    "{\"label\":\"A\",\"at\":[-260,-160,240]},{\"label\":\"B\",\"at\":[260,-160,240]},{\"label\":\"C\",\"at\":[260,160,240]},"
    "{\"label\":\"D\",\"at\":[-260,160,240]}],\"hook\":{\"above\":700},\"legs\":["
#define LEG(point)                                                                                                       \
  "{\"point\":\"" point "\",\"hitch\":\"straight\",\"material\":\"chain\",\"edge\":\"none\",\"elements\":[{\"label\":\"L" point \
  "\",\"kind\":\"sling\",\"wll\":1000,\"rated_as\":\"leg\",\"due\":\"2029-06-01\"}]}"
    LEG ("A") "," LEG ("B") "," LEG ("C") "," LEG ("D")
    "],\"suspension\":[{\"label\":\"H\",\"kind\":\"hoist\",\"wll\":1000,\"due\":\"2029-06-01\"}]}";

static char *
make_change (void)
{
  static const char *const parts[] = { lift, NULL, carry, rigged, NULL, slide, truck, NULL };
  static const char *const kinds[] = { "lift", "unclamp", "carry", "lift", "clamp", "draw", "truck", "adjust" };
  GString *text = g_string_new ("{\"method\":\"changeover\",\"units\":\"metric\",\"as_of\":\"2026-11-26\",\"people\":");

  g_string_append_printf (text, "%d,\"steps\":[", N_PEOPLE);
  for (int i = 0; i < N_STEPS; i++)
    {
      const char *part = parts[i % (int) G_N_ELEMENTS (parts)];

      g_string_append_printf (text, "%s{\"label\":\"Step %d\",\"kind\":\"%s\",\"when\":\"stopped\",\"minutes\":%d", i > 0 ? "," : "",
                              i + 1, kinds[i % (int) G_N_ELEMENTS (kinds)], i % 7 + 1);
      if (part != NULL)
        g_string_append_printf (text, ",\"facts\":%s", part);
      g_string_append_c (text, '}');
    }
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}

static double
assess_once (SyDesk *desk, const char *text, SyProblems *problems)
{
  gsize length = strlen (text);
  double start = bench_seconds ();

  for (int i = 0; i < N_ROUNDS; i++)
    {
      g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, text, length, SY_JUDGE_PLAIN, problems);
      if (assessment == NULL)
        g_error ("%s: %s", problems->items[0].path, problems->items[0].allowed);
    }
  return (bench_seconds () - start) / N_ROUNDS;
}

static double
judge_once (const SyFacts *facts, const SyPolicy *policy, SyFindings *findings)
{
  static const SyJudgeRoom none = { 0 };
  double start = bench_seconds ();

  for (int i = 0; i < N_ROUNDS; i++)
    sy_judge (facts->method, facts->values, facts->units, policy, NAN, SY_JUDGE_PLAIN, &none, findings);
  return (bench_seconds () - start) / N_ROUNDS;
}

static double
judge_parts_once (const SyFacts *facts, const SyPolicy *policy, SyFindings *findings)
{
  static const SyJudgeRoom none = { 0 };
  double start = bench_seconds ();

  for (int i = 0; i < N_ROUNDS; i++)
    {
      SyPartFacts part;
      const char *label;

      for (size_t k = 0; facts->method->part (facts->values, k, &part, &label); k++)
        if (part.method != NULL)
          sy_judge (part.method, part.facts, facts->units, policy, 20783, SY_JUDGE_PLAIN, &none, findings);
    }
  return (bench_seconds () - start) / N_ROUNDS;
}

int
main (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, &error);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  g_autofree SyFindings *findings = g_new0 (SyFindings, 1);
  g_autofree char *text = make_change ();
  double whole = G_MAXDOUBLE, judging = G_MAXDOUBLE, parts = G_MAXDOUBLE;

  if (desk == NULL)
    g_error ("%s", error->message);
  g_autoptr (SyAssessment) assessment = sy_desk_assess (desk, text, strlen (text), SY_JUDGE_PLAIN, problems);
  if (assessment == NULL)
    g_error ("%s: %s", problems->items[0].path, problems->items[0].allowed);
  for (int run = 0; run < N_RUNS; run++)
    {
      bench_keep_best (&whole, assess_once (desk, text, problems));
      bench_keep_best (&judging, judge_once (&assessment->facts, sy_desk_policy (desk), findings));
      bench_keep_best (&parts, judge_parts_once (&assessment->facts, sy_desk_policy (desk), findings));
    }
  g_print ("changeover: %d steps, %d people, %" G_GSIZE_FORMAT " bytes, best of %d\n", N_STEPS, N_PEOPLE, strlen (text), N_RUNS);
  g_print ("  from bytes to findings  %7.3f ms  %5.1f %% of a frame  (reach: at most 10 %%)\n", whole * 1e3,
           whole * 1e3 / FRAME_MS * 100);
  g_print ("  judged                  %7.3f ms\n", judging * 1e3);
  g_print ("  its parts alone         %7.3f ms\n", parts * 1e3);
  g_print ("  ratio                   %7.2f      (judged against its parts alone; reach: at most 3)\n", judging / parts);
  return EXIT_SUCCESS;
}
