/* SPDX-License-Identifier: MIT */
#ifndef SY_LIMITS_REGION_H
#define SY_LIMITS_REGION_H

#include <gtk/gtk.h>

#include "sy-policy.h"

/* What results defer to by the policy in force: titles and sections, intervals, the site's own rules, each with its source; and
   which region the record is opened in from the next time on (SY_SETTING_REGION). Information, no legal advice. */
GtkWidget *sy_limits_region_new (const SyPolicy *policy);

#endif
