#include <math.h>

#include "analysis/correct_parts.h"
#include "analysis/steady_state.h"
#include "case/grading.h"
#include "case/plant.h"

static boil_outcome fraction_at(const boil_correct_work *c, double boiling_point_K, double *fraction)
{
    return boil_solution_fraction_boiling_at(&c->air, c->a->start.charge.blend, boiling_point_K, fraction);
}

/* An uncertainty that reaches beyond what there can be ends there. */
static double fraction_or(const boil_correct_work *c, double boiling_point_K, double otherwise)
{
    double fraction;
    return fraction_at(c, boiling_point_K, &fraction) == BOIL_OK ? fraction : otherwise;
}

/* A boiling surface stands a factor above the still one that hardly depends on the level. */
static boil_outcome take_swell_out(boil_correct_work *c)
{
    boil_correction *a = c->a;
    double *level = &a->start.tank.level_m;
    boil_row calm;
    for (int i = 0; i < 4 && a->asked.level_boiling; i++) {
        boil_outcome outcome = boil_steady_state_first_row(&a->start, &c->options, &calm);
        if (outcome != BOIL_OK)
            return outcome;
        *level *= a->asked.level_m / calm.level_m;
    }
    a->still_level_m = *level;
    a->swell_m = a->asked.level_m - *level;
    return BOIL_OK;
}

/* The plant as it stands, boiling at the reading. */
static void set_start(boil_correct_work *c, const boil_plant *p, const boil_correct_case *asked)
{
    boil_plant *start = &c->a->start;
    *start = *p;
    start->control.mode = BOIL_WATER_CONTROL_NONE;
    start->heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    start->charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    start->charge.value = asked->reads_K;
    boil_plant_at_boil(start);
    start->tank.level_m = asked->level_m;
}

/* From the least grade on at which a run finds it so. */
bool boil_correct_is_nearly_dry(double salt_fraction)
{
    return salt_fraction - 1 > boil_gradings[BOIL_FOUND_NEARLY_DRY].from[BOIL_SEVERITY_CAUTION];
}

static boil_outcome describe_bath(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_initial_state there;
    boil_row calm;
    boil_outcome outcome = take_swell_out(c);
    if (outcome == BOIL_OK)
        outcome = boil_plant_initial(&a->start, &there);
    if (outcome == BOIL_OK)
        outcome = boil_steady_state_first_row(&a->start, &c->options, &calm);
    if (outcome != BOIL_OK)
        return outcome;
    a->salt_fraction = there.salt_fraction;
    a->salt_fraction_low = fraction_or(c, a->asked.reads_K - a->asked.uncertain_K, 0);
    a->salt_fraction_high = fraction_or(c, a->asked.reads_K + a->asked.uncertain_K, there.salt_fraction);
    a->strength_kg_m3 = boil_solution_strength(&c->air, &there.mixture);
    a->mass_kg = boil_mixture_mass(&there.mixture);
    a->freeboard_now_m = calm.freeboard_m;
    c->vent_kg_s = calm.vented_kg_s;
    if (boil_correct_is_nearly_dry(fmax(a->salt_fraction, a->salt_fraction_high)))
        a->end = BOIL_CORRECT_NEARLY_DRY;
    else if (!(calm.boiling && calm.steam_kg_s > 0))
        a->end = BOIL_CORRECT_NO_BOIL;
    return BOIL_OK;
}

/* The scenario's own bath. */
static boil_outcome set_wanted(boil_correct_work *c, const boil_plant *p)
{
    boil_correction *a = c->a;
    boil_initial_state wanted;
    boil_plant boiling = *p;
    boiling.charge.temperature_K = 0;
    boil_outcome outcome = boil_plant_initial(&boiling, &wanted);
    if (outcome != BOIL_OK)
        return outcome;
    a->set_point_K = wanted.boiling_point_K;
    a->wanted_level_m = p->tank.level_m;
    c->set_fraction = wanted.salt_fraction;
    if (!(c->set_fraction > 0))
        a->end = BOIL_CORRECT_NO_SALTS;
    c->set_density_kg_m3 = wanted.density_kg_m3;
    return BOIL_OK;
}

boil_outcome boil_correct_work_reading(boil_correct_work *c, const boil_plant *p)
{
    const boil_correct_case *asked = &c->a->asked;
    set_start(c, p, asked);
    boil_outcome outcome = set_wanted(c, p);
    double full_K = fmin(p->limits.boiling_point_low_K, c->a->set_point_K) - BOIL_CORRECT_NO_FULL_BOIL_K;
    if (outcome == BOIL_OK && c->a->end == BOIL_CORRECT_DONE && asked->reads_K + asked->uncertain_K < full_K)
        c->a->end = BOIL_CORRECT_NO_FULL_BOIL;
    return outcome == BOIL_OK && c->a->end == BOIL_CORRECT_DONE ? describe_bath(c) : outcome;
}
