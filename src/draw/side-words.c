/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * The words beside the pile. Each wants to stand at the height of what it names; those of one
 * column are pushed apart until none overlaps, which keeps their order from top to bottom.
 */
#include "draw/side-private.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

static const double PAD_PX = 6; /* from the page's edge */
static const double GAP_PX = 2; /* between two words */
static const double LEAST_ROOM_PX = 24;
static const double LEAST_SIZE = 8; /* read at arm's length (common practice) */
#define NO_BREAK_SPACE "\u00a0"

typedef struct
{
  char *text; /* owned */
  LbInk ink;
  gboolean is_bold;
  double wanted_y; /* of its middle */
  double x, room;  /* where it starts, and how wide it may be */
  double y, size, height;
} Word;

#define MOST_WORDS 6

typedef struct
{
  Word words[MOST_WORDS];
  gsize n;
  double size; /* of the font */
} Words;

/* Takes @text. */
static void
add (Words *words, LbInk ink, double wanted_y, double from_x, double to_x, char *text)
{
  g_assert (words->n < MOST_WORDS);
  words->words[words->n++] = (Word){
    .text = text,
    .ink = ink,
    .is_bold = ink == LB_INK_HEAT,
    .wanted_y = wanted_y,
    .x = from_x,
    .room = MAX (to_x - from_x, LEAST_ROOM_PX),
  };
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  const Word *const p = a, *const q = b;
  return (p->wanted_y > q->wanted_y) - (p->wanted_y < q->wanted_y);
}

/* Down the column each takes the first free place at or under the one it wants; then, from the
 * foot up, whatever was pushed off the page is taken back. */
static void
spread (Words *words, double top, double bottom)
{
  qsort (words->words, words->n, sizeof (Word), compare_words);
  double free_from = top;
  for (gsize i = 0; i < words->n; i++) {
    Word *const word = &words->words[i];
    word->y = MAX (word->wanted_y - word->height / 2, free_from);
    free_from = word->y + word->height + GAP_PX;
  }
  double free_to = bottom;
  for (gsize i = words->n; i-- > 0;) {
    Word *const word = &words->words[i];
    word->y = MIN (word->y, free_to - word->height);
    free_to = word->y - GAP_PX;
  }
}

/* The longest of the words that are never broken, at @size. */
static double
longest_part (cairo_t *cr, const LbVoice *voice, const Word *word, double size)
{
  /* Lines also break after a hyphen. */
  g_auto (GStrv) parts = g_strsplit_set (word->text, " -", -1);
  double longest = 0;
  for (gsize i = 0; parts[i] != NULL; i++) {
    double width;
    lb_text_measure (cr, voice, parts[i], size, word->is_bold, 0, &width, NULL);
    longest = MAX (longest, width);
  }
  return longest + 1; /* rounded, it has room yet */
}

/* Smaller where the longest part has no room, but never under what can be read: then it takes room from
 * what stands before it. */
static void
fit_words (cairo_t *cr, const LbVoice *voice, Word *word, double size, double right)
{
  const double wanted = longest_part (cr, voice, word, size);
  word->size = CLAMP (size * word->room / wanted, MIN (LEAST_SIZE, size), size);
  word->room = MAX (word->room, longest_part (cr, voice, word, word->size));
  word->x = MIN (word->x, right - word->room);
}

/* Lays the words of one column out and draws them; frees their texts. */
static void
draw_words (cairo_t *cr,
            const LbPalette *palette,
            const LbVoice *voice,
            Words *words,
            double top,
            double bottom,
            double right)
{
  for (gsize i = 0; i < words->n; i++) {
    Word *const word = &words->words[i];
    fit_words (cr, voice, word, words->size, right);
    lb_text_measure (cr, voice, word->text, word->size, word->is_bold, word->room, NULL,
                     &word->height);
  }
  spread (words, top, bottom);
  for (gsize i = 0; i < words->n; i++) {
    Word *const word = &words->words[i];
    lb_ink_set (cr, palette, word->ink);
    lb_text_show (cr, voice, word->text, word->size, word->is_bold, LB_ALIGN_START, word->x,
                  word->y, word->room);
    g_free (word->text);
  }
}

