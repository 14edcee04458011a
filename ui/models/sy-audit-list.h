/* SPDX-License-Identifier: MIT */
#ifndef SY_AUDIT_LIST_H
#define SY_AUDIT_LIST_H

#include <gio/gio.h>

#include "sy-audit.h"

/* Which items of the register are listed. */
typedef enum
{
  SY_AUDIT_LIST_IN_USE,
  SY_AUDIT_LIST_NOT_ASSESSED, /* or no longer; in use */
  SY_AUDIT_LIST_UNSIGNED,     /* in use               */
  SY_AUDIT_LIST_RETIRED,
} SyAuditListed;

/* One item of the register as at a day. Immutable. Keeps the whole of it as long as it is there. */
#define SY_TYPE_AUDIT_ITEM (sy_audit_item_get_type ())
G_DECLARE_FINAL_TYPE (SyAuditItem, sy_audit_item, SY, AUDIT_ITEM, GObject)

const SyAuditRow *sy_audit_item_get_row (SyAuditItem *item);

/* The register as at a day, as a GListModel of SyAuditItem. */
#define SY_TYPE_AUDIT_LIST (sy_audit_list_get_type ())
G_DECLARE_FINAL_TYPE (SyAuditList, sy_audit_list, SY, AUDIT_LIST, GObject)

/* Empty. */
SyAuditList *sy_audit_list_new (void);
/* Takes @audit. */
void sy_audit_list_take (SyAuditList *list, SyAudit *audit);
/* NULL: none was taken yet. */
const SyAudit *sy_audit_list_get (SyAuditList *list);
void sy_audit_list_show (SyAuditList *list, SyAuditListed listed);

#endif
