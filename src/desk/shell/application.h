/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* The program: its windows, its files, and the actions that need no window. */
#define LB_TYPE_APPLICATION (lb_application_get_type ())
G_DECLARE_FINAL_TYPE (LbApplication, lb_application, LB, APPLICATION, AdwApplication)

LbApplication *lb_application_new (void);

G_END_DECLS
