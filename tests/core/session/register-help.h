/* SPDX-License-Identifier: MIT */
#ifndef REGISTER_HELP_H
#define REGISTER_HELP_H

#include "sy-test.h"

#include "sy-register.h"

/* Items of a register without a store, and what is said of them. */

/* With the built-in policy, on 2026-11-25: of help_set_up. */
static SyDesk *desk;

static inline int
help_set_up (void **state)
{
  (void) state;
  g_setenv ("STEELYARD_CLOCK", "2026-11-25T08:00:00Z", TRUE);
  desk = sy_desk_new (NULL, 0, NULL);
  return desk == NULL;
}

static inline int
help_tear_down (void **state)
{
  (void) state;
  sy_desk_unref (desk);
  return 0;
}

static inline SyAssessment *
help_assess (const char *text)
{
  g_autofree SyProblems *problems = g_new0 (SyProblems, 1);
  SyAssessment *assessment = sy_desk_assess (desk, text, strlen (text), SY_JUDGE_RECORD, problems);

  if (assessment == NULL)
    fail_msg ("%s: %s", problems->items[0].path, problems->items[0].allowed);
  return assessment;
}

static inline SyRegisterItem *
help_add (GPtrArray *items, const char *item_kind, const char *name, const char *facts)
{
  SyRegisterItem *item = sy_register_item_new (name, name, item_kind, facts);

  g_ptr_array_add (items, item);
  return item;
}

static inline GPtrArray *
help_items (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) sy_register_item_free);
}

/* A piece of gear that is in date until 2027-03-01, rated by the leg where it is an accessory and @more does not say it;
   @more: further members, "" for none. */
static inline SyRegisterItem *
help_gear (GPtrArray *items, const char *kind, const char *name, const char *more)
{
  static const char *const accessories[] = { "sling", "shackle", "eyebolt", "hoist-ring", "hook", "master-link", NULL };
  const char *rated = g_strv_contains (accessories, kind) && strstr (more, "rated_as") == NULL ? ",\"rated_as\":\"leg\"" : "";
  g_autofree char *facts = g_strdup_printf ("{\"method\":\"gear\",\"units\":\"metric\",\"kind\":\"%s\",\"identity\":\"%s\","
                                            "\"last_examined\":\"2026-09-01\",\"due\":\"2027-03-01\"%s%s%s}",
                                            kind, name, rated, *more ? "," : "", more);

  return help_add (items, SY_ITEM_GEAR, name, facts);
}

static inline gboolean
help_says (const GPtrArray *texts, const char *words)
{
  for (guint i = 0; i < texts->len; i++)
    if (strstr (texts->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

static inline void
help_assert_says (const GPtrArray *texts, const char *words, int line)
{
  if (help_says (texts, words))
    return;
  for (guint i = 0; i < texts->len; i++)
    print_error ("line %d: said “%s”\n", line, (const char *) texts->pdata[i]);
  fail_msg ("line %d: nothing says “%s”", line, words);
}
#define assert_says(texts, words) help_assert_says ((texts), (words), __LINE__)

#endif
