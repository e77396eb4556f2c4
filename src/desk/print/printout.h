/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "desk/shell/job.h"
#include "draw/page.h"

G_BEGIN_DECLS

/* What is put on paper: the cut cards of some piles, a page each, or the report of one day. It
 * keeps the job, and may outlive the window that asked for it. */
typedef struct _LbPrintout LbPrintout;

LbPrintout *lb_printout_new_cards (LbJob *job, const guint *piles, gsize n); /* @n at least 1 */
LbPrintout *lb_printout_new_day (LbJob *job, guint32 day);
void lb_printout_free (LbPrintout *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LbPrintout, lb_printout_free)

/* "Cut card G7", "Cut cards of 12 piles", "Daily report Tue 14 Jul 2026"; borrowed. */
const char *lb_printout_get_title (const LbPrintout *self);

/* "Cut card G7.pdf", fit for any file system; to be freed. */
char *lb_printout_dup_file_name (const LbPrintout *self);

/* The paper somebody chose, else the one that goes with the job's units. */
LbPaper lb_printout_get_paper (const LbPrintout *self);

/* Lays it out for a paper of this size in points; returns the number of pages. */
gsize lb_printout_lay (LbPrintout *self, double width, double height);

/* Draws one page, at the size it was laid out for. */
void lb_printout_draw (LbPrintout *self, cairo_t *cr, gsize page);

G_END_DECLS
