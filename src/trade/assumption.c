/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Everything the cut plan takes for granted, in one table: value, range, how far it can be
 * trusted, and why.
 *
 * Values are written as the sources print them, times an exact factor, so that a row can be
 * checked beside its source. The sources themselves are the last field of each row; they are what
 * the crew reads.
 *
 * Invariants:
 * 1. Each value lies within its own range.
 * 2. Of a low, likely and high triple the values rise; a crew may break that with its own, and
 *    who reckons with them sorts it out (burn.c, cut-plan.c).
 */
#include "trade/assumption.h"

#include "trade/msgid.h"
#include "trade/trade-error.h"

#include <math.h>

/* Exact factors: NIST SP 811, appendix B. */
#define FOOT       0.3048
#define INCH       0.0254
#define POUND      0.45359237
#define CUBIC_FOOT (FOOT * FOOT * FOOT)
#define LB_PER_FT3 (POUND / CUBIC_FOOT)
#define S_PER_IN2  (1 / (INCH * INCH))
#define CFM        (CUBIC_FOOT / 60)
#define PSI        (POUND * 9.80665 / (INCH * INCH))
/* The international nautical mile is 1852 m, exact (NIST SP 811). */
#define KNOT (1852.0 / 3600)
/* A thousand circles of a thousandth of an inch across, by definition. */
#define KCMIL  (1000 * G_PI_4 * 1e-6 * INCH * INCH)
#define MINUTE 60.0
#define DEGREE (G_PI / 180)

static const char *const no_or_yes[] = { N_ ("no"), N_ ("yes"), NULL };
static const char *const beds[] = { N_ ("nothing that holds it"), N_ ("mud"), N_ ("soft clay"),
                                    NULL };

/* Of a barge: no barge of this trade is larger than 500 m. */
#define BARGE(name, words, from)                                                         \
  {                                                                                      \
    .key = name, .title = words, .quantity = LB_QUANTITY_LENGTH, .value = 0, .least = 0, \
    .most = 500, .tag = LB_TAG_COMMON_PRACTICE, .source = from                           \
  }

