/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/quantity.h"
#include "trade/tag.h"

#include <glib.h>

G_BEGIN_DECLS

/* Every number the cut plan takes for granted: one row a number, with its range, its tag and its
 * source, so that a crew can see it and set its own. Values are SI. */
typedef enum {
  LB_ASSUME_WATER_LEVEL,       /* m above datum, at the planned time */
  LB_ASSUME_WATER_DENSITY,     /* kg/m3 */
  LB_ASSUME_CURRENT,           /* m/s, across the piles, the same at every depth */
  LB_ASSUME_CONCRETE_DENSITY,  /* kg/m3, reinforced, for the hook */
  LB_ASSUME_CONCRETE_LIGHT,    /* kg/m3, low end of the range */
  LB_ASSUME_CONCRETE_HEAVY,    /* kg/m3, high end of the range */
  LB_ASSUME_ABSORBED,          /* share of the concrete's weight; 0 where it is weighed wet */
  LB_ASSUME_GROWTH_THICKNESS,  /* m, marine growth left on the piece */
  LB_ASSUME_GROWTH_HIGH,       /* m, high end of the range; the low end is bare */
  LB_ASSUME_GROWTH_DENSITY,    /* kg/m3 */
  LB_ASSUME_CUT_ABOVE_MUDLINE, /* m */
  LB_ASSUME_BURN_RATE,         /* s of trigger per m2 of steel */
  LB_ASSUME_BURN_RATE_LOW,
  LB_ASSUME_BURN_RATE_HIGH,
  LB_ASSUME_RESTRIKE, /* s lost at each new strike: a bar, or a fresh rod */
  LB_ASSUME_RESTRIKE_LOW,
  LB_ASSUME_RESTRIKE_HIGH,
  LB_ASSUME_ROD_TIME,  /* s of trigger in one rod */
  LB_ASSUME_ROD_WASTE, /* share of rod lost to bad strikes, stubs, drops */
  LB_ASSUME_ROD_WASTE_LOW,
  LB_ASSUME_ROD_WASTE_HIGH,
  LB_ASSUME_YEAR_BUILT,        /* of the piles; 0 when not known */
  LB_ASSUME_STEEL_YIELD,       /* Pa, from papers or a test; 0 for that of the year */
  LB_ASSUME_HOLD_FACTOR,       /* on yield and buckling of the bars that hold */
  LB_ASSUME_CUT_GAP,           /* m of bar bared between the faces of the cut */
  LB_ASSUME_BARE_LENGTH,       /* effective length of a bared bar as a share of the gap */
  LB_ASSUME_HOOK_SHARE,        /* of the stub's weight that the hook takes once it is rigged */
  LB_ASSUME_OXYGEN_FLOW,       /* m3/s of free gas, trigger down, at the surface */
  LB_ASSUME_CYLINDER_CONTENT,  /* m3 free gas in a full one */
  LB_ASSUME_CYLINDER_PRESSURE, /* Pa gauge of a full one at 70 °F */
  LB_ASSUME_CYLINDER_RESIDUAL, /* Pa gauge at which it is changed */
  LB_ASSUME_OVER_BOTTOM,       /* Pa over bottom pressure at the tip */
  LB_ASSUME_HOSE_LENGTH,       /* m */
  LB_ASSUME_HOSE_BORE,         /* m inside */
  LB_ASSUME_HOSE_LOSS,         /* Pa per m, an allowance in place of the flow's loss; 0 for none */
  LB_ASSUME_LEAD_CURRENT,      /* A */
  LB_ASSUME_LEAD_LENGTH,       /* m of copper, lead and ground together */
  LB_ASSUME_LEAD_SIZE,         /* m2 of copper */
  LB_ASSUME_DIVE_SETUP,        /* s of bottom time a dive spends on the way, not burning */
  LB_ASSUME_DIVE_LIMIT,        /* s: no dive is planned longer than this, table or no table */
  LB_ASSUME_CURRENT_LIMIT,     /* m/s: nobody dives in more */
  LB_ASSUME_RIGGING_MASS,      /* kg: hook block share, slings, shackles */
  LB_ASSUME_BED,               /* choice: what the piece lies on */
  LB_ASSUME_PICKS,             /* count: points a length is picked up at, laid down */
  LB_ASSUME_SLING_LEGS,        /* count, 1 to 4; the load is taken by two at most */
  LB_ASSUME_SLING_ANGLE,       /* rad from the horizontal */
  LB_ASSUME_SLING_RATING,      /* kg one leg is rated for, in the hitch it is used in; 0 unknown */
  LB_ASSUME_CHOKE_ANGLE,       /* rad at the choke; 180° for a leg that is not choked */
  LB_ASSUME_CRANE_CAPACITY,  /* kg at the radius of the lift, by the crane's own chart; 0 unknown */
  LB_ASSUME_CRANE_RADIUS,    /* m of the lift, for the chart in the job; 0 unknown */
  LB_ASSUME_ON_BARGE,        /* choice: the crane stands on a barge */
  LB_ASSUME_TIP_HEIGHT,      /* m of the boom tip above the foot of the crane; 0 unknown */
  LB_ASSUME_LIST,            /* rad of the barge with the load on */
  LB_ASSUME_TRIM,            /* rad of the barge with the load on */
  LB_ASSUME_LIST_LIMIT,      /* rad, of list and of trim */
  LB_ASSUME_BARGE_LENGTH,    /* m; 0 unknown, as the next four */
  LB_ASSUME_BARGE_BEAM,      /* m */
  LB_ASSUME_BARGE_DRAFT,     /* m, the load on */
  LB_ASSUME_BARGE_FREEBOARD, /* m to the deck edge, the load on */
  LB_ASSUME_BARGE_GRAVITY,   /* m above the bottom, the load counted at the boom tip */
  LB_ASSUME_CRANES,          /* count on one piece */
  LB_ASSUME_OUT_OF_VIEW,     /* choice: the operator does not see the load */
} LbAssumptionId;

