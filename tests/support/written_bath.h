/* support/written_bath.h -- the bath once more, from the equations as the headers of model/ print them, and solved in another way:
   backward Euler with a fixed step, each step a fixed point; steam not from the formula of model/bath/rates.c but as that which
   leaves a boiling bath on its boiling curve at the end of the step; parts in finite volumes with the steel's values where they
   are. Nothing of model/bath, model/transfer, model/integrate or model/simulate is called. Shared are the properties: of solution, water and
   steam, and of steel.

   For a bath without losses, with heat from below, by the dial and without lag; one load with a coefficient of its own; water. */
#ifndef SUPPORT_WRITTEN_BATH_H
#define SUPPORT_WRITTEN_BATH_H

#include <math.h>
#include <string.h>

#include "boilback.h"
#include "properties/metal.h"
#include "properties/water.h"

#define WRITTEN_G 9.80665
#define WRITTEN_CELLS 24

typedef struct {
    const boil_plant *plant;
    boil_conditions air;
    double area_m2, heat_W;
    double salt[BOIL_SALTS];
    /* What goes in. */
    double pour_from_s, pour_to_s, pour_kg_s, pour_J_kg;
    const boil_load *load;
    double load_s;
    /* The state. */
    double t, water_kg, heat_J, steam_kg, layer_kg, layer_J, cell_K[WRITTEN_CELLS];
    bool boiling;
    /* What became of it. */
    double layer_since_s, lost_s, back_s, lowest_K, steam_total_kg, steam_peak_kg_s, layer_peak_kg, formed_kg_s;
} written_bath;

/* The end of a step, as tried. */
typedef struct {
    double water_kg, heat_J, steam_kg, layer_kg, layer_J, T, boils_K, formed_kg_s, load_W, cell_K[WRITTEN_CELLS];
} written_end;

static inline boil_mixture written_mixture(const written_bath *b, double water_kg)
{
    return (boil_mixture){water_kg, {b->salt[0], b->salt[1], b->salt[2]}};
}

static inline double written_boils(const written_bath *b, double water_kg)
{
    boil_mixture m = written_mixture(b, water_kg);
    double K = (double)NAN;
    (void)boil_solution_boiling_point(&b->air, &m, &K);
    return K;
}

static inline double written_heat(const written_bath *b, double water_kg, double K)
{
    boil_mixture m = written_mixture(b, water_kg);
    return boil_solution_heat(&m, K).enthalpy_J;
}

static inline double written_temperature(const written_bath *b, double water_kg, double heat_J, double near_K)
{
    boil_mixture m = written_mixture(b, water_kg);
    for (int i = 0; i < 30; i++) {
        boil_heat h = boil_solution_heat(&m, near_K);
        double by = (heat_J - h.enthalpy_J) / h.heat_capacity_J_K;
        near_K += by;
        if (fabs(by) < 1e-11 * near_K)
            break;
    }
    return near_K;
}

/* Of water, from its enthalpy: by halving. */
static inline double written_water_K(double J_kg)
{
    double low = 273.15, high = 473.15;
    for (int i = 0; i < 60; i++)
        *(boil_water_enthalpy((low + high) / 2) < J_kg ? &low : &high) = (low + high) / 2;
    return (low + high) / 2;
}

