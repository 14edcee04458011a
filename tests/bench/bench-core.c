/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "bench-lifts.h"
#include "sy-desk.h"

/*
 * Lifts judged per second in the core, without spread, against a plain read of the same bytes.
 * The facts are structs in one array larger than the caches; both passes walk it from end to end.
 */

#define N_LIFTS 60000
#define N_RUNS 7

typedef struct
{
  SyAssessment *kept[N_LIFTS]; /* hold what the facts point to */
  char *array;
  gsize stride;
  const SyMethod *method;
  SyUnits units[N_LIFTS];
} Lifts;

static void
make_lifts (Lifts *lifts, SyDesk *desk)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);

  for (int i = 0; i < N_LIFTS; i++)
    {
      g_string_truncate (text, 0);
      bench_lift_append (text, random);
      lifts->kept[i] = sy_desk_assess (desk, text->str, text->len, SY_JUDGE_PLAIN, problems);
      if (lifts->kept[i] == NULL)
        g_error ("%s: %s: %s", text->str, problems->items[0].path, problems->items[0].allowed);
      if (i == 0)
        {
          lifts->method = lifts->kept[0]->facts.method;
          lifts->stride = (lifts->method->facts_size + 15) / 16 * 16;
          lifts->array = g_malloc0 (lifts->stride * N_LIFTS);
        }
      memcpy (lifts->array + lifts->stride * (gsize) i, lifts->kept[i]->facts.values,
              lifts->method->facts_size);
      lifts->units[i] = lifts->kept[i]->facts.units;
    }
}

static double
read_once (const Lifts *lifts, guint64 *sum)
{
  double start = bench_seconds ();
  const guint64 *words = (const guint64 *) (const void *) lifts->array;
  gsize n = lifts->stride * N_LIFTS / sizeof *words;
  guint64 total = 0;

  for (gsize i = 0; i < n; i++)
    total += words[i];
  *sum += total;
  return bench_seconds () - start;
}

static double
judge_once (const Lifts *lifts, const SyPolicy *policy, SyFindings *findings, guint64 *sum)
{
  double start = bench_seconds ();
  static const SyJudgeRoom none = { 0 };

  for (gsize i = 0; i < N_LIFTS; i++)
    {
      sy_judge (lifts->method, lifts->array + lifts->stride * i, lifts->units[i], policy, NAN,
                SY_JUDGE_PLAIN, &none, findings);
      *sum += (guint64) findings->verdict;
    }
  return bench_seconds () - start;
}

int
main (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SyDesk) desk = sy_desk_new (NULL, 0, &error);
  g_autofree Lifts *lifts = g_new0 (Lifts, 1);
  g_autofree SyFindings *findings = g_new0 (SyFindings, 1);
  double reading = G_MAXDOUBLE, judging = G_MAXDOUBLE;
  guint64 sum = 0;

  if (desk == NULL)
    g_error ("%s", error->message);
  make_lifts (lifts, desk);
  for (int run = 0; run < N_RUNS; run++)
    {
      bench_keep_best (&reading, read_once (lifts, &sum));
      bench_keep_best (&judging, judge_once (lifts, sy_desk_policy (desk), findings, &sum));
    }
  g_print ("core: %d lifts of %" G_GSIZE_FORMAT " bytes, best of %d (check %" G_GUINT64_FORMAT ")\n", N_LIFTS,
           lifts->stride, N_RUNS, sum);
  g_print ("  memory read  %8.2f ms  %6.0f ns a lift  %.1f GB/s\n", reading * 1e3,
           reading / N_LIFTS * 1e9, (double) lifts->stride * N_LIFTS / reading / 1e9);
  g_print ("  judged       %8.2f ms  %6.0f ns a lift  %.2f million lifts a second\n", judging * 1e3,
           judging / N_LIFTS * 1e9, N_LIFTS / judging / 1e6);
  g_print ("  ratio        %8.2f      (reach: at most 12)\n", judging / reading);

  for (int i = 0; i < N_LIFTS; i++)
    sy_assessment_unref (lifts->kept[i]);
  g_free (lifts->array);
  return EXIT_SUCCESS;
}
