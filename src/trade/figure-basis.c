/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The figures of a cut plan as a table: what each is called, its formula in one line, whose rule
 * that is, and what it rests on by itself. What it rests on through other figures is followed here,
 * so that nothing is written down twice.
 *
 * The inputs are sets, a bit each. A cut elevation that is not on record stands for the mudline
 * and the job's height above it: both follow from the one bit.
 *
 * Invariant: no figure rests on itself, by whatever way; following ends. */
#include "trade/figure-basis.h"

#include "trade/msgid.h"
#include "trade/pile-taper.h"

#include <math.h>

typedef guint64 AssumptionSet;
typedef guint32 FactSet;
typedef guint64 FigureSet;
typedef guint32 OtherSet;

#define ON(name)     (G_GUINT64_CONSTANT (1) << LB_ASSUME_##name)
#define FACT(name)   (1u << LB_FACT_##name)
#define FIGURE(name) (G_GUINT64_CONSTANT (1) << LB_FIGURE_##name)
#define LESSON(name) (1u << LB_LESSON_##name)
#define LESSONS      (BURNED - 1)
#define BURNED       (1u << (LB_N_LESSONS + 0))
#define VISIBILITY   (1u << (LB_N_LESSONS + 1))
#define DIVE_TABLE   (1u << (LB_N_LESSONS + 2))
#define CRANE_CHART  (1u << (LB_N_LESSONS + 3))
#define GROUND       (1u << (LB_N_LESSONS + 4))

G_STATIC_ASSERT (LB_N_FIGURES <= 64);
G_STATIC_ASSERT (LB_N_FACTS <= 32);
G_STATIC_ASSERT (LB_N_ASSUMPTIONS <= 64);

/* Without these there is no figure. */
#define NEEDED \
  (FACT (HEAD) | FACT (CUT) | FACT (MUDLINE) | FACT (TOE) | FACT (WIDTH) | FACT (N_BARS))
/* Without these a figure spans what they may well be, unless it is one that asks for them; the others
 * have a usual value. */
#define WIDENING (FACT (SHAPE) | FACT (BATTER) | FACT (BAR))

/* The toe says where a tapered pile has its other width. */
#define SECTION_FACTS (FACT (SHAPE) | FACT (WIDTH) | FACT (TIP_WIDTH) | FACT (VOID) | FACT (TOE))

#define ON_RATE    (ON (BURN_RATE) | ON (BURN_RATE_LOW) | ON (BURN_RATE_HIGH))
#define ON_WASTE   (ON (ROD_WASTE) | ON (ROD_WASTE_LOW) | ON (ROD_WASTE_HIGH))
#define ON_STRIKES (ON (RESTRIKE) | ON (RESTRIKE_LOW) | ON (RESTRIKE_HIGH))
#define ON_GROWTH  (ON (GROWTH_THICKNESS) | ON (GROWTH_DENSITY))
#define ON_WEIGHT                                                                           \
  (ON (CONCRETE_DENSITY) | ON (CONCRETE_LIGHT) | ON (CONCRETE_HEAVY) | ON (WATER_DENSITY) | \
   ON (ABSORBED) | ON (GROWTH_HIGH) | ON_GROWTH)
#define ON_CRANE                                                                           \
  (ON (CRANE_CAPACITY) | ON (CRANE_RADIUS) | ON (ON_BARGE) | ON (TIP_HEIGHT) | ON (LIST) | \
   ON (TRIM) | ON (LIST_LIMIT))
#define ON_BARGE_SIZES                                                             \
  (ON (BARGE_LENGTH) | ON (BARGE_BEAM) | ON (BARGE_DRAFT) | ON (BARGE_FREEBOARD) | \
   ON (BARGE_GRAVITY))
#define ON_HOLD                                                                              \
  (ON (WATER_DENSITY) | ON (CONCRETE_DENSITY) | ON_GROWTH | ON (CURRENT) | ON (YEAR_BUILT) | \
   ON (STEEL_YIELD) | ON (HOLD_FACTOR) | ON (CUT_GAP) | ON (BARE_LENGTH) | ON (HOOK_SHARE))

#define HOLD_FACTS                                                                     \
  (SECTION_FACTS | FACT (N_BARS) | FACT (BAR) | FACT (BAR_INSET) | FACT (BAR_PLACES) | \
   FACT (PINNED) | FACT (ORDER))
#define HOLD_FIGURES (FIGURE (TRUE_LENGTH) | FIGURE (LEAN) | FIGURE (CUT_DEPTH))

