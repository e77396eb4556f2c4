/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Voltage lost in the leads of a cutting circuit. It says nothing of their heat: what current a
 * cable bears is the maker's to say. */

/* Keep the drop of the whole circuit within this (AWS Safety & Health Fact Sheet No. 39, 2016). */
#define LB_LEAD_DROP_MOST 4.0 /* V */

typedef struct
{
  const char *name; /* AWG: "2", "1", "1/0" … "4/0" */
  double cmil;      /* circular mils of copper */
} LbLeadSize;

/* Thinnest first. */
const LbLeadSize *lb_lead_sizes (gsize *out_n);

/**
 * lb_lead_size_find:
 *
 * Returns: (nullable): the size of that name, %NULL when there is none
 */
const LbLeadSize *lb_lead_size_find (const char *name);

/**
 * lb_lead_drop:
 * @circuit_m: copper out and back: lead and ground together
 *
 * Returns: V at 20 °C; NAN when a length or current is under 0 or not known.
 */
double lb_lead_drop (const LbLeadSize *size, double circuit_m, double current_a);

/**
 * lb_lead_size_least:
 *
 * Returns: (nullable): the thinnest that keeps the drop within %LB_LEAD_DROP_MOST; %NULL when none
 *   does, or a length or current is under 0 or not known
 */
const LbLeadSize *lb_lead_size_least (double circuit_m, double current_a);

G_END_DECLS
