/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether the facts of one pile agree with each other. What is not known cannot disagree. */
#include "trade/pile-bars.h"
#include "trade/pile-taper.h"

#include "trade/trade-error.h"

#include <math.h>

static gboolean
refuse (const LbPile *pile, GError **error, const char *fault)
{
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "Pile “%s”: %s", pile->mark, fault);
  return FALSE;
}

static gboolean
check_elevations (const LbPile *pile, GError **error)
{
  /* Comparisons with what is not known are false. */
  if (pile->head_m <= pile->toe_m)
    return refuse (pile, error, "the head is not above the toe; check both elevations");
  if (pile->head_m <= pile->cut_m)
    return refuse (pile, error, "the head is not above the cut; check both elevations");
  if (pile->cut_m < pile->toe_m)
    return refuse (pile, error, "the cut is below the toe; check both elevations");
  if (pile->mudline_m <= pile->toe_m)
    return refuse (pile, error, "the mudline is not above the toe; check both elevations");
  return TRUE;
}

static gboolean
check_section (const LbPile *pile, GError **error)
{
  const LbOutline *outline = &pile->outline;

  if (outline->width_m > 0 && outline->void_m >= outline->width_m)
    return refuse (pile, error,
                   "the void is as wide as the pile; check the void diameter and the width");
  if (outline->width_m > 0 && pile->tip_width_m > outline->width_m)
    return refuse (pile, error,
                   "the toe is wider than the head; check the width and the width at the toe");
  if (outline->void_m >= pile->tip_width_m)
    return refuse (pile, error,
                   "the void is as wide as the toe; check the void diameter and the width at the "
                   "toe");
  return TRUE;
}

/* Where the bars are looked at: at the cut, as far as that is known. */
static LbOutline
section_of_bars (const LbPile *pile)
{
  const LbOutline at_cut = lb_pile_outline_at (pile, pile->cut_m);

  return at_cut.width_m > 0 ? at_cut : pile->outline;
}

/* Whether the usual ring, or any that stands behind the faces, has room behind them. */
static gboolean
check_inset (const LbPile *pile, const LbOutline *outline, GError **error)
{
  const double inset_m = lb_pile_bar_inset (pile);
  const double bar_m = pile->bar->diameter_m;

  if (inset_m < bar_m / 2)
    return refuse (pile, error,
                   "the bars would stand out of the face; check the bar inset and the bar size");
  if (outline->width_m / 2 - inset_m < (outline->void_m + bar_m) / 2)
    return refuse (pile, error,
                   "there is no room for the bars behind the face; check the width, the void and "
                   "the bar inset");
  return TRUE;
}

static gboolean
check_places (const LbPile *pile, const LbOutline *outline, GError **error)
{
  LbPoint places[LB_BARS_MAX];
  g_autofree char *fault = NULL;
  guint bars[2];
  const char *reason = lb_pile_bars_place (pile, outline, places);

  if (reason != NULL)
    return refuse (pile, error, reason);
  switch (lb_bars_fit (outline, places, pile->n_bars, pile->bar->diameter_m, bars)) {
  case LB_BARS_FIT:
    return TRUE;
  case LB_BARS_OUT_OF_FACE:
    fault = g_strdup_printf (
      "bar %u stands out of the face; check the bar places, the bar size and "
      "the width",
      bars[0] + 1);
    break;
  case LB_BARS_IN_VOID:
    fault = g_strdup_printf ("bar %u stands in the void; check the bar places and the void",
                             bars[0] + 1);
    break;
  case LB_BARS_TOO_CLOSE:
    fault = g_strdup_printf ("bars %u and %u are closer than one bar’s thickness; check the number "
                             "of bars, their places and size, and the width",
                             bars[1] + 1, bars[0] + 1);
    break;
  }
  return refuse (pile, error, fault);
}

static gboolean
check_bars (const LbPile *pile, GError **error)
{
  if (!pile->bar || pile->n_bars == 0 || !(pile->outline.width_m > 0))
    return TRUE;

  const LbOutline outline = section_of_bars (pile);

  return (pile->bar_places[0] != '\0' || check_inset (pile, &outline, error)) &&
         check_places (pile, &outline, error);
}

gboolean
lb_pile_check (const LbPile *pile, GError **error)
{
  g_return_val_if_fail (pile, FALSE);

  if (!check_elevations (pile, error) || !check_section (pile, error))
    return FALSE;
  if (pile->n_bars > 0 && (pile->pinned & ~lb_bar_set_all (pile->n_bars)))
    return refuse (pile, error,
                   "a bar that is kept to the end is none of the pile's; check the number of bars");
  return check_bars (pile, error);
}
