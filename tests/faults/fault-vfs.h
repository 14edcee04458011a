/* SPDX-License-Identifier: MIT */
#ifndef FAULT_VFS_H
#define FAULT_VFS_H

#include <glib.h>
#include <sqlite3.h>

/* A file layer for SQLite in front of its own that counts calls and lets one of them fail, or be the last that the
   process makes. Any thread; one fault at a time. */

typedef enum
{
  FAULT_OPEN,
  FAULT_READ,
  FAULT_WRITE,
  FAULT_SYNC,
  FAULT_TRUNCATE,
  FAULT_SHM_MAP,
  FAULT_SHM_LOCK,
  FAULT_DELETE,
  FAULT_FILE_SIZE,
  N_FAULT_CALLS,
  FAULT_ANY = N_FAULT_CALLS, /* counts those that change something: write, sync, truncate, map, delete */
} FaultCall;

const char *fault_call_name (FaultCall call);

typedef enum
{
  FAULT_ONCE,
  FAULT_LASTING, /* that call and all of its kind after it */
  FAULT_KILL,    /* SIGKILL instead of the call             */
} FaultManner;

/* Makes it the layer that SQLite takes by default; before the first store is opened. Once more does nothing. */
void fault_vfs_install (void);

/* The @nth call (from 1) from now on fails with @code, an SQLite result. A write puts half of its bytes down first. */
void fault_vfs_arm (FaultCall call, guint nth, int code, FaultManner manner);
/* Everything works again. Return value: whether the fault was met. */
gboolean fault_vfs_disarm (void);

/* Calls since the last arming or reset. */
guint fault_vfs_count (FaultCall call);
void fault_vfs_reset_counts (void);

#endif
