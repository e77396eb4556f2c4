/* SPDX-License-Identifier: GPL-3.0-or-later */
/*
 * Bents and rows beside the deck, scale bar and north arrow: what turns marks into a drawing that
 * can be measured and talked about.
 *
 * A bent is the piles that share a bent's name, a row those that share a row's. Each set of lines
 * (all bents, all rows) has one direction, the mean of its members' own, so that its labels stand
 * in one line along one side of the deck whatever way the pier lies: at the top for lines that
 * run more up than across the page, else at the left.
 */
#include "draw/plan-axes.h"
#include "draw/voice-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const double LABEL_SIZE = 11;
static const double LABEL_OFF_PX = 14; /* from the deck's edge to the label's middle */
static const double LABEL_GAP_PX = 8;  /* least between two labels */

/* The piles of one bent or row, summed up. */
typedef struct
{
  const char *name;
  guint n;
  double x, y, xx, xy, yy; /* sums about the plan's centre */
} Line;

static void
line_add (Line *line, double x, double y)
{
  line->n++;
  line->x += x;
  line->y += y;
  line->xx += x * x;
  line->xy += x * y;
  line->yy += y * y;
}

/* Gathers the lines of one kind in the order they are met. */
static GArray *
gather_lines (const LbFold *fold, gboolean is_row, LbPoint centre)
{
  GArray *const lines = g_array_new (FALSE, TRUE, sizeof (Line));
  g_autoptr (GHashTable) by_name = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < fold->n_piles; i++) {
    const LbPile *const pile = &fold->piles[i];
    const char *const name = is_row ? pile->row : pile->bent;
    if (name[0] == '\0')
      continue;
    guint at = GPOINTER_TO_UINT (g_hash_table_lookup (by_name, name));
    if (at == 0) {
      const Line line = { .name = name };
      g_array_append_val (lines, line);
      at = lines->len;
      g_hash_table_insert (by_name, (gpointer) name, GUINT_TO_POINTER (at));
    }
    line_add (&g_array_index (lines, Line, at - 1), pile->x_m - centre.x, pile->y_m - centre.y);
  }
  return lines;
}

/* The mean direction of the lines, each weighted by its spread. Directions are averaged at twice
 * their angle, since a line has no sense. FALSE when no line has two places. */
static gboolean
find_direction (const GArray *lines, LbPoint *out)
{
  double cos2 = 0, sin2 = 0, spread = 0;
  for (guint i = 0; i < lines->len; i++) {
    const Line *const line = &g_array_index (lines, Line, i);
    const double xx = line->xx - line->x * line->x / line->n;
    const double xy = line->xy - line->x * line->y / line->n;
    const double yy = line->yy - line->y * line->y / line->n;
    cos2 += xx - yy;
    sin2 += 2 * xy;
    spread += xx + yy;
  }
  if (hypot (cos2, sin2) <= 1e-6 * spread || spread <= 1e-6)
    return FALSE;
  const double angle = atan2 (sin2, cos2) / 2;
  *out = (LbPoint){ cos (angle), sin (angle) };
  return TRUE;
}

/* Of the two senses, the one toward the side where the labels stand. */
static LbPoint
toward_labels (LbPoint direction)
{
  const gboolean is_steep = fabs (direction.y) >= fabs (direction.x) - 1e-9;
  const gboolean is_turned = is_steep ? direction.y < 0 : direction.x > 0;
  return is_turned ? (LbPoint){ -direction.x, -direction.y } : direction;
}

static int
compare_along (gconstpointer a, gconstpointer b, gpointer data)
{
  const LbPlanAxis *const p = a, *const q = b;
  const LbPoint *const away = data;
  const double along_p = p->x_m * away->y - p->y_m * away->x;
  const double along_q = q->x_m * away->y - q->y_m * away->x;
  return (along_p > along_q) - (along_p < along_q);
}

