/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/fold.h"
#include "draw/picture-text.h"
#include "trade/bar-layout.h"
#include "trade/cut-plan.h"
#include "trade/pile-hold.h"

G_BEGIN_DECLS

/* The cut plan in words, translated, in the voice's units: the same on the sheet, the card and in
 * the shell. All returned strings are to be freed. */

/* "26 min", "112 psi", "9,850 lb"; "–" when not known. */
char *lb_figure_text (const LbVoice *voice, const LbCutPlan *plan, LbFigureId id);

/* "18–37 min"; NULL when the range is no wider than the figure. */
char *lb_figure_range_text (const LbVoice *voice, const LbCutPlan *plan, LbFigureId id);

/* A number the plan takes for granted, or the word that was chosen: "60°", "mud". */
char *lb_assumed_text (const LbVoice *voice, LbAssumptionId id, double si);

/* Why: "90 psi over bottom + 14 psi for 31 ft + 20 psi hose", or what is missing. */
char *lb_figure_reason_text (const LbVoice *voice,
                             const LbPile *pile,
                             const LbAssumptions *assumptions,
                             const LbCutPlan *plan,
                             LbFigureId id);

/* The plan's caution @i with its figures: "Umbilical and leads to the north: slag falls south …" */
char *lb_caution_text (const LbVoice *voice,
                       const LbPile *pile,
                       const LbAssumptions *assumptions,
                       const LbCutPlan *plan,
                       gsize i);

/* What makes the lift a critical one: "under water; swings or drains as it comes free"; NULL for
 * nothing. */
char *lb_critical_rules_text (const LbCutPlan *plan);

/* The rule that it comes from, or "common practice"; not to be freed. */
const char *lb_caution_source_text (const LbCutPlan *plan, gsize i);

/* After @n_done steps of the plan's order: "Hook tension on before bar 7, the 4th" when the next one
 * needs the hook first; else NULL. */
char *lb_hold_point_text (const LbCutPlan *plan, gsize n_done);

/* And what the bars left then bear: "3 of 8 burned. Bar 5 bears most: 64% of what it may." */
char *lb_step_text (const LbVoice *voice,
                    const LbAssumptions *assumptions,
                    const LbCutPlan *plan,
                    const LbBarShares *shares,
                    gsize n_done);

/* "16 in octagonal, 8 × #8 bars, leans 1:4 to the south" */
char *lb_pile_text (const LbVoice *voice, const LbPile *pile);

/* "octagonal", "of unknown shape"; and where it leans to, "south", when that is known. Not to be freed. */
const char *lb_shape_text (const LbPile *pile);
const char *lb_lean_side_text (const LbPile *pile);

/* "#8 to #11": what bars of a size not known may well be. */
char *lb_bar_span_text (const LbCutPlan *plan);

/* "8 in an outer ring, 4 in one 7 in behind the face" */
char *lb_bar_layout_words (const LbVoice *voice, const LbBarLayout *layout);

/* "cleaned · 5 of 8 bars left" */
char *lb_pile_state_text (const LbPile *pile, const LbPileState *state);

/* A fact as the file keeps it, in metric: "−22 ft", "8", "1:6"; "not known" for none. */
char *lb_fact_value_text (const LbVoice *voice, LbFact fact, const char *kept);

/* One line of a pile's history: "Bars 1, 2 burned". */
char *lb_entry_text (const LbVoice *voice,
                     const LbLedger *ledger,
                     const LbFold *fold,
                     const LbEntry *entry);

/* Whether an earlier entry of the same act says it too: the checks before a dive are one line. */
gboolean lb_entry_is_told_before (const LbEntry *entry);

/* Bars by their numbers, from 1: "1, 2, 4–8". */
char *lb_bar_numbers_text (LbBarSet bars);

/* "1st", "2nd", "11th": when a bar is burned; to be freed. */
char *lb_ordinal_text (guint n);

/* "Wind", "Sea" …, translated; a condition not known is returned as it is. */
const char *lb_condition_name (const char *what);

/* The name of a charge and of a detail for people; @what itself when it is none of ours. */
const char *lb_charge_name (const char *what);
const char *lb_detail_name (const char *what);

/* From left surface to left bottom in whole minutes, rounded up; NAN when not said. */
double lb_dive_bottom_time (const LbEntry *dive);

/* "07:10" by the local clock; "–" when not said. */
char *lb_clock_text (gint64 us);

/* Day and time of day, in the local time zone. */
char *lb_moment_text (gint64 us);

/* "Tue 14 Jul 2026" in the reader's language; and ISO for files. */
char *lb_day_text (guint32 julian_day);
char *lb_day_iso (guint32 julian_day);

/* "Tue 14 Jul 2026, night". */
char *lb_shift_text (const LbShift *shift);

/* As g_date_time_format() reads @format; "–" for what is no day. */
char *lb_day_format (guint32 julian_day, const char *format);

G_END_DECLS
