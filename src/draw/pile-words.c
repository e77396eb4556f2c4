/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/plan-words.h"
#include "draw/voice-text.h"
#include "trade/pile-taper.h"

#include <glib/gi18n-lib.h>

const char *
lb_shape_text (const LbPile *pile)
{
  if (!lb_pile_says (pile, LB_FACT_SHAPE))
    /* Translators: in place of “octagonal”: “16 in of unknown shape”. */
    return _ ("of unknown shape");
  return g_dgettext (GETTEXT_PACKAGE, lb_shape_name (pile->outline.shape));
}

const char *
lb_lean_side_text (const LbPile *pile)
{
  return g_dgettext (GETTEXT_PACKAGE, lb_compass_name (lb_compass_nearest (pile->bearing_rad)));
}

static char *
even_outline_text (const LbVoice *voice, const LbPile *pile)
{
  const LbOutline *const outline = &pile->outline;
  const char *const shape = lb_shape_text (pile);
  if (outline->width_m <= 0)
    return g_strdup_printf (_ ("%s, width not known"), shape);
  g_autofree char *width = lb_voice_quantity (voice, LB_QUANTITY_SIZE, outline->width_m);
  if (outline->void_m <= 0)
    return g_strdup_printf (C_ ("width and shape", "%s %s"), width, shape);
  g_autofree char *hole = lb_voice_quantity (voice, LB_QUANTITY_SIZE, outline->void_m);
  return g_strdup_printf (_ ("%s %s with a %s void"), width, shape, hole);
}

static char *
outline_text (const LbVoice *voice, const LbPile *pile)
{
  char *const head = even_outline_text (voice, pile);
  if (!lb_pile_is_tapered (pile))
    return head;
  g_autofree char *tip = lb_voice_quantity (voice, LB_QUANTITY_SIZE, pile->tip_width_m);
  /* Translators: “16 in octagonal tapering to 8 in”. */
  char *const text = g_strdup_printf (_ ("%s tapering to %s"), head, tip);
  g_free (head);
  return text;
}

static char *
bars_text (const LbPile *pile)
{
  if (pile->bar == NULL && pile->n_bars == 0)
    return g_strdup (_ ("bars not known"));
  if (pile->bar == NULL)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u bar of a size not known",
                                         "%u bars of a size not known", pile->n_bars),
                            pile->n_bars);
  if (pile->n_bars == 0)
    return g_strdup_printf (_ ("%s, how many is not known"), pile->bar->name);
  if (pile->bar->kind == LB_BAR_STRAND)
    return g_strdup_printf (_ ("%u × %s"), pile->n_bars, pile->bar->name);
  return g_strdup_printf (
    g_dngettext (GETTEXT_PACKAGE, "%u × %s bar", "%u × %s bars", pile->n_bars), pile->n_bars,
    pile->bar->name);
}

char *
lb_bar_layout_words (const LbVoice *voice, const LbBarLayout *layout)
{
  switch (layout->kind) {
  case LB_BAR_LAYOUT_USUAL:
    return g_strdup (_ ("in the usual ring"));
  case LB_BAR_LAYOUT_ON_FACES:
    return g_strdup_printf (_ ("%u on each face, the corners counted"), layout->n_on_face);
  case LB_BAR_LAYOUT_BETWEEN_CORNERS:
    return g_strdup_printf (_ ("%u on each face, none in a corner"), layout->n_on_face);
  case LB_BAR_LAYOUT_TWO_RINGS: {
    g_autofree char *inset = lb_voice_quantity (voice, LB_QUANTITY_SIZE, layout->inner_inset_m);
    /* Translators: bars in two rings: “8 in an outer ring, 4 in one 7 in behind the face” */
    return g_strdup_printf (_ ("%u in an outer ring, %u in one %s behind the face"),
                            layout->n_outer, layout->n_inner, inset);
  }
  case LB_BAR_LAYOUT_GIVEN:
    return g_strdup (_ ("each at a place of its own"));
  }
  g_return_val_if_reached (NULL);
}

