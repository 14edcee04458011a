/* SPDX-License-Identifier: MIT */
/* What the window does when two assessments are to stand beside each other. */
#include "sy-window-private.h"

#include "sy-compare-page.h"
#include "sy-tasks-page.h"

/* @item NULL: both sides are to be chosen. */
static void
compare (SyWindow *self, const char *item, gint64 revision)
{
  SyComparePage *page;

  sy_window_need_page (self, "compare");
  page = SY_COMPARE_PAGE (self->compare);
  sy_compare_page_set (page, 0, item, revision);
  sy_compare_page_set (page, 1, NULL, 0);
  sy_window_show_page (self, "compare");
  sy_compare_page_choose (page, item != NULL ? 1 : 0);
}

/* (sx): item, revision or 0. */
static void
compare_with_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  const char *item;
  gint64 revision;

  (void) action;
  g_variant_get (parameter, "(&sx)", &item, &revision);
  compare (user_data, item, revision);
}

/* (sxsx): item and revision before, item and revision after. */
static void
compare_both_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  const char *items[2];
  gint64 revisions[2];

  (void) action;
  g_variant_get (parameter, "(&sx&sx)", &items[0], &revisions[0], &items[1], &revisions[1]);
  sy_window_need_page (self, "compare");
  for (int i = 0; i < 2; i++)
    sy_compare_page_set (SY_COMPARE_PAGE (self->compare), i, items[i], revisions[i]);
  sy_window_show_page (self, "compare");
}

/* What is open, or selected in the list that is shown. */
static void
compare_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  SyWindow *self = user_data;
  const char *item = NULL;
  g_autofree char *kept = NULL;
  SyRegister which;

  (void) action, (void) parameter;
  if (g_str_equal (sy_window_get_page (self), "task"))
    item = sy_task_page_get_item (SY_TASK_PAGE (self->task));
  else if (sy_window_find_register (sy_window_get_page (self), &which))
    item = sy_tasks_page_get_selected (SY_TASKS_PAGE (self->lists[which]));
  kept = g_strdup (item);
  compare (self, kept, 0);
}

static const GActionEntry actions[] = {
  { .name = "compare", .activate = compare_action },
  { .name = "compare-with", .activate = compare_with_action, .parameter_type = "(sx)" },
  { .name = "compare-both", .activate = compare_both_action, .parameter_type = "(sxsx)" },
};

void
sy_window_add_compare_actions (SyWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
}
