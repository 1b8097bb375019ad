#include "analysis/charge.h"

#include <math.h>

#include "analysis/charge_batches.h"
#include "analysis/pour_rate.h"
#include "analysis/steady_state.h"
#include "base/constants.h"
#include "properties/solubility.h"
#include "properties/water.h"
#include "case/checks.h"
#include "case/plant.h"

#define WORTH_ADDING 1e-6 /* share of the bath */
#define WARMING_K 1.0     /* a bath so little below its boil need not be heated up */

/* What is wanted, and what is there ------------------------------------------------------------------------------- */

static boil_outcome set_wanted(boil_charge_work *f, boil_plant *wanted)
{
    boil_charge_plan *plan = f->plan;
    boil_initial_state bath;
    boil_plant_at_boil(wanted);
    boil_outcome outcome = boil_plant_initial(wanted, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    plan->salt_fraction = bath.salt_fraction;
    plan->boiling_point_K = bath.boiling_point_K;
    plan->mass_kg = boil_mixture_mass(&bath.mixture);
    plan->bath_water_kg = bath.mixture.water;
    plan->bath_salts_kg = boil_mixture_salts(&bath.mixture);
    plan->strength_kg_m3 = boil_solution_strength(&f->air, &bath.mixture);
    plan->per_water_kg_m3 = plan->bath_salts_kg / plan->bath_water_kg * boil_water_density(BOIL_ZERO_CELSIUS + 20);
    plan->cold_level_m = boil_charge_work_level(f, &bath.mixture, fmax(wanted->ambient.temperature_K, BOIL_ZERO_CELSIUS));
    plan->hot_level_m = wanted->tank.level_m;
    plan->crystals_from_K = boil_solubility_crystals_from(&bath.mixture);
    boil_mixture liquid = boil_mixture_of(wanted->charge.blend, plan->asked.liquid_fraction);
    plan->liquid_crystals_K = plan->asked.liquid_fraction > 0 ? boil_solubility_crystals_from(&liquid) : (double)NAN;
    plan->mixer_stated = wanted->fittings.mixer_W > 0;
    plan->mixer_W = f->plant.fittings.mixer_W;
    return BOIL_OK;
}

static boil_outcome set_there(boil_charge_work *f)
{
    const boil_charge_case *c = &f->plan->asked;
    boil_initial_state bath;
    boil_plant p = f->plant;
    if (!(c->from_level_m > 0))
        return BOIL_OK;
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p.charge.value = c->from_fraction;
    p.charge.temperature_K = f->temperature_K = c->from_K;
    p.tank.level_m = c->from_level_m;
    boil_outcome outcome = boil_plant_initial(&p, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    f->there = f->bound = bath.mixture;
    f->bound_J = boil_solution_heat(&bath.mixture, c->from_K).enthalpy_J;
    f->plan->from_crystals_K = boil_solubility_crystals_from(&bath.mixture);
    if (c->from_K < f->plan->from_crystals_K)
        f->plan->end = BOIL_CHARGE_CRYSTALS;
    return BOIL_OK;
}

/* Nothing goes into a bath that boils or soon would, and no water onto a hot one that does not boil. */
static void refuse_hot_bath(boil_charge_work *f)
{
    boil_charge_plan *plan = f->plan;
    double boils_K = boil_charge_work_boils_at(f, &f->there);
    bool adds = plan->water_kg + plan->salts_kg + plan->liquid_kg > 0;
    plan->too_hot_above_K = boils_K - (adds ? BOIL_CHARGE_MARGIN_K + BOIL_CHARGE_RISE_K : WARMING_K);
    if (plan->water_kg > 0)
        plan->too_hot_above_K = fmin(plan->too_hot_above_K, BOIL_CHARGE_WATER_HOT_K);
    if (!(plan->asked.from_K < plan->too_hot_above_K))
        plan->end = BOIL_CHARGE_TOO_HOT;
}

static void set_amounts(boil_charge_work *f)
{
    boil_charge_plan *plan = f->plan;
    const boil_charge_case *c = &plan->asked;
    double noise = WORTH_ADDING * plan->mass_kg, has = boil_mixture_salts(&f->there), missing = plan->bath_salts_kg - has;
    if (missing < -noise) {
        plan->end = BOIL_CHARGE_TOO_MUCH;
        plan->bail_m3 = (1 - plan->bath_salts_kg / has) * c->from_level_m * f->area_m2;
        return;
    }
    missing = missing > noise ? missing : 0;
    if (c->liquid_fraction > 0)
        plan->liquid_kg = missing / c->liquid_fraction;
    else
        plan->salts_kg = missing;
    double water = plan->bath_water_kg - f->there.water - plan->liquid_kg * (1 - c->liquid_fraction);
    plan->water_kg = water > noise ? water : 0;
    plan->water_level_m = plan->water_kg / (boil_water_density(c->added_K) * f->area_m2);
    plan->all_put_in = !(c->from_level_m > 0) && !(c->liquid_fraction > 0);
    if (c->from_level_m > 0)
        refuse_hot_bath(f);
}

/* All the steps --------------------------------------------------------------------------------------------------- */

static boil_outcome put_part(boil_charge_work *f, boil_action_kind kind, double mass_kg, double salt_fraction)
{
    boil_mixture all = boil_mixture_of(f->plant.charge.blend, salt_fraction);
    all = boil_mixture_scaled(&all, mass_kg);
    return mass_kg > 0 && f->plan->end == BOIL_CHARGE_DONE ? boil_charge_work_put(f, kind, &all) : BOIL_OK;
}

static boil_outcome fill(boil_charge_work *f)
{
    boil_charge_plan *plan = f->plan;
    boil_outcome outcome = put_part(f, BOIL_ACTION_WATER, plan->water_kg, 0);
    if (outcome == BOIL_OK)
        outcome = put_part(f, BOIL_ACTION_SALTS, plan->salts_kg, 1);
    if (outcome == BOIL_OK)
        outcome = put_part(f, BOIL_ACTION_LIQUID, plan->liquid_kg, plan->asked.liquid_fraction);
    if (outcome != BOIL_OK || plan->end != BOIL_CHARGE_DONE)
        return outcome;
    for (size_t i = 0; i < plan->steps_count; i++)
        plan->heat_J += plan->steps[i].heat_J;
    plan->heat_J_kg = plan->salts_kg > 0 && !(plan->asked.from_level_m > 0) ? plan->heat_J / plan->salts_kg : (double)NAN;
    plan->filled_s = f->time_s;
    plan->filled_K = f->temperature_K;
    plan->adiabatic_K = plan->steps_count > 0 ? plan->steps[plan->steps_count - 1].adiabatic_K : f->temperature_K;
    plan->filled_level_m = boil_charge_work_level(f, &f->there, f->temperature_K);
    plan->mixing_time_s = boil_charge_work_mixing_time(f);
    return BOIL_OK;
}

static void refuse_full_tank(boil_charge_plan *plan, const boil_plant *p)
{
    if (fmax(plan->filled_level_m, plan->hot_level_m) > p->tank.depth_m - p->limits.freeboard_m)
        plan->end = BOIL_CHARGE_NO_FREEBOARD;
}

/* Heating up ------------------------------------------------------------------------------------------------------- */

static const boil_row *first_boiling(const boil_history *h)
{
    for (size_t i = 0; i < h->rows_count; i++)
        if (h->rows[i].boiling)
            return &h->rows[i];
    return NULL;
}

static void note_boil(boil_charge_work *f, const boil_history *h)
{
    boil_charge_plan *plan = f->plan;
    const boil_row *r = first_boiling(h), *steady = &h->rows[h->rows_count - 1];
    if (r == NULL)
        return;
    double water = r->water_kg + r->layer_kg, vented_kg_s = steady->boiling ? steady->vented_kg_s : 0;
    plan->heat_up_s = isnan(h->summary.time_to_boil_s) ? r->time_s : h->summary.time_to_boil_s;
    plan->evaporated_kg = f->bound.water - water;
    plan->water_to_add_kg = plan->bath_water_kg - water;
    plan->freeboard_m = h->summary.freeboard_min_m.value;
    plan->boil_down_s = plan->water_to_add_kg >= 0 ? 0 : vented_kg_s > 0 ? -plan->water_to_add_kg / vented_kg_s : (double)NAN;
}

/* Heat on full; mixer and lid as the scenario has them. */
static boil_outcome heat_up(boil_charge_work *f, const boil_plant *wanted)
{
    boil_charge_plan *plan = f->plan;
    boil_history h;
    boil_plant p = boil_charge_work_plant(f);
    p.heater.dial = 1;
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.fittings = wanted->fittings;
    plan->heat_up_s = plan->boil_down_s = plan->water_to_add_kg = plan->freeboard_m = (double)NAN;
    plan->evaporated_kg = f->bound.water - f->there.water;
    boil_outcome outcome = boil_steady_state_reached(&p, &f->options, true, &h);
    if (outcome != BOIL_OK)
        return outcome;
    note_boil(f, &h);
    boil_history_free(&h);
    return BOIL_OK;
}

/* Water onto the bath that begins to boil. */
static boil_outcome find_water_pace(const boil_charge_work *f, const boil_plant *full)
{
    boil_charge_plan *plan = f->plan;
    boil_plant p = *full;
    boil_initial_state bath;
    boil_row calm;
    double mass = plan->mass_kg - plan->water_to_add_kg;
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p.charge.value = plan->bath_salts_kg / mass;
    boil_outcome outcome = boil_plant_initial(&p, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    p.tank.level_m = mass / (bath.density_kg_m3 * f->area_m2);
    outcome = boil_steady_state_first_row(&p, &f->options, &calm);
    if (outcome != BOIL_OK)
        return outcome;
    boil_action water = boil_pour_rate_action(BOIL_ACTION_WATER, plan->water_to_add_kg, p.charge.blend, 0, plan->asked.added_K);
    outcome = boil_pour_rate_fastest(&p, &water, calm.vented_kg_s, &f->options, &plan->water_pace);
    return outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

/* The bath that it comes to, boiling with the heat on full. */
static boil_outcome describe_boil(const boil_charge_work *f, const boil_plant *wanted)
{
    boil_charge_plan *plan = f->plan;
    boil_plant p = *wanted;
    boil_row boiling;
    p.heater.dial = 1;
    p.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    p.control.mode = BOIL_WATER_CONTROL_NONE;
    boil_outcome outcome = boil_steady_state_first_row(&p, &f->options, &boiling);
    if (outcome != BOIL_OK)
        return outcome;
    plan->swelled_level_m = boiling.level_m;
    plan->freeboard_m = fmin(plan->freeboard_m, boiling.freeboard_m);
    plan->water_pace.rate_kg_s = (double)NAN;
    return plan->water_to_add_kg > 1e-4 * plan->mass_kg ? find_water_pace(f, &p) : BOIL_OK;
}

static boil_outcome carry_out(boil_charge_work *f, boil_plant *wanted)
{
    boil_charge_plan *plan = f->plan;
    boil_outcome outcome = set_wanted(f, wanted);
    if (outcome == BOIL_OK)
        outcome = set_there(f);
    if (outcome == BOIL_OUT_OF_RANGE || outcome == BOIL_NO_ROOT) {
        plan->end = BOIL_CHARGE_NO_BATH;
        return BOIL_OK;
    }
    if (plan->end == BOIL_CHARGE_DONE && plan->asked.liquid_fraction > 0 && plan->asked.liquid_K > BOIL_CHARGE_WATER_HOT_K)
        plan->end = BOIL_CHARGE_HOT_LIQUID;
    if (outcome == BOIL_OK && plan->end == BOIL_CHARGE_DONE)
        set_amounts(f);
    if (outcome == BOIL_OK && plan->end == BOIL_CHARGE_DONE)
        outcome = fill(f);
    if (outcome == BOIL_OK && plan->end == BOIL_CHARGE_DONE)
        refuse_full_tank(plan, wanted);
    return outcome;
}

static bool is_charge_case(const boil_charge_case *c)
{
    return c->liquid_fraction >= 0 && c->liquid_fraction < 0.9 && c->from_level_m >= 0 && isfinite(c->from_level_m) &&
           (c->from_level_m == 0 || (c->from_fraction >= 0 && c->from_fraction < 1 && isfinite(c->from_K))) &&
           isfinite(c->added_K) && isfinite(c->liquid_K);
}

boil_outcome boil_charge_plan_of(const boil_plant *p, const boil_charge_case *c, const boil_run_options *o,
                                 boil_charge_plan *out)
{
    if (out == NULL || c == NULL || !boil_check_plant(p) || !boil_check_options(o) || !is_charge_case(c))
        return BOIL_BAD_INPUT;
    *out = (boil_charge_plan){.asked = *c, .from_crystals_K = (double)NAN};
    boil_charge_work f = boil_charge_work_begin(p, o, out);
    boil_plant wanted = *p;
    boil_outcome outcome = carry_out(&f, &wanted);
    if (outcome != BOIL_OK || out->end != BOIL_CHARGE_DONE)
        return outcome;
    outcome = heat_up(&f, &wanted);
    return outcome == BOIL_OK ? describe_boil(&f, &wanted) : outcome;
}

/* In one go ------------------------------------------------------------------------------------------------------- */

/* The steps from `first` on, then heat on full, mixer and lid as the scenario has them. */
static boil_outcome add_actions(const boil_plant *p, const boil_charge_plan *plan, size_t first, double begin_s,
                                boil_schedule *s)
{
    const double filled_s = plan->filled_s - begin_s;
    const boil_action then[] = {{.time_s = filled_s, .kind = BOIL_ACTION_HEAT, .is.heat.dial = 1},
                                {.time_s = filled_s, .kind = BOIL_ACTION_MIXER, .is.on = p->fittings.mixer_on},
                                {.time_s = filled_s, .kind = BOIL_ACTION_LID, .is.on = p->fittings.lid_on}};
    boil_outcome outcome = BOIL_OK;
    for (size_t i = first; i < plan->steps_count && outcome == BOIL_OK; i++) {
        const boil_charge_step *step = &plan->steps[i];
        double warm_K = step->kind == BOIL_ACTION_LIQUID ? plan->asked.liquid_K : plan->asked.added_K;
        boil_action a = boil_pour_rate_action(step->kind, step->mass_kg, p->charge.blend, plan->asked.liquid_fraction, warm_K);
        boil_action_pour(&a, step->mass_kg, step->mass_kg / step->over_s);
        a.time_s = step->start_s - begin_s;
        outcome = boil_schedule_add(s, &a);
    }
    for (size_t i = 0; i < sizeof then / sizeof then[0] && outcome == BOIL_OK; i++)
        outcome = boil_schedule_add(s, &then[i]);
    return outcome;
}

boil_outcome boil_charge_run(const boil_plant *p, const boil_charge_plan *plan, const boil_run_options *o, double *begin_s,
                             boil_history *out)
{
    const double later = 1.05; /* in one go the boil may come a little later than by parts */
    const double finest_s = 10, rows = 1000, after_s = isnan(plan->heat_up_s) ? 3600 : later * plan->heat_up_s;
    boil_charge_plan begun = {.asked = plan->asked};
    boil_charge_work f = boil_charge_work_begin(p, o, &begun);
    const boil_charge_step *step = plan->steps;
    boil_schedule s;
    boil_outcome outcome = set_there(&f);
    size_t first = plan->asked.from_level_m > 0 ? 0 : 1;
    if (outcome == BOIL_OK && first > 0)
        outcome = put_part(&f, step->kind, step->mass_kg, step->kind == BOIL_ACTION_LIQUID ? plan->asked.liquid_fraction : 0);
    *begin_s = first < plan->steps_count ? plan->steps[first].start_s : plan->filled_s;
    boil_plant start = boil_charge_work_plant(&f);
    boil_schedule_init(&s, plan->filled_s + after_s - *begin_s);
    f.options.row_interval_s = fmax(finest_s, s.duration_s / rows);
    if (outcome == BOIL_OK)
        outcome = add_actions(p, plan, first, *begin_s, &s);
    if (outcome == BOIL_OK)
        outcome = boil_run_unchecked(&start, &s, &f.options, out);
    boil_schedule_free(&s);
    return outcome;
}

/* Salts first ------------------------------------------------------------------------------------------------------ */

boil_charge_paste boil_charge_salts_first(const boil_plant *p, double temperature_K)
{
    if (!boil_check_plant(p) || !isfinite(temperature_K))
        return (boil_charge_paste){(double)NAN, (double)NAN, (double)NAN};
    const double first = 0.05, step = 0.01, last = 0.75; /* the strongest that the heats are known of */
    boil_charge_paste paste = {.water_boils_K = boil_water_saturation_temperature(p->ambient.pressure_Pa)};
    for (double s = first; s <= last; s += step) {
        boil_mixture kilogram = boil_mixture_of(p->charge.blend, s);
        double heat = boil_charge_work_heat_in(BOIL_ACTION_WATER, &kilogram, temperature_K) +
                      boil_charge_work_heat_in(BOIL_ACTION_SALTS, &kilogram, temperature_K);
        double T = boil_solution_temperature(&kilogram, heat, 373.15);
        if (T > paste.hottest_K)
            paste = (boil_charge_paste){T, s, paste.water_boils_K};
    }
    return paste;
}