static void
add_axes (GArray *axes,
          const GArray *lines,
          LbPoint away,
          gboolean is_row,
          const LbPlan *plan,
          LbPoint centre)
{
  double edge = -INFINITY;
  for (gsize i = 0; i < plan->n_deck; i++)
    edge = MAX (edge,
                (plan->deck[i].x - centre.x) * away.x + (plan->deck[i].y - centre.y) * away.y);

  const guint first = axes->len;
  for (guint i = 0; i < lines->len; i++) {
    const Line *const line = &g_array_index (lines, Line, i);
    const double x = line->x / line->n, y = line->y / line->n;
    const double out = edge - (x * away.x + y * away.y);
    const LbPlanAxis axis = {
      .x_m = centre.x + x + out * away.x,
      .y_m = centre.y + y + out * away.y,
      .away = away,
      .is_row = is_row,
      .text = g_strdup (line->name),
    };
    g_array_append_val (axes, axis);
  }
  if (axes->len > first)
    g_qsort_with_data (&g_array_index (axes, LbPlanAxis, first), (int) (axes->len - first),
                       sizeof (LbPlanAxis), compare_along, &away);
}

void
lb_plan_find_axes (LbPlan *plan, const LbFold *fold)
{
  const LbPoint centre = { (plan->left_m + plan->right_m) / 2, (plan->bottom_m + plan->top_m) / 2 };
  g_autoptr (GArray) bents = gather_lines (fold, FALSE, centre);
  g_autoptr (GArray) rows = gather_lines (fold, TRUE, centre);
  LbPoint along_bents = { 0, 1 }, along_rows = { -1, 0 };
  const gboolean has_bents = find_direction (bents, &along_bents);
  const gboolean has_rows = find_direction (rows, &along_rows);
  /* One kind alone with a direction: the other kind crosses it. */
  if (has_bents && !has_rows)
    along_rows = (LbPoint){ -along_bents.y, along_bents.x };
  if (has_rows && !has_bents)
    along_bents = (LbPoint){ -along_rows.y, along_rows.x };

  GArray *const axes = g_array_new (FALSE, FALSE, sizeof (LbPlanAxis));
  add_axes (axes, bents, toward_labels (along_bents), FALSE, plan, centre);
  add_axes (axes, rows, toward_labels (along_rows), TRUE, plan, centre);
  plan->n_axes = axes->len;
  plan->axes = (LbPlanAxis *) (void *) g_array_free (axes, FALSE);
}

/* "Bent 7" where there is room, else "7". */
static char *
axis_text (const LbPlanAxis *axis, gboolean is_long)
{
  if (!is_long)
    return g_strdup (axis->text);
  return g_strdup_printf (axis->is_row ? _ ("Row %s") : _ ("Bent %s"), axis->text);
}

/* The least distance on the page between two labels of a kind. */
static double
least_distance (const LbPlan *plan, const LbPlanView *view, gboolean is_row)
{
  double least = INFINITY;
  const LbPlanAxis *before = NULL;
  for (gsize i = 0; i < plan->n_axes; i++) {
    const LbPlanAxis *const axis = &plan->axes[i];
    if (axis->is_row != is_row)
      continue;
    if (before != NULL)
      least = MIN (least, hypot (axis->x_m - before->x_m, axis->y_m - before->y_m));
    before = axis;
  }
  return least * view->px_per_m;
}

static void
draw_axes_of_kind (cairo_t *cr,
                   const LbVoice *voice,
                   const LbPlan *plan,
                   const LbPlanView *view,
                   double width,
                   double height,
                   gboolean is_row)
{
  /* "Bent 12" across the page needs about five ems; rows are letters and stand alone. */
  const double room = 5 * LABEL_SIZE * voice->scale;
  const gboolean is_long = !is_row && least_distance (plan, view, is_row) > room;
  /* Marks are drawn larger than to scale when the pier is small on the page. */
  const double mark = plan->n_piles > 0 ? lb_plan_mark_size (plan, view, 0) : 0;
  LbPoint last = { -INFINITY, -INFINITY };
  double last_width = 0, last_height = 0;
  for (gsize i = 0; i < plan->n_axes; i++) {
    const LbPlanAxis *const axis = &plan->axes[i];
    if (axis->is_row != is_row)
      continue;
    g_autofree char *text = axis_text (axis, is_long);
    LbPoint at;
    double text_width, text_height;
    lb_plan_to_page (view, width, height, axis->x_m, axis->y_m, &at);
    lb_text_measure (cr, voice, text, LABEL_SIZE, is_row, 0, &text_width, &text_height);
    const double off = LABEL_OFF_PX + mark / 2 + fabs (axis->away.x) * text_width / 2;
    at.x += axis->away.x * off;
    at.y -= axis->away.y * off;
    const gboolean is_clear = fabs (at.x - last.x) >=
                                (text_width + last_width) / 2 + LABEL_GAP_PX ||
                              fabs (at.y - last.y) >= (text_height + last_height) / 2;
    if (!is_clear)
      continue;
    lb_text_show (cr, voice, text, LABEL_SIZE, is_row, LB_ALIGN_MIDDLE, at.x,
                  at.y - text_height / 2, 0);
    last = at;
    last_width = text_width;
    last_height = text_height;
  }
}

