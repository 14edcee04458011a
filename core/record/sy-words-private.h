/* SPDX-License-Identifier: MIT */
#ifndef SY_WORDS_PRIVATE_H
#define SY_WORDS_PRIVATE_H

#include "sy-words.h"

/* Texts by id; they hold {names} for what is put in. */
typedef struct
{
  const char *id, *text; /* N_() */
} SyTemplate;
const char *sy_words_find (const SyTemplate *templates, gsize n, const char *id); /* NULL: none */
/* Reasons, notes and results of what gear does (dies, rigged lifts, gear, trucks, carts). */
const char *sy_words_rigging_template (const char *id);
/* What a quantity or a governing id of a rigged lift is about: "E-1 at A" of "element.A.E-1.utilisation"; NULL: nothing that
   the facts name. New string. */
char *sy_words_thing (const SyFindings *findings, const char *symbol, SyTranslate translate);
/* The result in a sentence, NULL for a method of another room. New string. */
char *sy_words_rigging_result (const SyFindings *findings, SyTranslate translate);
/* The same of die-mass, rigged-lift, truck and cart. New string. */
char *sy_words_load_result (const SyFindings *findings, SyTranslate translate);

/* Reasons and notes of the other ways by hand; NULL: the id is of another room. */
const char *sy_words_sets_template (const char *id);
const char *sy_words_team_template (const char *id);
const char *sy_words_push_template (const char *id);
const char *sy_words_carry_template (const char *id);
const char *sy_words_population_template (const char *id);
const char *sy_words_changeover_template (const char *id);
const char *sy_words_case_template (const char *id);
/* The person that a quantity of a team's shares is about: "B" of "share.B.ratio"; NULL for other symbols. New string. */
char *sy_words_team_thing (const char *symbol);
/* What a change of a method's fact is called where the common words of the path do not do; NULL: they do, or the method is of
   another room. @path is the fact's, or "largest-mass". */
const char *sy_words_carry_change (const SyMethod *method, const char *path);
const char *sy_words_push_change (const SyMethod *method, const char *path);
/* Their results in a sentence; NULL for a method of another room. New string. */
char *sy_words_sets_result (const SyFindings *findings, SyTranslate translate);  /* lift-set    */
char *sy_words_team_result (const SyFindings *findings, SyTranslate translate);  /* team-lift   */
char *sy_words_push_result (const SyFindings *findings, SyTranslate translate);  /* push, slide */
char *sy_words_carry_result (const SyFindings *findings, SyTranslate translate); /* carry       */
char *sy_words_changeover_result (const SyFindings *findings, SyTranslate translate); /* changeover */
char *sy_words_case_result (const SyFindings *findings, SyTranslate translate); /* case */

/* What a quantity of a set of lifts is about: "Ann" of "person.Ann.SLI", "Lift 3" of "lift.3.FILI"; NULL. New string. */
char *sy_words_sets_thing (const char *symbol, SyTranslate translate);

/* A quantity of the findings by symbol; NAN when absent, INFINITY when unbounded. */
double sy_words_value (const SyFindings *findings, const char *symbol);
/* The same for the symbol of one end: "origin" + "H". */
double sy_words_end_value (const SyFindings *findings, const char *end, const char *symbol);

#endif
