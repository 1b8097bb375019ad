#include "bath/bath.h"

#include <math.h>
#include <string.h>

#include "base/larger.h"
#include "equipment/heat_control.h"
#include "properties/water.h"

boil_mixture boil_bath_mixture(const double y[])
{
    return (boil_mixture){y[BOIL_STATE_BATH_WATER],
                          {boil_larger(0, y[BOIL_STATE_BATH_NAOH]), boil_larger(0, y[BOIL_STATE_BATH_NANO3]),
                           boil_larger(0, y[BOIL_STATE_BATH_NANO2])}};
}

static double quadratic(const double c[3], double x)
{
    return c[0] + x * (c[1] + x * c[2]);
}

/* Quadratic in (T - Tsat) through three values 40 K apart; steam at one pressure is that smooth (within 0.2 kJ/kg
   and 0.02 % of density to 80 K above saturation). */
static void fit_quadratic(const double f[3], double spacing, double c[3])
{
    c[0] = f[0];
    c[1] = (-3 * f[0] + 4 * f[1] - f[2]) / (2 * spacing);
    c[2] = (f[0] - 2 * f[1] + f[2]) / (2 * spacing * spacing);
}

static void fit_steam(boil_bath *b)
{
    const double spacing = 40;
    double h[3], v[3], p = b->air.pressure_Pa;
    for (int i = 0; i < 3; i++) {
        double T = b->air.saturation_K + i * spacing;
        h[i] = boil_steam_enthalpy(T, p);
        v[i] = 1 / boil_steam_density(T, p);
    }
    fit_quadratic(h, spacing, b->steam_enthalpy);
    fit_quadratic(v, spacing, b->steam_density);
}

double boil_bath_steam_enthalpy(const boil_bath *b, double temperature_K)
{
    return quadratic(b->steam_enthalpy, temperature_K - b->air.saturation_K);
}

double boil_bath_steam_density(const boil_bath *b, double temperature_K)
{
    return 1 / quadratic(b->steam_density, temperature_K - b->air.saturation_K);
}

double boil_bath_body_immersed(const boil_bath_body *b, double t)
{
    if (t >= b->in_end_s && !(t > b->out_start_s)) /* most of the time */
        return 1;
    double in = (t - b->in_start_s) / (b->in_end_s - b->in_start_s);
    double out = isfinite(b->out_start_s) ? (t - b->out_start_s) / (b->out_end_s - b->out_start_s) : 0;
    return boil_smaller(1, boil_larger(0, in)) - boil_smaller(1, boil_larger(0, out));
}

bool boil_bath_is_stirred(const boil_bath *b)
{
    return b->mixer_on || b->paddle_on;
}

void boil_bath_add_feed(boil_bath *b, const boil_bath_feed *f)
{
    b->feeds[b->feeds_count++] = *f;
}

bool boil_bath_takes(const boil_bath_feed *f)
{
    return f->kind == BOIL_FEED_BAIL || f->kind == BOIL_FEED_DRAIN;
}

size_t boil_bath_unknowns(const boil_bath *b)
{
    size_t n = BOIL_STATE_FIXED;
    for (size_t i = 0; i < b->bodies_count; i++)
        n += (size_t)b->bodies[i].body.unknowns;
    return n;
}

static double solids_and_steel(const boil_bath *b, const double y[], double T, double *capacity)
{
    double sum = b->steel_kg * boil_metal_enthalpy(&b->steel, T);
    *capacity = b->steel_kg * boil_metal_heat_capacity(&b->steel, T);
    for (int i = 0; i < BOIL_SALTS; i++) {
        if (y[BOIL_STATE_SOLID_NAOH + i] == 0)
            continue;
        sum += y[BOIL_STATE_SOLID_NAOH + i] * boil_salt_solid_enthalpy(i, T);
        *capacity += y[BOIL_STATE_SOLID_NAOH + i] * boil_salt_solid_heat_capacity(i, T);
    }
    return sum;
}

