/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/page.h"

typedef struct
{
  const char *name;
  double width_pt, height_pt;
} Sheet;

/* ANSI/ASME Y14.1 size A and ISO 216 A4, in points of 1/72 in. */
static const Sheet SHEETS[] = {
  [LB_PAPER_LETTER] = { "letter", 612, 792 },
  [LB_PAPER_A4] = { "a4", 595.276, 841.89 },
};

void
lb_paper_size (LbPaper paper, double *out_width_pt, double *out_height_pt)
{
  g_return_if_fail (paper < G_N_ELEMENTS (SHEETS));
  *out_width_pt = SHEETS[paper].width_pt;
  *out_height_pt = SHEETS[paper].height_pt;
}

gboolean
lb_paper_from_name (const char *name, LbPaper *out_paper)
{
  for (LbPaper paper = LB_PAPER_LETTER; paper < G_N_ELEMENTS (SHEETS); paper++) {
    if (g_ascii_strcasecmp (name, SHEETS[paper].name) == 0) {
      *out_paper = paper;
      return TRUE;
    }
  }
  return FALSE;
}
