/* SPDX-License-Identifier: MIT */
#ifndef SY_I18N_H
#define SY_I18N_H

#include <glib.h>

/*
 * Words for the screen. The text domain is named at every call, so that a library never depends on what
 * textdomain() was set to. N_() is in sy-field.h and marks text in the plain C rooms.
 */
#define _(text) g_dgettext (SY_GETTEXT_DOMAIN, text)
#define C_(context, text) g_dpgettext (SY_GETTEXT_DOMAIN, context "\004" text, sizeof (context))
#define P_(one, many, n) g_dngettext (SY_GETTEXT_DOMAIN, one, many, n)

#ifndef N_
#define N_(text) text
#endif

/* As a SyTranslate: puts the templates of core/record into the language of the screen. */
const char *sy_translate (const char *msgid);

#endif
