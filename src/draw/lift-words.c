/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The figures of the lift in words: what hangs on the hook, on the slings and on the crane, where a
 * length is picked up, what it takes to draw a pile whole, and by which rules the lift is a critical
 * one. As in figure-words, a reason shows the numbers that the figure was really made of. */
#include "draw/lift-words.h"

#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/pile-taper.h"
#include "trade/sling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Standard gravity, exact by definition (NIST SP 811). */
#define GRAVITY 9.80665

static double
likely (const LbWhy *why, LbFigureId id)
{
  return why->plan->figures[id].range.likely;
}

/* Masses and loads are shown apart from each other; what is told of a weight is a mass. */
static char *
say_weight (const LbWhy *why, double load_n)
{
  return lb_why_say (why, LB_QUANTITY_MASS, load_n / GRAVITY);
}

/* --- The piece ---------------------------------------------------------------------------- */

/* "16 in", or of a tapered piece "16 to 12 in". */
static char *
say_widths (const LbWhy *why)
{
  if (!lb_pile_is_tapered (why->pile))
    return lb_why_say (why, LB_QUANTITY_SIZE, why->pile->outline.width_m);
  g_autofree char *head = lb_voice_quantity_number (why->voice, LB_QUANTITY_SIZE,
                                                    why->pile->outline.width_m);
  g_autofree char *cut = lb_why_say (why, LB_QUANTITY_SIZE, why->plan->outline.width_m);
  /* Translators: the widths of a tapered piece: “16 to 12 in” */
  return g_strdup_printf (C_ ("widths", "%s to %s"), head, cut);
}

static char *
why_mass_in_air (const LbWhy *why)
{
  const LbPile *const pile = why->pile;
  const double *const value = why->assumptions->value;
  g_autofree char *length = lb_why_say_figure (why, LB_FIGURE_TRUE_LENGTH);
  g_autofree char *width = say_widths (why);
  g_autofree char *density = lb_why_say_assumed (why, LB_ASSUME_CONCRETE_DENSITY);
  const char *const shape = lb_shape_text (pile);
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, _ ("%s of %s %s at %s"), length, width, shape, density);
  if (value[LB_ASSUME_ABSORBED] > 0) {
    g_autofree char *absorbed = lb_why_say_assumed (why, LB_ASSUME_ABSORBED);
    /* Translators: goes on after “41.0 ft of 16 in octagonal at 155 lb/cu ft”. */
    g_string_append_printf (text, _ (" + %s water taken up"), absorbed);
  }
  if (value[LB_ASSUME_GROWTH_THICKNESS] > 0) {
    g_autofree char *growth = lb_why_say_assumed (why, LB_ASSUME_GROWTH_THICKNESS);
    /* Translators: goes on after “41.0 ft of 16 in octagonal at 155 lb/cu ft”. */
    g_string_append_printf (text, _ (" + %s of growth"), growth);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
why_mass_in_water (const LbWhy *why)
{
  const double air = likely (why, LB_FIGURE_MASS_IN_AIR);
  const double water = likely (why, LB_FIGURE_MASS_IN_WATER);
  g_autofree char *in_air = lb_why_say (why, LB_QUANTITY_MASS, air);
  g_autofree char *lifted = lb_why_say (why, LB_QUANTITY_MASS, air - water);
  return g_strdup_printf (_ ("%s in air − %s of water pushed aside"), in_air, lifted);
}

static char *
why_suction (const LbWhy *why)
{
  g_autofree char *water = lb_why_say_figure (why, LB_FIGURE_MASS_IN_WATER);
  if (why->assumptions->value[LB_ASSUME_BED] > LB_ASSUME_BED_MUD)
    return g_strdup_printf (_ ("a quarter to all of the %s in water: it lies on soft clay"), water);
  return g_strdup_printf (_ ("a quarter to a half of the %s in water: it lies on mud"), water);
}

/* The range is made of what each input alone may add or take, P10 to P90: said where it stands
 * first, at the load of the hook. */
static char *
why_hook_load (const LbWhy *why)
{
  g_autofree char *in_air = lb_why_say_figure (why, LB_FIGURE_MASS_IN_AIR);
  g_autofree char *rigging = lb_why_say_assumed (why, LB_ASSUME_RIGGING_MASS);
  return g_strdup_printf (_ ("%s in air + %s rigging; P10 to P90"), in_air, rigging);
}

static char *
why_awash (const LbWhy *why)
{
  g_autofree char *rigging = lb_why_say_assumed (why, LB_ASSUME_RIGGING_MASS);
  g_autofree char *water = lb_why_say_figure (why, LB_FIGURE_MASS_IN_WATER);
  g_autofree char *in_air = lb_why_say_figure (why, LB_FIGURE_MASS_IN_AIR);
  return g_strdup_printf (_ ("half way from %s in water to %s in air, + %s rigging"), water, in_air,
                          rigging);
}

/* --- Slings and picks --------------------------------------------------------------------- */

static char *
why_sling (const LbWhy *why)
{
  const gulong n_legs = (gulong) lround (why->assumptions->value[LB_ASSUME_SLING_LEGS]);
  g_autofree char *angle = lb_why_say_assumed (why, LB_ASSUME_SLING_ANGLE);
  if (n_legs > 2) {
    /* Translators: of a sling with %lu legs, all but two are taken to hang slack. */
    return g_strdup_printf (_ ("%lu legs at %s, two taken to carry"), n_legs, angle);
  }
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%lu leg carries all of it at %s",
                                       "%lu legs at %s from the horizontal", n_legs),
                          n_legs, angle);
}