/* With how they stand, unless it is as usual. */
static char *
placed_bars_text (const LbVoice *voice, const LbPile *pile)
{
  char *const bars = bars_text (pile);
  LbBarLayout layout;
  if (!lb_bar_layout_from_text (pile->bar_places, LB_UNITS_METRIC, &layout, NULL) ||
      layout.kind == LB_BAR_LAYOUT_USUAL)
    return bars;
  g_autofree char *places = lb_bar_layout_words (voice, &layout);
  /* Translators: bars and how they stand: “8 × #8 bars (3 on each face, the corners counted)” */
  char *const text = g_strdup_printf (C_ ("bars", "%s (%s)"), bars, places);
  g_free (bars);
  return text;
}

static char *
lean_text (const LbPile *pile)
{
  if (!lb_pile_says (pile, LB_FACT_BATTER))
    return g_strdup (_ ("lean not known"));
  if (pile->batter <= 0)
    return g_strdup (_ ("plumb"));
  g_autofree char *batter = lb_batter_to_text (pile->batter);
  if (!lb_pile_says (pile, LB_FACT_BEARING))
    /* Translators: a batter: “leans 1:6, which way is not known”. */
    return g_strdup_printf (_ ("leans %s, which way is not known"), batter);
  return g_strdup_printf (_ ("leans %s to the %s"), batter, lb_lean_side_text (pile));
}

char *
lb_pile_text (const LbVoice *voice, const LbPile *pile)
{
  g_autofree char *outline = outline_text (voice, pile);
  g_autofree char *bars = placed_bars_text (voice, pile);
  g_autofree char *lean = lean_text (pile);
  /* Translators: outline, bars, lean: “16 in octagonal, 8 × #8 bars, leans 1:4 to the south”. */
  char *const text = g_strdup_printf (C_ ("pile", "%s, %s, %s"), outline, bars, lean);
  if (!pile->is_to_be_drawn)
    return text;
  g_autofree char *facts = text;
  /* Translators: what the pile is, and that it is meant to be drawn whole, not cut. */
  return g_strdup_printf (C_ ("pile", "%s, to be drawn whole"), facts);
}

/* What has become of the pile, without its bars. */
static const char *
state_name (const LbPileState *state)
{
  if (state->flags & LB_FLAG_STUB_LEFT)
    return _ ("broke: stub left");
  if (state->step == LB_STEP_PULLED && state->is_drawn)
    return _ ("drawn whole");
  if (state->step == LB_STEP_RIGGED && (state->done & LB_STEP_BIT (LB_STEP_SEVERED)))
    return _ ("severed and rigged");
  return g_dgettext (GETTEXT_PACKAGE, lb_step_name (state->step));
}

/* Whether bars still hold the pile, or the record says that they do. */
static gboolean
bars_are_news (const LbPile *pile, const LbPileState *state)
{
  if (pile->n_bars == 0 || state->step == LB_STEP_PULLED)
    return FALSE;
  if (state->done & LB_STEP_BIT (LB_STEP_SEVERED))
    return (state->flags & LB_FLAG_SEVERED_WITH_BARS) != 0;
  return state->step != LB_STEP_STANDING || state->n_left < pile->n_bars;
}

char *
lb_pile_state_text (const LbPile *pile, const LbPileState *state)
{
  const char *const name = state_name (state);
  if (!bars_are_news (pile, state))
    return g_strdup (name);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s · %u of %u bar left",
                                       "%s · %u of %u bars left", pile->n_bars),
                          name, state->n_left, pile->n_bars);
}

char *
lb_ordinal_text (guint n)
{
  const gboolean is_teen = n % 100 / 10 == 1;
  /* Translators: “1st bar”, “2nd bar”, “3rd bar”, “4th bar” to burn, kept short: they stand beside
   * the bars of a drawing. Numbers that end in 1, 2, 3, but for 11, 12, 13; and the others. */
  if (n % 10 == 1 && !is_teen)
    return g_strdup_printf (C_ ("ordinal", "%ust"), n);
  if (n % 10 == 2 && !is_teen)
    return g_strdup_printf (C_ ("ordinal", "%und"), n);
  if (n % 10 == 3 && !is_teen)
    return g_strdup_printf (C_ ("ordinal", "%urd"), n);
  return g_strdup_printf (C_ ("ordinal", "%uth"), n);
}
