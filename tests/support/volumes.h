/* support/volumes.h -- conduction in a slab, cylinder or sphere by finite volumes: the yardstick where c and k change with
   temperature and the coefficient with time. Equal cells in x/r, heat conserved between them; the enthalpy of each cell
   is the unknown of an L-stable two-stage Runge-Kutta method of order 2 [Alexander, SIAM J. Numer. Anal. 14 (1977)
   1006], each stage solved by Newton's method on a tridiagonal system. Uses nothing of the model but the metal's
   properties. */
#ifndef SUPPORT_VOLUMES_H
#define SUPPORT_VOLUMES_H

#include <math.h>

#include "properties/metal.h"

#define VOLUMES_CELLS 200

typedef struct {
    boil_metal metal;
    int dimension;
    double radius_m;
    double temperature_K[VOLUMES_CELLS];
} volumes;

static inline volumes volumes_create(const boil_metal *m, int dimension, double radius_m, double temperature_K)
{
    volumes v = {.metal = *m, .dimension = dimension, .radius_m = radius_m};
    for (int i = 0; i < VOLUMES_CELLS; i++)
        v.temperature_K[i] = temperature_K;
    return v;
}

/* Cell volume over that of the whole; d times it is the volume per surface and radius. */
static inline double volumes_share(const volumes *v, int i)
{
    return pow((i + 1.0) / VOLUMES_CELLS, v->dimension) - pow((double)i / VOLUMES_CELLS, v->dimension);
}

/* Conductances of each cell's outer face per surface of the body, W/m2K; the last goes to the fluid. */
static inline void volumes_conductances(const volumes *v, double coefficient, double g[])
{
    const double half = 0.5 * v->radius_m / VOLUMES_CELLS;
    const double *T = v->temperature_K;
    for (int i = 0; i < VOLUMES_CELLS - 1; i++) {
        const double k = boil_metal_conductivity(&v->metal, 0.5 * (T[i] + T[i + 1]));
        g[i] = pow((i + 1.0) / VOLUMES_CELLS, v->dimension - 1) * k / (2 * half);
    }
    const double k = boil_metal_conductivity(&v->metal, T[VOLUMES_CELLS - 1]);
    g[VOLUMES_CELLS - 1] = coefficient > 0 ? 1 / (1 / coefficient + half / k) : 0;
}

/* One Newton iteration on  m_i [e(T_i) - base_i] = dt (flows into cell i), m_i in kg per m2 of surface. */
static inline void volumes_newton(volumes *v, const double mass[], const double base[], double fluid_K, double coefficient,
                                  double dt)
{
    enum { N = VOLUMES_CELLS };
    double g[N], upper[N], change[N], *T = v->temperature_K;
    volumes_conductances(v, coefficient, g);
    for (int i = 0; i < N; i++) {
        const double inner = i > 0 ? g[i - 1] : 0;
        const double outside = i < N - 1 ? T[i + 1] : fluid_K;
        const double flow = g[i] * (outside - T[i]) - (i > 0 ? inner * (T[i] - T[i - 1]) : 0);
        const double residual = mass[i] * (boil_metal_enthalpy(&v->metal, T[i]) - base[i]) - dt * flow;
        double diagonal = mass[i] * boil_metal_heat_capacity(&v->metal, T[i]) + dt * (g[i] + inner);
        double right = -residual;
        if (i > 0) {
            diagonal -= dt * inner * upper[i - 1];
            right += dt * inner * change[i - 1];
        }
        upper[i] = dt * g[i] / diagonal;
        change[i] = right / diagonal;
    }
    for (int i = N - 2; i >= 0; i--)
        change[i] += upper[i] * change[i + 1];
    for (int i = 0; i < N; i++)
        T[i] += change[i];
}

static inline void volumes_step(volumes *v, double fluid_K, double coefficient, double dt)
{
    enum { N = VOLUMES_CELLS };
    const double gamma = 1 - sqrt(0.5);
    double mass[N], start[N], base[N];
    for (int i = 0; i < N; i++) {
        mass[i] = v->metal.density_kg_m3 * v->radius_m * volumes_share(v, i) / v->dimension;
        start[i] = base[i] = boil_metal_enthalpy(&v->metal, v->temperature_K[i]);
    }
    for (int stage = 0; stage < 2; stage++) {
        for (int iteration = 0; iteration < 3; iteration++)
            volumes_newton(v, mass, base, fluid_K, coefficient, gamma * dt);
        for (int i = 0; i < N; i++)
            base[i] = start[i] + (1 - gamma) / gamma * (boil_metal_enthalpy(&v->metal, v->temperature_K[i]) - start[i]);
    }
}

static inline double volumes_mean(const volumes *v)
{
    double mean = 0;
    for (int i = 0; i < VOLUMES_CELLS; i++)
        mean += volumes_share(v, i) * v->temperature_K[i];
    return mean;
}

/* J/kg */
static inline double volumes_enthalpy(const volumes *v)
{
    double mean = 0;
    for (int i = 0; i < VOLUMES_CELLS; i++)
        mean += volumes_share(v, i) * boil_metal_enthalpy(&v->metal, v->temperature_K[i]);
    return mean;
}

#endif
