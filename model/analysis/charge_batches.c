#include "analysis/charge_batches.h"

#include <math.h>

#include "analysis/pour_rate.h"
#include "case/plant.h"
#include "properties/water.h"

#define ROOM_25_K 298.15
#define DISSOLVED_BUT 0.01    /* of a batch: waited for */
#define SALTS_BATCHES_LEAST 8 /* however little they heat: no more than an eighth lies on the floor; judgement */

boil_charge_work boil_charge_work_begin(const boil_plant *p, const boil_run_options *o, boil_charge_plan *plan)
{
    boil_charge_work f = {.plan = plan, .plant = *p, .options = *o, .area_m2 = boil_tank_area(&p->tank)};
    f.air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    f.plant.heater.dial = 0;
    boil_plant_bare(&f.plant);
    f.plant.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    f.plant.control.mode = BOIL_WATER_CONTROL_NONE;
    f.plant.fittings.mixer_on = true;
    f.plant.fittings.lid_on = false;
    f.plant.fittings.mixer_W = boil_plant_mixer_power(p);
    f.temperature_K = plan->asked.added_K;
    return f;
}

double boil_charge_work_heat_in(boil_action_kind kind, const boil_mixture *m, double temperature_K)
{
    if (kind == BOIL_ACTION_WATER)
        return m->water * boil_water_enthalpy(temperature_K);
    if (kind == BOIL_ACTION_LIQUID)
        return boil_solution_heat(m, temperature_K).enthalpy_J;
    double heat = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        heat += m->salt[i] * boil_salt_solid_enthalpy(i, temperature_K);
    return heat;
}

double boil_charge_work_boils_at(const boil_charge_work *f, const boil_mixture *m)
{
    boil_solution_guess guess = {0, 0};
    double T;
    return boil_solution_boiling_point_near(&f->air, m, &guess, &T, NULL) == BOIL_OK ? T : (double)NAN;
}

double boil_charge_work_level(const boil_charge_work *f, const boil_mixture *m, double temperature_K)
{
    return boil_mixture_mass(m) / (boil_solution_density(m, temperature_K) * f->area_m2);
}

double boil_charge_work_mixing_time(const boil_charge_work *f)
{
    double mass = boil_mixture_mass(&f->there);
    return boil_swell_mixing_time(f->plant.layer.turnover_factor, f->plant.fittings.mixer_W / mass,
                                  boil_tank_equivalent_radius(&f->plant.tank),
                                  boil_charge_work_level(f, &f->there, f->temperature_K));
}

boil_plant boil_charge_work_plant(const boil_charge_work *f)
{
    boil_plant p = f->plant;
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p.charge.value = boil_mixture_salt_fraction(&f->there);
    p.charge.temperature_K = f->temperature_K;
    p.tank.level_m = boil_charge_work_level(f, &f->there, f->temperature_K);
    return p;
}

static double added_K(const boil_charge_work *f, boil_action_kind kind)
{
    return kind == BOIL_ACTION_LIQUID ? f->plan->asked.liquid_K : f->plan->asked.added_K;
}

/* With it in, well mixed and without losses, K. */
static double mixed_K(const boil_charge_work *f, boil_action_kind kind, const boil_mixture *added)
{
    boil_mixture then = boil_mixture_sum(&f->there, added);
    double heat =
        boil_solution_heat(&f->there, f->temperature_K).enthalpy_J + boil_charge_work_heat_in(kind, added, added_K(f, kind));
    return boil_solution_temperature(&then, heat, f->temperature_K);
}

/* How big, and how fast ------------------------------------------------------------------------------------------- */

static bool goes_in(const boil_charge_work *f, boil_action_kind kind, const boil_mixture *batch)
{
    boil_mixture then = boil_mixture_sum(&f->there, batch);
    double T = mixed_K(f, kind, batch);
    return T <= f->temperature_K + BOIL_CHARGE_RISE_K && T <= boil_charge_work_boils_at(f, &then) - BOIL_CHARGE_MARGIN_K;
}

/* Of salts what a scale can weigh, whole pounds say: more than all alike where that still goes in; the rest is the last batch. */
static double weighed_share(const boil_charge_work *f, const boil_mixture *all, double alike, double left)
{
    double step = f->plan->asked.weighed_kg / boil_mixture_mass(all);
    if (!(step > 0) || !(alike < left * (1 - 1e-9)))
        return alike;
    double up = ceil(alike / step - 1e-9) * step, down = floor(alike / step + 1e-9) * step;
    boil_mixture more = boil_mixture_scaled(all, up);
    return up < left && goes_in(f, BOIL_ACTION_SALTS, &more) ? up : down > 0 ? down : alike;
}