#define NAVY_CUTTING \
  N_ ("U.S. Navy Underwater Cutting & Welding Manual, S0300-BB-MAN-010, read in a reprint")
#define NAVY_DIVING N_ ("U.S. Navy Diving Manual, SS521-AG-PRO-010, revision 7")
#define GEOMETRY    N_ ("geometry of a straight pile")
#define PRACTICE    N_ ("common practice; what the job’s own dives say takes its place")
#define BEAM        N_ ("elastic bending and buckling, as in any text on the strength of materials")

typedef struct
{
  const char *key;
  const char *title; /* msgid */
  LbQuantity quantity;
  const char *formula; /* msgid */
  const char *source;  /* msgid */
  const char *section; /* of docs/methods.md */
  FactSet facts;
  FactSet asks; /* of WIDENING: those without which there is no figure */
  AssumptionSet assumptions;
  FigureSet figures;
  OtherSet others;
  LbTag rule;         /* of the formula */
  gboolean makes_do;  /* with what is known: none of its facts leaves it unknown */
  gboolean needs_toe; /* of any pile; else only of one that tapers toward it */
} Row;

static const Row table[LB_N_FIGURES] = {
  [LB_FIGURE_TRUE_LENGTH] = { .key = "true-length",
                              .title = N_ ("True length of the piece"),
                              .quantity = LB_QUANTITY_LENGTH,
                              .formula = N_ ("(head − cut) × √(1 + batter²)"),
                              .source = GEOMETRY,
                              .section = "Batter",
                              .facts = FACT (HEAD) | FACT (CUT) | FACT (BATTER) },
  [LB_FIGURE_LEAN] = { .key = "lean",
                       .title = N_ ("Lean from the vertical"),
                       .quantity = LB_QUANTITY_ANGLE,
                       .formula = N_ ("the angle whose tangent is the batter"),
                       .source = GEOMETRY,
                       .section = "Batter",
                       .facts = FACT (BATTER),
                       .asks = FACT (BATTER) },
  [LB_FIGURE_HEAD_OFFSET] = { .key = "head-offset",
                              .title = N_ ("Head out of plumb from the mudline"),
                              .quantity = LB_QUANTITY_LENGTH,
                              .formula = N_ ("batter × (head − mudline)"),
                              .source = GEOMETRY,
                              .section = "Batter",
                              .facts = FACT (HEAD) | FACT (MUDLINE) | FACT (BATTER),
                              .asks = FACT (BATTER) },
  [LB_FIGURE_CUT_OFFSET] = { .key = "cut-offset",
                             .title = N_ ("Cut from the head, in plan"),
                             .quantity = LB_QUANTITY_LENGTH,
                             .formula = N_ ("batter × (head − cut)"),
                             .source = GEOMETRY,
                             .section = "Batter",
                             .facts = FACT (HEAD) | FACT (CUT) | FACT (BATTER),
                             .asks = FACT (BATTER) },
  [LB_FIGURE_CUT_DEPTH] = { .key = "cut-depth",
                            .title = N_ ("Depth at the cut"),
                            .quantity = LB_QUANTITY_LENGTH,
                            .formula = N_ ("water level − cut; 0 for a dry cut"),
                            .source = GEOMETRY,
                            .section = "Bottom time",
                            .facts = FACT (CUT),
                            .assumptions = ON (WATER_LEVEL) },
  [LB_FIGURE_PNEUMO] = { .key = "pneumo",
                         .title = N_ ("Corrected pneumo depth"),
                         .quantity = LB_QUANTITY_LENGTH,
                         .formula = N_ ("depth at the cut + 1 ft to 100 ft, + 2 ft from 101 ft on"),
                         .source = NAVY_DIVING,
                         .section = "Bottom time",
                         .figures = FIGURE (CUT_DEPTH) },
  [LB_FIGURE_RIG_BEFORE] = { .key = "rig-before",
                             .title = N_ ("Rig before"),
                             .quantity = LB_QUANTITY_COUNT,
                             .formula = N_ (
                               "the first bar of the order without which another would "
                               "bear more than yield ÷ factor, or buckle, on a slack "
                               "hook"),
                             .source = BEAM,
                             .section = "Order of burning",
                             .facts = HOLD_FACTS,
                             .asks = WIDENING,
                             .assumptions = ON_HOLD,
                             .figures = HOLD_FIGURES,
                             .others = BURNED },
  [LB_FIGURE_HOLD_STRESS] = { .key = "hold-stress",
                              .title = N_ ("Greatest stress before that"),
                              .quantity = LB_QUANTITY_STRESS,
                              .formula = N_ (
                                "force along the pile ÷ area + bending about the middle "
                                "of the bars left + bending across the gap"),
                              .source = BEAM,
                              .section = "Hold",
                              .facts = HOLD_FACTS,
                              .asks = WIDENING,
                              .assumptions = ON_HOLD,
                              .figures = HOLD_FIGURES,
                              .others = BURNED },
  [LB_FIGURE_BARS_LEFT] = { .key = "bars-left",
                            .title = N_ ("Bars left"),
                            .quantity = LB_QUANTITY_COUNT,
                            .formula = N_ ("bars on record − bars burned"),
                            .source = N_ ("the job’s record"),
                            .section = "Burning",
                            .facts = FACT (N_BARS),
                            .others = BURNED },
  [LB_FIGURE_STEEL] = { .key = "steel",
                        .title = N_ ("Steel left to burn"),
                        .quantity = LB_QUANTITY_STEEL_AREA,
                        .formula = N_ ("bars left × area of one"),
                        .source = N_ ("the standard of the bar size"),
                        .section = "Bars",
                        .facts = FACT (BAR),
                        .figures = FIGURE (BARS_LEFT) },
  [LB_FIGURE_TRIGGER] = { .key = "trigger",
                          .title = N_ ("Trigger time"),
                          .quantity = LB_QUANTITY_TIME,
                          .formula = N_ ("burning rate of that size and visibility × steel left"),
                          .source = PRACTICE,
                          .section = "Burning, learned",
                          .facts = FACT (BAR),
                          .assumptions = ON_RATE,
                          .figures = FIGURE (STEEL) | FIGURE (BARS_LEFT),
                          .others = LESSON (TRIGGER) | VISIBILITY },
  [LB_FIGURE_BURN] = { .key = "burn",
                       .title = N_ ("Burning time at the pile"),
                       .quantity = LB_QUANTITY_TIME,
                       .formula = N_ ("trigger time + time of a strike × (bars + rods)"),
                       .source = PRACTICE,
                       .section = "Burning",
                       .assumptions = ON_STRIKES,
                       .figures = FIGURE (TRIGGER) | FIGURE (RODS) | FIGURE (BARS_LEFT),
                       .others = LESSON (RESTRIKE) },
  [LB_FIGURE_RODS] = { .key = "rods",
                       .title = N_ ("Rods"),
                       .quantity = LB_QUANTITY_COUNT,
                       .formula = N_ (
                         "trigger time ÷ (time of one rod × (1 − share lost)), rounded "
                         "up"),
                       .source = PRACTICE,
                       .section = "Burning",
                       .assumptions = ON (ROD_TIME) | ON_WASTE,
                       .figures = FIGURE (TRIGGER),
                       .others = LESSON (RODS) },
  [LB_FIGURE_OXYGEN] = { .key = "oxygen",
                         .title = N_ ("Oxygen"),
                         .quantity = LB_QUANTITY_GAS,
                         .formula = N_ (
                           "trigger time ÷ (1 − share lost) × flow × supply pressure at "
                           "the cut ÷ that at the surface, both absolute"),
                         .source = N_ (
                           "flow: common practice or the job’s own; its growth with depth "
                           "is physics"),
                         .section = "Volume",
                         .assumptions = ON_WASTE | ON (OXYGEN_FLOW) | ON (OVER_BOTTOM),
                         .figures = FIGURE (TRIGGER) | FIGURE (CUT_DEPTH),
                         .others = LESSON (OXYGEN) },
  [LB_FIGURE_CYLINDERS] = { .key = "cylinders",
                            .title = N_ ("Oxygen cylinders"),
                            .quantity = LB_QUANTITY_COUNT,
                            .formula = N_ (
                              "oxygen ÷ what one gives from full to where it is changed, "
                              "rounded up"),
                            .source = N_ (
                              "the gas law of real oxygen: Stewart, Jacobsen and Wagner, "
                              "1991"),
                            .section = "Cylinder",
                            .assumptions = ON (CYLINDER_CONTENT) | ON (CYLINDER_PRESSURE) |
                                           ON (CYLINDER_RESIDUAL),
                            .figures = FIGURE (OXYGEN) },
  [LB_FIGURE_REGULATOR] = { .key = "regulator",
                            .title = N_ ("Regulator setting"),
                            .quantity = LB_QUANTITY_PRESSURE,
                            .formula = N_ ("over bottom + 0.445 psi a foot of depth + loss in the "
                                           "hose, rounded up"),
                            .source = NAVY_CUTTING,
                            .section = "Regulator",
                            .assumptions = ON (OVER_BOTTOM),
                            .figures = FIGURE (CUT_DEPTH) | FIGURE (HOSE_LOSS) },
  [LB_FIGURE_HOSE_LOSS] = { .key = "hose-loss",
                            .title = N_ ("Lost in the hose"),
                            .quantity = LB_QUANTITY_PRESSURE,
                            .formula = N_ (
                              "allowance × length; without one, by the flow at the cut "
                              "through that bore and length"),
                            .source = N_ ("isothermal flow in a smooth pipe, friction by Petukhov"),
                            .section = "Hose",
                            .assumptions = ON (OVER_BOTTOM) | ON (HOSE_LENGTH) | ON (HOSE_BORE) |
                                           ON (HOSE_LOSS) | ON (OXYGEN_FLOW),
                            .figures = FIGURE (CUT_DEPTH) },
  [LB_FIGURE_LEAD_DROP] = { .key = "lead-drop",
                            .title = N_ ("Voltage lost in the leads"),
                            .quantity = LB_QUANTITY_VOLTAGE,
                            .formula = N_ ("10.37 × length in ft ÷ circular mils × current"),
                            .source = N_ ("AWS Safety & Health Fact Sheet No. 39 for the limit; "
                                          "copper at 20 °C"),
                            .section = "Leads",
                            .assumptions = ON (LEAD_CURRENT) | ON (LEAD_LENGTH) | ON (LEAD_SIZE) },
  [LB_FIGURE_NO_STOP] = { .key = "no-stop",
                          .title = N_ ("No-stop limit"),
                          .quantity = LB_QUANTITY_TIME,
                          .formula = N_ ("the table’s row of that depth, or of the next deeper"),
                          .source = NAVY_DIVING,
                          .section = "Bottom time",
                          .figures = FIGURE (PNEUMO),
                          .others = DIVE_TABLE },
  [LB_FIGURE_HELMET] = { .key = "helmet-supply",
                         .title = N_ ("Helmet supply, at least"),
                         .quantity = LB_QUANTITY_PRESSURE,
                         .formula = N_ ("0.445 psi a foot of depth + 90 psi to 60 ft, 135 to "
                                        "130 ft, 165 to 190 ft"),
                         .source = N_ ("U.S. Navy Diving Manual, revision 7, chapter 8: demand "
                                       "helmets; 135 psi at the least with a double exhaust"),
                         .section = "Bottom time",
                         .figures = FIGURE (CUT_DEPTH) },
  [LB_FIGURE_DIVES] = { .key = "dives",
                        .title = N_ ("Dives to burn it through"),
                        .quantity = LB_QUANTITY_COUNT,
                        .formula = N_ (
                          "burning time ÷ (the lesser of no-stop limit and longest dive "
                          "− set-up), rounded up"),
                        .source = N_ ("common practice; the diving supervisor decides"),
                        .section = "Bottom time",
                        .assumptions = ON (DIVE_SETUP) | ON (DIVE_LIMIT),
                        .figures = FIGURE (BURN) | FIGURE (NO_STOP) | FIGURE (CUT_DEPTH) },
  [LB_FIGURE_MASS_IN_WATER] = { .key = "mass-in-water",
                                .title = N_ ("Weight in water"),
                                .quantity = LB_QUANTITY_MASS,
                                .formula = N_ (
                                  "length × (area × (concrete − water) + growth × (its "
                                  "density − water))"),
                                .source = N_ ("Archimedes; densities as each says"),
                                .section = "Weights",
                                .facts = SECTION_FACTS,
                                .assumptions = ON_WEIGHT,
                                .figures = FIGURE (TRUE_LENGTH) },
  [LB_FIGURE_MASS_IN_AIR] = { .key = "mass-in-air",
                              .title = N_ ("Weight in air"),
                              .quantity = LB_QUANTITY_MASS,
                              .formula = N_ (
                                "length × (area × concrete + growth × its density); at "
                                "most with a void full of water"),
                              .source = N_ ("densities as each says"),
                              .section = "Weights",
                              .facts = SECTION_FACTS,
                              .assumptions = ON_WEIGHT,
                              .figures = FIGURE (TRUE_LENGTH) },
  [LB_FIGURE_SUCTION] = { .key = "suction",
                          .title = N_ ("Mud may add at first"),
                          .quantity = LB_QUANTITY_FORCE,
                          .formula = N_ ("weight in water × 0.25 to 0.5 on mud, to 1 on soft clay"),
                          .source = N_ ("common practice; NCEL R-755 tells no force closer than "
                                        "± 50 %"),
                          .section = "Load on the way up",
                          .assumptions = ON (BED),
                          .figures = FIGURE (MASS_IN_WATER),
                          .rule = LB_TAG_COMMON_PRACTICE },
  [LB_FIGURE_AWASH] = { .key = "hook-load-awash",
                        .title = N_ ("Hook load, half out"),
                        .quantity = LB_QUANTITY_FORCE,
                        .formula = N_ (
                          "half way from the weight in water to that in air, + rigging"),
                        .source = N_ ("Archimedes; densities as each says"),
                        .section = "Load on the way up",
                        .assumptions = ON (RIGGING_MASS),
                        .figures = FIGURE (MASS_IN_WATER) | FIGURE (MASS_IN_AIR) },
  [LB_FIGURE_HOOK_LOAD] = { .key = "hook-load",
                            .title = N_ ("Hook load"),
                            .quantity = LB_QUANTITY_FORCE,
                            .formula = N_ ("weight in air + rigging"),
                            .source = N_ (
                              "the piece clear of the water is the worst the crane sees"),
                            .section = "Lift and sling",
                            .assumptions = ON (RIGGING_MASS),
                            .figures = FIGURE (MASS_IN_AIR) },
  [LB_FIGURE_SLING] = { .key = "sling",
                        .title = N_ ("Sling tension, one leg"),
                        .quantity = LB_QUANTITY_FORCE,
                        .formula = N_ ("hook load ÷ legs that carry ÷ sine of their angle"),
                        .source = N_ ("ASME B30.9, tension factors read in reprints"),
                        .section = "Lift and sling",
                        .assumptions = ON (SLING_LEGS) | ON (SLING_ANGLE),
                        .figures = FIGURE (HOOK_LOAD) },
  [LB_FIGURE_SLING_SHARE] = { .key = "sling-share",
                              .title = N_ ("Of the sling leg’s rating"),
                              .quantity = LB_QUANTITY_SHARE,
                              .formula = N_ (
                                "tension ÷ (rating × what the angle of choke keeps of it)"),
                              .source = N_ ("the sling’s own tag; ASME B30.9 for the choke"),
                              .section = "Lift and sling",
                              .assumptions = ON (SLING_RATING) | ON (CHOKE_ANGLE),
                              .figures = FIGURE (SLING) },
  [LB_FIGURE_HEEL] = { .key = "barge-list",
                       .title = N_ ("List of the barge, load on"),
                       .quantity = LB_QUANTITY_ANGLE,
                       .formula = N_ ("the angle whose tangent is hook load × radius ÷ (weight of "
                                      "the barge × GM); GM = draft ÷ 2 + beam² ÷ (12 × draft) − "
                                      "centre of gravity"),
                       .source = N_ ("a box barge, small angles; a naval architect says what it "
                                     "bears"),
                       .section = "The crane on its barge",
                       .assumptions = ON_BARGE_SIZES | ON (ON_BARGE) | ON (LIST) |
                                      ON (CRANE_RADIUS) | ON (WATER_DENSITY),
                       .figures = FIGURE (HOOK_LOAD),
                       .makes_do = TRUE },
  [LB_FIGURE_CRANE_SHARE] = { .key = "crane-share",
                              .title = N_ ("Of the crane’s capacity"),
                              .quantity = LB_QUANTITY_SHARE,
                              .formula = N_ ("hook load ÷ capacity at that radius, list and trim "
                                             "counted"),
                              .source = N_ ("the crane’s own chart; 29 CFR 1926.1437(n)"),
                              .section = "The crane on its barge",
                              .assumptions = ON_CRANE,
                              .figures = FIGURE (HOOK_LOAD) | FIGURE (HEEL),
                              .others = CRANE_CHART },
  [LB_FIGURE_LENGTHS] = { .key = "lengths",
                          .title = N_ ("Lengths to lift it in"),
                          .quantity = LB_QUANTITY_COUNT,
                          .formula = N_ ("fewest equal lengths that the crane may lift, rigging on "
                                         "each"),
                          .source = N_ ("the crane’s own chart; 29 CFR 1926.1437(n)"),
                          .section = "Picking up and cutting to length",
                          .assumptions = ON (RIGGING_MASS) | ON_CRANE,
                          .figures = FIGURE (MASS_IN_AIR) | FIGURE (HEEL),
                          .others = CRANE_CHART },
  [LB_FIGURE_PICK] = { .key = "pick",
                       .title = N_ ("Picked up from the end"),
                       .quantity = LB_QUANTITY_LENGTH,
                       .formula = N_ ("a length × 0.3, 0.21, 0.145 or 0.107 for 1 to 4 points"),
                       .source = N_ (
                         "FDOT Design Standards, index 20600 (2012), read in a reprint"),
                       .section = "Picking up and cutting to length",
                       .assumptions = ON (PICKS),
                       .figures = FIGURE (TRUE_LENGTH) | FIGURE (LENGTHS) },
  [LB_FIGURE_WHOLE_PULL] = { .key = "whole-pull",
                             .title = N_ ("Pull to draw it whole"),
                             .quantity = LB_QUANTITY_FORCE,
                             .formula = N_ (
                               "what the ground holds + weight as it stands + rigging; "
                               "in air all of its weight if that is more"),
                             .source = N_ (
                               "API RP 2GEO (2011), quoted by open libraries; its range "
                               "is common practice"),
                             .section = "Grip of the ground",
                             .facts = SECTION_FACTS | FACT (HEAD) | FACT (MUDLINE) | FACT (BATTER) |
                                      FACT (REMOVAL),
                             .asks = FACT (SHAPE) | FACT (BATTER),
                             .assumptions = ON_WEIGHT | ON (RIGGING_MASS) | ON (WATER_LEVEL),
                             .others = GROUND | BURNED,
                             .rule = LB_TAG_COMMON_PRACTICE,
                             .needs_toe = TRUE },
  [LB_FIGURE_CRITICAL] = { .key = "critical-lift",
                           .title = N_ ("Critical lift"),
                           .quantity = LB_QUANTITY_COUNT,
                           .formula = N_ ("how many of the rules hold that make a lift critical"),
                           .source = N_ (
                             "EM 385-1-1, as quoted in a trade article; 29 CFR 1926.751"),
                           .section = "Critical lifts",
                           .facts = FACT (BATTER) | FACT (VOID),
                           .assumptions = ON (CRANES) | ON (OUT_OF_VIEW),
                           .figures = FIGURE (CUT_DEPTH) | FIGURE (CRANE_SHARE),
                           .makes_do = TRUE },
};

