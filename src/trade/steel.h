/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "trade/tag.h"

#include <glib.h>

G_BEGIN_DECLS

/* Young's modulus of reinforcing steel, Pa: 29 million psi, AISC Steel Construction Manual and
 * ACI 318 alike. */
#define LB_STEEL_ELASTIC_PA (29e6 * 0.45359237 * 9.80665 / (0.0254 * 0.0254))

/* A grade of reinforcing bar. */
typedef struct
{
  const char *name; /* "structural", "grade 60": msgid */
  double yield_pa;  /* the least yield point the standard allows */
  LbTag tag;
  const char *source;
} LbSteelGrade;

/* Weakest first; the table lives for ever. */
const LbSteelGrade *lb_steel_grades (gsize *out_n);

/* The grade to reckon with when only the year is known. */
typedef struct
{
  int first_year; /* the rule holds from here to the next period */
  const LbSteelGrade *grade;
  LbTag tag; /* of the rule, not of the grade's own yield point */
  const char *source;
} LbSteelPeriod;

/**
 * lb_steel_for_year:
 * @year: the pile was made in; 0 or less when it is not known
 *
 * The low grade of the time: stronger bars were sold in every period, and only mill papers or a
 * test can say that these are (docs/methods.md, "Hold"). An unknown year is taken as the oldest.
 */
const LbSteelPeriod *lb_steel_for_year (int year);

G_END_DECLS