static const LbAssumption table[LB_N_ASSUMPTIONS] = {
  [LB_ASSUME_WATER_LEVEL] = { .key = "water-level",
                              .title = N_ ("Water level above datum"),
                              .quantity = LB_QUANTITY_LENGTH,
                              .value = 0,
                              .least = -1000,
                              .most = 1000,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("Set it from the tide table for the planned time") },
  [LB_ASSUME_WATER_DENSITY] = { .key = "water-density",
                                .title = N_ ("Water density"),
                                .quantity = LB_QUANTITY_DENSITY,
                                .value = 64.0 * LB_PER_FT3,
                                .least = 62 * LB_PER_FT3,
                                .most = 66 * LB_PER_FT3,
                                .tag = LB_TAG_MEMORY,
                                .source = N_ ("Sea water as in AASHTO and Navy practice; fresh "
                                              "water is 62.4 lb/cu ft") },
  [LB_ASSUME_CURRENT] = { .key = "current",
                          .title = N_ ("Current across the piles"),
                          .quantity = LB_QUANTITY_SPEED,
                          .value = 0.5 * KNOT,
                          .least = 0,
                          .most = 5 * KNOT,
                          .tag = LB_TAG_COMMON_PRACTICE,
                          .source = N_ (
                            "The most at the time of the dive; set it from the tide table or a meter") },
  [LB_ASSUME_CONCRETE_DENSITY] = { .key = "concrete-density",
                                   .title = N_ ("Concrete density, reinforced"),
                                   .quantity = LB_QUANTITY_DENSITY,
                                   .value = 155 * LB_PER_FT3,
                                   .least = 100 * LB_PER_FT3,
                                   .most = 180 * LB_PER_FT3,
                                   .tag = LB_TAG_COMMON_PRACTICE,
                                   .source = N_ ("Between the AASHTO figure and measured state "
                                                 "policy; old concrete is wet through") },
  [LB_ASSUME_CONCRETE_LIGHT] = { .key = "concrete-density-low",
                                 .title = N_ ("Concrete density, low"),
                                 .quantity = LB_QUANTITY_DENSITY,
                                 .value = 150 * LB_PER_FT3,
                                 .least = 100 * LB_PER_FT3,
                                 .most = 180 * LB_PER_FT3,
                                 .tag = LB_TAG_STANDARD,
                                 .source = N_ ("AASHTO LRFD, 8th edition, C3.5.1: plain concrete "
                                               "145 and 5 for the steel") },
  [LB_ASSUME_CONCRETE_HEAVY] = { .key = "concrete-density-high",
                                 .title = N_ ("Concrete density, high"),
                                 .quantity = LB_QUANTITY_DENSITY,
                                 .value = 160 * LB_PER_FT3,
                                 .least = 100 * LB_PER_FT3,
                                 .most = 180 * LB_PER_FT3,
                                 .tag = LB_TAG_STANDARD,
                                 .source = N_ ("State bridge office policy from cylinder tests, "
                                               "memorandum 03-2000, 2000") },
  [LB_ASSUME_ABSORBED] = { .key = "concrete-absorbed",
                           .title = N_ (
                             "Water the concrete has taken up, 0 where it is weighed wet"),
                           .quantity = LB_QUANTITY_SHARE,
                           .value = 0,
                           .least = 0,
                           .most = 0.1,
                           .tag = LB_TAG_COMMON_PRACTICE,
                           .source = N_ ("The density here is of concrete wet through; 3 to 5 % on "
                                         "top where yours is of air-dry concrete") },
  [LB_ASSUME_GROWTH_THICKNESS] = { .key = "growth-thickness",
                                   .title = N_ ("Marine growth left on the piece"),
                                   .quantity = LB_QUANTITY_SIZE,
                                   .value = 0,
                                   .least = 0,
                                   .most = 1.0,
                                   .tag = LB_TAG_COMMON_PRACTICE,
                                   .source = N_ ("Taken as scraped off; about 2 in is common "
                                                 "where it is not") },
  [LB_ASSUME_GROWTH_HIGH] = { .key = "growth-thickness-high",
                              .title = N_ ("Marine growth left on the piece, at most"),
                              .quantity = LB_QUANTITY_SIZE,
                              .value = 0,
                              .least = 0,
                              .most = 1.0,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("Taken as scraped off; set about 2 in where nobody "
                                            "looks, and the range of the load says so") },
  [LB_ASSUME_GROWTH_DENSITY] = { .key = "growth-density",
                                 .title = N_ ("Marine growth density, wet"),
                                 .quantity = LB_QUANTITY_DENSITY,
                                 .value = 85 * LB_PER_FT3,
                                 .least = 60 * LB_PER_FT3,
                                 .most = 110 * LB_PER_FT3,
                                 .tag = LB_TAG_MEMORY,
                                 .source = N_ ("Offshore standards give 1.3 to 1.4 times water") },
  [LB_ASSUME_CUT_ABOVE_MUDLINE] = { .key = "cut-above-mudline",
                                    .title = N_ ("Cut above the mudline"),
                                    .quantity = LB_QUANTITY_LENGTH,
                                    .value = 1 * FOOT,
                                    .least = -10 * FOOT,
                                    .most = 100 * FOOT,
                                    .tag = LB_TAG_COMMON_PRACTICE,
                                    .source = N_ ("Room for the torch; the permit decides") },
  /* 4 bars #6, 2.5 bars #8 or 1.3 bars #11 to an 18-in rod of 50 s: 28, 25 and 25 s/in2. */
  [LB_ASSUME_BURN_RATE] = { .key = "burn-rate",
                            .title = N_ ("Burning rate"),
                            .quantity = LB_QUANTITY_BURN_RATE,
                            .value = 25 * S_PER_IN2,
                            .least = 1 * S_PER_IN2,
                            .most = 500 * S_PER_IN2,
                            .tag = LB_TAG_COMMON_PRACTICE,
                            .source = N_ ("About 2.5 bars #8 to an 18-in rod; no published "
                                          "figure") },
  [LB_ASSUME_BURN_RATE_LOW] = { .key = "burn-rate-low",
                                .title = N_ ("Burning rate, quick"),
                                .quantity = LB_QUANTITY_BURN_RATE,
                                .value = 12.5 * S_PER_IN2,
                                .least = 1 * S_PER_IN2,
                                .most = 500 * S_PER_IN2,
                                .tag = LB_TAG_COMMON_PRACTICE,
                                .source = N_ ("Half the likely rate") },
  [LB_ASSUME_BURN_RATE_HIGH] = { .key = "burn-rate-high",
                                 .title = N_ ("Burning rate, slow"),
                                 .quantity = LB_QUANTITY_BURN_RATE,
                                 .value = 50 * S_PER_IN2,
                                 .least = 1 * S_PER_IN2,
                                 .most = 500 * S_PER_IN2,
                                 .tag = LB_TAG_COMMON_PRACTICE,
                                 .source = N_ ("Double the likely rate") },
  [LB_ASSUME_RESTRIKE] = { .key = "restrike",
                           .title = N_ ("Time lost at each strike or fresh rod"),
                           .quantity = LB_QUANTITY_SHORT_TIME,
                           .value = 75,
                           .least = 0,
                           .most = 1800,
                           .tag = LB_TAG_COMMON_PRACTICE,
                           .source = N_ ("Crews count 60 to 90 s") },
  [LB_ASSUME_RESTRIKE_LOW] = { .key = "restrike-low",
                               .title = N_ ("Time lost at each strike, quick"),
                               .quantity = LB_QUANTITY_SHORT_TIME,
                               .value = 45,
                               .least = 0,
                               .most = 1800,
                               .tag = LB_TAG_COMMON_PRACTICE,
                               .source = N_ ("A practised burner in good visibility") },
  [LB_ASSUME_RESTRIKE_HIGH] = { .key = "restrike-high",
                                .title = N_ ("Time lost at each strike, slow"),
                                .quantity = LB_QUANTITY_SHORT_TIME,
                                .value = 180,
                                .least = 0,
                                .most = 1800,
                                .tag = LB_TAG_COMMON_PRACTICE,
                                .source = N_ ("Black water, or gear that gives trouble") },
  [LB_ASSUME_ROD_TIME] = { .key = "rod-time",
                           .title = N_ ("Trigger time in one rod"),
                           .quantity = LB_QUANTITY_SHORT_TIME,
                           .value = 50,
                           .least = 5,
                           .most = 600,
                           .tag = LB_TAG_COMMON_PRACTICE,
                           .source = N_ ("3/8 by 18 in exothermic rod, 40 to 60 s") },
  [LB_ASSUME_ROD_WASTE] = { .key = "rod-waste",
                            .title = N_ ("Share of rod wasted"),
                            .quantity = LB_QUANTITY_SHARE,
                            .value = 0.15,
                            .least = 0,
                            .most = 0.9,
                            .tag = LB_TAG_COMMON_PRACTICE,
                            .source = N_ ("Bad strikes, stubs, drops") },
  [LB_ASSUME_ROD_WASTE_LOW] = { .key = "rod-waste-low",
                                .title = N_ ("Share of rod wasted, low"),
                                .quantity = LB_QUANTITY_SHARE,
                                .value = 0.10,
                                .least = 0,
                                .most = 0.9,
                                .tag = LB_TAG_COMMON_PRACTICE,
                                .source = N_ ("Bad strikes, stubs, drops") },
  [LB_ASSUME_ROD_WASTE_HIGH] = { .key = "rod-waste-high",
                                 .title = N_ ("Share of rod wasted, high"),
                                 .quantity = LB_QUANTITY_SHARE,
                                 .value = 0.30,
                                 .least = 0,
                                 .most = 0.9,
                                 .tag = LB_TAG_COMMON_PRACTICE,
                                 .source = N_ ("Bad strikes, stubs, drops") },
  [LB_ASSUME_YEAR_BUILT] = { .key = "year-built",
                             .title = N_ ("Year the piles were made, 0 not known"),
                             .quantity = LB_QUANTITY_COUNT,
                             .value = 0,
                             .least = 0,
                             .most = 2100,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ (
                               "Drawings or the owner’s records; it tells the least yield of the bars") },
  [LB_ASSUME_STEEL_YIELD] = { .key = "steel-yield",
                              .title = N_ ("Yield of the bars, 0 for that of the year"),
                              .quantity = LB_QUANTITY_STRESS,
                              .value = 0,
                              .least = 0,
                              .most = 150 * 1000 * PSI,
                              .tag = LB_TAG_STANDARD,
                              .source = N_ (
                                "Mill papers or a test; else ASTM A15 and A615 by the year, 33 ksi where it is not known") },
  [LB_ASSUME_HOLD_FACTOR] = { .key = "hold-factor",
                              .title = N_ ("Factor on what the bars left hold"),
                              .quantity = LB_QUANTITY_RATIO,
                              .value = 3,
                              .least = 1,
                              .most = 20,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("The licensed engineer’s to set") },
  [LB_ASSUME_CUT_GAP] = { .key = "cut-gap",
                          .title = N_ ("Bar bared in the cut"),
                          .quantity = LB_QUANTITY_SIZE,
                          .value = 12 * INCH,
                          .least = 0,
                          .most = 6 * FOOT,
                          .tag = LB_TAG_COMMON_PRACTICE,
                          .source = N_ ("Room for the torch; measure what was broken out") },
  [LB_ASSUME_BARE_LENGTH] = { .key = "bare-length",
                              .title = N_ ("Effective length of a bared bar"),
                              .quantity = LB_QUANTITY_RATIO,
                              .value = 1,
                              .least = 0.5,
                              .most = 2,
                              .tag = LB_TAG_STANDARD,
                              .source = N_ (
                                "AISC commentary: 1 where the stub can move sideways, 0.65 where it cannot") },
  [LB_ASSUME_HOOK_SHARE] = { .key = "hook-share",
                             .title = N_ ("Share of the stub that the hook takes"),
                             .quantity = LB_QUANTITY_SHARE,
                             .value = 0.5,
                             .least = 0,
                             .most = 1,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ (
                               "Half of it, straight up at the head, takes the bending off the cut") },
  [LB_ASSUME_OXYGEN_FLOW] = { .key = "oxygen-flow",
                              .title = N_ ("Oxygen flow at the surface"),
                              .quantity = LB_QUANTITY_GAS_FLOW,
                              .value = 24 * CFM,
                              .least = 1 * CFM,
                              .most = 100 * CFM,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("20 cu ft to a rod of 50 s") },
  [LB_ASSUME_CYLINDER_CONTENT] = { .key = "cylinder-content",
                                   .title = N_ ("Oxygen in a full cylinder"),
                                   .quantity = LB_QUANTITY_GAS,
                                   .value = 244 * CUBIC_FOOT,
                                   .least = 20 * CUBIC_FOOT,
                                   .most = 20000 * CUBIC_FOOT,
                                   .tag = LB_TAG_STANDARD,
                                   .source = N_ (
                                     "Welding handbooks: 244 cu ft at 2200 psi; a pack counts as one") },
  [LB_ASSUME_CYLINDER_PRESSURE] = { .key = "cylinder-pressure",
                                    .title = N_ ("Pressure of a full cylinder"),
                                    .quantity = LB_QUANTITY_PRESSURE,
                                    .value = 2200 * PSI,
                                    .least = 500 * PSI,
                                    .most = 4000 * PSI,
                                    .tag = LB_TAG_STANDARD,
                                    .source = N_ ("At 70 °F, by the supplier’s label") },
  [LB_ASSUME_CYLINDER_RESIDUAL] = { .key = "cylinder-residual",
                                    .title = N_ ("Pressure at which a cylinder is changed"),
                                    .quantity = LB_QUANTITY_PRESSURE,
                                    .value = 200 * PSI,
                                    .least = 50 * PSI,
                                    .most = 1000 * PSI,
                                    .tag = LB_TAG_COMMON_PRACTICE,
                                    .source = N_ ("It must stay above the regulator setting") },
  [LB_ASSUME_OVER_BOTTOM] = { .key = "over-bottom",
                              .title = N_ ("Over-bottom pressure"),
                              .quantity = LB_QUANTITY_PRESSURE,
                              .value = 90 * PSI,
                              .least = 20 * PSI,
                              .most = 150 * PSI,
                              .tag = LB_TAG_STANDARD,
                              .source = N_ ("U.S. Navy Underwater Cutting and Welding Manual, "
                                            "exothermic rods") },
  [LB_ASSUME_HOSE_LENGTH] = { .key = "hose-length",
                              .title = N_ ("Oxygen hose length"),
                              .quantity = LB_QUANTITY_LENGTH,
                              .value = 200 * FOOT,
                              .least = 0,
                              .most = 2000 * FOOT,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("Measure the hose on deck") },
  [LB_ASSUME_HOSE_BORE] = { .key = "hose-bore",
                            .title = N_ ("Oxygen hose bore"),
                            .quantity = LB_QUANTITY_SIZE,
                            .value = 0.375 * INCH,
                            .least = 0.125 * INCH,
                            .most = 2 * INCH,
                            .tag = LB_TAG_STANDARD,
                            .source = N_ (
                              "U.S. Navy Underwater Cutting and Welding Manual: 3/8 in inside") },
  [LB_ASSUME_HOSE_LOSS] = { .key = "hose-loss",
                            .title = N_ ("Hose allowance in place of the flow’s, 0 for none"),
                            .quantity = LB_QUANTITY_PRESSURE_PER_LENGTH,
                            .value = 0,
                            .least = 0,
                            .most = 100 * PSI / (100 * FOOT),
                            .tag = LB_TAG_COMMON_PRACTICE,
                            .source = N_ (
                              "0 reckons with the flow in a smooth hose; crews allow 10 psi for each 100 ft") },
  [LB_ASSUME_LEAD_CURRENT] = { .key = "lead-current",
                               .title = N_ ("Cutting current"),
                               .quantity = LB_QUANTITY_CURRENT,
                               .value = 150,
                               .least = 0,
                               .most = 1000,
                               .tag = LB_TAG_COMMON_PRACTICE,
                               .source = N_ ("Exothermic rods; the rod’s maker says") },
  [LB_ASSUME_LEAD_LENGTH] = { .key = "lead-length",
                              .title = N_ ("Leads, out and back"),
                              .quantity = LB_QUANTITY_LENGTH,
                              .value = 400 * FOOT,
                              .least = 0,
                              .most = 4000 * FOOT,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("Lead and ground together; measure them on deck") },
  [LB_ASSUME_LEAD_SIZE] = { .key = "lead-size",
                            .title = N_ ("Copper of the leads"),
                            .quantity = LB_QUANTITY_CONDUCTOR,
                            .value = 105.6 * KCMIL,
                            .least = 20 * KCMIL,
                            .most = 1000 * KCMIL,
                            .tag = LB_TAG_STANDARD,
                            .source = N_ (
                              "U.S. Navy Underwater Cutting and Welding Manual: 1/0, which is 105.6 kcmil") },
  [LB_ASSUME_DIVE_SETUP] = { .key = "dive-setup",
                             .title = N_ ("Bottom time of a dive not spent burning"),
                             .quantity = LB_QUANTITY_TIME,
                             .value = 10 * MINUTE,
                             .least = 0,
                             .most = 240 * MINUTE,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ ("Down, to the pile, clamp on, and away") },
  [LB_ASSUME_DIVE_LIMIT] = { .key = "dive-limit",
                             .title = N_ ("Longest bottom time planned"),
                             .quantity = LB_QUANTITY_TIME,
                             .value = 120 * MINUTE,
                             .least = 5 * MINUTE,
                             .most = 480 * MINUTE,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ ("Cold and tiredness end a dive before the table does "
                                           "in shallow water") },
  [LB_ASSUME_CURRENT_LIMIT] = { .key = "current-limit",
                                .title = N_ ("Most current to dive in"),
                                .quantity = LB_QUANTITY_SPEED,
                                .value = 1 * KNOT,
                                .least = 0,
                                .most = 5 * KNOT,
                                .tag = LB_TAG_COMMON_PRACTICE,
                                .source = N_ ("The diving supervisor’s to set; 1 knot is a usual "
                                              "limit") },
  [LB_ASSUME_RIGGING_MASS] = { .key = "rigging-mass",
                               .title = N_ ("Rigging weight"),
                               .quantity = LB_QUANTITY_MASS,
                               .value = 400 * POUND,
                               .least = 0,
                               .most = 20000 * POUND,
                               .tag = LB_TAG_COMMON_PRACTICE,
                               .source = N_ ("Hook block share, slings and shackles; weigh "
                                             "yours") },
  [LB_ASSUME_BED] = { .key = "bed",
                      .title = N_ ("What the piece lies on when it is lifted"),
                      .quantity = LB_QUANTITY_COUNT,
                      .value = LB_ASSUME_BED_NONE,
                      .least = 0,
                      .most = LB_ASSUME_BED_SOFT_CLAY,
                      .tag = LB_TAG_COMMON_PRACTICE,
                      .source = N_ (
                        "A stub on the hook lies on nothing; a piece let down or fallen "
                        "lies on what the diver finds"),
                      .choices = beds },
  [LB_ASSUME_PICKS] = { .key = "picks",
                        .title = N_ ("Points a length is picked up at"),
                        .quantity = LB_QUANTITY_COUNT,
                        .value = 2,
                        .least = 1,
                        .most = 4,
                        .tag = LB_TAG_COMMON_PRACTICE,
                        .source = N_ (
                          "FDOT Design Standards, index 20600 (2012), has the places; 1 "
                          "upends it, 3 and 4 need sheaves") },
  [LB_ASSUME_SLING_LEGS] = { .key = "sling-legs",
                             .title = N_ ("Sling legs"),
                             .quantity = LB_QUANTITY_COUNT,
                             .value = 2,
                             .least = 1,
                             .most = 4,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ ("Two are taken to carry, however many there are") },
  [LB_ASSUME_SLING_ANGLE] = { .key = "sling-angle",
                              .title = N_ ("Sling angle from the horizontal"),
                              .quantity = LB_QUANTITY_ANGLE,
                              .value = 60 * DEGREE,
                              .least = 30 * DEGREE,
                              .most = 90 * DEGREE,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("The competent rigger's choice; never under 30°") },
  [LB_ASSUME_SLING_RATING] = { .key = "sling-rating",
                               .title = N_ ("Rating of one sling leg as hitched, 0 not known"),
                               .quantity = LB_QUANTITY_MASS,
                               .value = 0,
                               .least = 0,
                               .most = 2e6 * POUND,
                               .tag = LB_TAG_COMMON_PRACTICE,
                               .source = N_ (
                                 "Off the sling’s own tag: the choker rating where it is "
                                 "choked, the vertical one where it is not") },
  [LB_ASSUME_CHOKE_ANGLE] = { .key = "choke-angle",
                              .title = N_ ("Angle of choke, 180° for none"),
                              .quantity = LB_QUANTITY_ANGLE,
                              .value = 135 * DEGREE,
                              .least = 0,
                              .most = 180 * DEGREE,
                              .tag = LB_TAG_STANDARD,
                              .source = N_ (
                                "A load that hangs free chokes at about 135°; from 120° "
                                "down ASME B30.9 takes from the rating") },
  [LB_ASSUME_CRANE_CAPACITY] = { .key = "crane-capacity",
                                 .title = N_ (
                                   "Crane capacity at the radius of the lift, 0 not known"),
                                 .quantity = LB_QUANTITY_MASS,
                                 .value = 0,
                                 .least = 0,
                                 .most = 2e7 * POUND,
                                 .tag = LB_TAG_COMMON_PRACTICE,
                                 .source = N_ (
                                   "The crane’s own chart, made less for list, trim and the place on the barge (29 CFR 1926.1437)") },
  [LB_ASSUME_CRANE_RADIUS] = { .key = "crane-radius",
                               .title = N_ ("Radius of the lift with the barge level, 0 not known"),
                               .quantity = LB_QUANTITY_LENGTH,
                               .value = 0,
                               .least = 0,
                               .most = 1000 * FOOT,
                               .tag = LB_TAG_COMMON_PRACTICE,
                               .source = N_ ("Measure it; with it the capacity is read off the "
                                             "crane’s chart") },
  [LB_ASSUME_ON_BARGE] = { .key = "crane-on-barge",
                           .title = N_ ("The crane stands on a barge"),
                           .quantity = LB_QUANTITY_COUNT,
                           .value = LB_ASSUME_YES,
                           .least = 0,
                           .most = LB_ASSUME_YES,
                           .tag = LB_TAG_COMMON_PRACTICE,
                           .source = N_ ("Most piers are taken out from the water"),
                           .choices = no_or_yes },
  [LB_ASSUME_TIP_HEIGHT] = { .key = "boom-tip-height",
                             .title = N_ ("Boom tip above the foot of the crane, 0 not known"),
                             .quantity = LB_QUANTITY_LENGTH,
                             .value = 0,
                             .least = 0,
                             .most = 1000 * FOOT,
                             .tag = LB_TAG_COMMON_PRACTICE,
                             .source = N_ ("From boom length and angle; list and trim swing it "
                                           "outward") },
  [LB_ASSUME_LIST] = { .key = "barge-list",
                       .title = N_ ("List of the barge, the load on"),
                       .quantity = LB_QUANTITY_ANGLE,
                       .value = 0,
                       .least = 0,
                       .most = 20 * DEGREE,
                       .tag = LB_TAG_COMMON_PRACTICE,
                       .source = N_ ("Taken as level; read it off the device at the operator’s "
                                     "station (29 CFR 1926.1437(e))") },
  [LB_ASSUME_TRIM] = { .key = "barge-trim",
                       .title = N_ ("Trim of the barge, the load on"),
                       .quantity = LB_QUANTITY_ANGLE,
                       .value = 0,
                       .least = 0,
                       .most = 20 * DEGREE,
                       .tag = LB_TAG_COMMON_PRACTICE,
                       .source = N_ ("Taken as level; read it off the device at the operator’s "
                                     "station (29 CFR 1926.1437(e))") },
  [LB_ASSUME_LIST_LIMIT] = { .key = "list-limit",
                             .title = N_ ("Most list and most trim"),
                             .quantity = LB_QUANTITY_ANGLE,
                             .value = 5 * DEGREE,
                             .least = 0,
                             .most = 5 * DEGREE,
                             .tag = LB_TAG_STANDARD,
                             .source = N_ ("29 CFR 1926.1437(n)(3): the least of 5°, the maker’s "
                                           "figure and the qualified person’s") },
  [LB_ASSUME_BARGE_LENGTH] = BARGE ("barge-length",
                                    N_ ("Barge: length, 0 not known"),
                                    N_ ("The barge’s papers; taken as a box")),
  [LB_ASSUME_BARGE_BEAM] = BARGE ("barge-beam",
                                  N_ ("Barge: beam, 0 not known"),
                                  N_ ("The barge’s papers; taken as a box")),
  [LB_ASSUME_BARGE_DRAFT] = BARGE ("barge-draft",
                                   N_ ("Barge: draft with the load on, 0 not known"),
                                   N_ ("Read the draft marks, crane and deck load aboard")),
  [LB_ASSUME_BARGE_FREEBOARD] = BARGE ("barge-freeboard",
                                       N_ ("Barge: freeboard with the load on, 0 not known"),
                                       N_ ("Water to the deck edge where it is lowest")),
  [LB_ASSUME_BARGE_GRAVITY] = BARGE ("barge-gravity",
                                     N_ ("Barge: centre of gravity above its bottom, 0 not known"),
                                     N_ ("A naval architect’s figure: crane, counterweight and "
                                         "deck load, with the load counted at the boom tip")),
  [LB_ASSUME_CRANES] = { .key = "cranes",
                         .title = N_ ("Cranes on one piece"),
                         .quantity = LB_QUANTITY_COUNT,
                         .value = 1,
                         .least = 1,
                         .most = 4,
                         .tag = LB_TAG_COMMON_PRACTICE,
                         .source = N_ ("More than one makes every lift a critical one; no share of "
                                       "the load is reckoned for each") },
  [LB_ASSUME_OUT_OF_VIEW] = { .key = "load-out-of-view",
                              .title = N_ (
                                "The operator does not see the load, nor a signal of it"),
                              .quantity = LB_QUANTITY_COUNT,
                              .value = LB_ASSUME_NO,
                              .least = 0,
                              .most = LB_ASSUME_YES,
                              .tag = LB_TAG_COMMON_PRACTICE,
                              .source = N_ ("Hand signals or radio all the way count as seeing it "
                                            "(EM 385-1-1, as quoted in a trade article)"),
                              .choices = no_or_yes },
};

