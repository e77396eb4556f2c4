/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define LB_EXCHANGE_ERROR (lb_exchange_error_quark ())

typedef enum {
  LB_EXCHANGE_ERROR_READ,   /* the file cannot be read */
  LB_EXCHANGE_ERROR_TEXT,   /* not UTF-8 text, or quotes that never close */
  LB_EXCHANGE_ERROR_LARGE,  /* more rows, columns or bytes than we take */
  LB_EXCHANGE_ERROR_COLUMN, /* a column that is needed is not mapped */
  LB_EXCHANGE_ERROR_VALUE,  /* a cell cannot be read as its column's fact */
} LbExchangeError;

GQuark lb_exchange_error_quark (void);

G_END_DECLS
