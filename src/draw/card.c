/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The cut card: all of one pile's cut on one sheet for a wet clipboard.
 *
 * From the top: job and mark; pictures and the order to burn on the left, the figures on the
 * right; the cautions; what is signed. The footer is fixed to the foot of the sheet. All sizes
 * above it share one scale, the largest at which everything fits: a pile with few cautions gets
 * larger type, one with sixty bars smaller, and nothing is ever left out. Whatever height is over
 * goes to the pictures.
 *
 * Every part is one function that returns the height it takes, drawn or only measured by its pen
 * (page-pen), so that what is measured is what is drawn. */
#include "draw/page-pen.h"
#include "draw/page.h"
#include "draw/plan-words.h"
#include "draw/section.h"
#include "draw/side.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN         30.0
#define COLUMN_GAP     14.0
#define LEFT_SHARE     0.40
#define SCALE_LEAST    0.4
#define SCALE_MOST     1.25
#define SCALE_HALVINGS 7
#define PICTURES_LEAST 300.0 /* height of side view and section together, at scale 1 */
#define SIDE_SHARE     0.56  /* of that height */
#define VALUE_SHARE    0.7   /* of the table's width: where values end */
#define MARK_SIZE      46.0
#define MARK_LEAST     18.0 /* then it wraps */

typedef struct
{
  LbPagePen pen;
  const LbFold *fold;
  const LbPile *pile;
  const LbPileState *state;
  LbCutPlan plan;
  double left, right, top, bottom; /* bottom: over the footer */
  double scale;
} Card;

/* The figures that are read in the water and on deck: set large. */
static gboolean
is_large (LbFigureId id)
{
  return id == LB_FIGURE_CUT_DEPTH || id == LB_FIGURE_BARS_LEFT || id == LB_FIGURE_BURN ||
         id == LB_FIGURE_RODS || id == LB_FIGURE_REGULATOR || id == LB_FIGURE_NO_STOP ||
         id == LB_FIGURE_DIVES || id == LB_FIGURE_HOOK_LOAD;
}

static LbPageStyle
style (const Card *card, double size, gboolean is_bold, LbInk ink)
{
  return (LbPageStyle){ .size = size * card->scale, .is_bold = is_bold, .ink = ink };
}

static double
show_header (const Card *card, double y)
{
  const double width = card->right - card->left;
  const double start = y;
  const LbPageStyle small = style (card, 9, FALSE, LB_INK_TEXT);
  const LbPageStyle title = style (card, 11, TRUE, LB_INK_TEXT);
  const LbPageStyle what = style (card, 11, FALSE, LB_INK_TEXT);
  const double title_w = 0.25 * width;

  const double name = lb_page_pen_text (&card->pen, &small, LB_ALIGN_START, card->left, y,
                                        width - title_w - COLUMN_GAP, card->fold->name);
  const double label = lb_page_pen_text (&card->pen, &title, LB_ALIGN_END, card->right, y, 0,
                                         _ ("CUT CARD"));
  y += MAX (name, label) + 2 * card->scale;
  lb_page_pen_rule (&card->pen, LB_INK_LINE, 1.2, card->left, y, card->right);
  y += 3 * card->scale;

  /* The mark is read from across the deck; a long one shrinks before it takes the whole width. */
  LbPageStyle mark = style (card, MARK_SIZE, TRUE, LB_INK_TEXT);
  mark.size = lb_page_pen_fit (&card->pen, &mark, MARK_LEAST * card->scale, LEFT_SHARE * width,
                               card->pile->mark);
  const double mark_h = lb_page_pen_text (&card->pen, &mark, LB_ALIGN_START, card->left, y,
                                          LEFT_SHARE * width, card->pile->mark);

  const double x = card->left + LEFT_SHARE * width + COLUMN_GAP;
  g_autofree char *pile = lb_pile_text (&card->pen.voice, card->pile);
  g_autofree char *state = lb_pile_state_text (card->pile, card->state);
  double right_h = 4 * card->scale;
  right_h += lb_page_pen_text (&card->pen, &what, LB_ALIGN_START, x, y + right_h, card->right - x,
                               pile);
  right_h += lb_page_pen_text (&card->pen, &title, LB_ALIGN_START, x, y + right_h, card->right - x,
                               state);
  if (card->pile->note[0] != '\0')
    right_h += lb_page_pen_text (&card->pen, &small, LB_ALIGN_START, x, y + right_h,
                                 card->right - x, card->pile->note);
  return y + MAX (mark_h, right_h) + 4 * card->scale - start;
}

