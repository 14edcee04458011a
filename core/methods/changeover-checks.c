/* SPDX-License-Identifier: MIT */
#include "sy-changeover-facts.h"

/*
 * Which checks a step must have. The regulations are named as information: what a shop must do is for local regulations
 * and a competent person.
 */

#define ISOLATION "29 CFR 1910.147 (control of hazardous energy); UK PUWER 1998 reg. 19 (from memory)"
#define BLOCKS "29 CFR 1910.217(d)(9)(iv): safety blocks whenever dies are adjusted or repaired in the press (from memory)"
#define PRESSURE "29 CFR 1910.147(d)(5): stored energy (from memory)"
#define HOT "UK PUWER 1998 reg. 13: high temperature (from memory)"
#define TIED "common practice, no source"
#define UNDER "29 CFR 1910.184(c)(9): clear of loads about to be lifted and of suspended loads"
#define PRACTICE "common practice, no source"
#define WALKERS "UK Workplace Regulations 1992 reg. 17; 29 CFR 1910.178(m)-(n): powered trucks (from memory)"
#define TORQUED "29 CFR 1910.217(d)(7): die fastening (from memory)"
#define GUARDS "UK PUWER 1998 reg. 32-33: guards tested after setting; 29 CFR 1910.217(e) (from memory)"

static const SyNeededCheck none[] = { { SY_CHECK_ISOLATED, true, "", false } };

/* Hands or a hoist inside the stopped press. */
static const SyNeededCheck isolate[] = {
  { SY_CHECK_ISOLATED, false, ISOLATION, true },
};
static const SyNeededCheck block[] = {
  { SY_CHECK_ISOLATED, true, ISOLATION, true },
  { SY_CHECK_BLOCKED, false, BLOCKS, true },
};
static const SyNeededCheck unclamp[] = {
  { SY_CHECK_ISOLATED, true, ISOLATION, true },
  { SY_CHECK_BLOCKED, true, BLOCKS, true },
  { SY_CHECK_TIED, true, TIED, false },
};
static const SyNeededCheck disconnect[] = {
  { SY_CHECK_ISOLATED, true, ISOLATION, true },
  { SY_CHECK_PRESSURE, true, PRESSURE, true },
};
static const SyNeededCheck in_press[] = {
  { SY_CHECK_ISOLATED, true, ISOLATION, true },
  { SY_CHECK_BLOCKED, true, BLOCKS, true },
  { SY_CHECK_PRESSURE, true, PRESSURE, true },
  { SY_CHECK_HOT, true, HOT, true },
  { SY_CHECK_TIED, true, TIED, false },
};
static const SyNeededCheck lift[] = {
  { SY_CHECK_HOT, true, HOT, true },
  { SY_CHECK_TIED, true, TIED, false },
  { SY_CHECK_NOBODY_UNDER, false, UNDER, false },
  { SY_CHECK_TAG_LINE, false, PRACTICE, false },
  { SY_CHECK_TRIAL_LIFT, false, PRACTICE, false },
};
static const SyNeededCheck carry[] = {
  { SY_CHECK_HOT, true, HOT, true },
};
static const SyNeededCheck roll[] = {
  { SY_CHECK_HOT, true, HOT, true },
  { SY_CHECK_WALKERS, false, WALKERS, true },
};
static const SyNeededCheck truck[] = {
  { SY_CHECK_TIED, true, TIED, false },
  { SY_CHECK_NOBODY_UNDER, false, UNDER, false },
  { SY_CHECK_WALKERS, false, WALKERS, true },
};
static const SyNeededCheck clamp[] = {
  { SY_CHECK_ISOLATED, true, ISOLATION, true },
  { SY_CHECK_BLOCKED, true, BLOCKS, true },
  { SY_CHECK_TORQUED, false, TORQUED, true },
};
static const SyNeededCheck first_off[] = {
  { SY_CHECK_TORQUED, true, TORQUED, true },
  { SY_CHECK_BLOCKS_OUT, true, BLOCKS, true },
  { SY_CHECK_GUARDS, true, GUARDS, true },
};

#define NEEDED(array) { array, SY_LEN (array) }
static const struct
{
  const SyNeededCheck *checks;
  size_t n;
} needed[SY_N_STEP_KINDS] = {
  [SY_STEP_ISOLATE] = NEEDED (isolate),
  [SY_STEP_BLOCK] = NEEDED (block),
  [SY_STEP_UNCLAMP] = NEEDED (unclamp),
  [SY_STEP_DISCONNECT] = NEEDED (disconnect),
  [SY_STEP_DRAW] = NEEDED (in_press),
  [SY_STEP_LIFT] = NEEDED (lift),
  [SY_STEP_CARRY] = NEEDED (carry),
  [SY_STEP_ROLL] = NEEDED (roll),
  [SY_STEP_TRUCK] = NEEDED (truck),
  [SY_STEP_TURN] = NEEDED (lift),
  [SY_STEP_STORE] = { none, 0 },
  [SY_STEP_BRING] = { none, 0 },
  [SY_STEP_SET] = NEEDED (in_press),
  [SY_STEP_CLAMP] = NEEDED (clamp),
  [SY_STEP_ADJUST] = { none, 0 },
  [SY_STEP_FIRST_OFF] = NEEDED (first_off),
  [SY_STEP_RELEASE] = NEEDED (first_off),
};

size_t
sy_step_needed_checks (SyStepKind kind, SyWhen when, const SyNeededCheck **out)
{
  *out = needed[kind].checks;
  /* what is drawn or set while the machine runs is not in the press */
  if (when == SY_WHEN_RUNNING && (kind == SY_STEP_DRAW || kind == SY_STEP_SET))
    {
      *out = carry;
      return SY_LEN (carry);
    }
  return needed[kind].n;
}
