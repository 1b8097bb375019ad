/* sheet_facts.c -- what the runs say for the designer's sheet. */
#include <math.h>
#include <string.h>

#include "analysis/steady_state.h"
#include "base/constants.h"
#include "case/plant.h"
#include "commands/size/sheet.h"
#include "properties/solution.h"
#include "properties/water.h"

static const double precision = 0.002;

boil_exhaust_class sheet_class(const scenario *s, double boiling_K)
{
    unsigned wished = s->exhaust.hazard;
    if (wished == 0)
        return boil_exhaust_class_of(boiling_K, 0);
    return (boil_exhaust_class){(boil_hazard)((wished - 1) / 4), (int)((wished - 1) % 4) + 1};
}

/* A jet blows over the bath as well as a slot draws: faster is not known. */
static double control_of(const scenario *s, double boiling_K)
{
    return s->exhaust.hood == BOIL_HOOD_NONE ? (double)NAN
                                             : boil_exhaust_control_velocity(sheet_class(s, boiling_K), s->exhaust.hood);
}

/* The need anew, in the draught of the hood where that is more. */
static int hood(sheet_facts *f)
{
    const size_case *c = f->size->size;
    f->control_m_s = control_of(f->scenario, f->boiling_K);
    if (isnan(f->control_m_s))
        return BOIL_OK;
    f->plant.fittings.exhaust_on = true;
    f->plant.ambient.draught_m_s = fmax(f->plant.ambient.draught_m_s, f->control_m_s);
    int result = boil_heater_size_for_recovery(&f->plant, &c->schedule, &c->run, c->limit_s, precision, &f->hood_need_W);
    f->hood_beyond = result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
    if (f->hood_beyond)
        f->hood_need_W = (double)NAN;
    return f->hood_beyond ? BOIL_OK : result;
}

/* The fan draws while the bath heats: in the hood's draught with the need without it, the least heat that is named here, so the
   longest. Where that never boils, with the hood's own. */
static int heat_up(sheet_facts *f)
{
    const double heats[] = {f->need_W, f->hood_need_W};
    const boil_run_options *run = &f->size->size->run;
    boil_outcome result = BOIL_OK;
    f->heat_up_s = f->size->heats.heat_up_s;
    if (isnan(f->hood_need_W) || isnan(f->heat_up_s))
        return BOIL_OK;
    f->heat_up_s = (double)NAN;
    for (size_t i = 0; i < 2 && isnan(f->heat_up_s) && result != BOIL_NO_MEMORY; i++)
        result = boil_steady_state_heat_up(&f->plant, run, heats[i], &f->heat_up_s);
    return result == BOIL_NO_MEMORY ? result : BOIL_OK;
}

static int liquid(sheet_facts *f)
{
    boil_initial_state bath;
    boil_plant at_boil = f->plant;
    at_boil.charge.temperature_K = 0;
    int result = boil_plant_initial(&at_boil, &bath);
    if (result != BOIL_OK)
        return result;
    double p = f->plant.ambient.pressure_Pa, mass = boil_mixture_mass(&bath.mixture);
    boil_mixture one = boil_mixture_scaled(&bath.mixture, 1 / mass);
    f->boiling_K = bath.boiling_point_K;
    f->density_kg_m3 = bath.density_kg_m3;
    f->vapour_kg_m3 = boil_steam_density(f->boiling_K, p);
    f->latent_J_kg = boil_steam_enthalpy(f->boiling_K, p) - boil_solution_heat(&one, f->boiling_K).water;
    return BOIL_OK;
}

/* Still and boiling, nothing done; the fire by hand. */
static boil_plant calm_plant(const sheet_facts *f, bool lid)
{
    boil_plant p = f->plant;
    boil_plant_at_boil(&p);
    p.control.mode = BOIL_WATER_CONTROL_NONE;
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.fittings.lid_on = lid;
    return p;
}

static int calm(sheet_facts *f)
{
    int result = BOIL_OK;
    for (int lid = 0; lid < 2 && result == BOIL_OK; lid++) {
        boil_steady_state s = {.losses_W = (double)NAN};
        boil_plant p = calm_plant(f, lid == 1);
        result = boil_steady_state_at(&p, lid == 0 ? f->design_W : 0, &s);
        f->calm_W[lid] = s.losses_W;
        if (lid == 0)
            f->vapour_kg_s = s.steam_kg_s + s.evaporated_kg_s;
    }
    return result;
}

/* Under its lid as without. None that holds is no failure. */
static int hold(sheet_facts *f)
{
    for (int lid = 0; lid < 2; lid++) {
        boil_plant p = calm_plant(f, lid == 1);
        int result = boil_steady_state_hold(&p, &f->size->size->run, &f->hold_W[lid]);
        if (result == BOIL_NO_MEMORY)
            return result;
        if (result != BOIL_OK)
            f->hold_W[lid] = (double)NAN;
    }
    return BOIL_OK;
}

static int made_up(sheet_facts *f)
{
    const double heats[SHEET_HEATS] = {[SHEET_HOLD] = fmax(f->calm_W[0], f->hold_W[0]),
                                       [SHEET_NEED] = fmax(f->need_W, f->hood_need_W),
                                       [SHEET_DESIGN] = f->design_W};
    double wished = f->scenario->design.water_K;
    boil_plant p = calm_plant(f, false);
    int result = BOIL_OK;
    f->water_K = fmax(BOIL_ZERO_CELSIUS, isnan(wished) ? f->plant.ambient.temperature_K : wished);
    for (size_t i = 0; i < SHEET_HEATS && result == BOIL_OK; i++)
        result = boil_steady_state_makeup(&p, heats[i], f->water_K, &f->makeup_kg_s[i]);
    return result;
}

