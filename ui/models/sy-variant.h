/* SPDX-License-Identifier: MIT */
#ifndef SY_VARIANT_H
#define SY_VARIANT_H

#include "sy-event.h"
#include "sy-form.h"

/* The start of a new item with the facts of another one: a draft that is in no file. Where it comes from stands as the last line
   of its notes. Free with sy_draft_free(). */

/* What stands in @form, of an item called @name, of revision @revision or, 0, not saved yet: "… (variant)". */
SyDraft *sy_variant_new (SyForm *form, const char *name, gint64 revision);

/* The facts of a stored revision, for an item that has no name yet. NULL with the error: the method is not there any more, or
   the facts are none of it. */
SyDraft *sy_variant_new_from (SyDesk *desk, const SyEvent *revision, GError **error);

#endif
