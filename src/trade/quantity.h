/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Everything inside the tool is SI; people read and type US customary or metric.
 * Factors: NIST SP 811, appendix B; the fsw is 1/33 atmosphere by diving convention and is not
 * a length here: depth is a length in seawater. */
typedef enum {
  LB_UNITS_US,
  LB_UNITS_METRIC,
} LbUnits;

typedef enum {
  LB_QUANTITY_COUNT,               /* 1, no unit */
  LB_QUANTITY_LENGTH,              /* m:    ft | m      (depths, elevations, plan places) */
  LB_QUANTITY_SIZE,                /* m:    in | mm     (sections, bars) */
  LB_QUANTITY_STEEL_AREA,          /* m2:   in² | mm² */
  LB_QUANTITY_TIME,                /* s:    min | min */
  LB_QUANTITY_SHORT_TIME,          /* s:    s | s */
  LB_QUANTITY_MASS,                /* kg:   lb | kg */
  LB_QUANTITY_FORCE,               /* N:    lb | kN     (lb of force) */
  LB_QUANTITY_PRESSURE,            /* Pa:   psi | bar   (gauge) */
  LB_QUANTITY_STRESS,              /* Pa:   ksi | MPa */
  LB_QUANTITY_GAS,                 /* m3 at 1 atm and 70 °F: cu ft | m³ */
  LB_QUANTITY_GAS_FLOW,            /* m3/s: cu ft/min | L/min */
  LB_QUANTITY_DENSITY,             /* kg/m3: lb/cu ft | kg/m³ */
  LB_QUANTITY_ANGLE,               /* rad:  ° | ° */
  LB_QUANTITY_SPEED,               /* m/s:  kn | m/s */
  LB_QUANTITY_SHARE,               /* 1:    % | % */
  LB_QUANTITY_BURN_RATE,           /* s/m2: s/in² | s/cm² (trigger time per steel area) */
  LB_QUANTITY_PRESSURE_PER_LENGTH, /* Pa/m: psi/100 ft | bar/100 m */
  LB_QUANTITY_RATIO,               /* 1, no unit, not whole */
  LB_QUANTITY_CURRENT,             /* A:    A | A */
  LB_QUANTITY_VOLTAGE,             /* V:    V | V */
  LB_QUANTITY_CONDUCTOR,           /* m2:   kcmil | mm² (of copper) */
} LbQuantity;

#define LB_N_QUANTITIES (LB_QUANTITY_CONDUCTOR + 1)

/* How a person's numbers look; comes from the locale at the edge, "." and "," in files. */
typedef struct
{
  const char *decimal_point;
  const char *thousands; /* "" for none */
} LbNumberStyle;

extern const LbNumberStyle LB_NUMBER_PLAIN; /* "." and no grouping */

double lb_quantity_from_si (LbQuantity quantity, LbUnits units, double si);
double lb_quantity_to_si (LbQuantity quantity, LbUnits units, double shown);

/**
 * lb_quantity_unit:
 *
 * Returns: the unit as printed, "" for a count ("ft", "in", "cu ft", "m³").
 */
const char *lb_quantity_unit (LbQuantity quantity, LbUnits units);

/**
 * lb_quantity_decimals:
 *
 * Returns: how many decimals the quantity is shown with (a weight in lb 0, a depth in ft 1).
 */
int lb_quantity_decimals (LbQuantity quantity, LbUnits units);

/**
 * lb_number_to_text:
 * @decimals: at most this many; -1 for as many as are needed to read the same value back
 *
 * The number alone, without unit; "–" for NAN.
 */
char *lb_number_to_text (double value, int decimals, const LbNumberStyle *style);

/**
 * lb_quantity_to_text:
 *
 * The value in @units with its unit: "9,850 lb", "112 psi", "3.1 ft". "–" for NAN.
 */
char *lb_quantity_to_text (LbQuantity quantity,
                           LbUnits units,
                           double si,
                           const LbNumberStyle *style);

/* In both systems of units, for where the reader's is not known: "40 ft (12.2 m)"; once where both
 * say the same. In plain numbers. */
char *lb_quantity_to_both (LbQuantity quantity, double si);

/**
 * lb_quantity_from_text:
 * @text: a number, with or without a unit of the quantity ("24 ft", "7,3 m", "7.3");
 *   without a unit it is in @units; either decimal sign is read
 * @out_si: (out): untouched on failure
 *
 * Returns: %FALSE with %LB_TRADE_ERROR_DOMAIN, the message naming @text, when it is no number
 *   of that quantity.
 */
gboolean lb_quantity_from_text (LbQuantity quantity,
                                LbUnits units,
                                const char *text,
                                double *out_si,
                                GError **error);

G_END_DECLS