/* From the last moment of rest on. */
static double back_s(const boil_history *h, double from_s)
{
    for (size_t i = 0; i < h->quiet_count; i++)
        if (!(h->quiet[i].end_s < from_s))
            return h->quiet[i].end_s - from_s;
    return 0;
}

static int rest_for(const boil_plant *p, const boil_run_options *run, double idle_s, double then_s, boil_history *h)
{
    boil_action turn = {.time_s = 0, .kind = BOIL_ACTION_HEAT, .is.heat.order = BOIL_HEAT_TURN};
    boil_schedule s;
    boil_schedule_init(&s, idle_s + then_s);
    int result = boil_schedule_add(&s, &turn);
    turn.time_s = idle_s;
    turn.is.heat.dial = 1;
    if (result == BOIL_OK && then_s > 0)
        result = boil_schedule_add(&s, &turn);
    if (result == BOIL_OK)
        result = boil_run(p, &s, run, h);
    boil_schedule_free(&s);
    return result;
}

static int rest(sheet_facts *f, bool lid, sheet_idle *out)
{
    const double then_s = 6 * 3600, idle_s = f->scenario->design.idle_s;
    boil_plant p = calm_plant(f, lid), sized;
    boil_history h;
    *out = (sheet_idle){(double)NAN, (double)NAN};
    int result = boil_heater_size_plant(&p, f->design_W, &sized);
    sized.heater.dial = 1;
    if (result == BOIL_OK)
        result = rest_for(&sized, &f->size->size->run, idle_s, 0, &h);
    if (result != BOIL_OK)
        return result;
    if (h.end == BOIL_RUN_DONE)
        out->end_K = h.summary.temperature_end_K;
    boil_history_free(&h);
    result = rest_for(&sized, &f->size->size->run, idle_s, then_s, &h);
    if (result != BOIL_OK)
        return result;
    out->reheat_s = back_s(&h, idle_s);
    boil_history_free(&h);
    return BOIL_OK;
}

/* J that steel of these parts and their basket takes from its own temperature to the boil. */
static double steel_J(const boil_load *l, double boiling_K)
{
    double t = (l->temperature_K + boiling_K) / 2 - BOIL_ZERO_CELSIUS, cp = 0;
    for (int i = 3; i >= 0; i--)
        cp = cp * t + l->metal.heat_capacity[i];
    return (l->mass_kg + l->basket_kg) * cp * fmax(0, boiling_K - l->temperature_K);
}

static void carried(sheet_facts *f, const boil_history *h)
{
    const boil_schedule *s = &f->size->size->schedule;
    if (f->size->size->one_load)
        return;
    double heat_J = 0, parts_kg = 0;
    for (size_t i = 0; i < s->count; i++)
        if (action_load_of(&s->actions[i]) != NULL) {
            heat_J += steel_J(action_load_of(&s->actions[i]), f->boiling_K);
            parts_kg += action_load_of(&s->actions[i])->mass_kg;
        }
    f->steel_W = heat_J / s->duration_s;
    f->steel_kg_s = parts_kg / s->duration_s;
    f->drag_out_kg_s = h->summary.drag_out_kg / s->duration_s;
    f->drag_out_salts_kg_s = h->summary.drag_out_salts_kg / s->duration_s;
}

/* Held as for its size, by the laws that swell it most. */
static int rim(sheet_facts *f)
{
    boil_holding at;
    int result = size_held_of(f->size->size, &f->plant, f->design_W, &at);
    if (result == BOIL_OK)
        f->rim_m = f->plant.tank.depth_m - at.freeboard_min_m + f->plant.limits.freeboard_m;
    return result;
}

/* The case itself with the design heat. */
static int worked(sheet_facts *f)
{
    boil_plant sized;
    boil_history h;
    int result = boil_heater_size_plant(&f->plant, f->design_W, &sized);
    if (result == BOIL_OK)
        result = boil_run(&sized, &f->size->size->schedule, &f->size->size->run, &h);
    if (result != BOIL_OK)
        return result;
    if (h.end == BOIL_RUN_DONE) {
        f->bed_K = h.summary.bed_superheat_max_K.value;
        carried(f, &h);
    }
    boil_history_free(&h);
    return BOIL_OK;
}

int sheet_facts_of(const size_answer *a, sheet_facts *f)
{
    const double none = (double)NAN;
    *f = (sheet_facts){.size = a, .scenario = a->size->scenario, .plant = a->size->scenario->plant};
    f->hood_need_W = f->control_m_s = f->rim_m = f->bed_K = f->drag_out_kg_s = f->drag_out_salts_kg_s = f->steel_W =
        f->steel_kg_s = none;
    f->need_W = a->heats.heat_W;
    int result = liquid(f);
    if (result == BOIL_OK)
        result = hood(f);
    f->design_W = (1 + f->scenario->design.margin) * fmax(f->need_W, f->hood_need_W);
    if (result != BOIL_OK || f->hood_beyond)
        return result;
    result = calm(f);
    if (result == BOIL_OK)
        result = heat_up(f);
    if (result == BOIL_OK)
        result = hold(f);
    if (result == BOIL_OK)
        result = made_up(f);
    for (int lid = 0; lid < 2 && result == BOIL_OK; lid++)
        result = rest(f, lid == 1, &f->idle[lid]);
    if (result == BOIL_OK)
        result = rim(f);
    return result == BOIL_OK ? worked(f) : result;
}
