/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The boxes of figures on the cut card: what is set at the gas, planned for the dive, rigged for the
 * lift. A figure stands on one line with its range, which takes a line of its own where there is no
 * room; what is not known says why at the foot of its box, each reason once. A star says that a figure
 * rests on less than the survey and the job's own numbers. */
#include "draw/card-private.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define TITLE_SIZE 11.0
#define NAME_SIZE  8.8
#define VALUE_SIZE 11.0
#define RANGE_SIZE 8.2
#define PAD        5.0

typedef struct
{
  const char *title; /* msgid */
  const LbFigureId *ids;
  gsize n;
  LbFigureId explained; /* the one that a supervisor checks with a pencil */
  gboolean is_lift;
  double share; /* of the width */
} CardBox;

static const LbFigureId GAS[] = { LB_FIGURE_REGULATOR, LB_FIGURE_HOSE_LOSS, LB_FIGURE_OXYGEN,
                                  LB_FIGURE_CYLINDERS, LB_FIGURE_LEAD_DROP };
static const LbFigureId TIME[] = { LB_FIGURE_CUT_DEPTH, LB_FIGURE_PNEUMO, LB_FIGURE_NO_STOP,
                                   LB_FIGURE_BURN, LB_FIGURE_DIVES };
static const LbFigureId LIFT[] = { LB_FIGURE_TRUE_LENGTH, LB_FIGURE_MASS_IN_WATER,
                                   LB_FIGURE_HOOK_LOAD, LB_FIGURE_SLING };
/* Of these a "–" would say no more than the cautions do. */
static const LbFigureId LIFT_WHEN_KNOWN[] = { LB_FIGURE_CRANE_SHARE, LB_FIGURE_SLING_SHARE,
                                              LB_FIGURE_PICK };

static const CardBox BOXES[] = {
  { N_ ("Gas and leads"), GAS, G_N_ELEMENTS (GAS), LB_FIGURE_REGULATOR, FALSE, 0.31 },
  { N_ ("Bottom time"), TIME, G_N_ELEMENTS (TIME), LB_FIGURE_DIVES, FALSE, 0.32 },
  { N_ ("Lift"), LIFT, G_N_ELEMENTS (LIFT), LB_FIGURE_HOOK_LOAD, TRUE, 0.37 },
};

static const char *
stars (LbTag tag)
{
  if (tag == LB_TAG_MEMORY)
    return "**";
  return tag == LB_TAG_COMMON_PRACTICE ? "*" : "";
}

/* One line: name, range, value; the range under it where the three do not fit. */
static double
show_line (const LbCard *card,
           const char *name,
           const char *value,
           const char *range,
           double x,
           double y,
           double width)
{
  const LbPagePen *const pen = &card->pen;
  const LbPageStyle value_style = lb_card_style (card, VALUE_SIZE, TRUE, LB_INK_TEXT);
  const LbPageStyle range_style = lb_card_style (card, RANGE_SIZE, FALSE, LB_INK_TEXT);
  LbPageStyle name_style = lb_card_style (card, NAME_SIZE, FALSE, LB_INK_TEXT);
  const double gap = 5;
  const double value_w = lb_page_pen_width (pen, &value_style, value);
  const double room = width - value_w - gap;
  const double name_w = lb_page_pen_width (pen, &name_style, name);
  const double range_w = range != NULL ? lb_page_pen_width (pen, &range_style, range) : 0;
  const double least_size = lb_card_style (card, 0, FALSE, LB_INK_TEXT).size;
  const double least_w = name_w * least_size / name_style.size;
  const gboolean fits = range == NULL || least_w + gap + range_w <= room;
  const double name_y = y + 0.95 * (value_style.size - name_style.size);
  const double range_y = y + 0.95 * (value_style.size - range_style.size);

  double height = lb_page_pen_text (pen, &value_style, LB_ALIGN_END, x + width, y, 0, value);
  const double free_w = fits ? room - (range != NULL ? gap + range_w : 0) : room;
  if (least_w <= free_w) {
    name_style.size = lb_page_pen_fit (pen, &name_style, least_size, free_w, name);
    lb_page_pen_text (pen, &name_style, LB_ALIGN_START, x,
                      y + 0.95 * (value_style.size - name_style.size), 0, name);
  } else {
    /* Too long a name wraps beside the value. */
    const double name_h = lb_page_pen_text (pen, &name_style, LB_ALIGN_START, x, name_y, room,
                                            name);
    height = MAX (height, name_y - y + name_h);
  }
  if (range == NULL)
    return height;
  if (fits) {
    lb_page_pen_text (pen, &range_style, LB_ALIGN_END, x + room, range_y, 0, range);
    return height;
  }
  return height +
         lb_page_pen_text (pen, &range_style, LB_ALIGN_END, x + width, y + height, 0, range);
}

