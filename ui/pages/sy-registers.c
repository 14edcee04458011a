/* SPDX-License-Identifier: MIT */
#include "sy-registers.h"

#include "sy-i18n.h"
#include "sy-method.h"

static const SyRegisterColumn task_columns[] = {
  { SY_BY_VERDICT, 258 }, { SY_BY_NAME, -1 }, { SY_BY_PLACE, 110 },  { SY_BY_INDEX, 78 },
  { SY_BY_RANK, 70 },     { SY_BY_MASS, 86 }, { SY_BY_REVIEW, 172 }, { SY_BY_DAY, 108 },
};

static const SyRegisterColumn changeover_columns[] = {
  { SY_BY_VERDICT, 206 }, { SY_BY_NAME, -1 },  { SY_BY_MACHINE, 80 }, { SY_BY_STANDS, 74 },
  { SY_BY_PERSONS, 66 },
  { SY_BY_INDEX, 72 },    { SY_BY_MASS, 78 },  { SY_BY_REVIEW, 104 }, { SY_BY_DAY, 106 },
};

static const SyRegisterColumn case_columns[] = {
  { SY_BY_VERDICT, 206 }, { SY_BY_NAME, -1 }, { SY_BY_WINNER, 180 }, { SY_BY_PAYBACK, 84 },
  { SY_BY_NPV, 104 }, { SY_BY_REVIEW, 104 }, { SY_BY_DAY, 106 },
};

static const SyRegisterColumn die_columns[] = {
  { SY_BY_VERDICT, 258 }, { SY_BY_NAME, -1 },     { SY_BY_MACHINE, 96 }, { SY_BY_MASS, 90 },
  { SY_BY_BALANCE, 150 }, { SY_BY_STORAGE, 150 }, { SY_BY_DAY, 110 },
};

static const SyRegisterColumn gear_columns[] = {
  { SY_BY_VERDICT, 200 }, { SY_BY_NAME, -1 },     { SY_BY_IDENTITY, 68 }, { SY_BY_GEAR, 96 },      { SY_BY_WLL, 80 },
  { SY_BY_STORAGE, 110 }, { SY_BY_DUE, 182 },     { SY_BY_CONDITION, 82 }, { SY_BY_USE, 94 },
};

/* In the order in which they stand under "More". */
static const SyNarrow task_more[] = { SY_NARROW_METHOD, SY_NARROW_PLACE };
static const SyNarrow changeover_more[] = { SY_NARROW_VERDICT, SY_NARROW_PLACE };
static const SyNarrow case_more[] = { SY_NARROW_PLACE };
static const SyNarrow die_more[] = { SY_NARROW_VERDICT };
static const SyNarrow gear_more[] = { SY_NARROW_VERDICT, SY_NARROW_MACHINE };

