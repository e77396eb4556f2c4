/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The words beside the bars of a section: numbers where the discs are too small for them, when each is
 * burned, and what it bears.
 *
 *  1. No two words lie over each other, and none over a bar.
 *  2. Where not all numbers have room, those stand that a reader counts from: the next bar, the one
 *     that the hook comes on before, the first, and every fifth.
 *  3. Ordinals are all there, or those of the next bar and of the hook's alone: a few of many would
 *     say an order that is none.
 */
#include "draw/plan-words.h"
#include "draw/section-private.h"
#include "draw/voice-text.h"

#include <math.h>

/* pt or px: read at arm's length (common practice). */
static const double SIZE = 8.5;

LbVoice
lb_section_plain_voice (const LbVoice *voice)
{
  LbVoice plain = *voice;
  plain.scale = 1;
  return plain;
}

/* Whether the bar holds until the hook does. */
gboolean
lb_section_is_hold_bar (const LbCutPlan *plan, guint bar)
{
  return plan->n_order > 0 && plan->hold_missing == NULL && (plan->hold.hold & LB_BAR (bar)) != 0;
}

/* How far out all of a bar reaches, ring and all. */
static double
bar_reach (const LbSection *section, const LbSectionLayout *layout, guint bar)
{
  static const double RING = 3.5;
  return layout->bar_radius +
         (layout->has_rings && lb_section_is_hold_bar (section->plan, bar) ? RING : 0);
}

/* How far out a place is, so that all of one face of the outline are as far. */
static double
reach_of (const LbSectionLayout *layout, LbPoint at)
{
  const double dx = fabs (at.x - layout->centre.x), dy = fabs (at.y - layout->centre.y);
  return layout->outline.shape == LB_SHAPE_SQUARE ? MAX (dx, dy) : hypot (dx, dy);
}

/* Whether another bar stands on the way out from the centre through the bar. */
static gboolean
is_behind_another (const LbSectionLayout *layout, guint bar)
{
  static const double ABREAST = 8; /* px between numbers that stand beside each other */
  const LbPoint at = layout->bars[bar];
  const double away = reach_of (layout, at);
  for (guint i = 0; i < layout->n_bars; i++) {
    const LbPoint other = layout->bars[i];
    const double farther = reach_of (layout, other);
    if (farther <= away + layout->bar_radius)
      continue;
    const double stretch = away > 0 ? farther / away : 1;
    const LbPoint through = { layout->centre.x + (at.x - layout->centre.x) * stretch,
                              layout->centre.y + (at.y - layout->centre.y) * stretch };
    if (lb_section_distance (through, other) < ABREAST)
      return TRUE;
  }
  return FALSE;
}

/* Where the way from the centre through the bar leaves a like outline a little larger, or a little
 * nearer to the centre than the bar. */
static LbPoint
outside_place (const LbSectionLayout *layout, guint bar)
{
  static const double OFF = 9;
  const LbPoint at = layout->bars[bar];
  const double dx = at.x - layout->centre.x, dy = at.y - layout->centre.y;
  if (is_behind_another (layout, bar)) {
    const double away = hypot (dx, dy);
    const double inward = away > 0 ? (layout->bar_radius + OFF * 0.7) / away : 0;
    return (LbPoint){ at.x - dx * inward, at.y - dy * inward };
  }
  const double reach = reach_of (layout, at);
  const double stretch = reach > 0 ? (layout->radius + OFF) / reach : 1;
  return (LbPoint){ layout->centre.x + dx * stretch, layout->centre.y + dy * stretch };
}

typedef struct
{
  double left, top, width, height;
} Box;

static gboolean
boxes_meet (const Box *a, const Box *b)
{
  return a->left < b->left + b->width && b->left < a->left + a->width &&
         a->top < b->top + b->height && b->top < a->top + a->height;
}

/* Between a bar and the centre, clear of the bar. */
static Box
ordinal_box (const LbSection *section,
             const LbSectionLayout *layout,
             guint bar,
             double width,
             double height)
{
  static const double OFF = 2;
  const LbPoint at = layout->bars[bar];
  const double away = lb_section_distance (at, layout->centre);
  const LbPoint inward = { away > 0 ? (layout->centre.x - at.x) / away : 0,
                           away > 0 ? (layout->centre.y - at.y) / away : 0 };
  const double off = bar_reach (section, layout, bar) + OFF + fabs (inward.x) * width / 2 +
                     fabs (inward.y) * height / 2;
  return (Box){ .left = at.x + inward.x * off - width / 2,
                .top = at.y + inward.y * off - height / 2,
                .width = width,
                .height = height };
}

