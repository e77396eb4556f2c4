/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "book/book-error.h"

G_DEFINE_QUARK (lb_book_error, lb_book_error)