static gboolean
has (guint64 set, int bit)
{
  return ((set >> bit) & 1) != 0;
}

/* --- Names -------------------------------------------------------------------------------- */

const char *
lb_figure_key (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].key;
}

const char *
lb_figure_title (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].title;
}

LbQuantity
lb_figure_quantity (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, LB_QUANTITY_COUNT);

  return table[id].quantity;
}

const char *
lb_figure_formula (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].formula;
}

const char *
lb_figure_source (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].source;
}

const char *
lb_figure_section (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);

  return table[id].section;
}

LbTag
lb_figure_rule_tag (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, LB_TAG_MEMORY);

  return table[id].rule;
}

/* --- Missing ------------------------------------------------------------------------------ */

/* With those of the figures it rests on. */
static FactSet
all_facts (LbFigureId id)
{
  FactSet facts = table[id].facts;

  for (int other = 0; other < LB_N_FIGURES; other++)
    if (has (table[id].figures, other))
      facts |= all_facts ((LbFigureId) other);
  return facts;
}

static gboolean
is_missing (LbFact fact, const LbPile *pile)
{
  return (fact == LB_FACT_HEAD && isnan (pile->head_m)) ||
         (fact == LB_FACT_CUT && isnan (pile->cut_m) && isnan (pile->mudline_m)) ||
         (fact == LB_FACT_MUDLINE && isnan (pile->mudline_m)) ||
         (fact == LB_FACT_TOE && isnan (pile->toe_m)) ||
         (fact == LB_FACT_WIDTH && !(pile->outline.width_m > 0)) ||
         (fact == LB_FACT_N_BARS && pile->n_bars == 0) ||
         (fact == LB_FACT_BAR && pile->bar == NULL) || !lb_pile_says (pile, fact);
}

