/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cautions in words: those of the table, translated, with the pile's own figures and sides in
 * their blanks. Which of them hold for a cut is told by trade/plan-cautions. */
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/lead-drop.h"
#include "trade/plan-cautions.h"
#include "trade/sling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What the blanks are filled from. */
typedef struct
{
  const LbVoice *voice;
  const LbPile *pile;
  const LbAssumptions *assumptions;
  const LbCutPlan *plan;
} Cut;

static char *
say (const Cut *cut, LbQuantity quantity, double si)
{
  return isinf (si) ? g_strdup (C_ ("figure", "no limit"))
                    : lb_voice_quantity (cut->voice, quantity, si);
}

static char *
say_figure (const Cut *cut, LbFigureId id)
{
  return lb_figure_text (cut->voice, cut->plan, id);
}

/* The slow, heavy or costly end of the range. */
static char *
say_most (const Cut *cut, LbFigureId id)
{
  return say (cut, lb_figure_quantity (id), cut->plan->figures[id].range.high);
}

static char *
say_assumed (const Cut *cut, LbAssumptionId id)
{
  return lb_assumed_text (cut->voice, id, cut->assumptions->value[id]);
}

static char *
say_side (LbCompass compass)
{
  return g_strdup (g_dgettext (GETTEXT_PACKAGE, lb_compass_name (compass)));
}

/* What a leg may bear in its hitch. */
static char *
say_rating (const Cut *cut)
{
  const double *const value = cut->assumptions->value;

  return say (cut, LB_QUANTITY_MASS,
              value[LB_ASSUME_SLING_RATING] * lb_choker_share (value[LB_ASSUME_CHOKE_ANGLE]));
}

static char *
say_list (const Cut *cut)
{
  const double list_rad = cut->plan->figures[LB_FIGURE_HEEL].range.high;

  return say (cut, LB_QUANTITY_ANGLE, fmax (list_rad, cut->assumptions->value[LB_ASSUME_TRIM]));
}

/* To be freed. */
static char *
value_of (const Cut *cut, LbCautionBlank blank)
{
  switch (blank) {
  case LB_BLANK_REGULATOR:
    return say_figure (cut, LB_FIGURE_REGULATOR);
  case LB_BLANK_DEPTH:
    return say_figure (cut, LB_FIGURE_CUT_DEPTH);
  case LB_BLANK_LEAN:
    return say_figure (cut, LB_FIGURE_LEAN);
  case LB_BLANK_LEAN_SIDE:
    return say_side (cut->plan->slag_side);
  case LB_BLANK_LEAD_SIDE:
    return say_side (cut->plan->lead_side);
  case LB_BLANK_VOID:
    return say (cut, LB_QUANTITY_SIZE, cut->pile->outline.void_m);
  case LB_BLANK_BAR:
    return g_strdup_printf ("%u", lb_plan_hook_bar (cut->plan) + 1);
  case LB_BLANK_BURN:
    return say_figure (cut, LB_FIGURE_BURN);
  case LB_BLANK_BURN_MOST:
    return say_most (cut, LB_FIGURE_BURN);
  case LB_BLANK_LIMIT:
    return say (cut, LB_QUANTITY_TIME, lb_plan_longest_dive (cut->plan, cut->assumptions));
  case LB_BLANK_DIVES:
    return say_figure (cut, LB_FIGURE_DIVES);
  case LB_BLANK_DIVES_MOST:
    return say_most (cut, LB_FIGURE_DIVES);
  case LB_BLANK_CURRENT:
    return say_assumed (cut, LB_ASSUME_CURRENT);
  case LB_BLANK_CURRENT_LIMIT:
    return say_assumed (cut, LB_ASSUME_CURRENT_LIMIT);
  case LB_BLANK_LEAD_DROP:
    return say_figure (cut, LB_FIGURE_LEAD_DROP);
  case LB_BLANK_LEAD_DROP_MOST:
    return say (cut, LB_QUANTITY_VOLTAGE, LB_LEAD_DROP_MOST);
  case LB_BLANK_RESIDUAL:
    return say_assumed (cut, LB_ASSUME_CYLINDER_RESIDUAL);
  case LB_BLANK_LEAD_LENGTH:
    return say_assumed (cut, LB_ASSUME_LEAD_LENGTH);
  case LB_BLANK_LOAD:
    return say_figure (cut, LB_FIGURE_HOOK_LOAD);
  case LB_BLANK_LOAD_MOST:
    return say_most (cut, LB_FIGURE_HOOK_LOAD);
  case LB_BLANK_ANGLE:
    return say_assumed (cut, LB_ASSUME_SLING_ANGLE);
  case LB_BLANK_TENSION:
    return say_most (cut, LB_FIGURE_SLING);
  case LB_BLANK_CAPACITY:
    return say (cut, LB_QUANTITY_FORCE, cut->plan->crane.capacity_n);
  case LB_BLANK_SHARE:
    return say_figure (cut, LB_FIGURE_CRANE_SHARE);
  case LB_BLANK_SHARE_MOST:
    return say_most (cut, LB_FIGURE_CRANE_SHARE);
  case LB_BLANK_RADIUS:
    return say (cut, LB_QUANTITY_LENGTH, cut->plan->crane.radius_m);
  case LB_BLANK_LIST:
    return say_list (cut);
  case LB_BLANK_LIST_LIMIT:
    return say_assumed (cut, LB_ASSUME_LIST_LIMIT);
  case LB_BLANK_RATING:
    return say_rating (cut);
  case LB_BLANK_GRIP:
    return say (cut, LB_QUANTITY_FORCE, cut->plan->whole.grip_n.high);
  case LB_BLANK_SUCTION:
    return say_most (cut, LB_FIGURE_SUCTION);
  }
  g_assert_not_reached ();
}

char *
lb_caution_text (const LbVoice *voice,
                 const LbPile *pile,
                 const LbAssumptions *assumptions,
                 const LbCutPlan *plan,
                 gsize i)
{
  g_return_val_if_fail (i < plan->n_cautions, NULL);

  const LbCautionRow *row = plan->cautions[i];
  const Cut cut = { .voice = voice, .pile = pile, .assumptions = assumptions, .plan = plan };
  char *values[LB_N_CAUTION_BLANKS] = { NULL };

  for (guint blank = 0; blank < LB_N_CAUTION_BLANKS; blank++)
    if (lb_caution_when_knows (row->when, (LbCautionBlank) blank))
      values[blank] = value_of (&cut, (LbCautionBlank) blank);

  char *const text = lb_caution_words_fill (g_dgettext (GETTEXT_PACKAGE, row->words),
                                            (const char *const *) values);

  for (guint blank = 0; blank < LB_N_CAUTION_BLANKS; blank++)
    g_free (values[blank]);
  return text;
}

const char *
lb_caution_source_text (const LbCutPlan *plan, gsize i)
{
  g_return_val_if_fail (i < plan->n_cautions, NULL);

  return g_dgettext (GETTEXT_PACKAGE, plan->cautions[i]->source);
}
