/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/page-flow.h"

#include <string.h>

#define TABLE_SIZE     8.5
#define SURELY_FITS    100 /* bytes that never fill half a page */
#define CELL_PAD       8.0
#define ROW_GAP        2.5
#define SECTION_SIZE   10.5
#define SECTION_BEFORE 9.0
#define SECTION_KEEP   44.0 /* title, head and a row */
#define RUNNING_SIZE   8.0
#define ROW_SHARE_MOST 0.5 /* of the page's height */

static void
set_page (LbPageFlow *flow, gsize page)
{
  flow->page = page;
  flow->pen.is_drawing = page == flow->shown;
}

static void
new_page (LbPageFlow *flow)
{
  const LbPageStyle style = { .size = RUNNING_SIZE, .ink = LB_INK_DIM_TEXT };
  set_page (flow, flow->page + 1);
  flow->y = flow->top;
  flow->y += lb_page_pen_text (&flow->pen, &style, LB_ALIGN_START, flow->left, flow->y,
                               flow->right - flow->left, flow->running);
  flow->y += 2;
  lb_page_pen_rule (&flow->pen, LB_INK_LINE, 0.7, flow->left, flow->y, flow->right);
  flow->y += 6;
}

gboolean
lb_page_flow_need (LbPageFlow *flow, double height)
{
  if (flow->y + height <= flow->bottom)
    return FALSE;
  new_page (flow);
  return TRUE;
}

void
lb_page_flow_section (LbPageFlow *flow, const char *title)
{
  const LbPageStyle style = { .size = SECTION_SIZE, .is_bold = TRUE, .ink = LB_INK_TEXT };
  if (!lb_page_flow_need (flow, SECTION_BEFORE + SECTION_KEEP))
    flow->y += SECTION_BEFORE;
  flow->y += lb_page_pen_text (&flow->pen, &style, LB_ALIGN_START, flow->left, flow->y, 0, title);
  lb_page_pen_rule (&flow->pen, LB_INK_LINE, 0.7, flow->left, flow->y + 1, flow->right);
  flow->y += 4;
}

/* @text, or as much of its beginning as is no taller than @height; to be freed. */
static char *
cut_to_height (const LbPagePen *pen,
               const LbPageStyle *style,
               double width,
               double height,
               const char *text)
{
  LbPagePen dry = *pen;
  dry.is_drawing = FALSE;
  if (strlen (text) < SURELY_FITS)
    return g_strdup (text);
  if (lb_page_pen_text (&dry, style, LB_ALIGN_START, 0, 0, width, text) <= height)
    return g_strdup (text);
  glong fits = 0;
  glong too_long = g_utf8_strlen (text, -1);
  while (too_long - fits > 1) {
    const glong middle = (fits + too_long) / 2;
    g_autofree char *start = g_utf8_substring (text, 0, middle);
    g_autofree char *cut = g_strconcat (start, "…", NULL);
    if (lb_page_pen_text (&dry, style, LB_ALIGN_START, 0, 0, width, cut) <= height)
      fits = middle;
    else
      too_long = middle;
  }
  g_autofree char *start = g_utf8_substring (text, 0, fits);
  return g_strconcat (start, "…", NULL);
}

void
lb_page_flow_text (LbPageFlow *flow, const LbPageStyle *style, const char *text)
{
  const double width = flow->right - flow->left;
  const double most = ROW_SHARE_MOST * (flow->bottom - flow->top);
  g_autofree char *shown = cut_to_height (&flow->pen, style, width, most, text);
  LbPagePen dry = flow->pen;
  dry.is_drawing = FALSE;
  lb_page_flow_need (flow, lb_page_pen_text (&dry, style, LB_ALIGN_START, 0, 0, width, shown));
  flow->y += lb_page_pen_text (&flow->pen, style, LB_ALIGN_START, flow->left, flow->y, width,
                               shown);
  flow->y += ROW_GAP;
}

/* One row at the flow's place, or only its height with a dry @pen. */
static double
show_row (const LbPageFlow *flow,
          const LbPagePen *pen,
          const LbPageStyle *style,
          const LbPageColumn *columns,
          gsize n_columns,
          double width,
          const char *const *cells)
{
  const double most = ROW_SHARE_MOST * (flow->bottom - flow->top);
  double x = flow->left;
  double height = 0;
  for (gsize i = 0; i < n_columns; i++) {
    const double room = columns[i].share * width - CELL_PAD;
    if (cells[i][0] == '\0') {
      x += columns[i].share * width;
      continue;
    }
    g_autofree char *shown = cut_to_height (pen, style, room, most, cells[i]);
    /* Numbers keep to one line, so that their right edges stand under each other. */
    const gboolean is_end = columns[i].align == LB_ALIGN_END;
    const double cell = lb_page_pen_text (pen, style, columns[i].align, is_end ? x + room : x,
                                          flow->y, is_end ? 0 : room, shown);
    height = MAX (height, cell);
    x += columns[i].share * width;
  }
  return height + ROW_GAP;
}

static void
show_heads (LbPageFlow *flow, const LbPageColumn *columns, gsize n_columns, double width)
{
  const LbPageStyle style = { .size = TABLE_SIZE, .is_bold = TRUE, .ink = LB_INK_TEXT };
  const char **const titles = g_new (const char *, n_columns);
  for (gsize i = 0; i < n_columns; i++)
    titles[i] = columns[i].title;
  flow->y += show_row (flow, &flow->pen, &style, columns, n_columns, width, titles);
  g_free (titles);
}

void
lb_page_flow_table (LbPageFlow *flow,
                    const LbPageColumn *columns,
                    gsize n_columns,
                    double width,
                    const char *const *cells,
                    gsize n_rows)
{
  const LbPageStyle style = { .size = TABLE_SIZE, .ink = LB_INK_TEXT };
  show_heads (flow, columns, n_columns, width);
  for (gsize i = 0; i < n_rows; i++) {
    const char *const *const row = cells + i * n_columns;
    LbPagePen dry = flow->pen;
    dry.is_drawing = FALSE;
    if (lb_page_flow_need (flow, show_row (flow, &dry, &style, columns, n_columns, width, row)))
      show_heads (flow, columns, n_columns, width);
    lb_page_pen_rule (&flow->pen, LB_INK_HAIR, 0.4, flow->left, flow->y - 0.5 * ROW_GAP,
                      flow->left + width);
    flow->y += show_row (flow, &flow->pen, &style, columns, n_columns, width, row);
  }
}
