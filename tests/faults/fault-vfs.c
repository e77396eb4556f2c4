/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fault-vfs.h"

#include <sqlite3.h>
#include <string.h>

/* The real file follows the shim's own part, as SQLite allots szOsFile bytes for both. */
typedef struct
{
  sqlite3_file base;
  sqlite3_file *real;
} FaultFile;

static struct
{
  sqlite3_vfs vfs;
  sqlite3_vfs *real;
  gboolean is_armed;
  guint kinds;
  FaultManner manner;
  guint left; /* operations until the fault */
  guint n_faults;
} disk;

/* Whether this operation is to fail. */
static gboolean
strikes (FaultKind kind)
{
  if (!disk.is_armed || (disk.kinds & kind) == 0)
    return FALSE;
  if (disk.left > 1) {
    disk.left--;
    return FALSE;
  }
  if (disk.manner == FAULT_ONCE && disk.n_faults > 0)
    return FALSE;
  disk.n_faults++;
  return TRUE;
}

static sqlite3_file *
real (sqlite3_file *file)
{
  return ((FaultFile *) (gpointer) file)->real;
}

static int
file_close (sqlite3_file *file)
{
  return real (file)->pMethods->xClose (real (file));
}

static int
file_read (sqlite3_file *file, void *into, int n, sqlite3_int64 at)
{
  if (strikes (FAULT_READ))
    return SQLITE_IOERR_READ;
  return real (file)->pMethods->xRead (real (file), into, n, at);
}

static int
file_write (sqlite3_file *file, const void *from, int n, sqlite3_int64 at)
{
  if (strikes (FAULT_WRITE)) {
    /* Half of it gets there, as on a disk that fills up or a cable that is pulled. */
    real (file)->pMethods->xWrite (real (file), from, n / 2, at);
    return disk.manner == FAULT_DISK_FULL ? SQLITE_FULL : SQLITE_IOERR_WRITE;
  }
  return real (file)->pMethods->xWrite (real (file), from, n, at);
}

static int
file_truncate (sqlite3_file *file, sqlite3_int64 size)
{
  if (strikes (FAULT_TRUNCATE))
    return SQLITE_IOERR_TRUNCATE;
  return real (file)->pMethods->xTruncate (real (file), size);
}

static int
file_sync (sqlite3_file *file, int flags)
{
  if (strikes (FAULT_SYNC))
    return SQLITE_IOERR_FSYNC;
  return real (file)->pMethods->xSync (real (file), flags);
}

static int
file_size (sqlite3_file *file, sqlite3_int64 *out_size)
{
  return real (file)->pMethods->xFileSize (real (file), out_size);
}

static int
file_lock (sqlite3_file *file, int level)
{
  if (strikes (FAULT_LOCK))
    return SQLITE_IOERR_LOCK;
  return real (file)->pMethods->xLock (real (file), level);
}

static int
file_unlock (sqlite3_file *file, int level)
{
  return real (file)->pMethods->xUnlock (real (file), level);
}

static int
file_check_lock (sqlite3_file *file, int *out_is_locked)
{
  return real (file)->pMethods->xCheckReservedLock (real (file), out_is_locked);
}

static int
file_control (sqlite3_file *file, int what, void *argument)
{
  return real (file)->pMethods->xFileControl (real (file), what, argument);
}

static int
file_sector_size (sqlite3_file *file)
{
  return real (file)->pMethods->xSectorSize (real (file));
}

static int
file_characteristics (sqlite3_file *file)
{
  return real (file)->pMethods->xDeviceCharacteristics (real (file));
}

/* Version 1: without shared memory and mapping, which a rollback journal does not need. */
static const sqlite3_io_methods methods = {
  .iVersion = 1,
  .xClose = file_close,
  .xRead = file_read,
  .xWrite = file_write,
  .xTruncate = file_truncate,
  .xSync = file_sync,
  .xFileSize = file_size,
  .xLock = file_lock,
  .xUnlock = file_unlock,
  .xCheckReservedLock = file_check_lock,
  .xFileControl = file_control,
  .xSectorSize = file_sector_size,
  .xDeviceCharacteristics = file_characteristics,
};

static int
disk_open (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
  FaultFile *fault = (FaultFile *) (gpointer) file;

  file->pMethods = NULL;
  if (strikes (FAULT_OPEN))
    return SQLITE_CANTOPEN;
  fault->real = (sqlite3_file *) (gpointer) (fault + 1);

  const int rc = disk.real->xOpen (disk.real, name, fault->real, flags, out_flags);
  if (fault->real->pMethods != NULL)
    file->pMethods = &methods;
  return rc;
}

static int
disk_delete (sqlite3_vfs *vfs, const char *name, int must_sync)
{
  if (strikes (FAULT_DELETE))
    return SQLITE_IOERR_DELETE;
  return disk.real->xDelete (disk.real, name, must_sync);
}

void
fault_vfs_install (void)
{
  if (disk.real != NULL)
    return;
  disk.real = sqlite3_vfs_find (NULL);
  disk.vfs = *disk.real;
  disk.vfs.zName = "fault";
  disk.vfs.pNext = NULL;
  disk.vfs.szOsFile = (int) sizeof (FaultFile) + disk.real->szOsFile;
  disk.vfs.xOpen = disk_open;
  disk.vfs.xDelete = disk_delete;
  g_assert_cmpint (sqlite3_vfs_register (&disk.vfs, 1), ==, SQLITE_OK);
}

void
fault_vfs_arm (guint kinds, FaultManner manner, guint k)
{
  disk.kinds = kinds;
  disk.manner = manner;
  disk.left = k;
  disk.n_faults = 0;
  disk.is_armed = TRUE;
}

gboolean
fault_vfs_pause (void)
{
  const gboolean was_armed = disk.is_armed;

  disk.is_armed = FALSE;
  return was_armed;
}

void
fault_vfs_go_on (void)
{
  disk.is_armed = TRUE;
}

gboolean
fault_vfs_disarm (void)
{
  disk.is_armed = FALSE;
  return disk.n_faults > 0;
}