gboolean
lb_figure_lacks (LbFigureId id, LbFact fact, const LbPile *pile)
{
  g_return_val_if_fail (id < LB_N_FIGURES, FALSE);
  g_return_val_if_fail (pile, FALSE);

  const Row *row = &table[id];

  if (row->makes_do || (fact == LB_FACT_TOE && !row->needs_toe && !lb_pile_is_tapered (pile)))
    return FALSE;
  return has ((all_facts (id) & NEEDED) | row->asks, (int) fact) && is_missing (fact, pile);
}

gboolean
lb_figure_widens (LbFigureId id, LbFact fact, const LbPile *pile)
{
  g_return_val_if_fail (id < LB_N_FIGURES, FALSE);
  g_return_val_if_fail (pile, FALSE);

  return has (all_facts (id) & WIDENING & ~table[id].asks, (int) fact) && is_missing (fact, pile);
}

guint32
lb_pile_lacks (const LbPile *pile)
{
  g_return_val_if_fail (pile, 0);

  FactSet lacks = 0;

  for (int fact = 0; fact < LB_N_FACTS; fact++) {
    /* A pull of the whole pile says itself that it wants the toe. */
    if (has (NEEDED | WIDENING | FACT (BEARING), fact) && is_missing ((LbFact) fact, pile) &&
        (fact != LB_FACT_TOE || lb_pile_is_tapered (pile) || pile->is_to_be_drawn))
      lacks |= 1u << fact;
  }
  return lacks;
}