/* How far past its ends a range still takes a value: units converted there and back. */
#define RANGE_SLACK 1e-9

const LbAssumption *
lb_assumption (LbAssumptionId id)
{
  g_return_val_if_fail (id < LB_N_ASSUMPTIONS, NULL);

  return &table[id];
}

gboolean
lb_assumption_find (const char *key, LbAssumptionId *out_id)
{
  g_return_val_if_fail (key, FALSE);
  g_return_val_if_fail (out_id, FALSE);

  for (int id = 0; id < LB_N_ASSUMPTIONS; id++) {
    if (g_ascii_strcasecmp (table[id].key, key) == 0) {
      *out_id = (LbAssumptionId) id;
      return TRUE;
    }
  }
  return FALSE;
}

void
lb_assumptions_init (LbAssumptions *assumptions)
{
  g_return_if_fail (assumptions);

  for (int id = 0; id < LB_N_ASSUMPTIONS; id++) {
    assumptions->value[id] = table[id].value;
    assumptions->is_own[id] = FALSE;
  }
}

gboolean
lb_assumptions_set (LbAssumptions *assumptions, LbAssumptionId id, double si, GError **error)
{
  g_return_val_if_fail (assumptions, FALSE);
  g_return_val_if_fail (id < LB_N_ASSUMPTIONS, FALSE);

  const LbAssumption *row = &table[id];
  const double slack = RANGE_SLACK * MAX (fabs (row->least), fabs (row->most));

  if (!(si >= row->least - slack && si <= row->most + slack)) {
    g_autofree char *least = lb_quantity_to_both (row->quantity, row->least);
    g_autofree char *most = lb_quantity_to_both (row->quantity, row->most);

    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: the value is outside %s to %s; check the number and its unit", row->title,
                 least, most);
    return FALSE;
  }
  if (row->quantity == LB_QUANTITY_COUNT && fabs (si - round (si)) > RANGE_SLACK) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "%s: only a whole number makes sense here", row->title);
    return FALSE;
  }

  /* Legs are counted by cutting off what is behind the point: 1.9999999999 must not be one. */
  assumptions->value[id] = row->quantity == LB_QUANTITY_COUNT ? round (si) : si;
  assumptions->is_own[id] = TRUE;
  return TRUE;
}

