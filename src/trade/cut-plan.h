/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/assumption.h"
#include "trade/burn-order.h"
#include "trade/burn.h"
#include "trade/caution-table.h"
#include "trade/critical-lift.h"
#include "trade/cut-basis.h"
#include "trade/pick.h"
#include "trade/pile.h"
#include "trade/tag.h"

#include <glib.h>

G_BEGIN_DECLS

/* The figures of one pile's cut, each with its range and its tag; docs/methods.md has every
 * formula. A figure whose inputs are not known is NAN and LB_TRADE_ERROR_INCOMPLETE's sentence
 * is @missing. */
typedef enum {
  LB_FIGURE_TRUE_LENGTH,   /* m, head to cut along the axis */
  LB_FIGURE_LEAN,          /* rad from the vertical */
  LB_FIGURE_HEAD_OFFSET,   /* m, head out of plumb from the mudline */
  LB_FIGURE_CUT_OFFSET,    /* m, the axis at the cut from the head, in plan */
  LB_FIGURE_CUT_DEPTH,     /* m of water over the cut */
  LB_FIGURE_PNEUMO,        /* m, corrected, to enter the table with */
  LB_FIGURE_RIG_BEFORE,    /* count: the hook must hold before this bar of the order; 0 never */
  LB_FIGURE_HOLD_STRESS,   /* Pa, greatest in a bar until then */
  LB_FIGURE_BARS_LEFT,     /* count */
  LB_FIGURE_STEEL,         /* m2 left to burn */
  LB_FIGURE_TRIGGER,       /* s */
  LB_FIGURE_BURN,          /* s at the pile, strikes and rod changes counted */
  LB_FIGURE_RODS,          /* count */
  LB_FIGURE_OXYGEN,        /* m3 free gas */
  LB_FIGURE_CYLINDERS,     /* count */
  LB_FIGURE_REGULATOR,     /* Pa gauge */
  LB_FIGURE_HOSE_LOSS,     /* Pa */
  LB_FIGURE_LEAD_DROP,     /* V */
  LB_FIGURE_NO_STOP,       /* s */
  LB_FIGURE_HELMET,        /* Pa gauge at the manifold, at least, for a demand helmet */
  LB_FIGURE_DIVES,         /* count; 0 for a dry cut */
  LB_FIGURE_MASS_IN_WATER, /* kg apparent */
  LB_FIGURE_MASS_IN_AIR,   /* kg; at most with a hollow piece full of water */
  LB_FIGURE_SUCTION,       /* N that mud adds to the weight in water, at first */
  LB_FIGURE_AWASH,         /* N at the hook, half out of the water */
  LB_FIGURE_HOOK_LOAD,     /* N, clear of the water, rigging counted */
  LB_FIGURE_SLING,         /* N a leg */
  LB_FIGURE_SLING_SHARE,   /* the same beside the leg's rating */
  LB_FIGURE_HEEL,          /* rad of the barge with the load on */
  LB_FIGURE_CRANE_SHARE,   /* hook load beside the crane's capacity at that radius */
  LB_FIGURE_LENGTHS,       /* count: fewest equal lengths that the crane may lift */
  LB_FIGURE_PICK,          /* m from the end of a length to the first point it is picked up at */
  LB_FIGURE_WHOLE_PULL,    /* N at the hook to draw it whole */
  LB_FIGURE_CRITICAL,      /* count: rules by which the lift is a critical one */
} LbFigureId;

#define LB_N_FIGURES (LB_FIGURE_CRITICAL + 1)

typedef struct
{
  LbRange range;
  LbTag tag; /* the weakest of what it rests on */
} LbFigure;

/* What a pull of the whole pile brings up. */
typedef struct
{
  LbRange grip_n;   /* of the ground */
  LbRange weight_n; /* as it stands, rigging counted */
  double depth_m;   /* of the toe below the mudline */
  double known_m;   /* so far down the ground is known */
} LbWholePull;

/* What an order that somebody chose costs beside the one that the figures favour. */
typedef struct
{
  gboolean is_known; /* one was chosen, and both can be weighed */
  guint fewer;       /* bars burned before the hook must hold */
  double chosen,
    favoured; /* greatest share of what the bars may bear until then; NAN for a hinge */
} LbOrderPrice;

