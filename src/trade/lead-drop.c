/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/lead-drop.h"

#include <math.h>

#define FOOT 0.3048
/* Ω of one foot of copper one circular mil thick, at 20 °C: a welding trade article on cables. */
#define OHM_CMIL_PER_FOOT 10.37
/* Of a volt: a drop of 4 V made of metres is still within 4 V. */
#define SLACK 1e-9

/* Circular mils of the American wire gauge, from memory, but for 1/0 which the article's 0.0829 in²
 * bears out. */
static const LbLeadSize sizes[] = {
  { "2", 66360 },    { "1", 83690 },    { "1/0", 105600 },
  { "2/0", 133100 }, { "3/0", 167800 }, { "4/0", 211600 },
};

const LbLeadSize *
lb_lead_sizes (gsize *out_n)
{
  g_return_val_if_fail (out_n, NULL);

  *out_n = G_N_ELEMENTS (sizes);
  return sizes;
}

const LbLeadSize *
lb_lead_size_find (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (g_strcmp0 (sizes[i].name, name) == 0)
      return &sizes[i];
  return NULL;
}

double
lb_lead_drop (const LbLeadSize *size, double circuit_m, double current_a)
{
  g_return_val_if_fail (size, (double) NAN);

  if (!(circuit_m >= 0 && current_a >= 0))
    return (double) NAN;
  return OHM_CMIL_PER_FOOT * (circuit_m / FOOT) / size->cmil * current_a;
}

const LbLeadSize *
lb_lead_size_least (double circuit_m, double current_a)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (lb_lead_drop (&sizes[i], circuit_m, current_a) <= LB_LEAD_DROP_MOST + SLACK)
      return &sizes[i];
  return NULL;
}
