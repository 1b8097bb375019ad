/* transfer/conduction.c -- see transfer/conduction.h.

   With s = xi^2 the weight xi^(d-1) dxi is s^(d/2-1) ds/2, so the P_k are Jacobi polynomials P_k^(0,d/2-1)(2s-1):
   Legendre's P_2k for the slab, P_k(2 xi^2 - 1) for the cylinder. Their known norm and end values [Abramowitz & Stegun
   1964, ch. 22] give
       P_k(1) = 1,   N_k = int P_k^2 xi^(d-1) dxi = 1/(4k + d),   P_k'(1) = k (2k + d) = a_k.
   For i <= j, integrating K_ji = int P_j' P_i' xi^(d-1) dxi by parts leaves the boundary term alone, because
   (xi^(d-1) P_i')' is xi^(d-1) times an even polynomial of degree 2i - 2 < 2j, to which P_j is orthogonal:
       K_ji = a_min(i,j).
   The weak form of rho c dT/dt = k lap T with q entering at the surface, tested with P_j, is then
       rho c N_j dy_j/dt = q/r - (k/r^2) sum_i a_min(i,j) y_i,   i up to n, the number of unknowns,           (2)
   and its last line j = n without storage, with the surface temperature T(1) = sum_i y_i, gives y_n and q together:
       y_n = (q r/k - inner)/a_n,   inner = sum_{i<n} a_i y_i,
       q = [T_fluid - sum_{i<n} y_i + inner/a_n] / [1/h + r/(a_n k)].                                         (3) */
#include "transfer/conduction.h"

#include <math.h>

/* P_k'(1), the stiffness a_k. */
static double end_slope(const boil_conduction_body *b, int k)
{
    return (double)(k * (2 * k + b->dimension));
}

static double conductivity(const boil_conduction_body *b, double temperature_K)
{
    return b->conductivity_W_mK > 0 ? b->conductivity_W_mK : boil_metal_conductivity(&b->metal, temperature_K);
}

/* Nothing but the mean is left to solve for where heat spreads at once. */
static int unknowns_in_use(const boil_conduction_body *b, double k)
{
    return isinf(k) ? 1 : b->unknowns;
}

/* m2; what (1) needs to agree with the mass. */
static double own_surface(const boil_conduction_body *b)
{
    return b->dimension * b->mass_kg / (b->density_kg_m3 * b->radius_m);
}

/* k/(rho c r^2), 1/s */
static double diffusion_rate(const boil_conduction_body *b, double k, double heat_capacity)
{
    return k / (b->density_kg_m3 * heat_capacity * b->radius_m * b->radius_m);
}

/* The heat flux into the body's own surface where it meets the fluid, and the sums of (3). */
typedef struct {
    double flux_W_m2;
    double known_K; /* sum_{i<n} y_i */
    double inner_K; /* sum_{i<n} a_i y_i */
} face;

/* Equation (3). Its conductance is kept below rho c (r/d)/fastest_s: by (1) the mean then answers no faster than that.
   */
static face face_flux(const boil_conduction_body *b, const double y[], double k, double heat_capacity, double fluid_K,
                      double coefficient)
{
    const int n = unknowns_in_use(b, k);
    face f = {.known_K = y[0]};
    for (int i = 1; i < n; i++) {
        f.known_K += y[i];
        f.inner_K += end_slope(b, i) * y[i];
    }
    const double a = end_slope(b, n);
    const double scaled = coefficient * b->area_m2 / own_surface(b);
    const double series = 1 / (1 / scaled + b->radius_m / (a * k));
    const double limit = b->density_kg_m3 * heat_capacity * b->radius_m / (b->dimension * b->fastest_s);
    f.flux_W_m2 = (series > limit ? limit : series) * (fluid_K - f.known_K + f.inner_K / a);
    return f;
}

int boil_conduction_unknowns(const boil_conduction_body *b, double temperature_K)
{
    const double c = boil_metal_heat_capacity(&b->metal, temperature_K);
    const double per_s = diffusion_rate(b, conductivity(b, temperature_K), c);
    int n = 1;
    /* Unknown n alone decays by (2) at the rate K_nn/N_n = a_n (4n + d), in units of k/(rho c r^2). */
    while (n < BOIL_CONDUCTION_UNKNOWNS_MAX && end_slope(b, n) * (4 * n + b->dimension) * per_s * b->fastest_s <= 1)
        n++;
    return n;
}

void boil_conduction_init(const boil_conduction_body *b, double temperature_K, double y[])
{
    y[0] = temperature_K;
    for (int j = 1; j < b->unknowns; j++)
        y[j] = 0;
}

/* Equation (2) for j >= 1; a partly immersed body takes the mean flux over its whole surface. */
static void profile_rates(const boil_conduction_body *b, const double y[], double k, double heat_capacity, double flux,
                          double inner_K, double dydt[])
{
    const int n = unknowns_in_use(b, k);
    const double flux_K = flux * b->radius_m / k;
    const double last_K = (flux_K - inner_K) / end_slope(b, n);
    const double per_s = diffusion_rate(b, k, heat_capacity);
    for (int j = 1; j < n; j++) {
        double conducted_K = end_slope(b, j) * last_K;
        for (int i = 1; i < n; i++)
            conducted_K += end_slope(b, i < j ? i : j) * y[i];
        dydt[j] = per_s * (4 * j + b->dimension) * (flux_K - conducted_K);
    }
    for (int j = n; j < b->unknowns; j++)
        dydt[j] = 0;
}

double boil_conduction_rates(const boil_conduction_body *b, const double y[], double fluid_K, double coefficient_W_m2K,
                             double immersed, double dydt[])
{
    if (!(b->mass_kg > 0)) {
        for (int j = 0; j < b->unknowns; j++)
            dydt[j] = 0;
        return 0;
    }
    const double k = conductivity(b, y[0]);
    const double c = boil_metal_heat_capacity(&b->metal, y[0]);
    const face f = face_flux(b, y, k, c, fluid_K, coefficient_W_m2K);
    const double flux = immersed * f.flux_W_m2;
    const double flow = flux * own_surface(b);
    dydt[0] = flow / (b->mass_kg * c);
    profile_rates(b, y, k, c, flux, f.inner_K, dydt);
    return flow;
}

double boil_conduction_surface_temperature(const boil_conduction_body *b, const double y[], double fluid_K,
                                           double coefficient_W_m2K)
{
    const double k = conductivity(b, y[0]);
    const double c = boil_metal_heat_capacity(&b->metal, y[0]);
    const face f = face_flux(b, y, k, c, fluid_K, coefficient_W_m2K);
    return f.known_K + (f.flux_W_m2 * b->radius_m / k - f.inner_K) / end_slope(b, unknowns_in_use(b, k));
}
