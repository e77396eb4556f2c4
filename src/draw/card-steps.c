/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table of steps on the cut card. Its lines are bars, and what comes between two of them: the
 * hook, and a dive that begins. They fill one column after the other; a line that belongs to the bar
 * under it never ends one. */
#include "draw/card-private.h"
#include "draw/plan-words.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LINE_HEIGHT     14.0 /* at scale 1; never less than its text needs */
#define LINE_LEAST      1.1  /* of the size: numbers have nothing under the line */
#define HEAD_SIZE       10.5
#define BAR_SIZE        11.5
#define SMALL_SIZE      9.5
#define TWO_COLUMNS_FOR 13u /* lines */
#define THREE_FOR       29u /* bars */
#define FOUR_FOR        46u /* bars */

typedef enum {
  LINE_BAR,
  LINE_HOOK,
  LINE_HOOK_MORE, /* its second line, in narrow columns */
  LINE_DIVE,
} LineKind;

typedef struct
{
  LineKind kind;
  gsize step;
} Line;

#define COLUMNS_MOST 4u
#define NARROW_FROM  3u /* columns */
#define LINES_MAX    (3 * LB_BARS_MAX)

static guint
find_lines (const LbCard *card, Line lines[LINES_MAX])
{
  guint n = 0;
  for (gsize i = 0; i < card->steps.n_steps; i++) {
    const LbCutStep *const step = &card->steps.steps[i];
    if (card->steps.n_dives > 1 && (i == 0 || step->starts_dive))
      lines[n++] = (Line){ LINE_DIVE, i };
    if (step->needs_hook)
      lines[n++] = (Line){ LINE_HOOK, i };
    if (step->needs_hook && card->steps.n_steps >= THREE_FOR)
      lines[n++] = (Line){ LINE_HOOK_MORE, i };
    lines[n++] = (Line){ LINE_BAR, i };
  }
  return n;
}

guint
lb_card_n_step_columns (const LbCard *card)
{
  Line lines[LINES_MAX];
  if (card->steps.n_steps >= FOUR_FOR)
    return COLUMNS_MOST;
  if (card->steps.n_steps >= THREE_FOR)
    return 3;
  return find_lines (card, lines) >= TWO_COLUMNS_FOR ? 2 : 1;
}

/* The column of each line when one holds @per_column; returns how many there are. */
static guint
fill_columns (const Line *lines, guint n, guint per_column, guint columns[LINES_MAX])
{
  guint column = 0, used = 0;
  for (guint i = 0; i < n; i++) {
    /* Lines that belong to the bar under them go with it. */
    guint wanted = 1;
    while (lines[i + wanted - 1].kind != LINE_BAR)
      wanted++;
    const gboolean is_first = i == 0 || lines[i - 1].kind == LINE_BAR;
    if (is_first && used > 0 && used + wanted > per_column) {
      column++;
      used = 0;
    }
    columns[i] = column;
    used++;
  }
  return column + 1;
}

/* The least that a column must hold for all to stand in @n_columns. */
static guint
find_columns (const Line *lines, guint n, guint n_columns, guint columns[LINES_MAX])
{
  guint per_column = (n + n_columns - 1) / n_columns;
  while (fill_columns (lines, n, per_column, columns) > n_columns)
    per_column++;
  return per_column;
}

/* Where the parts of a line begin or end, and its sizes, made small enough for the column. */
typedef struct
{
  double line, box;
  double ordinal;             /* begins */
  double bar, minutes, total; /* end */
  gboolean has_minutes;       /* of each bar: where there is one column, for they are all alike */
  /* Three columns or more are narrow: what comes when is told by the lines' order, and the cylinders' numbers
   * stand under a head. */
  gboolean is_narrow;
  LbPageStyle strong, small;
} Places;

static char *
cylinder_text (guint cylinder, gboolean is_narrow)
{
  /* Translators: change over to this oxygen cylinder; short, it stands in a narrow table. */
  return is_narrow ? g_strdup_printf ("%u", cylinder) : g_strdup_printf (_ ("cyl. %u"), cylinder);
}