/* From the surface to the cut, left of everything. Returns whether it was drawn. */
static gboolean
draw_depth (cairo_t *cr, const LbPalette *palette, const LbSideLayout *layout)
{
  static const double TICK = 3, HEAD = 4;
  if (!layout->has_cut || !layout->has_water || layout->cut_m >= layout->water_m)
    return FALSE;
  const double x = PAD_PX + TICK;
  const double from = lb_side_y (layout, layout->water_m) + 3;
  const double to = lb_side_y (layout, layout->cut_m);
  if (to - from < 3 * HEAD)
    return FALSE;
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, x, from);
  cairo_line_to (cr, x, to);
  cairo_move_to (cr, x - TICK, to);
  cairo_line_to (cr, x + TICK, to);
  cairo_stroke (cr);
  cairo_move_to (cr, x - HEAD * 0.7, to - HEAD - 1);
  cairo_line_to (cr, x, to - 1);
  cairo_line_to (cr, x + HEAD * 0.7, to - HEAD - 1);
  cairo_move_to (cr, x - HEAD * 0.7, from + HEAD);
  cairo_line_to (cr, x, from);
  cairo_line_to (cr, x + HEAD * 0.7, from + HEAD);
  cairo_stroke (cr);
  return TRUE;
}

/* "cut −19.0 ft", or that it is not known. */
static char *
elevation_words (const LbVoice *voice,
                 gboolean is_known,
                 const char *known,
                 const char *unknown,
                 double elevation_m)
{
  if (!is_known)
    return g_strdup (unknown);
  g_autofree char *elevation = lb_voice_elevation (voice, elevation_m);
  /* The unit stays with its number when the words are wrapped. */
  g_auto (GStrv) parts = g_strsplit (elevation, " ", -1);
  g_autofree char *unbroken = g_strjoinv (NO_BREAK_SPACE, parts);
  return g_strconcat (known, " ", unbroken, NULL);
}

static const char *
side_name (LbCompass side)
{
  return g_dgettext (GETTEXT_PACKAGE, lb_compass_name (side));
}

/* Depth of the cut and the side of the leads, between the page's edge and the leads. */
static void
draw_left (cairo_t *cr,
           const LbPalette *palette,
           const LbVoice *voice,
           const LbSide *side,
           const LbSideLayout *layout,
           double foot)
{
  static const double AFTER_ARROW_PX = 11;
  const double water_y = lb_side_y (layout, layout->water_m);
  const double cut_y = lb_side_y (layout, layout->cut_m);
  const double from_x = PAD_PX + AFTER_ARROW_PX;
  const double to_x = layout->leads_x - 5;
  Words words = { .size = layout->text_size };
  if (draw_depth (cr, palette, layout)) {
    add (&words, LB_INK_TEXT, (water_y + cut_y) / 2, from_x, to_x,
         lb_voice_quantity (voice, LB_QUANTITY_LENGTH, layout->water_m - layout->cut_m));
  }
  if (layout->has_leads) {
    add (&words, LB_INK_DIM_TEXT, water_y + (cut_y - water_y) * 0.82, from_x, to_x,
         g_strdup_printf (_ ("leads %s"), side_name (side->plan->lead_side)));
  }
  draw_words (cr, palette, voice, &words, water_y + 6, foot, layout->width - PAD_PX);
}

