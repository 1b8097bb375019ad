#include "charge.h"

#include <math.h>

#include "boil.h"
#include "pace.h"
#include "saturation.h"
#include "water.h"

#define ROOM_25_K 298.15
#define DISSOLVED_BUT 0.01 /* of a batch */

/* The tank as it fills. */
typedef struct {
    boil_charge_plan *plan;
    boil_plant plant;       /* heat off, mixer on */
    const boil_plant *asked;
    boil_run_options options;
    boil_conditions air;
    double area_m2;
    boil_mixture there;
    double temperature_K, bound_J; /* heat in the solution without tank, losses and evaporation */
    boil_mixture bound;            /* that solution: nothing has evaporated */
    double time_s;
} filling;

static double salts_of(const boil_mixture *m)
{
    return m->salt[BOIL_NAOH] + m->salt[BOIL_NANO3] + m->salt[BOIL_NANO2];
}

static boil_mixture scaled(const boil_mixture *m, double times)
{
    boil_mixture out = {.water = m->water * times};
    for (int i = 0; i < BOIL_SALTS; i++)
        out.salt[i] = m->salt[i] * times;
    return out;
}

static boil_mixture sum_of(const boil_mixture *a, const boil_mixture *b)
{
    boil_mixture out = {.water = a->water + b->water};
    for (int i = 0; i < BOIL_SALTS; i++)
        out.salt[i] = a->salt[i] + b->salt[i];
    return out;
}

/* Anything but dry salts is a solution. */
static double heat_in(boil_act_kind kind, const boil_mixture *m, double temperature_K)
{
    if (kind == BOIL_ACT_WATER)
        return m->water * boil_water_enthalpy(temperature_K);
    if (kind == BOIL_ACT_LIQUID)
        return boil_solution_heat(m, temperature_K).enthalpy_J;
    double heat = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        heat += m->salt[i] * boil_salt_solid_enthalpy(i, temperature_K);
    return heat;
}

static double boils_at(const filling *f, const boil_mixture *m)
{
    boil_solution_guess guess = {0, 0};
    double T;
    return boil_solution_boiling_point(&f->air, m, &guess, &T, NULL) == BOIL_OK ? T : (double)NAN;
}

static double level_of(const filling *f, const boil_mixture *m, double temperature_K)
{
    return boil_mixture_mass(m) / (boil_solution_density(m, temperature_K) * f->area_m2);
}

boil_charge_paste boil_charge_salts_first(const boil_plant *p, double temperature_K)
{
    const double first = 0.05, step = 0.01, last = 0.75; /* the strongest that the heats are known of */
    boil_charge_paste paste = {.water_boils_K = boil_water_saturation_temperature(p->room.pressure_Pa)};
    for (double s = first; s <= last; s += step) {
        boil_mixture kilogram = boil_mixture_of(p->charge.blend, s);
        double heat = heat_in(BOIL_ACT_WATER, &kilogram, temperature_K) + heat_in(BOIL_ACT_SALTS, &kilogram, temperature_K);
        double T = boil_solution_temperature(&kilogram, heat, 373.15);
        if (T > paste.hottest_K)
            paste = (boil_charge_paste){T, s, paste.water_boils_K};
    }
    return paste;
}

/* One step --------------------------------------------------------------------------------------------------------- */

/* What is in the tank as a plant to run; a trace of salts stands for none. */
static boil_plant as_plant(const filling *f)
{
    boil_plant p = f->plant;
    p.charge.basis = BOIL_BY_SALT_FRACTION;
    p.charge.value = fmax(boil_mixture_salt_fraction(&f->there), 1e-6);
    p.charge.temperature_K = f->temperature_K;
    p.tank.level_m = level_of(f, &f->there, f->temperature_K);
    return p;
}

static void take_row(filling *f, const boil_row *r)
{
    f->there.water = r->water_kg + r->layer_kg;
    f->temperature_K = r->temperature_K;
}

/* Waits with `act` (NULL: nothing) until it has dissolved and the bath is as cool as cool_K; to be asked for more time when it is
   not within this one. *waited_s NaN: not yet. */
