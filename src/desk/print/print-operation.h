/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/print/printout.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* An operation that prints @printout, which it takes. Its paper is preset and can be changed in
 * the dialog: pages are laid out for what is chosen there. */
GtkPrintOperation *lb_print_operation_new (LbPrintout *printout);

G_END_DECLS