/* Head, cut and slag, to the right of the pile. */
static void
draw_right (cairo_t *cr,
            const LbPalette *palette,
            const LbVoice *voice,
            const LbSide *side,
            const LbSideLayout *layout,
            double line_height,
            double foot)
{
  static const double OFF_PX = 5;
  const double to_x = layout->width - PAD_PX;
  const double edge = layout->head_half_px / cos (layout->angle) + OFF_PX;
  const double water_y = lb_side_y (layout, layout->water_m);
  const double cut_y = lb_side_y (layout, layout->cut_m);
  Words words = { .size = layout->text_size };

  double head_y = MAX (lb_side_y (layout, layout->head_m), 0) + line_height * 0.6;
  /* Off the water's line, on the side where it is. */
  if (layout->has_water && fabs (head_y - water_y) < line_height * 0.8)
    head_y = head_y < water_y ? water_y - line_height * 0.8 : water_y + line_height * 0.9;
  add (&words, LB_INK_DIM_TEXT, head_y, lb_side_axis_x (layout, layout->head_m) + edge, to_x,
       elevation_words (voice, layout->has_head, _ ("head"), _ ("head not known"), layout->head_m));
  /* Over the cut the pile comes nearer: the words begin clear of it at their top. */
  add (&words, LB_INK_HEAT, cut_y - line_height * 0.2,
       lb_side_axis_x (layout, layout->cut_m) + edge + 8 + line_height * layout->batter, to_x,
       elevation_words (voice, layout->has_cut, _ ("cut"), _ ("cut not known"), layout->cut_m));
  if (layout->is_to_burn) {
    add (&words, LB_INK_DIM_TEXT, cut_y + line_height,
         lb_side_axis_x (layout, layout->cut_m) + edge + LB_SIDE_SLAG_SPREAD_PX, to_x,
         side->plan->is_battered
           ? g_strdup_printf (_ ("slag falls %s"), side_name (side->plan->slag_side))
           : g_strdup (_ ("slag falls all round")));
  }
  draw_words (cr, palette, voice, &words, 2, foot, layout->width - PAD_PX);
}

/* In the mud, on the side where the pile leaves more room. */
static void
draw_mudline (cairo_t *cr,
              const LbPalette *palette,
              const LbVoice *voice,
              const LbSideLayout *layout,
              double y)
{
  g_autofree char *text = elevation_words (voice, layout->has_mudline, _ ("mudline"),
                                           _ ("mudline not known"), layout->mudline_m);
  lb_ink_set (cr, palette, LB_INK_TEXT);
  const double pile_x = lb_side_axis_x (layout, layout->mudline_m);
  const double room = MAX (
    layout->width - PAD_PX -
      (pile_x + lb_side_half_px (layout, layout->mudline_m) / cos (layout->angle) + 6),
    LEAST_ROOM_PX);
  double height;
  lb_text_measure (cr, voice, text, layout->text_size, FALSE, room, NULL, &height);
  lb_text_show (cr, voice, text, layout->text_size, FALSE, LB_ALIGN_END, layout->width - PAD_PX,
                MIN (y, layout->height - height - 2), room);
}

void
lb_side_draw_words (cairo_t *cr,
                    const LbPalette *palette,
                    const LbVoice *voice,
                    const LbSide *side,
                    const LbSideLayout *layout)
{
  double line_height;
  lb_text_measure (cr, voice, "0", layout->text_size, FALSE, 0, NULL, &line_height);
  const double water_y = lb_side_y (layout, layout->water_m);
  const double mud_y = lb_side_y (layout, layout->mudline_m);
  const double foot = (layout->has_mudline ? mud_y : layout->height - line_height - PAD_PX) - 3;

  g_autofree char *water = elevation_words (voice, layout->has_water, _ ("water"),
                                            _ ("water level not known"), layout->water_m);
  const double water_room = lb_side_axis_x (layout, layout->water_m) -
                            lb_side_half_px (layout, layout->water_m) - PAD_PX - 6;
  double water_height;
  lb_text_measure (cr, voice, water, layout->text_size, FALSE, water_room, NULL, &water_height);
  lb_ink_set (cr, palette, LB_INK_TEXT);
  lb_text_show (cr, voice, water, layout->text_size, FALSE, LB_ALIGN_START, PAD_PX,
                layout->has_water ? MAX (water_y - water_height - 4, 1) : PAD_PX, water_room);

  draw_left (cr, palette, voice, side, layout, foot);
  draw_right (cr, palette, voice, side, layout, line_height, foot);
  draw_mudline (cr, palette, voice, layout,
                layout->has_mudline ? mud_y + 9 : layout->height - line_height - PAD_PX);
}