/* Half a plate in finite volumes, implicit: a tridiagonal system, its coefficients at the last guess. What it takes, W. */
static inline double written_plate(const written_bath *b, double dt, double T, written_end *e)
{
    const boil_load *l = b->load;
    if (l == NULL || b->t + dt <= b->load_s)
        return 0;
    double half = l->size_m / 2, dx = half / WRITTEN_CELLS, area = l->mass_kg / (l->metal.density_kg_m3 * half);
    double share = fmin(1, (b->t + dt - b->load_s) / l->lowering_s);
    double up[WRITTEN_CELLS], right[WRITTEN_CELLS], *K = e->cell_K;
    double face = 0, faces[WRITTEN_CELLS + 1];
    for (int i = 1; i < WRITTEN_CELLS; i++)
        faces[i] = boil_metal_conductivity(&l->metal, (K[i - 1] + K[i]) / 2) / dx;
    faces[0] = 0;
    faces[WRITTEN_CELLS] =
        share / (1 / l->coefficient_W_m2K + dx / 2 / boil_metal_conductivity(&l->metal, K[WRITTEN_CELLS - 1]));
    for (int i = 0; i < WRITTEN_CELLS; i++) {
        double c = l->metal.density_kg_m3 * boil_metal_heat_capacity(&l->metal, K[i]) * dx / dt;
        double diagonal = c + faces[i] + faces[i + 1] - (i > 0 ? face * up[i - 1] : 0);
        right[i] =
            (c * b->cell_K[i] + (i == WRITTEN_CELLS - 1 ? faces[i + 1] * T : 0) + (i > 0 ? face * right[i - 1] : 0)) / diagonal;
        up[i] = i < WRITTEN_CELLS - 1 ? faces[i + 1] / diagonal : 0;
        face = faces[i + 1];
    }
    K[WRITTEN_CELLS - 1] = right[WRITTEN_CELLS - 1];
    for (int i = WRITTEN_CELLS - 2; i >= 0; i--)
        K[i] = right[i] + up[i] * K[i + 1];
    return area * faces[WRITTEN_CELLS] * (T - K[WRITTEN_CELLS - 1]);
}

/* model/transfer/swell.h (1): how fast bubbles rise through still liquid, m/s. */
static inline double written_drift_m_s(const boil_plant *p, double rho, double rho_v)
{
    return p->pool.drift * pow(p->transport.surface_tension_N_m * WRITTEN_G * (rho - rho_v) / (rho * rho), 0.25);
}

/* The same: the speed at which held steam rises, m/s. */
static inline double written_steam_m_s(const boil_plant *p, double rho, double rho_v, double held_m3, double liquid_m3)
{
    double v = written_drift_m_s(p, rho, rho_v);
    double alpha = held_m3 / (held_m3 + liquid_m3);
    return alpha * v / (1 - p->pool.distribution * alpha);
}

typedef struct {
    double mixing_kg_s, heat_W, J_kg;
} written_layer;

/* model/transfer/water_layer.h (1), overturn.h (1) to (3), interface_heat.h (2). */
static inline written_layer written_layer_of(const written_bath *b, double t, const written_end *e, double rho, double eps)
{
    const boil_water_layer_law *law = &b->plant->layer;
    boil_mixture m = written_mixture(b, e->water_kg);
    double mass = boil_mixture_mass(&m), c = boil_solution_heat(&m, e->T).heat_capacity_J_K / mass, H = mass / rho / b->area_m2;
    if (!(e->layer_kg > 1e-9))
        return (written_layer){0, 0, 0};
    double J_kg = e->layer_J / e->layer_kg, water_K = written_water_K(J_kg), rho_w = boil_water_density(water_K);
    double cover = 1 - exp(-e->layer_kg / rho_w / b->area_m2 / law->cover_m);
    double buoyancy = WRITTEN_G * (rho - rho_w) / rho_w;
    double turns_s = law->turnover_factor * cbrt(H * H / eps);
    double lifts_s = e->layer_kg * buoyancy / (2 * law->mixing_efficiency * rho * b->area_m2 * eps);
    double u = cbrt(b->plant->transport.expansion_1_K * WRITTEN_G * b->heat_W * H / (rho * c * b->area_m2));
    double eroded = u * fmin(0.2, 3.8 * pow(buoyancy * H / (u * u), -1.5));
    double e1 = sqrt(0.65 * rho_w * boil_water_heat_capacity(water_K));
    double e2 = sqrt(b->plant->transport.conductivity_W_mK * rho * c);
    double U = fmax(0.65 / law->path_m, 1 / (sqrt(3.14159265358979 * fmax(0.1, t - b->layer_since_s)) * (1 / e1 + 1 / e2)));
    return (written_layer){(eps > 0 ? e->layer_kg / (turns_s + lifts_s) : 0) +
                               rho_w * b->area_m2 * cover * law->erosion_factor * eroded,
                           (e->T - water_K) * b->area_m2 * cover * U, J_kg};
}