/* Words already put down beside bars. */
typedef struct
{
  Box boxes[3 * LB_BARS_MAX];
  gsize n;
} Taken;

/* FALSE when @box would lie over one that was taken before. */
static gboolean
take (Taken *taken, const Box *box)
{
  for (gsize k = 0; k < taken->n; k++) {
    if (boxes_meet (box, &taken->boxes[k]))
      return FALSE;
  }
  taken->boxes[taken->n++] = *box;
  return TRUE;
}

/* Whether @box lies over a bar. */
static gboolean
box_meets_bar (const LbSection *section, const LbSectionLayout *layout, const Box *box)
{
  for (guint i = 0; i < layout->n_bars; i++) {
    const LbPoint at = layout->bars[i];
    const LbPoint nearest = { CLAMP (at.x, box->left, box->left + box->width),
                              CLAMP (at.y, box->top, box->top + box->height) };
    if (lb_section_distance (at, nearest) < bar_reach (section, layout, i))
      return TRUE;
  }
  return FALSE;
}

/* The bar that is next, -1 for none. */
static int
next_bar (const LbSection *section)
{
  return section->n_done < section->plan->n_order ? (int) section->plan->order[section->n_done]
                                                  : -1;
}

/* The bar that the hook comes on before, -1 for none. */
static int
hook_bar (const LbSection *section)
{
  const LbBurnOrder *const hold = &section->plan->hold;
  const gboolean is_known = section->plan->n_order > 0 && section->plan->hold_missing == NULL &&
                            hold->rig_before > 0;
  return is_known ? (int) hold->steps[hold->rig_before - 1].bar : -1;
}

/* The greater, the sooner a bar's number has a place. */
static int
weight_of (const LbSection *section, guint bar)
{
  static const guint COUNTED_BY = 5;
  if ((int) bar == next_bar (section) || (int) bar == hook_bar (section))
    return 3;
  if (bar == 0)
    return 2;
  return (bar + 1) % COUNTED_BY == 0 ? 1 : 0;
}

static Box
box_about (LbPoint middle, double width, double height)
{
  return (Box){ middle.x - width / 2, middle.y - height / 2, width, height };
}

/* Puts down the numbers of at least that weight, or only looks whether all of them have room. */
static gboolean
put_outside_numbers (cairo_t *cr,
                     const LbPalette *palette,
                     const LbVoice *voice,
                     const LbSection *section,
                     const LbSectionLayout *layout,
                     gboolean is_drawing,
                     int weight_least,
                     Taken *taken)
{
  static const int WEIGHT_MOST = 3;
  static const double APART = 2;
  const LbVoice plain = lb_section_plain_voice (voice);
  for (int weight = WEIGHT_MOST; weight >= weight_least; weight--) {
    for (guint bar = 0; bar < layout->n_bars; bar++) {
      if (weight_of (section, bar) != weight)
        continue;
      g_autofree char *text = g_strdup_printf ("%u", bar + 1u);
      double width, height;
      lb_text_measure (cr, &plain, text, SIZE, TRUE, 0, &width, &height);
      const Box box = box_about (outside_place (layout, bar), width + APART, height);
      if (!take (taken, &box)) {
        if (!is_drawing)
          return FALSE;
        continue;
      }
      if (!is_drawing)
        continue;
      lb_ink_set (cr, palette,
                  (section->burned & LB_BAR (bar)) != 0 ? LB_INK_DIM_TEXT : LB_INK_TEXT);
      lb_text_show (cr, &plain, text, SIZE, TRUE, LB_ALIGN_START, box.left + APART / 2, box.top, 0);
    }
  }
  return TRUE;
}

static void
draw_outside_numbers (cairo_t *cr,
                      const LbPalette *palette,
                      const LbVoice *voice,
                      const LbSection *section,
                      const LbSectionLayout *layout,
                      Taken *taken)
{
  Taken trial = *taken;
  const gboolean have_room = put_outside_numbers (cr, palette, voice, section, layout, FALSE, 0,
                                                  &trial);
  put_outside_numbers (cr, palette, voice, section, layout, TRUE, have_room ? 0 : 1, taken);
}