static const SyRegisterPage pages[SY_N_REGISTERS] = {
  [SY_REGISTER_TASKS] = {
    .page = "tasks",
    .title = N_ ("Tasks"),
    .columns = task_columns,
    .n_columns = G_N_ELEMENTS (task_columns),
    .first = SY_BY_RANK,
    .descending = TRUE,
    .narrow = SY_NARROW_VERDICT,
    .more = task_more,
    .n_more = G_N_ELEMENTS (task_more),
    .search = N_ ("Search name, place, people, reasons"),
    .search_name = N_ ("Search the tasks"),
    .empty = N_ ("No task has been measured yet"),
    .empty_words = N_ ("This is where the lifts of the workshop stand, the most pressing first. Measure one lift – the "
                       "load, where the hands are at its start and end, how often – and learn whether hands may do it, "
                       "what decides that, and what would bring it down."),
    .begin = N_ ("_New assessment"),
    .survey = N_ ("_Print a measuring sheet"),
    .no_match = N_ ("No task matches"),
    .no_match_words = N_ ("No name, place, person or reason has all of these words under what is chosen above."),
    .show_all = N_ ("_Show all tasks"),
  },
  [SY_REGISTER_CHANGEOVERS] = {
    .page = "changeovers",
    .title = N_ ("Changeovers"),
    .columns = changeover_columns,
    .n_columns = G_N_ELEMENTS (changeover_columns),
    .first = SY_BY_VERDICT,
    .descending = TRUE,
    .narrow = SY_NARROW_MACHINE,
    .more = changeover_more,
    .n_more = G_N_ELEMENTS (changeover_more),
    .search = N_ ("Search name, machine, people, dies, steps"),
    .search_name = N_ ("Search the changeovers"),
    .empty = N_ ("No die change is in the record yet"),
    .empty_words = N_ ("This is where die changes stand as a whole: how long the machine is stopped, which steps hands must "
                       "not do, what the lifts of each person come to, and which checks are left out. Walk through one "
                       "change, write its steps down in order, and read what the plan lacks."),
    .begin = N_ ("_New changeover"),
    .method = "changeover",
    .no_match = N_ ("No changeover matches"),
    .no_match_words = N_ ("No name, machine, person, die, step or reason has all of these words under what is chosen "
                          "above."),
    .show_all = N_ ("_Show all changeovers"),
  },
  [SY_REGISTER_CASES] = {
    .page = "cases",
    .title = N_ ("Cases"),
    .columns = case_columns,
    .n_columns = G_N_ELEMENTS (case_columns),
    .first = SY_BY_DAY,
    .descending = TRUE,
    .narrow = SY_NARROW_VERDICT,
    .more = case_more,
    .n_more = G_N_ELEMENTS (case_more),
    .search = N_ ("Search name, place, options, reasons"),
    .search_name = N_ ("Search the cases"),
    .empty = N_ ("No case for a lift aid is in the record yet"),
    .empty_words = N_ ("This is where the money for a hoist, a cart or another aid is argued for: a task or a die change as "
                       "it is beside up to five ways to do it, each assessed, with what each costs and saves. Begin with "
                       "the work as it is, add one option, and print the page for whoever decides."),
    .begin = N_ ("_New case"),
    .method = "case",
    .no_match = N_ ("No case matches"),
    .no_match_words = N_ ("No name, place, option or reason has all of these words under what is chosen above."),
    .show_all = N_ ("_Show all cases"),
  },
  [SY_REGISTER_DIES] = {
    .page = "dies",
    .title = N_ ("Dies"),
    .columns = die_columns,
    .n_columns = G_N_ELEMENTS (die_columns),
    .first = SY_BY_NAME,
    .narrow = SY_NARROW_MACHINE,
    .more = die_more,
    .n_more = G_N_ELEMENTS (die_more),
    .search = N_ ("Search name, machine, storage, drawing"),
    .search_name = N_ ("Search the dies"),
    .empty = N_ ("No die is in the register yet"),
    .empty_words = N_ ("This is where the dies stand with what every lift of them needs: what they weigh, where they "
                       "balance, where they can be taken hold of, what holds their halves together. Weigh one, or put "
                       "it together from its blocks, and a lift plan can take it from here."),
    .begin = N_ ("_New die"),
    .method = "die-mass",
    .no_match = N_ ("No die matches"),
    .no_match_words = N_ ("No name, machine, storage or reason has all of these words under what is chosen above."),
    .show_all = N_ ("_Show all dies"),
  },
  [SY_REGISTER_GEAR] = {
    .page = "gear",
    .title = N_ ("Gear"),
    .columns = gear_columns,
    .n_columns = G_N_ELEMENTS (gear_columns),
    .first = SY_BY_DUE,
    .narrow = SY_NARROW_GEAR,
    .more = gear_more,
    .n_more = G_N_ELEMENTS (gear_more),
    .search = N_ ("Search name, mark, machine, storage"),
    .search_name = N_ ("Search the gear"),
    .empty = N_ ("No gear is in the register yet"),
    .empty_words = N_ ("This is where slings, shackles, hoists, cranes, trucks and carts stand: what each may carry, how "
                       "that is meant, and until when its examination holds. What is out of date stands first. Enter "
                       "what is marked on one item, and lift plans can be made with it."),
    .begin = N_ ("_New item of gear"),
    .method = "gear",
    .no_match = N_ ("No gear matches"),
    .no_match_words = N_ ("No name, mark, machine, storage or reason has all of these words under what is chosen above."),
    .show_all = N_ ("_Show all gear"),
  },
};

const SyRegisterPage *
sy_register_page (SyRegister which)
{
  return &pages[which];
}

gboolean
sy_register_is_offered (SyRegister which)
{
  return pages[which].method == NULL || sy_method_find (pages[which].method) != NULL;
}

static const char *
count_words (SyRegister which, gboolean part, guint all)
{
  /* Translators: how many rows there are, or how many are shown of how many there are. */
  switch (which)
    {
    case SY_REGISTER_CHANGEOVERS:
      return part ? P_ ("%u of %u changeover", "%u of %u changeovers", all) : P_ ("%u changeover", "%u changeovers", all);
    case SY_REGISTER_CASES:
      return part ? P_ ("%u of %u case", "%u of %u cases", all) : P_ ("%u case", "%u cases", all);
    case SY_REGISTER_DIES:
      return part ? P_ ("%u of %u die", "%u of %u dies", all) : P_ ("%u die", "%u dies", all);
    case SY_REGISTER_GEAR:
      return part ? P_ ("%u of %u item", "%u of %u items", all) : P_ ("%u item", "%u items", all);
    case SY_REGISTER_TASKS:
    default:
      return part ? P_ ("%u of %u task", "%u of %u tasks", all) : P_ ("%u task", "%u tasks", all);
    }
}

char *
sy_register_count (SyRegister which, guint shown, guint all)
{
  g_autofree char *shown_text = g_strdup_printf ("%u", shown);
  g_autofree char *all_text = g_strdup_printf ("%u", all);
  const char *numbers[] = { shown == all ? all_text : shown_text, all_text };
  g_auto (GStrv) parts = g_strsplit (count_words (which, shown != all, all), "%u", -1);
  GString *words = g_string_new (NULL);

  /* The words are a variable, and a format is never one. */
  for (gsize i = 0; parts[i] != NULL; i++)
    g_string_append_printf (words, "%s%s", parts[i], parts[i + 1] != NULL && i < 2 ? numbers[i] : "");
  return g_string_free (words, FALSE);
}