#define LB_N_ASSUMPTIONS (LB_ASSUME_OUT_OF_VIEW + 1)

/* Values of those that are chosen from a few words. */
enum {
  LB_ASSUME_NO,
  LB_ASSUME_YES,
};

enum {
  LB_ASSUME_BED_NONE,
  LB_ASSUME_BED_MUD,
  LB_ASSUME_BED_SOFT_CLAY,
};

typedef struct
{
  const char *key;   /* in files and commands: "water-level" */
  const char *title; /* msgid: "Water level above datum" */
  LbQuantity quantity;
  double value, least, most; /* SI */
  LbTag tag;
  const char *source;         /* msgid: the standard, or why */
  const char *const *choices; /* msgids, a word for each value from 0 to @most; NULL for a number */
} LbAssumption;

/* The job's values: the defaults, some replaced by the crew's own. */
typedef struct
{
  double value[LB_N_ASSUMPTIONS];
  gboolean is_own[LB_N_ASSUMPTIONS];
} LbAssumptions;

const LbAssumption *lb_assumption (LbAssumptionId id);
gboolean lb_assumption_find (const char *key, LbAssumptionId *out_id);

void lb_assumptions_init (LbAssumptions *assumptions);

/* Sets one, %FALSE with LB_TRADE_ERROR_DOMAIN and a sentence when outside its range. */
gboolean lb_assumptions_set (LbAssumptions *assumptions,
                             LbAssumptionId id,
                             double si,
                             GError **error);

/**
 * lb_assumption_from_text:
 * @text: a quantity as lb_quantity_from_text() reads it, or one of the choices' words in English
 * @out_si: (out): untouched on failure
 */
gboolean lb_assumption_from_text (LbAssumptionId id,
                                  LbUnits units,
                                  const char *text,
                                  double *out_si,
                                  GError **error);

/* The word of a value that is chosen, a msgid; %NULL when @si is no value of it or it is a number. */
const char *lb_assumption_choice (LbAssumptionId id, double si);

/* LB_TAG_JOB when the crew set it, else the table's tag. */
LbTag lb_assumptions_tag (const LbAssumptions *assumptions, LbAssumptionId id);

G_END_DECLS
