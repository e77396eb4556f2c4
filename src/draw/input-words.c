/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a figure rests on, an input a line.
 *
 * A value that is taken because nobody gave one is said to be that: the usual cover of the bars, a
 * cut elevation from the mudline, a ring where no places are on record. */
#include "draw/input-words.h"

#include "draw/burn-words.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/pile-bars.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  const LbVoice *voice;
  const LbPile *pile;
  const LbCutBasis *basis;
  const LbCutPlan *plan;
} Page;

static const char *
translated (const char *msgid)
{
  return g_dgettext (GETTEXT_PACKAGE, msgid);
}

char *
lb_assumption_note_text (const LbVoice *voice, const LbAssumptions *assumptions, LbAssumptionId id)
{
  const LbAssumption *assumption = lb_assumption (id);
  const char *tag = translated (lb_tag_name (lb_assumptions_tag (assumptions, id)));

  if (!assumptions->is_own[id])
    return g_strdup_printf ("%s · %s", tag, translated (assumption->source));
  g_autofree char *usual = lb_assumed_text (voice, id, assumption->value);
  /* Translators: “set for this job; the default is 25 s/in²” */
  return g_strdup_printf (_ ("%s; the default is %s"), tag, usual);
}

/* --- Facts -------------------------------------------------------------------------------- */

static gboolean
is_elevation (LbFact fact)
{
  return fact == LB_FACT_HEAD || fact == LB_FACT_CUT || fact == LB_FACT_MUDLINE ||
         fact == LB_FACT_TOE;
}

/* What is taken where nothing is on record; NULL when something is. */
static char *
usual_text (const Page *page, LbFact fact)
{
  const LbPile *pile = page->pile;

  if (fact == LB_FACT_BAR && pile->bar == NULL)
    return lb_bar_span_text (page->plan);
  if (fact == LB_FACT_SHAPE && !lb_pile_says (pile, fact))
    return g_strdup (_ ("square to round"));
  if (fact == LB_FACT_BATTER && !lb_pile_says (pile, fact)) {
    g_autofree char *most = lb_batter_to_text (LB_BATTER_MOST);
    /* Translators: a batter: “plumb to 1:3”. */
    return g_strdup_printf (_ ("plumb to %s"), most);
  }
  if (fact == LB_FACT_BAR_INSET && isnan (pile->bar_inset_m))
    return lb_voice_quantity (page->voice, LB_QUANTITY_SIZE, lb_pile_bar_inset (pile));
  if (fact == LB_FACT_CUT && isnan (pile->cut_m))
    return lb_voice_elevation (page->voice, lb_pile_cut_elevation (pile, page->basis->assumptions));
  return NULL;
}

static char *
fact_value (const Page *page, LbFact fact, gboolean is_missing)
{
  g_autofree char *kept = lb_pile_get (page->pile, fact, LB_UNITS_METRIC);
  char *usual = is_missing ? NULL : usual_text (page, fact);

  if (usual != NULL)
    return usual;
  if (*kept != '\0' && is_elevation (fact))
    return lb_voice_elevation (page->voice, fact == LB_FACT_HEAD  ? page->pile->head_m
                                            : fact == LB_FACT_CUT ? page->pile->cut_m
                                            : fact == LB_FACT_TOE ? page->pile->toe_m
                                                                  : page->pile->mudline_m);
  if (*kept == '\0' && fact == LB_FACT_PINNED)
    return g_strdup (C_ ("bars kept to the end", "none"));
  if (*kept == '\0' && fact == LB_FACT_ORDER)
    return g_strdup (_ ("the one that the figures favour"));
  return lb_fact_value_text (page->voice, fact, kept);
}

static const char *
fact_note (const Page *page, LbFact fact)
{
  if (fact == LB_FACT_BAR_INSET && isnan (page->pile->bar_inset_m))
    return _ ("not on record; usual cover, common practice");
  if (fact == LB_FACT_CUT && isnan (page->pile->cut_m))
    return _ ("not on record; taken from the mudline");
  if (fact == LB_FACT_BAR && page->pile->bar == NULL && page->plan->are_bars_own)
    return _ ("not on record; sizes of this job’s other piles");
  if (fact == LB_FACT_BAR && page->pile->bar != NULL)
    return translated (page->pile->bar->source);
  if (fact == LB_FACT_BAR || !lb_pile_says (page->pile, fact))
    return _ ("not on record; common practice");
  return _ ("on record for this pile");
}