/* Steam with which the bath ends the step on its boiling curve, kg/s: by secants. */
static inline double written_steam(const written_bath *b, double dt, double flow_W, double mixing_kg_s, double near)
{
    double x[2] = {near, near * 1.001 + 1e-6}, off[2];
    for (int i = 0; i < 40; i++) {
        for (int k = i == 0 ? 0 : 1; k < 2; k++) {
            double water = b->water_kg + dt * (mixing_kg_s - x[k]), K = written_boils(b, water);
            double hv = boil_steam_enthalpy(K, b->plant->ambient.pressure_Pa);
            off[k] = b->heat_J + dt * (flow_W - x[k] * hv) - written_heat(b, water, K);
        }
        double next = x[1] - off[1] * (x[1] - x[0]) / (off[1] - off[0]);
        if (off[1] == off[0] || fabs(next - x[1]) < 1e-9)
            return off[1] == off[0] ? x[1] : next;
        x[0] = x[1];
        off[0] = off[1];
        x[1] = next;
    }
    return x[1];
}

/* One turn of the fixed point. */
static inline void written_again(const written_bath *b, double dt, written_end *e)
{
    double p = b->plant->ambient.pressure_Pa, t = b->t + dt;
    boil_mixture m = written_mixture(b, e->water_kg);
    double rho = boil_solution_density(&m, e->T), rho_v = boil_steam_density(e->T, p), liquid = boil_mixture_mass(&m) / rho;
    double j = written_steam_m_s(b->plant, rho, rho_v, fmax(0, e->steam_kg) / rho_v, liquid);
    written_layer layer = written_layer_of(b, t, e, rho, WRITTEN_G * j);
    double pours = t > b->pour_from_s + dt / 2 && t < b->pour_to_s + dt / 2 ? b->pour_kg_s : 0;
    e->load_W = written_plate(b, dt, e->T, e);
    double flow_W = b->heat_W - e->load_W - layer.heat_W + layer.mixing_kg_s * layer.J_kg;
    e->formed_kg_s = b->boiling ? written_steam(b, dt, flow_W, layer.mixing_kg_s, e->formed_kg_s) : 0;
    e->water_kg = b->water_kg + dt * (layer.mixing_kg_s - e->formed_kg_s);
    e->boils_K = written_boils(b, e->water_kg);
    e->heat_J = b->boiling ? written_heat(b, e->water_kg, e->boils_K) : b->heat_J + dt * flow_W;
    e->T = b->boiling ? e->boils_K : written_temperature(b, e->water_kg, e->heat_J, e->T);
    e->steam_kg = b->steam_kg + dt * (e->formed_kg_s - j * b->area_m2 * rho_v);
    e->layer_kg = b->layer_kg + dt * (pours - layer.mixing_kg_s);
    e->layer_J = b->layer_J + dt * (pours * b->pour_J_kg + layer.heat_W - layer.mixing_kg_s * layer.J_kg);
}

static inline void written_note(written_bath *b, const written_end *e)
{
    b->lowest_K = fmin(b->lowest_K, e->T);
    b->steam_peak_kg_s = fmax(b->steam_peak_kg_s, e->formed_kg_s);
    b->layer_peak_kg = fmax(b->layer_peak_kg, e->layer_kg);
}