static char *
why_sling_share (const LbWhy *why)
{
  const double kept = lb_choker_share (why->assumptions->value[LB_ASSUME_CHOKE_ANGLE]);
  g_autofree char *tension = lb_why_say_figure (why, LB_FIGURE_SLING);
  g_autofree char *rating = lb_why_say_assumed (why, LB_ASSUME_SLING_RATING);
  if (kept >= 1)
    return g_strdup_printf (_ ("%s a leg, rated %s as hitched"), tension, rating);
  g_autofree char *share = lb_why_say (why, LB_QUANTITY_SHARE, kept);
  g_autofree char *angle = lb_why_say_assumed (why, LB_ASSUME_CHOKE_ANGLE);
  return g_strdup_printf (_ ("%s a leg, rated %s as hitched, of which a choke of %s keeps %s"),
                          tension, rating, angle, share);
}

static char *
why_pick (const LbWhy *why)
{
  const LbCutPlan *const plan = why->plan;
  g_autofree char *length = lb_why_say (why, LB_QUANTITY_LENGTH,
                                        likely (why, LB_FIGURE_TRUE_LENGTH) / plan->n_lengths);
  g_autoptr (GString) places = g_string_new (NULL);

  if (plan->n_picks == 1)
    return g_strdup_printf (
      _ ("one point in %s upends it, its far end on the ground (FDOT index 20600)"), length);
  for (guint i = 0; i < plan->n_picks; i++) {
    g_autofree char *at = lb_why_say (why, LB_QUANTITY_LENGTH, plan->pick_at_m[i]);
    g_string_append_printf (places, "%s%s", i > 0 ? ", " : "", at);
  }
  /* Translators: distances along a piece, and its length: “8.5 ft, 32.1 ft of 40.6 ft”. */
  return plan->n_picks == 2
           ? g_strdup_printf (_ ("%s of %s, laid level (FDOT index 20600)"), places->str, length)
           : g_strdup_printf (_ ("%s of %s, laid level over sheaves (FDOT index 20600)"),
                              places->str, length);
}

/* --- The crane ---------------------------------------------------------------------------- */

static char *
say_capacity (const LbWhy *why)
{
  return say_weight (why, why->plan->crane.capacity_n);
}

/* "by its chart at 40 ft, 38.0 ft and 1.4 ft for list and trim" */
static char *
say_chart (const LbWhy *why)
{
  const LbCraneHere *const crane = &why->plan->crane;
  g_autofree char *row = lb_why_say (why, LB_QUANTITY_LENGTH, crane->row_m);
  g_autofree char *level = lb_why_say (why, LB_QUANTITY_LENGTH, crane->level_m);
  const double more_m = crane->radius_m - crane->level_m;
  if (!(more_m > 0))
    return g_strdup_printf (_ ("by its chart’s %s row for %s"), row, level);
  g_autofree char *more = lb_why_say (why, LB_QUANTITY_LENGTH, more_m);
  return g_strdup_printf (_ ("by its chart’s %s row for %s and %s more from list and trim"), row,
                          level, more);
}

static char *
why_list (const LbWhy *why)
{
  if (why->plan->heel_from == LB_HEEL_SET)
    return g_strdup (_ ("as it was read off the device and set for this job"));
  g_autofree char *hook = lb_why_say_figure (why, LB_FIGURE_HOOK_LOAD);
  g_autofree char *radius = lb_why_say_assumed (why, LB_ASSUME_CRANE_RADIUS);
  g_autofree char *most = lb_why_say (why, LB_QUANTITY_ANGLE, why->plan->heel.heel_most_rad);
  if (why->plan->heel.is_under_rule)
    /* Translators: load, radius, angle. */
    return g_strdup_printf (_ ("%s over the side at %s, so much that the lifting rules of 46 CFR "
                               "173.005 apply; deck dry and bottom covered to %s"),
                            hook, radius, most);
  /* Translators: load, radius, angle. */
  return g_strdup_printf (_ ("%s over the side at %s; deck dry and bottom covered to %s; a naval "
                             "architect decides"),
                          hook, radius, most);
}

