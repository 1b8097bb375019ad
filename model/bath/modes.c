#include "bath/modes.h"

#include <math.h>
#include <stddef.h>

#include "equipment/heat_control.h"
#include "bath/rates.h"

/* How far over its boiling point its vapour pressure is by as much as a crust holds, along its tangent. */
static double held_superheat(const boil_bath *b, const boil_rates_view *v)
{
    const double most_K = 30; /* judgement: thicker than that it is a frozen bath */
    const boil_rates_solution *s = &v->solution;
    double molality = s->equivalent_molality, by_K, by_strength;
    boil_solution_log_vapour_pressure(&b->air, &s->mixture, s->boiling_point_K, 1e-6, &molality, &by_K, &by_strength);
    return by_K > 0 ? fmin(most_K, v->salts.crust_holds_Pa / (b->air.pressure_Pa * by_K)) : 0;
}

double boil_modes_boils_from(const boil_bath *b, const boil_rates_view *v)
{
    return v->solution.boiling_point_K + (v->salts.crust_kg > 0 ? held_superheat(b, v) : 0);
}

static double trace_kg_s(const boil_rates_view *v)
{
    const double of_the_bath_s = 2e-8;
    return of_the_bath_s * v->solution.mass_kg;
}

static double forms_kg_s(const boil_rates_view *v)
{
    return v->steam.formed_kg_s - v->steam.at_once_kg_s;
}

/* So little that doubt is about it. */
static double little_kg_s(const boil_rates_view *v)
{
    const double traces = 10;
    return traces * trace_kg_s(v);
}

/* What a boil that holds no steam would form, its parts taking the heat that they do. */
static double forms_unstirred_kg_s(const boil_rates_view *v, const boil_rates_view *bubbleless)
{
    return forms_kg_s(bubbleless) - (v->loads.heat_W - bubbleless->loads.heat_W) / v->heat.latent_J_kg;
}

double boil_modes_boils_by(const boil_rates_view *v, const boil_rates_view *bubbleless)
{
    double by_kg_s = forms_kg_s(v) + fmin(v->pool.leaving_kg_s, trace_kg_s(v));
    return bubbleless != NULL ? fmax(by_kg_s, fmin(forms_unstirred_kg_s(v, bubbleless), forms_kg_s(v) + little_kg_s(v)))
                              : by_kg_s;
}

bool boil_modes_is_in_doubt(const boil_rates_view *v)
{
    return boil_modes_boils_by(v, NULL) < 0 && forms_kg_s(v) > -little_kg_s(v);
}

static double lacks(const boil_bath *b, const boil_rates_view *v, const boil_bath_feed *f)
{
    if (f->goal == BOIL_GOAL_BOILING_POINT)
        return v->solution.boiling_point_K - f->goal_value;
    double level_m = b->plant->tank.mark_boiling ? v->levels.upper_m - v->levels.surge_m : v->levels.still_m;
    return boil_bath_takes(f) ? level_m - f->goal_value : f->goal_value - level_m;
}

double boil_modes_goal_shows(const boil_bath *b, const boil_rates_view *v, const boil_bath_feed *f)
{
    const boil_by_hand *h = &b->plant->by_hand;
    if (f->goal == BOIL_GOAL_BOILING_POINT && !b->boiling)
        return -1;
    return (f->goal == BOIL_GOAL_BOILING_POINT ? h->thermometer_step_K : h->mark_step_m) / 2 - lacks(b, v, f);
}

double boil_modes_goal_lacks(const boil_bath *b, const boil_rates_view *v, const boil_bath_feed *f)
{
    double left = lacks(b, v, f);
    return left > 0 ? left : (double)NAN;
}

/* Of all that pours towards one, the nearest. */
static double goal_guard(const boil_bath *b, const boil_rates_view *v)
{
    double most = -1;
    for (size_t i = 0; i < b->feeds_count; i++)
        if (b->feeds[i].goal != BOIL_GOAL_NONE)
            most = fmax(most, boil_modes_goal_shows(b, v, &b->feeds[i]));
    return most;
}

