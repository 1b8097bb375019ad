#include "analysis/steady_state.h"

#include <math.h>

#include "base/bisection.h"
#include "base/constants.h"
#include "case/checks.h"
#include "case/plant.h"
#include "bath/modes.h"
#include "bath/rates.h"

static const double most_W_m2 = 2e6; /* a hundred times what an open surface loses at 140 degC */
static const double least_W_m2 = 1e-3;

/* The plant at its boil, with a heater of a size at full dial. */
static boil_plant heated(const boil_plant *p, double heat_W, double boiling_point_K)
{
    boil_plant trial = *p;
    boil_plant_at_boil(&trial);
    trial.heater = boil_heater_sized(&p->heater, heat_W, boiling_point_K);
    trial.heater.dial = 1;
    trial.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    return trial;
}

/* All that follows from the bath as it begins, at its boil. */
static boil_outcome first_moment(const boil_plant *p, double heat_W, double boiling_point_K, boil_rates_view *v,
                                 double *steam_kg_m3)
{
    boil_plant trial = heated(p, heat_W, boiling_point_K);
    boil_bath b;
    boil_rates_tables tables;
    boil_rates_guess guess;
    double y[BOIL_STATE_FIXED];
    boil_outcome outcome = boil_modes_start(&b, &trial, y, &tables, &guess);
    if (outcome == BOIL_OK)
        outcome = boil_rates_at(&b, 0, y, &guess, v, NULL);
    if (outcome == BOIL_OK)
        *steam_kg_m3 = boil_bath_steam_density(&b, boiling_point_K);
    return outcome;
}

static double feed_K(const boil_plant *p)
{
    return fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS);
}

static double vapour_J_kg(const boil_rates_view *v)
{
    return v->heat.latent_J_kg + v->heat.mixing_J_kg + v->layer.enthalpy_J_kg;
}

/* (1), what is left over of the vapour for water to come in anew. */
static double makeup(const boil_rates_view *v, double water_K)
{
    const boil_rates_surface *s = &v->surface;
    double steam_J_kg = vapour_J_kg(v), e = s->bath.evaporation_kg_s;
    double carried_W = v->heat.calm_W + e * (steam_J_kg - s->bath.vapour_J_kg);
    double back_W = s->condensate_kg_s * (steam_J_kg - s->condensate_J_kg);
    return fmax(0, (carried_W - back_W) / (steam_J_kg - boil_water_enthalpy(water_K)));
}

/* Nothing boils off yet: what heat the rest takes. (2). */
static boil_outcome losses(const boil_plant *p, double boiling_point_K, double *losses_W)
{
    boil_rates_view v = {0};
    double none, area = boil_tank_area(&p->tank);
    boil_outcome outcome = first_moment(p, 0, boiling_point_K, &v, &none);
    if (outcome == BOIL_OK)
        *losses_W = fmax(least_W_m2 * area, v.heater.heat_W - v.heat.spare_W);
    return outcome != BOIL_OK || *losses_W < most_W_m2 * area ? outcome : BOIL_NO_ROOT;
}

boil_outcome boil_steady_state_at(const boil_plant *p, double heat_W, boil_steady_state *out)
{
    if (out == NULL || p == NULL || !isfinite(heat_W))
        return BOIL_BAD_INPUT;
    boil_initial_state c;
    boil_outcome outcome = boil_plant_initial(p, &c);
    if (outcome != BOIL_OK)
        return outcome;
    *out = (boil_steady_state){.volume_m3 = c.volume_m3, .boiling_point_K = c.boiling_point_K};
    boil_rates_view v = {0};
    double steam_kg_m3;
    outcome = losses(p, c.boiling_point_K, &out->losses_W);
    if (outcome == BOIL_OK)
        outcome = first_moment(p, heat_W, c.boiling_point_K, &v, &steam_kg_m3);
    if (outcome != BOIL_OK)
        return outcome;
    out->steam_kg_s = v.steam.formed_kg_s;
    out->evaporated_kg_s = v.surface.bath.evaporation_kg_s;
    out->makeup_kg_s = makeup(&v, feed_K(p));
    out->steam_m3_s = (v.steam.formed_kg_s + v.surface.bath.evaporation_kg_s) / steam_kg_m3;
    out->swell_m = v.levels.upper_m - v.levels.still_m;
    out->freeboard_m = p->tank.depth_m - v.levels.upper_m;
    return BOIL_OK;
}

boil_outcome boil_steady_state_makeup(const boil_plant *p, double heat_W, double water_K, double *makeup_kg_s)
{
    boil_initial_state c;
    boil_rates_view v = {0};
    double steam_kg_m3;
    boil_outcome outcome = boil_plant_initial(p, &c);
    if (outcome == BOIL_OK)
        outcome = first_moment(p, heat_W, c.boiling_point_K, &v, &steam_kg_m3);
    if (outcome == BOIL_OK)
        *makeup_kg_s = makeup(&v, water_K);
    return outcome;
}

/* The same mass as at the boil: it stands lower when cold. */
static boil_outcome cold(const boil_plant *p, double heat_W, boil_plant *out)
{
    boil_initial_state at_boil, at_room;
    boil_outcome outcome = boil_plant_initial(p, &at_boil);
    if (outcome != BOIL_OK)
        return outcome;
    *out = heated(p, heat_W, at_boil.boiling_point_K);
    outcome = boil_plant_initial(out, &at_boil);
    out->charge.temperature_K = feed_K(p);
    if (outcome == BOIL_OK)
        outcome = boil_plant_initial(out, &at_room);
    if (outcome == BOIL_OK)
        out->tank.level_m *= boil_mixture_mass(&at_boil.mixture) / boil_mixture_mass(&at_room.mixture);
    return outcome;
}