typedef struct
{
  LbFigure figures[LB_N_FIGURES];
  guint8 order[LB_BARS_MAX]; /* bars left, in the order to burn */
  gsize n_order;
  LbBarSet gone;                     /* bars found gone */
  const char *hold_missing;          /* msgid: why there is no hold; NULL when there is */
  LbBurnOrder hold;                  /* the same order weighed, when there is */
  LbOrderPrice price;                /* of that order, when somebody chose it */
  double yield_pa;                   /* of the bars, as reckoned with */
  double yield_most_pa;              /* more than that where nobody knows of what steel they are */
  LbOutline outline;                 /* at the cut; its width is 0 where it is not known */
  LbPoint places[LB_BARS_MAX];       /* all bars, see lb_pile_bars_place() */
  const LbBar *least_bar, *most_bar; /* what those of a size not known may well be */
  gboolean are_bars_own;             /* those of this job, not common practice */
  LbBurnBasis burn_basis;            /* what the burning rate rests on */
  LbVisibility visibility;           /* that it was taken for */
  gboolean has_learned_rods, has_learned_oxygen, has_learned_restrike; /* from the job's shifts */
  double table_depth_m;  /* row of the no-stop table; NAN */
  gboolean is_own_table; /* the supervisor's, not the Navy's */
  LbCraneHere crane;
  LbHeelFrom heel_from;
  LbBargeHeel heel;               /* by the heavy end of the load */
  guint n_lengths;                /* likely ones, 1 where no number of them is known */
  double pick_at_m[LB_PICKS_MAX]; /* from one end of each, rising */
  guint n_picks;
  LbWholePull whole;
  LbCriticalSet critical;
  gboolean lies_on_mud;    /* else nothing is to be said of suction */
  gboolean is_to_be_drawn; /* else nothing is to be said of a whole pull */
  gboolean may_come_whole; /* no bar is burned and the ground is known */
  LbCompass slag_side;     /* where molten metal falls: the way it leans */
  LbCompass lead_side;     /* the other side */
  gboolean is_lean_known;  /* whether, and which way */
  gboolean is_battered;    /* as far as that is known */
  /* Those that follow from this pile, gravest first, then those that hold at nearly every cut, again
   * gravest first. They borrow the table and the crew's rows of the basis. */
  const LbCautionRow *cautions[LB_CAUTION_ROWS_MAX + LB_CAUTION_CREW_ROWS_MAX];
  gsize n_cautions;
  gsize n_own_cautions; /* how many of them follow from this pile */
} LbCutPlan;

/**
 * lb_cut_plan_reckon:
 * @burned: bars already burned or gone
 * @gone: those of them that were found gone, rusted through or cut by others
 * @n_burned_unplaced: bars burned of which only the count is known
 *
 * Never fails: what cannot be reckoned is NAN. Pure; some 10 µs a pile of eight bars.
 */
void lb_cut_plan_reckon (const LbPile *pile,
                         LbBarSet burned,
                         LbBarSet gone,
                         guint n_burned_unplaced,
                         const LbCutBasis *basis,
                         LbCutPlan *out_plan);

/* What one dive leaves for burning, s: the shorter of the no-stop limit and the job's longest dive,
 * less the time on the way. INFINITY for a dry cut; NAN when no time is left or no limit is known. */
double lb_cut_plan_burning_time (const LbCutPlan *plan, const LbAssumptions *assumptions);

const char *lb_figure_key (LbFigureId id);   /* "hook-load" */
const char *lb_figure_title (LbFigureId id); /* msgid: "Hook load" */
LbQuantity lb_figure_quantity (LbFigureId id);

/* Whether there is anything to say of a figure at this cut, be it only what is missing: what mud and a
 * pull of the whole pile need is not asked for where nothing lies on mud and the pile is to be cut. */
gboolean lb_cut_plan_tells (const LbCutPlan *plan, LbFigureId id);

/* The facts a figure needs and the pile lacks: msgid of a sentence ("The mudline is not
 * known."), %NULL when nothing is missing. */
const char *lb_figure_missing (LbFigureId id, const LbPile *pile);

/* Where the pile is cut, m above datum: its own elevation, else the job's height above the
 * mudline; NAN when neither is known. */
double lb_pile_cut_elevation (const LbPile *pile, const LbAssumptions *assumptions);

/* Water over the cut, m; 0 for a dry cut, NAN when it is not known where the pile is cut. */
double lb_pile_cut_depth (const LbPile *pile, const LbAssumptions *assumptions);

G_END_DECLS