static double
show_figure (const LbCard *card, LbFigureId id, double x, double y, double width)
{
  const LbFigure *const figure = &card->plan.figures[id];
  const gboolean is_known = !isnan (figure->range.likely);
  g_autofree char *value = lb_figure_text (&card->pen.voice, &card->plan, id);
  g_autofree char *range = lb_figure_range_text (&card->pen.voice, &card->plan, id);
  g_autofree char *name = g_strconcat (g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id)),
                                       is_known ? stars (figure->tag) : "", NULL);
  return show_line (card, name, value, range, x, y, width);
}

static double
show_hook_share (const LbCard *card, double x, double y, double width)
{
  const LbAssumptions *const assumptions = &card->fold->assumptions;
  g_autofree char *share = lb_voice_quantity (&card->pen.voice, LB_QUANTITY_SHARE,
                                              assumptions->value[LB_ASSUME_HOOK_SHARE]);
  g_autofree char *name = g_strconcat (
    _ ("On the hook while burning"), stars (lb_assumptions_tag (assumptions, LB_ASSUME_HOOK_SHARE)),
    NULL);
  return show_line (card, name, share, NULL, x, y, width);
}

/* By which rules the lift is critical. */
static double
show_critical (const LbCard *card, double x, double y, double width)
{
  const LbPageStyle style = lb_card_style (card, NAME_SIZE, TRUE, LB_INK_TEXT);
  g_autofree char *rules = lb_critical_rules_text (&card->plan);
  if (rules == NULL)
    return 0;
  g_autofree char *text = g_strdup_printf (_ ("Critical lift: %s"), rules);
  return lb_page_pen_text (&card->pen, &style, LB_ALIGN_START, x, y, width, text);
}

static double
show_rest_of_lift (const LbCard *card, double x, double y, double width)
{
  const double start = y;
  for (gsize i = 0; i < G_N_ELEMENTS (LIFT_WHEN_KNOWN); i++)
    if (!isnan (card->plan.figures[LIFT_WHEN_KNOWN[i]].range.likely))
      y += show_figure (card, LIFT_WHEN_KNOWN[i], x, y, width);
  y += show_hook_share (card, x, y, width);
  y += show_critical (card, x, y, width);
  return y - start;
}

/* How one figure was made, and each reason for a "–" in it, once. */
static double
show_reasons (const LbCard *card, const CardBox *box, double x, double y, double width)
{
  const LbPageStyle style = lb_card_style (card, 8, FALSE, LB_INK_TEXT);
  g_autoptr (GHashTable) said = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  const double start = y;
  for (gsize i = 0; i < box->n; i++) {
    if (box->ids[i] != box->explained && !isnan (card->plan.figures[box->ids[i]].range.likely))
      continue;
    g_autofree char *why = lb_figure_reason_text (
      &card->pen.voice, card->pile, &card->fold->assumptions, &card->plan, box->ids[i]);
    if (g_hash_table_contains (said, why))
      continue;
    y += lb_page_pen_text (&card->pen, &style, LB_ALIGN_START, x, y, width, why);
    g_hash_table_add (said, g_steal_pointer (&why));
  }
  return y - start;
}

static double
show_box (const LbCard *card, const CardBox *box, double x, double y, double width)
{
  const LbPageStyle title = lb_card_style (card, TITLE_SIZE, TRUE, LB_INK_TEXT);
  const double start = y;
  y += lb_page_pen_text (&card->pen, &title, LB_ALIGN_START, x, y, width,
                         g_dgettext (GETTEXT_PACKAGE, box->title));
  for (gsize i = 0; i < box->n; i++)
    y += show_figure (card, box->ids[i], x, y, width);
  if (box->is_lift)
    y += show_rest_of_lift (card, x, y, width);
  y += show_reasons (card, box, x, y, width);
  return y - start;
}

static void
frame (const LbCard *card, double x, double y, double width, double height)
{
  if (!card->pen.is_drawing)
    return;
  lb_ink_set (card->pen.cr, card->pen.palette, LB_INK_LINE);
  cairo_set_line_width (card->pen.cr, 1);
  cairo_rectangle (card->pen.cr, x + 0.5, y + 0.5, width - 1, height - 1);
  cairo_stroke (card->pen.cr);
}

double
lb_card_show_boxes (const LbCard *card, double y)
{
  const gsize n = G_N_ELEMENTS (BOXES);
  const double gap = LB_CARD_GAP / 2;
  const double width = card->right - card->left - (double) (n - 1) * gap;
  const LbPageStyle style = lb_card_style (card, 8, FALSE, LB_INK_TEXT);
  double height = 0;
  double x = card->left;
  for (gsize i = 0; i < n; i++) {
    const double box_w = BOXES[i].share * width;
    height = MAX (height, show_box (card, &BOXES[i], x + PAD, y + PAD - 1, box_w - 2 * PAD));
    x += box_w + gap;
  }
  height += 2 * PAD - 1;
  x = card->left;
  for (gsize i = 0; i < n; i++) {
    frame (card, x, y, BOXES[i].share * width, height);
    x += BOXES[i].share * width + gap;
  }
  return height + lb_page_pen_text (&card->pen, &style, LB_ALIGN_START, card->left, y + height, 0,
                                    _ ("* common practice   ** from memory"));
}
