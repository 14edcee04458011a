/* SPDX-License-Identifier: MIT */
#include "fault-vfs.h"

#include <signal.h>
#include <string.h>
#include <unistd.h>

typedef struct
{
  sqlite3_file base;
  sqlite3_file *real; /* stands behind this in the same memory */
} FaultFile;

static struct
{
  GMutex lock;
  sqlite3_vfs *real;
  guint counts[N_FAULT_CALLS + 1];
  gboolean armed, met;
  FaultCall call;
  guint nth;
  int code;
  FaultManner manner;
} state;

static const struct
{
  const char *name;
  gboolean changes;
} calls[N_FAULT_CALLS] = {
  [FAULT_OPEN] = { "open", FALSE },        [FAULT_READ] = { "read", FALSE },
  [FAULT_WRITE] = { "write", TRUE },       [FAULT_SYNC] = { "sync", TRUE },
  [FAULT_TRUNCATE] = { "truncate", TRUE }, [FAULT_SHM_MAP] = { "shm map", TRUE },
  [FAULT_SHM_LOCK] = { "shm lock", FALSE }, [FAULT_DELETE] = { "delete", TRUE },
  [FAULT_FILE_SIZE] = { "file size", FALSE },
};

const char *
fault_call_name (FaultCall call)
{
  return call < N_FAULT_CALLS ? calls[call].name : "any";
}

static sqlite3_file *
real_of (sqlite3_file *file)
{
  return ((FaultFile *) file)->real;
}

static gboolean
is_due (FaultCall call)
{
  guint count;

  if (!state.armed || (state.call != call && !(state.call == FAULT_ANY && calls[call].changes)))
    return FALSE;
  count = state.counts[state.call];
  return count == state.nth || (count > state.nth && state.manner == FAULT_LASTING);
}

/* What a call begins with: SQLITE_OK, or what it is to fail with. */
static int
enter (FaultCall call)
{
  int code = SQLITE_OK;

  g_mutex_lock (&state.lock);
  state.counts[call]++;
  if (calls[call].changes)
    state.counts[FAULT_ANY]++;
  if (is_due (call))
    {
      state.met = TRUE;
      code = state.code;
      if (state.manner == FAULT_KILL)
        kill (getpid (), SIGKILL);
    }
  g_mutex_unlock (&state.lock);
  return code;
}

static int
fault_close (sqlite3_file *file)
{
  return real_of (file)->pMethods->xClose (real_of (file));
}

static int
fault_read (sqlite3_file *file, void *data, int size, sqlite3_int64 at)
{
  int code = enter (FAULT_READ);

  return code != SQLITE_OK ? code : real_of (file)->pMethods->xRead (real_of (file), data, size, at);
}

static int
fault_write (sqlite3_file *file, const void *data, int size, sqlite3_int64 at)
{
  int code = enter (FAULT_WRITE);

  if (code == SQLITE_OK)
    return real_of (file)->pMethods->xWrite (real_of (file), data, size, at);
  real_of (file)->pMethods->xWrite (real_of (file), data, size / 2, at);
  return code;
}

static int
fault_truncate (sqlite3_file *file, sqlite3_int64 size)
{
  int code = enter (FAULT_TRUNCATE);

  return code != SQLITE_OK ? code : real_of (file)->pMethods->xTruncate (real_of (file), size);
}

static int
fault_sync (sqlite3_file *file, int flags)
{
  int code = enter (FAULT_SYNC);

  return code != SQLITE_OK ? code : real_of (file)->pMethods->xSync (real_of (file), flags);
}

static int
fault_file_size (sqlite3_file *file, sqlite3_int64 *size)
{
  int code = enter (FAULT_FILE_SIZE);

  return code != SQLITE_OK ? code : real_of (file)->pMethods->xFileSize (real_of (file), size);
}

static int
fault_lock (sqlite3_file *file, int level)
{
  return real_of (file)->pMethods->xLock (real_of (file), level);
}

static int
fault_unlock (sqlite3_file *file, int level)
{
  return real_of (file)->pMethods->xUnlock (real_of (file), level);
}

static int
fault_check_reserved_lock (sqlite3_file *file, int *out)
{
  return real_of (file)->pMethods->xCheckReservedLock (real_of (file), out);
}

static int
fault_file_control (sqlite3_file *file, int which, void *data)
{
  return real_of (file)->pMethods->xFileControl (real_of (file), which, data);
}

static int
fault_sector_size (sqlite3_file *file)
{
  return real_of (file)->pMethods->xSectorSize (real_of (file));
}

