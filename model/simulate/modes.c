#include "simulate/modes.h"

#include <math.h>

#include "base/boil.h"

void boil_modes_guards(const boil_bath *b, const boil_rates_view *v, double g[BOIL_GUARDS])
{
    g[BOIL_GUARD_MODE] = b->boiling ? -v->steam_kg_s : v->temperature_K - v->boiling_point_K;
    g[BOIL_GUARD_LAYER] = b->layer == BOIL_WATER_LAYER_STILL   ? v->layer_K - b->air.saturation_K
                          : b->layer == BOIL_WATER_LAYER_BOILS ? -v->layer_boil_margin_W
                                                               : -1;
    bool ending = b->layer != BOIL_WATER_LAYER_NONE && !(v->feed_kg_s > 0) && !b->lid_on;
    g[BOIL_GUARD_LAYER_GONE] = ending ? 1e-6 - v->layer_kg / v->mass_kg : -1;
    g[BOIL_GUARD_RANGE] = -v->range.margin;
    g[BOIL_GUARD_RIM] = v->level_m - b->plant->tank.depth_m;
    const boil_water_control *c = &b->plant->control;
    double half = c->differential_K / 2;
    g[BOIL_GUARD_VALVE] = c->mode != BOIL_WATER_CONTROL_ON_OFF ? -1
                          : b->valve_wanted                    ? c->set_point_K - half - v->sensor_K
                                                               : v->sensor_K - c->set_point_K - half;
    /* it resets a centimetre higher, or waves would ring it */
    g[BOIL_GUARD_LOW_LEVEL] = !(c->mode != BOIL_WATER_CONTROL_NONE && c->low_level_m > 0) ? -1
                              : b->heat_cut ? v->still_level_m - c->low_level_m - 0.01
                                            : c->low_level_m - v->still_level_m;
}

double boil_modes_inventory(boil_bath *b, double t, const double y[])
{
    boil_rates_view v;
    if (boil_rates_at(b, t, y, &v, NULL) != BOIL_OK)
        return (double)NAN;
    return boil_bath_heat_at(b, y, v.temperature_K).total_J + y[BOIL_STATE_LAYER_HEAT];
}

int boil_modes_change(boil_bath *b, double t, double y[], bool boiling)
{
    boil_rates_view v;
    int outcome = boil_rates_at(b, t, y, &v, NULL);
    if (outcome != BOIL_OK)
        return outcome;
    double T = v.boiling_point_K; /* at a change of mode T = Tb whichever way */
    y[BOIL_STATE_BATH_HEAT] = boil_bath_heat_at(b, y, T).total_J;
    b->temperature_guess_K = T;
    b->boiling = boiling;
    return BOIL_OK;
}

/* Steady boil: the steam leaving equals the steam formed. Evaporation falls as steam leaves, so the formed steam rises with
   it: from the state with no steam, let what is formed leave until nothing changes. */
static int steady_boil(boil_bath *b, double y[], bool *boils)
{
    boil_rates_view v;
    b->boiling = true;
    *boils = true;
    for (int i = 0; i < 2000; i++) {
        int outcome = boil_rates_at(b, 0, y, &v, NULL);
        if (outcome != BOIL_OK)
            return outcome;
        if (!(v.steam_kg_s > 0)) {
            *boils = false;
            y[BOIL_STATE_STEAM_HELD] = 0;
            return BOIL_OK;
        }
        if (fabs(v.steam_kg_s - v.leaving_kg_s) < 1e-12)
            break;
        double velocity = v.steam_kg_s / (b->area_m2 * v.vapour_kg_m3);
        y[BOIL_STATE_STEAM_HELD] =
            v.vapour_kg_m3 * boil_swell_steam_held(&b->plant->pool, v.drift_velocity_m_s, velocity, v.solution_m3);
    }
    return BOIL_OK;
}

int boil_modes_start(boil_bath *b, const boil_plant *p, double y[])
{
    bool hot, boils = false;
    int outcome = boil_bath_fill(b, p, y, &hot);
    if (outcome == BOIL_OK && hot)
        outcome = steady_boil(b, y, &boils);
    if (outcome == BOIL_OK)
        b->boiling = boils;
    return outcome;
}