const char *
lb_figure_missing (LbFigureId id, const LbPile *pile)
{
  g_return_val_if_fail (id < LB_N_FIGURES, NULL);
  g_return_val_if_fail (pile, NULL);

  if (lb_figure_lacks (id, LB_FACT_HEAD, pile))
    return N_ ("The head elevation is not known.");
  if (lb_figure_lacks (id, LB_FACT_CUT, pile))
    return N_ ("Neither the cut elevation nor the mudline is known.");
  if (lb_figure_lacks (id, LB_FACT_MUDLINE, pile))
    return N_ ("The mudline is not known.");
  if (lb_figure_lacks (id, LB_FACT_TOE, pile))
    return table[id].needs_toe
             ? N_ ("The toe elevation is not known.")
             : N_ ("The toe elevation is not known: the width of a tapered pile follows from it.");
  if (lb_figure_lacks (id, LB_FACT_WIDTH, pile))
    return N_ ("The width of the pile is not known.");
  if (!table[id].makes_do && (all_facts (id) & FACT (WIDTH)) &&
      (!lb_outline_is_known (&pile->outline) || pile->outline.void_m >= pile->tip_width_m))
    return N_ ("The void on record is as wide as the pile: correct one of them.");
  if (lb_figure_lacks (id, LB_FACT_SHAPE, pile))
    return N_ ("The shape of the pile is not known.");
  if (lb_figure_lacks (id, LB_FACT_BATTER, pile))
    return N_ ("The batter is not known: write plumb where it does not lean.");
  if (lb_figure_lacks (id, LB_FACT_N_BARS, pile))
    return N_ ("The number of bars is not known.");
  if (lb_figure_lacks (id, LB_FACT_BAR, pile))
    return N_ ("The bar size is not known.");
  return NULL;
}