/* The reason and how far it can be trusted, or what is missing; to be freed. */
static char *
reason_text (const Card *card, LbFigureId id)
{
  const LbPagePen *const pen = &card->pen;
  g_autofree char *why = lb_figure_reason_text (&pen->voice, card->pile, &card->fold->assumptions,
                                                &card->plan, id);
  if (isnan (card->plan.figures[id].range.likely))
    return g_steal_pointer (&why);
  return g_strdup_printf (C_ ("reason and tag", "%s · %s"), why,
                          g_dgettext (GETTEXT_PACKAGE, lb_tag_name (card->plan.figures[id].tag)));
}

/* A text beside the value, on about the same line, shrunk into @width if need be. */
static void
show_beside (const Card *card,
             LbPageStyle beside,
             const LbPageStyle *value,
             double x,
             double y,
             double width,
             const char *text)
{
  beside.size = lb_page_pen_fit (&card->pen, &beside, 0.6 * beside.size, width, text);
  lb_page_pen_text (&card->pen, &beside, LB_ALIGN_START, x, y + 0.8 * (value->size - beside.size),
                    0, text);
}

static double
show_figure (const Card *card, LbFigureId id, double x, double y, double width)
{
  const LbPagePen *const pen = &card->pen;
  const gboolean large = is_large (id);
  const LbPageStyle name = style (card, large ? 10 : 9, large, LB_INK_TEXT);
  const LbPageStyle value = style (card, large ? 17 : 11, TRUE, LB_INK_TEXT);
  const LbPageStyle range = style (card, large ? 9.5 : 8.5, FALSE, LB_INK_TEXT);
  const LbPageStyle reason = style (card, 7, FALSE, LB_INK_DIM_TEXT);
  const double value_end = VALUE_SHARE * width;
  const double gap = 4 * card->scale;
  g_autofree char *value_text = lb_figure_text (&pen->voice, &card->plan, id);
  g_autofree char *range_text = lb_figure_range_text (&pen->voice, &card->plan, id);
  g_autofree char *why = reason_text (card, id);

  double height = lb_page_pen_text (pen, &value, LB_ALIGN_END, x + value_end, y, 0, value_text);
  show_beside (card, name, &value, x, y,
               value_end - lb_page_pen_width (pen, &value, value_text) - gap,
               g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id)));
  if (range_text != NULL)
    show_beside (card, range, &value, x + value_end + 2 * gap, y, width - value_end - 2 * gap,
                 range_text);
  height += lb_page_pen_text (pen, &reason, LB_ALIGN_START, x, y + height, width, why);
  height += 1.5 * card->scale;
  lb_page_pen_rule (pen, LB_INK_HAIR, 0.5, x, y + height, x + width);
  return height + 1.5 * card->scale;
}

static double
show_figures (const Card *card, double x, double y, double width)
{
  const double start = y;
  for (LbFigureId id = 0; id < LB_N_FIGURES; id++)
    y += show_figure (card, id, x, y, width);
  return y - start;
}

/* One bar of the order: a box to tick, its number as in the section, and when it comes. */
static void
show_order_cell (const Card *card, gsize place, double x, double y)
{
  const double side = 8 * card->scale;
  const LbPageStyle bar = style (card, 9, TRUE, LB_INK_TEXT);
  const LbPageStyle ordinal = style (card, 7.5, FALSE, LB_INK_TEXT);
  g_autofree char *bar_text = g_strdup_printf (_ ("bar %u"), card->plan.order[place] + 1u);
  g_autofree char *place_text = lb_ordinal_text ((guint) place + 1);
  lb_page_pen_box (&card->pen, x, y + 2.5 * card->scale, side);
  lb_page_pen_text (&card->pen, &ordinal, LB_ALIGN_START, x + side + 2.5 * card->scale,
                    y + 2.2 * card->scale, 0, place_text);
  lb_page_pen_text (&card->pen, &bar, LB_ALIGN_START, x + side + 19 * card->scale,
                    y + 0.8 * card->scale, 0, bar_text);
}

/* Why no order is given; NULL when one is. */
static const char *
no_order_words (const Card *card)
{
  if (card->pile->n_bars == 0)
    return _ ("No bars on record: there is no order to burn.");
  if (card->plan.n_order == 0)
    return _ ("No bars left to burn on record.");
  if (card->pile->bar != NULL && card->pile->bar->kind == LB_BAR_STRAND)
    return _ ("Stressed strand: the numbers are no order to burn. A licensed engineer gives one.");
  return NULL;
}

