/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A box barge that carries the crane: how far the hook heels it. A first look for the crew; a barge's
 * stability is a naval architect's to say. */
typedef struct
{
  double length_m, beam_m;
  double draft_m;     /* with the load on the hook */
  double freeboard_m; /* to the deck edge */
  double gravity_m;   /* centre of gravity above the bottom, the load counted at the boom tip */
  double water_kg_per_m3;
} LbBarge;

typedef struct
{
  double displacement_kg;
  double metacentric_m;   /* GM */
  double heel_rad;        /* of the moment given */
  double heel_most_rad;   /* deck dry, bottom covered, and 5°: 29 CFR 1926.1437(n)(3), (4) */
  double rule_moment_nm;  /* from here the lifting rules of 46 CFR 173.005 apply */
  gboolean is_over_heel;  /* past @heel_most_rad */
  gboolean is_under_rule; /* at or past @rule_moment_nm */
} LbBargeHeel;

/**
 * lb_barge_heel:
 * @hook_n: load on the hook
 * @arm_m: of the hook from the middle of the barge, across it
 * @out_heel: (out): untouched on failure
 *
 * tan φ = W r / (Δ g GM), small angles; GM = d/2 + B²/12d − KG. Refuses sizes that make no sense and
 * a barge that would not float upright.
 */
gboolean lb_barge_heel (const LbBarge *barge,
                        double hook_n,
                        double arm_m,
                        LbBargeHeel *out_heel,
                        GError **error);

G_END_DECLS
