#include "analysis/correct.h"

#include <math.h>
#include <string.h>

#include "analysis/correct_parts.h"
#include "analysis/steady_state.h"
#include "case/checks.h"

/* Bailed out in such a step, twice as much, and so on to so much of the bath, until a pace is found: judgement. */
#define BAIL_STEP 0.03
#define BAIL_MOST 0.4

boil_load boil_correct_next_load(const boil_plant *p, const boil_schedule *s)
{
    const boil_load *heaviest = NULL;
    if (p == NULL || s == NULL)
        return boil_load_default();
    for (size_t i = 0; i < s->count; i++) {
        const boil_load *l = &s->actions[i].is.load;
        if (s->actions[i].kind == BOIL_ACTION_LOAD &&
            (heaviest == NULL || l->mass_kg + l->basket_kg > heaviest->mass_kg + heaviest->basket_kg))
            heaviest = l;
    }
    if (heaviest != NULL) {
        boil_load next = *heaviest;
        next.latest_s = 0; /* of a clock that is not that of the correction */
        return next;
    }
    boil_load plate = boil_load_default();
    plate.mass_kg = p->limits.load_per_volume_kg_m3 * boil_tank_area(&p->tank) * p->tank.level_m;
    plate.size_m = 6.35e-3;
    plate.temperature_K = p->ambient.temperature_K;
    plate.immersed_s = 20 * 60;
    return plate;
}

/* A step, or the whole, that leaves too little freeboard. */
static bool lacks_freeboard(const boil_correction *a)
{
    static const char *const ids[] = {"freeboard-low", "overflow", "overflow-still", "salt-slug"};
    const char *found[] = {a->water.pace.limited_id, a->salts.pace.limited_id, a->liquid.pace.limited_id, a->harm_id};
    for (size_t i = 0; i < sizeof ids / sizeof ids[0]; i++)
        for (size_t k = 0; k < sizeof found / sizeof found[0]; k++)
            if (found[k] != NULL && strcmp(found[k], ids[i]) == 0)
                return true;
    return false;
}

/* A plan with a share of the bath left in the tank that it could be full to. */
static boil_outcome plan_with(boil_correct_work *c, double left)
{
    boil_correction *a = c->a;
    a->end = BOIL_CORRECT_DONE;
    a->harm_id = a->harm = NULL;
    if (left < 1)
        boil_correct_work_bail_to(c, left * fmin(a->unbailed_level_m, a->most_level_m),
                                  a->bail == BOIL_BAIL_NOTHING ? BOIL_BAIL_FOR_POUR : a->bail);
    a->water = a->salts = a->liquid = (boil_correct_step){.mass_kg = 0};
    boil_outcome outcome = boil_correct_work_find_paces(c);
    return outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE ? boil_correct_work_prove(c) : outcome;
}

/* As little more bailed out as will do, to a step; the plan at hand is the one for `bailed`. */
static boil_outcome bail_less(boil_correct_work *c, double too_little, double bailed)
{
    boil_correction best = *c->a;
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && bailed - too_little > 1.5 * BAIL_STEP) {
        double middle = (bailed + too_little) / 2;
        outcome = plan_with(c, 1 - middle);
        bool does = outcome == BOIL_OK && c->a->end == BOIL_CORRECT_DONE;
        *(does ? &bailed : &too_little) = middle;
        if (does)
            best = *c->a;
    }
    *c->a = best;
    return outcome;
}

/* Where the additions leave too little freeboard at any pace, less is left in the tank. */
static boil_outcome make_plan(boil_correct_work *c)
{
    boil_correction *a = c->a;
    double bailed = 0;
    boil_outcome outcome = plan_with(c, 1);
    while (outcome == BOIL_OK && a->end == BOIL_CORRECT_NO_POUR_RATE && lacks_freeboard(a) && bailed < BAIL_MOST) {
        bailed = bailed > 0 ? 2 * bailed : BAIL_STEP;
        outcome = plan_with(c, 1 - bailed);
    }
    return outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE ? bail_less(c, bailed / 2, bailed) : outcome;
}

/* What has to be bailed out in all for the level wanted, where there is too much salt for it. */
static void find_bail_to_wanted(boil_correction *a, double area_m2)
{
    double over = 1 - a->wanted_level_m / a->unbailed_level_m;
    if (a->end_still_m > a->wanted_level_m + BOIL_CORRECT_LEVEL_M)
        a->bail_to_wanted_m3 = over * area_m2 * a->still_level_m;
}

static boil_outcome describe_end(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_plant then = a->start;
    boil_row calm;
    then.charge.value = a->end_K;
    then.tank.level_m = a->end_still_m;
    boil_outcome outcome = boil_steady_state_first_row(&then, &c->options, &calm);
    if (outcome == BOIL_OK)
        outcome = boil_correct_work_load_in(c, a->end_still_m, &a->freeboard_loaded_m);
    double level_m = fmin(a->wanted_level_m, a->bail == BOIL_BAIL_NOTHING ? a->most_level_m : a->amounts.level_m);
    a->amounts_low = boil_correct_work_amounts_if(c, a->salt_fraction_low, level_m);
    a->amounts_high = boil_correct_work_amounts_if(c, a->salt_fraction_high, level_m);
    find_bail_to_wanted(a, c->area_m2);
    a->end_boiling_m = calm.level_m;
    a->end_loaded_m = a->start.tank.depth_m - a->freeboard_loaded_m;
    return outcome;
}

static bool is_no_bath(boil_outcome outcome)
{
    return outcome == BOIL_OUT_OF_RANGE || outcome == BOIL_NO_ROOT;
}

static boil_outcome ended(boil_correction *a, boil_correct_end end)
{
    a->end = end;
    return BOIL_OK;
}

static bool is_correct_case(const boil_correct_case *c)
{
    return isfinite(c->reads_K) && c->uncertain_K >= 0 && isfinite(c->uncertain_K) && c->level_m > 0 && isfinite(c->level_m) &&
           c->liquid_fraction >= 0 && c->liquid_fraction < 0.9 && isfinite(c->added_K) && isfinite(c->liquid_K) &&
           boil_load_problem(&c->next_load) == NULL;
}

boil_outcome boil_correct(const boil_plant *p, const boil_correct_case *asked, const boil_run_options *o, boil_correction *out)
{
    if (out == NULL || asked == NULL || !boil_check_plant(p) || !boil_check_options(o) || !is_correct_case(asked))
        return BOIL_BAD_INPUT;
    boil_correct_work c = {.a = out, .options = *o, .area_m2 = boil_tank_area(&p->tank)};
    c.air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    *out = (boil_correction){.asked = *asked, .most_level_m = (double)NAN};
    boil_outcome outcome = boil_correct_work_reading(&c, p);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_BATH);
    if (outcome != BOIL_OK || out->end != BOIL_CORRECT_DONE)
        return outcome;
    outcome = boil_correct_work_find_freeboard(&c);
    if (is_no_bath(outcome))
        return ended(out, BOIL_CORRECT_NO_FREEBOARD);
    if (outcome != BOIL_OK)
        return outcome;
    boil_correct_work_find_amounts(&c);
    outcome = make_plan(&c);
    return outcome == BOIL_OK && out->end == BOIL_CORRECT_DONE ? describe_end(&c) : outcome;
}
