/* SPDX-License-Identifier: MIT */
#include "sy-i18n.h"

const char *
sy_translate (const char *msgid)
{
  /* The translation of "" is the catalogue's header. */
  return *msgid != '\0' ? g_dgettext (SY_GETTEXT_DOMAIN, msgid) : "";
}
