/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

G_DEFINE_QUARK (lb_draw_error, lb_draw_error)
