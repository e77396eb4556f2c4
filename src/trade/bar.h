/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/tag.h"

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  LB_BAR_DEFORMED, /* ASTM A615 #3 to #18 */
  LB_BAR_SQUARE,   /* plain or twisted square bars rolled before 1950 */
  LB_BAR_STRAND,   /* ASTM A416 seven-wire prestressing strand: whips when cut */
} LbBarKind;

/* One size. All lengths m, area m2, mass kg/m, force N. */
typedef struct
{
  const char *name; /* "#8", "1 in sq", "1/2 in strand 270": the key in files and the screen */
  LbBarKind kind;
  double diameter_m; /* nominal; of a square bar, its side */
  double area_m2;    /* nominal area as printed */
  double mass_kg_per_m;
  double break_force_n; /* strand: minimum breaking force; 0 for bars */
  LbTag tag;
  const char *source; /* the standard or handbook table */
} LbBar;

/* All sizes, smallest first within a kind; the table lives for ever. */
const LbBar *lb_bar_table (gsize *out_n);

/**
 * lb_bar_find:
 * @name: the table's name; case, spaces, "#", "No." and a metric soft name ("25M" is not one,
 *   "#25 metric" is not accepted) are matched loosely: "8", "# 8", "no 8" find "#8";
 *   "1-1/4 sq", "1.25 in square" find "1-1/4 in sq"
 *
 * Returns: (nullable): the size, %NULL when there is none
 */
const LbBar *lb_bar_find (const char *name);

G_END_DECLS
