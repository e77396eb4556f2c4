/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define LB_TRADE_ERROR (lb_trade_error_quark ())

typedef enum {
  LB_TRADE_ERROR_UNKNOWN,    /* no such bar, unit, step or name */
  LB_TRADE_ERROR_DOMAIN,     /* a value outside what the formula or table covers */
  LB_TRADE_ERROR_INCOMPLETE, /* a fact the figure needs is not known */
} LbTradeError;

GQuark lb_trade_error_quark (void);

G_END_DECLS
