/* SPDX-License-Identifier: MIT */
#include "sy-desk.h"

#include <math.h>
#include <string.h>

#include "sy-findings-json.h"
#include "sy-ledger.h"
#include "sy-policy-file.h"
#include "sy-region-file.h"

struct SyDesk
{
  gatomicrefcount refs;
  SyPolicy policy;
  GBytes *text;
};

typedef struct
{
  SyAssessment public;
  gatomicrefcount refs;
  SyDesk *desk; /* the findings point into its policy */
  SyMemory *memory;
  SyFindings findings;
  GString *text;
} Assessment;

SyDesk *
sy_desk_new (const char *policy_text, gsize length, GError **error)
{
  SyDesk *desk = g_new0 (SyDesk, 1);
  gsize size;

  g_atomic_ref_count_init (&desk->refs);
  desk->text = policy_text ? g_bytes_new (policy_text, length) : sy_policy_builtin ();
  const char *data = g_bytes_get_data (desk->text, &size);
  if (!sy_policy_read (data, size, &desk->policy, error))
    g_clear_pointer (&desk, sy_desk_unref);
  return desk;
}

SyDesk *
sy_desk_new_named (const char *policy_name, GError **error)
{
  g_autoptr (GBytes) bytes = sy_policy_named (policy_name);

  return bytes != NULL ? sy_desk_new (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), error) : NULL;
}

SyDesk *
sy_desk_in_region (SyDesk *desk, const char *id, GError **error)
{
  gsize length;
  const char *text = sy_desk_policy_text (desk, &length);
  g_autoptr (GBytes) bytes = NULL;

  if (id == NULL)
    return sy_desk_ref (desk);
  bytes = sy_region_into_policy (text, length, id, error);
  return bytes != NULL ? sy_desk_new (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), error) : NULL;
}

SyDesk *
sy_desk_ref (SyDesk *desk)
{
  g_atomic_ref_count_inc (&desk->refs);
  return desk;
}

void
sy_desk_unref (SyDesk *desk)
{
  if (desk == NULL || !g_atomic_ref_count_dec (&desk->refs))
    return;
  g_bytes_unref (desk->text);
  g_free (desk);
}

const SyPolicy *
sy_desk_policy (const SyDesk *desk)
{
  return &desk->policy;
}

const char *
sy_desk_policy_text (const SyDesk *desk, gsize *length)
{
  return g_bytes_get_data (desk->text, length);
}

SyAssessment *
sy_assessment_ref (SyAssessment *assessment)
{
  g_atomic_ref_count_inc (&((Assessment *) assessment)->refs);
  return assessment;
}

void
sy_assessment_unref (SyAssessment *public)
{
  Assessment *assessment = (Assessment *) public;

  if (assessment == NULL || !g_atomic_ref_count_dec (&assessment->refs))
    return;
  sy_memory_free (assessment->memory);
  g_string_free (assessment->text, TRUE);
  sy_desk_unref (assessment->desk);
  g_free (assessment);
}

/* Reads and judges one document; the facts live in @memory. */
static bool
judge (SyDesk *desk, const char *text, gsize length, gsize max, SyJudgeFlags flags, SyMemory *memory,
       SyFacts *facts, const SyJson **document, SyFindings *findings, SyProblems *problems)
{
  SyJudgeRoom room = { NULL, NULL };

  sy_problems_clear (problems);
  *document = sy_json_scan_on (text, length, max, memory, problems);
  if (*document == NULL || !sy_facts_read (*document, memory, facts, problems) || problems->count > 0)
    {
      sy_problems_sort (problems);
      return false;
    }
  if (flags & (SY_JUDGE_SPREAD | SY_JUDGE_REMEDIES))
    {
      room.work = sy_memory_take (memory, (gsize) desk->policy.draws * sizeof (double));
      room.scratch = sy_memory_take (memory, 2 * facts->method->facts_size);
    }
  sy_judge (facts->method, facts->values, facts->units, &desk->policy,
            facts->method->dated ? sy_clock_today () : NAN, flags, &room, findings);
  return true;
}

SyAssessment *
sy_desk_assess (SyDesk *desk, const char *text, gsize length, SyJudgeFlags flags, SyProblems *problems)
{
  Assessment *assessment = g_new0 (Assessment, 1);
  const SyJson *document;

  g_atomic_ref_count_init (&assessment->refs);
  assessment->desk = sy_desk_ref (desk);
  assessment->memory = sy_memory_new ();
  assessment->text = g_string_new (NULL);
  assessment->public.findings = &assessment->findings;
  if (!judge (desk, text, length, SY_JSON_DOCUMENT_MAX, flags, assessment->memory, &assessment->public.facts,
              &document, &assessment->findings, problems))
    {
      sy_assessment_unref (&assessment->public);
      return NULL;
    }
  sy_json_write_tree (assessment->text, document);
  assessment->public.text = assessment->text->str;
  return &assessment->public;
}

static void
write_problems (GString *out, int line, const SyProblems *problems)
{
  g_string_append_printf (out, "{\"line\":%d,\"problems\":[", line);
  for (int i = 0; i < problems->count; i++)
    {
      const SyProblem *problem = &problems->items[i];

      g_string_append (out, i > 0 ? ",{\"path\":" : "{\"path\":");
      sy_json_write_text (out, problem->path);
      g_string_append (out, ",\"given\":");
      sy_json_write_text (out, problem->given);
      g_string_append (out, ",\"allowed\":");
      sy_json_write_text (out, problem->allowed);
      g_string_append (out, ",\"unit\":");
      sy_json_write_text (out, problem->unit);
      g_string_append_c (out, '}');
    }
  g_string_append (out, "]}");
}

bool
sy_desk_assess_line (SyDesk *desk, const char *text, gsize length, int line, SyJudgeFlags flags, bool worksheet,
                     SyMemory *memory, SyFindings *findings, SyProblems *problems, GString *out)
{
  SyFacts facts;
  const SyJson *document;
  bool good;

  sy_memory_reset (memory);
  good = judge (desk, text, length, SY_JSON_LINE_MAX, flags, memory, &facts, &document, findings, problems);
  if (good)
    sy_findings_write_json (out, findings, worksheet);
  else
    write_problems (out, line, problems);
  g_string_append_c (out, '\n');
  return good;
}

char *
sy_assessment_json (const SyAssessment *assessment, bool worksheet)
{
  GString *out = g_string_new (NULL);

  sy_findings_write_json (out, assessment->findings, worksheet);
  return g_string_free (out, FALSE);
}

void
sy_assessment_scene (const SyAssessment *assessment, size_t view, SyMark *marks, int room, SyScene *scene)
{
  const SyFacts *facts = &assessment->facts;

  sy_scene_begin (scene, facts->units, marks, room);
  facts->method->scene (facts->values, facts->units, &assessment->findings->sink, view, scene);
}
