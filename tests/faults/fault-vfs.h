/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A disk that fails on demand: SQLite's default file system with a counter in front. While it
 * is armed, the k-th operation of the chosen kinds fails, once or from then on. */
typedef enum {
  FAULT_READ = 1 << 0,
  FAULT_WRITE = 1 << 1,
  FAULT_SYNC = 1 << 2,
  FAULT_TRUNCATE = 1 << 3,
  FAULT_OPEN = 1 << 4,
  FAULT_DELETE = 1 << 5,
  FAULT_LOCK = 1 << 6, /* as on a network drive that locks nothing */
} FaultKind;

#define FAULT_ALL ((1 << 7) - 1)

typedef enum {
  FAULT_ONCE,
  FAULT_FOR_EVER,
  FAULT_DISK_FULL, /* for ever, and writes say so */
} FaultManner;

void fault_vfs_install (void); /* as the default from now on, not armed */
void fault_vfs_arm (guint kinds, FaultManner manner, guint k);

/* In the middle of a work: what comes is no part of it, until it goes on. Returns: whether it was
 * armed */
gboolean fault_vfs_pause (void);
void fault_vfs_go_on (void);

/* Returns: whether a fault happened since it was armed */
gboolean fault_vfs_disarm (void);

G_END_DECLS