/* --- Inputs ------------------------------------------------------------------------------- */

/* With the height above the mudline, which stands in for a cut elevation. */
static AssumptionSet
own_assumptions (const Row *row)
{
  return row->assumptions | (row->facts & FACT (CUT) ? ON (CUT_ABOVE_MUDLINE) : 0);
}

static FactSet
own_facts (const Row *row)
{
  return row->facts | (row->facts & FACT (CUT) ? FACT (MUDLINE) : 0);
}

guint64
lb_figure_assumptions (LbFigureId id)
{
  g_return_val_if_fail (id < LB_N_FIGURES, 0);

  AssumptionSet all = own_assumptions (&table[id]);

  for (int other = 0; other < LB_N_FIGURES; other++)
    if (has (table[id].figures, other))
      all |= lb_figure_assumptions ((LbFigureId) other);
  return all;
}

/* What is multiplied by nothing, or has something else in its place, is not rested on. */
static AssumptionSet
out_of_play (const Row *row, const LbPile *pile, const LbAssumptions *assumptions)
{
  const double *value = assumptions->value;
  LbBargeHeel heel;
  AssumptionSet out = 0;

  if (!isnan (pile->cut_m))
    out |= ON (CUT_ABOVE_MUDLINE);
  if (!(value[LB_ASSUME_GROWTH_THICKNESS] > 0 ||
        (row->assumptions & ON (GROWTH_HIGH) && value[LB_ASSUME_GROWTH_HIGH] > 0)))
    out |= ON (GROWTH_DENSITY);
  if (!(value[LB_ASSUME_ON_BARGE] > 0))
    out |= ON (LIST) | ON (TRIM) | ON (LIST_LIMIT) | ON (TIP_HEIGHT) | ON_BARGE_SIZES;
  if (lb_crane_heel (assumptions, 0, &heel) == LB_HEEL_SET)
    out |= ON_BARGE_SIZES;
  if (!(value[LB_ASSUME_CRANE_RADIUS] > 0) ||
      !(value[LB_ASSUME_LIST] > 0 || value[LB_ASSUME_TRIM] > 0 || !isnan (heel.heel_rad)))
    out |= ON (TIP_HEIGHT);
  if (row == &table[LB_FIGURE_MASS_IN_AIR] && !(pile->outline.void_m > 0))
    out |= ON (WATER_DENSITY);
  if (value[LB_ASSUME_STEEL_YIELD] > 0)
    out |= ON (YEAR_BUILT);
  /* Were the steel stronger, bars could go on a slack hook whose place in the order comes from their
   * being burned on a tight one. */
  if (value[LB_ASSUME_STEEL_YIELD] > 0 || value[LB_ASSUME_YEAR_BUILT] > 0)
    out |= ON (HOOK_SHARE);
  if (row == &table[LB_FIGURE_HOSE_LOSS] && value[LB_ASSUME_HOSE_LOSS] > 0)
    out |= ON (HOSE_BORE) | ON (OXYGEN_FLOW) | ON (OVER_BOTTOM);
  return out;
}

