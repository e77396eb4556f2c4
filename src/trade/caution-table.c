/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/caution-table.h"

#include "trade/msgid.h"

#include <string.h>

#define COMMON_PRACTICE N_ ("common practice")
#define NAVY_CUTTING    N_ ("U.S. Navy Underwater Cutting and Welding Manual")
#define NAVY_DIVING     N_ ("U.S. Navy Diving Manual, revision 7, table 9-7")

/* Each is an order first and its reason after; where a number could be relied on, it says who decides.
 * Change data/cautions.csv with it. */
static const LbCautionRow rows[] = {
  { "strand", LB_SEVERITY_DANGER, LB_WHEN_STRAND,
    N_ ("Stand clear of the line of every strand: it has the energy of its stress stored in "
        "it, and whips when it is cut. A licensed engineer says in what order."),
    COMMON_PRACTICE },
  { "under-lean", LB_SEVERITY_DANGER, LB_WHEN_BATTERED,
    N_ ("Stay out from under the lean: never work on the {lean-side} side."), COMMON_PRACTICE },
  { "lean-unknown", LB_SEVERITY_DANGER, LB_WHEN_LEAN_UNKNOWN,
    N_ ("Sight the pile for lean before anybody works at it: how it leans is not on record. Until "
        "then stay out from under every side, and expect it to swing."),
    COMMON_PRACTICE },
  { "rig-now", LB_SEVERITY_DANGER, LB_WHEN_NOT_STANDING,
    N_ ("Hook tension on before the next bar is burned: those left do not hold the "
        "stub with the factor on them. The licensed engineer and the competent "
        "rigger decide."),
    N_ ("computed from the bars left; no published rule was found") },
  { "rig-before", LB_SEVERITY_DANGER, LB_WHEN_HOLD_KNOWN,
    N_ ("Hook tension on before bar {bar}: after it the bars left are not "
        "reckoned to carry the stub. The competent rigger says when."),
    N_ ("computed from the bars left; no published rule was found") },
  { "kept-bar", LB_SEVERITY_DANGER, LB_WHEN_KEPT_BAR,
    N_ ("Hook tension on before bar {bar}: it is one of those kept to the end. The "
        "competent rigger says when."),
    COMMON_PRACTICE },
  { "hinge", LB_SEVERITY_DANGER, LB_WHEN_HINGE,
    N_ ("After bar {bar} the bars left stand in one line and fold like a hinge: "
        "the hook must hold the stub by then."),
    N_ ("computed: bars in one line carry no moment across it") },
  { "rig-first", LB_SEVERITY_DANGER, LB_WHEN_HOLD_UNKNOWN,
    N_ ("Leans {lean} to the {lean-side}, and what the bars left hold is not "
        "known: hook tension on before the last bars. The competent rigger says "
        "before which."),
    COMMON_PRACTICE },
  { "void-gas", LB_SEVERITY_DANGER, LB_WHEN_HOLLOW,
    N_ ("Vent the {void} void above the cut and let it flood before burning: "
        "oxygen and hydrogen trapped in it explode. Flooded is not always clear "
        "of gas."),
    N_ ("29 CFR 1910.422(g)(5); vent holes above the cut are common practice") },
  { "unlit-rod", LB_SEVERITY_DANGER, LB_WHEN_BURNING,
    N_ ("Don’t tap a rod that will not light again and again: oxygen gathers in "
        "a pocket and explodes at the strike. Oxygen off, let it clear, then "
        "change the rod."),
    N_ ("IMCA Safety Flash 05/04 (2004)") },
  { "deep-fire", LB_SEVERITY_DANGER, LB_WHEN_BURNING,
    N_ ("Don’t build a fire deep in the cut to speed it: gas trapped there "
        "explodes."),
    NAVY_CUTTING },
  { "splash-zone", LB_SEVERITY_DANGER, LB_WHEN_SPLASH_ZONE,
    N_ ("Wholly under or wholly out while the switch is closed: half in the "
        "water is where shock is worst."),
    NAVY_CUTTING },
  { "current-over", LB_SEVERITY_DANGER, LB_WHEN_CURRENT_OVER,
    N_ ("Don’t dive: a current of {current} is over this job’s limit of "
        "{current-limit}. Wait for slack water."),
    N_ ("common practice; 29 CFR 1910.424 has 1 knot for scuba that is not "
        "line-tended") },
  { "diver-clear", LB_SEVERITY_DANGER, LB_WHEN_SUBMERGED_LIFT,
    N_ ("Diver clear and answering before the hook takes the load; nobody under "
        "it on the way up."),
    COMMON_PRACTICE },
  { "capacity-over", LB_SEVERITY_DANGER, LB_WHEN_CAPACITY_OVER,
    N_ ("Don’t lift: up to {load-most} at the hook is more than the crane’s "
        "{capacity} at this radius. Cut shorter or bring the crane nearer."),
    N_ ("29 CFR 1926.1417(o), from memory") },
  { "beyond-chart", LB_SEVERITY_DANGER, LB_WHEN_BEYOND_CHART,
    N_ ("Don’t lift: a radius of {radius} is beyond the crane’s chart, and it has "
        "no capacity there. Bring the crane nearer."),
    N_ ("29 CFR 1926.1417(o), from memory") },
  { "list-over", LB_SEVERITY_DANGER, LB_WHEN_LIST_OVER,
    N_ ("Don’t lift: list or trim of {list} is over the limit of {list-limit}. "
        "Level the barge first."),
    N_ ("29 CFR 1926.1437(n)(3)") },
  { "sling-over", LB_SEVERITY_DANGER, LB_WHEN_SLING_OVER,
    N_ ("Don’t lift: up to {tension} a leg is more than the sling’s {rating}. "
        "Longer legs, a stronger sling or a shorter piece."),
    N_ ("ASME B30.9; rating by the sling’s own tag") },
  { "bars-unknown", LB_SEVERITY_CAUTION, LB_WHEN_BARS_UNKNOWN,
    N_ ("Find, count and gauge the bars before burning: their number or size is "
        "not on record. Tell the diving supervisor what is there."),
    COMMON_PRACTICE },
  { "concrete-left", LB_SEVERITY_CAUTION, LB_WHEN_CONCRETE_LEFT,
    N_ ("Concrete still stands in the cut: it holds, lets go without a sign, and "
        "is in no figure here. Clear it, or keep the hook on."),
    COMMON_PRACTICE },
  { "several-dives", LB_SEVERITY_CAUTION, LB_WHEN_SEVERAL_DIVES,
    N_ ("Dives to plan: {dives}. {burn} at the pile, no dive over {limit}. The "
        "diving supervisor sets the bottom time of each."),
    NAVY_DIVING },
  { "spare-dives", LB_SEVERITY_CAUTION, LB_WHEN_DIVES_MAY_GROW,
    N_ ("One dive may not do: {burn-most} at the pile if it goes slowly, no dive "
        "over {limit}. Dives to have in hand: {dives-most}. The diving supervisor "
        "sets the bottom time."),
    NAVY_DIVING },
  { "past-limit", LB_SEVERITY_CAUTION, LB_WHEN_PAST_LIMIT,
    N_ ("Don’t plan to finish: {burn} at the pile, and a dive of {limit} at most "
        "leaves no time to burn. The diving supervisor sets the bottom time."),
    NAVY_DIVING },
  { "limit-unknown", LB_SEVERITY_CAUTION, LB_WHEN_LIMIT_UNKNOWN,
    N_ ("Don’t dive on this card’s times: no no-stop limit can be read for this "
        "cut. The diving supervisor sets the bottom time."),
    NAVY_DIVING },
  { "lead-drop", LB_SEVERITY_CAUTION, LB_WHEN_LEAD_DROP_OVER,
    N_ ("The leads lose {lead-drop}, more than the {lead-drop-most} they may: take "
        "thicker ones, or shorten them."),
    N_ ("AWS Safety & Health Fact Sheet No. 39 (2016)") },
  { "residual", LB_SEVERITY_CAUTION, LB_WHEN_RESIDUAL_LOW,
    N_ ("Change cylinders before they are down to {residual}: under the "
        "regulator’s {regulator} the pressure at the torch falls off."),
    COMMON_PRACTICE },
  { "slag-side", LB_SEVERITY_CAUTION, LB_WHEN_BATTERED_BURN,
    N_ ("Umbilical and leads to the {lead-side}: slag falls {lean-side}, under "
        "the lean."),
    COMMON_PRACTICE },
  { "slag-down", LB_SEVERITY_CAUTION, LB_WHEN_PLUMB_BURN,
    N_ ("Keep umbilical and leads out from under the cut: slag falls straight "
        "down."),
    COMMON_PRACTICE },
  { "hot-slag", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Hands, hoses and suit out of the slag, and let cut ends cool: it burns "
        "through all three under water."),
    COMMON_PRACTICE },
  { "switch-open", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Switch open except while the diver burns; open it and have it confirmed "
        "before a rod is changed."),
    N_ ("29 CFR 1910.422(g)(1)") },
  { "clamp", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Clamp on bright steel in front of the diver, and move it along. Never "
        "get between rod and clamp."),
    NAVY_CUTTING },
  { "gloves", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Rubber gloves whole, dry inside and secured at the wrist before the "
        "torch is touched."),
    N_ ("29 CFR 1910.422(g)(4)") },
  { "gas-traps", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Open every gas trap before burning: loose cover, cracks, growth, under "
        "the cap. Burn from the highest point down."),
    NAVY_CUTTING },
  { "rod-stub", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Stop 3 in (75 mm) from the collet: shorter, the fire gets into the "
        "torch. Flash arrestor looked at after each dive."),
    NAVY_CUTTING },
  { "leak-test", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Prove torch, hose and O-ring tight under water before the dive: oxygen "
        "that leaks feeds any fire near it."),
    COMMON_PRACTICE },
  { "collet-bubbles", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("Bubbles at the collet mean a worn O-ring or a loose rod: switch open, "
        "oxygen off, up with it and mend it."),
    COMMON_PRACTICE },
  { "oxygen-grease", LB_SEVERITY_CAUTION, LB_WHEN_BURNING,
    N_ ("No oil or grease on anything oxygen touches: in oxygen it lights almost "
        "by itself. Compressed air never takes its place."),
    NAVY_CUTTING },
  { "oxygen-slow", LB_SEVERITY_CAUTION, LB_WHEN_OXYGEN,
    N_ ("Open cylinder and valves slowly: the hose stands at {regulator}."),
    N_ ("46 CFR 197.326, slow-opening valves over 125 psig") },
  { "swing", LB_SEVERITY_CAUTION, LB_WHEN_BATTERED,
    N_ ("A leaning piece swings to plumb as it comes free: keep clear all round "
        "before the strain comes on."),
    N_ ("EM 385-1-1, critical lifts, as quoted in a trade article") },
  { "submerged-lift", LB_SEVERITY_CAUTION, LB_WHEN_LOAD_KNOWN,
    N_ ("Lift only on a critical-lift plan: the load is under water, {load} at "
        "the hook by estimate. The competent rigger signs it."),
    N_ ("EM 385-1-1") },
  { "load-unknown", LB_SEVERITY_CAUTION, LB_WHEN_LOAD_UNKNOWN,
    N_ ("Lift only on a critical-lift plan: the load is under water and its "
        "weight is not known. The competent rigger signs it."),
    N_ ("EM 385-1-1") },
  { "capacity-near", LB_SEVERITY_CAUTION, LB_WHEN_CAPACITY_NEAR,
    N_ ("Up to {load-most} is {share-most} of the crane’s capacity at this "
        "radius: from 75 % on a lift is critical."),
    N_ ("29 CFR 1926.751 (more than 75 %); a crane association’s list (75 % or "
        "more)") },
  { "capacity-unknown", LB_SEVERITY_CAUTION, LB_WHEN_CAPACITY_UNKNOWN,
    N_ ("The crane’s capacity at this radius is not known: read its own chart "
        "before the lift."),
    COMMON_PRACTICE },
  { "barge-chart", LB_SEVERITY_CAUTION, LB_WHEN_BARGE_CRANE,
    N_ ("Use the chart that was reduced for this barge, for list, trim, wave and "
        "wind; watch the list as the load comes on."),
    N_ ("29 CFR 1926.1437(n)(1)") },
  { "two-cranes", LB_SEVERITY_CAUTION, LB_WHEN_TWO_CRANES,
    N_ ("Two cranes on one piece: a critical lift, with one person who gives the "
        "signals."),
    N_ ("29 CFR 1926.751; one signaller is common practice") },
  { "sling-flat", LB_SEVERITY_CAUTION, LB_WHEN_SLING_FLAT,
    N_ ("Sling legs at {angle} from level: take extra care under 45°, and none "
        "is lifted under 30°."),
    N_ ("ASME B30.9") },
  { "whole-pull", LB_SEVERITY_CAUTION, LB_WHEN_WHOLE_PULL,
    N_ ("If it is drawn whole, pull slowly and never jerk: the ground may hold "
        "{grip} besides the weight. If the pile does not move, stop."),
    N_ ("API RP 2GEO; common practice") },
  { "mud", LB_SEVERITY_CAUTION, LB_WHEN_ON_MUD,
    N_ ("Break it out slowly: mud may add {suction} to the weight."),
    N_ ("NCEL R-755; common practice") },
  { "debris", LB_SEVERITY_CAUTION, LB_WHEN_BREAKING,
    N_ ("Nobody below or down-current while concrete is broken: pieces fall and "
        "swing on their bars."),
    COMMON_PRACTICE },
  { "debris-left", LB_SEVERITY_NOTE, LB_WHEN_BREAKING,
    N_ ("Bring the debris up: what is broken off goes into a net or basin, not "
        "to the bottom."),
    N_ ("common practice; state rules such as WAC 220-660-360") },
  { "bubble-test", LB_SEVERITY_NOTE, LB_WHEN_BURNING,
    N_ ("Prove straight polarity before the dive: in the water, the bubbles must "
        "come off the rod, not off the clamp."),
    COMMON_PRACTICE },
  { "leads-assumed", LB_SEVERITY_NOTE, LB_WHEN_LEADS_ASSUMED,
    N_ ("Measure the leads: the {lead-length} taken for granted would lose "
        "{lead-drop}, more than the {lead-drop-most} they may."),
    N_ ("AWS Safety & Health Fact Sheet No. 39 (2016)") },
  { "stop-dive", LB_SEVERITY_NOTE, LB_WHEN_UNDER_WATER,
    N_ ("The dive ends when the diver asks, does not answer, or voice is lost."),
    N_ ("29 CFR 1910.422(i)") },
  { "supervisor", LB_SEVERITY_NOTE, LB_WHEN_ALWAYS,
    N_ ("Follow the diving supervisor: their word and their own table stand "
        "above every figure here."),
    COMMON_PRACTICE },
};