static char *
list_why_not (const LbWhy *why)
{
  switch (why->plan->heel_from) {
  case LB_HEEL_UNKNOWN:
    return g_strdup (_ ("Neither the list nor the sizes of the barge are set: taken as level."));
  case LB_HEEL_NO_RADIUS:
    return g_strdup (_ ("The radius of the lift is not set."));
  case LB_HEEL_OVER:
    return g_strdup (_ ("By its sizes the barge would not float upright: no lift."));
  case LB_HEEL_NONE:
    return g_strdup (_ ("The crane stands on no barge."));
  case LB_HEEL_AFLOAT: {
    const char *const missing = lb_figure_missing (LB_FIGURE_HOOK_LOAD, why->pile);
    return missing != NULL ? g_strdup (g_dgettext (GETTEXT_PACKAGE, missing)) : NULL;
  }
  case LB_HEEL_SET:
    return NULL;
  }
  g_assert_not_reached ();
}

static char *
why_crane_share (const LbWhy *why)
{
  g_autofree char *hook = lb_why_say_figure (why, LB_FIGURE_HOOK_LOAD);
  g_autofree char *capacity = say_capacity (why);
  if (why->plan->crane.from != LB_CAPACITY_CHART)
    return g_strdup_printf (_ ("%s at the hook, %s by the crane’s chart"), hook, capacity);
  g_autofree char *chart = say_chart (why);
  /* Translators: the last %s is “by its chart’s 40 ft row for 38 ft”. */
  return g_strdup_printf (_ ("%s at the hook, %s %s"), hook, capacity, chart);
}

static char *
why_lengths (const LbWhy *why)
{
  g_autofree char *in_air = lb_why_say_figure (why, LB_FIGURE_MASS_IN_AIR);
  g_autofree char *rigging = lb_why_say_assumed (why, LB_ASSUME_RIGGING_MASS);
  g_autofree char *capacity = say_capacity (why);
  return g_strdup_printf (_ ("%s in air, %s rigging on each, %s by the crane’s chart"), in_air,
                          rigging, capacity);
}

static char *
crane_why_not (const LbWhy *why)
{
  const LbCraneHere *const crane = &why->plan->crane;
  switch (crane->from) {
  case LB_CAPACITY_UNKNOWN:
    return g_strdup (_ ("Neither the crane’s chart nor its capacity at that radius is set."));
  case LB_CAPACITY_NO_RADIUS:
    return g_strdup (_ ("The crane’s chart is there; the radius of the lift is not set."));
  case LB_CAPACITY_NO_HEIGHT:
    return g_strdup (_ ("The barge is not level, and how high the boom tip is is not set."));
  case LB_CAPACITY_LIST_OVER:
    return g_strdup (_ ("List or trim of the barge is over the limit: no lift."));
  case LB_CAPACITY_BEYOND: {
    g_autofree char *radius = lb_why_say (why, LB_QUANTITY_LENGTH, crane->radius_m);
    return g_strdup_printf (_ ("A radius of %s is beyond the crane’s chart: no lift."), radius);
  }
  case LB_CAPACITY_SET:
  case LB_CAPACITY_CHART:
    return isnan (likely (why, LB_FIGURE_HOOK_LOAD))
             ? NULL
             : g_strdup (_ ("The crane cannot lift the rigging and a piece of it at that radius."));
  }
  g_assert_not_reached ();
}

/* --- Drawn whole -------------------------------------------------------------------------- */

static char *
why_whole (const LbWhy *why)
{
  const LbWholePull *const whole = &why->plan->whole;
  g_autofree char *grip = lb_why_say (why, LB_QUANTITY_FORCE, whole->grip_n.likely);
  g_autofree char *depth = lb_why_say (why, LB_QUANTITY_LENGTH, whole->depth_m);
  g_autofree char *weight = say_weight (why, whole->weight_n.likely);
  if (likely (why, LB_FIGURE_WHOLE_PULL) >
      (1 + 1e-9) * (whole->grip_n.likely + whole->weight_n.likely))
    return g_strdup_printf (
      _ ("all of it in air: the ground’s %s over %s and %s as it stands are less"), grip, depth,
      weight);
  return g_strdup_printf (_ ("%s by the ground over %s (API RP 2GEO, half to half as much again) + "
                             "%s as it stands, rigging counted"),
                          grip, depth, weight);
}