static boil_bath_heat heat_of(const boil_bath *b, const double y[], const boil_mixture *m, double T)
{
    boil_bath_heat h = {.solution = boil_dilution_heat(&b->dilution, m, T, boil_solution_heat(m, T))};
    h.total_J = h.solution.enthalpy_J + solids_and_steel(b, y, T, &h.capacity_J_K);
    h.capacity_J_K += h.solution.heat_capacity_J_K;
    return h;
}

boil_bath_heat boil_bath_heat_at(const boil_bath *b, const double y[], double temperature_K)
{
    boil_mixture m = boil_bath_mixture(y);
    return heat_of(b, y, &m, temperature_K);
}

void boil_bath_begin_layer(boil_bath *b, double t, double enthalpy_J_kg)
{
    if (b->layer != BOIL_WATER_LAYER_NONE)
        return;
    b->layer = BOIL_WATER_LAYER_STILL;
    b->layer_since_s = t;
    b->layer_fresh_J_kg = enthalpy_J_kg;
}

/* A fixed point that contracts by a few per cent: the steam's enthalpy is nearly all of hv - K_water. */
double boil_bath_flash(const boil_bath *b, const double y[], double water_kg, double heat_J)
{
    const double pace_J_kg = 2.8e6;
    double flash = 0, T;
    boil_solution_guess guess = {0, 0};
    for (int i = 0; i < 60; i++) {
        boil_mixture m = boil_bath_mixture(y);
        m.water += water_kg - flash;
        if (!(m.water > 0) || boil_solution_boiling_point_near(&b->air, &m, &guess, &T, NULL) != BOIL_OK)
            return (double)NAN;
        double inventory = heat_of(b, y, &m, T).total_J;
        double surplus = y[BOIL_STATE_BATH_HEAT] + heat_J - flash * boil_bath_steam_enthalpy(b, T) - inventory;
        flash += surplus / pace_J_kg;
        if (fabs(surplus) < 1e-15 * fabs(y[BOIL_STATE_BATH_HEAT]))
            break;
    }
    return flash;
}

static boil_outcome flash_remnant(const boil_bath *b, double y[], double water_kg, double heat_J)
{
    double flash = boil_bath_flash(b, y, water_kg, heat_J);
    if (!isfinite(flash))
        return BOIL_NO_ROOT;
    y[BOIL_STATE_BATH_WATER] += water_kg - flash;
    double T;
    boil_mixture m = boil_bath_mixture(y);
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(&b->air, &m, &guess, &T, NULL) != BOIL_OK)
        return BOIL_NO_ROOT;
    double steam_J = flash * boil_bath_steam_enthalpy(b, T);
    y[BOIL_STATE_BATH_HEAT] += heat_J - steam_J;
    y[BOIL_STATE_TOTAL_STEAM] += flash;
    y[BOIL_STATE_HEAT_WITH_VAPOUR] += steam_J;
    y[BOIL_STATE_STEAM_HELD] = fmax(0, y[BOIL_STATE_STEAM_HELD] + flash);
    return BOIL_OK;
}

boil_outcome boil_bath_absorb_layer(boil_bath *b, double y[])
{
    double water = y[BOIL_STATE_LAYER_MASS], heat_J = y[BOIL_STATE_LAYER_HEAT];
    y[BOIL_STATE_LAYER_MASS] = y[BOIL_STATE_LAYER_HEAT] = 0;
    b->layer = BOIL_WATER_LAYER_NONE;
    /* In a quiet bath just below its boil the water's heat of dilution can take it beyond: that flashes, or it would be lost
       when the mode is put right. */
    if (b->boiling || boil_bath_flash(b, y, water, heat_J) > 0)
        return flash_remnant(b, y, water, heat_J);
    y[BOIL_STATE_BATH_WATER] += water;
    y[BOIL_STATE_BATH_HEAT] += heat_J;
    return BOIL_OK;
}