/* The widest that each part may be: three-figure minutes, two-figure bars. */
static Places
place_at (const LbCard *card, double factor, guint n_columns, double *out_width)
{
  const LbPagePen *const pen = &card->pen;
  const gboolean has_minutes = n_columns == 1, is_narrow = n_columns >= NARROW_FROM;
  const LbPageStyle strong = lb_card_main_style (card, BAR_SIZE * factor, TRUE, LB_INK_TEXT);
  const LbPageStyle small = lb_card_style (card, SMALL_SIZE * factor, FALSE, LB_INK_TEXT);
  const double gap = 0.5 * small.size;
  g_autofree char *ordinal = lb_ordinal_text (MIN (card->steps.n_steps, 22u));
  g_autofree char *cylinder = cylinder_text (10, is_narrow);
  Places at = {
    .line = MAX (LINE_HEIGHT * card->scale * factor, LINE_LEAST * strong.size),
    .box = 0.75 * strong.size,
    .has_minutes = has_minutes,
    .is_narrow = is_narrow,
    .strong = strong,
    .small = small,
  };
  at.ordinal = at.box + gap;
  at.bar = at.ordinal + (is_narrow ? 0 : lb_page_pen_width (pen, &small, ordinal) + gap) +
           lb_page_pen_width (pen, &strong, "00");
  at.minutes = at.bar + (has_minutes ? 3 * gap + lb_page_pen_width (pen, &small, "00.0") : 0);
  at.total = at.minutes + (has_minutes ? 3 : 1) * gap + lb_page_pen_width (pen, &strong, "000");
  *out_width = at.total + gap + lb_page_pen_width (pen, &small, cylinder);
  return at;
}

static Places
find_places (const LbCard *card, double width, guint n_columns)
{
  double wanted;
  const Places at = place_at (card, 1, n_columns, &wanted);
  return wanted <= width ? at : place_at (card, width / wanted, n_columns, &wanted);
}

static char *
minutes_text (const LbCard *card, double s, int decimals)
{
  return isnan (s) ? g_strdup ("–") : lb_voice_number (&card->pen.voice, s / 60, decimals);
}

static void
show_bar (const LbCard *card,
          const LbCutStep *step,
          gsize i,
          double x,
          double y,
          double width,
          const Places *at)
{
  const LbPagePen *const pen = &card->pen;
  const double small_y = y + 0.9 * (at->strong.size - at->small.size);
  g_autofree char *number = g_strdup_printf ("%u", step->bar + 1u);
  g_autofree char *ordinal = lb_ordinal_text ((guint) i + 1);
  g_autofree char *takes = minutes_text (card, step->takes_s, 1);
  g_autofree char *total = minutes_text (card, step->total_s, 0);

  lb_page_pen_box (pen, x, y + 0.25 * at->strong.size, at->box);
  if (!at->is_narrow)
    lb_page_pen_text (pen, &at->small, LB_ALIGN_START, x + at->ordinal, small_y, 0, ordinal);
  lb_page_pen_text (pen, &at->strong, LB_ALIGN_END, x + at->bar, y, 0, number);
  if (at->has_minutes)
    lb_page_pen_text (pen, &at->small, LB_ALIGN_END, x + at->minutes, small_y, 0, takes);
  lb_page_pen_text (pen, &at->strong, LB_ALIGN_END, x + at->total, y, 0, total);
  if (step->changes_cylinder) {
    g_autofree char *words = cylinder_text (step->cylinder, at->is_narrow);
    lb_page_pen_text (pen, &at->small, LB_ALIGN_END, x + width, small_y, 0, words);
  }
}