static int
fault_device_characteristics (sqlite3_file *file)
{
  return real_of (file)->pMethods->xDeviceCharacteristics (real_of (file));
}

static int
fault_shm_map (sqlite3_file *file, int region, int size, int extend, void volatile **out)
{
  int code = enter (FAULT_SHM_MAP);

  if (code == SQLITE_OK)
    return real_of (file)->pMethods->xShmMap (real_of (file), region, size, extend, out);
  *out = NULL;
  return code;
}

static int
fault_shm_lock (sqlite3_file *file, int offset, int n, int flags)
{
  /* Letting go cannot fail. */
  int code = (flags & SQLITE_SHM_LOCK) != 0 ? enter (FAULT_SHM_LOCK) : SQLITE_OK;

  return code != SQLITE_OK ? code : real_of (file)->pMethods->xShmLock (real_of (file), offset, n, flags);
}

static void
fault_shm_barrier (sqlite3_file *file)
{
  real_of (file)->pMethods->xShmBarrier (real_of (file));
}

static int
fault_shm_unmap (sqlite3_file *file, int and_delete)
{
  return real_of (file)->pMethods->xShmUnmap (real_of (file), and_delete);
}

/* Version 2: nothing is read past xRead by way of mapped memory. */
static const sqlite3_io_methods methods = {
  .iVersion = 2,
  .xClose = fault_close,
  .xRead = fault_read,
  .xWrite = fault_write,
  .xTruncate = fault_truncate,
  .xSync = fault_sync,
  .xFileSize = fault_file_size,
  .xLock = fault_lock,
  .xUnlock = fault_unlock,
  .xCheckReservedLock = fault_check_reserved_lock,
  .xFileControl = fault_file_control,
  .xSectorSize = fault_sector_size,
  .xDeviceCharacteristics = fault_device_characteristics,
  .xShmMap = fault_shm_map,
  .xShmLock = fault_shm_lock,
  .xShmBarrier = fault_shm_barrier,
  .xShmUnmap = fault_shm_unmap,
};

static int
fault_open (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
  FaultFile *self = (FaultFile *) file;
  int code = enter (FAULT_OPEN);

  (void) vfs;
  file->pMethods = NULL;
  if (code != SQLITE_OK)
    return code;
  self->real = (sqlite3_file *) (void *) (self + 1);
  memset (self->real, 0, (gsize) state.real->szOsFile);
  code = state.real->xOpen (state.real, name, self->real, flags, out_flags);
  if (self->real->pMethods != NULL)
    file->pMethods = &methods;
  return code;
}

static int
fault_delete (sqlite3_vfs *vfs, const char *name, int sync_folder)
{
  int code = enter (FAULT_DELETE);

  (void) vfs;
  return code != SQLITE_OK ? code : state.real->xDelete (state.real, name, sync_folder);
}

void
fault_vfs_install (void)
{
  static sqlite3_vfs vfs;

  if (state.real != NULL)
    return;
  state.real = sqlite3_vfs_find (NULL);
  /* Whatever else the system's layer does, it does for this one as well: none of it looks at the struct. */
  vfs = *state.real;
  vfs.pNext = NULL;
  vfs.zName = "fault";
  vfs.szOsFile = (int) sizeof (FaultFile) + state.real->szOsFile;
  vfs.xOpen = fault_open;
  vfs.xDelete = fault_delete;
  if (sqlite3_vfs_register (&vfs, 1) != SQLITE_OK)
    g_error ("SQLite does not take another file layer");
}

void
fault_vfs_reset_counts (void)
{
  g_mutex_lock (&state.lock);
  memset (state.counts, 0, sizeof state.counts);
  g_mutex_unlock (&state.lock);
}

void
fault_vfs_arm (FaultCall call, guint nth, int code, FaultManner manner)
{
  g_mutex_lock (&state.lock);
  memset (state.counts, 0, sizeof state.counts);
  state.armed = TRUE;
  state.met = FALSE;
  state.call = call;
  state.nth = nth;
  state.code = code;
  state.manner = manner;
  g_mutex_unlock (&state.lock);
}

gboolean
fault_vfs_disarm (void)
{
  gboolean met;

  g_mutex_lock (&state.lock);
  met = state.armed && state.met;
  state.armed = FALSE;
  g_mutex_unlock (&state.lock);
  return met;
}

guint
fault_vfs_count (FaultCall call)
{
  guint count;

  g_mutex_lock (&state.lock);
  count = state.counts[call];
  g_mutex_unlock (&state.lock);
  return count;
}