gboolean
lb_assumption_from_text (LbAssumptionId id,
                         LbUnits units,
                         const char *text,
                         double *out_si,
                         GError **error)
{
  g_return_val_if_fail (id < LB_N_ASSUMPTIONS, FALSE);
  g_return_val_if_fail (text && out_si, FALSE);

  const LbAssumption *row = &table[id];

  if (row->choices == NULL)
    return lb_quantity_from_text (row->quantity, units, text, out_si, error);
  for (guint i = 0; row->choices[i] != NULL; i++) {
    if (g_ascii_strcasecmp (row->choices[i], text) == 0) {
      *out_si = i;
      return TRUE;
    }
  }

  g_autofree char *words = g_strjoinv (", ", (char **) row->choices);

  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, "%s: “%s” is none of: %s", row->title,
               text, words);
  return FALSE;
}

const char *
lb_assumption_choice (LbAssumptionId id, double si)
{
  g_return_val_if_fail (id < LB_N_ASSUMPTIONS, NULL);

  const LbAssumption *row = &table[id];

  return row->choices != NULL && si >= 0 && si <= row->most ? row->choices[(guint) round (si)]
                                                            : NULL;
}

LbTag
lb_assumptions_tag (const LbAssumptions *assumptions, LbAssumptionId id)
{
  g_return_val_if_fail (assumptions, LB_TAG_MEMORY);
  g_return_val_if_fail (id < LB_N_ASSUMPTIONS, LB_TAG_MEMORY);

  return assumptions->is_own[id] ? LB_TAG_JOB : table[id].tag;
}