/* Share of what is left for the next batch: the largest that goes in, then all of them alike. */
static double batch_share(const boil_charge_work *f, boil_action_kind kind, const boil_mixture *all, double left)
{
    double largest = fmin(left, kind == BOIL_ACTION_SALTS ? 1.0 / SALTS_BATCHES_LEAST : 1), small = 0;
    boil_mixture batch = boil_mixture_scaled(all, largest);
    if (!goes_in(f, kind, &batch)) {
        for (int i = 0; i < 30; i++) {
            double middle = (small + largest) / 2;
            batch = boil_mixture_scaled(all, middle);
            *(goes_in(f, kind, &batch) ? &small : &largest) = middle;
        }
        largest = small;
    }
    if (!(largest > 0))
        return 0;
    double alike = left / ceil(left / largest * (1 - 1e-9));
    return kind == BOIL_ACTION_SALTS ? weighed_share(f, all, alike, left) : alike;
}

/* Equation (1) of analysis/charge.h, and no faster than anyone pours. */
static double pace_of(const boil_charge_work *f, boil_action_kind kind, const boil_mixture *added)
{
    boil_mixture then = boil_mixture_sum(&f->there, added);
    boil_heat now = boil_solution_heat(&f->there, f->temperature_K);
    double heat = now.enthalpy_J + boil_charge_work_heat_in(kind, added, added_K(f, kind)) -
                  boil_solution_heat(&then, f->temperature_K).enthalpy_J;
    double each_J_kg = heat / boil_mixture_mass(added), by_hand = boil_pour_rate_by_hand(kind);
    if (!(each_J_kg > 0))
        return by_hand;
    double room_J =
        BOIL_CHARGE_ZONE * now.heat_capacity_J_K * fmax(0, boil_charge_work_boils_at(f, &f->there) - f->temperature_K);
    return fmin(by_hand, room_J / (each_J_kg * boil_charge_work_mixing_time(f)));
}

/* Waiting --------------------------------------------------------------------------------------------------------- */

typedef struct {
    boil_row end;
    double hottest_K, waited_s; /* NaN: not within this run */
} waiting;

static bool is_in(const boil_row *r, const boil_action *action)
{
    return r->undissolved_kg + r->layer_kg <= DISSOLVED_BUT * boil_action_mass(action);
}

/* Before the next batch of salts, a look at thermometer and floor: judgement. Sifted grains are gone sooner than that. */
static double least_wait_s(const boil_action *action)
{
    return action->kind == BOIL_ACTION_SALTS ? 60 : 0;
}