/* Puts those ordinals down that are wanted, or only looks whether all have room. */
static gboolean
put_ordinals (cairo_t *cr,
              const LbPalette *palette,
              const LbVoice *voice,
              const LbSection *section,
              const LbSectionLayout *layout,
              gboolean is_drawing,
              gboolean only_marked,
              Taken *taken)
{
  const LbVoice plain = lb_section_plain_voice (voice);
  const double size = CLAMP (layout->bar_radius * 0.85, SIZE, 14);
  for (gsize i = section->n_done; i < section->plan->n_order; i++) {
    const guint bar = section->plan->order[i];
    const gboolean is_next = i == section->n_done;
    if (bar >= layout->n_bars || (only_marked && !is_next && (int) bar != hook_bar (section)))
      continue;
    g_autofree char *text = lb_ordinal_text ((guint) i + 1);
    double width, height;
    lb_text_measure (cr, &plain, text, size, is_next, 0, &width, &height);
    const Box box = ordinal_box (section, layout, bar, width, height);
    if (box_meets_bar (section, layout, &box) || !take (taken, &box)) {
      if (!is_drawing)
        return FALSE;
      continue;
    }
    if (!is_drawing)
      continue;
    lb_ink_set (cr, palette, LB_INK_TEXT);
    lb_text_show (cr, &plain, text, size, is_next, LB_ALIGN_START, box.left, box.top, 0);
  }
  return TRUE;
}

static void
draw_ordinals (cairo_t *cr,
               const LbPalette *palette,
               const LbVoice *voice,
               const LbSection *section,
               const LbSectionLayout *layout,
               Taken *taken)
{
  Taken trial = *taken;
  const gboolean have_room = put_ordinals (cr, palette, voice, section, layout, FALSE, FALSE,
                                           &trial);
  put_ordinals (cr, palette, voice, section, layout, TRUE, !have_room, taken);
}

/* Words on the way out through a bar, clear of the outline. */
static Box
outer_box (const LbSectionLayout *layout, guint bar, double width, double height)
{
  static const double OFF = 2;
  const LbPoint at = layout->bars[bar];
  const double away = lb_section_distance (at, layout->centre);
  const LbPoint outward = { away > 0 ? (at.x - layout->centre.x) / away : 0,
                            away > 0 ? (at.y - layout->centre.y) / away : -1 };
  /* Where the way out leaves the outline; an octagon's corners are as far out as any. */
  const double corner = layout->outline.shape == LB_SHAPE_OCTAGON ? 1 / cos (G_PI / 8) : 1;
  const double reach = layout->outline.shape == LB_SHAPE_SQUARE
                         ? layout->radius / MAX (fabs (outward.x), fabs (outward.y))
                         : layout->radius * corner;
  const double off = reach + OFF + fabs (outward.x) * width / 2 + fabs (outward.y) * height / 2;
  return (Box){ .left = layout->centre.x + outward.x * off - width / 2,
                .top = layout->centre.y + outward.y * off - height / 2,
                .width = width,
                .height = height };
}

/* What each bar left bears of what it may, outside it. */
static void
draw_shares (cairo_t *cr,
             const LbPalette *palette,
             const LbVoice *voice,
             const LbSection *section,
             const LbSectionLayout *layout,
             Taken *taken)
{
  const LbVoice plain = lb_section_plain_voice (voice);

  for (guint bar = 0; bar < layout->n_bars; bar++) {
    const double share = section->shares->share[bar];
    if ((section->burned & LB_BAR (bar)) != 0 || isnan (share))
      continue;
    g_autofree char *text = lb_voice_quantity (&plain, LB_QUANTITY_SHARE, share);
    double width, height;
    lb_text_measure (cr, &plain, text, SIZE, share > 1, 0, &width, &height);
    const Box box = outer_box (layout, bar, width, height);
    if (!take (taken, &box))
      continue;
    lb_ink_set (cr, palette, share > 1 ? LB_INK_TEXT : LB_INK_DIM_TEXT);
    lb_text_show (cr, &plain, text, SIZE, share > 1, LB_ALIGN_START, box.left, box.top, 0);
  }
}

void
lb_section_draw_bar_words (cairo_t *cr,
                           const LbPalette *palette,
                           const LbVoice *voice,
                           const LbSection *section,
                           const LbSectionLayout *layout)
{
  Taken taken = { .n = 0 };
  if (layout->has_numbers_outside)
    draw_outside_numbers (cr, palette, voice, section, layout, &taken);
  if (lb_section_tells_order (section->pile))
    draw_ordinals (cr, palette, voice, section, layout, &taken);
  if (section->shares != NULL && !layout->has_numbers_outside)
    draw_shares (cr, palette, voice, section, layout, &taken);
}
