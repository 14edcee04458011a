/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "sy-ledger-deeds.h"
#include "sy-words.h"

static const char holds_empty[] = N_ ("The journal is empty: there is nothing yet that could have been altered.");
static const char holds_one[] = N_ ("The one line of the journal holds: it is what its hash says. The head is {head}.");
static const char holds[]
  = N_ ("All {lines} lines of the journal hold: each is what its hash says, none is missing, moved or added. "
        "The head is {head}.");
static const char known_end[] = N_ ("It is the head that was kept: nothing was removed from the end.");
static const char known_before[]
  = N_ ("The head that was kept stands at line {known_at}: nothing up to there was altered since.");

static const char *const faults[] = {
  [SY_FAULT_NUMBER]
  = N_ ("Line {line} does not follow the line before it: expected {expected}, found {found}. A line was removed, "
        "inserted, moved or put there twice."),
  [SY_FAULT_HASH]
  = N_ ("Line {line} is not what was recorded: expected {expected}, found {found}. It was changed, or it was not there."),
  [SY_FAULT_COLUMN]
  = N_ ("Line {line} says something else in its row than in its recorded bytes: expected {expected}, found {found}."),
  [SY_FAULT_EVENT]
  = N_ ("Line {line} cannot be read, although the chain holds: expected {expected}, found {found}."),
  [SY_FAULT_END]
  = N_ ("The journal ends too early, at line {line}: expected {expected}, found {found}. Lines were removed from its end."),
  [SY_FAULT_HEAD]
  = N_ ("The head that was kept is at none of the {line} lines: expected {expected}, found {found}. Lines were removed "
        "from the end, the journal was rewritten, or the head is of another record."),
  [SY_FAULT_FILE]
  = N_ ("The file is damaged at line {line} and cannot be read further: expected {expected}, found {found}."),
  [SY_FAULT_PARTS]
  = N_ ("Every line holds, but the file was altered so that lines can be hidden or changed unseen: expected {expected}, found "
        "{found}. Make the lists anew."),
};

static const char *const fault_ids[] = {
  [SY_FAULT_NONE] = "none",   [SY_FAULT_NUMBER] = "number", [SY_FAULT_HASH] = "hash", [SY_FAULT_COLUMN] = "column",
  [SY_FAULT_EVENT] = "event", [SY_FAULT_END] = "end",       [SY_FAULT_HEAD] = "head", [SY_FAULT_FILE] = "file",
  [SY_FAULT_PARTS] = "parts",
};

static const char before_it[] = N_ ("Lines before it that hold: {lines}.");
static const char limits[]
  = N_ ("What this cannot show: names are typed, not proven; times are those of a computer; and whoever can write the "
        "file can rewrite the whole journal so that it holds again, which only a head that was kept elsewhere brings to "
        "light.");

static char *
fill_words (const char *name, gconstpointer data)
{
  const SyVerification *verification = data;

  if (strcmp (name, "lines") == 0)
    return g_strdup_printf ("%" G_GUINT64_FORMAT, verification->lines);
  if (strcmp (name, "line") == 0)
    return g_strdup_printf ("%" G_GUINT64_FORMAT, verification->line);
  if (strcmp (name, "known_at") == 0)
    return g_strdup_printf ("%" G_GUINT64_FORMAT, verification->known_at);
  if (strcmp (name, "head") == 0)
    return sy_hash_text (&verification->head.hash);
  if (strcmp (name, "expected") == 0)
    return g_strdup (verification->expected != NULL ? verification->expected : "–");
  if (strcmp (name, "found") == 0)
    return g_strdup (verification->found != NULL ? verification->found : "–");
  return NULL;
}

static void
say (GString *out, const char *msgid, SyTranslate translate, const SyVerification *verification)
{
  g_autofree char *sentence = sy_words_fill (msgid, translate, fill_words, verification);

  g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", sentence);
}

const char *
sy_fault_id (SyFault fault)
{
  return fault_ids[fault];
}

char *
sy_verification_words (const SyVerification *verification, SyTranslate translate)
{
  GString *out = g_string_new (NULL);

  if (verification->fault == SY_FAULT_NONE)
    {
      say (out, verification->lines == 0 ? holds_empty : verification->lines == 1 ? holds_one : holds, translate,
           verification);
      if (verification->known_at != 0)
        say (out, verification->known_at == verification->lines ? known_end : known_before, translate, verification);
    }
  else
    {
      say (out, faults[verification->fault], translate, verification);
      if (verification->fault != SY_FAULT_HEAD)
        say (out, before_it, translate, verification);
    }
  say (out, limits, translate, verification);
  return g_string_free (out, FALSE);
}