/* The one line that nobody may overlook: white on black. */
static void
show_hook (const LbCard *card, double x, double y, double width, double height, gboolean wraps)
{
  const char *const words = _ ("HOOK TENSION ON");
  LbPageStyle style = lb_card_main_style (card, BAR_SIZE, TRUE, LB_INK_ON_STEP);
  const double room = width - 2;
  LbPagePen measuring = card->pen;
  measuring.is_drawing = FALSE;
  if (!wraps)
    style.size = lb_page_pen_fit (&card->pen, &style, 0.6 * style.size, room, words);
  double words_h = lb_page_pen_text (&measuring, &style, LB_ALIGN_MIDDLE, 0, 0, room, words);
  while (words_h > height && style.size > SMALL_SIZE * card->scale) {
    style.size *= 0.95;
    words_h = lb_page_pen_text (&measuring, &style, LB_ALIGN_MIDDLE, 0, 0, room, words);
  }
  if (card->pen.is_drawing) {
    lb_ink_set (card->pen.cr, card->pen.palette, LB_INK_TEXT);
    cairo_rectangle (card->pen.cr, x, y, width, height - 1);
    cairo_fill (card->pen.cr);
  }
  lb_page_pen_text (&card->pen, &style, LB_ALIGN_MIDDLE, x + width / 2,
                    y + (height - 1 - words_h) / 2, room, words);
}

static void
show_dive (const LbCard *card, guint dive, double x, double y, double width)
{
  const LbPageStyle small = lb_card_style (card, SMALL_SIZE, TRUE, LB_INK_TEXT);
  g_autofree char *words = g_strdup_printf (_ ("Dive %u"), dive);
  lb_page_pen_rule (&card->pen, LB_INK_LINE, 1, x, y + 1, x + width);
  lb_page_pen_text (&card->pen, &small, LB_ALIGN_START, x, y + 1.5, 0, words);
}

static double
show_column_heads (const LbCard *card, double x, double y, double width, const Places *at)
{
  const LbPageStyle style = lb_card_style (card, 8, FALSE, LB_INK_TEXT);
  const struct
  {
    const char *words;
    double end;
  } heads[] = {
    /* Translators: heads of a narrow table: number of the bar, its minutes, minutes run up. */
    { C_ ("steps of the cut", "bar"), at->bar },
    { C_ ("steps of the cut", "min"), at->minutes },
    { at->has_minutes ? C_ ("steps of the cut", "total") : C_ ("steps of the cut", "min"),
      at->total },
    { C_ ("steps of the cut", "cyl."), width },
  };
  double height = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (heads); i++) {
    if ((i == 1 && !at->has_minutes) || (i == 3 && !at->is_narrow))
      continue;
    height = lb_page_pen_text (&card->pen, &style, LB_ALIGN_END, x + heads[i].end, y, 0,
                               heads[i].words);
  }
  return height;
}

/* Why no order is given. */
static const char *
no_order_words (const LbCard *card)
{
  if (card->pile->n_bars == 0)
    return _ ("No bars on record: there is no order to burn.");
  if (card->plan.n_order == 0)
    return _ ("No bars left to burn on record.");
  if (card->pile->bar != NULL && card->pile->bar->kind == LB_BAR_STRAND)
    return _ ("Stressed strand: the numbers are no order to burn. A licensed engineer gives one.");
  return _ ("Which bars are burned is not on record: there is no order to burn.");
}

static void
add_sum (GString *words, const char *separator, char *said)
{
  if (words->len > 0)
    g_string_append (words, separator);
  g_string_append (words, said);
  g_free (said);
}

static char *
figure_sum (const LbCard *card, LbFigureId id)
{
  g_autofree char *value = lb_figure_text (&card->pen.voice, &card->plan, id);
  g_autofree char *range = lb_figure_range_text (&card->pen.voice, &card->plan, id);
  const char *const title = g_dgettext (GETTEXT_PACKAGE, lb_figure_title (id));
  return range != NULL ? g_strdup_printf ("%s: %s (%s)", title, value, range)
                       : g_strdup_printf ("%s: %s", title, value);
}

/* All of them, and what each takes; how many dives, where whole bars take more than the time alone.
 * Below several columns it runs on. */
