/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture-text.h"
#include "trade/figure-basis.h"

G_BEGIN_DECLS

/* One input of a figure in words, translated, in the voice's units. */
typedef struct
{
  char *title; /* "Head elevation" */
  char *value; /* "+10 ft"; "not known" */
  char *note;  /* how far it can be trusted and whose word it is: "common practice · About …" */
  gboolean is_missing; /* the figure cannot do without it, or spans what it may well be */
} LbInputWords;

/* @basis and @plan: of the pile that @id is a figure of */
void lb_input_words (const LbVoice *voice,
                     const LbPile *pile,
                     const LbCutBasis *basis,
                     const LbCutPlan *plan,
                     LbFigureId id,
                     const LbInput *input,
                     LbInputWords *out_words);
void lb_input_words_clear (LbInputWords *words);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LbInputWords, lb_input_words_clear)

/* What is still to be found out for the cut plan of the pile: "Head elevation, Width"; %NULL for
 * nothing; to be freed. */
char *lb_pile_lacks_text (const LbPile *pile);

/* An assumption's tag and source, or for the job's own the default: "common practice · About 2.5
 * bars #8 to a rod"; to be freed. */
char *lb_assumption_note_text (const LbVoice *voice,
                               const LbAssumptions *assumptions,
                               LbAssumptionId id);

G_END_DECLS