static char *
whole_why_not (const LbWhy *why)
{
  const LbWholePull *const whole = &why->plan->whole;
  if (!why->plan->may_come_whole)
    return g_strdup (why->pile->is_to_be_drawn
                       ? _ ("Bars are burned already, or the layers of the ground are not set.")
                       : _ ("It is to be cut: “Removal” among its facts says so."));
  if (!(why->pile->head_m > why->pile->toe_m))
    return g_strdup (_ ("The head on record is not above the toe."));
  if (whole->depth_m < 0)
    return g_strdup (_ ("The toe on record is above the mudline."));
  if (whole->depth_m > whole->known_m) {
    g_autofree char *known = lb_why_say (why, LB_QUANTITY_LENGTH, whole->known_m);
    g_autofree char *depth = lb_why_say (why, LB_QUANTITY_LENGTH, whole->depth_m);
    return g_strdup_printf (_ ("The ground is known to %s below the mudline and the toe is at %s: "
                               "add what lies below."),
                            known, depth);
  }
  return NULL;
}

/* --- Critical lifts ----------------------------------------------------------------------- */

char *
lb_critical_text (const LbCutPlan *plan)
{
  const guint n = (guint) plan->figures[LB_FIGURE_CRITICAL].range.likely;
  if (n == 0)
    return g_strdup (C_ ("critical lift", "no"));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "yes, by %u rule", "yes, by %u rules", n),
                          n);
}

static const struct
{
  const char *words, *rule; /* msgids */
} SHORT[LB_N_CRITICAL_TRIGGERS] = {
  [LB_CRITICAL_SUBMERGED] = { N_ ("under water"), N_ ("EM 385-1-1") },
  [LB_CRITICAL_CAPACITY] = { N_ ("75 % of capacity or more"), N_ ("29 CFR 1926.751") },
  [LB_CRITICAL_CAPACITY_UNKNOWN] = { N_ ("share of capacity not known"), N_ ("common practice") },
  [LB_CRITICAL_CRANES] = { N_ ("more than one crane"), N_ ("29 CFR 1926.751") },
  [LB_CRITICAL_CENTRE] = { N_ ("centre of gravity can change"), N_ ("EM 385-1-1") },
  [LB_CRITICAL_VIEW] = { N_ ("out of the operator’s view"), N_ ("EM 385-1-1") },
};

/* The triggers that hold, each with its rule or without; NULL for none. */
static char *
rules_text (const LbCutPlan *plan, gboolean has_rules)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (int i = 0; i < LB_N_CRITICAL_TRIGGERS; i++) {
    if (!lb_critical_set_has (plan->critical, (LbCriticalTrigger) i))
      continue;
    g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", _ (SHORT[i].words));
    if (has_rules)
      g_string_append_printf (text, " (%s)", _ (SHORT[i].rule));
  }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

char *
lb_critical_rules_text (const LbCutPlan *plan)
{
  return rules_text (plan, FALSE);
}

static char *
why_critical (const LbWhy *why)
{
  char *const rules = rules_text (why->plan, TRUE);
  return rules != NULL
           ? rules
           : g_strdup (
               _ ("by no rule known here; the rigger and the local code may say otherwise"));
}

/* ------------------------------------------------------------------------------------------ */

char *
lb_lift_why (const LbWhy *why, LbFigureId id)
{
  if (id == LB_FIGURE_MASS_IN_WATER)
    return why_mass_in_water (why);
  if (id == LB_FIGURE_MASS_IN_AIR)
    return why_mass_in_air (why);
  if (id == LB_FIGURE_SUCTION)
    return why_suction (why);
  if (id == LB_FIGURE_AWASH)
    return why_awash (why);
  if (id == LB_FIGURE_HOOK_LOAD)
    return why_hook_load (why);
  if (id == LB_FIGURE_SLING)
    return why_sling (why);
  if (id == LB_FIGURE_SLING_SHARE)
    return why_sling_share (why);
  if (id == LB_FIGURE_HEEL)
    return why_list (why);
  if (id == LB_FIGURE_CRANE_SHARE)
    return why_crane_share (why);
  if (id == LB_FIGURE_LENGTHS)
    return why_lengths (why);
  if (id == LB_FIGURE_PICK)
    return why_pick (why);
  if (id == LB_FIGURE_WHOLE_PULL)
    return why_whole (why);
  g_return_val_if_fail (id == LB_FIGURE_CRITICAL, NULL);
  return why_critical (why);
}

char *
lb_lift_why_not (const LbWhy *why, LbFigureId id)
{
  if (id == LB_FIGURE_HEEL)
    return list_why_not (why);
  if (id == LB_FIGURE_CRANE_SHARE || id == LB_FIGURE_LENGTHS)
    return crane_why_not (why);
  if (id == LB_FIGURE_WHOLE_PULL)
    return whole_why_not (why);
  if (id == LB_FIGURE_SUCTION && !why->plan->lies_on_mud)
    return g_strdup (_ ("It is taken to lie on nothing that holds it."));
  if (id == LB_FIGURE_SLING_SHARE && !(why->assumptions->value[LB_ASSUME_SLING_RATING] > 0))
    return g_strdup (_ ("What the sling is rated for is not set."));
  return NULL;
}
