/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture-text.h"
#include "trade/burn-left.h"

G_BEGIN_DECLS

/* Burning and what it taught, in words, translated, in the voice's units. All returned strings are
 * to be freed. */

/* "24.1 s/in² (21.9–27.0)"; the likely value alone when the range is no wider. */
char *lb_burn_rate_text (const LbVoice *voice, const LbRange *rate);

/* What the rates rest on: "214 bars in 40 samples; 3 set aside", or that they are the stated
 * default. */
char *lb_burn_basis_text (const LbBurnBasis *basis);

/* What is left for the whole job: "107 piles, 856 bars: 62 h at the piles (51–76), 1060 rods
 * (900–1240), 14,300 cu ft of oxygen (…), 65 cylinders (…)", and what is not in it. */
char *lb_burn_left_text (const LbVoice *voice, const LbBurnLeft *left, const LbBurnNeed *need);

/* What is odd about a sample, or "": "gear fault: counts for half", "far from the rest", "set aside:
 * jacketed pile". */
char *lb_burn_sample_remark (const LbBurnModel *model, const LbBurnSample *sample);

G_END_DECLS