static double
show_order (const Card *card, double x, double y, double width)
{
  const LbPageStyle head = style (card, 9, TRUE, LB_INK_TEXT);
  const LbPageStyle plain = style (card, 8.5, FALSE, LB_INK_TEXT);
  const double cell_w = 60 * card->scale;
  const double cell_h = 14 * card->scale;
  const double start = y;

  const char *const none = no_order_words (card);
  if (none != NULL)
    return lb_page_pen_text (&card->pen, &plain, LB_ALIGN_START, x, y, width, none);
  y += lb_page_pen_text (&card->pen, &head, LB_ALIGN_START, x, y, width,
                         _ ("Order to burn, unless told otherwise"));
  const gsize n_columns = (gsize) MAX (1, floor (width / cell_w));
  for (gsize i = 0; i < card->plan.n_order; i++)
    show_order_cell (card, i, x + (double) (i % n_columns) * cell_w,
                     y + (double) (i / n_columns) * cell_h);
  y += (double) ((card->plan.n_order + n_columns - 1) / n_columns) * cell_h;
  return y - start;
}

/* A picture in a box of its own: nothing of it gets out. */
static void
begin_picture (cairo_t *cr, double x, double y, double width, double height)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
}

static void
show_pictures (const Card *card, double x, double y, double width, double height)
{
  if (!card->pen.is_drawing)
    return;
  cairo_t *const cr = card->pen.cr;
  const double side_h = SIDE_SHARE * height;
  const LbSide side = {
    .pile = card->pile,
    .plan = &card->plan,
    .water_m = card->fold->assumptions.value[LB_ASSUME_WATER_LEVEL],
    .cut_m = lb_pile_cut_elevation (card->pile, &card->fold->assumptions),
    .step = card->state->step,
  };
  const LbSection section = {
    .pile = card->pile,
    .plan = &card->plan,
    .burned = card->state->burned,
    .focus = -1,
  };
  begin_picture (cr, x, y, width, side_h);
  lb_side_draw (cr, card->pen.palette, &card->pen.voice, &side, width, side_h);
  cairo_restore (cr);
  begin_picture (cr, x, y + side_h, width, height - side_h);
  lb_section_draw (cr, card->pen.palette, &card->pen.voice, &section, width, height - side_h);
  cairo_restore (cr);
}

/* @height: what there is for it when drawing; the least it needs is returned. */
static double
show_body (const Card *card, double y, double height)
{
  const double width = card->right - card->left;
  const double left_w = LEFT_SHARE * width;
  const double x = card->left + left_w + COLUMN_GAP;
  const double figures = show_figures (card, x, y, card->right - x);
  LbPagePen measuring = card->pen;
  measuring.is_drawing = FALSE;
  Card dry = *card;
  dry.pen = measuring;
  const double order = show_order (&dry, card->left, y, left_w);
  const double pictures = MAX (height, figures) - order - 4 * card->scale;

  show_pictures (card, card->left, y, left_w, pictures);
  show_order (card, card->left, y + pictures + 4 * card->scale, left_w);
  return MAX (figures, PICTURES_LEAST * card->scale + order);
}

static double
show_caution (const Card *card, gsize i, double x, double y, double width)
{
  const double side = 8 * card->scale;
  const double indent = side + 4 * card->scale;
  const LbPageStyle words = style (card, i < card->plan.n_own_cautions ? 8.5 : 7,
                                   card->plan.cautions[i]->severity == LB_SEVERITY_DANGER,
                                   LB_INK_TEXT);
  g_autofree char *text = lb_caution_text (&card->pen.voice, card->pile, &card->fold->assumptions,
                                           &card->plan, i);
  lb_page_pen_box (&card->pen, x, y + 2 * card->scale, side);
  return lb_page_pen_text (&card->pen, &words, LB_ALIGN_START, x + indent, y, width - indent,
                           text) +
         2.5 * card->scale;
}

/* How many of the cautions stand in the left column, so that the taller one is lowest; they are
 * read down the left one first. */
static gsize
split_cautions (const Card *card, double width, double *out_height)
{
  const gsize n = card->plan.n_cautions;
  double heights[G_N_ELEMENTS (card->plan.cautions)];
  double left = 0;
  double right = 0;
  gsize split = 0;
  Card dry = *card;
  dry.pen.is_drawing = FALSE;
  for (gsize i = 0; i < n; i++) {
    heights[i] = show_caution (&dry, i, 0, 0, width);
    right += heights[i];
  }
  *out_height = right;
  for (gsize i = 0; i < n; i++) {
    left += heights[i];
    right -= heights[i];
    if (MAX (left, right) < *out_height) {
      *out_height = MAX (left, right);
      split = i + 1;
    }
  }
  return split;
}

