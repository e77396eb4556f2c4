/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/pile-taper.h"

#include <math.h>

LbOutline
lb_pile_outline_at (const LbPile *pile, double elevation_m)
{
  g_return_val_if_fail (pile, (LbOutline){ 0 });

  LbOutline outline = pile->outline;

  if (!lb_pile_is_tapered (pile))
    return outline;

  const double down = (pile->head_m - elevation_m) / (pile->head_m - pile->toe_m);

  if (!(outline.width_m > 0) || !isfinite (down) || outline.void_m >= pile->tip_width_m)
    outline.width_m = 0;
  else
    outline.width_m += CLAMP (down, 0, 1) * (pile->tip_width_m - outline.width_m);
  return outline;
}

double
lb_pile_end_width (const LbPile *pile, double elevation_m)
{
  g_return_val_if_fail (pile, (double) NAN);

  if (!lb_pile_is_tapered (pile))
    return 0;

  const double width_m = lb_pile_outline_at (pile, elevation_m).width_m;

  return width_m > 0 ? width_m : (double) NAN;
}

void
lb_pile_break_off (LbPile *pile, double head_m)
{
  g_return_if_fail (pile);

  if (!isnan (head_m))
    pile->outline = lb_pile_outline_at (pile, head_m);
  pile->head_m = head_m;
}
