/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The palette for pictures on the screen, by the style in force: light or dark, high contrast. */
const LbPalette *lb_look_palette (GtkWidget *widget);

/* Draws @widget again whenever the style changes, for as long as it lives. */
void lb_look_follow (GtkWidget *widget);

G_END_DECLS
