/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk/shell/pages.h"

#include "desk/plan/plan-page.h"
#include "desk/production/production-page.h"
#include "desk/shift/shift-page.h"

#include <glib/gi18n-lib.h>

static const LbPageKind kinds[] = {
  { "plan", N_ ("_Plan"), "lb-plan-symbolic", lb_plan_page_get_type },
  { "shift", N_ ("_Shift"), "lb-shift-symbolic", lb_shift_page_get_type },
  { "production", N_ ("P_roduction"), "lb-production-symbolic", lb_production_page_get_type },
};

const LbPageKind *
lb_page_kinds (gsize *out_n)
{
  *out_n = G_N_ELEMENTS (kinds);
  return kinds;
}
