/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Oxygen at the pressure of a cylinder holds some 7 % more than the ideal gas law says. The equation
 * of state is printed as the free energy over RT of density and temperature; pressure is its slope:
 *
 *   p = ρ R T / M (1 + Σ n δ^d τ^t e^(−δ^l) (d − l δ^l)),   δ = ρ / ρc,   τ = Tc / T,
 *
 * where a term without l has no e. Density from pressure is the root of that: Newton's steps, kept
 * between two densities that hold the root. Above the critical temperature (154.581 K), and so in
 * all of the range here, pressure rises with density everywhere and there is only one root. */
#include "trade/oxygen-state.h"

#include "trade/trade-error.h"

#include <math.h>

/* Critical point, by which the equation is reduced: the paper named in the header. */
#define CRITICAL_K      154.581
#define CRITICAL_MOL_M3 13630.0
#define CRITICAL_KG_M3  (CRITICAL_MOL_M3 * LB_OXYGEN_KG_PER_MOLE)
/* Denser than oxygen gets anywhere in the range: 30 MPa at −50 °C is under 600 kg/m³. */
#define DENSITY_MOST 1200.0
/* Of the density: far finer than the equation, which is good to 0.1 %. */
#define DENSITY_TOLERANCE 1e-13
#define STEPS_MOST        100

typedef struct
{
  double n, t;
  int d, l;
} Term;

/* Stewart, Jacobsen and Wagner (1991): coefficient, power of τ, power of δ, power of δ in e. */
static const Term terms[] = {
  { 0.3983768749, 0, 1, 0 },      { -1.846157454, 1.5, 1, 0 },   { 0.4183473197, 2.5, 1, 0 },
  { 0.02370620711, -0.5, 2, 0 },  { 0.09771730573, 1.5, 2, 0 },  { 0.03017891294, 2, 2, 0 },
  { 0.02273353212, 0, 3, 0 },     { 0.01357254086, 1, 3, 0 },    { -0.04052698943, 2.5, 3, 0 },
  { 0.0005454628515, 0, 6, 0 },   { 0.0005113182277, 2, 7, 0 },  { 2.953466883e-07, 5, 7, 0 },
  { -8.687645072e-05, 2, 8, 0 },  { -0.2127082589, 5, 1, 2 },    { 0.08735941958, 6, 1, 2 },
  { 0.127550919, 3.5, 2, 2 },     { -0.09067701064, 5.5, 2, 2 }, { -0.03540084206, 3, 3, 2 },
  { -0.03623278059, 7, 3, 2 },    { 0.0132769929, 6, 5, 2 },     { -0.0003254111865, 8.5, 6, 2 },
  { -0.008313582932, 4, 7, 2 },   { 0.002124570559, 6.5, 8, 2 }, { -0.0008325206232, 5.5, 10, 2 },
  { -2.626173276e-05, 22, 2, 4 }, { 0.002599581482, 11, 3, 4 },  { 0.009984649663, 18, 3, 4 },
  { 0.002199923153, 11, 4, 4 },   { -0.02591350486, 23, 4, 4 },  { -0.1259630848, 17, 5, 4 },
  { 0.1478355637, 18, 5, 4 },     { -0.01011251078, 23, 5, 4 },
};

/* What the temperature makes of each term: n τ^t. */
typedef struct
{
  double weight[G_N_ELEMENTS (terms)];
  double gas_j_kg; /* R T / M */
} Isotherm;

static Isotherm
isotherm_at (double temperature_k)
{
  const double tau = CRITICAL_K / temperature_k;
  Isotherm isotherm = { .gas_j_kg = LB_OXYGEN_GAS_CONSTANT * temperature_k /
                                    LB_OXYGEN_KG_PER_MOLE };

  for (gsize i = 0; i < G_N_ELEMENTS (terms); i++)
    isotherm.weight[i] = terms[i].n * pow (tau, terms[i].t);
  return isotherm;
}

/* Pressure, and how fast it rises with density. */
static double
pressure_on (const Isotherm *isotherm, double density, double *out_slope)
{
  const double delta = density / CRITICAL_KG_M3;
  double first = 0, second = 0; /* δ ∂α/∂δ and δ² ∂²α/∂δ² */

  for (gsize i = 0; i < G_N_ELEMENTS (terms); i++) {
    const Term *term = &terms[i];
    const double power = term->l > 0 ? pow (delta, term->l) : 0;
    const double slope = term->d - term->l * power;
    const double value = isotherm->weight[i] * pow (delta, term->d) *
                         (term->l > 0 ? exp (-power) : 1);

    first += value * slope;
    second += value * (slope * (slope - 1) - term->l * term->l * power);
  }

  *out_slope = isotherm->gas_j_kg * (1 + 2 * first + second);
  return isotherm->gas_j_kg * density * (1 + first);
}

double
lb_oxygen_pressure (double density_kg_m3, double temperature_k)
{
  const Isotherm isotherm = isotherm_at (temperature_k);
  double slope;

  return pressure_on (&isotherm, density_kg_m3, &slope);
}

gboolean
lb_oxygen_density (double pressure_pa, double temperature_k, double *out_kg_m3, GError **error)
{
  g_return_val_if_fail (out_kg_m3, FALSE);

  if (!(temperature_k >= LB_OXYGEN_K_LEAST && temperature_k <= LB_OXYGEN_K_MOST)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "Oxygen at %.0f °C is outside −50 to 60 °C: give the temperature of the cylinder",
                 temperature_k - 273.15);
    return FALSE;
  }
  if (!(pressure_pa >= 0 && pressure_pa <= LB_OXYGEN_PA_MOST)) {
    g_set_error (error, LB_TRADE_ERROR, LB_TRADE_ERROR_DOMAIN,
                 "An oxygen pressure of %.3g MPa is outside 0 to 30 MPa (4350 psi): "
                 "read the gauge again",
                 pressure_pa / 1e6);
    return FALSE;
  }

  const Isotherm isotherm = isotherm_at (temperature_k);
  double low = 0, high = DENSITY_MOST;
  double density = pressure_pa / isotherm.gas_j_kg;

  for (int step = 0; step < STEPS_MOST; step++) {
    double slope;
    const double excess = pressure_on (&isotherm, density, &slope) - pressure_pa;

    if (excess > 0)
      high = density;
    else
      low = density;

    double next = density - excess / slope;
    if (!(next >= low && next <= high))
      next = (low + high) / 2;
    const gboolean is_near = fabs (next - density) <= DENSITY_TOLERANCE * density;
    density = next;
    if (is_near)
      break;
  }

  *out_kg_m3 = density;
  return TRUE;
}

gboolean
lb_oxygen_free_ratio (double gauge_pa, double temperature_k, double *out_ratio, GError **error)
{
  double inside, free;

  g_return_val_if_fail (out_ratio, FALSE);

  if (!lb_oxygen_density (gauge_pa + LB_FREE_GAS_PA, temperature_k, &inside, error) ||
      !lb_oxygen_density (LB_FREE_GAS_PA, LB_FREE_GAS_K, &free, error))
    return FALSE;

  *out_ratio = inside / free;
  return TRUE;
}
