/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "exchange/exchange-error.h"

G_DEFINE_QUARK (lb_exchange_error, lb_exchange_error)