static char *
sum_text (const LbCard *card)
{
  const char *const separator = lb_card_n_step_columns (card) > 2 ? " · " : "\n";
  g_autoptr (GString) words = g_string_new (NULL);
  add_sum (words, separator, figure_sum (card, LB_FIGURE_BURN));
  add_sum (words, separator, figure_sum (card, LB_FIGURE_RODS));
  const double n_dives = card->plan.figures[LB_FIGURE_DIVES].range.likely;
  if ((double) card->steps.n_dives > n_dives)
    add_sum (words, separator,
             g_strdup_printf (_ ("Dives of whole bars: %u"), card->steps.n_dives));
  if (card->plan.hold_missing == NULL && card->plan.hold.rig_before > 0) {
    g_autofree char *ringed = lb_bar_numbers_text (card->plan.hold.hold);
    /* Translators: of the bars in the section; which ones. */
    add_sum (words, separator, g_strdup_printf (_ ("Ringed, hook first: %s"), ringed));
  }
  if (lb_card_n_step_columns (card) <= 2 && card->plan.hold_missing == NULL &&
      card->plan.yield_most_pa > card->plan.yield_pa)
  {
    g_autofree char *yield = lb_voice_quantity (&card->pen.voice, LB_QUANTITY_STRESS,
                                                card->plan.yield_pa);
    /* Translators: a yield point. */
    add_sum (words, separator, g_strdup_printf (_ ("Steel not known: %s taken"), yield));
  }
  const double each_s = card->steps.steps[0].takes_s;
  if (!isnan (each_s)) {
    g_autofree char *each = minutes_text (card, each_s, 1);
    /* Translators: minutes that each of the bars takes: “Each bar: 2.2 min”. */
    add_sum (words, separator, g_strdup_printf (_ ("Each bar: %s min"), each));
  }
  return g_string_free (g_steal_pointer (&words), FALSE);
}

static double
show_table (const LbCard *card, double x, double y, double width)
{
  Line lines[LINES_MAX];
  guint columns[LINES_MAX];
  const guint n = find_lines (card, lines);
  const guint n_columns = lb_card_n_step_columns (card);
  const guint per_column = find_columns (lines, n, n_columns, columns);
  const double column_w = (width - (n_columns - 1) * LB_CARD_GAP / 2) / n_columns;
  const Places at = find_places (card, column_w, n_columns);
  double heads = 0;
  guint row = 0;

  for (guint i = 0; i < n; i++) {
    const double column_x = x + columns[i] * (column_w + LB_CARD_GAP / 2);
    const LbCutStep *const step = &card->steps.steps[lines[i].step];
    if (i == 0 || columns[i] != columns[i - 1]) {
      heads = show_column_heads (card, column_x, y, column_w, &at);
      row = 0;
    }
    const double line_y = y + heads + at.line * row++;
    const gboolean has_more = i + 1 < n && lines[i + 1].kind == LINE_HOOK_MORE;
    if (lines[i].kind == LINE_HOOK_MORE)
      continue;
    if (lines[i].kind == LINE_HOOK)
      show_hook (card, column_x, line_y, column_w, has_more ? 2 * at.line : at.line, has_more);
    else if (lines[i].kind == LINE_DIVE)
      show_dive (card, step->dive, column_x, line_y, column_w);
    else
      show_bar (card, step, lines[i].step, column_x, line_y, column_w, &at);
  }
  return heads + at.line * per_column;
}

double
lb_card_show_steps (const LbCard *card, double x, double y, double width)
{
  const LbPageStyle head = lb_card_style (card, HEAD_SIZE, TRUE, LB_INK_TEXT);
  const LbPageStyle plain = lb_card_style (card, SMALL_SIZE, FALSE, LB_INK_TEXT);
  const double start = y;

  y += lb_page_pen_text (&card->pen, &head, LB_ALIGN_START, x, y, width,
                         _ ("Order to burn, unless told otherwise"));
  if (!card->has_steps)
    return y +
           lb_page_pen_text (&card->pen, &plain, LB_ALIGN_START, x, y, width,
                             no_order_words (card)) -
           start;
  y += show_table (card, x, y, width) + 3;
  g_autofree char *sum = sum_text (card);
  y += lb_page_pen_text (&card->pen, &plain, LB_ALIGN_START, x, y, width, sum);
  return y - start;
}