static void
say_fact (const Page *page, LbFigureId id, LbFact fact, LbInputWords *words)
{
  const gboolean is_needed = lb_figure_lacks (id, fact, page->pile);

  words->is_missing = is_needed || lb_figure_widens (id, fact, page->pile);
  words->title = g_strdup (translated (lb_fact_title (fact)));
  words->value = fact_value (page, fact, is_needed);
  words->note = g_strdup (is_needed ? _ ("to be given among the facts of the pile")
                                    : fact_note (page, fact));
}

static void
say_burned (const Page *page, LbInputWords *words)
{
  const double left = page->plan->figures[LB_FIGURE_BARS_LEFT].range.likely;
  const guint n = isnan (left) ? 0 : page->pile->n_bars - (guint) left;

  const guint n_gone = lb_bar_set_count (page->plan->gone);

  words->title = g_strdup (_ ("Bars burned so far"));
  words->value = n_gone == 0 ? g_strdup_printf ("%u", n)
                             : g_strdup_printf (_ ("%u, and %u found gone"), n - n_gone, n_gone);
  words->note = g_strdup (_ ("the job’s record"));
}

/* --- What was learned --------------------------------------------------------------------- */

static char *
shifts_text (guint n)
{
  if (n == 0)
    return g_strdup (_ ("nothing learned yet: the stated values count"));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "learned from %u shift of this job",
                                       "learned from %u shifts of this job", n),
                          n);
}

static char *
use_text (const Page *page, const LbBurnUse *use, LbQuantity quantity, double value)
{
  return use->n_shifts == 0 ? g_strdup ("–") : lb_voice_quantity (page->voice, quantity, value);
}

static void
say_lesson (const Page *page, LbLesson lesson, LbInputWords *words)
{
  const LbBurnModel *model = page->basis->burn;
  const LbBurnUse *use = NULL;

  if (model == NULL) {
    words->title = g_strdup (_ ("The job’s own dives"));
    words->value = g_strdup ("–");
    words->note = shifts_text (0);
    return;
  }
  switch (lesson) {
  case LB_LESSON_RODS:
    use = &model->rods;
    words->title = g_strdup (_ ("Trigger time in one rod, this job’s"));
    words->value = use_text (page, use, LB_QUANTITY_SHORT_TIME, 1 / use->rate.mean);
    break;
  case LB_LESSON_OXYGEN:
    use = &model->oxygen;
    words->title = g_strdup (_ ("Oxygen flow at the surface, this job’s"));
    words->value = use_text (page, use, LB_QUANTITY_GAS_FLOW, use->rate.mean);
    break;
  case LB_LESSON_RESTRIKE:
    use = &model->restrike;
    words->title = g_strdup (_ ("Time of a strike, this job’s"));
    words->value = use_text (page, use, LB_QUANTITY_SHORT_TIME, use->rate.mean);
    break;
  case LB_LESSON_TRIGGER:
  default: {
    const LbRange rate = lb_burn_model_rate (model, page->pile->bar, page->plan->visibility);

    words->title = g_strdup (_ ("Burning rate, this job’s"));
    words->value = model->n_samples == 0 ? g_strdup ("–") : lb_burn_rate_text (page->voice, &rate);
    words->note = lb_burn_basis_text (&page->plan->burn_basis);
  }
  }
  if (use != NULL)
    words->note = shifts_text (use->n_shifts);
}

static void
say_visibility (const Page *page, LbInputWords *words)
{
  words->title = g_strdup (_ ("Visibility"));
  words->value = g_strdup (translated (lb_visibility_name (page->plan->visibility)));
  words->note = g_strdup (page->basis->is_visibility_chosen ? _ ("chosen for this job")
                                                            : _ ("as it was said last"));
}

/* --- The rest ----------------------------------------------------------------------------- */

static void
say_assumption (const Page *page, LbAssumptionId id, LbInputWords *words)
{
  const LbAssumption *assumption = lb_assumption (id);
  const double value = page->basis->assumptions->value[id];
  /* These are 0 as long as nobody has said anything. */
  const gboolean is_unset = value <= 0 &&
                            (id == LB_ASSUME_YEAR_BUILT || id == LB_ASSUME_STEEL_YIELD ||
                             id == LB_ASSUME_CRANE_CAPACITY || id == LB_ASSUME_CRANE_RADIUS ||
                             (id >= LB_ASSUME_BARGE_LENGTH && id <= LB_ASSUME_BARGE_GRAVITY) ||
                             id == LB_ASSUME_TIP_HEIGHT || id == LB_ASSUME_SLING_RATING ||
                             id == LB_ASSUME_HOSE_LOSS);

  words->title = g_strdup (translated (assumption->title));
  words->value = is_unset ? g_strdup (C_ ("assumption", "not set"))
                          : lb_assumed_text (page->voice, id, value);
  words->note = lb_assumption_is_learned (page->plan, id)
                  ? g_strdup (
                      _ ("where the learning began; counts little beside this job’s record"))
                  : lb_assumption_note_text (page->voice, page->basis->assumptions, id);
}

