/* SPDX-License-Identifier: MIT */
#include "sy-audit-list.h"

/* The register is shared by its items, which GTK may keep after the list has another one: a box with a count. */
typedef struct
{
  SyAudit *audit;
} Shared;

static void
clear_shared (gpointer data)
{
  sy_audit_free (((Shared *) data)->audit);
}

static void
release (Shared *shared)
{
  g_rc_box_release_full (shared, clear_shared);
}

/* Topics: an item */

struct _SyAuditItem
{
  GObject parent_instance;
  Shared *shared;
  const SyAuditRow *row;
};

G_DEFINE_FINAL_TYPE (SyAuditItem, sy_audit_item, G_TYPE_OBJECT)

static void
sy_audit_item_finalize (GObject *object)
{
  g_clear_pointer (&SY_AUDIT_ITEM (object)->shared, release);
  G_OBJECT_CLASS (sy_audit_item_parent_class)->finalize (object);
}

static void
sy_audit_item_class_init (SyAuditItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_audit_item_finalize;
}

static void
sy_audit_item_init (SyAuditItem *self)
{
  (void) self;
}

const SyAuditRow *
sy_audit_item_get_row (SyAuditItem *self)
{
  g_return_val_if_fail (SY_IS_AUDIT_ITEM (self), NULL);
  return self->row;
}

/* Topics: the list */

struct _SyAuditList
{
  GObject parent_instance;
  Shared *shared; /* NULL: none yet */
  GPtrArray *items;
  SyAuditListed listed;
};

static void list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (SyAuditList, sy_audit_list, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

static GType
get_item_type (GListModel *model)
{
  (void) model;
  return SY_TYPE_AUDIT_ITEM;
}

static guint
get_n_items (GListModel *model)
{
  return SY_AUDIT_LIST (model)->items->len;
}

static gpointer
get_item (GListModel *model, guint position)
{
  SyAuditList *self = SY_AUDIT_LIST (model);

  return position < self->items->len ? g_object_ref (self->items->pdata[position]) : NULL;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = get_item_type;
  iface->get_n_items = get_n_items;
  iface->get_item = get_item;
}

static void
add_rows (SyAuditList *self, const GPtrArray *rows, guint gaps)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const SyAuditRow *row = rows->pdata[i];
      SyAuditItem *item;

      if (gaps != 0 && (row->gaps & gaps) == 0)
        continue;
      item = g_object_new (SY_TYPE_AUDIT_ITEM, NULL);
      item->shared = g_rc_box_acquire (self->shared);
      item->row = row;
      g_ptr_array_add (self->items, item);
    }
}

static void
list (SyAuditList *self)
{
  const SyAudit *audit = self->shared != NULL ? self->shared->audit : NULL;
  const guint before = self->items->len;
  g_autoptr (GPtrArray) old = g_steal_pointer (&self->items);

  self->items = g_ptr_array_new_with_free_func (g_object_unref);
  if (audit != NULL && self->listed == SY_AUDIT_LIST_RETIRED)
    add_rows (self, audit->retired, 0);
  else if (audit != NULL)
    add_rows (self, audit->rows,
              self->listed == SY_AUDIT_LIST_NOT_ASSESSED ? SY_AUDIT_NOT_ASSESSED
              : self->listed == SY_AUDIT_LIST_UNSIGNED   ? SY_AUDIT_UNSIGNED
                                                         : 0);
  if (before > 0 || self->items->len > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, before, self->items->len);
}

static void
sy_audit_list_finalize (GObject *object)
{
  SyAuditList *self = SY_AUDIT_LIST (object);

  g_ptr_array_unref (self->items);
  g_clear_pointer (&self->shared, release);
  G_OBJECT_CLASS (sy_audit_list_parent_class)->finalize (object);
}

static void
sy_audit_list_class_init (SyAuditListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sy_audit_list_finalize;
}

static void
sy_audit_list_init (SyAuditList *self)
{
  self->items = g_ptr_array_new_with_free_func (g_object_unref);
}

SyAuditList *
sy_audit_list_new (void)
{
  return g_object_new (SY_TYPE_AUDIT_LIST, NULL);
}

void
sy_audit_list_take (SyAuditList *self, SyAudit *audit)
{
  g_return_if_fail (SY_IS_AUDIT_LIST (self));
  g_clear_pointer (&self->shared, release);
  self->shared = g_rc_box_new0 (Shared);
  self->shared->audit = audit;
  list (self);
}

const SyAudit *
sy_audit_list_get (SyAuditList *self)
{
  g_return_val_if_fail (SY_IS_AUDIT_LIST (self), NULL);
  return self->shared != NULL ? self->shared->audit : NULL;
}

void
sy_audit_list_show (SyAuditList *self, SyAuditListed listed)
{
  g_return_if_fail (SY_IS_AUDIT_LIST (self));
  if (self->listed == listed)
    return;
  self->listed = listed;
  list (self);
}