boil_outcome boil_steady_state_first_row(const boil_plant *p, const boil_run_options *o, boil_row *out)
{
    boil_schedule nothing;
    boil_history h;
    boil_run_options first = *o;
    first.row_interval_s = 1;
    boil_schedule_init(&nothing, 1);
    boil_outcome outcome = boil_run_unchecked(p, &nothing, &first, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *out = h.rows[0];
    boil_history_free(&h);
    return BOIL_OK;
}

boil_outcome boil_steady_state_reached(const boil_plant *p, const boil_run_options *o, bool rows, boil_history *out)
{
    const double longest_s = 14 * 86400;
    boil_run_options spaced = *o;
    for (double duration_s = 3600;; duration_s *= 2) {
        boil_schedule nothing;
        boil_schedule_init(&nothing, duration_s);
        spaced.row_interval_s = rows ? duration_s / 240 : 0;
        boil_outcome outcome = boil_run_unchecked(p, &nothing, &spaced, out);
        if (outcome != BOIL_OK)
            return outcome;
        if (!isnan(out->summary.time_to_boil_s) || out->end != BOIL_RUN_DONE || 2 * duration_s > longest_s)
            return BOIL_OK;
        boil_history_free(out);
    }
}

boil_outcome boil_steady_state_heat_up(const boil_plant *p, const boil_run_options *o, double heat_W, double *time_s)
{
    if (time_s == NULL || !boil_check_plant(p) || !boil_check_options(o) || !isfinite(heat_W))
        return BOIL_BAD_INPUT;
    boil_plant trial;
    boil_history h;
    boil_outcome outcome = cold(p, heat_W, &trial);
    *time_s = (double)NAN;
    if (outcome == BOIL_OK)
        outcome = boil_steady_state_reached(&trial, o, false, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *time_s = h.summary.time_to_boil_s;
    boil_history_free(&h);
    return BOIL_OK;
}

typedef struct {
    const boil_plant *plant;
    boil_run_options options;
    double boiling_point_K;
    double for_s;
    boil_simulation *own;
} held_case;

/* Fed by a steady trickle; under a lid nobody feeds it. */
static boil_outcome feed(const held_case *c, double heat_W, boil_schedule *s)
{
    boil_steady_state calm;
    boil_action water = {.kind = BOIL_ACTION_WATER};
    boil_schedule_init(s, c->for_s);
    boil_outcome outcome = boil_steady_state_at(c->plant, heat_W, &calm);
    water.is.water = (boil_action_water){calm.makeup_kg_s * c->for_s, c->for_s, feed_K(c->plant)};
    if (outcome != BOIL_OK || c->plant->fittings.lid_on || !(water.is.water.mass_kg > 0))
        return outcome;
    return boil_schedule_add(s, &water);
}

/* As far as the first moment of rest. */
static boil_outcome stays_awake(boil_simulation *r, bool *yes)
{
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && boil_simulation_at(r).last_quiet == NULL && !boil_simulation_at(r).over)
        outcome = boil_simulation_advance(r, nextafter(boil_simulation_at(r).time_s, (double)INFINITY));
    *yes = boil_simulation_at(r).last_quiet == NULL;
    if (outcome != BOIL_OK || !*yes || (outcome = boil_simulation_finish(r)) != BOIL_OK)
        return outcome;
    const boil_history *h = boil_simulation_so_far(r);
    *yes = h->end == BOIL_RUN_DONE && h->quiet_count == 0;
    return BOIL_OK;
}

static boil_outcome boils_on(void *context, double heat_W, bool *yes)
{
    held_case *c = context;
    boil_plant trial = heated(c->plant, heat_W, c->boiling_point_K);
    boil_schedule s;
    boil_outcome outcome = feed(c, heat_W, &s);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_begin(&trial, &s, &c->options, &c->own);
    if (outcome == BOIL_OK)
        outcome = stays_awake(c->own, yes);
    boil_schedule_free(&s);
    return outcome;
}

boil_outcome boil_steady_state_hold(const boil_plant *p, const boil_run_options *o, double *heat_W)
{
    static const boil_closures each[] = {BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_LIKELY};
    if (heat_W == NULL || !boil_check_plant(p) || !boil_check_options(o))
        return BOIL_BAD_INPUT;
    boil_steady_state calm;
    double no, most, night_s = 14 * 3600, settled_s = 2 * 3600;
    boil_outcome outcome = boil_steady_state_at(p, 0, &calm);
    held_case c = {p, *o, calm.boiling_point_K, p->fittings.lid_on ? night_s : settled_s, NULL};
    c.options.row_interval_s = 0;
    *heat_W = calm.losses_W;
    most = 4 * calm.losses_W;
    for (size_t i = 0; i < sizeof each / sizeof each[0] && outcome == BOIL_OK; i++) {
        c.options.closures = each[i];
        boil_bisection search = {boils_on, &c, *heat_W, most, 1.08, 0.01};
        outcome = boil_bisect(&search, &no, heat_W);
    }
    boil_simulation_free(c.own);
    return outcome;
}
