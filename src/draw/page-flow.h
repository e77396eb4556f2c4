/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/page-pen.h"

G_BEGIN_DECLS

/* Content that runs down pages, broken by measuring. The whole of it is run through for every
 * page; only the page asked for is put down. */
typedef struct
{
  LbPagePen pen;
  double left, right, top, bottom;
  double y;
  gsize page;          /* where the content is now, from 0 */
  gsize shown;         /* the page to draw, LB_PAGE_NONE to only count */
  const char *running; /* head of every page but the first; borrowed */
} LbPageFlow;

#define LB_PAGE_NONE G_MAXSIZE

typedef struct
{
  const char *title;
  double share; /* of the width; together 1 */
  LbAlign align;
} LbPageColumn;

/* Starts a new page when fewer than @height points are left on this one. */
gboolean lb_page_flow_need (LbPageFlow *flow, double height);

/* A section's title, kept together with the first lines under it. */
void lb_page_flow_section (LbPageFlow *flow, const char *title);

/* One paragraph. */
void lb_page_flow_text (LbPageFlow *flow, const LbPageStyle *style, const char *text);

/**
 * lb_page_flow_table:
 * @cells: a row after the other, @n_columns each
 *
 * The heads stand again on every page the table runs on to. A row stays in one piece; a cell too
 * long for that is cut and ends in "…".
 */
void lb_page_flow_table (LbPageFlow *flow,
                         const LbPageColumn *columns,
                         gsize n_columns,
                         double width,
                         const char *const *cells,
                         gsize n_rows);

G_END_DECLS