/* One step; the moment of a change of mode is where what decides it passes zero, along a straight line. */
static inline void written_step(written_bath *b, double dt)
{
    written_end e = {.water_kg = b->water_kg,
                     .heat_J = b->heat_J,
                     .steam_kg = b->steam_kg,
                     .layer_kg = b->layer_kg,
                     .layer_J = b->layer_J,
                     .formed_kg_s = b->formed_kg_s};
    e.boils_K = written_boils(b, b->water_kg);
    e.T = b->boiling ? e.boils_K : written_temperature(b, b->water_kg, b->heat_J, e.boils_K);
    double below = e.boils_K - e.T, formed = b->formed_kg_s, last;
    memcpy(e.cell_K, b->cell_K, sizeof e.cell_K);
    if (b->layer_kg == 0 && b->pour_kg_s > 0 && b->t >= b->pour_from_s - dt / 2 && !(b->layer_since_s < b->t))
        b->layer_since_s = b->t;
    for (int i = 0; i < 60; i++) {
        last = e.heat_J + e.layer_J + e.steam_kg;
        written_again(b, dt, &e);
        if (fabs(e.heat_J + e.layer_J + e.steam_kg - last) < 1e-13 * fabs(e.heat_J))
            break;
    }
    b->steam_total_kg += dt * e.formed_kg_s;
    written_note(b, &e);
    if (b->boiling && e.formed_kg_s < 0) {
        b->boiling = false;
        b->lost_s = b->t + dt * formed / (formed - e.formed_kg_s);
    } else if (!b->boiling && e.T >= e.boils_K) {
        b->boiling = true;
        b->back_s = b->t + dt * below / (below - (e.boils_K - e.T));
    }
    b->t += dt;
    b->water_kg = e.water_kg;
    b->heat_J = e.heat_J;
    b->steam_kg = e.steam_kg;
    b->layer_kg = fmax(0, e.layer_kg);
    b->layer_J = fmax(0, e.layer_J);
    b->formed_kg_s = fmax(0, e.formed_kg_s);
    memcpy(b->cell_K, e.cell_K, sizeof b->cell_K);
}

/* Charged as the plant says; one that begins at its boil has its steady steam in it. */
static inline written_bath written_begin(const boil_plant *p)
{
    boil_initial_state s;
    written_bath b = {.plant = p, .area_m2 = boil_tank_area(&p->tank), .heat_W = p->heater.input_W * p->heater.efficiency};
    (void)boil_plant_initial(p, &s);
    b.air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    b.water_kg = s.mixture.water;
    memcpy(b.salt, s.mixture.salt, sizeof b.salt);
    b.boiling = p->charge.temperature_K == 0;
    double K = b.boiling ? written_boils(&b, b.water_kg) : s.temperature_K;
    b.heat_J = written_heat(&b, b.water_kg, K);
    b.lowest_K = K;
    b.lost_s = b.back_s = (double)NAN;
    b.layer_since_s = (double)INFINITY;
    b.layer_kg = p->afloat.mass_kg;
    if (b.layer_kg > 0) {
        b.layer_J = b.layer_kg * boil_water_enthalpy(p->afloat.temperature_K);
        b.layer_since_s = 0;
    }
    if (b.boiling) {
        double rho_v = boil_steam_density(K, p->ambient.pressure_Pa);
        double rho = boil_solution_density(&s.mixture, K), v = written_drift_m_s(p, rho, rho_v);
        b.formed_kg_s = written_steam(&b, 0.05, b.heat_W, 0, 0.01);
        double j = b.formed_kg_s / b.area_m2 / rho_v, alpha = j / (p->pool.distribution * j + v);
        b.steam_kg = rho_v * alpha / (1 - alpha) * boil_mixture_mass(&s.mixture) / rho;
    }
    return b;
}

static inline void written_run(written_bath *b, double to_s, double dt)
{
    if (b->load != NULL)
        for (int i = 0; i < WRITTEN_CELLS; i++)
            b->cell_K[i] = b->load->temperature_K;
    while (b->t < to_s - dt / 2)
        written_step(b, dt);
}

#endif