void
lb_plan_draw_axes (cairo_t *cr,
                   const LbPalette *palette,
                   const LbVoice *voice,
                   const LbPlan *plan,
                   const LbPlanView *view,
                   double width,
                   double height)
{
  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  draw_axes_of_kind (cr, voice, plan, view, width, height, FALSE);
  draw_axes_of_kind (cr, voice, plan, view, width, height, TRUE);
}

/* The largest of 1, 2, 5 times a power of ten that is not over @most. */
static double
round_step (double most)
{
  const double power = pow (10, floor (log10 (most) + 1e-9));
  const double lead = most / power;
  return power * (lead >= 5 ? 5 : lead >= 2 ? 2 : 1);
}

void
lb_plan_draw_scale_bar (cairo_t *cr,
                        const LbPalette *palette,
                        const LbVoice *voice,
                        const LbPlanView *view,
                        double x,
                        double y,
                        double longest)
{
  static const double THICKNESS = 4;
  const double px_per_unit = view->px_per_m *
                             lb_quantity_to_si (LB_QUANTITY_LENGTH, voice->units, 1);
  const double step = round_step (longest / 2 / px_per_unit);
  const double step_px = step * px_per_unit;
  const int decimals = (int) MAX (0, -floor (log10 (step) + 1e-9));

  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, x, y - THICKNESS, step_px, THICKNESS);
  cairo_fill (cr);
  cairo_rectangle (cr, x + step_px, y - THICKNESS + 0.5, step_px - 0.5, THICKNESS - 1);
  cairo_stroke (cr);

  lb_ink_set (cr, palette, LB_INK_DIM_TEXT);
  double text_height;
  lb_text_measure (cr, voice, "0", LABEL_SIZE, FALSE, 0, NULL, &text_height);
  for (int i = 0; i <= 2; i++) {
    g_autofree char *number = lb_voice_number (voice, i * step, decimals);
    /* The unit stands after the last number, which keeps its place under the tick. */
    const LbAlign align = i == 0 ? LB_ALIGN_START : LB_ALIGN_MIDDLE;
    lb_text_show (cr, voice, number, LABEL_SIZE, FALSE, align, x + i * step_px,
                  y - THICKNESS - 2 - text_height, 0);
    if (i < 2)
      continue;
    double number_width;
    lb_text_measure (cr, voice, number, LABEL_SIZE, FALSE, 0, &number_width, NULL);
    lb_text_show (cr, voice, lb_quantity_unit (LB_QUANTITY_LENGTH, voice->units), LABEL_SIZE, FALSE,
                  LB_ALIGN_START, x + i * step_px + number_width / 2 + 3,
                  y - THICKNESS - 2 - text_height, 0);
  }
}

void
lb_plan_draw_north (cairo_t *cr,
                    const LbPalette *palette,
                    const LbVoice *voice,
                    double x,
                    double y,
                    double size)
{
  /* Translators: the letter over the north arrow. */
  const char *const letter = C_ ("north arrow", "N");
  double text_height;
  lb_text_measure (cr, voice, letter, LABEL_SIZE + 1, TRUE, 0, NULL, &text_height);
  const double top = y - size / 2 + text_height, bottom = y + size / 2;
  const double notch = bottom - (bottom - top) * 0.24, half = (bottom - top) * 0.3;

  lb_ink_set (cr, palette, LB_INK_TEXT);
  lb_text_show (cr, voice, letter, LABEL_SIZE + 1, TRUE, LB_ALIGN_MIDDLE, x, y - size / 2 - 2, 0);
  lb_ink_set (cr, palette, LB_INK_LINE);
  cairo_set_line_width (cr, 1.25);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_move_to (cr, x, top);
  cairo_line_to (cr, x - half, bottom);
  cairo_line_to (cr, x, notch);
  cairo_close_path (cr);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);
  cairo_move_to (cr, x, top);
  cairo_line_to (cr, x + half, bottom);
  cairo_line_to (cr, x, notch);
  cairo_stroke (cr);
}