static gsize
list (LbInput inputs[LB_INPUTS_MAX], gsize n, LbInputKind kind, guint64 set)
{
  /* From bit to bit: this is asked of every figure of every plan. */
  for (; set != 0; set &= set - 1) {
    g_assert (n < LB_INPUTS_MAX);
    inputs[n++] = (LbInput){ .kind = kind, .id = __builtin_ctzll (set) };
  }
  return n;
}

static gsize
list_all (const Row *row,
          FactSet facts,
          AssumptionSet assumptions,
          LbInput out_inputs[LB_INPUTS_MAX])
{
  gsize n = list (out_inputs, 0, LB_INPUT_FIGURE, row->figures);

  n = list (out_inputs, n, LB_INPUT_FACT, facts);
  n = list (out_inputs, n, LB_INPUT_BURNED, row->others & BURNED ? 1 : 0);
  n = list (out_inputs, n, LB_INPUT_LESSON, row->others & LESSONS);
  n = list (out_inputs, n, LB_INPUT_VISIBILITY, row->others & VISIBILITY ? 1 : 0);
  n = list (out_inputs, n, LB_INPUT_DIVE_TABLE, row->others & DIVE_TABLE ? 1 : 0);
  n = list (out_inputs, n, LB_INPUT_CRANE_CHART, row->others & CRANE_CHART ? 1 : 0);
  n = list (out_inputs, n, LB_INPUT_GROUND, row->others & GROUND ? 1 : 0);
  return list (out_inputs, n, LB_INPUT_ASSUMPTION, assumptions);
}

gsize
lb_figure_inputs (LbFigureId id, LbInput out_inputs[LB_INPUTS_MAX])
{
  g_return_val_if_fail (id < LB_N_FIGURES, 0);

  const Row *row = &table[id];

  return list_all (row, own_facts (row), own_assumptions (row), out_inputs);
}

gsize
lb_figure_inputs_in_play (LbFigureId id,
                          const LbPile *pile,
                          const LbAssumptions *assumptions,
                          LbInput out_inputs[LB_INPUTS_MAX])
{
  g_return_val_if_fail (id < LB_N_FIGURES, 0);
  g_return_val_if_fail (pile, 0);
  g_return_val_if_fail (assumptions, 0);

  const Row *row = &table[id];
  const FactSet facts = isnan (pile->cut_m) ? own_facts (row) : row->facts;
  const FactSet idle = row->needs_toe || lb_pile_is_tapered (pile) ? 0 : FACT (TOE);

  return list_all (row, facts & ~idle,
                   own_assumptions (row) & ~out_of_play (row, pile, assumptions), out_inputs);
}
