/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trade/hose.h"

#include "trade/oxygen-state.h"
#include "trade/oxygen.h"
#include "trade/trade-error.h"

#include <math.h>

/* Pa s of oxygen at 70 °F, from memory; the correlation of Lemmon and Jacobsen (Int. J. Thermophys. 25,
 * 2004) gives 2.03e-5 for thin gas. It goes into the loss by about its fifth root. */
#define VISCOSITY 2.06e-5
/* R T / M at 70 °F, J/kg: at the pressures of a hose the gas is ideal to 1 %. */
#define GAS_J_KG (LB_OXYGEN_GAS_CONSTANT * LB_FREE_GAS_K / LB_OXYGEN_KG_PER_MOLE)
/* Under this Reynolds number flow is laminar: any text on flow in pipes. */
#define LAMINAR 2300

/* Pounds per square inch: NIST SP 811, appendix B. */
#define PSI (0.45359237 * 9.80665 / (0.0254 * 0.0254))

/* What a flow asks of the hose. */
typedef struct
{
  double squares_pa2; /* p1² − p2², absolute */
  double sonic_pa;    /* the least absolute pressure at which the outlet passes the flow */
} Demand;

static gboolean
check (const LbHose *hose, double flow_m3_s, double pressure_pa, GError **error)
{
  const char *fault = NULL;

  if (!(hose->length_m >= 0 && isfinite (hose->length_m)))
    fault = "The hose has no length: measure it on deck";
  else if (!(flow_m3_s >= 0 && isfinite (flow_m3_s)))
    fault = "The oxygen flow is not a number of 0 or more";
  else if (!(pressure_pa >= 0 && pressure_pa <= LB_OXYGEN_PA_MOST))
    fault = "The pressure at the hose is outside 0 to 30 MPa (4350 psi)";
  else if (isnan (hose->flat_pa_per_m) && !(hose->bore_m > 0 && isfinite (hose->bore_m)))
    fault = "The hose has no inside diameter: read it off the hose, often 3/8 in";
  else if (hose->flat_pa_per_m < 0 || isinf (hose->flat_pa_per_m))
    fault = "The allowance for the hose is not a number of 0 or more";

  if (fault == NULL)
    return TRUE;
  g_set_error_literal (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN, fault);
  return FALSE;
}

/* Isothermal flow in a smooth pipe: p1² − p2² = f (L/D) G² R T / M, G the mass flow over the bore's
 * area and f = (0.79 ln Re − 1.64)⁻² (Petukhov), or 64/Re in laminar flow. */
static Demand
demand_of (const LbHose *hose, double flow_m3_s)
{
  if (flow_m3_s <= 0)
    return (Demand){ 0 };

  const double flux = lb_oxygen_mass (flow_m3_s) / (G_PI / 4 * hose->bore_m * hose->bore_m);
  const double reynolds = flux * hose->bore_m / VISCOSITY;
  const double root = 0.79 * log (reynolds) - 1.64;
  const double friction = reynolds < LAMINAR ? 64 / reynolds : 1 / (root * root);

  return (Demand){
    .squares_pa2 = friction * (hose->length_m / hose->bore_m) * flux * flux * GAS_J_KG,
    .sonic_pa = flux * sqrt (GAS_J_KG),
  };
}

static gboolean
refuse_flow (const LbHose *hose, double pressure_pa, GError **error)
{
  g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
               "%.0f m of %.1f mm hose cannot pass that flow at %.0f psi: "
               "take a wider or shorter hose",
               hose->length_m, hose->bore_m * 1000, pressure_pa / PSI);
  return FALSE;
}

gboolean
lb_hose_loss (const LbHose *hose,
              double flow_m3_s,
              double outlet_pa,
              double *out_loss_pa,
              GError **error)
{
  g_return_val_if_fail (hose && out_loss_pa, FALSE);

  if (!check (hose, flow_m3_s, outlet_pa, error))
    return FALSE;
  if (!isnan (hose->flat_pa_per_m)) {
    *out_loss_pa = hose->flat_pa_per_m * hose->length_m;
    return TRUE;
  }

  const Demand demand = demand_of (hose, flow_m3_s);
  const double outlet = outlet_pa + LB_FREE_GAS_PA;

  if (outlet < demand.sonic_pa)
    return refuse_flow (hose, outlet_pa, error);
  *out_loss_pa = sqrt (outlet * outlet + demand.squares_pa2) - outlet;
  return TRUE;
}