static int run_step(const filling *f, const boil_act *act, double over_s, double cool_K, double longest_s, boil_row *end,
                    double *hottest_K, double *waited_s)
{
    boil_plant p = as_plant(f);
    boil_schedule s;
    boil_history h;
    boil_run_options o = f->options;
    o.row_interval_s = longest_s > 7200 ? 300 : 30;
    boil_schedule_init(&s, over_s + longest_s);
    int outcome = boil_schedule_add(&s, act);
    if (outcome == BOIL_OK && (outcome = boil_run(&p, &s, &o, &h)) == BOIL_OK) {
        *waited_s = *hottest_K = (double)NAN;
        for (size_t i = 0; i < h.rows_count && isnan(*waited_s); i++) {
            const boil_row *r = &h.rows[i];
            *hottest_K = fmax(*hottest_K, r->temperature_K);
            *end = *r;
            if (r->time_s >= over_s && r->undissolved_kg <= DISSOLVED_BUT * boil_act_mass(act) &&
                r->temperature_K <= cool_K)
                *waited_s = r->time_s - over_s;
        }
        outcome = h.end == BOIL_RUN_FAILED ? BOIL_NOT_FINITE : BOIL_OK;
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

static int wait_out(filling *f, boil_charge_step *step, const boil_act *act, double cool_K)
{
    const double day_s = 86400;
    boil_row end = {.time_s = 0};
    step->wait_s = (double)NAN;
    for (double longest_s = 1800; isnan(step->wait_s) && longest_s <= 2 * day_s; longest_s *= 4) {
        int outcome = run_step(f, act, step->over_s, cool_K, longest_s, &end, &step->hottest_K, &step->wait_s);
        if (outcome != BOIL_OK)
            return outcome;
    }
    if (isnan(step->wait_s)) {
        f->plan->end = BOIL_CHARGE_NO_COOLING;
        return BOIL_OK;
    }
    take_row(f, &end);
    return BOIL_OK;
}

static double mixing_time(const filling *f)
{
    double mass = boil_mixture_mass(&f->there);
    return boil_pool_mixing_time(&f->plant.pool, f->plant.fittings.mixer_W / mass, boil_tank_equivalent_radius(&f->plant.tank),
                                 level_of(f, &f->there, f->temperature_K));
}

/* (1), and no faster than anyone pours. */
static double pace_of(const filling *f, boil_act_kind kind, const boil_mixture *added)
{
    boil_mixture then = sum_of(&f->there, added);
    boil_heat now = boil_solution_heat(&f->there, f->temperature_K);
    double heat = now.enthalpy_J + heat_in(kind, added, f->plan->asked.added_K) -
                  boil_solution_heat(&then, f->temperature_K).enthalpy_J;
    double each_J_kg = heat / boil_mixture_mass(added), by_hand = boil_pace_by_hand(kind);
    if (!(each_J_kg > 0))
        return by_hand;
    double room_J = BOIL_CHARGE_ZONE * now.heat_capacity_J_K * fmax(0, boils_at(f, &f->there) - f->temperature_K);
    return fmin(by_hand, room_J / (each_J_kg * mixing_time(f)));
}

static boil_act act_of(const filling *f, boil_act_kind kind, double mass_kg, double rate_kg_s)
{
    boil_act a = {.kind = kind};
    const double *blend = f->plant.charge.blend;
    if (kind == BOIL_ACT_WATER)
        a.is.water = (boil_water_act){.temperature_K = f->plan->asked.added_K};
    else if (kind == BOIL_ACT_SALTS)
        a.is.salts = (boil_salts_act){.temperature_K = f->plan->asked.added_K, .blend = {blend[0], blend[1], blend[2]}};
    else
        a.is.liquid = (boil_liquid_act){.temperature_K = f->plan->asked.added_K,
                                        .blend = {blend[0], blend[1], blend[2]},
                                        .salt_fraction = f->plan->asked.liquid_fraction};
    boil_act_pour(&a, mass_kg, rate_kg_s);
    return a;
}

static void note_bound(filling *f, boil_charge_step *step, const boil_mixture *added)
{
    boil_mixture before = f->bound;
    f->bound = sum_of(&f->bound, added);
    f->bound_J += heat_in(step->kind, added, f->plan->asked.added_K);
    step->adiabatic_K = boil_solution_temperature(&f->bound, f->bound_J, f->temperature_K);
    step->heat_J = (before.water > 0 ? boil_solution_heat(&before, ROOM_25_K).enthalpy_J : 0) +
                   heat_in(step->kind, added, ROOM_25_K) - boil_solution_heat(&f->bound, ROOM_25_K).enthalpy_J;
}

/* So cool must the bath be for the next of such batches: with it in, 15 K below its boil. */
static double cool_enough(const filling *f, const boil_mixture *next, double rise_K)
{
    boil_mixture then = sum_of(&f->there, next);
    return boils_at(f, &then) - BOIL_CHARGE_MARGIN_K - rise_K;
}

/* Puts it in; `next` is what follows (NULL: nothing). */
static int put_in(filling *f, boil_act_kind kind, const boil_mixture *added, const boil_mixture *next, double rise_K)
{
    boil_charge_plan *plan = f->plan;
    boil_charge_step *step = &plan->steps[plan->steps_count++];
    double mass = boil_mixture_mass(added);
    *step = (boil_charge_step){.kind = kind, .mass_kg = mass, .start_s = f->time_s};
    boil_act act = act_of(f, kind, mass, pace_of(f, kind, added));
    step->over_s = kind == BOIL_ACT_SALTS ? act.is.salts.over_s
                   : kind == BOIL_ACT_LIQUID ? act.is.liquid.over_s
                                             : act.is.water.over_s;
    note_bound(f, step, added);
    boil_mixture then = sum_of(&f->there, added);
    filling after = *f;
    after.there = then;
    double cool_K = next != NULL ? cool_enough(&after, next, rise_K) : boils_at(f, &then) - BOIL_CHARGE_MARGIN_K;
    int outcome = wait_out(f, step, &act, cool_K);
    if (outcome != BOIL_OK || plan->end != BOIL_CHARGE_DONE)
        return outcome;
    double water = f->there.water;
    f->there = then;
    f->there.water = water;
    step->temperature_K = f->temperature_K;
    step->boils_K = boils_at(f, &f->there);
    step->level_m = level_of(f, &f->there, f->temperature_K);
    f->time_s += step->over_s + step->wait_s;
    return BOIL_OK;
}

/* All the steps --------------------------------------------------------------------------------------------------- */

/* Water into an empty tank, or into a bath that does not boil: it mixes at once. */
static int put_water(filling *f)
{
    boil_charge_plan *plan = f->plan;
    boil_mixture added = {.water = plan->water_kg};
    if (!(plan->water_kg > 0))
        return BOIL_OK;
    boil_charge_step *step = &plan->steps[plan->steps_count++];
    *step = (boil_charge_step){.kind = BOIL_ACT_WATER, .mass_kg = added.water};
    step->over_s = added.water / BOIL_PACE_WATER_KG_S;
    note_bound(f, step, &added);
    f->there = f->bound;
    f->temperature_K = step->temperature_K = step->hottest_K = step->adiabatic_K;
    step->boils_K = boils_at(f, &f->there);
    step->level_m = level_of(f, &f->there, f->temperature_K);
    f->time_s = step->over_s;
    return BOIL_OK;
}

static int put_salts(filling *f)
{
    boil_charge_plan *plan = f->plan;
    boil_mixture all = boil_mixture_of(f->plant.charge.blend, 1);
    all = scaled(&all, plan->salts_kg);
    boil_mixture then = sum_of(&f->there, &all);
    double heat = f->bound_J + heat_in(BOIL_ACT_SALTS, &all, plan->asked.added_K);
    double rise_K = fabs(boil_solution_temperature(&then, heat, 373.15) - f->temperature_K);
    double count = fmin(fmax(ceil(rise_K / BOIL_CHARGE_RISE_K), 2), BOIL_CHARGE_STEPS - 4);
    boil_mixture batch = scaled(&all, 1 / count);
    int outcome = BOIL_OK;
    for (double i = 1; i <= count && outcome == BOIL_OK && plan->end == BOIL_CHARGE_DONE; i++)
        outcome = put_in(f, BOIL_ACT_SALTS, &batch, i < count ? &batch : NULL, rise_K / count);
    return outcome;
}

static int put_liquid(filling *f)
{
    boil_charge_plan *plan = f->plan;
    boil_mixture all = boil_mixture_of(f->plant.charge.blend, plan->asked.liquid_fraction);
    all = scaled(&all, plan->liquid_kg);
    if (boil_mixture_mass(&f->there) > 0)
        return put_in(f, BOIL_ACT_LIQUID, &all, NULL, 0);
    boil_charge_step *step = &plan->steps[plan->steps_count++];
    *step = (boil_charge_step){.kind = BOIL_ACT_LIQUID, .mass_kg = plan->liquid_kg};
    step->over_s = plan->liquid_kg / BOIL_PACE_LIQUID_KG_S;
    f->there = f->bound = all;
    f->bound_J = heat_in(BOIL_ACT_LIQUID, &all, plan->asked.added_K);
    f->temperature_K = step->temperature_K = step->hottest_K = step->adiabatic_K = plan->asked.added_K;
    step->boils_K = boils_at(f, &all);
    step->level_m = level_of(f, &all, f->temperature_K);
    f->time_s = step->over_s;
    return BOIL_OK;
}

static int fill(filling *f)
{
    boil_charge_plan *plan = f->plan;
    int outcome = put_water(f);
    if (outcome == BOIL_OK && plan->salts_kg > 0)
        outcome = put_salts(f);
    if (outcome == BOIL_OK && plan->liquid_kg > 0)
        outcome = put_liquid(f);
    if (outcome != BOIL_OK || plan->end != BOIL_CHARGE_DONE)
        return outcome;
    for (size_t i = 0; i < plan->steps_count; i++)
        plan->heat_J += plan->steps[i].heat_J;
    plan->heat_J_kg = plan->salts_kg > 0 && !(plan->asked.from_level_m > 0) ? plan->heat_J / plan->salts_kg : (double)NAN;
    plan->filled_s = f->time_s;
    plan->filled_K = f->temperature_K;
    plan->adiabatic_K = plan->steps_count > 0 ? plan->steps[plan->steps_count - 1].adiabatic_K : f->temperature_K;
    plan->filled_level_m = level_of(f, &f->there, f->temperature_K);
    plan->mixing_time_s = mixing_time(f);
    return BOIL_OK;
}

/* Heating up ------------------------------------------------------------------------------------------------------- */

static const boil_row *first_boiling(const boil_history *h)
{
    for (size_t i = 0; i < h->rows_count; i++)
        if (h->rows[i].boiling)
            return &h->rows[i];
    return NULL;
}

static void note_boil(filling *f, const boil_history *h, const boil_row *r)
{
    boil_charge_plan *plan = f->plan;
    plan->heat_up_s = h->summary.time_to_boil_s;
    plan->evaporated_kg = f->bound.water - r->water_kg - r->layer_kg;
    plan->water_to_add_kg = plan->bath_water_kg - r->water_kg - r->layer_kg;
    const boil_row *steady = &h->rows[h->rows_count - 1];
    double vented_kg_s = steady->boiling ? steady->vented_kg_s : 0;
    plan->boil_down_s = plan->water_to_add_kg >= 0 ? 0 : vented_kg_s > 0 ? -plan->water_to_add_kg / vented_kg_s : (double)NAN;
}

static int heat_up(filling *f)
{
    const double longest_s = 14 * 86400;
    int outcome = BOIL_OK;
    f->plan->heat_up_s = f->plan->boil_down_s = f->plan->water_to_add_kg = (double)NAN;
    f->plan->evaporated_kg = f->bound.water - f->there.water;
    boil_plant p = as_plant(f);
    p.heater.dial = 1;
    p.fittings.mixer_on = f->asked->fittings.mixer_on;
    for (double duration_s = 3600; isnan(f->plan->heat_up_s) && duration_s <= longest_s; duration_s *= 2) {
        boil_schedule nothing;
        boil_history h;
        boil_run_options o = f->options;
        o.row_interval_s = duration_s / 240;
        boil_schedule_init(&nothing, duration_s);
        outcome = boil_run(&p, &nothing, &o, &h);
        if (outcome != BOIL_OK)
            return outcome;
        const boil_row *r = first_boiling(&h);
        if (r != NULL)
            note_boil(f, &h, r);
        bool over = h.end != BOIL_RUN_DONE;
        boil_history_free(&h);
        if (over)
            break;
    }
    return outcome;
}

/* The bath that it comes to --------------------------------------------------------------------------------------- */

static int set_wanted(filling *f, boil_plant *wanted)
{
    boil_charge_plan *plan = f->plan;
    boil_charge_state bath;
    *wanted = *f->asked;
    wanted->charge.temperature_K = 0;
    int outcome = boil_plant_charge(wanted, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    plan->salt_fraction = bath.salt_fraction;
    plan->boiling_point_K = bath.boiling_point_K;
    plan->mass_kg = boil_mixture_mass(&bath.mixture);
    plan->bath_water_kg = bath.mixture.water;
    plan->bath_salts_kg = salts_of(&bath.mixture);
    plan->strength_kg_m3 = boil_solution_strength(&f->air, &bath.mixture);
    plan->per_water_kg_m3 = plan->bath_salts_kg / plan->bath_water_kg * boil_water_density(BOIL_ZERO_CELSIUS + 20);
    plan->cold_level_m = level_of(f, &bath.mixture, fmax(wanted->room.temperature_K, BOIL_ZERO_CELSIUS));
    plan->hot_level_m = wanted->tank.level_m;
    plan->crystals_from_K = boil_crystals_from(&bath.mixture);
    return BOIL_OK;
}

static int look_at_swell(filling *f, const boil_plant *wanted)
{
    boil_schedule nothing;
    boil_history h;
    boil_plant p = *wanted;
    boil_run_options o = f->options;
    p.heater.dial = 1;
    p.control.mode = BOIL_CONTROL_NONE;
    o.row_interval_s = 1;
    boil_schedule_init(&nothing, 1);
    int outcome = boil_run(&p, &nothing, &o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    f->plan->swelled_level_m = h.rows[0].level_m;
    boil_history_free(&h);
    return BOIL_OK;
}

/* What is in the tank already. */
static int set_there(filling *f)
{
    const boil_charge_case *c = &f->plan->asked;
    boil_charge_state bath;
    f->temperature_K = c->added_K;
    if (!(c->from_level_m > 0))
        return BOIL_OK;
    boil_plant p = f->plant;
    p.charge.basis = BOIL_BY_SALT_FRACTION;
    p.charge.value = c->from_fraction;
    p.charge.temperature_K = f->temperature_K = c->from_K;
    p.tank.level_m = c->from_level_m;
    int outcome = boil_plant_charge(&p, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    if (!(boil_above_liquidus(&bath.mixture, c->from_K) > 0))
        return BOIL_RANGE;
    f->there = f->bound = bath.mixture;
    f->bound_J = boil_solution_heat(&bath.mixture, c->from_K).enthalpy_J;
    return BOIL_OK;
}

static void set_amounts(filling *f)
{
    boil_charge_plan *plan = f->plan;
    const boil_charge_case *c = &plan->asked;
    double missing = plan->bath_salts_kg - salts_of(&f->there);
    if (!(missing >= -1e-9 * plan->bath_salts_kg))
        plan->end = BOIL_CHARGE_TOO_MUCH;
    if (c->liquid_fraction > 0)
        plan->liquid_kg = fmax(0, missing) / c->liquid_fraction;
    else
        plan->salts_kg = fmax(0, missing);
    double liquid_water = plan->liquid_kg * (1 - c->liquid_fraction);
    plan->water_kg = fmax(0, plan->bath_water_kg - f->there.water - liquid_water);
    plan->water_level_m = plan->water_kg / (boil_water_density(c->added_K) * f->area_m2);
    if (plan->end == BOIL_CHARGE_DONE && c->from_level_m > 0 && plan->water_kg > 0 && c->from_K > BOIL_CHARGE_WATER_HOT_K)
        plan->end = BOIL_CHARGE_TOO_HOT;
}

static void look_for_room(filling *f)
{
    const boil_plant *p = f->asked;
    if (f->plan->filled_level_m > p->tank.depth_m - p->limits.freeboard_m ||
        f->plan->hot_level_m > p->tank.depth_m - p->limits.freeboard_m)
        f->plan->end = BOIL_CHARGE_NO_ROOM;
}

static filling filling_of(const boil_plant *p, const boil_run_options *o, boil_charge_plan *plan)
{
    filling f = {.plan = plan, .plant = *p, .asked = p, .options = *o, .area_m2 = boil_tank_area(&p->tank)};
    f.air = boil_conditions_at(p->room.pressure_Pa, p->elevation_factor);
    f.plant.heater.dial = 0;
    f.plant.control.mode = BOIL_CONTROL_NONE;
    f.plant.fittings.mixer_on = true;
    f.plant.fittings.lid_on = false;
    f.plant.fittings.mixer_W = plan->mixer_W = boil_plant_mixer_power(p);
    return f;
}

int boil_charge_plan_of(const boil_plant *p, const boil_charge_case *c, const boil_run_options *o, boil_charge_plan *out)
{
    *out = (boil_charge_plan){.asked = *c};
    filling f = filling_of(p, o, out);
    boil_plant wanted;
    int outcome = set_wanted(&f, &wanted);
    if (outcome == BOIL_OK)
        outcome = set_there(&f);
    if (outcome == BOIL_RANGE || outcome == BOIL_NO_ROOT) {
        out->end = BOIL_CHARGE_NO_BATH;
        return BOIL_OK;
    }
    if (outcome != BOIL_OK)
        return outcome;
    set_amounts(&f);
    if (out->end != BOIL_CHARGE_DONE)
        return BOIL_OK;
    outcome = fill(&f);
    if (outcome != BOIL_OK || out->end != BOIL_CHARGE_DONE)
        return outcome;
    look_for_room(&f);
    outcome = heat_up(&f);
    return outcome == BOIL_OK ? look_at_swell(&f, &wanted) : outcome;
}
