/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/steel.h"

#include "trade/msgid.h"

#include <limits.h>

/* Exact factors: NIST SP 811, appendix B. */
#define INCH 0.0254
#define KSI  (1000 * 0.45359237 * 9.80665 / (INCH * INCH))

enum {
  STRUCTURAL,
  INTERMEDIATE,
  HARD,
  GRADE_60,
  GRADE_75,
};

static const LbSteelGrade grades[] = {
  [STRUCTURAL] = { .name = N_ ("structural"),
                   .yield_pa = 33 * KSI,
                   .tag = LB_TAG_STANDARD,
                   .source = N_ ("ASTM A15, 1911 to 1966") },
  [INTERMEDIATE] = { .name = N_ ("intermediate"),
                     .yield_pa = 40 * KSI,
                     .tag = LB_TAG_STANDARD,
                     .source = N_ ("ASTM A15, 1911 to 1966; grade 40 of ASTM A615") },
  [HARD] = { .name = N_ ("hard"),
             .yield_pa = 50 * KSI,
             .tag = LB_TAG_STANDARD,
             .source = N_ ("ASTM A15, 1911 to 1966") },
  [GRADE_60] = { .name = N_ ("grade 60"),
                 .yield_pa = 60 * KSI,
                 .tag = LB_TAG_STANDARD,
                 .source = N_ ("ASTM A432, 1964; ASTM A615 from 1968") },
  [GRADE_75] = { .name = N_ ("grade 75"),
                 .yield_pa = 75 * KSI,
                 .tag = LB_TAG_STANDARD,
                 .source = N_ ("ASTM A431, 1964; ASTM A615 from 1968") },
};

/* Which grade a year stands for is nobody's standard: the low one of each standard's time. */
static const LbSteelPeriod periods[] = {
  { .first_year = INT_MIN,
    .grade = &grades[STRUCTURAL],
    .tag = LB_TAG_COMMON_PRACTICE,
    .source = N_ ("Before 1950: what ASTM A15 gave when an order named no grade") },
  { .first_year = 1950,
    .grade = &grades[INTERMEDIATE],
    .tag = LB_TAG_COMMON_PRACTICE,
    .source = N_ ("1950 to 1967: intermediate grade was the usual order under ASTM A15") },
  { .first_year = 1968,
    .grade = &grades[GRADE_60],
    .tag = LB_TAG_COMMON_PRACTICE,
    .source = N_ ("From 1968: grade 60 is the usual order under ASTM A615") },
};

const LbSteelGrade *
lb_steel_grades (gsize *out_n)
{
  if (out_n)
    *out_n = G_N_ELEMENTS (grades);
  return grades;
}

const LbSteelPeriod *
lb_steel_for_year (int year)
{
  gsize at = G_N_ELEMENTS (periods) - 1;

  while (year < periods[at].first_year)
    at--;
  return &periods[at];
}
