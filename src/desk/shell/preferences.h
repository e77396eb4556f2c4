/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* What the program remembers between runs; %NULL where its schema is not installed (it then runs
 * with the defaults and remembers nothing). The object is the program's own. */
GSettings *lb_preferences (void);

G_END_DECLS
