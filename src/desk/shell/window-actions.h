/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/window.h"

G_BEGIN_DECLS

/* The actions "win.…": each is reached by menu, key and test alike. */
void lb_window_actions_add (LbWindow *self);

/* Which of them can be used now. */
void lb_window_actions_update (LbWindow *self);

/* Looks at a packet, to be joined to the window's job; there is one. */
void lb_window_join (LbWindow *self, GFile *file);

G_END_DECLS