void boil_modes_guards(const boil_bath *b, const boil_rates_view *v, double boils_by_kg_s, double g[BOIL_GUARDS])
{
    g[BOIL_GUARD_MODE] = b->boiling ? -boils_by_kg_s : v->solution.temperature_K - boil_modes_boils_from(b, v);
    g[BOIL_GUARD_LAYER] = b->layer == BOIL_WATER_LAYER_STILL   ? v->layer.temperature_K - b->air.saturation_K
                          : b->layer == BOIL_WATER_LAYER_BOILS ? -v->layer_vapour.boil_margin_W
                                                               : -1;
    bool ending = b->layer != BOIL_WATER_LAYER_NONE && !(v->inflow.water_kg_s > 0) && !b->lid_on;
    g[BOIL_GUARD_LAYER_GONE] = ending ? BOIL_BATH_LAYER_GONE - v->layer.mass_kg / v->solution.mass_kg : -1;
    g[BOIL_GUARD_RANGE] = -boil_rates_range(b, &v->solution).margin;
    g[BOIL_GUARD_RIM] = v->levels.upper_m - b->plant->tank.depth_m;
    g[BOIL_GUARD_FULL] = v->levels.still_m - b->plant->tank.depth_m;
    const boil_water_control *c = &b->plant->control;
    double half = c->differential_K / 2;
    g[BOIL_GUARD_VALVE] = c->mode != BOIL_WATER_CONTROL_ON_OFF ? -1
                          : b->valve_wanted                    ? c->set_point_K - half - v->control.sensor_K
                                                               : v->control.sensor_K - c->set_point_K - half;
    /* it resets a centimetre higher, or waves would ring it */
    g[BOIL_GUARD_LOW_LEVEL] = !(c->mode != BOIL_WATER_CONTROL_NONE && c->low_level_m > 0) ? -1
                              : b->heat_cut ? v->levels.still_m - c->low_level_m - 0.01
                                            : c->low_level_m - v->levels.still_m;
    g[BOIL_GUARD_POCKET] = v->loads.pocket_J_kg;
    g[BOIL_GUARD_GOAL] = goal_guard(b, v);
    const boil_heat_control *h = &b->plant->heat_control;
    double sensor_K = v->heater.sensor_K;
    g[BOIL_GUARD_FIRE] = !b->heat_controlled ? -1
                         : b->fire_wanted    ? sensor_K - boil_heat_control_out(h, b->heat_set_K)
                                             : boil_heat_control_lights(h, b->heat_set_K) - sensor_K;
    g[BOIL_GUARD_HIGH_LIMIT] = h->high_limit_K > 0 && !b->high_limit_out ? sensor_K - h->high_limit_K : -1;
}

double boil_modes_inventory(const boil_bath *b, const double y[], const boil_rates_view *v)
{
    return boil_bath_heat_at(b, y, v->solution.temperature_K).total_J + y[BOIL_STATE_LAYER_HEAT] + y[BOIL_STATE_HELD_HEAT];
}

void boil_modes_break_crust(const boil_bath *b, double y[], const boil_rates_view *v)
{
    const double rounding_K = 1e-6;
    if (v->salts.crust_kg > 0 && v->solution.temperature_K > v->solution.boiling_point_K + rounding_K) {
        double boiling_J = boil_bath_heat_at(b, y, v->solution.boiling_point_K).total_J;
        y[BOIL_STATE_HELD_HEAT] += boil_bath_heat_at(b, y, v->solution.temperature_K).total_J - boiling_J;
        y[BOIL_STATE_BATH_HEAT] = boiling_J;
    }
    y[BOIL_STATE_CRUST_MASS] = 0;
}

void boil_modes_change(boil_bath *b, double y[], const boil_rates_view *v, bool boiling)
{
    if (boiling)
        boil_modes_break_crust(b, y, v);
    y[BOIL_STATE_BATH_HEAT] = boil_bath_heat_at(b, y, v->solution.boiling_point_K).total_J;
    b->boiling = boiling;
}

/* Steady boil: the steam leaving equals the steam formed. Evaporation falls as steam leaves, so the formed steam rises with
   it: from the state with no steam, let what is formed leave until nothing changes. */
static boil_outcome steady_boil(boil_bath *b, double y[], boil_rates_guess *g, bool *boils)
{
    boil_rates_view v;
    b->boiling = true;
    *boils = true;
    for (int i = 0; i < 2000; i++) {
        boil_outcome outcome = boil_rates_at(b, 0, y, g, &v, NULL);
        if (outcome != BOIL_OK)
            return outcome;
        if (!(v.steam.formed_kg_s > 0)) {
            *boils = false;
            y[BOIL_STATE_STEAM_HELD] = 0;
            return BOIL_OK;
        }
        if (fabs(v.steam.formed_kg_s - v.pool.leaving_kg_s) < 1e-12)
            break;
        double velocity = v.steam.formed_kg_s / (b->area_m2 * v.pool.vapour_kg_m3);
        y[BOIL_STATE_STEAM_HELD] = v.pool.vapour_kg_m3 * boil_swell_steam_held(&b->plant->pool, v.pool.drift_velocity_m_s,
                                                                               velocity, v.solution.volume_m3);
    }
    return BOIL_OK;
}

boil_outcome boil_modes_start(boil_bath *b, const boil_plant *p, double y[], boil_rates_tables *tables, boil_rates_guess *g)
{
    bool hot, boils = false;
    boil_outcome outcome = boil_bath_fill(b, p, y, &hot);
    if (outcome != BOIL_OK)
        return outcome;
    *tables = (boil_rates_tables){0};
    *g = boil_rates_guess_at(y[BOIL_STATE_SENSOR], tables);
    if (hot && b->layer == BOIL_WATER_LAYER_NONE && (outcome = steady_boil(b, y, g, &boils)) != BOIL_OK)
        return outcome;
    b->boiling = b->valve_free = boils;
    return BOIL_OK;
}