static void
say_figure (const Page *page, LbFigureId id, LbInputWords *words)
{
  g_autofree char *range = lb_figure_range_text (page->voice, page->plan, id);
  const char *missing = lb_figure_missing (id, page->pile);
  const LbFigure *figure = &page->plan->figures[id];

  words->title = g_strdup (translated (lb_figure_title (id)));
  words->value = lb_figure_text (page->voice, page->plan, id);
  if (missing != NULL)
    words->note = g_strdup (translated (missing));
  else if (range != NULL)
    words->note = g_strdup_printf ("%s · %s", range, translated (lb_tag_name (figure->tag)));
  else
    words->note = g_strdup (translated (lb_tag_name (figure->tag)));
  words->is_missing = missing != NULL;
}

static void
say_dive_table (const Page *page, LbInputWords *words)
{
  const gboolean is_own = page->basis->table != NULL;

  words->title = g_strdup (_ ("No-stop table"));
  words->value = g_strdup (is_own ? _ ("the supervisor’s own") : _ ("the U.S. Navy’s"));
  words->note = g_strdup (is_own ? _ ("read for this job")
                                 : _ ("U.S. Navy Diving Manual, revision 7, table 9-7"));
}

static void
say_crane_chart (const Page *page, LbInputWords *words)
{
  const LbCapacityFrom from = page->basis->crane.from;

  words->title = g_strdup (_ ("The crane’s chart"));
  words->value = g_strdup (from == LB_CAPACITY_UNKNOWN || from == LB_CAPACITY_SET
                             ? _ ("none that counts here")
                             : _ ("the crane’s own"));
  words->note = g_strdup (_ ("29 CFR 1926.1437(n): reduced for this barge"));
}

static void
say_ground (const Page *page, LbInputWords *words)
{
  const LbGround *ground = page->basis->ground;

  words->title = g_strdup (_ ("Layers of the ground"));
  words->value = ground == NULL ? g_strdup (_ ("not known"))
                                : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u layer",
                                                                "%u layers", ground->n_layers),
                                                   ground->n_layers);
  words->note = g_strdup (_ ("the boring nearest to the pile; an engineer says what it means"));
}

void
lb_input_words (const LbVoice *voice,
                const LbPile *pile,
                const LbCutBasis *basis,
                const LbCutPlan *plan,
                LbFigureId id,
                const LbInput *input,
                LbInputWords *out_words)
{
  const Page page = { .voice = voice, .pile = pile, .basis = basis, .plan = plan };

  *out_words = (LbInputWords){ 0 };
  switch (input->kind) {
  case LB_INPUT_FACT:
    say_fact (&page, id, (LbFact) input->id, out_words);
    return;
  case LB_INPUT_BURNED:
    say_burned (&page, out_words);
    return;
  case LB_INPUT_ASSUMPTION:
    say_assumption (&page, (LbAssumptionId) input->id, out_words);
    return;
  case LB_INPUT_FIGURE:
    say_figure (&page, (LbFigureId) input->id, out_words);
    return;
  case LB_INPUT_LESSON:
    say_lesson (&page, (LbLesson) input->id, out_words);
    return;
  case LB_INPUT_VISIBILITY:
    say_visibility (&page, out_words);
    return;
  case LB_INPUT_DIVE_TABLE:
    say_dive_table (&page, out_words);
    return;
  case LB_INPUT_CRANE_CHART:
    say_crane_chart (&page, out_words);
    return;
  case LB_INPUT_GROUND:
    say_ground (&page, out_words);
    return;
  }
  g_assert_not_reached ();
}

void
lb_input_words_clear (LbInputWords *words)
{
  g_clear_pointer (&words->title, g_free);
  g_clear_pointer (&words->value, g_free);
  g_clear_pointer (&words->note, g_free);
}

char *
lb_pile_lacks_text (const LbPile *pile)
{
  const guint32 lacks = lb_pile_lacks (pile);
  g_autoptr (GPtrArray) titles = g_ptr_array_new ();

  if (lacks == 0)
    return NULL;
  for (LbFact fact = 0; fact < LB_N_FACTS; fact++) {
    if ((lacks >> fact) & 1)
      g_ptr_array_add (titles, (gpointer) translated (lb_fact_title (fact)));
  }
  g_ptr_array_add (titles, NULL);
  return g_strjoinv (", ", (char **) titles->pdata);
}
