#include <math.h>

#include "analysis/correct_parts.h"

static boil_action action_of(const boil_correction *a, boil_action_kind kind, double mass_kg)
{
    double temperature_K = kind == BOIL_ACTION_LIQUID ? a->asked.liquid_K : a->asked.added_K;
    return boil_pour_rate_action(kind, mass_kg, a->start.charge.blend, a->asked.liquid_fraction, temperature_K);
}

bool boil_correct_work_adds(const boil_correction *a)
{
    return a->water.mass_kg + a->salts.mass_kg + a->liquid.mass_kg > 0;
}

static boil_outcome add_step(const boil_correction *a, boil_action_kind kind, const boil_correct_step *step, boil_schedule *s)
{
    if (!(step->mass_kg > 0))
        return BOIL_OK;
    boil_action action = action_of(a, kind, step->mass_kg);
    boil_action_pour(&action, step->mass_kg, step->mass_kg / step->over_s);
    action.time_s = step->start_s;
    return boil_schedule_add(s, &action);
}

boil_outcome boil_correct_schedule(const boil_correction *a, boil_schedule *out)
{
    if (a == NULL || out == NULL)
        return BOIL_BAD_INPUT;
    boil_schedule_init(out, a->done_s);
    boil_outcome outcome = add_step(a, BOIL_ACTION_WATER, &a->water, out);
    if (outcome == BOIL_OK)
        outcome = add_step(a, BOIL_ACTION_SALTS, &a->salts, out);
    if (outcome == BOIL_OK)
        outcome = add_step(a, BOIL_ACTION_LIQUID, &a->liquid, out);
    return outcome;
}

/* Where a step begins and how long it takes; the end of it. */
static double placed(boil_correct_step *step, double start_s)
{
    step->start_s = start_s;
    step->over_s = step->mass_kg > 0 ? step->mass_kg / step->pace.rate_kg_s : 0;
    return start_s + step->over_s;
}

/* Water, a rest until a whole minute, since a printed clock shows no more; or the boil-down; the make-up, a hold; done on the minute. */
void boil_correct_work_place(boil_correction *a, double hold_s)
{
    boil_correct_step *makeup = a->asked.liquid_fraction > 0 ? &a->liquid : &a->salts;
    double end = a->water.mass_kg > 0 ? placed(&a->water, 0) : a->boil_down_s;
    if (makeup->mass_kg > 0)
        end = placed(makeup, a->water.mass_kg > 0 ? boil_pour_rate_minute(end + BOIL_CORRECT_SETTLE_S) : end);
    a->done_s = 60 * (boil_correct_work_adds(a) ? ceil((end + hold_s) / 60) : round(end / 60));
}

/* Paces ----------------------------------------------------------------------------------------------------------- */

/* The bath in which the make-up begins: the water is in, or has boiled down. */
static boil_outcome before_makeup(const boil_correct_work *c, boil_plant *p, double *boils_K)
{
    boil_initial_state now, then;
    *p = c->a->start;
    boil_outcome outcome = boil_plant_initial(p, &now);
    if (outcome != BOIL_OK)
        return outcome;
    double salts = boil_mixture_salts(&now.mixture), water = now.mixture.water + c->a->amounts.water_kg;
    if (!(water > 0))
        return BOIL_OUT_OF_RANGE;
    p->charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p->charge.value = salts / (salts + water);
    outcome = boil_plant_initial(p, &then);
    if (outcome != BOIL_OK)
        return outcome;
    p->tank.level_m = (salts + water) / (then.density_kg_m3 * c->area_m2);
    *boils_K = then.boiling_point_K;
    return BOIL_OK;
}

static boil_outcome find_pace(const boil_correct_work *c, const boil_plant *p, boil_action_kind kind, double mass_kg,
                              boil_pour_rate *pace)
{
    boil_action action = action_of(c->a, kind, mass_kg);
    boil_outcome outcome = boil_pour_rate_fastest(p, &action, kind == BOIL_ACTION_WATER ? c->vent_kg_s : 0, &c->options, pace);
    if (outcome == BOIL_NO_ROOT)
        c->a->end = BOIL_CORRECT_NO_POUR_RATE;
    return outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

boil_outcome boil_correct_work_find_water_pace(boil_correct_work *c, double mass_kg)
{
    return find_pace(c, &c->a->start, BOIL_ACTION_WATER, mass_kg, &c->a->water.pace);
}

static boil_outcome find_makeup_pace(boil_correct_work *c)
{
    boil_correction *a = c->a;
    bool liquid = a->asked.liquid_fraction > 0;
    boil_correct_step *step = liquid ? &a->liquid : &a->salts;
    step->mass_kg = liquid ? a->amounts.liquid_kg : a->amounts.salts_kg;
    if (!(step->mass_kg > 0))
        return BOIL_OK;
    boil_plant p;
    double highest_K = fmax(a->start.limits.boiling_point_high_K, fmax(a->asked.reads_K, a->set_point_K));
    boil_outcome outcome = before_makeup(c, &p, &a->makeup_K);
    if (outcome == BOIL_OUT_OF_RANGE || outcome == BOIL_NO_ROOT || (outcome == BOIL_OK && !(a->makeup_K <= highest_K))) {
        a->end = BOIL_CORRECT_TOO_WEAK;
        return BOIL_OK;
    }
    return outcome == BOIL_OK ? find_pace(c, &p, liquid ? BOIL_ACTION_LIQUID : BOIL_ACTION_SALTS, step->mass_kg, &step->pace)
                              : outcome;
}

/* Water is what is left over after the time that the make-up takes; below nothing, that boils down. */
boil_outcome boil_correct_work_set_water(boil_correct_work *c, double water_kg)
{
    boil_correction *a = c->a;
    bool searched = a->water.pace.rate_kg_s > 0;
    a->water.mass_kg = fmax(0, water_kg);
    a->boil_down_s = fmax(0, -water_kg / c->vent_kg_s);
    return a->water.mass_kg > 0 && !searched ? boil_correct_work_find_water_pace(c, a->water.mass_kg) : BOIL_OK;
}

boil_outcome boil_correct_work_find_paces(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_outcome outcome = find_makeup_pace(c);
    if (outcome != BOIL_OK || a->end != BOIL_CORRECT_DONE)
        return outcome;
    double takes_s = placed(&a->salts, 0) + placed(&a->liquid, 0);
    if (!(takes_s > 0) && fabs(a->amounts.water_kg) < BOIL_CORRECT_WORTH_ADDING * a->mass_kg)
        return BOIL_OK;
    double hold_s = takes_s > 0 || a->amounts.water_kg > 0 ? 2 * BOIL_CORRECT_SETTLE_S : 0;
    return boil_correct_work_set_water(c, a->amounts.water_kg + (takes_s + hold_s) * c->vent_kg_s);
}