static void float_water(boil_bath *b, const boil_water_afloat *a, double y[])
{
    if (!(a->mass_kg > 0))
        return;
    double fresh = boil_water_enthalpy(a->temperature_K);
    boil_bath_begin_layer(b, 0, fresh);
    y[BOIL_STATE_LAYER_MASS] = a->mass_kg;
    y[BOIL_STATE_LAYER_HEAT] = a->mass_kg * fresh;
}

/* Out of what is dissolved, in the charge's proportion of the two that crystallise; case/plant.c sees to it that there is enough. */
static void lay_out(double crust_kg, double bed_kg, double y[])
{
    static const int of[] = {BOIL_NANO3, BOIL_NANO2};
    double both_kg = y[BOIL_STATE_BATH_NANO3] + y[BOIL_STATE_BATH_NANO2], out_kg = crust_kg + bed_kg;
    if (!(out_kg > 0 && out_kg < both_kg))
        return;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        double kg = out_kg * y[BOIL_STATE_BATH_NAOH + of[i]] / both_kg;
        y[BOIL_STATE_BATH_NAOH + of[i]] -= kg;
        y[BOIL_STATE_SOLID_NAOH + of[i]] = kg;
    }
    y[BOIL_STATE_CRUST_MASS] = crust_kg;
    y[BOIL_STATE_BED_MASS] = bed_kg;
}

boil_outcome boil_bath_fill(boil_bath *b, const boil_plant *p, double y[], bool *hot)
{
    boil_initial_state charge;
    boil_outcome outcome = boil_plant_initial(p, &charge);
    if (outcome != BOIL_OK)
        return outcome;
    *b = (boil_bath){.plant = p,
                     .air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor),
                     .dilution = boil_dilution_at(p->dilution_factor, &charge.mixture, charge.boiling_point_K),
                     .area_m2 = boil_tank_area(&p->tank),
                     .steel_kg = boil_tank_wetted_steel(&p->tank),
                     .steel = boil_carbon_steel(),
                     .ambient = p->ambient,
                     .dial = p->heater.dial,
                     .heat_controlled = p->heat_control.mode != BOIL_HEAT_CONTROL_DIAL,
                     .heat_set_K = p->heat_control.set_point_K,
                     .mixer_on = p->fittings.mixer_on,
                     .lid_on = p->fittings.lid_on};
    boil_bath_set_draught(b, p->fittings.exhaust_on ? p->ambient.draught_m_s : p->fittings.still_draught_m_s);
    fit_steam(b);
    memset(y, 0, BOIL_STATE_FIXED * sizeof *y);
    y[BOIL_STATE_BATH_WATER] = charge.mixture.water;
    for (int i = 0; i < BOIL_SALTS; i++)
        y[BOIL_STATE_BATH_NAOH + i] = charge.mixture.salt[i];
    lay_out(p->crust_kg, p->bed_kg, y);
    y[BOIL_STATE_BATH_HEAT] = boil_bath_heat_at(b, y, charge.temperature_K).total_J;
    y[BOIL_STATE_SENSOR] = y[BOIL_STATE_HEAT_SENSOR] = charge.temperature_K;
    *hot = charge.temperature_K >= charge.boiling_point_K - 1e-9;
    float_water(b, &p->afloat, y);
    double out_K = boil_heat_control_out(&p->heat_control, b->heat_set_K);
    b->fire_wanted = b->fire_lit = *hot && charge.temperature_K < out_K - BOIL_BATH_READING_K;
    y[BOIL_STATE_HEATER_OUTPUT] =
        *hot ? boil_heater_output(&p->heater, boil_bath_fire(b, charge.temperature_K), charge.temperature_K) : 0;
    return BOIL_OK;
}

void boil_bath_set_draught(boil_bath *b, double draught_m_s)
{
    b->ambient.draught_m_s = draught_m_s;
    b->over = boil_surface_air_of(&b->ambient);
}

double boil_bath_fire(const boil_bath *b, double sensor_K)
{
    if (b->heat_cut || b->high_limit_out)
        return 0;
    if (!b->heat_controlled)
        return b->dial;
    return b->fire_lit ? boil_heat_control_fire(&b->plant->heat_control, b->heat_set_K, sensor_K) : 0;
}
