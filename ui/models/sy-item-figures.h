/* SPDX-License-Identifier: MIT */
#ifndef SY_ITEM_FIGURES_H
#define SY_ITEM_FIGURES_H

#include "sy-worker.h"

/* What the lists of die changes and of cases show beside what every item has: read from the findings as they were stored,
   which the lists of the store do not carry. */
typedef struct
{
  char *id;              /* of the item                                                       */
  gint64 revision;       /* whose findings they are                                           */
  double stands_minutes; /* of a die change: how long the machine stands; NAN: not known      */
  char *winner;          /* of a case: the option that wins; "" for none                      */
  double payback_years;  /* its pay-back; INFINITY: never, NAN: not known                     */
  double npv;            /* its net present value, in the currency of the case; NAN: not known */
  char *currency;        /* "EUR"; "" for none                                                */
} SyItemFigures;

/* Never NULL: what cannot be read is not known. */
SyItemFigures *sy_item_figures_read (const SyEvent *revision);
void sy_item_figures_free (SyItemFigures *figures);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SyItemFigures, sy_item_figures_free)

/* Whether items of the kind have any. */
gboolean sy_item_has_figures (const char *item_kind);

/* Those of the latest revisions of items. @ids: of char *, kept until the answer. GPtrArray of SyItemFigures that frees its
   elements; what the store does not have is left out. */
void sy_worker_figures_async (SyWorker *worker, GPtrArray *ids, GCancellable *cancellable, GAsyncReadyCallback callback,
                              gpointer user_data);
GPtrArray *sy_worker_figures_finish (SyWorker *worker, GAsyncResult *result, GError **error);

#endif