G_STATIC_ASSERT (G_N_ELEMENTS (rows) <= LB_CAUTION_ROWS_MAX);

static const char *const severities[] = {
  [LB_SEVERITY_NOTE] = "note",
  [LB_SEVERITY_CAUTION] = "caution",
  [LB_SEVERITY_DANGER] = "danger",
};

const LbCautionRow *
lb_caution_rows (gsize *out_n)
{
  g_return_val_if_fail (out_n, NULL);

  *out_n = G_N_ELEMENTS (rows);
  return rows;
}

gboolean
lb_is_caution_key (const char *key)
{
  g_return_val_if_fail (key, FALSE);

  return g_ascii_islower (key[0]) && strlen (key) <= LB_CAUTION_KEY_MOST &&
         strspn (key, "abcdefghijklmnopqrstuvwxyz0123456789-") == strlen (key);
}

const char *
lb_severity_key (LbSeverity severity)
{
  g_return_val_if_fail (severity < G_N_ELEMENTS (severities), NULL);

  return severities[severity];
}

gboolean
lb_severity_from_key (const char *key, LbSeverity *out_severity)
{
  g_return_val_if_fail (key && out_severity, FALSE);

  for (guint i = 0; i < G_N_ELEMENTS (severities); i++) {
    if (g_str_equal (severities[i], key)) {
      *out_severity = (LbSeverity) i;
      return TRUE;
    }
  }
  return FALSE;
}
