/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/trade-error.h"

G_DEFINE_QUARK (lb_trade_error, lb_trade_error)
