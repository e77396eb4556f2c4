/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define LB_BOOK_ERROR (lb_book_error_quark ())

typedef enum {
  LB_BOOK_ERROR_OPEN,      /* the file cannot be opened or made */
  LB_BOOK_ERROR_FOREIGN,   /* not a job file of ours */
  LB_BOOK_ERROR_NEWER,     /* written by a newer version */
  LB_BOOK_ERROR_DAMAGED,   /* fails its checks */
  LB_BOOK_ERROR_READ_ONLY, /* opened for reading; nothing can be recorded */
  LB_BOOK_ERROR_BUSY,      /* another program holds the file */
  LB_BOOK_ERROR_DISK,      /* a write, sync or read failed; nothing was stored */
  LB_BOOK_ERROR_REFUSED,   /* the entry itself is wrong: no such pile, a mark taken twice … */
  LB_BOOK_ERROR_SIGNED,    /* the shift is signed: only a correction changes it */
  LB_BOOK_ERROR_CANCELLED,
} LbBookError;

GQuark lb_book_error_quark (void);

G_END_DECLS
