/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "book/day-account.h"
#include "book/fold.h"
#include "draw/palette.h"
#include "draw/picture-text.h"
#include "trade/cut-plan.h"

G_BEGIN_DECLS

/* Pages for paper, in points, drawn black-and-white legible with LB_PALETTE_PRINT. */
typedef enum {
  LB_PAPER_LETTER,
  LB_PAPER_A4,
} LbPaper;

void lb_paper_size (LbPaper paper, double *out_width_pt, double *out_height_pt);
gboolean lb_paper_from_name (const char *name, LbPaper *out_paper);

/* The cut card: one pile, one page, every figure with its range and reason, cautions with boxes
 * to tick, side view and section. @basis is the fold's, see lb_fold_basis(). */
void lb_card_draw (cairo_t *cr,
                   const LbVoice *voice,
                   const LbFold *fold,
                   const LbCutBasis *basis,
                   guint pile,
                   double width_pt,
                   double height_pt);

/* The daily production report: shifts and signatures, what was done, dives, rods and oxygen, delays,
 * totals to date, a small plan. Pages break by measuring, so that their number hangs on voice and
 * paper. @account: by lb_day_account_new(). */
gsize lb_day_report_n_pages (const LbVoice *voice,
                             const LbDayAccount *account,
                             double width_pt,
                             double height_pt);
void lb_day_report_draw (cairo_t *cr,
                         const LbVoice *voice,
                         const LbDayAccount *account,
                         gsize page,
                         double width_pt,
                         double height_pt);

G_END_DECLS