static double
show_cautions (const Card *card, double y)
{
  const double width = (card->right - card->left - COLUMN_GAP) / 2;
  const double start = y;
  const LbPageStyle head = style (card, 9, TRUE, LB_INK_TEXT);
  y += 5 * card->scale;
  lb_page_pen_rule (&card->pen, LB_INK_LINE, 1.2, card->left, y, card->right);
  y += 3 * card->scale;
  y += lb_page_pen_text (&card->pen, &head, LB_ALIGN_START, card->left, y, 0,
                         _ ("Before the cut, gravest first"));
  y += 2 * card->scale;

  double height;
  const gsize split = split_cautions (card, width, &height);
  double column_y = y;
  for (gsize i = 0; card->pen.is_drawing && i < card->plan.n_cautions; i++) {
    if (i == split)
      column_y = y;
    const double x = i < split ? card->left : card->left + width + COLUMN_GAP;
    column_y += show_caution (card, i, x, column_y, width);
  }
  return y + height - start;
}

/* Not scaled: it is written on by hand. */
static double
show_footer (const Card *card, double y)
{
  const LbPagePen *const pen = &card->pen;
  const LbPageStyle word = { .size = 9.5, .is_bold = TRUE, .ink = LB_INK_TEXT };
  const LbPageStyle small = { .size = 8, .ink = LB_INK_TEXT };
  const double width = card->right - card->left;
  const double third = (width - 2 * COLUMN_GAP) / 3;
  const double start = y;
  g_autofree char *level = lb_voice_elevation (
    &pen->voice, card->fold->assumptions.value[LB_ASSUME_WATER_LEVEL]);
  g_autofree char *water =
    card->fold->datum[0] != '\0'
      ? g_strdup_printf (_ ("Water level taken at %s above %s. Figures are estimates."), level,
                         card->fold->datum)
      : g_strdup_printf (_ ("Water level taken at %s above the job’s datum. Figures are "
                            "estimates."),
                         level);

  lb_page_pen_rule (pen, LB_INK_LINE, 1.2, card->left, y, card->right);
  y += 4;
  y += lb_page_pen_text (pen, &word, LB_ALIGN_START, card->left, y, width,
                         _ ("The diving supervisor’s word stands above this card."));
  y += lb_page_pen_text (pen, &small, LB_ALIGN_START, card->left, y, width, water) + 8;
  lb_page_pen_blank (pen, card->left, y, third, _ ("Date"));
  lb_page_pen_blank (pen, card->left + third + COLUMN_GAP, y, third, _ ("Diver"));
  lb_page_pen_blank (pen, card->left + 2 * (third + COLUMN_GAP), y, third, _ ("Checked by"));
  return y + 14 - start;
}

/* Everything above the footer at the card's scale. */
static double
show_all (const Card *card)
{
  Card dry = *card;
  dry.pen.is_drawing = FALSE;
  double y = card->top;
  y += show_header (card, y);
  const double cautions = show_cautions (&dry, 0);
  const double room = card->bottom - cautions - y;
  const double least = show_body (card, y, room);
  y += MAX (least, room);
  y += show_cautions (card, y);
  return MAX (0, least - room) + card->bottom;
}

/* The largest scale at which everything ends above the footer. */
static void
fit (Card *card)
{
  Card dry = *card;
  dry.pen.is_drawing = FALSE;
  double fits = SCALE_LEAST;
  double too_large = SCALE_MOST;
  for (guint i = 0; i < SCALE_HALVINGS; i++) {
    dry.scale = (fits + too_large) / 2;
    if (show_all (&dry) <= card->bottom)
      fits = dry.scale;
    else
      too_large = dry.scale;
  }
  card->scale = fits;
}

void
lb_card_draw (cairo_t *cr,
              const LbVoice *voice,
              const LbFold *fold,
              guint pile,
              double width_pt,
              double height_pt)
{
  g_return_if_fail (pile < fold->n_piles);
  Card card = {
    .fold = fold,
    .pile = &fold->piles[pile],
    .state = &fold->states[pile],
    .left = MARGIN,
    .right = width_pt - MARGIN,
    .top = MARGIN,
    .scale = 1,
  };
  lb_cut_plan_reckon (card.pile, card.state->burned, card.state->n_unplaced, &fold->basis,
                      &card.plan);
  lb_page_pen_init_drawing (&card.pen, cr, voice);
  lb_ink_set (cr, card.pen.palette, LB_INK_PAPER);
  cairo_rectangle (cr, 0, 0, width_pt, height_pt);
  cairo_fill (cr);

  Card dry = card;
  dry.pen.is_drawing = FALSE;
  const double foot = height_pt - MARGIN - show_footer (&dry, 0);
  card.bottom = foot - 6;
  fit (&card);
  show_all (&card);
  show_footer (&card, foot);
  lb_page_pen_clear (&card.pen);
}