/* Until it has dissolved and the bath is as cool as cool_K, for as long as that. */
static boil_outcome run_step(const boil_charge_work *f, const boil_action *action, double over_s, double cool_K,
                             double longest_s, waiting *w)
{
    boil_plant p = boil_charge_work_plant(f);
    boil_schedule s;
    boil_history h;
    boil_run_options o = f->options;
    o.row_interval_s = longest_s > 7200 ? 300 : 30;
    boil_schedule_init(&s, over_s + longest_s);
    boil_outcome outcome = boil_schedule_add(&s, action);
    if (outcome == BOIL_OK && (outcome = boil_run_unchecked(&p, &s, &o, &h)) == BOIL_OK) {
        w->waited_s = w->hottest_K = (double)NAN;
        for (size_t i = 0; i < h.rows_count && isnan(w->waited_s); i++) {
            w->end = h.rows[i];
            w->hottest_K = fmax(w->hottest_K, w->end.temperature_K);
            if (w->end.time_s >= over_s + least_wait_s(action) && is_in(&w->end, action) && w->end.temperature_K <= cool_K)
                w->waited_s = w->end.time_s - over_s;
        }
        outcome = h.end == BOIL_RUN_FAILED ? BOIL_NOT_FINITE : BOIL_OK;
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

static boil_outcome wait_out(boil_charge_work *f, boil_charge_step *step, const boil_action *action)
{
    const double day_s = 86400;
    waiting w = {.waited_s = (double)NAN};
    for (double longest_s = 1800; isnan(w.waited_s) && longest_s <= 2 * day_s; longest_s *= 4) {
        boil_outcome outcome = run_step(f, action, step->over_s, step->next_below_K, longest_s, &w);
        if (outcome != BOIL_OK)
            return outcome;
    }
    if (isnan(w.waited_s)) {
        f->plan->end = is_in(&w.end, action) ? BOIL_CHARGE_NO_COOLING : BOIL_CHARGE_NO_DISSOLVING;
        return BOIL_OK;
    }
    step->wait_s = w.waited_s;
    step->hottest_K = w.hottest_K;
    f->there.water = w.end.water_kg + w.end.layer_kg;
    f->temperature_K = w.end.temperature_K;
    return BOIL_OK;
}

/* Batches --------------------------------------------------------------------------------------------------------- */

static void note_bound(boil_charge_work *f, boil_charge_step *step, const boil_mixture *added)
{
    boil_mixture before = f->bound;
    f->bound = boil_mixture_sum(&f->bound, added);
    f->bound_J += boil_charge_work_heat_in(step->kind, added, added_K(f, step->kind));
    step->adiabatic_K = boil_solution_temperature(&f->bound, f->bound_J, f->temperature_K);
    step->heat_J = (before.water > 0 ? boil_solution_heat(&before, ROOM_25_K).enthalpy_J : 0) +
                   boil_charge_work_heat_in(step->kind, added, ROOM_25_K) - boil_solution_heat(&f->bound, ROOM_25_K).enthalpy_J;
}

static boil_charge_step *next_step(boil_charge_work *f, boil_action_kind kind, double mass_kg)
{
    boil_charge_step *step = &f->plan->steps[f->plan->steps_count++];
    *step = (boil_charge_step){.kind = kind, .mass_kg = mass_kg, .start_s = f->time_s};
    return step;
}

/* The next begins on a whole minute of the clock that it is printed by: told a moment too early it would go in onto the one before.
   What the bath cools meanwhile is left out. */
static void note_step(boil_charge_work *f, boil_charge_step *step)
{
    step->temperature_K = f->temperature_K;
    step->boils_K = boil_charge_work_boils_at(f, &f->there);
    step->level_m = boil_charge_work_level(f, &f->there, f->temperature_K);
    f->time_s = boil_pour_rate_minute(f->time_s + step->over_s + step->wait_s);
    step->wait_s = f->time_s - step->start_s - step->over_s;
}

static boil_outcome put_batch(boil_charge_work *f, boil_action_kind kind, const boil_mixture *added, bool last)
{
    boil_charge_step *step = next_step(f, kind, boil_mixture_mass(added));
    boil_mixture then = boil_mixture_sum(&f->there, added), more = boil_mixture_sum(&then, added);
    double rate = pace_of(f, kind, added), rise_K = fmax(0, mixed_K(f, kind, added) - f->temperature_K);
    boil_action action =
        boil_pour_rate_action(kind, step->mass_kg, f->plant.charge.blend, f->plan->asked.liquid_fraction, added_K(f, kind));
    boil_action_pour(&action, step->mass_kg, rate);
    step->over_s = step->mass_kg / rate;
    step->next_below_K = boil_charge_work_boils_at(f, last ? &then : &more) - BOIL_CHARGE_MARGIN_K - (last ? 0 : rise_K);
    note_bound(f, step, added);
    boil_outcome outcome = wait_out(f, step, &action);
    if (outcome != BOIL_OK || f->plan->end != BOIL_CHARGE_DONE)
        return outcome;
    then.water = f->there.water;
    f->there = then;
    note_step(f, step);
    return BOIL_OK;
}

/* The first into an empty tank: nothing is there that it could heat. */
static void put_first(boil_charge_work *f, boil_action_kind kind, const boil_mixture *all)
{
    boil_charge_step *step = next_step(f, kind, boil_mixture_mass(all));
    step->over_s = step->mass_kg / boil_pour_rate_by_hand(kind);
    f->temperature_K = step->hottest_K = added_K(f, kind);
    step->next_below_K = (double)NAN;
    note_bound(f, step, all);
    step->heat_J = 0;
    f->there = f->bound;
    note_step(f, step);
}

boil_outcome boil_charge_work_put(boil_charge_work *f, boil_action_kind kind, const boil_mixture *all)
{
    boil_charge_plan *plan = f->plan;
    boil_outcome outcome = BOIL_OK;
    if (!(boil_mixture_mass(&f->there) > 0)) {
        put_first(f, kind, all);
        return BOIL_OK;
    }
    for (double left = 1; left > 1e-9 && outcome == BOIL_OK && plan->end == BOIL_CHARGE_DONE;) {
        double share = batch_share(f, kind, all, left);
        if (!(share > 0) || plan->steps_count == BOIL_CHARGE_STEPS) {
            plan->end = BOIL_CHARGE_NO_COOLING;
            break;
        }
        boil_mixture batch = boil_mixture_scaled(all, share);
        left -= share;
        outcome = put_batch(f, kind, &batch, !(left > 1e-9));
    }
    return outcome;
}
