/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/look.h"

#include <adwaita.h>

const LbPalette *
lb_look_palette (GtkWidget *widget)
{
  AdwStyleManager *style = adw_style_manager_get_for_display (gtk_widget_get_display (widget));
  const gboolean is_dark = adw_style_manager_get_dark (style);

  if (adw_style_manager_get_high_contrast (style))
    return lb_palette (is_dark ? LB_PALETTE_HIGH_CONTRAST_DARK : LB_PALETTE_HIGH_CONTRAST);

  return lb_palette (is_dark ? LB_PALETTE_DARK : LB_PALETTE_LIGHT);
}

void
lb_look_follow (GtkWidget *widget)
{
  AdwStyleManager *style = adw_style_manager_get_for_display (gtk_widget_get_display (widget));

  g_signal_connect_object (style, "notify::dark", G_CALLBACK (gtk_widget_queue_draw), widget,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (style, "notify::high-contrast", G_CALLBACK (gtk_widget_queue_draw),
                           widget, G_CONNECT_SWAPPED);
}
